#pragma once

#include <algorithm>
#include <iterator>
#include <mutex>
#include <optional>
#include <shared_mutex>
#include <string>
#include <unordered_set>
#include <utility>
#include <vector>

#include "book/session.h"

namespace tailblock {

/// A list held in memory in the order of its `Place`s (each with an `id` and `<`), which takes in what changed in the
/// book since it last looked: the table list_changes numbers every change, whoever made it. Safe to call from several
/// threads.
template <class Place>
class ChangingList {
 public:
  explicit ChangingList(std::string list) : list_(std::move(list)) {}

  /// Calls `look(places)` once they are as the session sees the book, or newer. `changed(since)` gives the places of
  /// the records whose change has a number above `since`.
  template <class Changed, class Look>
  auto with_places(Session& session, Changed changed, Look look) {
    {
      const std::unique_lock changing(guard_);
      take_in_changes(session, changed);
    }
    const std::shared_lock looking(guard_);
    return look(std::as_const(places_));
  }

 private:
  template <class Changed>
  void take_in_changes(Session& session, Changed changed) {
    const int newest =
        session.first<std::optional<int>>("SELECT max(number) FROM list_changes WHERE list = :list", {cell(list_)})
            .value()
            .value_or(0);
    if (newest <= newest_) return;
    std::vector<Place> places = changed(newest_);
    std::sort(places.begin(), places.end());
    std::unordered_set<int> ids;
    for (const Place& place : places) ids.insert(place.id);
    std::erase_if(places_, [&](const Place& place) { return ids.contains(place.id); });
    const auto middle = static_cast<std::ptrdiff_t>(places_.size());
    // Copied, not moved, so that the texts of a long list lie in memory in the order in which they are read.
    places_.insert(places_.end(), places.begin(), places.end());
    std::inplace_merge(places_.begin(), places_.begin() + middle, places_.end());
    newest_ = newest;
  }

  std::string list_;
  std::shared_mutex guard_;
  int newest_ = 0;
  std::vector<Place> places_;
};

}  // namespace tailblock
