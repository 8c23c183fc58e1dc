#include "paper/set_blocks.h"

#include <algorithm>

#include "paper/sheet.h"

namespace tailblock {
namespace {

constexpr double between_paragraphs = 2.2, between_words = 0.7, box_mm = 3.1;

SetText::Style style_of(Voice voice, Hold hold, bool bold) {
  SetText::Style style{.size_mm = type_size::body, .bold = bold, .hold = hold};
  if (voice == Voice::strong) style.bold = true;
  if (voice == Voice::soft) style.size_mm = type_size::small, style.ink = Ink::soft;
  if (voice == Voice::caution) style.ink = Ink::accent;
  return style;
}

void append(SetStack& stack, const std::string& words, const SetText::Style& style, double wide_mm, double before_mm,
            const std::string& lead = {}) {
  const auto text = std::make_shared<const SetText>(words, style, wide_mm, lead);
  for (int i = 0; i < text->lines(); ++i) {
    stack.push_back({.text = text, .line = i, .high_mm = text->pitch_mm(), .before_mm = i == 0 ? before_mm : 0});
  }
}

/// How wide a box with its label is, with the space to the next.
double wide_of(const TickBox& box) {
  return box_mm + 1.3 + SetText(box.label, {.size_mm = type_size::body}, 200).widest_mm() + 4;
}

void draw_box(Sheet& sheet, const TickBox& box, double x, double baseline) {
  const double top = baseline - box_mm + 0.4, bottom = top + box_mm, right = x + box_mm;
  sheet.line(x, top, right, top, 0.25);
  sheet.line(right, top, right, bottom, 0.25);
  sheet.line(right, bottom, x, bottom, 0.25);
  sheet.line(x, bottom, x, top, 0.25);
  if (box.ticked) {
    sheet.line(x + 0.6, top + 0.55 * box_mm, x + 1.3, bottom - 0.6, 0.5);
    sheet.line(x + 1.3, bottom - 0.6, right - 0.5, top + 0.5, 0.5);
  }
  if (!box.label.empty()) sheet.draw(SetText(box.label, {.size_mm = type_size::body}, 200), 0, right + 1.3, baseline);
}

/// Line by line, so that a long one can go over two pages, but never with a single line on either.
void push_lines(Flow& flow, const SetStack& stack, double indent_mm, const std::vector<TagStep>& tags,
                double before_mm) {
  for (std::size_t i = 0; i < stack.size(); ++i) {
    PagePiece piece{.high_mm = stack[i].high_mm, .before_mm = stack[i].before_mm, .tags = tags};
    if (i == 0) piece.before_mm = before_mm;
    piece.keeps_next = stack.size() > 1 && (i == 0 || i + 2 == stack.size());
    piece.draw = [line = stack[i], indent_mm](Sheet& sheet, double x, double top) {
      draw_line(sheet, line, x + indent_mm, top);
    };
    flow.pieces.push_back(std::move(piece));
  }
}

class Setter {
 public:
  Setter(Flow& flow, double wide_mm, double page_mm) : flow_(flow), wide_(wide_mm), page_(page_mm) {}

  void title(const Document& document) {
    SetStack stack;
    append(stack, document.title, {.size_mm = type_size::title, .bold = true}, wide_, 0);
    push_kept(stack, {{"H1", ++number_}}, 0);
    SetStack under;
    append(under, document.subtitle, {.size_mm = type_size::body, .ink = Ink::soft}, wide_, 0);
    push_kept(under, {{"P", ++number_}}, 0.5);
  }

  void operator()(const Heading& heading) {
    const bool part = heading.level > 2;
    const double size = part                 ? type_size::part
                        : heading.level == 2 ? type_size::section
                        : heading.level == 1 ? type_size::title
                                             : type_size::across_the_room;
    SetStack stack;
    append(stack, heading.text, {.size_mm = size, .bold = true}, wide_, 0);
    push_kept(stack, {{part ? "H3" : "H2", ++number_}}, part ? 4 : 6.5);
  }

  void operator()(const Paragraph& paragraph) {
    push_lines(flow_, stack_of({paragraph.words}, wide_), 0, {{"P", ++number_}}, after_heading());
  }

  void operator()(const Bullets& bullets) {
    constexpr double indent = 4.5;
    const TagStep list{"L", ++number_};
    for (const Words& item : bullets.items) {
      const std::size_t first = flow_.pieces.size();
      push_lines(flow_, stack_of({item}, wide_ - indent), indent, {list, {"LI", ++number_}},
                 &item == &bullets.items.front() ? after_heading() : 1.1);
      if (flow_.pieces.size() == first) continue;
      const std::ptrdiff_t at = &item - bullets.items.data(), last = std::ssize(bullets.items) - 1;
      flow_.pieces.back().keeps_next = at < last && (at == 0 || at + 1 == last);
      PagePiece& piece = flow_.pieces[first];
      piece.draw = [line = std::move(piece.draw)](Sheet& sheet, double x, double top) {
        sheet.fill(x + 1.2, top + 2.15, 1.2, 0.4, Ink::soft);
        line(sheet, x, top);
      };
    }
  }

  void operator()(const Notice& notice) {
    constexpr double pad = 2.6, bar = 1;
    const bool caution = notice.kind == Notice::Kind::caution;
    const double words_wide = wide_ - bar - 2 * pad - 1;
    SetStack stack;
    append(stack, notice.title, {.size_mm = type_size::body, .bold = true, .ink = caution ? Ink::accent : Ink::ink},
           words_wide, 0);
    for (SetLine& line : stack_of(notice.words, words_wide)) stack.push_back(std::move(line));
    // Together if it can be; else line by line, each with its own piece of the bar.
    const bool whole = height_of(stack) < page_ / 2;
    const std::size_t step = whole ? stack.size() : 1;
    const std::vector<TagStep> tags{{"Sect", ++number_}, {"P", number_}};
    for (std::size_t first = 0; first < stack.size(); first += step) {
      const SetStack part(stack.begin() + static_cast<std::ptrdiff_t>(first),
                          stack.begin() + static_cast<std::ptrdiff_t>(first + step));
      const double over = first == 0 ? pad - 0.4 : 0, under = first + step == stack.size() ? pad - 0.4 : 0;
      PagePiece piece{.high_mm = height_of(part) + over + under,
                      .before_mm = first == 0 ? 3.0 : 0,
                      .keeps_next = first == 0 && !whole,
                      .tags = tags};
      piece.draw = [part, caution, over, wide = wide_, high = piece.high_mm](Sheet& sheet, double x, double top) {
        if (caution) sheet.fill(x, top, wide, high, Ink::wash);
        sheet.fill(x, top, bar, high, caution ? Ink::accent : Ink::band_half);
        draw_stack(sheet, part, x + bar + pad, top + over);
      };
      flow_.pieces.push_back(std::move(piece));
    }
  }

  void operator()(const Facts& facts) {
    double named = 0;
    const auto name_style = SetText::Style{.size_mm = type_size::body, .ink = Ink::soft};
    for (const Facts::Fact& fact : facts.facts) {
      named = std::max(named, SetText(fact.name, name_style, 200).widest_mm() + 3.5);
    }
    named = std::min(named, 0.22 * wide_);
    const double half = (wide_ - 6) / 2;
    for (std::size_t i = 0; i < facts.facts.size(); i += 2) {
      PagePiece piece{.before_mm = i == 0 ? 3 : 0.8, .tags = {{"P", ++number_}}};
      std::vector<std::pair<double, SetStack>> stacks;
      for (std::size_t k = i; k < std::min(i + 2, facts.facts.size()); ++k) {
        const double x = k == i ? 0 : half + 6;
        SetStack name, value;
        append(name, facts.facts[k].name, name_style, named, 0);
        append(value, facts.facts[k].value, {.size_mm = type_size::body}, half - named, 0);
        piece.high_mm = std::max({piece.high_mm, height_of(name), height_of(value)});
        stacks.emplace_back(x, std::move(name));
        stacks.emplace_back(x + named, std::move(value));
      }
      piece.draw = [stacks](Sheet& sheet, double x, double top) {
        for (const auto& [from, stack] : stacks) draw_stack(sheet, stack, x + from, top);
      };
      flow_.pieces.push_back(std::move(piece));
    }
  }

  void operator()(const Table& table) { set_table(flow_, table, wide_, page_, number_ += 10000); }

  void operator()(const Figure& figure) {
    const double most_wide = figure.beside.empty() ? wide_ : 0.5 * wide_;
    const double scale = std::min({1.0, most_wide / figure.picture.width_mm, 0.6 * page_ / figure.picture.height_mm});
    const double wide = scale * figure.picture.width_mm, high = scale * figure.picture.height_mm;
    const SetStack beside = stack_of(figure.beside, wide_ - wide - 7);
    SetStack caption;
    append(caption, figure.caption, {.size_mm = type_size::small, .ink = Ink::soft}, wide_, 0);
    PagePiece piece{.high_mm = std::max(high, height_of(beside)),
                    .before_mm = 3,
                    .keeps_next = !caption.empty(),
                    .tags = {{"Figure", ++number_}}};
    piece.draw = [picture = figure.picture, beside, scale, wide](Sheet& sheet, double x, double top) {
      sheet.picture(picture, x, top, scale);
      draw_stack(sheet, beside, x + wide + 7, top);
    };
    if (beside.empty()) {
      piece.least_mm = 0.75 * piece.high_mm;
      piece.draw_smaller = [picture = figure.picture](Sheet& sheet, double x, double top, double drawn_high) {
        sheet.picture(picture, x, top, drawn_high / picture.height_mm);
      };
    }
    flow_.pieces.push_back(std::move(piece));
    if (caption.empty()) return;
    push_lines(flow_, caption, 0, {{"Caption", ++number_}}, 1.5);
    for (std::size_t i = 2; i <= caption.size(); ++i) flow_.pieces[flow_.pieces.size() - i].keeps_next = true;
  }

  /// Three side by side, all as wide; a tall one is drawn narrower, so that none is higher than it is wide.
  void operator()(const PhotoRow& row) {
    constexpr double between = 5;
    const double each = (wide_ + between) / static_cast<double>(photos_across) - between;
    for (std::size_t first = 0; first < row.shots.size(); first += photos_across) {
      PagePiece piece{.before_mm = first == 0 ? 3.0 : 4.0, .tags = {{"Figure", ++number_}}};
      std::vector<std::pair<PhotoRow::Shot, SetStack>> set;
      for (std::size_t i = first; i < std::min(first + photos_across, row.shots.size()); ++i) {
        SetStack caption;
        append(caption, row.shots[i].caption, {.size_mm = type_size::small, .ink = Ink::soft}, each, 0);
        piece.high_mm = std::max(piece.high_mm, each + 1.2 + height_of(caption));
        set.emplace_back(row.shots[i], std::move(caption));
      }
      double highest = 0;
      for (const auto& [shot, caption] : set) highest = std::max(highest, high_of(shot, each));
      piece.high_mm -= each - highest;
      piece.draw = [set, each, highest](Sheet& sheet, double x, double top) {
        for (const auto& [shot, caption] : set) {
          const double high = high_of(shot, each), wide = high * shot.width_px / shot.height_px;
          sheet.photo({shot.jpeg, shot.width_px, shot.height_px}, x, top + highest - high, wide);
          draw_stack(sheet, caption, x, top + highest + 1.2);
          x += each + between;
        }
      };
      flow_.pieces.push_back(std::move(piece));
    }
  }

  void operator()(const ToSign& sign) {
    constexpr double between = 6, over = 11;
    if (!flow_.pieces.empty()) flow_.pieces.back().keeps_next = true;
    const double each = (wide_ + between) / static_cast<double>(sign.names.size()) - between;
    PagePiece piece{.high_mm = over + 5, .before_mm = 3, .tags = {{"P", ++number_}}};
    piece.draw = [names = sign.names, each](Sheet& sheet, double x, double top) {
      for (const std::string& name : names) {
        sheet.line(x, top + over, x + each, top + over, 0.25);
        sheet.draw(SetText(name, {.size_mm = type_size::small, .ink = Ink::soft}, each), 0, x, top + over + 3.6);
        x += each + between;
      }
    };
    flow_.pieces.push_back(std::move(piece));
  }

  void operator()(const CutLine&) {
    PagePiece piece{.high_mm = 6, .before_mm = 8};
    piece.draw = [wide = wide_](Sheet& sheet, double x, double top) {
      sheet.line(x, top + 3, x + wide, top + 3, 0.25, Ink::soft, true);
    };
    flow_.pieces.push_back(std::move(piece));
  }

 private:
  static double high_of(const PhotoRow::Shot& shot, double most_mm) {
    return std::min(most_mm, most_mm * shot.height_px / shot.width_px);
  }
  [[nodiscard]] double after_heading() const {
    return !flow_.pieces.empty() && !flow_.pieces.back().tags.empty() && flow_.pieces.back().tags[0].name[0] == 'H'
               ? 1.5
               : between_paragraphs;
  }
  void push_kept(const SetStack& stack, const std::vector<TagStep>& tags, double before_mm) {
    push_lines(flow_, stack, 0, tags, before_mm);
    for (std::size_t i = 0; i < stack.size(); ++i) flow_.pieces[flow_.pieces.size() - 1 - i].keeps_next = true;
  }

  Flow& flow_;
  double wide_, page_;
  int number_ = 0;
};

}  // namespace

SetStack stack_of(const std::vector<Words>& words, double wide_mm, Hold hold, bool bold) {
  SetStack stack;
  for (const Words& part : words) {
    append(stack, part.text, style_of(part.voice, hold, bold), wide_mm, stack.empty() ? 0 : between_words, part.lead);
  }
  return stack;
}

SetStack stack_of(const TableCell& cell, double wide_mm, Hold hold, bool bold) {
  SetStack stack;
  double along = 0;
  for (const TickBox& box : cell.boxes) {
    const double wide = wide_of(box);
    if (along == 0 || along + wide > wide_mm + 4) {
      stack.push_back({.high_mm = type_size::body * 1.35, .before_mm = stack.empty() ? 0 : between_words});
      along = 0;
    }
    stack.back().boxes.push_back(box);
    along += wide;
  }
  for (SetLine& line : stack_of(cell.words, wide_mm, hold, bold)) {
    if (line.line == 0 && !stack.empty()) line.before_mm = between_words;
    stack.push_back(std::move(line));
  }
  return stack;
}

double height_of(const SetStack& stack) {
  double high = 0;
  for (const SetLine& line : stack) high += line.before_mm + line.high_mm;
  return high;
}

void draw_line(Sheet& sheet, const SetLine& line, double x_mm, double top_mm) {
  const double baseline =
      top_mm + 0.5 * line.high_mm + 0.36 * (line.text ? line.text->style().size_mm : type_size::body);
  if (line.text) sheet.draw(*line.text, line.line, x_mm, baseline);
  for (const TickBox& box : line.boxes) {
    draw_box(sheet, box, x_mm, baseline);
    x_mm += wide_of(box);
  }
}

void draw_stack(Sheet& sheet, const SetStack& stack, double x_mm, double top_mm) {
  for (const SetLine& line : stack) {
    top_mm += line.before_mm;
    draw_line(sheet, line, x_mm, top_mm);
    top_mm += line.high_mm;
  }
}

Flow flow_of(const Document& document, double wide_mm, double page_mm) {
  Flow flow;
  Setter setter(flow, wide_mm, page_mm);
  setter.title(document);
  for (const Block& block : document.blocks) std::visit(setter, block);
  return flow;
}

}  // namespace tailblock
