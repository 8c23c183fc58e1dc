import type { BenchAnswer, MaterialLot, NewPin, NewShopAir, PromiseResult, ShopSettings } from "./benchShapes";
import { ask, send } from "./client";
import type { Kept } from "./shapes";

/** The plan as the book stands; with a visit, as if its jobs were taken too. */
export const bench = (withVisit?: number, signal?: AbortSignal): Promise<BenchAnswer> =>
  ask("bench", { with_visit: withVisit }, signal);
/** The same after a longer search. */
export const improvedBench = (signal?: AbortSignal): Promise<BenchAnswer> => ask("bench/improved", {}, signal);
export const promisedDays = (withVisit?: number, signal?: AbortSignal): Promise<PromiseResult> =>
  ask("bench/promises", { with_visit: withVisit }, signal);

export interface WorkEnded {
  readonly finished: boolean;
  readonly minutes?: number;
  readonly lot_id: number;
  readonly note: string;
}

export const beginWork = (jobId: number, operation: string, person: string): Promise<Kept> =>
  send("POST", `jobs/${jobId}/work`, { operation, person });
export const endWork = (spell: number, end: WorkEnded): Promise<Kept> => send("POST", `work/${spell}/end`, end);
export const pinWork = (jobId: number, pin: Omit<NewPin, "id" | "job_id">): Promise<Kept> =>
  send("POST", `jobs/${jobId}/pins`, { id: 0, job_id: jobId, ...pin });
export const keepPromise = (visitId: number, readyOn: string, chance: number, saidOn: string): Promise<Kept> =>
  send("POST", `visits/${visitId}/promises`, {
    id: 0,
    visit_id: visitId,
    ready_on: readyOn,
    chance,
    said_on: saidOn,
  });

export interface NewWish {
  readonly due_on?: string;
  readonly waits_until?: string;
  readonly weight: number;
  readonly note: string;
}
export const keepWish = (visitId: number, wish: NewWish): Promise<Kept> =>
  send("POST", `visits/${visitId}/wishes`, { id: 0, visit_id: visitId, ...wish });

export const keepShopAir = (air: Omit<NewShopAir, "id">): Promise<Kept> => send("POST", "shop-air", { id: 0, ...air });

export const lots = (): Promise<MaterialLot[]> => ask<{ lots: MaterialLot[] }>("lots").then((list) => list.lots);
export const keepLot = (lot: MaterialLot): Promise<Kept> =>
  lot.id === 0 ? send("POST", "lots", lot) : send("PUT", `lots/${lot.id}`, lot);

export const shopSettings = (): Promise<ShopSettings> => ask("shop/settings");
export const keepShopSettings = (settings: ShopSettings): Promise<ShopSettings> =>
  send("PUT", "shop/settings", settings);
