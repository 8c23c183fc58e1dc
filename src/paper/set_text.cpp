#include "paper/set_text.h"

#include <pango/pangocairo.h>

#include <algorithm>
#include <cmath>
#include <set>

namespace tailblock {
namespace {

constexpr double points_per_mm = 72 / 25.4;
constexpr double line_spacing = 1.35;

struct Unref {
  void operator()(void* object) const { g_object_unref(object); }
  void operator()(PangoFontDescription* font) const { pango_font_description_free(font); }
  void operator()(PangoAttrList* list) const { pango_attr_list_unref(list); }
  void operator()(cairo_font_options_t* options) const { cairo_font_options_destroy(options); }
};
template <class T>
using Held = std::unique_ptr<T, Unref>;

double points(double mm) { return mm * points_per_mm; }

/// Paper has no pixels: nothing is fitted to a grid, so that the same words have the same width everywhere.
Held<PangoContext> context_for_paper() {
  Held<PangoContext> context(pango_font_map_create_context(pango_cairo_font_map_get_default()));
  const Held<cairo_font_options_t> options(cairo_font_options_create());
  cairo_font_options_set_hint_style(options.get(), CAIRO_HINT_STYLE_NONE);
  cairo_font_options_set_hint_metrics(options.get(), CAIRO_HINT_METRICS_OFF);
  cairo_font_options_set_antialias(options.get(), CAIRO_ANTIALIAS_GRAY);
  pango_cairo_context_set_font_options(context.get(), options.get());
  pango_cairo_context_set_resolution(context.get(), 72);
  pango_context_set_round_glyph_positions(context.get(), FALSE);
  pango_context_set_base_dir(context.get(), PANGO_DIRECTION_LTR);
  // The language chooses between fonts for one character; the computer's own must not.
  pango_context_set_language(context.get(), pango_language_from_string("en"));
  return context;
}

void add(PangoAttrList* list, PangoAttribute* attribute, std::size_t from, std::size_t to) {
  attribute->start_index = static_cast<guint>(from);
  attribute->end_index = static_cast<guint>(to);
  pango_attr_list_insert(list, attribute);
}

/// What stays on one line: a word with a figure in it (`5/64`, `.003`), the figure with the short word after it (`46
/// %`, `5 Feb`), a sum with its sign (`5/64 + .003`).
void keep_figures_whole(PangoAttrList* list, std::string_view words) {
  struct Word {
    std::size_t from, to;
  };
  std::vector<Word> all;
  for (std::size_t i = 0; i < words.size();) {
    if (words[i] == ' ' || words[i] == '\n' || words[i] == '\t') {
      ++i;
      continue;
    }
    const std::size_t end = std::min(words.find_first_of(" \n\t", i), words.size());
    all.push_back({i, end});
    i = end;
  }
  const auto has_figure = [&](const Word& word) {
    return words.substr(word.from, word.to - word.from).find_first_of("0123456789") != std::string_view::npos;
  };
  constexpr std::size_t short_word = 4, longest_figure = 16;
  const auto is_short = [&](std::size_t i) { return all[i].to - all[i].from <= short_word; };
  const auto letters = [&](std::size_t i) {
    return std::all_of(words.begin() + static_cast<std::ptrdiff_t>(all[i].from),
                       words.begin() + static_cast<std::ptrdiff_t>(all[i].to),
                       [](char c) { return ('a' <= c && c <= 'z') || ('A' <= c && c <= 'Z'); });
  };
  for (std::size_t i = 0; i < all.size(); ++i) {
    if (!has_figure(all[i]) || all[i].to - all[i].from > longest_figure) continue;
    std::size_t first = i, last = i;
    const char end = words[all[i].to - 1];
    if (i + 1 < all.size() && words[all[i].to] == ' ' && '0' <= end && end <= '9' && is_short(i + 1)) last = i + 1;
    const bool sum =
        last > i && all[last].to - all[last].from == 1 && last + 1 < all.size() && has_figure(all[last + 1]);
    if (sum) ++last;
    if (i > 0 && words[all[i - 1].to] == ' ' && is_short(i - 1) && letters(i - 1)) first = i - 1;
    add(list, pango_attr_allow_breaks_new(FALSE), all[first].from, all[last].to);
  }
}

}  // namespace

struct SetText::Layout {
  Held<PangoContext> context = context_for_paper();
  Held<PangoLayout> layout{pango_layout_new(context.get())};
};

SetText::SetText(const std::string& words, const Style& style, double wide_mm, const std::string& lead)
    : style_(style), words_(lead.empty() || words.empty() ? lead + words : lead + "  " + words) {
  auto made = std::make_shared<Layout>();
  PangoLayout* layout = made->layout.get();
  const Held<PangoFontDescription> font(pango_font_description_new());
  pango_font_description_set_family(font.get(), "Inter");
  pango_font_description_set_weight(font.get(), style.bold ? PANGO_WEIGHT_BOLD : PANGO_WEIGHT_NORMAL);
  pango_font_description_set_absolute_size(font.get(), points(style.size_mm) * PANGO_SCALE);
  pango_layout_set_font_description(layout, font.get());
  const Held<PangoAttrList> attributes(pango_attr_list_new());
  add(attributes.get(), pango_attr_font_features_new("tnum"), 0, words_.size());
  add(attributes.get(), pango_attr_insert_hyphens_new(FALSE), 0, words_.size());
  keep_figures_whole(attributes.get(), words_);
  if (!lead.empty()) add(attributes.get(), pango_attr_weight_new(PANGO_WEIGHT_BOLD), 0, lead.size());
  pango_layout_set_attributes(layout, attributes.get());
  pango_layout_set_text(layout, words_.data(), static_cast<int>(words_.size()));
  pango_layout_set_width(layout, static_cast<int>(std::lround(points(wide_mm) * PANGO_SCALE)));
  pango_layout_set_wrap(layout, PANGO_WRAP_WORD_CHAR);
  if (style.one_line) pango_layout_set_ellipsize(layout, PANGO_ELLIPSIZE_END);
  pango_layout_set_alignment(layout, style.hold == Hold::start    ? PANGO_ALIGN_LEFT
                                     : style.hold == Hold::middle ? PANGO_ALIGN_CENTER
                                                                  : PANGO_ALIGN_RIGHT);
  layout_ = std::move(made);
}

int SetText::lines() const { return words_.empty() ? 0 : pango_layout_get_line_count(layout_->layout.get()); }

double SetText::pitch_mm() const { return line_spacing * style_.size_mm; }

double SetText::widest_mm() const {
  PangoRectangle logical;
  pango_layout_get_extents(layout_->layout.get(), nullptr, &logical);
  return logical.width / points_per_mm / PANGO_SCALE;
}

std::string SetText::missing() const {
  if (pango_layout_get_unknown_glyphs_count(layout_->layout.get()) == 0) return "";
  std::set<std::size_t> places;
  PangoLayoutIter* walk = pango_layout_get_iter(layout_->layout.get());
  do {
    const PangoLayoutRun* run = pango_layout_iter_get_run_readonly(walk);
    if (run == nullptr) continue;
    for (int i = 0; i < run->glyphs->num_glyphs; ++i) {
      if ((run->glyphs->glyphs[i].glyph & PANGO_GLYPH_UNKNOWN_FLAG) == 0) continue;
      places.insert(static_cast<std::size_t>(run->item->offset + run->glyphs->log_clusters[i]));
    }
  } while (pango_layout_iter_next_run(walk));
  pango_layout_iter_free(walk);
  std::string missing;
  for (const std::size_t place : places) {
    const char* at = words_.data() + place;
    missing.append(at, static_cast<std::size_t>(g_utf8_next_char(at) - at));
  }
  return missing;
}

void SetText::show(_cairo* draw, int line, double x_points, double y_points) const {
  PangoLayout* layout = layout_->layout.get();
  PangoLayoutLine* set = pango_layout_get_line_readonly(layout, line);
  PangoRectangle logical;
  pango_layout_line_get_extents(set, nullptr, &logical);
  const double spare = static_cast<double>(pango_layout_get_width(layout) - logical.width) / PANGO_SCALE;
  if (style_.hold == Hold::middle) x_points += spare / 2;
  if (style_.hold == Hold::end) x_points += spare;
  const auto [red, green, blue] = rgb(style_.ink);
  cairo_set_source_rgb(draw, red, green, blue);
  cairo_move_to(draw, x_points, y_points);
  pango_cairo_show_layout_line(draw, set);
}

}  // namespace tailblock
