#include "season/crack_risk.h"

namespace tailblock {
namespace {

constexpr Need has_default = Need::has_default;
constexpr Range shares{0, 1, ""}, any{-1e6, 1e6, ""};
constexpr std::size_t most_days = 3660;

}  // namespace

void describe(FieldVisitor& visit, CrackRiskRequest& request) {
  object(visit, {"top", "which top", has_default}, request.top);
  object(visit, {"damage", "what has happened to it; each crack is asked whether it runs on", has_default},
         request.damage);
  maybe(visit, {"home", "the air it lives in"}, request.home,
        [&](const Field& field, HomeAir& home) { object(visit, field, home); });
  maybe(visit, {"first", "the first of 365 days in the home"}, request.first,
        [&](const Field& field, Date& date) { visit.date(field, date); });
  visit.numbers({"relative_humidity", "daily means of the room, 0..1, instead of a home", has_default},
                request.relative_humidity, {0.01, 0.99, ""}, {0, most_days});
  temperature(visit, {"temperature_c", "of the room, with humidity or moisture by the day", has_default},
              request.temperature, {-10, 50, "C"});
  visit.numbers({"moisture_percent", "of the wood by the day, instead of a home", has_default},
                request.moisture_percent, {1, 24, "percent"}, {0, most_days});
  span_of_days(visit, {"lag_days", "in which the wood follows the room", has_default}, request.lag, {0, 365, "days"});
  relative_humidity(visit, {"built_at_relative_humidity", "in which top and braces were glued, 0..1", has_default},
                    request.built_at);
  visit.integer({"years_lived", "in these same days, uncracked; 0 new, or repaired since", has_default},
                request.years_lived, {0, 200, "years"});
  maybe(visit, {"lowest_survived_relative_humidity", "of a drier week that it is known to have lived through, 0..1"},
        request.lowest_survived,
        [&](const Field& field, RelativeHumidity& value) { relative_humidity(visit, field, value); });
}

void describe(FieldVisitor& visit, ChanceAt& at) {
  visit.number({"lowest_week_relative_humidity", "mean of the driest seven days, 0..1"},
               at.lowest_week_relative_humidity, shares);
  visit.number({"chance", "of a new crack in these days"}, at.chance, shares);
  visit.number({"chance_low", "if the stress fades as much as it may (5 %)"}, at.chance_low, shares);
  visit.number({"chance_high", "if it fades as little as it may (5 %)"}, at.chance_high, shares);
}

void describe(FieldVisitor& visit, CrackThatIsThere& crack) {
  visit.length({"length_mm", "of the crack"}, crack.length, any);
  visit.length({"longest_free_mm", "between cleats, glued braces, bridge and bridge plate"}, crack.longest_free, any);
  visit.length({"opens_mm", "in the driest week, at the middle of that"}, crack.opens, any);
  visit.number({"chance_runs_on", "that it grows longer"}, crack.chance_runs_on, shares);
  visit.text({"sentence", "the same in words"}, crack.sentence, 500);
}

void describe(FieldVisitor& visit, CrackRiskResult& result) {
  visit.number({"lowest_week_relative_humidity", "mean of the driest seven days in the room, 0..1"},
               result.lowest_week_relative_humidity, shares);
  visit.number({"lowest_week_moisture_percent", "of the wood"}, result.lowest_week_moisture_percent, any);
  object(visit, {"here", "the chance in these days"}, result.here);
  visit.number({"chance_if_nothing_relaxed", "of a new top whose wood behaved like a spring"},
               result.chance_if_nothing_relaxed, shares);
  list(visit, {"curve", "the chance against the lowest humidity held for a week, by rising humidity"}, result.curve,
       {0, 200});
  maybe(visit, {"keep_relative_humidity", "lowest that keeps the chance acceptable, 0..1; absent: none does"},
        result.keep_relative_humidity, [&](const Field& field, double& value) { visit.number(field, value, shares); });
  visit.number({"stress_per_percent_mpa", "across the grain, one percent lost at once; 95 % of the top stays below"},
               result.stress_per_percent_mpa, any);
  visit.number({"highest_week_stress_mpa", "mean of the worst seven days, faded as it has"},
               result.highest_week_stress_mpa, any);
  visit.number({"highest_week_stress_if_nothing_relaxed_mpa", "the same of a spring"},
               result.highest_week_stress_if_nothing_relaxed_mpa, any);
  visit.number({"held_strength_mpa", "median strength across the grain, held for a week"}, result.held_strength_mpa,
               any);
  list(visit, {"cracks", "those that are there, as asked"}, result.cracks, {0, 100});
  visit.text({"verdict", "in plain sentences"}, result.verdict, 1000);
  visit.texts({"assumptions", "what was taken for granted"}, result.assumptions, 500, {0, 20});
  visit.texts({"cautions", "where the model cannot tell"}, result.cautions, 500, {0, 20});
}

}  // namespace tailblock
