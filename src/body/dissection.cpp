#include "body/dissection.h"

#include <algorithm>
#include <numeric>
#include <span>

namespace tailblock {
namespace {

constexpr std::size_t smallest_cut = 14;  // nodes; below, a set is eliminated whole (quickest of 8..24 on an 8 mm top)

std::size_t at(int index) { return static_cast<std::size_t>(index); }

/// Neighbours of each node, as one list with the place where each node's begin.
struct Neighbours {
  std::vector<int> begin, list;
  [[nodiscard]] std::span<const int> of(int node) const {
    return std::span(list).subspan(at(begin[at(node)]), at(begin[at(node) + 1] - begin[at(node)]));
  }
};

Neighbours neighbours_of(const BracedPlate& plate) {
  const std::size_t count = plate.mesh.nodes.size();
  std::vector<std::array<int, 2>> pairs;
  pairs.reserve(6 * plate.mesh.triangles.size() + 2 * plate.ribs.size());
  for (const auto& t : plate.mesh.triangles) {
    for (const auto& [a, b] : {std::pair{t[0], t[1]}, std::pair{t[1], t[2]}, std::pair{t[2], t[0]}}) {
      pairs.push_back({a, b});
      pairs.push_back({b, a});
    }
  }
  for (const PlacedRib& rib : plate.ribs) {
    pairs.push_back({rib.first, rib.second});
    pairs.push_back({rib.second, rib.first});
  }
  std::vector<int> begin(count + 1, 0);
  for (const auto& pair : pairs) ++begin[at(pair[0]) + 1];
  std::partial_sum(begin.begin(), begin.end(), begin.begin());
  std::vector<int> all(pairs.size()), next(begin.begin(), begin.end() - 1);
  for (const auto& pair : pairs) all[at(next[at(pair[0])]++)] = pair[1];
  Neighbours neighbours{.begin = {0}, .list = {}};
  for (std::size_t n = 0; n < count; ++n) {
    const auto from = all.begin() + begin[n], to = all.begin() + begin[n + 1];
    std::sort(from, to);
    neighbours.list.insert(neighbours.list.end(), from, std::unique(from, to));
    neighbours.begin.push_back(static_cast<int>(neighbours.list.size()));
  }
  return neighbours;
}

struct Halves {
  std::vector<int> left, right, between;
};

/// Cuts sets of nodes in two and lines up the fronts, children first.
class Cutter {
 public:
  Cutter(const BracedPlate& plate, const Neighbours& neighbours)
      : plate_(plate), neighbours_(neighbours), side_(plate.mesh.nodes.size(), 0) {}

  int cut(std::vector<int> nodes, std::vector<Front>& fronts) {
    Front front;
    if (nodes.size() > smallest_cut) {
      Halves halves = best_halves(nodes);
      nodes = std::move(halves.between);
      for (std::vector<int>* half : {&halves.left, &halves.right}) {
        if (!half->empty()) front.children.push_back(cut(std::move(*half), fronts));
      }
    }
    front.own_nodes = static_cast<int>(nodes.size());
    front.nodes = std::move(nodes);
    fronts.push_back(std::move(front));
    return static_cast<int>(fronts.size()) - 1;
  }

 private:
  Halves best_halves(std::vector<int>& nodes) {
    Halves best;
    double least = 0;
    for (const bool along_x : {true, false}) {
      for (const double share : {0.42, 0.5, 0.58}) {
        Halves halves = halves_at(nodes, along_x, share);
        const double uneven =
            std::abs(static_cast<double>(halves.left.size()) - static_cast<double>(halves.right.size()));
        const double cost = static_cast<double>(halves.between.size()) + 0.04 * uneven;
        if (best.between.empty() || cost < least) {
          least = cost;
          best = std::move(halves);
        }
      }
    }
    return best;
  }

  Halves halves_at(std::vector<int>& nodes, bool along_x, double share) {
    const auto place = [&](int node) {
      const PlanePoint p = plate_.mesh.nodes[at(node)];
      return along_x ? p.x : p.y;
    };
    const auto middle = nodes.begin() + static_cast<std::ptrdiff_t>(static_cast<double>(nodes.size()) * share);
    std::nth_element(nodes.begin(), middle, nodes.end(),
                     [&](int a, int b) { return std::pair(place(a), a) < std::pair(place(b), b); });
    for (auto n = nodes.begin(); n != nodes.end(); ++n) side_[at(*n)] = n < middle ? 1 : 2;
    const auto touches = [&](int node, int side) {
      return std::ranges::any_of(neighbours_.of(node), [&](int other) { return side_[at(other)] == side; });
    };
    std::array<std::vector<int>, 2> edge;
    for (const int node : nodes) {
      const int side = side_[at(node)];
      if (touches(node, 3 - side)) edge[at(side - 1)].push_back(node);
    }
    Halves halves;
    halves.between = std::move(edge[0].size() <= edge[1].size() ? edge[0] : edge[1]);
    for (const int node : halves.between) side_[at(node)] = 3;
    for (const int node : nodes) {
      if (side_[at(node)] == 1) halves.left.push_back(node);
      if (side_[at(node)] == 2) halves.right.push_back(node);
    }
    for (const int node : nodes) side_[at(node)] = 0;
    return halves;
  }

  const BracedPlate& plate_;
  const Neighbours& neighbours_;
  std::vector<int> side_;
};

/// Adds to each front the later nodes that its own, or what its children leave, are tied to.
void find_later_nodes(std::vector<Front>& fronts, const Neighbours& neighbours, const std::vector<int>& rank) {
  std::vector<int> seen_by(rank.size(), -1);
  for (std::size_t f = 0; f < fronts.size(); ++f) {
    Front& front = fronts[f];
    const auto mark = static_cast<int>(f);
    for (const int node : front.nodes) seen_by[at(node)] = mark;
    std::vector<int> later;
    const int last_own = front.nodes.empty() ? -1 : rank[at(front.nodes.back())];
    const auto meet = [&](int node) {
      if (seen_by[at(node)] == mark || rank[at(node)] <= last_own) return;
      seen_by[at(node)] = mark;
      later.push_back(node);
    };
    for (const int node : front.nodes) std::ranges::for_each(neighbours.of(node), meet);
    for (const int child : front.children) {
      const Front& below = fronts[at(child)];
      std::for_each(below.nodes.begin() + below.own_nodes, below.nodes.end(), meet);
    }
    std::ranges::sort(later, {}, [&](int node) { return rank[at(node)]; });
    front.nodes.insert(front.nodes.end(), later.begin(), later.end());
  }
}

}  // namespace

Dissection dissect(const BracedPlate& plate) {
  const Neighbours neighbours = neighbours_of(plate);
  const std::size_t count = plate.mesh.nodes.size();
  Dissection d;
  std::vector<int> everything(count);
  std::iota(everything.begin(), everything.end(), 0);
  (void)Cutter(plate, neighbours).cut(std::move(everything), d.fronts);

  std::vector<int> rank(count), front_of(count);
  d.first_row.resize(count);
  int next = 0;
  for (std::size_t f = 0; f < d.fronts.size(); ++f) {
    d.fronts[f].first_row = d.unknowns;
    for (const int node : d.fronts[f].nodes) {
      rank[at(node)] = next++;
      front_of[at(node)] = static_cast<int>(f);
      d.first_row[at(node)] = d.unknowns;
      d.unknowns += plate_unknowns + plate.rib_slots[at(node)];
    }
  }
  find_later_nodes(d.fronts, neighbours, rank);

  const auto place = [&](std::span<const int> nodes) {  // the front of whichever node is eliminated first
    return front_of[at(*std::ranges::min_element(nodes, {}, [&](int node) { return rank[at(node)]; }))];
  };
  for (std::size_t t = 0; t < plate.mesh.triangles.size(); ++t) {
    d.fronts[at(place(plate.mesh.triangles[t]))].triangles.push_back({static_cast<int>(t), plate.mesh.triangles[t]});
  }
  for (std::size_t r = 0; r < plate.ribs.size(); ++r) {
    const std::array<int, 3> nodes{plate.ribs[r].first, plate.ribs[r].second, plate.ribs[r].second};
    d.fronts[at(place(nodes))].ribs.push_back({static_cast<int>(r), nodes});
  }
  for (std::size_t s = 0; s < plate.springs.size(); ++s) {
    const int node = plate.springs[s].node;
    d.fronts[at(front_of[at(node)])].springs.push_back({static_cast<int>(s), {node, node, node}});
  }

  std::vector<int> row(count, -1);
  for (Front& front : d.fronts) {
    for (std::size_t k = 0; k < front.nodes.size(); ++k) {
      const int node = front.nodes[k], unknowns = plate_unknowns + plate.rib_slots[at(node)];
      row[at(node)] = front.all_unknowns;
      if (k >= at(front.own_nodes)) {
        for (int i = 0; i < unknowns; ++i) front.later_rows.push_back(d.first_row[at(node)] + i);
      } else {
        front.own_unknowns += unknowns;
      }
      front.all_unknowns += unknowns;
    }
    for (auto* parts : {&front.triangles, &front.ribs, &front.springs}) {
      for (Front::Part& part : *parts) {
        for (int& node : part.rows) node = row[at(node)];
      }
    }
    for (const int child : front.children) {
      Front& below = d.fronts[at(child)];
      for (std::size_t k = at(below.own_nodes); k < below.nodes.size(); ++k) {
        const int node = below.nodes[k];
        for (int i = 0; i < plate_unknowns + plate.rib_slots[at(node)]; ++i) {
          below.rows_in_parent.push_back(row[at(node)] + i);
        }
      }
    }
    const double n = front.own_unknowns, m = front.all_unknowns;
    d.factor_entries += at(front.own_unknowns) * at(front.all_unknowns);
    d.operations += n * n * n / 6 + n * n * (m - n) / 2 + n * (m - n) * (m - n) / 2;
  }
  return d;
}

}  // namespace tailblock
