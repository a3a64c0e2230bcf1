// The words of files of ours: how each choice is written, which kinds of value there are, and the ranges
// in which a number can be meant.
#pragma once

#include <array>
#include <cstddef>
#include <string>
#include <string_view>

#include "sdk/value.hpp"
#include "studio/model/palette.hpp"

namespace quadrille {

template <class E>
struct Word {
  E value;
  const char* word;
};

inline constexpr std::array<Word<bool>, 2> yes_or_no{{{true, "yes"}, {false, "no"}}};
inline constexpr std::array<Word<Units>, 2> units_words{{{Units::feet, "feet"}, {Units::metric, "metric"}}};
inline constexpr std::array<Word<Surroundings>, 2> surroundings_words{
    {{Surroundings::indoors, "indoors"}, {Surroundings::outdoors, "outdoors"}}};
inline constexpr std::array<Word<Ground>, 9> ground_words{{{Ground::grass, key_of(Ground::grass)},
                                                           {Ground::soil, key_of(Ground::soil)},
                                                           {Ground::sand, key_of(Ground::sand)},
                                                           {Ground::gravel, key_of(Ground::gravel)},
                                                           {Ground::concrete, key_of(Ground::concrete)},
                                                           {Ground::asphalt, key_of(Ground::asphalt)},
                                                           {Ground::paving, key_of(Ground::paving)},
                                                           {Ground::wood_floor, key_of(Ground::wood_floor)},
                                                           {Ground::carpet, key_of(Ground::carpet)}}};
inline constexpr std::array<Word<AnchorKind>, 3> anchor_words{
    {{AnchorKind::stake, "stake"}, {AnchorKind::dead_weight, "dead-weight"}, {AnchorKind::structure, "structure"}}};
inline constexpr std::array<Word<PictureMedia>, 2> media_words{
    {{PictureMedia::jpeg, "jpeg"}, {PictureMedia::png, "png"}}};
inline constexpr std::array<Word<StructureKind>, 8> structure_words{{{StructureKind::wall, "wall"},
                                                                     {StructureKind::post, "post"},
                                                                     {StructureKind::tree, "tree"},
                                                                     {StructureKind::railing, "railing"},
                                                                     {StructureKind::beam, "beam"},
                                                                     {StructureKind::vehicle, "vehicle"},
                                                                     {StructureKind::table, "table"},
                                                                     {StructureKind::other, "other"}}};
inline constexpr std::array<Word<QuoteLineKind>, 6> quote_line_words{{{QuoteLineKind::piece, "piece"},
                                                                      {QuoteLineKind::delivery, "delivery"},
                                                                      {QuoteLineKind::set_up, "set-up"},
                                                                      {QuoteLineKind::strike, "strike"},
                                                                      {QuoteLineKind::rental, "rental"},
                                                                      {QuoteLineKind::discount, "discount"}}};
inline constexpr std::array<Word<Finish>, 4> finish_words{
    {{Finish::matte, "matte"}, {Finish::pearl, "pearl"}, {Finish::metallic, "metallic"}, {Finish::clear, "clear"}}};

/// The word for `value`; "" where the table has none.
template <class E, std::size_t N>
constexpr const char* word_of(const std::array<Word<E>, N>& words, E value) {
  for (const Word<E>& entry : words)
    if (entry.value == value) return entry.word;
  return "";
}

/// "matte, pearl, metallic or clear".
template <class E, std::size_t N>
std::string list_of(const std::array<Word<E>, N>& words) {
  std::string list;
  for (std::size_t i = 0; i < N; ++i) list += (i == 0 ? "" : i + 1 == N ? " or " : ", ") + std::string(words[i].word);
  return list;
}

/// Numbers outside cannot be meant; both ends are accepted, but for `least` where only what is `above` it can be meant.
struct Range {
  double least, most;
  const char* unit;
  bool above = false;
};
inline constexpr Range place_range{-100'000, 100'000, "metres"};
inline constexpr Range size_range{0, 100'000, "metres"};
inline constexpr Range pixel_range{1, most_picture_side_px, "pixels"};
inline constexpr Range pixel_scale_range{0, 1'000, "metres per pixel", true};
inline constexpr Range fade_range{0, 1, "without unit"};
inline constexpr Range altitude_range{-500, 9'000, "metres"};
inline constexpr Range gust_range{0, 150, "metres per second"};
inline constexpr Range celsius_range{-90, 70, "degrees Celsius"};
inline constexpr Range nominal_range{0, 1'000, "inches"};
inline constexpr Range mass_range{0, 1e6, "kilograms"};
inline constexpr Range ratio_range{-1e9, 1e9, "without unit"};
inline constexpr Range count_range{0, 1e9, "a whole number"};
inline constexpr Range money_range{0, 999'999'999'999'999, "a whole number of minor units, such as cents"};
/// Of a sum that may be below nothing, such as a discount.
inline constexpr Range amount_range{-999'999'999'999'999, 999'999'999'999'999, money_range.unit};
inline constexpr Range share_range{0, 10'000'000, "parts per million; 82500 is 8.25 %"};
inline constexpr Range discount_range{0, 1'000'000, "parts per million; 50000 is 5 %"};
inline constexpr Range travel_range{0, 20'000'000, "metres"};  // no road is longer
inline constexpr Range crew_range{1, 20, "people"};

/// How a value of a simple kind is written: `<set key="…" WORD="…"/>`. A path is `<path>`, a mix is `<mix>`.
struct KindWord {
  Kind kind;
  const char* word;
  Range range;
};
inline constexpr std::array<KindWord, 11> kind_words{{{Kind::length, "length", place_range},
                                                      {Kind::angle, "angle", {-1e6, 1e6, "radians"}},
                                                      {Kind::mass, "mass", mass_range},
                                                      {Kind::count, "count", count_range},
                                                      {Kind::ratio, "ratio", ratio_range},
                                                      {Kind::flag, "flag", {0, 1, ""}},
                                                      {Kind::balloon, "balloon", nominal_range},
                                                      {Kind::slots, "slots", {0, 26, "a whole number"}},
                                                      {Kind::seed, "seed", {0, 4294967295.0, "a whole number"}},
                                                      {Kind::choice, "choice", {}},
                                                      {Kind::rows, "rows", {}}}};

/// Slots are lettered from A to Z in a file; more than any piece type has (see most_slots).
inline constexpr std::size_t most_file_slots = 26;

}  // namespace quadrille
