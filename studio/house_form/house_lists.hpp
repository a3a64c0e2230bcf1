// The house's lists: what is in the stockroom, and what was measured. Entries are shown as rows, and changed in a form of
// their own.
#pragma once

#include <cstddef>
#include <map>
#include <optional>
#include <span>
#include <string>
#include <string_view>
#include <vector>

#include "studio/house_form/house_field.hpp"
#include "studio/model/house.hpp"
#include "studio/model/palette.hpp"

namespace quadrille {

enum class HouseList { balloons, supplies, kits, inflators, failures, packings, jobs };

/// In the order in which they are shown.
inline constexpr HouseList house_lists[] = {HouseList::balloons,  HouseList::supplies, HouseList::kits,
                                            HouseList::inflators, HouseList::failures, HouseList::packings,
                                            HouseList::jobs};

struct HouseColumn {
  std::string title;
  bool numbers = false;
};

/// A list as a table.
struct HouseTable {
  std::string title;  ///< "Supplies"
  std::string entry;  ///< what one is: "supply"
  std::string words;  ///< what the list is for, in a sentence
  std::vector<HouseColumn> columns;
  std::vector<std::vector<std::string>> rows;  ///< a cell for each column
};

/// "a supply", "an inflator".
std::string with_article(const std::string& entry);

/// `palettes` name the colours; a colour that none has is named by its keys.
HouseTable table_of(const House& house, HouseList list, std::span<const Palette> palettes);

/// The fields of one entry; `row` is its number, none: of one that is to be added. An unknown row is a programmer's
/// mistake (std::out_of_range).
std::vector<HouseField> entry_of(const House& house, HouseList list, std::optional<std::size_t> row,
                                 std::span<const Palette> palettes);

struct HouseEntryFault {
  std::string key;  ///< of the field
  std::string sentence;
};

/// The house with the entry, or what is wrong with it, field by field.
struct HouseEntryChange {
  std::optional<House> house;
  std::vector<HouseEntryFault> faults;  ///< empty exactly when there is a house
};

/// The entry with what was typed into its fields, by key; what is not in `typed` stays. A new one goes to the end. Two of
/// one key (of one colour and size…) are refused, as a file cannot hold them.
HouseEntryChange with_entry(const House& house, HouseList list, std::optional<std::size_t> row,
                            const std::map<std::string, std::string>& typed, std::span<const Palette> palettes);

/// Without the entry; an unknown row leaves the house as it is.
House without_entry(House house, HouseList list, std::size_t row);

/// What the finished jobs say of the rates, in words: what it is, now, as the jobs say, unit, number of jobs.
HouseTable learned_rates(const House& house);

}  // namespace quadrille
