// Does every slot that has balloons have a colour that can be bought?
#pragma once

#include <vector>

#include "studio/model/built_event.hpp"
#include "studio/model/event.hpp"
#include "studio/model/finding.hpp"
#include "studio/model/palette.hpp"

namespace quadrille {

/// Holds the colours of each piece against what was built of it; where its type is not available, against its last
/// build. Problems: a slot with balloons and no colour ("slot-without-colour"); a palette that is not there
/// ("no-such-palette"); a colour that its palette does not have ("no-such-colour"). The last two are warnings for a slot
/// that is known to have no balloon, and for a palette that only the event lists. `key` is "slot A" or "palette".
/// Warnings: two slots with balloons whose colours differ but look nearly alike ("slots-look-alike"), by CIEDE2000 below 5.
Findings check_colours(const Event& event, const BuiltEvent& built, const std::vector<Palette>& palettes);

}  // namespace quadrille
