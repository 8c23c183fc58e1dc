#pragma once

#include <functional>
#include <span>
#include <string>
#include <string_view>
#include <vector>

namespace tailblock {

struct DataTables;
class EnvelopeMemo;
class PlateMemo;

/// One computation as everything outside sees it: JSON in, JSON out. A screen, a report and a script that ask the same
/// question get the same number, because they all come through here.
struct Model {
  std::string name;
  std::string summary;
  std::function<std::string(std::string_view request)> compute;  ///< @throws Refused naming field, value and range
  std::function<std::string()> request_schema;                   ///< JSON Schema 2020-12
  std::function<std::string()> result_schema;
  std::string example;  ///< a valid request
};

/// Every computation of the program, registered once.
class ModelTable {
 public:
  /// Tables and memos must outlive the model table.
  ModelTable(const DataTables& tables, EnvelopeMemo& memo, PlateMemo& plates);

  [[nodiscard]] std::span<const Model> models() const { return models_; }
  [[nodiscard]] const Model* find(std::string_view name) const;

 private:
  std::vector<Model> models_;
};

}  // namespace tailblock
