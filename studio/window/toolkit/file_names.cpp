#include "studio/window/toolkit/file_names.hpp"

#include <algorithm>
#include <system_error>

#include "studio/model/capital.hpp"
#include "studio/window/toolkit/notices.hpp"

namespace quadrille {

bool is_there(const std::filesystem::path& file) {
  std::error_code unknown;
  return std::filesystem::exists(file, unknown);
}

std::filesystem::path with_ending(std::filesystem::path file, const char* ending) {
  if (file.extension().empty()) file += ending;
  return file;
}

bool may_become(wxWindow* parent, const std::filesystem::path& typed, const std::filesystem::path& file) {
  return file == typed || !is_there(file) ||
         ask_whether(parent, "There is such a file already", file.string() + " would be replaced.", "&Replace it");
}

std::string sample_title(const std::filesystem::path& file) {
  std::string title = file.stem().string();
  std::ranges::replace(title, '-', ' ');
  return with_capital(title);
}

}  // namespace quadrille
