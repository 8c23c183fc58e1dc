// Written by `npm run types` from the program's own API document; not by hand.

export interface Api {
  ActionBand: ActionBand;
  ActionLimits: ActionLimits;
  ActionLimitsAsk: ActionLimitsAsk;
  AirDay: AirDay;
  AirOfHome: AirOfHome;
  AirRequestAsk: AirRequestAsk;
  AirResult: AirResult;
  AmountTaken: AmountTaken;
  AnsweredBefore: AnsweredBefore;
  Attack: Attack;
  AttackAsk: AttackAsk;
  AttackMark: AttackMark;
  BeginTapAsk: BeginTapAsk;
  BenchAnswer: BenchAnswer;
  BenchCost: BenchCost;
  BenchInstrumentAsk: BenchInstrumentAsk;
  BenchPerson: BenchPerson;
  BenchPersonAsk: BenchPersonAsk;
  BenchRequestAsk: BenchRequestAsk;
  BenchResult: BenchResult;
  BenchWeights: BenchWeights;
  BenchWeightsAsk: BenchWeightsAsk;
  BenchWish: BenchWish;
  BenchWishAsk: BenchWishAsk;
  BenchWork: BenchWork;
  Brace: Brace;
  BraceAsk: BraceAsk;
  BraceHeight: BraceHeight;
  BraceHeightAsk: BraceHeightAsk;
  BridgeDesign: BridgeDesign;
  BridgeDesignAsk: BridgeDesignAsk;
  BridgeMeasures: BridgeMeasures;
  BridgeMeasuresAsk: BridgeMeasuresAsk;
  CauseShown: CauseShown;
  CautionForms: CautionForms;
  CautionsRequestAsk: CautionsRequestAsk;
  CautionsResult: CautionsResult;
  ChanceAt: ChanceAt;
  ChangeShare: ChangeShare;
  ClearanceRequest: ClearanceRequest;
  ClearanceRequestAsk: ClearanceRequestAsk;
  ClearanceResult: ClearanceResult;
  Cleat: Cleat;
  CleatAsk: CleatAsk;
  CleatShown: CleatShown;
  CleatsAnswer: CleatsAnswer;
  CleatsRequest: CleatsRequest;
  CleatsRequestAsk: CleatsRequestAsk;
  CleatsResult: CleatsResult;
  ClockChangeAsk: ClockChangeAsk;
  ContactMapRequestAsk: ContactMapRequestAsk;
  ContactMapResult: ContactMapResult;
  ContactRequestAsk: ContactRequestAsk;
  ContactResult: ContactResult;
  Crack: Crack;
  CrackAnswer: CrackAnswer;
  CrackAsk: CrackAsk;
  CrackRiskRequestAsk: CrackRiskRequestAsk;
  CrackRiskResult: CrackRiskResult;
  CrackThatIsThere: CrackThatIsThere;
  CrackWithCleats: CrackWithCleats;
  CrestOnTop: CrestOnTop;
  CrossPiece: CrossPiece;
  CrossPieceAsk: CrossPieceAsk;
  DatedChange: DatedChange;
  DayOff: DayOff;
  DayOffAsk: DayOffAsk;
  DaysOutside: DaysOutside;
  DecayTimesAsk: DecayTimesAsk;
  DecidingNote: DecidingNote;
  DecisionShown: DecisionShown;
  DiagnoseRequest: DiagnoseRequest;
  DiagnoseRequestAsk: DiagnoseRequestAsk;
  DiagnoseResult: DiagnoseResult;
  DiagnosisAnswer: DiagnosisAnswer;
  DiagnosisShown: DiagnosisShown;
  DrawingPoint: DrawingPoint;
  DrawingPointAsk: DrawingPointAsk;
  DrawnLine: DrawnLine;
  DrawnPlace: DrawnPlace;
  EndTapAsk: EndTapAsk;
  Equilibrium: Equilibrium;
  Estimate: Estimate;
  EstimateAnswer: EstimateAnswer;
  EstimateAsk: EstimateAsk;
  EstimateLine: EstimateLine;
  EstimateLineAsk: EstimateLineAsk;
  EstimateMaterial: EstimateMaterial;
  EstimateMaterialAsk: EstimateMaterialAsk;
  EstimateRequest: EstimateRequest;
  EstimateRequestAsk: EstimateRequestAsk;
  EstimateResult: EstimateResult;
  EstimateTotal: EstimateTotal;
  EstimateWork: EstimateWork;
  EstimateWorkAsk: EstimateWorkAsk;
  EvidenceShown: EvidenceShown;
  ExposureLimit: ExposureLimit;
  Finding: Finding;
  FindingAsk: FindingAsk;
  FindingChange: FindingChange;
  FindingChangeAsk: FindingChangeAsk;
  FindingExtent: FindingExtent;
  FindingExtentAsk: FindingExtentAsk;
  FindingForms: FindingForms;
  FindingKind: FindingKind;
  FindingPhoto: FindingPhoto;
  FindingPhotoAsk: FindingPhotoAsk;
  FindingSeen: FindingSeen;
  FindingSeenAsk: FindingSeenAsk;
  FindingStory: FindingStory;
  FinishAnswer: FinishAnswer;
  FinishCalendarLine: FinishCalendarLine;
  FinishDayRequest: FinishDayRequest;
  FinishDayRequestAsk: FinishDayRequestAsk;
  FinishDayResult: FinishDayResult;
  FinishOffered: FinishOffered;
  FinishTrial: FinishTrial;
  FinishTrialAsk: FinishTrialAsk;
  FinishTrialPage: FinishTrialPage;
  FinishTrialStory: FinishTrialStory;
  FinishedWorkAsk: FinishedWorkAsk;
  FirstGuess: FirstGuess;
  FlaggedReading: FlaggedReading;
  FloorAtRelief: FloorAtRelief;
  FloorAtReliefAsk: FloorAtReliefAsk;
  FollowAnswer: FollowAnswer;
  ForcingNote: ForcingNote;
  ForetoldHeight: ForetoldHeight;
  FormTables: FormTables;
  FretAnswer: FretAnswer;
  FretDressRequestAsk: FretDressRequestAsk;
  FretDressResult: FretDressResult;
  FretFigure: FretFigure;
  FretPoint: FretPoint;
  FretReading: FretReading;
  FretReadingAsk: FretReadingAsk;
  FretToDress: FretToDress;
  FretWishesAsk: FretWishesAsk;
  GateOverride: GateOverride;
  GateOverrideAsk: GateOverrideAsk;
  GateRecord: GateRecord;
  GateRecordAsk: GateRecordAsk;
  Gauge: Gauge;
  GivenAmount: GivenAmount;
  GivenAmountAsk: GivenAmountAsk;
  GivenAnswer: GivenAnswer;
  GivenAnswerAsk: GivenAnswerAsk;
  GivenPaper: GivenPaper;
  GivenReading: GivenReading;
  GivenReadingAsk: GivenReadingAsk;
  GluedStretch: GluedStretch;
  GluedStretchAsk: GluedStretchAsk;
  GreatestAcross: GreatestAcross;
  GreatestGapAsk: GreatestGapAsk;
  GuessPart: GuessPart;
  GuitarString: GuitarString;
  GuitarStringAsk: GuitarStringAsk;
  Handover: Handover;
  HandoverAsk: HandoverAsk;
  HazardShown: HazardShown;
  HeelDepth: HeelDepth;
  HeightReading: HeightReading;
  HeightReadingAsk: HeightReadingAsk;
  HeldByAir: HeldByAir;
  HeldStationAsk: HeldStationAsk;
  HighCrown: HighCrown;
  HoldingStrip: HoldingStrip;
  HoldingStripAsk: HoldingStripAsk;
  Home: Home;
  HomeAir: HomeAir;
  HomeAirAsk: HomeAirAsk;
  HomeAirRequestAsk: HomeAirRequestAsk;
  HomeAirResult: HomeAirResult;
  HomeAsk: HomeAsk;
  HomeList: HomeList;
  HumidityGate: HumidityGate;
  HygrometerCorrection: HygrometerCorrection;
  HygrometerRequestAsk: HygrometerRequestAsk;
  HygrometerResult: HygrometerResult;
  Instrument: Instrument;
  InstrumentAsk: InstrumentAsk;
  InstrumentDesign: InstrumentDesign;
  InstrumentDesignAsk: InstrumentDesignAsk;
  InstrumentDrawing: InstrumentDrawing;
  InstrumentLine: InstrumentLine;
  InstrumentPage: InstrumentPage;
  InstrumentStory: InstrumentStory;
  Intervention: Intervention;
  InterventionAsk: InterventionAsk;
  InterventionKind: InterventionKind;
  IntonationAnswer: IntonationAnswer;
  IntonationRequest: IntonationRequest;
  IntonationRequestAsk: IntonationRequestAsk;
  IntonationResult: IntonationResult;
  InvoiceAnswer: InvoiceAnswer;
  InvoicedJob: InvoicedJob;
  InvoicedOffer: InvoicedOffer;
  InvoicedVisit: InvoicedVisit;
  Job: Job;
  JobAmount: JobAmount;
  JobAmountAsk: JobAmountAsk;
  JobAnswer: JobAnswer;
  JobAnswerAsk: JobAnswerAsk;
  JobAsk: JobAsk;
  JobMaterial: JobMaterial;
  JobMaterialAsk: JobMaterialAsk;
  JobOffer: JobOffer;
  JobOfferAsk: JobOfferAsk;
  JobPlan: JobPlan;
  JobStep: JobStep;
  JobStory: JobStory;
  JobTerms: JobTerms;
  JobTermsAsk: JobTermsAsk;
  Kept: Kept;
  KeptPhoto: KeptPhoto;
  KindredResponse: KindredResponse;
  KindredResponseAsk: KindredResponseAsk;
  LearntWork: LearntWork;
  LearntWorkAsk: LearntWorkAsk;
  LeastCleanAction: LeastCleanAction;
  LeastCure: LeastCure;
  LeastString: LeastString;
  LengthRead: LengthRead;
  LimitCheck: LimitCheck;
  LineOfJob: LineOfJob;
  LogKeptReport: LogKeptReport;
  LoggedDay: LoggedDay;
  LoggedDayAsk: LoggedDayAsk;
  LoggerGap: LoggerGap;
  LoggerReport: LoggerReport;
  LooseBraceAsk: LooseBraceAsk;
  LotList: LotList;
  MaterialList: MaterialList;
  MaterialLot: MaterialLot;
  MaterialLotAsk: MaterialLotAsk;
  MaterialOffered: MaterialOffered;
  MaterialToAskAbout: MaterialToAskAbout;
  Measure: Measure;
  ModelLine: ModelLine;
  ModelList: ModelList;
  MoistureChangeAsk: MoistureChangeAsk;
  MoistureDays: MoistureDays;
  MoistureRequestAsk: MoistureRequestAsk;
  MoistureResult: MoistureResult;
  Moment: Moment;
  MomentAsk: MomentAsk;
  MonthOfAir: MonthOfAir;
  NamedChoice: NamedChoice;
  NeckAndBackAsk: NeckAndBackAsk;
  NeckAngleRequest: NeckAngleRequest;
  NeckAngleRequestAsk: NeckAngleRequestAsk;
  NeckAngleResult: NeckAngleResult;
  NeckAnswer: NeckAnswer;
  NeckLine: NeckLine;
  NeckLineAsk: NeckLineAsk;
  NeckSide: NeckSide;
  NeckSideAfter: NeckSideAfter;
  NeckSideAsk: NeckSideAsk;
  NeckStep: NeckStep;
  NextMeasurement: NextMeasurement;
  NoiseAtWorkAsk: NoiseAtWorkAsk;
  NoiseShown: NoiseShown;
  NotPlanned: NotPlanned;
  NoteAskedAsk: NoteAskedAsk;
  NoteClearance: NoteClearance;
  NoteContact: NoteContact;
  NoteSoundRequestAsk: NoteSoundRequestAsk;
  NoteSwing: NoteSwing;
  OctaveError: OctaveError;
  OctaveErrorAsk: OctaveErrorAsk;
  Offered: Offered;
  OffersMade: OffersMade;
  OnTheBench: OnTheBench;
  OperationAsk: OperationAsk;
  OrderEntry: OrderEntry;
  OrderEntryAsk: OrderEntryAsk;
  OutcomeOffered: OutcomeOffered;
  OuterHeights: OuterHeights;
  OutlinePoint: OutlinePoint;
  OutlinePointAsk: OutlinePointAsk;
  Owner: Owner;
  OwnerAsk: OwnerAsk;
  OwnerList: OwnerList;
  OwnerWord: OwnerWord;
  OwnerWordAsk: OwnerWordAsk;
  OwnerYes: OwnerYes;
  OwnerYesAsk: OwnerYesAsk;
  PaperOffered: PaperOffered;
  PaperWantedAsk: PaperWantedAsk;
  PapersOfVisit: PapersOfVisit;
  PapersShown: PapersShown;
  PartEnergy: PartEnergy;
  Pin: Pin;
  PinAsk: PinAsk;
  PinLetGo: PinLetGo;
  PlannedInstrument: PlannedInstrument;
  PlannedOperation: PlannedOperation;
  PlateAsk: PlateAsk;
  PlateFields: PlateFields;
  PlateRequestAsk: PlateRequestAsk;
  PlateResult: PlateResult;
  PlateThickness: PlateThickness;
  PlateThicknessAsk: PlateThicknessAsk;
  PricedLine: PricedLine;
  ProcedureRequest: ProcedureRequest;
  ProcedureRequestAsk: ProcedureRequestAsk;
  ProcedureResult: ProcedureResult;
  PromiseRecord: PromiseRecord;
  PromiseRecordAsk: PromiseRecordAsk;
  PromiseRequestAsk: PromiseRequestAsk;
  PromiseResult: PromiseResult;
  PromisedDay: PromisedDay;
  QuestionOffered: QuestionOffered;
  Reading: Reading;
  ReadingAsk: ReadingAsk;
  ReadingsKept: ReadingsKept;
  ReadingsToKeepAsk: ReadingsToKeepAsk;
  RefusedLine: RefusedLine;
  ReliefInstead: ReliefInstead;
  RepairList: RepairList;
  RepairOffered: RepairOffered;
  ResponseRequest: ResponseRequest;
  ResponseRequestAsk: ResponseRequestAsk;
  ResponseResult: ResponseResult;
  RimStiffness: RimStiffness;
  RimStiffnessAsk: RimStiffnessAsk;
  RodFigure: RodFigure;
  RodFigureAsk: RodFigureAsk;
  SaddleAnswer: SaddleAnswer;
  SaddleDecision: SaddleDecision;
  SaddleDecisionAsk: SaddleDecisionAsk;
  SaddleOption: SaddleOption;
  SaddleRequest: SaddleRequest;
  SaddleRequestAsk: SaddleRequestAsk;
  SaddleResult: SaddleResult;
  SaddleToMake: SaddleToMake;
  SaddleTop: SaddleTop;
  SaddleTopAsk: SaddleTopAsk;
  SaddleWishesAsk: SaddleWishesAsk;
  SaidAtVisit: SaidAtVisit;
  SaidAtVisitAsk: SaidAtVisitAsk;
  SaidFact: SaidFact;
  SaidFactAsk: SaidFactAsk;
  SaltReadingAsk: SaltReadingAsk;
  SeasonAnswer: SeasonAnswer;
  SetupChange: SetupChange;
  SetupChangeAsk: SetupChangeAsk;
  ShopAir: ShopAir;
  ShopAirAsk: ShopAirAsk;
  ShopCard: ShopCard;
  ShopHours: ShopHours;
  ShopHoursAsk: ShopHoursAsk;
  ShopSettings: ShopSettings;
  ShopSettingsAsk: ShopSettingsAsk;
  SlotFit: SlotFit;
  Soundhole: Soundhole;
  SoundholeAsk: SoundholeAsk;
  Station: Station;
  StationAsk: StationAsk;
  StepShown: StepShown;
  StillAirAsk: StillAirAsk;
  StringAction: StringAction;
  StringActionAsk: StringActionAsk;
  StringIntonation: StringIntonation;
  StringLineAnswer: StringLineAnswer;
  StringLineRequestAsk: StringLineRequestAsk;
  StringLineResult: StringLineResult;
  StringLoadAsk: StringLoadAsk;
  StringPath: StringPath;
  StringTension: StringTension;
  StruckFret: StruckFret;
  Survey: Survey;
  SurveyedTop: SurveyedTop;
  SwingOverFret: SwingOverFret;
  TakenFinding: TakenFinding;
  TaxAtRate: TaxAtRate;
  TensionRequestAsk: TensionRequestAsk;
  TensionResult: TensionResult;
  ThicknessBudget: ThicknessBudget;
  ThicknessReadingAsk: ThicknessReadingAsk;
  ThinDay: ThinDay;
  TonguePlace: TonguePlace;
  TopAir: TopAir;
  TopAnswer: TopAnswer;
  TopDamageAsk: TopDamageAsk;
  TopDesign: TopDesign;
  TopDesignAsk: TopDesignAsk;
  TopShape: TopShape;
  TopState: TopState;
  TopWishesAsk: TopWishesAsk;
  UncleanNote: UncleanNote;
  UnderStrings: UnderStrings;
  UnfitAirAsk: UnfitAirAsk;
  ViewDrawing: ViewDrawing;
  Visit: Visit;
  VisitAsk: VisitAsk;
  VisitPart: VisitPart;
  VisitPhoto: VisitPhoto;
  VisitPhotoAsk: VisitPhotoAsk;
  VisitPhotoList: VisitPhotoList;
  VisitPlan: VisitPlan;
  VisitStory: VisitStory;
  VisitWork: VisitWork;
  WhichTop: WhichTop;
  WhichTopAsk: WhichTopAsk;
  WithMoisture: WithMoisture;
  WorkCorrection: WorkCorrection;
  WorkCorrectionAsk: WorkCorrectionAsk;
  WorkPiece: WorkPiece;
  WorkSpell: WorkSpell;
  YearRequestAsk: YearRequestAsk;
  YearResult: YearResult;
}
export interface ActionBand {
  /**
   * 5 % lie below
   *
   * @minItems 0
   * @maxItems 1100
   */
  low_mm: number[];
  /**
   * 25 % lie below
   *
   * @minItems 0
   * @maxItems 1100
   */
  lower_mm: number[];
  /**
   * as likely above as below
   *
   * @minItems 0
   * @maxItems 1100
   */
  median_mm: number[];
  /**
   * 25 % lie above
   *
   * @minItems 0
   * @maxItems 1100
   */
  upper_mm: number[];
  /**
   * 5 % lie above
   *
   * @minItems 0
   * @maxItems 1100
   */
  high_mm: number[];
}
export interface ActionLimits {
  /**
   * least action that plays clean [mm]
   */
  lowest_bass_mm: number;
  /**
   * least action that plays clean [mm]
   */
  lowest_treble_mm: number;
  /**
   * highest comfortable action [mm]
   */
  highest_bass_mm: number;
  /**
   * highest comfortable action [mm]
   */
  highest_treble_mm: number;
  /**
   * how the least clean action follows the relief, by rising relief; none: it stands still
   *
   * @minItems 0
   * @maxItems 50
   */
  floors: FloorAtRelief[];
}
export interface FloorAtRelief {
  /**
   * with this relief [mm]
   */
  relief_mm: number;
  /**
   * least action that plays clean [mm]
   */
  lowest_bass_mm: number;
  /**
   * the same, treble [mm]
   */
  lowest_treble_mm: number;
}
export interface ActionLimitsAsk {
  /**
   * least action that plays clean [mm]
   */
  lowest_bass_mm?: number | string;
  /**
   * least action that plays clean [mm]
   */
  lowest_treble_mm?: number | string;
  /**
   * highest comfortable action [mm]
   */
  highest_bass_mm?: number | string;
  /**
   * highest comfortable action [mm]
   */
  highest_treble_mm?: number | string;
  /**
   * how the least clean action follows the relief, by rising relief; none: it stands still
   *
   * @minItems 0
   * @maxItems 50
   */
  floors?: FloorAtReliefAsk[];
}
export interface FloorAtReliefAsk {
  /**
   * with this relief [mm]
   */
  relief_mm: number | string;
  /**
   * least action that plays clean [mm]
   */
  lowest_bass_mm: number | string;
  /**
   * the same, treble [mm]
   */
  lowest_treble_mm: number | string;
}
export interface AirDay {
  /**
   * the day
   */
  date: string;
  /**
   * mean of the day [C]
   */
  temperature_c: number;
  /**
   * mean of the day, 0..1
   */
  relative_humidity: number;
  /**
   * read by the home's hygrometer; else expected from its typical year
   */
  logged: boolean;
  /**
   * of a bare-inside top that has followed the air [percent]
   */
  moisture_percent: number;
}
export interface AirOfHome {
  /**
   * day by day
   *
   * @minItems 0
   * @maxItems 1100
   */
  days: AirDay[];
  /**
   * days in the home's whole log
   */
  logged_days: number;
}
export interface AirRequestAsk {
  /**
   * temperature of the air [C]
   */
  temperature_c: number;
  /**
   * 0..1; this or one of the next three
   */
  relative_humidity?: number;
  /**
   * the temperature at which dew would form [C]
   */
  dew_point_c?: number;
  /**
   * what a moving thermometer in a wet sock reads, iced below 0 C [C]
   */
  wet_bulb_c?: number;
  /**
   * kg of water per kg of dry air [kg/kg]
   */
  humidity_ratio?: number;
  /**
   * pressure of the air; 101325 at sea level [Pa]
   */
  pressure_pa?: number;
  /**
   * the humidity or dew point given is over ice where it is 0 C or colder
   */
  over_ice?: boolean;
}
export interface AirResult {
  /**
   * 0..1, over liquid water at every temperature
   */
  relative_humidity: number;
  /**
   * 0..1, at 0 C and below
   */
  relative_humidity_over_ice?: number;
  /**
   * pressure of the water vapour
   */
  vapour_pressure_pa: number;
  /**
   * the most it could be, over liquid water
   */
  saturation_pressure_pa: number;
  /**
   * over liquid water; absent below -60 C
   */
  dew_point_c?: number;
  /**
   * over ice, where it is from -100 to 0 C
   */
  frost_point_c?: number;
  /**
   * iced below 0 C
   */
  wet_bulb_c: number;
  /**
   * kg of water per kg of dry air
   */
  humidity_ratio: number;
  /**
   * grams of water in a cubic metre of the air
   */
  absolute_humidity_g_per_m3: number;
}
export interface AmountTaken {
  /**
   * what is counted, as data/operations.csv names it
   */
  amount: string;
  /**
   * how many
   */
  count: number;
  /**
   * by a person
   */
  said: boolean;
  /**
   * at the finding the job is for; neither: what is usual
   */
  measured: boolean;
}
export interface AnsweredBefore {
  /**
   * an id in data/procedures.csv
   */
  procedure: string;
  /**
   * an id in data/procedure_decisions.csv
   */
  decision: string;
  /**
   * one of its outcomes
   */
  outcome: string;
}
export interface Attack {
  /**
   * swing normal to the board at the pluck, lowest string, open [mm]
   */
  amplitude_bass_mm: number;
  /**
   * the same, string 1 [mm]
   */
  amplitude_treble_mm: number;
  /**
   * where the string is plucked [mm]
   */
  pluck_from_saddle_mm: number;
  /**
   * width of finger or pick [mm]
   */
  pluck_width_mm: number;
  /**
   * what a stopped note keeps of the open one's pluck
   */
  stopped: "same_force" | "same_amplitude";
}
export interface AttackAsk {
  /**
   * swing normal to the board at the pluck, lowest string, open [mm]
   */
  amplitude_bass_mm: number | string;
  /**
   * the same, string 1 [mm]
   */
  amplitude_treble_mm: number | string;
  /**
   * where the string is plucked [mm]
   */
  pluck_from_saddle_mm?: number | string;
  /**
   * width of finger or pick [mm]
   */
  pluck_width_mm?: number | string;
  /**
   * what a stopped note keeps of the open one's pluck
   */
  stopped?: "same_force" | "same_amplitude";
}
export interface AttackMark {
  /**
   * as the tables call it
   */
  name: string;
  /**
   * swing normal to the board at the pluck, lowest string [mm]
   */
  amplitude_bass_mm: number;
  /**
   * the same, string 1 [mm]
   */
  amplitude_treble_mm: number;
}
export interface BeginTapAsk {
  /**
   * an id in data/operations.csv
   */
  operation: string;
  /**
   * whose hands
   */
  person?: string;
  /**
   * what it is glued or finished with; 0: not said
   */
  lot_id?: number;
  /**
   * yes to a lot that is good no longer
   */
  past_its_day?: boolean;
}
export interface BenchAnswer {
  now: Moment;
  /**
   * whose hands do the work
   *
   * @minItems 0
   * @maxItems 100000
   */
  people: BenchPerson[];
  /**
   * places and fixtures
   *
   * @minItems 0
   * @maxItems 100000
   */
  stations: Station[];
  plan?: BenchResult;
  /**
   * why no plan can be made; empty: nothing is in the way
   */
  trouble: string;
  /**
   * pins that cannot be kept beside the older ones, and why
   *
   * @minItems 0
   * @maxItems 100000
   */
  pins_let_go: PinLetGo[];
  /**
   * what each operation of the plan is in the book
   *
   * @minItems 0
   * @maxItems 100000
   */
  work: BenchWork[];
  /**
   * what was said of each instrument of the plan
   *
   * @minItems 0
   * @maxItems 100000
   */
  instruments: OnTheBench[];
  /**
   * instruments in the shop that are not planned, and why
   *
   * @minItems 0
   * @maxItems 100000
   */
  left_out: NotPlanned[];
  /**
   * spraying that the air of a day forbids
   *
   * @minItems 0
   * @maxItems 100000
   */
  held_by_air: HeldByAir[];
  /**
   * of the shop from today on, read or forecast, the newest of each day
   *
   * @minItems 0
   * @maxItems 100000
   */
  air: ShopAir[];
}
export interface Moment {
  /**
   * day
   */
  day: string;
  /**
   * minutes since midnight by the wall clock [minutes]
   */
  minute: number;
}
export interface BenchPerson {
  /**
   * who
   */
  name: string;
  /**
   * stretches of the week's days; a break is the gap between two
   *
   * @minItems 1
   * @maxItems 42
   */
  hours: ShopHours[];
  /**
   * holidays and days away
   *
   * @minItems 0
   * @maxItems 400
   */
  days_off: DayOff[];
  /**
   * sorts of work that they do not do
   *
   * @minItems 0
   * @maxItems 40
   */
  leaves_to_others: string[];
}
export interface ShopHours {
  /**
   * 1 Monday to 7 Sunday
   */
  weekday: number;
  /**
   * minutes since midnight [minutes]
   */
  from_minute: number;
  /**
   * minutes since midnight [minutes]
   */
  to_minute: number;
}
export interface DayOff {
  /**
   * a holiday or a day away
   */
  day: string;
}
export interface Station {
  /**
   * spray place, go-bar deck, clamps, humid cabinet
   */
  name: string;
  /**
   * how many there are
   */
  count: number;
}
export interface BenchResult {
  /**
   * each person's next work
   *
   * @minItems 0
   * @maxItems 4
   */
  next: PlannedOperation[];
  /**
   * all of them, by start
   *
   * @minItems 0
   * @maxItems 24000
   */
  operations: PlannedOperation[];
  /**
   * as asked
   *
   * @minItems 1
   * @maxItems 400
   */
  instruments: PlannedInstrument[];
  /**
   * a sentence for each promise that moves later
   *
   * @minItems 0
   * @maxItems 400
   */
  moved_promises: string[];
  /**
   * a sentence for each work begun after what it follows has stood too long
   *
   * @minItems 0
   * @maxItems 24000
   */
  overdue: string[];
  /**
   * a sentence for each station of which what is begun takes more than the shop has
   *
   * @minItems 0
   * @maxItems 40
   */
  overfull: string[];
  cost: BenchCost;
  /**
   * to be kept for the next plan
   *
   * @minItems 0
   * @maxItems 24000
   */
  order: OrderEntry[];
  /**
   * judged
   */
  plans: number;
  /**
   * within a day, all people
   */
  changes_of_instrument: number;
  /**
   * one sentence
   */
  verdict: string;
}
export interface PlannedOperation {
  /**
   * on which
   */
  instrument: string;
  /**
   * what
   */
  operation: string;
  /**
   * whose hands; empty for a wait alone
   */
  person: string;
  starts: Moment;
  hands_on_ends: Moment;
  wait_ends: Moment;
  /**
   * the stretches of hands-on work
   *
   * @minItems 0
   * @maxItems 1200
   */
  pieces: WorkPiece[];
}
export interface WorkPiece {
  from: Moment;
  until: Moment;
}
export interface PlannedInstrument {
  /**
   * which
   */
  name: string;
  ready: Moment;
  /**
   * past the end of the day it is due [days]
   */
  days_late: number;
  /**
   * until it is ready, from now or from its coming [days]
   */
  days_from_now: number;
  /**
   * than promised; negative is before [days]
   */
  promise_days_later: number;
  /**
   * what holds it, when it is late or its promise moves later
   */
  why: string;
}
export interface BenchCost {
  /**
   * days late
   */
  late: number;
  /**
   * days in the shop
   */
  in_shop: number;
  /**
   * changes of instrument within a day
   */
  changes: number;
  /**
   * promises moved
   */
  promises: number;
  /**
   * work begun after what it follows has stood too long
   */
  overdue: number;
  /**
   * all five
   */
  total: number;
  /**
   * of first come, first served with its gaps filled
   */
  first_come: number;
  /**
   * of the best order that needs no search
   */
  best_rule: number;
}
export interface OrderEntry {
  /**
   * whose next work
   */
  instrument: string;
  /**
   * free places left for others
   */
  places_passed_over: number;
}
export interface PinLetGo {
  /**
   * on which
   */
  instrument: string;
  /**
   * what was pinned
   */
  operation: string;
  /**
   * why it cannot be kept
   */
  why: string;
}
export interface BenchWork {
  /**
   * as the plan names it
   */
  instrument: string;
  /**
   * as the plan names it
   */
  operation: string;
  /**
   * its number in the book
   */
  instrument_id: number;
  /**
   * the visit
   */
  visit_id: number;
  /**
   * the job
   */
  job_id: number;
  /**
   * in data/operations.csv
   */
  operation_id: string;
  /**
   * of the times that the job does it
   */
  which: number;
  /**
   * how far it is
   */
  state: "to_do" | "at_work" | "waiting" | "done";
  /**
   * the stretch of work hands are at; 0: none
   */
  running_spell: number;
  /**
   * whose hands are at it; empty: nobody's
   */
  running_person: string;
  /**
   * what it usually takes [min]
   */
  hands_on_minutes: number;
  /**
   * hands-on, so far [min]
   */
  minutes_spent: number;
  /**
   * what the wait after it is
   */
  wait_for: string;
  wait_ends?: Moment;
  pinned?: Moment;
  begin_by?: Moment;
  /**
   * why hands may not take it up yet
   *
   * @minItems 0
   * @maxItems 100
   */
  holds: string[];
  /**
   * where hands do it
   */
  place: string;
  /**
   * what it is done with
   */
  materials: string;
  /**
   * a line each
   *
   * @minItems 0
   * @maxItems 100
   */
  adhesives: string[];
  /**
   * how long in them
   *
   * @minItems 0
   * @maxItems 100
   */
  clamps: string[];
  /**
   * read before it is begun
   *
   * @minItems 0
   * @maxItems 100
   */
  cautions: string[];
}
export interface OnTheBench {
  /**
   * as the plan names it
   */
  instrument: string;
  /**
   * its number in the book
   */
  instrument_id: number;
  /**
   * the visit
   */
  visit_id: number;
  /**
   * the day the owner was told
   */
  promised?: string;
  /**
   * the day it is wanted by the end of: as wished, or as promised
   */
  due?: string;
  /**
   * a part or the owner is waited for: no work before that day
   */
  waits_until?: string;
  /**
   * how much its lateness counts
   */
  weight: number;
}
export interface NotPlanned {
  /**
   * the visit
   */
  visit_id: number;
  /**
   * which
   */
  instrument: string;
  /**
   * why the plan leaves it out
   */
  why: string;
  /**
   * it has jobs that the owner has not refused
   */
  could_be_taken: boolean;
}
export interface HeldByAir {
  /**
   * the whole of it
   */
  day: string;
  /**
   * in data/operations.csv
   */
  operation: string;
  /**
   * in words
   */
  name: string;
  /**
   * of the shop's air [%]
   */
  humidity_percent: number;
  /**
   * expected, not read
   */
  forecast: boolean;
  /**
   * the least humidity in which it may be sprayed [%]
   */
  least_percent?: number;
  /**
   * the most [%]
   */
  most_percent?: number;
}
export interface ShopAir {
  /**
   * number in the book; 0: not kept yet
   */
  id: number;
  /**
   * the day
   */
  day: string;
  /**
   * since midnight [min]
   */
  minute: number;
  /**
   * in the shop [C]
   */
  temperature_c: number;
  /**
   * in the shop, 0..1
   */
  relative_humidity: number;
  /**
   * expected, not read
   */
  forecast: boolean;
}
export interface BenchInstrumentAsk {
  /**
   * which
   */
  name: string;
  arrives: MomentAsk;
  /**
   * the day by whose end it is wanted
   */
  due?: string;
  /**
   * how much its lateness counts
   */
  weight?: number;
  /**
   * the day promised to its owner
   */
  promised?: string;
  /**
   * what is still to be done, in order
   *
   * @minItems 1
   * @maxItems 60
   */
  operations: OperationAsk[];
}
export interface MomentAsk {
  /**
   * day
   */
  day: string;
  /**
   * minutes since midnight by the wall clock [minutes]
   */
  minute?: number;
}
export interface OperationAsk {
  /**
   * what is done
   */
  name: string;
  /**
   * its name in the log of durations; else its own
   */
  kind?: string;
  /**
   * work of hands, in shop hours [minutes]
   */
  hands_on_minutes: number;
  /**
   * then a wait by the clock that keeps the instrument [minutes]
   */
  wait_minutes?: number;
  /**
   * at least this long after the hands-on work before it [minutes]
   */
  least_gap_minutes?: number;
  /**
   * and at most: it is then placed together with the one before it [minutes]
   */
  greatest_gap_minutes?: number;
  /**
   * the same from further back, with all that stands between
   *
   * @minItems 0
   * @maxItems 8
   */
  greatest_gaps?: GreatestGapAsk[];
  not_before?: MomentAsk;
  begin_by?: MomentAsk;
  /**
   * places and fixtures it keeps
   *
   * @minItems 0
   * @maxItems 3
   */
  stations?: HeldStationAsk[];
  /**
   * the sort of work it is, done by those who do not leave it to others
   */
  skill?: string;
  /**
   * who must do it, or is doing it
   */
  person?: string;
  /**
   * the sort of work that the air may forbid
   */
  air_work?: string;
  /**
   * may be broken off and gone on with
   */
  splittable?: boolean;
  /**
   * the shortest piece worth taking up [minutes]
   */
  least_piece_minutes?: number;
  /**
   * work off the instrument, such as a blank
   */
  beside?: boolean;
  /**
   * earlier operations of this instrument that must have ended
   *
   * @minItems 0
   * @maxItems 20
   */
  after?: string[];
  pinned?: MomentAsk;
  /**
   * how far it is
   */
  state?: "to_do" | "at_work" | "waiting";
  /**
   * of the hands-on work, when at work [minutes]
   */
  minutes_left?: number;
  wait_ends?: MomentAsk;
}
export interface GreatestGapAsk {
  /**
   * an earlier operation of this instrument
   */
  from: string;
  /**
   * at most, from its hands-on work [minutes]
   */
  minutes: number;
}
export interface HeldStationAsk {
  /**
   * a place or a fixture of the shop
   */
  name: string;
  /**
   * kept through the hands-on work; else from when hands let go
   */
  hands_on?: boolean;
  /**
   * and this much of the wait [minutes]
   */
  wait_minutes?: number;
}
export interface BenchPersonAsk {
  /**
   * who
   */
  name: string;
  /**
   * stretches of the week's days; a break is the gap between two
   *
   * @minItems 1
   * @maxItems 42
   */
  hours: ShopHoursAsk[];
  /**
   * holidays and days away
   *
   * @minItems 0
   * @maxItems 400
   */
  days_off?: DayOffAsk[];
  /**
   * sorts of work that they do not do
   *
   * @minItems 0
   * @maxItems 40
   */
  leaves_to_others?: string[];
}
export interface ShopHoursAsk {
  /**
   * 1 Monday to 7 Sunday
   */
  weekday: number;
  /**
   * minutes since midnight [minutes]
   */
  from_minute: number;
  /**
   * minutes since midnight [minutes]
   */
  to_minute: number;
}
export interface DayOffAsk {
  /**
   * a holiday or a day away
   */
  day: string;
}
export interface BenchRequestAsk {
  now: MomentAsk;
  /**
   * one or two, whose hands do the work
   *
   * @minItems 1
   * @maxItems 4
   */
  people: BenchPersonAsk[];
  /**
   * places and fixtures
   *
   * @minItems 0
   * @maxItems 40
   */
  stations?: StationAsk[];
  /**
   * when the air forbids what
   *
   * @minItems 0
   * @maxItems 2000
   */
  unfit_air?: UnfitAirAsk[];
  /**
   * to and from summer time
   *
   * @minItems 0
   * @maxItems 8
   */
  clock_changes?: ClockChangeAsk[];
  /**
   * on the bench or coming
   *
   * @minItems 1
   * @maxItems 400
   */
  instruments: BenchInstrumentAsk[];
  /**
   * of the plan before, to start from
   *
   * @minItems 0
   * @maxItems 24000
   */
  kept_order?: OrderEntryAsk[];
  /**
   * how many plans to judge; 0: as many as suit the bench [plans]
   */
  plans?: number;
  /**
   * the same seed gives the same plan
   */
  seed?: number;
}
export interface StationAsk {
  /**
   * spray place, go-bar deck, clamps, humid cabinet
   */
  name: string;
  /**
   * how many there are
   */
  count?: number;
}
export interface UnfitAirAsk {
  /**
   * the sort of work that this air forbids
   */
  work: string;
  from: MomentAsk;
  until: MomentAsk;
}
export interface ClockChangeAsk {
  at: MomentAsk;
  /**
   * how far they go forward; back is negative [minutes]
   */
  forward_minutes: number;
}
export interface OrderEntryAsk {
  /**
   * whose next work
   */
  instrument: string;
  /**
   * free places left for others
   */
  places_passed_over?: number;
}
export interface BenchWeights {
  /**
   * a day late, times the instrument's own weight
   */
  late_day: number;
  /**
   * a day in the shop
   */
  shop_day: number;
  /**
   * putting one down to take up another on the same day
   */
  change_of_instrument: number;
  /**
   * a promise moved later at all
   */
  promise_later: number;
  /**
   * and each day of it
   */
  promise_later_day: number;
  /**
   * each day ready before the promised day ends
   */
  promise_earlier_day: number;
  /**
   * work begun after what it follows has stood too long
   */
  begun_overdue: number;
  /**
   * and each day of it
   */
  begun_overdue_day: number;
}
export interface BenchWeightsAsk {
  /**
   * a day late, times the instrument's own weight
   */
  late_day: number;
  /**
   * a day in the shop
   */
  shop_day: number;
  /**
   * putting one down to take up another on the same day
   */
  change_of_instrument: number;
  /**
   * a promise moved later at all
   */
  promise_later: number;
  /**
   * and each day of it
   */
  promise_later_day: number;
  /**
   * each day ready before the promised day ends
   */
  promise_earlier_day: number;
  /**
   * work begun after what it follows has stood too long
   */
  begun_overdue: number;
  /**
   * and each day of it
   */
  begun_overdue_day: number;
}
export interface BenchWish {
  /**
   * number in the book; 0: not kept yet
   */
  id: number;
  /**
   * of this visit
   */
  visit_id: number;
  /**
   * wanted by the end of that day
   */
  due_on?: string;
  /**
   * how much its lateness counts against others
   */
  weight: number;
  /**
   * a part or the owner is waited for: no work before that day
   */
  waits_until?: string;
  /**
   * anything else
   */
  note: string;
}
export interface BenchWishAsk {
  /**
   * number in the book; 0: not kept yet
   */
  id?: number;
  /**
   * of this visit
   */
  visit_id?: number;
  /**
   * wanted by the end of that day
   */
  due_on?: string;
  /**
   * how much its lateness counts against others
   */
  weight?: number;
  /**
   * a part or the owner is waited for: no work before that day
   */
  waits_until?: string;
  /**
   * anything else
   */
  note?: string;
}
export interface Brace {
  /**
   * what the brace is called
   */
  name: string;
  /**
   * first end, from the neck edge [mm]
   */
  from_x_mm: number;
  /**
   * first end, from the centre line; treble positive [mm]
   */
  from_y_mm: number;
  /**
   * second end [mm]
   */
  to_x_mm: number;
  /**
   * second end [mm]
   */
  to_y_mm: number;
  /**
   * of the brace [mm]
   */
  width_mm: number;
  /**
   * along the brace; straight between them
   *
   * @minItems 1
   * @maxItems 20
   */
  heights: BraceHeight[];
  /**
   * its wood
   */
  species: string;
  /**
   * the stretches that hold; none: all along
   *
   * @minItems 0
   * @maxItems 10
   */
  glued: GluedStretch[];
}
export interface BraceHeight {
  /**
   * how far along the brace, 0 its first end, 1 its second
   */
  share: number;
  /**
   * of the brace there [mm]
   */
  height_mm: number;
}
export interface GluedStretch {
  /**
   * where the glue begins, in shares of the brace
   */
  from_share: number;
  /**
   * where it ends
   */
  to_share: number;
}
export interface BraceAsk {
  /**
   * what the brace is called
   */
  name: string;
  /**
   * first end, from the neck edge [mm]
   */
  from_x_mm: number | string;
  /**
   * first end, from the centre line; treble positive [mm]
   */
  from_y_mm: number | string;
  /**
   * second end [mm]
   */
  to_x_mm: number | string;
  /**
   * second end [mm]
   */
  to_y_mm: number | string;
  /**
   * of the brace [mm]
   */
  width_mm?: number | string;
  /**
   * along the brace; straight between them
   *
   * @minItems 1
   * @maxItems 20
   */
  heights: BraceHeightAsk[];
  /**
   * its wood
   */
  species?: string;
  /**
   * the stretches that hold; none: all along
   *
   * @minItems 0
   * @maxItems 10
   */
  glued?: GluedStretchAsk[];
}
export interface BraceHeightAsk {
  /**
   * how far along the brace, 0 its first end, 1 its second
   */
  share: number;
  /**
   * of the brace there [mm]
   */
  height_mm: number | string;
}
export interface GluedStretchAsk {
  /**
   * where the glue begins, in shares of the brace
   */
  from_share: number;
  /**
   * where it ends
   */
  to_share: number;
}
export interface BridgeDesign {
  body: CrossPiece;
  /**
   * from the neck edge [mm]
   */
  saddle_x_mm: number;
  /**
   * across [mm]
   */
  saddle_length_mm: number;
}
export interface CrossPiece {
  /**
   * its edge towards the neck, from the neck edge of the top [mm]
   */
  front_x_mm: number;
  /**
   * along the strings [mm]
   */
  depth_mm: number;
  /**
   * across [mm]
   */
  span_mm: number;
  /**
   * 0: there is none [mm]
   */
  thickness_mm: number;
  /**
   * its wood, grain across the top
   */
  species: string;
}
export interface BridgeDesignAsk {
  body: CrossPieceAsk;
  /**
   * from the neck edge [mm]
   */
  saddle_x_mm: number | string;
  /**
   * across [mm]
   */
  saddle_length_mm: number | string;
}
export interface CrossPieceAsk {
  /**
   * its edge towards the neck, from the neck edge of the top [mm]
   */
  front_x_mm: number | string;
  /**
   * along the strings [mm]
   */
  depth_mm: number | string;
  /**
   * across [mm]
   */
  span_mm: number | string;
  /**
   * 0: there is none [mm]
   */
  thickness_mm: number | string;
  /**
   * its wood, grain across the top
   */
  species: string;
}
export interface BridgeMeasures {
  /**
   * open_ended: it runs out at both ends of the bridge; closed: a drop-in saddle
   */
  slot: "open_ended" | "closed";
  /**
   * top of the saddle over the bridge at the bass string [mm]
   */
  exposure_bass_mm: number;
  /**
   * the same at the treble string [mm]
   */
  exposure_treble_mm: number;
  /**
   * the same between the middle strings [mm]
   */
  exposure_centre_mm?: number;
  /**
   * one standard deviation of those readings [mm]
   */
  exposure_sd_mm: number;
  /**
   * floor of the slot to the top of the bridge [mm]
   */
  slot_depth_mm?: number;
  /**
   * width of the slot, at one end when both are given [mm]
   */
  slot_width_mm?: number;
  /**
   * width at the other end [mm]
   */
  slot_width_other_end_mm?: number;
  /**
   * length of the slot; open-ended: across the bridge [mm]
   */
  slot_length_mm?: number;
  /**
   * of the bone fitted now [mm]
   */
  saddle_thickness_mm?: number;
  /**
   * through which a middle string turns over the saddle [degrees]
   */
  break_angle_deg?: number;
  /**
   * front of the pin hole to the back of the saddle [mm]
   */
  pin_to_saddle_mm?: number;
}
export interface BridgeMeasuresAsk {
  /**
   * open_ended: it runs out at both ends of the bridge; closed: a drop-in saddle
   */
  slot: "open_ended" | "closed";
  /**
   * top of the saddle over the bridge at the bass string [mm]
   */
  exposure_bass_mm: number | string;
  /**
   * the same at the treble string [mm]
   */
  exposure_treble_mm: number | string;
  /**
   * the same between the middle strings [mm]
   */
  exposure_centre_mm?: number | string;
  /**
   * one standard deviation of those readings [mm]
   */
  exposure_sd_mm?: number | string;
  /**
   * floor of the slot to the top of the bridge [mm]
   */
  slot_depth_mm?: number | string;
  /**
   * width of the slot, at one end when both are given [mm]
   */
  slot_width_mm?: number | string;
  /**
   * width at the other end [mm]
   */
  slot_width_other_end_mm?: number | string;
  /**
   * length of the slot; open-ended: across the bridge [mm]
   */
  slot_length_mm?: number | string;
  /**
   * of the bone fitted now [mm]
   */
  saddle_thickness_mm?: number | string;
  /**
   * through which a middle string turns over the saddle [degrees]
   */
  break_angle_deg?: number;
  /**
   * front of the pin hole to the back of the saddle [mm]
   */
  pin_to_saddle_mm?: number | string;
}
export interface CauseShown {
  /**
   * id in data/causes.csv
   */
  cause: string;
  /**
   * in words
   */
  name: string;
  /**
   * the symptom it may be behind
   */
  symptom: string;
  /**
   * order of proposing
   */
  class: "safety" | "humidity" | "reversible" | "glue" | "frets_and_saddle" | "neck" | "finish" | "leave";
  /**
   * stands, open or ruled out
   */
  verdict: "stands" | "open" | "ruled_out";
  /**
   * for and against
   *
   * @minItems 0
   * @maxItems 60
   */
  evidence: EvidenceShown[];
  /**
   * what parts it from its rivals
   */
  settled_by: string;
  /**
   * procedures or operations
   *
   * @minItems 0
   * @maxItems 60
   */
  remedies: string[];
  /**
   * nothing that cannot be undone until that is settled
   */
  wait: boolean;
  /**
   * what to mind; may be empty
   */
  says: string;
}
export interface EvidenceShown {
  /**
   * the line
   */
  words: string;
  /**
   * reading, change:, finding:, fact: or cause:
   */
  about: string;
  /**
   * what it does
   */
  role: "needs" | "supports" | "counts" | "against";
  /**
   * how it stands; too_near: within the repeatability of its limit
   */
  stands: "for_it" | "against_it" | "too_near" | "unread";
  /**
   * as read
   */
  value?: number;
  /**
   * from the nearest limit, in repeatabilities; positive where it holds
   */
  margin_repeatability?: number;
}
export interface CautionForms {
  /**
   * operations whose minutes depend on the level measured at the ear
   *
   * @minItems 0
   * @maxItems 1000
   */
  noisy: string[];
  /**
   * the operation at which papers are asked for
   */
  papers_at: string;
  /**
   * that trade rules may protect
   *
   * @minItems 0
   * @maxItems 1000
   */
  materials: MaterialToAskAbout[];
}
export interface MaterialToAskAbout {
  /**
   * as the model cautions names it
   */
  id: string;
  /**
   * in words
   */
  name: string;
}
export interface CautionsRequestAsk {
  /**
   * ids in data/operations.csv
   *
   * @minItems 0
   * @maxItems 200
   */
  operations?: string[];
  /**
   * ids in data/hazards.csv
   *
   * @minItems 0
   * @maxItems 200
   */
  hazards?: string[];
  /**
   * ids in data/listed_materials.csv
   *
   * @minItems 0
   * @maxItems 200
   */
  materials?: string[];
  /**
   * measured at the ear
   *
   * @minItems 0
   * @maxItems 200
   */
  noise?: NoiseAtWorkAsk[];
}
export interface NoiseAtWorkAsk {
  /**
   * the work
   */
  what: string;
  /**
   * dB(A) at the ear, measured [dB(A)]
   */
  level_db: number;
  /**
   * in the day [min]
   */
  minutes: number;
}
export interface CautionsResult {
  /**
   * each once
   *
   * @minItems 0
   * @maxItems 200
   */
  hazards: HazardShown[];
  /**
   * as asked
   *
   * @minItems 0
   * @maxItems 200
   */
  noise: NoiseShown[];
  /**
   * of the day; 100 is the recommended limit [percent]
   */
  dose_percent: number;
  /**
   * one sentence; may be empty
   */
  noise_words: string;
  /**
   * to be asked for
   *
   * @minItems 0
   * @maxItems 200
   */
  papers: PapersShown[];
  /**
   * what comes first
   */
  defers: string;
}
export interface HazardShown {
  /**
   * id in data/hazards.csv
   */
  hazard: string;
  /**
   * in words
   */
  name: string;
  /**
   * what it does
   */
  harm: string;
  /**
   * what keeps from it
   */
  controls: string;
  /**
   * may be empty
   */
  waste: string;
  /**
   * the program never proposes it by itself
   */
  never_proposed: boolean;
  /**
   * as published, each with its standing
   *
   * @minItems 0
   * @maxItems 40
   */
  limits: ExposureLimit[];
  /**
   * one line for the step
   */
  caution: string;
}
export interface ExposureLimit {
  /**
   * id in data/hazards.csv
   */
  hazard: string;
  /**
   * who published it; empty for a property of the substance
   */
  authority: string;
  /**
   * what it is
   */
  figure: "twa" | "stel" | "ceiling" | "danger_to_life" | "flash_low" | "flash_high" | "lower_explosive";
  /**
   * in its unit
   */
  value: number;
  /**
   * of the value
   */
  unit: string;
  /**
   * read, read second-hand or from memory
   */
  standing: string;
  /**
   * where it is published
   */
  source: string;
}
export interface NoiseShown {
  /**
   * the work
   */
  what: string;
  /**
   * dB(A) [dB(A)]
   */
  level_db: number;
  /**
   * in the day [min]
   */
  minutes: number;
  /**
   * a day, recommended [min]
   */
  allowed_minutes: number;
  /**
   * a day, legal limit of the United States [min]
   */
  legal_allowed_minutes: number;
  /**
   * of the recommended [percent]
   */
  dose_percent: number;
}
export interface PapersShown {
  /**
   * in words
   */
  material: string;
  /**
   * that may protect it
   */
  rule: string;
  /**
   * for what
   */
  ask: string;
  /**
   * who decides
   */
  authority: string;
}
export interface ChanceAt {
  /**
   * mean of the driest seven days, 0..1
   */
  lowest_week_relative_humidity: number;
  /**
   * of a new crack in these days
   */
  chance: number;
  /**
   * if the stress fades as much as it may (5 %)
   */
  chance_low: number;
  /**
   * if it fades as little as it may (5 %)
   */
  chance_high: number;
}
export interface ChangeShare {
  /**
   * day of the readings before the latest
   */
  from: string;
  /**
   * day of the latest readings
   */
  to: string;
  measured_bass_mm: Estimate;
  measured_treble_mm: Estimate;
  season_bass_mm: Estimate;
  season_treble_mm: Estimate;
  unexplained_bass_mm: Estimate;
  unexplained_treble_mm: Estimate;
  season_share: Estimate;
  /**
   * that a move nobody recorded happened between the two days
   */
  something_else_probability: number;
  /**
   * whether that is likely enough to be said
   */
  something_else: boolean;
  /**
   * in one or two plain sentences
   */
  verdict: string;
  /**
   * the reading that would settle it better
   */
  better_reading: string;
}
export interface Estimate {
  /**
   * as likely above as below
   */
  median: number;
  /**
   * 5 % lie below
   */
  low: number;
  /**
   * 5 % lie above
   */
  high: number;
}
export interface ClearanceRequest {
  neck: NeckLine;
  action: StringAction;
  /**
   * string 1, the thinnest, first
   *
   * @minItems 1
   * @maxItems 12
   */
  strings: GuitarString[];
  attack: Attack;
}
export interface NeckLine {
  /**
   * scale length [mm]
   */
  scale_length_mm: number;
  /**
   * fret at the body joint
   */
  body_joint_fret: number;
  /**
   * number of frets
   */
  fret_count: number;
  /**
   * number of strings, evenly spaced
   */
  string_count: number;
  /**
   * open outer bass string over the crown of fret 1 [mm]
   */
  nut_over_fret1_bass_mm: number;
  /**
   * open string 1 over the crown of fret 1 [mm]
   */
  nut_over_fret1_treble_mm: number;
  /**
   * nut slot over the fret plane, bass; used instead when given [mm]
   */
  nut_over_frets_bass_mm?: number;
  /**
   * nut slot over the fret plane, treble [mm]
   */
  nut_over_frets_treble_mm?: number;
  /**
   * depth of the neck's bow below the chord of fret 1 and the joint fret [mm]
   */
  relief_mm: number;
  /**
   * each crown over where the bow puts it, fret 1 first; empty when level [mm]
   *
   * @minItems 0
   * @maxItems 24
   */
  crown_departures_mm: number[];
  /**
   * saddle crest behind the scale length, bass [mm]
   */
  setback_bass_mm: number;
  /**
   * saddle crest behind the scale length, treble [mm]
   */
  setback_treble_mm: number;
  /**
   * between the outer strings at the saddle [mm]
   */
  string_spread_at_saddle_mm: number;
  /**
   * crossways radius of the frets [mm]
   */
  board_radius_mm?: number;
  /**
   * crossways radius of the saddle top [mm]
   */
  saddle_radius_mm?: number;
}
export interface StringAction {
  /**
   * outer bass string over fret 12 [mm]
   */
  action12_bass_mm?: number;
  /**
   * string 1 over fret 12 [mm]
   */
  action12_treble_mm?: number;
  /**
   * saddle top over the fret plane, bass [mm]
   */
  saddle_over_frets_bass_mm?: number;
  /**
   * saddle top over the fret plane, treble [mm]
   */
  saddle_over_frets_treble_mm?: number;
}
export interface GuitarString {
  /**
   * pitch of the open string [Hz]
   */
  pitch_hz: number;
  /**
   * over everything; may be left out when the string was weighed [mm]
   */
  diameter_mm?: number;
  /**
   * of a wrapped string; across the corners when hexagonal [mm]
   */
  core_diameter_mm?: number;
  /**
   * of a wrapped string
   */
  core_shape: "round" | "hexagonal";
  /**
   * density of the wrap wire [kg/m3]
   */
  wrap_kg_per_m3: number;
  /**
   * mass per length as weighed; replaces the geometry [kg/m]
   */
  weighed_kg_per_metre?: number;
}
export interface ClearanceRequestAsk {
  neck?: NeckLineAsk;
  action: StringActionAsk;
  /**
   * string 1, the thinnest, first
   *
   * @minItems 1
   * @maxItems 12
   */
  strings: GuitarStringAsk[];
  attack: AttackAsk;
}
export interface NeckLineAsk {
  /**
   * scale length [mm]
   */
  scale_length_mm?: number | string;
  /**
   * fret at the body joint
   */
  body_joint_fret?: number;
  /**
   * number of frets
   */
  fret_count?: number;
  /**
   * number of strings, evenly spaced
   */
  string_count?: number;
  /**
   * open outer bass string over the crown of fret 1 [mm]
   */
  nut_over_fret1_bass_mm?: number | string;
  /**
   * open string 1 over the crown of fret 1 [mm]
   */
  nut_over_fret1_treble_mm?: number | string;
  /**
   * nut slot over the fret plane, bass; used instead when given [mm]
   */
  nut_over_frets_bass_mm?: number | string;
  /**
   * nut slot over the fret plane, treble [mm]
   */
  nut_over_frets_treble_mm?: number | string;
  /**
   * depth of the neck's bow below the chord of fret 1 and the joint fret [mm]
   */
  relief_mm?: number | string;
  /**
   * each crown over where the bow puts it, fret 1 first; empty when level [mm]
   *
   * @minItems 0
   * @maxItems 24
   */
  crown_departures_mm?: number[];
  /**
   * saddle crest behind the scale length, bass [mm]
   */
  setback_bass_mm?: number | string;
  /**
   * saddle crest behind the scale length, treble [mm]
   */
  setback_treble_mm?: number | string;
  /**
   * between the outer strings at the saddle [mm]
   */
  string_spread_at_saddle_mm?: number | string;
  /**
   * crossways radius of the frets [mm]
   */
  board_radius_mm?: number | string;
  /**
   * crossways radius of the saddle top [mm]
   */
  saddle_radius_mm?: number | string;
}
export interface StringActionAsk {
  /**
   * outer bass string over fret 12 [mm]
   */
  action12_bass_mm?: number | string;
  /**
   * string 1 over fret 12 [mm]
   */
  action12_treble_mm?: number | string;
  /**
   * saddle top over the fret plane, bass [mm]
   */
  saddle_over_frets_bass_mm?: number | string;
  /**
   * saddle top over the fret plane, treble [mm]
   */
  saddle_over_frets_treble_mm?: number | string;
}
export interface GuitarStringAsk {
  /**
   * pitch of the open string [Hz]
   */
  pitch_hz: number;
  /**
   * over everything; may be left out when the string was weighed [mm]
   */
  diameter_mm?: number | string;
  /**
   * of a wrapped string; across the corners when hexagonal [mm]
   */
  core_diameter_mm?: number | string;
  /**
   * of a wrapped string
   */
  core_shape?: "round" | "hexagonal";
  /**
   * density of the wrap wire [kg/m3]
   */
  wrap_kg_per_m3?: number;
  /**
   * mass per length as weighed; replaces the geometry [kg/m]
   */
  weighed_kg_per_metre?: number;
}
export interface ClearanceResult {
  /**
   * string 1 open, string 1 at fret 1, and so on
   *
   * @minItems 12
   * @maxItems 288
   */
  notes: NoteClearance[];
  /**
   * notes that are clear
   */
  clear: number;
  /**
   * notes too near to call
   */
  doubtful: number;
  /**
   * notes that touch
   */
  touching: number;
  /**
   * index of the note with the least ratio
   */
  worst_note: number;
  /**
   * one sentence
   */
  verdict: string;
}
export interface NoteClearance {
  /**
   * 1 is the thinnest
   */
  string: number;
  /**
   * 0 is the open string
   */
  stopped_fret: number;
  /**
   * the fret it comes nearest to
   */
  limiting_fret: number;
  /**
   * nearest when plucked away from the board
   */
  away: boolean;
  /**
   * least of gap over reach: 1 just touches, above is clear
   */
  ratio: number;
  /**
   * gap less reach over that fret [mm]
   */
  margin_mm: number;
  /**
   * what it means
   */
  verdict: "clear" | "doubtful" | "touches";
}
export interface Cleat {
  /**
   * its middle, from the crack's first end [mm]
   */
  along_mm: number;
  /**
   * of the cleat, along the crack [mm]
   */
  length_mm: number;
}
export interface CleatAsk {
  /**
   * its middle, from the crack's first end [mm]
   */
  along_mm: number | string;
  /**
   * of the cleat, along the crack [mm]
   */
  length_mm: number | string;
}
export interface CleatShown {
  /**
   * its middle, from the crack's first end [mm]
   */
  along_mm: number;
  /**
   * from the neck edge [mm]
   */
  x_mm: number;
  /**
   * from the centre line, treble side positive [mm]
   */
  y_mm: number;
  /**
   * from the edge of the soundhole [mm]
   */
  reach_mm: number;
  /**
   * of an arm through the soundhole
   */
  within_reach: boolean;
}
export interface CleatsAnswer {
  /**
   * open, drawn as a line on top or back
   *
   * @minItems 0
   * @maxItems 1000
   */
  cracks: CrackWithCleats[];
}
export interface CrackWithCleats {
  /**
   * of the finding, on its instrument
   */
  number: number;
  /**
   * number in the book
   */
  finding_id: number;
  /**
   * what and where
   */
  words: string;
  /**
   * the drawing it is seen on from inside
   */
  inside: "front" | "back" | "bass_side" | "treble_side" | "headstock" | "top_inside" | "back_inside";
  request: CleatsRequest;
  result?: CleatsResult;
  /**
   * why there is no result; empty: there is
   */
  refused: string;
  /**
   * what no record says and was taken for granted
   *
   * @minItems 0
   * @maxItems 50
   */
  assumed: string[];
}
export interface CleatsRequest {
  /**
   * which plate is cracked
   */
  plate: "top" | "back";
  top: WhichTop;
  /**
   * first end of the crack, from the neck edge [mm]
   */
  from_x_mm: number;
  /**
   * from the centre line, treble side positive [mm]
   */
  from_y_mm: number;
  /**
   * its other end [mm]
   */
  to_x_mm: number;
  /**
   * its other end [mm]
   */
  to_y_mm: number;
  /**
   * beside the crack; absent: as built [mm]
   */
  plate_thickness_mm?: number;
  /**
   * one standard deviation of that [mm]
   */
  plate_thickness_sd_mm?: number;
  /**
   * beside those of the top; all of them for a back
   *
   * @minItems 0
   * @maxItems 40
   */
  braces: HoldingStrip[];
  /**
   * then a short crack gets cleats too
   */
  glued_before: boolean;
  /**
   * of the cleats
   */
  wood: string;
}
export interface WhichTop {
  /**
   * in words of form
   */
  body_size: "parlour" | "small" | "mid_size" | "slope_large" | "square_large";
  /**
   * a pattern: x_scalloped, x_braced, ladder, fan
   */
  bracing: string;
  /**
   * of the top, when it is known [mm]
   */
  thickness_mm?: number;
  /**
   * of the top, when it is known
   */
  species?: string;
  /**
   * 0 quartersawn, 90 flat-sawn [degrees]
   */
  ring_angle_deg?: number;
  /**
   * of the top's dome, when it is known [mm]
   */
  arch_radius_mm?: number;
  drawn?: TopDesign;
}
export interface TopDesign {
  /**
   * one half from the neck edge to the tail, both on the centre line
   *
   * @minItems 5
   * @maxItems 60
   */
  outline: OutlinePoint[];
  /**
   * of the top [mm]
   */
  thickness_mm: number;
  /**
   * wood of the top
   */
  species: string;
  /**
   * 0 quartersawn, 90 flat-sawn [degrees]
   */
  ring_angle_deg: number;
  /**
   * of the dome; absent: flat [mm]
   */
  arch_radius_mm?: number;
  /**
   * under the top
   *
   * @minItems 0
   * @maxItems 40
   */
  braces: Brace[];
  soundhole: Soundhole;
  bridge: BridgeDesign;
  bridge_plate: CrossPiece;
  rim: RimStiffness;
}
export interface OutlinePoint {
  /**
   * from the neck edge, along the centre line [mm]
   */
  x_mm: number;
  /**
   * from the centre line to the edge [mm]
   */
  half_width_mm: number;
}
export interface Soundhole {
  /**
   * from the neck edge [mm]
   */
  centre_x_mm: number;
  /**
   * of the hole [mm]
   */
  radius_mm: number;
  /**
   * reinforcement round it, under the top [mm]
   */
  ring_width_mm: number;
  /**
   * 0: none [mm]
   */
  ring_thickness_mm: number;
  /**
   * its wood
   */
  ring_species: string;
}
export interface RimStiffness {
  /**
   * per length, in the plane, across the edge [N/mm2]
   */
  outward_n_mm2: number;
  /**
   * in the plane, along the edge [N/mm2]
   */
  along_n_mm2: number;
  /**
   * out of the plane [N/mm2]
   */
  up_n_mm2: number;
  /**
   * moment per length for each radian of slope across the edge [N]
   */
  slope_n: number;
  /**
   * of neck and tail block [mm]
   */
  block_half_width_mm: number;
  /**
   * at the blocks, in the plane [N/mm2]
   */
  block_in_plane_n_mm2: number;
  /**
   * at the blocks, out of the plane [N/mm2]
   */
  block_up_n_mm2: number;
  /**
   * at the blocks, slope [N]
   */
  block_slope_n: number;
}
export interface HoldingStrip {
  /**
   * what it is
   */
  name: string;
  /**
   * from the neck edge [mm]
   */
  from_x_mm: number;
  /**
   * from the centre line, treble side positive [mm]
   */
  from_y_mm: number;
  /**
   * its other end [mm]
   */
  to_x_mm: number;
  /**
   * its other end [mm]
   */
  to_y_mm: number;
  /**
   * across it [mm]
   */
  width_mm: number;
}
export interface CleatsResult {
  /**
   * long enough, or glued before
   */
  called_for: boolean;
  /**
   * one sentence
   */
  words: string;
  /**
   * end to end [mm]
   */
  crack_length_mm: number;
  /**
   * from the crack's first end
   *
   * @minItems 0
   * @maxItems 60
   */
  cleats: CleatShown[];
  /**
   * size of each along the crack [mm]
   */
  along_crack_mm: number;
  /**
   * size of each across it, along its grain [mm]
   */
  across_crack_mm: number;
  /**
   * of each, before the edges are feathered [mm]
   */
  thickness_mm: number;
  /**
   * grain of the cleats, from the centre line [degrees]
   */
  grain_deg: number;
  /**
   * of crack, between cleats, braces and its ends [mm]
   */
  longest_without_hold_mm: number;
  /**
   * to cut them from, saw cuts included; grain along it [mm]
   */
  strip_length_mm: number;
  /**
   * of that strip [mm]
   */
  strip_width_mm: number;
  /**
   * what crosses the crack
   *
   * @minItems 0
   * @maxItems 60
   */
  held_by: string[];
  /**
   * read where the step is read
   *
   * @minItems 0
   * @maxItems 20
   */
  cautions: string[];
  as_damage: Crack;
}
export interface Crack {
  /**
   * first end, from the neck edge [mm]
   */
  from_x_mm: number;
  /**
   * first end, from the centre line; treble positive [mm]
   */
  from_y_mm: number;
  /**
   * second end [mm]
   */
  to_x_mm: number;
  /**
   * second end [mm]
   */
  to_y_mm: number;
  /**
   * that hold it
   *
   * @minItems 0
   * @maxItems 30
   */
  cleats: Cleat[];
}
export interface CleatsRequestAsk {
  /**
   * which plate is cracked
   */
  plate?: "top" | "back";
  top?: WhichTopAsk;
  /**
   * first end of the crack, from the neck edge [mm]
   */
  from_x_mm: number | string;
  /**
   * from the centre line, treble side positive [mm]
   */
  from_y_mm: number | string;
  /**
   * its other end [mm]
   */
  to_x_mm: number | string;
  /**
   * its other end [mm]
   */
  to_y_mm: number | string;
  /**
   * beside the crack; absent: as built [mm]
   */
  plate_thickness_mm?: number | string;
  /**
   * one standard deviation of that [mm]
   */
  plate_thickness_sd_mm?: number | string;
  /**
   * beside those of the top; all of them for a back
   *
   * @minItems 0
   * @maxItems 40
   */
  braces?: HoldingStripAsk[];
  /**
   * then a short crack gets cleats too
   */
  glued_before?: boolean;
  /**
   * of the cleats
   */
  wood?: string;
}
export interface WhichTopAsk {
  /**
   * in words of form
   */
  body_size?: "parlour" | "small" | "mid_size" | "slope_large" | "square_large";
  /**
   * a pattern: x_scalloped, x_braced, ladder, fan
   */
  bracing?: string;
  /**
   * of the top, when it is known [mm]
   */
  thickness_mm?: number | string;
  /**
   * of the top, when it is known
   */
  species?: string;
  /**
   * 0 quartersawn, 90 flat-sawn [degrees]
   */
  ring_angle_deg?: number;
  /**
   * of the top's dome, when it is known [mm]
   */
  arch_radius_mm?: number | string;
  drawn?: TopDesignAsk;
}
export interface TopDesignAsk {
  /**
   * one half from the neck edge to the tail, both on the centre line
   *
   * @minItems 5
   * @maxItems 60
   */
  outline: OutlinePointAsk[];
  /**
   * of the top [mm]
   */
  thickness_mm: number | string;
  /**
   * wood of the top
   */
  species?: string;
  /**
   * 0 quartersawn, 90 flat-sawn [degrees]
   */
  ring_angle_deg?: number;
  /**
   * of the dome; absent: flat [mm]
   */
  arch_radius_mm?: number | string;
  /**
   * under the top
   *
   * @minItems 0
   * @maxItems 40
   */
  braces: BraceAsk[];
  soundhole: SoundholeAsk;
  bridge: BridgeDesignAsk;
  bridge_plate: CrossPieceAsk;
  rim: RimStiffnessAsk;
}
export interface OutlinePointAsk {
  /**
   * from the neck edge, along the centre line [mm]
   */
  x_mm: number | string;
  /**
   * from the centre line to the edge [mm]
   */
  half_width_mm: number | string;
}
export interface SoundholeAsk {
  /**
   * from the neck edge [mm]
   */
  centre_x_mm: number | string;
  /**
   * of the hole [mm]
   */
  radius_mm: number | string;
  /**
   * reinforcement round it, under the top [mm]
   */
  ring_width_mm?: number | string;
  /**
   * 0: none [mm]
   */
  ring_thickness_mm?: number | string;
  /**
   * its wood
   */
  ring_species?: string;
}
export interface RimStiffnessAsk {
  /**
   * per length, in the plane, across the edge [N/mm2]
   */
  outward_n_mm2: number;
  /**
   * in the plane, along the edge [N/mm2]
   */
  along_n_mm2: number;
  /**
   * out of the plane [N/mm2]
   */
  up_n_mm2: number;
  /**
   * moment per length for each radian of slope across the edge [N]
   */
  slope_n: number;
  /**
   * of neck and tail block [mm]
   */
  block_half_width_mm: number | string;
  /**
   * at the blocks, in the plane [N/mm2]
   */
  block_in_plane_n_mm2: number;
  /**
   * at the blocks, out of the plane [N/mm2]
   */
  block_up_n_mm2: number;
  /**
   * at the blocks, slope [N]
   */
  block_slope_n: number;
}
export interface HoldingStripAsk {
  /**
   * what it is
   */
  name: string;
  /**
   * from the neck edge [mm]
   */
  from_x_mm: number | string;
  /**
   * from the centre line, treble side positive [mm]
   */
  from_y_mm: number | string;
  /**
   * its other end [mm]
   */
  to_x_mm: number | string;
  /**
   * its other end [mm]
   */
  to_y_mm: number | string;
  /**
   * across it [mm]
   */
  width_mm?: number | string;
}
export interface ContactMapRequestAsk {
  neck?: NeckLineAsk;
  action: StringActionAsk;
  /**
   * string 1, the thinnest, first
   *
   * @minItems 1
   * @maxItems 12
   */
  strings: GuitarStringAsk[];
  attack: AttackAsk;
  hard_attack: AttackAsk;
  /**
   * the notes asked for; empty: every note
   *
   * @minItems 0
   * @maxItems 288
   */
  notes?: NoteAskedAsk[];
}
export interface NoteAskedAsk {
  /**
   * 1 is the thinnest
   */
  string: number;
  /**
   * 0 is the open string
   */
  stopped_fret: number;
}
export interface ContactMapResult {
  /**
   * in the order asked; else string 1 open, string 1 at fret 1, and so on
   *
   * @minItems 1
   * @maxItems 288
   */
  notes: NoteContact[];
  /**
   * notes that are clean even when played hard
   */
  clean: number;
  /**
   * notes that buzz only when played hard
   */
  on_hard_playing: number;
  /**
   * notes that buzz in normal playing
   */
  on_normal_playing: number;
  /**
   * one sentence
   */
  verdict: string;
}
export interface NoteContact {
  /**
   * 1 is the thinnest
   */
  string: number;
  /**
   * 0 is the open string
   */
  stopped_fret: number;
  /**
   * when it buzzes
   */
  verdict: "clean" | "on_hard_playing" | "on_normal_playing";
  /**
   * the fret struck hardest; 0 when none is touched
   */
  struck_fret: number;
  /**
   * the string lies on that fret before it is plucked; nothing was run
   */
  lies_on_fret: boolean;
  /**
   * part of the bridge's force above 2 kHz, over the same note without frets [dB]
   */
  gain_db_normal: number;
  /**
   * the same when played hard [dB]
   */
  gain_db_hard: number;
  /**
   * to all frets in a quarter of a second, mN s [mN s]
   */
  impulse_normal_mns: number;
  /**
   * the same when played hard [mN s]
   */
  impulse_hard_mns: number;
}
export interface ContactRequestAsk {
  neck?: NeckLineAsk;
  action: StringActionAsk;
  /**
   * string 1, the thinnest, first
   *
   * @minItems 1
   * @maxItems 12
   */
  strings: GuitarStringAsk[];
  attack: AttackAsk;
  /**
   * 1 is the thinnest
   */
  string: number;
  /**
   * 0 is the open string
   */
  stopped_fret?: number;
  /**
   * which way it is drawn before it is let go
   */
  direction?: "away" | "toward";
  /**
   * of this note at the pluck, normal to the board, instead of the attack's [mm]
   */
  amplitude_mm?: number | string;
  /**
   * the same as a force [N]
   */
  pluck_force_n?: number;
  /**
   * how long it is followed [s]
   */
  seconds?: number;
  decay?: DecayTimesAsk;
}
export interface DecayTimesAsk {
  /**
   * time to fall by 60 dB at 100 Hz [s]
   */
  at_100_hz_s: number;
  /**
   * the same at 2000 Hz [s]
   */
  at_2000_hz_s: number;
}
export interface ContactResult {
  /**
   * what it means
   */
  verdict: "clean" | "graze" | "buzzes";
  /**
   * one sentence
   */
  sentence: string;
  /**
   * as let go [mm]
   */
  amplitude_mm: number;
  /**
   * that holds it there [N]
   */
  pluck_force_n: number;
  /**
   * after it is let go; absent when it touches nothing [ms]
   */
  first_touch_ms?: number;
  /**
   * the fret touched first
   */
  first_fret?: number;
  /**
   * every fret that was touched
   *
   * @minItems 0
   * @maxItems 24
   */
  struck: StruckFret[];
  /**
   * to all frets together, mN s [mN s]
   */
  impulse_mns: number;
  /**
   * part of the bridge's force above 2 kHz, over the same note without frets [dB]
   */
  gain_db: number;
  /**
   * of what the note would have at the end without frets
   */
  energy_taken: number;
  /**
   * put into the string by the pluck [mJ]
   */
  pluck_energy_mj: number;
  /**
   * largest error of the energy at any step, damping and pluck accounted for
   */
  energy_balance: number;
  /**
   * steps the motion was followed in
   */
  steps_per_s: number;
}
export interface StruckFret {
  /**
   * the fret
   */
  fret: number;
  /**
   * all pushes on it added up, mN s [mN s]
   */
  impulse_mns: number;
}
export interface CrackAnswer {
  /**
   * false: its bracing is none of those known, and nothing was calculated
   */
  known: boolean;
  result: CrackRiskResult;
  /**
   * winters it is taken to have lived uncracked in such air
   */
  years_lived: number;
  /**
   * found on it, in the order of result.cracks
   *
   * @minItems 0
   * @maxItems 1000
   */
  cracks: TakenFinding[];
  /**
   * findings of the top that it cannot take, a line each
   *
   * @minItems 0
   * @maxItems 1000
   */
  not_used: string[];
  /**
   * what no record says and was taken for granted
   *
   * @minItems 0
   * @maxItems 100
   */
  assumed: string[];
}
export interface CrackRiskResult {
  /**
   * mean of the driest seven days in the room, 0..1
   */
  lowest_week_relative_humidity: number;
  /**
   * of the wood
   */
  lowest_week_moisture_percent: number;
  here: ChanceAt;
  /**
   * of a new top whose wood behaved like a spring
   */
  chance_if_nothing_relaxed: number;
  /**
   * the chance against the lowest humidity held for a week, by rising humidity
   *
   * @minItems 0
   * @maxItems 200
   */
  curve: ChanceAt[];
  /**
   * lowest that keeps the chance acceptable, 0..1; absent: none does
   */
  keep_relative_humidity?: number;
  /**
   * across the grain, one percent lost at once; 95 % of the top stays below
   */
  stress_per_percent_mpa: number;
  /**
   * mean of the worst seven days, faded as it has
   */
  highest_week_stress_mpa: number;
  /**
   * the same of a spring
   */
  highest_week_stress_if_nothing_relaxed_mpa: number;
  /**
   * median strength across the grain, held for a week
   */
  held_strength_mpa: number;
  /**
   * those that are there, as asked
   *
   * @minItems 0
   * @maxItems 100
   */
  cracks: CrackThatIsThere[];
  /**
   * in plain sentences
   */
  verdict: string;
  /**
   * what was taken for granted
   *
   * @minItems 0
   * @maxItems 20
   */
  assumptions: string[];
  /**
   * where the model cannot tell
   *
   * @minItems 0
   * @maxItems 20
   */
  cautions: string[];
}
export interface CrackThatIsThere {
  /**
   * of the crack [mm]
   */
  length_mm: number;
  /**
   * between cleats, glued braces, bridge and bridge plate [mm]
   */
  longest_free_mm: number;
  /**
   * in the driest week, at the middle of that [mm]
   */
  opens_mm: number;
  /**
   * that it grows longer
   */
  chance_runs_on: number;
  /**
   * the same in words
   */
  sentence: string;
}
export interface TakenFinding {
  /**
   * of the finding on its instrument
   */
  number: number;
  /**
   * what the plate model makes of it
   */
  taken_as:
    | "crack"
    | "loose_brace"
    | "missing_brace"
    | "lifted_bridge"
    | "worn_plate"
    | "thin_place"
    | "cleat"
    | "not_modelled";
  /**
   * what it is and how it is taken
   */
  words: string;
  /**
   * how it lies on the top
   */
  shape: "point" | "line" | "area";
  /**
   * on the axes of the top
   *
   * @minItems 0
   * @maxItems 1000
   */
  points: DrawingPoint[];
}
export interface DrawingPoint {
  /**
   * along the view [mm]
   */
  x_mm: number;
  /**
   * across the view [mm]
   */
  y_mm: number;
}
export interface CrackAsk {
  /**
   * first end, from the neck edge [mm]
   */
  from_x_mm: number | string;
  /**
   * first end, from the centre line; treble positive [mm]
   */
  from_y_mm: number | string;
  /**
   * second end [mm]
   */
  to_x_mm: number | string;
  /**
   * second end [mm]
   */
  to_y_mm: number | string;
  /**
   * that hold it
   *
   * @minItems 0
   * @maxItems 30
   */
  cleats?: CleatAsk[];
}
export interface CrackRiskRequestAsk {
  top?: WhichTopAsk;
  damage?: TopDamageAsk;
  home?: HomeAirAsk;
  /**
   * the first of 365 days in the home
   */
  first?: string;
  /**
   * daily means of the room, 0..1, instead of a home
   *
   * @minItems 0
   * @maxItems 3660
   */
  relative_humidity?: number[];
  /**
   * of the room, with humidity or moisture by the day [C]
   */
  temperature_c?: number;
  /**
   * of the wood by the day, instead of a home [percent]
   *
   * @minItems 0
   * @maxItems 3660
   */
  moisture_percent?: number[];
  /**
   * in which the wood follows the room [days]
   */
  lag_days?: number;
  /**
   * in which top and braces were glued, 0..1
   */
  built_at_relative_humidity?: number;
  /**
   * in these same days, uncracked; 0 new, or repaired since [years]
   */
  years_lived?: number;
  /**
   * of a drier week that it is known to have lived through, 0..1
   */
  lowest_survived_relative_humidity?: number;
}
export interface TopDamageAsk {
  /**
   * stretches off the top
   *
   * @minItems 0
   * @maxItems 20
   */
  loose_braces?: LooseBraceAsk[];
  /**
   * right through the top
   *
   * @minItems 0
   * @maxItems 10
   */
  cracks?: CrackAsk[];
  /**
   * measured; none: the design's everywhere
   *
   * @minItems 0
   * @maxItems 200
   */
  thickness?: ThicknessReadingAsk[];
  /**
   * share of its thickness gone along the pin holes
   */
  bridge_plate_worn?: number;
  /**
   * from the back edge of the bridge, off the top [mm]
   */
  bridge_lifted_mm?: number | string;
}
export interface LooseBraceAsk {
  /**
   * its name in the design
   */
  brace: string;
  /**
   * from which end it is measured
   */
  end: "first" | "second";
  /**
   * where the looseness begins, from that end [mm]
   */
  from_end_mm?: number | string;
  /**
   * how much is loose [mm]
   */
  length_mm: number | string;
}
export interface ThicknessReadingAsk {
  /**
   * from the neck edge [mm]
   */
  x_mm: number | string;
  /**
   * from the centre line; treble positive [mm]
   */
  y_mm: number | string;
  /**
   * of the top there [mm]
   */
  thickness_mm: number | string;
}
export interface HomeAirAsk {
  /**
   * whether the months were read indoors, or outdoors and are brought in
   */
  kind?: "indoor_months" | "outdoor_months";
  /**
   * mean temperature of each month, January first [C]
   *
   * @minItems 12
   * @maxItems 12
   */
  temperature_c?: number[];
  /**
   * mean relative humidity of each month, 0..1; indoor_months
   *
   * @minItems 12
   * @maxItems 12
   */
  relative_humidity?: number[];
  /**
   * mean dew point of each month, over liquid water; outdoor_months [C]
   *
   * @minItems 12
   * @maxItems 12
   */
  dew_point_c?: number[];
  /**
   * the room is warmed to this; outdoor_months [C]
   */
  heating_set_point_c?: number;
  /**
   * water that people, cooking and plants add when the house is shut (0 C or colder outdoors); it falls to nothing at 20 C outdoors; outdoor_months [g/m3]
   */
  moisture_gain_g_per_m3?: number;
  /**
   * the room is never drier than this, 0..1
   */
  humidifier_floor?: number;
  /**
   * the room is never damper than this, 0..1
   */
  dehumidifier_ceiling?: number;
  /**
   * standard deviation of the day-to-day departure, 0..1
   */
  weather_sd_relative_humidity?: number;
  /**
   * time in which a departure falls to 1/e [days]
   */
  weather_memory_days?: number;
  /**
   * days read by a hygrometer in the home; of two for one day the later in the list stands
   *
   * @minItems 0
   * @maxItems 20000
   */
  log?: LoggedDayAsk[];
}
export interface LoggedDayAsk {
  /**
   * the day
   */
  date: string;
  /**
   * mean air temperature of the day [C]
   */
  temperature_c: number;
  /**
   * mean relative humidity of the day, 0..1, over liquid water
   */
  relative_humidity: number;
}
export interface CrestOnTop {
  /**
   * 1 is the thinnest
   */
  string: number;
  /**
   * crest wanted behind the front face [mm]
   */
  behind_front_mm: number;
  /**
   * and not nearer the front than this [mm]
   */
  behind_front_low_mm: number;
  /**
   * nor further back than this [mm]
   */
  behind_front_high_mm: number;
  /**
   * whether it can be filed there
   */
  place: "fits" | "may_fit" | "too_far_forward" | "too_far_back";
  /**
   * an octave error of this string would help to decide
   */
  to_be_read: boolean;
}
export interface DatedChange {
  /**
   * the day of the visit that says it
   */
  date: string;
  change: FindingChange;
}
export interface FindingChange {
  /**
   * number in the book; 0: not kept yet
   */
  id: number;
  /**
   * the visit that says it
   */
  visit_id: number;
  /**
   * the earlier finding
   */
  finding_id: number;
  /**
   * what has become of it
   */
  state: "unchanged" | "grown" | "repaired" | "gone";
  /**
   * what was read at it now
   *
   * @minItems 0
   * @maxItems 20
   */
  extents: FindingExtent[];
  /**
   * that show it now
   *
   * @minItems 0
   * @maxItems 40
   */
  photos: FindingPhoto[];
  /**
   * the one this corrects; 0: none
   */
  supersedes: number;
  /**
   * the one that corrects this; 0: it stands. Set by the book
   */
  superseded_by: number;
  /**
   * anything else
   */
  note: string;
}
export interface FindingExtent {
  /**
   * what was read: an id in data/finding_measures.csv
   */
  measure: string;
  /**
   * as it was entered: .004, 2 mm
   */
  typed: string;
  /**
   * what it means [mm]
   */
  value_mm: number;
}
export interface FindingPhoto {
  /**
   * a photo in the book
   */
  photo_id: number;
}
export interface DaysOutside {
  low_bass: Estimate;
  low_treble: Estimate;
  high_bass: Estimate;
  high_treble: Estimate;
  low_either: Estimate;
  high_either: Estimate;
}
export interface DecidingNote {
  /**
   * 1 is the thinnest
   */
  string: number;
  /**
   * 0 is the open string
   */
  stopped_fret: number;
  /**
   * whose crown it would touch
   */
  fret: number;
  /**
   * when plucked away from the board; else toward it
   */
  away: boolean;
}
export interface DecisionShown {
  /**
   * its id
   */
  decision: string;
  /**
   * as asked
   */
  question: string;
  /**
   * a reading, or ask
   */
  about: string;
  /**
   * the operation that waits for it
   */
  before: string;
  /**
   * what it may come out as
   *
   * @minItems 0
   * @maxItems 60
   */
  outcomes: string[];
  /**
   * what it comes out as now
   */
  outcome: string;
  /**
   * how
   */
  known: "answered" | "read" | "too_near" | "assumed" | "on_record" | "overridden";
  /**
   * from the nearest limit, in repeatabilities
   */
  margin_repeatability?: number;
  /**
   * nothing more is done
   */
  stops: boolean;
  /**
   * what follows; may be empty
   */
  says: string;
}
export interface DiagnoseRequest {
  /**
   * complaints, data/symptoms.csv; findings raise theirs by themselves
   *
   * @minItems 0
   * @maxItems 60
   */
  symptoms: string[];
  /**
   * readings of the instrument and figures of other models
   *
   * @minItems 0
   * @maxItems 200
   */
  readings: GivenReading[];
  /**
   * what the survey found
   *
   * @minItems 0
   * @maxItems 200
   */
  findings: FindingSeen[];
  /**
   * kinds that are not among the findings were looked for
   */
  surveyed: boolean;
  /**
   * answers to data/diagnosis_facts.csv
   *
   * @minItems 0
   * @maxItems 100
   */
  facts: SaidFact[];
  humidity_override?: GateOverride;
}
export interface GivenReading {
  /**
   * id in data/measures.csv, finding_measures.csv or model_figures.csv
   */
  measure: string;
  /**
   * in the unit of that table
   */
  value: number;
  /**
   * one standard deviation; absent: that of the usual gauge
   */
  sd?: number;
  /**
   * the same in the first or last trusted set
   */
  earlier?: number;
  /**
   * one standard deviation of that
   */
  earlier_sd?: number;
}
export interface FindingSeen {
  /**
   * kind of finding, data/finding_kinds.csv
   */
  kind: string;
  /**
   * in words
   */
  where: string;
  /**
   * what was read at it
   *
   * @minItems 0
   * @maxItems 60
   */
  readings: GivenReading[];
}
export interface SaidFact {
  /**
   * id in data/diagnosis_facts.csv
   */
  fact: string;
  /**
   * the answer: yes is true
   */
  holds: boolean;
}
export interface GateOverride {
  /**
   * who decided it
   */
  by: string;
  /**
   * when
   */
  on: string;
  /**
   * the reason, in their words
   */
  why: string;
}
export interface DiagnoseRequestAsk {
  /**
   * complaints, data/symptoms.csv; findings raise theirs by themselves
   *
   * @minItems 0
   * @maxItems 60
   */
  symptoms?: string[];
  /**
   * readings of the instrument and figures of other models
   *
   * @minItems 0
   * @maxItems 200
   */
  readings?: GivenReadingAsk[];
  /**
   * what the survey found
   *
   * @minItems 0
   * @maxItems 200
   */
  findings?: FindingSeenAsk[];
  /**
   * kinds that are not among the findings were looked for
   */
  surveyed?: boolean;
  /**
   * answers to data/diagnosis_facts.csv
   *
   * @minItems 0
   * @maxItems 100
   */
  facts?: SaidFactAsk[];
  humidity_override?: GateOverrideAsk;
}
export interface GivenReadingAsk {
  /**
   * id in data/measures.csv, finding_measures.csv or model_figures.csv
   */
  measure: string;
  /**
   * in the unit of that table
   */
  value: number;
  /**
   * one standard deviation; absent: that of the usual gauge
   */
  sd?: number;
  /**
   * the same in the first or last trusted set
   */
  earlier?: number;
  /**
   * one standard deviation of that
   */
  earlier_sd?: number;
}
export interface FindingSeenAsk {
  /**
   * kind of finding, data/finding_kinds.csv
   */
  kind: string;
  /**
   * in words
   */
  where?: string;
  /**
   * what was read at it
   *
   * @minItems 0
   * @maxItems 60
   */
  readings?: GivenReadingAsk[];
}
export interface SaidFactAsk {
  /**
   * id in data/diagnosis_facts.csv
   */
  fact: string;
  /**
   * the answer: yes is true
   */
  holds: boolean;
}
export interface GateOverrideAsk {
  /**
   * who decided it
   */
  by: string;
  /**
   * when
   */
  on: string;
  /**
   * the reason, in their words
   */
  why: string;
}
export interface DiagnoseResult {
  /**
   * why the strings come down at once; empty: they may stay
   */
  slacken_now: string;
  humidity: HumidityGate;
  /**
   * operations that wait for it
   *
   * @minItems 0
   * @maxItems 200
   */
  blocked: string[];
  /**
   * in the order of proposing
   *
   * @minItems 0
   * @maxItems 200
   */
  causes: CauseShown[];
  /**
   * what to read or ask next, the best first
   *
   * @minItems 0
   * @maxItems 300
   */
  next: NextMeasurement[];
  /**
   * one sentence
   */
  verdict: string;
}
export interface HumidityGate {
  /**
   * what the humidity in the body says
   */
  state: "open" | "near_limit" | "dry" | "damp" | "not_read";
  /**
   * neck, fret, saddle and crack-gluing work waits
   */
  holds: boolean;
  /**
   * one sentence
   */
  words: string;
  /**
   * by whom, when and why; empty: it is not
   */
  overridden: string;
}
export interface NextMeasurement {
  /**
   * reading, change:, finding: or fact:
   */
  about: string;
  /**
   * what to read and how, or the question
   */
  words: string;
  /**
   * open causes decided, whichever way it comes out
   */
  decides_at_least: number;
  /**
   * open causes decided at best
   */
  decides_at_most: number;
}
export interface DiagnosisAnswer {
  request: DiagnoseRequest;
  result: DiagnoseResult;
  /**
   * what no record says and was taken for granted, and what was left out
   *
   * @minItems 0
   * @maxItems 200
   */
  assumed: string[];
}
export interface DiagnosisShown {
  answer: DiagnosisAnswer;
  /**
   * what can be complained of
   *
   * @minItems 0
   * @maxItems 1000
   */
  symptoms: NamedChoice[];
  /**
   * what only a person can say
   *
   * @minItems 0
   * @maxItems 1000
   */
  questions: NamedChoice[];
  /**
   * names of what causes lead to
   *
   * @minItems 0
   * @maxItems 1000
   */
  remedies: NamedChoice[];
  /**
   * at this visit, oldest first
   *
   * @minItems 0
   * @maxItems 100000
   */
  said: SaidAtVisit[];
}
export interface NamedChoice {
  /**
   * as records name it
   */
  id: string;
  /**
   * as a person says it
   */
  words: string;
}
export interface SaidAtVisit {
  /**
   * number in the book; 0: not kept yet
   */
  id: number;
  /**
   * of this visit
   */
  visit_id: number;
  /**
   * a symptom, or an answer to a question of the diagnosis
   */
  about: "symptom" | "fact";
  /**
   * an id in data/symptoms.csv or data/diagnosis_facts.csv
   */
  name: string;
  /**
   * no: it does not, or no longer
   */
  holds: boolean;
  /**
   * the day
   */
  day: string;
  /**
   * who said so
   */
  who: string;
}
export interface DrawingPointAsk {
  /**
   * along the view [mm]
   */
  x_mm: number | string;
  /**
   * across the view [mm]
   */
  y_mm: number | string;
}
export interface DrawnLine {
  /**
   * what it is
   */
  part:
    | "edge"
    | "hole"
    | "bridge"
    | "saddle"
    | "board"
    | "fret"
    | "neck"
    | "nut"
    | "brace"
    | "plate"
    | "block"
    | "seam"
    | "tuner";
  /**
   * as the bench calls it; empty: it has no name of its own
   */
  name: string;
  /**
   * the last point joins the first
   */
  closed: boolean;
  /**
   * of a brace; 0: a line without width [mm]
   */
  width_mm: number;
  /**
   * from its first end
   *
   * @minItems 0
   * @maxItems 10000
   */
  points: DrawingPoint[];
}
export interface DrawnPlace {
  /**
   * as the bench calls it
   */
  name: string;
  at: DrawingPoint;
}
export interface EndTapAsk {
  /**
   * the hands-on part is done; else it goes on later
   */
  finished?: boolean;
  /**
   * how long hands were at it, where the tap came late; absent: until now [min]
   */
  minutes?: number;
  /**
   * what it was glued or finished with; 0: not said
   */
  lot_id?: number;
  /**
   * yes to a lot that is good no longer
   */
  past_its_day?: boolean;
  /**
   * anything else
   */
  note?: string;
}
export interface Equilibrium {
  /**
   * that wood comes to in this air [%]
   */
  moisture_percent: number;
  /**
   * percent of moisture for one percent of relative humidity more
   */
  percent_per_percent: number;
}
export interface EstimateAnswer {
  request: EstimateRequest;
  result: EstimateResult;
  /**
   * what each line of the result is in the book
   *
   * @minItems 0
   * @maxItems 1000
   */
  lines: LineOfJob[];
}
export interface EstimateRequest {
  /**
   * code of ISO 4217
   */
  currency: string;
  /**
   * decimal text in the currency
   */
  hourly_rate: string;
  /**
   * hands-on time is billed in steps of this [min]
   */
  billing_step_minutes?: number;
  /**
   * of half a minor unit
   */
  rounding: "half_up" | "half_even";
  /**
   * on every line, or once for each rate
   */
  tax_rounded: "per_line" | "per_rate";
  /**
   * what is offered
   *
   * @minItems 0
   * @maxItems 60
   */
  lines: EstimateLine[];
  /**
   * what the shop's log has taught
   *
   * @minItems 0
   * @maxItems 300
   */
  learnt: LearntWork[];
}
export interface EstimateLine {
  /**
   * what the owner says yes or no to
   */
  name: string;
  /**
   * now, later or not
   */
  when: "do_now" | "can_wait" | "leave_alone";
  repair?: ProcedureRequest;
  /**
   * work that no procedure gives
   *
   * @minItems 0
   * @maxItems 60
   */
  work: EstimateWork[];
  /**
   * what is bought for it
   *
   * @minItems 0
   * @maxItems 60
   */
  materials: EstimateMaterial[];
  /**
   * decimal text for the labour, instead of the hours; may be empty
   */
  fixed_price: string;
  /**
   * decimal text, up to three decimals
   */
  tax_percent: string;
  /**
   * in words an owner can accept or refuse
   */
  risk: string;
}
export interface ProcedureRequest {
  /**
   * id in data/procedures.csv
   */
  procedure: string;
  /**
   * what was read
   *
   * @minItems 0
   * @maxItems 200
   */
  readings: GivenReading[];
  /**
   * what was chosen by hand
   *
   * @minItems 0
   * @maxItems 60
   */
  answers: GivenAnswer[];
  /**
   * as the survey or an earlier job has it; an answer stands before it
   *
   * @minItems 0
   * @maxItems 60
   */
  found: GivenAnswer[];
  /**
   * how many cleats, frets, millimetres of crack ...
   *
   * @minItems 0
   * @maxItems 60
   */
  amounts: GivenAmount[];
  /**
   * operations done already at this visit
   *
   * @minItems 0
   * @maxItems 200
   */
  on_record: string[];
  /**
   * the owner's recorded yes
   *
   * @minItems 0
   * @maxItems 60
   */
  yes: OwnerYes[];
  humidity_override?: GateOverride;
}
export interface GivenAnswer {
  /**
   * the question
   */
  decision: string;
  /**
   * what was chosen
   */
  outcome: string;
}
export interface GivenAmount {
  /**
   * what there are so many of, as in data/operations.csv
   */
  amount: string;
  /**
   * how many
   */
  count: number;
}
export interface OwnerYes {
  /**
   * id in data/operations.csv; all: what neither lowers value nor is done on request only
   */
  operation: string;
  /**
   * who said yes
   */
  by: string;
  /**
   * when
   */
  on: string;
}
export interface EstimateWork {
  /**
   * its kind
   */
  operation: string;
  /**
   * undercut one time in ten [min]
   */
  low_minutes: number;
  /**
   * as often more as less [min]
   */
  typical_minutes: number;
  /**
   * exceeded one time in ten [min]
   */
  high_minutes: number;
}
export interface EstimateMaterial {
  /**
   * what is bought
   */
  name: string;
  /**
   * decimal text, up to three decimals
   */
  quantity: string;
  /**
   * decimal text in the currency
   */
  unit_price: string;
  /**
   * decimal text; empty: that of the line
   */
  tax_percent: string;
}
export interface LearntWork {
  /**
   * its kind
   */
  operation: string;
  /**
   * times its estimate, in the middle
   */
  factor: number;
  /**
   * standard deviation of ln(actual/estimate)
   */
  scatter: number;
}
export interface EstimateResult {
  /**
   * code of ISO 4217
   */
  currency: string;
  /**
   * decimals of an amount
   */
  minor_digits: number;
  /**
   * in words
   */
  rounding: string;
  /**
   * as asked
   *
   * @minItems 0
   * @maxItems 60
   */
  lines: PricedLine[];
  /**
   * side by side
   *
   * @minItems 0
   * @maxItems 3
   */
  options: EstimateTotal[];
  /**
   * what is taken for granted
   *
   * @minItems 0
   * @maxItems 20
   */
  assumptions: string[];
}
export interface PricedLine {
  /**
   * what the owner says yes or no to
   */
  name: string;
  /**
   * now, later or not
   */
  when: "do_now" | "can_wait" | "leave_alone";
  /**
   * undercut one time in ten [h]
   */
  low_hours: number;
  /**
   * as often more as less [h]
   */
  typical_hours: number;
  /**
   * exceeded one time in ten [h]
   */
  high_hours: number;
  /**
   * typical waits, one after the other [d]
   */
  wait_days: number;
  /**
   * in billing steps [min]
   */
  billed_minutes: number;
  /**
   * money
   */
  labour: string;
  /**
   * money, were the hours to come out low
   */
  labour_low: string;
  /**
   * money, were they to come out high
   */
  labour_high: string;
  /**
   * money
   */
  materials: string;
  /**
   * money, before tax
   */
  net: string;
  /**
   * money
   */
  tax: string;
  /**
   * money
   */
  gross: string;
  visit: VisitPart;
  /**
   * in words
   */
  risk: string;
  /**
   * what its repair still asks for
   *
   * @minItems 0
   * @maxItems 200
   */
  holds: string[];
  /**
   * some of it
   */
  cannot_be_undone: boolean;
  /**
   * some of it
   */
  lowers_value: boolean;
}
export interface VisitPart {
  /**
   * undercut one time in ten [h]
   */
  low_hours: number;
  /**
   * as often more as less [h]
   */
  typical_hours: number;
  /**
   * exceeded one time in ten [h]
   */
  high_hours: number;
  /**
   * in billing steps [min]
   */
  billed_minutes: number;
  /**
   * money, before tax
   */
  net: string;
  /**
   * money
   */
  tax: string;
}
export interface EstimateTotal {
  /**
   * which lines
   */
  what: string;
  /**
   * undercut one time in ten [h]
   */
  low_hours: number;
  /**
   * as often more as less [h]
   */
  typical_hours: number;
  /**
   * exceeded one time in ten [h]
   */
  high_hours: number;
  /**
   * money, before tax
   */
  net: string;
  /**
   * money
   */
  tax: string;
  /**
   * money
   */
  gross: string;
  /**
   * money, were every line to come out low
   */
  net_low: string;
  /**
   * money, were every line to come out high
   */
  net_high: string;
  visit: VisitPart;
  /**
   * by rate
   *
   * @minItems 0
   * @maxItems 60
   */
  taxes: TaxAtRate[];
}
export interface TaxAtRate {
  /**
   * the rate
   */
  percent: string;
  /**
   * money it is on
   */
  net: string;
  /**
   * money
   */
  tax: string;
}
export interface LineOfJob {
  /**
   * in the book
   */
  job_id: number;
  /**
   * the line as the owner reads it
   */
  words: string;
  /**
   * the owner said no to it
   */
  refused: boolean;
  /**
   * from the newest offer; empty: it does not, or there is none
   */
  differs: string;
}
export interface EstimateAsk {
  /**
   * as likely above as below
   */
  median: number;
  /**
   * 5 % lie below
   */
  low: number;
  /**
   * 5 % lie above
   */
  high: number;
}
export interface EstimateLineAsk {
  /**
   * what the owner says yes or no to
   */
  name: string;
  /**
   * now, later or not
   */
  when?: "do_now" | "can_wait" | "leave_alone";
  repair?: ProcedureRequestAsk;
  /**
   * work that no procedure gives
   *
   * @minItems 0
   * @maxItems 60
   */
  work?: EstimateWorkAsk[];
  /**
   * what is bought for it
   *
   * @minItems 0
   * @maxItems 60
   */
  materials?: EstimateMaterialAsk[];
  /**
   * decimal text for the labour, instead of the hours; may be empty
   */
  fixed_price?: string;
  /**
   * decimal text, up to three decimals
   */
  tax_percent?: string;
  /**
   * in words an owner can accept or refuse
   */
  risk?: string;
}
export interface ProcedureRequestAsk {
  /**
   * id in data/procedures.csv
   */
  procedure: string;
  /**
   * what was read
   *
   * @minItems 0
   * @maxItems 200
   */
  readings?: GivenReadingAsk[];
  /**
   * what was chosen by hand
   *
   * @minItems 0
   * @maxItems 60
   */
  answers?: GivenAnswerAsk[];
  /**
   * as the survey or an earlier job has it; an answer stands before it
   *
   * @minItems 0
   * @maxItems 60
   */
  found?: GivenAnswerAsk[];
  /**
   * how many cleats, frets, millimetres of crack ...
   *
   * @minItems 0
   * @maxItems 60
   */
  amounts?: GivenAmountAsk[];
  /**
   * operations done already at this visit
   *
   * @minItems 0
   * @maxItems 200
   */
  on_record?: string[];
  /**
   * the owner's recorded yes
   *
   * @minItems 0
   * @maxItems 60
   */
  yes?: OwnerYesAsk[];
  humidity_override?: GateOverrideAsk;
}
export interface GivenAnswerAsk {
  /**
   * the question
   */
  decision: string;
  /**
   * what was chosen
   */
  outcome: string;
}
export interface GivenAmountAsk {
  /**
   * what there are so many of, as in data/operations.csv
   */
  amount: string;
  /**
   * how many
   */
  count: number;
}
export interface OwnerYesAsk {
  /**
   * id in data/operations.csv; all: what neither lowers value nor is done on request only
   */
  operation: string;
  /**
   * who said yes
   */
  by: string;
  /**
   * when
   */
  on: string;
}
export interface EstimateWorkAsk {
  /**
   * its kind
   */
  operation: string;
  /**
   * undercut one time in ten [min]
   */
  low_minutes?: number;
  /**
   * as often more as less [min]
   */
  typical_minutes?: number;
  /**
   * exceeded one time in ten [min]
   */
  high_minutes?: number;
}
export interface EstimateMaterialAsk {
  /**
   * what is bought
   */
  name: string;
  /**
   * decimal text, up to three decimals
   */
  quantity?: string;
  /**
   * decimal text in the currency
   */
  unit_price: string;
  /**
   * decimal text; empty: that of the line
   */
  tax_percent?: string;
}
export interface EstimateRequestAsk {
  /**
   * code of ISO 4217
   */
  currency?: string;
  /**
   * decimal text in the currency
   */
  hourly_rate: string;
  /**
   * hands-on time is billed in steps of this [min]
   */
  billing_step_minutes?: number;
  /**
   * of half a minor unit
   */
  rounding?: "half_up" | "half_even";
  /**
   * on every line, or once for each rate
   */
  tax_rounded?: "per_line" | "per_rate";
  /**
   * what is offered
   *
   * @minItems 0
   * @maxItems 60
   */
  lines: EstimateLineAsk[];
  /**
   * what the shop's log has taught
   *
   * @minItems 0
   * @maxItems 300
   */
  learnt?: LearntWorkAsk[];
}
export interface LearntWorkAsk {
  /**
   * its kind
   */
  operation: string;
  /**
   * times its estimate, in the middle
   */
  factor?: number;
  /**
   * standard deviation of ln(actual/estimate)
   */
  scatter?: number;
}
export interface Finding {
  /**
   * number in the book; 0: not kept yet
   */
  id: number;
  /**
   * the visit it was found at
   */
  visit_id: number;
  /**
   * what it is: a name in data/finding_kinds.csv
   */
  kind: string;
  /**
   * which drawing it is on
   */
  view: "front" | "back" | "bass_side" | "treble_side" | "headstock" | "top_inside" | "back_inside";
  /**
   * how it lies there
   */
  shape: "point" | "line" | "area";
  /**
   * one; a line's from end to end; an area's round its edge
   *
   * @minItems 1
   * @maxItems 60
   */
  points: DrawingPoint[];
  /**
   * in words: lower bout, bass side
   */
  place: string;
  /**
   * the drawn part it is of: lower tone bar, fret 3
   */
  part: string;
  /**
   * along that part from its first end [mm]
   */
  part_from_mm?: number;
  /**
   * along that part from its first end [mm]
   */
  part_to_mm?: number;
  /**
   * whether it stands open
   */
  opening: "not_said" | "tight" | "open";
  /**
   * whether it moves under the hand or the strings
   */
  moving: "not_said" | "still" | "moves";
  /**
   * how much it matters
   */
  severity: "slight" | "moderate" | "serious";
  /**
   * how sure
   */
  certainty: "suspected" | "likely" | "sure";
  /**
   * what was read at it
   *
   * @minItems 0
   * @maxItems 20
   */
  extents: FindingExtent[];
  /**
   * that show it
   *
   * @minItems 0
   * @maxItems 40
   */
  photos: FindingPhoto[];
  /**
   * true in a correction: what it corrects was no finding
   */
  withdrawn: boolean;
  /**
   * the one this corrects; 0: none
   */
  supersedes: number;
  /**
   * the one that corrects this; 0: it stands. Set by the book
   */
  superseded_by: number;
  /**
   * anything else
   */
  note: string;
}
export interface FindingAsk {
  /**
   * number in the book; 0: not kept yet
   */
  id?: number;
  /**
   * the visit it was found at
   */
  visit_id?: number;
  /**
   * what it is: a name in data/finding_kinds.csv
   */
  kind: string;
  /**
   * which drawing it is on
   */
  view: "front" | "back" | "bass_side" | "treble_side" | "headstock" | "top_inside" | "back_inside";
  /**
   * how it lies there
   */
  shape: "point" | "line" | "area";
  /**
   * one; a line's from end to end; an area's round its edge
   *
   * @minItems 1
   * @maxItems 60
   */
  points: DrawingPointAsk[];
  /**
   * in words: lower bout, bass side
   */
  place?: string;
  /**
   * the drawn part it is of: lower tone bar, fret 3
   */
  part?: string;
  /**
   * along that part from its first end [mm]
   */
  part_from_mm?: number | string;
  /**
   * along that part from its first end [mm]
   */
  part_to_mm?: number | string;
  /**
   * whether it stands open
   */
  opening?: "not_said" | "tight" | "open";
  /**
   * whether it moves under the hand or the strings
   */
  moving?: "not_said" | "still" | "moves";
  /**
   * how much it matters
   */
  severity?: "slight" | "moderate" | "serious";
  /**
   * how sure
   */
  certainty?: "suspected" | "likely" | "sure";
  /**
   * what was read at it
   *
   * @minItems 0
   * @maxItems 20
   */
  extents?: FindingExtentAsk[];
  /**
   * that show it
   *
   * @minItems 0
   * @maxItems 40
   */
  photos?: FindingPhotoAsk[];
  /**
   * true in a correction: what it corrects was no finding
   */
  withdrawn?: boolean;
  /**
   * the one this corrects; 0: none
   */
  supersedes?: number;
  /**
   * the one that corrects this; 0: it stands. Set by the book
   */
  superseded_by?: number;
  /**
   * anything else
   */
  note?: string;
}
export interface FindingExtentAsk {
  /**
   * what was read: an id in data/finding_measures.csv
   */
  measure: string;
  /**
   * as it was entered: .004, 2 mm
   */
  typed?: string;
  /**
   * what it means [mm]
   */
  value_mm: number | string;
}
export interface FindingPhotoAsk {
  /**
   * a photo in the book
   */
  photo_id: number;
}
export interface FindingChangeAsk {
  /**
   * number in the book; 0: not kept yet
   */
  id?: number;
  /**
   * the visit that says it
   */
  visit_id?: number;
  /**
   * the earlier finding
   */
  finding_id: number;
  /**
   * what has become of it
   */
  state: "unchanged" | "grown" | "repaired" | "gone";
  /**
   * what was read at it now
   *
   * @minItems 0
   * @maxItems 20
   */
  extents?: FindingExtentAsk[];
  /**
   * that show it now
   *
   * @minItems 0
   * @maxItems 40
   */
  photos?: FindingPhotoAsk[];
  /**
   * the one this corrects; 0: none
   */
  supersedes?: number;
  /**
   * the one that corrects this; 0: it stands. Set by the book
   */
  superseded_by?: number;
  /**
   * anything else
   */
  note?: string;
}
export interface FindingForms {
  /**
   * what can be found, and on which views
   *
   * @minItems 0
   * @maxItems 10000
   */
  kinds: FindingKind[];
  /**
   * what can be read at a finding
   *
   * @minItems 0
   * @maxItems 10000
   */
  measures: Measure[];
}
export interface FindingKind {
  /**
   * as records name it
   */
  name: string;
  /**
   * as the bench says it
   */
  words: string;
  /**
   * how it is drawn
   */
  shape: "point" | "line" | "area";
  /**
   * worth reading at it, the deciding one first
   *
   * @minItems 0
   * @maxItems 1000
   */
  measures: string[];
  /**
   * the views it can be drawn on
   *
   * @minItems 0
   * @maxItems 1000
   */
  places: string[];
  /**
   * what to know of it
   */
  note: string;
}
export interface Measure {
  /**
   * as records name it
   */
  id: string;
  /**
   * as a form shows it
   */
  name: string;
  /**
   * mm, deg, percent, C or g
   */
  unit: string;
  /**
   * from what to what
   */
  where: string;
  /**
   * in which state
   */
  how: string;
  /**
   * below: ask before keeping
   */
  usual_low?: number;
  /**
   * above: ask before keeping
   */
  usual_high?: number;
  /**
   * below: refused
   */
  hard_low: number;
  /**
   * above: refused
   */
  hard_high: number;
  /**
   * usually read with
   */
  gauge: string;
  /**
   * where the ranges come from
   */
  source: string;
  /**
   * what to mind
   */
  note: string;
}
export interface FindingStory {
  /**
   * on its instrument, from 1; a correction keeps it
   */
  number: number;
  /**
   * the day of the visit that found it
   */
  found_on: string;
  finding: Finding;
  /**
   * what visits since have said of it, oldest first
   *
   * @minItems 0
   * @maxItems 100000
   */
  changes: DatedChange[];
  /**
   * neither repaired nor gone
   */
  open: boolean;
}
export interface FinishAnswer {
  /**
   * that can be asked about
   *
   * @minItems 0
   * @maxItems 1000
   */
  finishes: FinishOffered[];
  air?: ShopAir;
  /**
   * since it was read [min]
   */
  air_age_minutes: number;
  request: FinishDayRequest;
  result?: FinishDayResult;
  /**
   * how much may still come off
   *
   * @minItems 0
   * @maxItems 100
   */
  thickness: ThicknessBudget[];
  /**
   * what no record says and was taken for granted
   *
   * @minItems 0
   * @maxItems 50
   */
  assumed: string[];
}
export interface FinishOffered {
  /**
   * as data/finishes.csv names it
   */
  id: string;
  /**
   * in words
   */
  name: string;
  /**
   * what it holds on
   */
  goes_over: string;
  /**
   * what it does not go on
   */
  not_over: string;
  /**
   * whether it can be taken off again
   */
  reversibility: string;
  /**
   * a step of one of the visit's jobs is done with it
   */
  planned: boolean;
}
export interface FinishDayRequest {
  /**
   * id in data/finishes.csv
   */
  finish: string;
  /**
   * of the finishing room [C]
   */
  air_temperature_c: number;
  /**
   * of the finishing room, 0..1
   */
  relative_humidity: number;
  /**
   * one standard deviation of the hygrometer [percent]
   */
  humidity_sd_percent?: number;
  /**
   * one standard deviation of the thermometer [C]
   */
  temperature_sd_c?: number;
  /**
   * of the instrument, where it differs [C]
   */
  work_temperature_c?: number;
  /**
   * in all
   */
  coats_wanted: number;
  /**
   * so far
   */
  coats_done: number;
  /**
   * absent: none is on [h]
   */
  hours_since_last_coat?: number;
  /**
   * in which a coat may go on [h]
   */
  hours_left_today: number;
  /**
   * the day
   */
  today: string;
  /**
   * readings of the plate
   *
   * @minItems 0
   * @maxItems 100
   */
  thickness: PlateThickness[];
}
export interface PlateThickness {
  /**
   * in words
   */
  where: string;
  /**
   * plate and finish [mm]
   */
  now_mm: number;
  /**
   * when this job began [mm]
   */
  before_mm?: number;
  /**
   * one standard deviation of a reading [mm]
   */
  sd_mm?: number;
}
export interface FinishDayResult {
  /**
   * whether a coat goes on
   */
  verdict: "stop" | "too_near" | "trial" | "free";
  /**
   * one sentence
   */
  words: string;
  /**
   * of that air [C]
   */
  dew_point_c: number;
  /**
   * air or work over the dew point [C]
   */
  spread_c: number;
  /**
   * one standard deviation [C]
   */
  spread_sd_c: number;
  /**
   * under it no coat [C]
   */
  stop_spread_c: number;
  /**
   * over it nothing holds the coat back [C]
   */
  free_spread_c: number;
  /**
   * humidity or temperature out of their range
   *
   * @minItems 0
   * @maxItems 10
   */
  reasons: string[];
  /**
   * at most
   */
  coats_today: number;
  /**
   * of the next coat
   */
  window: string;
  /**
   * from now [h]
   */
  next_coat_from_hours?: number;
  /**
   * from now; negative: it has closed [h]
   */
  next_coat_until_hours?: number;
  /**
   * from today
   *
   * @minItems 0
   * @maxItems 10
   */
  calendar: FinishCalendarLine[];
  /**
   * what the wanted coats leave [um]
   */
  film_um: number;
  /**
   * usual [um]
   */
  film_low_um: number;
  /**
   * usual [um]
   */
  film_high_um: number;
  /**
   * how much may still come off
   *
   * @minItems 0
   * @maxItems 100
   */
  thickness: ThicknessBudget[];
  /**
   * read where the step is read
   *
   * @minItems 0
   * @maxItems 30
   */
  cautions: string[];
}
export interface FinishCalendarLine {
  /**
   * what may be done
   */
  what: string;
  /**
   * as many coats a day as the finish takes
   */
  earliest: string;
  /**
   * one coat a day, slow cure
   */
  latest: string;
}
export interface ThicknessBudget {
  /**
   * in words
   */
  where: string;
  /**
   * surely, the reading's own error taken off [mm]
   */
  may_come_off_mm: number;
  /**
   * what sets it
   */
  limited_by: string;
}
export interface FinishDayRequestAsk {
  /**
   * id in data/finishes.csv
   */
  finish?: string;
  /**
   * of the finishing room [C]
   */
  air_temperature_c?: number;
  /**
   * of the finishing room, 0..1
   */
  relative_humidity?: number;
  /**
   * one standard deviation of the hygrometer [percent]
   */
  humidity_sd_percent?: number;
  /**
   * one standard deviation of the thermometer [C]
   */
  temperature_sd_c?: number;
  /**
   * of the instrument, where it differs [C]
   */
  work_temperature_c?: number;
  /**
   * in all
   */
  coats_wanted?: number;
  /**
   * so far
   */
  coats_done?: number;
  /**
   * absent: none is on [h]
   */
  hours_since_last_coat?: number;
  /**
   * in which a coat may go on [h]
   */
  hours_left_today?: number;
  /**
   * the day
   */
  today: string;
  /**
   * readings of the plate
   *
   * @minItems 0
   * @maxItems 100
   */
  thickness?: PlateThicknessAsk[];
}
export interface PlateThicknessAsk {
  /**
   * in words
   */
  where: string;
  /**
   * plate and finish [mm]
   */
  now_mm: number | string;
  /**
   * when this job began [mm]
   */
  before_mm?: number | string;
  /**
   * one standard deviation of a reading [mm]
   */
  sd_mm?: number | string;
}
export interface FinishTrial {
  /**
   * number in the book; 0: not kept yet
   */
  id: number;
  /**
   * the visit it was made at
   */
  visit_id: number;
  /**
   * what it tries
   */
  kind: "tint" | "burst" | "stain" | "clear";
  /**
   * what it is to match, and where
   */
  aim: string;
  /**
   * what the colour is in: an id in data/finishes.csv, or plain words
   */
  carrier: string;
  /**
   * colours and how much of each
   */
  mix: string;
  /**
   * with what, how far
   */
  dilution: string;
  /**
   * what it was put on, and what lies under it
   */
  substrate: string;
  /**
   * how, and how many passes
   */
  application: string;
  /**
   * dry, and in which light
   */
  result: string;
  /**
   * what becomes of it
   */
  verdict: "not_yet" | "keep" | "sand_off";
  /**
   * that show it
   *
   * @minItems 0
   * @maxItems 40
   */
  photos: FindingPhoto[];
  /**
   * when it was made or looked at
   */
  day: string;
  /**
   * by whom
   */
  who: string;
  /**
   * true in a correction: what it corrects was no trial
   */
  withdrawn: boolean;
  /**
   * the one this says more of, or corrects; 0: none
   */
  supersedes: number;
  /**
   * the one that does; 0: it stands. Set by the book
   */
  superseded_by: number;
  /**
   * anything else
   */
  note: string;
}
export interface FinishTrialAsk {
  /**
   * number in the book; 0: not kept yet
   */
  id?: number;
  /**
   * the visit it was made at
   */
  visit_id?: number;
  /**
   * what it tries
   */
  kind?: "tint" | "burst" | "stain" | "clear";
  /**
   * what it is to match, and where
   */
  aim?: string;
  /**
   * what the colour is in: an id in data/finishes.csv, or plain words
   */
  carrier?: string;
  /**
   * colours and how much of each
   */
  mix: string;
  /**
   * with what, how far
   */
  dilution?: string;
  /**
   * what it was put on, and what lies under it
   */
  substrate: string;
  /**
   * how, and how many passes
   */
  application?: string;
  /**
   * dry, and in which light
   */
  result?: string;
  /**
   * what becomes of it
   */
  verdict?: "not_yet" | "keep" | "sand_off";
  /**
   * that show it
   *
   * @minItems 0
   * @maxItems 40
   */
  photos?: FindingPhotoAsk[];
  /**
   * when it was made or looked at
   */
  day: string;
  /**
   * by whom
   */
  who?: string;
  /**
   * true in a correction: what it corrects was no trial
   */
  withdrawn?: boolean;
  /**
   * the one this says more of, or corrects; 0: none
   */
  supersedes?: number;
  /**
   * the one that does; 0: it stands. Set by the book
   */
  superseded_by?: number;
  /**
   * anything else
   */
  note?: string;
}
export interface FinishTrialPage {
  /**
   * those that stand, the newest first
   *
   * @minItems 0
   * @maxItems 200
   */
  trials: FinishTrialStory[];
  /**
   * 0-based
   */
  page: number;
  /**
   * there is a page after this one
   */
  more: boolean;
  /**
   * on all pages
   */
  total: number;
}
export interface FinishTrialStory {
  trial: FinishTrial;
  /**
   * it was made for
   */
  instrument_id: number;
  /**
   * its name
   */
  instrument: string;
  /**
   * what was said of it before, the newest first
   *
   * @minItems 0
   * @maxItems 1000
   */
  earlier: FinishTrial[];
}
export interface FinishedWorkAsk {
  /**
   * the operation's kind, or its name
   */
  kind: string;
  /**
   * what the plan gave it [minutes]
   */
  estimated_minutes: number;
  /**
   * what it took [minutes]
   */
  actual_minutes: number;
}
export interface FirstGuess {
  /**
   * body size in words of form
   */
  body_size: "parlour" | "small" | "mid_size" | "slope_large" | "square_large";
  /**
   * pattern of the top's braces
   */
  bracing: "x_braced" | "ladder" | "fan" | "other";
  /**
   * as given, or usual for the body size [mm]
   */
  lower_bout_width_mm: number;
  /**
   * as given, or usual for the body size [mm]
   */
  top_thickness_mm: number;
  /**
   * of the growth rings in the top: 0 quartersawn
   */
  ring_angle_deg: number;
  /**
   * wood of the top
   */
  top_species: string;
  /**
   * what goes into it; the last is the response itself
   *
   * @minItems 0
   * @maxItems 20
   */
  parts: GuessPart[];
}
export interface GuessPart {
  /**
   * what it is
   */
  what: string;
  /**
   * of the value; empty: a share of what stands above
   */
  unit: string;
  value: Estimate;
}
export interface FlaggedReading {
  /**
   * day of the reading
   */
  date: string;
  /**
   * place within the day
   */
  order: number;
  /**
   * what was read
   */
  kind: "action12_bass" | "action12_treble" | "relief" | "bridge_over_rim";
  /**
   * as read [mm]
   */
  value_mm: number;
  /**
   * as the other readings expect it [mm]
   */
  expected_mm: number;
  /**
   * one standard deviation of that, gauge included [mm]
   */
  expected_sd_mm: number;
  /**
   * why it is set aside
   */
  why: string;
}
export interface FollowAnswer {
  /**
   * foretold and read
   *
   * @minItems 0
   * @maxItems 2
   */
  heights: ForetoldHeight[];
  /**
   * that read the strings at fret 12
   */
  visits_before: number;
  /**
   * the last of those
   */
  last_visit: string;
  /**
   * one plain sentence
   */
  verdict: string;
}
export interface ForetoldHeight {
  /**
   * action12_bass or action12_treble
   */
  measure: string;
  foretold_mm: Estimate;
  /**
   * as found [mm]
   */
  read_mm: number;
  /**
   * one standard deviation of the gauge [mm]
   */
  gauge_sd_mm: number;
  /**
   * read less foretold, in standard deviations of both together
   */
  off_sd: number;
  /**
   * how it fell
   */
  fell: "as_foretold" | "lower" | "higher";
}
export interface ForcingNote {
  /**
   * 1 is the thinnest
   */
  string: number;
  /**
   * 0 is the open string
   */
  stopped_fret: number;
  /**
   * when plucked away from the board; else toward it
   */
  away: boolean;
  /**
   * of this fret's own cut
   */
  share: number;
}
export interface FormTables {
  /**
   * what can be read
   *
   * @minItems 0
   * @maxItems 10000
   */
  measures: Measure[];
  /**
   * with what
   *
   * @minItems 0
   * @maxItems 10000
   */
  gauges: Gauge[];
  /**
   * work that moves the strings
   *
   * @minItems 0
   * @maxItems 10000
   */
  interventions: InterventionKind[];
  /**
   * sets by gauge
   *
   * @minItems 0
   * @maxItems 10000
   */
  string_sets: Offered[];
  /**
   * tunings
   *
   * @minItems 0
   * @maxItems 10000
   */
  tunings: Offered[];
  /**
   * how hard a player plays
   *
   * @minItems 0
   * @maxItems 10000
   */
  attacks: Offered[];
  /**
   * woods of tops
   *
   * @minItems 0
   * @maxItems 10000
   */
  species: Offered[];
  /**
   * body sizes
   *
   * @minItems 0
   * @maxItems 10000
   */
  body_designs: Offered[];
  /**
   * sorts of work that one may leave to others
   *
   * @minItems 0
   * @maxItems 10000
   */
  work_skills: Offered[];
}
export interface Gauge {
  /**
   * as records name it
   */
  id: string;
  /**
   * as a form shows it
   */
  name: string;
  /**
   * of the spread
   */
  unit: string;
  /**
   * one standard deviation of a reading with it
   */
  sd: number;
  /**
   * where the spread comes from
   */
  source: string;
  /**
   * what to mind
   */
  note: string;
}
export interface InterventionKind {
  /**
   * as records name it
   */
  id: string;
  /**
   * as a form shows it
   */
  name: string;
  /**
   * false: it may leave the strings where they were
   */
  always_moves: boolean;
  /**
   * it may leave the neck with another relief
   */
  moves_relief: boolean;
  /**
   * how its size at fret 12 is known
   */
  size_known_by: string;
  /**
   * one standard deviation of a size so known
   */
  change_sd_mm: number;
  /**
   * where the spread comes from
   */
  source: string;
  /**
   * what to mind
   */
  note: string;
}
export interface Offered {
  /**
   * as records name it
   */
  id: string;
  /**
   * as a form shows it
   */
  name: string;
  /**
   * what to know before choosing it
   */
  note: string;
}
export interface FretAnswer {
  /**
   * the visit whose readings these are
   */
  read_on?: string;
  /**
   * what the answer rests on
   *
   * @minItems 0
   * @maxItems 400
   */
  readings: FretReading[];
  result?: FretDressResult;
  /**
   * of the neck, as read or assumed [mm]
   */
  relief_mm: number;
  /**
   * scale length [mm]
   */
  scale_length_mm: number;
  /**
   * fret at the body joint
   */
  body_joint_fret: number;
  /**
   * number of frets
   */
  fret_count: number;
  /**
   * what no record says and was taken for granted
   *
   * @minItems 0
   * @maxItems 100
   */
  assumed: string[];
}
export interface FretReading {
  /**
   * how it was read
   */
  kind: "departure" | "straightedge" | "rocker" | "over_board" | "springs";
  /**
   * the fret read; of a rocker, the middle one
   */
  fret: number;
  /**
   * where across the board
   */
  side: "both" | "bass" | "treble";
  /**
   * departure: positive is high; straightedge: the gap; over_board: the metal left [mm]
   */
  value_mm: number;
  /**
   * one standard deviation of the reading [mm]
   */
  sd_mm?: number;
  /**
   * straightedge: the lower fret it lies on
   */
  from_fret: number;
  /**
   * straightedge: the higher fret it lies on
   */
  to_fret: number;
}
export interface FretDressResult {
  /**
   * what it is
   */
  verdict:
    "clean" | "withheld" | "loose" | "nut" | "relief" | "action" | "hump" | "kink" | "spot" | "level_all" | "refret";
  /**
   * the verdict in plain words
   */
  sentence: string;
  /**
   * what it rests on
   *
   * @minItems 0
   * @maxItems 20
   */
  explanation: string[];
  /**
   * in order
   *
   * @minItems 0
   * @maxItems 20
   */
  steps: string[];
  /**
   * what to mind
   *
   * @minItems 0
   * @maxItems 20
   */
  cautions: string[];
  /**
   * fret 1 first
   *
   * @minItems 12
   * @maxItems 24
   */
  frets: FretToDress[];
  /**
   * bass and treble were read apart
   */
  apart: boolean;
  /**
   * the metal is to come off; else it stands for comparison only
   */
  cut_is_advised: boolean;
  /**
   * sum over the frets of the least metal [mm]
   */
  total_removed_mm: number;
  /**
   * sum over the frets to the one line [mm]
   */
  total_to_level_mm: number;
  /**
   * every note clean with all crowns on one line
   */
  clean_when_level: boolean;
  /**
   * notes nearer a crown than the margin, as found
   */
  touching_before: number;
  /**
   * the same after the least metal
   */
  touching_after: number;
  worst_shortfall: FretFigure;
  hump?: FretFigure;
  tongue_rise?: FretFigure;
  relief_instead?: ReliefInstead;
  /**
   * of the slots, when it is the nut [mm]
   */
  nut_rise_mm?: number;
  /**
   * notes that cannot be made clean at the wanted action, worst first
   *
   * @minItems 0
   * @maxItems 300
   */
  unclean: UncleanNote[];
  /**
   * the least action that can be had instead, bass [mm]
   */
  clean_action12_bass_mm?: number;
  /**
   * the same, treble [mm]
   */
  clean_action12_treble_mm?: number;
  /**
   * over the dressed crown of fret 12 [mm]
   */
  wanted_action12_bass_mm: number;
  /**
   * the same, treble [mm]
   */
  wanted_action12_treble_mm: number;
  /**
   * that every crown keeps [mm]
   */
  least_crown_mm: number;
  /**
   * room asked under every note [mm]
   */
  margin_mm: number;
  /**
   * metal does not grow back
   */
  irreversible: boolean;
}
export interface FretToDress {
  /**
   * number of the fret
   */
  fret: number;
  /**
   * distance from the nut [mm]
   */
  from_nut_mm: number;
  /**
   * false: the line of its neighbours stands in
   */
  read: boolean;
  /**
   * over the neck's bow and the best line through all crowns, as found [mm]
   */
  crown_bass_mm: number;
  /**
   * the same, treble [mm]
   */
  crown_treble_mm: number;
  /**
   * one standard deviation [mm]
   */
  crown_sd_mm: number;
  /**
   * the one line that touches every crown [mm]
   */
  line_bass_mm: number;
  /**
   * the same, treble [mm]
   */
  line_treble_mm: number;
  /**
   * least metal, note by note [mm]
   */
  remove_bass_mm: number;
  /**
   * the same, treble [mm]
   */
  remove_treble_mm: number;
  /**
   * to the one line instead [mm]
   */
  level_bass_mm: number;
  /**
   * the same, treble [mm]
   */
  level_treble_mm: number;
  /**
   * crown over the board after the least metal [mm]
   */
  left_bass_mm?: number;
  /**
   * the same, treble [mm]
   */
  left_treble_mm?: number;
  /**
   * it springs down when pressed
   */
  loose: boolean;
  /**
   * its crown does not hold what would have to come off
   */
  renew: boolean;
  /**
   * why it comes down
   */
  reason: string;
  /**
   * the notes that force it, most telling first
   *
   * @minItems 0
   * @maxItems 300
   */
  forced_by: ForcingNote[];
}
export interface FretFigure {
  /**
   * the figure [mm]
   */
  value_mm: number;
  /**
   * one standard deviation [mm]
   */
  sd_mm: number;
}
export interface ReliefInstead {
  /**
   * of relief; positive is more [mm]
   */
  change_least_mm: number;
  /**
   * when this neck lifts fret 12 least [mm]
   */
  change_most_mm: number;
  /**
   * what the feeler then reads [mm]
   */
  relief_after_least_mm: number;
  /**
   * at most [mm]
   */
  relief_after_most_mm: number;
  /**
   * of the strings at fret 12 when the rod alone is turned [mm]
   */
  action12_rise_most_mm: number;
}
export interface UncleanNote {
  /**
   * 1 is the thinnest
   */
  string: number;
  /**
   * 0 is the open string
   */
  stopped_fret: number;
  /**
   * whose crown it touches
   */
  fret: number;
  /**
   * how much is missing [mm]
   */
  short_by_mm: number;
}
export interface FretDressRequestAsk {
  neck?: NeckLineAsk;
  action: StringActionAsk;
  /**
   * string 1, the thinnest, first
   *
   * @minItems 1
   * @maxItems 12
   */
  strings: GuitarStringAsk[];
  attack: AttackAsk;
  /**
   * of the crowns, in any order
   *
   * @minItems 1
   * @maxItems 400
   */
  readings: FretReadingAsk[];
  /**
   * over the dressed crown of fret 12, bass [mm]
   */
  wanted_action12_bass_mm?: number | string;
  /**
   * the same, string 1 [mm]
   */
  wanted_action12_treble_mm?: number | string;
  /**
   * every crown keeps this much over the board [mm]
   */
  least_crown_mm?: number | string;
  /**
   * room left under every note [mm]
   */
  margin_mm?: number | string;
  /**
   * last fret below the line of the frets before it [mm]
   */
  fall_away_mm?: number | string;
  /**
   * the last fret still on the line
   */
  fall_away_from_fret?: number;
  /**
   * the neck has a rod that turns
   */
  adjustable_rod?: boolean;
  rod?: RodFigureAsk;
  /**
   * since the frets were last level
   */
  neck_angle_changed?: boolean;
  /**
   * in the body, as the crowns were read, 0..1
   */
  body_relative_humidity?: number;
}
export interface FretReadingAsk {
  /**
   * how it was read
   */
  kind: "departure" | "straightedge" | "rocker" | "over_board" | "springs";
  /**
   * the fret read; of a rocker, the middle one
   */
  fret: number;
  /**
   * where across the board
   */
  side?: "both" | "bass" | "treble";
  /**
   * departure: positive is high; straightedge: the gap; over_board: the metal left [mm]
   */
  value_mm: number | string;
  /**
   * one standard deviation of the reading [mm]
   */
  sd_mm?: number | string;
  /**
   * straightedge: the lower fret it lies on
   */
  from_fret?: number;
  /**
   * straightedge: the higher fret it lies on
   */
  to_fret?: number;
}
export interface RodFigureAsk {
  /**
   * mm that fret 12 rises for a mm of relief [mm per mm]
   */
  action12_per_relief: number;
  /**
   * one standard deviation of what is not known of it [mm per mm]
   */
  sd: number;
  /**
   * of this rod, read before and after, that it was learnt from
   */
  turns?: number;
}
export interface FretPoint {
  /**
   * number of the fret
   */
  fret: number;
  /**
   * distance from the nut [mm]
   */
  from_nut_mm: number;
  /**
   * crown over the fret plane [mm]
   */
  crown_over_plane_mm: number;
}
export interface FretWishesAsk {
  /**
   * asked as on this day
   */
  today?: string;
  /**
   * action wanted at fret 12 [mm]
   */
  wanted_bass_mm?: number | string;
  /**
   * action wanted at fret 12 [mm]
   */
  wanted_treble_mm?: number | string;
  /**
   * that every crown keeps [mm]
   */
  least_crown_mm?: number | string;
  /**
   * room left under every note [mm]
   */
  margin_mm?: number | string;
  /**
   * last fret below the line [mm]
   */
  fall_away_mm?: number | string;
  /**
   * the last fret still on the line
   */
  fall_away_from_fret?: number;
  /**
   * as they are being typed; empty: those kept
   *
   * @minItems 0
   * @maxItems 400
   */
  readings?: FretReadingAsk[];
}
export interface GateRecord {
  /**
   * number in the book; 0: not kept yet
   */
  id: number;
  /**
   * of this visit
   */
  visit_id: number;
  /**
   * who said so
   */
  who: string;
  /**
   * the day
   */
  day: string;
  /**
   * why work goes on although the guitar is out of its range
   */
  why: string;
}
export interface GateRecordAsk {
  /**
   * number in the book; 0: not kept yet
   */
  id?: number;
  /**
   * of this visit
   */
  visit_id?: number;
  /**
   * who said so
   */
  who: string;
  /**
   * the day
   */
  day: string;
  /**
   * why work goes on although the guitar is out of its range
   */
  why: string;
}
export interface GivenPaper {
  /**
   * number in the book; 0: not kept yet
   */
  id: number;
  /**
   * of this visit
   */
  visit_id: number;
  /**
   * which paper
   */
  kind: "claim_ticket" | "estimate" | "owners_report" | "invoice";
  /**
   * running by kind and year
   */
  number: string;
  /**
   * it was given
   */
  day: string;
  /**
   * of what it said
   */
  sha256: string;
}
export interface GreatestAcross {
  /**
   * mean over the triangles round one node
   */
  mpa: number;
  /**
   * where, from the neck edge [mm]
   */
  x_mm: number;
  /**
   * from the centre line; treble positive [mm]
   */
  y_mm: number;
  /**
   * in the face towards the braces
   */
  inner: boolean;
}
export interface Handover {
  /**
   * number in the book; 0: not kept yet
   */
  id: number;
  /**
   * of this visit
   */
  visit_id: number;
  /**
   * the day it went home
   */
  day: string;
  /**
   * who took it
   */
  taken_by: string;
}
export interface HandoverAsk {
  /**
   * number in the book; 0: not kept yet
   */
  id?: number;
  /**
   * of this visit
   */
  visit_id?: number;
  /**
   * the day it went home
   */
  day: string;
  /**
   * who took it
   */
  taken_by?: string;
}
export interface HeelDepth {
  /**
   * down the heel from the edge under the board [mm]
   */
  depth_mm: number;
  /**
   * to take off there; negative: to build up [mm]
   */
  remove_mm: number;
  /**
   * what stands there; may be empty
   */
  where: string;
}
export interface HeightReading {
  /**
   * day of the reading
   */
  date: string;
  /**
   * place within the day: as found 0, work 1, as left 2, and so on
   */
  order: number;
  /**
   * what was read
   */
  kind: "action12_bass" | "action12_treble" | "relief" | "bridge_over_rim";
  /**
   * height at pitch over the top of fret 12, -3 to 15 mm; relief at the middle of the neck; bridge's top over a straightedge line on the rim, up to 40 mm [mm]
   */
  value_mm: number;
  /**
   * one standard deviation of the gauge in this hand [mm]
   */
  gauge_sd_mm: number;
}
export interface HeightReadingAsk {
  /**
   * day of the reading
   */
  date: string;
  /**
   * place within the day: as found 0, work 1, as left 2, and so on
   */
  order?: number;
  /**
   * what was read
   */
  kind: "action12_bass" | "action12_treble" | "relief" | "bridge_over_rim";
  /**
   * height at pitch over the top of fret 12, -3 to 15 mm; relief at the middle of the neck; bridge's top over a straightedge line on the rim, up to 40 mm [mm]
   */
  value_mm: number | string;
  /**
   * one standard deviation of the gauge in this hand [mm]
   */
  gauge_sd_mm?: number | string;
}
export interface HighCrown {
  /**
   * the crown that stands out
   */
  fret: number;
  /**
   * over the line through the crowns beside it [mm]
   */
  over_neighbours_mm: number;
  /**
   * what would come off it [mm]
   */
  lower_by_mm: number;
  /**
   * touching notes that then clear every fret
   */
  cures: number;
}
export interface Home {
  /**
   * number in the book; 0: not kept yet
   */
  id: number;
  /**
   * what the shop calls the place
   */
  name: string;
  air: HomeAir;
  /**
   * anything else
   */
  note: string;
}
export interface HomeAir {
  /**
   * whether the months were read indoors, or outdoors and are brought in
   */
  kind: "indoor_months" | "outdoor_months";
  /**
   * mean temperature of each month, January first [C]
   *
   * @minItems 12
   * @maxItems 12
   */
  temperature_c: number[];
  /**
   * mean relative humidity of each month, 0..1; indoor_months
   *
   * @minItems 12
   * @maxItems 12
   */
  relative_humidity: number[];
  /**
   * mean dew point of each month, over liquid water; outdoor_months [C]
   *
   * @minItems 12
   * @maxItems 12
   */
  dew_point_c: number[];
  /**
   * the room is warmed to this; outdoor_months [C]
   */
  heating_set_point_c: number;
  /**
   * water that people, cooking and plants add when the house is shut (0 C or colder outdoors); it falls to nothing at 20 C outdoors; outdoor_months [g/m3]
   */
  moisture_gain_g_per_m3: number;
  /**
   * the room is never drier than this, 0..1
   */
  humidifier_floor: number;
  /**
   * the room is never damper than this, 0..1
   */
  dehumidifier_ceiling: number;
  /**
   * standard deviation of the day-to-day departure, 0..1
   */
  weather_sd_relative_humidity: number;
  /**
   * time in which a departure falls to 1/e [days]
   */
  weather_memory_days: number;
  /**
   * days read by a hygrometer in the home; of two for one day the later in the list stands
   *
   * @minItems 0
   * @maxItems 20000
   */
  log: LoggedDay[];
}
export interface LoggedDay {
  /**
   * the day
   */
  date: string;
  /**
   * mean air temperature of the day [C]
   */
  temperature_c: number;
  /**
   * mean relative humidity of the day, 0..1, over liquid water
   */
  relative_humidity: number;
}
export interface HomeAirRequestAsk {
  home: HomeAirAsk;
  /**
   * the first day
   */
  first: string;
  /**
   * how many days [days]
   */
  count?: number;
}
export interface HomeAirResult {
  /**
   * the first day
   */
  first: string;
  /**
   * of each day [C]
   *
   * @minItems 1
   * @maxItems 1100
   */
  temperature_c: number[];
  /**
   * of each day, 0..1
   *
   * @minItems 1
   * @maxItems 1100
   */
  relative_humidity: number[];
  /**
   * 1 where the log has the day, else 0
   *
   * @minItems 1
   * @maxItems 1100
   */
  logged: number[];
  /**
   * means of the months that the days fall in, January first
   *
   * @minItems 1
   * @maxItems 12
   */
  months: MonthOfAir[];
}
export interface MonthOfAir {
  /**
   * 1 January to 12 December
   */
  month: number;
  /**
   * how many of the days fall in it [days]
   */
  days: number;
  /**
   * mean over them [C]
   */
  temperature_c: number;
  /**
   * mean over them, 0..1
   */
  relative_humidity: number;
}
export interface HomeAsk {
  /**
   * number in the book; 0: not kept yet
   */
  id?: number;
  /**
   * what the shop calls the place
   */
  name: string;
  air?: HomeAirAsk;
  /**
   * anything else
   */
  note?: string;
}
export interface HomeList {
  /**
   * every home, by name
   *
   * @minItems 0
   * @maxItems 1000000
   */
  homes: Home[];
}
export interface HygrometerCorrection {
  /**
   * true humidity = offset + slope x shown, all 0..1
   */
  offset: number;
  /**
   * see offset
   */
  slope: number;
}
export interface HygrometerRequestAsk {
  /**
   * one over one salt, or one over each of two
   *
   * @minItems 1
   * @maxItems 2
   */
  readings: SaltReadingAsk[];
  /**
   * an error that says replace it, 0..1
   */
  replace_beyond?: number;
}
export interface SaltReadingAsk {
  /**
   * a name in the table of salts
   */
  salt?: string;
  /**
   * of the box, steady [C]
   */
  temperature_c?: number;
  /**
   * what the hygrometer shows when settled, 0..1
   */
  shown_relative_humidity: number;
}
export interface HygrometerResult {
  correction: HygrometerCorrection;
  /**
   * over each salt, 0..1
   *
   * @minItems 1
   * @maxItems 2
   */
  true_relative_humidity: number[];
  /**
   * shown less true, 0..1: positive reads too damp
   *
   * @minItems 1
   * @maxItems 2
   */
  error_relative_humidity: number[];
  /**
   * the error is beyond what is worth correcting
   */
  replace: boolean;
  /**
   * one sentence
   */
  verdict: string;
}
export interface Instrument {
  /**
   * number in the book; 0: not kept yet
   */
  id: number;
  /**
   * whose it is
   */
  owner_id: number;
  /**
   * where it lives
   */
  home_id: number;
  /**
   * as the shop calls it
   */
  name: string;
  /**
   * year and maker as far as known, free text
   */
  made: string;
  design: InstrumentDesign;
  /**
   * nut to saddle, nominal: twice the distance from nut to fret 12 [mm]
   */
  scale_length_mm: number;
  /**
   * the fret over the body joint
   */
  body_joint_fret: number;
  /**
   * frets on the board
   */
  fret_count: number;
  /**
   * whether relief can be set by a rod
   */
  adjustable_rod: boolean;
  /**
   * the saddle's slot: open at both ends of the bridge, or closed at both
   */
  slot: "open_ended" | "closed";
  /**
   * floor of the slot to the bridge top [mm]
   */
  slot_depth_mm?: number;
  /**
   * front wall to back wall [mm]
   */
  slot_width_mm?: number;
  /**
   * end to end [mm]
   */
  slot_length_mm?: number;
  /**
   * a name in data/string_sets.csv
   */
  string_set: string;
  /**
   * a name in data/tunings.csv
   */
  tuning: string;
  /**
   * how hard the player drives the strings
   */
  attack: "soft" | "medium" | "hard";
  /**
   * the action at fret 12 this player likes, bass [mm]
   */
  wanted_action12_bass_mm?: number;
  /**
   * the same, treble [mm]
   */
  wanted_action12_treble_mm?: number;
  /**
   * the highest this player puts up with, bass [mm]
   */
  highest_action12_bass_mm?: number;
  /**
   * the same, treble [mm]
   */
  highest_action12_treble_mm?: number;
  /**
   * anything else
   */
  note: string;
}
export interface InstrumentDesign {
  /**
   * body size in words of form
   */
  body_size: "parlour" | "small" | "mid_size" | "slope_large" | "square_large";
  /**
   * pattern of the top's braces
   */
  bracing: "x_braced" | "ladder" | "fan" | "other";
  /**
   * greatest width; left out: usual for the body size [mm]
   */
  lower_bout_width_mm?: number;
  /**
   * thickness of the top [mm]
   */
  top_thickness_mm?: number;
  /**
   * of the growth rings in the top: 0 quartersawn, 90 flat-sawn [degrees]
   */
  ring_angle_deg: number;
  /**
   * a name in the species table; empty: Sitka spruce is assumed
   */
  top_species: string;
  /**
   * kept in a closed case rather than on a wall or a stand
   */
  kept_in_case: boolean;
}
export interface InstrumentAsk {
  /**
   * number in the book; 0: not kept yet
   */
  id?: number;
  /**
   * whose it is
   */
  owner_id: number;
  /**
   * where it lives
   */
  home_id: number;
  /**
   * as the shop calls it
   */
  name: string;
  /**
   * year and maker as far as known, free text
   */
  made?: string;
  design?: InstrumentDesignAsk;
  /**
   * nut to saddle, nominal: twice the distance from nut to fret 12 [mm]
   */
  scale_length_mm?: number | string;
  /**
   * the fret over the body joint
   */
  body_joint_fret?: number;
  /**
   * frets on the board
   */
  fret_count?: number;
  /**
   * whether relief can be set by a rod
   */
  adjustable_rod?: boolean;
  /**
   * the saddle's slot: open at both ends of the bridge, or closed at both
   */
  slot?: "open_ended" | "closed";
  /**
   * floor of the slot to the bridge top [mm]
   */
  slot_depth_mm?: number | string;
  /**
   * front wall to back wall [mm]
   */
  slot_width_mm?: number | string;
  /**
   * end to end [mm]
   */
  slot_length_mm?: number | string;
  /**
   * a name in data/string_sets.csv
   */
  string_set?: string;
  /**
   * a name in data/tunings.csv
   */
  tuning?: string;
  /**
   * how hard the player drives the strings
   */
  attack?: "soft" | "medium" | "hard";
  /**
   * the action at fret 12 this player likes, bass [mm]
   */
  wanted_action12_bass_mm?: number | string;
  /**
   * the same, treble [mm]
   */
  wanted_action12_treble_mm?: number | string;
  /**
   * the highest this player puts up with, bass [mm]
   */
  highest_action12_bass_mm?: number | string;
  /**
   * the same, treble [mm]
   */
  highest_action12_treble_mm?: number | string;
  /**
   * anything else
   */
  note?: string;
}
export interface InstrumentDesignAsk {
  /**
   * body size in words of form
   */
  body_size?: "parlour" | "small" | "mid_size" | "slope_large" | "square_large";
  /**
   * pattern of the top's braces
   */
  bracing?: "x_braced" | "ladder" | "fan" | "other";
  /**
   * greatest width; left out: usual for the body size [mm]
   */
  lower_bout_width_mm?: number | string;
  /**
   * thickness of the top [mm]
   */
  top_thickness_mm?: number | string;
  /**
   * of the growth rings in the top: 0 quartersawn, 90 flat-sawn [degrees]
   */
  ring_angle_deg?: number;
  /**
   * a name in the species table; empty: Sitka spruce is assumed
   */
  top_species?: string;
  /**
   * kept in a closed case rather than on a wall or a stand
   */
  kept_in_case?: boolean;
}
export interface InstrumentDrawing {
  /**
   * all seven
   *
   * @minItems 0
   * @maxItems 10000
   */
  views: ViewDrawing[];
  /**
   * what no record says
   *
   * @minItems 0
   * @maxItems 10000
   */
  assumed: string[];
}
export interface ViewDrawing {
  /**
   * how it is looked at
   */
  view: "front" | "back" | "bass_side" | "treble_side" | "headstock" | "top_inside" | "back_inside";
  /**
   * x runs down the page and y across it; false: x across and y down
   */
  upright: boolean;
  /**
   * what runs across the page grows to the left
   */
  mirrored: boolean;
  /**
   * what runs down the page grows upward
   */
  upside_down: boolean;
  /**
   * what the drawing fills [mm]
   */
  x_from_mm: number;
  /**
   * what the drawing fills [mm]
   */
  x_to_mm: number;
  /**
   * what the drawing fills [mm]
   */
  y_from_mm: number;
  /**
   * what the drawing fills [mm]
   */
  y_to_mm: number;
  /**
   * in the order they are drawn
   *
   * @minItems 0
   * @maxItems 10000
   */
  lines: DrawnLine[];
  /**
   * that can be told by name
   *
   * @minItems 0
   * @maxItems 10000
   */
  places: DrawnPlace[];
}
export interface InstrumentLine {
  /**
   * number in the book; 0: not kept yet
   */
  id: number;
  /**
   * as the shop calls it
   */
  name: string;
  /**
   * the owner's name
   */
  owner: string;
  /**
   * the home's name
   */
  home: string;
  /**
   * size of the body
   */
  body_size: "parlour" | "small" | "mid_size" | "slope_large" | "square_large";
  /**
   * how the top is braced
   */
  bracing: "x_braced" | "ladder" | "fan" | "other";
  /**
   * the saddle's slot
   */
  slot: "open_ended" | "closed";
  /**
   * how often it came in
   */
  visits: number;
  /**
   * the newest visit's day
   */
  last_visit?: string;
  /**
   * the newest standing reading of action at fret 12, bass [mm]
   */
  last_action12_bass_mm?: number;
  /**
   * the same, treble [mm]
   */
  last_action12_treble_mm?: number;
}
export interface InstrumentPage {
  /**
   * newest visit first, then by name
   *
   * @minItems 0
   * @maxItems 200
   */
  lines: InstrumentLine[];
  /**
   * which page, the first being 0
   */
  page: number;
  /**
   * whether another page follows
   */
  more: boolean;
  /**
   * how many instruments match
   */
  total: number;
}
export interface InstrumentStory {
  instrument: Instrument;
  owner: Owner;
  home: Home;
  /**
   * how many days of air its home has logged
   */
  logged_days: number;
  /**
   * its visits, newest last
   *
   * @minItems 0
   * @maxItems 100000
   */
  visits: VisitStory[];
}
export interface Owner {
  /**
   * number in the book; 0: not kept yet
   */
  id: number;
  /**
   * the owner's name
   */
  name: string;
  /**
   * how to reach them
   */
  contact: string;
  /**
   * anything else
   */
  note: string;
}
export interface VisitStory {
  visit: Visit;
  /**
   * every reading, superseded ones included, oldest first
   *
   * @minItems 0
   * @maxItems 100000
   */
  readings: Reading[];
  /**
   * work that moved the strings
   *
   * @minItems 0
   * @maxItems 100000
   */
  interventions: Intervention[];
  /**
   * saddle choices taken
   *
   * @minItems 0
   * @maxItems 100000
   */
  decisions: SaddleDecision[];
}
export interface Visit {
  /**
   * number in the book; 0: not kept yet
   */
  id: number;
  /**
   * which instrument came in
   */
  instrument_id: number;
  /**
   * the day
   */
  date: string;
  /**
   * what the owner said, in the owner's words
   */
  reason: string;
  /**
   * anything else
   */
  note: string;
}
export interface Reading {
  /**
   * number in the book; 0: not kept yet
   */
  id: number;
  /**
   * the visit it was taken at
   */
  visit_id: number;
  /**
   * what was measured: an id in data/measures.csv
   */
  measure: string;
  /**
   * as it was entered: 5/64, 2,1 mm
   */
  typed: string;
  /**
   * in the measure's unit
   */
  value: number;
  /**
   * read with: an id in data/gauges.csv
   */
  gauge: string;
  /**
   * one standard deviation of that gauge in this hand, in the measure's unit; 0: the gauge's own
   */
  gauge_sd: number;
  /**
   * as found, before any work of the visit, or as left, after it
   */
  state: "as_found" | "as_left";
  /**
   * the reading this one corrects; 0: none
   */
  supersedes: number;
  /**
   * the reading that corrects this one; 0: it stands. Set by the book
   */
  superseded_by: number;
  /**
   * anything else
   */
  note: string;
}
export interface Intervention {
  /**
   * number in the book; 0: not kept yet
   */
  id: number;
  /**
   * the visit it was done at
   */
  visit_id: number;
  /**
   * what was done: an id in data/interventions.csv
   */
  kind: string;
  /**
   * by how much it raised the strings at fret 12, bass [mm]
   */
  action12_bass_change_mm?: number;
  /**
   * the same, treble [mm]
   */
  action12_treble_change_mm?: number;
  /**
   * one standard deviation of those changes; left out: that of the kind of work [mm]
   */
  change_sd_mm?: number;
  /**
   * anything else
   */
  note: string;
}
export interface SaddleDecision {
  /**
   * number in the book; 0: not kept yet
   */
  id: number;
  /**
   * the visit it was taken at
   */
  visit_id: number;
  /**
   * leave, turn_rod, one_saddle, two_saddles, humid_room or neck_angle
   */
  choice: string;
  /**
   * how much taller the saddle is made, bass; negative is lower [mm]
   */
  raise_bass_at_saddle_mm: number;
  /**
   * the same, treble [mm]
   */
  raise_treble_at_saddle_mm: number;
  /**
   * the action to leave today, in today's air, bass [mm]
   */
  set_bass_at_fret12_mm: number;
  /**
   * the same, treble [mm]
   */
  set_treble_at_fret12_mm: number;
  /**
   * why this one
   */
  reason: string;
}
export interface InterventionAsk {
  /**
   * number in the book; 0: not kept yet
   */
  id?: number;
  /**
   * the visit it was done at
   */
  visit_id: number;
  /**
   * what was done: an id in data/interventions.csv
   */
  kind: string;
  /**
   * by how much it raised the strings at fret 12, bass [mm]
   */
  action12_bass_change_mm?: number | string;
  /**
   * the same, treble [mm]
   */
  action12_treble_change_mm?: number | string;
  /**
   * one standard deviation of those changes; left out: that of the kind of work [mm]
   */
  change_sd_mm?: number | string;
  /**
   * anything else
   */
  note?: string;
}
export interface IntonationAnswer {
  request: IntonationRequest;
  result: IntonationResult;
  /**
   * what no record says and was taken for granted
   *
   * @minItems 0
   * @maxItems 100
   */
  assumed: string[];
}
export interface IntonationRequest {
  neck: NeckLine;
  action: StringAction;
  /**
   * string 1, the thinnest, first
   *
   * @minItems 1
   * @maxItems 12
   */
  strings: GuitarString[];
  /**
   * crest of each string behind the scale length, string 1 first; empty: straight between the neck's two [mm]
   *
   * @minItems 0
   * @maxItems 12
   */
  setbacks_mm: number[];
  /**
   * one standard deviation of where a crest was read [mm]
   */
  setback_sd_mm: number;
  /**
   * what a tuner read at fret 12
   *
   * @minItems 0
   * @maxItems 12
   */
  octave_errors: OctaveError[];
  saddle?: SaddleTop;
  /**
   * string beyond nut and saddle that slides freely over both [mm]
   */
  dead_length_mm: number;
  /**
   * how far a finger pushes the string down behind the fret [mm]
   */
  press_depth_mm: number;
  /**
   * frets 1 to this are weighed where nut and saddle are both free
   */
  last_fret: number;
}
export interface OctaveError {
  /**
   * 1 is the thinnest
   */
  string: number;
  /**
   * fret 12 against the octave of the open string; sharp is positive [cents]
   */
  cents: number;
  /**
   * one standard deviation of that reading [cents]
   */
  sd_cents: number;
}
export interface SaddleTop {
  /**
   * front face of the saddle behind the scale length, at the last string [mm]
   */
  front_bass_mm: number;
  /**
   * the same at string 1 [mm]
   */
  front_treble_mm: number;
  /**
   * of the saddle [mm]
   */
  thickness_mm: number;
  /**
   * one standard deviation of where the front face was read [mm]
   */
  front_sd_mm: number;
}
export interface IntonationResult {
  /**
   * string 1 first
   *
   * @minItems 1
   * @maxItems 12
   */
  strings: StringIntonation[];
  slot?: SlotFit;
  /**
   * one sentence
   */
  verdict: string;
  /**
   * what to mind
   *
   * @minItems 0
   * @maxItems 20
   */
  cautions: string[];
}
export interface StringIntonation {
  /**
   * 1 is the thinnest
   */
  string: number;
  /**
   * crest behind the scale length now [mm]
   */
  setback_mm: number;
  /**
   * what each clamped end of the string asks of the crest [mm]
   */
  setback_a_firm_end_mm: number;
  /**
   * as read [cents]
   */
  octave_error_cents?: number;
  /**
   * clamped ends, at least
   */
  firm_ends_low: number;
  /**
   * clamped ends, as read or midway
   */
  firm_ends: number;
  /**
   * clamped ends, at most
   */
  firm_ends_high: number;
  /**
   * the octave error read can be explained by the ends
   */
  believable: boolean;
  /**
   * sharp at fret 1, 2 ... by stretch alone [cents]
   *
   * @minItems 12
   * @maxItems 24
   */
  stretch_cents: number[];
  /**
   * with the ends as little firm as they may be [cents]
   *
   * @minItems 12
   * @maxItems 24
   */
  low_cents: number[];
  /**
   * with the ends as firm as they may be [cents]
   *
   * @minItems 12
   * @maxItems 24
   */
  high_cents: number[];
  /**
   * setback that stretch alone asks for [mm]
   */
  wanted_for_stretch_mm: number;
  /**
   * setback wanted, at least [mm]
   */
  wanted_low_mm: number;
  /**
   * setback wanted for the octave [mm]
   */
  wanted_mm: number;
  /**
   * setback wanted, at most [mm]
   */
  wanted_high_mm: number;
  /**
   * low_cents with the crest where it is wanted [cents]
   *
   * @minItems 12
   * @maxItems 24
   */
  after_low_cents: number[];
  /**
   * the same, midway [cents]
   *
   * @minItems 12
   * @maxItems 24
   */
  after_cents: number[];
  /**
   * high_cents with the crest where it is wanted [cents]
   *
   * @minItems 12
   * @maxItems 24
   */
  after_high_cents: number[];
  /**
   * setback where the nut may move too [mm]
   */
  both_setback_mm: number;
  /**
   * edge of the nut towards the saddle, likewise [mm]
   */
  both_nut_shift_mm: number;
  /**
   * error that is then left, root of the mean square [cents]
   */
  both_rms_cents: number;
  /**
   * and the largest [cents]
   */
  both_worst_cents: number;
  /**
   * at fret 12, for a crest set back by 1 mm [cents]
   */
  cents_per_mm: number;
  /**
   * least that lays the open string on fret 1 [N]
   */
  finger_force_1_n: number;
  /**
   * least that lays the open string on fret 12 [N]
   */
  finger_force_12_n: number;
}
export interface SlotFit {
  /**
   * what has to be done about the slot
   */
  verdict: "fits" | "cannot_tell" | "widen" | "recut";
  /**
   * string 1 first
   *
   * @minItems 1
   * @maxItems 12
   */
  crests: CrestOnTop[];
  /**
   * how far its front wall goes forward [mm]
   */
  widen_front_mm: number;
  /**
   * how far its back wall goes back [mm]
   */
  widen_back_mm: number;
  /**
   * how far a new slot's front wall lies behind the old one's, bass [mm]
   */
  move_bass_mm: number;
  /**
   * the same, treble [mm]
   */
  move_treble_mm: number;
  /**
   * thinnest saddle that would hold all crests, best placed [mm]
   */
  thickness_least_mm: number;
  /**
   * one sentence
   */
  words: string;
}
export interface IntonationRequestAsk {
  neck?: NeckLineAsk;
  action: StringActionAsk;
  /**
   * string 1, the thinnest, first
   *
   * @minItems 1
   * @maxItems 12
   */
  strings: GuitarStringAsk[];
  /**
   * crest of each string behind the scale length, string 1 first; empty: straight between the neck's two [mm]
   *
   * @minItems 0
   * @maxItems 12
   */
  setbacks_mm?: number[];
  /**
   * one standard deviation of where a crest was read [mm]
   */
  setback_sd_mm?: number | string;
  /**
   * what a tuner read at fret 12
   *
   * @minItems 0
   * @maxItems 12
   */
  octave_errors?: OctaveErrorAsk[];
  saddle?: SaddleTopAsk;
  /**
   * string beyond nut and saddle that slides freely over both [mm]
   */
  dead_length_mm?: number | string;
  /**
   * how far a finger pushes the string down behind the fret [mm]
   */
  press_depth_mm?: number | string;
  /**
   * frets 1 to this are weighed where nut and saddle are both free
   */
  last_fret?: number;
}
export interface OctaveErrorAsk {
  /**
   * 1 is the thinnest
   */
  string: number;
  /**
   * fret 12 against the octave of the open string; sharp is positive [cents]
   */
  cents: number;
  /**
   * one standard deviation of that reading [cents]
   */
  sd_cents?: number;
}
export interface SaddleTopAsk {
  /**
   * front face of the saddle behind the scale length, at the last string [mm]
   */
  front_bass_mm: number | string;
  /**
   * the same at string 1 [mm]
   */
  front_treble_mm: number | string;
  /**
   * of the saddle [mm]
   */
  thickness_mm?: number | string;
  /**
   * one standard deviation of where the front face was read [mm]
   */
  front_sd_mm?: number | string;
}
export interface InvoiceAnswer {
  /**
   * ISO 4217; empty without a line
   */
  currency: string;
  /**
   * to be paid for
   *
   * @minItems 0
   * @maxItems 1000
   */
  lines: InvoicedJob[];
  visit: InvoicedVisit;
  /**
   * without tax; empty without a line
   */
  net: string;
  /**
   * all of it; empty without a line
   */
  tax: string;
  /**
   * with tax; empty without a line
   */
  total: string;
  /**
   * by rate
   *
   * @minItems 0
   * @maxItems 1000
   */
  taxes: TaxAtRate[];
  /**
   * jobs that are not on it, and why
   *
   * @minItems 0
   * @maxItems 1000
   */
  left_out: string[];
}
export interface InvoicedJob {
  /**
   * in the book
   */
  job_id: number;
  /**
   * that was said yes to
   */
  offer_id: number;
  /**
   * of the repair
   */
  name: string;
  /**
   * of the net; may not be known
   */
  labour: string;
  /**
   * of the net; may not be known
   */
  materials: string;
  /**
   * before tax
   */
  net: string;
  /**
   * the rate; may not be known
   */
  tax_percent: string;
  /**
   * on it
   */
  tax: string;
  /**
   * who said yes
   */
  agreed_by: string;
  /**
   * that day
   */
  agreed_on: string;
  /**
   * hands have done all of it
   */
  finished: boolean;
}
export interface InvoicedVisit {
  /**
   * before tax; empty: nothing of it is to pay
   */
  net: string;
  /**
   * the rate
   */
  tax_percent: string;
  /**
   * on it
   */
  tax: string;
}
export interface InvoicedOffer {
  /**
   * an offer that was said yes to
   */
  offer_id: number;
  /**
   * the invoice that asks for it
   */
  paper_id: number;
}
export interface Job {
  /**
   * number in the book; 0: not kept yet
   */
  id: number;
  /**
   * of this visit
   */
  visit_id: number;
  /**
   * the finding it is for; 0: none
   */
  finding_id: number;
  /**
   * an id in data/procedures.csv
   */
  procedure: string;
  /**
   * what the shop thinks should become of it
   */
  advice: "do_now" | "can_wait" | "leave_alone";
  /**
   * thought better of
   */
  withdrawn: boolean;
  /**
   * anything else
   */
  note: string;
}
export interface JobAmount {
  /**
   * number in the book; 0: not kept yet
   */
  id: number;
  /**
   * of this job
   */
  job_id: number;
  /**
   * what is counted, as data/operations.csv names it
   */
  amount: string;
  /**
   * how many
   */
  count: number;
}
export interface JobAmountAsk {
  /**
   * number in the book; 0: not kept yet
   */
  id?: number;
  /**
   * of this job
   */
  job_id?: number;
  /**
   * what is counted, as data/operations.csv names it
   */
  amount: string;
  /**
   * how many
   */
  count: number;
}
export interface JobAnswer {
  /**
   * number in the book; 0: not kept yet
   */
  id: number;
  /**
   * of this job
   */
  job_id: number;
  /**
   * an id in data/procedure_decisions.csv
   */
  decision: string;
  /**
   * one of its outcomes
   */
  outcome: string;
  /**
   * the day
   */
  day: string;
  /**
   * who said so
   */
  who: string;
}
export interface JobAnswerAsk {
  /**
   * number in the book; 0: not kept yet
   */
  id?: number;
  /**
   * of this job
   */
  job_id?: number;
  /**
   * an id in data/procedure_decisions.csv
   */
  decision: string;
  /**
   * one of its outcomes
   */
  outcome: string;
  /**
   * the day
   */
  day: string;
  /**
   * who said so
   */
  who: string;
}
export interface JobAsk {
  /**
   * number in the book; 0: not kept yet
   */
  id?: number;
  /**
   * of this visit
   */
  visit_id?: number;
  /**
   * the finding it is for; 0: none
   */
  finding_id?: number;
  /**
   * an id in data/procedures.csv
   */
  procedure: string;
  /**
   * what the shop thinks should become of it
   */
  advice?: "do_now" | "can_wait" | "leave_alone";
  /**
   * thought better of
   */
  withdrawn?: boolean;
  /**
   * anything else
   */
  note?: string;
}
export interface JobMaterial {
  /**
   * number in the book; 0: not kept yet
   */
  id: number;
  /**
   * of this job
   */
  job_id: number;
  /**
   * what is bought
   */
  name: string;
  /**
   * an exact decimal; 0 takes it off
   */
  quantity: string;
  /**
   * before tax, an exact decimal
   */
  unit_price: string;
}
export interface JobMaterialAsk {
  /**
   * number in the book; 0: not kept yet
   */
  id?: number;
  /**
   * of this job
   */
  job_id?: number;
  /**
   * what is bought
   */
  name: string;
  /**
   * an exact decimal; 0 takes it off
   */
  quantity?: string;
  /**
   * before tax, an exact decimal
   */
  unit_price: string;
}
export interface JobOffer {
  /**
   * number in the book; 0: not kept yet
   */
  id: number;
  /**
   * of this job
   */
  job_id: number;
  /**
   * the day it was offered
   */
  day: string;
  /**
   * the line as the owner read it
   */
  words: string;
  /**
   * hands-on, seldom less [h]
   */
  hours_low: number;
  /**
   * hands-on, as usual [h]
   */
  hours: number;
  /**
   * hands-on, seldom more [h]
   */
  hours_high: number;
  /**
   * before tax, an exact decimal
   */
  net: string;
  /**
   * the tax on it, an exact decimal
   */
  tax: string;
  /**
   * ISO 4217
   */
  currency: string;
  /**
   * of the net
   */
  labour: string;
  /**
   * of the net
   */
  materials: string;
  /**
   * the rate of the tax
   */
  tax_percent: string;
  /**
   * what it needs of arriving and finishing, paid once a visit beside the net
   */
  visit_net: string;
  /**
   * the tax on that
   */
  visit_tax: string;
}
export interface JobOfferAsk {
  /**
   * number in the book; 0: not kept yet
   */
  id?: number;
  /**
   * of this job
   */
  job_id?: number;
  /**
   * the day it was offered
   */
  day: string;
  /**
   * the line as the owner read it
   */
  words: string;
  /**
   * hands-on, seldom less [h]
   */
  hours_low: number;
  /**
   * hands-on, as usual [h]
   */
  hours: number;
  /**
   * hands-on, seldom more [h]
   */
  hours_high: number;
  /**
   * before tax, an exact decimal
   */
  net: string;
  /**
   * the tax on it, an exact decimal
   */
  tax: string;
  /**
   * ISO 4217
   */
  currency: string;
  /**
   * of the net
   */
  labour?: string;
  /**
   * of the net
   */
  materials?: string;
  /**
   * the rate of the tax
   */
  tax_percent?: string;
  /**
   * what it needs of arriving and finishing, paid once a visit beside the net
   */
  visit_net?: string;
  /**
   * the tax on that
   */
  visit_tax?: string;
}
export interface JobPlan {
  story: JobStory;
  plan: ProcedureResult;
  /**
   * the operations, with what was done of them
   *
   * @minItems 0
   * @maxItems 400
   */
  steps: JobStep[];
  /**
   * those of the plan's decisions, with what each may come out as
   *
   * @minItems 0
   * @maxItems 100
   */
  questions: QuestionOffered[];
  /**
   * what its minutes grow with
   *
   * @minItems 0
   * @maxItems 100
   */
  amounts: AmountTaken[];
  /**
   * whether the owner has agreed to the newest offer
   */
  owner: "not_asked" | "asked" | "yes" | "no";
}
export interface JobStory {
  job: Job;
  /**
   * of the finding it is for; empty: none
   */
  finding_kind: string;
  /**
   * that the finding is on; may be empty
   */
  finding_part: string;
  /**
   * the latest of each length read at the finding it is for
   *
   * @minItems 0
   * @maxItems 100000
   */
  at_finding: FindingExtent[];
  /**
   * of that finding's line as it is drawn; absent: it is no line [mm]
   */
  drawn_length_mm?: number;
  /**
   * to its questions, oldest first
   *
   * @minItems 0
   * @maxItems 100000
   */
  answers: JobAnswer[];
  /**
   * what it takes, oldest first
   *
   * @minItems 0
   * @maxItems 100000
   */
  amounts: JobAmount[];
  /**
   * bought for it, oldest first
   *
   * @minItems 0
   * @maxItems 100000
   */
  materials: JobMaterial[];
  /**
   * it is priced by, oldest first
   *
   * @minItems 0
   * @maxItems 100000
   */
  terms: JobTerms[];
  /**
   * made to the owner, oldest first
   *
   * @minItems 0
   * @maxItems 100000
   */
  offers: JobOffer[];
  /**
   * of the owner, oldest first
   *
   * @minItems 0
   * @maxItems 100000
   */
  words: OwnerWord[];
  /**
   * of hands-on work as corrected, oldest first
   *
   * @minItems 0
   * @maxItems 100000
   */
  spells: WorkSpell[];
  /**
   * of the clock, oldest first
   *
   * @minItems 0
   * @maxItems 100000
   */
  corrections: WorkCorrection[];
  /**
   * of its operations, oldest first
   *
   * @minItems 0
   * @maxItems 100000
   */
  pins: Pin[];
}
export interface JobTerms {
  /**
   * number in the book; 0: not kept yet
   */
  id: number;
  /**
   * of this job
   */
  job_id: number;
  /**
   * for the labour, an exact decimal; empty: by its hours
   */
  fixed_price: string;
  /**
   * an exact decimal; empty: the shop's
   */
  tax_percent: string;
  /**
   * in words that an owner can accept or refuse
   */
  risk: string;
}
export interface OwnerWord {
  /**
   * number in the book; 0: not kept yet
   */
  id: number;
  /**
   * of this job
   */
  job_id: number;
  /**
   * the offer it answers; 0: an operation
   */
  offer_id: number;
  /**
   * the operation it is about; empty: an offer
   */
  operation: string;
  /**
   * the owner's answer
   */
  says: "yes" | "no";
  /**
   * the day
   */
  day: string;
  /**
   * who said so
   */
  who: string;
}
export interface WorkSpell {
  /**
   * number in the book; 0: not kept yet
   */
  id: number;
  /**
   * of this job
   */
  job_id: number;
  /**
   * an id in data/operations.csv
   */
  operation: string;
  /**
   * whose hands
   */
  person: string;
  /**
   * the day it began
   */
  began_on: string;
  /**
   * since midnight, by the shop's clock [min]
   */
  began_minute: number;
  /**
   * the day it ended; absent: hands are still at it
   */
  ended_on?: string;
  /**
   * since midnight [min]
   */
  ended_minute: number;
  /**
   * the hands-on part is done
   */
  finished: boolean;
  /**
   * what it was glued or finished with; 0: not said
   */
  lot_id: number;
  /**
   * anything else
   */
  note: string;
}
export interface WorkCorrection {
  /**
   * number in the book; 0: not kept yet
   */
  id: number;
  /**
   * the stretch of work it puts right
   */
  spell_id: number;
  /**
   * how long hands were at it [min]
   */
  minutes: number;
  /**
   * the hands-on part is done
   */
  finished: boolean;
  /**
   * the day it was put right
   */
  day: string;
  /**
   * who says so
   */
  who: string;
  /**
   * anything else
   */
  note: string;
}
export interface Pin {
  /**
   * number in the book; 0: not kept yet
   */
  id: number;
  /**
   * of this job
   */
  job_id: number;
  /**
   * an id in data/operations.csv
   */
  operation: string;
  /**
   * of the times that the job does this operation
   */
  which: number;
  /**
   * it starts on that day; absent: let go again
   */
  day?: string;
  /**
   * since midnight [min]
   */
  minute: number;
}
export interface ProcedureResult {
  /**
   * of the repair
   */
  name: string;
  /**
   * what is refused or put off in it
   */
  never: string;
  /**
   * in order
   *
   * @minItems 0
   * @maxItems 200
   */
  steps: StepShown[];
  /**
   * its questions, as they stand
   *
   * @minItems 0
   * @maxItems 60
   */
  decisions: DecisionShown[];
  /**
   * none or one
   *
   * @minItems 0
   * @maxItems 1
   */
  next_question: DecisionShown[];
  /**
   * why no more is done; empty: it goes on
   */
  stopped: string;
  /**
   * nothing holds it
   */
  may_start: boolean;
  /**
   * what is missing
   *
   * @minItems 0
   * @maxItems 200
   */
  holds: string[];
  humidity: HumidityGate;
  /**
   * hands-on work, all steps [min]
   */
  hands_on_low_minutes: number;
  /**
   * hands-on work, all steps [min]
   */
  hands_on_minutes: number;
  /**
   * hands-on work, all steps [min]
   */
  hands_on_high_minutes: number;
  /**
   * typical waits, one after the other [min]
   */
  wait_minutes: number;
  /**
   * what is needed
   *
   * @minItems 0
   * @maxItems 200
   */
  materials: string[];
}
export interface StepShown {
  /**
   * id in data/operations.csv
   */
  operation: string;
  /**
   * in words
   */
  name: string;
  /**
   * part of the visit
   */
  family: "arrive" | "work" | "finish_up";
  /**
   * hands-on work [min]
   */
  hands_on_low_minutes: number;
  /**
   * hands-on work [min]
   */
  hands_on_minutes: number;
  /**
   * hands-on work [min]
   */
  hands_on_high_minutes: number;
  /**
   * by the clock, after it [min]
   */
  wait_low_minutes: number;
  /**
   * by the clock, after it [min]
   */
  wait_minutes: number;
  /**
   * by the clock, after it [min]
   */
  wait_high_minutes: number;
  /**
   * what for; may be empty
   */
  wait_for: string;
  /**
   * place held through the hands-on work; may be empty
   */
  hands_on_station: string;
  /**
   * fixture held in the wait; may be empty
   */
  wait_station: string;
  /**
   * how long of the wait [min]
   */
  station_wait_minutes: number;
  /**
   * held through the hands-on work too, since hands put it on
   */
  wait_station_hands_on: boolean;
  /**
   * the sort of work it is, as data/work_skills.csv; empty: anyone does it
   */
  skill: string;
  /**
   * from the end of its hands-on work to one of greatest_gap_to [min]
   */
  greatest_gap_minutes?: number;
  /**
   * operations
   *
   * @minItems 0
   * @maxItems 60
   */
  greatest_gap_to: string[];
  /**
   * where and with what it is done
   */
  where: string;
  /**
   * may be empty
   */
  materials: string;
  /**
   * what its minutes grow with, as data/operations.csv names it; empty: nothing
   */
  amount: string;
  /**
   * a line each
   *
   * @minItems 0
   * @maxItems 60
   */
  adhesives: string[];
  /**
   * a line each
   *
   * @minItems 0
   * @maxItems 60
   */
  finishes: string[];
  /**
   * what holds and how long
   *
   * @minItems 0
   * @maxItems 60
   */
  clamps: string[];
  /**
   * what it does to the air of the room
   */
  air: "clean" | "dust" | "vapour" | "spray" | "steam";
  /**
   * no dust in the room for an hour before
   */
  needs_dust_free: boolean;
  /**
   * of the shop [percent]
   */
  humidity_low_percent?: number;
  /**
   * of the shop [percent]
   */
  humidity_high_percent?: number;
  /**
   * of the shop [C]
   */
  temperature_low_c?: number;
  /**
   * of the shop [C]
   */
  temperature_high_c?: number;
  /**
   * read where the step is read
   *
   * @minItems 0
   * @maxItems 60
   */
  cautions: string[];
  /**
   * names of the hazards among them; such a caution begins with the name
   *
   * @minItems 0
   * @maxItems 60
   */
  hazards: string[];
  /**
   * whether it can be taken back
   */
  reversible: "yes" | "hardly" | "no";
  /**
   * what a collector thinks of it
   */
  value: "raises" | "neutral" | "lowers";
  /**
   * only with a recorded yes
   */
  asks_owner: boolean;
  /**
   * there is one
   */
  yes_recorded: boolean;
  /**
   * what may be done instead; may be empty
   */
  gentler: string;
  /**
   * waits for the humidity in the body
   */
  held_by_humidity: boolean;
  /**
   * where its minutes and limits come from
   */
  source: string;
}
export interface JobStep {
  step: StepShown;
  /**
   * how far it is
   */
  state: "to_do" | "at_work" | "waiting" | "done";
  /**
   * hands-on, so far [min]
   */
  minutes_spent: number;
  /**
   * the stretch of work hands are at; 0: none
   */
  running_spell: number;
  /**
   * the newest stretch of work on it; 0: none yet
   */
  last_spell: number;
  wait_ends?: Moment;
  /**
   * why hands may not take it up now
   *
   * @minItems 0
   * @maxItems 50
   */
  holds: string[];
}
export interface QuestionOffered {
  /**
   * the question
   */
  decision: string;
  /**
   * as it may come out
   *
   * @minItems 0
   * @maxItems 50
   */
  outcomes: OutcomeOffered[];
}
export interface OutcomeOffered {
  /**
   * as answers name it
   */
  outcome: string;
  /**
   * of the reading it is about; empty: it is asked
   */
  band: string;
  /**
   * what follows; may be empty
   */
  says: string;
  /**
   * nothing more is done then
   */
  stops: boolean;
}
export interface JobTermsAsk {
  /**
   * number in the book; 0: not kept yet
   */
  id?: number;
  /**
   * of this job
   */
  job_id?: number;
  /**
   * for the labour, an exact decimal; empty: by its hours
   */
  fixed_price?: string;
  /**
   * an exact decimal; empty: the shop's
   */
  tax_percent?: string;
  /**
   * in words that an owner can accept or refuse
   */
  risk?: string;
}
export interface Kept {
  /**
   * the record's number in the book
   */
  id: number;
}
export interface KeptPhoto {
  /**
   * number in the book; 0: not kept yet
   */
  id: number;
  /**
   * of the whole picture's bytes
   */
  sha256: string;
  /**
   * upright
   */
  width_px: number;
  /**
   * upright
   */
  height_px: number;
}
export interface KindredResponse {
  /**
   * what another instrument of the kind has shown [mm per percent]
   */
  response_mm_per_percent: number;
  /**
   * standard deviation of its natural logarithm
   */
  log_sd: number;
}
export interface KindredResponseAsk {
  /**
   * what another instrument of the kind has shown [mm per percent]
   */
  response_mm_per_percent: number;
  /**
   * standard deviation of its natural logarithm
   */
  log_sd?: number;
}
export interface LeastCleanAction {
  outer: OuterHeights;
  bass: DecidingNote;
  treble: DecidingNote;
  /**
   * each string by itself
   *
   * @minItems 1
   * @maxItems 12
   */
  strings: LeastString[];
}
export interface OuterHeights {
  /**
   * outer bass string over fret 12 [mm]
   */
  action12_bass_mm: number;
  /**
   * string 1 over fret 12 [mm]
   */
  action12_treble_mm: number;
  /**
   * saddle top over the fret plane, bass [mm]
   */
  saddle_over_frets_bass_mm: number;
  /**
   * saddle top over the fret plane, treble [mm]
   */
  saddle_over_frets_treble_mm: number;
}
export interface LeastString {
  /**
   * 1 is the thinnest
   */
  string: number;
  /**
   * its lowest saddle over the fret plane [mm]
   */
  saddle_over_frets_mm: number;
  /**
   * its lowest action at fret 12 [mm]
   */
  action12_mm: number;
  decided_by: DecidingNote;
}
export interface LeastCure {
  /**
   * notes that touch now
   */
  touching: number;
  /**
   * a saddle so much taller frees them all [mm]
   */
  saddle_raise_bass_mm: number;
  /**
   * the same, treble end [mm]
   */
  saddle_raise_treble_mm: number;
  high_crown?: HighCrown;
}
export interface LengthRead {
  /**
   * in millimetres [mm]
   */
  mm: number;
  /**
   * 5/64 + .003
   */
  sixty_fourths: string;
  /**
   * .081
   */
  thousandths: string;
  /**
   * 2.06 mm
   */
  mm_text: string;
}
export interface LimitCheck {
  /**
   * what is limited
   */
  limit: string;
  /**
   * inside what can be done
   */
  kept: boolean;
  /**
   * inside what is usual
   */
  usual: boolean;
  /**
   * the value against its range
   */
  figure: string;
  /**
   * where the range comes from
   */
  source: string;
}
export interface LogKeptReport {
  /**
   * days added to the home's log
   */
  added: number;
  /**
   * days the log had already, left as they were unless replaced
   */
  already_there: number;
  report: LoggerReport;
}
export interface LoggerReport {
  /**
   * daily means, corrected
   *
   * @minItems 0
   * @maxItems 100000
   */
  days: LoggedDay[];
  /**
   * used in them
   */
  readings: number;
  /**
   * before the readings, passed over
   */
  preamble_lines: number;
  /**
   * lines not used
   */
  refused_count: number;
  /**
   * the first hundred of them
   *
   * @minItems 0
   * @maxItems 100
   */
  refused: RefusedLine[];
  /**
   * times without readings
   */
  gap_count: number;
  /**
   * the first hundred of them
   *
   * @minItems 0
   * @maxItems 100
   */
  gaps: LoggerGap[];
  /**
   * days with less than half of their readings, not used
   *
   * @minItems 0
   * @maxItems 100000
   */
  thin_days: ThinDay[];
  /**
   * the usual time between two readings
   */
  step_minutes: number;
  /**
   * time of the first reading
   */
  first: string;
  /**
   * time of the last reading
   */
  last: string;
  /**
   * which columns were taken for what
   */
  columns: string;
  /**
   * what else was decided
   *
   * @minItems 0
   * @maxItems 20
   */
  notes: string[];
}
export interface RefusedLine {
  /**
   * counted from 1
   */
  line: number;
  /**
   * the line, or its beginning
   */
  text: string;
  /**
   * why it was not used
   */
  reason: string;
}
export interface LoggerGap {
  /**
   * last reading before it
   */
  from: string;
  /**
   * first reading after it
   */
  to: string;
  /**
   * between the two
   */
  hours: number;
}
export interface ThinDay {
  /**
   * the day
   */
  date: string;
  /**
   * that it has
   */
  readings: number;
  /**
   * at the usual step
   */
  expected: number;
}
export interface LotList {
  /**
   * pots, bottles and sticks, the newest first
   *
   * @minItems 0
   * @maxItems 100000
   */
  lots: MaterialLot[];
}
export interface MaterialLot {
  /**
   * number in the book; 0: not kept yet
   */
  id: number;
  /**
   * an id in data/adhesives.csv or data/finishes.csv, or plain words
   */
  material: string;
  /**
   * as on the label
   */
  words: string;
  /**
   * the day it was opened or mixed
   */
  opened_on: string;
  /**
   * the last day it is used
   */
  good_until?: string;
  /**
   * used up or thrown away
   */
  empty_on?: string;
  /**
   * anything else
   */
  note: string;
}
export interface MaterialList {
  /**
   * glues and finishes, as data/adhesives.csv and data/finishes.csv have them
   *
   * @minItems 0
   * @maxItems 1000
   */
  materials: MaterialOffered[];
}
export interface MaterialOffered {
  /**
   * as lots name it
   */
  id: string;
  /**
   * in words
   */
  name: string;
  /**
   * once opened or mixed, where that is known [days]
   */
  good_days?: number;
  /**
   * what to keep to; may be empty
   */
  lot_rule: string;
}
export interface MaterialLotAsk {
  /**
   * number in the book; 0: not kept yet
   */
  id?: number;
  /**
   * an id in data/adhesives.csv or data/finishes.csv, or plain words
   */
  material: string;
  /**
   * as on the label
   */
  words?: string;
  /**
   * the day it was opened or mixed
   */
  opened_on: string;
  /**
   * the last day it is used
   */
  good_until?: string;
  /**
   * used up or thrown away
   */
  empty_on?: string;
  /**
   * anything else
   */
  note?: string;
}
export interface ModelLine {
  /**
   * as in /api/compute/NAME
   */
  name: string;
  /**
   * what it computes
   */
  summary: string;
}
export interface ModelList {
  /**
   * every computation, once
   *
   * @minItems 0
   * @maxItems 1000
   */
  models: ModelLine[];
}
export interface MoistureChangeAsk {
  /**
   * change of the top's moisture; negative dries [percent]
   */
  top_percent?: number;
  /**
   * of braces, bridge plate and hole reinforcement [percent]
   */
  braces_percent?: number;
  /**
   * of the bridge [percent]
   */
  bridge_percent?: number;
  /**
   * of the back [percent]
   */
  back_percent?: number;
}
export interface MoistureDays {
  /**
   * the first day
   */
  first: string;
  /**
   * moisture that the day's air asks for [%]
   *
   * @minItems 1
   * @maxItems 1100
   */
  equilibrium_percent: number[];
  /**
   * moisture of the plate [%]
   *
   * @minItems 1
   * @maxItems 1100
   */
  moisture_percent: number[];
  /**
   * the least moisture of the plate [%]
   */
  lowest_percent: number;
  /**
   * the most moisture of the plate [%]
   */
  highest_percent: number;
}
export interface MoistureRequestAsk {
  home?: HomeAirAsk;
  /**
   * the first day, with a home
   */
  first?: string;
  /**
   * how many days, with a home [days]
   */
  count?: number;
  plate?: PlateAsk;
  still_air?: StillAirAsk;
}
export interface PlateAsk {
  /**
   * of the plate [mm]
   */
  thickness_mm?: number | string;
  /**
   * 1: the other face is finished; 2: both are bare
   */
  faces_open?: number;
  /**
   * how fast water spreads in the wood: spruce 1e-10, within 0.5e-10..2e-10 [m2/s]
   */
  diffusion_m2_per_s?: number;
  /**
   * case, finish and air in the box, as one more stage [days]
   */
  extra_lag_days?: number;
}
export interface StillAirAsk {
  /**
   * of the air [C]
   */
  temperature_c: number;
  /**
   * 0..1, over liquid water
   */
  relative_humidity: number;
}
export interface MoistureResult {
  /**
   * time constant of the bare plate [days]
   */
  slab_lag_days: number;
  /**
   * time constant of what stands before it [days]
   */
  extra_lag_days: number;
  equilibrium?: Equilibrium;
  days?: MoistureDays;
}
export interface NeckAndBackAsk {
  /**
   * twice nut to fret 12 [mm]
   */
  scale_length_mm?: number | string;
  /**
   * fret at the body joint
   */
  body_joint_fret?: number;
  /**
   * neck block, top to back [mm]
   */
  block_depth_mm?: number | string;
  /**
   * of the back's dome [mm]
   */
  back_arch_radius_mm?: number | string;
  /**
   * wood of the back
   */
  back_species?: string;
}
export interface NeckAngleRequest {
  bass: NeckSide;
  treble: NeckSide;
  /**
   * one standard deviation of the exposures [mm]
   */
  exposure_sd_mm: number;
  /**
   * bottom of the nut slots over the fret plane [mm]
   */
  nut_over_frets_mm: number;
  /**
   * scale length [mm]
   */
  scale_length_mm: number;
  /**
   * crest behind the scale length [mm]
   */
  saddle_setback_mm: number;
  /**
   * fret at the body joint
   */
  body_joint_fret: number;
  /**
   * number of frets
   */
  fret_count: number;
  /**
   * edge under the board down to the outside of the heel cap [mm]
   */
  heel_depth_mm: number;
  /**
   * the last of that depth [mm]
   */
  heel_cap_thickness_mm: number;
  /**
   * board and fret at the joint [mm]
   */
  hinge_under_frets_mm: number;
  /**
   * joint to the end of the board [mm]
   */
  tongue_length_mm?: number;
  /**
   * rise of the fret plane at the saddle, instead of what the exposures ask for [mm]
   */
  rise_mm?: number;
  /**
   * straightedge on the frets, over the bridge top [mm]
   */
  straightedge_over_bridge_mm?: number;
  /**
   * one standard deviation of that [mm]
   */
  straightedge_sd_mm: number;
  /**
   * as it was read [mm]
   */
  relief_mm: number;
  /**
   * as it will be set [mm]
   */
  relief_wanted_mm: number;
  drift_mm_per_year?: Estimate;
}
export interface NeckSide {
  /**
   * action at fret 12, mean of the year [mm]
   */
  action12_mm: number;
  /**
   * what that mean should be [mm]
   */
  action12_wanted_mm: number;
  /**
   * one standard deviation of the mean [mm]
   */
  action12_sd_mm: number;
  /**
   * saddle over the bridge now [mm]
   */
  exposure_mm: number;
  /**
   * saddle over the bridge afterwards [mm]
   */
  exposure_wanted_mm: number;
  /**
   * a saddle that stands out less is not made [mm]
   */
  exposure_least_mm: number;
  /**
   * nor one that stands out more [mm]
   */
  exposure_most_mm: number;
  /**
   * action in the year's highest month over its mean [mm]
   */
  highest_over_mean_mm: number;
  /**
   * action today over the year's mean [mm]
   */
  today_over_mean_mm: number;
}
export interface NeckAngleRequestAsk {
  bass?: NeckSideAsk;
  treble?: NeckSideAsk;
  /**
   * one standard deviation of the exposures [mm]
   */
  exposure_sd_mm?: number | string;
  /**
   * bottom of the nut slots over the fret plane [mm]
   */
  nut_over_frets_mm?: number | string;
  /**
   * scale length [mm]
   */
  scale_length_mm?: number | string;
  /**
   * crest behind the scale length [mm]
   */
  saddle_setback_mm?: number | string;
  /**
   * fret at the body joint
   */
  body_joint_fret?: number;
  /**
   * number of frets
   */
  fret_count?: number;
  /**
   * edge under the board down to the outside of the heel cap [mm]
   */
  heel_depth_mm?: number | string;
  /**
   * the last of that depth [mm]
   */
  heel_cap_thickness_mm?: number | string;
  /**
   * board and fret at the joint [mm]
   */
  hinge_under_frets_mm?: number | string;
  /**
   * joint to the end of the board [mm]
   */
  tongue_length_mm?: number | string;
  /**
   * rise of the fret plane at the saddle, instead of what the exposures ask for [mm]
   */
  rise_mm?: number | string;
  /**
   * straightedge on the frets, over the bridge top [mm]
   */
  straightedge_over_bridge_mm?: number | string;
  /**
   * one standard deviation of that [mm]
   */
  straightedge_sd_mm?: number | string;
  /**
   * as it was read [mm]
   */
  relief_mm?: number | string;
  /**
   * as it will be set [mm]
   */
  relief_wanted_mm?: number | string;
  drift_mm_per_year?: EstimateAsk;
}
export interface NeckSideAsk {
  /**
   * action at fret 12, mean of the year [mm]
   */
  action12_mm?: number | string;
  /**
   * what that mean should be [mm]
   */
  action12_wanted_mm?: number | string;
  /**
   * one standard deviation of the mean [mm]
   */
  action12_sd_mm?: number | string;
  /**
   * saddle over the bridge now [mm]
   */
  exposure_mm?: number | string;
  /**
   * saddle over the bridge afterwards [mm]
   */
  exposure_wanted_mm?: number | string;
  /**
   * a saddle that stands out less is not made [mm]
   */
  exposure_least_mm?: number | string;
  /**
   * nor one that stands out more [mm]
   */
  exposure_most_mm?: number | string;
  /**
   * action in the year's highest month over its mean [mm]
   */
  highest_over_mean_mm?: number | string;
  /**
   * action today over the year's mean [mm]
   */
  today_over_mean_mm?: number | string;
}
export interface NeckAngleResult {
  /**
   * whether the neck's angle is called for
   */
  verdict: "called_for" | "not_needed" | "withheld" | "too_tall";
  /**
   * one sentence
   */
  words: string;
  /**
   * one standard deviation of the exposure asked [mm]
   */
  uncertainty_mm: number;
  /**
   * rise of the fret plane at the saddle [mm]
   */
  rise_mm: number;
  /**
   * of the neck; positive is back [deg]
   */
  turn_deg: number;
  /**
   * what to take off down the heel
   *
   * @minItems 2
   * @maxItems 100
   */
  heel: HeelDepth[];
  /**
   * frets beyond the joint, and the end of the board
   *
   * @minItems 1
   * @maxItems 20
   */
  tongue: TonguePlace[];
  bass: NeckSideAfter;
  treble: NeckSideAfter;
  /**
   * along the frets; positive is longer [mm]
   */
  saddle_from_nut_change_mm: number;
  /**
   * how far the nut moves away from the body [mm]
   */
  nut_back_mm: number;
  /**
   * mm at the saddle for 1 mm at the heel cap
   */
  saddle_per_heel: number;
  /**
   * mm at fret 12 likewise
   */
  action12_per_heel: number;
  /**
   * straightedge over the bridge, season and relief taken out [mm]
   */
  straightedge_of_year_mm?: number;
  /**
   * what of that is the season [mm]
   */
  straightedge_by_season_mm: number;
  /**
   * and what the relief [mm]
   */
  straightedge_by_relief_mm: number;
  /**
   * until the drift has used the saddle up; absent: it does not [years]
   */
  years_left?: number;
  /**
   * the same if it drifts as fast as it may [years]
   */
  years_left_least?: number;
  /**
   * what to mind
   *
   * @minItems 0
   * @maxItems 20
   */
  cautions: string[];
  /**
   * the work in order
   *
   * @minItems 0
   * @maxItems 40
   */
  steps: NeckStep[];
}
export interface TonguePlace {
  /**
   * 0: the end of the board
   */
  fret: number;
  /**
   * from the body joint [mm]
   */
  from_joint_mm: number;
  /**
   * shim under it; without one it lies that much below the plane [mm]
   */
  shim_mm: number;
}
export interface NeckSideAfter {
  /**
   * neck as it is, action as wanted [mm]
   */
  exposure_asked_mm: number;
  /**
   * the same, cut for the year's highest month [mm]
   */
  exposure_asked_highest_mm: number;
  /**
   * neck turned, saddle as it is [mm]
   */
  action12_saddle_kept_mm: number;
  /**
   * neck turned, new saddle [mm]
   */
  action12_mm: number;
  /**
   * neck turned, new saddle [mm]
   */
  exposure_mm: number;
  /**
   * new saddle over the one fitted now [mm]
   */
  saddle_raise_mm: number;
}
export interface NeckStep {
  /**
   * what is done
   */
  words: string;
  /**
   * what to mind; may be empty
   */
  caution: string;
  /**
   * only with the owner's yes: it cannot be undone
   */
  asks_owner: boolean;
}
export interface NeckAnswer {
  request: NeckAngleRequest;
  result: NeckAngleResult;
  /**
   * what no record says and was taken for granted
   *
   * @minItems 0
   * @maxItems 100
   */
  assumed: string[];
}
export interface NoteSoundRequestAsk {
  neck?: NeckLineAsk;
  action: StringActionAsk;
  /**
   * string 1, the thinnest, first
   *
   * @minItems 1
   * @maxItems 12
   */
  strings: GuitarStringAsk[];
  attack: AttackAsk;
  /**
   * 1 is the thinnest
   */
  string: number;
  /**
   * 0 is the open string
   */
  stopped_fret?: number;
  /**
   * which way it is drawn before it is let go
   */
  direction?: "away" | "toward";
  /**
   * of this note at the pluck, normal to the board, instead of the attack's [mm]
   */
  amplitude_mm?: number | string;
  /**
   * the same as a force [N]
   */
  pluck_force_n?: number;
  /**
   * how long it is followed [s]
   */
  seconds?: number;
  decay?: DecayTimesAsk;
  /**
   * false: the same note where there are no frets
   */
  with_frets?: boolean;
}
export interface NoteSwing {
  /**
   * 1 is the thinnest
   */
  string: number;
  /**
   * 0 is the open string
   */
  stopped_fret: number;
  /**
   * every higher fret
   *
   * @minItems 1
   * @maxItems 24
   */
  frets: SwingOverFret[];
  /**
   * at this string's saddle, so that it touches nothing; absent when it does not touch [mm]
   */
  saddle_raise_mm?: number;
}
export interface SwingOverFret {
  /**
   * over this crown
   */
  fret: number;
  /**
   * where it stands [mm]
   */
  from_nut_mm: number;
  /**
   * the stopped string at rest [mm]
   */
  string_over_plane_mm: number;
  /**
   * where its swing comes down to [mm]
   */
  lowest_over_plane_mm: number;
  /**
   * string at rest over the crown [mm]
   */
  gap_mm: number;
  /**
   * gap over reach: 1 just touches
   */
  ratio: number;
  /**
   * what it means
   */
  verdict: "clear" | "doubtful" | "touches";
}
export interface OffersMade {
  /**
   * lines put before the owner
   */
  made: number;
}
export interface OwnerAsk {
  /**
   * number in the book; 0: not kept yet
   */
  id?: number;
  /**
   * the owner's name
   */
  name: string;
  /**
   * how to reach them
   */
  contact?: string;
  /**
   * anything else
   */
  note?: string;
}
export interface OwnerList {
  /**
   * every owner, by name
   *
   * @minItems 0
   * @maxItems 1000000
   */
  owners: Owner[];
}
export interface OwnerWordAsk {
  /**
   * number in the book; 0: not kept yet
   */
  id?: number;
  /**
   * of this job
   */
  job_id?: number;
  /**
   * the offer it answers; 0: an operation
   */
  offer_id?: number;
  /**
   * the operation it is about; empty: an offer
   */
  operation?: string;
  /**
   * the owner's answer
   */
  says: "yes" | "no";
  /**
   * the day
   */
  day: string;
  /**
   * who said so
   */
  who: string;
}
export interface PaperOffered {
  /**
   * which paper
   */
  name: string;
  /**
   * what has to be done before it can be written; empty: nothing
   */
  missing: string;
}
export interface PaperWantedAsk {
  /**
   * which paper
   */
  kind: "claim_ticket" | "estimate" | "owners_report" | "invoice";
  /**
   * last day of an estimate's prices, or to pay an invoice
   */
  until?: string;
}
export interface PapersOfVisit {
  /**
   * that the visit can have
   *
   * @minItems 0
   * @maxItems 10
   */
  papers: PaperOffered[];
  /**
   * to the owner, oldest first
   *
   * @minItems 0
   * @maxItems 100000
   */
  given: GivenPaper[];
  invoice: InvoiceAnswer;
}
export interface PartEnergy {
  /**
   * top, bridge, bridge plate, hole reinforcement, rim or a brace
   */
  part: string;
  /**
   * stored under the strings
   */
  energy_mj: number;
  /**
   * of all
   */
  share: number;
}
export interface PinAsk {
  /**
   * number in the book; 0: not kept yet
   */
  id?: number;
  /**
   * of this job
   */
  job_id?: number;
  /**
   * an id in data/operations.csv
   */
  operation: string;
  /**
   * of the times that the job does this operation
   */
  which?: number;
  /**
   * it starts on that day; absent: let go again
   */
  day?: string;
  /**
   * since midnight [min]
   */
  minute?: number;
}
export interface PlateFields {
  /**
   * nodes: from the neck edge
   *
   * @minItems 0
   * @maxItems 200000
   */
  x_mm: number[];
  /**
   * nodes: from the centre line; treble positive
   *
   * @minItems 0
   * @maxItems 200000
   */
  y_mm: number[];
  /**
   * nodes: rise under the strings
   *
   * @minItems 0
   * @maxItems 200000
   */
  strings_height_mm: number[];
  /**
   * nodes: rise with the moisture
   *
   * @minItems 0
   * @maxItems 200000
   */
  moisture_height_mm: number[];
  /**
   * nodes: turn along the strings, positive leans to the neck
   *
   * @minItems 0
   * @maxItems 200000
   */
  strings_slope_deg: number[];
  /**
   * nodes: the same with the moisture
   *
   * @minItems 0
   * @maxItems 200000
   */
  moisture_slope_deg: number[];
  /**
   * triangles: node, from 0
   *
   * @minItems 0
   * @maxItems 200000
   */
  first_corner: number[];
  /**
   * triangles: node, from 0
   *
   * @minItems 0
   * @maxItems 200000
   */
  second_corner: number[];
  /**
   * triangles: node, from 0
   *
   * @minItems 0
   * @maxItems 200000
   */
  third_corner: number[];
  /**
   * triangles: stress along the grain, outer face
   *
   * @minItems 0
   * @maxItems 200000
   */
  outer_along_mpa: number[];
  /**
   * triangles: across the grain, outer face
   *
   * @minItems 0
   * @maxItems 200000
   */
  outer_across_mpa: number[];
  /**
   * triangles: along the grain, inner face
   *
   * @minItems 0
   * @maxItems 200000
   */
  inner_along_mpa: number[];
  /**
   * triangles: across the grain, inner face
   *
   * @minItems 0
   * @maxItems 200000
   */
  inner_across_mpa: number[];
}
export interface PlateRequestAsk {
  top?: WhichTopAsk;
  damage?: TopDamageAsk;
  strings?: StringLoadAsk;
  moisture?: MoistureChangeAsk;
  behind?: NeckAndBackAsk;
  /**
   * side of a triangle, about [mm]
   */
  mesh_mm?: number | string;
  /**
   * answer with the lists for pictures too
   */
  with_fields?: boolean;
}
export interface StringLoadAsk {
  /**
   * of all strings together, from the tension computation [N]
   */
  pull_n?: number;
  /**
   * of the strings at the saddle, over the top [mm]
   */
  height_over_top_mm?: number | string;
}
export interface PlateResult {
  strings: UnderStrings;
  moisture: WithMoisture;
  /**
   * which part carries the strings, the greatest first
   *
   * @minItems 0
   * @maxItems 60
   */
  carries: PartEnergy[];
  /**
   * of the mesh
   */
  nodes: number;
  /**
   * of the mesh
   */
  triangles: number;
  /**
   * that were solved for
   */
  unknowns: number;
  /**
   * quality of the poorest triangle; 1 is equilateral
   */
  worst_triangle: number;
  design: TopDesign;
  /**
   * to read with the figures
   *
   * @minItems 0
   * @maxItems 20
   */
  cautions: string[];
  fields?: PlateFields;
}
export interface UnderStrings {
  /**
   * at once, as on a new top; positive leans towards the neck [degrees]
   */
  bridge_rotation_deg: number;
  /**
   * after years at pitch, least creep [degrees]
   */
  bridge_rotation_years_low_deg: number;
  /**
   * after years at pitch, most creep [degrees]
   */
  bridge_rotation_years_high_deg: number;
  /**
   * highest rise behind the saddle [mm]
   */
  belly_mm: number;
  /**
   * deepest sinking in front of it; negative [mm]
   */
  dip_mm: number;
  /**
   * at the saddle, mean [mm]
   */
  saddle_rise_mm: number;
  /**
   * at the saddle, outward
   */
  stiffness_n_per_mm: number;
}
export interface WithMoisture {
  /**
   * the top alone; negative sinks [mm]
   */
  saddle_rise_mm: number;
  /**
   * under the bass string [mm]
   */
  saddle_rise_bass_mm: number;
  /**
   * under the treble string [mm]
   */
  saddle_rise_treble_mm: number;
  /**
   * positive leans towards the neck [degrees]
   */
  bridge_rotation_deg: number;
  /**
   * of any place of the top [mm]
   */
  greatest_move_mm: number;
  /**
   * half of the saddle's rise [mm]
   */
  action12_from_top_mm: number;
  /**
   * bridge and top change in height [mm]
   */
  action12_from_thickness_mm: number;
  /**
   * the neck block turns as top and back move: a judgement of size [mm]
   */
  action12_from_neck_mm: number;
  /**
   * all three [mm]
   */
  action12_change_mm: number;
  /**
   * 90 % between this [mm]
   */
  action12_change_low_mm: number;
  /**
   * and this [mm]
   */
  action12_change_high_mm: number;
  /**
   * across the grain; 95 % of the top stays below; nothing relaxed
   */
  stress_across_p95_mpa: number;
}
export interface PromiseRecord {
  /**
   * number in the book; 0: not kept yet
   */
  id: number;
  /**
   * of this visit
   */
  visit_id: number;
  /**
   * ready by the end of it
   */
  ready_on: string;
  /**
   * it was given with
   */
  chance: number;
  /**
   * the day it was said
   */
  said_on: string;
}
export interface PromiseRecordAsk {
  /**
   * number in the book; 0: not kept yet
   */
  id?: number;
  /**
   * of this visit
   */
  visit_id?: number;
  /**
   * ready by the end of it
   */
  ready_on: string;
  /**
   * it was given with
   */
  chance: number;
  /**
   * the day it was said
   */
  said_on: string;
}
export interface PromiseRequestAsk {
  bench: BenchRequestAsk;
  /**
   * finished operations of the shop's log
   *
   * @minItems 0
   * @maxItems 20000
   */
  finished?: FinishedWorkAsk[];
  /**
   * with which the promise is to hold
   */
  chance?: number;
  /**
   * how often the plan is gone through
   */
  simulations?: number;
}
export interface PromiseResult {
  /**
   * as asked
   *
   * @minItems 1
   * @maxItems 400
   */
  instruments: PromisedDay[];
  /**
   * of the plan that was simulated
   *
   * @minItems 0
   * @maxItems 24000
   */
  order: OrderEntry[];
  /**
   * gone through
   */
  simulations: number;
  /**
   * one sentence
   */
  verdict: string;
}
export interface PromisedDay {
  /**
   * which
   */
  name: string;
  /**
   * ready by the plan, were every estimate right
   */
  planned: string;
  /**
   * the first day whose chance is near enough to the one asked for
   */
  promise: string;
  /**
   * of being ready by the end of it
   */
  chance: number;
  /**
   * the first day with at least the chance asked for
   */
  sure_of: string;
  /**
   * of being ready by the end of that
   */
  sure_chance: number;
}
export interface ReadingAsk {
  /**
   * number in the book; 0: not kept yet
   */
  id?: number;
  /**
   * the visit it was taken at
   */
  visit_id: number;
  /**
   * what was measured: an id in data/measures.csv
   */
  measure: string;
  /**
   * as it was entered: 5/64, 2,1 mm
   */
  typed?: string;
  /**
   * in the measure's unit
   */
  value: number;
  /**
   * read with: an id in data/gauges.csv
   */
  gauge: string;
  /**
   * one standard deviation of that gauge in this hand, in the measure's unit; 0: the gauge's own
   */
  gauge_sd?: number;
  /**
   * as found, before any work of the visit, or as left, after it
   */
  state?: "as_found" | "as_left";
  /**
   * the reading this one corrects; 0: none
   */
  supersedes?: number;
  /**
   * the reading that corrects this one; 0: it stands. Set by the book
   */
  superseded_by?: number;
  /**
   * anything else
   */
  note?: string;
}
export interface ReadingsKept {
  /**
   * their numbers in the book, in the order given
   *
   * @minItems 0
   * @maxItems 200
   */
  readings: Kept[];
}
export interface ReadingsToKeepAsk {
  /**
   * readings of one visit, kept all or none
   *
   * @minItems 1
   * @maxItems 200
   */
  readings: ReadingAsk[];
}
export interface RepairList {
  /**
   * whole repairs, as data/procedures.csv has them
   *
   * @minItems 0
   * @maxItems 1000
   */
  repairs: RepairOffered[];
}
export interface RepairOffered {
  /**
   * as jobs name it
   */
  id: string;
  /**
   * as the shop calls it
   */
  name: string;
  /**
   * what is never done in it
   */
  never: string;
  /**
   * kinds of finding that lead to it
   *
   * @minItems 0
   * @maxItems 100
   */
  for_findings: string[];
  /**
   * drawings on which such a finding leads to it; none: any
   *
   * @minItems 0
   * @maxItems 7
   */
  finding_views: string[];
}
export interface ResponseRequest {
  /**
   * the day the question is asked
   */
  today: string;
  design: InstrumentDesign;
  home: HomeAir;
  /**
   * readings up to today
   *
   * @minItems 0
   * @maxItems 2000
   */
  readings: HeightReading[];
  /**
   * recorded work that moved the strings
   *
   * @minItems 0
   * @maxItems 500
   */
  changes: SetupChange[];
  /**
   * instruments of the kind in this shop
   *
   * @minItems 0
   * @maxItems 1000
   */
  kindred: KindredResponse[];
}
export interface SetupChange {
  /**
   * day of the work
   */
  date: string;
  /**
   * place within the day; a reading of the same or a smaller order was taken before it
   */
  order: number;
  /**
   * what was done, in the repairer's words
   */
  what: string;
  /**
   * by how much the bass side rose at fret 12; left out: not known [mm]
   */
  action12_bass_change_mm?: number;
  /**
   * by how much the treble side rose at fret 12; left out: not known [mm]
   */
  action12_treble_change_mm?: number;
  /**
   * one standard deviation of a known change [mm]
   */
  change_sd_mm: number;
  /**
   * it may have left the neck with another relief
   */
  moves_relief: boolean;
  /**
   * it may have left the bridge at another height over the rim
   */
  moves_bridge: boolean;
}
export interface ResponseRequestAsk {
  /**
   * the day the question is asked
   */
  today: string;
  design?: InstrumentDesignAsk;
  home: HomeAirAsk;
  /**
   * readings up to today
   *
   * @minItems 0
   * @maxItems 2000
   */
  readings?: HeightReadingAsk[];
  /**
   * recorded work that moved the strings
   *
   * @minItems 0
   * @maxItems 500
   */
  changes?: SetupChangeAsk[];
  /**
   * instruments of the kind in this shop
   *
   * @minItems 0
   * @maxItems 1000
   */
  kindred?: KindredResponseAsk[];
}
export interface SetupChangeAsk {
  /**
   * day of the work
   */
  date: string;
  /**
   * place within the day; a reading of the same or a smaller order was taken before it
   */
  order?: number;
  /**
   * what was done, in the repairer's words
   */
  what?: string;
  /**
   * by how much the bass side rose at fret 12; left out: not known [mm]
   */
  action12_bass_change_mm?: number | string;
  /**
   * by how much the treble side rose at fret 12; left out: not known [mm]
   */
  action12_treble_change_mm?: number | string;
  /**
   * one standard deviation of a known change [mm]
   */
  change_sd_mm?: number | string;
  /**
   * it may have left the neck with another relief
   */
  moves_relief?: boolean;
  /**
   * it may have left the bridge at another height over the rim
   */
  moves_bridge?: boolean;
}
export interface ResponseResult {
  response_bass_mm_per_percent: Estimate;
  response_treble_mm_per_percent: Estimate;
  top_mm_per_percent: Estimate;
  neck_and_back_mm_per_percent: Estimate;
  lag_days: Estimate;
  drift_mm_per_year: Estimate;
  action12_bass_today_mm: Estimate;
  action12_treble_today_mm: Estimate;
  summer_to_winter_drop_mm: Estimate;
  /**
   * of the wood, in its home
   */
  moisture_today_percent: number;
  /**
   * 1 nothing learnt from the readings, 0 all
   */
  prior_weight: number;
  /**
   * readings that were obeyed
   */
  readings_used: number;
  /**
   * readings of the bridge over the rim; with none the parts are guessed
   */
  bridge_readings: number;
  /**
   * readings that do not fit the others and are not obeyed
   *
   * @minItems 0
   * @maxItems 2000
   */
  flagged: FlaggedReading[];
  /**
   * the change since the readings before the latest; none or one
   *
   * @minItems 0
   * @maxItems 1
   */
  last_change: ChangeShare[];
  first_guess: FirstGuess;
  /**
   * what was taken for granted, in plain words
   *
   * @minItems 0
   * @maxItems 50
   */
  assumptions: string[];
}
export interface RodFigure {
  /**
   * mm that fret 12 rises for a mm of relief [mm per mm]
   */
  action12_per_relief: number;
  /**
   * one standard deviation of what is not known of it [mm per mm]
   */
  sd: number;
  /**
   * of this rod, read before and after, that it was learnt from
   */
  turns: number;
}
export interface SaddleAnswer {
  request: SaddleRequest;
  result: SaddleResult;
  /**
   * crowns to dress before the saddle, which is chosen for level frets; empty: none
   */
  frets_first: string;
  /**
   * what no record says and was taken for granted
   *
   * @minItems 0
   * @maxItems 100
   */
  assumed: string[];
}
export interface SaddleRequest {
  instrument: ResponseRequest;
  /**
   * the year to serve begins here
   */
  first: string;
  /**
   * its days [days]
   */
  count: number;
  limits: ActionLimits;
  /**
   * action this player likes best at fret 12, bass [mm]
   */
  wanted_bass_mm: number;
  /**
   * the same, treble [mm]
   */
  wanted_treble_mm: number;
  bridge: BridgeMeasures;
  /**
   * twice nut to fret 12 [mm]
   */
  scale_length_mm: number;
  /**
   * how far the saddle stands beyond the scale length [mm]
   */
  saddle_setback_mm: number;
  /**
   * fret at the body joint
   */
  body_joint_fret: number;
  /**
   * fingerboard plane to heel cap [mm]
   */
  heel_depth_mm: number;
  rod?: RodFigure;
  /**
   * of wood in the shop's air, when the instrument has been in it long enough [percent]
   */
  shop_moisture_percent?: number;
}
export interface SaddleResult {
  /**
   * the six ways side by side, leaving it first
   *
   * @minItems 0
   * @maxItems 6
   */
  options: SaddleOption[];
  /**
   * place of the one advised, from 0
   */
  best: number;
  /**
   * in one or two plain sentences
   */
  advice: string;
  /**
   * one standard deviation of the gauge that last read the action [mm]
   */
  reading_sd_mm: number;
  /**
   * mm at the saddle for 1 mm at fret 12
   */
  saddle_per_action: number;
  /**
   * what a file and a dial caliper hold; heights are in steps of it [mm]
   */
  cut_precision_mm: number;
  /**
   * for every option
   *
   * @minItems 0
   * @maxItems 30
   */
  cautions: string[];
}
export interface SaddleOption {
  /**
   * which of the six
   */
  choice: "leave" | "turn_rod" | "one_saddle" | "two_saddles" | "humid_room" | "neck_angle";
  /**
   * in plain words
   */
  title: string;
  /**
   * inside every limit, doable on this slot, and needed
   */
  possible: boolean;
  /**
   * when it is not
   */
  why_not: string;
  /**
   * to make; none when the present one stays
   *
   * @minItems 0
   * @maxItems 2
   */
  saddles: SaddleToMake[];
  days: DaysOutside;
  /**
   * action to leave at fret 12 today [mm]
   */
  set_bass_today_mm: number;
  /**
   * the same, treble [mm]
   */
  set_treble_today_mm: number;
  /**
   * one standard deviation of that, the wider side [mm]
   */
  set_today_sd_mm: number;
  /**
   * more days outside when set wrong by one standard deviation of the gauge
   */
  days_more_if_misread: number;
  /**
   * when the rod is turned [mm]
   */
  relief_to_set_mm?: number;
  /**
   * the room is never drier
   */
  keep_relative_humidity?: number;
  /**
   * at the heel cap [mm]
   */
  heel_removal_mm?: number;
  /**
   * one standard deviation of it [mm]
   */
  heel_removal_sd_mm?: number;
  /**
   * by which the neck is set back [degrees]
   */
  neck_turn_deg?: number;
  /**
   * structural limits, kept or broken
   *
   * @minItems 0
   * @maxItems 20
   */
  checks: LimitCheck[];
  /**
   * to read before the work
   *
   * @minItems 0
   * @maxItems 30
   */
  cautions: string[];
  /**
   * the guitar can be put back as it came
   */
  reversible: boolean;
  /**
   * weighted days outside and distance from what is wanted
   */
  cost: number;
  /**
   * weighted days the work must save to be advised
   */
  worth: number;
}
export interface SaddleToMake {
  /**
   * when it is in
   */
  season: string;
  /**
   * at the saddle, against the one fitted now; positive is taller [mm]
   */
  raise_bass_mm: number;
  /**
   * the same, treble [mm]
   */
  raise_treble_mm: number;
  /**
   * one standard deviation of the raise that would be right [mm]
   */
  raise_bass_sd_mm: number;
  /**
   * the same, treble [mm]
   */
  raise_treble_sd_mm: number;
  /**
   * over the bridge [mm]
   */
  exposure_bass_mm: number;
  /**
   * over the bridge [mm]
   */
  exposure_treble_mm: number;
  /**
   * what fret 12 should read today with this saddle in [mm]
   */
  set_bass_today_mm: number;
  /**
   * the same, treble [mm]
   */
  set_treble_today_mm: number;
  /**
   * taller somewhere, so it cannot be filed out of the present saddle
   */
  new_bone: boolean;
  /**
   * which way the cut goes
   */
  how: string;
  /**
   * with something to file off; 0 where the slot is not known [mm]
   */
  blank_height_mm: number;
  /**
   * likewise [mm]
   */
  blank_thickness_mm: number;
  /**
   * likewise [mm]
   */
  blank_length_mm: number;
  /**
   * finished: thinner rattles; 0 where the slot is not known [mm]
   */
  fit_thickness_least_mm: number;
  /**
   * finished: thicker wedges [mm]
   */
  fit_thickness_most_mm: number;
  /**
   * day it goes in, when there are two
   */
  from: string;
  /**
   * day it comes out, when there are two
   */
  until: string;
}
export interface SaddleDecisionAsk {
  /**
   * number in the book; 0: not kept yet
   */
  id?: number;
  /**
   * the visit it was taken at
   */
  visit_id: number;
  /**
   * leave, turn_rod, one_saddle, two_saddles, humid_room or neck_angle
   */
  choice: string;
  /**
   * how much taller the saddle is made, bass; negative is lower [mm]
   */
  raise_bass_at_saddle_mm: number | string;
  /**
   * the same, treble [mm]
   */
  raise_treble_at_saddle_mm: number | string;
  /**
   * the action to leave today, in today's air, bass [mm]
   */
  set_bass_at_fret12_mm: number | string;
  /**
   * the same, treble [mm]
   */
  set_treble_at_fret12_mm: number | string;
  /**
   * why this one
   */
  reason?: string;
}
export interface SaddleRequestAsk {
  instrument: ResponseRequestAsk;
  /**
   * the year to serve begins here
   */
  first: string;
  /**
   * its days [days]
   */
  count?: number;
  limits?: ActionLimitsAsk;
  /**
   * action this player likes best at fret 12, bass [mm]
   */
  wanted_bass_mm?: number | string;
  /**
   * the same, treble [mm]
   */
  wanted_treble_mm?: number | string;
  bridge: BridgeMeasuresAsk;
  /**
   * twice nut to fret 12 [mm]
   */
  scale_length_mm?: number | string;
  /**
   * how far the saddle stands beyond the scale length [mm]
   */
  saddle_setback_mm?: number | string;
  /**
   * fret at the body joint
   */
  body_joint_fret?: number;
  /**
   * fingerboard plane to heel cap [mm]
   */
  heel_depth_mm?: number | string;
  rod?: RodFigureAsk;
  /**
   * of wood in the shop's air, when the instrument has been in it long enough [percent]
   */
  shop_moisture_percent?: number;
}
export interface SaddleWishesAsk {
  /**
   * asked as on this day
   */
  today?: string;
  /**
   * the year to serve begins here
   */
  first?: string;
  limits?: ActionLimitsAsk;
  /**
   * action at fret 12 wanted [mm]
   */
  wanted_bass_mm?: number | string;
  /**
   * action at fret 12 wanted [mm]
   */
  wanted_treble_mm?: number | string;
  bridge?: BridgeMeasuresAsk;
}
export interface SaidAtVisitAsk {
  /**
   * number in the book; 0: not kept yet
   */
  id?: number;
  /**
   * of this visit
   */
  visit_id?: number;
  /**
   * a symptom, or an answer to a question of the diagnosis
   */
  about: "symptom" | "fact";
  /**
   * an id in data/symptoms.csv or data/diagnosis_facts.csv
   */
  name: string;
  /**
   * no: it does not, or no longer
   */
  holds: boolean;
  /**
   * the day
   */
  day: string;
  /**
   * who said so
   */
  who?: string;
}
export interface SeasonAnswer {
  /**
   * the day this was asked for
   */
  today: string;
  request: ResponseRequest;
  response: ResponseResult;
  year: YearResult;
  limits: ActionLimits;
  least_clean: LeastCleanAction;
  /**
   * crowns to dress before the saddle, which is chosen for level frets; empty: none
   */
  frets_first: string;
  /**
   * what no record says and was taken for granted
   *
   * @minItems 0
   * @maxItems 100
   */
  assumed: string[];
}
export interface YearResult {
  /**
   * first day
   */
  first: string;
  bass: ActionBand;
  treble: ActionBand;
  /**
   * expected in the home, daily, 0..1
   *
   * @minItems 0
   * @maxItems 1100
   */
  relative_humidity: number[];
  /**
   * expected of the wood, daily, at the median lag
   *
   * @minItems 0
   * @maxItems 1100
   */
  moisture_percent: number[];
  /**
   * one when limits were given
   *
   * @minItems 0
   * @maxItems 1
   */
  days_outside: DaysOutside[];
  /**
   * day of the lowest bass median
   */
  lowest_day: string;
  /**
   * day of the highest bass median
   */
  highest_day: string;
  /**
   * in one plain sentence
   */
  verdict: string;
}
export interface ShopAirAsk {
  /**
   * number in the book; 0: not kept yet
   */
  id?: number;
  /**
   * the day
   */
  day: string;
  /**
   * since midnight [min]
   */
  minute?: number;
  /**
   * in the shop [C]
   */
  temperature_c: number;
  /**
   * in the shop, 0..1
   */
  relative_humidity: number;
  /**
   * expected, not read
   */
  forecast?: boolean;
}
export interface ShopCard {
  /**
   * what the shop calls itself
   */
  name: string;
  /**
   * true in the demonstration: nobody in it exists
   */
  invented: boolean;
  /**
   * the shop's calendar
   */
  today: string;
  /**
   * how many are in the book
   */
  instruments: number;
  /**
   * of the book's file
   */
  schema_number: number;
}
export interface ShopSettings {
  /**
   * what the shop calls itself
   */
  name: string;
  /**
   * as on its papers, line by line
   */
  address: string;
  /**
   * whose hands do the work
   *
   * @minItems 1
   * @maxItems 4
   */
  people: BenchPerson[];
  /**
   * places and fixtures, and how many
   *
   * @minItems 0
   * @maxItems 40
   */
  stations: Station[];
  /**
   * ISO 4217
   */
  currency: string;
  /**
   * an exact decimal in that currency
   */
  hourly_rate: string;
  /**
   * where a line says nothing else
   */
  tax_percent: string;
  /**
   * under estimates and on tickets, line by line
   */
  terms: string;
  /**
   * on invoices, line by line
   */
  how_to_pay: string;
  /**
   * with which a promised day is to hold
   */
  promise_chance: number;
  weights?: BenchWeights;
}
export interface ShopSettingsAsk {
  /**
   * what the shop calls itself
   */
  name?: string;
  /**
   * as on its papers, line by line
   */
  address?: string;
  /**
   * whose hands do the work
   *
   * @minItems 1
   * @maxItems 4
   */
  people: BenchPersonAsk[];
  /**
   * places and fixtures, and how many
   *
   * @minItems 0
   * @maxItems 40
   */
  stations?: StationAsk[];
  /**
   * ISO 4217
   */
  currency?: string;
  /**
   * an exact decimal in that currency
   */
  hourly_rate?: string;
  /**
   * where a line says nothing else
   */
  tax_percent?: string;
  /**
   * under estimates and on tickets, line by line
   */
  terms?: string;
  /**
   * on invoices, line by line
   */
  how_to_pay?: string;
  /**
   * with which a promised day is to hold
   */
  promise_chance?: number;
  weights?: BenchWeightsAsk;
}
export interface StringLineAnswer {
  string_line: StringLineResult;
  clearance: ClearanceResult;
  swing: NoteSwing;
  cure: LeastCure;
  request: ClearanceRequest;
  hard_attack: Attack;
  /**
   * drawn with this relief [mm]
   */
  relief_mm: number;
  rod: RodFigure;
  /**
   * how hard players play
   *
   * @minItems 0
   * @maxItems 100
   */
  attacks: AttackMark[];
  /**
   * what no record says and was taken for granted
   *
   * @minItems 0
   * @maxItems 100
   */
  assumed: string[];
}
export interface StringLineResult {
  /**
   * fret 1 first
   *
   * @minItems 12
   * @maxItems 24
   */
  frets: FretPoint[];
  /**
   * string 1 first
   *
   * @minItems 1
   * @maxItems 12
   */
  strings: StringPath[];
  outer: OuterHeights;
  /**
   * mm of saddle for a mm at fret 12, bass
   */
  saddle_per_action12_bass: number;
  /**
   * mm of saddle for a mm at fret 12, treble
   */
  saddle_per_action12_treble: number;
  /**
   * mm at fret 12 for a mm of relief, fret plane and string ends held
   */
  action12_per_relief_at_held_ends: number;
  /**
   * the same when the neck bows from a held body joint
   */
  action12_per_relief_at_held_joint: number;
  /**
   * how far the lowest string hangs when the guitar lies on its back [mm]
   */
  sag_when_level_mm: number;
  /**
   * what to mind
   *
   * @minItems 0
   * @maxItems 20
   */
  cautions: string[];
}
export interface StringPath {
  /**
   * 1 is the thinnest
   */
  string: number;
  /**
   * nut slot over the fret plane [mm]
   */
  nut_over_frets_mm: number;
  /**
   * saddle top over the fret plane [mm]
   */
  saddle_over_frets_mm: number;
  /**
   * distance from the nut to the saddle crest [mm]
   */
  saddle_from_nut_mm: number;
  /**
   * open string over each crown, fret 1 first [mm]
   *
   * @minItems 12
   * @maxItems 24
   */
  over_fret_mm: number[];
  /**
   * stopped at fret 1, 2 and so on: over the next crown [mm]
   *
   * @minItems 11
   * @maxItems 23
   */
  over_next_fret_mm: number[];
  /**
   * saddle top over the bridge top [mm]
   */
  exposure_mm?: number;
}
export interface StringLineRequestAsk {
  neck?: NeckLineAsk;
  action: StringActionAsk;
  /**
   * bridge top at the saddle over the fret plane, bass [mm]
   */
  bridge_top_over_frets_bass_mm?: number | string;
  /**
   * bridge top at the saddle over the fret plane, treble [mm]
   */
  bridge_top_over_frets_treble_mm?: number | string;
  /**
   * pitch of the lowest open string [Hz]
   */
  lowest_pitch_hz?: number;
}
export interface StringTension {
  /**
   * 1 is the thinnest
   */
  string: number;
  /**
   * pitch of the open string [Hz]
   */
  pitch_hz: number;
  /**
   * mass per length [kg/m]
   */
  kg_per_metre: number;
  /**
   * pull of this string [N]
   */
  pull_n: number;
  /**
   * the same in pounds [lbf]
   */
  pull_lbf: number;
  /**
   * B of f_n = n f sqrt(1 + B n^2), from the core alone
   */
  inharmonicity?: number;
  /**
   * pull over the area of the core [MPa]
   */
  core_stress_mpa?: number;
}
export interface Survey {
  /**
   * the visit
   */
  visit_id: number;
  /**
   * its instrument
   */
  instrument_id: number;
  /**
   * the day
   */
  date: string;
  /**
   * the day of the visit before
   */
  visit_before?: string;
  /**
   * at this visit, as they stand
   *
   * @minItems 0
   * @maxItems 100000
   */
  found_now: FindingStory[];
  /**
   * still open when this visit began
   *
   * @minItems 0
   * @maxItems 100000
   */
  found_before: FindingStory[];
  /**
   * what this visit's corrections replaced or withdrew, oldest first
   *
   * @minItems 0
   * @maxItems 100000
   */
  superseded: Finding[];
  /**
   * since the visits before, the gravest first
   *
   * @minItems 0
   * @maxItems 100000
   */
  what_changed: string[];
}
export interface SurveyedTop {
  /**
   * the visit that last saw it; absent: it has not been here
   */
  seen_on?: string;
  /**
   * findings that the calculation counts
   *
   * @minItems 0
   * @maxItems 1000
   */
  taken: TakenFinding[];
  /**
   * findings of the top that it cannot take, a line each
   *
   * @minItems 0
   * @maxItems 1000
   */
  not_used: string[];
  /**
   * when a crack or a brace of the top was last mended; absent: nothing is known of it
   */
  last_mended?: string;
}
export interface TensionRequestAsk {
  /**
   * speaking length of the open strings [mm]
   */
  scale_length_mm?: number | string;
  /**
   * string 1, the thinnest, first
   *
   * @minItems 1
   * @maxItems 12
   */
  strings: GuitarStringAsk[];
}
export interface TensionResult {
  /**
   * string 1 first
   *
   * @minItems 1
   * @maxItems 12
   */
  strings: StringTension[];
  /**
   * pull of all strings [N]
   */
  total_n: number;
  /**
   * the same in pounds [lbf]
   */
  total_lbf: number;
}
export interface TopAir {
  /**
   * mean of its home's typical year, which it is compared with
   */
  settled_humidity: number;
  /**
   * of wood in that air [%]
   */
  settled_moisture_percent: number;
  /**
   * in which the wood is looked at, settled, 20 C
   */
  humidity: number;
  /**
   * of wood in that air [%]
   */
  moisture_percent: number;
  /**
   * of its home's typical year
   */
  driest_month_humidity: number;
  /**
   * the same
   */
  dampest_month_humidity: number;
}
export interface TopAnswer {
  /**
   * of bracing, that can be asked for
   *
   * @minItems 0
   * @maxItems 100
   */
  patterns: string[];
  /**
   * the one taken; empty: none is recorded and nothing was calculated
   */
  pattern: string;
  air: TopAir;
  /**
   * of the top as the book knows it [mm]
   */
  thickness_mm: number;
  /**
   * of the strings as recorded [N]
   */
  pull_n: number;
  /**
   * with the strings and tuning asked for [N]
   */
  pull_changed_n: number;
  /**
   * at the saddle [mm]
   */
  string_height_over_top_mm: number;
  survey: SurveyedTop;
  shape?: TopShape;
  recorded?: TopState;
  changed?: TopState;
  /**
   * the bridge's tilt as read, against what such a top comes to; empty: not read
   */
  tilt_verdict: string;
  /**
   * what no record says and was taken for granted
   *
   * @minItems 0
   * @maxItems 100
   */
  assumed: string[];
}
export interface TopShape {
  /**
   * nodes: from the neck edge
   *
   * @minItems 0
   * @maxItems 600000
   */
  x_mm: number[];
  /**
   * nodes: from the centre line; treble positive
   *
   * @minItems 0
   * @maxItems 600000
   */
  y_mm: number[];
  /**
   * triangles: three nodes each, from 0
   *
   * @minItems 0
   * @maxItems 600000
   */
  corners: number[];
}
export interface TopState {
  numbers: PlateResult;
  /**
   * nodes: rise under the strings
   *
   * @minItems 0
   * @maxItems 600000
   */
  strings_height_mm: number[];
  /**
   * nodes: rise with the moisture
   *
   * @minItems 0
   * @maxItems 600000
   */
  moisture_height_mm: number[];
  /**
   * nodes: stress across the grain, both together, the face that is pulled more
   *
   * @minItems 0
   * @maxItems 600000
   */
  across_mpa: number[];
  greatest_across: GreatestAcross;
}
export interface TopWishesAsk {
  /**
   * asked as on this day
   */
  today?: string;
  /**
   * a pattern, nearest to this top's own: x_scalloped, x_braced, ladder, fan
   */
  bracing?: string;
  /**
   * the wood settled in this air; absent: the driest month of its home
   */
  relative_humidity?: number;
  /**
   * of the top, otherwise than it is [mm]
   */
  thickness_mm?: number | string;
  /**
   * otherwise than it is strung
   */
  string_set?: string;
  /**
   * otherwise than it is tuned
   */
  tuning?: string;
  /**
   * stretches off the top
   *
   * @minItems 0
   * @maxItems 20
   */
  loose_braces?: LooseBraceAsk[];
  /**
   * share of its thickness gone along the pin holes
   */
  bridge_plate_worn?: number;
  /**
   * from the back edge of the bridge, off the top [mm]
   */
  bridge_lifted_mm?: number | string;
  /**
   * without what the surveys found
   */
  mended?: boolean;
}
export interface VisitAsk {
  /**
   * number in the book; 0: not kept yet
   */
  id?: number;
  /**
   * which instrument came in
   */
  instrument_id: number;
  /**
   * the day
   */
  date: string;
  /**
   * what the owner said, in the owner's words
   */
  reason?: string;
  /**
   * anything else
   */
  note?: string;
}
export interface VisitPhoto {
  /**
   * number in the book; 0: not kept yet
   */
  id: number;
  /**
   * the visit it shows
   */
  visit_id: number;
  /**
   * a photo in the book
   */
  photo_id: number;
  /**
   * what it shows
   */
  words: string;
  /**
   * it is shown no longer
   */
  left_out: boolean;
}
export interface VisitPhotoAsk {
  /**
   * number in the book; 0: not kept yet
   */
  id?: number;
  /**
   * the visit it shows
   */
  visit_id?: number;
  /**
   * a photo in the book
   */
  photo_id: number;
  /**
   * what it shows
   */
  words?: string;
  /**
   * it is shown no longer
   */
  left_out?: boolean;
}
export interface VisitPhotoList {
  /**
   * of the visit itself, in the order in which they were first kept
   *
   * @minItems 0
   * @maxItems 1000
   */
  photos: VisitPhoto[];
}
export interface VisitPlan {
  kept: VisitWork;
  /**
   * each with its plan as it stands now
   *
   * @minItems 0
   * @maxItems 1000
   */
  jobs: JobPlan[];
  now: Moment;
}
export interface VisitWork {
  visit: Visit;
  /**
   * repairs chosen at it
   *
   * @minItems 0
   * @maxItems 100000
   */
  jobs: JobStory[];
  /**
   * of the humidity gate
   *
   * @minItems 0
   * @maxItems 100000
   */
  overrides: GateRecord[];
  /**
   * of what is wrong, oldest first
   *
   * @minItems 0
   * @maxItems 100000
   */
  said: SaidAtVisit[];
  /**
   * oldest first
   *
   * @minItems 0
   * @maxItems 100000
   */
  promises: PromiseRecord[];
  /**
   * when it is wanted, oldest first
   *
   * @minItems 0
   * @maxItems 100000
   */
  wishes: BenchWish[];
  /**
   * once it went home
   *
   * @minItems 0
   * @maxItems 100000
   */
  handovers: Handover[];
  /**
   * given to the owner, oldest first
   *
   * @minItems 0
   * @maxItems 100000
   */
  papers: GivenPaper[];
  /**
   * what those that are invoices ask for
   *
   * @minItems 0
   * @maxItems 100000
   */
  invoiced: InvoicedOffer[];
  /**
   * answered at earlier visits of the instrument, oldest first
   *
   * @minItems 0
   * @maxItems 100000
   */
  before: AnsweredBefore[];
}
export interface WorkCorrectionAsk {
  /**
   * number in the book; 0: not kept yet
   */
  id?: number;
  /**
   * the stretch of work it puts right
   */
  spell_id?: number;
  /**
   * how long hands were at it [min]
   */
  minutes: number;
  /**
   * the hands-on part is done
   */
  finished?: boolean;
  /**
   * the day it was put right
   */
  day: string;
  /**
   * who says so
   */
  who?: string;
  /**
   * anything else
   */
  note?: string;
}
export interface YearRequestAsk {
  instrument: ResponseRequestAsk;
  /**
   * first day of the year ahead, up to ten years after today
   */
  first: string;
  /**
   * days [days]
   */
  count?: number;
  limits?: ActionLimitsAsk;
}
