// The studio's icon: four balloons tied together, seen along the rod.
#pragma once

#include <wx/icon.h>

namespace quadrille {

/// `side` × `side` pixels, at least 16, on a clear ground.
wxIcon make_icon(int side);

}  // namespace quadrille
