// House settings: shown, saved with the care of an event, and reckoned with at once.
#include <tuple>
#include <utility>

#include "studio/files/house_place.hpp"
#include "studio/labour/calibration.hpp"
#include "studio/window/dialogs/house_dialog.hpp"
#include "studio/window/job/document.hpp"
#include "studio/window/job/study.hpp"
#include "studio/window/main_window.hpp"
#include "studio/window/toolkit/notices.hpp"
#include "studio/window/toolkit/wx_text.hpp"

namespace quadrille {
namespace {

constexpr const char* not_saved = "The house could not be saved";

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

void MainWindow::show_house_settings() {
  settle_fields();
  load_house();
  HouseDialogContent content;
  content.house = house_->house;
  std::tie(content.where, content.can_be_saved) = place_of(*house_);
  content.palettes =
      document_ ? document_->palettes()
                : std::make_shared<const LoadedPalettes>(load_palettes(standard_palette_folders(executable_, {})));
  content.this_event = job_of_event();
  HouseDialog dialog(this, std::move(content));
  if (dialog.ShowModal() == wxID_OK && dialog.house() != house_->house) save_house_settings(dialog.house());
}

std::optional<JobRecord> MainWindow::job_of_event() const {
  if (!document_ || !study_ || updating() || !study_->house) return std::nullopt;
  return record_of(study_->event, study_->built, study_->order.count, study_->house->house);
}

bool MainWindow::save_house_settings(const House& house) {
  if (!house_) load_house();
  if (changed_on_disk(*house_) &&
      !ask_whether(
          this, "The house file was changed by another program",
          house_->file.string() +
              " is no longer as it was read. Saving replaces it; what stands there now is kept beside it, with "
              "a '~' after its name.",
          "&Replace it"))
    return false;
  const auto fault = save_house(house_->file, house, house_->opened ? &*house_->opened : nullptr);
  if (fault) {
    tell_error(this, not_saved, *fault);
    return false;
  }
  SetStatusText(shown("Saved " + house_->file.string()));
  load_house();
  reckon_anew();
  return true;
}

}  // namespace quadrille
