#include "studio/window/job/sheet_pages.hpp"

#include "studio/standing/standing_watch.hpp"

namespace quadrille {

std::optional<std::vector<Page>> SheetMaker::pages(const SheetKind& kind, const SheetOptions& options,
                                                   const Stale& given_up,
                                                   const std::function<void(std::size_t, std::size_t)>& told) {
  const Study& study = *study_;
  if (kind.needs_standing && !standing_) {
    auto standing = stand_all_watched(study.event, study.built, {}, {}, {given_up, told});
    if (!standing) return std::nullopt;
    checklist_ = checklist(study.event, study.built, *standing);
    standing_ = std::move(standing);
  }
  SheetInput input{study.event, study.built, study.order.count, study.palettes->palettes};
  if (study.house) input.house = &study.house->house;
  input.supplies = &study.order.supplies, input.air = &study.order.air, input.power = &study.order.power;
  input.plan = &study.plan;
  if (standing_) input.standing = &*standing_, input.checklist = &checklist_;
  auto pages = pages_of(kind, input, options);
  if (given_up && given_up()) return std::nullopt;
  return pages;
}

}  // namespace quadrille
