// Moving the photo beneath what stands before it: by dragging it, or with the arrow keys.
#pragma once

#include "studio/window/canvas/canvas_mode.hpp"

namespace quadrille {

/// What the mode tells its owner; distances [m] to the right and up.
struct ShiftAnswers {
  std::function<void(Point2 by_m)> dragged;  ///< since the press; nothing: back where it was
  std::function<void()> let_go;
  std::function<void(Point2 by_m)> stepped;  ///< by a key: a step of its own
  std::function<void()> over;
};

class ShiftMode : public CanvasMode {
 public:
  ShiftMode(Canvas& canvas, const wxString& hint, ShiftAnswers answers);

 private:
  void press(Point2 place) override;
  void move(Point2 place, bool held) override;
  void let_go() override;
  void step(int right_px, int up_px) override;
  void confirm() override { answers_.over(); }
  bool step_back() override;
  void paint(wxDC&) const override {}

  ShiftAnswers answers_;
  Point2 from_;
  bool dragging_ = false;
};

}  // namespace quadrille
