import type { Measure, NewReading, Reading } from "../api/shapes";

/** One line of the visit's form: what was typed, what it means, and whether it may be kept. */
export interface ReadingEntry {
  typed: string;
  /** In the measure's unit; absent until the text is understood. */
  value: number | undefined;
  refused: string | undefined;
  /** The person has said that a value outside the usual range is right. */
  sure: boolean;
  gauge: string;
  supersedes: number;
}

export function emptyEntry(gauge: string): ReadingEntry {
  return { typed: "", value: undefined, refused: undefined, sure: false, gauge, supersedes: 0 };
}

export function isLength(measure: Measure): boolean {
  return measure.unit === "mm";
}

/** Numbers that are no lengths: `45`, `45,5`, `45 %`, `12°`. */
export function plainNumber(typed: string): number | undefined {
  const match = /^\s*([-+−]?\d+(?:[.,]\d+)?)\s*(?:%|%\s*RH|°\s*C?|C|g|cents?)?\s*$/i.exec(typed);
  return match ? Number(match[1]?.replace(",", ".").replace("−", "-")) : undefined;
}

export function isUnusual(measure: Measure, value: number): boolean {
  const { usual_low, usual_high } = measure;
  return (usual_low !== undefined && value < usual_low) || (usual_high !== undefined && value > usual_high);
}

/** Typed, and not yet read back or refused. */
export function isPending({ typed, value, refused }: ReadingEntry): boolean {
  return typed.trim() !== "" && value === undefined && refused === undefined;
}

/** Ready to be kept: understood, and usual or sworn to. */
export function isReady(measure: Measure, entry: ReadingEntry): boolean {
  return entry.value !== undefined && entry.refused === undefined && (entry.sure || !isUnusual(measure, entry.value));
}

export function toKeep(
  visitId: number,
  measure: Measure,
  state: Reading["state"],
  entry: ReadingEntry,
): NewReading | undefined {
  if (entry.value === undefined) return undefined;
  return {
    visit_id: visitId,
    measure: measure.id,
    typed: entry.typed.trim(),
    value: entry.value,
    gauge: entry.gauge,
    state,
    supersedes: entry.supersedes,
  };
}
