#include "studio/build_sheet/build_sheet.hpp"

#include <algorithm>
#include <iterator>
#include <map>
#include <span>
#include <string>
#include <utility>

#include "studio/build_sheet/build_chart.hpp"
#include "studio/build_sheet/build_layout.hpp"
#include "studio/build_sheet/build_picture.hpp"
#include "studio/build_sheet/build_rows.hpp"
#include "studio/build_sheet/build_subject.hpp"
#include "studio/build_sheet/build_tables.hpp"
#include "studio/drawing/scale.hpp"
#include "studio/paper/document.hpp"
#include "studio/paper/page_frame.hpp"
#include "studio/paper/size_gauge.hpp"
#include "studio/paper/table_rows.hpp"

namespace quadrille {
namespace {

/// A page whose title block is still to come, when the number of sheets is known.
struct BuildDraft {
  Page page;
  FrameText text;
};

void append(std::vector<Block>& blocks, std::vector<Block> more) {
  std::move(more.begin(), more.end(), std::back_inserter(blocks));
}

/// All lists of a subject for columns of this width [mm], then how `mended` are mended: if it is the subject alone, before
/// its stretches. How many blocks and rows there are does not depend on the width.
std::vector<Block> blocks_of(const BuildSubject& subject, std::span<const BuildSubject> mended, const Setting& setting,
                             double pile_height, double width) {
  std::vector<Block> blocks{pieces_block(subject, setting, width)};
  append(blocks, frame_blocks(subject, setting, width));
  append(blocks, caution_blocks(subject, setting, width));
  append(blocks, part_blocks(subject, setting, width));
  blocks.push_back(sizes_block(subject, setting, width));
  append(blocks, chart_blocks(subject, setting, width));
  append(blocks, loose_blocks(subject, setting, width));
  append(blocks, running_mark_blocks(subject, setting, width));
  if (mended.size() == 1) blocks.push_back(mending_block(mended, setting.units, width));
  append(blocks, stretch_blocks(subject, setting, width, pile_height));
  if (mended.size() > 1) blocks.push_back(mending_block(mended, setting.units, width));
  return blocks;
}

/// "Gate, Hall stage": the areas of the pieces, each once.
std::string areas_of(const BuildSubject& subject) {
  std::string text;
  const Area* last = nullptr;
  for (const BuildPiece& piece : subject.pieces) {
    if (piece.area == last) continue;
    last = piece.area;
    text += (text.empty() ? "" : ", ") + (last->name.empty() ? std::string("Unnamed area") : last->name);
  }
  return text;
}

std::string scales_of(const BuildPage& page, Units units) {
  std::vector<std::string> scales;
  for (const auto* pictures : {&page.frame, &page.clusters})
    for (const BuildPicture& picture : *pictures) scales.push_back(print_scale(picture.scale, units));
  if (scales.empty()) return "";
  return std::ranges::count(scales, scales.front()) == std::ssize(scales) ? scales.front() : "as stated";
}

/// The scale in the title block of a page with these lists on it from `first` on, whose pictures are to `scale`: a plan and
/// stretches of a garland have their own, and how a cluster is turned is shown to none.
std::string scale_with_lists(const std::string& scale, const Marks& marks, std::size_t first) {
  constexpr double larger_than_swatch = 2, larger_than_ring = 12;  // mm
  bool sketch = false;
  for (std::size_t i = first; i < marks.size(); ++i) {
    const auto* balloon = std::get_if<BalloonMark>(&marks[i].shape);
    if (marks[i].part == Part::drawing || (balloon != nullptr && balloon->radius > larger_than_swatch))
      return "as stated";
    const auto* path = std::get_if<PathMark>(&marks[i].shape);
    if (path == nullptr || path->steps.empty()) continue;
    const auto [least, most] = std::ranges::minmax(path->steps, {}, [](const PathStep& step) { return step.to.y; });
    sketch = sketch || most.to.y - least.to.y > larger_than_ring;
  }
  return scale.empty() && sketch ? "not to scale" : scale;
}

/// The lists of a subject, measured for each width that they are set in: columns beside or beneath a picture may be wider
/// than those of a page of lists.
class BuildLists {
 public:
  BuildLists(const BuildSubject& subject, std::span<const BuildSubject> mended, const Setting& setting,
             double pile_height)
      : subject_(subject), mended_(mended), setting_(setting), pile_height_(pile_height) {}

  FlowPlace flow_into(const std::vector<Rect>& columns, FlowPlace from, Marks* marks) {
    if (columns.empty()) return from;
    return flow(blocks_for(columns.front().width), from, columns, marks);
  }
  bool is_at_end(FlowPlace place) const { return !made_.empty() && place.block >= made_.begin()->second.size(); }

  /// On how many pages the pictures and all lists are, 1,000 at most.
  std::size_t pages_with(const BuildLayout& layout) {
    constexpr std::size_t most = 1000;
    FlowPlace place;
    for (const BuildPage& page : layout.pages) place = flow_into(page.columns, place, nullptr);
    std::size_t pages = layout.pages.size();
    for (const std::vector<Rect> columns = list_columns(layout); pages < most; ++pages) {
      if (is_at_end(place)) break;
      place = flow_into(columns, place, nullptr);
    }
    return pages;
  }

  /// Of a page that has lists alone.
  std::vector<Rect> list_columns(const BuildLayout& layout) const {
    return build_columns(content_of(blank_page(setting_.paper, layout.landscape), setting_.input.event));
  }

 private:
  const std::vector<Block>& blocks_for(double width) {
    const auto known = made_.find(width);
    return known != made_.end()
               ? known->second
               : made_.emplace(width, blocks_of(subject_, mended_, setting_, pile_height_, width)).first->second;
  }

  const BuildSubject& subject_;
  std::span<const BuildSubject> mended_;
  const Setting& setting_;
  const double pile_height_;
  std::map<double, std::vector<Block>> made_;
};

/// Adds the pages of a subject. `mended`: whose mending is told after its lists; left out where that would take a page more,
/// unless it is the subject's alone. True where it is told.
bool add_subject(std::vector<BuildDraft>& drafts, const BuildSubject& subject, std::span<const BuildSubject> mended,
                 const Setting& setting) {
  const auto own_mended = mended.size() == 1 ? mended : std::span<const BuildSubject>();
  BuildLists usual(subject, own_mended, setting, usual_pile), high(subject, own_mended, setting, high_pile);
  const BuildLayout layout =
      build_layout(subject, setting, [&](const BuildLayout& candidate) { return usual.pages_with(candidate); });
  const std::size_t pages = usual.pages_with(layout);
  const bool is_high = high.pages_with(layout) <= pages;
  BuildLists& own = is_high ? high : usual;
  BuildLists all(subject, mended, setting, is_high ? high_pile : usual_pile);
  const bool told = mended.size() == 1 || (!mended.empty() && all.pages_with(layout) == pages);
  BuildLists& lists = told ? all : own;
  const std::string heading = "Build: " + subject.title(), areas = areas_of(subject);
  FlowPlace place;
  const auto new_draft = [&](const std::string& scale) -> BuildDraft& {
    const bool first = drafts.empty() || drafts.back().page.name != heading;
    drafts.push_back(
        {blank_page(setting.paper, layout.landscape), {heading + (first ? "" : continued), areas, scale, 1, 1}});
    drafts.back().page.name = heading;
    return drafts.back();
  };
  for (const BuildPage& page : layout.pages) {
    BuildDraft& draft = new_draft(scales_of(page, setting.units));
    for (const BuildPicture& picture : page.frame) {
      add_frame_picture(draft.page.marks, subject, picture, setting.units);
      draft.page.scale = picture.scale;
    }
    for (const BuildPicture& picture : page.clusters) {
      add_cluster_picture(draft.page.marks, subject, picture, setting);
      draft.page.scale = picture.scale;
    }
    const std::size_t first = draft.page.marks.size();
    place = lists.flow_into(page.columns, place, &draft.page.marks);
    draft.text.scale = scale_with_lists(draft.text.scale, draft.page.marks, first);
  }
  const std::vector<Rect> columns = lists.list_columns(layout);
  while (!lists.is_at_end(place)) {
    BuildDraft& draft = new_draft("");
    const FlowPlace next = lists.flow_into(columns, place, &draft.page.marks);
    draft.text.scale = scale_with_lists("", draft.page.marks, 0);
    if (next.block == place.block && next.row == place.row) break;
    place = next;
  }
  return told;
}

/// For pages that are about all pieces: the area that was asked for, or all.
std::string all_areas(const Setting& setting) {
  const std::vector<const Area*> areas = wanted_areas(setting);
  return setting.options.area && areas.size() == 1 ? areas.front()->name : "All areas";
}

/// What is told alike of several pieces stands once, after all of them; here where it has a page of its own.
void add_mending(std::vector<BuildDraft>& drafts, const std::vector<BuildSubject>& subjects, const Setting& setting) {
  Page page = blank_page(setting.paper, false);
  page.name = "A balloon has burst";
  const Rect content = content_of(page, setting.input.event);
  std::vector<Rect> columns = build_columns(content);
  std::vector<Block> blocks{mending_block(subjects, setting.units, columns.front().width)};
  blocks.front().may_split = true, blocks.front().head_again.clear();
  const double height = flow_height(blocks, {}, columns.size(), content.height);
  for (Rect& column : columns) column.height = height;
  for (FlowPlace place; place.block < blocks.size();) {
    drafts.push_back({page, {"Build: all pieces", all_areas(setting), "", 1, 1}});
    const FlowPlace next = flow(blocks, place, columns, &drafts.back().page.marks);
    if (next.block == place.block && next.row == place.row) break;
    place = next;
  }
}

void add_gauge(std::vector<BuildDraft>& drafts, const std::vector<BuildSubject>& subjects, const Setting& setting) {
  std::vector<GaugeUse> uses;
  for (const BuildSubject& subject : subjects)
    for (const SizerLine& size : subject.sizes) uses.push_back({size, subject.title()});
  for (Page& page : gauge_pages(uses, setting)) {
    page.scale = 1;
    drafts.push_back({std::move(page), {"Size gauge", all_areas(setting), "1:1", 1, 1}});
  }
}

/// What cannot be built, or that there is nothing to build.
void add_left_out(std::vector<BuildDraft>& drafts, const std::vector<std::string>& left_out, const Setting& setting) {
  if (left_out.empty() && !drafts.empty()) return;
  Page page = blank_page(setting.paper, false);
  page.name = "Without a build sheet";
  const Rect content = content_of(page, setting.input.event);
  const auto columns = columns_in(content, 1);
  Block block = table_block(left_out.empty() ? "Nothing to build" : "Without a build sheet", {}, content.width);
  if (left_out.empty()) block.rows.push_back(text_row("There are no pieces here yet.", content.width));
  for (const std::string& line : left_out) block.rows.push_back(text_row(line, content.width));
  const std::vector<Block> blocks{block};
  for (FlowPlace place; place.block < blocks.size();) {
    Page next = page;
    const FlowPlace then = flow(blocks, place, columns, &next.marks);
    if (then.block == place.block && then.row == place.row) break;
    place = then;
    drafts.push_back({std::move(next), {"Build sheets", "All areas", "", 1, 1}});
  }
}

}  // namespace

std::vector<Page> build_sheet(const SheetInput& input, const SheetOptions& options) {
  const Event& event = input.event;
  const Setting setting{input, options, options.units.value_or(event.units),
                        options.paper.value_or(usual_paper(event.units))};
  const auto is_wanted = [&](const auto& area) { return *options.area == area->id || *options.area == area->name; };
  if (options.area && std::ranges::none_of(event.areas, is_wanted)) return {};
  std::vector<std::string> left_out;
  const std::vector<BuildSubject> subjects = build_subjects(setting, left_out);
  std::vector<BuildDraft> drafts;
  bool told = subjects.empty();
  for (const BuildSubject& subject : subjects)
    told = add_subject(drafts, subject,
                       &subject == &subjects.back() ? std::span(subjects) : std::span<const BuildSubject>(), setting);
  if (!told) add_mending(drafts, subjects, setting);
  add_gauge(drafts, subjects, setting);
  add_left_out(drafts, left_out, setting);
  std::vector<Page> pages;
  for (BuildDraft& draft : drafts) {
    draft.text.sheet = static_cast<int>(pages.size()) + 1, draft.text.sheets = static_cast<int>(drafts.size());
    draft.text.kind = "Build sheet";
    add_frame(draft.page, event, draft.text);
    pages.push_back(std::move(draft.page));
  }
  return pages;
}

}  // namespace quadrille
