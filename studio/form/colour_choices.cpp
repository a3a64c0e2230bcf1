#include "studio/form/colour_choices.hpp"

#include <algorithm>
#include <utility>

#include "sdk/number.hpp"
#include "sdk/quantity.hpp"
#include "sdk/quoted.hpp"
#include "studio/colour/difference.hpp"
#include "studio/form/trimmed.hpp"
#include "studio/model/event_edits.hpp"

namespace quadrille {
namespace {

Srgb srgb_of(const Colour& colour) { return {colour.red, colour.green, colour.blue}; }

bool draws_from(const Event& event, std::string_view palette) {
  return std::ranges::find(event.palettes, palette) != event.palettes.end();
}

ColourEntry entry_of(const Event& event, const Palette& palette, const Colour& colour) {
  return {{palette.key, colour.key},     colour.name, palette.name, colour.finish, srgb_of(colour),
          draws_from(event, palette.key)};
}

std::vector<std::string> words_of(std::string_view text) {
  std::vector<std::string> words{std::string()};
  for (const char c : in_lower_case(text)) {
    const bool gap = is_blank(c) || c == ',';
    if (gap && !words.back().empty()) words.emplace_back();
    if (!gap) words.back() += c;
  }
  if (words.back().empty()) words.pop_back();
  return words;
}

bool has_all(const ColourEntry& entry, const std::vector<std::string>& words) {
  const std::string all =
      in_lower_case(entry.name + " " + std::string(finish_in_words(entry.finish)) + " " + entry.palette_name);
  return std::ranges::all_of(words, [&](const std::string& word) { return all.find(word) != std::string::npos; });
}

/// Every colour of every palette.
std::vector<ColourEntry> all_entries(const Event& event, std::span<const Palette> palettes) {
  std::vector<ColourEntry> entries;
  for (const Palette& palette : palettes)
    for (const Colour& colour : palette.colours) entries.push_back(entry_of(event, palette, colour));
  return entries;
}

ColourGroup nearest_to(std::vector<ColourEntry> entries, Srgb wanted, std::string_view typed) {
  for (ColourEntry& entry : entries) entry.difference = ciede2000(entry.srgb, wanted);
  std::ranges::stable_sort(entries, {}, [](const ColourEntry& entry) { return *entry.difference; });
  if (entries.size() > most_near) entries.resize(most_near);
  return {"Nearest to " + std::string(typed), std::move(entries)};
}

std::vector<ColourReference> used_last(const Event& event, std::span<const ColourReference> recent) {
  std::vector<ColourReference> used;
  const auto add = [&](const ColourReference& one) {
    if (one != ColourReference{} && std::ranges::find(used, one) == used.end()) used.push_back(one);
  };
  for (const ColourReference& one : recent) add(one);
  for (const auto& area : event.areas)
    for (const auto& piece : area->pieces)
      for (const ColourReference& one : piece->colours) add(one);
  return used;
}

}  // namespace

std::string_view finish_in_words(Finish finish) {
  switch (finish) {
    case Finish::matte:
      return "matte";
    case Finish::pearl:
      return "pearl";
    case Finish::metallic:
      return "metallic";
    case Finish::clear:
      return "clear";
  }
  return "";
}

std::vector<ColourGroup> colour_choices(const Event& event, std::span<const Palette> palettes,
                                        std::span<const ColourReference> recent, std::string_view search) {
  search = trimmed_text(search);
  if (search.starts_with('#'))
    if (const auto wanted = parse_srgb(search)) return {nearest_to(all_entries(event, palettes), *wanted, search)};
  const std::vector<std::string> words = words_of(search);
  std::vector<ColourGroup> groups;
  const auto add = [&](std::string heading, std::vector<ColourEntry> colours) {
    std::erase_if(colours, [&](const ColourEntry& entry) { return !has_all(entry, words); });
    if (!colours.empty()) groups.push_back({std::move(heading), std::move(colours)});
  };
  std::vector<ColourEntry> used;
  for (const ColourReference& one : used_last(event, recent))
    if (auto entry = colour_entry(event, palettes, one)) used.push_back(std::move(*entry));
  add("Used last", std::move(used));
  for (const bool in_event : {true, false})
    for (const Palette& palette : palettes) {
      if (draws_from(event, palette.key) != in_event) continue;
      std::vector<ColourEntry> colours;
      for (const Colour& colour : palette.colours) colours.push_back(entry_of(event, palette, colour));
      add(palette.name, std::move(colours));
    }
  return groups;
}

std::optional<ColourEntry> colour_entry(const Event& event, std::span<const Palette> palettes,
                                        const ColourReference& reference) {
  for (const Palette& palette : palettes)
    if (palette.key == reference.palette)
      for (const Colour& colour : palette.colours)
        if (colour.key == reference.colour) return entry_of(event, palette, colour);
  return std::nullopt;
}

std::string colour_in_words(std::span<const Palette> palettes, const ColourReference& reference) {
  if (reference == ColourReference{}) return "no colour yet";
  if (const Colour* colour = find_colour(palettes, reference))
    return colour->name + ", " + std::string(finish_in_words(colour->finish));
  return reference.colour + " of palette " + quoted(reference.palette) + " (not there)";
}

std::string alike_in_words(std::span<const Palette> palettes, const std::vector<SlotField>& slots, std::size_t slot,
                           const ColourReference& chosen) {
  const Colour* const own = find_colour(palettes, chosen);
  if (own == nullptr) return {};
  std::string sentence;
  for (const SlotField& other : slots) {
    const Colour* const colour = other.colour ? find_colour(palettes, *other.colour) : nullptr;
    if (colour == nullptr || other.slot == slot) continue;
    const double difference = ciede2000(srgb_of(*own), srgb_of(*colour));
    if (difference >= apart_across_a_room) continue;
    sentence += (sentence.empty() ? "" : " ") + own->name + " and " + other.letter + ", " + colour->name + ", are " +
                std::string(difference_in_words(difference)) + " (difference " + print_fixed(difference, 1) + ").";
  }
  return sentence;
}

Event with_chosen_colour(Event event, const PieceIds& pieces, std::size_t slot, const ColourReference& colour) {
  event = with_colours(std::move(event), pieces, slot, colour);
  return colour.palette.empty() ? event : with_palette(std::move(event), colour.palette);
}

}  // namespace quadrille
