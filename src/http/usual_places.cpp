#include "http/usual_places.h"

namespace tailblock {

std::vector<Station> usual_places(const RepairTables& tables) {
  std::vector<Station> places;
  for (const ShopStation& station : tables.materials.stations) {
    places.push_back({.name = station.name, .count = station.count});
  }
  return places;
}

}  // namespace tailblock
