#pragma once

#include <optional>

#include "paper/letterhead.h"

namespace tailblock {

/// One sheet, cut in two: the owner takes the upper half, the lower is tied to the instrument. The instrument's half
/// has neither address nor telephone, since others see it.
struct ClaimTicket {
  PaperHead head;
  std::string number;  ///< large, to be read across the shop
  std::string owner, instrument;
  Date left_on;
  std::optional<Date> promised{};
  std::vector<std::string> came_with{};  ///< case, strap, capo
  std::string to_be_done{};
  std::string code{};  ///< what the code says when scanned: an address of the shop's page, or plain text
  std::vector<std::string> terms{};
};
void describe(FieldVisitor&, ClaimTicket&);

/// @throws Refused naming what is out of range, or empty and must not be.
[[nodiscard]] Document claim_ticket(const ClaimTicket& ticket);

}  // namespace tailblock
