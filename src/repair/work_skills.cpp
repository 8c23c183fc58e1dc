#include "repair/work_skills.h"

#include <set>

#include "repair/table_cells.h"

namespace tailblock {

std::vector<WorkSkill> work_skills(std::string_view csv) {
  std::set<std::string, std::less<>> names;
  return rows_with_id<WorkSkill>("work_skills.csv", csv, [&](const CsvRow& row) {
    if (!names.insert(cell_name(row, "name")).second) throw Refused(row.where("name") + ": comes twice");
    return WorkSkill{.id = cell_name(row, "id"), .name = cell_name(row, "name"), .covers = cell_name(row, "covers")};
  });
}

}  // namespace tailblock
