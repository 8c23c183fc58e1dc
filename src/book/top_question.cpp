#include "book/top_question.h"

#include <algorithm>
#include <cmath>

#include "body/prepared_top.h"
#include "book/questions.h"
#include "quantity/trade_notation.h"
#include "wood/equilibrium.h"

namespace tailblock {
namespace {

constexpr int year_days = 365, month_days = 30;
constexpr double greatest_change = 8;  // percent of moisture, as the plate model takes it
const Temperature room = celsius(20);

/// A fact of the top: read, else kept with the instrument, else usual for its size, which is said.
Length known_length(const InstrumentStory& story, Date today, std::string_view measure, std::optional<Length> kept,
                    Length usual, const std::string& words, std::vector<std::string>& said) {
  if (const auto read = latest_reading(story, measure, today)) return mm(*read);
  if (kept) return *kept;
  said.push_back(words + ": " + as_trade(usual).millimetres + ", as usual for its size; it was not read");
  return usual;
}

/// The pattern asked for, or the one its record stands for; empty when the record does not say.
std::string pattern_of(const InstrumentStory& story, const TopWishes& wishes, std::vector<std::string>& said) {
  if (wishes.bracing) return *wishes.bracing;
  const Bracing bracing = story.instrument.design.bracing;
  if (bracing == Bracing::other) return "";
  if (bracing != Bracing::x_braced) return std::string(bracing_names[static_cast<std::size_t>(bracing)]);
  said.emplace_back("Bracing: the X with scalloped braces; the record says X-braced only");
  return "x_scalloped";
}

TopDesign known_design(const InstrumentStory& story, const DataTables& tables, const std::string& pattern, Date today,
                       std::vector<std::string>& said) {
  const InstrumentDesign& kept = story.instrument.design;
  WhichTop which{.body_size = kept.body_size, .bracing = pattern, .ring_angle = kept.ring_angle};
  if (!kept.top_species.empty()) which.species = kept.top_species;
  TopDesign design = design_of(which, tables.tops);
  fit(design, tables.tops.builds[static_cast<std::size_t>(kept.body_size)].behind,
      {.lower_bout_width = kept.lower_bout_width,
       .scale_length = story.instrument.scale_length,
       .body_joint_fret = story.instrument.body_joint_fret});
  design.braces = stretched(tables.tops.pattern(pattern).braces, design);
  if (kept.top_species.empty()) said.push_back("Wood of the top: " + design.species + "; none is recorded");
  design.thickness =
      known_length(story, today, "top_thickness", kept.top_thickness, design.thickness, "Top thickness", said);
  design.bridge.body.thickness = known_length(story, today, "bridge_thickness", std::nullopt,
                                              design.bridge.body.thickness, "Bridge thickness", said);
  if (const auto plate = latest_reading(story, "bridge_plate_thickness", today)) {
    design.bridge_plate.thickness = mm(*plate);
  }
  said.emplace_back(kept.lower_bout_width
                        ? "Shape of the outline, braces, arch, rim and soundhole: as usual for its size and bracing, "
                          "stretched to its lower bout"
                        : "Outline, braces, arch, rim and soundhole: as usual for its size and bracing, none of them "
                          "measured");
  return design;
}

Length known_string_height(const InstrumentStory& story, const TopDesign& design, Date today,
                           std::vector<std::string>& said) {
  if (const auto read = latest_reading(story, "string_over_top", today)) return mm(*read);
  const auto bass = latest_reading(story, "saddle_exposure_bass", today);
  const auto treble = latest_reading(story, "saddle_exposure_treble", today);
  const Length exposure = bass && treble ? 0.5 * mm(*bass + *treble) : BridgeMeasures{}.exposure_bass;
  const Length height = design.bridge.body.thickness + exposure;
  said.push_back("Strings over the top at the saddle: " + as_trade(height).millimetres +
                 (bass && treble ? ", bridge and saddle together" : ", of a usual bridge and saddle") +
                 "; it was not read");
  return height;
}

Force pull_of(const InstrumentStory& story, const DataTables& tables, const std::string& set,
              const std::string& tuning_name) {
  return tension(
             {.scale_length = story.instrument.scale_length,
              .strings = tuned(string_set_named(tables.string_sets, set), tuning_named(tables.tunings, tuning_name))})
      .total;
}

/// Moisture of wood settled in the means of a home's typical year.
TopAir known_air(const InstrumentStory& story, const TopWishes& wishes) {
  const std::vector<HomeDay> days =
      home_days(story.home.air, Date(std::chrono::year(2026) / 1 / 1), year_days + month_days);  // any year: typical
  std::vector<double> moisture;
  moisture.reserve(days.size());
  for (const HomeDay& day : days) {
    moisture.push_back(
        in_percent(equilibrium_moisture(celsius(day.temperature_c), humidity_fraction(day.relative_humidity))));
  }
  const auto mean = [&](int from, int count) {
    double sum = 0;
    for (int i = from; i < from + count; ++i) sum += moisture[static_cast<std::size_t>(i)];
    return sum / count;
  };
  double driest = 1e9, dampest = 0;
  for (int from = 0; from < year_days; ++from) {
    driest = std::min(driest, mean(from, month_days));
    dampest = std::max(dampest, mean(from, month_days));
  }
  const auto humidity = [](double percent) {
    return in_fraction(equilibrium_humidity(room, moisture_percent(percent)));
  };
  TopAir air{.settled_moisture_percent = mean(0, year_days),
             .driest_month_humidity = humidity(driest),
             .dampest_month_humidity = humidity(dampest)};
  air.settled_humidity = humidity(air.settled_moisture_percent);
  air.humidity = wishes.relative_humidity ? in_fraction(*wishes.relative_humidity) : air.driest_month_humidity;
  air.moisture_percent = in_percent(equilibrium_moisture(room, humidity_fraction(air.humidity)));
  const double change = air.moisture_percent - air.settled_moisture_percent;
  if (std::abs(change) > greatest_change) {
    throw Refused("relative_humidity: wood settled in " + plain_number(std::round(100 * air.humidity)) +
                  " % would hold " + plain_number(std::round(10 * std::abs(change)) / 10) + " percent " +
                  (change > 0 ? "more" : "less") + " than in the mean of its home; the plate model is for up to " +
                  plain_number(greatest_change));
  }
  return air;
}

PlateRequest plate_request(const InstrumentStory& story, const DataTables& tables, TopDesign design,
                           const TopAnswer& known) {
  const Instrument& instrument = story.instrument;
  PlateRequest request;
  request.top.body_size = instrument.design.body_size;
  request.top.drawn = std::move(design);
  request.strings = {.pull = known.pull, .height_over_top = known.string_height_over_top};
  const double change = known.air.moisture_percent - known.air.settled_moisture_percent;
  request.moisture = {change, change, change, change};
  NeckAndBack behind = tables.tops.builds[static_cast<std::size_t>(instrument.design.body_size)].behind;
  behind.scale_length = instrument.scale_length;
  behind.body_joint_fret = instrument.body_joint_fret;
  request.behind = behind;
  request.with_fields = true;
  return request;
}

TopView view_of(const PlateRequest& request, const DataTables& tables, PlateMemo& memo) {
  return top_view(plate(request, *memo.of(request, tables.plate()), tables.plate()));
}

/// What is wished otherwise; absent when nothing is.
std::optional<PlateRequest> changed_request(PlateRequest request, const TopWishes& wishes, Force pull_changed) {
  const bool otherwise = wishes.thickness || wishes.string_set || wishes.tuning || !wishes.loose_braces.empty() ||
                         wishes.bridge_plate_worn > 0 || in_mm(wishes.bridge_lifted) > 0 || wishes.mended;
  if (!otherwise) return std::nullopt;
  TopDamage& damage = request.damage;
  if (wishes.mended) damage = mended(damage);
  if (wishes.thickness) {
    const double thinner = in_mm(*wishes.thickness) / in_mm(request.top.drawn->thickness);
    for (ThicknessReading& read : damage.thickness) read.thickness = read.thickness * thinner;
    request.top.drawn->thickness = *wishes.thickness;
  }
  request.strings.pull = pull_changed;
  damage.loose_braces.insert(damage.loose_braces.end(), wishes.loose_braces.begin(), wishes.loose_braces.end());
  damage.bridge_plate_worn = std::max(damage.bridge_plate_worn, wishes.bridge_plate_worn);
  damage.bridge_lifted = std::max(damage.bridge_lifted, wishes.bridge_lifted);
  return request;
}

/// The state as the surveys have it. Cracks that cannot be meshed are left out, which is said.
TopView recorded_view(PlateRequest& request, SurveyedTop& survey, const DataTables& tables, PlateMemo& memo) {
  request.damage = survey.damage;
  if (request.damage.cracks.empty()) return view_of(request, tables, memo);
  try {
    return view_of(request, tables, memo);
  } catch (const Refused& refused) {
    request.damage.cracks.clear();
    TopView view = view_of(request, tables, memo);
    std::erase_if(survey.taken, [](const TakenFinding& taken) {
      return taken.taken_as == TakenAs::crack || taken.taken_as == TakenAs::cleat;
    });
    survey.not_used.push_back(std::string("The cracks of the top are left out here: ") + refused.what());
    return view;
  }
}

std::string degrees_in_words(double value) { return plain_number(std::round(value * 10) / 10); }

/// Whether the bridge turns more than such a top should, as far as its tilt was read.
std::string tilt_verdict(const InstrumentStory& story, const UnderStrings& under, bool has_damage, Date today) {
  const Reading* read = latest_kept(story, "bridge_tilt", today);
  if (read == nullptr) return "";
  const double doubt = 2 * read->gauge_sd;
  const double at_once = in_degrees(under.bridge_rotation), years = in_degrees(under.bridge_rotation_years_high);
  const std::string such = has_damage ? " such a top, with what the survey found, comes to" : " such a top comes to";
  std::string words = "The bridge tilts by " + degrees_in_words(read->value) + " degrees, ";
  if (read->value > years + doubt) {
    words += "more than the " + degrees_in_words(years) + such + " in years at pitch: look for ";
    words += has_damage ? "more than was found." : "a loose brace, a worn plate or a lifted bridge first.";
  } else if (read->value < at_once - doubt) {
    words += "less than the " + degrees_in_words(at_once) + " a new top of this make would turn by at once.";
  } else {
    words += "within the " + degrees_in_words(at_once) + " (new) to " + degrees_in_words(years);
    words += " (after years)" + such + ".";
  }
  return words;
}

}  // namespace

std::optional<WhichTop> known_top(const InstrumentStory& story, const DataTables& tables, Date today,
                                  std::vector<std::string>& said) {
  const std::string pattern = pattern_of(story, {}, said);
  if (pattern.empty()) return std::nullopt;
  WhichTop top{.body_size = story.instrument.design.body_size};
  top.drawn = known_design(story, tables, pattern, today, said);
  return top;
}

TopAnswer top_answer(const InstrumentStory& story, const TopRecords& records, const DataTables& tables,
                     PlateMemo& memo, const TopWishes& wishes, Date today) {
  require_valid(wishes);
  const Instrument& instrument = story.instrument;
  TopAnswer answer;
  for (const BracingPattern& pattern : tables.tops.patterns) answer.patterns.push_back(pattern.name);
  answer.pattern = pattern_of(story, wishes, answer.assumed);
  answer.air = known_air(story, wishes);
  answer.pull = pull_of(story, tables, instrument.string_set, instrument.tuning);
  answer.pull_changed = pull_of(story, tables, wishes.string_set.value_or(instrument.string_set),
                                wishes.tuning.value_or(instrument.tuning));
  if (answer.pattern.empty()) return answer;
  const TopDesign design = known_design(story, tables, answer.pattern, today, answer.assumed);
  answer.thickness = design.thickness;
  answer.string_height_over_top = known_string_height(story, design, today, answer.assumed);
  answer.survey = surveyed_top(records, design, tables);
  PlateRequest recorded = plate_request(story, tables, design, answer);
  TopView view = recorded_view(recorded, answer.survey, tables, memo);
  answer.tilt_verdict =
      tilt_verdict(story, view.state.numbers.strings, !answer.survey.taken.empty(), today);
  if (const auto changed = changed_request(recorded, wishes, answer.pull_changed)) {
    answer.changed = state_on(view.shape, view_of(*changed, tables, memo));
  }
  answer.shape = std::move(view.shape);
  answer.recorded = std::move(view.state);
  return answer;
}

void describe(FieldVisitor& visit, TopWishes& wishes) {
  const auto text = [&](const Field& field, std::optional<std::string>& value) {
    maybe(visit, field, value, [&](const Field& present, std::string& words) { visit.text(present, words, 60); });
  };
  maybe(visit, {"today", "asked as on this day"}, wishes.today,
        [&](const Field& field, Date& date) { visit.date(field, date); });
  text({"bracing", "a pattern, nearest to this top's own: x_scalloped, x_braced, ladder, fan"}, wishes.bracing);
  maybe(visit, {"relative_humidity", "the wood settled in this air; absent: the driest month of its home"},
        wishes.relative_humidity,
        [&](const Field& field, RelativeHumidity& humidity) { relative_humidity(visit, field, humidity); });
  maybe(visit, {"thickness_mm", "of the top, otherwise than it is"}, wishes.thickness,
        [&](const Field& field, Length& length) {
          visit.length(field, length, {1, 6, "mm"});
        });
  text({"string_set", "otherwise than it is strung"}, wishes.string_set);
  text({"tuning", "otherwise than it is tuned"}, wishes.tuning);
  list(visit, {"loose_braces", "stretches off the top", Need::has_default}, wishes.loose_braces, {0, 20});
  visit.number({"bridge_plate_worn", "share of its thickness gone along the pin holes", Need::has_default},
               wishes.bridge_plate_worn, {0, 1, ""});
  visit.length({"bridge_lifted_mm", "from the back edge of the bridge, off the top", Need::has_default},
               wishes.bridge_lifted, {0, 60, "mm"});
  visit.flag({"mended", "without what the surveys found", Need::has_default}, wishes.mended);
}

void describe(FieldVisitor& visit, TopAir& air) {
  const auto share = [&](const Field& field, double& value) { visit.number(field, value, {0, 1, ""}); };
  const auto percent = [&](const Field& field, double& value) { visit.number(field, value, {0, 60, "%"}); };
  share({"settled_humidity", "mean of its home's typical year, which it is compared with"}, air.settled_humidity);
  percent({"settled_moisture_percent", "of wood in that air"}, air.settled_moisture_percent);
  share({"humidity", "in which the wood is looked at, settled, 20 C"}, air.humidity);
  percent({"moisture_percent", "of wood in that air"}, air.moisture_percent);
  share({"driest_month_humidity", "of its home's typical year"}, air.driest_month_humidity);
  share({"dampest_month_humidity", "the same"}, air.dampest_month_humidity);
}

void describe(FieldVisitor& visit, TopAnswer& answer) {
  const auto part = [&](const Field& field, auto& value) {
    maybe(visit, field, value, [&](const Field& present, auto& known) { object(visit, present, known); });
  };
  visit.texts({"patterns", "of bracing, that can be asked for"}, answer.patterns, 60, {0, 100});
  visit.text({"pattern", "the one taken; empty: none is recorded and nothing was calculated"}, answer.pattern, 60);
  object(visit, {"air", "looked at, and compared with"}, answer.air);
  visit.length({"thickness_mm", "of the top as the book knows it"}, answer.thickness, {0, 10, "mm"});
  force(visit, {"pull_n", "of the strings as recorded"}, answer.pull, {0, 5000, "N"});
  force(visit, {"pull_changed_n", "with the strings and tuning asked for"}, answer.pull_changed, {0, 5000, "N"});
  visit.length({"string_height_over_top_mm", "at the saddle"}, answer.string_height_over_top, {0, 40, "mm"});
  object(visit, {"survey", "what was found on it, and how it is taken"}, answer.survey);
  part({"shape", "where nodes and triangles lie; absent without a pattern"}, answer.shape);
  part({"recorded", "as the book knows it; absent without a pattern"}, answer.recorded);
  part({"changed", "with what was asked otherwise; absent when nothing was"}, answer.changed);
  visit.text({"tilt_verdict", "the bridge's tilt as read, against what such a top comes to; empty: not read"},
             answer.tilt_verdict, 400);
  visit.texts({"assumed", "what no record says and was taken for granted"}, answer.assumed, 1000, {0, 100});
}

}  // namespace tailblock
