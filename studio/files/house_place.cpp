#include "studio/files/house_place.hpp"

#include <string>
#include <system_error>
#include <utility>

#include "studio/disk/file_bytes.hpp"
#include "studio/disk/user_folders.hpp"

namespace quadrille {
namespace {

namespace fs = std::filesystem;

Finding about_house(Weight weight, const char* code, std::string text, std::string remedy) {
  return {weight, code, {}, {}, {}, std::move(text), std::move(remedy)};
}

/// What to say where nothing is at `file`, which is a place that was asked for by name, or by the environment.
Finding no_file(const fs::path& file, bool by_name, bool by_environment) {
  const std::string serves = "the standard house serves, whose prices are invented.";
  if (by_name)
    return about_house(Weight::problem, "no-house", file.string() + ": there is no such house file; " + serves,
                       "Name one that is there.");
  if (by_environment)
    return about_house(Weight::warning, "no-house",
                       file.string() + ", which QUADRILLE_HOUSE names, is not there; " + serves,
                       "Name another, or save your house there.");
  if (file.empty())
    return about_house(Weight::note, "standard-house", "There is no house file: " + serves,
                       "Name one in QUADRILLE_HOUSE; without a home folder it has no usual place.");
  return about_house(Weight::note, "standard-house", "There is no house file: " + serves,
                     "Your own stock, prices and rates go to " + file.string() + ".");
}

}  // namespace

fs::path standard_house_file() {
  if (const fs::path own = environment("QUADRILLE_HOUSE"); !own.empty()) return own;
  if (const auto data = data_folder()) return *data / "house.quadrille-house";
  return {};
}

LoadedHouse load_house(const fs::path& file, std::string_view currency) {
  LoadedHouse loaded;
  loaded.file = file.empty() ? standard_house_file() : file;
  loaded.house = standard_house(currency);
  loaded.is_standard = true;
  std::error_code unknown;
  if (loaded.file.empty() || (!fs::exists(loaded.file, unknown) && !unknown)) {
    loaded.findings.push_back(no_file(loaded.file, !file.empty(), !environment("QUADRILLE_HOUSE").empty()));
    return loaded;
  }
  auto opened = open_house(loaded.file);
  if (!opened) {
    loaded.findings.push_back(about_house(Weight::problem, "house-unreadable", opened.error,
                                          "Mend the file; meanwhile the standard house serves, whose prices are "
                                          "invented."));
    return loaded;
  }
  for (Finding finding : opened->findings) {
    finding.text = loaded.file.string() + ": " + finding.text;
    loaded.findings.push_back(std::move(finding));
  }
  loaded.house = opened->house;
  loaded.is_standard = false;
  loaded.opened = std::move(*opened.value);
  return loaded;
}

bool changed_on_disk(const LoadedHouse& loaded) {
  const auto now = read_bytes(loaded.file);
  if (!loaded.opened) return now && !now->empty();
  return !now || *now != loaded.opened->bytes;
}

}  // namespace quadrille
