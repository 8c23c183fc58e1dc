#pragma once

#include <array>
#include <vector>

#include "body/braced_plate.h"

/// In which order the unknowns of a plate are eliminated, and what each step of the elimination touches. Depends on the
/// mesh and on which nodes carry braces, not on any stiffness: found once, used for every change of wood or thickness.
namespace tailblock {

/// Unknowns eliminated together, and those still to come that they are tied to.
struct Front {
  std::vector<int> nodes;                  ///< its own first, then the others, in the order of elimination
  int own_nodes = 0;                       ///< how many of them are eliminated here
  int own_unknowns = 0, all_unknowns = 0;  ///< rows of its dense block
  int first_row = 0;                       ///< place of its own unknowns in the order of elimination
  std::vector<int> later_rows;             ///< places of the others
  std::vector<int> children;               ///< fronts whose remainder is added here
  std::vector<int> rows_in_parent;         ///< of the others
  /// Parts of the plate that are summed here, each with the row of its nodes' first unknowns.
  struct Part {
    int index = 0;
    std::array<int, 3> rows{};
  };
  std::vector<Part> triangles, ribs, springs;
};

/// Nested dissection by the nodes' own places: a set of nodes is cut across its longer side near the middle, where the
/// fewest nodes part the halves; those are eliminated after both halves. Source: George 1973, SIAM J. Numer. Anal. 10,
/// 345 (from memory).
struct Dissection {
  std::vector<Front> fronts;   ///< every front after its children
  std::vector<int> first_row;  ///< of each node, in the order of elimination
  int unknowns = 0;
  std::size_t factor_entries = 0;  ///< numbers kept for solving
  double operations = 0;           ///< multiplications of one factorisation
};
[[nodiscard]] Dissection dissect(const BracedPlate& plate);

}  // namespace tailblock
