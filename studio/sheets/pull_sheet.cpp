#include "studio/sheets/pull_sheet.hpp"

#include <algorithm>
#include <iterator>
#include <utility>

#include "studio/paper/document.hpp"
#include "studio/sheets/pull_blocks.hpp"

namespace quadrille {

std::vector<Page> pull_sheet(const SheetInput& input, const SheetOptions& options) {
  const Event& event = input.event;
  const Setting setting{input, options, options.units.value_or(event.units),
                        options.paper.value_or(usual_paper(event.units))};
  if (options.area && wanted_areas(setting).empty()) return {};
  SheetDocument document{setting, "Pull list", false};
  const std::size_t columns = columns_for(document, 80);
  const double width = columns_in(document.content(), columns).front().width;
  std::vector<Block> blocks = load_blocks(setting, width);
  const auto append = [&](std::vector<Block> more) { std::ranges::move(more, std::back_inserter(blocks)); };
  append(home_blocks(setting, width));
  append(balloon_bag_blocks(setting, width));
  append(place_blocks(setting, width));
  append(tool_blocks(setting, width));
  add_table_pages(document, blocks, {}, columns, "Pull list", {"Pull list", "All areas", "", 1, 1});
  return finished(std::move(document));
}

}  // namespace quadrille
