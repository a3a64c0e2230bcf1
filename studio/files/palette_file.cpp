#include "studio/files/palette_file.hpp"

#include <algorithm>
#include <map>
#include <set>
#include <utility>

#include "studio/files/accepted_currency.hpp"
#include "studio/files/file_header.hpp"
#include "studio/model/calendar.hpp"
#include "studio/xml/unreadable.hpp"

namespace quadrille {
namespace {

using PackLists = std::map<std::string, std::vector<Pack>, std::less<>>;

std::string nothing_known(const XmlNode&) { return {}; }

Pack read_pack(ElementReader& holder, const XmlNode& element, Preserved& unread) {
  constexpr Range at_least_one{1, 1e6, "balloons in a pack"};
  constexpr Range pack_price{0, static_cast<double>(highest_pack_price), money_range.unit};
  ElementReader reader(element, holder.reading(), unread);
  const auto nominal = reader.number("nominal-in", nominal_range);
  const auto count = reader.whole("count", at_least_one);
  const auto price = reader.whole("price-minor", pack_price);
  if (!nominal || !count || !price) reader.fail("A pack needs nominal-in, count and price-minor.");
  reader.children(nothing_known);
  reader.finish();
  return {*nominal, *count, *price};
}

/// Reads the <pack> children, of which one size may have several; those of a size that is there already are replaced, so
/// that a colour's own packs win.
void read_packs(ElementReader& holder, std::vector<Pack>& packs, Preserved& unread) {
  const std::vector<Pack> shared = std::exchange(packs, {});
  std::set<std::pair<double, std::int64_t>> seen;
  holder.children([&](const XmlNode& child) -> std::string {
    if (child.name != "pack") return {};
    const Pack pack = read_pack(holder, child, unread);
    if (!seen.insert({pack.nominal_in, pack.count}).second)
      holder.fail("One nominal size has two packs of " + std::to_string(pack.count) + "; keep one.");
    packs.push_back(pack);
    return "pack";
  });
  const auto is_own = [&](const Pack& pack) {
    const auto own = seen.lower_bound({pack.nominal_in, 0});
    return own != seen.end() && own->first == pack.nominal_in;
  };
  for (const Pack& pack : shared)
    if (!is_own(pack)) packs.push_back(pack);
  std::ranges::sort(packs, {}, [](const Pack& pack) { return std::pair(pack.nominal_in, pack.count); });
}

void read_srgb(ElementReader& reader, Colour& colour) {
  const std::string text = reader.required("srgb");
  const auto digit = [](char c) {
    return c >= '0' && c <= '9'   ? c - '0'
           : c >= 'a' && c <= 'f' ? c - 'a' + 10
           : c >= 'A' && c <= 'F' ? c - 'A' + 10
                                  : -1;
  };
  bool good = text.size() == 7 && text[0] == '#';
  for (std::size_t i = 1; good && i < text.size(); ++i) good = digit(text[i]) >= 0;
  if (!good)
    reader.fail("srgb=\"" + shown(text) +
                "\" is no colour; accepted is \"#rrggbb\" with digits 0-9 and a-f, small or capital.");
  const auto part = [&](std::size_t at) {
    return static_cast<std::uint8_t>(digit(text[at]) * 16 + digit(text[at + 1]));
  };
  colour.red = part(1);
  colour.green = part(3);
  colour.blue = part(5);
}

Colour read_colour(const XmlNode& element, Reading& reading, const PackLists& lists, Preserved& unread) {
  Colour colour;
  ElementReader reader(element, reading, unread);
  colour.key = reader.required("key");
  colour.name = reader.text("name");
  if (colour.name.empty()) colour.name = colour.key;
  read_srgb(reader, colour);
  colour.finish = reader.word("finish", finish_words, Finish::matte);
  if (const std::string list = reader.text("packs"); !list.empty()) {
    const auto found = lists.find(list);
    if (found == lists.end()) reader.fail("There is no <packs key=\"" + shown(list) + "\"> above it.");
    colour.packs = found->second;
  }
  read_packs(reader, colour.packs, unread);
  reader.finish();
  return colour;
}

std::string read_pack_list(ElementReader& root, const XmlNode& child, PackLists& lists, Preserved& unread) {
  ElementReader reader(child, root.reading(), unread);
  std::string key = reader.required("key");
  std::vector<Pack> packs;
  read_packs(reader, packs, unread);
  reader.finish();
  if (!lists.emplace(key, std::move(packs)).second)
    reader.fail("These packs stand twice; each list needs its own key.");
  return "packs:" + key;
}

Palette read(std::string_view bytes, Findings* findings) {
  const XmlDocument document = parse_xml(bytes);
  const int space_major = check_root(document, palette_kind);
  Palette palette;
  Reading reading;
  Preserved unread;  // palettes are never written back
  ElementReader root(document.nodes[document.root], reading, unread);
  read_header(root, palette_kind, space_major);
  palette.key = root.required("key");
  palette.name = root.text("name");
  if (palette.name.empty()) palette.name = palette.key;
  if (const std::string currency = root.text("currency"); !currency.empty()) palette.currency = currency;
  if (!is_currency(palette.currency))
    root.fail("currency=\"" + shown(palette.currency) + "\" is no currency code; accepted is " +
              accepted_currency(palette.currency) + ".");
  PackLists lists;
  std::set<std::string> keys;
  root.children([&](const XmlNode& child) -> std::string {
    if (child.name == "packs") return read_pack_list(root, child, lists, unread);
    if (child.name != "colour") return {};
    Colour colour = read_colour(child, reading, lists, unread);
    if (!keys.insert(colour.key).second)
      throw Unreadable{child.line, place_of(child), "This key stands twice in the palette; each colour needs its own."};
    palette.colours.push_back(std::move(colour));
    return "colour:" + palette.colours.back().key;
  });
  root.finish();
  if (findings != nullptr)
    for (Finding& finding : reading.take()) findings->push_back(std::move(finding));
  return palette;
}

}  // namespace

Result<Palette> read_palette(std::string bytes, std::string_view name, Findings* findings) {
  try {
    return Result<Palette>::good(read(bytes, findings));
  } catch (const Unreadable& what) {
    return Result<Palette>::bad(sentence(name, what));
  }
}

}  // namespace quadrille
