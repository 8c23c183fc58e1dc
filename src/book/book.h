#pragma once

#include <filesystem>
#include <functional>
#include <memory>
#include <stdexcept>
#include <string>
#include <vector>

#include "book/finding_records.h"
#include "book/finish_records.h"
#include "book/job_records.h"
#include "book/records.h"
#include "book/trade_tables.h"

namespace tailblock {

/// Storage trouble: what failed, and what is still safe.
class StorageFault : public std::runtime_error {
 public:
  using std::runtime_error::runtime_error;
};

/// A record asked for by a number that no record has.
class NotInBook : public Refused {
 public:
  using Refused::Refused;
};

/// Which instruments to list.
struct InstrumentQuery {
  std::string search{};  ///< words looked for in name, maker text, owner and home; every word must be found
  std::optional<BodySize> body_size{};
  std::optional<SaddleSlot> slot{};
  RecordId home_id = 0;  ///< 0: any
  int page = 0;          ///< 0-based
  int per_page = 50;     ///< 1..200
};

struct InstrumentPage {
  std::vector<InstrumentLine> lines;  ///< newest visit first, then by name
  int page = 0;
  bool more = false;
  int total = 0;
};
void describe(FieldVisitor&, InstrumentPage&);

/// The shop's records in one file. Every function that changes something is one transaction: all of it is kept when the
/// call returns, or none of it. Safe to call from several threads; there is one writer at a time.
/// @throws Refused for input the book does not take, NotInBook for a number no record has, StorageFault when the file
/// cannot be read or written.
class Book {
 public:
  /// Opens the book, making it when absent, and brings an older one up to date through the numbered migrations.
  /// `tables` says which readings and which work it takes; without them it takes none.
  explicit Book(const std::filesystem::path& file, TradeTables tables = {});
  ~Book();
  Book(const Book&) = delete;
  Book& operator=(const Book&) = delete;

  [[nodiscard]] int schema_number() const;

  [[nodiscard]] std::string setting(const std::string& name) const;  ///< empty when not set
  void keep_setting(const std::string& name, const std::string& value);

  RecordId keep(const Owner& owner);  ///< id 0 adds, another id changes that record
  RecordId keep(const Home& home);
  RecordId keep(const Instrument& instrument);
  RecordId keep(const Visit& visit);
  RecordId add(const Intervention& intervention);
  RecordId add(const SaddleDecision& decision);
  /// All of one visit's readings in one go. A reading that supersedes another marks it superseded.
  std::vector<RecordId> add(const std::vector<Reading>& readings);
  /// A finding of a visit. One that supersedes another is of the same visit.
  RecordId add(const Finding& finding);
  /// What a visit says of a finding of an earlier visit to the same instrument: once a visit, later words supersede it.
  RecordId add(const FindingChange& change);
  /// A picture and its thumbnail, upright JPEG both: a picture that is in the book already keeps its number.
  struct PhotoToKeep {
    std::string whole, thumbnail;
    int width_px = 0, height_px = 0;
  };
  KeptPhoto keep_photo(const PhotoToKeep& photo);
  /// What a visit's own photo shows, or that it is left out from now on.
  RecordId add(const VisitPhoto& photo);
  /// A colour tried at a visit. One that supersedes another is of the same visit.
  RecordId add(const FinishTrial& trial);
  RecordId keep(const Job& job);
  RecordId keep(const MaterialLot& lot);
  RecordId add(const JobAnswer& answer);
  RecordId add(const JobAmount& amount);
  RecordId add(const JobMaterial& material);
  RecordId add(const JobTerms& terms);
  RecordId add(const JobOffer& offer);
  /// The owner's word on the newest offer of its job, or on an operation.
  RecordId add(const OwnerWord& word);
  RecordId add(const GateRecord& gate);
  RecordId add(const PromiseRecord& promise);
  RecordId add(const SaidAtVisit& said);
  RecordId add(const BenchWish& wish);
  RecordId add(const Pin& pin);
  RecordId add(const ShopAir& air);
  /// Once a visit; hands must have let go of the instrument.
  RecordId add(const Handover& handover);
  /// A paper about to be given.
  struct PaperToGive {
    RecordId visit_id = 0;
    PaperKind kind = PaperKind::claim_ticket;
    Date day{};
    std::vector<JobOffer> offers{};    ///< put before the owner by it
    std::vector<RecordId> invoiced{};  ///< the offers it asks to be paid for
  };
  /// Gives the paper the next number of its kind in its year and keeps what `write` says under that number, the offers
  /// it makes and what it asks for: all or nothing.
  GivenPaper give(const PaperToGive& paper, const std::function<std::string(const std::string& number)>& write);
  /// Hands take up an operation. A person is at one thing at a time: what they were at is refused by name.
  RecordId begin_work(const WorkSpell& spell);
  void end_work(RecordId spell, const WorkEnd& end);
  /// Of work that is over.
  RecordId add(const WorkCorrection& correction);
  /// Logged days of a home; a day already there is replaced only by the same call's caller's wish.
  struct LogKept {
    int added = 0;
    int already_there = 0;
  };
  LogKept keep_air_log(RecordId home, const std::vector<LoggedDay>& days, bool replace);

  [[nodiscard]] std::vector<Owner> owners() const;
  [[nodiscard]] std::vector<Home> homes() const;
  /// The first `most` (1..200) owners or homes, by name, whose names have words beginning with those of `search`.
  [[nodiscard]] std::vector<Owner> owners_named(const std::string& search, int most) const;
  [[nodiscard]] std::vector<Home> homes_named(const std::string& search, int most) const;
  [[nodiscard]] Owner owner(RecordId id) const;
  [[nodiscard]] Home home(RecordId id) const;
  [[nodiscard]] Instrument instrument(RecordId id) const;
  [[nodiscard]] Visit visit(RecordId id) const;
  [[nodiscard]] InstrumentPage instruments(const InstrumentQuery& query) const;
  [[nodiscard]] InstrumentStory story(RecordId instrument) const;
  [[nodiscard]] VisitStory visit_story(RecordId visit) const;
  [[nodiscard]] VisitWork visit_work(RecordId visit) const;
  [[nodiscard]] JobStory job_story(RecordId job) const;
  [[nodiscard]] WorkSpell work_spell(RecordId id) const;  ///< as tapped
  /// Of every visit that has jobs and is not handed over, by the visit's day.
  [[nodiscard]] std::vector<VisitWork> work_in_the_shop() const;
  [[nodiscard]] std::vector<MaterialLot> material_lots() const;
  /// The shop's air from `first` on, oldest first.
  [[nodiscard]] std::vector<ShopAir> shop_air(Date first) const;
  [[nodiscard]] GivenPaper paper(RecordId id) const;
  [[nodiscard]] std::string paper_says(RecordId id) const;
  /// Every stretch of work that is over, oldest first: what durations are learnt from.
  [[nodiscard]] std::vector<WorkSpell> work_done() const;

  [[nodiscard]] std::vector<LoggedDay> air_log(RecordId home, Date first, Date last) const;
  [[nodiscard]] std::vector<LoggedDay> air_log(RecordId home) const;  ///< every day of it

  [[nodiscard]] Survey survey(RecordId visit) const;
  /// The photos of a visit itself, those left out aside, in the order in which they were first kept.
  [[nodiscard]] std::vector<VisitPhoto> visit_photos(RecordId visit) const;
  [[nodiscard]] FinishTrialPage finish_trials(const FinishTrialQuery& query) const;
  [[nodiscard]] KeptPhoto photo(RecordId id) const;
  enum class PhotoSize { whole, thumbnail };
  [[nodiscard]] std::string photo_bytes(RecordId id, PhotoSize size) const;

  /// A consistent copy while the book is in use.
  void back_up_to(const std::filesystem::path& file) const;
  /// Integrity of the file and of every reference in it; empty when all is well, else one line a trouble.
  [[nodiscard]] std::vector<std::string> troubles() const;

 private:
  struct Store;
  std::unique_ptr<Store> store_;
};

/// The season model's request for one instrument, built from its story: live readings of fret 12 and relief, recorded
/// interventions, the home with its log.
[[nodiscard]] ResponseRequest response_request(const InstrumentStory& story, std::vector<LoggedDay> log, Date today);

}  // namespace tailblock
