#include "season/response_prior.h"

#include <cmath>

#include "body/layered_section.h"
#include "body/plate_figures.h"
#include "body/top_designs.h"
#include "season/body_designs.h"
#include "season/season_prior.h"
#include "season/top_movement.h"
#include "season/words.h"
#include "wood/species.h"

namespace tailblock {
namespace {

constexpr std::string_view reference_wood = "Sitka spruce";
constexpr double sds_of_90_percent = 1.645;

double square(double x) { return x * x; }

struct Normal {
  double mean, variance;
};

/// The rows that stand for a bracing, as one. The X of a steel-string top may be scalloped or not: the mean of both.
TopMovement movement_of(const InstrumentDesign& design, const TopMovements& movements) {
  const auto row = [&](const char* pattern) { return movements.of(design.body_size, pattern); };
  if (design.bracing == Bracing::ladder) return row("ladder");
  if (design.bracing == Bracing::fan) return row("fan");
  TopMovement plain = row("x_braced");
  const TopMovement scalloped = row("x_scalloped");
  plain.top_mm = std::sqrt(plain.top_mm * scalloped.top_mm);
  plain.elastic_mm = std::sqrt(plain.elastic_mm * scalloped.elastic_mm);
  for (double TopMovement::*part :
       {&TopMovement::neck_mm, &TopMovement::instrument_log_sd, &TopMovement::kind_log_sd,
        &TopMovement::thickness_log_sd, &TopMovement::thickness_exponent, &TopMovement::width_exponent,
        &TopMovement::movement_exponent, &TopMovement::across_exponent, &TopMovement::across_curvature,
        &TopMovement::shear_exponent, &TopMovement::along_exponent}) {
    plain.*part = (plain.*part + scalloped.*part) / 2;
  }
  return plain;
}

double across_ratio(const SheetWood& wood) { return wood.across_mpa / wood.along_mpa; }

/// What this instrument's own figures make of the usual top's movement.
double factor_of(const FirstGuess& guess, const TopMovement& row, const TopBuild& usual, Length usual_width,
                 const SpeciesTable& species) {
  const SheetWood wood = sheet_of(species.named(guess.top_species), guess.ring_angle);
  const SheetWood sitka = sheet_of(species.named(reference_wood), degrees(0));
  const double across = std::log(across_ratio(wood) / across_ratio(sitka));
  const double log_factor =
      row.width_exponent * std::log(guess.lower_bout_width / usual_width) +
      row.thickness_exponent * std::log(guess.top_thickness / usual.top.thickness) +
      row.along_exponent * std::log(wood.along_mpa / sitka.along_mpa) +
      row.movement_exponent * std::log(wood.across_per_percent / sitka.across_per_percent) +
      across * (row.across_exponent + row.across_curvature * across / 2) +
      row.shear_exponent * std::log(wood.shear_mpa / wood.along_mpa / (sitka.shear_mpa / sitka.along_mpa));
  return std::exp(log_factor);
}

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

Estimate log_normal(double median, double log_sd) {
  const double reach = std::exp(sds_of_90_percent * log_sd);
  return {.median = median, .low = median / reach, .high = median * reach};
}

Estimate normal(double mean, double sd) {
  return {.median = mean, .low = mean - sds_of_90_percent * sd, .high = mean + sds_of_90_percent * sd};
}

/// The three parts of the response, hysteresis and shortfall included.
struct Parts {
  double top_median, top_kind_variance, top_instrument_variance;  // of the logarithm
  Normal thickness, neck;

  [[nodiscard]] double top_variance() const { return top_kind_variance + top_instrument_variance; }
  [[nodiscard]] double top_mean() const { return top_median * std::exp(top_variance() / 2); }
  [[nodiscard]] double mean() const { return top_mean() + thickness.mean + neck.mean; }
  [[nodiscard]] double variance() const {
    return square(top_mean()) * std::expm1(top_variance()) + thickness.variance + neck.variance;
  }
};

Parts parts_of(const InstrumentDesign& design, const TopMovement& row, double factor, const SeasonTables& tables) {
  const SeasonPrior& p = *tables.prior;
  const double left = p.hysteresis * p.shortfall;
  Parts parts{
      .top_median = left * row.top_mm * factor,
      .top_kind_variance = square(row.kind_log_sd) + square(p.hysteresis_log_sd) + square(p.shortfall_log_sd),
      .top_instrument_variance = square(row.instrument_log_sd) + square(p.left_out_log_sd),
      .thickness = {left * row.thickness_mm, square(left * row.thickness_mm * tables.plate->thickness_relative_sd)},
      .neck = {left * row.neck_mm * factor, 0}};
  if (design.top_thickness) parts.top_instrument_variance -= square(row.thickness_log_sd);
  if (design.bracing == Bracing::other) parts.top_kind_variance += square(p.other_bracing_log_sd);
  if (design.top_species.empty()) parts.top_kind_variance += square(p.guessed_wood_log_sd);
  parts.neck.variance =
      square(tables.plate->neck_relative_sd * parts.neck.mean) + square(p.neck_left_out * parts.top_median);
  return parts;
}

void say_what_was_assumed(ResponsePrior& prior, const InstrumentDesign& design,
                          const std::vector<KindredResponse>& kindred, const TopMovement& row, const Species& wood,
                          const SeasonPrior& p) {
  const auto say = [&](std::string sentence) { prior.assumptions.push_back(std::move(sentence)); };
  const Estimate response = log_normal(std::exp(prior.log_response), prior.log_response_sd);
  say("Before any reading, " + decimals(response.median, 3) +
      " mm at fret 12 for each percent of wood moisture (90 % between " + decimals(response.low, 3) + " and " +
      decimals(response.high, 3) + "): good to about a factor of two until its own readings sharpen it.");
  say("The plate model gives the top alone " + decimals(row.elastic_mm, 2) + " mm per percent, and " +
      decimals(row.top_mm, 2) + " once the stress across its grain has relaxed; hysteresis leaves " +
      decimals(100 * p.hysteresis, 0) + " % of that, and what the trade sees in heated homes " +
      decimals(100 * p.shortfall, 0) + " % of the rest.");
  if (!design.lower_bout_width) {
    say("Lower bout taken as " + decimals(in_mm(prior.guess.lower_bout_width), 0) + " mm, usual for the body size.");
  }
  if (!design.top_thickness) {
    say("Top taken as " + decimals(in_mm(prior.guess.top_thickness), 1) + " mm thick, usual for the body size.");
  }
  if (design.top_species.empty()) say("Top taken to be Sitka spruce.");
  if (wood.provisional) say("Movement figures of " + wood.name + " are partly from memory and provisional.");
  if (design.bracing == Bracing::other) {
    say("The bracing is none that is calculated: an X is assumed, with a wider spread.");
  }
  if (!kindred.empty()) say("Sharpened by " + counted(kindred.size(), "kindred instrument") + " in the shop.");
  say("The wood follows the air in about " + decimals(std::exp(prior.log_lag), 0) + " days" +
      (design.kept_in_case ? " in its case." : " on a wall or a stand."));
}

}  // namespace

ResponsePrior response_prior(const InstrumentDesign& design, const std::vector<KindredResponse>& kindred,
                             const SeasonTables& tables) {
  const SeasonPrior& p = *tables.prior;
  const auto size = static_cast<std::size_t>(design.body_size);
  const Length usual_width = tables.designs->lower_bout_width[size];
  const TopBuild& usual = tables.tops->builds[size];
  ResponsePrior prior{};
  prior.guess = {.body_size = design.body_size,
                 .bracing = design.bracing,
                 .lower_bout_width = design.lower_bout_width.value_or(usual_width),
                 .top_thickness = design.top_thickness.value_or(usual.top.thickness),
                 .ring_angle = design.ring_angle,
                 .top_species = design.top_species.empty() ? std::string(reference_wood) : design.top_species,
                 .parts = {}};
  const TopMovement row = movement_of(design, *tables.movements);
  const Species& wood = tables.species->named(prior.guess.top_species);
  const Parts parts = parts_of(design, row, factor_of(prior.guess, row, usual, usual_width, *tables.species), tables);

  const double all_log_variance = std::log1p(parts.variance() / square(parts.mean()));
  const double kind_log_variance = parts.top_kind_variance * square(parts.top_mean() / parts.mean());
  const double instrument_variance = std::max(all_log_variance - kind_log_variance, 1e-4);
  const Normal kind =
      sharpened({std::log(parts.mean()) - all_log_variance / 2, kind_log_variance}, kindred, instrument_variance);
  prior.log_response = kind.mean;
  prior.log_response_sd = std::sqrt(kind.variance + instrument_variance);
  prior.instrument_log_sd = std::sqrt(instrument_variance);
  prior.log_lag = std::log(design.kept_in_case ? p.lag_median_in_case : p.lag_median);
  prior.log_lag_sd = p.lag_log_sd;

  const double top = parts.top_mean() + parts.thickness.mean, neck_over_top = parts.neck.mean / top;
  prior.top_share = 1 / (1 + neck_over_top);
  prior.top_share_sd = std::sqrt(parts.neck.variance) / top * square(prior.top_share);

  const char* per_percent = "mm per percent";
  prior.guess.parts = {
      {"top, stress across the grain relaxed", per_percent,
       log_normal(parts.top_median, std::sqrt(parts.top_variance()))},
      {"height of bridge and top", per_percent, normal(parts.thickness.mean, std::sqrt(parts.thickness.variance))},
      {"neck and back", per_percent, normal(parts.neck.mean, std::sqrt(parts.neck.variance))},
      {"share that hysteresis leaves, counted above", "", log_normal(p.hysteresis, p.hysteresis_log_sd)},
      {"share left between the plate model and the trade, counted above", "",
       log_normal(p.shortfall, p.shortfall_log_sd)},
      {"response at fret 12", per_percent, log_normal(std::exp(prior.log_response), prior.log_response_sd)}};
  say_what_was_assumed(prior, design, kindred, row, wood, p);
  return prior;
}

}  // namespace tailblock
