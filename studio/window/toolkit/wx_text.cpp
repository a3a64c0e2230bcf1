// wxString::FromUTF8 gives an empty string for a single bad byte; those are replaced first.
#include "studio/window/toolkit/wx_text.hpp"

#include <string_view>

#include "sdk/quoted.hpp"

namespace quadrille {

wxString shown(const std::string& text) {
  const wxString whole = wxString::FromUTF8(text);
  if (!whole.empty() || text.empty()) return whole;
  std::string valid;
  for (std::string_view rest = text; !rest.empty();) {
    const std::size_t length = utf8_length(rest);
    valid += length == 0 ? std::string_view("?") : rest.substr(0, length);
    rest.remove_prefix(length == 0 ? 1 : length);
  }
  return wxString::FromUTF8(valid);
}

std::string text_of(const wxString& text) { return text.utf8_string(); }

std::filesystem::path path_of(const wxString& text) { return text_of(text); }

}  // namespace quadrille
