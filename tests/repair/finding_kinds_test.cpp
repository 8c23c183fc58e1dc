#include "repair/finding_kinds.h"

#include <gtest/gtest.h>

#include <array>

#include "published.h"

namespace tailblock {
namespace {

TEST(FindingKinds, every_view_has_kinds_of_every_shape_or_says_why_not) {
  const auto kinds = finding_kinds(testing::repository_file("data/finding_kinds.csv"));
  EXPECT_GT(kinds.size(), 30U);
  for (std::size_t view = 0; view < drawing_view_names.size(); ++view) {
    std::array<int, 3> of_shape{};
    for (const FindingKind& kind : kinds) {
      for (const DrawingView place : kind.places) {
        if (static_cast<std::size_t>(place) == view) ++of_shape.at(static_cast<std::size_t>(kind.shape));
      }
    }
    for (const int count : of_shape) EXPECT_GT(count, 0) << drawing_view_names[view];
  }
}

TEST(FindingKinds, a_wrong_cell_is_named) {
  const auto refusal = [](const std::string& row) -> std::string {
    try {
      (void)finding_kinds("name,words,shape,measures,places,source,note\n" + row);
    } catch (const Refused& refused) {
      return refused.what();
    }
    return "not refused";
  };
  EXPECT_EQ(refusal("crack,crack,blob,,front,assumed,"),
            "finding_kinds.csv line 2, shape: \"blob\" is not point, line or area");
  EXPECT_EQ(refusal("crack,crack,line,,under,assumed,"), "finding_kinds.csv line 2, places: \"under\" is not a view");
  EXPECT_EQ(refusal("crack,crack,line,,front,assumed,\ncrack,crack,line,,front,assumed,"),
            "finding_kinds.csv line 3, name: it comes twice");
}

TEST(FindingKinds, are_found_by_name) {
  const auto kinds = finding_kinds("name,words,shape,measures,places,source,note\ncrack,crack,line,a;b,front;back,x,");
  ASSERT_NE(finding_kind(kinds, "crack"), nullptr);
  EXPECT_EQ(finding_kind(kinds, "crack")->measures, (std::vector<std::string>{"a", "b"}));
  EXPECT_EQ(finding_kind(kinds, "no such"), nullptr);
}

}  // namespace
}  // namespace tailblock
