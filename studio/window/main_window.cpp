// The panes and what they show.
#include "studio/window/main_window.hpp"

#include <wx/iconbndl.h>
#include <wx/sizer.h>
#include <wx/splitter.h>

#include <algorithm>
#include <utility>

#include "studio/model/lengths.hpp"
#include "studio/window/accessible_name.hpp"
#include "studio/window/drop_target.hpp"
#include "studio/window/icon.hpp"
#include "studio/window/wx_text.hpp"

namespace quadrille {
namespace {

enum StatusField : int { status_message, status_place, status_work, status_fields };

constexpr int strip_height = 262;  // [DIP]

/// The lower pane keeps the height that it was given, or that the user gave it, however the window changes; the
/// toolkit's own way loses it while the window is still growing to its first size.
void keep_lower_pane(wxSplitterWindow* splitter, int height) {
  auto kept = std::make_shared<int>(height);
  splitter->Bind(wxEVT_SIZE, [kept, splitter](wxSizeEvent& event) {
    if (event.GetSize().y < splitter->GetMinimumPaneSize()) return;  // not on the screen yet: nothing to lay out
    if (event.GetSize().y > *kept) splitter->SetSashPosition(event.GetSize().y - *kept);
    event.Skip();
  });
  splitter->Bind(wxEVT_SPLITTER_SASH_POS_CHANGING, [kept, splitter](wxSplitterEvent& event) {
    // Events of splitters inside this one come by here too.
    if (event.GetEventObject() == splitter) *kept = splitter->GetClientSize().y - event.GetSashPosition();
    event.Skip();
  });
}

wxString name_of(const Event& event, const std::filesystem::path& file) {
  const std::string name = file.filename().string();
  return shown(event.title.empty() ? name : event.title + " (" + name + ")");
}

}  // namespace

MainWindow::MainWindow(std::filesystem::path executable)
    : wxFrame(nullptr, wxID_ANY, "Quadrille"), executable_(std::move(executable)) {
  wxIconBundle icons;
  for (const int side : {16, 32, 48, 128}) icons.AddIcon(make_icon(side));
  SetIcons(icons);
  SetMenuBar(make_menu_bar());
  SetAcceleratorTable(window_accelerators());
  CreateStatusBar(status_fields);
  const int widths[] = {-1, FromDIP(260), FromDIP(110)};
  SetStatusWidths(status_fields, widths);
  SetMinSize(FromDIP(wxSize(720, 480)));
  SetSize(FromDIP(wxSize(1240, 760)));
  lay_out();
  bind_commands();
  Bind(wxEVT_CLOSE_WINDOW, &MainWindow::close, this);
  show_area();
  show_state();
  // Answers come on the worker's thread and are handed over as plain values.
  worker_ =
      std::make_unique<Worker>(standard_search_plan(executable_),
                               WorkerAnswers{[this](auto types) { CallAfter([this, types] { receive(types); }); },
                                             [this](auto study) { CallAfter([this, study] { receive(study); }); }});
}

MainWindow::~MainWindow() { worker_.reset(); }

void MainWindow::lay_out() {
  info_ = new wxInfoBar(this);
  const long plain = wxSP_LIVE_UPDATE | wxSP_NOBORDER;
  auto* down = new wxSplitterWindow(this, wxID_ANY, wxDefaultPosition, wxDefaultSize, plain);
  auto* across = new wxSplitterWindow(down, wxID_ANY, wxDefaultPosition, wxDefaultSize, plain);
  for (wxSplitterWindow* splitter : {down, across}) splitter->SetSize(GetClientSize());  // some room to begin with
  outline_ = new Outline(across, {[this](const auto& area, const auto& piece) { select(area, piece); },
                                  [this](const auto& area, const auto& piece) {
                                    select(area, piece);
                                    piece.empty() ? canvas_->fit_all() : canvas_->fit_piece(piece);
                                  }});
  canvas_ = new Canvas(across, {[this](const std::string& piece) { select(area_, piece); },
                                [this](const std::string& piece, double moved_m) { drag(piece, moved_m); },
                                [this] {
                                  drag_from_m_.reset();
                                  if (document_) document_->edit().settle();
                                  show_state();
                                },
                                [this](std::optional<Point2> place) { show_place(place); }});
  canvas_->SetAcceleratorTable(canvas_accelerators());
  strip_ = new wxNotebook(down, wxID_ANY);
  totals_ = new TotalsPanel(strip_);
  findings_ = new FindingsPanel(strip_, [this](const Finding& finding) {
    if (!finding.piece.empty()) select(finding.area, finding.piece);
  });
  strip_->AddPage(totals_, "Totals");
  strip_->AddPage(findings_, "Findings");
  across->SetMinimumPaneSize(FromDIP(140));
  across->SplitVertically(outline_, canvas_, FromDIP(344));
  down->SetMinimumPaneSize(FromDIP(160));
  down->SplitHorizontally(across, strip_, -FromDIP(strip_height));
  keep_lower_pane(down, FromDIP(strip_height));

  auto* sizer = new wxBoxSizer(wxVERTICAL);
  sizer->Add(info_, wxSizerFlags().Expand());
  sizer->Add(down, wxSizerFlags(1).Expand());
  SetSizer(sizer);
  for (wxWindow* window : {static_cast<wxWindow*>(this), static_cast<wxWindow*>(canvas_),
                           static_cast<wxWindow*>(outline_->tree()), static_cast<wxWindow*>(strip_)})
    window->SetDropTarget(make_drop_target(this, [this](const std::filesystem::path& file) { open_file(file); }));
}

const Area* MainWindow::area() const {
  if (!document_) return nullptr;
  for (const auto& area : document_->event().areas)
    if (area->id == area_) return &*area;
  return nullptr;
}

/// After every edit: the drawing follows at once with the geometry there is, the rest when it is worked out.
void MainWindow::event_changed() {
  ++revision_;
  worker_->ask({revision_, document_->event(), document_->palettes(), document_->opened_findings()});
  show_area();
  show_state();
  show_stale();
}

void MainWindow::receive(std::shared_ptr<const Study> study) {
  if (!document_ || study->revision != revision_) return;  // older than the event: a newer one is under way
  const bool first = !study_;
  study_ = std::move(study);
  outline_->show(outline_of(study_->event, study_->count, study_->findings));
  totals_->show(study_.get());
  findings_->show(study_.get());
  const std::size_t found = study_->findings.size();
  strip_->SetPageText(1, found == 0 ? wxString("Findings") : wxString("Findings (") << found << ")");
  show_area();
  if (first) canvas_->fit_all();
  show_state();
  show_stale();
  if (export_pending_) export_now(*std::exchange(export_pending_, std::nullopt));
}

void MainWindow::receive(std::shared_ptr<const PieceTypes> types) {
  types_ = std::move(types);
  if (pieces_dialog_) pieces_dialog_->show(types_);
  const auto crashed = std::ranges::find(types_->refused, RefusalReason::crashed_before, &RefusedFile::reason);
  if (crashed != types_->refused.end())
    info_->ShowMessage(shown("The plugin file " + crashed->file.filename().string() +
                             " ended the studio earlier and was left out. Pieces > Piece types can try it again."),
                       wxICON_WARNING);
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
  canvas_->show(scene_of(*here, study_->built, document_->palettes()->palettes), document_->event().units,
                here->pieces.empty() ? wxString("This area has no pieces yet.") : wxString());
}

void MainWindow::show_state() {
  wxString title = "Quadrille";
  if (document_) {
    title = (document_->history().has_changes() ? "*" : "") + name_of(document_->event(), document_->file());
    if (document_->read_only()) title += " [read-only]";
    title += wxString::FromUTF8(" – Quadrille");
  }
  if (GetTitle() != title) SetTitle(title);
  canvas_->select(piece_);
  refresh_menus(*GetMenuBar(), menu_state());
}

void MainWindow::show_stale() {
  const bool stale = updating();
  totals_->set_stale(stale && study_ != nullptr);
  SetStatusText(stale ? wxString::FromUTF8("Updating…") : wxString(), status_work);
}

void MainWindow::show_place(std::optional<Point2> place) {
  wxString text;
  if (place && document_) {
    const LengthStyle style = lengths_in(document_->event().units);
    text = shown(print_length(place->x, style) + " along, " + print_length(place->y, style) + " up");
  }
  if (GetStatusBar()->GetStatusText(status_place) != text) SetStatusText(text, status_place);
}

MenuState MainWindow::menu_state() const {
  MenuState state;
  state.letters = look_.letters, state.figure = look_.figure;
  state.piece_selected = !piece_.empty();
  if (!document_) return state;
  const History& history = document_->history();
  state.paper = paper_.value_or(usual_paper(document_->event().units));
  const PlacedPiece* piece = find_piece(document_->event(), piece_);
  state.open = true;
  state.can_edit = !document_->read_only();
  state.can_save = state.can_edit && history.has_changes();
  state.several_areas = document_->event().areas.size() > 1;
  state.can_move = state.can_edit && piece != nullptr && !piece->locked;
  state.undo = history.undo_name(), state.redo = history.redo_name();
  state.units = document_->event().units;
  return state;
}

void MainWindow::select(const std::string& area, const std::string& piece) {
  const bool other_area = area != area_;
  area_ = area, piece_ = piece;
  outline_->select(area, piece);
  if (other_area) {
    show_area();
    canvas_->fit_all();
  }
  show_state();
}

}  // namespace quadrille
