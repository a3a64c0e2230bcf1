// What to refuse, to warn of and to note where clusters dress a line.
#pragma once

#include <cstddef>
#include <string>
#include <utility>
#include <vector>

#include "sdk/dressing_values.hpp"
#include "sdk/number.hpp"
#include "sdk/pattern_check.hpp"
#include "sdk/piece.hpp"
#include "sdk/without_effect.hpp"

namespace quadrille {

inline constexpr double joints_part_below = 0.75;  ///< tightness; common practice, no source
inline constexpr double forced_below = 0.9;        ///< tightness; common practice, no source

/// `remedy`: one change that is known to mend it, "key=value" in its written form; empty where none is.
inline void warn(Piece& piece, const char* key, std::string text, std::string remedy = {}) {
  piece.messages.push_back({Severity::warning, key, std::move(text), Topic::other, std::move(remedy)});
}

/// Warns of forced packing.
inline void warn_of_tightness(Piece& piece, const DressingValues& dressing) {
  if (dressing.tightness < forced_below)
    warn(piece, "tightness",
         "At a tightness of " + print_fixed(dressing.tightness, 2) +
             " the packing is forced: it pushes rod joints apart and opens gaps elsewhere. Tape every joint, or use "
             "0.95 or more.",
         "tightness=0.95");
}

/// Refuses more clusters than anybody mounts, and than `clusters` can ask for.
inline void refuse_too_many(const Piece& piece, const DressingValues& dressing) {
  if (piece.clusters.size() > most_mounted)
    throw Infeasible(dressing.size_key(),
                     std::to_string(piece.clusters.size()) + " clusters of these balloons fit: at most " +
                         std::to_string(most_mounted) + " are mounted. Use a larger balloon, or set clusters.");
}

/// Warns where the clusters that stand in `piece` do not carry the pattern that was asked for.
inline void warn_of_pattern(Piece& piece, const DressingValues& dressing) {
  for (const PatternBreak& found : pattern_breaks(laid_clusters(piece), dressing.pattern))
    warn(piece, "pattern", found.text);
}

/// Notes pattern parameters that were changed and have no effect with the pattern that was chosen.
inline void note_pattern_without_effect(Piece& piece, const Values& values, const PatternPlan& pattern) {
  const PatternKind kind = pattern.kind;
  if (kind != PatternKind::rows)
    note_without_effect(piece, values, "rows", "Rows are typed, but the pattern is another one: they have no effect.");
  if (kind != PatternKind::stripes && kind != PatternKind::zigzag)
    note_without_effect(piece, values, "band", "Only stripes and zigzag have bands: clusters per band has no effect.");
  if (kind == PatternKind::solid || kind == PatternKind::stripes || kind == PatternKind::diamond)
    note_without_effect(piece, values, "hand",
                        "This pattern looks the same whichever hand the clusters are turned to.");
}

/// Notes colour slots that no balloon bears.
inline void note_unused_slots(Piece& piece, int slots) {
  std::vector<bool> used(most_slots);
  for (const Balloon& balloon : piece.balloons) used[balloon.slot] = true;
  std::string unused;
  for (int slot = 0; slot < slots; ++slot)
    if (!used[static_cast<std::size_t>(slot)])
      unused += (unused.empty() ? "" : ", ") + std::string(1, slot_letter(static_cast<std::uint32_t>(slot)));
  if (!unused.empty() && !piece.balloons.empty())
    piece.messages.push_back({Severity::note, "slots", "The pattern does not use colour slot " + unused + "."});
}

}  // namespace quadrille
