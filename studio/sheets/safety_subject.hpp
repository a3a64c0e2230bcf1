// What a safety sheet is about: the pieces of one area with their feet, lines and answers.
#pragma once

#include <cstddef>
#include <functional>
#include <optional>
#include <string>
#include <vector>

#include "studio/making/anchored_line.hpp"
#include "studio/making/feet.hpp"
#include "studio/paper/area_layout.hpp"
#include "studio/standing/piece_standing.hpp"

namespace quadrille {

/// A line, and where the answer has its force.
struct SafetyLine {
  AnchoredLine laid;
  std::string label;                  ///< "L2", or "3-L2" where the area has several pieces
  std::optional<double> pull_n;       ///< the greatest in the gust asked about, from any side; nothing where not known
  std::optional<double> without_m_s;  ///< the gust that the piece bears when it is lost
};

/// A piece that is built and shown.
struct SafetyPiece {
  const PlacedPiece* placed = nullptr;
  const Piece* piece = nullptr;
  std::size_t number = 0;                 ///< as the elevation numbers it
  const PieceStanding* answer = nullptr;  ///< null where none was reckoned
  std::vector<NamedSupport> supports;
  std::vector<SafetyLine> lines;
  std::string name() const { return placed->name.empty() ? "Unnamed piece" : placed->name; }
};

struct SafetySubject {
  const Area* area = nullptr;
  std::vector<SafetyPiece> pieces;
  std::vector<std::string> left_out;  ///< sentences about pieces that cannot be looked at
  bool outdoors() const { return area->site.surroundings == Surroundings::outdoors; }
  bool has_lines() const;
  bool has_pictures() const { return outdoors() || has_lines(); }
  std::string name() const { return area->name.empty() ? "Unnamed area" : area->name; }
};

/// "2  Gate arch", "1–6  Column 1 to 6": with the numbers that the pictures have, where the area has several pieces.
std::string numbered_names(const std::vector<const SafetyPiece*>& pieces, const SafetySubject& subject);

/// The pieces in their order, neighbours together of which the same is said and whose names differ in number alone.
std::vector<std::vector<const SafetyPiece*>> told_together(const SafetySubject& subject,
                                                           const std::function<std::string(const SafetyPiece&)>& said);

/// "26 N", or "slack" for what is less than is printed.
std::string print_pull(double newtons, Units units);

/// Borrows from the setting's input.
SafetySubject safety_subject(const Area& area, const Setting& setting);

}  // namespace quadrille
