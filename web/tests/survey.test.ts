import { expect, test } from "vitest";
import type { DrawnLine, FindingKind, ViewDrawing } from "../src/api/shapes";
import {
  emptyDraft,
  findingOf,
  firstBeginning,
  kindsFor,
  lengthOf,
  nearestPlace,
  partOf,
  shapeOf,
} from "../src/parts/surveyDraft";
import { apartFromOthers, middleOf, onScreen, pathOf } from "../src/pictures/surveyPicture";

const bar: DrawnLine = {
  part: "brace",
  name: "lower bar",
  closed: false,
  width_mm: 8,
  points: [
    { x_mm: 400, y_mm: -100 },
    { x_mm: 400, y_mm: 100 },
  ],
};

const inside: ViewDrawing = {
  view: "top_inside",
  upright: true,
  mirrored: true,
  upside_down: false,
  x_from_mm: -6,
  x_to_mm: 494,
  y_from_mm: -200,
  y_to_mm: 200,
  lines: [bar],
  places: [
    { name: "upper bout, bass side", at: { x_mm: 90, y_mm: -80 } },
    { name: "lower bout, bass side", at: { x_mm: 350, y_mm: -110 } },
  ],
};

function kind(name: string, shape: FindingKind["shape"], measures: string[] = []): FindingKind {
  return { name, words: name.replaceAll("_", " "), shape, measures, places: ["top_inside"], note: "" };
}

test("a point comes back from the screen where it was, whichever way the view lies", () => {
  for (const upright of [true, false]) {
    for (const mirrored of [true, false]) {
      for (const upside_down of [true, false]) {
        const screen = onScreen({ ...inside, upright, mirrored, upside_down }, 300, 1000);
        const { x, y } = screen.to({ x_mm: 120, y_mm: -45 });
        const back = screen.from(x, y);
        expect(back.x_mm).toBeCloseTo(120, 9);
        expect(back.y_mm).toBeCloseTo(-45, 9);
        expect(x >= 0 && x <= screen.width && y >= 0 && y <= screen.height).toBe(true);
      }
    }
  }
});

test("seen from inside, the bass side is at the right and the tail below", () => {
  const screen = onScreen(inside, 400, 5000);
  const [bass, treble] = [screen.to({ x_mm: 350, y_mm: -110 }), screen.to({ x_mm: 350, y_mm: 110 })];
  expect(bass.x).toBeGreaterThan(treble.x);
  expect(screen.to({ x_mm: 450, y_mm: 0 }).y).toBeGreaterThan(screen.to({ x_mm: 100, y_mm: 0 }).y);
  expect(pathOf(bar.points, false, screen)).toBe("M300.0 406.0L100.0 406.0");
});

test("a drawing too high for its room is made smaller as a whole", () => {
  const screen = onScreen(inside, 400, 250);
  expect(screen.height).toBeCloseTo(250, 9);
  expect(screen.width).toBeCloseTo(200, 9);
});

test("one point is a spot, two a line or the corners of an area, more go round it", () => {
  const [a, b, c] = [
    { x_mm: 0, y_mm: 0 },
    { x_mm: 10, y_mm: 20 },
    { x_mm: 30, y_mm: 5 },
  ];
  expect(shapeOf([a], true).shape).toBe("point");
  expect(shapeOf([a, b], false).shape).toBe("line");
  expect(shapeOf([a, b], true).points).toEqual([a, { x_mm: 10, y_mm: 0 }, b, { x_mm: 0, y_mm: 20 }]);
  expect(shapeOf([a, b, c], true)).toEqual({ shape: "area", points: [a, b, c] });
  expect(lengthOf([a, b])).toBeCloseTo(Math.hypot(10, 20), 12);
});

test("a loose brace knows which brace it is of, and from where to where along it", () => {
  const draft = {
    ...emptyDraft(),
    points: [
      { x_mm: 405, y_mm: -92 },
      { x_mm: 397, y_mm: -41 },
    ],
  };
  const finding = findingOf(inside, draft, kind("brace_loose", "line", ["brace_gap_length"]));
  expect([finding.part, finding.part_from_mm, finding.part_to_mm]).toEqual(["lower bar", 8, 59]);
  expect(finding.place).toBe("lower bout, bass side");
  expect(finding.extents).toEqual([]);
});

test("a brace far from the spot is not taken for the one meant", () => {
  const draft = { ...emptyDraft(), kind: "brace_loose", points: [{ x_mm: 300, y_mm: 0 }] };
  expect(partOf(inside, draft)).toBeUndefined();
  expect(partOf(inside, { ...draft, points: [{ x_mm: 380, y_mm: 0 }] })?.name).toBe("lower bar");
  expect(partOf(inside, { ...draft, kind: "crack", points: [{ x_mm: 400, y_mm: 0 }] })).toBeUndefined();
});

test("what was typed is kept beside what it means, and opening only where it is asked", () => {
  const draft = {
    ...emptyDraft(),
    points: [{ x_mm: 100, y_mm: 0 }],
    readings: { crack_width: 0.1016 },
    typed: { crack_width: ".004" },
    opening: "open" as const,
  };
  const crack = findingOf(inside, draft, kind("crack", "line", ["crack_width", "crack_length"]));
  expect(crack.extents).toEqual([{ measure: "crack_width", typed: ".004", value_mm: 0.1016 }]);
  expect(crack.opening).toBe("open");
  expect(findingOf(inside, draft, kind("dent", "point")).opening).toBe("not_said");
});

test("kinds are narrowed by the view, by what is typed, and by how the draft lies", () => {
  const kinds = [kind("crack", "line"), kind("pin_proud", "point"), kind("bridge_plate_worn", "area")];
  const names = (found: readonly FindingKind[]): string[] => found.map(({ name }) => name);
  expect(names(kindsFor(kinds, "top_inside", 0, "").fitting)).toEqual(["crack", "pin_proud", "bridge_plate_worn"]);
  expect(names(kindsFor(kinds, "top_inside", 2, "").fitting)).toEqual(["crack", "bridge_plate_worn"]);
  expect(names(kindsFor(kinds, "top_inside", 2, "").others)).toEqual(["pin_proud"]);
  expect(names(kindsFor(kinds, "top_inside", 0, "bri wo").fitting)).toEqual(["bridge_plate_worn"]);
  expect(names(kindsFor(kinds, "headstock", 0, "").fitting)).toEqual([]);
});

test("a place is found by the beginnings of its words", () => {
  const names = ["fret 3", "fret 13", "lower bout, bass side", "lower bout, treble side"];
  expect(firstBeginning(names, "lower b, tr")).toBe("lower bout, treble side");
  expect(firstBeginning(names, "fret 1")).toBe("fret 13");
  expect(firstBeginning(names, " , ")).toBeUndefined();
  expect(firstBeginning(names, "heel")).toBeUndefined();
});

test("the nearest named place, and numbers that do not cover each other", () => {
  expect(nearestPlace(inside, { x_mm: 100, y_mm: -60 })).toBe("upper bout, bass side");
  expect(nearestPlace(inside, undefined)).toBe("");
  const screen = onScreen(inside, 400, 5000);
  const middle = middleOf(bar.points, "line", screen);
  const apart = apartFromOthers([middle, middle, middle], 11);
  for (const [k, one] of apart.entries()) {
    for (const other of apart.slice(k + 1))
      expect(Math.hypot(one.x - other.x, one.y - other.y)).toBeGreaterThanOrEqual(22);
  }
});
