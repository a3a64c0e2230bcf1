// What is under way by hand on the canvas, and what the hand has set.
#pragma once

#include <wx/timer.h>

#include <cstdint>
#include <map>
#include <memory>
#include <optional>
#include <string>
#include <vector>

#include "studio/arrange/handles.hpp"
#include "studio/drawing/elevation.hpp"
#include "studio/model/event.hpp"
#include "studio/window/canvas/canvas_answers.hpp"
#include "studio/window/job/study.hpp"

namespace quadrille {

struct Gesture {
  bool snapping = true;                                ///< what lies near draws what is dragged
  std::map<std::string, double, std::less<>> figures;  ///< where the standing figure was put, by area [m]

  /// The event as it was when the drag began; none: nothing is dragged.
  std::optional<Event> from;
  std::uint64_t from_revision = 0;
  std::vector<DragHandle> handles;  ///< of the selected piece, as they were then
  std::optional<HandleName> held;   ///< the one that is dragged
  std::shared_ptr<const Study>
      live;  ///< built while dragging: older than the event, but newer than what was worked out

  wxTimer later;             ///< when all but the drawing catches up
  std::string placing_type;  ///< id of the piece type that is being placed
  double placing_x_m = 0;
  std::optional<Extent> placing_room;  ///< that it would take if it stood at 0; nothing until that is known
  int carried = 0;                     ///< how many were begun to be placed
};

}  // namespace quadrille
