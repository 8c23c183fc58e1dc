#pragma once

#include <string>
#include <vector>

#include "book/finding_records.h"
#include "book/session.h"

namespace tailblock {

/// Where what a record has several of is kept, in rows of their own: `finding_extents`, `finding_change_photos`.
struct PartTables {
  std::string extents, photos;
};
inline const PartTables parts_of_finding{"finding_extents", "finding_photos"};
inline const PartTables parts_of_change{"finding_change_extents", "finding_change_photos"};

void keep_parts(Session& session, const PartTables& tables, RecordId record, const std::vector<FindingExtent>& extents,
                const std::vector<FindingPhoto>& photos);
[[nodiscard]] std::vector<FindingExtent> extents_of(Session& session, const PartTables& tables, RecordId record);
void keep_photos_of(Session& session, const std::string& table, RecordId record,
                    const std::vector<FindingPhoto>& photos);
[[nodiscard]] std::vector<FindingPhoto> photos_of(Session& session, const std::string& table, RecordId record);

/// @throws Refused: `supersedes: finding 3 is already superseded by 5`.
void require_not_superseded(const std::string& what, RecordId id, RecordId by);

/// A visit as its instrument's story orders it: by day, then by number.
struct VisitPlace {
  RecordId instrument = 0;
  std::string date;
  RecordId id = 0;
};
/// @throws NotInBook
[[nodiscard]] VisitPlace place_of(Session& session, RecordId visit);
[[nodiscard]] bool is_before(const VisitPlace& one, const VisitPlace& other);

}  // namespace tailblock
