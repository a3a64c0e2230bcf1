// The lists of a build sheet beside its chart: which pieces, sections, feet, lines, parts, sizes, spares, mending.
#pragma once

#include <span>
#include <vector>

#include "studio/build_sheet/build_subject.hpp"
#include "studio/paper/flow.hpp"

namespace quadrille {

/// Which pieces are made by this sheet, how large each is, and how many balloons it takes.
Block pieces_block(const BuildSubject& subject, const Setting& setting, double width);

/// Sections with their lengths, and how they are joined; feet with plates and ballast, hooks; tie points; lines with
/// length, angle and anchor; the plan of feet and anchors. Only those that there are.
std::vector<Block> frame_blocks(const BuildSubject& subject, const Setting& setting, double width);

/// Supplies for one of the pieces.
std::vector<Block> part_blocks(const BuildSubject& subject, const Setting& setting, double width);

/// What the piece's type warns of and asks to be seen to where it stands.
std::vector<Block> caution_blocks(const BuildSubject& subject, const Setting& setting, double width);

/// Colours and sizes with what they are blown to, how many and how many spares.
Block sizes_block(const BuildSubject& subject, const Setting& setting, double width);

/// How a burst balloon is found, in each way in which these sheets tell of it, and replaced. Lengths in `units`.
Block mending_block(std::span<const BuildSubject> subjects, Units units, double width);

}  // namespace quadrille
