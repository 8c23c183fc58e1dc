#pragma once

#include <string>
#include <string_view>
#include <vector>

namespace tailblock {

/// A sort of work that in a small shop only some may do: data/work_skills.csv.
struct WorkSkill {
  std::string id;
  std::string name;    ///< as pages and plans read it: "who alone does fretwork"
  std::string covers;  ///< what belongs to it
};

/// @throws Refused naming the row: an id or a name that is empty or comes twice.
[[nodiscard]] std::vector<WorkSkill> work_skills(std::string_view csv);

}  // namespace tailblock
