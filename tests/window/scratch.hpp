// A folder of its own for a test, and an invented event in it.
#pragma once

#include <doctest/doctest.h>
#include <unistd.h>

#include <cstdlib>
#include <filesystem>
#include <fstream>
#include <iterator>
#include <string>
#include <string_view>

#include "studio/files/event_file.hpp"
#include "tests/places.hpp"

namespace quadrille {

class ScratchFolder {
 public:
  ScratchFolder() {
    std::string name = (std::filesystem::temp_directory_path() / "quadrille-window-XXXXXX").string();
    path_ = ::mkdtemp(name.data());
  }
  ~ScratchFolder() {
    std::error_code ignored;
    std::filesystem::remove_all(path_, ignored);
  }
  ScratchFolder(const ScratchFolder&) = delete;
  ScratchFolder& operator=(const ScratchFolder&) = delete;
  std::filesystem::path operator/(std::string_view name) const { return path_ / name; }

 private:
  std::filesystem::path path_;
};

inline std::string contents(const std::filesystem::path& path) {
  std::ifstream file(path, std::ios::binary);
  return {std::istreambuf_iterator<char>(file), {}};
}

inline void put(const std::filesystem::path& path, std::string_view bytes) {
  std::ofstream(path, std::ios::binary) << bytes;
}

/// The program whose plugins and palettes are used; it need not run.
inline std::filesystem::path studio_program() {
  return build_place("bin/quadrille-studio");
}

inline PlacedPiece half_circle(const std::string& id, const std::string& name, double x_m, double span_m) {
  PlacedPiece piece;
  piece.id = id, piece.name = name, piece.type = "arch", piece.x_m = x_m;
  piece.values = {{"frame", Value::of_text(Kind::choice, "half-circle")},
                  {"span", Value::of_number(Kind::length, span_m)},
                  {"slots", Value::of_number(Kind::slots, 2)}};
  piece.colours = {{"house", "white"}, {"house", "coral"}};
  return piece;
}

/// Two areas: a porch with two arches, and a hall with one of a type that nobody has.
inline Event harvest_event() {
  Area porch, hall;
  porch.id = "a1", porch.name = "Porch";
  porch.pieces = {half_circle("p1", "Door arch", 2.0, 2.4), half_circle("p2", "Side arch", 6.0, 2.0)};
  hall.id = "a2", hall.name = "Hall";
  PlacedPiece strange;
  strange.id = "p3", strange.name = "Tower", strange.type = "no-such-type", strange.x_m = 1;
  LastBuilt last;
  last.width_m = 1, last.height_m = 2, last.depth_m = 1, last.clusters = 9;
  last.counts = {{11, 0.23, 0, 36}};
  strange.last_built = last;
  strange.colours = {{"house", "coral"}};
  hall.pieces = {strange};
  Event event;
  event.title = "Harvest supper";
  event.units = Units::metric;
  event.palettes = {"house"};
  event.areas = {porch, hall};
  return event;
}

/// Saves the event; `name` may be any UTF-8.
inline std::filesystem::path put_event(const ScratchFolder& folder, const Event& event = harvest_event(),
                                       std::string_view name = "harvest.quadrille") {
  const auto file = folder / name;
  const auto fault = save_event(file, event);
  REQUIRE_MESSAGE(!fault, fault.value_or(""));
  return file;
}

}  // namespace quadrille
