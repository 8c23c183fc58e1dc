// Written by `npm run types` from the program's own API document; not by hand.

export interface Api {
  ActionBand: ActionBand;
  ActionLimits: ActionLimits;
  ActionLimitsAsk: ActionLimitsAsk;
  AirDay: AirDay;
  AirOfHome: AirOfHome;
  AirRequestAsk: AirRequestAsk;
  AirResult: AirResult;
  AttackAsk: AttackAsk;
  BridgeMeasures: BridgeMeasures;
  BridgeMeasuresAsk: BridgeMeasuresAsk;
  ChangeShare: ChangeShare;
  ClearanceRequestAsk: ClearanceRequestAsk;
  ClearanceResult: ClearanceResult;
  DaysOutside: DaysOutside;
  DecidingNote: DecidingNote;
  Equilibrium: Equilibrium;
  Estimate: Estimate;
  FlaggedReading: FlaggedReading;
  FloorAtRelief: FloorAtRelief;
  FloorAtReliefAsk: FloorAtReliefAsk;
  ForcingNote: ForcingNote;
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
  Gauge: Gauge;
  GuitarStringAsk: GuitarStringAsk;
  HeightReading: HeightReading;
  HeightReadingAsk: HeightReadingAsk;
  Home: Home;
  HomeAir: HomeAir;
  HomeAirAsk: HomeAirAsk;
  HomeAirRequestAsk: HomeAirRequestAsk;
  HomeAirResult: HomeAirResult;
  HomeAsk: HomeAsk;
  HomeList: HomeList;
  HygrometerCorrection: HygrometerCorrection;
  HygrometerRequestAsk: HygrometerRequestAsk;
  HygrometerResult: HygrometerResult;
  Instrument: Instrument;
  InstrumentAsk: InstrumentAsk;
  InstrumentDesign: InstrumentDesign;
  InstrumentDesignAsk: InstrumentDesignAsk;
  InstrumentLine: InstrumentLine;
  InstrumentPage: InstrumentPage;
  InstrumentStory: InstrumentStory;
  Intervention: Intervention;
  InterventionAsk: InterventionAsk;
  InterventionKind: InterventionKind;
  Kept: Kept;
  KindredResponse: KindredResponse;
  KindredResponseAsk: KindredResponseAsk;
  LeastCleanAction: LeastCleanAction;
  LeastString: LeastString;
  LengthRead: LengthRead;
  LimitCheck: LimitCheck;
  LogKeptReport: LogKeptReport;
  LoggedDay: LoggedDay;
  LoggedDayAsk: LoggedDayAsk;
  LoggerGap: LoggerGap;
  LoggerReport: LoggerReport;
  Measure: Measure;
  ModelLine: ModelLine;
  ModelList: ModelList;
  MoistureDays: MoistureDays;
  MoistureRequestAsk: MoistureRequestAsk;
  MoistureResult: MoistureResult;
  MonthOfAir: MonthOfAir;
  NeckLineAsk: NeckLineAsk;
  NoteClearance: NoteClearance;
  Offered: Offered;
  OuterHeights: OuterHeights;
  Owner: Owner;
  OwnerAsk: OwnerAsk;
  OwnerList: OwnerList;
  PlateAsk: PlateAsk;
  Reading: Reading;
  ReadingAsk: ReadingAsk;
  ReadingsKept: ReadingsKept;
  ReadingsToKeepAsk: ReadingsToKeepAsk;
  RefusedLine: RefusedLine;
  ReliefInstead: ReliefInstead;
  ResponseRequest: ResponseRequest;
  ResponseRequestAsk: ResponseRequestAsk;
  ResponseResult: ResponseResult;
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
  SaddleWishesAsk: SaddleWishesAsk;
  SaltReadingAsk: SaltReadingAsk;
  SeasonAnswer: SeasonAnswer;
  SetupChange: SetupChange;
  SetupChangeAsk: SetupChangeAsk;
  ShopCard: ShopCard;
  StillAirAsk: StillAirAsk;
  StringActionAsk: StringActionAsk;
  StringLineAnswer: StringLineAnswer;
  StringLineRequestAsk: StringLineRequestAsk;
  StringLineResult: StringLineResult;
  StringPath: StringPath;
  StringTension: StringTension;
  TensionRequestAsk: TensionRequestAsk;
  TensionResult: TensionResult;
  ThinDay: ThinDay;
  UncleanNote: UncleanNote;
  Visit: Visit;
  VisitAsk: VisitAsk;
  VisitStory: VisitStory;
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
  kind: "action12_bass" | "action12_treble" | "relief";
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
  kind: "action12_bass" | "action12_treble" | "relief";
  /**
   * height at pitch over the top of fret 12; relief at the middle of the neck [mm]
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
  kind: "action12_bass" | "action12_treble" | "relief";
  /**
   * height at pitch over the top of fret 12; relief at the middle of the neck [mm]
   */
  value_mm: number | string;
  /**
   * one standard deviation of the gauge in this hand [mm]
   */
  gauge_sd_mm?: number | string;
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
export interface Kept {
  /**
   * the record's number in the book
   */
  id: number;
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
}
export interface ResponseResult {
  response_bass_mm_per_percent: Estimate;
  response_treble_mm_per_percent: Estimate;
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
export interface StringLineAnswer {
  string_line: StringLineResult;
  clearance: ClearanceResult;
  /**
   * drawn with this relief [mm]
   */
  relief_mm: number;
  rod: RodFigure;
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
