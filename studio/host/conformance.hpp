// What every piece type must hold to, ours or a stranger's: a list of named checks, run over one type.
#pragma once

#include <filesystem>
#include <optional>
#include <string>
#include <vector>

#include "sdk/built.hpp"
#include "studio/host/piece_type.hpp"

namespace quadrille {

struct Check {
  std::string name;  ///< stable, e.g. "limits"
  bool passed = true;
  std::string sentence;  ///< what was found wrong, or what was looked at
};

struct TypeProof {
  std::string type;  ///< id
  std::vector<Check> checks;
  bool passed() const;
};

struct ProofReport {
  std::filesystem::path file;
  std::vector<RefusedFile> refused;  ///< by the gate: the file, or some of its types
  std::vector<TypeProof> types;
  bool passed() const;  ///< nothing refused and every check of every type passed
};

#ifdef __SANITIZE_ADDRESS__
inline constexpr double slowed_by = 20;  ///< what the sanitizers may cost
#else
inline constexpr double slowed_by = 1;
#endif

/// Processor time of the building thread that one build may take, s: what else the machine does is not counted.
struct TimeBudget {
  double at_defaults = 2 * slowed_by, at_limits = 10 * slowed_by;
};

/// The checks, in this order:
///   table          every text a person reads is there; each default is accepted by its own parameter
///   defaults       builds at its defaults
///   limits         at each end of each hard range, the rest at defaults, it builds, or refuses and blames that parameter
///                  or one that its sentence names
///   choices        with each choice likewise
///   deterministic  two builds, one more after all others, and two at once in two threads push the same bytes
///   finite         measures and the hidden share are finite and within their ranges
///   overlap        at the defaults and with each choice no two balloons overlap deeper than 30 % of the smaller one
///   totals         clusters are numbered from 1 without a gap, each has balloons with different places and lies on the
///                  spine; the spine's length is that of its points; the facts "balloons" and "clusters" are the counts;
///                  anchoring rules have different keys; messages blame parameters that there are
///   time           the default build and each limit keep within `budget`
TypeProof prove(const PieceType& type, const TimeBudget& budget = {});

/// Loads exactly this file through the gate, without a crash marker, and proves its types.
ProofReport prove_file(const std::filesystem::path& file, const TimeBudget& budget = {});

/// What is wrong with the totals of a built piece of `type`, as one sentence; empty where they agree with its geometry.
std::string fault_of_totals(const PieceType& type, const Piece& piece);

}  // namespace quadrille
