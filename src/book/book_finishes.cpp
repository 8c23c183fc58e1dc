#include <algorithm>

#include "book/book.h"
#include "book/finding_rows.h"
#include "book/record_changes.h"
#include "book/search_text.h"

namespace tailblock {
namespace {

const std::string trial_photos = "finish_trial_photos";
constexpr std::string_view standing_or_not = "finish_trials_and_corrections";

void require_correctable(Session& session, const FinishTrial& correction) {
  const auto old = record_of<FinishTrial>(session, "supersedes", correction.supersedes, standing_or_not);
  if (old.visit_id != correction.visit_id) {
    throw Refused("supersedes: trial " + std::to_string(old.id) + " is of another visit");
  }
  require_not_superseded("trial", old.id, old.superseded_by);
}

/// Those that are shown, each by its latest word, in the order in which they were first kept.
std::vector<VisitPhoto> shown_photos(Session& session, RecordId visit) {
  std::vector<VisitPhoto> shown;
  for (VisitPhoto& photo : select_records<VisitPhoto>(
           session, "visit_photos AS record WHERE record.visit_id = :visit ORDER BY record.id", {cell(visit)})) {
    const auto same = std::ranges::find(shown, photo.photo_id, &VisitPhoto::photo_id);
    if (same == shown.end()) {
      shown.push_back(std::move(photo));
    } else {
      *same = std::move(photo);
    }
  }
  std::erase_if(shown, &VisitPhoto::left_out);
  return shown;
}

FinishTrialStory story_of(Session& session, RecordId id) {
  FinishTrialStory story{.trial = record_of<FinishTrial>(session, "trial_id", id, standing_or_not)};
  story.trial.photos = photos_of(session, trial_photos, id);
  session.each<int, std::string>(
      "SELECT instruments.id, instruments.name FROM visits JOIN instruments ON instruments.id = visits.instrument_id "
      "WHERE visits.id = :visit",
      {cell(story.trial.visit_id)}, [&](int instrument, const std::string& name) {
        story.instrument_id = instrument;
        story.instrument = name;
      });
  for (RecordId before = story.trial.supersedes; before != 0;) {
    auto old = record_of<FinishTrial>(session, "trial_id", before, standing_or_not);
    old.photos = photos_of(session, trial_photos, before);
    before = old.supersedes;
    story.earlier.push_back(std::move(old));
  }
  return story;
}

/// Those that stand, the newest first, each with the words it is looked for by.
constexpr const char* standing_trials =
    "SELECT trial.id, trial.verdict, instruments.id, instruments.name, trial.aim || ' ' || trial.carrier || ' ' || "
    "trial.mix || ' ' || trial.dilution || ' ' || trial.substrate || ' ' || trial.application || ' ' || trial.result "
    "|| ' ' || trial.note || ' ' || trial.kind FROM finish_trials_and_corrections AS trial "
    "JOIN visits ON visits.id = trial.visit_id JOIN instruments ON instruments.id = visits.instrument_id "
    "WHERE trial.superseded_by IS NULL AND trial.withdrawn = 0 ORDER BY trial.day DESC, trial.id DESC";

}  // namespace

RecordId Book::add(const VisitPhoto& photo) {
  require_valid(photo);
  return store_->change([&](Session& session) {
    require_kept(session, "visits", "visit_id", photo.visit_id);
    require_kept(session, "photos", "photo_id", photo.photo_id);
    const std::vector<VisitPhoto> shown = shown_photos(session, photo.visit_id);
    const bool one_more = !photo.left_out && std::ranges::find(shown, photo.photo_id, &VisitPhoto::photo_id) == shown.end();
    if (one_more && shown.size() >= most_visit_photos) {
      throw Refused("photo_id: a visit shows at most " + std::to_string(most_visit_photos) +
                    " photos of its own; leave one out first");
    }
    return insert_record(session, photo);
  });
}

std::vector<VisitPhoto> Book::visit_photos(RecordId visit) const {
  return store_->look([&](Session& session) {
    require_kept(session, "visits", "visit_id", visit);
    return shown_photos(session, visit);
  });
}

RecordId Book::add(const FinishTrial& trial) {
  require_valid(trial);
  if (trial.withdrawn && trial.supersedes == 0) throw Refused("withdrawn: only a correction withdraws a trial");
  require_text("mix", trial.mix);
  require_text("substrate", trial.substrate);
  return store_->change([&](Session& session) {
    require_kept(session, "visits", "visit_id", trial.visit_id);
    if (trial.supersedes != 0) require_correctable(session, trial);
    const RecordId id = insert_record(session, trial);
    keep_photos_of(session, trial_photos, id, trial.photos);
    return id;
  });
}

FinishTrialPage Book::finish_trials(const FinishTrialQuery& query) const {
  require_within("page", query.page, {0, 1000000, ""});
  require_within("per_page", query.per_page, {1, 200, ""});
  const Wanted wanted(query.search);
  const long long first = static_cast<long long>(query.page) * query.per_page;
  return store_->look([&](Session& session) {
    if (query.instrument_id != 0) require_kept(session, "instruments", "instrument_id", query.instrument_id);
    FinishTrialPage page{.trials = {}, .page = query.page};
    std::vector<RecordId> ids;
    session.each<int, std::string, int, std::string, std::string>(
        standing_trials, {},
        [&](int id, const std::string& verdict, int instrument, const std::string& name, const std::string& words) {
          if (query.instrument_id != 0 && query.instrument_id != instrument) return;
          if (query.verdict && trial_verdict_names[static_cast<std::size_t>(*query.verdict)] != verdict) return;
          if (!query.search.empty() && !wanted.is_in(Searched({name, words}))) return;
          if (first <= page.total && page.total < first + query.per_page) ids.push_back(id);
          ++page.total;
        });
    for (const RecordId id : ids) page.trials.push_back(story_of(session, id));
    page.more = page.total > first + query.per_page;
    return page;
  });
}

}  // namespace tailblock
