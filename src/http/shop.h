#pragma once

#include <functional>

#include "bench/request.h"
#include "book/book.h"
#include "book/trade_tables.h"
#include "models/data_tables.h"
#include "models/envelope_memo.h"
#include "models/model_table.h"
#include "models/plate_memo.h"

namespace tailblock {

/// Since midnight, by this machine's clock.
[[nodiscard]] int minute_on_the_wall();

/// What every call works on: the book, the tables of the trade, the models, and the day on the wall. Everything it
/// refers to outlives the server.
struct Shop {
  Book& book;
  const TradeTables& trade;  ///< what is read and done at the bench
  const DataTables& tables;  ///< what the models read
  const ModelTable& models;
  EnvelopeMemo& envelopes;
  PlateMemo& plates;
  std::function<Date()> today;
  std::function<int()> minute = minute_on_the_wall;  ///< of the day, since midnight
};

/// The day and the minute by the shop's clock.
[[nodiscard]] Moment now_in(const Shop& shop);

}  // namespace tailblock
