// check_colours: does every slot have a colour that can be bought?
#include <algorithm>
#include <numeric>
#include <string_view>

#include "studio/files/palette_file.hpp"
#include "studio/files/words.hpp"

namespace quadrille {
namespace {

/// How many letters must be changed, put in or taken out. Source: V. I. Levenshtein, 1966.
std::size_t distance(std::string_view a, std::string_view b) {
  std::vector<std::size_t> row(b.size() + 1);
  std::iota(row.begin(), row.end(), std::size_t{0});
  for (std::size_t i = 1; i <= a.size(); ++i) {
    std::size_t corner = row[0];
    row[0] = i;
    for (std::size_t j = 1; j <= b.size(); ++j) {
      const std::size_t swapped = corner + (a[i - 1] != b[j - 1]);
      corner = row[j];
      row[j] = std::min({swapped, row[j] + 1, row[j - 1] + 1});
    }
  }
  return row.back();
}

/// "Did you mean …" where a key is near, else the first keys there are.
template <class Item>
std::string suggestion(std::string_view wanted, const std::vector<Item>& items, const char* what) {
  if (items.empty()) return std::string("There is no ") + what + "; check where palettes are looked for.";
  constexpr std::size_t longest_compared = 64;
  const Item* nearest = nullptr;
  std::size_t least = std::max<std::size_t>(2, wanted.size() / 3) + 1;
  for (const Item& item : items) {
    if (wanted.size() > longest_compared || item.key.size() > longest_compared) continue;
    const std::size_t changes = distance(wanted, item.key);
    if (changes >= least) continue;
    least = changes;
    nearest = &item;
  }
  if (nearest != nullptr) return "Did you mean \"" + nearest->key + "\"?";
  constexpr std::size_t most_listed = 6;
  std::string list;
  for (std::size_t i = 0; i < std::min(items.size(), most_listed); ++i) list += (i == 0 ? "" : ", ") + items[i].key;
  return std::string("Choose a ") + what + ": " + list + (items.size() > most_listed ? ", …" : "") + ".";
}

const Palette* find_palette(const std::vector<Palette>& palettes, std::string_view key) {
  const auto found = std::ranges::find(palettes, key, &Palette::key);
  return found == palettes.end() ? nullptr : &*found;
}

/// Slots that the piece is known to use without building it.
std::size_t known_slots(const PlacedPiece& piece) {
  std::size_t slots = piece.colours.size();
  for (const auto& [key, value] : piece.values)
    if (value.kind == Kind::slots && value.number >= 0 && value.number <= static_cast<double>(most_slots))
      slots = std::max(slots, static_cast<std::size_t>(value.number));
  if (piece.last_built)
    for (const auto& count : piece.last_built->counts)
      if (count.slot < most_slots) slots = std::max<std::size_t>(slots, count.slot + 1);
  return std::min(slots, most_slots);
}

void check_slot(const Area& area, const PlacedPiece& piece, std::size_t slot, const std::vector<Palette>& palettes,
                Findings& findings) {
  const ColourReference wanted = slot < piece.colours.size() ? piece.colours[slot] : ColourReference{};
  const std::string named = "slot " + slot_letter(slot);
  const std::string where = "Slot " + slot_letter(slot) + " of " + (piece.name.empty() ? piece.id : piece.name);
  const auto say = [&](Weight weight, const char* code, std::string text, std::string remedy) {
    findings.push_back({weight, code, area.id, piece.id, named, where + std::move(text), std::move(remedy)});
  };
  const Palette* palette = find_palette(palettes, wanted.palette);
  if (wanted == ColourReference{})
    say(Weight::warning, "slot-without-colour", " has no colour.", "Choose one from a palette.");
  else if (palette == nullptr)
    say(Weight::problem, "no-such-palette", " names the palette \"" + wanted.palette + "\", which is not there.",
        suggestion(wanted.palette, palettes, "palette"));
  else if (find_colour(palettes, wanted) == nullptr)
    say(Weight::problem, "no-such-colour",
        " is set to \"" + wanted.colour + "\", a colour that the palette \"" + wanted.palette + "\" does not have.",
        suggestion(wanted.colour, palette->colours, "colour"));
}

}  // namespace

Findings check_colours(const Event& event, const std::vector<Palette>& palettes) {
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
    for (const auto& piece : area->pieces)
      for (std::size_t slot = 0; slot < known_slots(*piece); ++slot)
        check_slot(*area, *piece, slot, palettes, findings);
  return findings;
}

}  // namespace quadrille
