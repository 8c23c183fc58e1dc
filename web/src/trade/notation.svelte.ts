import { inTrade, type Notation } from "./length";

/** The notation this reader sees first. Kept by the browser; every length still shows all three where there is room. */
const place = "tailblock.notation";

export const notations: readonly { readonly id: Notation; readonly label: string; readonly typed: string }[] = [
  { id: "mm", label: "mm", typed: "mm" },
  { id: "sixtyFourths", label: "64ths", typed: "64ths" },
  { id: "thousandths", label: "thou", typed: "thousandths" },
];

function remembered(): Notation {
  const kept = window.localStorage.getItem(place);
  return notations.find((notation) => notation.id === kept)?.id ?? "mm";
}

let chosen = $state<Notation>(remembered());

export function notation(): Notation {
  return chosen;
}

export function chooseNotation(next: Notation): void {
  chosen = next;
  window.localStorage.setItem(place, next);
}

/** One length in the notation seen first. */
export function shown(mm: number): string {
  return inTrade(mm)[chosen];
}

/** A length taken from a drawing, which no finger points at to less than a millimetre. */
export function roughly(mm: number): string {
  return chosen === "mm" ? `${Math.round(mm)} mm` : shown(mm);
}
