#pragma once

#include <functional>
#include <map>
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

/// Weighs every cause in the order of the table, since evidence may look back at causes before.
[[nodiscard]] std::vector<CauseShown> weighed_causes(const DiagnosisTables& tables, const KnownEvidence& known,
                                                     double sure_margin);

}  // namespace tailblock
