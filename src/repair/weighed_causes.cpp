#include "repair/weighed_causes.h"

#include <algorithm>
#include <cmath>
#include <limits>

namespace tailblock {
namespace {

constexpr double endless = std::numeric_limits<double>::infinity();
/// A repeatability of nothing would make every margin endless.
constexpr double least_sd = 1e-9;

EvidenceShown shown(const EvidenceLine& line) {
  EvidenceShown result;
  result.words = line.words;
  result.about = about_text(line);
  result.role = line.role;
  return result;
}

EvidenceShown weighed(const EvidenceLine& line, const KnownEvidence& known,
                      const std::map<std::string, CauseVerdict, std::less<>>& verdicts, double sure_margin) {
  EvidenceShown result = shown(line);
  if (line.of == EvidenceOf::reading || line.of == EvidenceOf::change) {
    const auto read = known.value(line.of, line.about);
    if (!read) return result;
    const double over = read->value - line.from.value_or(-endless), under = line.to.value_or(endless) - read->value;
    result.value = read->value;
    result.margin_repeatability = std::min(over, under) / std::max(read->sd, least_sd);
    const bool sure = std::abs(*result.margin_repeatability) >= line.margin.value_or(sure_margin);
    result.stands = !sure                               ? LineStands::too_near
                    : *result.margin_repeatability >= 0 ? LineStands::for_it
                                                        : LineStands::against_it;
    return result;
  }
  std::optional<bool> holds;
  if (line.of == EvidenceOf::cause) {
    const CauseVerdict verdict = verdicts.find(line.about)->second;
    if (verdict != CauseVerdict::open) holds = verdict == CauseVerdict::stands;
  } else {
    holds = known.holds(line.of, line.about);
  }
  if (holds) result.stands = *holds ? LineStands::for_it : LineStands::against_it;
  return result;
}

struct Tally {
  int held = 0, failed = 0, undecided = 0;
  void add(LineStands stands) {
    ++(stands == LineStands::for_it ? held : stands == LineStands::against_it ? failed : undecided);
  }
};

CauseVerdict verdict_of(const Cause& cause, const std::vector<EvidenceShown>& evidence) {
  std::map<std::string, Tally> groups;  // a need without a group stands alone
  Tally counts, against;
  for (std::size_t i = 0; i < evidence.size(); ++i) {
    const EvidenceLine& line = cause.evidence[i];
    const LineStands stands = evidence[i].stands;
    if (line.role == EvidenceRole::needs) {
      groups[line.group.empty() ? "line " + std::to_string(i) : line.group].add(stands);
    } else if (line.role == EvidenceRole::counts) {
      counts.add(stands);
    } else if (line.role == EvidenceRole::against) {
      against.add(stands);
    }
  }
  bool all_met = counts.held >= cause.counts_least && against.held == 0 && against.undecided == 0;
  bool lost = against.held > 0 || counts.held + counts.undecided < cause.counts_least;
  for (const auto& [group, tally] : groups) {
    all_met = all_met && tally.held > 0;
    lost = lost || (tally.held == 0 && tally.undecided == 0);
  }
  return lost ? CauseVerdict::ruled_out : all_met ? CauseVerdict::stands : CauseVerdict::open;
}

}  // namespace

std::string about_text(const EvidenceLine& line) {
  switch (line.of) {
    case EvidenceOf::reading:
      return line.about;
    case EvidenceOf::change:
      return "change:" + line.about;
    case EvidenceOf::finding:
      return "finding:" + line.about;
    case EvidenceOf::fact:
      return "fact:" + line.about;
    case EvidenceOf::cause:
      return "cause:" + line.about;
  }
  return line.about;
}

std::vector<CauseShown> weighed_causes(const DiagnosisTables& tables, const KnownEvidence& known, double sure_margin) {
  std::map<std::string, CauseVerdict, std::less<>> verdicts;
  std::vector<CauseShown> causes;
  for (const Cause& cause : tables.causes) {
    CauseShown result{.cause = cause.id,
                      .name = cause.name,
                      .symptom = cause.symptom,
                      .kind = cause.kind,
                      .verdict = CauseVerdict::open,
                      .evidence = {},
                      .settled_by = cause.settles_how,
                      .remedies = cause.remedies,
                      .wait = cause.wait,
                      .says = cause.says};
    for (const EvidenceLine& line : cause.evidence) {
      result.evidence.push_back(weighed(line, known, verdicts, sure_margin));
    }
    result.verdict = verdict_of(cause, result.evidence);
    verdicts[cause.id] = result.verdict;
    causes.push_back(std::move(result));
  }
  return causes;
}

}  // namespace tailblock
