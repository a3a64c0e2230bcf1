#include "studio/window/canvas/point_mode.hpp"

#include <utility>

#include "studio/window/canvas/canvas.hpp"

namespace quadrille {

PointMode::PointMode(Canvas& on, std::vector<wxString> hints, std::function<void(std::vector<Point2>)> chosen,
                     std::function<void()> over)
    : CanvasMode(on, hints.front(), std::move(over)), hints_(std::move(hints)), chosen_(std::move(chosen)) {
  const wxRect room = on.paper();
  cross_ = on.view().to_metres(room.x + room.width / 2.0, room.y + room.height / 2.0);
}

void PointMode::set(Point2 place) {
  if (points_.size() == hints_.size()) return;
  points_.push_back(place);
  if (points_.size() < hints_.size()) return set_hint(hints_[points_.size()]);
  set_hint({});
  canvas().CallAfter([chosen = chosen_, points = points_] { chosen(points); });
}

void PointMode::press(Point2 place) {
  cross_ = place;
  set(place);
}

void PointMode::move(Point2 place, bool) { cross_ = place; }

void PointMode::step(int right_px, int up_px) {
  const double metres = 1 / canvas().view().pixels_per_metre;
  cross_ = {cross_.x + right_px * metres, cross_.y + up_px * metres};
}

void PointMode::confirm() { set(cross_); }

/// Takes the last point away, so that a slip costs nothing.
bool PointMode::step_back() {
  if (points_.empty() || points_.size() == hints_.size()) return false;
  points_.pop_back();
  set_hint(hints_[points_.size()]);
  return true;
}

void PointMode::paint(wxDC& dc) const {
  const auto pixels = [this](Point2 place) {
    const Point2 at = canvas().view().to_pixels(place.x, place.y);
    return wxPoint(wxRound(at.x), wxRound(at.y));
  };
  const Point2 end = points_.size() == hints_.size() ? points_.back() : cross_;
  if (!points_.empty())
    for (const auto& [width, colour] :
         {std::pair(canvas().FromDIP(3), *wxWHITE), std::pair(canvas().FromDIP(1), wxColour(20, 20, 24))}) {
      dc.SetPen(wxPen(colour, width));
      dc.DrawLine(pixels(points_.front()), pixels(end));
    }
  for (const Point2& point : points_) paint_cross(dc, point);
  paint_cross(dc, end);
}

}  // namespace quadrille
