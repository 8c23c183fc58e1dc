#pragma once

#include <memory>

#include "models/data_tables.h"
#include "models/model_table.h"

namespace tailblock {

/// The program without a book: the tables built into it, and the models over them.
class Program {
 public:
  Program();
  [[nodiscard]] const DataTables& tables() const { return *tables_; }
  [[nodiscard]] const ModelTable& models() const { return *models_; }

 private:
  std::unique_ptr<const DataTables> tables_;
  std::unique_ptr<const ModelTable> models_;
};

/// The text of a file of `data/` built into the program: `data/species.csv`.
[[nodiscard]] std::string_view built_in_text(std::string_view path);

}  // namespace tailblock
