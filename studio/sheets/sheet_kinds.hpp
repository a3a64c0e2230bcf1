// Every kind of sheet by its name, so that the command line, the window and printing offer the same ones.
#pragma once

#include <optional>
#include <span>
#include <string_view>
#include <vector>

#include "studio/paper/sheet.hpp"

namespace quadrille {

struct SheetKind {
  std::string_view key;    ///< what one types: "build"
  std::string_view title;  ///< what one reads: "Build sheet"
  std::string_view what;   ///< what it shows, as part of a sentence: "what each piece is made from"
  std::vector<Page> (*pages)(const SheetInput& input, const SheetOptions& options);
  bool needs_standing = false;  ///< reads SheetInput's standing and checklist, which take seconds to reckon
};

/// All kinds, in the order in which they lie in one document.
std::span<const SheetKind> sheet_kinds();

/// The kind of that key; null where there is none.
const SheetKind* find_sheet_kind(std::string_view key);

/// The pages of a kind. Where the kind reads how the pieces stand and `input` does not have it, that is reckoned first,
/// which takes seconds; it is the caller's to do that where nobody waits.
std::vector<Page> pages_of(const SheetKind& kind, SheetInput input, const SheetOptions& options);

}  // namespace quadrille
