#include "book/book.h"

#include <algorithm>

#include "book/migrations.h"
#include "book/record_changes.h"
#include "setup/saddle.h"

namespace tailblock {

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
  return store_->change([&](Session& session) { return insert_or_update(session, "owner_id", owner); });
}

RecordId Book::keep(const Home& home) {
  require_valid(home);
  require_text("name", home.name);
  if (!home.air.log.empty()) throw Refused("air.log: logged days are kept by themselves, not with the home");
  return store_->change([&](Session& session) {
    const RecordId id = insert_or_update(session, "home_id", home);
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
    return insert_or_update(session, "instrument_id", instrument);
  });
}

RecordId Book::keep(const Visit& visit) {
  require_valid(visit);
  return store_->change([&](Session& session) {
    require_kept(session, "instruments", "instrument_id", visit.instrument_id);
    return insert_or_update(session, "visit_id", visit);
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
    return insert_record(session, intervention);
  });
}

RecordId Book::add(const SaddleDecision& decision) {
  require_valid(decision);
  if (std::find(saddle_choice_names.begin(), saddle_choice_names.end(), decision.choice) == saddle_choice_names.end()) {
    throw Refused("choice: \"" + decision.choice + "\" is not a saddle choice");
  }
  return store_->change([&](Session& session) {
    require_kept(session, "visits", "visit_id", decision.visit_id);
    return insert_record(session, decision);
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
  ready.reserve(readings.size());
  for (const Reading& reading : readings) ready.push_back(ready_to_keep(store_->tables, reading));
  return store_->change([&](Session& session) {
    std::vector<RecordId> ids;
    for (const Reading& reading : ready) {
      require_kept(session, "visits", "visit_id", reading.visit_id);
      if (reading.supersedes != 0) require_correctable(session, reading);
      ids.push_back(insert_record(session, reading));
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

}  // namespace tailblock
