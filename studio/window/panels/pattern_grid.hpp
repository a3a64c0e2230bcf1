// Pattern rows as a grid of balloons to click in and to type letters into.
#pragma once

#include <wx/window.h>

#include <cstddef>
#include <functional>
#include <optional>
#include <utility>
#include <vector>

#include "studio/form/row_grid.hpp"

namespace quadrille {

/// One line per cluster, the first built at the top. A click sets the next slot, a letter its slot; the arrow keys move,
/// Insert adds a row, Delete removes one, Ctrl with the left and right arrow turns the row round the rod.
class PatternGrid : public wxWindow {
 public:
  /// `changed` hears of the grid as the user made it, `focused` when it gets the keyboard.
  PatternGrid(wxWindow* parent, std::function<void(const RowGrid&)> changed, std::function<void()> focused);

  void show(const RowGrid& grid, std::vector<wxColour> colours);
  std::size_t row() const { return row_; }
  std::size_t place() const { return place_; }
  /// What the key does; false where it does nothing here.
  bool handle_key(int key, bool control);
  /// Puts the keyboard's mark on this place, or on the nearest there is.
  void go_to(std::size_t row, std::size_t place);
  void add_row();
  void remove_row();
  void turn_row(int by);

 private:
  int side() const;
  wxPoint corner(std::size_t row, std::size_t place) const;
  std::optional<std::pair<std::size_t, std::size_t>> cell_at(const wxPoint& point) const;
  void set_slot(std::uint32_t slot);
  void set_next_slot();
  void change(RowGrid grid);
  void tell_place();
  void click(const wxPoint& point);
  void paint();

  std::function<void(const RowGrid&)> changed_;
  RowGrid grid_;
  std::vector<wxColour> colours_;
  std::size_t row_ = 0, place_ = 0;
};

}  // namespace quadrille
