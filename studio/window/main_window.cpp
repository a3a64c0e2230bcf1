// The panes and what they show.
#include "studio/window/main_window.hpp"

#include <wx/display.h>
#include <wx/iconbndl.h>
#include <wx/sizer.h>
#include <wx/splitter.h>

#include <algorithm>
#include <utility>

#include "studio/arrange/moving.hpp"
#include "studio/arrange/selection.hpp"
#include "studio/host/piece_type.hpp"
#include "studio/model/edits.hpp"
#include "studio/model/lengths.hpp"
#include "studio/window/canvas/canvas.hpp"
#include "studio/window/canvas/gesture.hpp"
#include "studio/window/commands/commands.hpp"
#include "studio/window/dialogs/pieces_dialog.hpp"
#include "studio/window/house_hands.hpp"
#include "studio/window/job/document.hpp"
#include "studio/window/job/recovery_writer.hpp"
#include "studio/window/job/standing_worker.hpp"
#include "studio/window/job/study.hpp"
#include "studio/window/job/worker.hpp"
#include "studio/window/panels/findings_panel.hpp"
#include "studio/window/panels/form_panel.hpp"
#include "studio/window/panels/outline.hpp"
#include "studio/window/panels/plan_panel.hpp"
#include "studio/window/panels/quote_panel.hpp"
#include "studio/window/panels/standing_panel.hpp"
#include "studio/window/panels/start_page.hpp"
#include "studio/window/panels/totals_panel.hpp"
#include "studio/window/photo_hands.hpp"
#include "studio/window/repertoire_hands.hpp"
#include "studio/window/sheet_hands.hpp"
#include "studio/window/toolkit/accessible_name.hpp"
#include "studio/window/toolkit/drop_target.hpp"
#include "studio/window/toolkit/file_names.hpp"
#include "studio/window/toolkit/icon.hpp"
#include "studio/window/toolkit/kept_pane.hpp"
#include "studio/window/toolkit/wx_text.hpp"

namespace quadrille {
namespace {

enum StatusField : int { status_message, status_place, status_work, status_fields };

constexpr int strip_height = 284, form_width = 340;     // [DIP]
constexpr double form_share = 0.27, strip_share = 0.3;  // of a large window

/// `wanted`, or as much of it as the desktop has beside its panels; a frame's own border is taken to be 40 high at most.
void fit_into_desktop(wxTopLevelWindow& window, const wxSize& wanted) {
  const int found = wxDisplay::GetFromWindow(&window);
  const wxRect room = wxDisplay(found == wxNOT_FOUND ? 0u : static_cast<unsigned>(found)).GetClientArea();
  const wxSize border = window.FromDIP(wxSize(8, 40));
  window.SetMinSize(wxSize(std::min(window.GetMinWidth(), room.width), std::min(window.GetMinHeight(), room.height)));
  window.SetSize(std::min(wanted.x, room.width - border.x), std::min(wanted.y, room.height - border.y));
}

wxString name_of(const Event& event, const std::filesystem::path& file) {
  const std::string name = file.empty() ? "not saved yet" : file.filename().string();
  return shown(event.title.empty() ? name : event.title + " (" + name + ")");
}

}  // namespace

MainWindow::MainWindow(std::filesystem::path executable)
    : wxFrame(nullptr, wxID_ANY, "Quadrille"), executable_(std::move(executable)) {
  wxIconBundle icons;
  for (const int side : {16, 32, 48, 128}) icons.AddIcon(make_icon(side));
  SetIcons(icons);
  samples_ = sample_events(executable_);
  std::vector<std::string> names;
  for (const auto& sample : samples_) names.push_back(sample_title(sample));
  SetMenuBar(make_menu_bar(names));
  SetAcceleratorTable(window_accelerators());
  CreateStatusBar(status_fields);
  const int widths[] = {-1, FromDIP(260), FromDIP(110)};
  SetStatusWidths(status_fields, widths);
  SetMinSize(FromDIP(wxSize(720, 480)));
  fit_into_desktop(*this, FromDIP(wxSize(1240, 760)));
  EventDesk& desk = *this;
  sheet_hands_ = std::make_unique<SheetHands>(desk, *this);
  house_hands_ = std::make_unique<HouseHands>(desk, *this);
  repertoire_hands_ = std::make_unique<RepertoireHands>(
      desk, *house_hands_, *this, [this](Event event, auto use) { worker_->build(std::move(event), std::move(use)); });
  lay_out();
  bind_commands();
  Bind(wxEVT_CLOSE_WINDOW, &MainWindow::close, this);
  start_recovery();
  show_area();
  show_state();
  // Answers come on the worker's thread and are handed over as plain values.
  worker_ =
      std::make_unique<Worker>(standard_search_plan(executable_),
                               WorkerAnswers{[this](auto types) { CallAfter([this, types] { receive(types); }); },
                                             [this](auto study) { CallAfter([this, study] { receive(study); }); }});
}

MainWindow::~MainWindow() {
  recovery_.reset();
  standing_worker_.reset();
  worker_.reset();
}

void MainWindow::lay_out() {
  info_ = new wxInfoBar(this);
  const long plain = wxSP_LIVE_UPDATE | wxSP_NOBORDER;
  auto* down = new wxSplitterWindow(this, wxID_ANY, wxDefaultPosition, wxDefaultSize, plain);
  auto* across = new wxSplitterWindow(down, wxID_ANY, wxDefaultPosition, wxDefaultSize, plain);
  for (wxSplitterWindow* splitter : {down, across}) splitter->SetSize(GetClientSize());  // some room to begin with
  outline_ = new Outline(across, {[this](const std::string& area, const PieceIds& pieces) { select(area, pieces); },
                                  [this](const std::string& area, const std::string& piece) {
                                    select(area, piece);
                                    piece.empty() ? canvas_->fit_all() : canvas_->fit_pieces({piece});
                                  }});
  auto* right = new wxSplitterWindow(across, wxID_ANY, wxDefaultPosition, wxDefaultSize, plain);
  right->SetSize(GetClientSize());
  auto* middle = new wxPanel(right);
  make_canvas(middle);
  canvas_->Hide();
  make_start(middle);
  auto* places = new wxBoxSizer(wxHORIZONTAL);
  places->Add(canvas_, wxSizerFlags(1).Expand());
  places->Add(start_, wxSizerFlags(1).Expand());
  middle->SetSizer(places);
  make_form(right);
  right->SetMinimumPaneSize(FromDIP(140));
  right->SplitVertically(middle, form_, -FromDIP(form_width));
  keep_second_pane(right, FromDIP(form_width), form_share);
  strip_ = new wxNotebook(down, wxID_ANY);
  set_accessible_name(strip_, "What comes of the design", "");
  totals_ = new TotalsPanel(strip_);
  make_findings(strip_);
  strip_->AddPage(totals_, "Totals");
  make_site_page();
  make_standing_pages();
  make_reckoned_pages();
  strip_->AddPage(findings_, "Findings");
  across->SetMinimumPaneSize(FromDIP(140));
  across->SplitVertically(outline_, right, FromDIP(358));
  down->SetMinimumPaneSize(FromDIP(160));
  down->SplitHorizontally(across, strip_, -FromDIP(strip_height));
  keep_second_pane(down, FromDIP(strip_height), strip_share);

  auto* sizer = new wxBoxSizer(wxVERTICAL);
  sizer->Add(info_, wxSizerFlags().Expand());
  sizer->Add(down, wxSizerFlags(1).Expand());
  SetSizer(sizer);
  for (wxWindow* window :
       {static_cast<wxWindow*>(this), static_cast<wxWindow*>(canvas_), static_cast<wxWindow*>(start_),
        static_cast<wxWindow*>(outline_->tree()), static_cast<wxWindow*>(strip_)})
    window->SetDropTarget(make_drop_target(this, [this](const std::filesystem::path& file) { take_dropped(file); }));
}

/// What a dialog asks is about the event that is open: no other may take its place meanwhile.
void MainWindow::take_dropped(const std::filesystem::path& file) {
  if (dialogs_.any()) return say("Answer the open dialog first, then drop the file again.");
  if (!photo_hands_->take_dropped(file)) open_file(file);
}

/// After every edit: the drawing follows at once with the geometry there is, the rest when it is worked out.
void MainWindow::event_changed() {
  photo_hands_->follow();
  say({});  // what was told of an earlier change
  const auto is_gone = [this](const std::string& id) { return find_piece(document_->event(), id) == nullptr; };
  if (std::ranges::any_of(pieces_, is_gone)) select(area_, pieces_);
  ++revision_;
  keep_for_recovery();
  reckon();
  show_area();
  show_site();
  show_state();
  show_stale();
}

void MainWindow::receive(std::shared_ptr<const Study> study) {
  if (!document_ || study->revision != revision_) {  // older than the event: a newer one is under way
    // While a handle is dragged the shape follows all the same.
    if (!document_ || !hand_->held || study->revision <= hand_->from_revision) return;
    hand_->live = std::move(study);
    return show_area();
  }
  const bool first = !study_;
  study_ = std::move(study);
  hand_->live.reset();
  outline_->show(outline_of(study_->event, study_->order.count, study_->findings));
  totals_->show(study_.get());
  show_reckoned();
  show_findings();
  show_area();
  if (first) canvas_->fit_all();
  show_standing();
  ask_standing();
  show_site();
  show_state();
  show_stale();
  sheet_hands_->follow();
}

void MainWindow::receive(std::shared_ptr<const PieceTypes> types) {
  types_ = std::move(types);
  std::vector<std::string> names;
  for (const PieceType& type : types_->types) names.push_back(type.name);
  show_types(*GetMenuBar(), names);
  show_state();
  if (pieces_dialog_) pieces_dialog_->show(types_);
  const auto crashed = std::ranges::find(types_->refused, RefusalReason::crashed_before, &RefusedFile::reason);
  if (crashed != types_->refused.end())
    info_->ShowMessage(shown("The plugin file " + crashed->file.filename().string() +
                             " ended the studio earlier and was left out. Pieces > Piece types can try it again."),
                       wxICON_WARNING);
}

/// The area that is shown, which there is, as far as it is built.
Scene MainWindow::scene_here() const {
  Scene scene = scene_of(*area(), last_built(), document_->palettes()->palettes);
  if (const auto figure = hand_->figures.find(area_); figure != hand_->figures.end()) scene.figure_x_m = figure->second;
  return scene;
}

void MainWindow::show_area() {
  const Area* here = area();
  if (here == nullptr) {
    canvas_->show(std::nullopt, Units::feet,
                  document_ ? wxString("This event has no area yet.")
                            : wxString("Open an event with Ctrl+O, or drop its file here."));
    return;
  }
  if (!study_) {  // every piece would be drawn as one whose type is not there
    canvas_->show(std::nullopt, Units::feet, wxString::FromUTF8("Building the pieces…"));
    return;
  }
  canvas_->show(scene_here(), document_->event().units,
                here->pieces.empty() ? wxString("This area has no pieces yet: Pieces > Add has some.") : wxString());
}

void MainWindow::show_state() {
  show_form();
  wxString title = "Quadrille";
  if (document_) {
    title = (document_->has_changes() ? "*" : "") + name_of(document_->event(), document_->file());
    if (document_->read_only()) title += " [read-only]";
    title += wxString::FromUTF8(" – Quadrille");
  }
  if (GetTitle() != title) SetTitle(title);
  canvas_->select(pieces_);
  show_handles();
  refresh_menus(*GetMenuBar(), menu_state());
}

void MainWindow::show_stale() {
  standing_->set_revision(revision_);
  const bool stale = updating();
  totals_->set_stale(stale && study_ != nullptr);
  plan_->set_stale(stale && study_ != nullptr);
  quote_->set_stale(stale && study_ != nullptr);
  SetStatusText(stale ? wxString::FromUTF8("Updating…") : wxString(), status_work);
}

void MainWindow::show_place(std::optional<Point2> place) {
  pointing_ = place;
  if (!place || !document_) return say_place({});
  const LengthStyle style = lengths_in(document_->event().units);
  say_place(print_length(place->x, style) + " along, " + print_length(place->y, style) + " up");
}

/// Where the pointer is, in the status line.
void MainWindow::say_place(const std::string& words) {
  const wxString text = shown(words);
  if (GetStatusBar()->GetStatusText(status_place) != text) SetStatusText(text, status_place);
}

MenuState MainWindow::menu_state() const {
  MenuState state;
  state.letters = look_.letters, state.figure = look_.figure;
  state.piece_selected = !pieces_.empty();
  state.snapping = hand_->snapping;
  state.has_handles = !canvas_->handles().empty();
  state.has_path = std::ranges::find(canvas_->handles(), -1, &ShownHandle::axis) != canvas_->handles().end();
  if (!document_) return state;
  const History& history = document_->history();
  state.paper = sheet_hands_->paper();
  state.open = true;
  state.can_edit = !document_->read_only();
  state.can_save = state.can_edit && document_->has_changes();
  state.several_areas = document_->event().areas.size() > 1;
  const auto every = [&](auto is) {
    return !pieces_.empty() && std::ranges::all_of(pieces_, [&](const std::string& id) {
      const PlacedPiece* one = find_piece(document_->event(), id);
      return one == nullptr || is(*one);
    });
  };
  state.selected = pieces_.size();
  state.all_locked = every([](const PlacedPiece& one) { return one.locked; });
  state.all_hidden = every([](const PlacedPiece& one) { return one.hidden; });
  state.any_hidden = area() != nullptr && !hidden_in(*area()).empty();
  state.can_change_piece = state.can_edit && !pieces_.empty() && !state.all_locked;
  state.can_add_photo = state.can_edit && area() != nullptr;
  const Backdrop* const photo = photo_hands_->photo();
  state.has_photo = photo != nullptr;
  state.photo_locked = photo != nullptr && photo->locked, state.photo_shown = photo != nullptr && !photo->hidden;
  state.can_move = state.can_edit && !movable(document_->event(), pieces_).empty();
  state.undo = history.undo_name(), state.redo = history.redo_name();
  state.units = document_->event().units;
  return state;
}

bool MainWindow::updating() const { return document_ && (!study_ || study_->revision != revision_); }

const std::string& MainWindow::lead() const {
  static const std::string none;
  return pieces_.empty() ? none : pieces_.back();
}

void MainWindow::select(const std::string& area, const std::string& piece) {
  select(area, piece.empty() ? PieceIds{} : PieceIds{piece});
}

void MainWindow::select(const std::string& area, const PieceIds& pieces) {
  PieceIds there = pieces;
  const bool other_area = area != area_;
  area_ = area;
  std::erase_if(there, [this](const std::string& id) {
    const Area* const of = document_ ? area_of(document_->event(), id) : nullptr;
    return of == nullptr || of->id != area_;
  });
  const bool other_pieces = there != pieces_;
  pieces_ = std::move(there);
  if (other_area || other_pieces) say({});
  outline_->select(area_, pieces_);
  if (other_area) {
    photo_hands_->end_mode();
    show_area();
    canvas_->fit_all();
    show_standing();
  }
  standing_->select(lead());
  if (other_area || other_pieces) ask_standing();
  const bool of_piece =
      site_object_ && (site_object_->kind == SiteObjectKind::line || site_object_->kind == SiteObjectKind::piece);
  if (other_area || (other_pieces && of_piece && site_object_->id != lead())) site_object_.reset();
  show_site();
  show_state();
}

}  // namespace quadrille
