#pragma once

#include <array>
#include <string_view>

namespace tailblock {

/// Body sizes in words of form, small to large; their widths are in data/body_designs.csv.
enum class BodySize { parlour, small, mid_size, slope_large, square_large };
inline constexpr std::array<std::string_view, 5> body_size_names{"parlour", "small", "mid_size", "slope_large",
                                                                 "square_large"};

/// How the top is braced.
enum class Bracing { x_braced, ladder, fan, other };
inline constexpr std::array<std::string_view, 4> bracing_names{"x_braced", "ladder", "fan", "other"};

}  // namespace tailblock
