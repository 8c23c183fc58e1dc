#include "models/envelope_memo.h"

#include <algorithm>

#include "models/json.h"

namespace tailblock {
namespace {

constexpr std::size_t sets_remembered = 32;

}  // namespace

std::shared_ptr<const UnitEnvelopes> EnvelopeMemo::of(const EnvelopeRequest& request) {
  std::string key = to_json(request);
  {
    const std::lock_guard lock(guard_);
    const auto found = std::ranges::find(newest_first_, key, [](const auto& kept) { return kept.first; });
    if (found != newest_first_.end()) {
      newest_first_.splice(newest_first_.begin(), newest_first_, found);
      return newest_first_.front().second;
    }
  }
  auto envelopes = std::make_shared<const UnitEnvelopes>(unit_envelopes(request));
  const std::lock_guard lock(guard_);
  newest_first_.emplace_front(std::move(key), envelopes);
  if (newest_first_.size() > sets_remembered) newest_first_.pop_back();
  return envelopes;
}

}  // namespace tailblock
