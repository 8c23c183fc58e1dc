#pragma once

#include <functional>
#include <optional>
#include <string>
#include <vector>

#include "repair/diagnose.h"

namespace tailblock {

/// What is known of the things evidence looks at.
struct KnownEvidence {
  std::function<std::optional<KnownValue>(EvidenceOf of, const std::string& about)> value;  ///< readings and changes
  std::function<std::optional<bool>(EvidenceOf of, const std::string& about)> holds;        ///< findings and facts
};

/// `fact:strings_old`, as the table writes it.
[[nodiscard]] std::string about_text(const EvidenceLine& line);

/// How each cause stands, in the order of the table.
using CauseVerdicts = std::vector<CauseVerdict>;

/// The verdicts with one thing more known, when all that is not about it stands as before. Only causes that look at it,
/// or back at such a cause, are weighed again.
class Supposing {
 public:
  /// The tables outlive this.
  Supposing(const DiagnosisTables& tables, const KnownEvidence& known, double sure_margin);

  /// @param about a reading or a change, with the value it may come out at.
  [[nodiscard]] CauseVerdicts reading(const EvidenceLine& about, double value) const;
  /// @param about a finding or a fact, and whether it may hold.
  [[nodiscard]] CauseVerdicts answer(const EvidenceLine& about, bool holds) const;

 private:
  struct Supposed {
    EvidenceOf of;
    const std::string* about;
    KnownValue value;
    bool holds;
  };
  [[nodiscard]] CauseVerdicts verdicts(const Supposed& supposed) const;

  const DiagnosisTables& tables_;
  double sure_margin_;
  std::vector<std::vector<LineStands>> lines_;  ///< as known now, a cause each
  CauseVerdicts now_;
  std::vector<std::vector<std::size_t>> looks_back_;  ///< a line each, where it is about a cause: which
};

/// Weighs every cause in the order of the table, since evidence may look back at causes before.
[[nodiscard]] std::vector<CauseShown> weighed_causes(const DiagnosisTables& tables, const KnownEvidence& known,
                                                     double sure_margin);

}  // namespace tailblock
