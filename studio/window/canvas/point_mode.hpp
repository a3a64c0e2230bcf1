// Choosing points on the canvas: by clicks, or with a cross that the arrow keys move and Enter sets.
#pragma once

#include <vector>

#include "studio/window/canvas/canvas_mode.hpp"

namespace quadrille {

class PointMode : public CanvasMode {
 public:
  /// Asks for as many points as there are hints. `chosen` gets them, after the event that set the last one; `over` as for
  /// CanvasMode.
  PointMode(Canvas& canvas, std::vector<wxString> hints, std::function<void(std::vector<Point2>)> chosen,
            std::function<void()> over);

 private:
  void press(Point2 place) override;
  void move(Point2 place, bool held) override;
  void step(int right_px, int up_px) override;
  void confirm() override;
  bool step_back() override;
  void paint(wxDC& dc) const override;
  void set(Point2 place);

  std::vector<wxString> hints_;
  std::function<void(std::vector<Point2>)> chosen_;
  std::vector<Point2> points_;
  Point2 cross_;  ///< that the keys move, or where the pointer is
};

}  // namespace quadrille
