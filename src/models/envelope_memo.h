#pragma once

#include <list>
#include <memory>
#include <mutex>
#include <string>
#include <utility>

#include "strings/envelope.h"

namespace tailblock {

/// Remembers the unit envelopes of the string sets asked for last. Envelopes do not depend on the set-up, so a slider
/// that moves a saddle finds them here; the answer is the same as computing them anew. Safe from several threads.
class EnvelopeMemo {
 public:
  [[nodiscard]] std::shared_ptr<const UnitEnvelopes> of(const EnvelopeRequest& request);

 private:
  std::mutex guard_;
  std::list<std::pair<std::string, std::shared_ptr<const UnitEnvelopes>>> newest_first_;
};

}  // namespace tailblock
