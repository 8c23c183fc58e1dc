import type { SaddleOption } from "../api/shapes";
import type { ExposureSide } from "../pictures/exposurePicture";

/** `3.6 mm against 1.6..3.2 mm` */
const againstLimits = /^(-?[\d.]+) mm against (-?[\d.]+)\.\.(-?[\d.]+) mm$/;

/** The exposure checks of an option, as far as their figures can be drawn. */
export function exposureSides(option: SaddleOption): ExposureSide[] {
  return (["bass", "treble"] as const).flatMap((side) => {
    const check = option.checks.find(({ limit }) => limit.includes("exposure") && limit.includes(side));
    const figures = againstLimits.exec(check?.figure ?? "");
    if (!figures) return [];
    const [after = 0, least = 0, most = 0] = figures.slice(1).map(Number);
    const raise = side === "bass" ? option.saddles[0]?.raise_bass_mm : option.saddles[0]?.raise_treble_mm;
    return [{ side, now: after - (raise ?? 0), after, least, most }];
  });
}
