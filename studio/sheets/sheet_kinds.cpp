#include "studio/sheets/sheet_kinds.hpp"

#include <algorithm>
#include <array>
#include <utility>

#include "studio/build_sheet/build_sheet.hpp"
#include "studio/sheets/client_sheet.hpp"
#include "studio/sheets/day_sheet.hpp"
#include "studio/sheets/pull_sheet.hpp"
#include "studio/sheets/safety_sheet.hpp"
#include "studio/standing/checklist.hpp"
#include "studio/standing/piece_standing.hpp"

namespace quadrille {
namespace {

/// Everything that is handed out. The elevation is not among it: its drawings are on the client sheet, its lists on the
/// pull list.
std::vector<Page> all_sheets(const SheetInput& input, const SheetOptions& options) {
  std::vector<Page> all;
  for (const SheetKind& kind : sheet_kinds()) {
    if (kind.key == "all" || kind.key == "elevation") continue;
    for (Page& page : kind.pages(input, options)) {
      page.sheet = kind.title;
      all.push_back(std::move(page));
    }
  }
  return all;
}

}  // namespace

std::span<const SheetKind> sheet_kinds() {
  static constexpr std::array kinds{
      SheetKind{"elevation", "Elevation", "the areas to scale", elevation_sheet},
      SheetKind{"client", "Client sheet", "what the client gets", client_sheet, true},
      SheetKind{"build", "Build sheet", "what each piece is made from", build_sheet},
      SheetKind{"pull", "Pull list", "what goes into the vehicle", pull_sheet},
      SheetKind{"day", "Day sheet", "who does what when", day_sheet},
      SheetKind{"safety", "Safety sheet", "when it comes down and what to see to", safety_sheet, true},
      SheetKind{"all", "All sheets", "all of these but the elevation, in one document", all_sheets, true},
  };
  return kinds;
}

const SheetKind* find_sheet_kind(std::string_view key) {
  const auto kinds = sheet_kinds();
  const auto kind = std::ranges::find(kinds, key, &SheetKind::key);
  return kind == kinds.end() ? nullptr : &*kind;
}

std::vector<Page> pages_of(const SheetKind& kind, SheetInput input, const SheetOptions& options) {
  if (!kind.needs_standing || input.standing != nullptr) return kind.pages(input, options);
  const std::vector<PieceStanding> standing = stand_all(input.event, input.built);
  const std::vector<ChecklistLine> lines = checklist(input.event, input.built, standing);
  input.standing = &standing, input.checklist = &lines;
  return kind.pages(input, options);
}

}  // namespace quadrille
