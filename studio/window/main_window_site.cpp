// The page Site: what is known of the shown area, what stands in it, and the lines that secure its pieces.
#include <algorithm>
#include <string>
#include <utility>

#include "studio/arrange/site_moves.hpp"
#include "studio/form/site_form.hpp"
#include "studio/host/piece_type.hpp"
#include "studio/model/area_edits.hpp"
#include "studio/model/lengths.hpp"
#include "studio/model/piece_edits.hpp"
#include "studio/model/site_edits.hpp"
#include "studio/standing/advice.hpp"
#include "studio/standing/wind.hpp"
#include "studio/window/commands/commands_site.hpp"
#include "studio/window/job/document.hpp"
#include "studio/window/job/standing_worker.hpp"
#include "studio/window/job/study.hpp"
#include "studio/window/main_window.hpp"
#include "studio/window/panels/site_panel.hpp"
#include "studio/window/panels/standing_words.hpp"
#include "studio/window/toolkit/wx_text.hpp"

namespace quadrille {
namespace {

constexpr double outlet_m = 10, aside_m = 0.5, before_m = 2;

std::string label_of(const FactFields& fields, const std::string& key) {
  const FactField* const field = find_fact(fields, key);
  return field != nullptr ? field->label : key;
}

/// "2 lines: one to the front, one to the back; bears 24 mph, Beaufort 6, with 10.0 kg on each foot"
std::string words_of(const LineAdvice& advice, Units units) {
  std::string words = advice.words + "; bears " + gust_words(advice.limit_gust_m_s, units);
  if (advice.ballast_kg) words += ", with " + print_mass(*advice.ballast_kg, masses_in(units)) + " on each foot";
  return words;
}

/// Where something new comes to stand while nobody has said where: beside what is there, before the pieces, aside of them.
SitePlace usual_place(const FloorPlan& plan, SiteAddition what) {
  const Extent& e = plan.extent;
  if (what == SiteAddition::walkway) return {(e.left + e.right) / 2, -before_m};
  return {e.right + aside_m, 0};
}

}  // namespace

void MainWindow::make_site_page() {
  site_ = new SitePanel(strip_,
                        {[this](const auto& object, const std::string& key, const std::string& text) {
                           return take_site_text(object, key, text);
                         },
                         [this](const auto& object) { pick_on_site(object); },
                         [this](const SiteObject& object, SiteGrip grip, double right_m, double back_m, bool fine) {
                           drag_on_site(object, grip, {right_m, back_m}, fine);
                         },
                         [this] {
                           site_drag_from_.reset();
                           if (document_) document_->edit().settle();
                           show_state();
                         },
                         [this](SiteAddition what, const std::optional<SitePlace>& place) { add_to_site(what, place); },
                         [this] { remove_from_site(); }, [this](std::size_t number) { use_advice(number); },
                         [this](const std::optional<SitePlace>& place) { show_floor_place(place); }});
  strip_->AddPage(site_, "Site");
  strip_->Bind(wxEVT_NOTEBOOK_PAGE_CHANGED, [this](wxBookCtrlEvent& event) {
    event.Skip();
    led_to_site_ = false;
    show_site();
  });
  on(command_site_page, [this] {
    show_page(*site_);
    site_->objects().list->SetFocus();
  });
  for (const SiteAddition what :
       {SiteAddition::structure, SiteAddition::walkway, SiteAddition::outlet, SiteAddition::line})
    on(command_site_structure + static_cast<int>(what), [this, what] { add_to_site(what, std::nullopt); });
  on(command_site_remove, [this] { remove_from_site(); });
  for (int i = 0; i <= command_site_advice_last - command_site_advice; ++i)
    on(command_site_advice + i, [this, i] { use_advice(static_cast<std::size_t>(i)); });
}

const StandingReport* MainWindow::report_of_lead() const {
  const auto report = reports_.find(lead());
  return report == reports_.end() || report->second->revision != revision_ ? nullptr : report->second.get();
}

bool MainWindow::may_tie() const {
  const auto built = last_built().find(lead());
  return built != last_built().end() && !built->second->piece.tie_points.empty();
}

/// What is selected on the page, where the area still has it.
std::optional<SiteObject> MainWindow::site_object() const {
  const Area* const here = area();
  if (here == nullptr) return std::nullopt;
  if (site_object_ && has_object(*here, *site_object_)) return site_object_;
  return std::nullopt;
}

void MainWindow::show_site() {
  refresh_site_menu(*GetMenuBar(), site_menu_state());
  if (site_ == nullptr || strip_->GetCurrentPage() != site_) return;
  const Area* const here = area();
  if (here == nullptr) return site_->show(std::nullopt);
  const Event& event = document_->event();
  SiteContent content;
  content.area = here->id, content.name = here->name, content.units = event.units;
  content.area_fields = area_fields(event, *here);
  if (here->site.gust_m_s)
    for (FactField& field : content.area_fields)
      if (field.key == "gust") {
        const BeaufortBand& band = beaufort_of(*here->site.gust_m_s);
        field.note = "Beaufort " + std::to_string(band.number) + ", " + band.name;
      }
  content.rows = site_rows(event, *here, last_built());
  content.selected = site_object();
  if (!content.selected) site_object_.reset();  // it is gone
  if (content.selected) {
    content.object_fields = object_fields(event, *here, *content.selected, last_built());
    const SiteRow row = site_row(event, *here, *content.selected, last_built());
    content.selected_name = object_name(*here, *content.selected);
    const bool sized =
        content.selected->kind == SiteObjectKind::line || content.selected->kind == SiteObjectKind::walkway;
    content.words = row.where + (sized ? ", " + row.measures : std::string());
  }
  content.plan = floor_plan_of(*here, last_built());
  content.may_edit = !document_->read_only(), content.may_tie = may_tie();
  if (const PlacedPiece* placed = find_piece(*here, lead())) {
    content.securing = placed->name.empty() ? "The piece" : placed->name;
    if (const StandingReport* report = report_of_lead()) {
      content.securing +=
          ": bears " + limit_words(report->standing, event.units) + ", " + verdict_words(report->standing);
      for (const LineAdvice& advice : report->advice) content.advice.push_back(words_of(advice, event.units));
    } else {
      content.securing += ": how it stands is being worked out…";
    }
  } else {
    content.securing = "Select a piece to tie it with lines.";
  }
  site_->show(std::move(content));
}

SiteMenuState MainWindow::site_menu_state() const {
  SiteMenuState state;
  if (!document_) return state;
  const auto& areas = document_->event().areas;
  const auto here = std::ranges::find_if(areas, [this](const auto& one) { return one->id == area_; });
  state.open = true, state.can_edit = !document_->read_only();
  state.has_area = here != areas.end();
  state.may_go_earlier = state.has_area && here != areas.begin();
  state.may_go_later = state.has_area && here + 1 != areas.end();
  state.may_tie = may_tie();
  const auto object = site_object();
  state.may_remove = object && object->kind != SiteObjectKind::piece;
  if (const StandingReport* report = report_of_lead()) state.advice = report->advice.size();
  return state;
}

/// A line or a piece on the plan is also a piece of the drawing.
void MainWindow::pick_on_site(const std::optional<SiteObject>& object) {
  site_object_ = object;
  const bool of_piece = object && (object->kind == SiteObjectKind::line || object->kind == SiteObjectKind::piece);
  if (of_piece && lead() != object->id) return select(area_, object->id);  // shows the page too
  show_site();
}

bool MainWindow::may_edit_site() { return area() != nullptr && may_edit_event(); }

std::optional<std::string> MainWindow::take_site_text(const std::optional<SiteObject>& object, const std::string& key,
                                                      const std::string& text) {
  if (!may_edit_site()) return std::nullopt;
  const Event& event = document_->event();
  const FactFields fields = object ? object_fields(event, *area(), *object, last_built()) : area_fields(event, *area());
  auto changed = object ? with_object_field(event, area_, *object, last_built(), key, text)
                        : with_area_field(event, area_, key, text);
  if (!changed) return changed.error;
  const std::string name = object ? object_name(*area(), *object) : area()->name;
  if (*changed.value != event) commit("Change " + label_of(fields, key) + " of " + name, std::move(*changed.value));
  return std::nullopt;
}

void MainWindow::drag_on_site(const SiteObject& object, SiteGrip grip, const Way& way, bool fine) {
  if (!may_edit_site()) return;
  if (!site_drag_from_) site_drag_from_ = document_->event();
  const PlacedPiece* const piece = find_piece(*area(), object.id);
  if (object.kind == SiteObjectKind::piece && piece != nullptr && piece->locked)
    return SetStatusText(shown(piece->name + " is locked in its place."));
  Event next = dragged_object(*site_drag_from_, area_, object, grip, way, fine);
  if (next == document_->event()) return;
  const bool whole = grip == SiteGrip::whole;
  document_->edit().amend((whole ? "Move " : "Resize ") + object_name(*area(), object), std::move(next));
  event_changed();
}

void MainWindow::add_to_site(SiteAddition what, const std::optional<SitePlace>& place) {
  if (!may_edit_site()) return;
  const Event& event = document_->event();
  const SitePlace at = place.value_or(usual_place(floor_plan_of(*area(), last_built()), what));
  std::optional<AddedObject> added;
  if (what == SiteAddition::structure) added = with_new_structure(event, area_, at);
  if (what == SiteAddition::walkway) added = with_new_walkway(event, area_, at);
  if (what == SiteAddition::line && may_tie())
    added = with_new_line(event, area_, lead(), last_built().find(lead())->second->piece, place);
  if (what == SiteAddition::outlet) {
    const SitePlace work = work_place(*area());
    const double far = place ? dragged_distance(event.units, at.x_m - work.x_m, at.y_m - work.y_m) : outlet_m;
    added = AddedObject{with_outlet_distance(event, area_, far), {SiteObjectKind::outlet, {}}};
  }
  if (!added) return;
  site_object_ = added->object;
  const Area* const then = find_area(added->event, area_);
  commit("Add " + object_name(*then, added->object), std::move(added->event));
  show_page(*site_);
}

void MainWindow::remove_from_site() {
  const auto object = site_object();
  if (!may_edit_site() || !object || object->kind == SiteObjectKind::piece) return;
  site_object_.reset();
  commit("Remove " + object_name(*area(), *object), without_object(document_->event(), area_, *object));
}

/// Lines, and what ballast they ask for where the piece's type has a field for it, in one step.
void MainWindow::use_advice(std::size_t number) {
  const StandingReport* const report = report_of_lead();
  const PlacedPiece* const placed = document_ ? find_piece(document_->event(), lead()) : nullptr;
  if (!may_edit_site() || placed == nullptr || report == nullptr || number >= report->advice.size()) return;
  const LineAdvice advice = report->advice[number];
  const std::string name = placed->name.empty() ? "the piece" : placed->name;
  const std::string lines = std::to_string(advice.lines.size()) + " lines";
  Event event = with_lines(document_->event(), lead(), advice.lines);
  wxString said = shown(name + " has " + lines + ".");
  if (advice.ballast_kg) {
    const PieceType* const type = types_ ? types_->find(placed->type) : nullptr;
    const Parameter* const ballast = type != nullptr ? find_parameter(type->parameters, "ballast") : nullptr;
    if (ballast != nullptr && ballast->kind == Kind::mass && *advice.ballast_kg <= ballast->hard_max) {
      event = with_values(std::move(event), {placed->id}, "ballast", Value::of_number(Kind::mass, *advice.ballast_kg));
      said = shown(name + " has " + lines + ", and the ballast that they ask for on each foot.");
    } else {
      said = shown(name + " has " + lines +
                   "; put the ballast on each foot as well: " + words_of(advice, document_->event().units) + ".");
    }
  }
  site_object_.reset();
  commit("Tie " + name + " with " + lines, std::move(event));
  SetStatusText(said);
}

void MainWindow::show_floor_place(const std::optional<SitePlace>& place) {
  say_place(place && document_ ? floor_words(place->x_m, place->y_m, document_->event().units) : std::string());
}

}  // namespace quadrille
