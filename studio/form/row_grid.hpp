// Patterns that are typed row by row, as a grid to click in; and any pattern unrolled into cells, for a picture of it.
#pragma once

#include <cstddef>
#include <cstdint>
#include <string>
#include <string_view>
#include <vector>

#include "sdk/built.hpp"
#include "sdk/pattern.hpp"
#include "sdk/result.hpp"
#include "studio/form/form.hpp"
#include "studio/model/built_event.hpp"
#include "studio/model/parameter.hpp"

namespace quadrille {

/// One row per cluster, the first built first, `places` slots in each.
struct RowGrid {
  int places = 4;
  std::vector<SlotRow> rows;
  bool operator==(const RowGrid&) const = default;
};

/// Balloons per cluster as `values` say: the value of "cluster-size", or 4 where the table has none.
int places_in(const ParameterTable& table, const ValueMap& values);

/// The grid that pattern text writes (see slot_rows), a word of one letter being a row of one colour. Rows of another
/// length than `places`, as they stand after the cluster's size was changed, are cut or go on with their last letter: what
/// is shown can be edited. Fails with a sentence on text that is no pattern.
Result<RowGrid> grid_of(std::string_view text, int places);
/// The fewest rows of `places` slots that look as the clusters do when they are laid one after the other to `hand` (+1
/// right, -1 left) and repeated; none where a cluster has another number of balloons.
RowGrid grid_of(const std::vector<LaidCluster>& laid, int places, int hand);
/// The text of a grid; rows of one colour in full.
std::string text_of(const RowGrid& grid);

/// In these a row or place that is not there changes nothing.
/// A copy of `row` after it; into an empty grid a row of the first colour.
RowGrid with_grid_row(RowGrid grid, std::size_t row);
RowGrid without_grid_row(RowGrid grid, std::size_t row);
RowGrid with_slot(RowGrid grid, std::size_t row, std::size_t place, std::uint32_t slot);
/// Each slot of the row `by` places further round the rod; `by` of either sign.
RowGrid rotated(RowGrid grid, std::size_t row, int by);
RowGrid rotated_all(RowGrid grid, int by);
/// How many slots it uses: the highest letter counts.
int slots_in(const RowGrid& grid);

/// Sets the form's pattern rows of parameter `key` to the grid, and in each piece that has fewer colour slots than the grid
/// uses, that many.
Event with_grid(Event event, const Form& form, const ParameterTables& tables, std::string_view key,
                const RowGrid& grid);

/// Where the form's choice `key` was just made to stand for rows that are typed (its key is that of a parameter of rows),
/// types those of what is built into each piece that has none: one goes on from the pattern that is there.
Event with_rows_begun(Event event, const Form& form, const ParameterTables& tables, std::string_view key,
                      const BuiltEvent& built);

/// One balloon of the unrolled pattern. Every second row stands half a place aside, as the balloons lie in each other's
/// creases.
struct PatternCell {
  std::size_t row = 0, place = 0;  ///< cluster from 0, and place in it
  double across = 0;               ///< its middle, in places from 0 up to the number of places
  std::uint32_t slot = 0;
};

/// The cells of clusters as they are laid, row by row, each row from left to right.
std::vector<PatternCell> unrolled(const std::vector<LaidCluster>& laid);
/// Of a grid that is laid over `clusters` clusters, turned to `hand` (+1 right, -1 left); repeated where they are more.
std::vector<PatternCell> unrolled(const RowGrid& grid, int hand, int clusters);
/// Of the clusters of a built piece, whatever its pattern.
std::vector<PatternCell> unrolled(const Piece& piece);

}  // namespace quadrille
