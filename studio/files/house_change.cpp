#include "studio/files/house_change.hpp"

#include <system_error>

namespace quadrille {

std::optional<std::string> change_house(const LoadedHouse& loaded, const std::function<House(House)>& change) {
  if (loaded.file.empty())
    return "There is no place for a house file: name one in QUADRILLE_HOUSE, or set a home folder.";
  std::error_code unknown;
  if (!std::filesystem::exists(loaded.file, unknown) && !unknown) return save_house(loaded.file, change(loaded.house));
  const auto now = open_house(loaded.file);
  if (!now) return now.error;
  return save_house(loaded.file, change(now->house), &*now);
}

}  // namespace quadrille
