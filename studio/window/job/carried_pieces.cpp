#include "studio/window/job/carried_pieces.hpp"

#include <utility>

#include "studio/files/event_file.hpp"

namespace quadrille {

std::string carried_bytes(const CutOut& cut, Units units) { return write_event(event_of(cut, units)); }

Result<CutOut> carried_pieces(std::string bytes) {
  auto opened = read_event(std::move(bytes), "the clipboard");
  if (!opened) return Result<CutOut>::bad(opened.error);
  if (opened->read_only)
    return Result<CutOut>::bad(
        "These pieces were copied from a newer version of the studio, which this one cannot read.");
  CutOut cut = event_cut_out(opened->event);
  if (cut.pieces.empty()) return Result<CutOut>::bad("There are no pieces on the clipboard.");
  return Result<CutOut>::good(std::move(cut));
}

std::string carried_text(const CutOut& cut) {
  std::string text;
  for (const PlacedPiece& piece : cut.pieces)
    text += (text.empty() ? "" : "\n") + (piece.name.empty() ? piece.type : piece.name);
  return text;
}

}  // namespace quadrille
