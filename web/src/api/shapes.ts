/** The program's structs under the names they go by on the pages. `...Ask` may leave out what has a default. */
export type {
  ActionBand,
  ActionLimits,
  AirDay,
  AirOfHome,
  ChangeShare,
  ClearanceRequest,
  ClearanceResult,
  DaysOutside,
  Estimate,
  FormTables as Tables,
  Gauge,
  Home,
  HomeAir,
  Instrument,
  InstrumentLine,
  InstrumentPage,
  InstrumentStory,
  Intervention,
  InterventionAsk,
  Kept,
  LengthRead,
  LimitCheck,
  LogKeptReport as LogAdded,
  Measure,
  NoteClearance,
  Owner,
  Reading,
  ReadingAsk as NewReading,
  ReadingsKept,
  ResponseResult,
  SaddleAnswer,
  SaddleDecision,
  SaddleOption,
  SaddleResult,
  SaddleToMake,
  SaddleWishesAsk as SaddleAsked,
  SeasonAnswer as Season,
  ShopCard as Shop,
  StringLineAnswer,
  Visit,
  VisitStory,
  YearResult,
} from "./types";

export interface NoteContact {
  string: number;
  stopped_fret: number;
  verdict: "clean" | "on_hard_playing" | "on_normal_playing";
  struck_fret: number;
  lies_on_fret: boolean;
  gain_db_normal: number;
  gain_db_hard: number;
}
export interface ContactMapResult {
  notes: NoteContact[];
}
export type ContactMapAsked = object;
export type NoteSoundAsked = object;
