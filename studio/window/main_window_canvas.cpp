// Hands on the drawing: moving, and the handles of what is selected.
#include <wx/textentry.h>

#include <algorithm>
#include <cmath>
#include <utility>

#include "studio/arrange/handle_steps.hpp"
#include "studio/arrange/moving.hpp"
#include "studio/arrange/selecting.hpp"
#include "studio/arrange/selection.hpp"
#include "studio/form/form.hpp"
#include "studio/host/piece_type.hpp"
#include "studio/model/edits.hpp"
#include "studio/model/lengths.hpp"
#include "studio/window/canvas/canvas.hpp"
#include "studio/window/canvas/gesture.hpp"
#include "studio/window/canvas/ruler.hpp"
#include "studio/window/commands/commands.hpp"
#include "studio/window/job/document.hpp"
#include "studio/window/job/study.hpp"
#include "studio/window/main_window.hpp"
#include "studio/window/photo_hands.hpp"
#include "studio/window/toolkit/clipboard.hpp"
#include "studio/window/toolkit/wx_text.hpp"

namespace quadrille {
namespace {

constexpr int catch_up_ms = 120;  // how far all but the drawing may lie behind a drag

std::string name_in_words(const PlacedPiece& piece) { return piece.name.empty() ? "piece" : piece.name; }

/// "Welcome arch   2.40 m along   (0.30 m to the right)"
std::string place_words(const PlacedPiece& piece, double right_m, Units units) {
  const LengthStyle style = lengths_in(units);
  std::string words = name_in_words(piece) + "   " + print_length(piece.x_m + right_m, style) + " along";
  if (right_m != 0)
    words += "   (" + print_length(std::abs(right_m), style) + (right_m < 0 ? " to the left)" : " to the right)");
  return words;
}

HandleName handle_name(const DragHandle& handle) { return {handle.key, handle.point}; }

}  // namespace

void MainWindow::make_canvas(wxWindow* parent) {
  hand_ = std::make_unique<Gesture>();
  hand_->later.Bind(wxEVT_TIMER, [this](wxTimerEvent&) { catch_up(); });
  CanvasAnswers answers;
  answers.under = [this](Point2 place, double reach_m) {
    return area() ? pieces_under(*area(), last_built(), place.x, place.y, reach_m) : PieceIds{};
  };
  answers.within = [this](const Band& band, BandTakes takes) {
    return area() ? pieces_in(*area(), last_built(), band, takes) : PieceIds{};
  };
  answers.beside = [this](const PieceIds& selected, int by) {
    return area() ? piece_beside(*area(), selected, by) : std::string();
  };
  answers.picked = [this](const PieceIds& pieces) { select(area_, pieces); };
  answers.dragged = [this](double right_m, const DragRules& rules) { drag_pieces(right_m, rules); };
  answers.handle_dragged = [this](const HandleName& handle, Point2 way_m) { drag_handle(handle, way_m); };
  answers.nudged = [this](int steps) { nudge(steps); };
  answers.handle_nudged = [this](const HandleName& handle, int right, int up) { nudge_handle(handle, right, up); };
  answers.add_point = [this](const HandleName& handle) { add_point(handle); };
  answers.remove_point = [this](const HandleName& handle) { remove_point(handle); };
  answers.removed = [this] { remove_selected(); };
  answers.let_go = [this] { let_go(); };
  answers.given_up = [this] { give_up(); };
  answers.placing = [this](double x_m, const DragRules& rules) { place_near(x_m, rules); };
  answers.placed = [this] { place_now(); };
  answers.not_placed = [this] { SetStatusText(""); };
  answers.figure_moved = [this](double x_m) { move_figure_to(x_m); };
  answers.pointing = [this](std::optional<Point2> place) { show_place(place); };
  answers.menu = [this](wxPoint at) {
    const auto menu = context_menu();
    canvas_->PopupMenu(menu.get(), at);
  };
  canvas_ = new Canvas(parent, std::move(answers));
  canvas_->SetAcceleratorTable(canvas_accelerators());
  EventDesk& desk = *this;
  photo_hands_ = std::make_unique<PhotoHands>(desk, *this, *canvas_);
}

/// True where a drag may go on; remembers where it began. Otherwise the status bar says why not.
bool MainWindow::begin_drag() {
  if (!document_) return false;
  if (hand_->from) return true;
  const PieceIds free = movable(document_->event(), pieces_);
  if (!may_edit(free.empty() ? lead() : free.back())) return false;
  hand_->from = document_->event();
  hand_->from_revision = revision_;
  canvas_->show_bent(std::nullopt);  // it is bent where it stood
  return true;
}

void MainWindow::drag_pieces(double right_m, const DragRules& rules) {
  if (!begin_drag()) return;
  const Event& from = *hand_->from;
  const PieceIds free = movable(from, pieces_);
  if (free.empty()) return;
  canvas_->show_bent(std::nullopt);  // it may have been worked out while the pointer rested
  const PlacedPiece& first = *find_piece(from, free.back());
  // Back at the start it stands exactly where it stood, however odd that place was.
  const double way_m = right_m == 0 ? 0 : rounded_place(first.x_m + right_m, from.units) - first.x_m;
  const SnapRules snap{hand_->snapping && rules.snapping && way_m != 0, rules.near_m, false};
  Moved moved = dragged(from, pieces_, last_built(), {way_m, 0}, snap);
  std::string words = place_words(first, moved.right_m, from.units);
  document_->edit().amend(step_name("Move", from, free), std::move(moved.event));
  ++revision_;
  if (!hand_->later.IsRunning()) hand_->later.StartOnce(catch_up_ms);
  if (area() && study_) canvas_->show_moved(scene_here(), {std::move(moved.guides), std::move(words)});
}

/// All but the drawing, after a drag has gone on for a while.
void MainWindow::catch_up() {
  if (!document_) return;
  reckon();
  show_state();
  show_stale();
}

void MainWindow::let_go() {
  if (!document_) return;
  document_->edit().settle();
  hand_->held.reset();
  hand_->handles.clear();
  if (!std::exchange(hand_->from, std::nullopt)) return show_state();
  hand_->later.Stop();
  event_changed();
}

/// Back to where the drag began, which is then no step at all.
void MainWindow::give_up() {
  if (document_ && hand_->from) document_->edit().amend(document_->history().undo_name(), *hand_->from);
  let_go();
}

void MainWindow::move_selected(double right_m) {
  if (!document_) return;
  const PieceIds free = movable(document_->event(), pieces_);
  if (!may_edit(free.empty() ? lead() : free.back())) return;
  commit(step_name("Move", document_->event(), free), moved_beside(free, right_m));
}

/// The event with the pieces moved to the right, the last of them to a round place.
Event MainWindow::moved_beside(const PieceIds& pieces, double right_m) const {
  const Event& event = document_->event();
  const double x_m = find_piece(event, pieces.back())->x_m;
  const Way way{rounded_place(x_m + right_m, event.units) - x_m, 0};
  return dragged(event, pieces, last_built(), way, {false, 0, false}).event;
}

/// As move_selected, but keys that are held make one step.
void MainWindow::nudge(int steps) {
  if (!document_) return;
  const PieceIds free = movable(document_->event(), pieces_);
  if (!may_edit(free.empty() ? lead() : free.back())) return;
  const double right_m = steps * small_move(document_->event().units);
  document_->edit().amend(step_name("Move", document_->event(), free), moved_beside(free, right_m));
  event_changed();
  const PlacedPiece& last = *find_piece(document_->event(), free.back());
  SetStatusText(shown(place_words(last, 0, document_->event().units)));
}

/// The handles of the one selected piece that the elevation can show; while one is dragged, as they were before.
std::vector<DragHandle> MainWindow::handles_now() const {
  if (hand_->held) return hand_->handles;
  const PlacedPiece* const piece = document_ && pieces_.size() == 1 ? find_piece(document_->event(), lead()) : nullptr;
  const PieceType* const type = piece && types_ ? types_->find(piece->type) : nullptr;
  if (type == nullptr || document_->read_only()) return {};
  std::vector<DragHandle> handles = handles_of(*piece, type->parameters, last_built());
  std::erase_if(handles, [](const DragHandle& handle) { return !shows_in_elevation(handle); });
  return handles;
}

const Parameter* MainWindow::parameter_of(const DragHandle& handle) const {
  const PlacedPiece* const piece = document_ ? find_piece(document_->event(), handle.piece) : nullptr;
  const PieceType* const type = piece && types_ ? types_->find(piece->type) : nullptr;
  return type ? find_parameter(type->parameters, handle.key) : nullptr;
}

void MainWindow::show_handles() {
  std::vector<ShownHandle> shown_ones;
  for (const DragHandle& handle : handles_now()) {
    const Parameter* const parameter = parameter_of(handle);
    if (parameter == nullptr) continue;
    Vec3 at = handle.at;
    if (hand_->held == handle_name(handle))
      at = place_with(handle, *parameter, value_of(find_piece(document_->event(), handle.piece)->values, *parameter));
    const Units units = document_->event().units;
    shown_ones.push_back(
        {handle_name(handle), {at.x(), at.z()}, handle.axis, dragged_to(handle, *parameter, handle.at, units).text});
  }
  canvas_->show_handles(std::move(shown_ones));
}

/// The event with the handle's parameter at `value`.
Event MainWindow::with_handle(const Event& event, const DragHandle& handle, const Value& value) const {
  const ParameterTables tables = types_->tables();
  return with_field(event, form_of(event, {handle.piece}, tables), tables, handle.key, value);
}

std::string MainWindow::handle_step(const DragHandle& handle) const {
  const Parameter* const parameter = parameter_of(handle);
  return step_name("Change " + (parameter ? parameter->label : handle.key) + " of", document_->event(), {handle.piece});
}

void MainWindow::drag_handle(const HandleName& name, Point2 way_m) {
  if (!begin_drag()) return;
  if (!hand_->held) {
    hand_->handles = handles_now();
    hand_->held = name;
  }
  const auto handle = std::ranges::find(hand_->handles, name, &handle_name);
  const Parameter* const parameter = handle == hand_->handles.end() ? nullptr : parameter_of(*handle);
  if (parameter == nullptr) return;
  const Vec3 to = handle->at + Vec3(way_m.x, 0, way_m.y);
  const HandleDrag drag = dragged_to(*handle, *parameter, to, hand_->from->units);
  document_->edit().amend(handle_step(*handle), with_handle(*hand_->from, *handle, drag.value));
  ++revision_;
  reckon();  // at once: its shape is to follow
  if (!hand_->later.IsRunning()) hand_->later.StartOnce(catch_up_ms);
  show_area();
  show_handles();
  canvas_->show_drag({{}, drag.text});
}

void MainWindow::nudge_handle(const HandleName& name, int right, int up) {
  const std::vector<DragHandle> handles = handles_now();
  const auto handle = std::ranges::find(handles, name, &handle_name);
  const Parameter* const parameter = handle == handles.end() ? nullptr : parameter_of(*handle);
  if (parameter == nullptr || !may_edit(lead())) return;
  const HandleDrag drag = stepped(*handle, *parameter, right, up, document_->event().units);
  Event event = with_handle(document_->event(), *handle, drag.value);
  if (event != document_->event()) {
    document_->edit().amend(handle_step(*handle), std::move(event));
    event_changed();
  }
  say(drag.text);
}

/// A point behind the one of `name`; without one, in the middle of the path's longest stretch.
void MainWindow::add_point(const std::optional<HandleName>& name) {
  const std::vector<DragHandle> handles = handles_now();
  const auto handle = name ? std::ranges::find(handles, *name, &handle_name)
                           : std::ranges::find(handles, Kind::path, [](const DragHandle& h) { return h.from.kind; });
  if (handle == handles.end() || handle->from.kind != Kind::path || !may_edit(lead())) return;
  const std::size_t before = name ? handle->point : before_longest_stretch(handle->from).value_or(0);
  commit(step_name("Add point to", document_->event(), {lead()}),
         with_handle(document_->event(), *handle, with_point_after(handle->from, before)));
  canvas_->focus_handle(HandleName{handle->key, before + 1});
}

void MainWindow::remove_point(const std::optional<HandleName>& name) {
  const std::vector<DragHandle> handles = handles_now();
  const auto handle = name ? std::ranges::find(handles, *name, &handle_name) : handles.end();
  if (handle == handles.end() || handle->from.kind != Kind::path) {
    SetStatusText("Choose the point first: Ctrl+H goes from handle to handle.");
    return;
  }
  if (!may_edit(lead())) return;
  const Value left = without_point(handle->from, handle->point);
  if (left == handle->from) {
    SetStatusText("A path keeps two points.");
    return;
  }
  commit(step_name("Remove point of", document_->event(), {lead()}), with_handle(document_->event(), *handle, left));
  canvas_->focus_handle(HandleName{handle->key, handle->point > 0 ? handle->point - 1 : 0});
}

void MainWindow::move_figure_to(double x_m) {
  if (!document_) return;
  hand_->figures[area_] = rounded_place(x_m, document_->event().units);
  show_area();
}

void MainWindow::select_all() {
  // In a field the key is about its text.
  if (wxTextEntry* const text = focused_text()) return text->SelectAll();
  if (area()) select(area_, shown_pieces(*area()));
}

void MainWindow::bind_canvas_commands() {
  on(wxID_SELECTALL, [this] { select_all(); });
  on(command_select_none, [this] { select(area_, ""); });
  on(command_fit_piece, [this] { canvas_->fit_pieces(pieces_); });
  on(command_snapping, [this] {
    hand_->snapping = !hand_->snapping;
    show_state();
  });
  on(command_next_handle, [this] { canvas_->step_handle(1); });
  on(command_previous_handle, [this] { canvas_->step_handle(-1); });
  on(command_add_point, [this] { add_point(canvas_->focused_handle()); });
  on(command_remove_point, [this] { remove_point(canvas_->focused_handle()); });
  for (const int by : {-1, 1})
    on(by < 0 ? command_figure_left : command_figure_right, [this, by] {
      constexpr double step_m = 0.25;
      if (const auto x = canvas_->figure_x_m()) move_figure_to(*x + by * step_m);
    });
}

}  // namespace quadrille
