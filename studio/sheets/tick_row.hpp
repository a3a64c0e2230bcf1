// Rows with a box to tick.
#pragma once

#include <optional>
#include <string>

#include "studio/model/palette.hpp"
#include "studio/paper/flow.hpp"

namespace quadrille {

/// One line of a list that is ticked off.
struct TickLine {
  std::string text;
  std::string where = {};     ///< beneath it, in bold
  std::string detail = {};    ///< beneath that, quietly
  std::string quantity = {};  ///< at the right
  bool ticked = false;
  bool has_second_box = false;  ///< at the right end, for what comes back
  bool has_swatch = false;
  const Colour* colour = nullptr;  ///< of the swatch; null = none known
};

/// The line with its box in front, on a hairline. `second_boxes`: room is left at the right end for them. Long text wraps.
Row tick_row(const TickLine& line, double width, bool second_boxes = false);

/// A heading with a rule; over the boxes "take" and "back" where there are second ones. Again where its rows go on.
Block tick_block(const std::string& heading, double width, bool second_boxes = false);

/// An empty line to be filled in, after its label: "Who watches: ______".
Row fill_in_row(const std::string& label, double width, double label_width = 0);

/// Width and height of a box [mm].
inline constexpr double tick_box = 3.4;

/// A box with its upper left corner at (x, y), with a tick in it or empty.
void add_box(Marks& marks, double x, double y, bool ticked);

}  // namespace quadrille
