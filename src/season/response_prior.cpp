#include "season/response_prior.h"

#include <cmath>

#include "season/body_designs.h"
#include "season/season_prior.h"
#include "season/words.h"
#include "wood/species.h"

namespace tailblock {
namespace {

constexpr std::string_view reference_wood = "Sitka spruce";

double movement(const Species& wood, Angle ring_angle) {
  const double s = std::sin(in_radians(ring_angle));
  return wood.radial_per_percent * (1 - s * s) + wood.tangential_per_percent * s * s;
}

double square(double x) { return x * x; }

struct Normal {
  double mean, variance;
};

/// The kind's mean after its kindred: precisions add up.
Normal sharpened(Normal kind, const std::vector<KindredResponse>& kindred, double between_variance) {
  double precision = 1 / kind.variance;
  double weighted = kind.mean * precision;
  for (const KindredResponse& other : kindred) {
    const double p = 1 / (between_variance + square(other.log_sd));
    precision += p;
    weighted += p * std::log(other.response_mm_per_percent);
  }
  return {.mean = weighted / precision, .variance = 1 / precision};
}

}  // namespace

ResponsePrior response_prior(const InstrumentDesign& design, const std::vector<KindredResponse>& kindred,
                             const SeasonTables& tables) {
  const SeasonPrior& p = *tables.prior;
  const bool wood_known = !design.top_species.empty();
  const Species& sitka = tables.species->named(reference_wood);
  const Species& wood = wood_known ? tables.species->named(design.top_species) : sitka;
  const Length usual_width = tables.designs->lower_bout_width[static_cast<std::size_t>(design.body_size)];
  const double width_mm = in_mm(design.lower_bout_width.value_or(usual_width));
  const double wood_factor = movement(wood, design.ring_angle) / movement(sitka, degrees(0));

  const double before_kindred =
      std::log(p.structure_response * p.transmission * square(width_mm / p.reference_width) * wood_factor);
  double kind_variance = square(p.kind_log_sd);
  if (design.bracing != Bracing::x_braced) kind_variance += square(p.other_bracing_log_sd);
  if (!wood_known) kind_variance += square(p.guessed_wood_log_sd);
  const Normal kind = sharpened({before_kindred, kind_variance}, kindred, square(p.instrument_log_sd));

  ResponsePrior prior{.log_response = kind.mean,
                      .log_response_sd = std::sqrt(kind.variance + square(p.instrument_log_sd)),
                      .log_lag = std::log(design.kept_in_case ? p.lag_median_in_case : p.lag_median),
                      .log_lag_sd = p.lag_log_sd,
                      .assumptions = {}};
  auto say = [&](std::string sentence) { prior.assumptions.push_back(std::move(sentence)); };
  say("Before any reading, " + decimals(std::exp(prior.log_response), 3) +
      " mm at fret 12 for each percent of wood moisture (90 % between " +
      decimals(std::exp(prior.log_response - 1.645 * prior.log_response_sd), 3) + " and " +
      decimals(std::exp(prior.log_response + 1.645 * prior.log_response_sd), 3) + ").");
  say("A braced top alone would give " + decimals(p.structure_response, 2) +
      " mm per percent; hysteresis, relaxation, the rim, neck and back are taken to leave " +
      decimals(100 * p.transmission, 0) + " % of it, set to what the trade sees in heated homes, not to physics.");
  if (!design.lower_bout_width) {
    say("Lower bout taken as " + decimals(width_mm, 0) + " mm, usual for the body size.");
  }
  if (!wood_known) say("Top taken to be Sitka spruce.");
  if (wood.provisional) say("Movement figures of " + wood.name + " are partly from memory and provisional.");
  if (design.bracing != Bracing::x_braced) {
    say("The bracing is not an X: the same response is assumed with a wider spread, for want of figures.");
  }
  if (!kindred.empty()) say("Sharpened by " + counted(kindred.size(), "kindred instrument") + " in the shop.");
  say("The wood follows the air in about " + decimals(std::exp(prior.log_lag), 0) + " days" +
      (design.kept_in_case ? " in its case." : " on a wall or a stand."));
  return prior;
}

}  // namespace tailblock
