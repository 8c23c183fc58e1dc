#include "season/year.h"

namespace tailblock {
namespace {

constexpr Need has_default = Need::has_default;
constexpr Range heights{-3, 15, "mm"}, readings{-3, 40, "mm"};
constexpr Range any{-1e6, 1e6, ""};
constexpr std::size_t most_days = 1100;

}  // namespace

void describe(FieldVisitor& visit, HeightReading& reading) {
  visit.date({"date", "day of the reading"}, reading.date);
  visit.integer({"order", "place within the day: as found 0, work 1, as left 2, and so on", has_default}, reading.order,
                {0, 99, ""});
  choice(visit, {"kind", "what was read"}, reading.kind, height_kind_names);
  visit.length(
      {"value_mm",
       "height at pitch over the top of fret 12, -3 to 15 mm; relief at the middle of the neck; bridge's top over "
       "a straightedge line on the rim, up to 40 mm"},
      reading.value, readings);
  visit.length({"gauge_sd_mm", "one standard deviation of the gauge in this hand", has_default}, reading.gauge_sd,
               {0.001, 2, "mm"});
}

void describe(FieldVisitor& visit, SetupChange& change) {
  visit.date({"date", "day of the work"}, change.date);
  visit.integer(
      {"order", "place within the day; a reading of the same or a smaller order was taken before it", has_default},
      change.order, {0, 99, ""});
  visit.text({"what", "what was done, in the repairer's words", has_default}, change.what, 500);
  const auto size = [&](const Field& field, Length& value) { visit.length(field, value, {-15, 15, "mm"}); };
  maybe(visit, {"action12_bass_change_mm", "by how much the bass side rose at fret 12; left out: not known"},
        change.action12_bass_change, size);
  maybe(visit, {"action12_treble_change_mm", "by how much the treble side rose at fret 12; left out: not known"},
        change.action12_treble_change, size);
  visit.length({"change_sd_mm", "one standard deviation of a known change", has_default}, change.change_sd,
               {0.001, 5, "mm"});
  visit.flag({"moves_relief", "it may have left the neck with another relief", has_default}, change.moves_relief);
  visit.flag({"moves_bridge", "it may have left the bridge at another height over the rim", has_default},
             change.moves_bridge);
}

void describe(FieldVisitor& visit, InstrumentDesign& design) {
  choice(visit, {"body_size", "body size in words of form", has_default}, design.body_size, body_size_names);
  choice(visit, {"bracing", "pattern of the top's braces", has_default}, design.bracing, bracing_names);
  maybe(visit, {"lower_bout_width_mm", "greatest width; left out: usual for the body size"}, design.lower_bout_width,
        [&](const Field& field, Length& value) {
          visit.length(field, value, {200, 600, "mm"});
        });
  maybe(visit, {"top_thickness_mm", "thickness of the top"}, design.top_thickness,
        [&](const Field& field, Length& value) {
          visit.length(field, value, {1, 8, "mm"});
        });
  angle(visit, {"ring_angle_deg", "of the growth rings in the top: 0 quartersawn, 90 flat-sawn", has_default},
        design.ring_angle, {0, 90, "degrees"});
  visit.text({"top_species", "a name in the species table; empty: Sitka spruce is assumed", has_default},
             design.top_species, 100);
  visit.flag({"kept_in_case", "kept in a closed case rather than on a wall or a stand", has_default},
             design.kept_in_case);
}

void describe(FieldVisitor& visit, KindredResponse& kindred) {
  visit.number({"response_mm_per_percent", "what another instrument of the kind has shown"},
               kindred.response_mm_per_percent, {0.001, 2, "mm per percent"});
  visit.number({"log_sd", "standard deviation of its natural logarithm", has_default}, kindred.log_sd, {0.001, 3, ""});
}

void describe(FieldVisitor& visit, ResponseRequest& request) {
  visit.date({"today", "the day the question is asked"}, request.today);
  object(visit, {"design", "what is known of the instrument", has_default}, request.design);
  object(visit, {"home", "the air it lives in"}, request.home);
  list(visit, {"readings", "readings up to today", has_default}, request.readings, {0, 2000});
  list(visit, {"changes", "recorded work that moved the strings", has_default}, request.changes, {0, 500});
  list(visit, {"kindred", "instruments of the kind in this shop", has_default}, request.kindred, {0, 1000});
}

void describe(FieldVisitor& visit, Estimate& estimate) {
  visit.number({"median", "as likely above as below"}, estimate.median, any);
  visit.number({"low", "5 % lie below"}, estimate.low, any);
  visit.number({"high", "5 % lie above"}, estimate.high, any);
}

void describe(FieldVisitor& visit, FlaggedReading& flagged) {
  visit.date({"date", "day of the reading"}, flagged.date);
  visit.integer({"order", "place within the day"}, flagged.order, {0, 99, ""});
  choice(visit, {"kind", "what was read"}, flagged.kind, height_kind_names);
  visit.length({"value_mm", "as read"}, flagged.value, readings);
  visit.length({"expected_mm", "as the other readings expect it"}, flagged.expected, any);
  visit.length({"expected_sd_mm", "one standard deviation of that, gauge included"}, flagged.expected_sd, any);
  visit.text({"why", "why it is set aside"}, flagged.why, 500);
}

void describe(FieldVisitor& visit, ChangeShare& share) {
  visit.date({"from", "day of the readings before the latest"}, share.from);
  visit.date({"to", "day of the latest readings"}, share.to);
  object(visit, {"measured_bass_mm", "change read on the bass side, recorded work taken out"}, share.measured_bass_mm);
  object(visit, {"measured_treble_mm", "change read on the treble side, recorded work taken out"},
         share.measured_treble_mm);
  object(visit, {"season_bass_mm", "what the air between the two days explains, bass"}, share.season_bass_mm);
  object(visit, {"season_treble_mm", "what the air between the two days explains, treble"}, share.season_treble_mm);
  object(visit, {"unexplained_bass_mm", "measured less season, bass"}, share.unexplained_bass_mm);
  object(visit, {"unexplained_treble_mm", "measured less season, treble"}, share.unexplained_treble_mm);
  object(visit, {"season_share", "season over measured, both sides together; without meaning when nothing moved"},
         share.season_share);
  visit.number({"something_else_probability", "that a move nobody recorded happened between the two days"},
               share.something_else_probability, {0, 1, ""});
  visit.flag({"something_else", "whether that is likely enough to be said"}, share.something_else);
  visit.text({"verdict", "in one or two plain sentences"}, share.verdict, 1000);
  visit.text({"better_reading", "the reading that would settle it better"}, share.better_reading, 1000);
}

void describe(FieldVisitor& visit, GuessPart& part) {
  visit.text({"what", "what it is"}, part.what, 200);
  visit.text({"unit", "of the value; empty: a share of what stands above"}, part.unit, 40);
  object(visit, {"value", "its middle and its 90 % interval"}, part.value);
}

void describe(FieldVisitor& visit, FirstGuess& guess) {
  choice(visit, {"body_size", "body size in words of form"}, guess.body_size, body_size_names);
  choice(visit, {"bracing", "pattern of the top's braces"}, guess.bracing, bracing_names);
  visit.length({"lower_bout_width_mm", "as given, or usual for the body size"}, guess.lower_bout_width, any);
  visit.length({"top_thickness_mm", "as given, or usual for the body size"}, guess.top_thickness, any);
  angle(visit, {"ring_angle_deg", "of the growth rings in the top: 0 quartersawn"}, guess.ring_angle, any);
  visit.text({"top_species", "wood of the top"}, guess.top_species, 100);
  list(visit, {"parts", "what goes into it; the last is the response itself"}, guess.parts, {0, 20});
}

void describe(FieldVisitor& visit, ResponseResult& result) {
  object(visit, {"response_bass_mm_per_percent", "action at fret 12 per percent of wood moisture, bass"},
         result.response_bass_mm_per_percent);
  object(visit, {"response_treble_mm_per_percent", "the same, treble"}, result.response_treble_mm_per_percent);
  object(visit, {"top_mm_per_percent", "of the middle of the strings: what the top and the bridge's height do"},
         result.top_mm_per_percent);
  object(visit, {"neck_and_back_mm_per_percent", "the rest of it; negative works against the top"},
         result.neck_and_back_mm_per_percent);
  object(visit, {"lag_days", "time in which the wood makes up 63 % of a change of air"}, result.lag_days);
  object(visit, {"drift_mm_per_year", "slow rise, season apart"}, result.drift_mm_per_year);
  object(visit, {"action12_bass_today_mm", "in the air of its home today"}, result.action12_bass_today_mm);
  object(visit, {"action12_treble_today_mm", "in the air of its home today"}, result.action12_treble_today_mm);
  object(visit, {"summer_to_winter_drop_mm", "typical year, bass: highest 30-day mean less lowest"},
         result.summer_to_winter_drop_mm);
  visit.number({"moisture_today_percent", "of the wood, in its home"}, result.moisture_today_percent, any);
  visit.number({"prior_weight", "1 nothing learnt from the readings, 0 all"}, result.prior_weight, any);
  visit.integer({"readings_used", "readings that were obeyed"}, result.readings_used, {0, 2000, ""});
  visit.integer({"bridge_readings", "readings of the bridge over the rim; with none the parts are guessed"},
                result.bridge_readings, {0, 2000, ""});
  list(visit, {"flagged", "readings that do not fit the others and are not obeyed"}, result.flagged, {0, 2000});
  list(visit, {"last_change", "the change since the readings before the latest; none or one"}, result.last_change,
       {0, 1});
  object(visit, {"first_guess", "what was believed before any reading, and what for"}, result.first_guess);
  visit.texts({"assumptions", "what was taken for granted, in plain words"}, result.assumptions, 500, {0, 50});
}

void describe(FieldVisitor& visit, ActionLimits& limits) {
  visit.length({"lowest_bass_mm", "least action that plays clean", has_default}, limits.lowest_bass, heights);
  visit.length({"lowest_treble_mm", "least action that plays clean", has_default}, limits.lowest_treble, heights);
  visit.length({"highest_bass_mm", "highest comfortable action", has_default}, limits.highest_bass, heights);
  visit.length({"highest_treble_mm", "highest comfortable action", has_default}, limits.highest_treble, heights);
  list(
      visit,
      {"floors", "how the least clean action follows the relief, by rising relief; none: it stands still", has_default},
      limits.floors, {0, 50});
}

void describe(FieldVisitor& visit, FloorAtRelief& floor) {
  visit.length({"relief_mm", "with this relief"}, floor.relief, {-2, 4, "mm"});
  visit.length({"lowest_bass_mm", "least action that plays clean"}, floor.lowest_bass, {-15, 15, "mm"});
  visit.length({"lowest_treble_mm", "the same, treble"}, floor.lowest_treble, {-15, 15, "mm"});
}

void describe(FieldVisitor& visit, YearRequest& request) {
  object(visit, {"instrument", "the instrument, its home and its readings"}, request.instrument);
  visit.date({"first", "first day of the year ahead, up to ten years after today"}, request.first);
  visit.integer({"count", "days", has_default}, request.count, {1, static_cast<double>(most_days), "days"});
  maybe(visit, {"limits", "heights between which this player is served"}, request.limits,
        [&](const Field& field, ActionLimits& limits) { object(visit, field, limits); });
}

void describe(FieldVisitor& visit, ActionBand& band) {
  const auto quantile = [&](const Field& field, std::vector<double>& values) {
    visit.numbers(field, values, any, {0, most_days});
  };
  quantile({"low_mm", "5 % lie below"}, band.low_mm);
  quantile({"lower_mm", "25 % lie below"}, band.lower_mm);
  quantile({"median_mm", "as likely above as below"}, band.median_mm);
  quantile({"upper_mm", "25 % lie above"}, band.upper_mm);
  quantile({"high_mm", "5 % lie above"}, band.high_mm);
}

void describe(FieldVisitor& visit, DaysOutside& outside) {
  object(visit, {"low_bass", "days under the least clean action, bass"}, outside.low_bass);
  object(visit, {"low_treble", "the same, treble"}, outside.low_treble);
  object(visit, {"high_bass", "days over the highest comfortable action, bass"}, outside.high_bass);
  object(visit, {"high_treble", "the same, treble"}, outside.high_treble);
  object(visit, {"low_either", "days under on either side"}, outside.low_either);
  object(visit, {"high_either", "days over on either side"}, outside.high_either);
}

void describe(FieldVisitor& visit, YearResult& result) {
  visit.date({"first", "first day"}, result.first);
  object(visit, {"bass", "daily quantiles of the action at fret 12, bass"}, result.bass);
  object(visit, {"treble", "the same, treble"}, result.treble);
  visit.numbers({"relative_humidity", "expected in the home, daily, 0..1"}, result.relative_humidity, {0, 1, ""},
                {0, most_days});
  visit.numbers({"moisture_percent", "expected of the wood, daily, at the median lag"}, result.moisture_percent, any,
                {0, most_days});
  list(visit, {"days_outside", "one when limits were given"}, result.days_outside, {0, 1});
  visit.text({"lowest_day", "day of the lowest bass median"}, result.lowest_day, 10);
  visit.text({"highest_day", "day of the highest bass median"}, result.highest_day, 10);
  visit.text({"verdict", "in one plain sentence"}, result.verdict, 500);
}

}  // namespace tailblock
