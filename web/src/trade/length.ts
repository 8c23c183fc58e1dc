/** The three ways the trade writes a length, printed as the program prints them (src/quantity/trade_notation.h). */
export interface InTrade {
  readonly sixtyFourths: string;
  readonly thousandths: string;
  readonly mm: string;
}

export type Notation = keyof InTrade;

const mmPerInch = 25.4;

/** Halves go up, as by hand: 3.175 mm is 3.18 although the nearest double lies a hair under it. */
function rounded(value: number): number {
  return Math.floor(value + 0.5 + 1e-7);
}

function signFor(mm: number, printed: string): string {
  return mm < 0 && /[1-9]/.test(printed) ? "-" : "";
}

function inThousandths(thou: number): string {
  const decimals = String(thou % 1000).padStart(3, "0");
  return thou < 1000 ? `.${decimals}` : `${Math.floor(thou / 1000)}.${decimals} in`;
}

/** `.081`: thousandths of an inch, as a dial shows them. */
export function thousandths(mm: number): string {
  const printed = inThousandths(rounded((Math.abs(mm) / mmPerInch) * 1000));
  return signFor(mm, printed) + printed;
}

/** `2.06 mm`. */
export function millimetres(mm: number, digits = 2): string {
  const scale = 10 ** digits;
  const printed = `${(rounded(Math.abs(mm) * scale) / scale).toFixed(digits)} mm`;
  return signFor(mm, printed) + printed;
}

function mixed(parts: number): string {
  const [whole, left] = [Math.floor(parts / 64), parts % 64];
  if (left === 0) return whole === 0 ? "" : `${whole} in`;
  return whole === 0 ? `${left}/64` : `${whole} ${left}/64`;
}

/** `5/64 + .003`: the nearest 64th, and the thousandths left over. */
export function sixtyFourths(mm: number): string {
  const parts = (Math.abs(mm) / mmPerInch) * 64;
  const near = Math.floor(parts + 0.5);
  const leftOver = Math.sign(parts - near) * Math.floor((Math.abs(parts - near) * 1000) / 64 + 0.5);
  const sign = mm < 0 ? "-" : "";
  if (leftOver === 0) return near === 0 ? "0" : sign + mixed(near);
  const left = inThousandths(Math.abs(leftOver));
  if (near === 0) return sign + left;
  const adds = leftOver > 0 === (sign === "");
  return `${sign}${mixed(near)} ${adds ? "+" : "-"} ${left}`;
}

/** `5/64`: the nearest 64th alone, for a tick on a scale. */
export function nearestSixtyFourth(mm: number): string {
  const near = Math.round((Math.abs(mm) / mmPerInch) * 64);
  return near === 0 ? "0" : (mm < 0 ? "-" : "") + mixed(near);
}

export function inTrade(mm: number): InTrade {
  return { sixtyFourths: sixtyFourths(mm), thousandths: thousandths(mm), mm: millimetres(mm) };
}
