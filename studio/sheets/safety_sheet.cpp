#include "studio/sheets/safety_sheet.hpp"

#include <algorithm>
#include <array>
#include <cstddef>
#include <iterator>
#include <utility>

#include "studio/build_sheet/build_rows.hpp"
#include "studio/paper/document.hpp"
#include "studio/sheets/safety_blocks.hpp"
#include "studio/sheets/safety_picture.hpp"
#include "studio/sheets/safety_view.hpp"

namespace quadrille {
namespace {

constexpr const char* every_area = "Safety: every area";

double height_of(const std::vector<Block>& blocks) {
  double height = 0;
  for (const Block& block : blocks) {
    height += block.gap;
    for (const auto* rows : {&block.head, &block.rows})
      for (const Row& row : *rows) height += row.height;
  }
  return height;
}

std::size_t pages_for(const std::vector<Block>& blocks, const Rect& content) {
  std::size_t pages = 0;
  for (FlowPlace at; at.block < blocks.size(); ++pages) at = flow(blocks, at, std::array{content}, nullptr);
  return pages;
}

/// Readings and signature, with as many lines for readings as the last page has room for.
std::vector<Block> closing(const std::vector<Block>& before, const SafetySubject& subject, const Rect& content) {
  constexpr int usual_readings = 5, most_readings = 18;
  std::size_t usual_pages = 0;
  std::vector<Block> best;
  for (int readings = usual_readings; readings <= most_readings; ++readings) {
    std::vector<Block> last = signature_blocks(subject, content.width, readings), all = before;
    all.insert(all.end(), last.begin(), last.end());
    const std::size_t pages = pages_for(all, content);
    if (!best.empty() && pages > usual_pages) break;
    best = std::move(last), usual_pages = pages;
    if (!subject.outdoors()) break;
  }
  return best;
}

std::vector<Block> blocks_of(const SafetySubject& subject, const Setting& setting, const Rect& content, bool alone) {
  std::vector<Block> blocks = open_blocks(subject, setting, content.width);
  const auto append = [&](std::vector<Block> more) { std::ranges::move(more, std::back_inserter(blocks)); };
  append(level_blocks(subject, setting, content.width));
  append(watch_blocks(subject, content.width));
  std::vector<Block> lists = securing_blocks(subject, setting, content.width), pictures;
  std::ranges::move(outlet_blocks(subject, setting, content.width), std::back_inserter(lists));
  if (subject.has_pictures())
    pictures = safety_pictures(subject, setting, content.width, content.height, content.height - height_of(blocks));
  // Where the first picture needs a page of its own, the lists that fit fill the one before it.
  double left = content.height - height_of(blocks);
  std::vector<Block> after;
  for (Block& block : lists) {
    const bool before = !pictures.empty() && height_of({pictures.front()}) > left && height_of({block}) <= left;
    if (before) left -= height_of({block});
    (before ? blocks : after).push_back(std::move(block));
  }
  append(std::move(pictures));
  append(std::move(after));
  append(check_blocks(subject, setting, content.width));
  if (alone) append(caution_check_blocks(setting, content.width));
  append(closing(blocks, subject, content));
  return blocks;
}

}  // namespace

std::vector<Page> safety_sheet(const SheetInput& input, const SheetOptions& options) {
  const Event& event = input.event;
  const Setting setting{input, options, options.units.value_or(event.units),
                        options.paper.value_or(usual_paper(event.units))};
  std::vector<const Area*> areas = wanted_areas(setting);
  if (options.area && areas.empty()) return {};
  std::ranges::stable_partition(areas,
                                [](const Area* area) { return area->site.surroundings == Surroundings::outdoors; });
  std::vector<SafetySubject> subjects;
  for (const Area* area : areas) subjects.push_back(safety_subject(*area, setting));
  SheetDocument document{setting, "Safety", false};
  document.landscape = has_wide_piece(subjects, document.content().width);
  for (const SafetySubject& subject : subjects) {
    const std::string heading = "Safety: " + subject.name();
    add_table_pages(document, blocks_of(subject, setting, document.content(), subjects.size() == 1), {}, 1, heading,
                    {heading, subject.name(), "", 1, 1});
  }
  if (subjects.size() > 1)
    if (const auto blocks = caution_check_blocks(setting, document.content().width); !blocks.empty())
      add_table_pages(document, blocks, {}, 1, every_area, {every_area, "All areas", "", 1, 1});
  for (SheetDraft& draft : document.drafts)
    if (std::ranges::count(draft.page.marks, Part::scale_bar, &Mark::part) > 0) draft.text.scale = "as stated";
  if (subjects.empty()) {
    Block block = table_block("Safety", {}, document.content().width);
    block.rows.push_back(text_row("This event has no areas yet.", document.content().width));
    add_table_pages(document, {block}, {}, 1, "Safety", {"Safety", "All areas", "", 1, 1});
  }
  return finished(std::move(document));
}

}  // namespace quadrille
