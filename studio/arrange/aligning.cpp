#include "studio/arrange/aligning.hpp"

#include <algorithm>
#include <string>
#include <utility>
#include <vector>

#include "sdk/quoted.hpp"
#include "studio/model/edits.hpp"

namespace quadrille {
namespace {

struct Standing {
  const PlacedPiece* piece = nullptr;
  PieceBox box;
};

std::vector<Standing> standing_in(const Area& area, const PieceIds& pieces, const BuiltEvent& built) {
  std::vector<Standing> standing;
  for (const auto& piece : area.pieces)
    if (std::ranges::find(pieces, piece->id) != pieces.end()) standing.push_back({&*piece, box_of(*piece, built)});
  return standing;
}

/// Where the piece must go, x and depth.
std::pair<double, double> aligned_place(const Standing& one, const PieceBox& all, double front, double back,
                                        Alignment alignment) {
  const auto [x, y] = std::pair(one.piece->x_m, one.piece->y_m);
  switch (alignment) {
    case Alignment::left:
      return {tidy(x + all.left - one.box.left), y};
    case Alignment::centre:
      return {tidy(x + all.middle_x() - one.box.middle_x()), y};
    case Alignment::right:
      return {tidy(x + all.right - one.box.right), y};
    case Alignment::front:
      return {x, front};
    case Alignment::back:
      return {x, back};
    case Alignment::front_line:
      return {x, 0};
  }
  return {x, y};
}

/// A piece's room along one axis.
struct Room {
  const PlacedPiece* piece = nullptr;
  double from = 0, to = 0;
  double middle() const { return (from + to) / 2; }
};

/// Where each of `rooms`, which are in order, must begin.
std::vector<double> even_starts(const std::vector<Room>& rooms, Spacing spacing) {
  const auto steps = static_cast<double>(rooms.size() - 1);
  const Room &first = rooms.front(), &last = rooms.back();
  double sizes = 0;
  for (std::size_t i = 1; i + 1 < rooms.size(); ++i) sizes += rooms[i].to - rooms[i].from;
  const double gap = (last.from - first.to - sizes) / steps, step = (last.middle() - first.middle()) / steps;
  std::vector<double> starts;
  double at = first.from;
  for (std::size_t i = 0; i < rooms.size(); ++i) {
    const double size = rooms[i].to - rooms[i].from;
    starts.push_back(spacing == Spacing::gaps ? at : first.middle() + static_cast<double>(i) * step - size / 2);
    at += size + gap;
  }
  return starts;
}

}  // namespace

Event aligned(Event event, const PieceIds& pieces, const BuiltEvent& built, Alignment alignment) {
  const Event before = event;
  for (const auto& area : before.areas) {
    const std::vector<Standing> standing = standing_in(*area, pieces, built);
    if (standing.empty()) continue;
    std::vector<PieceBox> boxes;
    for (const Standing& one : standing) boxes.push_back(one.box);
    const PieceBox all = *box_around(boxes);
    const auto depth = [](const Standing& one) { return one.piece->y_m; };
    const double front = std::ranges::min_element(standing, {}, depth)->piece->y_m;
    const double back = std::ranges::max_element(standing, {}, depth)->piece->y_m;
    for (const Standing& one : standing) {
      if (one.piece->locked) continue;
      const auto [x, y] = aligned_place(one, all, front, back, alignment);
      event = moved(std::move(event), one.piece->id, x, y);
    }
  }
  return event;
}

Result<Event> distributed(const Event& event, const PieceIds& pieces, const BuiltEvent& built, Spacing spacing,
                          FloorAxis axis) {
  using Answer = Result<Event>;
  std::vector<Room> rooms;
  const Area* first_area = pieces.empty() ? nullptr : area_of(event, pieces.front());
  for (const std::string& id : pieces) {
    const Area* area = area_of(event, id);
    if (area == nullptr) continue;
    if (area != first_area)
      return Answer::bad("Pieces of several areas cannot be spread over one line: select those of one area.");
    const PlacedPiece* piece = find_piece(event, id);
    const PieceBox box = box_of(*piece, built);
    rooms.push_back(axis == FloorAxis::along ? Room{piece, box.left, box.right} : Room{piece, box.front, box.back});
  }
  if (rooms.size() < 3) return Answer::bad("Three pieces or more can be spread evenly: select more.");
  std::ranges::stable_sort(rooms, {}, &Room::middle);
  for (std::size_t i = 1; i + 1 < rooms.size(); ++i)
    if (rooms[i].piece->locked)
      return Answer::bad(quoted(rooms[i].piece->name) + " is locked: unlock it, or leave it out of the selection.");
  const std::vector<double> starts = even_starts(rooms, spacing);
  Event spread = event;
  for (std::size_t i = 1; i + 1 < rooms.size(); ++i) {
    const PlacedPiece& piece = *rooms[i].piece;
    const double by = starts[i] - rooms[i].from;
    const bool along = axis == FloorAxis::along;
    spread = moved(std::move(spread), piece.id, along ? tidy(piece.x_m + by) : piece.x_m,
                   along ? piece.y_m : tidy(piece.y_m + by));
  }
  return Answer::good(std::move(spread));
}

}  // namespace quadrille
