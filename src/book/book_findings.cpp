#include <algorithm>

#include "book/book.h"
#include "book/finding_rows.h"
#include "book/sha256.h"
#include "book/record_changes.h"

namespace tailblock {
namespace {

void require_points(const Finding& finding, std::size_t least, std::size_t most, const std::string& made) {
  const std::size_t count = finding.points.size();
  if (least <= count && count <= most) return;
  std::string line = "points: ";
  line += std::to_string(count);
  line += " do not make ";
  line += made;
  throw Refused(line);
}

void require_right_count(const Finding& finding) {
  constexpr std::size_t any = 1000;
  if (finding.shape == FindingShape::point) require_points(finding, 1, 1, "a point: it has one");
  if (finding.shape == FindingShape::line) require_points(finding, 2, any, "a line: it has two or more");
  if (finding.shape == FindingShape::area) require_points(finding, 3, any, "an area: it has three or more");
}

void require_known_kind(const TradeTables& tables, const Finding& finding) {
  const FindingKind* kind = tables.finding(finding.kind);
  if (kind == nullptr) throw Refused("kind: \"" + finding.kind + "\" is not in data/finding_kinds.csv");
  if (std::ranges::find(kind->places, finding.view) == kind->places.end()) {
    const std::string_view view = drawing_view_names[static_cast<std::size_t>(finding.view)];
    throw Refused("view: \"" + kind->words + "\" is not found on " + std::string(view));
  }
}

/// A known measure each, once, with a value that can be.
void require_extents(const TradeTables& tables, const std::vector<FindingExtent>& extents) {
  for (std::size_t k = 0; k < extents.size(); ++k) {
    const std::string where = "extents[" + std::to_string(k) + "].";
    const Measure* measure = tables.finding_measure(extents[k].measure);
    if (measure == nullptr) {
      throw Refused(where + "measure: \"" + extents[k].measure + "\" is not in data/finding_measures.csv");
    }
    const auto same = [&](const FindingExtent& other) { return other.measure == extents[k].measure; };
    if (std::ranges::count_if(extents, same) > 1) {
      throw Refused(where + "measure: " + measure->name + " comes twice");
    }
    require_within(where + extents[k].measure, in_mm(extents[k].value),
                   {measure->hard_low, measure->hard_high, measure->unit});
  }
}

void require_correctable(Session& session, const Finding& correction) {
  const auto old = record_of<Finding>(session, "supersedes", correction.supersedes, "findings_and_corrections");
  if (old.visit_id != correction.visit_id) {
    throw Refused("supersedes: finding " + std::to_string(old.id) + " is of another visit");
  }
  require_not_superseded("finding", old.id, old.superseded_by);
}

void require_earlier_finding(Session& session, const FindingChange& change) {
  const auto finding = record_of<Finding>(session, "finding_id", change.finding_id, "findings_and_corrections");
  const VisitPlace found = place_of(session, finding.visit_id), now = place_of(session, change.visit_id);
  const std::string number = std::to_string(finding.id);
  if (found.instrument != now.instrument) throw Refused("finding_id: finding " + number + " is of another instrument");
  if (!is_before(found, now)) throw Refused("finding_id: finding " + number + " is not of an earlier visit");
  require_not_superseded("finding", finding.id, finding.superseded_by);
}

void require_said_once(Session& session, const FindingChange& change) {
  if (change.supersedes != 0) {
    const auto old =
        record_of<FindingChange>(session, "supersedes", change.supersedes, "finding_changes_and_corrections");
    if (old.visit_id != change.visit_id || old.finding_id != change.finding_id) {
      throw Refused("supersedes: change " + std::to_string(old.id) + " is of another visit or another finding");
    }
    require_not_superseded("change", old.id, old.superseded_by);
    return;
  }
  const auto said = session.first<int>(
      "SELECT id FROM finding_changes_and_corrections WHERE visit_id = :visit AND finding_id = :finding "
      "AND superseded_by IS NULL",
      {cell(change.visit_id), cell(change.finding_id)});
  if (said) {
    throw Refused("finding_id: this visit has said what became of finding " + std::to_string(change.finding_id) +
                  "; supersede " + std::to_string(*said) + " to say otherwise");
  }
}

}  // namespace

RecordId Book::add(const Finding& finding) {
  require_valid(finding);
  if (finding.withdrawn && finding.supersedes == 0) throw Refused("withdrawn: only a correction withdraws a finding");
  require_right_count(finding);
  require_known_kind(store_->tables, finding);
  require_extents(store_->tables, finding.extents);
  return store_->change([&](Session& session) {
    require_kept(session, "visits", "visit_id", finding.visit_id);
    if (finding.supersedes != 0) require_correctable(session, finding);
    const RecordId id = insert_record(session, finding);
    int number = 0;
    for (const DrawingPoint& point : finding.points) {
      session.run("INSERT INTO finding_points (record_id, number, x_mm, y_mm) VALUES (:record, :number, :x, :y)",
                  {cell(id), cell(++number), cell(in_mm(point.x)), cell(in_mm(point.y))});
    }
    keep_parts(session, parts_of_finding, id, finding.extents, finding.photos);
    return id;
  });
}

RecordId Book::add(const FindingChange& change) {
  require_valid(change);
  require_extents(store_->tables, change.extents);
  return store_->change([&](Session& session) {
    require_kept(session, "visits", "visit_id", change.visit_id);
    require_earlier_finding(session, change);
    require_said_once(session, change);
    const RecordId id = insert_record(session, change);
    keep_parts(session, parts_of_change, id, change.extents, change.photos);
    return id;
  });
}

KeptPhoto Book::keep_photo(const PhotoToKeep& photo) {
  if (photo.whole.empty() || photo.thumbnail.empty()) throw Refused("photo: is empty");
  KeptPhoto kept{.id = 0, .sha256 = sha256(photo.whole), .width_px = photo.width_px, .height_px = photo.height_px};
  require_valid(kept);
  return store_->change([&](Session& session) {
    if (const auto already = session.first<int>("SELECT id FROM photos WHERE sha256 = :sha256", {cell(kept.sha256)})) {
      kept.id = *already;
      return kept;
    }
    kept.id = session
                  .first<int>(
                      "INSERT INTO photos (sha256, width_px, height_px, thumbnail, whole) VALUES (:sha256, :width, "
                      ":height, zeroblob(:thumbnail), zeroblob(:whole)) RETURNING id",
                      {cell(kept.sha256), cell(kept.width_px), cell(kept.height_px),
                       cell(static_cast<int>(photo.thumbnail.size())), cell(static_cast<int>(photo.whole.size()))})
                  .value();
    session.write_bytes("photos", "thumbnail", kept.id, photo.thumbnail);
    session.write_bytes("photos", "whole", kept.id, photo.whole);
    return kept;
  });
}

KeptPhoto Book::photo(RecordId id) const {
  return store_->look([&](Session& session) {
    auto found = select_records<KeptPhoto>(session, "photos AS record WHERE record.id = :id", {cell(id)});
    if (found.empty()) throw_missing("photo_id", id);
    return found.front();
  });
}

std::string Book::photo_bytes(RecordId id, PhotoSize size) const {
  return store_->look([&](Session& session) {
    require_kept(session, "photos", "photo_id", id);
    return session.read_bytes("photos", size == PhotoSize::whole ? "whole" : "thumbnail", id);
  });
}

}  // namespace tailblock
