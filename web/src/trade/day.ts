/** Calendar days. A day is held as its ISO text, and as whole days since 1970 where it is drawn. */
const monthNames = ["Jan", "Feb", "Mar", "Apr", "May", "Jun", "Jul", "Aug", "Sep", "Oct", "Nov", "Dec"] as const;
const msPerDay = 86_400_000;

export const months: readonly string[] = monthNames;

export function dayNumber(iso: string): number {
  return Math.round(Date.parse(`${iso}T00:00:00Z`) / msPerDay);
}

export function isoDay(number: number): string {
  return new Date(number * msPerDay).toISOString().slice(0, 10);
}

/** `14 Feb 2026`, the same in every locale. */
export function spokenDay(iso: string): string {
  const [year = "", month = "1", day = "1"] = iso.split("-");
  return `${Number(day)} ${monthNames[Number(month) - 1]} ${year}`;
}

/** `14 Feb`, where the year is plain from its surroundings. */
export function shortDay(iso: string): string {
  return spokenDay(iso).split(" ").slice(0, 2).join(" ");
}

/** First days of the months from `first` to `last`, as day numbers. */
export function monthStarts(first: number, last: number): number[] {
  const starts: number[] = [];
  const from = new Date(first * msPerDay);
  for (let month = from.getUTCMonth(), year = from.getUTCFullYear(); ; month += 1) {
    const day = Math.round(Date.UTC(year, month, 1) / msPerDay);
    if (day > last) return starts;
    if (day >= first) starts.push(day);
  }
}
