#include "cli/demo_shop.h"

#include <algorithm>
#include <array>
#include <map>

#include "cli/demo_calendar.h"
#include "cli/demo_hand.h"
#include "cli/demo_log.h"
#include "quantity/trade_notation.h"
#include "wood/equilibrium.h"

namespace tailblock {
namespace {

constexpr double days_in_year = 365.25;

/// A home in the book, with the air it really had from `first` to today.
struct LivedHome {
  RecordId id;
  Date first;
  std::vector<HomeDay> air;
};

/// A visit with its day, in the words that suit the air.
struct DatedVisit {
  Date date;
  const DemoVisit* told;
};

/// What can be read at one moment: heights, and the humidity in the body.
struct Moment {
  TrueHeights heights;
  double body_humidity_percent;
};

double truth_of(const Moment& moment, const Instrument& instrument, std::string_view measure) {
  const TrueHeights& h = moment.heights;
  const std::array<std::pair<std::string_view, double>, 12> truths{
      {{"action12_bass", h.action12_bass},
       {"action12_treble", h.action12_treble},
       {"action1_bass", h.action1_bass},
       {"action1_treble", h.action1_treble},
       {"relief", h.relief},
       {"saddle_exposure_bass", h.saddle_exposure_bass},
       {"saddle_exposure_treble", h.saddle_exposure_treble},
       {"straightedge_over_bridge", h.straightedge_over_bridge},
       {"sink_at_soundhole", h.sink_at_soundhole},
       {"bridge_over_rim", h.bridge_over_rim},
       {"slot_depth", in_mm(instrument.slot_depth.value_or(mm(0)))},
       {"body_humidity", moment.body_humidity_percent}}};
  for (const auto& [name, value] : truths) {
    if (name == measure) return value;
  }
  throw Refused("the demo does not know how to read " + std::string(measure));
}

/// One instrument through its visits. What moved before a visit or at it stays moved.
class InstrumentLife {
 public:
  InstrumentLife(Book& book, const DemoTables& tables, const DemoInstrument& instrument, const HiddenNature& nature,
                 const LivedHome& home, Date today)
      : book_(book),
        tables_(tables),
        instrument_(instrument),
        nature_(nature),
        home_(home),
        today_(today),
        moisture_(wood_moisture(home.air, nature.lag)) {}

  void keep_visit(RecordId instrument_id, const DatedVisit& dated) {
    visit_ = dated;
    visit_id_ = book_.keep(Visit{
        .instrument_id = instrument_id, .date = dated.date, .reason = dated.told->reason, .note = dated.told->note});
    last_action_.clear();
    move(DemoWorkRecord::hidden);
    keep_readings(dated.told->found, ReadingState::as_found);
    keep_fret_readings();
    keep_findings();
    move(DemoWorkRecord::size);
    move(DemoWorkRecord::done);
    keep_readings(dated.told->left, ReadingState::as_left);
    keep_decisions();
  }

 private:
  template <class Row>
  [[nodiscard]] bool is_of_this_visit(const Row& row) const {
    return row.instrument == instrument_.key && row.visit == visit_.told->key;
  }

  void move(DemoWorkRecord recorded) {
    for (const DemoWork& work : tables_.work) {
      if (work.recorded != recorded || !is_of_this_visit(work)) continue;
      moved_ += work.moved;
      if (recorded == DemoWorkRecord::hidden) continue;
      Intervention record{.visit_id = visit_id_, .kind = work.kind, .note = work.note};
      if (recorded == DemoWorkRecord::size) {
        record.action12_bass_change = mm(work.moved.action12_bass_mm);
        record.action12_treble_change = mm(work.moved.action12_treble_mm);
      }
      book_.add(record);
    }
  }

  [[nodiscard]] Moment moment() const {
    const auto day = static_cast<std::size_t>(days_between(home_.first, visit_.date));
    const double moisture = moisture_.at(day);
    const double years_ago = days_between(visit_.date, today_) / days_in_year;
    const RelativeHumidity in_body =
        equilibrium_humidity(celsius(home_.air.at(day).temperature_c), moisture_percent(moisture));
    return {.heights = true_heights(nature_, moisture, years_ago, moved_),
            .body_humidity_percent = in_percent(in_body)};
  }

  [[nodiscard]] const DemoGauge& gauge_for(const std::string& measure) const {
    for (const DemoGauge& gauge : tables_.gauges) {
      if (gauge.kit == visit_.told->kit && gauge.measure == measure) return gauge;
    }
    throw Refused("kits.csv: " + visit_.told->kit + " has nothing to read " + measure + " with");
  }

  void keep_readings(const std::vector<std::string>& measures, ReadingState state) {
    std::vector<Reading> readings;
    const Moment now = moment();
    for (const std::string& measure : measures) {
      const DemoGauge& gauge = gauge_for(measure);
      NamedChance chance(tables_.seed, instrument_.key + "/" + visit_.told->key + "/" + measure + "/" +
                                           std::string(reading_state_names[static_cast<std::size_t>(state)]));
      WrittenReading written = read_off(gauge, truth_of(now, instrument_.record, measure), chance);
      for (const DemoSlip& slip : tables_.slips) {
        if (is_of_this_visit(slip) && slip.measure == measure) written = written_as(gauge, slip.typed);
      }
      last_action_[measure] = mm(written.value);
      readings.push_back({.visit_id = visit_id_,
                          .measure = measure,
                          .typed = written.typed,
                          .value = written.value,
                          .gauge = gauge.gauge,
                          .state = state});
    }
    if (!readings.empty()) book_.add(readings);
  }

  void keep_fret_readings() {
    std::vector<Reading> readings;
    for (const DemoFretReading& read : tables_.fret_readings) {
      if (!is_of_this_visit(read)) continue;
      readings.push_back({.visit_id = visit_id_,
                          .measure = read.measure,
                          .typed = read.typed,
                          .value = in_mm(length_from_text(read.measure, read.typed)),
                          .gauge = read.gauge,
                          .state = ReadingState::as_found});
    }
    if (!readings.empty()) book_.add(readings);
  }

  void keep_findings() {
    for (const DemoFinding& found : tables_.findings) {
      if (!is_of_this_visit(found)) continue;
      Finding record = found.record;
      record.visit_id = visit_id_;
      findings_[found.key] = book_.add(record);
    }
    for (const DemoFindingChange& said : tables_.finding_changes) {
      if (!is_of_this_visit(said)) continue;
      FindingChange record = said.record;
      record.visit_id = visit_id_;
      record.finding_id = findings_.at(said.finding);
      book_.add(record);
    }
  }

  void keep_decisions() {
    for (const DemoDecision& decision : tables_.decisions) {
      if (!is_of_this_visit(decision)) continue;
      book_.add(SaddleDecision{.visit_id = visit_id_,
                               .choice = decision.choice,
                               .raise_bass_at_saddle = decision.raise_bass,
                               .raise_treble_at_saddle = decision.raise_treble,
                               .set_bass_at_fret12 = last_action_.at("action12_bass"),
                               .set_treble_at_fret12 = last_action_.at("action12_treble"),
                               .reason = decision.reason});
    }
  }

  Book& book_;
  const DemoTables& tables_;
  const DemoInstrument& instrument_;
  const HiddenNature& nature_;
  const LivedHome& home_;
  Date today_;
  std::vector<double> moisture_;  ///< of its wood, daily from the home's first day
  HeightsMoved moved_;
  DatedVisit visit_{};
  RecordId visit_id_ = 0;
  std::map<std::string, RecordId> findings_;   ///< by key
  std::map<std::string, Length> last_action_;  ///< by measure, as written last at this visit
};

std::map<std::string, RecordId> keep_owners(Book& book, const DemoTables& tables) {
  std::map<std::string, RecordId> ids;
  for (const DemoOwner& owner : tables.owners) ids[owner.key] = book.keep(owner.record);
  return ids;
}

std::map<std::string, LivedHome> keep_homes(Book& book, const DemoTables& tables, Date today) {
  const int count = static_cast<int>(tables.years_lived * days_in_year);
  const Date first = today - std::chrono::days(count - 1);
  std::map<std::string, LivedHome> homes;
  for (const DemoHome& home : tables.homes) {
    LivedHome lived{.id = book.keep(home.record),
                    .first = first,
                    .air = lived_air(home.record.air, first, count, NamedChance(tables.seed, home.key))};
    const auto log = hygrometer_log(home, lived.air, today, NamedChance(tables.seed, home.key + "/log"));
    if (!log.empty()) book.keep_air_log(lived.id, log, false);
    homes.emplace(home.key, std::move(lived));
  }
  return homes;
}

std::vector<DatedVisit> dated_visits(const DemoTables& tables, const DemoInstrument& instrument, Date today) {
  const auto home = std::ranges::find(tables.homes, instrument.home, &DemoHome::key);
  std::vector<DatedVisit> visits;
  for (const DemoVisit& visit : tables.visits) {
    if (visit.instrument != instrument.key) continue;
    const Date date = visit_day(visit.when, today, tables.season_visit_least_days_ago);
    if (visit.air != DemoAir::any && visit.air != third_of_the_range(home->record.air, date)) continue;
    visits.push_back({.date = date, .told = &visit});
  }
  std::ranges::sort(visits, {}, &DatedVisit::date);
  return visits;
}

}  // namespace

void fill_demo_shop(Book& book, const DemoTables& tables, Date today) {
  book.keep_setting("shop_name", tables.shop_name);
  book.keep_setting("invented", "true");
  const auto owners = keep_owners(book, tables);
  const auto homes = keep_homes(book, tables, today);
  for (const DemoInstrument& instrument : tables.instruments) {
    Instrument record = instrument.record;
    record.owner_id = owners.at(instrument.owner);
    record.home_id = homes.at(instrument.home).id;
    const RecordId id = book.keep(record);
    const auto nature = std::ranges::find(tables.natures, instrument.key, &HiddenNature::instrument);
    if (nature == tables.natures.end()) continue;
    InstrumentLife life(book, tables, instrument, *nature, homes.at(instrument.home), today);
    for (const DatedVisit& visit : dated_visits(tables, instrument, today)) life.keep_visit(id, visit);
  }
}

}  // namespace tailblock
