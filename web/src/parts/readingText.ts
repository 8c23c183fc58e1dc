import type { Tables } from "../api/shapes";

/** A measured value in its measure's own unit; lengths as the reader likes them. */
export function readingText(value: number, tables: Tables, measureId: string, length: (mm: number) => string): string {
  const unit = tables.measures.find((known) => known.id === measureId)?.unit ?? "mm";
  if (unit === "mm") return length(value);
  const rounded = Math.round(value * 10) / 10;
  if (unit === "percent") return `${rounded} %`;
  if (unit === "deg") return `${rounded}°`;
  return `${rounded} ${unit}`;
}
