#include "book/name_list.h"

#include <tuple>

namespace tailblock {

bool NameList::Place::operator<(const Place& other) const {
  return std::tie(name.text, id) < std::tie(other.name.text, other.id);
}

std::vector<NameList::Place> NameList::changed_places(Session& session, int since) const {
  std::vector<Place> places;
  for (const auto& [id, name] : session.rows<int, std::string>(
           "SELECT record.id, record.name FROM list_changes AS change JOIN " + table_ +
               " AS record ON record.id = change.id WHERE change.list = '" + table_ + "' AND change.number > :since",
           {cell(since)})) {
    places.push_back({.id = id, .name = Searched({name})});
  }
  return places;
}

std::vector<int> NameList::find(Session& session, std::string_view search, int most) {
  const Wanted wanted(search);
  return list_.with_places(
      session, [&](int since) { return changed_places(session, since); },
      [&](const std::vector<Place>& places) {
        std::vector<int> ids;
        for (const Place& place : places) {
          if (static_cast<int>(ids.size()) == most) break;
          if (wanted.is_in(place.name)) ids.push_back(place.id);
        }
        return ids;
      });
}

}  // namespace tailblock
