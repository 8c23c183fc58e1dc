// Moist air against the general psychrometric library of the npm registry, run for real: node psychrolib_peer.mjs PROGRAM,
// where PROGRAM is tailblock. Prints the largest deviation of each quantity and fails when one is over its tolerance.
//
// Below 0 C the library's humidity, dew point and wet bulb are over ice, ours over liquid water: it is asked with our
// humidity over ice, and its dew point is our frost point. Where air that is full over water is more than full over ice,
// the library has no answer, and only the pressures are compared.
import { execFileSync } from "node:child_process";
import { createRequire } from "node:module";

const require = createRequire(new URL("../../web/package.json", import.meta.url));
const library = require("psychrolib");
library.SetUnitSystem(library.SI);

const program = process.argv[2];
if (!program) {
  console.error("usage: node psychrolib_peer.mjs PROGRAM");
  process.exit(2);
}

// Both sides code the same published equations and coefficients, so pressures and ratios may differ by rounding alone.
// The library iterates dew point and wet bulb to 0.001 K. Its gas constants are rounded to six digits.
const tolerances = {
  "saturation pressure": { limit: 1e-9, unit: "of it" },
  "vapour pressure": { limit: 1e-9, unit: "of it" },
  "humidity ratio": { limit: 1e-9, unit: "of it" },
  "dew or frost point": { limit: 0.001, unit: "K" },
  "humidity ratio of our wet bulb": { limit: 1e-9, unit: "kg/kg" },
  "wet bulb": { limit: 0.001, unit: "K" },
  "absolute humidity": { limit: 2e-5, unit: "of it" },
};
const worst = Object.fromEntries(
  Object.keys(tolerances).map((name) => [name, { deviation: 0, where: "none", count: 0 }]),
);

function note(name, deviation, where) {
  const entry = worst[name];
  entry.count += 1;
  if (!(deviation <= entry.deviation)) Object.assign(entry, { deviation, where });
}

const relative = (ours, theirs) => Math.abs(ours / theirs - 1);

function air(request) {
  return JSON.parse(execFileSync(program, ["compute", "air"], { input: JSON.stringify(request), encoding: "utf8" }));
}

function compare(t, humidity, pressure) {
  const ours = air({ temperature_c: t, relative_humidity: humidity, pressure_pa: pressure });
  const where = `${t} C, ${humidity}, ${pressure} Pa`;
  const frozen = t <= 0; // the library changes from ice to water at 0.01 C
  const theirHumidity = frozen ? ours.relative_humidity_over_ice : ours.relative_humidity;
  const ourSaturation = frozen
    ? ours.vapour_pressure_pa / ours.relative_humidity_over_ice
    : ours.saturation_pressure_pa;
  note("saturation pressure", relative(ourSaturation, library.GetSatVapPres(t)), where);
  if (theirHumidity > 1) return;

  const vapour = library.GetVapPresFromRelHum(t, theirHumidity);
  const ratio = library.GetHumRatioFromVapPres(vapour, pressure);
  note("vapour pressure", relative(ours.vapour_pressure_pa, vapour), where);
  note("humidity ratio", relative(ours.humidity_ratio, ratio), where);

  const theirDewPoint = library.GetTDewPointFromVapPres(t, vapour);
  const ourDewPoint = theirDewPoint <= 0.01 ? (ours.frost_point_c ?? 0) : ours.dew_point_c;
  note("dew or frost point", Math.abs(ourDewPoint - theirDewPoint), where);

  // Just over and just under 0 C a wet and an iced bulb can both stand in the same air, and the library may find either:
  // there only its own closed form, from bulb to humidity, is compared.
  const ratioOfBulb = library.GetHumRatioFromTWetBulb(t, ours.wet_bulb_c, pressure);
  note("humidity ratio of our wet bulb", Math.abs(ratioOfBulb - ratio), where);
  if (Math.abs(ours.wet_bulb_c) > 1) {
    note("wet bulb", Math.abs(ours.wet_bulb_c - library.GetTWetBulbFromHumRatio(t, ratio, pressure)), where);
  }

  const grams = (1000 * ratio) / library.GetMoistAirVolume(t, ratio, pressure);
  note("absolute humidity", relative(ours.absolute_humidity_g_per_m3, grams), where);
}

for (let t = -20; t <= 50; t += 2.5) {
  for (const humidity of [0.05, 0.2, 0.35, 0.45, 0.6, 0.8, 0.95]) compare(t, humidity, 101325);
}
for (const t of [-10, 5, 21, 35]) compare(t, 0.4, 82237);

let failed = false;
for (const [name, { deviation, where, count }] of Object.entries(worst)) {
  const { limit, unit } = tolerances[name];
  const bad = count === 0 || !(deviation <= limit);
  failed ||= bad;
  console.log(
    `${bad ? "FAILED " : ""}${name}: largest deviation ${deviation.toExponential(2)} ${unit}` +
      ` (limit ${limit}) in ${count} states, at ${where}`,
  );
}
process.exit(failed ? 1 : 0);
