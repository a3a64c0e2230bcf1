// The elevation on the screen: true scale on white paper, rulers along top and left; zoom, pan, picking and dragging.
#pragma once

#include <wx/window.h>

#include <functional>
#include <optional>
#include <string>

#include "studio/drawing/view.hpp"
#include "studio/model/event.hpp"

namespace quadrille {

/// What the canvas tells its owner.
struct CanvasAnswers {
  std::function<void(const std::string& piece)> picked;  ///< id; empty: nothing lies there
  /// The piece is being dragged: it would stand `moved_m` to the right of where it stood when the drag began.
  std::function<void(const std::string& piece, double moved_m)> dragged;
  std::function<void()> let_go;                               ///< the drag is over
  std::function<void(std::optional<Point2> place)> pointing;  ///< x and z [m] under the pointer
};

class Canvas : public wxWindow {
 public:
  Canvas(wxWindow* parent, CanvasAnswers answers);

  /// What is shown from now on; the view stays. No scene: `hint` stands on the paper.
  void show(std::optional<Scene> scene, Units units, wxString hint);
  /// The piece that is marked; empty: none.
  void select(const std::string& piece);
  void set_look(const SceneLook& look);

  void fit_all();
  /// Brings one piece near; nothing where the scene does not have it.
  void fit_piece(const std::string& piece);
  /// `factor` times as near about the middle of the paper.
  void zoom(double factor);
  /// Moves the paper by parts of its width and height.
  void pan(double right, double down);

  const View& view() const { return view_; }
  const std::optional<Scene>& scene() const { return scene_; }
  /// The paper inside the rulers, in pixels of this window.
  wxRect paper() const;

 private:
  enum class Grip { none, pressed, dragging, panning };

  void paint();
  void paint_selection(wxDC& dc) const;
  void paint_rulers(wxDC& dc) const;
  void paint_hint(wxDC& dc) const;
  void set_view(const View& view);
  void fit_again();

  void bind_events();
  void press(wxMouseEvent& event);
  void release(wxMouseEvent& event);
  void move(wxMouseEvent& event);
  void turn_wheel(wxMouseEvent& event);
  void press_key(wxKeyEvent& event);
  void release_key(wxKeyEvent& event);
  void begin_pan(wxPoint at);
  void end_grip();
  void give_up_drag();
  void point(std::optional<wxPoint> at);

  CanvasAnswers answers_;
  std::optional<Scene> scene_;
  Units units_ = Units::feet;
  wxString hint_;
  std::string selected_;
  SceneLook look_;
  View view_;
  BalloonStamps stamps_;
  bool fitted_ = true;  ///< all is to stay in sight when the window changes its size: nobody zoomed or moved since

  Grip grip_ = Grip::none;
  wxPoint grip_at_, last_at_;
  std::string grip_piece_;
  bool space_held_ = false;
  int wheel_left_ = 0;  ///< turns of the wheel too small to count yet
  std::optional<wxPoint> pointer_;
};

}  // namespace quadrille
