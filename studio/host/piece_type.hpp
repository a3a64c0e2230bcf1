// A piece type that passed the gate, as owned values; and the plugin files (or single types) that did not, with
// reasons.
#pragma once

#include <cstdint>
#include <filesystem>
#include <optional>
#include <string>
#include <string_view>
#include <vector>

#include "sdk/abi.h"
#include "sdk/value.hpp"
#include "studio/model/parameter.hpp"

namespace quadrille {

struct PieceType {
  std::string id, name, description;
  std::string plugin_id, plugin_version;
  std::filesystem::path file;
  ParameterTable parameters;
  /// The plugin's own function; the library stays loaded for ever.
  std::int32_t (*build)(const quadrille_value*, std::uint32_t, const quadrille_sink*) = nullptr;

  /// The parameter that bears `key` now or bore it once; null where there is none.
  const Parameter* find(std::string_view key) const;
};

/// Why a plugin file was not taken.
enum class RefusalReason {
  not_a_library,     ///< no ELF file, or a damaged one
  no_symbol,         ///< does not export quadrille_pieces_v1
  cannot_load,       ///< the system refused it, e.g. a missing library
  newer_major,       ///< made for a newer major version of the contract
  other_major,       ///< made for an older major version of the contract
  newer_minor,       ///< made for a newer minor version than this studio knows
  struct_too_small,  ///< its table is shorter than the contract asks
  bad_table,         ///< a parameter table that contradicts itself, or missing text
  duplicate_id,      ///< another plugin found earlier has a piece type of this id
  build_throws,      ///< its first build threw something, or said that it failed inside (status internal)
  build_not_finite,  ///< its first build pushed a number that is not finite
  build_too_large,   ///< its first build pushed more than the studio takes
  build_broken,      ///< its first build failed otherwise at its own defaults
  crashed_before     ///< it ended the program at its last load or first build
};

/// Stable key of a reason for programs, e.g. "newer-major".
std::string_view key_of(RefusalReason reason);

struct RefusedFile {
  std::filesystem::path file;
  RefusalReason reason = RefusalReason::not_a_library;
  std::string sentence;
  std::string type;  ///< id of the one piece type that was refused; empty: the whole file
};

struct PieceTypes {
  std::vector<PieceType> types;  ///< in the order found
  std::vector<RefusedFile> refused;

  const PieceType* find(std::string_view id) const;
  /// Those of all types. It lives as long as this is not changed.
  ParameterTables tables() const;
};

}  // namespace quadrille
