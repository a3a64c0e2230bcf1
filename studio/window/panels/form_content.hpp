// What the form pane shows, and what it tells its owner: plain values and functions.
#pragma once

#include <functional>
#include <optional>
#include <string>
#include <vector>

#include "studio/form/form.hpp"
#include "studio/form/row_grid.hpp"
#include "studio/form/slot_fields.hpp"

namespace quadrille {

/// What the form tells its owner.
struct FormAnswers {
  /// The user typed `text` into the field of `key`, or chose it. Returns the sentence of what is wrong with it; nothing
  /// where it was taken.
  std::function<std::optional<std::string>(const std::string& key, const std::string& text)> typed;
  std::function<void(const std::string& key, const Value& value)> set;  ///< a list was changed by its table
  std::function<void(const std::string& key, const RowGrid& grid)> rows;
  std::function<void(const std::string& key)> standard;  ///< back to the default
  std::function<void(std::size_t slot)> pick_colour;     ///< the user wants to choose a colour for the slot
  std::function<void(const std::string& name)> renamed;
  std::function<void(bool locked)> locked;
  std::function<void(bool hidden)> hidden;
};

/// What the form shows of the selected pieces.
struct FormContent {
  Form form;  ///< the group "Place" first
  std::vector<SlotField> slots;
  PieceIds pieces;                     ///< all that are selected
  std::string heading;                 ///< "Arch", "3 columns"
  std::string name;                    ///< of the one piece; of several: their names, to be read
  std::optional<bool> locked, hidden;  ///< none where the pieces differ
  std::vector<PatternCell> unrolled;   ///< of the piece picked last, as it is built; empty: it has no clusters
  std::size_t clusters = 0;            ///< in `unrolled`
  int places = 4;                      ///< balloons per cluster of the piece picked last
  int hand = 1;                        ///< which way typed rows are turned: +1 right, -1 left
  bool may_edit = true;
};

}  // namespace quadrille
