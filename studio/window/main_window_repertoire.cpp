// The repertoire: the decorator's own pieces, kept in the house file.
#include <wx/textdlg.h>

#include <memory>
#include <utility>

#include "studio/files/house_change.hpp"
#include "studio/host/piece_type.hpp"
#include "studio/model/money.hpp"
#include "studio/model/repertoire.hpp"
#include "studio/window/commands/commands.hpp"
#include "studio/window/dialogs/keep_dialog.hpp"
#include "studio/window/dialogs/repertoire_dialog.hpp"
#include "studio/window/job/document.hpp"
#include "studio/window/job/piece_pictures.hpp"
#include "studio/window/job/worker.hpp"
#include "studio/window/main_window.hpp"
#include "studio/window/toolkit/notices.hpp"
#include "studio/window/toolkit/wx_text.hpp"

namespace quadrille {
namespace {

std::vector<RepertoireLine> lines_of(const House& house, const PieceTypes* types) {
  std::vector<RepertoireLine> lines;
  for (const RepertoirePiece& kept : house.repertoire) {
    const PieceType* const type = types ? types->find(kept.type) : nullptr;
    lines.push_back({kept.key, kept.name.empty() ? kept.key : kept.name,
                     type ? type->name : kept.type + " (not available)",
                     kept.price_minor ? print_money(*kept.price_minor, house.currency) : "", kept.note});
  }
  return lines;
}

}  // namespace

void MainWindow::bind_repertoire() {
  on(command_keep, [this] { ask_and_keep(); });
  on(command_repertoire, [this] { choose_from_repertoire(); });
}

/// Changes the house file as it is on the disk now; the event is reckoned with the new house. False where it failed; the
/// user has then been told.
bool MainWindow::change_repertoire(const std::function<House(House)>& change) {
  if (!document_ || !house_) return false;
  const bool was_standard = house_->is_standard;
  if (const auto fault = change_house(*house_, change)) {
    tell_error(this, "The repertoire could not be saved", *fault);
    return false;
  }
  load_house();
  event_changed();
  if (was_standard)
    info_->ShowMessage(shown("A house file was made: " + house_->file.string() +
                             "\nIts prices and rates are invented until you put in your own."),
                       wxICON_INFORMATION);
  return true;
}

bool MainWindow::keep_selected(const std::string& name, std::optional<std::int64_t> price_minor) {
  const PlacedPiece* placed = document_ ? find_piece(document_->event(), lead()) : nullptr;
  if (placed == nullptr || name.empty()) return false;
  const RepertoirePiece kept = kept_piece(*placed, name, price_minor);
  if (!change_repertoire([&kept](House house) { return with_kept(std::move(house), kept); })) return false;
  say(name + " is in the repertoire.");
  return true;
}

void MainWindow::ask_and_keep() {
  if (!document_ || !house_ || pieces_.size() != 1) return;
  load_house();
  const PlacedPiece& placed = *find_piece(document_->event(), lead());
  const House& house = house_->house;
  const bool same_money = house.currency == document_->event().currency;
  KeepDialog dialog(this, placed.name, same_money ? placed.price_minor : std::nullopt, house.currency);
  if (dialog.ShowModal() != wxID_OK) return;
  if (find_by_name(house, dialog.name()) != nullptr &&
      !ask_whether(this, "The repertoire has a piece of this name",
                   dialog.name() + " would be replaced by the selected piece.", "&Replace"))
    return;
  keep_selected(dialog.name(), dialog.price_minor());
}

void MainWindow::insert_kept(const std::string& key) {
  const RepertoirePiece* kept = house_ ? find_by_key(house_->house, key) : nullptr;
  if (kept == nullptr || area() == nullptr || !may_edit_event()) return;
  const bool left_out = kept->price_minor && house_->house.currency != document_->event().currency;
  PlacedPiece placed = placed_from(house_->house, *kept, document_->event().currency);
  placed.x_m = middle_m();
  put_in("Insert", std::move(placed));
  if (left_out)
    say("Its price is in " + house_->house.currency + ", the event is in " + document_->event().currency +
        ": the price was left out.");
}

/// Built and painted away from the main thread; the dialog shows them as soon as they are there.
void MainWindow::show_repertoire_pictures() {
  const Event event = event_of_repertoire(house_->house);
  const double scale = GetContentScaleFactor();
  const int width = FromDIP(RepertoireDialog::picture_width), height = FromDIP(RepertoireDialog::picture_height);
  worker_->build(event, [this, event, palettes = document_->palettes(), scale, width, height](const BuiltEvent& built) {
    auto pictures =
        std::make_shared<const PiecePictures>(pictures_of(event, built, palettes->palettes, width, height, scale));
    CallAfter([this, pictures] {
      if (repertoire_dialog_) repertoire_dialog_->show_pictures(*pictures);
    });
  });
}

void MainWindow::choose_from_repertoire() {
  if (area() == nullptr || !may_edit_event()) return;
  load_house();
  RepertoireDialog* shown_dialog = nullptr;
  const auto show_again = [&] { shown_dialog->show(lines_of(house_->house, types_.get())); };
  RepertoireDialog dialog(
      this, {[&](const std::string& key) {
               const RepertoirePiece* kept = find_by_key(house_->house, key);
               if (kept == nullptr) return;
               wxTextEntryDialog asked(shown_dialog, "Name in the repertoire", "Rename", shown(kept->name));
               if (asked.ShowModal() != wxID_OK) return;
               const std::string name = text_of(asked.GetValue().Strip(wxString::both));
               if (name.empty() || name == kept->name) return;
               if (find_by_name(house_->house, name) != nullptr)
                 return tell_error(shown_dialog, "The name is taken",
                                   "Another piece of the repertoire is called " + name + ".");
               change_repertoire([&](House house) { return with_name_of_kept(std::move(house), key, name); });
               show_again();
             },
             [&](const std::string& key) {
               const RepertoirePiece* kept = find_by_key(house_->house, key);
               if (kept == nullptr ||
                   !ask_whether(shown_dialog, "Remove it from the repertoire?",
                                kept->name + " is taken out of your house file; pieces in events stay.", "&Remove"))
                 return;
               change_repertoire([&](House house) { return without_kept_piece(std::move(house), key); });
               show_again();
             }});
  shown_dialog = &dialog;
  show_again();
  repertoire_dialog_ = &dialog;
  show_repertoire_pictures();
  const bool insert = dialog.ShowModal() == wxID_OK;
  repertoire_dialog_ = nullptr;
  if (insert) insert_kept(dialog.chosen());
}

}  // namespace quadrille
