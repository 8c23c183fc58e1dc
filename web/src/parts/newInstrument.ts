import type { Instrument } from "../api/shapes";

/** An instrument as the form offers it: the program's own defaults, an average 14-fret flat-top. */
export function newInstrument(): Instrument {
  return {
    id: 0,
    owner_id: 0,
    home_id: 0,
    name: "",
    made: "",
    design: { body_size: "mid_size", bracing: "x_braced", ring_angle_deg: 0, top_species: "", kept_in_case: false },
    scale_length_mm: 645,
    body_joint_fret: 14,
    fret_count: 20,
    adjustable_rod: false,
    slot: "closed",
    string_set: "light",
    tuning: "standard",
    attack: "medium",
    note: "",
  };
}
