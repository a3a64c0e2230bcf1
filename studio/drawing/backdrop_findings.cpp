#include "studio/drawing/backdrop_findings.hpp"

#include <string>

#include "studio/paint/decoded_picture.hpp"

namespace quadrille {
namespace {

std::string pixels_in_words(int width_px, int height_px) {
  return std::to_string(width_px) + " x " + std::to_string(height_px);
}

}  // namespace

Findings check_backdrops(const Event& event) {
  Findings findings;
  for (const auto& area : event.areas) {
    if (!area->backdrop) continue;
    const StoredPicture& picture = *area->backdrop->picture;
    const auto decoded = decode_picture(picture.bytes);
    const std::string name = area->name.empty() ? "an unnamed area" : area->name;
    if (!decoded)
      findings.push_back({Weight::warning,
                          "backdrop-unreadable",
                          area->id,
                          {},
                          {},
                          "The photo of " + name + " cannot be shown. " + decoded.error,
                          "Choose the photo again, or remove it."});
    else if (decoded->width_px() != picture.width_px || decoded->height_px() != picture.height_px)
      findings.push_back({Weight::warning,
                          "backdrop-size",
                          area->id,
                          {},
                          {},
                          "The photo of " + name + " is " + pixels_in_words(decoded->width_px(), decoded->height_px()) +
                              " pixels large, not " + pixels_in_words(picture.width_px, picture.height_px) +
                              " as the event says; it is stretched.",
                          "Choose the photo again and calibrate it."});
  }
  return findings;
}

}  // namespace quadrille
