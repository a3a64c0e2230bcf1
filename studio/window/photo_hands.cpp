// Bringing a photo in, laying it, and picking colours from it.
#include "studio/window/photo_hands.hpp"

#include <wx/bitmap.h>
#include <wx/clipbrd.h>
#include <wx/filedlg.h>
#include <wx/frame.h>
#include <wx/mstream.h>
#include <wx/utils.h>

#include <cmath>
#include <utility>

#include "studio/disk/file_bytes.hpp"
#include "studio/model/area_edits.hpp"
#include "studio/model/backdrop_edits.hpp"
#include "studio/model/edits.hpp"
#include "studio/paint/decoded_picture.hpp"
#include "studio/paint/import_picture.hpp"
#include "studio/takeoff/nearest_colours.hpp"
#include "studio/window/canvas/canvas.hpp"
#include "studio/window/canvas/point_mode.hpp"
#include "studio/window/canvas/ruler.hpp"
#include "studio/window/canvas/shift_mode.hpp"
#include "studio/window/dialogs/calibrate_dialog.hpp"
#include "studio/window/dialogs/fade_dialog.hpp"
#include "studio/window/dialogs/photo_colour_dialog.hpp"
#include "studio/window/job/event_desk.hpp"
#include "studio/window/toolkit/notices.hpp"
#include "studio/window/toolkit/wx_text.hpp"

namespace quadrille {
namespace {

constexpr const char* picture_files =
    "Pictures|*.jpg;*.jpeg;*.JPG;*.JPEG;*.png;*.PNG;*.webp;*.tif;*.tiff;*.bmp;*.gif|All files|*";
constexpr std::size_t colours_offered = 8;
constexpr double patch_px = 4;  // radius on the screen of what a picked colour is the mean of

/// The picture that the clipboard holds, as a PNG, or the file that it names; nothing where it holds neither.
std::string picture_on_clipboard() {
  if (!wxTheClipboard->Open()) return {};
  std::string bytes;
  if (wxTheClipboard->IsSupported(wxDF_BITMAP)) {
    wxBitmapDataObject data;
    if (wxTheClipboard->GetData(data) && data.GetBitmap().IsOk()) {
      if (wxImage::FindHandler(wxBITMAP_TYPE_PNG) == nullptr) wxImage::AddHandler(new wxPNGHandler);
      wxMemoryOutputStream stream;
      if (data.GetBitmap().ConvertToImage().SaveFile(stream, wxBITMAP_TYPE_PNG)) {
        bytes.resize(stream.GetSize());
        stream.CopyTo(bytes.data(), bytes.size());
      }
    }
  } else if (wxTheClipboard->IsSupported(wxDF_FILENAME)) {
    wxFileDataObject files;
    if (wxTheClipboard->GetData(files) && !files.GetFilenames().empty())
      if (auto read = read_bytes(path_of(files.GetFilenames()[0])); read && looks_like_picture(*read))
        bytes = std::move(*read.value);
  }
  wxTheClipboard->Close();
  return bytes;
}

}  // namespace

PhotoHands::PhotoHands(EventDesk& desk, wxFrame& frame, Canvas& canvas) : desk_(desk), frame_(frame), canvas_(canvas) {}

PhotoHands::~PhotoHands() = default;

const Backdrop* PhotoHands::photo() const {
  const Area* const here = desk_.area();
  return here != nullptr && here->backdrop ? &*here->backdrop : nullptr;
}

/// True where the photo may be changed; otherwise the status bar says why not.
bool PhotoHands::may_edit(bool its_place) {
  if (photo() == nullptr || !desk_.may_edit_event()) return false;
  const bool held = its_place && photo()->locked;
  if (held) desk_.say("The photo is locked. Photo > Lock frees it.");
  return !held;
}

bool PhotoHands::add(const std::filesystem::path& file) {
  auto bytes = read_bytes(file);
  if (bytes) return add(std::string_view(*bytes));
  tell_error(&frame_, "The photo could not be added", bytes.error);
  return false;
}

bool PhotoHands::add(std::string_view bytes) {
  if (desk_.area() == nullptr || !desk_.may_edit_event()) return false;
  if (photo() != nullptr && !may_edit(true)) return false;
  const wxBusyCursor busy;
  auto picture = import_picture(bytes);
  if (!picture) {
    tell_error(&frame_, "The photo could not be added", picture.error);
    return false;
  }
  Backdrop backdrop = fresh_backdrop(*desk_.area(), std::move(*picture.value));
  if (photo() != nullptr) backdrop.fade = photo()->fade;
  const bool replaced = photo() != nullptr;
  auto event = with_backdrop(desk_.event(), desk_.area()->id, std::move(backdrop));
  if (!event) {
    tell_error(&frame_, "The photo could not be added", event.error);
    return false;
  }
  desk_.commit(replaced ? "Replace photo" : "Add photo", std::move(*event.value));
  canvas_.fit_all();
  desk_.say("The photo lies behind the area. Photo > Calibrate gives it its true size.");
  return true;
}

void PhotoHands::choose() {
  if (desk_.area() == nullptr || !desk_.may_edit_event()) return;
  wxFileDialog dialog(&frame_, "Choose a photo of the place", "", "", picture_files, wxFD_OPEN | wxFD_FILE_MUST_EXIST);
  if (dialog.ShowModal() == wxID_OK) add(path_of(dialog.GetPath()));
}

bool PhotoHands::paste() {
  if (desk_.area() == nullptr || !desk_.may_edit_event()) return false;
  const std::string bytes = picture_on_clipboard();
  if (!bytes.empty()) return add(std::string_view(bytes));
  desk_.say("There is no picture on the clipboard.");
  return false;
}

bool PhotoHands::take_dropped(const std::filesystem::path& file) {
  if (desk_.area() == nullptr) return false;
  const auto bytes = read_bytes(file);
  if (!bytes || !looks_like_picture(*bytes)) return false;
  add(std::string_view(*bytes));
  return true;
}

void PhotoHands::end_mode() {
  if (from_) desk_.settle();
  from_.reset();
  mode_.reset();
}

void PhotoHands::follow() {
  if (mode_ && (photo() == nullptr || photo()->hidden)) end_mode();
}

/// Before a mode is made: nothing else goes on at the canvas, and the photo is seen.
void PhotoHands::begin_mode() {
  end_mode();
  if (canvas_.is_placing()) {
    canvas_.end_placing();
    desk_.say({});
  }
  if (desk_.can_edit()) unhide();
  ++begun_;
}

/// True while the mode that was begun as this number goes on: what it asks for comes later, when another one may have
/// taken its place.
bool PhotoHands::goes_on(std::size_t number) const { return mode_ != nullptr && number == begun_; }

/// Ends the mode once the event that asked for it is done with.
std::function<void()> PhotoHands::mode_over() {
  return [this, number = begun_] {
    frame_.CallAfter([this, number] {
      if (goes_on(number)) end_mode();
    });
  };
}

void PhotoHands::begin_calibration() {
  if (!may_edit(true)) return;
  begin_mode();
  mode_ = std::make_unique<PointMode>(
      canvas_,
      std::vector<wxString>{"Click one end of something that you measured.\n"
                            "Or: arrow keys (Shift: finely) and Enter. Esc: leave.",
                            "Now click its other end.\nEsc: the first one again."},
      [this, number = begun_](const std::vector<Point2>& ends) {
        if (!goes_on(number)) return;
        end_mode();
        if (photo() == nullptr) return;
        ask_calibration(photo()->in_picture({ends[0].x, ends[0].y}), photo()->in_picture({ends[1].x, ends[1].y}));
      },
      mode_over());
}

void PhotoHands::ask_calibration(PictureSpot fixed, PictureSpot other) {
  CalibrateDialog dialog(&frame_, *photo(), fixed, other, desk_.event().units,
                         [this](PictureSpot a, PictureSpot b, double length_m) {
                           const auto event = with_backdrop_scale(desk_.event(), desk_.area()->id, a, b, length_m);
                           return event ? Result<Backdrop>::good(*find_area(*event, desk_.area()->id)->backdrop)
                                        : Result<Backdrop>::bad(event.error);
                         });
  if (dialog.ShowModal() == wxID_OK) calibrate(dialog.fixed(), dialog.other(), dialog.length_m());
}

bool PhotoHands::calibrate(PictureSpot fixed, PictureSpot other, double length_m) {
  if (!may_edit(true)) return false;
  auto event = with_backdrop_scale(desk_.event(), desk_.area()->id, fixed, other, length_m);
  if (!event) {
    tell_error(&frame_, "The photo could not be calibrated", event.error);
    return false;
  }
  desk_.commit("Calibrate photo", std::move(*event.value));
  canvas_.fit_all();
  return true;
}

void PhotoHands::begin_moving() {
  if (!may_edit(true)) return;
  begin_mode();
  mode_ = std::make_unique<ShiftMode>(
      canvas_, "Drag the photo, or use the arrow keys (Shift: finely).\nEnter when it lies right.",
      ShiftAnswers{[this](Point2 by) { drag(by); },
                   [this] {
                     from_.reset();
                     desk_.settle();
                   },
                   [this](Point2 by) { step(by); }, mode_over()});
}

void PhotoHands::drag(Point2 by_m) {
  if (!may_edit(true)) return;
  if (!from_) from_ = {photo()->x_m, photo()->z_m};
  const Units units = desk_.event().units;
  const bool back = by_m == Point2{};
  const double x_m = back ? from_->x : rounded_place(from_->x + by_m.x, units);
  const double z_m = back ? from_->y : rounded_place(from_->y + by_m.y, units);
  if (x_m == photo()->x_m && z_m == photo()->z_m) return;
  desk_.amend("Move photo", with_backdrop_at(desk_.event(), desk_.area()->id, x_m, z_m));
}

/// By the small move at least, whichever is more.
void PhotoHands::step(Point2 by_m) {
  if (!may_edit(true)) return;
  const Units units = desk_.event().units;
  const auto stepped = [&](double from, double by) {
    if (by == 0) return from;
    return rounded_place(from + std::copysign(std::max(std::abs(by), small_move(units)), by), units);
  };
  desk_.commit("Move photo", with_backdrop_at(desk_.event(), desk_.area()->id, stepped(photo()->x_m, by_m.x),
                                              stepped(photo()->z_m, by_m.y)));
}

void PhotoHands::fade() {
  if (!may_edit(false)) return;
  const double before = photo()->fade;
  const auto fade = [this](double to) {
    desk_.amend("Fade photo", with_backdrop_fade(desk_.event(), desk_.area()->id, to));
  };
  FadeDialog dialog(&frame_, before, fade);
  if (dialog.ShowModal() != wxID_OK && photo()->fade != before) fade(before);
  desk_.settle();
}

/// A hidden photo cannot be worked at.
void PhotoHands::unhide() {
  if (photo() != nullptr && photo()->hidden)
    desk_.commit("Show photo", with_backdrop_hidden(desk_.event(), desk_.area()->id, false));
}

void PhotoHands::lock(bool locked) {
  if (!may_edit(false)) return;
  desk_.commit(locked ? "Lock photo" : "Unlock photo", with_backdrop_lock(desk_.event(), desk_.area()->id, locked));
}

void PhotoHands::hide(bool hidden) {
  if (!may_edit(false)) return;
  desk_.commit(hidden ? "Hide photo" : "Show photo", with_backdrop_hidden(desk_.event(), desk_.area()->id, hidden));
}

void PhotoHands::remove() {
  if (!may_edit(true)) return;
  end_mode();
  desk_.commit("Remove photo", without_backdrop(desk_.event(), desk_.area()->id));
}

void PhotoHands::begin_picking_colour() {
  if (photo() == nullptr) return;
  begin_mode();
  mode_ = std::make_unique<PointMode>(
      canvas_, std::vector<wxString>{"Click a colour in the photo.\nOr: arrow keys and Enter. Esc: leave."},
      [this, number = begun_](const std::vector<Point2>& at) {
        if (!goes_on(number)) return;
        end_mode();
        if (photo() != nullptr) pick_colour(photo()->in_picture({at[0].x, at[0].y}));
      },
      mode_over());
}

void PhotoHands::pick_colour(PictureSpot spot) {
  const auto decoded = decode_picture(photo()->picture->bytes);
  if (!decoded) return tell_error(&frame_, "The photo cannot be shown", decoded.error);
  const double patch = patch_px / canvas_.view().pixels_per_metre / photo()->metres_per_pixel;
  const Ink seen = decoded->mean_colour(spot, std::max(patch, 1.5));
  const auto byte = [](double v) { return static_cast<std::uint8_t>(std::lround(v * 255)); };
  const auto& palettes = desk_.palettes();
  auto near =
      nearest_colours(desk_.event(), palettes, byte(seen.red), byte(seen.green), byte(seen.blue), colours_offered);
  if (near.empty()) return desk_.say("There is no palette with a colour to compare with.");
  const PlacedPiece* const piece = desk_.lead_piece();
  PhotoColourDialog dialog(&frame_, seen, std::move(near), palettes, desk_.lead_slots(),
                           piece ? piece->name : std::string());
  if (dialog.ShowModal() == wxID_OK && dialog.slot()) desk_.colour_lead(*dialog.slot(), dialog.colour());
}

}  // namespace quadrille
