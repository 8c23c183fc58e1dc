import type { Home } from "../api/shapes";

/** A home as the form offers it before anything is known: an even room, the program's own defaults. */
export function newHome(): Home {
  return {
    id: 0,
    name: "",
    note: "",
    air: {
      kind: "indoor_months",
      temperature_c: Array.from({ length: 12 }, () => 20),
      relative_humidity: Array.from({ length: 12 }, () => 0.45),
      dew_point_c: Array.from({ length: 12 }, () => 8),
      heating_set_point_c: 20,
      moisture_gain_g_per_m3: 2,
      humidifier_floor: 0,
      dehumidifier_ceiling: 1,
      weather_sd_relative_humidity: 0.05,
      weather_memory_days: 6,
      log: [],
    },
  };
}
