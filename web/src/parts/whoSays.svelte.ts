/** Whose name stands under what is recorded at this bench. Kept on this device between visits. */
const place = "tailblock.who";

let name = $state(window.localStorage.getItem(place) ?? "");

export function who(): string {
  return name;
}

export function sayWho(next: string): void {
  name = next;
  window.localStorage.setItem(place, next);
}
