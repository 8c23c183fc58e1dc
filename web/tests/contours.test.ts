import { describe, expect, test } from "vitest";
import { svgText } from "../src/chart/svg";
import { contour, cutAcross, edges, meshOf, type Place, stretchesOf, valueAt } from "../src/pictures/contours";
import { topPicture } from "../src/pictures/topPicture";

/** A square of side `size`, every cell cut in two; cells for which `left` says so are left out. */
function square(size: number, cells: number, left: (i: number, j: number) => boolean = () => false) {
  const x: number[] = [];
  const y: number[] = [];
  const corners: number[] = [];
  const step = size / cells;
  for (let i = 0; i <= cells; i += 1) {
    for (let j = 0; j <= cells; j += 1) {
      x.push(i * step);
      y.push(j * step - size / 2);
    }
  }
  for (let i = 0; i < cells; i += 1) {
    for (let j = 0; j < cells; j += 1) {
      if (left(i, j)) continue;
      const [a, b] = [i * (cells + 1) + j, (i + 1) * (cells + 1) + j];
      corners.push(a, b, b + 1, a, b + 1, a + 1);
    }
  }
  return meshOf(x, y, corners);
}

/** Signed area of closed ways together: holes count less. */
function area(ways: readonly (readonly Place[])[]): number {
  return ways.reduce(
    (sum, way) => sum + way.reduce((part, p, i) => part + cross(p, way[(i + 1) % way.length] ?? p) / 2, 0),
    0,
  );
}

function cross(a: Place, b: Place): number {
  return a.x * b.y - a.y * b.x;
}

describe("levels over a mesh", () => {
  test("of a slope run straight across and cut off the right share", () => {
    const mesh = square(100, 10);
    const { region, lines } = contour(mesh, mesh.x, 33);
    expect(lines).toHaveLength(1);
    for (const { x } of lines[0] ?? []) expect(x).toBeCloseTo(33, 9);
    expect(Math.abs(area(region))).toBeCloseTo(67 * 100, 6);
  });

  test("of a cone close round the middle, and their area nears the circle's", () => {
    const error = (cells: number): number => {
      const mesh = square(100, cells);
      const cone = mesh.x.map((x, i) => -Math.hypot(x - 50, mesh.y[i] ?? 0));
      const { region, lines } = contour(mesh, cone, -30);
      expect(region).toHaveLength(1);
      expect(lines).toHaveLength(1);
      expect(lines[0]?.[0]).toEqual(lines[0]?.at(-1));
      return Math.abs(Math.abs(area(region)) - Math.PI * 900);
    };
    expect(error(40)).toBeLessThan(error(20) / 3);
  });

  test("everything is over a level that lies below, nothing over one above", () => {
    const mesh = square(100, 8, (i, j) => i === 3 && j === 3);
    expect(edges(mesh)).toHaveLength(2);
    expect(Math.abs(area(contour(mesh, mesh.x, -1).region))).toBeCloseTo(100 * 100 - 12.5 * 12.5, 6);
    expect(contour(mesh, mesh.x, 101).region).toEqual([]);
    expect(contour(mesh, mesh.x, -1).lines).toEqual([]);
  });

  test("a level through nodes themselves leaves no gap", () => {
    const mesh = square(100, 10);
    const { region } = contour(mesh, mesh.x, 50);
    expect(Math.abs(area(region))).toBeCloseTo(50 * 100, 6);
  });
});

describe("a cut", () => {
  test("reads a linear field exactly, parted at the hole", () => {
    const mesh = square(100, 10, (i, j) => i >= 4 && i < 7 && j >= 4 && j < 6);
    const samples = cutAcross(
      mesh,
      mesh.x.map((x, i) => 2 * x + (mesh.y[i] ?? 0)),
      "x",
      3,
    );
    for (const { at, value } of samples) expect(value).toBeCloseTo(2 * at + 3, 9);
    expect(stretchesOf(samples, 25).map((stretch) => [stretch[0]?.at, stretch.at(-1)?.at])).toEqual([
      [0, 40],
      [70, 100],
    ]);
  });

  test("and a place inside are told, outside is not", () => {
    const mesh = square(100, 10);
    expect(valueAt(mesh, mesh.x, { x: 37.5, y: 11 })).toBeCloseTo(37.5, 9);
    expect(valueAt(mesh, mesh.x, { x: 101, y: 0 })).toBeUndefined();
  });
});

test("the drawn top", async () => {
  const mesh = square(100, 12, (i, j) => i >= 3 && i < 5 && j >= 5 && j < 7);
  const dome = mesh.x.map(
    (x, i) => 0.5 * Math.sin((Math.PI * x) / 100) * Math.cos((Math.PI * (mesh.y[i] ?? 0)) / 100) - 0.2,
  );
  const drawn = topPicture({
    mesh,
    values: dome,
    levels: [-0.1, 0.1, 0.2].map((at) => ({ at, label: at.toFixed(1).replace("-", "−") })),
    step: 0.1,
    unit: "mm; minus sinks",
    braces: [{ name: "bar", from: { x: 80, y: -50 }, to: { x: 80, y: 50 } }],
    loose: [{ name: "bar", from: { x: 80, y: 30 }, to: { x: 80, y: 50 } }],
    bridge: { front: 60, back: 70, halfSpan: 20 },
    saddle: { x: 65, halfLength: 12 },
    mark: { x: 20, y: -30, words: "largest 1.20" },
    width: 300,
  });
  await expect(`${svgText(drawn)}\n`).toMatchFileSnapshot("drawn/top.svg");
});
