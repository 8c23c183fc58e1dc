#include "repair/weighed_causes.h"

#include <algorithm>
#include <cmath>
#include <limits>

namespace tailblock {
namespace {

constexpr double endless = std::numeric_limits<double>::infinity();
/// A repeatability of nothing would make every margin endless.
constexpr double least_sd = 1e-9;

/// One reading against one line: from the nearest limit, in repeatabilities, positive where the line holds.
double margin_of(const EvidenceLine& line, const KnownValue& read) {
  const double over = read.value - line.from.value_or(-endless), under = line.to.value_or(endless) - read.value;
  return std::min(over, under) / std::max(read.sd, least_sd);
}

LineStands stands_at(const EvidenceLine& line, double margin, double sure_margin) {
  if (!(std::abs(margin) >= line.margin.value_or(sure_margin))) return LineStands::too_near;
  return margin >= 0 ? LineStands::for_it : LineStands::against_it;
}

LineStands stands_where(const std::optional<bool>& holds) {
  if (!holds) return LineStands::unread;
  return *holds ? LineStands::for_it : LineStands::against_it;
}

LineStands stands_by(CauseVerdict verdict) {
  return stands_where(verdict == CauseVerdict::open ? std::nullopt : std::optional(verdict == CauseVerdict::stands));
}

bool is_read(const EvidenceLine& line) { return line.of == EvidenceOf::reading || line.of == EvidenceOf::change; }

EvidenceShown weighed(const EvidenceLine& line, const KnownEvidence& known, double sure_margin) {
  EvidenceShown result;
  result.words = line.words;
  result.about = about_text(line);
  result.role = line.role;
  if (is_read(line)) {
    if (const auto read = known.value(line.of, line.about)) {
      result.value = read->value;
      result.margin_repeatability = margin_of(line, *read);
      result.stands = stands_at(line, *result.margin_repeatability, sure_margin);
    }
  } else if (line.of != EvidenceOf::cause) {
    result.stands = stands_where(known.holds(line.of, line.about));
  }
  return result;
}

struct Tally {
  int held = 0, failed = 0, undecided = 0;
  void add(LineStands stands) {
    ++(stands == LineStands::for_it ? held : stands == LineStands::against_it ? failed : undecided);
  }
};

/// Needs of one group are alternatives; a need without a group stands alone.
Tally tally_of_need(const Cause& cause, const std::vector<LineStands>& lines, std::size_t at) {
  const std::string& group = cause.evidence[at].group;
  Tally tally;
  for (std::size_t i = 0; i < lines.size(); ++i) {
    const EvidenceLine& line = cause.evidence[i];
    const bool together = i == at || (!group.empty() && line.role == EvidenceRole::needs && line.group == group);
    if (together) tally.add(lines[i]);
  }
  return tally;
}

CauseVerdict verdict_of(const Cause& cause, const std::vector<LineStands>& lines) {
  Tally counts, against;
  bool all_met = true, lost = false;
  for (std::size_t i = 0; i < lines.size(); ++i) {
    const EvidenceRole role = cause.evidence[i].role;
    if (role == EvidenceRole::counts) counts.add(lines[i]);
    if (role == EvidenceRole::against) against.add(lines[i]);
    if (role != EvidenceRole::needs) continue;
    const Tally need = tally_of_need(cause, lines, i);
    all_met = all_met && need.held > 0;
    lost = lost || (need.held == 0 && need.undecided == 0);
  }
  all_met = all_met && counts.held >= cause.counts_least && against.held == 0 && against.undecided == 0;
  lost = lost || against.held > 0 || counts.held + counts.undecided < cause.counts_least;
  return lost ? CauseVerdict::ruled_out : all_met ? CauseVerdict::stands : CauseVerdict::open;
}

std::size_t index_of(const DiagnosisTables& tables, std::string_view cause) {
  const auto found = std::ranges::find(tables.causes, cause, &Cause::id);
  return static_cast<std::size_t>(found - tables.causes.begin());
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
  std::vector<CauseShown> causes;
  causes.reserve(tables.causes.size());
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
    std::vector<LineStands> lines;
    for (const EvidenceLine& line : cause.evidence) {
      result.evidence.push_back(weighed(line, known, sure_margin));
      EvidenceShown& shown = result.evidence.back();
      if (line.of == EvidenceOf::cause) shown.stands = stands_by(causes[index_of(tables, line.about)].verdict);
      lines.push_back(shown.stands);
    }
    result.verdict = verdict_of(cause, lines);
    causes.push_back(std::move(result));
  }
  return causes;
}

Supposing::Supposing(const DiagnosisTables& tables, const KnownEvidence& known, double sure_margin)
    : tables_(tables), sure_margin_(sure_margin) {
  for (const CauseShown& cause : weighed_causes(tables, known, sure_margin)) {
    now_.push_back(cause.verdict);
    std::vector<LineStands>& lines = lines_.emplace_back();
    for (const EvidenceShown& shown : cause.evidence) lines.push_back(shown.stands);
  }
  for (const Cause& cause : tables.causes) {
    std::vector<std::size_t>& back = looks_back_.emplace_back();
    for (const EvidenceLine& line : cause.evidence) {
      back.push_back(line.of == EvidenceOf::cause ? index_of(tables, line.about) : 0);
    }
  }
}

CauseVerdicts Supposing::reading(const EvidenceLine& about, double value) const {
  constexpr double sure_sd = 1e-6;
  return verdicts({about.of, &about.about, {value, sure_sd}, true});
}

CauseVerdicts Supposing::answer(const EvidenceLine& about, bool holds) const {
  return verdicts({about.of, &about.about, {}, holds});
}

CauseVerdicts Supposing::verdicts(const Supposed& supposed) const {
  CauseVerdicts verdicts = now_;
  for (std::size_t c = 0; c < tables_.causes.size(); ++c) {
    const Cause& cause = tables_.causes[c];
    std::vector<LineStands> lines = lines_[c];
    bool otherwise = false;
    for (std::size_t i = 0; i < lines.size(); ++i) {
      const EvidenceLine& line = cause.evidence[i];
      if (line.of == EvidenceOf::cause) {
        lines[i] = stands_by(verdicts[looks_back_[c][i]]);
      } else if (line.of == supposed.of && line.about == *supposed.about) {
        lines[i] = is_read(line) ? stands_at(line, margin_of(line, supposed.value), sure_margin_)
                                 : stands_where(supposed.holds);
      }
      otherwise = otherwise || lines[i] != lines_[c][i];
    }
    if (otherwise) verdicts[c] = verdict_of(cause, lines);
  }
  return verdicts;
}

}  // namespace tailblock
