// quadrille palettes: the colours that an event's slots can be given.
#include <algorithm>
#include <ostream>
#include <system_error>

#include "sdk/number.hpp"
#include "studio/command/json.hpp"
#include "studio/command/table.hpp"
#include "studio/command/verbs.hpp"
#include "studio/files/palette_file.hpp"
#include "studio/files/words.hpp"

namespace quadrille {
namespace {

/// "#rrggbb", as palette files have it.
std::string srgb_text(const Colour& colour) {
  constexpr char digits[] = "0123456789abcdef";
  std::string text = "#";
  for (const std::uint8_t part : {colour.red, colour.green, colour.blue}) {
    text += digits[part / 16];
    text += digits[part % 16];
  }
  return text;
}

Json json_of(const Palette& palette) {
  Json colours = Json::array();
  for (const Colour& colour : palette.colours) {
    Json packs = Json::array();
    for (const Pack& pack : colour.packs)
      packs.push_back({{"nominal_in", pack.nominal_in}, {"count", pack.count}, {"price_minor", pack.price_minor}});
    colours.push_back({{"key", colour.key},
                       {"name", colour.name},
                       {"finish", word_of(finish_words, colour.finish)},
                       {"srgb", srgb_text(colour)},
                       {"packs", packs}});
  }
  return {{"key", palette.key}, {"name", palette.name}, {"currency", palette.currency}, {"colours", colours}};
}

/// "5, 9, 11 in"; empty where it is not sold.
std::string sizes_text(const Colour& colour) {
  std::string text;
  double last = 0;
  for (const Pack& pack : colour.packs) {
    if (!text.empty() && pack.nominal_in == last) continue;
    text += (text.empty() ? "" : ", ") + print_number(pack.nominal_in);
    last = pack.nominal_in;
  }
  return text.empty() ? text : text + " in";
}

void print_text(const Palette& palette, std::ostream& out) {
  std::vector<std::vector<std::string>> rows;
  for (const Colour& colour : palette.colours)
    rows.push_back(
        {colour.key, colour.name, word_of(finish_words, colour.finish), srgb_text(colour), sizes_text(colour)});
  out << palette.key << ": " << palette.name << " (" << palette.colours.size()
      << (palette.colours.size() == 1 ? " colour" : " colours") << ", prices in " << palette.currency << ")\n"
      << print_table({"colour", "name", "finish", "sRGB", "sold in"}, rows) << '\n';
}

}  // namespace

Exit palettes(const PalettesRequest& request, const Console& console) {
  std::error_code unknown;
  if (!request.event.empty() && !std::filesystem::is_regular_file(request.event, unknown)) {
    console.err << request.event.string() << ": there is no such file; name an event, or none.\n";
    return Exit::bad_input;
  }
  const auto folders = standard_palette_folders(console.executable, request.event);
  const LoadedPalettes loaded = load_palettes(folders);
  if (request.json) {
    Json list = Json::array();
    for (const Palette& palette : loaded.palettes) list.push_back(json_of(palette));
    console.out << printed({{"palettes", list}});
  } else {
    for (const Palette& palette : loaded.palettes) print_text(palette, console.out);
    if (!loaded.palettes.empty())
      console.out << "A slot takes one by both keys: <colour slot=\"A\" palette=\"" << loaded.palettes.front().key
                  << "\" key=\"…\"/>\n";
  }
  for (const Finding& finding : loaded.findings)
    console.err << "warning: " << finding.text << ' ' << finding.remedy << '\n';
  if (loaded.palettes.empty()) {
    console.err << "No palette was found. Palette files (*.xml) are looked for in:\n";
    for (const auto& folder : folders) console.err << "  " << folder.string() << '\n';
  }
  return Exit::done;
}

}  // namespace quadrille
