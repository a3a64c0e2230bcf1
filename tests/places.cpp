#include "tests/places.hpp"

namespace quadrille {

std::string source_place(const std::filesystem::path& inside) {
  return (inside.empty() ? std::filesystem::path(QUADRILLE_SOURCE_DIR) : QUADRILLE_SOURCE_DIR / inside).string();
}

std::string build_place(const std::filesystem::path& inside) {
  return (inside.empty() ? std::filesystem::path(QUADRILLE_BINARY_DIR) : QUADRILLE_BINARY_DIR / inside).string();
}

}  // namespace quadrille
