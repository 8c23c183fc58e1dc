#pragma once

#include <string>
#include <vector>

#include "book/finding_records.h"
#include "book/trade_tables.h"

namespace tailblock {

/// What a visit says of what earlier ones found, in sentences, the gravest first: what has grown, with its readings
/// then and now; what was repaired or is gone; what is as it was; what nobody has looked at yet; what is new.
[[nodiscard]] std::vector<std::string> what_changed(const Survey& survey, const TradeTables& tables);

}  // namespace tailblock
