// Cut, copy and paste: of pieces, and of text where a text field has the keyboard.
#include <wx/textentry.h>

#include <utility>

#include "studio/arrange/cut_out.hpp"
#include "studio/arrange/selection.hpp"
#include "studio/window/canvas/ruler.hpp"
#include "studio/window/job/carried_pieces.hpp"
#include "studio/window/job/document.hpp"
#include "studio/window/main_window.hpp"
#include "studio/window/photo_hands.hpp"
#include "studio/window/toolkit/clipboard.hpp"
#include "studio/window/toolkit/wx_text.hpp"

namespace quadrille {
namespace {

/// What could not come along, a line each, and what mends it; of many the first.
std::string words_of(const Pasted& pasted) {
  constexpr std::size_t most = 3;
  std::string words, remedies;
  for (std::size_t i = 0; i < pasted.findings.size() && i < most; ++i) {
    const Finding& finding = pasted.findings[i];
    const PlacedPiece* piece = find_piece(pasted.event, finding.piece);
    words += (words.empty() ? "" : "\n") + (piece == nullptr || piece->name.empty() ? "A piece" : piece->name) + ": " +
             finding.text;
    if (remedies.find(finding.remedy) == std::string::npos) remedies += "\n" + finding.remedy;
  }
  if (pasted.findings.size() > most)
    words += "\nAnd " + std::to_string(pasted.findings.size() - most) + " more like these.";
  return words + remedies;
}

}  // namespace

void MainWindow::bind_clipboard() {
  // The menu's keys come here before any text field sees them.
  const auto on = [this](int id, void (wxTextEntry::*of_text)(), auto of_pieces) {
    Bind(
        wxEVT_MENU,
        [of_text, of_pieces](wxCommandEvent&) {
          if (wxTextEntry* const text = focused_text())
            (text->*of_text)();
          else
            of_pieces();
        },
        id);
  };
  on(wxID_CUT, &wxTextEntry::Cut, [this] { cut_selected(); });
  on(wxID_COPY, &wxTextEntry::Copy, [this] { copy_selected(); });
  on(wxID_PASTE, &wxTextEntry::Paste, [this] { paste(); });
}

bool MainWindow::copy(const PieceIds& pieces) {
  if (!document_ || pieces.empty()) return false;
  const CutOut cut = cut_out(document_->event(), pieces);
  const bool taken = put_on_clipboard(carried_format, carried_bytes(cut, document_->event().units), carried_text(cut));
  if (!taken) say("The clipboard is held by another program: nothing was copied.");
  return taken;
}

bool MainWindow::copy_selected() {
  if (!copy(pieces_)) return false;
  say(step_name("Copied", document_->event(), pieces_) + ".");
  return true;
}

void MainWindow::cut_selected() {
  if (!may_edit_event()) return;
  const PieceIds free = grasp(document_->event(), pieces_).free;
  if (!free.empty() && !copy(free)) return;
  change_free("Cut", [](const Event& event, const PieceIds& pieces) { return without_pieces(event, pieces); });
}

void MainWindow::paste() {
  if (!may_edit_event() || area() == nullptr) return;
  auto bytes = taken_from_clipboard(carried_format);
  if (!bytes) {
    if (!photo().paste())
      say("There are no pieces and no picture on the clipboard: copy some first, here or in another event.");
    return;
  }
  const auto cut = carried_pieces(std::move(*bytes));
  if (!cut) return say("The clipboard cannot be pasted: " + cut.error);
  std::optional<FloorPlace> where;
  // The elevation does not tell a depth: that stays as it was.
  if (pointing_) where = FloorPlace{rounded_place(pointing_->x, document_->event().units), middle_of(*cut).y_m};
  Pasted pasted = with_pasted(document_->event(), area_, *cut, where);
  const std::string words = words_of(pasted);
  const std::string name = step_name("Paste", pasted.event, pasted.ids);
  commit(name, std::move(pasted.event));
  select(area_, pasted.ids);
  if (!words.empty()) info_->ShowMessage(shown(words), wxICON_WARNING);
}

}  // namespace quadrille
