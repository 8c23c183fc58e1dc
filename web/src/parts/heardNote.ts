import type { NoteContact } from "../api/shapes";

/** When a note buzzes, once the string has been run against the frets. */
export type HeardVerdict = NoteContact["verdict"];

export const heardMarks: Readonly<Record<HeardVerdict, string>> = {
  clean: "✓",
  on_hard_playing: "◇",
  on_normal_playing: "◆",
};

export const heardWords: Readonly<Record<HeardVerdict, string>> = {
  clean: "sounds clean",
  on_hard_playing: "buzzes on hard playing",
  on_normal_playing: "buzzes on normal playing",
};

export function noteKey({ string, stopped_fret }: { readonly string: number; readonly stopped_fret: number }): string {
  return `${string}/${stopped_fret}`;
}

/** A gain in plain words: how many times the part of the sound that lies above 2 kHz has grown. */
export function timesMore(gain_db: number): string {
  const times = 10 ** (gain_db / 10);
  return times < 1.15
    ? "hardly more"
    : `${times < 10 ? times.toFixed(1).replace(/\.0$/, "") : Math.round(times)} times as much`;
}

/** `A at frets 5 and 6, D open`: notes by string, so that a hand finds them. */
export function namedNotes(
  notes: readonly { readonly string: number; readonly stopped_fret: number }[],
  nameOf: (string: number) => string,
): string {
  const byString = new Map<number, number[]>();
  for (const { string, stopped_fret } of notes) {
    byString.set(string, [...(byString.get(string) ?? []), stopped_fret]);
  }
  return [...byString]
    .sort(([a], [b]) => b - a)
    .map(([string, stops]) => `${nameOf(string)} ${stopsInWords(stops.sort((a, b) => a - b))}`)
    .join("; ");
}

/** `open and at frets 1 to 4, 7` */
function stopsInWords(stops: readonly number[]): string {
  const runs: { from: number; to: number }[] = [];
  for (const stop of stops.filter((one) => one > 0)) {
    const last = runs.at(-1);
    if (last && last.to === stop - 1) last.to = stop;
    else runs.push({ from: stop, to: stop });
  }
  const words = runs.map(({ from, to }) =>
    to === from ? String(from) : to === from + 1 ? `${from}, ${to}` : `${from} to ${to}`,
  );
  const stopped =
    words.length === 0
      ? ""
      : `at ${words.length === 1 && runs[0]?.from === runs[0]?.to ? "fret" : "frets"} ${words.join(", ")}`;
  return stops.includes(0) ? (stopped === "" ? "open" : `open and ${stopped}`) : stopped;
}
