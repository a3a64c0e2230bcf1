// What hangs: its hooks, ties or points in a table, and the heights and width of its line on the picture.
#pragma once

#include <string>
#include <vector>

#include "studio/build_sheet/build_picture.hpp"
#include "studio/build_sheet/build_subject.hpp"
#include "studio/paper/flow.hpp"

namespace quadrille {

/// Whether nothing of it stands on the floor.
bool hangs(const BuildSubject& subject);

/// "H3", "T3", "P3": as the picture and the table name a hook, a tie or a hanging point.
std::string hung_name(const BuildSubject& subject, const NamedSupport& support);

/// "Line and hooks", "Line and ties", "Line and hanging points".
std::string line_caption(const BuildSubject& subject);

/// Whether a line may be tied where this support is; such tie points have no table of their own.
bool is_tie_point(const BuildSubject& subject, const NamedSupport& support);
bool has_own_place(const BuildSubject& subject, const TiePoint& tie);

/// Where each of them is; how long the line is, how far it sags and how heavy its balloons are. None where nothing hangs.
std::vector<Block> hung_blocks(const BuildSubject& subject, const Setting& setting, double width);

/// Room beneath the picture of a line [mm].
inline constexpr double hung_bottom = 28;

/// The width between the outermost supports, the height of its ends and of its lowest point over the floor, which is drawn
/// nearer than it is where the picture does not show it. Adds to `taken` what labels keep off.
void add_hung_dimensions(Marks& marks, const BuildSubject& subject, const BuildPicture& picture, LengthStyle lengths,
                         std::vector<Rect>& taken);

}  // namespace quadrille
