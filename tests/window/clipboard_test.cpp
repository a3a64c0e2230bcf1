// Cut, copy and paste of pieces, and of text where a text field has the keyboard.
#include <wx/clipbrd.h>

#include <algorithm>

#include "answering.hpp"
#include "studio/model/edits.hpp"
#include "studio/model/piece_edits.hpp"
#include "studio/window/commands/commands.hpp"
#include "studio/window/job/carried_pieces.hpp"
#include "studio/window/panels/form_panel.hpp"
#include "studio/window/toolkit/clipboard.hpp"
#include "studio/window/toolkit/wx_text.hpp"

namespace quadrille {
namespace {

std::string status(OpenWindow& window) { return text_of(window->GetStatusBar()->GetStatusText()); }

std::string clipboard_text() {
  wxClipboardLocker clipboard;
  wxTextDataObject text;
  REQUIRE(wxTheClipboard->GetData(text));
  return text_of(text.GetText());
}

/// An event in which the door arch is tied to an oak and has a price.
Event tied_event() {
  Event event = harvest_event();
  event.areas[0].edit([](Area& area) {
    Structure oak;
    oak.id = "s1", oak.name = "Oak", oak.kind = StructureKind::tree, oak.height_m = 6;
    area.structures = {oak};
  });
  SecuringLine line;
  line.tie = "front-1", line.anchor = AnchorKind::structure, line.structure = "s1", line.height_m = 2;
  return with_price(with_line(std::move(event), "p1", line), "p1", 9900);
}

}  // namespace

TEST_CASE("carried pieces are an event file, and come back equal; what is none is refused with a sentence") {
  const CutOut cut = cut_out(tied_event(), {"p1", "p3"});
  const std::string bytes = carried_bytes(cut, Units::metric);
  CHECK(read_event(bytes, "them")->event.areas.size() == 1);
  const auto back = carried_pieces(bytes);
  REQUIRE(back);
  CHECK(*back.value == cut);
  CHECK(carried_text(cut) == "Door arch\nTower");
  for (const std::string& bad :
       {std::string(), std::string("Dear all"), bytes.substr(0, bytes.size() / 2), carried_bytes({}, Units::feet)}) {
    const auto refused = carried_pieces(bad);
    CHECK(!refused);
    CHECK(refused.error.ends_with("."));
  }
  std::string newer = bytes;
  for (const std::string name : {"version", "reader"}) {
    const auto at = newer.find(" " + name + "=\"1.0\"", newer.find("<event"));
    REQUIRE(at != std::string::npos);
    newer.replace(at, name.size() + 7, " " + name + "=\"2.0\"");
  }
  CHECK(carried_pieces(newer).error.find("newer version") != std::string::npos);
}

TEST_CASE("what is copied can be pasted beside itself, and other programs get its names") {
  ScratchFolder folder;
  OpenWindow window;
  window.open(put_event(folder, tied_event()));
  window->select("a1", PieceIds{"p1", "p2"});
  window->canvas().SetFocus();
  window.command(wxID_COPY);
  CHECK(status(window) == "Copied 2 pieces.");
  CHECK(clipboard_text() == "Door arch\nSide arch");
  window.command(wxID_PASTE);
  CHECK(window->document()->history().undo_name() == "Paste 2 pieces");
  REQUIRE(window->selected_pieces().size() == 2);
  const PlacedPiece& pasted = piece(window, window->selected_pieces()[0]);
  CHECK(pasted.name == "Door arch 2");
  CHECK(pasted.x_m == doctest::Approx(2.3));  // a step of 0.3 m aside
  CHECK(pasted.lines == piece(window, "p1").lines);
  window.settle();
}

TEST_CASE("pieces go from one window to another; what could not come along stands in the bar") {
  ScratchFolder folder;
  OpenWindow from, to;
  from.open(put_event(folder, tied_event()));
  Event other = harvest_event();
  other.currency = "EUR";
  other.areas[0].edit([](Area& area) { area.pieces.clear(); });
  to.open(put_event(folder, other, "other.quadrille"));
  from->select("a1", PieceIds{"p1"});
  from->canvas().SetFocus();
  from.command(wxID_CUT);
  CHECK(from->document()->history().undo_name() == "Cut Door arch");
  CHECK(find_piece(from->document()->event(), "p1") == nullptr);
  CHECK(from->selected_pieces().empty());

  to->canvas().SetFocus();
  to.command(wxID_PASTE);
  REQUIRE(to->selected_pieces().size() == 1);
  PlacedPiece pasted = piece(to, to->selected_piece());
  CHECK(pasted.lines.empty());
  CHECK(!pasted.price_minor);
  const wxWindowList& children = to->GetChildren();
  CHECK(std::ranges::any_of(children, [](const wxWindow* child) {
    return dynamic_cast<const wxInfoBar*>(child) != nullptr && child->IsShown();
  }));
  PlacedPiece was = *find_piece(tied_event(), "p1");
  was.id = pasted.id, was.lines.clear(), was.price_minor.reset();
  CHECK(pasted == was);
  from.settle();
  to.settle();
}

TEST_CASE("over the drawing pieces are pasted at the pointer, at the depth that they had") {
  ScratchFolder folder;
  OpenWindow window;
  window.open(put_event(folder, moved(harvest_event(), "p1", 2, 1.5)));
  window->select("a1", PieceIds{"p1"});
  window->canvas().SetFocus();
  window.command(wxID_COPY);
  Canvas& canvas = window->canvas();
  const wxRect paper = canvas.paper();
  const wxPoint at(paper.x + paper.width / 3, paper.y + paper.height / 2);
  wxMouseEvent move(wxEVT_MOTION);
  move.SetPosition(at);
  canvas.ProcessWindowEvent(move);
  window.command(wxID_PASTE);
  const PlacedPiece pasted = piece(window, window->selected_piece());
  CHECK(std::abs(pasted.x_m - canvas.view().to_metres(at.x, at.y).x) < 0.011);  // to the centimetre
  CHECK(pasted.y_m == 1.5);
  // Another view brings another place under the pointer that rests.
  canvas.zoom(2);
  window.command(wxID_PASTE);
  const PlacedPiece& nearer = piece(window, window->selected_piece());
  CHECK(std::abs(nearer.x_m - canvas.view().to_metres(at.x, at.y).x) < 0.011);
  CHECK(std::abs(nearer.x_m - pasted.x_m) > 0.1);
  window.settle();
}

TEST_CASE("locked pieces are not cut, and what is no piece is not pasted") {
  ScratchFolder folder;
  OpenWindow window;
  window.open(put_event(folder, with_lock(harvest_event(), {"p2"}, true)));
  window->select("a1", PieceIds{"p1", "p2"});
  window->canvas().SetFocus();
  window.command(wxID_CUT);
  CHECK(status(window) == "Side arch is locked and was left out.");
  CHECK(clipboard_text() == "Door arch");
  CHECK(find_piece(window->document()->event(), "p2") != nullptr);

  const Event before = window->document()->event();
  REQUIRE(put_on_clipboard(carried_format, "<event", "half a thing"));
  window.command(wxID_PASTE);
  CHECK(status(window).find("cannot be pasted") != std::string::npos);
  {
    wxClipboardLocker clipboard;
    wxTheClipboard->SetData(new wxTextDataObject("Dear all"));
  }
  window.command(wxID_PASTE);
  CHECK(status(window).find("no pieces and no picture on the clipboard") != std::string::npos);
  CHECK(window->document()->event() == before);
  window.settle();
}

TEST_CASE("in a text field the same keys cut, copy and paste its text") {
  ScratchFolder folder;
  OpenWindow window;
  window.open(put_event(folder));
  window->select("a1", PieceIds{"p1"});
  wxTextCtrl* const name = window->form().name_field();
  REQUIRE(name != nullptr);
  name->SetFocus();
  REQUIRE(window.pump_until([&] { return name->HasFocus(); }));
  name->SelectAll();
  window.command(wxID_COPY);
  CHECK(clipboard_text() == "Door arch");
  window.command(wxID_CUT);
  CHECK(name->GetValue().empty());
  window.command(wxID_PASTE);
  CHECK(name->GetValue() == "Door arch");
  CHECK(window->document()->event().areas[0]->pieces.size() == 2);
  CHECK(!window->document()->history().can_undo());
}

}  // namespace quadrille
