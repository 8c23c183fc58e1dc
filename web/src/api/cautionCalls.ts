import { ask, send } from "./client";
import type { CautionForms, CautionsResult } from "./types";

/** The same for every step: asked once. */
let forms: Promise<CautionForms> | undefined;

export function cautionForms(): Promise<CautionForms> {
  forms ??= ask<CautionForms>("caution-forms");
  return forms;
}

export const noiseOf = (what: string, levelDb: number, minutes: number): Promise<CautionsResult> =>
  send("POST", "compute/cautions", { noise: [{ what, level_db: levelDb, minutes }] });

export const papersFor = (materials: readonly string[]): Promise<CautionsResult> =>
  send("POST", "compute/cautions", { materials });
