#include "studio/window/repertoire_hands.hpp"

#include <wx/frame.h>
#include <wx/textdlg.h>

#include <memory>
#include <utility>
#include <vector>

#include "studio/files/palette_file.hpp"
#include "studio/host/piece_type.hpp"
#include "studio/model/money.hpp"
#include "studio/model/repertoire.hpp"
#include "studio/window/dialogs/keep_dialog.hpp"
#include "studio/window/house_hands.hpp"
#include "studio/window/job/event_desk.hpp"
#include "studio/window/job/piece_pictures.hpp"
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

RepertoireHands::RepertoireHands(EventDesk& desk, HouseHands& house, wxFrame& frame, BuildAside build)
    : desk_(desk), house_(house), frame_(frame), build_(std::move(build)) {}

RepertoireHands::~RepertoireHands() = default;

/// False where it failed; the user has then been told.
bool RepertoireHands::change(const std::function<House(House)>& change) {
  const bool was_standard = house_.loaded()->is_standard;
  if (const auto fault = house_.change(change)) {
    tell_error(dialog_ ? static_cast<wxWindow*>(dialog_) : &frame_, "The repertoire could not be saved", *fault);
    return false;
  }
  if (was_standard)
    desk_.inform("A house file was made: " + house_.loaded()->file.string() +
                 "\nIts prices and rates are invented until you put in your own.");
  return true;
}

bool RepertoireHands::keep(const std::string& name, std::optional<std::int64_t> price_minor) {
  const PlacedPiece* const placed = desk_.lead_piece();
  if (placed == nullptr || name.empty()) return false;
  const RepertoirePiece kept = kept_piece(*placed, name, price_minor);
  if (!change([&kept](House house) { return with_kept(std::move(house), kept); })) return false;
  desk_.say(name + " is in the repertoire.");
  return true;
}

void RepertoireHands::ask_and_keep() {
  const PlacedPiece* const placed = desk_.lead_piece();
  if (placed == nullptr) return;
  house_.refresh();
  const House& house = house_.loaded()->house;
  const bool same_money = house.currency == desk_.event().currency;
  KeepDialog dialog(&frame_, placed->name, same_money ? placed->price_minor : std::nullopt, house.currency);
  if (dialog.ShowModal() != wxID_OK) return;
  if (find_by_name(house, dialog.name()) != nullptr &&
      !ask_whether(&frame_, "The repertoire has a piece of this name",
                   dialog.name() + " would be replaced by the selected piece.", "&Replace"))
    return;
  keep(dialog.name(), dialog.price_minor());
}

void RepertoireHands::insert(const std::string& key) {
  if (desk_.area() == nullptr || !desk_.may_edit_event()) return;
  const std::shared_ptr<const LoadedHouse> loaded = house_.loaded();  // as it is, whatever is read meanwhile
  const House& house = loaded->house;
  const RepertoirePiece* const kept = find_by_key(house, key);
  if (kept == nullptr) return;
  const std::string currency = desk_.event().currency;
  PlacedPiece placed = placed_from(house, *kept, currency);
  placed.x_m = desk_.middle_m();
  desk_.put_in("Insert", std::move(placed));
  if (kept->price_minor && house.currency != currency)
    desk_.say("Its price is in " + house.currency + ", the event is in " + currency + ": the price was left out.");
}

void RepertoireHands::show() {
  if (dialog_) dialog_->show(lines_of(house_.loaded()->house, desk_.types()));
}

/// Built and painted away from the main thread; the dialog shows them as soon as they are there.
void RepertoireHands::show_pictures() {
  const Event event = event_of_repertoire(house_.loaded()->house);
  const double scale = frame_.GetContentScaleFactor();
  const int width = frame_.FromDIP(RepertoireDialog::picture_width);
  const int height = frame_.FromDIP(RepertoireDialog::picture_height);
  const auto paint = [this, event, palettes = desk_.loaded_palettes(), scale, width, height](const BuiltEvent& built) {
    auto pictures =
        std::make_shared<const PiecePictures>(pictures_of(event, built, palettes->palettes, width, height, scale));
    frame_.CallAfter([this, pictures] {
      if (dialog_) dialog_->show_pictures(*pictures);
    });
  };
  build_(event, paint);
}

void RepertoireHands::rename(const std::string& key) {
  const RepertoirePiece* const kept = find_by_key(house_.loaded()->house, key);
  if (kept == nullptr) return;
  wxTextEntryDialog asked(dialog_, "Name in the repertoire", "Rename", shown(kept->name));
  if (asked.ShowModal() != wxID_OK) return;
  const std::string name = text_of(asked.GetValue().Strip(wxString::both));
  if (name.empty() || name == kept->name) return;
  if (find_by_name(house_.loaded()->house, name) != nullptr)
    return tell_error(dialog_, "The name is taken", "Another piece of the repertoire is called " + name + ".");
  change([&](House house) { return with_name_of_kept(std::move(house), key, name); });
  show();
}

void RepertoireHands::remove(const std::string& key) {
  const RepertoirePiece* const kept = find_by_key(house_.loaded()->house, key);
  if (kept == nullptr ||
      !ask_whether(dialog_, "Remove it from the repertoire?",
                   kept->name + " is taken out of your house file; pieces in events stay.", "&Remove"))
    return;
  change([&](House house) { return without_kept_piece(std::move(house), key); });
  show();
}

void RepertoireHands::choose_and_insert() {
  if (desk_.area() == nullptr || !desk_.may_edit_event()) return;
  house_.refresh();
  RepertoireDialog dialog(
      &frame_, {[this](const std::string& key) { rename(key); }, [this](const std::string& key) { remove(key); }});
  dialog_ = &dialog;
  show();
  show_pictures();
  if (dialog.ShowModal() == wxID_OK) insert(dialog.chosen());
}

}  // namespace quadrille
