#include "studio/files/value_reader.hpp"

#include <optional>
#include <utility>

#include "studio/xml/unreadable.hpp"

namespace quadrille {
namespace {

const KindWord* kind_of(const XmlNode& set) {
  const KindWord* found = nullptr;
  for (const KindWord& kind : kind_words) {
    if (set.attribute(kind.word) == nullptr) continue;
    if (found != nullptr) return nullptr;  // two kinds: nobody can tell which is meant
    found = &kind;
  }
  return found;
}

/// Nothing where the text is no value of this kind that can be told.
std::optional<Value> simple_value(ElementReader& set, const KindWord& kind) {
  if (is_text(kind.kind)) return Value::of_text(kind.kind, set.text(kind.word));
  if (kind.kind == Kind::flag) {
    const std::string answer = set.text(kind.word);
    for (const auto& entry : yes_or_no)
      if (answer == entry.word) return Value::of_number(kind.kind, entry.value ? 1 : 0);
    return std::nullopt;
  }
  if (is_whole(kind.kind)) return Value::of_number(kind.kind, static_cast<double>(*set.whole(kind.word, kind.range)));
  return Value::of_number(kind.kind, *set.number(kind.word, kind.range));
}

struct Column {
  const char* attribute;
  Range range;
};
constexpr Column point_columns[] = {{"x-m", place_range}, {"y-m", place_range}, {"z-m", place_range}};
constexpr Column entry_columns[] = {{"nominal-in", nominal_range}, {"inflated-m", size_range}, {"share", {0, 1e9, ""}}};

Value list_value(ElementReader& list, Kind kind) {
  const bool is_path = kind == Kind::path;
  const std::string row_name = is_path ? "point" : "entry";
  Value value = Value::of_list(kind, {});
  list.children([&](const XmlNode& row) -> std::string {
    if (row.name != row_name) return {};
    const std::string address = row_name + ":" + std::to_string(value.list.size() / 3 + 1);
    ElementReader reader(row, list.reading(), list.kept(), list.inside(address));
    for (const Column& column : is_path ? point_columns : entry_columns) {
      const auto number = reader.number(column.attribute, column.range);
      if (!number) reader.fail("The attribute " + std::string(column.attribute) + " is missing.");
      value.list.push_back(*number);
    }
    reader.children([](const XmlNode&) { return std::string(); });
    reader.finish();
    return address;
  });
  return value;
}

}  // namespace

bool holds_value(const XmlNode& element) {
  return element.name == "set" || element.name == "path" || element.name == "mix";
}

std::string read_value(ElementReader& piece, const XmlNode& child, ValueMap& values) {
  const std::string* key = child.attribute("key");
  if (key == nullptr || key->empty()) return piece.leave("It has no key;");
  const std::string address = std::string(child.name) + ":" + *key;
  ElementReader reader(child, piece.reading(), piece.kept(), piece.inside(address));
  if (values.contains(*key)) reader.fail("The value \"" + shown(*key) + "\" stands twice in this piece; keep one.");
  reader.text("key");
  std::optional<Value> value;
  if (child.name == "set") {
    const KindWord* kind = kind_of(child);
    if (kind == nullptr) return piece.leave("It does not have one kind of value that is known;", "value:" + *key);
    value = simple_value(reader, *kind);
    if (!value) return piece.leave("A flag is yes or no;", "value:" + *key);
    reader.children([](const XmlNode&) { return std::string(); });
  } else {
    value = list_value(reader, child.name == "path" ? Kind::path : Kind::mix);
  }
  reader.finish();
  values.emplace(*key, std::move(*value));
  return address;
}

std::string SlotColours::read(ElementReader& piece, const XmlNode& child) {
  const std::string* letter = child.attribute("slot");
  if (letter == nullptr) return piece.leave("It has no slot;");
  const std::string address = "colour:" + *letter;
  ElementReader reader(child, piece.reading(), piece.kept(), piece.inside(address));
  const auto slot = reader.slot("slot");
  if (!slot) return piece.leave("A slot is one letter from A to Z;");
  if (colours_.size() <= *slot) colours_.resize(*slot + 1);
  if (colours_[*slot]) reader.fail("Slot " + *letter + " has two colours; keep one.");
  colours_[*slot] = ColourReference{reader.text("palette"), reader.text("key")};
  reader.children([](const XmlNode&) { return std::string(); });
  reader.finish();
  return address;
}

std::vector<ColourReference> SlotColours::take() const {
  std::vector<ColourReference> colours;
  for (const auto& colour : colours_) colours.push_back(colour.value_or(ColourReference{}));
  return colours;
}

}  // namespace quadrille
