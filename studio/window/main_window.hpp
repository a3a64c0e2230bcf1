// The studio's one window: fixed panes, the document, and the worker that keeps them true.
#pragma once

#include <wx/frame.h>
#include <wx/infobar.h>
#include <wx/notebook.h>
#include <wx/timer.h>

#include <filesystem>
#include <functional>
#include <map>
#include <memory>
#include <optional>
#include <string>

#include "sdk/vec.hpp"
#include "studio/drawing/view.hpp"
#include "studio/model/built_event.hpp"
#include "studio/model/event.hpp"
#include "studio/model/parameter.hpp"
#include "studio/model/piece_edits.hpp"
#include "studio/model/site_object.hpp"
#include "studio/window/job/event_desk.hpp"
#include "studio/window/recent_colours.hpp"
#include "studio/window/recent_files.hpp"
#include "studio/window/toolkit/open_dialogs.hpp"

namespace quadrille {

enum class Alignment;
enum class DepthStep;
enum class FloorAxis;
enum class Spacing;
class Canvas;
class ChecklistPanel;
class Document;
class FindingsPanel;
class FormPanel;
class HouseHands;
class Outline;
class PiecesDialog;
class PhotoHands;
class PlanPanel;
class QuotePanel;
class RepertoireHands;
class SheetHands;
class SitePanel;
class RecoveryWriter;
class StandingPanel;
class StandingWorker;
class StartPage;
class TotalsPanel;
class Worker;
struct ArrayPlan;
struct ChecklistLine;
struct DragHandle;
struct DragRules;
struct DragShown;
struct Gesture;
struct Form;
struct FormContent;
struct GustReport;
struct HandleName;
struct MenuState;
struct Parameter;
struct PieceType;
struct PieceTypes;
struct Question;
struct SiteMenuState;
struct StandingReport;
struct Study;
struct Way;
enum class SiteAddition;

class MainWindow : public wxFrame, private EventDesk {
 public:
  /// `executable` is where plugins and palettes are looked for beside.
  explicit MainWindow(std::filesystem::path executable);
  ~MainWindow() override;

  /// Opens the event at `file` in place of the present one, after asking about unsaved changes. False where that was
  /// declined or failed; the user has then been told, and the present event stays.
  bool open_file(const std::filesystem::path& file);
  /// Begins `event`, which has no file yet, in place of the present one; false where that was declined.
  bool begin(Event event);
  /// Opens a copy of the event at `file`, which has no file of its own.
  bool open_copy(const std::filesystem::path& file);
  /// False where it failed or was declined; the user has then been told.
  bool save();
  bool save_as(const std::filesystem::path& file);
  /// Exports the drawing as soon as its figures are those of the present event.
  void export_to(const std::filesystem::path& file);
  /// Offers what the studio kept when it ended without saving, one after the other until one is restored; of one file
  /// alone, where `only` names it. False where nothing was restored.
  bool offer_recovery(const std::filesystem::path& only = {});
  void undo();
  void redo();
  /// Moves the selected pieces along the floor.
  void move_selected(double right_m);
  /// Adds a piece of the type in the middle of what is shown, in the colours of the piece before it, and selects it.
  void add_piece(const std::string& type);
  /// Has the pointer on the canvas carry a piece of the type until it is put down.
  void begin_placing(const std::string& type);
  /// What the canvas offers by the right button or the menu key.
  std::unique_ptr<wxMenu> context_menu() const;
  // The selected pieces; locked ones are left out where a lock guards what would change, and the status line says so.
  void remove_selected();
  void duplicate_selected();
  void mirror_selected();
  void order_selected(DepthStep step);
  void rename_selected(const std::string& name);
  /// Locks all, or unlocks all where each of them is.
  void lock_selected();
  /// Hides all, or shows all where each of them is hidden.
  void hide_selected();
  /// Shows and selects every hidden piece of the area.
  void show_hidden();
  void align_selected(Alignment alignment);
  void spread_selected(Spacing spacing, FloorAxis axis);
  void array_selected(const ArrayPlan& plan);
  /// To the system's clipboard; false where there is nothing to take or the clipboard refuses.
  bool copy_selected();
  void cut_selected();
  /// From the system's clipboard: at the pointer while it is over the drawing, else beside where the pieces stood.
  void paste();
  void set_units(Units units);
  /// Gives the slot (0 = A) of the selected pieces this colour; the event draws from its palette from then on.
  void set_colour(std::size_t slot, const ColourReference& colour);
  /// Selects what the finding is about and puts the keyboard into the field it blames, where there is one.
  void go_to(const Finding& finding);
  /// Makes the changes that mend the findings, as one step.
  void apply_remedy(const Findings& findings);
  /// Freezes the quote that is shown in the event, given on `date` (ISO 8601). False where it is not that of the event as
  /// it is now, or may not be issued.
  bool issue_quote(const std::string& date, const std::string& number);
  /// An area of this name behind the others, and shows it; blanks at its ends count for nothing, an empty one does nothing.
  void add_area(const std::string& name);
  /// Of the shown area; as add_area.
  void rename_area(const std::string& name);
  /// One piece of the area, or, with an empty id, none.
  void select(const std::string& area, const std::string& piece);
  /// Pieces of the area, in the order in which they were picked; ids that are not in it are left out.
  void select(const std::string& area, const PieceIds& pieces);

  /// Null where no event is open.
  const Document* document() const { return document_.get(); }
  /// What was worked out last; null before.
  const Study* study() const { return study_.get(); }
  const std::shared_ptr<const Study>& study_shared() const { return study_; }
  /// True while what is shown is older than the event.
  bool updating() const;
  /// The piece that was picked last; empty: none is selected.
  const std::string& selected_piece() const { return lead(); }
  const PieceIds& selected_pieces() const { return pieces_; }
  const std::string& shown_area() const { return area_; }
  Canvas& canvas() { return *canvas_; }
  Outline& outline() { return *outline_; }
  TotalsPanel& totals() { return *totals_; }
  FindingsPanel& findings() { return *findings_; }
  StandingPanel& standing() { return *standing_; }
  ChecklistPanel& checklist() { return *checklist_; }
  PlanPanel& plan() { return *plan_; }
  QuotePanel& quote() { return *quote_; }
  SitePanel& site() { return *site_; }
  PhotoHands& photo() { return *photo_hands_; }
  HouseHands& house() { return *house_hands_; }
  RepertoireHands& repertoire() { return *repertoire_hands_; }
  /// Brings the panel's page of the strip to the front.
  void show_page(const wxWindow& panel);
  StartPage& start() { return *start_; }
  FormPanel& form() { return *form_; }

 private:
  // main_window_desk.cpp: the event as the parts of the window have it
  bool is_open() const override { return document_ != nullptr; }
  const Event& event() const override;
  const std::filesystem::path& file() const override;
  std::shared_ptr<const Study> study_now() const override { return updating() ? nullptr : study_; }
  const Area* area() const override;
  const std::vector<Palette>& palettes() const override;
  std::shared_ptr<const LoadedPalettes> loaded_palettes() const override;
  std::shared_ptr<const LoadedPalettes> standard_palettes() const;
  const PieceTypes* types() const override { return types_.get(); }
  bool may_edit_event() override;
  bool can_edit() const override;
  void commit(const std::string& name, Event event) override;
  void amend(const std::string& name, Event event) override;
  void settle() override;
  void settle_fields() override;
  void end_drags();
  void say(const std::string& sentence) override;
  void inform(const std::string& sentence) override;
  const PlacedPiece* lead_piece() const override;
  std::vector<SlotField> lead_slots() const override;
  void colour_lead(std::size_t slot, const ColourReference& colour) override;

  // main_window.cpp: panes, and what they show
  void lay_out();
  void take_dropped(const std::filesystem::path& file);
  void receive(std::shared_ptr<const Study> study);
  void receive(std::shared_ptr<const PieceTypes> types);
  void event_changed();
  void show_area();
  void show_state();
  void show_stale();
  void show_place(std::optional<Point2> place);
  void say_place(const std::string& words);
  Scene scene_here() const;
  const std::string& lead() const;
  MenuState menu_state() const;

  // main_window_standing.cpp: how the pieces stand, and the checklist
  void make_standing_pages();
  bool standing_is_shown() const;
  void ask_standing();
  void receive(std::shared_ptr<const StandingReport> report);
  void show_standing();
  void show_checklist();
  void show_bent(const GustReport* report);
  void tick(const ChecklistLine& line, bool done);

  // main_window_site.cpp: what is known of the shown area, what stands in it, and lines
  void make_site_page();
  void show_site();
  SiteMenuState site_menu_state() const;
  const StandingReport* report_of_lead() const;
  bool may_tie() const;
  std::optional<SiteObject> site_object() const;
  void pick_on_site(const std::optional<SiteObject>& object);
  bool may_edit_site();
  std::optional<std::string> take_site_text(const std::optional<SiteObject>& object, const std::string& key,
                                            const std::string& text);
  void drag_on_site(const SiteObject& object, SiteGrip grip, const Way& way, bool fine);
  void add_to_site(SiteAddition what, const std::optional<SitePlace>& place);
  void remove_from_site();
  void use_advice(std::size_t number);
  void show_floor_place(const std::optional<SitePlace>& place);

  // main_window_areas.cpp: the event's details and its areas
  void bind_areas();
  void offer_area_commands();
  void ask_and_remove_area();
  void move_area(int by);
  void ask_details();

  // main_window_reckoned.cpp: the day plan and the quote
  Question question() const;
  void reckon();
  void reckon_anew() override;
  void make_reckoned_pages();
  void show_reckoned();
  void ask_and_issue();

  // main_window_form.cpp: the selected piece, its form, and what is done with pieces
  void make_form(wxWindow* parent);
  const BuiltEvent& last_built() const;
  void show_form();
  void change(const std::string& verb, Event event);
  void edit_form(const std::string& key, const std::function<Event(const Form&, const ParameterTables&)>& edit);
  void pick_colour(std::size_t slot);
  void show_pattern(const PlacedPiece& placed, FormContent& content) const;
  std::optional<std::string> take_typed(const std::string& key, const std::string& text);
  std::vector<ColourReference> colours_for_new() const;
  void put_in(const char* verb, PlacedPiece piece) override;
  double middle_m() const override;

  // main_window_arrange.cpp: what is done with the selected pieces
  using PiecesEdit = std::function<Event(const Event& event, const PieceIds& pieces)>;
  void bind_arranging();
  void change_free(const char* verb, const PiecesEdit& edit);
  void change_all(const char* verb, const PiecesEdit& edit);
  void ask_and_rename();
  void ask_and_array();

  // main_window_clipboard.cpp
  void bind_clipboard();
  bool copy(const PieceIds& pieces);

  // main_window_canvas.cpp: hands on the drawing
  void make_canvas(wxWindow* parent);
  void bind_canvas_commands();
  bool begin_drag();
  void drag_pieces(double right_m, const DragRules& rules);
  void catch_up();
  void let_go();
  void give_up();
  Event moved_beside(const PieceIds& pieces, double right_m) const;
  void nudge(int steps);
  std::vector<DragHandle> handles_now() const;
  const Parameter* parameter_of(const DragHandle& handle) const;
  void show_handles();
  Event with_handle(const Event& event, const DragHandle& handle, const Value& value) const;
  std::string handle_step(const DragHandle& handle) const;
  void drag_handle(const HandleName& name, Point2 way_m);
  void nudge_handle(const HandleName& name, int right, int up);
  void add_point(const std::optional<HandleName>& name);
  void remove_point(const std::optional<HandleName>& name);
  void move_figure_to(double x_m);
  void select_all();

  // main_window_placing.cpp: new pieces put down by hand
  void show_placing_room(const std::optional<Extent>& room, int carrying);
  void show_placing(DragShown drag);
  void place_near(double x_m, const DragRules& rules);
  void place_now();
  PlacedPiece new_piece(const PieceType& type) const;
  void add_piece_at(const std::string& type, double x_m);

  // main_window_findings.cpp: everything there is to say, and what mends it
  void make_findings(wxNotebook* strip);
  void show_findings();
  void step_finding(int by);
  bool go_to_site(const Finding& finding);

  // main_window_begin.cpp: the ways in
  void make_start(wxWindow* parent);
  void take(Document document);
  void ask_and_begin();
  void open_recent(std::size_t number);
  void remember(const std::filesystem::path& file);
  void show_keys();

  // main_window_files.cpp: opening, saving, closing
  void choose_and_open();
  bool choose_and_save();
  bool settle_changes();
  bool finish_save(const std::optional<std::string>& fault);
  BuiltEvent built_now() const;

  // main_window_recovery.cpp: unsaved work
  void start_recovery();
  void keep_for_recovery();
  void end_recovery(bool keep_what_is_unsaved);

  void close(wxCloseEvent& event);

  // main_window_commands.cpp: menus, keys and edits
  void bind_commands();
  void on(int id, std::function<void()> act);
  bool may_edit(const std::string& piece);
  void step_area(int by);
  void next_pane();
  void focus_strip();
  void show_piece_types();
  void try_crashed_again();
  void show_about();

  OpenDialogs dialogs_;
  std::filesystem::path executable_;
  RecentFiles recent_{recent_files_memory()};
  std::vector<std::filesystem::path> samples_;
  std::unique_ptr<Document> document_;
  std::uint64_t revision_ = 0;  ///< grows with every change; never begins anew, so that no old answer is taken
  std::shared_ptr<const Study> study_;
  std::shared_ptr<const PieceTypes> types_;
  std::string area_;                ///< id of the area that is shown
  PieceIds pieces_;                 ///< ids of what is selected in it, the one picked last at the end
  std::optional<Point2> pointing_;  ///< x and z [m] under the pointer while it is over the drawing
  std::unique_ptr<Gesture> hand_;   ///< what is under way on the canvas
  SceneLook look_;
  std::unique_ptr<PhotoHands> photo_hands_;
  std::unique_ptr<SheetHands> sheet_hands_;
  std::unique_ptr<HouseHands> house_hands_;
  std::unique_ptr<RepertoireHands> repertoire_hands_;
  RecentColours recent_colours_{recent_colours_memory()};

  wxInfoBar* info_ = nullptr;
  Outline* outline_ = nullptr;
  Canvas* canvas_ = nullptr;
  FormPanel* form_ = nullptr;
  StartPage* start_ = nullptr;  ///< in place of the canvas while no event is open
  wxNotebook* strip_ = nullptr;
  TotalsPanel* totals_ = nullptr;
  FindingsPanel* findings_ = nullptr;
  StandingPanel* standing_ = nullptr;
  ChecklistPanel* checklist_ = nullptr;
  PlanPanel* plan_ = nullptr;
  QuotePanel* quote_ = nullptr;
  SitePanel* site_ = nullptr;
  std::optional<SiteObject> site_object_;  ///< what was selected on its page last
  bool led_to_site_ = false;               ///< a finding led to its page, and nobody has left that since
  std::optional<Event> site_drag_from_;    ///< as it was when the drag on its plan began
  std::map<std::string, std::shared_ptr<const StandingReport>, std::less<>> reports_;  ///< newest of each piece
  PiecesDialog* pieces_dialog_ = nullptr;                                              ///< while it is open
  std::unique_ptr<Worker> worker_;  ///< last, like the next: they answer to all above
  std::unique_ptr<StandingWorker> standing_worker_;
  wxTimer keep_timer_;       ///< runs while edits follow each other too fast to keep each
  bool keep_later_ = false;  ///< and there was one since
  std::unique_ptr<RecoveryWriter> recovery_;
};

}  // namespace quadrille
