#include "models/plate_memo.h"

#include <algorithm>

#include "body/prepared_top.h"
#include "models/json.h"

namespace tailblock {
namespace {

constexpr std::size_t remembered = 4;  // about 30 MB each: a top before and after, and one beside it

template <class Value>
std::shared_ptr<const Value> found(std::list<std::pair<std::string, std::shared_ptr<const Value>>>& newest_first,
                                   const std::string& key) {
  const auto place = std::ranges::find(newest_first, key, &std::pair<std::string, std::shared_ptr<const Value>>::first);
  if (place == newest_first.end()) return nullptr;
  newest_first.splice(newest_first.begin(), newest_first, place);
  return newest_first.front().second;
}

template <class Value>
void keep(std::list<std::pair<std::string, std::shared_ptr<const Value>>>& newest_first, std::string key,
          std::shared_ptr<const Value> value) {
  newest_first.emplace_front(std::move(key), std::move(value));
  if (newest_first.size() > remembered) newest_first.pop_back();
}

}  // namespace

PlateMemo::PlateMemo() = default;
PlateMemo::~PlateMemo() = default;

std::shared_ptr<const PreparedTop> PlateMemo::of(const PlateRequest& request, const PlateTables& tables) {
  require_valid(request);
  const TopDesign design = design_of(request.top, *tables.designs);
  TopDamage cracks;
  cracks.cracks = request.damage.cracks;
  const std::string mesh = plain_number(in_mm(request.mesh));
  const std::string top_key = mesh + to_json(design) + to_json(request.damage);
  const std::string mesh_key = mesh + to_json(drawing_of(design)) + to_json(cracks);
  std::shared_ptr<const MeshedTop> meshed;
  std::unique_ptr<FactorMemory> memory;
  {
    const std::scoped_lock lock(guard_);
    if (auto known = found(tops_, top_key)) return known;
    meshed = found(meshes_, mesh_key);
    memory = std::move(memory_);
  }
  if (!memory) memory = std::make_unique<FactorMemory>();
  auto prepared = std::make_shared<const PreparedTop>(
      prepare_top(design, request.damage, request.mesh, tables, std::move(meshed), memory.get()));
  const std::scoped_lock lock(guard_);
  memory_ = std::move(memory);
  keep(tops_, top_key, prepared);
  if (!found(meshes_, mesh_key)) keep(meshes_, mesh_key, prepared->meshed);
  return prepared;
}

}  // namespace tailblock
