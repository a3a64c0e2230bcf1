// The verbs of the command line: what each is asked, and the functions that do it, one file each.
#pragma once

#include <filesystem>
#include <iosfwd>
#include <optional>
#include <string>
#include <vector>

#include "studio/model/event.hpp"

namespace quadrille {

enum class Exit : int {
  done = 0,
  problems = 1,   ///< done, but there are findings of weight problem
  usage = 2,      ///< the arguments cannot be meant
  bad_input = 3,  ///< the input could not be read or used
  no_output = 4   ///< the output could not be written
};

/// Where a verb writes, and the program it belongs to.
struct Console {
  std::ostream& out;  ///< data
  std::ostream& err;  ///< messages, one sentence a line
  std::filesystem::path executable;
};

struct DrawRequest {
  std::filesystem::path event, out;
  std::optional<std::string> area;  ///< id or name; none: all
  std::string paper;                ///< a4, letter, a3, tabloid; empty: letter for an event in feet, otherwise a4
  bool letters = true;              ///< slot letters on the balloons
  std::optional<Units> units;       ///< none: the event's own
};
Exit draw(const DrawRequest& request, const Console& console);

struct CountRequest {
  std::filesystem::path event;
  bool json = false;
  std::optional<std::filesystem::path> csv;
};
Exit count(const CountRequest& request, const Console& console);

struct StandRequest {
  std::filesystem::path event;
  bool json = false;
  std::optional<std::string> area;  ///< id or name; none: all
  std::optional<double> gust_m_s;   ///< instead of the forecasts
};
Exit stand(const StandRequest& request, const Console& console);

struct CheckRequest {
  std::filesystem::path event;
  bool json = false;
};
Exit check(const CheckRequest& request, const Console& console);

struct PiecesRequest {
  bool json = false;
  bool try_again = false;  ///< give plugin files that ended the program another chance
};
Exit pieces(const PiecesRequest& request, const Console& console);

struct PalettesRequest {
  std::filesystem::path event;  ///< whose own palettes are listed too; empty: none
  bool json = false;
};
Exit palettes(const PalettesRequest& request, const Console& console);

struct ProveRequest {
  std::filesystem::path plugin;
  bool json = false;
};
/// Runs the conformance suite over one plugin file: done when it passes, problems when it is refused or a check fails.
Exit prove(const ProveRequest& request, const Console& console);

struct TryRequest {
  std::string type;
  std::vector<std::string> values;  ///< "key=value"
  bool json = false;
  std::optional<std::filesystem::path> out;  ///< a drawing
};
Exit try_piece(const TryRequest& request, const Console& console);

}  // namespace quadrille
