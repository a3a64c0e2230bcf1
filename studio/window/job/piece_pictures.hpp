// Pictures of the repertoire's pieces. Knows no toolkit.
#pragma once

#include <map>
#include <span>
#include <string>

#include "studio/model/built_event.hpp"
#include "studio/model/house.hpp"
#include "studio/model/palette.hpp"

namespace quadrille {

/// An event with one area that holds every piece of the repertoire, its key being its id.
Event event_of_repertoire(const House& house);

/// The pieces of such an event as PNG of `width` by `height` reference pixels (1/96 in), drawn `scale` times as fine; by
/// key. One that cannot be drawn is left out.
std::map<std::string, std::string, std::less<>> pictures_of(const Event& event, const BuiltEvent& built,
                                                            std::span<const Palette> palettes, int width, int height,
                                                            double scale);

}  // namespace quadrille
