#include "studio/files/own_file.hpp"

#include <algorithm>
#include <fstream>
#include <iterator>
#include <system_error>

namespace quadrille {
namespace {

// The namespace stands in the first element; a file may begin with a long comment.
constexpr std::size_t looked_at = 65'536;

const char* held_by(const std::filesystem::path& file) {
  std::error_code unknown;
  if (!std::filesystem::is_regular_file(file, unknown)) return nullptr;
  std::ifstream stream(file, std::ios::binary);
  std::string head(looked_at, '\0');
  stream.read(head.data(), static_cast<std::streamsize>(head.size()));
  head.resize(static_cast<std::size_t>(std::max<std::streamsize>(stream.gcount(), 0)));
  if (head.find("urn:quadrille:event:") != std::string::npos) return "an event";
  if (head.find("urn:quadrille:house:") != std::string::npos) return "a house";
  if (head.find("urn:quadrille:palette:") != std::string::npos) return "a palette";
  return nullptr;
}

}  // namespace

std::optional<std::string> would_replace(const std::filesystem::path& event,
                                         std::span<const std::filesystem::path> outputs) {
  for (const auto& output : outputs) {
    std::error_code unknown;
    const bool is_event = !event.empty() && std::filesystem::equivalent(event, output, unknown);
    const char* held = is_event ? "the event itself" : held_by(output);
    if (held != nullptr)
      return output.string() + ": this file holds " + held + ", which would be lost; give the output another name.";
  }
  return std::nullopt;
}

}  // namespace quadrille
