#pragma once

#include <list>
#include <memory>
#include <mutex>
#include <string>
#include <utility>

#include "body/plate.h"

namespace tailblock {

struct FactorMemory;
struct MeshedTop;
struct PreparedTop;

/// Remembers the tops calculated last, so that a slider of strings or air solves nothing, and their meshes, so that one
/// of thickness or glue does not mesh again. The answer is the same as computing it anew. Safe from several threads.
class PlateMemo {
 public:
  PlateMemo();
  ~PlateMemo();
  PlateMemo(const PlateMemo&) = delete;
  PlateMemo& operator=(const PlateMemo&) = delete;

  /// @throws Refused as prepare_top does.
  [[nodiscard]] std::shared_ptr<const PreparedTop> of(const PlateRequest& request, const PlateTables& tables);

 private:
  std::mutex guard_;
  std::list<std::pair<std::string, std::shared_ptr<const PreparedTop>>> tops_;  ///< newest first
  std::list<std::pair<std::string, std::shared_ptr<const MeshedTop>>> meshes_;  ///< newest first
  std::unique_ptr<FactorMemory> memory_;  ///< of the last one calculated; null: one is at it
};

}  // namespace tailblock
