#include "studio/takeoff/colours.hpp"

#include <algorithm>
#include <cstdint>
#include <iterator>
#include <map>
#include <optional>
#include <string>
#include <string_view>

#include "sdk/number.hpp"
#include "sdk/pattern.hpp"
#include "studio/colour/difference.hpp"
#include "studio/model/near_word.hpp"
#include "studio/takeoff/count.hpp"

namespace quadrille {
namespace {

/// Balloons by slot.
using Uses = std::map<std::uint32_t, std::int64_t>;

/// True where two keys such as "night-blue" and "blue" have a word in common.
bool share_a_word(std::string_view a, std::string_view b) {
  const auto next_word = [](std::string_view& rest) {
    const std::size_t end = std::min(rest.find('-'), rest.size());
    const std::string_view word = rest.substr(0, end);
    rest.remove_prefix(std::min(end + 1, rest.size()));
    return word;
  };
  while (!a.empty())
    for (std::string_view word = next_word(a), rest = b; !rest.empty();)
      if (const std::string_view other = next_word(rest); !word.empty() && word == other) return true;
  return false;
}

/// "Did you mean …" where a key is near, else the keys that share a word with it, else the first there are; and what
/// lists all of them.
template <class Item>
std::string suggestion(std::string_view wanted, const std::vector<Item>& items, const std::string& what) {
  if (items.empty()) return "There is no " + what + "; 'quadrille palettes' says where palettes are looked for.";
  constexpr std::string_view all = " 'quadrille palettes' lists all of them.";
  std::vector<std::string> keys, alike;
  for (const Item& item : items) keys.push_back(item.key);
  if (const auto meant = near_word(wanted, keys)) return "Did you mean \"" + *meant + "\"?" + std::string(all);
  std::ranges::copy_if(keys, std::back_inserter(alike), [&](const auto& key) { return share_a_word(wanted, key); });
  const std::vector<std::string>& offered = alike.empty() ? keys : alike;
  constexpr std::size_t most_listed = 6;
  std::string list;
  for (std::size_t i = 0; i < std::min(offered.size(), most_listed); ++i) list += (i == 0 ? "" : ", ") + offered[i];
  return "Choose a " + what + ", such as " + list + "." + std::string(all);
}

const Palette* find_palette(const std::vector<Palette>& palettes, std::string_view key) {
  const auto found = std::ranges::find(palettes, key, &Palette::key);
  return found == palettes.end() ? nullptr : &*found;
}

Uses uses_of(const std::vector<LastBuilt::Count>& counts) {
  Uses uses;
  for (const LastBuilt::Count& count : counts)
    if (count.balloons > 0) uses[count.slot] += count.balloons;
  return uses;
}

/// Nothing where it is not known: a piece that was refused, or whose type is missing and was never there.
std::optional<Uses> uses_of(const PlacedPiece& piece, const BuiltEvent& built) {
  const auto found = built.find(piece.id);
  if (found != built.end() && found->second != nullptr) {
    if (found->second->status != Status::ok) return std::nullopt;
    return uses_of(counts_of(found->second->piece));
  }
  if (piece.last_built) return uses_of(piece.last_built->counts);
  return std::nullopt;
}

class PieceCheck {
 public:
  PieceCheck(const Area& area, const PlacedPiece& piece, const std::vector<Palette>& palettes, Findings& findings)
      : area_(area), piece_(piece), palettes_(palettes), findings_(findings) {}

  void without_colour(std::size_t slot, std::int64_t balloons) {
    say(Weight::problem, "slot-without-colour", slot,
        "has no colour; " + std::to_string(balloons) + (balloons == 1 ? " balloon is" : " balloons are") + " of it.",
        "Choose one from a palette.");
  }
  /// One slot held against the ones after it.
  void look_alike(const std::vector<std::size_t>& slots) {
    for (std::size_t i = 0; i < slots.size(); ++i)
      for (std::size_t j = i + 1; j < slots.size(); ++j) {
        const Colour* const one = colour_of(slots[i]);
        const Colour* const other = colour_of(slots[j]);
        if (one == nullptr || other == nullptr || piece_.colours[slots[i]] == piece_.colours[slots[j]]) continue;
        const Srgb a{one->red, one->green, one->blue}, b{other->red, other->green, other->blue};
        const std::string pair = one->name + ") and slot " + slot_name(slots[j]) + " (" + other->name + ")";
        if (const double apart = ciede2000(a, b); apart < apart_across_a_room)
          say(Weight::warning, "slots-look-alike", slots[i],
              "(" + pair + " look nearly alike: their difference is " + print_fixed(apart, 1) + ", and " +
                  print_fixed(apart_across_a_room, 0) + " is told apart across a room.",
              "Choose another colour for one of them.");
      }
  }
  void reference(std::size_t slot, const ColourReference& wanted, Weight weight) {
    const Palette* palette = find_palette(palettes_, wanted.palette);
    if (palette == nullptr)
      say(weight, "no-such-palette", slot, "names the palette \"" + wanted.palette + "\", which is not there.",
          suggestion(wanted.palette, palettes_, "palette"));
    else if (find_colour(palettes_, wanted) == nullptr)
      say(weight, "no-such-colour", slot,
          "is set to \"" + wanted.colour + "\", a colour that the palette \"" + wanted.palette + "\" does not have.",
          suggestion(wanted.colour, palette->colours, "colour"));
  }

 private:
  void say(Weight weight, const char* code, std::size_t slot, const std::string& text, std::string remedy) {
    const std::string name = slot_name(slot);
    findings_.push_back(
        {weight, code, area_.id, piece_.id, "slot " + name, "Slot " + name + " " + text, std::move(remedy)});
  }

  const Colour* colour_of(std::size_t slot) const {
    return slot < piece_.colours.size() ? find_colour(palettes_, piece_.colours[slot]) : nullptr;
  }

  const Area& area_;
  const PlacedPiece& piece_;
  const std::vector<Palette>& palettes_;
  Findings& findings_;
};

void check_piece(const PlacedPiece& piece, const BuiltEvent& built, PieceCheck check) {
  const auto uses = uses_of(piece, built);
  for (std::size_t slot = 0; slot < piece.colours.size(); ++slot) {
    const bool has_balloons = !uses || uses->contains(static_cast<std::uint32_t>(slot));
    if (piece.colours[slot] != ColourReference{})
      check.reference(slot, piece.colours[slot], has_balloons ? Weight::problem : Weight::warning);
  }
  if (!uses) return;
  std::vector<std::size_t> used;
  for (const auto& [slot, balloons] : *uses) {
    used.push_back(slot);
    if (slot >= piece.colours.size() || piece.colours[slot] == ColourReference{}) check.without_colour(slot, balloons);
  }
  check.look_alike(used);
}

}  // namespace

Findings check_colours(const Event& event, const BuiltEvent& built, const std::vector<Palette>& palettes) {
  Findings findings;
  for (const std::string& key : event.palettes)
    if (find_palette(palettes, key) == nullptr)
      findings.push_back({Weight::warning,
                          "no-such-palette",
                          {},
                          {},
                          "palette",
                          "The event draws from the palette \"" + key + "\", which is not there.",
                          suggestion(key, palettes, "palette")});
  for (const auto& area : event.areas)
    for (const auto& piece : area->pieces) check_piece(*piece, built, {*area, *piece, palettes, findings});
  return findings;
}

}  // namespace quadrille
