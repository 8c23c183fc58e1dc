import type { FretReading, NewFretReading, NewReading, Reading, VisitStory } from "../api/shapes";

/** The ways a crown is read, in the order of the form; ids are those of data/measures.csv. */
export const fretMeasures = [
  { id: "fret_crown", kind: "departure", name: "Crown against a true line", low: "low is minus" },
  { id: "fret_height", kind: "over_board", name: "Crown over the board", low: "the metal left" },
  { id: "fret_gap", kind: "straightedge", name: "Gap under a straightedge", low: "lying on the two frets named" },
  { id: "fret_rock", kind: "rocker", name: "Rock over three frets", low: "the middle one’s; 0: it does not rock" },
  { id: "fret_springs", kind: "springs", name: "Springs down when pressed", low: "0 or empty: it is tight" },
] as const;

export type FretMeasure = (typeof fretMeasures)[number];
export type Side = "both" | "bass" | "treble";

/** What a bare number means. */
export const bareUnits = [
  { id: "hundredths", label: "hundredths of a mm" },
  { id: "mm", label: "mm" },
  { id: "thousandths", label: "thousandths of an inch" },
] as const;
export type BareUnit = (typeof bareUnits)[number]["id"];

export interface Place {
  readonly measure: FretMeasure;
  readonly fret: number;
  readonly side: Side;
  readonly feet: readonly [number, number] | undefined;
}

/** As the book names a reading at one fret: `fret_crown@7`, `fret_crown@7b`, `fret_gap@7/1-14`. */
export function placeId({ measure, fret, side, feet }: Place): string {
  const end = side === "bass" ? "b" : side === "treble" ? "t" : "";
  return `${measure.id}@${fret}${end}${measure.kind === "straightedge" && feet ? `/${feet[0]}-${feet[1]}` : ""}`;
}

export function placeOf(id: string): Place | undefined {
  const match = /^(fret_[a-z]+)@(\d+)([bt]?)(?:\/(\d+)-(\d+))?$/.exec(id);
  const measure = fretMeasures.find((known) => known.id === match?.[1]);
  if (!match || !measure) return undefined;
  const feet: [number, number] | undefined = match[4] ? [Number(match[4]), Number(match[5])] : undefined;
  return {
    measure,
    fret: Number(match[2]),
    side: match[3] === "b" ? "bass" : match[3] === "t" ? "treble" : "both",
    feet,
  };
}

/** `crown against a true line, fret 7, bass`. */
export function placeWords(id: string): string | undefined {
  const place = placeOf(id);
  if (!place) return undefined;
  const side = place.side === "both" ? "" : `, ${place.side}`;
  const feet = place.feet ? ` on ${place.feet[0]} and ${place.feet[1]}` : "";
  return `${place.measure.name}${feet}, fret ${place.fret}${side}`;
}

/** What was typed, as the program is asked to read it: a bare number of hundredths is a length of its own. */
export function asAsked(typed: string, unit: BareUnit): { text: string; unit: string } {
  const bare = /^\s*([-−–+]?)\s*(\d+(?:[.,]\d+)?)\s*$/.exec(typed);
  if (unit === "hundredths" && bare) {
    const sign = bare[1] === "" || bare[1] === "+" ? "" : "-";
    const hundredths = Number(bare[2]?.replace(",", "."));
    return { text: `${sign}${(hundredths / 100).toFixed(4)} mm`, unit: "mm" };
  }
  return { text: typed.replace(/^\s*[−–]/, "-"), unit: unit === "thousandths" ? "thousandths" : "mm" };
}

export function modelReading(place: Place, mm: number, sd: number): NewFretReading {
  return {
    kind: place.measure.kind,
    fret: place.fret,
    side: place.side,
    value_mm: mm,
    sd_mm: sd,
    ...(place.feet ? { from_fret: place.feet[0], to_fret: place.feet[1] } : {}),
  };
}

function idOf(reading: FretReading): string {
  const measure = fretMeasures.find(({ kind }) => kind === reading.kind) ?? fretMeasures[0];
  const feet: [number, number] | undefined = reading.to_fret > 0 ? [reading.from_fret, reading.to_fret] : undefined;
  return placeId({ measure, fret: reading.fret, side: reading.side, feet });
}

/** Those kept, with what is being typed in their place. */
export function withTyped(kept: readonly FretReading[], typed: ReadonlyMap<string, NewFretReading>): NewFretReading[] {
  return [...kept.filter((reading) => !typed.has(idOf(reading))), ...typed.values()];
}

/** The reading this visit already has of a place, which a new one corrects. */
export function standing(visit: VisitStory | undefined, id: string, state: Reading["state"]): number {
  const kept = visit?.readings.filter((one) => one.measure === id && one.state === state && one.superseded_by === 0);
  return kept?.at(-1)?.id ?? 0;
}

export function toKeep(
  visitId: number,
  id: string,
  typed: string,
  unit: BareUnit,
  mm: number,
  gauge: string,
  state: Reading["state"],
  supersedes: number,
): NewReading {
  const bare = /^\s*[-−–+]?\s*\d+(?:[.,]\d+)?\s*$/.test(typed);
  const spoken = bare ? `${typed.trim()} ${bareUnits.find((known) => known.id === unit)?.label ?? unit}` : typed.trim();
  return { visit_id: visitId, measure: id, typed: spoken, value: mm, gauge, state, supersedes };
}
