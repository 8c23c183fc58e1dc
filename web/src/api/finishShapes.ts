/** The structs of finishing, cleats and a visit's own photos under the names they go by on the pages. */
export type {
  CleatsAnswer,
  CleatsResult,
  CrackWithCleats,
  FinishAnswer,
  FinishTrial,
  FinishTrialAsk as NewFinishTrial,
  FinishTrialPage,
  FinishTrialStory,
  VisitPhoto,
  VisitPhotoAsk as NewVisitPhoto,
} from "./types";
