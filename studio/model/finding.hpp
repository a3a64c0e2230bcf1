// One thing the program has to say, as a value; text for people, code and place for programs.
#pragma once

#include <optional>
#include <string>
#include <vector>

#include "sdk/value.hpp"

namespace quadrille {

/// `problem`: the event cannot be carried out as it stands; the command line then ends with status 1.
enum class Weight { note, warning, problem };

/// One value of a piece, set anew.
struct ValueChange {
  std::string piece;  ///< id
  std::string key;    ///< of the parameter
  Value value;
  bool operator==(const ValueChange&) const = default;
};

struct Finding {
  Weight weight = Weight::note;
  std::string code;    ///< stable, words joined by '-', e.g. "frame-shows"
  std::string area;    ///< id, or empty
  std::string piece;   ///< id, or empty
  std::string key;     ///< the parameter or field to blame, or empty
  std::string text;    ///< what is so, without the names of area and piece: see finding_words.hpp
  std::string remedy;  ///< what would mend it, or empty
  /// The one change that is known for certain to mend just this, so that a click can make it.
  std::optional<ValueChange> change = std::nullopt;
  bool operator==(const Finding&) const = default;
};

using Findings = std::vector<Finding>;

}  // namespace quadrille
