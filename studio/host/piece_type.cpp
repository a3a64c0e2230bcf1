#include "studio/host/piece_type.hpp"

#include <algorithm>

namespace quadrille {

const Parameter* PieceType::find(std::string_view key) const { return find_parameter(parameters, key); }

const PieceType* PieceTypes::find(std::string_view id) const {
  const auto found = std::ranges::find(types, id, &PieceType::id);
  return found == types.end() ? nullptr : &*found;
}

ParameterTables PieceTypes::tables() const {
  ParameterTables all;
  for (const PieceType& type : types) all.emplace(type.id, &type.parameters);
  return all;
}

std::string_view key_of(RefusalReason reason) {
  switch (reason) {
    case RefusalReason::not_a_library:
      return "not-a-library";
    case RefusalReason::no_symbol:
      return "no-symbol";
    case RefusalReason::cannot_load:
      return "cannot-load";
    case RefusalReason::newer_major:
      return "newer-major";
    case RefusalReason::other_major:
      return "other-major";
    case RefusalReason::newer_minor:
      return "newer-minor";
    case RefusalReason::struct_too_small:
      return "struct-too-small";
    case RefusalReason::bad_table:
      return "bad-table";
    case RefusalReason::duplicate_id:
      return "duplicate-id";
    case RefusalReason::build_throws:
      return "build-throws";
    case RefusalReason::build_not_finite:
      return "build-not-finite";
    case RefusalReason::build_too_large:
      return "build-too-large";
    case RefusalReason::build_broken:
      return "build-broken";
    case RefusalReason::crashed_before:
      return "crashed-before";
  }
  return "unknown";
}

}  // namespace quadrille
