#include "studio/window/job/piece_pictures.hpp"

#include <utility>

#include "studio/drawing/piece_picture.hpp"
#include "studio/drawing/view.hpp"
#include "studio/model/repertoire.hpp"
#include "studio/paint/output.hpp"

namespace quadrille {

Event event_of_repertoire(const House& house) {
  Area area;
  for (const RepertoirePiece& kept : house.repertoire) {
    PlacedPiece piece = placed_from(house, kept, house.currency);
    piece.id = kept.key;
    area.pieces.emplace_back(std::move(piece));
  }
  Event event;
  event.areas.emplace_back(std::move(area));
  return event;
}

std::map<std::string, std::string, std::less<>> pictures_of(const Event& event, const BuiltEvent& built,
                                                            std::span<const Palette> palettes, int width, int height,
                                                            double scale) {
  std::map<std::string, std::string, std::less<>> pictures;
  for (const auto& area : event.areas)
    for (const auto& piece : area->pieces) {
      const auto made = built.find(piece->id);
      const Page page = piece_picture(*piece, made == built.end() ? nullptr : made->second, palettes,
                                      width / screen_pixels_per_mm, height / screen_pixels_per_mm);
      if (auto png = to_png(page, 25.4 * screen_pixels_per_mm * scale)) pictures[piece->id] = std::move(*png.value);
    }
  return pictures;
}

}  // namespace quadrille
