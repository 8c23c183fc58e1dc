import { inTrade, type Notation } from "./length";

/** A change, its sign always shown unless it is nothing. */
export function signed(mm: number, notation: Notation): string {
  const text = inTrade(Math.abs(mm))[notation];
  if (!/[1-9]/.test(text)) return text;
  return `${mm > 0 ? "+" : "−"}${text}`;
}
