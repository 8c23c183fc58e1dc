#include "repair/diagnose.h"

#include <gtest/gtest.h>

#include "repair_bench.h"

namespace tailblock {
namespace {

using testing::refusal;
using testing::repository_repairs;

GivenReading reading(const std::string& measure, double value, std::optional<double> sd = {},
                     std::optional<double> earlier = {}) {
  return {.measure = measure, .value = value, .sd = sd, .earlier = earlier, .earlier_sd = sd};
}
DiagnoseResult asked(const DiagnoseRequest& request) { return diagnose(request, repository_repairs()); }

const CauseShown& cause(const DiagnoseResult& result, const std::string& id) {
  for (const CauseShown& one : result.causes) {
    if (one.cause == id) return one;
  }
  throw std::runtime_error(id + " is not among the causes");
}

// ---- worked cases of the trade's rules ----

TEST(Diagnose, a_dry_guitar_shows_by_two_signs) {
  DiagnoseRequest request;
  request.readings = {reading("body_humidity", 34, 2)};
  EXPECT_EQ(cause(asked(request), "dry").verdict, CauseVerdict::open);
  request.readings.push_back(reading("fret_end_overhang", 0.2));
  EXPECT_EQ(cause(asked(request), "dry").verdict, CauseVerdict::stands);
  EXPECT_EQ(asked(request).causes.front().cause, "dry");
}

TEST(Diagnose, low_action_in_a_dry_winter_is_the_season_and_not_the_saddle) {
  DiagnoseRequest request;
  request.symptoms = {"low_action"};
  request.readings = {reading("body_humidity", 34, 2), reading("fret_end_overhang", 0.2),
                      reading("action12_bass", 1.5, 0.1, 2.2), reading("relief", 0.15),
                      reading("something_else", 0.05, 0.05)};
  const DiagnoseResult result = asked(request);
  EXPECT_EQ(cause(result, "low_dry").verdict, CauseVerdict::stands);
  EXPECT_TRUE(cause(result, "low_dry").wait);
  EXPECT_EQ(cause(result, "low_saddle").verdict, CauseVerdict::ruled_out);  // not read in the range that it needs
  EXPECT_TRUE(result.humidity.holds);
  EXPECT_FALSE(result.blocked.empty());
}

TEST(Diagnose, what_the_season_does_not_explain_is_not_the_season) {
  DiagnoseRequest request;
  request.symptoms = {"low_action"};
  request.readings = {reading("body_humidity", 34, 2), reading("something_else", 0.95, 0.05)};
  EXPECT_EQ(cause(asked(request), "low_dry").verdict, CauseVerdict::ruled_out);
  EXPECT_EQ(cause(asked(request), "moved_unrecorded").verdict, CauseVerdict::stands);
}

TEST(Diagnose, a_low_neck_waits_for_braces_heel_and_relief) {
  DiagnoseRequest request;
  request.symptoms = {"high_action"};
  request.readings = {reading("straightedge_of_year", -3, 0.3),
                      reading("saddle_exposure_bass", 1.8),
                      reading("relief", 0.15),
                      reading("heel_gap_depth", 0),
                      reading("body_humidity", 47, 2),
                      reading("belly", 3, 0.4),
                      reading("bridge_tilt", 1),
                      reading("brace_gap_depth", 0),
                      reading("plate_hole_wear", 0.2),
                      reading("bridge_lift_depth", 0)};
  request.facts = {{"gap_opens_with_strings", false}};
  DiagnoseResult result = asked(request);
  EXPECT_EQ(cause(result, "high_heel").verdict, CauseVerdict::ruled_out);
  EXPECT_EQ(cause(result, "high_belly").verdict, CauseVerdict::ruled_out);
  request.readings[5] = reading("belly", 8, 0.4);
  request.readings[7] = reading("brace_gap_depth", 12);
  EXPECT_EQ(cause(asked(request), "high_belly").verdict, CauseVerdict::stands);
  EXPECT_EQ(cause(asked(request), "high_neck").verdict, CauseVerdict::ruled_out);
}

TEST(Diagnose, the_neck_needs_twice_its_uncertainty) {
  DiagnoseRequest request;
  request.symptoms = {"neck_angle"};
  const auto at = [&](double line) {
    request.readings = {reading("straightedge_of_year", line, 0.3), reading("heel_gap_depth", 0),
                        reading("brace_gap_depth", 0)};
    return cause(asked(request), "neck_called").verdict;
  };
  EXPECT_EQ(at(-2.25), CauseVerdict::stands);
  EXPECT_EQ(at(-2.15), CauseVerdict::open);
  EXPECT_EQ(at(-1.05), CauseVerdict::open);
  EXPECT_EQ(at(-0.95), CauseVerdict::ruled_out);
}

TEST(Diagnose, reads_the_plate_model_where_it_is_given) {
  DiagnoseRequest request;
  request.symptoms = {"belly"};
  request.readings = {reading("belly_over_plate", 4, 0.8), reading("brace_gap_depth", 10)};
  const CauseShown shown = cause(asked(request), "belly_brace");
  EXPECT_EQ(shown.verdict, CauseVerdict::stands);
  EXPECT_EQ(shown.evidence.back().stands, LineStands::for_it);
  EXPECT_NEAR(shown.evidence.back().margin_repeatability.value(), 2.5, 1e-9);
}

// ---- margins ----

TEST(Diagnose, gives_no_verdict_within_the_repeatability) {
  DiagnoseRequest request;
  request.symptoms = {"high_action"};
  const auto at = [&](double relief) {
    request.readings = {reading("relief", relief, 0.05)};
    return cause(asked(request), "high_relief");
  };
  EXPECT_EQ(at(0.451).verdict, CauseVerdict::stands);
  EXPECT_EQ(at(0.449).verdict, CauseVerdict::open);
  EXPECT_EQ(at(0.449).evidence.front().stands, LineStands::too_near);
  EXPECT_EQ(at(0.349).verdict, CauseVerdict::ruled_out);
  EXPECT_NEAR(at(0.5).evidence.front().margin_repeatability.value(), 2, 1e-9);
}

TEST(Diagnose, a_change_has_the_repeatability_of_both_readings) {
  DiagnoseRequest request;
  request.readings = {reading("belly", 6, 0.3, 4.5)};
  const CauseShown damp = cause(asked(request), "damp");
  EXPECT_NEAR(damp.evidence[1].margin_repeatability.value(), 0.5 / std::hypot(0.3, 0.3), 1e-9);
}

// ---- what to read next ----

TEST(Diagnose, proposes_the_reading_that_decides_most_whichever_way_it_comes_out) {
  DiagnoseRequest request;
  request.symptoms = {"sharp_ends"};
  request.readings = {reading("fret_end_overhang", 0.2)};
  request.surveyed = true;
  const DiagnoseResult before = asked(request);
  ASSERT_FALSE(before.next.empty());
  EXPECT_EQ(before.next.front().about, "body_humidity");
  EXPECT_GE(before.next.front().decides_at_least, 2);  // both causes of sharp ends
  const auto open = [](const DiagnoseResult& result) {
    return std::count_if(result.causes.begin(), result.causes.end(),
                         [](const CauseShown& one) { return one.verdict == CauseVerdict::open; });
  };
  for (const double humidity : {20.0, 47.0, 80.0}) {
    DiagnoseRequest after = request;
    after.readings.push_back(reading("body_humidity", humidity, 0.1));
    EXPECT_GE(open(before) - open(asked(after)), before.next.front().decides_at_least) << humidity;
    EXPECT_LE(open(before) - open(asked(after)), before.next.front().decides_at_most) << humidity;
  }
}

TEST(Diagnose, asks_again_what_was_read_too_near_its_limit) {
  DiagnoseRequest request;
  request.symptoms = {"hump"};
  request.readings = {reading("joint_hump", 0.21, 0.1), reading("body_humidity", 47, 1), reading("relief", 0.15),
                      reading("fret_springs", 0)};
  request.surveyed = true;
  const DiagnoseResult result = asked(request);
  EXPECT_TRUE(std::any_of(result.next.begin(), result.next.end(),
                          [](const NextMeasurement& next) { return next.about == "joint_hump"; }));
}

// ---- findings, order, gates ----

TEST(Diagnose, findings_raise_their_symptoms_and_bring_their_readings) {
  DiagnoseRequest request;
  request.findings = {{.kind = "brace_loose", .where = "X leg, treble", .readings = {reading("brace_gap_depth", 3)}},
                      {.kind = "brace_loose", .where = "back brace 3", .readings = {reading("brace_gap_depth", 12)}}};
  request.facts = {{"rattles_on_tap", true}};
  const CauseShown open = cause(asked(request), "brace_open");
  EXPECT_EQ(open.evidence.front().value, 12);
  EXPECT_EQ(cause(asked(request), "brace_partial").verdict, CauseVerdict::ruled_out);
}

TEST(Diagnose, proposes_safety_and_humidity_before_neck_work) {
  DiagnoseRequest request;
  request.symptoms = {"high_action", "finish", "neck_angle"};
  request.readings = {reading("relief", 0.6), reading("straightedge_of_year", -4, 0.3), reading("heel_gap_depth", 0),
                      reading("brace_gap_depth", 0)};
  request.facts = {{"sour_smell", true}};
  std::vector<std::string> standing;
  for (const CauseShown& one : asked(request).causes) {
    if (one.verdict == CauseVerdict::stands) standing.push_back(one.cause);
  }
  EXPECT_EQ(standing, (std::vector<std::string>{"finish_celluloid", "high_relief", "neck_called"}));
}

TEST(Diagnose, a_bridge_that_lifts_far_brings_the_strings_down) {
  DiagnoseRequest request;
  request.readings = {reading("bridge_lift_depth", 7)};
  EXPECT_EQ(asked(request).slacken_now, "The bridge lifts by over 6 mm: slacken the strings now.");
  request.readings = {reading("bridge_lift_depth", 5)};
  EXPECT_EQ(asked(request).slacken_now, "");
  request.readings = {reading("heel_gap_depth", 3)};
  request.facts = {{"gap_opens_with_strings", true}};
  EXPECT_EQ(asked(request).slacken_now, "The heel opens with the strings: slacken them now.");
}

TEST(Diagnose, every_cause_can_stand) {
  const DiagnosisTables& tables = repository_repairs().diagnosis;
  for (const Cause& one : tables.causes) {
    // every line that speaks for it holds, and so do those of the causes it looks back on
    std::vector<const Cause*> chain{&one};
    for (std::size_t i = 0; i < chain.size(); ++i) {
      for (const EvidenceLine& line : chain[i]->evidence) {
        if (line.of == EvidenceOf::cause && line.role != EvidenceRole::against) {
          chain.push_back(row_of_id(tables.causes, line.about));
        }
      }
    }
    DiagnoseRequest request;
    request.surveyed = true;
    request.symptoms = {one.symptom};
    for (const SaidFact& said : [&] {
           std::vector<SaidFact> all;
           for (const AskedFact& fact : tables.facts) all.push_back({fact.id, false});
           return all;
         }()) {
      request.facts.push_back(said);
    }
    std::map<std::string, GivenReading> readings;
    for (const Cause* link : chain) {
      for (const EvidenceLine& line : link->evidence) {
        if (line.role == EvidenceRole::against) continue;
        if (line.of == EvidenceOf::fact) {
          for (SaidFact& said : request.facts) said.holds = said.holds || said.fact == line.about;
        } else if (line.of == EvidenceOf::finding) {
          request.findings.push_back({.kind = line.about, .where = "", .readings = {}});
        } else if (line.of == EvidenceOf::reading || line.of == EvidenceOf::change) {
          const double place = line.from && line.to ? (*line.from + *line.to) / 2
                               : line.from          ? *line.from + 0.3 * std::max(1.0, std::abs(*line.from))
                                                    : *line.to - 0.3 * std::max(1.0, std::abs(*line.to));
          if (line.of == EvidenceOf::change) {
            readings.try_emplace(line.about, reading(line.about, std::max(place, 0.0), 0.001, std::max(-place, 0.0)));
          } else {
            readings.try_emplace(line.about, reading(line.about, place, 0.001));
          }
        }
      }
    }
    const auto against = [&](const std::string& about, double fine) {
      readings.try_emplace(about, reading(about, fine, 0.001));
    };
    // readings that nothing speaks of are sound ones
    against("something_else", 0.01), against("relief", 0.15), against("heel_gap_depth", 0),
        against("brace_gap_depth", 0);
    against("belly", 3), against("bridge_tilt", 1), against("body_humidity", 47), against("fret_end_overhang", 0);
    against("plate_hole_wear", 0.1), against("bridge_lift_depth", 0), against("back_arch", 5),
        against("fret_springs", 0);
    against("belly_over_plate", 0), against("sink_at_soundhole", 0.5), against("clean_action_room", -1);
    for (auto& [id, one_reading] : readings) {
      const KnownReading& known = *row_of_id(repository_repairs().readings, id);
      one_reading.value = std::clamp(one_reading.value, known.hard_low, known.hard_high);
      if (id == "belly" && !one_reading.earlier) one_reading.earlier = one_reading.value;
      if (id == "sink_at_soundhole" && !one_reading.earlier) one_reading.earlier = one_reading.value;
      request.readings.push_back(one_reading);
    }
    const CauseShown shown = cause(asked(request), one.id);
    std::string lines;
    for (const EvidenceShown& line : shown.evidence) {
      lines += "\n  " + line.about + ": " + std::to_string(static_cast<int>(line.stands));
    }
    EXPECT_EQ(shown.verdict, CauseVerdict::stands) << one.id << lines;
  }
}

TEST(Diagnose, refuses_in_one_line) {
  const auto of = [](const DiagnoseRequest& request) { return refusal([&] { (void)asked(request); }); };
  DiagnoseRequest request;
  request.symptoms = {"sad"};
  EXPECT_EQ(of(request), "symptoms: \"sad\" is not in data/symptoms.csv");
  request = {};
  request.readings = {reading("loudness", 3)};
  EXPECT_EQ(of(request), "readings: \"loudness\" is no reading that repairs know");
  request.readings = {reading("relief", 0.1), reading("relief", 0.2)};
  EXPECT_EQ(of(request), "readings: \"relief\" comes twice");
  request = {};
  request.facts = {{"moon_full", true}};
  EXPECT_EQ(of(request), "facts: \"moon_full\" is not in data/diagnosis_facts.csv");
  request = {};
  request.findings = {{.kind = "ghost", .where = "", .readings = {}}};
  EXPECT_EQ(of(request), "findings: \"ghost\" is not in data/finding_kinds.csv");
}

}  // namespace
}  // namespace tailblock
