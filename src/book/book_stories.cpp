#include <algorithm>

#include "book/book.h"
#include "book/record_changes.h"
#include "book/trade_tables.h"

namespace tailblock {
namespace {

void read_months(Session& session, Home& home) {
  for (auto* months : {&home.air.temperature_c, &home.air.relative_humidity, &home.air.dew_point_c}) months->clear();
  for (const auto& [temperature, humidity, dew_point] : session.rows<double, double, double>(
           "SELECT temperature_c, relative_humidity, dew_point_c FROM home_months WHERE home_id = :home ORDER BY month",
           {cell(home.id)})) {
    home.air.temperature_c.push_back(temperature);
    home.air.relative_humidity.push_back(humidity);
    home.air.dew_point_c.push_back(dew_point);
  }
}

Home home_of(Session& session, RecordId id) {
  Home home = record_of<Home>(session, "home_id", id);
  read_months(session, home);
  return home;
}

/// The view gives each reading the one that corrects it.
template <class Record>
constexpr std::string_view recorded_in = table_of<Record>;
template <>
constexpr std::string_view recorded_in<Reading> = "readings_and_corrections";

/// What was recorded at every visit of an instrument, oldest first.
template <class Record>
std::vector<Record> recorded_on(Session& session, RecordId instrument) {
  return select_records<Record>(session,
                                std::string(recorded_in<Record>) +
                                    " AS record JOIN visits ON visits.id = record.visit_id "
                                    "WHERE visits.instrument_id = :id ORDER BY record.id",
                                {cell(instrument)});
}

template <class Record>
std::vector<Record> recorded_at(Session& session, RecordId visit) {
  return select_records<Record>(
      session, std::string(recorded_in<Record>) + " AS record WHERE record.visit_id = :id ORDER BY record.id",
      {cell(visit)});
}

/// Gives each record to the visit it belongs to.
template <class Record>
void hand_out(std::vector<VisitStory>& visits, std::vector<Record> records, std::vector<Record> VisitStory::*part) {
  for (Record& record : records) {
    const auto visit = std::find_if(visits.begin(), visits.end(),
                                    [&](const VisitStory& story) { return story.visit.id == record.visit_id; });
    if (visit != visits.end()) ((*visit).*part).push_back(std::move(record));
  }
}

void know_kinds(const TradeTables& tables, std::vector<Intervention>& interventions) {
  for (Intervention& work : interventions) {
    const InterventionKind* kind = tables.intervention(work.kind);
    work.moves_relief = kind == nullptr || kind->moves_relief;
    work.moves_bridge = kind == nullptr || kind->moves_bridge;
  }
}

}  // namespace

std::vector<Owner> Book::owners() const {
  return store_->look([](Session& session) {
    return select_records<Owner>(session, "owners AS record ORDER BY record.name, record.id");
  });
}

std::vector<Home> Book::homes() const {
  return store_->look([](Session& session) {
    auto all = select_records<Home>(session, "homes AS record ORDER BY record.name, record.id");
    for (Home& home : all) read_months(session, home);
    return all;
  });
}

std::vector<Owner> Book::owners_named(const std::string& search, int most) const {
  require_within("most", most, {1, 200, ""});
  const auto ids = store_->look([&](Session& session) { return store_->owners.find(session, search, most); });
  return store_->look([&](Session& session) {
    std::vector<Owner> found;
    found.reserve(ids.size());
    for (const RecordId id : ids) found.push_back(record_of<Owner>(session, "owner_id", id));
    return found;
  });
}

std::vector<Home> Book::homes_named(const std::string& search, int most) const {
  require_within("most", most, {1, 200, ""});
  const auto ids = store_->look([&](Session& session) { return store_->homes.find(session, search, most); });
  return store_->look([&](Session& session) {
    std::vector<Home> found;
    found.reserve(ids.size());
    for (const RecordId id : ids) found.push_back(home_of(session, id));
    return found;
  });
}

Owner Book::owner(RecordId id) const {
  return store_->look([&](Session& session) { return record_of<Owner>(session, "owner_id", id); });
}

Home Book::home(RecordId id) const {
  return store_->look([&](Session& session) { return home_of(session, id); });
}

Instrument Book::instrument(RecordId id) const {
  return store_->look([&](Session& session) { return record_of<Instrument>(session, "instrument_id", id); });
}

Visit Book::visit(RecordId id) const {
  return store_->look([&](Session& session) { return record_of<Visit>(session, "visit_id", id); });
}

InstrumentPage Book::instruments(const InstrumentQuery& query) const {
  const auto found = store_->look([&](Session& session) { return store_->instruments.find(session, query); });
  // A second look, at a state no older: the list may have taken in an instrument that the first one does not see yet.
  return store_->look([&](Session& session) {
    return InstrumentPage{.lines = instrument_lines(session, found.ids),
                          .page = query.page,
                          .more = found.total > (static_cast<long long>(query.page) + 1) * query.per_page,
                          .total = found.total};
  });
}

InstrumentStory Book::story(RecordId id) const {
  return store_->look([&](Session& session) {
    InstrumentStory story;
    story.instrument = record_of<Instrument>(session, "instrument_id", id);
    story.owner = record_of<Owner>(session, "owner_id", story.instrument.owner_id);
    story.home = home_of(session, story.instrument.home_id);
    story.logged_days =
        session.first<int>("SELECT count(*) FROM air_days WHERE home_id = :home", {cell(story.home.id)}).value_or(0);
    for (Visit& visit : select_records<Visit>(
             session, "visits AS record WHERE record.instrument_id = :id ORDER BY record.date, record.id",
             {cell(id)})) {
      story.visits.push_back({.visit = std::move(visit), .readings = {}, .interventions = {}, .decisions = {}});
    }
    hand_out(story.visits, recorded_on<Reading>(session, id), &VisitStory::readings);
    hand_out(story.visits, recorded_on<Intervention>(session, id), &VisitStory::interventions);
    hand_out(story.visits, recorded_on<SaddleDecision>(session, id), &VisitStory::decisions);
    for (VisitStory& visit : story.visits) know_kinds(store_->tables, visit.interventions);
    return story;
  });
}

VisitStory Book::visit_story(RecordId id) const {
  return store_->look([&](Session& session) {
    VisitStory story{.visit = record_of<Visit>(session, "visit_id", id),
                     .readings = recorded_at<Reading>(session, id),
                     .interventions = recorded_at<Intervention>(session, id),
                     .decisions = recorded_at<SaddleDecision>(session, id)};
    know_kinds(store_->tables, story.interventions);
    return story;
  });
}

std::vector<LoggedDay> Book::air_log(RecordId home) const {
  constexpr Date first = Date(std::chrono::year(1900) / 1 / 1);
  constexpr Date last = Date(std::chrono::year(2199) / 12 / 31);
  return air_log(home, first, last);
}

std::vector<LoggedDay> Book::air_log(RecordId home, Date first, Date last) const {
  return store_->look([&](Session& session) {
    require_kept(session, "homes", "home_id", home);
    return select_records<LoggedDay>(session,
                                     "air_days AS record WHERE record.home_id = :home "
                                     "AND record.date BETWEEN :first AND :last ORDER BY record.date",
                                     {cell(home), cell(first), cell(last)});
  });
}

}  // namespace tailblock
