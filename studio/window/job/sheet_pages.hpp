// The pages of any sheet from what the window has worked out. Knows no toolkit.
#pragma once

#include <cstddef>
#include <functional>
#include <memory>
#include <optional>
#include <vector>

#include "studio/sheets/sheet_kinds.hpp"
#include "studio/standing/checklist.hpp"
#include "studio/standing/piece_standing.hpp"
#include "studio/window/job/newest.hpp"
#include "studio/window/job/study.hpp"

namespace quadrille {

/// Makes the same pages as the command line. How the pieces stand takes seconds: it is reckoned when a sheet first asks for
/// it, and once. Not for several threads at a time.
class SheetMaker {
 public:
  explicit SheetMaker(std::shared_ptr<const Study> study) : study_(std::move(study)) {}

  const Study& study() const { return *study_; }
  /// The pages, or nothing where `given_up` became true meanwhile. `told` hears how many pieces are reckoned, of how many;
  /// on several threads.
  std::optional<std::vector<Page>> pages(const SheetKind& kind, const SheetOptions& options, const Stale& given_up,
                                         const std::function<void(std::size_t done, std::size_t of)>& told = {});

 private:
  std::shared_ptr<const Study> study_;
  std::optional<std::vector<PieceStanding>> standing_;
  std::vector<ChecklistLine> checklist_;
};

}  // namespace quadrille
