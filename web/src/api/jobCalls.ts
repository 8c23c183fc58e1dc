import { ask, send } from "./client";
import type {
  Diagnosis,
  GateRecordAsk,
  HandoverAsk,
  Job,
  JobMaterialAsk,
  JobTermsAsk,
  MaterialLot,
  MaterialOffered,
  OffersMade,
  OwnerWordAsk,
  RepairOffered,
  SaidAtVisitAsk,
  ShopSettings,
  VisitEstimate,
  VisitForetold,
  VisitPlan,
} from "./jobShapes";
import type { Kept } from "./shapes";

/** Repairs chosen at a visit: what is asked, offered, said and done of them. */

export const repairs = (): Promise<RepairOffered[]> =>
  ask<{ repairs: RepairOffered[] }>("repairs").then((list) => list.repairs);
export const visitPlan = (visitId: number): Promise<VisitPlan> => ask(`visits/${visitId}/work`);
export const shopSettings = (): Promise<ShopSettings> => ask("shop/settings");

export const keepJob = (visitId: number, job: Job): Promise<Kept> =>
  job.id === 0 ? send("POST", `visits/${visitId}/jobs`, job) : send("PUT", `jobs/${job.id}`, job);
export const answerQuestion = (
  jobId: number,
  said: { readonly decision: string; readonly outcome: string; readonly day: string; readonly who: string },
): Promise<Kept> => send("POST", `jobs/${jobId}/answers`, said);
export const sayAmount = (jobId: number, amount: string, count: number): Promise<Kept> =>
  send("POST", `jobs/${jobId}/amounts`, { amount, count });
/** Puts every line that is new or changed before the owner. */
export const offerAll = (visitId: number): Promise<OffersMade> => send("POST", `visits/${visitId}/offers`, {});
export const estimate = (visitId: number): Promise<VisitEstimate> => ask(`visits/${visitId}/estimate`);
export const keepMaterial = (jobId: number, material: JobMaterialAsk): Promise<Kept> =>
  send("POST", `jobs/${jobId}/materials`, material);
export const keepTerms = (jobId: number, terms: JobTermsAsk): Promise<Kept> =>
  send("POST", `jobs/${jobId}/terms`, terms);
export const ownersWord = (jobId: number, word: OwnerWordAsk): Promise<Kept> =>
  send("POST", `jobs/${jobId}/words`, word);
export const workOn = (visitId: number, record: GateRecordAsk): Promise<Kept> =>
  send("POST", `visits/${visitId}/gate`, record);

export const beginWork = (
  jobId: number,
  operation: string,
  person: string,
  lotId: number,
  pastItsDay = false,
): Promise<Kept> => send("POST", `jobs/${jobId}/work`, { operation, person, lot_id: lotId, past_its_day: pastItsDay });
export const endWork = (
  spellId: number,
  end: {
    readonly finished: boolean;
    readonly minutes?: number;
    readonly lot_id?: number;
    readonly past_its_day?: boolean;
    readonly note?: string;
  },
): Promise<Kept> => send("POST", `work/${spellId}/end`, end);
export const correctWork = (
  spellId: number,
  correction: { readonly minutes: number; readonly finished: boolean; readonly day: string; readonly who: string },
): Promise<Kept> => send("POST", `work/${spellId}/corrections`, correction);
export const handOver = (visitId: number, handover: HandoverAsk): Promise<Kept> =>
  send("POST", `visits/${visitId}/handover`, handover);

export const lots = (): Promise<MaterialLot[]> => ask<{ lots: MaterialLot[] }>("lots").then((list) => list.lots);
export const materials = (): Promise<MaterialOffered[]> =>
  ask<{ materials: MaterialOffered[] }>("materials").then((list) => list.materials);
export const keepLot = (lot: MaterialLot): Promise<Kept> =>
  lot.id === 0 ? send("POST", "lots", lot) : send("PUT", `lots/${lot.id}`, lot);

export const diagnosis = (visitId: number): Promise<Diagnosis> => ask(`visits/${visitId}/diagnosis`);
export const sayOfVisit = (visitId: number, said: SaidAtVisitAsk): Promise<Kept> =>
  send("POST", `visits/${visitId}/sayings`, said);
export const foretold = (visitId: number): Promise<VisitForetold> => ask(`visits/${visitId}/foretold`);
