#include "studio/window/house_hands.hpp"

#include <wx/frame.h>

#include <tuple>
#include <utility>

#include "studio/files/house_change.hpp"
#include "studio/labour/calibration.hpp"
#include "studio/window/dialogs/house_dialog.hpp"
#include "studio/window/job/event_desk.hpp"
#include "studio/window/job/study.hpp"
#include "studio/window/toolkit/notices.hpp"

namespace quadrille {
namespace {

/// Where the house goes, or why it cannot be saved.
std::pair<std::string, bool> place_of(const LoadedHouse& house) {
  if (house.file.empty())
    return {"Without a home folder there is no place for a house file: name one in QUADRILLE_HOUSE.", false};
  for (const Finding& finding : house.findings)
    if (finding.code == "house-unreadable") return {finding.text + " Mend it, or move it away.", false};
  if (house.opened && house.opened->read_only)
    return {house.file.string() + " was written by a newer version of the studio; it is used, but not changed.", false};
  return {(house.is_standard ? "Saving makes " : "Saved in ") + house.file.string(), true};
}

}  // namespace

void HouseHands::load() {
  house_ = std::make_shared<const LoadedHouse>(load_house({}, desk_.is_open() ? desk_.event().currency : "USD"));
}

void HouseHands::refresh() {
  const std::shared_ptr<const LoadedHouse> before = house_;
  load();
  if (before && (before->house != house_->house || before->findings != house_->findings)) desk_.reckon_anew();
}

void HouseHands::show_settings() {
  desk_.settle_fields();
  refresh();
  HouseDialogContent content;
  content.house = house_->house;
  std::tie(content.where, content.can_be_saved) = place_of(*house_);
  content.palettes = desk_.loaded_palettes();
  content.this_event = job_of_event();
  HouseDialog dialog(&frame_, std::move(content));
  if (dialog.ShowModal() == wxID_OK && dialog.house() != house_->house) save(dialog.house());
}

std::optional<JobRecord> HouseHands::job_of_event() const {
  const auto study = desk_.is_open() ? desk_.study_now() : nullptr;
  if (!study || !study->house) return std::nullopt;
  return record_of(study->event, study->built, study->order.count, study->house->house);
}

bool HouseHands::save(const House& house) {
  if (!house_) load();
  if (changed_on_disk(*house_) &&
      !ask_whether(
          &frame_, "The house file was changed by another program",
          house_->file.string() +
              " is no longer as it was read. Saving replaces it; what stands there now is kept beside it, with "
              "a '~' after its name.",
          "&Replace it"))
    return false;
  if (const auto fault = save_house(house_->file, house, house_->opened ? &*house_->opened : nullptr)) {
    tell_error(&frame_, "The house could not be saved", *fault);
    return false;
  }
  load();
  desk_.reckon_anew();
  desk_.say("Saved " + house_->file.string());
  return true;
}

std::optional<std::string> HouseHands::change(const std::function<House(House)>& change) {
  if (!house_) load();
  if (auto fault = change_house(*house_, change)) return fault;
  load();
  desk_.reckon_anew();
  return std::nullopt;
}

}  // namespace quadrille
