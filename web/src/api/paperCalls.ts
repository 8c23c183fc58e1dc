import { ask, send } from "./client";
import type { GivenPaper, PapersOfVisit, PaperWanted } from "./paperShapes";

/** The papers of a visit. The papers themselves are opened by their address, not asked for from here. */

export const papersOf = (visitId: number): Promise<PapersOfVisit> => ask(`visits/${visitId}/papers`);
/** It gets its number and is kept as it is now. */
export const givePaper = (visitId: number, wanted: PaperWanted): Promise<GivenPaper> =>
  send("POST", `visits/${visitId}/papers`, wanted);
