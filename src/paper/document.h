#pragma once

#include <string>
#include <variant>
#include <vector>

#include "paper/picture.h"
#include "quantity/date.h"

namespace tailblock {

/// A page of the shop's paper as what it says, not how it looks. Two writers turn it into bytes: document_pdf.h for the
/// printer and document_html.h for the browser, so that both always say the same.

enum class Voice { plain, strong, soft, caution };

/// A run of text. The lead is said first, in bold: `Glue:` hot hide glue. A line feed in the text begins a new line.
struct Words {
  std::string text;
  std::string lead{};
  Voice voice = Voice::plain;
};

struct Heading {
  int level = 2;  ///< 0 to be read across a room, 1 as large as the title, 2 of a section, 3 of a part of it
  std::string text;
};

struct Paragraph {
  Words words;
};

struct Bullets {
  std::vector<Words> items;
};

/// What must not be passed over: a caution, something that cannot be undone, a figure that is not certain.
struct Notice {
  enum class Kind { plain, caution };
  Kind kind = Kind::plain;
  std::string title;
  std::vector<Words> words;
};

/// Names and what they are: `Owner` Anna.
struct Facts {
  struct Fact {
    std::string name, value;
  };
  std::vector<Fact> facts;
};

/// A box to tick by hand, or ticked already.
struct TickBox {
  std::string label;
  bool ticked = false;
};

struct TableCell {
  std::vector<Words> words{};
  std::vector<TickBox> boxes{};
};

struct TableColumn {
  std::string head;
  double share = 1;  ///< of the width, against the other columns'
  Hold hold = Hold::start;
};

struct TableRow {
  enum class Kind { plain, group, total };
  std::vector<TableCell> cells;  ///< as many as columns; a group row has one, over all of them
  Kind kind = Kind::plain;
};

struct Table {
  std::string caption;
  std::vector<TableColumn> columns;
  std::vector<TableRow> rows{};
  bool first_names_row = false;  ///< the first cell of a row is its heading
};

struct Figure {
  Picture picture;
  std::string caption{};
  std::vector<Words> beside{};  ///< set to the right of a narrow picture
};

/// Photos side by side, each with its words under it. JPEG, as the book keeps them.
struct PhotoRow {
  struct Shot {
    std::string jpeg;
    int width_px = 0, height_px = 0;
    std::string caption;
  };
  std::vector<Shot> shots;
};

/// Rules to write on, each with its name under it: `Name`, `Date`.
struct ToSign {
  std::vector<std::string> names;
};

/// Where the sheet is cut in two.
struct CutLine {};

using Block = std::variant<Heading, Paragraph, Bullets, Notice, Facts, Table, Figure, PhotoRow, ToSign, CutLine>;

/// Whose paper it is.
struct Letterhead {
  std::string shop;
  std::vector<std::string> lines{};  ///< address, telephone, tax number; as the shop wants them
};
void describe(FieldVisitor&, Letterhead&);

struct Document {
  std::string title;
  std::string subtitle{};
  std::string reference;  ///< of this paper, in the footer: `Estimate 2026-014`
  Letterhead shop;
  std::string language = "en-GB";  ///< tag of the language it is in
  Date day;                        ///< stated in the file as its date; no clock is asked
  std::vector<Block> blocks{};
};

}  // namespace tailblock
