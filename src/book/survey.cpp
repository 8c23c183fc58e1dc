#include <algorithm>
#include <map>

#include "book/book.h"
#include "book/finding_rows.h"
#include "book/record_rows.h"
#include "book/store.h"
#include "book/survey_words.h"

namespace tailblock {
namespace {

/// Everything found on one instrument and said of it, with the visits it was found at.
struct AllFindings {
  std::map<RecordId, VisitPlace> visits;
  std::vector<Finding> findings;       ///< by number in the book
  std::vector<FindingChange> changes;  ///< by number in the book
};

std::string of_instrument(std::string_view view) {
  return std::string(view) +
         " AS record JOIN visits ON visits.id = record.visit_id WHERE visits.instrument_id = :id ORDER BY record.id";
}

AllFindings all_findings(Session& session, RecordId instrument) {
  AllFindings all;
  session.each<int, std::string>("SELECT id, date FROM visits WHERE instrument_id = :id", {cell(instrument)},
                                 [&](int id, const std::string& date) {
                                   all.visits[id] = {instrument, date, id};
                                 });
  all.findings = select_records<Finding>(session, of_instrument("findings_and_corrections"), {cell(instrument)});
  for (Finding& finding : all.findings) {
    session.each<double, double>("SELECT x_mm, y_mm FROM finding_points WHERE record_id = :record ORDER BY number",
                                 {cell(finding.id)}, [&](double x, double y) {
                                   finding.points.push_back({mm(x), mm(y)});
                                 });
    finding.extents = extents_of(session, parts_of_finding, finding.id);
    finding.photos = photos_of(session, parts_of_finding.photos, finding.id);
  }
  all.changes =
      select_records<FindingChange>(session, of_instrument("finding_changes_and_corrections"), {cell(instrument)});
  for (FindingChange& change : all.changes) {
    change.extents = extents_of(session, parts_of_change, change.id);
    change.photos = photos_of(session, parts_of_change.photos, change.id);
  }
  return all;
}

/// The first finding of each chain of corrections, by every finding of the chain.
std::map<RecordId, RecordId> first_of_each(const std::vector<Finding>& findings) {
  std::map<RecordId, RecordId> first;
  for (const Finding& finding : findings) {
    const auto corrected = first.find(finding.supersedes);
    first[finding.id] = corrected == first.end() ? finding.id : corrected->second;
  }
  return first;
}

bool ends_it(FindingState state) { return state == FindingState::repaired || state == FindingState::gone; }

/// What stands of everything found up to a visit, told as that visit knows it.
std::vector<FindingStory> stories_up_to(const AllFindings& all, const VisitPlace& now) {
  const auto first = first_of_each(all.findings);
  std::map<RecordId, int> numbers;
  for (const auto& [id, root] : first) {
    if (id == root) numbers[id] = static_cast<int>(numbers.size()) + 1;
  }
  std::vector<FindingStory> stories;
  for (const Finding& finding : all.findings) {
    const VisitPlace& found = all.visits.at(finding.visit_id);
    if (finding.superseded_by != 0 || finding.withdrawn || is_before(now, found)) continue;
    const RecordId root = first.at(finding.id);
    FindingStory story{.number = numbers.at(root),
                       .found_on = date_from_iso("date", found.date),
                       .finding = finding,
                       .changes = {},
                       .open = true};
    for (const FindingChange& change : all.changes) {
      const VisitPlace& said = all.visits.at(change.visit_id);
      if (change.superseded_by != 0 || first.at(change.finding_id) != root || is_before(now, said)) continue;
      story.changes.push_back({date_from_iso("date", said.date), change});
    }
    std::ranges::stable_sort(story.changes, is_before,
                             [&](const DatedChange& dated) { return all.visits.at(dated.change.visit_id); });
    story.open = story.changes.empty() || !ends_it(story.changes.back().change.state);
    stories.push_back(std::move(story));
  }
  std::ranges::sort(stories, {}, &FindingStory::number);
  return stories;
}

/// Whether it was still to be looked at when the visit began.
bool was_open(const FindingStory& story, const VisitPlace& now) {
  for (auto said = story.changes.rbegin(); said != story.changes.rend(); ++said) {
    if (said->change.visit_id != now.id) return !ends_it(said->change.state);
  }
  return true;
}

}  // namespace

Survey Book::survey(RecordId visit) const {
  return store_->look([&](Session& session) {
    const VisitPlace now = place_of(session, visit);
    const AllFindings all = all_findings(session, now.instrument);
    Survey survey{.visit_id = visit, .instrument_id = now.instrument, .date = date_from_iso("date", now.date)};
    const VisitPlace* before = nullptr;
    for (const auto& [id, place] : all.visits) {
      if (is_before(place, now) && (before == nullptr || is_before(*before, place))) before = &place;
    }
    if (before != nullptr) survey.visit_before = date_from_iso("date", before->date);
    for (FindingStory& story : stories_up_to(all, now)) {
      if (story.finding.visit_id == visit) {
        survey.found_now.push_back(std::move(story));
      } else if (was_open(story, now)) {
        survey.found_before.push_back(std::move(story));
      }
    }
    for (const Finding& finding : all.findings) {
      if (finding.visit_id == visit && finding.superseded_by != 0) survey.superseded.push_back(finding);
    }
    survey.what_changed = what_changed(survey, store_->tables);
    return survey;
  });
}

}  // namespace tailblock
