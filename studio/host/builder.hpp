// Builds pieces through their plugins, on all cores, and keeps what was built as long as its values are unchanged.
#pragma once

#include <cstddef>
#include <memory>
#include <mutex>
#include <string>
#include <unordered_map>

#include "studio/host/limits.hpp"
#include "studio/host/piece_type.hpp"
#include "studio/model/built_event.hpp"
#include "studio/model/event.hpp"
#include "studio/model/finding.hpp"

namespace quadrille {

/// Builds one piece of `type`. `values` override the defaults; aliases are followed. A value of another kind, outside
/// its hard range, of an unknown choice or an unknown key gives status bad_parameter with a refusal that names the key
/// and what would be accepted, without calling the plugin. Whatever the plugin does (throws, pushes NaN, references a
/// node that is not there, pushes too much) comes back as status internal with a sentence. Thread-safe.
std::shared_ptr<const BuiltPiece> build_piece(const PieceType& type, const ValueMap& values);

/// Builds events; remembers pieces by type and values, so that moving or renaming one builds nothing, and pieces of
/// equal values build once. What the last eight events did not use is dropped, and so is what failed inside: a build
/// that found the memory full may go well the next time. `types` must outlive it. Thread-safe.
class EventBuilder {
 public:
  explicit EventBuilder(const PieceTypes& types) : types_(types) {}

  /// All pieces of the event whose type is available, built in parallel.
  BuiltEvent build(const Event& event);

  /// How many plugin builds were done so far.
  std::size_t builds() const;

 private:
  struct Kept {
    std::shared_ptr<const BuiltPiece> built;
    std::size_t last_used = 0;  ///< number of the event build that asked for it last
  };
  const PieceTypes& types_;
  mutable std::mutex mutex_;
  std::unordered_map<std::string, Kept> kept_;  ///< by type and resolved values, see key_of_build
  std::size_t rounds_ = 0;                      ///< event builds so far
  std::size_t builds_ = 0;
};

/// What the builds have to say about an event, in the order of its pieces. Codes: "refused" (problem), "warning",
/// "note", "frame-shows" (below 85 % hidden, where the piece type has no
/// message about it; a warning below 60 %), "pattern-breaks", and "type-missing" (a problem
/// where nothing is known of the piece, a warning where it can be counted as last calculated).
Findings findings_of(const Event& event, const BuiltEvent& built, const PieceTypes& types);

/// What must be said of plugin files and types that were refused: a warning each, with the code "plugin-" and the
/// reason's key.
Findings findings_of_refused(const PieceTypes& types);

}  // namespace quadrille
