import { ask, type Query, send, sendFile, sendForFile, sendText } from "./client";
import type {
  AirOfHome,
  ContactMapAsked,
  ContactMapResult,
  CrackAnswer,
  FindingForms,
  FretAnswer,
  FretsAsked,
  Home,
  Instrument,
  InstrumentDrawing,
  InstrumentPage,
  InstrumentStory,
  Intervention,
  IntonationAnswer,
  Kept,
  KeptPhoto,
  LengthRead,
  LogAdded,
  NeckAnswer,
  NewFinding,
  NewFindingChange,
  NewReading,
  NoteSoundAsked,
  Owner,
  ReadingsKept,
  SaddleAnswer,
  SaddleAsked,
  SaddleDecision,
  Season,
  Shop,
  StringLineAnswer,
  Survey,
  Tables,
  TopAnswer,
  TopAsked,
  Visit,
  VisitStory,
} from "./shapes";

/** The day every question is asked for; undefined is the shop's own today. Set from the page's `?today=`. */
let asIf: string | undefined;

export function askAsIf(today: string | undefined): void {
  asIf = today;
}

/** The shop, with the day asked for in place of its own. */
export const shop = async (): Promise<Shop> => {
  const known = await ask<Shop>("shop");
  return asIf === undefined ? known : { ...known, today: asIf };
};
export const tables = (): Promise<Tables> => ask("tables");

export const instruments = (query: Query, signal?: AbortSignal): Promise<InstrumentPage> =>
  ask("instruments", query, signal);
export const instrument = (id: number): Promise<InstrumentStory> => ask(`instruments/${id}`);
export const keepInstrument = (kept: Instrument): Promise<Kept> => keep("instruments", kept);

export const owners = (): Promise<Owner[]> => ask<{ owners: Owner[] }>("owners").then((list) => list.owners);
export const keepOwner = (kept: Owner): Promise<Kept> => keep("owners", kept);

export const homes = (): Promise<Home[]> => ask<{ homes: Home[] }>("homes").then((list) => list.homes);
export const keepHome = (kept: Home): Promise<Kept> => keep("homes", kept);
export const homeAir = (id: number, first: string, count: number): Promise<AirOfHome> =>
  ask(`homes/${id}/air`, { first, count });
export const addLog = (id: number, csv: string, query: Query): Promise<LogAdded> =>
  sendText(`homes/${id}/log`, query, csv);

export const visit = (id: number): Promise<VisitStory> => ask(`visits/${id}`);
export const keepVisit = (kept: Visit): Promise<Kept> => keep("visits", kept);
export const keepReadings = (visitId: number, readings: readonly NewReading[]): Promise<ReadingsKept> =>
  send("POST", `visits/${visitId}/readings`, { readings });
export const keepIntervention = (visitId: number, kept: Intervention): Promise<Kept> =>
  send("POST", `visits/${visitId}/interventions`, kept);
export const keepDecision = (visitId: number, kept: SaddleDecision): Promise<Kept> =>
  send("POST", `visits/${visitId}/decisions`, kept);

export const findingForms = (): Promise<FindingForms> => ask("finding-kinds");
export const instrumentDrawing = (id: number): Promise<InstrumentDrawing> => ask(`instruments/${id}/drawing`);
export const survey = (visitId: number): Promise<Survey> => ask(`visits/${visitId}/survey`);
export const keepFinding = (visitId: number, kept: NewFinding): Promise<Kept> =>
  send("POST", `visits/${visitId}/findings`, kept);
export const keepFindingChange = (visitId: number, kept: NewFindingChange): Promise<Kept> =>
  send("POST", `visits/${visitId}/finding-changes`, kept);
export const keepPhoto = (photo: Blob): Promise<KeptPhoto> => sendFile("photos", photo);

export const readLength = (text: string, unit: string, signal?: AbortSignal): Promise<LengthRead> =>
  ask("read-length", { text, unit }, signal);

export const season = (id: number, first?: string, count?: number): Promise<Season> =>
  ask(`instruments/${id}/season`, { today: asIf, first, count });
export const saddle = (id: number, asked: SaddleAsked = {}, signal?: AbortSignal): Promise<SaddleAnswer> =>
  send("POST", `instruments/${id}/saddle`, asIf === undefined ? asked : { ...asked, today: asIf }, signal);
export const stringLine = (id: number, query: Query, signal?: AbortSignal): Promise<StringLineAnswer> =>
  ask(`instruments/${id}/string-line`, { today: asIf, ...query }, signal);

export const contactMap = (asked: ContactMapAsked, signal?: AbortSignal): Promise<ContactMapResult> =>
  send("POST", "compute/contact-map", asked, signal);
export const noteSound = (asked: NoteSoundAsked, signal?: AbortSignal): Promise<ArrayBuffer> =>
  sendForFile("note-sound", asked, signal);
export const fretDress = (id: number, asked: FretsAsked, signal?: AbortSignal): Promise<FretAnswer> =>
  send("POST", `instruments/${id}/fret-dress`, asIf === undefined ? asked : { ...asked, today: asIf }, signal);
export const intonation = (id: number, pressDepthMm: number, signal?: AbortSignal): Promise<IntonationAnswer> =>
  ask(`instruments/${id}/intonation`, { today: asIf, press_depth_mm: pressDepthMm || undefined }, signal);

export const neckAngle = (id: number, wishes: Query, signal?: AbortSignal): Promise<NeckAnswer> =>
  ask(`instruments/${id}/neck-angle`, { today: asIf, ...wishes }, signal);

export const topOf = (id: number, asked: TopAsked, signal?: AbortSignal): Promise<TopAnswer> =>
  send("POST", `instruments/${id}/top`, asIf === undefined ? asked : { ...asked, today: asIf }, signal);

export const crackRiskOf = (id: number, years: number | undefined, signal?: AbortSignal): Promise<CrackAnswer> =>
  ask(`instruments/${id}/crack-risk`, { today: asIf, years_lived: years }, signal);

/** A record not kept yet has number 0. */
function keep<Record extends { readonly id: number }>(path: string, kept: Record): Promise<Kept> {
  return kept.id === 0 ? send("POST", path, kept) : send("PUT", `${path}/${kept.id}`, kept);
}
