// The elevation on the screen: true scale on white paper, rulers along top and left; zoom, pan, picking, dragging and
// placing by hand.
#pragma once

#include <wx/window.h>

#include <optional>
#include <string>
#include <vector>

#include "studio/drawing/deflection.hpp"
#include "studio/drawing/view.hpp"
#include "studio/model/event.hpp"
#include "studio/model/piece_edits.hpp"
#include "studio/window/canvas/canvas_answers.hpp"

namespace quadrille {

struct Chip;
struct OverlayPlace;

class Canvas : public wxWindow {
 public:
  Canvas(wxWindow* parent, CanvasAnswers answers);

  /// What is shown from now on; the view stays. No scene: `hint` stands on the paper.
  void show(std::optional<Scene> scene, Units units, wxString hint);
  /// The same scene after its selected pieces were moved, with what the drag says: only what changed is painted anew.
  void show_moved(Scene scene, DragShown drag);
  /// The pieces that are marked, the one picked last at the end.
  void select(const PieceIds& pieces);
  /// Those of the one selected piece. A focused one that is among them stays so.
  void show_handles(std::vector<ShownHandle> handles);
  /// What the drag that is going on says; cleared when it ends.
  void show_drag(DragShown drag);
  void set_look(const SceneLook& look);
  /// Drawn over the scene; none: nothing.
  void show_bent(std::optional<Deflection> bent);
  /// Painted over everything on the paper by whoever has the canvas to itself for a while; none: nothing.
  void set_overlay(std::function<void(wxDC&)> overlay);

  /// From now on the pointer carries a piece that is called `name`; a press or Enter puts it down, Escape does not.
  void begin_placing(const std::string& name);
  void end_placing();
  /// Where what is carried would stand, the room it takes where that is known, and what draws it.
  void show_placing(double x_m, std::optional<Extent> room, DragShown drag);
  bool is_placing() const { return placing_.has_value(); }
  /// The outline of what is being placed; nothing while its size is not known.
  std::optional<Extent> placing_room() const { return placing_ ? placing_->room : std::nullopt; }

  void fit_all();
  /// Brings the pieces near; nothing where the scene has none of them.
  void fit_pieces(const PieceIds& pieces);
  /// `factor` times as near about the middle of the paper.
  void zoom(double factor);
  /// Moves the paper by parts of its width and height.
  void pan(double right, double down);
  /// Ends whatever the mouse has hold of, where it is.
  void let_go();
  /// The keyboard's hold on a handle goes `by` handles on, from none to the first or the last.
  void step_handle(int by);
  void focus_handle(std::optional<HandleName> handle);
  const std::optional<HandleName>& focused_handle() const { return focused_; }

  const View& view() const { return view_; }
  const std::optional<Scene>& scene() const { return scene_; }
  const std::optional<Deflection>& bent() const { return bent_; }
  const std::vector<ShownHandle>& handles() const { return handles_; }
  /// What is shown of the drag that is going on.
  const DragShown& drag_shown() const { return shown_; }
  /// The paper inside the rulers, in pixels of this window.
  wxRect paper() const;
  /// Where the figure stands [m]; nothing where none is shown.
  std::optional<double> figure_x_m() const;
  wxPoint to_window(Point2 place_m) const;

 private:
  enum class Grip { none, pieces, handle, paper, figure, panning };
  /// A piece that is not put down yet.
  struct Placing {
    std::string name;
    double x_m = 0;
    std::optional<Extent> room;
  };

  // canvas_paint.cpp
  void paint();
  void paint_over(wxDC& dc) const;
  void paint_handles(wxDC& dc, const OverlayPlace& place) const;
  std::optional<Chip> selection_chip(const OverlayPlace& place) const;
  void paint_rulers(wxDC& dc) const;
  void paint_hint(wxDC& dc) const;
  void paint_focus(wxDC& dc) const;
  void refresh_moving();

  void set_view(const View& view);
  void fit_again();
  void bind_events();
  double near_m() const;

  // canvas_input.cpp: the mouse
  void press(wxMouseEvent& event);
  void press_piece(const PieceIds& under, bool adds);
  void double_click(wxMouseEvent& event);
  void release(wxMouseEvent& event);
  void click();
  void move(wxMouseEvent& event);
  void begin_going();
  void go(wxPoint at, bool snapping);
  void hover(wxPoint at, bool snapping);
  void turn_wheel(wxMouseEvent& event);
  void begin_pan(wxPoint at);
  void end_grip();
  void point(std::optional<wxPoint> at);
  void tell_place();
  void ask_menu(wxContextMenuEvent& event);
  PieceIds under(wxPoint at) const;
  const ShownHandle* handle_at(wxPoint at) const;
  bool is_on_figure(wxPoint at) const;
  std::optional<Band> band() const;
  void pick(const PieceIds& pieces);

  // canvas_keys.cpp
  void press_key(wxKeyEvent& event);
  void release_key(wxKeyEvent& event);
  void press_delete();
  bool press_arrow(const wxKeyEvent& event);
  bool press_while_placing(const wxKeyEvent& event);
  bool step_piece(int by);
  void give_up();
  void describe();

  CanvasAnswers answers_;
  std::optional<Scene> scene_;
  std::optional<Deflection> bent_;
  Units units_ = Units::feet;
  wxString hint_;
  PieceIds selected_;
  std::vector<ShownHandle> handles_;
  std::optional<HandleName> focused_, hovered_;
  DragShown shown_;
  std::optional<Placing> placing_;
  SceneLook look_;
  View view_;
  BalloonStamps stamps_;
  std::function<void(wxDC&)> overlay_;
  bool fitted_ = true;  ///< all is to stay in sight when the window changes its size: nobody zoomed or moved since

  Grip grip_ = Grip::none;
  bool going_ = false;  ///< the pointer went far enough for a drag
  bool adds_ = false;   ///< Shift or Ctrl was held at the press
  wxPoint grip_at_, last_at_;
  PieceIds grip_under_, before_;  ///< pieces under the press, and what was selected then
  HandleName grip_handle_;
  Point2 grip_from_m_;                 ///< where the handle was at the press
  double grip_x_m_ = 0;                ///< of the figure, at the press
  std::optional<wxPoint> last_click_;  ///< on a piece; another click there goes to what it covers
  bool nudging_ = false, space_held_ = false;
  int wheel_left_ = 0;  ///< turns of the wheel too small to count yet
  std::optional<wxPoint> pointer_;
};

}  // namespace quadrille
