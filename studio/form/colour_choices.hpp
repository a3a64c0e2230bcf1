// The colours that a slot can be given, in the order in which one looks for them.
#pragma once

#include <cstddef>
#include <optional>
#include <span>
#include <string>
#include <string_view>
#include <vector>

#include "studio/colour/lab.hpp"
#include "studio/form/slot_fields.hpp"
#include "studio/model/event.hpp"
#include "studio/model/palette.hpp"
#include "studio/model/piece_edits.hpp"

namespace quadrille {

/// "matte", "pearl", "metallic" or "clear".
std::string_view finish_in_words(Finish finish);

struct ColourEntry {
  ColourReference reference;
  std::string name, palette_name;
  Finish finish = Finish::matte;
  Srgb srgb;
  bool in_event = false;                            ///< the event draws from its palette already
  std::optional<double> difference = std::nullopt;  ///< CIEDE2000 to the colour that was asked about
};

/// Colours that belong together, under a heading.
struct ColourGroup {
  std::string heading;
  std::vector<ColourEntry> colours;
};

/// The colours in which every word of `search` occurs, in the name, the finish or the palette's name, in either case:
/// first `recent` ones and those that the event uses, under "Used last", then palette by palette, those that the event
/// draws from before the others; a colour may stand in both. Where `search` is a colour as parse_srgb takes it with its
/// '#', instead one group of the `most_near` colours that look most like it, the nearest first. Groups without colours are
/// left out.
std::vector<ColourGroup> colour_choices(const Event& event, std::span<const Palette> palettes,
                                        std::span<const ColourReference> recent, std::string_view search);
inline constexpr std::size_t most_near = 20;

/// The colour's entry; nothing where no palette has it.
std::optional<ColourEntry> colour_entry(const Event& event, std::span<const Palette> palettes,
                                        const ColourReference& reference);

/// "Coral, matte"; "no colour yet" where both keys are empty; "coral of palette 'x' (not there)" where no palette has it.
std::string colour_in_words(std::span<const Palette> palettes, const ColourReference& reference);

/// A sentence about the other slots of the form whose colours look nearly like `chosen` for slot `slot`; empty where there
/// is none.
std::string alike_in_words(std::span<const Palette> palettes, const std::vector<SlotField>& slots, std::size_t slot,
                           const ColourReference& chosen);

/// Gives the slot of all of the pieces this colour, and the event its palette where it does not draw from it yet.
Event with_chosen_colour(Event event, const PieceIds& pieces, std::size_t slot, const ColourReference& colour);

}  // namespace quadrille
