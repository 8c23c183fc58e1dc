import { inTrade, type Notation } from "./length";

/** A change, its sign always shown unless it is nothing. */
export function signed(mm: number, notation: Notation): string {
  const text = inTrade(Math.abs(mm))[notation];
  if (!/[1-9]/.test(text)) return text;
  return `${mm > 0 ? "+" : "−"}${text}`;
}

/** A change in any unit, so many digits after the point, its sign always shown unless it is nothing. */
export function signedNumber(value: number, digits: number): string {
  const text = Math.abs(value).toFixed(digits);
  if (!/[1-9]/.test(text)) return text;
  return `${value > 0 ? "+" : "−"}${text}`;
}
