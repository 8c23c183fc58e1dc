/** A plane cut into triangles, with what is needed to draw levels over it. */
export interface Mesh {
  readonly x: readonly number[];
  readonly y: readonly number[];
  /** Three nodes a triangle, turning one way. */
  readonly corners: readonly number[];
  /** The side from corner k to the next, by number, three a triangle. */
  readonly sides: readonly number[];
  /** Sides at the edge of the plane, from node to node as their triangle turns. */
  readonly edge: readonly { readonly from: number; readonly to: number; readonly side: number }[];
}

export interface Place {
  readonly x: number;
  readonly y: number;
}

export interface Contour {
  readonly level: number;
  /** Round everything at or over the level; filled by the even-odd rule. */
  readonly region: readonly (readonly Place[])[];
  /** Where the level itself runs; closed ones end where they begin. */
  readonly lines: readonly (readonly Place[])[];
}

const of = (list: readonly number[], i: number): number => list[i] ?? 0;
const following = (k: number): number => (k + 1) % 3;

export function meshOf(x: readonly number[], y: readonly number[], corners: readonly number[]): Mesh {
  const known = new Map<number, number>();
  const uses: number[] = [];
  const sides: number[] = [];
  for (let t = 0; t < corners.length; t += 3) {
    for (let k = 0; k < 3; k += 1) {
      const [a, b] = [of(corners, t + k), of(corners, t + following(k))];
      const name = Math.min(a, b) * x.length + Math.max(a, b);
      const side = known.get(name) ?? known.size;
      known.set(name, side);
      uses[side] = (uses[side] ?? 0) + 1;
      sides.push(side);
    }
  }
  const edge: { from: number; to: number; side: number }[] = [];
  for (const [i, side] of sides.entries()) {
    const [t, k] = [i - (i % 3), i % 3];
    if (uses[side] === 1) edge.push({ from: of(corners, i), to: of(corners, t + following(k)), side });
  }
  return { x, y, corners, sides, edge };
}

/** Steps from point to point, each taken once. */
class Steps {
  private readonly next = new Map<number, number[]>();
  private readonly entered = new Set<number>();

  add(from: number, to: number): void {
    this.next.set(from, [...(this.next.get(from) ?? []), to]);
    this.entered.add(to);
  }

  private walk(from: number): number[] {
    const way = [from];
    for (let at = this.next.get(from)?.pop(); at !== undefined; at = this.next.get(at)?.pop()) {
      way.push(at);
      if (at === from) break;
    }
    return way;
  }

  /** Open ways first, from where nothing leads in; then those that close. */
  ways(): number[][] {
    const starts = [...this.next.keys()];
    const open = starts.filter((from) => !this.entered.has(from));
    return [...open, ...starts].flatMap((from) => {
      const ways: number[][] = [];
      while ((this.next.get(from)?.length ?? 0) > 0) ways.push(this.walk(from));
      return ways;
    });
  }
}

/**
 * The region over a level and its edge, triangle by triangle, values straight between nodes. Points are named by their
 * node, or by the side they cut, so that neighbours meet exactly and no seam shows between two triangles of one colour.
 */
export function contour(mesh: Mesh, values: readonly number[], level: number): Contour {
  const nodes = mesh.x.length;
  const cuts = new Map<number, Place>();
  const over = (node: number): boolean => of(values, node) >= level;
  const cut = (from: number, to: number, side: number): number => {
    const name = nodes + side;
    if (!cuts.has(name)) {
      const share = (level - of(values, from)) / (of(values, to) - of(values, from));
      cuts.set(name, {
        x: of(mesh.x, from) + share * (of(mesh.x, to) - of(mesh.x, from)),
        y: of(mesh.y, from) + share * (of(mesh.y, to) - of(mesh.y, from)),
      });
    }
    return name;
  };
  const [lines, around] = [new Steps(), new Steps()];
  for (let t = 0; t < mesh.corners.length; t += 3) {
    let [down, up] = [-1, -1];
    for (let k = 0; k < 3; k += 1) {
      const [a, b] = [of(mesh.corners, t + k), of(mesh.corners, t + following(k))];
      if (over(a) === over(b)) continue;
      const point = cut(a, b, of(mesh.sides, t + k));
      if (over(a)) down = point;
      else up = point;
    }
    if (down < 0 || up < 0) continue;
    lines.add(down, up);
    around.add(down, up);
  }
  for (const { from, to, side } of mesh.edge) {
    if (over(from)) around.add(from, over(to) ? to : cut(from, to, side));
    else if (over(to)) around.add(cut(from, to, side), to);
  }
  const place = (name: number): Place =>
    name < nodes ? { x: of(mesh.x, name), y: of(mesh.y, name) } : (cuts.get(name) ?? { x: 0, y: 0 });
  const placed = (ways: readonly number[][]): Place[][] => ways.map((way) => way.map(place));
  return { level, region: placed(around.ways()), lines: placed(lines.ways()) };
}

/** Where the plane ends: its rim and its holes. */
export function edges(mesh: Mesh): readonly (readonly Place[])[] {
  return contour(
    mesh,
    mesh.x.map(() => 1),
    0,
  ).region;
}

export interface Sample {
  /** Along the cut. */
  readonly at: number;
  readonly value: number;
}

/** Values along a straight cut through the plane, at every side it meets. */
export function cutAcross(mesh: Mesh, values: readonly number[], along: "x" | "y", at: number): Sample[] {
  const [across, way] = along === "x" ? [mesh.y, mesh.x] : [mesh.x, mesh.y];
  const found = new Map<number, Sample>();
  for (let t = 0; t < mesh.corners.length; t += 3) {
    for (let k = 0; k < 3; k += 1) {
      const [a, b] = [of(mesh.corners, t + k), of(mesh.corners, t + following(k))];
      const [from, to] = [of(across, a) - at, of(across, b) - at];
      if (from * to > 0 || from === to) continue;
      const share = from / (from - to);
      const place = of(way, a) + share * (of(way, b) - of(way, a));
      const value = of(values, a) + share * (of(values, b) - of(values, a));
      found.set(Math.round(place * 1000), { at: place, value });
    }
  }
  return [...found.values()].sort((a, b) => a.at - b.at);
}

/** The value at a place; undefined outside the plane. */
export function valueAt(mesh: Mesh, values: readonly number[], { x, y }: Place): number | undefined {
  for (let t = 0; t < mesh.corners.length; t += 3) {
    const [a, b, c] = [of(mesh.corners, t), of(mesh.corners, t + 1), of(mesh.corners, t + 2)];
    const [ax, ay] = [of(mesh.x, a) - x, of(mesh.y, a) - y];
    const [bx, by] = [of(mesh.x, b) - x, of(mesh.y, b) - y];
    const [cx, cy] = [of(mesh.x, c) - x, of(mesh.y, c) - y];
    const [wa, wb, wc] = [bx * cy - by * cx, cx * ay - cy * ax, ax * by - ay * bx];
    const all = wa + wb + wc;
    if (wa / all < -1e-9 || wb / all < -1e-9 || wc / all < -1e-9) continue;
    return (wa * of(values, a) + wb * of(values, b) + wc * of(values, c)) / all;
  }
  return undefined;
}

/** A sampled cut as stretches, parted where the plane has a hole. */
export function stretchesOf(samples: readonly Sample[], widest: number): Sample[][] {
  const stretches: Sample[][] = [];
  for (const sample of samples) {
    const last = stretches.at(-1);
    const before = last?.at(-1);
    if (last && before && sample.at - before.at <= widest) last.push(sample);
    else stretches.push([sample]);
  }
  return stretches;
}
