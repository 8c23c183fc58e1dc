#pragma once

#include <compare>
#include <limits>
#include <vector>

#include "book/book.h"
#include "book/changing_list.h"
#include "book/search_text.h"

namespace tailblock {

/// The list of instruments, held in memory in its order: newest visit first, those never in last, then by name. A
/// question reads it once from end to end, so that every filter, every search and every page costs the same few
/// milliseconds for 100,000 instruments, and the total is exact (docs/decisions/0010-book-storage.md).
class InstrumentList {
 public:
  struct Found {
    std::vector<RecordId> ids;  ///< of the asked page, in order
    int total = 0;
  };
  [[nodiscard]] Found find(Session& session, const InstrumentQuery& query);

 private:
  struct Place {
    RecordId id;
    RecordId home_id;
    int last_visit;  ///< days since 1970
    BodySize body_size;
    SaddleSlot slot;
    Searched searched;  ///< name, maker text, owner and home
    bool operator<(const Place& other) const;
  };
  static constexpr int never = std::numeric_limits<int>::min();
  [[nodiscard]] static std::vector<Place> changed_places(Session& session, int since);

  ChangingList<Place> list_{"instruments"};
};

/// What the list shows of each instrument, in the order asked for.
[[nodiscard]] std::vector<InstrumentLine> instrument_lines(Session& session, const std::vector<RecordId>& ids);

}  // namespace tailblock
