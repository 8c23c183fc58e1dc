#pragma once

#include <string>
#include <string_view>
#include <vector>

#include "book/changing_list.h"
#include "book/search_text.h"

namespace tailblock {

/// The owners or the homes by name, held in memory, so that a few letters find theirs among very many.
class NameList {
 public:
  /// `table` is owners or homes.
  explicit NameList(const std::string& table) : table_(table), list_(table) {}
  /// The ids of the first `most` whose names have words beginning so, by name.
  [[nodiscard]] std::vector<int> find(Session& session, std::string_view search, int most);

 private:
  struct Place {
    int id;
    Searched name;
    bool operator<(const Place& other) const;
  };
  [[nodiscard]] std::vector<Place> changed_places(Session& session, int since) const;

  std::string table_;
  ChangingList<Place> list_;
};

}  // namespace tailblock
