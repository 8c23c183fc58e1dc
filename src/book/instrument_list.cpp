#include "book/instrument_list.h"

#include <algorithm>
#include <tuple>

#include "book/record_rows.h"

namespace tailblock {
namespace {

template <class Enum>
Enum enum_named(std::string_view field, const std::string& name, std::span<const std::string_view> names) {
  const auto found = std::find(names.begin(), names.end(), name);
  if (found == names.end()) throw Refused(std::string(field) + ": \"" + name + "\" is not known");
  return static_cast<Enum>(found - names.begin());
}

/// The newest standing reading of a measure: of the newest visit that has one, as left before as found.
std::string newest_reading(const std::string& measure) {
  return "(SELECT reading.value FROM visits AS v JOIN readings AS reading ON reading.visit_id = v.id "
         "WHERE v.instrument_id = i.id AND reading.measure = '" +
         measure +
         "' AND NOT EXISTS (SELECT 1 FROM readings AS correction WHERE correction.supersedes = reading.id) "
         "ORDER BY v.date DESC, v.id DESC, CASE reading.state WHEN 'as_left' THEN 0 ELSE 1 END, reading.id DESC LIMIT "
         "1)";
}

}  // namespace

bool InstrumentList::Place::operator<(const Place& other) const {
  return std::tie(other.last_visit, searched.text, id) < std::tie(last_visit, other.searched.text, other.id);
}

std::vector<InstrumentList::Place> InstrumentList::changed_places(Session& session, int since) {
  using Text = std::string;
  std::vector<Place> places;
  session.each<int, int, std::optional<Date>, Text, Text, Text, Text, Text, Text>(
      "SELECT i.id, i.home_id, (SELECT max(date) FROM visits WHERE instrument_id = i.id), i.body_size, i.slot, "
      "i.name, i.made, o.name, h.name "
      "FROM list_changes AS change JOIN instruments AS i ON i.id = change.id "
      "JOIN owners AS o ON o.id = i.owner_id JOIN homes AS h ON h.id = i.home_id "
      "WHERE change.list = 'instruments' AND change.number > :since",
      {cell(since)},
      [&](RecordId id, RecordId home_id, const std::optional<Date>& last_visit, const Text& body_size, const Text& slot,
          const Text& name, const Text& made, const Text& owner, const Text& home) {
        places.push_back({.id = id,
                          .home_id = home_id,
                          .last_visit = last_visit ? static_cast<int>(last_visit->time_since_epoch().count()) : never,
                          .body_size = enum_named<BodySize>("body_size", body_size, body_size_names),
                          .slot = enum_named<SaddleSlot>("slot", slot, saddle_slot_names),
                          .searched = Searched({name, made, owner, home})});
      });
  return places;
}

InstrumentList::Found InstrumentList::find(Session& session, const InstrumentQuery& query) {
  require_within("page", query.page, {0, 1000000, ""});
  require_within("per_page", query.per_page, {1, 200, ""});
  const Wanted wanted(query.search);
  const long long first = static_cast<long long>(query.page) * query.per_page;
  return list_.with_places(
      session, [&](int since) { return changed_places(session, since); },
      [&](const std::vector<Place>& places) {
        Found found;
        for (const Place& place : places) {
          if (query.body_size && place.body_size != *query.body_size) continue;
          if (query.slot && place.slot != *query.slot) continue;
          if (query.home_id != 0 && place.home_id != query.home_id) continue;
          if (!wanted.is_in(place.searched)) continue;
          if (first <= found.total && found.total < first + query.per_page) found.ids.push_back(place.id);
          ++found.total;
        }
        return found;
      });
}

std::vector<InstrumentLine> instrument_lines(Session& session, const std::vector<RecordId>& ids) {
  static const std::string from =
      "(SELECT i.id, i.name, o.name AS owner, h.name AS home, i.body_size, i.bracing, i.slot, "
      "(SELECT count(*) FROM visits WHERE instrument_id = i.id) AS visits, "
      "(SELECT max(date) FROM visits WHERE instrument_id = i.id) AS last_visit, " +
      newest_reading("action12_bass") + " AS last_action12_bass_mm, " + newest_reading("action12_treble") +
      " AS last_action12_treble_mm "
      "FROM instruments AS i JOIN owners AS o ON o.id = i.owner_id JOIN homes AS h ON h.id = i.home_id "
      "WHERE i.id = :id) AS record";
  std::vector<InstrumentLine> lines;
  for (const RecordId id : ids) {
    for (InstrumentLine& line : select_records<InstrumentLine>(session, from, {cell(id)})) {
      lines.push_back(std::move(line));
    }
  }
  return lines;
}

}  // namespace tailblock
