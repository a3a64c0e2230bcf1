// quadrille palettes: the colours that an event's slots can be given; and making a palette of a graphics program's.
#include <algorithm>
#include <ostream>
#include <system_error>

#include "sdk/number.hpp"
#include "studio/command/json.hpp"
#include "studio/command/table.hpp"
#include "studio/command/verbs.hpp"
#include "studio/command/write_output.hpp"
#include "studio/files/gpl_file.hpp"
#include "studio/files/palette_file.hpp"
#include "studio/files/words.hpp"

namespace quadrille {
namespace {

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

/// Says where a palette that is found before has the same key.
void warn_of_same_key(const Palette& palette, const Console& console) {
  const LoadedPalettes others = load_palettes(standard_palette_folders(console.executable, {}));
  if (std::ranges::find(others.palettes, palette.key, &Palette::key) != others.palettes.end())
    console.err << "warning: There is a palette with the key \"" << palette.key
                << "\" already, and of two the first that is found counts. Give the new one another key in its file.\n";
}

Exit import_palette(const PalettesRequest& request, const Console& console) {
  if (request.out.extension() != ".xml") {
    console.err << request.out.string() << ": palettes are looked for in files that end in .xml; name it so.\n";
    return Exit::usage;
  }
  const auto imported = open_gpl(request.import, request.currency);
  if (!imported) {
    console.err << imported.error << '\n';
    return Exit::bad_input;
  }
  for (const Finding& finding : imported->findings)
    console.err << "warning: " << finding.text << ' ' << finding.remedy << '\n';
  const std::vector<std::filesystem::path> outputs{request.out};
  if (!may_write(outputs, request.import, console)) return Exit::usage;
  const Palette& palette = imported->palette;
  warn_of_same_key(palette, console);
  if (const auto fault = save_palette(request.out, palette)) {
    console.err << *fault << '\n';
    return Exit::no_output;
  }
  print_text(palette, console.out);
  console.out << "Written to " << request.out.string()
              << ", all matte. Put in finishes and what a pack of each size holds and costs, as in the palettes that "
                 "come with the program; events find it in a folder \"palettes\" beside them.\n";
  return Exit::done;
}

}  // namespace

Exit palettes(const PalettesRequest& request, const Console& console) {
  if (!request.import.empty()) return import_palette(request, console);
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
