// What the canvas asks of its owner and tells it. Places are x and height of the elevation [m].
#pragma once

#include <wx/gdicmn.h>

#include <functional>
#include <optional>
#include <string>
#include <vector>

#include "studio/arrange/handles.hpp"
#include "studio/arrange/picking.hpp"
#include "studio/arrange/snapping.hpp"
#include "studio/drawing/view.hpp"

namespace quadrille {

/// Which handle of the selected piece: the parameter's key, and the point of a path from 0.
struct HandleName {
  std::string key;
  std::size_t point = 0;
  bool operator==(const HandleName&) const = default;
};

/// A handle as the canvas shows it.
struct ShownHandle {
  HandleName name;
  Point2 at_m;
  int axis = 0;      ///< 0 it goes left and right, 2 up and down, -1 any way (a point)
  std::string text;  ///< what it holds now: "Span 2.40 m"
  bool operator==(const ShownHandle& other) const {
    return name == other.name && at_m.x == other.at_m.x && at_m.y == other.at_m.y && text == other.text;
  }
};

/// How a drag is to be taken.
struct DragRules {
  bool snapping = true;  ///< false while the key is held that lets nothing draw
  double near_m = 0;     ///< as near as a few pixels: what draws
};

/// What is shown while something is dragged.
struct DragShown {
  std::vector<Guide> guides;
  std::string words;  ///< the place or the measure, as it changes
};

struct CanvasAnswers {
  std::function<PieceIds(Point2 place, double reach_m)> under;          ///< pieces at a place, the frontmost first
  std::function<PieceIds(const Band& band, BandTakes takes)> within;    ///< what a rubber band takes
  std::function<std::string(const PieceIds& selected, int by)> beside;  ///< the next piece; empty: there is none
  std::function<void(const PieceIds& pieces)> picked;                   ///< these are to be selected
  /// The selected pieces would stand `right_m` to the right of where they stood when the drag began.
  std::function<void(double right_m, const DragRules& rules)> dragged;
  std::function<void(const HandleName& handle, Point2 way_m)> handle_dragged;  ///< by so much since the drag began
  std::function<void(int steps)> nudged;                                       ///< the selected pieces, to the right
  std::function<void(const HandleName& handle, int right, int up)> handle_nudged;
  std::function<void(const HandleName&handle)> add_point, remove_point;
  std::function<void()> removed;   ///< the selected pieces are to go
  std::function<void()> let_go;    ///< the drag is over, or the key that nudged is up
  std::function<void()> given_up;  ///< back to where the drag began, which is then no step at all
  std::function<void(double x_m, const DragRules& rules)> placing;  ///< what is being placed would stand here
  std::function<void()> placed;                                     ///< there it is to stand
  std::function<void()> not_placed;                                 ///< it is given up
  std::function<void(double x_m)> figure_moved;
  std::function<void(std::optional<Point2> place)> pointing;  ///< under the pointer
  std::function<void(wxPoint at)> menu;                       ///< the context menu is asked for [px of the canvas]
};

}  // namespace quadrille
