/** The trade's words for the names the program uses. */
export const bodySizes: Readonly<Record<string, string>> = {
  parlour: "parlour",
  small: "small",
  mid_size: "mid-size",
  slope_large: "slope-shouldered large",
  square_large: "square-shouldered large",
};

export const bracings: Readonly<Record<string, string>> = {
  x_braced: "X-braced",
  ladder: "ladder-braced",
  fan: "fan-braced",
  other: "other bracing",
};

/** Patterns of braces, as data/top_braces.csv names them. */
export const patterns: Readonly<Record<string, string>> = {
  x_scalloped: "X, scalloped braces",
  x_braced: "X, straight braces",
  ladder: "ladder",
  fan: "fan",
};

export const slots: Readonly<Record<string, string>> = {
  open_ended: "slot open at both ends",
  closed: "slot closed at both ends",
};

export const attacks: Readonly<Record<string, string>> = {
  soft: "soft",
  medium: "medium",
  hard: "hard",
};

export const saddleChoices: Readonly<Record<string, string>> = {
  leave: "leave the saddle as it is",
  turn_rod: "rod turned",
  one_saddle: "one saddle",
  two_saddles: "a winter and a summer saddle",
  humid_room: "one saddle and a room kept humid",
  neck_angle: "neck angle",
};

export const saddleHeadings: Readonly<Record<string, string>> = {
  leave: "Leave it as it is",
  turn_rod: "Turn the rod",
  one_saddle: "One saddle all year",
  two_saddles: "A winter and a summer saddle",
  humid_room: "A room kept humid",
  neck_angle: "Turn the neck instead",
};

export const states: Readonly<Record<string, string>> = { as_found: "as found", as_left: "as left" };

/** String names from string 1, the thinnest, in standard tuning's order; where there are not six, their numbers. */
export function stringName(number: number, of = 6): string {
  return (of === 6 ? ["high E", "B", "G", "D", "A", "low E"][number - 1] : undefined) ?? `string ${number}`;
}

export function noteName(number: number, stopped: number, of = 6): string {
  return stopped === 0 ? `${stringName(number, of)} open` : `${stringName(number, of)} at fret ${stopped}`;
}

/** A sentence whose figures do not part from their units at the end of a line. */
export function keptTogether(sentence: string): string {
  return sentence.replace(/(\d) (mm|%|days?|in 100|°)(?![a-z])/g, "$1\u00a0$2");
}

/** `saddle_lowered` as words, where the tables have no label of their own. */
export function plainWords(name: string): string {
  return name.replaceAll("_", " ");
}

export function dayCount(days: number): string {
  const whole = Math.round(days);
  return whole === 1 ? "1 day" : `${whole} days`;
}
