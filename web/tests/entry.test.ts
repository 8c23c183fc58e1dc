import { describe, expect, test, vi } from "vitest";
import { Refusal } from "../src/api/client";
import { latest } from "../src/api/latest";
import type { Measure, SaddleOption } from "../src/api/shapes";
import { exposureSides } from "../src/parts/exposureSides";
import { asAsked, placeId, placeOf, placeWords } from "../src/parts/fretEntry";
import { emptyEntry, isReady, isUnusual, plainNumber, toKeep } from "../src/parts/readingEntry";

const action: Measure = {
  id: "action12_bass",
  name: "action at fret 12, bass",
  unit: "mm",
  where: "",
  how: "",
  usual_low: 1.8,
  usual_high: 3.2,
  hard_low: 0,
  hard_high: 12,
  gauge: "ruler_half_mm",
  source: "",
  note: "",
};

describe("a reading", () => {
  test("outside the usual range waits until the person is sure", () => {
    const entry = { ...emptyEntry("feelers"), typed: "2", value: 0.79 };
    expect(isUnusual(action, 0.79)).toBe(true);
    expect(isReady(action, entry)).toBe(false);
    expect(isReady(action, { ...entry, sure: true })).toBe(true);
    expect(isReady(action, { ...entry, value: 2 })).toBe(true);
  });

  test("that was not understood is never ready", () => {
    expect(isReady(action, { ...emptyEntry("feelers"), typed: "x", refused: "no number", sure: true })).toBe(false);
    expect(isReady(action, emptyEntry("feelers"))).toBe(false);
  });

  test("is kept with what was typed and what it corrects", () => {
    const entry = { ...emptyEntry("feelers"), typed: " 5/64 ", value: 1.984375, supersedes: 7 };
    expect(toKeep(3, action, "as_left", entry)).toEqual({
      visit_id: 3,
      measure: "action12_bass",
      typed: "5/64",
      value: 1.984375,
      gauge: "feelers",
      state: "as_left",
      supersedes: 7,
    });
  });

  test("that is no length takes comma or point and its own unit", () => {
    expect(["45", "45 %", "45,5", "-3.5 °", "12°C"].map(plainNumber)).toEqual([45, 45, 45.5, -3.5, 12]);
    expect(["", "4/5", "forty", "1.2.3"].map(plainNumber)).toEqual([undefined, undefined, undefined, undefined]);
  });
});

describe("a refusal", () => {
  test("names the field it is about", () => {
    expect(new Refusal("design.top_thickness_mm: 40 mm is outside 1..6 mm").field).toBe("design.top_thickness_mm");
    expect(new Refusal("readings[2].value: 90 mm is outside 0..12 mm").field).toBe("readings[2].value");
    expect(new Refusal("The book is being written elsewhere").field).toBeUndefined();
  });
});

describe("the exposure range in the program's words", () => {
  const option = (figure: string): SaddleOption =>
    ({
      checks: [{ limit: "exposure, bass", kept: true, usual: false, figure, source: "" }],
      saddles: [],
    }) as unknown as SaddleOption;

  test("is drawn", () => {
    const [bass] = exposureSides(option("3.00 mm against 1.60..5.00 mm"), { bass: 3, treble: 2.5 });
    expect(bass).toMatchObject({ now: 3, least: 1.6, most: 5, usual: false, after: [{ mm: 3 }] });
  });

  test("in other words is left to be read", () => {
    expect(exposureSides(option("3.00 mm, as usual"), { bass: 3, treble: 2.5 })).toEqual([]);
  });
});

describe("only the latest answer is heard", () => {
  test("a slower, earlier answer is dropped", async () => {
    vi.useFakeTimers();
    const heard: string[] = [];
    const waits: Record<string, number> = { early: 100, late: 10 };
    const asking = latest(
      (question: string) => new Promise<string>((answer) => setTimeout(() => answer(question), waits[question])),
      (answer) => heard.push(answer),
      () => heard.push("trouble"),
      5,
    );
    asking.ask("early");
    await vi.advanceTimersByTimeAsync(20);
    asking.ask("late");
    await vi.advanceTimersByTimeAsync(300);
    expect(heard).toEqual(["late"]);
    vi.useRealTimers();
  });
});

describe("a crown", () => {
  test("typed as a bare number is in the unit the column says", () => {
    expect(asAsked("5", "hundredths")).toEqual({ text: "0.0500 mm", unit: "mm" });
    expect(asAsked("−12,5", "hundredths")).toEqual({ text: "-0.1250 mm", unit: "mm" });
    expect(asAsked("2", "thousandths")).toEqual({ text: "2", unit: "thousandths" });
    expect(asAsked('.002"', "hundredths")).toEqual({ text: '.002"', unit: "mm" });
    expect(asAsked("0.05", "mm")).toEqual({ text: "0.05", unit: "mm" });
  });

  test("is kept at its fret, and read back from there", () => {
    for (const id of ["fret_crown@7", "fret_crown@12b", "fret_height@3t", "fret_gap@7/1-14"]) {
      const place = placeOf(id);
      if (!place) throw new Error(id);
      expect(placeId(place)).toBe(id);
    }
    expect(placeOf("relief")).toBeUndefined();
    expect(placeWords("fret_gap@7t/1-14")).toBe("Gap under a straightedge on 1 and 14, fret 7, treble");
  });
});
