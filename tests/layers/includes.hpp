// Finds the #include lines of a source file, and says which library a header belongs to.
#pragma once

#include <cstddef>
#include <string>
#include <string_view>
#include <utility>
#include <vector>

#include "layer_table.hpp"

namespace layers {

struct Include {
  std::size_t line = 0;  ///< from 1
  std::string name;      ///< between the quotes or brackets; empty where there are none
  bool quoted = false;
};

inline std::vector<Include> includes_of(std::string_view source) {
  std::vector<Include> includes;
  std::size_t number = 0;
  for (const auto line : split(source, '\n')) {
    ++number;
    std::string text = trimmed(line);
    if (!text.starts_with('#')) continue;
    text = trimmed(std::string_view(text).substr(1));
    if (!text.starts_with("include")) continue;
    text = trimmed(std::string_view(text).substr(7));
    Include include{number, "", text.starts_with('"')};
    const auto end = text.find(include.quoted ? '"' : '>', 1);
    if ((include.quoted || text.starts_with('<')) && end != std::string::npos) include.name = text.substr(1, end - 1);
    includes.push_back(include);
  }
  return includes;
}

/// True for headers of the C++ and C standard libraries.
inline bool is_standard(std::string_view header) {
  if (header.find_first_not_of("abcdefghijklmnopqrstuvwxyz_0123456789") == std::string_view::npos) return true;
  for (const std::string_view c_header :
       {"assert.h", "ctype.h",  "errno.h",    "float.h",  "inttypes.h",  "limits.h",  "locale.h", "math.h",
        "setjmp.h", "signal.h", "stdalign.h", "stdarg.h", "stdatomic.h", "stdbool.h", "stddef.h", "stdint.h",
        "stdio.h",  "stdlib.h", "string.h",   "time.h",   "uchar.h",     "wchar.h"})
    if (header == c_header) return true;
  return false;
}

/// The library, as the level table names it, that a header in <> belongs to; empty where none is known.
inline std::string library_of(std::string_view header) {
  static constexpr std::pair<std::string_view, std::string_view> beginnings[] = {{"wx/", "wxWidgets"},
                                                                                 {"cairo", "Cairo"},
                                                                                 {"pango/", "Pango"},
                                                                                 {"gdk-pixbuf/", "gdk-pixbuf"},
                                                                                 {"glib", "GLib"},
                                                                                 {"gio/", "GLib"},
                                                                                 {"gobject/", "GLib"},
                                                                                 {"gtk/", "GTK"},
                                                                                 {"gdk/", "GTK"},
                                                                                 {"atk/", "GTK"},
                                                                                 {"tinyxml2", "tinyxml2"},
                                                                                 {"boost/dll", "Boost.DLL"},
                                                                                 {"boost/math/", "Boost.Math"},
                                                                                 {"CLI/", "CLI11"},
                                                                                 {"nlohmann/", "nlohmann-json"},
                                                                                 {"xlsxwriter", "libxlsxwriter"},
                                                                                 {"Eigen/", "Eigen"},
                                                                                 {"eigen3/", "Eigen"},
                                                                                 {"unsupported/Eigen/", "Eigen"},
                                                                                 {"sys/", "POSIX"},
                                                                                 {"unistd.h", "POSIX"},
                                                                                 {"fcntl.h", "POSIX"},
                                                                                 {"dlfcn.h", "POSIX"},
                                                                                 {"link.h", "POSIX"},
                                                                                 {"elf.h", "POSIX"},
                                                                                 {"dirent.h", "POSIX"},
                                                                                 {"pthread.h", "POSIX"},
                                                                                 {"pwd.h", "POSIX"},
                                                                                 {"langinfo.h", "POSIX"},
                                                                                 {"poll.h", "POSIX"},
                                                                                 {"spawn.h", "POSIX"},
                                                                                 {"xlsxwriter", "libxlsxwriter"},
                                                                                 {"fmt/", "fmt"},
                                                                                 {"nanoflann", "nanoflann"}};
  for (const auto& [beginning, library] : beginnings)
    if (header.starts_with(beginning)) return std::string(library);
  return {};
}

}  // namespace layers
