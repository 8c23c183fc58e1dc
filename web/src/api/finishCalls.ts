import { ask, type Query, send } from "./client";
import type {
  CleatsAnswer,
  FinishAnswer,
  FinishTrialPage,
  NewFinishTrial,
  NewVisitPhoto,
  VisitPhoto,
} from "./finishShapes";
import type { Kept } from "./shapes";

export const finishOf = (visitId: number, wishes: Query, signal?: AbortSignal): Promise<FinishAnswer> =>
  ask(`visits/${visitId}/finish`, wishes, signal);
export const cleatsOf = (visitId: number): Promise<CleatsAnswer> => ask(`visits/${visitId}/cleats`);

export const finishTrials = (query: Query, signal?: AbortSignal): Promise<FinishTrialPage> =>
  ask("finish-trials", query, signal);
export const keepFinishTrial = (visitId: number, trial: NewFinishTrial): Promise<Kept> =>
  send("POST", `visits/${visitId}/finish-trials`, trial);

export const photosOfVisit = (visitId: number): Promise<VisitPhoto[]> =>
  ask<{ photos: VisitPhoto[] }>(`visits/${visitId}/photos`).then((list) => list.photos);
export const sayOfPhoto = (visitId: number, photo: NewVisitPhoto): Promise<Kept> =>
  send("POST", `visits/${visitId}/photos`, photo);
