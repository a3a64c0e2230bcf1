#include "studio/window/canvas/shift_mode.hpp"

#include <utility>

#include "studio/window/canvas/canvas.hpp"

namespace quadrille {

ShiftMode::ShiftMode(Canvas& on, const wxString& hint, ShiftAnswers answers)
    : CanvasMode(on, hint, answers.over), answers_(std::move(answers)) {
  on.SetCursor(wxCursor(wxCURSOR_SIZING));
}

void ShiftMode::press(Point2 place) {
  from_ = place;
  dragging_ = true;
}

void ShiftMode::move(Point2 place, bool held) {
  if (held && dragging_) answers_.dragged({place.x - from_.x, place.y - from_.y});
}

void ShiftMode::let_go() {
  if (std::exchange(dragging_, false)) answers_.let_go();
}

void ShiftMode::step(int right_px, int up_px) {
  const double metres = 1 / canvas().view().pixels_per_metre;
  answers_.stepped({right_px * metres, up_px * metres});
}

/// Gives up the drag alone.
bool ShiftMode::step_back() {
  if (!dragging_) return false;
  answers_.dragged({});
  let_go();
  return true;
}

}  // namespace quadrille
