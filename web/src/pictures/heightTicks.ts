import type { Tick } from "../chart/axes";
import { type Notation, nearestSixtyFourth, thousandths } from "../trade/length";

const mmPerInch = 25.4;

interface Steps {
  readonly sizes: readonly number[];
  readonly write: (mm: number, step: number) => string;
}

/** Steps that a rule in this notation has on it, from fine to coarse, in mm. */
const steps: Readonly<Record<Notation, Steps>> = {
  mm: { sizes: [0.02, 0.05, 0.1, 0.2, 0.5, 1, 2, 5], write: (mm, step) => mm.toFixed(step < 0.1 ? 2 : 1) },
  sixtyFourths: { sizes: [1, 2, 4, 8, 16].map((n) => (n * mmPerInch) / 64), write: nearestSixtyFourth },
  thousandths: {
    sizes: [2, 5, 10, 20, 50, 100].map((n) => (n * mmPerInch) / 1000),
    write: (mm) => (Math.abs(mm) < 1e-9 ? "0" : thousandths(mm)),
  },
};

export const unitWord: Readonly<Record<Notation, string>> = { mm: "mm", sixtyFourths: "64ths in", thousandths: "inch" };

/** At most `most` ticks between two heights. */
export function heightTicks(low: number, high: number, notation: Notation, most = 7): Tick[] {
  // Under three 64ths a ruler has too few marks to make an axis of.
  const fine = notation === "sixtyFourths" && high - low < (3 * mmPerInch) / 64;
  const { sizes, write } = steps[fine ? "thousandths" : notation];
  const step = sizes.find((size) => (high - low) / size <= most) ?? (high - low) / most;
  const ticks: Tick[] = [];
  for (let n = Math.ceil(low / step - 1e-6); n * step <= high + 1e-6; n += 1) {
    ticks.push({ at: n * step, label: write(n * step, step).replace(/^-/, "−") });
  }
  return ticks;
}
