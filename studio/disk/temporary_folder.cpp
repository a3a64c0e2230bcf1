#include "studio/disk/temporary_folder.hpp"

#include <unistd.h>

#include <cstdlib>
#include <string>
#include <system_error>

namespace quadrille {

TemporaryFolder::TemporaryFolder() {
  std::error_code unknown;
  const auto place = std::filesystem::temp_directory_path(unknown);
  if (unknown) return;
  std::string name = (place / "quadrille-XXXXXX").string();
  if (mkdtemp(name.data()) != nullptr) path_ = name;
}

TemporaryFolder::~TemporaryFolder() {
  std::error_code ignored;
  if (!path_.empty()) std::filesystem::remove_all(path_, ignored);
}

}  // namespace quadrille
