import type { components } from "./types";

type Schemas = components["schemas"];

export type Shop = Schemas["Shop"];
export type Owner = Schemas["Owner"];
export type Home = Schemas["Home"];
export type HomeAir = Schemas["HomeAir"];
export type Instrument = Schemas["Instrument"];
export type InstrumentLine = Schemas["InstrumentLine"];
export type InstrumentPage = Schemas["InstrumentPage"];
export type InstrumentStory = Schemas["InstrumentStory"];
export type Visit = Schemas["Visit"];
export type VisitStory = Schemas["VisitStory"];
export type Reading = Schemas["Reading"];
export type Intervention = Schemas["Intervention"];
export type SaddleDecision = Schemas["SaddleDecision"];
export type Estimate = Schemas["Estimate"];
export type ChangeShare = Schemas["ChangeShare"];
export type ResponseResult = Schemas["ResponseResult"];
export type YearResult = Schemas["YearResult"];
export type ActionBand = Schemas["ActionBand"];
export type ActionLimits = Schemas["ActionLimits"];
export type DaysOutside = Schemas["DaysOutside"];
export type SaddleOption = Schemas["SaddleOption"];
export type SaddleResult = Schemas["SaddleResult"];
export type SaddleToMake = Schemas["SaddleToMake"];
export type LimitCheck = Schemas["LimitCheck"];

// Not in the stub above yet.
export interface Kept {
  id: number;
}
export interface Measure {
  id: string;
  name: string;
  unit: string;
  where: string;
  how: string;
  usual_low?: number;
  usual_high?: number;
  hard_low: number;
  hard_high: number;
  gauge: string;
  source: string;
  note: string;
}
export interface Gauge {
  id: string;
  name: string;
  sd: number;
  unit: string;
}
export interface Named {
  id: string;
  name: string;
  note?: string;
}
export interface Tables {
  measures: Measure[];
  gauges: Gauge[];
  interventions: Named[];
  string_sets: Named[];
  tunings: Named[];
  attacks: Named[];
  species: Named[];
  body_designs: Named[];
}
export interface HomeAirDays {
  days: { date: string; temperature_c: number; relative_humidity: number; logged: boolean }[];
  moisture_percent: number[];
}
export interface LogAdded {
  added: number;
  already_there: number;
  report: { refused: { line: number; text: string; why: string }[] };
}
export interface LengthRead {
  mm: number;
  sixty_fourths: string;
  thousandths: string;
  mm_text: string;
}
export type NewReading = Partial<Reading> & { measure: string; typed: string; gauge: string; state: Reading["state"] };
export interface ResponseRequest {
  readings: { date: string; order: number; kind: string; value_mm: number; gauge_sd_mm: number }[];
  changes: {
    date: string;
    order: number;
    what: string;
    action12_bass_change_mm?: number;
    action12_treble_change_mm?: number;
    change_sd_mm: number;
  }[];
  today: string;
}
export interface DecidingNote {
  string: number;
  stopped_fret: number;
  fret: number;
  away: boolean;
}
export interface OuterHeights {
  action12_bass_mm: number;
  action12_treble_mm: number;
  saddle_over_frets_bass_mm: number;
  saddle_over_frets_treble_mm: number;
}
export interface LeastClean {
  outer: OuterHeights;
  bass: DecidingNote;
  treble: DecidingNote;
}
export interface Season {
  today: string;
  request: ResponseRequest;
  response: ResponseResult;
  year: YearResult;
  limits: ActionLimits;
  least_clean: LeastClean;
  assumed: string[];
}
export interface SaddleAsked {
  limits?: Partial<ActionLimits>;
  wanted_bass_mm?: number;
  wanted_treble_mm?: number;
  bridge?: Record<string, number | string>;
  today?: string;
  first?: string;
}
export interface SaddleAnswer {
  request: {
    limits: ActionLimits;
    wanted_bass_mm: number;
    wanted_treble_mm: number;
    bridge: { slot: string; exposure_bass_mm: number; exposure_treble_mm: number };
  };
  result: SaddleResult;
  assumed: string[];
}
export interface FretPoint {
  fret: number;
  from_nut_mm: number;
  crown_over_plane_mm: number;
}
export interface StringPath {
  string: number;
  nut_over_frets_mm: number;
  saddle_over_frets_mm: number;
  saddle_from_nut_mm: number;
  over_fret_mm: number[];
  over_next_fret_mm: number[];
  exposure_mm?: number;
}
export interface StringLineResult {
  frets: FretPoint[];
  strings: StringPath[];
  outer: OuterHeights;
  saddle_per_action12_bass: number;
  saddle_per_action12_treble: number;
  action12_per_relief_at_held_ends: number;
  action12_per_relief_at_held_joint: number;
  sag_when_level_mm: number;
  cautions: string[];
}
export interface NoteClearance {
  string: number;
  stopped_fret: number;
  limiting_fret: number;
  away: boolean;
  ratio: number;
  margin_mm: number;
  verdict: "clear" | "doubtful" | "touches";
}
export interface ClearanceResult {
  notes: NoteClearance[];
  clear: number;
  doubtful: number;
  touching: number;
  worst_note: number;
  verdict: string;
}
export interface StringLineAnswer {
  string_line: StringLineResult;
  clearance: ClearanceResult;
  relief_mm: number;
  assumed: string[];
}
