#include "season/crack_risk.h"

#include <algorithm>
#include <cmath>

#include "body/point_grid.h"
#include "body/prepared_top.h"
#include "body/top_stress.h"
#include "season/crack_figures.h"
#include "season/crack_history.h"
#include "season/crack_that_is_there.h"
#include "season/normal.h"
#include "season/season_prior.h"
#include "season/words.h"
#include "wood/equilibrium.h"
#include "wood/species.h"

namespace tailblock {
namespace {

constexpr double sds_of_90_percent = 1.645;
constexpr int lowest_asked = 10, highest_asked = 60;  // percent of humidity, of the curve

double square(double x) { return x * x; }

Relaxation relaxation_of(const CrackFigures& f, double per_percent) {
  return {
      .branches = {{{1 - f.fast_share - f.slow_share, 0}, {f.fast_share, f.fast_days}, {f.slow_share, f.slow_days}}},
      .per_percent = per_percent};
}

/// What is compared: stress of the driest week over the strength that holds for a week, as logarithms.
struct Contest {
  double log_stress_per_percent, log_strength;
  double sd;                          ///< of what is not known of either
  double weakened_mean, weakened_sd;  ///< of what has survived, since

  [[nodiscard]] double over(double percent) const { return log_stress_per_percent + std::log(percent) - log_strength; }

  /// Chance that `percent` breaks what `survived` did not. u = ln(strength over its median) is normal; it was above
  /// what it survived, and has since come down by a normal amount.
  [[nodiscard]] double chance(double percent, const std::optional<double>& survived) const {
    if (!survived) return standard_normal(over(percent) / sd).below;
    constexpr int steps = 400;
    constexpr double reach = 6;  // standard deviations
    const double least = std::max(over(*survived), -reach * sd), most = std::max(reach * sd, least + reach * sd);
    const double step = (most - least) / steps;
    double breaks = 0, all = 0;
    for (int i = 0; i <= steps; ++i) {
      const double u = least + step * i, share = (i == 0 || i == steps ? 0.5 : 1.0) * std::exp(-square(u / sd) / 2);
      all += share;
      breaks += share * standard_normal((over(percent) - u + weakened_mean) / weakened_sd).below;
    }
    return breaks / all;
  }
};

/// One way of relaxing: little, as the middle has it, or much.
struct Way {
  TopLife life;
  Contest contest;
  [[nodiscard]] double chance(const std::vector<double>& moisture) const {
    return contest.chance(life.highest_percent(moisture), life.survived_percent());
  }
};

/// Everything that is asked of many levels of humidity.
class Cracking {
 public:
  Cracking(const CrackRiskRequest& request, const CrackTables& tables, double stress_per_percent,
           const Strength& strength)
      : figures_(*tables.figures),
        history_(crack_history(request, *tables.season)),
        middle_(way(request, figures_.mechano_sorptive, stress_per_percent, strength)),
        much_(way(request, figures_.mechano_sorptive * away(), stress_per_percent, strength)),
        little_(way(request, figures_.mechano_sorptive / away(), stress_per_percent, strength)) {
    // The middle's chance holds what is not known of relaxing as well: a spread of the stress.
    const std::vector<double> moisture = history_.moisture(history_.relative_humidity);
    relaxing_sd_ = std::abs(std::log(little_.life.highest_percent(moisture) / much_.life.highest_percent(moisture))) /
                   (2 * sds_of_90_percent);
    middle_.contest.sd = std::hypot(middle_.contest.sd, relaxing_sd_);
  }

  [[nodiscard]] ChanceAt at(double lowest, const std::vector<double>& humidity) const {
    const std::vector<double> moisture = history_.moisture(humidity);
    ChanceAt answer{.lowest_week_relative_humidity = lowest, .chance = middle_.chance(moisture)};
    const double much = much_.chance(moisture), little = little_.chance(moisture);
    answer.chance_low = std::min({much, little, answer.chance});
    answer.chance_high = std::max({much, little, answer.chance});
    return answer;
  }

  [[nodiscard]] const CrackHistory& history() const { return history_; }
  [[nodiscard]] const Way& middle() const { return middle_; }
  [[nodiscard]] double relaxing_sd() const { return relaxing_sd_; }

 private:
  [[nodiscard]] double away() const { return std::exp(sds_of_90_percent * figures_.mechano_sorptive_log_sd); }

  [[nodiscard]] Way way(const CrackRiskRequest& request, double per_percent, double stress_per_percent,
                        const Strength& strength) const {
    return {.life = TopLife(request, history_, relaxation_of(figures_, per_percent)),
            .contest = {.log_stress_per_percent = std::log(stress_per_percent),
                        .log_strength = std::log(strength.mpa * held_strength_share(figures_)),
                        .sd = std::hypot(strength.scatter, figures_.stress_log_sd),
                        .weakened_mean = figures_.weakened_mean,
                        .weakened_sd = figures_.weakened_sd}};
  }

  const CrackFigures& figures_;
  CrackHistory history_;
  Way middle_, much_, little_;
  double relaxing_sd_ = 0;
};

/// Stress across the grain when all of the wood loses one percent at once, triangle by triangle.
std::vector<double> stress_of_one_percent(const PreparedTop& top) {
  LoadMix drier = LoadMix::Zero();
  for (const UnitLoad load : {UnitLoad::top_moisture, UnitLoad::inside_moisture, UnitLoad::bridge_moisture}) {
    drier[static_cast<int>(load)] = -1;
  }
  std::vector<double> across;
  for (const TriangleStress& stress : top_stress(top, top.answers.displacements * drier, -1)) {
    across.push_back(stress.middle.across);
  }
  return across;
}

/// Mean of a stress beside a crack.
double stress_along(const Crack& crack, const PreparedTop& top, const std::vector<double>& across) {
  constexpr double beside = 15;  // mm
  const TriangleMesh& mesh = top.meshed->mesh;
  const PlanePoint a{in_mm(crack.from_x), in_mm(crack.from_y)}, b{in_mm(crack.to_x), in_mm(crack.to_y)};
  const double length_squared = square(b.x - a.x) + square(b.y - a.y);
  double sum = 0, weights = 0;
  for (std::size_t t = 0; t < mesh.triangles.size(); ++t) {
    PlanePoint middle{};
    for (const int node : mesh.triangles[t]) {
      middle.x += mesh.nodes[static_cast<std::size_t>(node)].x / 3;
      middle.y += mesh.nodes[static_cast<std::size_t>(node)].y / 3;
    }
    const double share = std::clamp(
        ((middle.x - a.x) * (b.x - a.x) + (middle.y - a.y) * (b.y - a.y)) / std::max(length_squared, 1.0), 0.0, 1.0);
    if (distance(middle, {a.x + share * (b.x - a.x), a.y + share * (b.y - a.y)}) > beside) continue;
    sum += across[t];
    weights += 1;
  }
  return weights > 0 ? sum / weights : 0;
}

std::string in_100(double chance) {
  if (chance < 0.005) return "under 1 in 100";
  if (chance > 0.975) return "over 97 in 100";
  return decimals(100 * chance, 0) + " in 100";
}

std::string percent_of(double fraction) { return decimals(100 * fraction, 0) + " %"; }

CrackThatIsThere judged(const Crack& crack, const CrackRiskRequest& request, const PreparedTop& top,
                        const std::vector<double>& across, const Cracking& cracking, double highest_percent,
                        const CrackFigures& figures) {
  CrackThatIsThere there;
  there.length = mm(distance({in_mm(crack.from_x), in_mm(crack.from_y)}, {in_mm(crack.to_x), in_mm(crack.to_y)}));
  double longest = 0;
  for (const auto& [from, to] : free_stretches(crack, top.design, request.damage))
    longest = std::max(longest, to - from);
  there.longest_free = mm(longest);
  const double stress = std::max(1e-6, stress_along(crack, top, across) * highest_percent);
  const double intensity = stress_intensity(stress, longest);
  there.opens = mm(2 * stress * longest * crack_compliance(top.woods.top));
  const double sd = std::hypot(std::hypot(figures.toughness_log_sd, figures.stress_log_sd), cracking.relaxing_sd());
  if (longest > 0) {
    const double held = figures.toughness * held_strength_share(figures);
    there.chance_runs_on = standard_normal(std::log(intensity / held) / sd).below;
  }
  there.sentence = "The crack of " + decimals(in_mm(there.length), 0) + " mm is free over " + decimals(longest, 0) +
                   " mm at the most; in the driest week it opens by about " + decimals(in_mm(there.opens), 2) +
                   " mm there, and the chance that it runs on is " + in_100(there.chance_runs_on) + ".";
  return there;
}

std::string verdict_of(const CrackRiskResult& result, bool has_cracks, double acceptable) {
  std::string said = "The driest week comes to " + percent_of(result.lowest_week_relative_humidity) +
                     " in the room. The chance of a new crack is " + in_100(result.here.chance);
  const std::string low = in_100(result.here.chance_low), high = in_100(result.here.chance_high);
  if (low != high) said += ", somewhere from " + low + " to " + high;
  said += ".";
  if (!result.keep_relative_humidity) {
    return said + " No humidity up to " + std::to_string(highest_asked) +
           " % makes it as good as safe: have it looked at.";
  }
  const std::string keep = percent_of(*result.keep_relative_humidity);
  const std::string one_in = decimals(1 / acceptable, 0);
  if (result.lowest_week_relative_humidity >= *result.keep_relative_humidity) {
    said += " This air is damp enough: it is as safe down to " + keep + ".";
  } else {
    said += " Keep the room at " + keep + " or above, and it is no more than 1 in " + one_in + ".";
  }
  if (has_cracks) said += " That is for sound wood; the cracks that are there are judged each by itself.";
  return said;
}

void say_what_was_assumed(CrackRiskResult& result, const CrackRiskRequest& request, const PreparedTop& top,
                          const CrackFigures& figures, const SeasonPrior& season) {
  const auto say = [&](std::string sentence) { result.assumptions.push_back(std::move(sentence)); };
  say("Top of " + top.design.species + ", " + decimals(in_mm(top.design.thickness), 1) + " mm, glued up in air of " +
      percent_of(in_fraction(request.built_at)) + "; " + decimals(result.held_strength_mpa, 1) +
      " MPa across the grain, held for a week.");
  say("One percent of moisture lost at once would pull with " + decimals(result.stress_per_percent_mpa, 2) + " MPa; " +
      percent_of(figures.fast_share + figures.slow_share) + " of that fades in a month, and " +
      percent_of(figures.mechano_sorptive) + " of what is left with every percent that comes or goes.");
  if (request.moisture_percent.empty()) {
    say("The wood follows the room in " + decimals(in_days(request.lag), 0) + " days and takes up " +
        percent_of(season.hysteresis) + " of its swing.");
  }
  if (request.years_lived > 0) {
    say("It has lived " + counted(static_cast<std::size_t>(request.years_lived), "year") +
        " in the same air without a crack, which proves it for that much. A crack that was repaired since, or a brace "
        "reglued, takes the proof away: ask with 0 years.");
  }
  if (!request.damage.cracks.empty()) {
    say("A crack runs on when its free stretch is more than the wood's toughness holds. One that has stood for years "
        "without growing is proved as well, which this does not count; nor that it eases the wood beside it.");
  }
  say("Only drying that is slower than some days is followed; the pull of the strings, blows, hidden checks and bad "
      "joints are not in it.");
}

void say_where_it_cannot_tell(CrackRiskResult& result, const CrackRiskRequest& request, const CrackHistory& history,
                              const PreparedTop& top, const std::vector<double>& moisture, const Strength& strength,
                              const CrackFigures& figures) {
  const auto say = [&](std::string sentence) { result.cautions.push_back(std::move(sentence)); };
  if (result.here.chance_high > std::max(0.02, 4 * result.here.chance_low)) {
    say("How much such a stress fades is poorly known: from " + in_100(result.here.chance_low) + " to " +
        in_100(result.here.chance_high) + " is all that can be said.");
  }
  if (std::ranges::min(moisture) < 5 || std::ranges::max(moisture) > 14) {
    say("The wood leaves 5 to 14 % of moisture, where its movement was measured; what it does beyond is a guess.");
  }
  const std::vector<double>& room = history.relative_humidity;
  for (std::size_t i = 3; i < room.size(); ++i) {
    if (room[i - 3] - room[i] <= figures.fast_fall || history.wood_is_given) continue;
    say("The room falls by more than " + decimals(100 * figures.fast_fall, 0) +
        " points within three days: the bare inside then dries ahead of the outside, which pulls harder than this "
        "says.");
    break;
  }
  if (is_provisional(strength.standing)) {
    say("The strength of " + top.design.species + " across the grain is from memory and provisional.");
  }
  if (in_degrees(top.design.ring_angle) > 20) {
    say("Rings that slant make wood softer and weaker across the grain in a way that the one strength does not know.");
  }
  if (request.years_lived == 0) say("A new top has not yet been proved by a winter; its first is the worst.");
}

}  // namespace

PlateRequest plate_for_cracks(const CrackRiskRequest& request) {
  PlateRequest plate;
  plate.top = request.top;
  plate.damage = request.damage;
  plate.damage.cracks.clear();
  return plate;
}

CrackRiskResult crack_risk(const CrackRiskRequest& request, const PreparedTop& top, const CrackTables& tables) {
  require_valid(request);
  const CrackFigures& figures = *tables.figures;
  const Species& wood = tables.plate.species->named(top.design.species);
  if (!wood.tension_across) {
    throw Refused("top.species: no strength across the grain is known for " + wood.name + ", so nothing can be said");
  }
  const std::vector<double> across = stress_of_one_percent(top);
  CrackRiskResult result;
  result.stress_per_percent_mpa = area_quantile(top, across, figures.area_share);
  result.held_strength_mpa = wood.tension_across->mpa * held_strength_share(figures);
  const Cracking cracking(request, tables, result.stress_per_percent_mpa, *wood.tension_across);
  const CrackHistory& history = cracking.history();
  const std::vector<double> moisture = history.moisture(history.relative_humidity);
  result.lowest_week_relative_humidity = lowest_week(history.relative_humidity);
  result.lowest_week_moisture_percent = lowest_week(moisture);
  result.here = cracking.at(result.lowest_week_relative_humidity, history.relative_humidity);

  const double highest = cracking.middle().life.highest_percent(moisture);
  CrackRiskRequest as_new = request;
  as_new.years_lived = 0;
  as_new.lowest_survived.reset();
  const double unrelaxed = TopLife(as_new, history, no_relaxation).highest_percent(moisture);
  result.highest_week_stress_mpa = result.stress_per_percent_mpa * highest;
  result.highest_week_stress_if_nothing_relaxed_mpa = result.stress_per_percent_mpa * unrelaxed;
  result.chance_if_nothing_relaxed = cracking.middle().contest.chance(unrelaxed, std::nullopt);

  for (int percent = lowest_asked; percent <= highest_asked; ++percent) {
    const double lowest = percent / 100.0;
    result.curve.push_back(cracking.at(lowest, history.with_lowest_week(lowest)));
  }
  for (const ChanceAt& one : result.curve) {
    if (one.chance > figures.acceptable_chance) {
      result.keep_relative_humidity.reset();
    } else if (!result.keep_relative_humidity) {
      result.keep_relative_humidity = one.lowest_week_relative_humidity;
    }
  }
  for (const Crack& crack : request.damage.cracks) {
    result.cracks.push_back(judged(crack, request, top, across, cracking, highest, figures));
  }
  result.verdict = verdict_of(result, !request.damage.cracks.empty(), figures.acceptable_chance);
  say_what_was_assumed(result, request, top, figures, *tables.season);
  say_where_it_cannot_tell(result, request, history, top, moisture, *wood.tension_across, figures);
  return result;
}

CrackRiskResult crack_risk(const CrackRiskRequest& request, const CrackTables& tables) {
  require_valid(request);
  const PlateRequest plate = plate_for_cracks(request);
  return crack_risk(request,
                    prepare_top(design_of(plate.top, *tables.plate.designs), plate.damage, plate.mesh, tables.plate),
                    tables);
}

}  // namespace tailblock
