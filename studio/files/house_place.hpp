// Where the house file lives, and the house that serves: the file's, or the standard one.
#pragma once

#include <filesystem>
#include <optional>
#include <string_view>

#include "studio/files/house_file.hpp"

namespace quadrille {

/// QUADRILLE_HOUSE (a file), else `quadrille/house.quadrille-house` in the user's data folder; empty where there is no
/// home. Whether it is there is not looked at.
std::filesystem::path standard_house_file();

/// The house that serves, and why.
struct LoadedHouse {
  House house;
  std::filesystem::path file;         ///< where it was read from, or would go; empty = nowhere
  bool is_standard = false;           ///< no file was read: the prices are invented
  std::optional<OpenedHouse> opened;  ///< for save_house; nothing where no file was read
  Findings findings;
};

/// The house of `file`, or where that is empty of standard_house_file(). Without a file the standard house of `currency`
/// serves, with a note that says where one would go. A `file` that is not there is a problem (a warning where only
/// QUADRILLE_HOUSE names it), and so is one that cannot be read: its sentence is told, the standard house serves, and the file stays as it is.
LoadedHouse load_house(const std::filesystem::path& file, std::string_view currency);

/// True where the file is no longer what was loaded: somebody else wrote, made or removed it.
bool changed_on_disk(const LoadedHouse& loaded);

}  // namespace quadrille
