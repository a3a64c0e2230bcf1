#include "studio/sheets/day_sheet.hpp"

#include <algorithm>
#include <iterator>
#include <utility>

#include "studio/paper/document.hpp"
#include "studio/sheets/day_blocks.hpp"
#include "studio/sheets/day_chart.hpp"

namespace quadrille {

std::vector<Page> day_sheet(const SheetInput& input, const SheetOptions& options) {
  const Event& event = input.event;
  const Setting setting{input, options, options.units.value_or(event.units),
                        options.paper.value_or(usual_paper(event.units))};
  if (options.area && wanted_areas(setting).empty()) return {};
  SheetDocument document{setting, "Day sheet", false};
  const double width = document.content().width;
  std::vector<Block> blocks = times_blocks(setting, width);
  const auto append = [&](std::vector<Block> more) { std::ranges::move(more, std::back_inserter(blocks)); };
  append(contact_blocks(setting, width));
  append(access_blocks(setting, width));
  if (input.plan != nullptr && !input.plan->tasks.empty()) {
    append(chart_blocks_of_day(*input.plan, event, width));
    append(task_blocks(setting, width));
  }
  append(taken_blocks(setting, width));
  add_table_pages(document, blocks, {}, 1, "Day sheet", {"Day sheet", "All areas", "", 1, 1});
  return finished(std::move(document));
}

}  // namespace quadrille
