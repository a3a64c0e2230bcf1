// The area from above on the screen: true scale on white paper; picking, dragging, zooming. The list beside it is its twin
// for the keyboard and for screen readers.
#pragma once

#include <wx/window.h>

#include <functional>
#include <optional>
#include <string>

#include "studio/drawing/floor_plan.hpp"
#include "studio/model/event.hpp"
#include "studio/paint/balloon_stamps.hpp"

namespace quadrille {

/// What the plan tells its owner.
struct FloorPlanAnswers {
  std::function<void(const std::optional<SiteObject>& object)> picked;  ///< nothing: nothing lies there
  /// The object is being dragged: it would be so far from where it was when the drag began [m]. `fine`: to small steps.
  std::function<void(const SiteObject& object, SiteGrip grip, double right_m, double back_m, bool fine)> dragged;
  std::function<void()> let_go;                                   ///< the drag is over
  std::function<void()> removed;                                  ///< the selected object is to go
  std::function<void(const SitePlace& place)> wants_menu;         ///< at a place on the floor
  std::function<void(const std::optional<SitePlace>&)> pointing;  ///< the pointer is there; nothing: it left
};

class FloorPlanView : public wxWindow {
 public:
  FloorPlanView(wxWindow* parent, FloorPlanAnswers answers);

  /// What is shown from now on; the view stays while the plan is of the same place, which `of` names. Nothing: an empty
  /// paper.
  void show(std::optional<FloorPlan> plan, Units units, const std::string& of);
  /// What is marked, and what is told beside it.
  void select(std::optional<SiteObject> object, std::string words);

  void fit_all();
  void zoom(double factor);
  const View& view() const { return view_; }
  const std::optional<FloorPlan>& plan() const { return plan_; }
  /// The words beside what is selected.
  const std::string& words() const { return words_; }
  /// The middle of what is shown, on the grid that things are moved by.
  SitePlace middle() const;

 private:
  enum class Grip { none, pressed, dragging, panning };

  void bind_events();
  void paint();
  void press(wxMouseEvent& event);
  void move(wxMouseEvent& event);
  void end_grip();
  void give_up_drag();
  void press_key(wxKeyEvent& event);
  bool sticks_out() const;
  void nudge(double right, double back, bool fine);
  void point(const wxPoint& at);
  SitePlace place_at(const wxPoint& at) const;

  FloorPlanAnswers answers_;
  std::optional<FloorPlan> plan_;
  Units units_ = Units::feet;
  std::string of_;
  std::optional<SiteObject> selected_;
  std::string words_;
  View view_;
  BalloonStamps stamps_;
  bool fitted_ = true;  ///< all is to stay in sight when the window changes its size: nobody zoomed or moved since
  Grip grip_ = Grip::none;
  std::optional<PlanHit> held_;
  wxPoint grip_at_, last_at_;
  int wheel_left_ = 0;  ///< turns of the wheel too small to count yet
};

}  // namespace quadrille
