#include "body/factor.h"

#include <algorithm>
#include <cassert>

#include "body/dense_front.h"
#include "quantity/refused.h"

namespace tailblock {
namespace {

std::size_t at(int index) { return static_cast<std::size_t>(index); }

/// Adds a small symmetric matrix to the lower half of a front; `place` is the front's row of each of its rows.
template <class Small, std::size_t size>
void add_lower(const DenseFront& front, const Small& small, const std::array<int, size>& place) {
  for (std::size_t j = 0; j < size; ++j) {
    for (std::size_t i = 0; i < size; ++i) {
      if (place[i] >= place[j]) front.column(place[j])[place[i]] += small(static_cast<int>(i), static_cast<int>(j));
    }
  }
}

/// Adds the unknowns of one node against those of another, or against its own.
template <class Small>
void add_nodes(const DenseFront& front, const Small& small, int row, int column) {
  for (int j = 0; j < plate_unknowns; ++j) {
    double* to = front.column(column + j) + row;
    for (int i = 0; i < plate_unknowns; ++i) to[i] += small(i, j);
  }
}

void add_parts(const DenseFront& block, const Front& front, const BracedPlate& plate) {
  for (const Front::Part& part : front.triangles) {
    const TriangleStiffness K =
        triangle_stiffness((*plate.strains)[at(part.index)], plate.sections[at(plate.section_of[at(part.index)])]);
    for (std::size_t a = 0; a < 3; ++a) {
      for (std::size_t b = 0; b < 3; ++b) {
        if (part.rows[a] < part.rows[b]) continue;
        add_nodes(block,
                  K.block<plate_unknowns, plate_unknowns>(static_cast<int>(a) * plate_unknowns,
                                                          static_cast<int>(b) * plate_unknowns),
                  part.rows[a], part.rows[b]);
      }
    }
  }
  for (const Front::Part& part : front.ribs) {
    const PlacedRib& rib = plate.ribs[at(part.index)];
    std::array<int, 12> place{};
    for (int i = 0; i < plate_unknowns; ++i)
      place[at(i)] = part.rows[0] + i, place[at(rib_unknowns + i)] = part.rows[1] + i;
    place[5] = part.rows[0] + plate_unknowns + rib.first_slot;
    place[11] = part.rows[1] + plate_unknowns + rib.second_slot;
    add_lower(block, rib_stiffness(rib.segment), place);
  }
  for (const Front::Part& part : front.springs) {
    add_nodes(block, plate.springs[at(part.index)].stiffness, part.rows[0], part.rows[0]);
  }
}

/// Adds what a child front left over.
void add_remainder(const DenseFront& block, const std::vector<double>& remainder, const std::vector<int>& rows) {
  const double* from = remainder.data();
  for (std::size_t j = 0; j < rows.size(); ++j, from += rows.size()) {
    double* column = block.column(rows[j]);
    for (std::size_t i = j; i < rows.size(); ++i) column[rows[i]] += from[i];
  }
}

std::size_t area(int rows, int columns) { return at(rows) * at(columns); }

}  // namespace

Factor::Factor(const BracedPlate& plate, const Dissection& dissection, FactorMemory memory)
    : dissection_(&dissection), first_unknown_(first_unknowns(plate)), first_entry_{0}, memory_(std::move(memory)) {
  assert(plate.strains && plate.strains->size() == plate.mesh.triangles.size() && "find_strains was called");
  for (const Front& front : dissection.fronts) {
    first_entry_.push_back(first_entry_.back() + area(front.own_unknowns, front.all_unknowns));
  }
  memory_.columns.resize(first_entry_.back());
  std::vector<std::vector<double>> remainder(dissection.fronts.size());
  for (std::size_t f = 0; f < dissection.fronts.size(); ++f) {
    const Front& front = dissection.fronts[f];
    const int own = front.own_unknowns, later = front.all_unknowns - own;
    if (!memory_.remainders.empty()) {
      remainder[f] = std::move(memory_.remainders.back());
      memory_.remainders.pop_back();
    }
    remainder[f].assign(area(later, later), 0);
    const DenseFront dense{.own = own, .all = front.all_unknowns, .columns = block(f), .corner = remainder[f]};
    std::ranges::fill(dense.columns, 0);
    add_parts(dense, front, plate);
    for (const int child : front.children) {
      add_remainder(dense, remainder[at(child)], dissection.fronts[at(child)].rows_in_parent);
      memory_.remainders.push_back(std::move(remainder[at(child)]));
    }
    for (int i = 0; i < own; ++i) {  // a brace unknown no glued piece touches
      if (dense.column(i)[i] == 0) dense.column(i)[i] = 1;
    }
    if (!eliminate(dense, memory_.scratch)) throw Refused("rim: the top is not held");
  }
}

Eigen::MatrixXd Factor::displacements(const Eigen::MatrixXd& loads) {
  const std::size_t nodes = dissection_->first_row.size();
  const auto each = [&](std::size_t node, auto&& place) {
    for (int i = first_unknown_[node]; i < first_unknown_[node + 1]; ++i)
      place(i, at(dissection_->first_row[node] + i - first_unknown_[node]) * right_sides);
  };
  Eigen::MatrixXd result(loads.rows(), loads.cols());
  std::vector<double>& x = memory_.unknowns;
  for (Eigen::Index first = 0; first < loads.cols(); first += right_sides) {
    const Eigen::Index cases = std::min<Eigen::Index>(right_sides, loads.cols() - first);
    x.assign(at(dissection_->unknowns) * right_sides, 0);
    for (std::size_t n = 0; n < nodes; ++n) {
      each(n, [&](int i, std::size_t row) {
        for (Eigen::Index c = 0; c < cases; ++c) x[row + static_cast<std::size_t>(c)] = loads(i, first + c);
      });
    }
    solve();
    for (std::size_t n = 0; n < nodes; ++n) {
      each(n, [&](int i, std::size_t row) {
        for (Eigen::Index c = 0; c < cases; ++c) result(i, first + c) = x[row + static_cast<std::size_t>(c)];
      });
    }
  }
  return result;
}

void Factor::solve() {
  std::vector<double>&x = memory_.unknowns, &z = memory_.scratch;
  const auto eliminated = [&](std::size_t f) {
    const Front& front = dissection_->fronts[f];
    return EliminatedColumns{.own = front.own_unknowns, .all = front.all_unknowns, .columns = block(f)};
  };
  const auto row = [&](std::vector<double>& rows, int index) {
    return rows.begin() + static_cast<std::ptrdiff_t>(index) * right_sides;
  };
  for (std::size_t f = 0; f < dissection_->fronts.size(); ++f) {
    const Front& front = dissection_->fronts[f];
    z.assign(at(front.all_unknowns) * right_sides, 0);
    std::copy_n(row(x, front.first_row), front.own_unknowns * right_sides, z.begin());
    solve_forward(eliminated(f), z);
    std::copy_n(z.begin(), front.own_unknowns * right_sides, row(x, front.first_row));
    auto from = row(z, front.own_unknowns);
    for (const int later : front.later_rows) {
      const auto to = row(x, later);
      for (int c = 0; c < right_sides; ++c) to[c] += *from++;
    }
  }
  for (std::size_t f = dissection_->fronts.size(); f-- > 0;) {
    const Front& front = dissection_->fronts[f];
    z.resize(at(front.all_unknowns) * right_sides);
    std::copy_n(row(x, front.first_row), front.own_unknowns * right_sides, z.begin());
    auto to = row(z, front.own_unknowns);
    for (const int later : front.later_rows) to = std::copy_n(row(x, later), right_sides, to);
    solve_backward(eliminated(f), z);
    std::copy_n(z.begin(), front.own_unknowns * right_sides, row(x, front.first_row));
  }
}

}  // namespace tailblock
