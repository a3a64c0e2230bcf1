#include "studio/window/panels/pattern_grid.hpp"

#include <wx/dcclient.h>
#include <wx/settings.h>

#include <algorithm>

#include "sdk/pattern.hpp"
#include "studio/window/panels/pattern_picture.hpp"
#include "studio/window/toolkit/accessible_name.hpp"
#include "studio/window/toolkit/wx_text.hpp"

namespace quadrille {
namespace {

constexpr int cell_side = 24, numbers_width = 24;  // [DIP]

}  // namespace

PatternGrid::PatternGrid(wxWindow* parent, std::function<void(const RowGrid&)> changed, std::function<void()> focused)
    : wxWindow(parent, wxID_ANY, wxDefaultPosition, wxDefaultSize, wxWANTS_CHARS), changed_(std::move(changed)) {
  set_accessible_name(this, "Pattern rows", "Arrow keys go from balloon to balloon, letters set their slots");
  Bind(wxEVT_PAINT, [this](wxPaintEvent&) { paint(); });
  Bind(wxEVT_LEFT_DOWN, [this](wxMouseEvent& event) { click(event.GetPosition()); });
  Bind(wxEVT_KEY_DOWN, [this](wxKeyEvent& event) {
    if (event.GetKeyCode() == WXK_TAB) return HandleAsNavigationKey(event), void();
    if (event.AltDown() || !handle_key(event.GetKeyCode(), event.ControlDown())) event.Skip();
  });
  Bind(wxEVT_SET_FOCUS, [this, focused](wxFocusEvent& event) {
    event.Skip();
    Refresh();
    tell_place();
    focused();
  });
  Bind(wxEVT_KILL_FOCUS, [this](wxFocusEvent& event) {
    event.Skip();
    Refresh();
  });
}

void PatternGrid::show(const RowGrid& grid, std::vector<wxColour> colours) {
  grid_ = grid, colours_ = std::move(colours);
  row_ = std::min(row_, grid_.rows.empty() ? 0 : grid_.rows.size() - 1);
  place_ = std::min(place_, static_cast<std::size_t>(grid_.places - 1));
  const int rows = static_cast<int>(std::max<std::size_t>(grid_.rows.size(), 1));
  SetMinSize(wxSize(FromDIP(numbers_width) + grid_.places * side() + 2, rows * side() + 2));
  tell_place();
  Refresh();
}

int PatternGrid::side() const { return FromDIP(cell_side); }

wxPoint PatternGrid::corner(std::size_t row, std::size_t place) const {
  return {FromDIP(numbers_width) + static_cast<int>(place) * side(), static_cast<int>(row) * side()};
}

std::optional<std::pair<std::size_t, std::size_t>> PatternGrid::cell_at(const wxPoint& point) const {
  const int x = point.x - FromDIP(numbers_width);
  if (x < 0 || point.y < 0) return std::nullopt;
  const auto row = static_cast<std::size_t>(point.y / side()), place = static_cast<std::size_t>(x / side());
  if (row >= grid_.rows.size() || place >= grid_.rows[row].size()) return std::nullopt;
  return std::pair{row, place};
}

void PatternGrid::click(const wxPoint& point) {
  const auto cell = cell_at(point);
  SetFocus();
  if (!cell) return;
  go_to(cell->first, cell->second);
  set_next_slot();
}

void PatternGrid::go_to(std::size_t row, std::size_t place) {
  if (grid_.rows.empty()) return;
  row_ = std::min(row, grid_.rows.size() - 1);
  place_ = std::min(place, grid_.rows[row_].size() - 1);
  tell_place();
  Refresh();
}

bool PatternGrid::handle_key(int key, bool control) {
  if (key == WXK_INSERT || key == WXK_NUMPAD_INSERT) return add_row(), true;
  if (grid_.rows.empty()) return false;
  const std::size_t places = grid_.rows[row_].size();
  switch (key) {
    case WXK_DELETE:
    case WXK_NUMPAD_DELETE:
      return remove_row(), true;
    case WXK_LEFT:
      control ? turn_row(-1) : go_to(row_, place_ > 0 ? place_ - 1 : 0);
      return true;
    case WXK_RIGHT:
      control ? turn_row(1) : go_to(row_, place_ + 1);
      return true;
    case WXK_UP:
      return go_to(row_ > 0 ? row_ - 1 : 0, place_), true;
    case WXK_DOWN:
      return go_to(row_ + 1, place_), true;
    case WXK_HOME:
      return go_to(row_, 0), true;
    case WXK_END:
      return go_to(row_, places - 1), true;
    default:
      break;
  }
  if (control) return false;
  if (key >= 'A' && key < 'A' + most_slots) {
    set_slot(static_cast<std::uint32_t>(key - 'A'));
    // On to the next place, as when writing.
    if (place_ + 1 < places)
      go_to(row_, place_ + 1);
    else if (row_ + 1 < grid_.rows.size())
      go_to(row_ + 1, 0);
    return true;
  }
  if (key != WXK_SPACE) return false;
  set_next_slot();
  return true;
}

void PatternGrid::set_slot(std::uint32_t slot) { change(with_slot(grid_, row_, place_, slot)); }

/// The one behind the present place's, and A behind the last.
void PatternGrid::set_next_slot() {
  const auto slots = static_cast<std::uint32_t>(std::clamp<std::size_t>(colours_.size(), 1, most_slots));
  set_slot((grid_.rows[row_][place_] + 1) % slots);
}

void PatternGrid::add_row() {
  RowGrid longer = with_grid_row(grid_, row_);
  const bool was_empty = grid_.rows.empty();
  change(std::move(longer));
  go_to(was_empty ? 0 : row_ + 1, place_);
}

void PatternGrid::remove_row() {
  if (grid_.rows.size() > 1) change(without_grid_row(grid_, row_));
}

void PatternGrid::turn_row(int by) { change(rotated(grid_, row_, by)); }

/// What the user made is shown at once; whether it is kept the owner says.
void PatternGrid::change(RowGrid grid) {
  if (grid == grid_) return;
  show(grid, colours_);
  changed_(grid_);
}

/// For a screen reader: what stands where the keyboard is.
void PatternGrid::tell_place() {
  wxString words = "No row yet; Insert adds one";
  if (row_ < grid_.rows.size() && place_ < grid_.rows[row_].size())
    words = wxString::Format("Row %zu of %zu, place %zu: ", row_ + 1, grid_.rows.size(), place_ + 1) +
            shown(slot_name(grid_.rows[row_][place_]));
  set_accessible_name(this, "Pattern rows. " + words,
                      "A letter sets the slot, Insert adds a row, Delete removes it, Ctrl with the left or right arrow "
                      "turns it round the rod.");
}

void PatternGrid::paint() {
  wxPaintDC dc(this);  // on what lies behind
  dc.SetFont(GetFont());
  for (std::size_t row = 0; row < grid_.rows.size(); ++row) {
    dc.SetTextForeground(GetForegroundColour());
    const wxString number = wxString() << (row + 1);
    const wxSize size = dc.GetTextExtent(number);
    const wxPoint first = corner(row, 0);
    dc.DrawText(number, first.x - size.x - FromDIP(6), first.y + (side() - size.y) / 2);
    for (std::size_t place = 0; place < grid_.rows[row].size(); ++place) {
      const std::uint32_t slot = grid_.rows[row][place];
      const wxPoint at = corner(row, place);
      paint_slot(dc, {at.x + side() / 2, at.y + side() / 2}, side() - FromDIP(4), slot_colour(colours_, slot), slot);
    }
  }
  if (!HasFocus() || grid_.rows.empty()) return;
  dc.SetBrush(*wxTRANSPARENT_BRUSH);
  dc.SetPen(wxPen(wxSystemSettings::GetColour(wxSYS_COLOUR_HIGHLIGHT), FromDIP(2)));
  dc.DrawRectangle(wxRect(corner(row_, place_), wxSize(side(), side())));
}

}  // namespace quadrille
