import { expect, test } from "vitest";
import { around, cleatShape } from "../src/pictures/cleatsPicture";
import { spreadPicture } from "../src/pictures/spreadPicture";

const crack = [
  { x_mm: 200, y_mm: 50 },
  { x_mm: 300, y_mm: 50 },
] as const;

test("a cleat lies along its crack with its grain across it", () => {
  const { corners, grain } = cleatShape({ x_mm: 250, y_mm: 50 }, crack, 14, 18);
  expect(corners.map(({ x_mm }) => x_mm)).toEqual([243, 257, 257, 243]);
  expect(corners.map(({ y_mm }) => y_mm)).toEqual([41, 41, 59, 59]);
  for (const [from, to] of grain) {
    expect(from.x_mm).toBe(to.x_mm);
    expect(to.y_mm - from.y_mm).toBe(18);
  }
});

test("the neighbourhood of a crack stays inside the drawing", () => {
  const view = { x_from_mm: -10, x_to_mm: 320, y_from_mm: -180, y_to_mm: 180 };
  const cut = around(view as Parameters<typeof around>[0], crack, { ends: 55, sides: 55 });
  expect([cut.x_from_mm, cut.x_to_mm, cut.y_from_mm, cut.y_to_mm]).toEqual([145, 320, -5, 105]);
});

test("the spread of the air stands on the scale where it is", () => {
  const drawn = spreadPicture({ spread: 9, sd: 1, stop: 7, free: 11, width: 342 });
  const stroke = drawn.children
    .flatMap((child) => (typeof child === "string" ? [] : [child]))
    .filter((child) => child.tag === "path")
    .map((child) => String(child.attributes.d));
  expect(stroke[0]).toBe("M161 28H201");
  expect(stroke[1]).toMatch(/^M181 /);
});
