/** The bench's words for the names that findings are kept under. */
export const views = [
  { id: "front", words: "Front" },
  { id: "back", words: "Back" },
  { id: "bass_side", words: "Bass side" },
  { id: "treble_side", words: "Treble side" },
  { id: "headstock", words: "Headstock" },
  { id: "top_inside", words: "Inside, top" },
  { id: "back_inside", words: "Inside, back" },
] as const;

export type View = (typeof views)[number]["id"];

export const severities = ["slight", "moderate", "serious"] as const;
export const certainties = ["suspected", "likely", "sure"] as const;

export const openings = [
  { id: "not_said", words: "not said" },
  { id: "tight", words: "tight" },
  { id: "open", words: "open" },
] as const;

export const movings = [
  { id: "not_said", words: "not said" },
  { id: "still", words: "still" },
  { id: "moves", words: "moves" },
] as const;

/** What a later visit can say of a finding, as its button says it. */
export const becameOfIt = [
  { id: "unchanged", words: "Unchanged" },
  { id: "grown", words: "Grown" },
  { id: "repaired", words: "Repaired" },
  { id: "gone", words: "Gone" },
] as const;

export function viewWords(view: string): string {
  return views.find((known) => known.id === view)?.words ?? view;
}

/** Whether the bench asks of this kind if it stands open, and if it moves. */
export function canOpen(kind: string): boolean {
  return /crack|seam|loose|lifting|broken|heel|binding|lining/.test(kind);
}
