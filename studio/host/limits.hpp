// What the studio takes from a plugin at most: far above what a piece needs, far below what would stall the program.
#pragma once

#include <cstddef>

namespace quadrille {

/// Most balloons that one piece may have; a plugin that pushes more is cut off with a refusal.
inline constexpr std::size_t most_balloons = 200'000;
inline constexpr std::size_t most_clusters = 100'000;
inline constexpr std::size_t most_spine_points = 100'000;
inline constexpr std::size_t most_frame_nodes = 20'000;
inline constexpr std::size_t most_frame_members = 40'000;
/// Of each of the other records: supports, tie points, supplies, work, anchoring rules, messages, facts.
inline constexpr std::size_t most_other_records = 2'000;
/// Bytes of all texts that one build pushes.
inline constexpr std::size_t most_text = 1u << 20;
/// Largest coordinate or measure of a piece, m: beyond it no decoration is meant, and squares stay far from overflow.
inline constexpr double farthest_m = 10'000;

/// Largest diameter of a balloon, m: beyond it none is meant, and looking for neighbours stays quick.
inline constexpr double largest_balloon_m = 20;
/// Largest mass of a support or its ballast, kg, and largest quantity of a supply or a unit of work.
inline constexpr double most_mass_kg = 1e6, most_quantity = 1e9;

/// Largest size of a whole number of the kind count: it must fit the int that Values::whole gives a plugin.
inline constexpr double most_count = 2'147'483'647;
/// Largest size of a bound of any other number: beyond it no measure is meant, and its decimals could not be printed.
inline constexpr double most_number = 1e12;

/// Most piece types in a plugin, parameters of a type, and choices of a parameter.
inline constexpr std::size_t most_types = 256, most_parameters = 512, most_choices = 1024;
/// Bytes of one text in a plugin's table.
inline constexpr std::size_t most_table_text = 64u << 10;

}  // namespace quadrille
