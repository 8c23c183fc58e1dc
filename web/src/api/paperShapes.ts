/** The structs of the papers under the names they go by on the pages. */
export type { GivenPaper, InvoiceAnswer, PapersOfVisit, PaperWantedAsk as PaperWanted } from "./types";
