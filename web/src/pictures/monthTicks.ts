import type { Tick } from "../chart/axes";
import { isoDay, monthStarts, months } from "../trade/day";

/** A tick where each month begins, the year's number where it begins; every third month when there is little room. */
export function monthTicks(first: number, last: number, narrow: boolean): Tick[] {
  return monthStarts(first, last).flatMap((day) => {
    const [year = "", month = "1"] = isoDay(day).split("-");
    const index = Number(month) - 1;
    if (narrow && index % 3 !== 0) return [];
    const word = months[index] ?? "";
    return [{ at: day, label: index === 0 ? year : narrow ? word : word.slice(0, 1), strong: index === 0 }];
  });
}
