import { inTrade, type Notation } from "./length";

const withSign = (value: number, text: string): string =>
  /[1-9]/.test(text) ? `${value > 0 ? "+" : "−"}${text}` : text;

/** A change, its sign always shown unless it is nothing. */
export const signed = (mm: number, notation: Notation): string => withSign(mm, inTrade(Math.abs(mm))[notation]);

/** The same in any unit, so many digits after the point. */
export const signedNumber = (value: number, digits: number): string => withSign(value, Math.abs(value).toFixed(digits));
