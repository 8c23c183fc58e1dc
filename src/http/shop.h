#pragma once

#include <functional>

#include "book/book.h"
#include "models/model_table.h"
#include "models/data_tables.h"

namespace tailblock {

/// What every call works on: the book, the tables of the trade, the models, and the day on the wall.
struct Shop {
  Book& book;
  const DataTables& tables;
  const ModelTable& models;
  std::function<Date()> today;
};

}  // namespace tailblock
