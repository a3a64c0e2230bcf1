#include "studio/arrange/arraying.hpp"

#include <algorithm>
#include <cmath>
#include <utility>

#include "studio/arrange/mirroring.hpp"
#include "studio/model/lengths.hpp"

namespace quadrille {
namespace {

std::string steps_words(const Steps& steps, const char* where, LengthStyle style) {
  std::string words =
      std::to_string(steps.count) + " " + where + ", " + print_length(std::abs(steps.at(1)), style) + " apart";
  if (steps.count > 2) words += " over " + print_length(std::abs(steps.over_m), style);
  return words;
}

}  // namespace

Copies arrayed(const Event& event, const PieceIds& pieces, const ArrayPlan& plan, const ParameterTables& tables,
               const BuiltEvent& built) {
  PieceIds there = pieces;
  std::erase_if(there, [&](const std::string& id) { return find_piece(event, id) == nullptr; });
  return arrayed(event, there, plan, [&](Event made, const PieceIds& copies) {
    // A copy is built as what it is a copy of: its lines must find their tie points.
    BuiltEvent as_built;
    for (std::size_t i = 0; i < copies.size() && i < there.size(); ++i)
      if (const auto found = built.find(there[i]); found != built.end()) as_built[copies[i]] = found->second;
    for (const std::string& id : copies) {
      const double axis_m = find_piece(made, id)->x_m;
      made = mirrored(std::move(made), {id}, axis_m, tables, as_built);
    }
    return made;
  });
}

std::int64_t pieces_of(const ArrayPlan& plan, std::size_t pieces) {
  return std::int64_t{copies_detail::places_of(plan.along)} * copies_detail::places_of(plan.depth) *
         static_cast<std::int64_t>(pieces);
}

std::string array_words(const ArrayPlan& plan, std::size_t pieces, Units units) {
  const std::int64_t all = pieces_of(plan, pieces), added = all - static_cast<std::int64_t>(pieces);
  if (added <= 0) return "Nothing is added: there is one place only.";
  const LengthStyle style = lengths_in(units);
  std::string words = std::to_string(all) + " pieces in all, " + std::to_string(added) + " of them new: ";
  if (plan.along.count > 1) words += steps_words(plan.along, "along", style);
  if (plan.along.count > 1 && plan.depth.count > 1) words += "; ";
  if (plan.depth.count > 1) words += steps_words(plan.depth, "in depth", style);
  return words + ".";
}

}  // namespace quadrille
