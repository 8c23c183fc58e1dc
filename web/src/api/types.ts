// Stands in until `npm run types` writes this file from the program's own API document.
export interface components {
  schemas: {
    Shop: {
      name: string;
      invented: boolean;
      today: string;
      instruments: number;
      schema_number: number;
    };
    Owner: { id: number; name: string; contact: string; note: string };
    HomeAir: {
      kind: "indoor_months" | "outdoor_months";
      temperature_c: number[];
      relative_humidity: number[];
      dew_point_c: number[];
      heating_set_point_c: number;
      moisture_gain_g_per_m3: number;
      humidifier_floor: number;
      dehumidifier_ceiling: number;
      weather_sd_relative_humidity: number;
      weather_memory_days: number;
      log: { date: string; temperature_c: number; relative_humidity: number }[];
    };
    Home: { id: number; name: string; air: components["schemas"]["HomeAir"]; note: string };
    InstrumentDesign: {
      body_size: "parlour" | "small" | "mid_size" | "slope_large" | "square_large";
      bracing: "x_braced" | "ladder" | "fan" | "other";
      lower_bout_width_mm?: number;
      top_thickness_mm?: number;
      ring_angle_deg: number;
      top_species: string;
      kept_in_case: boolean;
    };
    Instrument: {
      id: number;
      owner_id: number;
      home_id: number;
      name: string;
      made: string;
      design: components["schemas"]["InstrumentDesign"];
      scale_length_mm: number;
      body_joint_fret: number;
      fret_count: number;
      adjustable_rod: boolean;
      slot: "open_ended" | "closed";
      slot_depth_mm?: number;
      slot_width_mm?: number;
      slot_length_mm?: number;
      string_set: string;
      tuning: string;
      attack: "soft" | "medium" | "hard";
      wanted_action12_bass_mm?: number;
      wanted_action12_treble_mm?: number;
      highest_action12_bass_mm?: number;
      highest_action12_treble_mm?: number;
      note: string;
    };
    InstrumentLine: {
      id: number;
      name: string;
      owner: string;
      home: string;
      body_size: components["schemas"]["InstrumentDesign"]["body_size"];
      bracing: components["schemas"]["InstrumentDesign"]["bracing"];
      slot: "open_ended" | "closed";
      visits: number;
      last_visit?: string;
      last_action12_bass_mm?: number;
      last_action12_treble_mm?: number;
    };
    InstrumentPage: {
      instruments: components["schemas"]["InstrumentLine"][];
      total: number;
      page: number;
      per_page: number;
    };
    Visit: { id: number; instrument_id: number; date: string; reason: string; note: string };
    Reading: {
      id: number;
      visit_id: number;
      measure: string;
      typed: string;
      value: number;
      gauge: string;
      gauge_sd: number;
      state: "as_found" | "as_left";
      supersedes: number;
      superseded_by: number;
      note: string;
    };
    Intervention: {
      id: number;
      visit_id: number;
      kind: string;
      action12_bass_change_mm?: number;
      action12_treble_change_mm?: number;
      change_sd_mm?: number;
      note: string;
    };
    SaddleDecision: {
      id: number;
      visit_id: number;
      choice: string;
      raise_bass_at_saddle_mm: number;
      raise_treble_at_saddle_mm: number;
      set_bass_at_fret12_mm: number;
      set_treble_at_fret12_mm: number;
      reason: string;
    };
    VisitStory: {
      visit: components["schemas"]["Visit"];
      readings: components["schemas"]["Reading"][];
      interventions: components["schemas"]["Intervention"][];
      decisions: components["schemas"]["SaddleDecision"][];
    };
    InstrumentStory: {
      instrument: components["schemas"]["Instrument"];
      owner: components["schemas"]["Owner"];
      home: components["schemas"]["Home"];
      logged_days: number;
      visits: components["schemas"]["VisitStory"][];
    };
    Estimate: { median: number; low: number; high: number };
    ChangeShare: {
      from: string;
      to: string;
      measured_bass_mm: components["schemas"]["Estimate"];
      measured_treble_mm: components["schemas"]["Estimate"];
      season_bass_mm: components["schemas"]["Estimate"];
      season_treble_mm: components["schemas"]["Estimate"];
      unexplained_bass_mm: components["schemas"]["Estimate"];
      unexplained_treble_mm: components["schemas"]["Estimate"];
      season_share: components["schemas"]["Estimate"];
      something_else_probability: number;
      something_else: boolean;
      verdict: string;
      better_reading: string;
    };
    ResponseResult: {
      response_bass_mm_per_percent: components["schemas"]["Estimate"];
      response_treble_mm_per_percent: components["schemas"]["Estimate"];
      lag_days: components["schemas"]["Estimate"];
      drift_mm_per_year: components["schemas"]["Estimate"];
      action12_bass_today_mm: components["schemas"]["Estimate"];
      action12_treble_today_mm: components["schemas"]["Estimate"];
      summer_to_winter_drop_mm: components["schemas"]["Estimate"];
      moisture_today_percent: number;
      prior_weight: number;
      readings_used: number;
      flagged: {
        date: string;
        order: number;
        kind: string;
        value_mm: number;
        expected_mm: number;
        expected_sd_mm: number;
        why: string;
      }[];
      last_change: components["schemas"]["ChangeShare"][];
      assumptions: string[];
    };
    ActionLimits: {
      lowest_bass_mm: number;
      lowest_treble_mm: number;
      highest_bass_mm: number;
      highest_treble_mm: number;
    };
    ActionBand: { low_mm: number[]; lower_mm: number[]; median_mm: number[]; upper_mm: number[]; high_mm: number[] };
    DaysOutside: {
      low_bass: components["schemas"]["Estimate"];
      low_treble: components["schemas"]["Estimate"];
      high_bass: components["schemas"]["Estimate"];
      high_treble: components["schemas"]["Estimate"];
      low_either: components["schemas"]["Estimate"];
      high_either: components["schemas"]["Estimate"];
    };
    YearResult: {
      first: string;
      bass: components["schemas"]["ActionBand"];
      treble: components["schemas"]["ActionBand"];
      relative_humidity: number[];
      moisture_percent: number[];
      days_outside: components["schemas"]["DaysOutside"][];
      lowest_day: string;
      highest_day: string;
      verdict: string;
    };
    SaddleToMake: {
      season: string;
      raise_bass_mm: number;
      raise_treble_mm: number;
      exposure_bass_mm: number;
      exposure_treble_mm: number;
      new_bone: boolean;
      how: string;
      fit_thickness_least_mm: number;
      fit_thickness_most_mm: number;
      blank_height_mm: number;
      blank_thickness_mm: number;
      blank_length_mm: number;
      from: string;
      until: string;
    };
    LimitCheck: { limit: string; kept: boolean; usual: boolean; figure: string; source: string };
    SaddleOption: {
      choice: "leave" | "one_saddle" | "two_saddles" | "humid_room" | "neck_angle";
      title: string;
      possible: boolean;
      why_not: string;
      saddles: components["schemas"]["SaddleToMake"][];
      days: components["schemas"]["DaysOutside"];
      set_bass_today_mm: number;
      set_treble_today_mm: number;
      set_today_sd_mm: number;
      keep_relative_humidity?: number;
      heel_removal_mm?: number;
      neck_turn_deg?: number;
      checks: components["schemas"]["LimitCheck"][];
      cautions: string[];
      days_more_if_misread: number;
      heel_removal_sd_mm?: number;
      reversible: boolean;
      cost: number;
      worth: number;
    };
    SaddleResult: {
      options: components["schemas"]["SaddleOption"][];
      best: number;
      advice: string;
      cut_precision_mm: number;
      cautions: string[];
    };
  };
}
