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
  no_output = 4,  ///< the output could not be written
  broken = 5      ///< the program itself failed
};

/// Where a verb writes, and the program it belongs to.
struct Console {
  std::ostream& out;  ///< data
  std::ostream& err;  ///< messages, one sentence a line
  std::filesystem::path executable;
};

struct DrawRequest {
  std::filesystem::path event, out;
  std::filesystem::path house;      ///< whose stock and prices count; empty = the one that serves; so in the others
  std::optional<std::string> area;  ///< id or name; none: all
  std::string sheet = "elevation";  ///< which one: see `draw --help`
  std::string paper;                ///< a4, letter, a3, tabloid; empty: letter for an event in feet, otherwise a4
  bool letters = true;              ///< slot letters on the balloons
  std::optional<Units> units;       ///< none: the event's own
};
Exit draw(const DrawRequest& request, const Console& console);

/// Files that lists are written to, instead of being printed.
struct TableOutputs {
  std::optional<std::filesystem::path> csv, xlsx;
};

struct CountRequest {
  std::filesystem::path event, house;
  bool json = false;
  TableOutputs tables;
};
Exit count(const CountRequest& request, const Console& console);

struct PlanRequest {
  std::filesystem::path event, house;
  bool json = false;
  TableOutputs tables;
  std::optional<int> crew;  ///< 1 to 20; none: the event's, else the house's
  bool prepare = false;     ///< clusters are made the day before
};
Exit plan(const PlanRequest& request, const Console& console);

struct QuoteRequest {
  std::filesystem::path event, house;
  bool json = false;
  TableOutputs tables;
  std::string date;    ///< ISO 8601: on which an issued quote is looked at, or it is issued; empty = none is said
  bool issue = false;  ///< freeze it in the event
  std::string number;
  std::filesystem::path out;  ///< where the event with the issued quote goes; empty = where it was
};
Exit quote(const QuoteRequest& request, const Console& console);

struct StandRequest {
  std::filesystem::path event;
  bool json = false;
  std::optional<std::string> area;  ///< id or name; none: all
  std::optional<double> gust_m_s;   ///< instead of the forecasts
  bool gust_is_bare = false;        ///< it was given without a unit
};
Exit stand(const StandRequest& request, const Console& console);

struct CheckRequest {
  std::filesystem::path event, house;
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
  std::filesystem::path import;  ///< a .gpl palette to be made one of ours instead, at `out`; empty: none
  std::filesystem::path out;
  std::string currency = "USD";  ///< of the imported palette
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
