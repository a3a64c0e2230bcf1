// Can the photos of an event be shown?
#pragma once

#include "studio/model/event.hpp"
#include "studio/model/finding.hpp"

namespace quadrille {

/// A warning ("backdrop-unreadable") for each area whose photo cannot be decoded; such a photo is drawn as an empty
/// frame and stays in the file. A warning ("backdrop-size") where the picture has another size than the event says, so
/// that what was measured in it may be wrong. Reads every photo, hidden ones too: some 50 ms each.
Findings check_backdrops(const Event& event);

}  // namespace quadrille
