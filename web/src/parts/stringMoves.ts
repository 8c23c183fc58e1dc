import type { Query } from "../api/client";

/** How far the repairer has moved things on the string line, in mm; what is absent stands as measured. */
export interface Moves {
  readonly bass: number;
  readonly treble: number;
  /** The rod turned to this relief. */
  readonly relief?: number;
  /** The relief read again: the strings stay where they were measured. */
  readonly reliefRead?: number;
  readonly amplitude?: number;
  /** Crowns raised, by fret. */
  readonly crowns: ReadonlyMap<number, number>;
}

export interface ChosenNote {
  readonly string: number;
  readonly stopped_fret: number;
}

export const asMeasured: Moves = { bass: 0, treble: 0, crowns: new Map() };

/** To the thousandth, so that no move is asked that no file could make. */
function mm(value: number): string {
  return String(Math.round(value * 1000) / 1000);
}

export function isMoved(moves: Moves): boolean {
  const { bass, treble, relief, reliefRead, amplitude, crowns } = moves;
  return (
    Math.abs(bass) > 5e-4 ||
    Math.abs(treble) > 5e-4 ||
    relief !== undefined ||
    reliefRead !== undefined ||
    amplitude !== undefined ||
    crowns.size > 0
  );
}

/** The question that the program answers for these moves. */
export function queryOf(moves: Moves, note: ChosenNote | undefined): Query {
  const crowns = [...moves.crowns].sort(([a], [b]) => a - b).map(([fret, raise]) => `${fret}:${mm(raise)}`);
  return {
    saddle_raise_bass_mm: mm(moves.bass),
    saddle_raise_treble_mm: mm(moves.treble),
    ...(moves.relief === undefined ? {} : { relief_mm: mm(moves.relief) }),
    ...(moves.reliefRead === undefined ? {} : { relief_read_mm: mm(moves.reliefRead) }),
    ...(moves.amplitude === undefined ? {} : { amplitude_bass_mm: mm(moves.amplitude) }),
    ...(crowns.length === 0 ? {} : { crowns: crowns.join(",") }),
    ...(note ?? {}),
  };
}

/** One crown raised or lowered; at nothing it counts as measured again. */
export function withCrown(moves: Moves, fret: number, raise: number): Moves {
  const crowns = new Map(moves.crowns);
  const rounded = Math.round(raise * 1000) / 1000;
  if (rounded === 0) crowns.delete(fret);
  else crowns.set(fret, rounded);
  return { ...moves, crowns };
}

/** The same without one of the moves. */
export function without(moves: Moves, which: "relief" | "reliefRead" | "amplitude"): Moves {
  const { [which]: _, ...rest } = moves;
  return rest;
}
