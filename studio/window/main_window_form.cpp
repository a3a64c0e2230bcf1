// The selected piece in its form, and adding one.
#include <algorithm>
#include <utility>

#include "sdk/pattern.hpp"
#include "studio/arrange/selection.hpp"
#include "studio/form/colour_choices.hpp"
#include "studio/form/place_fields.hpp"
#include "studio/form/selection_words.hpp"
#include "studio/host/piece_type.hpp"
#include "studio/model/edits.hpp"
#include "studio/model/event_edits.hpp"
#include "studio/model/new_event.hpp"
#include "studio/model/piece_edits.hpp"
#include "studio/window/canvas/canvas.hpp"
#include "studio/window/canvas/gesture.hpp"
#include "studio/window/canvas/ruler.hpp"
#include "studio/window/dialogs/colour_dialog.hpp"
#include "studio/window/job/document.hpp"
#include "studio/window/job/study.hpp"
#include "studio/window/main_window.hpp"
#include "studio/window/panels/form_panel.hpp"
#include "studio/window/toolkit/wx_text.hpp"

namespace quadrille {

void MainWindow::make_form(wxWindow* parent) {
  form_ =
      new FormPanel(parent, {[this](const std::string& key, const std::string& text) { return take_typed(key, text); },
                             [this](const std::string& key, const Value& value) {
                               edit_form(key, [&](const Form& form, const ParameterTables& tables) {
                                 return with_field(document_->event(), form, tables, key, value);
                               });
                             },
                             [this](const std::string& key, const RowGrid& grid) {
                               edit_form(key, [&](const Form& form, const ParameterTables& tables) {
                                 return with_grid(document_->event(), form, tables, key, grid);
                               });
                             },
                             [this](const std::string& key) {
                               edit_form(key, [&](const Form& form, const ParameterTables& tables) {
                                 return with_standard(document_->event(), form, tables, key);
                               });
                             },
                             [this](std::size_t slot) { pick_colour(slot); },
                             [this](const std::string& name) {
                               if (document_) change("Rename", renamed(document_->event(), lead(), name));
                             },
                             [this](bool locked) {
                               if (document_)
                                 change(locked ? "Lock" : "Unlock", with_lock(document_->event(), pieces_, locked));
                             },
                             [this](bool hidden) {
                               if (document_)
                                 change(hidden ? "Hide" : "Show", with_hidden(document_->event(), pieces_, hidden));
                             }});
}

/// Commits `event` as a step about the selected pieces.
void MainWindow::change(const std::string& verb, Event event) {
  if (!document_ || document_->read_only() || find_piece(document_->event(), lead()) == nullptr) return;
  if (event == document_->event()) return show_state();
  commit(verb + " " + step_subject(document_->event(), pieces_), std::move(event));
}

/// An edit of the selected pieces' parameter `key`, as a step of its name.
void MainWindow::edit_form(const std::string& key,
                           const std::function<Event(const Form&, const ParameterTables&)>& edit) {
  if (!document_ || document_->read_only() || !types_) return;
  const ParameterTables tables = types_->tables();
  const Form form = form_of(document_->event(), pieces_, tables);
  const Field* const field = form.find(key);
  if (field == nullptr) return;
  change("Change " + field->parameter.label + " of",
         with_rows_begun(edit(form, tables), form, tables, key, last_built()));
}

std::optional<std::string> MainWindow::take_typed(const std::string& key, const std::string& text) {
  if (!document_ || document_->read_only() || !types_) return std::nullopt;
  if (is_place_key(key)) {
    auto placed = with_typed_place(document_->event(), pieces_, key, text);
    if (!placed) return placed.error;
    change("Move", std::move(*placed.value));
    return std::nullopt;
  }
  const ParameterTables tables = types_->tables();
  auto changed = with_typed(document_->event(), form_of(document_->event(), pieces_, tables), tables, key, text);
  if (!changed) return changed.error;
  edit_form(key, [&](const Form&, const ParameterTables&) { return std::move(*changed.value); });
  return std::nullopt;
}

void MainWindow::set_colour(std::size_t slot, const ColourReference& colour) {
  if (!document_ || document_->read_only()) return;
  recent_colours_.chosen(colour);
  change("Colour " + slot_name(slot) + " of", with_chosen_colour(document_->event(), pieces_, slot, colour));
}

void MainWindow::pick_colour(std::size_t slot) {
  if (!document_ || document_->read_only() || !types_) return;
  ColourQuestion question{document_->event(), document_->palettes()->palettes, recent_colours_.colours(),
                          slot_fields(document_->event(), pieces_, types_->tables(), last_built()), slot};
  ColourDialog dialog(this, std::move(question));
  if (dialog.ShowModal() != wxID_OK) return;
  if (const auto chosen = dialog.chosen()) set_colour(slot, *chosen);
}

/// What was built last, which may be of an earlier state of the event; nothing before the first answer.
const BuiltEvent& MainWindow::last_built() const {
  static const BuiltEvent nothing;
  if (hand_->live) return hand_->live->built;
  return study_ ? study_->built : nothing;
}

void MainWindow::show_form() {
  if (form_ == nullptr) return;
  const PlacedPiece* placed = document_ ? find_piece(document_->event(), lead()) : nullptr;
  if (placed == nullptr || !types_) return form_->show(std::nullopt, document_ ? document_->palettes().get() : nullptr);
  const Event& event = document_->event();
  const ParameterTables tables = types_->tables();
  TypeNames names;
  for (const PieceType& type : types_->types) names.emplace(type.id, type.name);
  FormContent content;
  content.form = form_of(event, pieces_, tables);
  content.form.groups.insert(content.form.groups.begin(), place_group(event, pieces_));
  content.slots = slot_fields(event, pieces_, tables, last_built());
  content.pieces = pieces_;
  content.heading = selection_heading(event, pieces_, names);
  content.name = pieces_.size() > 1 ? selection_names(event, pieces_) : placed->name;
  content.locked = shared_flag(event, pieces_, &PlacedPiece::locked);
  content.hidden = shared_flag(event, pieces_, &PlacedPiece::hidden);
  content.may_edit = !document_->read_only();
  show_pattern(*placed, content);
  form_->show(std::move(content), document_->palettes().get());
}

/// The pattern of the piece picked last, as it was built.
void MainWindow::show_pattern(const PlacedPiece& placed, FormContent& content) const {
  const PieceType* const type = types_->find(placed.type);
  if (type == nullptr) return;
  content.places = places_in(type->parameters, placed.values);
  if (const Parameter* const hand = type->find("hand"))
    content.hand = value_of(placed.values, *hand).text == "left" ? -1 : 1;
  const auto built = last_built().find(placed.id);
  if (built == last_built().end() || built->second == nullptr || built->second->status != Status::ok) return;
  content.unrolled = unrolled(built->second->piece);
  for (const PatternCell& cell : content.unrolled) content.clusters = std::max(content.clusters, cell.row + 1);
}

/// Those of the selected piece, else of the last in the area, else the first ones of the event's palettes.
std::vector<ColourReference> MainWindow::colours_for_new() const {
  const Area* const here = area();
  const PlacedPiece* like = find_piece(document_->event(), lead());
  if (like == nullptr && here != nullptr && !here->pieces.empty()) like = &*here->pieces.back();
  if (like != nullptr && !like->colours.empty()) return like->colours;
  std::vector<ColourReference> colours;
  for (const Palette& palette : document_->palettes()->palettes) {
    const auto& used = document_->event().palettes;
    if (!used.empty() && std::ranges::find(used, palette.key) == used.end()) continue;
    for (const Colour& colour : palette.colours)
      if (colours.size() < 2) colours.push_back({palette.key, colour.key});
  }
  return colours;
}

void MainWindow::add_piece(const std::string& type_id) {
  if (document_) add_piece_at(type_id, middle_m());
}

double MainWindow::middle_m() const {
  const wxRect paper = canvas_->paper();
  const double middle = canvas_->view().to_metres(paper.x + paper.width / 2.0, paper.y).x;
  return rounded_place(canvas_->scene() ? middle : 2.0, document_->event().units);
}

void MainWindow::put_in(const char* verb, PlacedPiece piece) {
  Event event = document_->event();
  piece.id = free_id(event, "p");
  piece.name = free_name(event, piece.name);
  const std::string id = piece.id;
  for (const ColourReference& colour : piece.colours)
    if (!colour.palette.empty()) event = with_palette(std::move(event), colour.palette);
  event = with_piece(std::move(event), area_, std::move(piece));
  const std::string name = step_name(verb, event, {id});
  commit(name, std::move(event));
  select(area_, id);
}

}  // namespace quadrille
