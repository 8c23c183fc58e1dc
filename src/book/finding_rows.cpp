#include "book/finding_rows.h"

#include <tuple>

#include "book/store.h"

namespace tailblock {

void keep_parts(Session& session, const PartTables& tables, RecordId record, const std::vector<FindingExtent>& extents,
                const std::vector<FindingPhoto>& photos) {
  int number = 0;
  for (const FindingExtent& extent : extents) {
    session.run(
        "INSERT INTO " + tables.extents +
            " (record_id, number, measure, typed, value_mm) VALUES (:record, :number, :measure, :typed, :value)",
        {cell(record), cell(++number), cell(extent.measure), cell(extent.typed), cell(in_mm(extent.value))});
  }
  keep_photos_of(session, tables.photos, record, photos);
}

void keep_photos_of(Session& session, const std::string& table, RecordId record,
                    const std::vector<FindingPhoto>& photos) {
  int number = 0;
  for (const FindingPhoto& photo : photos) {
    require_kept(session, "photos", "photo_id", photo.photo_id);
    session.run("INSERT INTO " + table + " (record_id, number, photo_id) VALUES (:record, :number, :photo)",
                {cell(record), cell(++number), cell(photo.photo_id)});
  }
}

std::vector<FindingExtent> extents_of(Session& session, const PartTables& tables, RecordId record) {
  std::vector<FindingExtent> extents;
  session.each<std::string, std::string, double>(
      "SELECT measure, typed, value_mm FROM " + tables.extents + " WHERE record_id = :record ORDER BY number",
      {cell(record)}, [&](const std::string& measure, const std::string& typed, double value) {
        extents.push_back({.measure = measure, .typed = typed, .value = mm(value)});
      });
  return extents;
}

std::vector<FindingPhoto> photos_of(Session& session, const std::string& table, RecordId record) {
  std::vector<FindingPhoto> photos;
  session.each<int>("SELECT photo_id FROM " + table + " WHERE record_id = :record ORDER BY number",
                    {cell(record)}, [&](int photo) { photos.push_back({photo}); });
  return photos;
}

void require_not_superseded(const std::string& what, RecordId id, RecordId by) {
  if (by == 0) return;
  throw Refused("supersedes: " + what + " " + std::to_string(id) + " is already superseded by " + std::to_string(by));
}

VisitPlace place_of(Session& session, RecordId visit) {
  const auto found =
      session.rows<int, std::string>("SELECT instrument_id, date FROM visits WHERE id = :id", {cell(visit)});
  if (found.empty()) throw_missing("visit_id", visit);
  const auto& [instrument, date] = found.front();
  return {instrument, date, visit};
}

bool is_before(const VisitPlace& one, const VisitPlace& other) {
  return std::tie(one.date, one.id) < std::tie(other.date, other.id);
}

}  // namespace tailblock
