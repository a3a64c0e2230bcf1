// Something that has the canvas's mouse and keys to itself for a while.
#pragma once

#include <wx/dc.h>
#include <wx/event.h>

#include <functional>

#include "studio/paint/display_list.hpp"

namespace quadrille {

class Canvas;

/// From its making to its end it hears of clicks, drags, arrow keys, Enter and Esc in place of the canvas; wheel, panning
/// and everything else stay the canvas's. Places are x and z [m] in the elevation.
class CanvasMode {
 public:
  /// `hint` stands on the paper meanwhile. `over` is told that the user gives up (Esc), and may end the mode only after
  /// that call.
  CanvasMode(Canvas& canvas, wxString hint, std::function<void()> over);
  virtual ~CanvasMode();
  CanvasMode(const CanvasMode&) = delete;
  CanvasMode& operator=(const CanvasMode&) = delete;

 protected:
  virtual void press(Point2 place) = 0;
  /// `held`: since a press.
  virtual void move(Point2 place, bool held) = 0;
  virtual void let_go() {}
  /// An arrow key; steps of a few pixels, fine ones of one.
  virtual void step(int right_px, int up_px) = 0;
  virtual void confirm() = 0;
  /// True where Esc only undoes what was begun; false gives the mode up.
  virtual bool step_back() { return false; }
  virtual void paint(wxDC& dc) const = 0;

  Canvas& canvas() const { return canvas_; }
  void set_hint(const wxString& hint);
  /// As it is painted by a mode: seen on any ground, without colour too.
  void paint_cross(wxDC& dc, Point2 place) const;

 private:
  void on_press(wxMouseEvent& event);
  void on_move(wxMouseEvent& event);
  void on_release(wxMouseEvent& event);
  void on_lost(wxMouseCaptureLostEvent& event);
  void on_key(wxKeyEvent& event);
  void on_pan(wxCommandEvent& event);
  void paint_hint(wxDC& dc) const;
  Point2 place_of(const wxMouseEvent& event) const;

  Canvas& canvas_;
  wxString hint_;
  std::function<void()> over_;
  bool held_ = false;
};

}  // namespace quadrille
