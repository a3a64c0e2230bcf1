// Everything the window shows about one state of the event, worked out away from the main thread. Knows no toolkit.
#pragma once

#include <cstdint>
#include <memory>
#include <optional>
#include <string>

#include "studio/files/house_place.hpp"
#include "studio/files/palette_file.hpp"
#include "studio/host/builder.hpp"
#include "studio/host/piece_type.hpp"
#include "studio/labour/day_plan.hpp"
#include "studio/model/built_event.hpp"
#include "studio/model/event.hpp"
#include "studio/model/finding.hpp"
#include "studio/quote/changes.hpp"
#include "studio/quote/quote_event.hpp"
#include "studio/takeoff/event_order.hpp"

namespace quadrille {

/// What is to be worked out. `revision` comes back with the answer and tells whether that is still wanted.
struct Question {
  std::uint64_t revision = 0;
  Event event;
  std::shared_ptr<const LoadedPalettes> palettes;
  std::shared_ptr<const LoadedHouse> house;  ///< null: the standard one, without a word about it
  Findings opened;                           ///< what was not understood when the event was opened
  std::string today;                         ///< ISO 8601; an issued quote is held against it
};

struct Study {
  std::uint64_t revision = 0;
  Event event;  ///< the one that was studied
  std::shared_ptr<const LoadedPalettes> palettes;
  std::shared_ptr<const LoadedHouse> house;
  std::shared_ptr<const PieceTypes> types;
  BuiltEvent built;
  EventOrder order;
  DayPlan plan;
  QuotedEvent quoted;
  QuoteFigures figures;                 ///< what the quote is made from
  std::optional<QuoteChanges> changes;  ///< since a quote was issued
  /// Of the file, the palettes, the house, the colours, the plugins, the pieces, the order, the day and the quote, in
  /// this order.
  Findings findings;
};

/// Builds, counts, plans, quotes and checks. Whatever goes wrong inside becomes a finding of weight problem; never throws.
Study study_of(const Question& question, const std::shared_ptr<const PieceTypes>& types, EventBuilder& builder);

}  // namespace quadrille
