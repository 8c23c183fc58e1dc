// A book of 100,000 instruments and 1,000,000 readings, made in a temporary folder; then every question a page asks, at
// random places in it. Limit (any page or query): p99 < 20 ms. Usage: book_perf [instruments [rounds [file to keep it
// in]]].
#include <unistd.h>

#include <algorithm>
#include <chrono>
#include <cstdio>
#include <cstdlib>
#include <ctime>
#include <filesystem>
#include <fstream>
#include <functional>
#include <iterator>
#include <random>
#include <string>
#include <vector>

#include "book/book.h"
#include "book/record_rows.h"
#include "book/session.h"

namespace {

using namespace tailblock;
using Clock = std::chrono::steady_clock;

double milliseconds_since(Clock::time_point start) {
  return std::chrono::duration<double, std::milli>(Clock::now() - start).count();
}

std::string text_of(const std::string& path) {
  std::ifstream file(std::string(TEST_SOURCE_DIR "/") + path, std::ios::binary);
  return {std::istreambuf_iterator<char>(file), {}};
}

TradeTables tables() {
  const std::string measures = text_of("data/measures.csv");
  const std::string gauges = text_of("data/gauges.csv");
  const std::string interventions = text_of("data/interventions.csv");
  return trade_tables({.measures = measures, .gauges = gauges, .interventions = interventions});
}

/// Draws the invented shop; one seed, so that every run makes the same book.
class Dice {
 public:
  int between(int low, int high) { return std::uniform_int_distribution<int>(low, high)(engine_); }
  const std::string& one_of(const std::vector<std::string>& words) {
    return words[static_cast<std::size_t>(between(0, static_cast<int>(words.size()) - 1))];
  }

 private:
  std::mt19937 engine_{20260214};
};

const std::vector<std::string> first_names{"Anna", "Bert",  "Clara", "Dora", "Emil", "Frida", "Gustav", "Hanna",
                                           "Ida",  "Jonas", "Karl",  "Lena", "Max",  "Nora",  "Otto",   "Paula"};
const std::vector<std::string> syllables{"ber", "man", "son",   "ler", "hof", "wick", "ton",
                                         "ley", "mar", "stein", "dal", "ros", "ven",  "kin"};
const std::vector<std::string> looks{"blackened", "plain", "sunburst", "worn",
                                     "restored",  "dark",  "light",    "refinished"};
const std::vector<std::string> shapes{"parlour", "small", "mid-size", "slope-shouldered", "square-shouldered"};
const std::vector<std::string> dwellings{"stone house", "flat", "cabin", "school", "studio"};

std::string surname(Dice& dice) { return dice.one_of(syllables) + dice.one_of(syllables) + dice.one_of(syllables); }

struct BigBook {
  int owners, homes, instruments, visits = 0, readings = 0;
};

Instrument invented_instrument(Dice& dice, const BigBook& big, int number) {
  Instrument instrument{.owner_id = dice.between(1, big.owners), .home_id = dice.between(1, big.homes)};
  const int size = dice.between(0, 4);
  instrument.name =
      "the " + dice.one_of(looks) + " " + shapes[static_cast<std::size_t>(size)] + " " + std::to_string(number);
  instrument.made = "about " + std::to_string(dice.between(1900, 2020));
  instrument.design.body_size = static_cast<BodySize>(size);
  instrument.slot = static_cast<SaddleSlot>(dice.between(0, 1));
  return instrument;
}

void add_visit(Session& session, Dice& dice, BigBook& big, int instrument) {
  const Date date = Date(std::chrono::days(dice.between(14600, 20450)));
  const int visit = insert_record(session, Visit{.instrument_id = instrument, .date = date, .reason = "buzzes"});
  ++big.visits;
  for (const auto& [measure, value] : {std::pair{"action12_bass", 2.4}, std::pair{"action12_treble", 1.9},
                                       std::pair{"relief", 0.2}, std::pair{"body_humidity", 41.0}}) {
    insert_record(session, Reading{.visit_id = visit,
                                   .measure = measure,
                                   .typed = "x",
                                   .value = value + dice.between(-50, 50) * 0.004,
                                   .gauge = "ruler_half_mm",
                                   .gauge_sd = 0.15});
    ++big.readings;
  }
}

/// Writes the records as the book itself does, but many in one transaction and without waiting for the disk.
BigBook make_big_book(const std::filesystem::path& file, int instruments) {
  { const Book book(file); }
  Session session(file, Session::May::write);
  session.script("PRAGMA synchronous = OFF; PRAGMA cache_size = -400000");
  Transaction all(session, Transaction::To::change);
  Dice dice;
  BigBook big{.owners = instruments * 6 / 10, .homes = instruments * 6 / 10, .instruments = instruments};
  for (int i = 0; i < big.owners; ++i) {
    insert_record(session, Owner{.name = dice.one_of(first_names) + " " + surname(dice)});
  }
  for (int i = 0; i < big.homes; ++i) {
    insert_record(session, Home{.name = dice.one_of(dwellings) + " " + surname(dice)});
  }
  session.script(
      "WITH RECURSIVE months (month) AS (SELECT 1 UNION ALL SELECT month + 1 FROM months WHERE month < 12) "
      "INSERT INTO home_months SELECT homes.id, months.month, 20, 0.45, 8 FROM homes, months");
  for (int i = 1; i <= instruments; ++i) {
    const int id = insert_record(session, invented_instrument(dice, big, i));
    const int visits = dice.between(0, 5);
    for (int v = 0; v < visits; ++v) add_visit(session, dice, big, id);
  }
  all.commit();
  session.script("PRAGMA wal_checkpoint(TRUNCATE)");
  return big;
}

/// What this thread has had of a processor: the same on a busy machine as on an idle one.
double processor_milliseconds() {
  timespec time{};
  clock_gettime(CLOCK_THREAD_CPUTIME_ID, &time);
  return static_cast<double>(time.tv_sec) * 1e3 + static_cast<double>(time.tv_nsec) / 1e6;
}

double share_of(std::vector<double>& times, double share) {
  std::sort(times.begin(), times.end());
  return times[static_cast<std::size_t>(share * static_cast<double>(times.size() - 1))];
}

void report(const char* what, int rounds, const std::function<void()>& ask) {
  std::vector<double> waits, works;
  for (int i = 0; i < rounds; ++i) {
    const auto start = Clock::now();
    const double work_start = processor_milliseconds();
    ask();
    works.push_back(processor_milliseconds() - work_start);
    waits.push_back(milliseconds_since(start));
  }
  const double worst = share_of(waits, 0.99);
  std::printf("%-38s p50 %7.3f ms  p99 %7.3f ms  (of a processor: %7.3f, %7.3f)%s\n", what, share_of(waits, 0.5), worst,
              share_of(works, 0.5), share_of(works, 0.99), worst < 20 ? "" : "  OVER 20 ms");
}

void ask_lists(const Book& book, Dice& dice, const BigBook& big, int rounds) {
  const auto page_up_to = [&](int lines) { return dice.between(0, lines / 50); };
  report("list, first page", rounds, [&] { (void)book.instruments({}); });
  report("list, any page", rounds, [&] { (void)book.instruments({.page = page_up_to(big.instruments)}); });
  report("list, 200 lines of any page", rounds,
         [&] { (void)book.instruments({.page = dice.between(0, big.instruments / 200), .per_page = 200}); });
  report("list, body size and slot, any page", rounds, [&] {
    (void)book.instruments({.body_size = static_cast<BodySize>(dice.between(0, 4)),
                            .slot = static_cast<SaddleSlot>(dice.between(0, 1)),
                            .page = page_up_to(big.instruments / 10)});
  });
  report("list, one home", rounds, [&] { (void)book.instruments({.home_id = dice.between(1, big.homes)}); });
  report("search, two letters", rounds,
         [&] { (void)book.instruments({.search = dice.one_of(syllables).substr(0, 2)}); });
  report("search, a first name, any page", rounds, [&] {
    (void)book.instruments({.search = dice.one_of(first_names), .page = page_up_to(big.instruments / 20)});
  });
  report("search, three common words", rounds, [&] {
    (void)book.instruments({.search = dice.one_of(looks) + " " + dice.one_of(shapes) + " " + dice.one_of(first_names)});
  });
  report("search, a surname", rounds, [&] { (void)book.instruments({.search = surname(dice)}); });
  report("search, nothing found", rounds, [&] { (void)book.instruments({.search = "the qqq"}); });
}

void ask_names(const Book& book, Dice& dice, int rounds) {
  report("first owners_named, which reads all once", 1, [&] { (void)book.owners_named("", 1); });
  report("owners_named, two letters", rounds,
         [&] { (void)book.owners_named(dice.one_of(syllables).substr(0, 2), 50); });
  report("owners_named, a surname", rounds, [&] { (void)book.owners_named(surname(dice), 50); });
  report("first homes_named, which reads all once", 1, [&] { (void)book.homes_named("", 1); });
  report("homes_named, a name", rounds, [&] { (void)book.homes_named(surname(dice), 50); });
}

void ask_stories(Book& book, Dice& dice, const BigBook& big, int rounds) {
  report("story", rounds, [&] { (void)book.story(dice.between(1, big.instruments)); });
  report("visit_story", rounds, [&] { (void)book.visit_story(dice.between(1, big.visits)); });
  report("instrument", rounds, [&] { (void)book.instrument(dice.between(1, big.instruments)); });
  report("owner", rounds, [&] { (void)book.owner(dice.between(1, big.owners)); });
  report("home", rounds, [&] { (void)book.home(dice.between(1, big.homes)); });
  std::vector<LoggedDay> log;
  for (int i = 0; i < 1461; ++i) log.push_back({.date = Date(std::chrono::days(19000 + i))});
  int logged = 0;
  report("keep_air_log, four years", 20, [&] { book.keep_air_log(++logged, log, true); });
  report("air_log, a year of it", rounds,
         [&] { (void)book.air_log(dice.between(1, 20), log.front().date, log[364].date); });
}

void ask_changes(Book& book, Dice& dice, const BigBook& big, int rounds) {
  report("add, a visit's five readings", rounds, [&] {
    const int visit = dice.between(1, big.visits);
    const auto reading = [&](const char* measure, double value, const char* gauge) {
      return Reading{.visit_id = visit, .measure = measure, .value = value, .gauge = gauge};
    };
    book.add(std::vector{reading("action12_bass", 2.4, "ruler_64ths"), reading("action12_treble", 1.9, "ruler_64ths"),
                         reading("relief", 0.2, "feelers"), reading("action1_bass", 0.5, "feelers"),
                         reading("body_humidity", 44, "hygrometer")});
  });
  report("keep a visit, then the first page", rounds, [&] {
    book.keep(Visit{.instrument_id = dice.between(1, big.instruments), .date = Date(std::chrono::days(20500))});
    (void)book.instruments({});
  });
}

}  // namespace

int main(int count, char** words) {
  const int instruments = count > 1 ? std::atoi(words[1]) : 100000;
  const int rounds = count > 2 ? std::atoi(words[2]) : 1000;
  std::string folder = (std::filesystem::temp_directory_path() / "book_perf_XXXXXX").string();
  if (mkdtemp(folder.data()) == nullptr) return 1;
  const std::filesystem::path file =
      count > 3 ? std::filesystem::path(words[3]) : std::filesystem::path(folder) / "big.book";

  auto start = Clock::now();
  const BigBook big = make_big_book(file, instruments);
  std::printf("made: %d instruments, %d visits, %d readings in %.1f s, %.0f MB\n", big.instruments, big.visits,
              big.readings, milliseconds_since(start) / 1000,
              static_cast<double>(std::filesystem::file_size(file)) / 1e6);
  {
    start = Clock::now();
    Book book(file, tables());
    std::printf("opened in %.1f ms\n", milliseconds_since(start));
    report("first list, which reads all once", 1, [&] { (void)book.instruments({}); });
    Dice dice;
    ask_lists(book, dice, big, rounds);
    ask_names(book, dice, rounds);
    ask_stories(book, dice, big, rounds);
    ask_changes(book, dice, big, rounds);
  }
  std::filesystem::remove_all(folder);
  return 0;
}
