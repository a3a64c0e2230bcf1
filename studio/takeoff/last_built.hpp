// What an event keeps of its pieces' last builds, so that they can still be counted where their types are missing.
#pragma once

#include "studio/model/built_event.hpp"
#include "studio/model/event.hpp"

namespace quadrille {

/// The event with the last build of every piece that `built` holds with status ok: outer measures and inflated diameters
/// to the nearest millimetre, clusters, balloons by slot and size. A piece that was refused or whose type is missing
/// keeps what it has, and so does one whose measures no event file could hold.
Event with_last_built(Event event, const BuiltEvent& built);

/// Those of `built`, which were built from `studied`, that are still true of `event`: the piece is there with the same
/// type and values.
BuiltEvent still_true(const BuiltEvent& built, const Event& studied, const Event& event);

}  // namespace quadrille
