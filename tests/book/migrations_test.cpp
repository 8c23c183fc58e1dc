#include "book/migrations.h"

#include <gtest/gtest.h>

#include <fstream>

#include "book/shop_settings.h"
#include "shop_for_tests.h"

namespace tailblock {
namespace {

using testing::day;
using testing::expect_refused;
using testing::TemporaryFolder;
namespace fs = std::filesystem;

const auto nothing_more = [](Session&) {};

/// The book that the program with this schema number left, kept in tests/book/books as text.
fs::path book_of_number(const TemporaryFolder& folder, int number) {
  const std::string digits = std::to_string(number);
  const fs::path file = folder / ("book" + digits);
  Session(file, Session::May::write)
      .script(testing::repository_file("tests/book/books/" + std::string(4 - digits.size(), '0') + digits + ".sql"));
  return file;
}

/// Two people as the page Shop kept them up to number 9. One of them can do what no page ever asked about.
constexpr auto two_people_kept = R"(INSERT INTO settings VALUES ('shop', '{
"name":"the bench","address":"","people":[
{"name":"Ann","hours":[{"weekday":1,"from_minute":540,"to_minute":1050},{"weekday":2,"from_minute":540,"to_minute":1050}],
"days_off":[{"day":"2026-03-02"}],"skills":[]},
{"name":"Ben","hours":[{"weekday":6,"from_minute":540,"to_minute":780}],"days_off":[],"skills":["inlay"]}],
"stations":[{"name":"clamps","count":3}],"currency":"EUR","hourly_rate":"72.50","tax_percent":"19","terms":"Ask.",
"how_to_pay":"","promise_chance":0.85}'))";

int newest_number() { return migration_files().back().number; }

/// What the books from number 4 on hold beside the readings.
void expect_its_findings(const Book& book) {
  const Survey first = book.survey(1), second = book.survey(2);
  ASSERT_EQ(first.found_now.size(), 1U);
  EXPECT_EQ(first.found_now[0].finding.severity, Severity::serious);
  EXPECT_EQ(first.found_now[0].finding.points.at(1).x, mm(362.5));
  EXPECT_EQ(first.superseded.size(), 1U);
  ASSERT_EQ(second.found_before.size(), 1U);
  ASSERT_EQ(second.found_before[0].changes.size(), 1U);
  EXPECT_EQ(second.found_before[0].changes[0].change.extents.at(0).value, mm(80));
  EXPECT_EQ(book.photo_bytes(1, Book::PhotoSize::whole), "a picture");
}

/// And from number 5 on.
void expect_its_jobs(const Book& book) {
  const VisitWork work = book.visit_work(1);
  ASSERT_EQ(work.jobs.size(), 2U);
  EXPECT_EQ(work.jobs[0].job.finding_id, 1);
  EXPECT_EQ(work.jobs[1].job.finding_id, 0);
  EXPECT_EQ(work.jobs[1].job.advice, JobAdvice::can_wait);
  EXPECT_EQ(work.jobs[0].offers.at(0).net, "245.00");
  EXPECT_EQ(work.jobs[0].words.at(0).offer_id, 1);
  ASSERT_EQ(work.jobs[0].spells.size(), 2U);
  EXPECT_TRUE(work.jobs[0].spells[0].finished);
  EXPECT_FALSE(work.jobs[0].spells[1].ended_on);
  EXPECT_EQ(work.jobs[0].pins.at(0).minute, 700);
  EXPECT_EQ(work.overrides.at(0).why, "played tonight");
  EXPECT_EQ(work.promises.at(0).chance, 0.8);
  EXPECT_EQ(work.wishes.at(0).due_on, day(2025, 9, 4));
  EXPECT_EQ(book.material_lots().at(0).good_until, day(2025, 8, 25));
  EXPECT_EQ(book.shop_air(day(2025, 8, 1)).at(0).relative_humidity, 0.47);
  EXPECT_EQ(book.work_in_the_shop().size(), 1U);
}

/// And from number 6 on.
void expect_its_prices(const Book& book) {
  const JobStory job = book.job_story(1);
  EXPECT_EQ(job.materials.at(0).unit_price, "1.20");
  EXPECT_EQ(job.terms.at(0).tax_percent, "19");
  EXPECT_EQ(job.corrections.at(0).minutes, 15);
}

/// And from number 7 on. What older offers were made of is not known.
void expect_its_papers(const Book& book, int left_with) {
  const VisitWork work = book.visit_work(1);
  EXPECT_EQ(work.jobs[0].offers.at(0).tax_percent, "");
  if (left_with < 7) {
    EXPECT_TRUE(work.papers.empty());
    return;
  }
  ASSERT_EQ(work.papers.size(), 2U);
  EXPECT_EQ(work.papers[1].kind, PaperKind::invoice);
  EXPECT_EQ(work.papers[1].day, day(2025, 9, 2));
  EXPECT_EQ(book.paper_says(1), R"({"number":"2025-0001"})");
  EXPECT_EQ(work.invoiced.at(0).offer_id, 1);
  EXPECT_EQ(work.jobs[1].offers.at(0).materials, "10.00");
}

/// And from number 8 on.
void expect_its_trials(const Book& book) {
  const FinishTrialPage page = book.finish_trials({});
  ASSERT_EQ(page.total, 1);
  EXPECT_EQ(page.trials[0].trial.verdict, TrialVerdict::keep);
  EXPECT_EQ(page.trials[0].trial.photos.at(0).photo_id, 1);
  EXPECT_EQ(page.trials[0].earlier.at(0).mix, "amber 6 drops in 30 ml");
  EXPECT_EQ(book.visit_photos(1).at(0).words, "as it came");
}

/// And from number 9 on: an older offer has arriving and finishing in its price.
void expect_its_visit_parts(const Book& book, int left_with) {
  const VisitWork work = book.visit_work(1);
  EXPECT_EQ(work.jobs[0].offers.at(0).visit_net, "");
  if (left_with < 9) return;
  EXPECT_EQ(work.jobs[1].offers.at(1).visit_net, "31.50");
}

/// Of every number: up to 9 nobody could say what they leave to others.
void expect_its_people(const Book& book, int left_with) {
  const ShopSettings settings = shop_settings(book, {});
  ASSERT_EQ(settings.people.size(), 2U);
  EXPECT_EQ(settings.people[0].name, "Ann");
  EXPECT_EQ(settings.people[0].hours.at(1).weekday, 2);
  EXPECT_EQ(settings.people[0].days_off.at(0).day, day(2026, 3, 2));
  EXPECT_EQ(settings.people[0].leaves_to_others, std::vector<std::string>{});
  EXPECT_EQ(settings.people[1].hours.at(0).to_minute, 780);
  const std::vector<std::string> bens =
      left_with < 10 ? std::vector<std::string>{} : std::vector<std::string>{"spraying"};
  EXPECT_EQ(settings.people[1].leaves_to_others, bens);
  EXPECT_EQ(settings.stations.at(0).count, 3);
  EXPECT_EQ(settings.hourly_rate, "72.50");
  EXPECT_EQ(settings.terms, "Ask.");
  EXPECT_EQ(settings.promise_chance, 0.85);
}

TEST(Migrations, a_book_of_every_earlier_number_is_brought_up_to_date_with_all_it_holds) {
  for (int number = 1; number <= newest_number(); ++number) {
    SCOPED_TRACE("schema number " + std::to_string(number));
    const TemporaryFolder folder;
    const fs::path file = book_of_number(folder, number);
    if (number < 10) Session(file, Session::May::write).script(two_people_kept);
    const Book book(file);
    EXPECT_EQ(book.schema_number(), newest_number());
    EXPECT_EQ(book.troubles(), std::vector<std::string>{});
    EXPECT_EQ(book.setting("shop name"), "the bench");
    ASSERT_EQ(book.instruments({}).total, 2);
    EXPECT_EQ(book.instruments({}).lines.front().name, "the blackened parlour");
    EXPECT_EQ(book.instruments({.search = "zoe 1910"}).total, 1);

    const InstrumentStory story = book.story(1);
    EXPECT_EQ(story.owner.contact, "by post");
    EXPECT_EQ(story.home.air.temperature_c.at(11), 14);
    EXPECT_EQ(story.logged_days, 2);
    EXPECT_EQ(story.instrument.design.body_size, BodySize::parlour);
    EXPECT_EQ(story.instrument.slot_length, mm(108));
    ASSERT_EQ(story.visits.size(), 2U);
    EXPECT_EQ(story.visits[0].visit.reason, "strings too low");
    ASSERT_EQ(story.visits[0].readings.size(), 2U);
    EXPECT_EQ(story.visits[0].readings[0].superseded_by, 2);
    EXPECT_EQ(story.visits[0].readings[1].value, 1.984375);
    EXPECT_EQ(story.visits[0].interventions.at(0).action12_bass_change, mm(-0.25));
    EXPECT_EQ(story.visits[0].decisions.at(0).choice, "two_saddles");
    EXPECT_EQ(story.visits[1].readings.at(0).state, ReadingState::as_left);
    if (number >= 4) expect_its_findings(book);
    if (number >= 5) expect_its_jobs(book);
    if (number >= 6) expect_its_prices(book);
    if (number >= 5) expect_its_papers(book, number);
    if (number >= 8) expect_its_trials(book);
    if (number >= 5) expect_its_visit_parts(book, number);
    expect_its_people(book, number);
  }
}

TEST(Migrations, committed_ones_are_never_edited) {
  using Schema = std::vector<std::tuple<std::string, std::string>>;
  const auto schema_of = [](Session& session) -> Schema {
    return session.rows<std::string, std::string>(
        "SELECT name, sql FROM sqlite_master WHERE sql IS NOT NULL ORDER BY name");
  };
  for (int number = 1; number <= newest_number(); ++number) {
    SCOPED_TRACE("schema number " + std::to_string(number));
    const TemporaryFolder folder;
    Session left(book_of_number(folder, number), Session::May::read);
    Session made(folder / "made", Session::May::write);
    migrate(made, migration_files().first(static_cast<std::size_t>(number)), nothing_more);
    EXPECT_EQ(schema_of(made), schema_of(left)) << "a migration is not what it was when a book was left with it";
  }
}

TEST(Migrations, a_book_of_a_newer_program_is_refused_and_left_alone) {
  const TemporaryFolder folder;
  const fs::path file = folder / "shop.book";
  { const Book book(file); }
  Session(file, Session::May::write).script("INSERT INTO migrations VALUES (99, 'from-the-future', '2030-01-01')");
  expect_refused([&] { const Book book(file); }, "book: its schema number 99 is newer than this program's " +
                                                     std::to_string(newest_number()) +
                                                     "; open it with the newer program");
  Session session(file, Session::May::read);
  EXPECT_EQ(applied_number(session), 99);
}

TEST(Migrations, one_that_fails_leaves_the_book_as_it_was) {
  const TemporaryFolder folder;
  const fs::path file = book_of_number(folder, 1);
  const auto first = migration_files().front();
  const std::vector<MigrationFile> failing{
      first,
      {2, "half", "CREATE TABLE stock (id INTEGER PRIMARY KEY) STRICT; INSERT INTO stock VALUES (7);"},
      {3, "bad", "CREATE TABLE prices (id INTEGER PRIMARY KEY); INSERT INTO nowhere VALUES (1);"}};
  Session session(file, Session::May::write);
  EXPECT_THROW(migrate(session, failing, nothing_more), StorageFault);
  EXPECT_EQ(applied_number(session), 1);
  EXPECT_THROW(session.script("SELECT * FROM stock"), StorageFault);
  EXPECT_EQ(session.first<int>("PRAGMA foreign_keys"), 1);
  EXPECT_EQ(session.first<int>("SELECT count(*) FROM readings"), 3);
}

TEST(Migrations, one_that_would_leave_a_reference_to_nothing_is_not_applied) {
  const TemporaryFolder folder;
  const fs::path file = book_of_number(folder, 1);
  const std::vector<MigrationFile> losing{migration_files().front(), {2, "lose-owners", "DELETE FROM owners;"}};
  Session session(file, Session::May::write);
  EXPECT_THROW(migrate(session, losing, nothing_more), StorageFault);
  EXPECT_EQ(session.first<int>("SELECT count(*) FROM owners"), 2);
}

TEST(Migrations, numbers_have_no_gaps_and_start_with_one) {
  int expected = 1;
  for (const MigrationFile& migration : migration_files()) EXPECT_EQ(migration.number, expected++);
  EXPECT_GT(expected, 2);
}

}  // namespace
}  // namespace tailblock
