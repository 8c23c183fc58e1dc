#include "repair/repair_tables.h"

#include <gtest/gtest.h>

#include <set>

#include "repair_bench.h"

namespace tailblock {
namespace {

using testing::refusal;
using testing::refusal_with;
using testing::repository_repairs;
using testing::with;

TEST(RepairTables, every_brace_of_every_top_says_which_of_the_repair_it_is) {
  const std::string tops = testing::repository_file("data/top_braces.csv");
  const CsvTable table("top_braces.csv", tops);
  int braces = 0;
  for (const CsvRow& row : table.rows()) {
    const auto answers =
        answered_by("brace_loose", row.name("brace"), "x_brace", repository_repairs().finding_answers);
    ASSERT_EQ(answers.size(), 1U) << row.name("brace");
    EXPECT_EQ(answers[0].decision, "which");
    EXPECT_EQ(answers[0].outcome == "main", row.name("brace").starts_with("X leg")) << row.name("brace");
    ++braces;
  }
  EXPECT_GT(braces, 20);
}

TEST(RepairTables, what_a_finding_answers_is_refused_where_there_is_no_such_question) {
  const RepairTables& known = repository_repairs();
  const auto of = [&](const std::string& row) {
    const std::string csv = "procedure,decision,finding,part,outcome,source,note\n" + row + ",invented,\n";
    return refusal([&] { (void)finding_answers(csv, known.procedures, known.findings); });
  };
  EXPECT_EQ(of("x_brace,which,,,leg"), "finding_answers.csv line 2, outcome: is no outcome of which");
  EXPECT_EQ(of("x_brace,who,,,main"), "finding_answers.csv line 2, decision: is not asked by x_brace");
  EXPECT_EQ(of("y_brace,which,,,main"), "finding_answers.csv line 2, procedure: is not in procedures.csv");
  EXPECT_EQ(of("x_brace,which,rust,,main"), "finding_answers.csv line 2, finding: is not in finding_kinds.csv");
  EXPECT_TRUE(answered_by("crack", "", "x_brace", known.finding_answers).empty());
}

TEST(RepairTables, every_row_of_the_repository_is_read) {
  const RepairTables& tables = repository_repairs();
  EXPECT_GE(tables.operations.size(), 133U);
  EXPECT_GE(tables.procedures.size(), 20U);
  EXPECT_GE(tables.readings.size(), 66U);
  EXPECT_GE(tables.findings.size(), 50U);
  EXPECT_GE(tables.diagnosis.causes.size(), 90U);
  for (const OperationKind& kind : tables.operations) EXPECT_FALSE(kind.source.empty()) << kind.id;
}

TEST(RepairTables, every_sort_of_work_is_asked_for_and_none_while_arriving_or_finishing) {
  std::set<std::string> asked;
  for (const OperationKind& kind : repository_repairs().operations) {
    if (kind.skill.empty()) continue;
    asked.insert(kind.skill);
    EXPECT_EQ(kind.family, WorkFamily::work) << kind.id;
    EXPECT_EQ(kind.skill == "spraying", kind.air == WorkAir::spray) << kind.id;
  }
  for (const WorkSkill& skill : repository_repairs().materials.skills) EXPECT_TRUE(asked.contains(skill.id)) << skill.id;
  EXPECT_EQ(row_of_id(repository_repairs().operations, "level_frets")->skill, "fretwork");
}

TEST(RepairTables, sorts_of_work_are_refused_by_file_and_row) {
  EXPECT_NE(refusal_with("data/operations.csv", with(",fretwork,", ",fret work,"))
                .find("skill: \"fret work\" is not in work_skills.csv"),
            std::string::npos);
  const auto of = [](const std::string& rows) {
    return refusal([&] { (void)work_skills("id,name,covers,source,note\n" + rows); });
  };
  EXPECT_EQ(of("a,one,this,invented,\na,two,that,invented,\n"), "work_skills.csv line 3, id: comes twice");
  EXPECT_EQ(of("a,one,this,invented,\nb,one,that,invented,\n"), "work_skills.csv line 3, name: comes twice");
  EXPECT_EQ(of("a,one,,invented,\n"), "work_skills.csv line 2, covers: is empty");
}

TEST(RepairTables, no_table_speaks_of_a_thing_that_no_procedure_or_remedy_uses) {
  const RepairTables& tables = repository_repairs();
  std::set<std::string> asked;
  for (const FindingKind& kind : tables.findings) asked.insert(kind.measures.begin(), kind.measures.end());
  for (const RepairProcedure& one : tables.procedures) {
    for (const ProcedureDecision& decision : one.decisions) asked.insert(decision.outcomes.front().about);
  }
  for (const Cause& cause : tables.diagnosis.causes) {
    for (const EvidenceLine& line : cause.evidence) asked.insert(line.about);
  }
  for (const KnownReading& reading : tables.readings) {
    if (reading.of != ReadingOf::instrument) {
      EXPECT_TRUE(asked.contains(reading.id) || reading.id == "tilt_over_plate") << reading.id;
    }
  }
  std::set<std::string> spoken;
  for (const Cause& cause : tables.diagnosis.causes) {
    for (const EvidenceLine& line : cause.evidence) {
      if (line.of == EvidenceOf::fact) spoken.insert(line.about);
    }
  }
  for (const AskedFact& fact : tables.diagnosis.facts) EXPECT_TRUE(spoken.contains(fact.id)) << fact.id;
}

TEST(RepairTables, the_most_dangerous_is_never_planned) {
  for (const OperationKind& kind : repository_repairs().operations) {
    for (const std::string& id : kind.hazards) {
      const Hazard& hazard = *row_of_id(repository_repairs().materials.hazards, id);
      EXPECT_FALSE(hazard.never && kind.offered) << kind.id << " proposes " << id;
    }
    for (const std::string& word : {kind.materials, kind.name}) {
      EXPECT_EQ(
          word.find("dichloromethane") == std::string::npos || word.find("no dichloromethane") != std::string::npos,
          true)
          << kind.id;
    }
  }
}

TEST(RepairTables, what_drying_oil_touches_warns_of_its_rags) {
  const auto& tables = repository_repairs();
  for (const FinishClass& finish : tables.materials.finishes) {
    const bool oil = finish.name.find("oil") != std::string::npos && finish.id != "shellac_pad";
    const bool warns = std::find(finish.hazards.begin(), finish.hazards.end(), "oil_rags") != finish.hazards.end();
    EXPECT_TRUE(!oil || warns) << finish.id;
  }
}

TEST(RepairTables, refuse_a_broken_reference_by_its_row) {
  EXPECT_EQ(refusal_with("data/operations.csv", with(",needs,after", ",needed,after")),
            "operations.csv: has no column needs");
  EXPECT_EQ(
      refusal_with("data/operations.csv", with(",record_arrival,,,photo corner", ",record_departure,,,photo corner")),
      "operations.csv, photograph_before: \"record_departure\" is not an operation");
  EXPECT_NE(refusal_with("data/operations.csv", with(",hot_hide,,hide_glue_pot", ",hot_glue,,hide_glue_pot"))
                .find("adhesives: \"hot_glue\" is in no table"),
            std::string::npos);
  EXPECT_NE(
      refusal_with("data/operations.csv", with(",mould,", ",mold,")).find("hazards: \"mold\" is not in hazards.csv"),
      std::string::npos);
  EXPECT_NE(refusal_with("data/operations.csv", with("arrive,5,10,25", "arrive,5,50,25"))
                .find("hands_on: is not between hands_on_low and hands_on_high"),
            std::string::npos);
  EXPECT_NE(refusal_with("data/exposure_limits.csv", with("toluene,", "toluol,"))
                .find("hazard: \"toluol\" is not in hazards.csv"),
            std::string::npos);
  EXPECT_NE(refusal_with("data/procedure_steps.csv", with("nut,slot_nut", "nut,carve_nut"))
                .find("operation: \"carve_nut\" is not in operations.csv"),
            std::string::npos);
  EXPECT_NE(refusal_with("data/procedure_steps.csv", with("humidity=dry|", "weather=dry|"))
                .find("when: \"weather\" is not asked before"),
            std::string::npos);
  EXPECT_NE(refusal_with("data/procedure_decisions.csv", with("body_humidity,40,55", "body_humidity,42,55"))
                .find("its bands do not follow on each other"),
            std::string::npos);
  EXPECT_NE(refusal_with("data/cause_evidence.csv", with("cause:damp", "cause:drowned"))
                .find("about: \"cause:drowned\" is not known"),
            std::string::npos);
  EXPECT_NE(refusal_with("data/causes.csv", with(",dry_guitar,", ",wet_guitar,"))
                .find("do: \"wet_guitar\" is neither procedure nor operation"),
            std::string::npos);
  EXPECT_NE(refusal_with("data/finding_kinds.csv", with("crack_width;crack_length;crack_step", "crack_colour"))
                .find("measures: \"crack_colour\" is not in finding_measures.csv"),
            std::string::npos);
  EXPECT_EQ(refusal_with("data/repair_figures.csv", with("gate_humidity_high,55", "gate_humidity_high,95")),
            "repair_figures.csv line 5, value: 95 percent is outside 40..90 percent");
}

TEST(RepairTables, a_loose_brace_leads_to_the_repair_of_its_own_plate) {
  const auto repairs_of = [](DrawingView view) {
    std::vector<std::string> ids;
    for (const RepairProcedure& one : repository_repairs().procedures) {
      if (one.answers("brace_loose", view)) ids.push_back(one.id);
    }
    return ids;
  };
  EXPECT_EQ(repairs_of(DrawingView::top_inside), std::vector<std::string>{"x_brace"});
  EXPECT_EQ(repairs_of(DrawingView::back_inside), std::vector<std::string>{"back_brace"});
}

}  // namespace
}  // namespace tailblock
