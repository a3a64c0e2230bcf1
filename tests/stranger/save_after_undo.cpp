// Opens an event, edits a piece of a plugin's type, undoes it, and saves: what was saved must be the bytes that were read.
// save_after_undo EVENT PIECE TYPE KEY METRES FOLDER; piece types come from QUADRILLE_PIECES_PATH and FOLDER.
#include <iostream>
#include <string>

#include "sdk/number.hpp"
#include "studio/files/event_file.hpp"
#include "studio/host/builder.hpp"
#include "studio/host/discovery.hpp"
#include "studio/model/edits.hpp"
#include "studio/model/history.hpp"

namespace {

using namespace quadrille;

int failed(const std::string& sentence) {
  std::cerr << sentence << '\n';
  return 1;
}

/// Saves and reads back; the bytes, or nothing.
std::string saved(const Event& event, const OpenedEvent& opened) {
  const std::filesystem::path copy = "saved.quadrille";
  if (const auto error = save_event(copy, event, &opened)) return std::cerr << *error << '\n', std::string();
  const auto again = open_event(copy);
  return again ? again->bytes : std::string();
}

}  // namespace

int main(int count, char** words) {
  if (count != 7) return failed("EVENT PIECE TYPE KEY METRES FOLDER are needed.");
  const std::string piece = words[2], type = words[3], key = words[4];
  const auto opened = open_event(words[1]);
  if (!opened) return failed(opened.error);
  SearchPlan plan = standard_search_plan({});
  plan.folders.emplace_back(words[6]);
  const PieceTypes types = find_piece_types(plan);
  EventBuilder builder(types);
  const auto width = [&](const Event& event) {
    const auto built = builder.build(event);
    const auto found = built.find(piece);
    return found == built.end() || found->second->status != Status::ok ? 0 : found->second->box.width_m();
  };

  History history(opened->event);
  const PlacedPiece* placed = find_piece(history.event(), piece);
  if (placed == nullptr || placed->type != type) return failed("The piece is not of the type " + type + ".");
  const double before = width(history.event());
  if (before <= 0) return failed("The piece was not built.");
  if (saved(history.event(), *opened) != opened->bytes) return failed("Untouched it is saved with other bytes.");

  const double metres = parse_number(words[5]).value_or(0);
  history.commit("Change " + key, with_value(history.event(), piece, key, Value::of_number(Kind::length, metres)));
  if (width(history.event()) <= before) return failed("The edit changed nothing that is built.");
  history.commit("Move", moved(history.event(), piece, 9, 1));
  const std::string edited = saved(history.event(), *opened);
  if (edited.empty() || edited == opened->bytes) return failed("The edit was not saved.");

  while (history.can_undo()) history.undo();
  if (width(history.event()) != before) return failed("Undone it is built otherwise.");
  if (saved(history.event(), *opened) != opened->bytes) return failed("Undone it is saved with other bytes.");
  return 0;
}
