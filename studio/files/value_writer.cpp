#include "studio/files/value_writer.hpp"

#include <array>
#include <cmath>
#include <cstddef>
#include <cstdint>

#include "sdk/pattern.hpp"

namespace quadrille {
namespace {

void write_rows(ElementWriter& list, const Kept& kept, const std::string& row,
                const std::array<const char*, 3>& columns, const std::vector<double>& numbers) {
  for (std::size_t i = 0; i + 2 < numbers.size(); i += 3) {
    const std::string address = row + ":" + std::to_string(i / 3 + 1);
    ElementWriter writer(row, list.depth() + 1, kept, list.inside(address));
    for (std::size_t column = 0; column < 3; ++column) writer.number(columns[column], numbers[i + column]);
    list.child(address, writer.finish());
  }
}

void write_value(ElementWriter& piece, const Kept& kept, const std::string& key, const Value& value) {
  const std::string element = value.kind == Kind::path ? "path" : value.kind == Kind::mix ? "mix" : "set";
  const std::string address = element + ":" + key;
  ElementWriter writer(element, piece.depth() + 1, kept, piece.inside(address));
  writer.text("key", key);
  for (const KindWord& kind : kind_words) {
    if (kind.kind != value.kind) continue;
    if (is_text(kind.kind))
      writer.text(kind.word, value.text);
    else if (kind.kind == Kind::flag)
      writer.text(kind.word, word_of(yes_or_no, value.number != 0));
    else if (is_whole(kind.kind) && std::abs(value.number) < 1e15)
      writer.whole(kind.word, std::llround(value.number));
    else
      writer.number(kind.word, value.number);
  }
  if (value.kind == Kind::path) write_rows(writer, kept, "point", {"x-m", "y-m", "z-m"}, value.list);
  if (value.kind == Kind::mix) write_rows(writer, kept, "entry", {"nominal-in", "inflated-m", "share"}, value.list);
  piece.child(address, writer.finish());
}

}  // namespace

void write_values(ElementWriter& piece, const Kept& kept, const ValueMap& values) {
  piece.give_up([&](std::string_view what) {  // else it would be read in the place of what the user chose
    return what.starts_with("value:") && values.contains(what.substr(6));
  });
  for (const auto& [key, value] : values) write_value(piece, kept, key, value);
}

void write_colours(ElementWriter& piece, const Kept& kept, const std::vector<ColourReference>& colours) {
  for (std::size_t slot = 0; slot < colours.size(); ++slot) {
    const std::string letter(1, slot_letter(static_cast<std::uint32_t>(slot)));
    const std::string address = "colour:" + letter;
    ElementWriter colour("colour", piece.depth() + 1, kept, piece.inside(address));
    colour.text("slot", letter);
    colour.text_unless_empty("palette", colours[slot].palette);
    colour.text_unless_empty("key", colours[slot].colour);
    piece.child(address, colour.finish());
  }
}

}  // namespace quadrille
