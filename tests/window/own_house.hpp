// A house file that only this test reads and writes.
#pragma once

#include <cstdlib>
#include <filesystem>

#include "scratch.hpp"
#include "studio/files/house_file.hpp"

namespace quadrille {

/// Is the house of the studio while it lives; there is no file until somebody saves one. Make it before the window, so that
/// it outlives it.
class OwnHouse {
 public:
  OwnHouse() { ::setenv("QUADRILLE_HOUSE", file().c_str(), 1); }
  ~OwnHouse() { ::unsetenv("QUADRILLE_HOUSE"); }
  OwnHouse(const OwnHouse&) = delete;
  OwnHouse& operator=(const OwnHouse&) = delete;
  std::filesystem::path file() const { return folder_ / "own.quadrille-house"; }
  House read() const {
    const auto opened = open_house(file());
    REQUIRE_MESSAGE(opened, opened.error);
    return opened->house;
  }

 private:
  ScratchFolder folder_;
};

}  // namespace quadrille
