// Holds sources against the level table: a function over texts, so that it can be tried on made-up houses.
#pragma once

#include <algorithm>
#include <map>
#include <set>
#include <string>
#include <string_view>
#include <vector>

#include "includes.hpp"
#include "layer_table.hpp"

namespace layers {

struct File {
  std::string path;  ///< from the repository root
  std::string text;
};

inline std::string folder_of(std::string_view path) {
  const auto slash = path.rfind('/');
  return slash == std::string_view::npos ? "" : std::string(path.substr(0, slash));
}

/// The row for exactly this folder, or null.
inline const Layer* find_layer(const std::vector<Layer>& layers, std::string_view folder) {
  for (const Layer& layer : layers) {
    if (layer.folder == folder) return &layer;
    if (layer.folder.ends_with("/*") && folder_of(folder) + "/*" == layer.folder) return &layer;
  }
  return nullptr;
}

/// Rows that contradict each other: what a folder may include is to have a row, at a lower level.
inline std::vector<std::string> faults_of_table(const std::vector<Layer>& layers) {
  std::vector<std::string> faults;
  std::set<std::string> seen;
  for (const Layer& layer : layers) {
    if (!seen.insert(layer.folder).second) faults.push_back(layer.folder + " has two rows");
    for (const std::string& below : layer.may_include) {
      const Layer* other = find_layer(layers, below);
      if (!other)
        faults.push_back(layer.folder + " may include " + below + ", which has no row");
      else if (!other->level || (layer.level && *other->level >= *layer.level))
        faults.push_back(layer.folder + " may include " + below + ", which is at no lower level");
    }
  }
  return faults;
}

inline bool holds(const std::vector<std::string>& list, std::string_view word) {
  return std::ranges::find(list, word) != list.end();
}

/// What is wrong with one include of a file in the folder `home` with the row `layer`; empty where nothing is.
inline std::string fault_of_include(const std::vector<Layer>& layers, const Layer& layer, const std::string& home,
                                    const Include& include, const std::set<std::string>& paths) {
  if (include.name.empty()) return "an include without a plain name";
  if (!include.quoted) {
    if (is_standard(include.name)) return {};
    const std::string library = library_of(include.name);
    if (library.empty()) return "<" + include.name + "> belongs to no library that the layer test knows";
    return holds(layer.libraries, library) ? "" : "the library " + library + " is not for " + home;
  }
  if (!paths.contains(include.name)) return "\"" + include.name + "\" is not written from the repository root";
  const std::string target = folder_of(include.name);
  if (target == home) return {};
  const Layer* other = find_layer(layers, target);
  if (!other) return "\"" + include.name + "\" lies in a folder without a row";
  if (holds(layer.may_include, other->folder)) return {};
  const bool upward = !other->level || (layer.level && *other->level > *layer.level);
  const bool sideways = other == &layer || (layer.level && other->level == layer.level);
  return (sideways ? "sideways"
          : upward ? "upward"
                   : "not allowed") +
         (": " + home) + " includes \"" + include.name + "\"";
}

/// Everything by which `files` depart from the table: one sentence each, beginning with path and line.
inline std::vector<std::string> faults_of_house(const std::vector<Layer>& layers, const std::vector<File>& files) {
  std::vector<std::string> faults = faults_of_table(layers);
  std::set<std::string> paths, folders, rows_used;
  for (const File& file : files) paths.insert(file.path);
  for (const File& file : files) {
    const std::string home = folder_of(file.path);
    const Layer* layer = find_layer(layers, home);
    if (!layer) {
      if (folders.insert(home).second) faults.push_back(home + " has no row in the level table");
      continue;
    }
    rows_used.insert(layer->folder);
    for (const Include& include : includes_of(file.text)) {
      const std::string fault = fault_of_include(layers, *layer, home, include, paths);
      if (!fault.empty()) faults.push_back(file.path + ":" + std::to_string(include.line) + ": " + fault);
    }
  }
  for (const Layer& layer : layers)
    if (!rows_used.contains(layer.folder)) faults.push_back("the row " + layer.folder + " has no folder");
  return faults;
}

/// Test files that no target builds. `files` holds all *_test.cpp and CMakeLists.txt below tests.
inline std::vector<std::string> faults_of_tests(const std::vector<File>& files) {
  std::map<std::string, bool> built;
  for (const File& file : files)
    if (file.path.ends_with("/CMakeLists.txt"))
      for (const auto line : split(file.text, '\n'))
        if (trimmed(line).starts_with("quadrille_add_test(")) built[folder_of(file.path)] = true;
  std::vector<std::string> faults;
  for (const File& file : files)
    if (file.path.ends_with("_test.cpp") && !built[folder_of(file.path)])
      faults.push_back(file.path + ": no quadrille_add_test in its folder builds it");
  return faults;
}

/// Build files other than the window's that look for wxWidgets.
inline std::vector<std::string> faults_of_build_files(const std::vector<File>& files) {
  std::vector<std::string> faults;
  for (const File& file : files) {
    if (!file.path.ends_with("CMakeLists.txt") || file.path == "studio/window/CMakeLists.txt") continue;
    if (file.text.find("find_package(wxWidgets") != std::string::npos)
      faults.push_back(file.path + ": wxWidgets is looked for in studio/window/CMakeLists.txt alone");
  }
  return faults;
}

}  // namespace layers
