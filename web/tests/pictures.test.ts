import { describe, expect, test } from "vitest";
import { frame } from "../src/chart/frame";
import { svgText } from "../src/chart/svg";
import { humidityPicture, moisturePicture, stretches } from "../src/pictures/airPicture";
import { centsPicture } from "../src/pictures/centsPicture";
import { crestPicture, type DrawnCrest } from "../src/pictures/crestPicture";
import { exposurePicture } from "../src/pictures/exposurePicture";
import { fretsPicture } from "../src/pictures/fretsPicture";
import { heightTicks } from "../src/pictures/heightTicks";
import { intervalPicture } from "../src/pictures/intervalPicture";
import { neckPicture } from "../src/pictures/neckPicture";
import { exaggeration, stringPicture } from "../src/pictures/stringPicture";
import { swingPicture } from "../src/pictures/swingPicture";
import { type YearSide, yearPicture } from "../src/pictures/yearPicture";
import { inTrade } from "../src/trade/length";

/** Invented: a swing of half a millimetre, low in February, drawn every thirtieth day. */
function invented(offset: number): number[] {
  return Array.from({ length: 24 }, (_, i) => 2.2 + offset + 0.25 * Math.cos(((i - 6) / 12) * 2 * Math.PI));
}

const side: YearSide = {
  side: "bass",
  first: "2026-02-01",
  today: "2026-02-14",
  bands: {
    low_mm: invented(-0.2),
    lower_mm: invented(-0.08),
    median_mm: invented(0),
    upper_mm: invented(0.08),
    high_mm: invented(0.2),
  },
  lowest: 1.8,
  highest: 3,
  readings: [
    { date: "2026-02-03", mm: 2.3, sd: 0.15, state: "as_found" },
    { date: "2026-02-03", mm: 2, sd: 0.03, state: "as_left" },
    { date: "2025-02-03", mm: 2, sd: 0.03, state: "as_left" },
  ],
  changes: [{ date: "2026-02-03", what: "saddle lowered" }],
  notation: "mm",
  width: 400,
  height: 250,
};

const frets = [1, 2, 3, 4, 5, 6, 7, 8, 9, 10, 11, 12, 13, 14].map((fret) => ({
  fret,
  from_nut_mm: 645 * (1 - 2 ** (-fret / 12)),
  crown_over_plane_mm: fret > 1 && fret < 14 ? -0.1 : 0,
}));

const strings = [1, 6].map((string) => ({
  string,
  nut_over_frets_mm: string === 1 ? 0.5 : 0.6,
  saddle_over_frets_mm: string === 1 ? 3.4 : 4.4,
  saddle_from_nut_mm: 648,
  over_fret_mm: frets.map((fret) => 0.5 + fret.from_nut_mm * (string === 1 ? 0.0045 : 0.006)),
  exposure_mm: 3,
}));

/** Low E stopped at fret 1, its swing cutting into fret 3. */
const swing = frets.slice(1).map(({ fret, from_nut_mm, crown_over_plane_mm }) => {
  const string_over_plane_mm = 4.4 * ((from_nut_mm - 36) / 612);
  const gap_mm = string_over_plane_mm - crown_over_plane_mm;
  const reach = fret === 3 ? gap_mm + 0.18 : 0.6 * gap_mm;
  const verdict: "touches" | "clear" = fret === 3 ? "touches" : "clear";
  return {
    fret,
    from_nut_mm,
    string_over_plane_mm,
    lowest_over_plane_mm: string_over_plane_mm - reach,
    gap_mm,
    verdict,
  };
});

const crests: DrawnCrest[] = [1.5, 3.5, 2, 2.8, 4.2, 5.4].map((wanted, i) => ({
  string: i + 1,
  name: String(i + 1),
  now: 1.5 + 0.5 * i,
  wanted,
  low: wanted - 0.6,
  high: wanted + 0.6,
  fits: i !== 5,
  words: wanted.toFixed(1),
}));
const saddleTop = { frontBass: 2.4, frontTreble: 0.4, thickness: 2.6 };

const drawings = {
  crests: crestPicture({ crests, spread: 54, top: saddleTop, width: 720 }),
  "crests-upright": crestPicture({ crests, spread: 54, top: saddleTop, width: 340 }),
  cents: centsPicture({
    name: "low E",
    low: frets.map(({ fret }) => 1 - 0.1 * fret),
    high: frets.map(({ fret }) => 1 + 0.3 * fret),
    certain: frets.map(({ fret }) => 1 - 0.15 * fret),
    certainWords: "fret 12: −0.2 to +4.6",
    read: 2,
    from: -3,
    to: 6,
    width: 360,
    height: 190,
  }),
  neck: neckPicture({
    scaleLength: 645,
    joint: 357.7,
    tongueEnd: 450,
    heelDepth: 95,
    rise: 3,
    removal: 0.99,
    shim: 0.96,
    nut: 0.3,
    saddleBefore: 5.2,
    exposureBefore: 2,
    exposureAfter: 3.2,
    write: (mm) => inTrade(mm).mm,
    width: 700,
  }),
  "year-bass": yearPicture(side),
  "year-bass-looked-at-in-64ths": yearPicture({ ...side, notation: "sixtyFourths", looked: 20500, width: 640 }),
  change: intervalPicture({
    rows: [
      { words: "measured", figure: "+0.80 mm", median: 0.8, low: 0.5, high: 1.1, className: "measured" },
      { words: "left unexplained", figure: "−0.10 mm", median: -0.1, low: -0.3, high: 0.2, className: "unexplained" },
    ],
    domain: [-0.4, 1.2],
    ticks: heightTicks(-0.4, 1.2, "mm", 5),
    unit: "change at fret 12, mm",
    width: 320,
  }),
  exposure: exposurePicture({
    sides: [
      {
        side: "bass",
        now: 2.9,
        after: [
          { season: "winter", mm: 3.5 },
          { season: "summer", mm: 3.1 },
        ],
        least: 1.6,
        most: 5,
        usual: true,
      },
      {
        side: "treble",
        now: 2.5,
        after: [{ season: "", mm: 4.8 }],
        least: 1.6,
        most: 4.5,
        usual: false,
      },
    ],
    ticks: heightTicks(0, 8, "mm", 9),
    unit: "out of the bridge, mm",
    width: 240,
    write: (mm) => inTrade(mm).mm,
  }),
  "string-line": stringPicture({
    frets,
    strings,
    note: { string: 6, stopped_fret: 1, limiting_fret: 3, margin_mm: -0.18, verdict: "touches" },
    noteWords: "low E at fret 1 swings 0.18 mm into fret 3",
    swing,
    notation: "mm",
    write: (mm) => inTrade(mm).mm,
    width: 700,
    height: 300,
  }),
  swing: swingPicture({
    stoppedAt: "1",
    start_mm: 36.2,
    swing,
    limiting_fret: 3,
    notation: "mm",
    figure: (mm) => String(Math.round(mm * 100)),
    width: 640,
    height: 220,
  }),
  frets: fretsPicture({
    frets: frets.map(({ fret, from_nut_mm }) => ({
      fret,
      from_nut_mm,
      read: fret !== 13,
      crown_bass_mm: fret === 9 ? 0.12 : -0.01,
      crown_treble_mm: fret === 9 ? 0.1 : -0.01,
      line_bass_mm: -0.01,
      line_treble_mm: -0.01,
      remove_bass_mm: fret === 9 ? 0.08 : 0,
      remove_treble_mm: fret === 9 ? 0.06 : 0,
      reason: fret === 9 ? "Fret 9 comes down." : "",
    })),
    apart: true,
    cut: true,
    notation: "mm",
    write: (mm) => inTrade(mm).mm,
    width: 700,
    height: 300,
  }),
  humidity: humidityPicture({
    days: ["2026-02-01", "2026-02-02", "2026-02-03", "2026-02-04"].map((date, i) => ({
      date,
      relative_humidity: 0.3 + i / 20,
      moisture_percent: 6,
      logged: i < 2,
    })),
    today: "2026-02-02",
    width: 300,
    height: 200,
  }),
  moisture: moisturePicture({
    days: ["2026-02-01", "2026-02-02", "2026-02-03"].map((date, i) => ({
      date,
      relative_humidity: 0.4,
      moisture_percent: 6.1 + 0.4 * i,
      logged: false,
    })),
    today: "2026-02-02",
    width: 300,
    height: 200,
  }),
};

describe("each picture is the drawing kept in tests/drawn", () => {
  for (const [name, drawn] of Object.entries(drawings)) {
    test(name, async () => {
      await expect(`${svgText(drawn)}\n`).toMatchFileSnapshot(`drawn/${name}.svg`);
    });
  }
});

describe("the crowns", () => {
  test("show what comes off on top of what stays, and say by how much they are drawn too high", () => {
    const text = svgText(drawings.frets);
    expect(text.match(/class="to-remove"/g)?.length).toBe(2);
    expect(text.match(/class="crown unread"/g)?.length).toBe(2);
    expect(text).toMatch(/drawn \d+ times as high as long/);
    expect(text).toContain(">0.08<");
  });
});

describe("the year", () => {
  test("leaves out readings from before its first day", () => {
    expect(svgText(drawings["year-bass"]).match(/<circle/g)?.length).toBe(2);
  });

  test("labels its limits, today and its axis", () => {
    const text = svgText(drawings["year-bass"]);
    for (const words of ["too low below 1.80 mm", "too high above 3.00 mm", "today 14 Feb", "mm, bass at fret 12"]) {
      expect(text).toContain(words);
    }
  });
});

describe("ticks of heights", () => {
  test("stand on whole 64ths when 64ths are read", () => {
    for (const tick of heightTicks(1, 3, "sixtyFourths")) {
      expect((tick.at / 25.4) * 64).toBeCloseTo(Math.round((tick.at / 25.4) * 64), 9);
    }
  });

  test("are never more than asked for", () => {
    for (const notation of ["mm", "sixtyFourths", "thousandths"] as const) {
      for (const high of [0.3, 1, 2.7, 6]) {
        expect(heightTicks(0, high, notation, 6).length).toBeLessThanOrEqual(7);
        expect(heightTicks(0, high, notation, 6).length).toBeGreaterThan(1);
      }
    }
  });
});

test("a saddle from above is drawn in true proportion, lying or upright", () => {
  for (const width of [340, 720]) {
    const text = svgText(crestPicture({ crests, spread: 54, top: saddleTop, width }));
    const corners = /class="saddle-top" d="M([^"]*)Z"/
      .exec(text)?.[1]
      ?.split("L")
      .map((at) => at.split(",").map(Number));
    const [bassFront, trebleFront, , bassBack] = corners ?? [];
    const apart = (a: readonly number[] = [], b: readonly number[] = []): number =>
      Math.hypot((a[0] ?? 0) - (b[0] ?? 0), (a[1] ?? 0) - (b[1] ?? 0));
    const long = Math.hypot(68, (68 * 2) / 54);
    expect(apart(bassFront, trebleFront) / apart(bassFront, bassBack)).toBeCloseTo(long / 2.6, 0);
  }
});

test("exaggeration is how many more pixels a millimetre of height has than one of length", () => {
  const margin = { top: 10, right: 0, bottom: 10, left: 0 };
  expect(exaggeration(frame({ width: 650, height: 120, margin, x: [0, 650], y: [0, 5] }))).toBeCloseTo(20, 9);
});

test("stretches part logged days from expected ones", () => {
  const day = (date: string, logged: boolean) => ({ date, relative_humidity: 0.4, moisture_percent: 6, logged });
  expect(stretches([day("2026-01-01", true), day("2026-01-02", true), day("2026-01-03", false)])).toEqual([
    { logged: true, from: 0, to: 1 },
    { logged: false, from: 2, to: 2 },
  ]);
});
