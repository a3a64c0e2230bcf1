// The photo behind an area, by menu, mouse and keys: brought in, calibrated, moved, faded, asked for colours, undone.
#include <wx/bitmap.h>
#include <wx/clipbrd.h>
#include <wx/image.h>

#include <cmath>

#include "answering.hpp"
#include "by_hand.hpp"
#include "studio/model/area_edits.hpp"
#include "studio/model/backdrop_edits.hpp"
#include "studio/window/canvas/canvas.hpp"
#include "studio/window/commands/commands.hpp"
#include "studio/window/dialogs/calibrate_dialog.hpp"
#include "studio/window/dialogs/fade_dialog.hpp"
#include "studio/window/dialogs/photo_colour_dialog.hpp"
#include "studio/window/photo_hands.hpp"

namespace quadrille {
namespace {

/// A house of two colours: coral above, green below, 400 × 300 pixels, as PNG.
wxImage two_colours() {
  wxImage image(400, 300);
  image.SetRGB(wxRect(0, 0, 400, 150), 240, 110, 90);
  image.SetRGB(wxRect(0, 150, 400, 150), 60, 140, 70);
  return image;
}

std::filesystem::path put_photo(const ScratchFolder& folder) {
  if (wxImage::FindHandler(wxBITMAP_TYPE_PNG) == nullptr) wxImage::AddHandler(new wxPNGHandler);
  const auto file = folder / "place.png";
  REQUIRE(two_colours().SaveFile(wxString::FromUTF8(file.string()), wxBITMAP_TYPE_PNG));
  return file;
}

const Backdrop* photo_of(OpenWindow& window) {
  const Area* area = find_area(window->document()->event(), window->shown_area());
  return area != nullptr && area->backdrop ? &*area->backdrop : nullptr;
}

/// Opens the event and puts the photo behind its first area.
void open_with_photo(OpenWindow& window, const ScratchFolder& folder) {
  window.open(put_event(folder));
  REQUIRE(window->photo().add(put_photo(folder)));
  window.settle();
  REQUIRE(photo_of(window) != nullptr);
}

void click(OpenWindow& window, const ElevationSpot& spot) {
  Canvas& canvas = window->canvas();
  const Point2 at = canvas.view().to_pixels(spot.x_m, spot.z_m);
  Hand(canvas).click(wxPoint(wxRound(at.x), wxRound(at.y)));
}

void press_key(int key, int modifiers = wxMOD_NONE) { wxUIActionSimulator().Char(key, modifiers); }

}  // namespace

TEST_CASE("a photo is added to the area that is shown, saved, and undone") {
  ScratchFolder folder;
  OpenWindow window;
  window.open(put_event(folder));
  const Event before = window->document()->event();
  REQUIRE(window->photo().add(put_photo(folder)));
  const Backdrop* photo = photo_of(window);
  REQUIRE(photo != nullptr);
  CHECK(photo->picture->width_px == 400);
  CHECK(photo->height_m() == doctest::Approx(3));
  CHECK(window->document()->history().undo_name() == "Add photo");
  window.settle();
  REQUIRE(window->canvas().scene()->backdrop.has_value());
  REQUIRE(window->save_as(folder / "with.quadrille"));
  CHECK(*find_area(open_event(folder / "with.quadrille")->event, "a1")->backdrop == *photo);
  window->undo();
  CHECK(window->document()->event() == before);
  window->redo();
  CHECK(photo_of(window) != nullptr);
  // Another takes its place, as one step.
  REQUIRE(two_colours().Rotate90().SaveFile(wxString::FromUTF8((folder / "other.png").string()), wxBITMAP_TYPE_PNG));
  REQUIRE(window->photo().add(folder / "other.png"));
  CHECK(photo_of(window)->picture->width_px == 300);
  CHECK(window->document()->history().undo_name() == "Replace photo");
}

TEST_CASE("what is no picture is told, and nothing changes") {
  ScratchFolder folder;
  OpenWindow window;
  window.open(put_event(folder));
  put(folder / "broken.png", "\x89PNG\r\n\x1A\n and no more");
  {
    Dialogs told({wxID_OK, wxID_OK});
    CHECK_FALSE(window->photo().add(folder / "broken.png"));
    CHECK_FALSE(window->photo().add(folder / "not-there.png"));
    REQUIRE(told.said().size() == 2);
    CHECK(told.said()[0].find("This picture cannot be read") != std::string::npos);
  }
  CHECK_FALSE(window->document()->history().can_undo());
}

TEST_CASE("two clicks on the photo and a length give it its scale; the first point stays; one undo takes it back") {
  ScratchFolder folder;
  OpenWindow window;
  open_with_photo(window, folder);
  const Event before = window->document()->event();
  const PictureSpot foot{100, 260}, head{100, 60};
  // Typed in the dialog: others than the clicked ones, which fall between two pixels.
  const PictureSpot typed_foot{120, 280}, typed_head{120, 80};
  const ElevationSpot stood = photo_of(window)->in_area(typed_foot);
  window.command(command_photo_calibrate);
  {
    Answering dialog({on_dialog<CalibrateDialog>([&](CalibrateDialog& shown_dialog) {
      // A pixel of the screen is more than one of the photo here.
      CHECK(std::abs(shown_dialog.fixed().y_px - foot.y_px) < 3);
      CHECK(std::abs(shown_dialog.other().y_px - head.y_px) < 3);
      shown_dialog.pixel(0).SetValue(120);
      shown_dialog.pixel(1).SetValue(280);
      shown_dialog.pixel(2).SetValue(120);
      shown_dialog.pixel(3).SetValue(80);
      shown_dialog.length().ChangeValue("0");
      tell(shown_dialog.length(), wxEVT_TEXT);
      CHECK(shown_dialog.words().find("above 0") != std::string::npos);
      CHECK_FALSE(shown_dialog.FindWindow(wxID_OK)->IsEnabled());
      shown_dialog.length().SetValue("8ft - 2ft");
      CHECK(shown_dialog.FindWindow(wxID_OK)->IsEnabled());
      CHECK(shown_dialog.length_m() == doctest::Approx(6 * 0.3048));
      CHECK(shown_dialog.fixed() == typed_foot);
      CHECK(shown_dialog.other() == typed_head);
      return wxID_OK;
    })});
    click(window, photo_of(window)->in_area(foot));
    click(window, photo_of(window)->in_area(head));
    REQUIRE(window.pump_until([&] { return dialog.done() && window->document()->event() != before; }));
  }
  // By hand: 6 ft are 1.8288 m, over 200 pixels.
  CHECK(photo_of(window)->metres_per_pixel == doctest::Approx(1.8288 / 200));
  CHECK(photo_of(window)->in_area(typed_foot).x_m == doctest::Approx(stood.x_m));
  CHECK(photo_of(window)->in_area(typed_foot).z_m == doctest::Approx(stood.z_m));
  CHECK(window->document()->history().undo_name() == "Calibrate photo");
  window->undo();
  CHECK(window->document()->event() == before);
}

TEST_CASE("points are chosen without a mouse: arrow keys move the cross, Enter sets it, Esc goes back") {
  ScratchFolder folder;
  OpenWindow window;
  open_with_photo(window, folder);
  window.command(command_photo_calibrate);
  REQUIRE(window.pump_until([&] { return window->canvas().HasFocus(); }));
  const Event before = window->document()->event();
  {
    double apart_px = 0;
    Answering dialog({on_dialog<CalibrateDialog>([&](CalibrateDialog& shown_dialog) {
      apart_px = shown_dialog.other().x_px - shown_dialog.fixed().x_px;
      CHECK(shown_dialog.other().y_px == doctest::Approx(shown_dialog.fixed().y_px));
      return wxID_CANCEL;
    })});
    press_key(WXK_RETURN);
    press_key(WXK_ESCAPE);  // takes the first point back
    press_key(WXK_RETURN);
    for (int i = 0; i < 5; ++i) press_key(WXK_RIGHT);
    press_key(WXK_RETURN);
    REQUIRE(window.pump_until([&] { return dialog.done(); }));
    // Five steps of eight pixels of the screen.
    const double expected = 40 / window->canvas().view().pixels_per_metre / photo_of(window)->metres_per_pixel;
    CHECK(apart_px == doctest::Approx(expected));
  }
  CHECK(window->document()->event() == before);
}

TEST_CASE("a drag of the photo is one step; a locked photo stays where it is") {
  ScratchFolder folder;
  OpenWindow window;
  open_with_photo(window, folder);
  const Event before = window->document()->event();
  const Backdrop start = *photo_of(window);
  window.command(command_photo_move);
  Canvas& canvas = window->canvas();
  const Point2 at = canvas.view().to_pixels(start.x_m + 0.2, start.z_m + 2.8);
  const wxPoint grip(wxRound(at.x), wxRound(at.y)), there = grip + wxPoint(60, -20);
  Hand hand(canvas);
  hand.pull(grip, there);
  CHECK(canvas.HasCapture());
  CHECK(photo_of(window)->z_m > start.z_m);  // it follows before it is let go
  hand.release(there);
  CHECK_FALSE(canvas.HasCapture());
  const double metres = 1 / canvas.view().pixels_per_metre;
  CHECK(photo_of(window)->x_m == doctest::Approx(start.x_m + 60 * metres).epsilon(0.03));
  CHECK(photo_of(window)->z_m == doctest::Approx(20 * metres).epsilon(0.05));
  CHECK(window->document()->history().undo_name() == "Move photo");
  CHECK(window->selected_piece() == "");  // what stood before it was not picked
  window->undo();
  CHECK(window->document()->event() == before);

  window.command(command_photo_lock);
  CHECK(photo_of(window)->locked);
  const Event locked = window->document()->event();
  window.command(command_photo_move);
  window.command(command_photo_remove);
  CHECK_FALSE(window->photo().calibrate({0, 0}, {100, 0}, 1));
  press_key(WXK_RIGHT);
  window.settle();
  CHECK(window->document()->event() == locked);
}

TEST_CASE("arrow keys move the photo, and Enter gives the canvas back") {
  ScratchFolder folder;
  OpenWindow window;
  open_with_photo(window, folder);
  window.command(command_photo_move);
  REQUIRE(window.pump_until([&] { return window->canvas().HasFocus(); }));
  const double x_m = photo_of(window)->x_m;
  press_key(WXK_RIGHT);
  REQUIRE(window.pump_until([&] { return photo_of(window)->x_m > x_m; }));
  const double moved_m = photo_of(window)->x_m;
  const View view = window->canvas().view();
  press_key(WXK_RETURN);
  press_key(WXK_RIGHT);  // pans again
  REQUIRE(window.pump_until([&] { return window->canvas().view() != view; }));
  CHECK(photo_of(window)->x_m == moved_m);
}

TEST_CASE("a piece is placed or the photo is moved, not both: what begins last has the canvas") {
  ScratchFolder folder;
  OpenWindow window;
  open_with_photo(window, folder);
  Canvas& canvas = window->canvas();
  const wxRect paper = canvas.paper();
  const wxPoint middle = paper.GetPosition() + paper.GetSize() / 2;
  const std::size_t pieces = find_area(window->document()->event(), "a1")->pieces.size();
  window.command(command_photo_move);
  window->begin_placing("arch");
  REQUIRE(canvas.is_placing());
  Hand(canvas).click(middle);
  CHECK(find_area(window->document()->event(), "a1")->pieces.size() == pieces + 1);
  window->begin_placing("arch");
  window.command(command_photo_move);
  CHECK(!canvas.is_placing());
  const double x_m = photo_of(window)->x_m;
  Hand(canvas).drag(middle, middle + wxPoint(60, 0));
  CHECK(photo_of(window)->x_m > x_m);
  CHECK(find_area(window->document()->event(), "a1")->pieces.size() == pieces + 1);
}

TEST_CASE("moving that is left and begun again at once goes on: the first one's end does not take it along") {
  ScratchFolder folder;
  OpenWindow window;
  open_with_photo(window, folder);
  Hand hand(window->canvas());
  window.command(command_photo_move);
  hand.key(WXK_ESCAPE);
  window.command(command_photo_move);
  wxTheApp->ProcessPendingEvents();
  const double x_m = photo_of(window)->x_m;
  hand.key(WXK_RIGHT);
  CHECK(photo_of(window)->x_m > x_m);
  hand.key(WXK_ESCAPE);
  wxTheApp->ProcessPendingEvents();
  const double there_m = photo_of(window)->x_m;
  hand.key(WXK_RIGHT);
  CHECK(photo_of(window)->x_m == there_m);
}

TEST_CASE("the fade is seen while the slider moves, is one step, and goes when the dialog is cancelled") {
  ScratchFolder folder;
  OpenWindow window;
  open_with_photo(window, folder);
  const Event before = window->document()->event();
  const auto slide = [&](int answer) {
    Answering dialog({on_dialog<FadeDialog>([&](FadeDialog& shown_dialog) {
      for (const int value : {50, 70, 80}) {
        shown_dialog.slider().SetValue(value);
        tell(shown_dialog.slider(), wxEVT_SLIDER);
        CHECK(photo_of(window)->fade == doctest::Approx(value / 100.0));
      }
      return answer;
    })});
    window.command(command_photo_fade);
  };
  slide(wxID_CANCEL);
  CHECK(window->document()->event() == before);
  slide(wxID_OK);
  CHECK(photo_of(window)->fade == doctest::Approx(0.8));
  CHECK(window->document()->history().undo_name() == "Fade photo");
  window->undo();
  CHECK(window->document()->event() == before);
}

TEST_CASE("hiding, showing and removing are steps of their own") {
  ScratchFolder folder;
  OpenWindow window;
  open_with_photo(window, folder);
  window.command(command_photo_show);
  CHECK(photo_of(window)->hidden);
  window.settle();
  CHECK_FALSE(window->canvas().scene()->backdrop.has_value());
  window.command(command_photo_show);
  CHECK_FALSE(photo_of(window)->hidden);
  window.command(command_photo_remove);
  CHECK(photo_of(window) == nullptr);
  CHECK(window->document()->history().undo_name() == "Remove photo");
  for (int i = 0; i < 4; ++i) window->undo();
  CHECK_FALSE(window->document()->history().can_undo());
}

TEST_CASE("a picture on the clipboard becomes the photo") {
  ScratchFolder folder;
  OpenWindow window;
  window.open(put_event(folder));
  REQUIRE(wxTheClipboard->Open());
  wxTheClipboard->SetData(new wxBitmapDataObject(wxBitmap(two_colours())));
  wxTheClipboard->Close();
  window.command(wxID_PASTE);  // no pieces are there, so the picture is what is meant
  REQUIRE(photo_of(window) != nullptr);
  CHECK(photo_of(window)->picture->height_px == 300);
  REQUIRE(wxTheClipboard->Open());
  wxTheClipboard->SetData(new wxTextDataObject("words"));
  wxTheClipboard->Close();
  CHECK_FALSE(window->photo().paste());
}

TEST_CASE("a colour picked from the photo offers what looks most like it, and goes on the slot that is chosen") {
  ScratchFolder folder;
  OpenWindow window;
  open_with_photo(window, folder);
  window->select("a1", "p1");
  window.settle();
  {
    Answering dialog({on_dialog<PhotoColourDialog>([&](PhotoColourDialog& shown_dialog) {
      const auto& rows = shown_dialog.colours().model->rows();
      REQUIRE(rows.size() == 8);
      CHECK(shown_dialog.slot_choice().GetCount() == 2);
      shown_dialog.slot_choice().SetSelection(1);
      CHECK(shown_dialog.slot() == 1u);
      return wxID_OK;
    })});
    window->photo().pick_colour({200, 250});
  }
  const PlacedPiece* piece = find_piece(window->document()->event(), "p1");
  CHECK(piece->colours[0] == ColourReference{"house", "white"});
  CHECK(piece->colours[1].palette == "house");
  CHECK(piece->colours[1] != ColourReference{"house", "coral"});
  // The patch is green (60, 140, 70); so is what is nearest to it.
  const auto& palettes = window->document()->palettes()->palettes;
  const Colour* chosen = find_colour(palettes, piece->colours[1]);
  REQUIRE(chosen != nullptr);
  CHECK(chosen->green > chosen->red);
  CHECK(chosen->green > chosen->blue);
  window->undo();
  CHECK(find_piece(window->document()->event(), "p1")->colours[1] == ColourReference{"house", "coral"});
}

}  // namespace quadrille
