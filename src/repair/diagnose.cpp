#include "repair/diagnose.h"

#include <algorithm>
#include <cmath>
#include <set>

#include "quantity/quoted_text.h"
#include "repair/weighed_causes.h"

namespace tailblock {
namespace {

/// All readings of the request, those at findings included: of several readings of one kind the greatest.
std::vector<GivenReading> all_readings(const DiagnoseRequest& request) {
  std::vector<GivenReading> all = request.readings;
  for (const FindingSeen& finding : request.findings) {
    for (const GivenReading& reading : finding.readings) {
      const auto same =
          std::find_if(all.begin(), all.end(), [&](const auto& one) { return one.measure == reading.measure; });
      if (same == all.end()) {
        all.push_back(reading);
      } else if (reading.value > same->value) {
        *same = reading;
      }
    }
  }
  return all;
}

void require_known(const DiagnoseRequest& request, const RepairTables& tables) {
  for (const std::string& symptom : request.symptoms) {
    if (row_of_id(tables.diagnosis.symptoms, symptom) == nullptr) {
      throw Refused("symptoms: " + quoted_text(symptom) + " is not in data/symptoms.csv");
    }
  }
  for (const FindingSeen& finding : request.findings) {
    if (finding_kind(tables.findings, finding.kind) == nullptr) {
      throw Refused("findings: " + quoted_text(finding.kind) + " is not in data/finding_kinds.csv");
    }
  }
  for (const SaidFact& said : request.facts) {
    if (row_of_id(tables.diagnosis.facts, said.fact) == nullptr) {
      throw Refused("facts: " + quoted_text(said.fact) + " is not in data/diagnosis_facts.csv");
    }
  }
}

std::set<std::string> symptoms_of(const DiagnoseRequest& request, const RepairTables& tables) {
  std::set<std::string> symptoms(request.symptoms.begin(), request.symptoms.end());
  symptoms.insert("any");
  for (const Symptom& symptom : tables.diagnosis.symptoms) {
    for (const FindingSeen& finding : request.findings) {
      if (std::find(symptom.findings.begin(), symptom.findings.end(), finding.kind) != symptom.findings.end()) {
        symptoms.insert(symptom.id);
      }
    }
  }
  return symptoms;
}

KnownEvidence known_evidence(const DiagnoseRequest& request, const ReadValues& values) {
  KnownEvidence known;
  known.value = [&values](EvidenceOf of, const std::string& about) {
    return of == EvidenceOf::change ? values.change(about) : values.now(about);
  };
  known.holds = [&request](EvidenceOf of, const std::string& about) -> std::optional<bool> {
    if (of == EvidenceOf::fact) {
      for (const SaidFact& said : request.facts) {
        if (said.fact == about) return said.holds;
      }
      return std::nullopt;
    }
    for (const FindingSeen& finding : request.findings) {
      if (finding.kind == about) return true;
    }
    return request.surveyed ? std::optional(false) : std::nullopt;
  };
  return known;
}

/// Where readings of one kind may fall: beyond and between all limits that any line puts on it.
std::vector<double> where_it_may_fall(const DiagnosisTables& tables, const EvidenceLine& wanted) {
  std::vector<double> limits;
  for (const Cause& cause : tables.causes) {
    for (const EvidenceLine& line : cause.evidence) {
      if (line.of != wanted.of || line.about != wanted.about) continue;
      if (line.from) limits.push_back(*line.from);
      if (line.to) limits.push_back(*line.to);
    }
  }
  std::sort(limits.begin(), limits.end());
  std::vector<double> places{limits.front() - 1};
  for (std::size_t i = 1; i < limits.size(); ++i) {
    if (limits[i] > limits[i - 1]) places.push_back((limits[i - 1] + limits[i]) / 2);
  }
  places.push_back(limits.back() + 1);
  return places;
}

/// Those still open among the causes of the symptoms.
int open_causes(const CauseVerdicts& verdicts, const DiagnosisTables& tables, const std::set<std::string>& symptoms) {
  int open = 0;
  for (std::size_t c = 0; c < verdicts.size(); ++c) {
    if (verdicts[c] == CauseVerdict::open && symptoms.contains(tables.causes[c].symptom)) ++open;
  }
  return open;
}

std::string how_to_know(const EvidenceLine& line, const RepairTables& tables) {
  if (line.of == EvidenceOf::fact) return row_of_id(tables.diagnosis.facts, line.about)->question;
  if (line.of == EvidenceOf::finding) return "Look for: " + finding_kind(tables.findings, line.about)->words + ".";
  const KnownReading& reading = *row_of_id(tables.readings, line.about);
  std::string words = "Read " + reading.name;
  if (line.of == EvidenceOf::change) words += " again, against the first trusted set";
  return words + " (" + reading.how + ").";
}

std::vector<NextMeasurement> next_measurements(const Supposing& supposing, const std::set<std::string>& symptoms,
                                               const std::vector<CauseShown>& causes, const RepairTables& tables) {
  int open_now = 0;
  for (const CauseShown& cause : causes) {
    open_now += cause.verdict == CauseVerdict::open && symptoms.contains(cause.symptom) ? 1 : 0;
  }
  std::vector<NextMeasurement> next;
  std::set<std::string> tried;
  for (std::size_t c = 0; c < causes.size(); ++c) {
    if (causes[c].verdict != CauseVerdict::open || !symptoms.contains(causes[c].symptom)) continue;
    for (std::size_t e = 0; e < causes[c].evidence.size(); ++e) {
      const EvidenceLine& line = tables.diagnosis.causes[c].evidence[e];
      const LineStands stands = causes[c].evidence[e].stands;
      const bool unknown = stands == LineStands::unread || stands == LineStands::too_near;
      if (!unknown || line.of == EvidenceOf::cause || !tried.insert(causes[c].evidence[e].about).second) continue;
      std::vector<int> decided;
      const auto try_out = [&](const CauseVerdicts& verdicts) {
        decided.push_back(open_now - open_causes(verdicts, tables.diagnosis, symptoms));
      };
      if (line.of == EvidenceOf::reading || line.of == EvidenceOf::change) {
        for (const double place : where_it_may_fall(tables.diagnosis, line)) try_out(supposing.reading(line, place));
      } else {
        for (const bool holds : {true, false}) try_out(supposing.answer(line, holds));
      }
      const auto [least, most] = std::minmax_element(decided.begin(), decided.end());
      next.push_back({.about = causes[c].evidence[e].about,
                      .words = how_to_know(line, tables),
                      .decides_at_least = *least,
                      .decides_at_most = *most});
    }
  }
  std::stable_sort(next.begin(), next.end(), [](const NextMeasurement& a, const NextMeasurement& b) {
    return a.decides_at_least != b.decides_at_least ? a.decides_at_least > b.decides_at_least
                                                    : a.decides_at_most > b.decides_at_most;
  });
  next.erase(std::remove_if(next.begin(), next.end(), [](const auto& one) { return one.decides_at_most <= 0; }),
             next.end());
  return next;
}

std::string slacken_now(const DiagnoseRequest& request, const ReadValues& values, const RepairFigures& figures) {
  const auto lift = values.now("bridge_lift_depth");
  if (lift && lift->value > figures.slacken_lift) return "The bridge lifts by over 6 mm: slacken the strings now.";
  const auto heel = values.now("heel_gap_depth");
  const bool moves = std::any_of(request.facts.begin(), request.facts.end(), [](const SaidFact& said) {
    return said.fact == "gap_opens_with_strings" && said.holds;
  });
  if (heel && heel->value > figures.slacken_heel && moves) {
    return "The heel opens with the strings: slacken them now.";
  }
  return "";
}

std::string verdict_words(const std::vector<CauseShown>& causes) {
  std::string standing;
  int open = 0;
  for (const CauseShown& cause : causes) {
    if (cause.verdict == CauseVerdict::stands) standing += (standing.empty() ? "" : "; ") + cause.name;
    open += cause.verdict == CauseVerdict::open ? 1 : 0;
  }
  std::string words = standing.empty() ? "Nothing is sure yet" : "Stands: " + standing;
  if (open > 0) words += "; " + std::to_string(open) + " more not decided";
  return words + ".";
}

void put_in_order_of_proposing(std::vector<CauseShown>& causes) {
  std::stable_sort(causes.begin(), causes.end(), [](const CauseShown& a, const CauseShown& b) {
    return a.verdict != b.verdict ? a.verdict < b.verdict : a.kind < b.kind;
  });
}

}  // namespace

DiagnoseResult diagnose(const DiagnoseRequest& request, const RepairTables& tables) {
  require_valid(request);
  require_known(request, tables);
  const ReadValues values(all_readings(request), tables.readings);
  const KnownEvidence known = known_evidence(request, values);
  const std::set<std::string> symptoms = symptoms_of(request, tables);
  const double sure_margin = tables.figures.sure_margin;

  DiagnoseResult result;
  result.slacken_now = slacken_now(request, values, tables.figures);
  result.humidity = humidity_gate(values.now(gate_measure), request.humidity_override, tables.figures);
  if (result.humidity.holds) {
    for (const OperationKind& kind : tables.operations) {
      if (kind.humidity_gate) result.blocked.push_back(kind.name);
    }
  }
  const auto causes = weighed_causes(tables.diagnosis, known, sure_margin);
  result.next = next_measurements(Supposing(tables.diagnosis, known, sure_margin), symptoms, causes, tables);
  for (const CauseShown& cause : causes) {
    if (symptoms.contains(cause.symptom)) result.causes.push_back(cause);
  }
  put_in_order_of_proposing(result.causes);
  result.verdict = verdict_words(result.causes);
  return result;
}

}  // namespace tailblock
