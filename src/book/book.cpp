#include "book/book.h"

#include <algorithm>

#include "book/migrations.h"
#include "book/record_rows.h"
#include "book/store.h"
#include "setup/saddle.h"

namespace tailblock {
namespace {

void require_text(std::string_view field, const std::string& text) {
  if (text.empty()) throw Refused(std::string(field) + ": is empty");
}

void require_kept(Session& session, std::string_view table, std::string_view field, RecordId id) {
  if (!session.first<int>("SELECT 1 FROM " + std::string(table) + " WHERE id = :id", {cell(id)})) {
    throw_missing(field, id);
  }
}

template <class Record>
RecordId insert_or_update(Session& session, std::string_view table, std::string_view field, const Record& record) {
  if (record.id == 0) return insert_record(session, table, record);
  if (!update_record(session, table, record)) throw_missing(field, record.id);
  return record.id;
}

}  // namespace

Book::Book(const std::filesystem::path& file, TradeTables tables)
    : store_(std::make_unique<Store>(file, std::move(tables))) {}
Book::~Book() = default;

int Book::schema_number() const {
  return store_->look([](Session& session) { return applied_number(session); });
}

std::string Book::setting(const std::string& name) const {
  return store_->look([&](Session& session) {
    return session.first<std::string>("SELECT value FROM settings WHERE name = :name", {cell(name)}).value_or("");
  });
}

void Book::keep_setting(const std::string& name, const std::string& value) {
  require_text("name", name);
  store_->change([&](Session& session) {
    return session.run(
        "INSERT INTO settings (name, value) VALUES (:name, :value) "
        "ON CONFLICT (name) DO UPDATE SET value = excluded.value",
        {cell(name), cell(value)});
  });
}

RecordId Book::keep(const Owner& owner) {
  require_valid(owner);
  require_text("name", owner.name);
  return store_->change([&](Session& session) { return insert_or_update(session, "owners", "owner_id", owner); });
}

RecordId Book::keep(const Home& home) {
  require_valid(home);
  require_text("name", home.name);
  if (!home.air.log.empty()) throw Refused("air.log: logged days are kept by themselves, not with the home");
  return store_->change([&](Session& session) {
    const RecordId id = insert_or_update(session, "homes", "home_id", home);
    session.run("DELETE FROM home_months WHERE home_id = :home", {cell(id)});
    for (int month = 1; month <= 12; ++month) {
      const auto at = static_cast<std::size_t>(month - 1);
      session.run(
          "INSERT INTO home_months (home_id, month, temperature_c, relative_humidity, dew_point_c) "
          "VALUES (:home, :month, :temperature, :humidity, :dew_point)",
          {cell(id), cell(month), cell(home.air.temperature_c[at]), cell(home.air.relative_humidity[at]),
           cell(home.air.dew_point_c[at])});
    }
    return id;
  });
}

RecordId Book::keep(const Instrument& instrument) {
  require_valid(instrument);
  require_text("name", instrument.name);
  return store_->change([&](Session& session) {
    require_kept(session, "owners", "owner_id", instrument.owner_id);
    require_kept(session, "homes", "home_id", instrument.home_id);
    return insert_or_update(session, "instruments", "instrument_id", instrument);
  });
}

RecordId Book::keep(const Visit& visit) {
  require_valid(visit);
  return store_->change([&](Session& session) {
    require_kept(session, "instruments", "instrument_id", visit.instrument_id);
    return insert_or_update(session, "visits", "visit_id", visit);
  });
}

RecordId Book::add(const Intervention& given) {
  require_valid(given);
  Intervention intervention = given;
  const InterventionKind* kind = store_->tables.intervention(intervention.kind);
  if (kind == nullptr) throw Refused("kind: \"" + intervention.kind + "\" is not in data/interventions.csv");
  if (!intervention.change_sd) intervention.change_sd = mm(kind->change_sd_mm);
  return store_->change([&](Session& session) {
    require_kept(session, "visits", "visit_id", intervention.visit_id);
    return insert_record(session, "interventions", intervention);
  });
}

RecordId Book::add(const SaddleDecision& decision) {
  require_valid(decision);
  if (std::find(saddle_choice_names.begin(), saddle_choice_names.end(), decision.choice) == saddle_choice_names.end()) {
    throw Refused("choice: \"" + decision.choice + "\" is not a saddle choice");
  }
  return store_->change([&](Session& session) {
    require_kept(session, "visits", "visit_id", decision.visit_id);
    return insert_record(session, "saddle_decisions", decision);
  });
}

namespace {

/// The reading as it will be kept: known measure and gauge, a value that can be, the gauge's own spread where none is
/// given.
Reading ready_to_keep(const TradeTables& tables, Reading reading) {
  require_valid(reading);
  const Measure* measure = tables.measure(reading.measure);
  if (measure == nullptr) throw Refused("measure: \"" + reading.measure + "\" is not in data/measures.csv");
  const Gauge* gauge = tables.gauge(reading.gauge);
  if (gauge == nullptr) throw Refused("gauge: \"" + reading.gauge + "\" is not in data/gauges.csv");
  if (gauge->unit != measure->unit) {
    throw Refused("gauge: " + gauge->name + " reads " + gauge->unit + ", " + measure->name + " is in " + measure->unit);
  }
  require_within(reading.measure, reading.value, {measure->hard_low, measure->hard_high, measure->unit});
  if (reading.gauge_sd == 0) reading.gauge_sd = gauge->sd;
  return reading;
}

void require_correctable(Session& session, const Reading& correction) {
  const auto old = select_records<Reading>(session, "readings_and_corrections AS record WHERE record.id = :id",
                                           {cell(correction.supersedes)});
  if (old.empty()) throw_missing("supersedes", correction.supersedes);
  if (old.front().visit_id != correction.visit_id || old.front().measure != correction.measure) {
    throw Refused("supersedes: reading " + std::to_string(correction.supersedes) +
                  " is of another visit or another measure");
  }
  if (old.front().superseded_by != 0) {
    throw Refused("supersedes: reading " + std::to_string(correction.supersedes) + " is already superseded by " +
                  std::to_string(old.front().superseded_by));
  }
}

}  // namespace

std::vector<RecordId> Book::add(const std::vector<Reading>& readings) {
  std::vector<Reading> ready;
  for (const Reading& reading : readings) ready.push_back(ready_to_keep(store_->tables, reading));
  return store_->change([&](Session& session) {
    std::vector<RecordId> ids;
    for (const Reading& reading : ready) {
      require_kept(session, "visits", "visit_id", reading.visit_id);
      if (reading.supersedes != 0) require_correctable(session, reading);
      ids.push_back(insert_record(session, "readings", reading));
    }
    return ids;
  });
}

Book::LogKept Book::keep_air_log(RecordId home, const std::vector<LoggedDay>& days, bool replace) {
  for (const LoggedDay& day : days) require_valid(day);
  const std::string sql =
      std::string(
          "INSERT INTO air_days (home_id, date, temperature_c, relative_humidity) "
          "VALUES (:home, :date, :temperature, :humidity) ON CONFLICT (home_id, date) ") +
      (replace ? "DO UPDATE SET temperature_c = excluded.temperature_c, relative_humidity = excluded.relative_humidity"
               : "DO NOTHING");
  return store_->change([&](Session& session) {
    require_kept(session, "homes", "home_id", home);
    const auto count = [&] {
      return session.first<int>("SELECT count(*) FROM air_days WHERE home_id = :home", {cell(home)}).value_or(0);
    };
    const int before = count();
    for (const LoggedDay& day : days) {
      session.run(sql, {cell(home), cell(day.date), cell(day.temperature_c), cell(day.relative_humidity)});
    }
    const int added = count() - before;
    return LogKept{.added = added, .already_there = static_cast<int>(days.size()) - added};
  });
}

std::vector<Owner> Book::owners() const {
  return store_->look([](Session& session) {
    return select_records<Owner>(session, "owners AS record ORDER BY record.name, record.id");
  });
}

namespace {

/// Twelve months of each home, in the order of the homes given, which is that of their ids where there are several.
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

template <class Record>
Record only(std::vector<Record> found, std::string_view field, RecordId id) {
  if (found.empty()) throw_missing(field, id);
  return std::move(found.front());
}

Owner owner_of(Session& session, RecordId id) {
  return only(select_records<Owner>(session, "owners AS record WHERE record.id = :id", {cell(id)}), "owner_id", id);
}

Home home_of(Session& session, RecordId id) {
  Home home = only(select_records<Home>(session, "homes AS record WHERE record.id = :id", {cell(id)}), "home_id", id);
  read_months(session, home);
  return home;
}

Instrument instrument_of(Session& session, RecordId id) {
  return only(select_records<Instrument>(session, "instruments AS record WHERE record.id = :id", {cell(id)}),
              "instrument_id", id);
}

/// Gives each record to the visit it belongs to; both are ordered by visit.
template <class Record>
void hand_out(std::vector<VisitStory>& visits, std::vector<Record> records, std::vector<Record> VisitStory::*part) {
  for (Record& record : records) {
    for (VisitStory& story : visits) {
      if (story.visit.id == record.visit_id) (story.*part).push_back(std::move(record));
    }
  }
}

}  // namespace

std::vector<Home> Book::homes() const {
  return store_->look([](Session& session) {
    auto all = select_records<Home>(session, "homes AS record ORDER BY record.name, record.id");
    for (Home& home : all) read_months(session, home);
    return all;
  });
}

Owner Book::owner(RecordId id) const {
  return store_->look([&](Session& session) { return owner_of(session, id); });
}

Home Book::home(RecordId id) const {
  return store_->look([&](Session& session) { return home_of(session, id); });
}

Instrument Book::instrument(RecordId id) const {
  return store_->look([&](Session& session) { return instrument_of(session, id); });
}

Visit Book::visit(RecordId id) const {
  return store_->look([&](Session& session) {
    return only(select_records<Visit>(session, "visits AS record WHERE record.id = :id", {cell(id)}), "visit_id", id);
  });
}

InstrumentStory Book::story(RecordId id) const {
  return store_->look([&](Session& session) {
    InstrumentStory story;
    story.instrument = instrument_of(session, id);
    story.owner = owner_of(session, story.instrument.owner_id);
    story.home = home_of(session, story.instrument.home_id);
    story.logged_days =
        session.first<int>("SELECT count(*) FROM air_days WHERE home_id = :home", {cell(story.home.id)}).value_or(0);
    for (Visit& visit : select_records<Visit>(
             session, "visits AS record WHERE record.instrument_id = :id ORDER BY record.date, record.id",
             {cell(id)})) {
      story.visits.push_back({.visit = std::move(visit), .readings = {}, .interventions = {}, .decisions = {}});
    }
    const auto of_this = [](const std::string& table) {
      return table +
             " AS record JOIN visits ON visits.id = record.visit_id WHERE visits.instrument_id = :id ORDER BY "
             "record.id";
    };
    hand_out(story.visits, select_records<Reading>(session, of_this("readings_and_corrections"), {cell(id)}),
             &VisitStory::readings);
    hand_out(story.visits, select_records<Intervention>(session, of_this("interventions"), {cell(id)}),
             &VisitStory::interventions);
    hand_out(story.visits, select_records<SaddleDecision>(session, of_this("saddle_decisions"), {cell(id)}),
             &VisitStory::decisions);
    return story;
  });
}

VisitStory Book::visit_story(RecordId id) const {
  return store_->look([&](Session& session) {
    const auto of_this = [](const std::string& table) {
      return table + " AS record WHERE record.visit_id = :id ORDER BY record.id";
    };
    VisitStory story;
    story.visit =
        only(select_records<Visit>(session, "visits AS record WHERE record.id = :id", {cell(id)}), "visit_id", id);
    story.readings = select_records<Reading>(session, of_this("readings_and_corrections"), {cell(id)});
    story.interventions = select_records<Intervention>(session, of_this("interventions"), {cell(id)});
    story.decisions = select_records<SaddleDecision>(session, of_this("saddle_decisions"), {cell(id)});
    return story;
  });
}

std::vector<LoggedDay> Book::air_log(RecordId home, Date first, Date last) const {
  return store_->look([&](Session& session) {
    require_kept(session, "homes", "home_id", home);
    return select_records<LoggedDay>(
        session,
        "air_days AS record WHERE record.home_id = :home AND record.date BETWEEN :first AND "
        ":last ORDER BY record.date",
        {cell(home), cell(first), cell(last)});
  });
}

void Book::back_up_to(const std::filesystem::path& copy) const {
  Session session(store_->file, Session::May::read);
  session.copy_to(copy);
}

InstrumentPage Book::instruments(const InstrumentQuery& query) const {
  require_within("per_page", query.per_page, {1, 200, ""});
  require_within("page", query.page, {0, 1000000, ""});
  return store_->look([&](Session& session) {
    InstrumentPage page;
    page.page = query.page;
    const std::string from =
        "(SELECT i.id, i.name, o.name AS owner, h.name AS home, i.body_size, i.bracing, i.slot, "
        "(SELECT count(*) FROM visits WHERE instrument_id = i.id) AS visits, "
        "(SELECT max(date) FROM visits WHERE instrument_id = i.id) AS last_visit, "
        "(SELECT r.value FROM readings_and_corrections AS r JOIN visits AS v ON v.id = r.visit_id WHERE "
        "v.instrument_id = i.id AND r.measure = 'action12_bass' AND r.superseded_by IS NULL ORDER BY v.date DESC, v.id "
        "DESC, r.state = 'as_left' DESC, r.id DESC LIMIT 1) AS last_action12_bass_mm, "
        "(SELECT r.value FROM readings_and_corrections AS r JOIN visits AS v ON v.id = r.visit_id WHERE "
        "v.instrument_id = i.id AND r.measure = 'action12_treble' AND r.superseded_by IS NULL ORDER BY v.date DESC, "
        "v.id DESC, r.state = 'as_left' DESC, r.id DESC LIMIT 1) AS last_action12_treble_mm "
        "FROM instruments AS i JOIN owners AS o ON o.id = i.owner_id JOIN homes AS h ON h.id = i.home_id "
        "WHERE i.name || ' ' || i.made || ' ' || o.name || ' ' || h.name LIKE '%' || :search || '%' "
        "AND (:home = 0 OR i.home_id = :same_home)) AS record "
        "ORDER BY record.last_visit DESC NULLS LAST, record.name, record.id";
    const auto lines =
        select_records<InstrumentLine>(session, from, {cell(query.search), cell(query.home_id), cell(query.home_id)});
    for (const InstrumentLine& line : lines) {
      if (query.body_size && line.body_size != *query.body_size) continue;
      if (query.slot && line.slot != *query.slot) continue;
      const int at = page.total++ - query.page * query.per_page;
      if (at >= 0 && at < query.per_page) page.lines.push_back(line);
      if (at >= query.per_page) page.more = true;
    }
    return page;
  });
}

std::vector<std::string> Book::troubles() const { return {}; }

}  // namespace tailblock
