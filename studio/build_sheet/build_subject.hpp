// What one build sheet is about: pieces that are alike, and what it takes to make one of them.
#pragma once

#include <cstddef>
#include <cstdint>
#include <memory>
#include <string>
#include <vector>

#include "studio/making/anchored_line.hpp"
#include "studio/making/cluster_chart.hpp"
#include "studio/making/feet.hpp"
#include "studio/making/frame_sections.hpp"
#include "studio/making/loose_balloons.hpp"
#include "studio/making/stretches.hpp"
#include "studio/model/built_event.hpp"
#include "studio/paper/area_layout.hpp"
#include "studio/takeoff/sizer.hpp"

namespace quadrille {

/// One of the pieces that share a sheet. Borrowed from the event and its count.
struct BuildPiece {
  const Area* area = nullptr;
  const PlacedPiece* placed = nullptr;
  const PieceCount* count = nullptr;
  std::size_t number = 0;  ///< in its area, as the elevation numbers it
  std::string name() const { return placed->name.empty() ? "Unnamed piece" : placed->name; }
};

/// Pieces that are made the same way: built alike, in the same colours, sizes and lines.
struct BuildSubject {
  std::vector<BuildPiece> pieces;  ///< at least one
  std::shared_ptr<const BuiltPiece> built;
  ClusterChart chart;
  std::vector<LooseBalloon> loose;
  FrameSections frame;
  std::vector<NamedSupport> supports;
  std::vector<AnchoredLine> lines;  ///< of each of the pieces
  std::vector<LastBuilt::Count> counts;
  std::vector<SizerLine> sizes;

  const Piece& piece() const { return built->piece; }
  const PlacedPiece& placed() const { return *pieces.front().placed; }
  const Area& area() const { return *pieces.front().area; }
  /// "Aisle column 1 to 8"; where their names are too long for that, "Aisle column by the window (8 alike)".
  std::string title() const;
};

/// How many ballast containers stand on this support of each piece, of those that are counted for the whole of it: shared
/// by the ballast. 0 where none is counted.
std::int64_t containers_on(const BuildSubject& subject, const Support& support);

/// Loose balloons that are told as one: the same kind, size and colour at one place along the spine, as a collar's are.
struct LooseGroup {
  std::string name;                      ///< "c1–c4", or "t1" of a single one
  std::vector<const LooseBalloon*> all;  ///< at least one, in their order
};
std::vector<LooseGroup> loose_groups(const BuildSubject& subject);

/// Every piece that is shown, in the event's order, those alike together; of the one area where the options ask for it.
/// `left_out`: names of those that cannot be built as things are, each with the reason.
std::vector<BuildSubject> build_subjects(const Setting& setting, std::vector<std::string>& left_out);

/// "12", or "#12" in a garland, where a number stands beside sizes in inches.
inline std::string cluster_name(const BuildSubject& subject, std::uint32_t number) {
  return (subject.chart.rings ? "" : "#") + std::to_string(number);
}

}  // namespace quadrille
