#include "book/book.h"
#include "book/sha256.h"
#include "book/record_changes.h"

namespace tailblock {
namespace {

constexpr int number_digits = 4;

/// The next of its kind in the year of its day: `2026-0014`.
std::string next_number(Session& session, const Book::PaperToGive& paper) {
  const std::string year = iso_date(paper.day).substr(0, 4);
  const int next = session
                       .first<int>("SELECT coalesce(max(CAST(substr(number, 6) AS INTEGER)), 0) + 1 FROM papers "
                                   "WHERE kind = :kind AND substr(number, 1, 4) = :year",
                                   {cell(std::string(paper_kind_names[static_cast<std::size_t>(paper.kind)])),
                                    cell(year)})
                       .value();
  std::string digits = std::to_string(next);
  if (digits.size() < number_digits) digits.insert(0, number_digits - digits.size(), '0');
  return year + "-" + digits;
}

/// An offer of this visit is asked to be paid for once, and only when its owner's last word on it was yes.
void require_to_be_paid(Session& session, RecordId visit, RecordId offer) {
  const auto invoice = session.first<std::string>(
      "SELECT papers.number FROM invoiced_offers JOIN papers ON papers.id = invoiced_offers.paper_id "
      "WHERE invoiced_offers.offer_id = :offer",
      {cell(offer)});
  const std::string number = std::to_string(offer);
  if (!session.first<int>("SELECT 1 FROM job_offers JOIN jobs ON jobs.id = job_offers.job_id "
                          "WHERE job_offers.id = :offer AND jobs.visit_id = :visit",
                          {cell(offer), cell(visit)})) {
    throw NotInBook("invoiced: " + number + " is not an offer of this visit");
  }
  if (invoice) throw Refused("invoiced: offer " + number + " stands on invoice " + *invoice + " already");
  const auto said = session.first<std::string>(
      "SELECT says FROM owner_words WHERE offer_id = :offer ORDER BY id DESC", {cell(offer)});
  if (said != "yes") throw Refused("invoiced: the owner has not said yes to offer " + number);
}

}  // namespace

GivenPaper Book::give(const PaperToGive& paper, const std::function<std::string(const std::string& number)>& write) {
  for (const JobOffer& offer : paper.offers) require_valid(offer);
  return store_->change([&](Session& session) {
    require_kept(session, "visits", "visit_id", paper.visit_id);
    for (const RecordId offer : paper.invoiced) require_to_be_paid(session, paper.visit_id, offer);
    for (const JobOffer& offer : paper.offers) insert_record(session, offer);
    GivenPaper given{.visit_id = paper.visit_id, .kind = paper.kind, .day = paper.day};
    given.number = next_number(session, paper);
    const std::string says = write(given.number);
    given.sha256 = sha256(says);
    given.id = session
                   .first<int>("INSERT INTO papers (visit_id, kind, number, day, sha256, says) "
                               "VALUES (:visit, :kind, :number, :day, :sha256, :says) RETURNING id",
                               {cell(given.visit_id),
                                cell(std::string(paper_kind_names[static_cast<std::size_t>(given.kind)])),
                                cell(given.number), cell(given.day), cell(given.sha256), cell(says)})
                   .value();
    for (const RecordId offer : paper.invoiced) {
      session.run("INSERT INTO invoiced_offers (offer_id, paper_id) VALUES (:offer, :paper)",
                  {cell(offer), cell(given.id)});
    }
    return given;
  });
}

GivenPaper Book::paper(RecordId id) const {
  return store_->look([&](Session& session) { return record_of<GivenPaper>(session, "paper_id", id); });
}

std::string Book::paper_says(RecordId id) const {
  return store_->look([&](Session& session) {
    const auto says = session.first<std::string>("SELECT says FROM papers WHERE id = :id", {cell(id)});
    if (!says) throw_missing("paper_id", id);
    return *says;
  });
}

}  // namespace tailblock
