// Everything the window shows about one state of the event, worked out away from the main thread. Knows no toolkit.
#pragma once

#include <cstdint>
#include <memory>
#include <string>

#include "studio/files/palette_file.hpp"
#include "studio/host/builder.hpp"
#include "studio/host/piece_type.hpp"
#include "studio/model/built_event.hpp"
#include "studio/model/event.hpp"
#include "studio/model/finding.hpp"
#include "studio/takeoff/count.hpp"

namespace quadrille {

/// What is to be worked out. `revision` comes back with the answer and tells whether that is still wanted.
struct Question {
  std::uint64_t revision = 0;
  Event event;
  std::shared_ptr<const LoadedPalettes> palettes;
  Findings opened;  ///< what was not understood when the event was opened
};

struct Study {
  std::uint64_t revision = 0;
  Event event;  ///< the one that was studied
  std::shared_ptr<const LoadedPalettes> palettes;
  std::shared_ptr<const PieceTypes> types;
  BuiltEvent built;
  EventCount count;
  Findings findings;  ///< of the file, the palettes, the colours, the plugins and the pieces, in this order
};

/// Builds, counts and checks. Whatever goes wrong inside becomes a finding of weight problem; never throws.
Study study_of(const Question& question, const std::shared_ptr<const PieceTypes>& types, EventBuilder& builder);

}  // namespace quadrille
