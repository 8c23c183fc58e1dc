#pragma once

#include "book/trade_tables.h"
#include "models/data_tables.h"
#include "models/envelope_memo.h"
#include "models/model_table.h"
#include "models/plate_memo.h"

namespace tailblock {

/// The program without a book: the tables built into it, and the models over them.
class Program {
 public:
  Program();
  Program(const Program&) = delete;
  Program& operator=(const Program&) = delete;
  [[nodiscard]] const DataTables& tables() const { return tables_; }
  [[nodiscard]] const TradeTables& trade() const { return trade_; }
  [[nodiscard]] const ModelTable& models() const { return models_; }
  [[nodiscard]] EnvelopeMemo& envelopes() { return envelopes_; }
  [[nodiscard]] PlateMemo& plates() { return plates_; }

 private:
  DataTables tables_;
  TradeTables trade_;
  EnvelopeMemo envelopes_;
  PlateMemo plates_;
  ModelTable models_;
};

/// The text of a file of `data/` built into the program: `data/species.csv`.
[[nodiscard]] std::string_view built_in_text(std::string_view path);

}  // namespace tailblock
