import type { SaddleOption } from "../api/shapes";
import type { ExposureSide } from "../pictures/exposurePicture";

/** The range in `3.00 mm against 1.60..5.00 mm`: the program states it in words only. */
const range = /against (-?\d+(?:\.\d+)?)\.\.(-?\d+(?:\.\d+)?) mm/;

export interface Exposure {
  readonly bass: number;
  readonly treble: number;
}

/** How far an option lets the saddle stand out, as far as its limits can be drawn. */
export function exposureSides(option: SaddleOption, now: Exposure): ExposureSide[] {
  return (["bass", "treble"] as const).flatMap((side) => {
    const checks = option.checks.filter(({ limit }) => limit.startsWith(`exposure, ${side}`));
    const [check] = checks;
    const figures = range.exec(check?.figure ?? "");
    if (!figures) return [];
    const [least = 0, most = 0] = figures.slice(1).map(Number);
    const made = option.saddles.map((saddle) => ({
      season: option.saddles.length > 1 ? saddle.season : "",
      mm: side === "bass" ? saddle.exposure_bass_mm : saddle.exposure_treble_mm,
    }));
    const after = made.length > 0 ? made : [{ season: "", mm: now[side] }];
    return [{ side, now: now[side], after, least, most, usual: checks.every(({ usual }) => usual) }];
  });
}
