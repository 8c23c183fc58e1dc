#include "body/factor.h"

#include <Eigen/Cholesky>

#include "quantity/refused.h"

namespace tailblock {
namespace {

using Block = Eigen::Map<Eigen::MatrixXd>;

std::size_t at(int index) { return static_cast<std::size_t>(index); }

/// Adds a small symmetric matrix to the lower half of a front; `place` is the front's row of each of its rows.
template <class Small, std::size_t size>
void add_lower(Block& front, const Small& small, const std::array<int, size>& place) {
  for (std::size_t j = 0; j < size; ++j) {
    for (std::size_t i = 0; i < size; ++i) {
      if (place[i] >= place[j]) front(place[i], place[j]) += small(static_cast<int>(i), static_cast<int>(j));
    }
  }
}

void add_parts(Block& block, const Front& front, const BracedPlate& plate) {
  for (const Front::Part& part : front.triangles) {
    const TriangleStiffness K =
        triangle_stiffness(plate.strains_of(at(part.index)), plate.sections[at(plate.section_of[at(part.index)])]);
    for (std::size_t a = 0; a < 3; ++a) {
      for (std::size_t b = 0; b < 3; ++b) {
        if (part.rows[a] < part.rows[b]) continue;
        block.block<plate_unknowns, plate_unknowns>(part.rows[a], part.rows[b]) +=
            K.block<plate_unknowns, plate_unknowns>(static_cast<int>(a) * plate_unknowns,
                                                    static_cast<int>(b) * plate_unknowns);
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
    block.block<plate_unknowns, plate_unknowns>(part.rows[0], part.rows[0]) += plate.springs[at(part.index)].stiffness;
  }
}

/// Adds what a child front left over.
void add_remainder(Block& block, const Eigen::MatrixXd& remainder, const std::vector<int>& rows) {
  for (Eigen::Index j = 0; j < remainder.cols(); ++j) {
    double* column = &block(0, rows[static_cast<std::size_t>(j)]);
    const double* from = &remainder(0, j);
    for (Eigen::Index i = j; i < remainder.rows(); ++i) column[rows[static_cast<std::size_t>(i)]] += from[i];
  }
}

}  // namespace

Factor::Factor(const BracedPlate& plate, const Dissection& dissection)
    : dissection_(&dissection), first_unknown_(first_unknowns(plate)), columns_(dissection.fronts.size()) {
  std::vector<Eigen::MatrixXd> remainder(dissection.fronts.size());
  std::vector<double> scratch;
  for (std::size_t f = 0; f < dissection.fronts.size(); ++f) {
    const Front& front = dissection.fronts[f];
    const int own = front.own_unknowns, later = front.all_unknowns - own;
    scratch.assign(at(front.all_unknowns) * at(front.all_unknowns), 0);
    Block block(scratch.data(), front.all_unknowns, front.all_unknowns);
    add_parts(block, front, plate);
    for (const int child : front.children) {
      add_remainder(block, remainder[at(child)], dissection.fronts[at(child)].rows_in_parent);
      remainder[at(child)].resize(0, 0);
    }
    for (int i = 0; i < own; ++i) {  // a brace unknown no glued piece touches
      if (block(i, i) == 0) block(i, i) = 1;
    }
    auto diagonal = block.topLeftCorner(own, own);
    const Eigen::LLT<Eigen::Ref<Eigen::MatrixXd>> pivots(diagonal);
    if (pivots.info() != Eigen::Success) throw Refused("rim: the top is not held");
    auto below = block.bottomLeftCorner(later, own);
    if (later > 0) {
      diagonal.triangularView<Eigen::Lower>().transpose().solveInPlace<Eigen::OnTheRight>(below);
      auto corner = block.bottomRightCorner(later, later);
      corner.selfadjointView<Eigen::Lower>().rankUpdate(below, -1);
      remainder[f] = corner;
    }
    columns_[f] = block.leftCols(own);
  }
}

Eigen::MatrixXd Factor::displacements(const Eigen::MatrixXd& loads) const {
  const Eigen::Index cases = loads.cols();
  using RowMajor = Eigen::Matrix<double, Eigen::Dynamic, Eigen::Dynamic, Eigen::RowMajor>;
  RowMajor x(loads.rows(), cases);
  const std::size_t nodes = dissection_->first_row.size();
  const auto unknowns = [&](std::size_t node) { return first_unknown_[node + 1] - first_unknown_[node]; };
  for (std::size_t n = 0; n < nodes; ++n) {
    x.middleRows(dissection_->first_row[n], unknowns(n)) = loads.middleRows(first_unknown_[n], unknowns(n));
  }
  Eigen::MatrixXd own, later;
  for (std::size_t f = 0; f < columns_.size(); ++f) {
    const Front& front = dissection_->fronts[f];
    own = x.middleRows(front.first_row, front.own_unknowns);
    columns_[f].topRows(front.own_unknowns).triangularView<Eigen::Lower>().solveInPlace(own);
    x.middleRows(front.first_row, front.own_unknowns) = own;
    later.noalias() = columns_[f].bottomRows(front.all_unknowns - front.own_unknowns) * own;
    for (Eigen::Index i = 0; i < later.rows(); ++i)
      x.row(front.later_rows[static_cast<std::size_t>(i)]) -= later.row(i);
  }
  for (std::size_t f = columns_.size(); f-- > 0;) {
    const Front& front = dissection_->fronts[f];
    own = x.middleRows(front.first_row, front.own_unknowns);
    later.resize(front.all_unknowns - front.own_unknowns, cases);
    for (Eigen::Index i = 0; i < later.rows(); ++i) later.row(i) = x.row(front.later_rows[static_cast<std::size_t>(i)]);
    own.noalias() -= columns_[f].bottomRows(later.rows()).transpose() * later;
    columns_[f].topRows(front.own_unknowns).triangularView<Eigen::Lower>().transpose().solveInPlace(own);
    x.middleRows(front.first_row, front.own_unknowns) = own;
  }
  Eigen::MatrixXd result(loads.rows(), cases);
  for (std::size_t n = 0; n < nodes; ++n) {
    result.middleRows(first_unknown_[n], unknowns(n)) = x.middleRows(dissection_->first_row[n], unknowns(n));
  }
  return result;
}

}  // namespace tailblock
