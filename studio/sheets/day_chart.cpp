#include "studio/sheets/day_chart.hpp"

#include <algorithm>
#include <array>
#include <cmath>
#include <optional>
#include <utility>

#include "studio/labour/day_words.hpp"
#include "studio/paint/style.hpp"
#include "studio/paint/text.hpp"
#include "studio/paper/table_rows.hpp"

namespace quadrille {
namespace {

constexpr double gutter = 14, right_air = 7, axis_height = 4.4, label_height = 3.9, below_strip = 3.5;
constexpr double usual_row = 6.2, bar_share = 0.82, number_room = 5;
constexpr Ink light{0.93, 0.93, 0.945, 1}, dark{0.2, 0.21, 0.25, 1};

/// A run of hours, cut into strips.
struct ChartSpan {
  std::string title;
  std::vector<std::size_t> tasks;  ///< in plan.tasks
  std::int64_t from_s = 0, to_s = 0;
  bool has_clock = true;
};

struct Milestone {
  std::int64_t at_s;
  std::string name;
};

/// What strips share.
struct ChartScale {
  double width;          ///< of the bars' field [mm]
  std::int64_t strip_s;  ///< that fills it
  std::int64_t grid_s;   ///< from one line to the next
  double row;            ///< height of a person's row [mm]
  double mm(std::int64_t seconds) const { return width * static_cast<double>(seconds) / static_cast<double>(strip_s); }
};

std::int64_t floored(std::int64_t value, std::int64_t step) {
  const std::int64_t rest = ((value % step) + step) % step;
  return value - rest;
}

/// Consecutive tasks whose clocks run on: the drive and the build, the strike, the way back and what is put away.
std::vector<ChartSpan> spans_of(const DayPlan& plan) {
  std::vector<ChartSpan> spans;
  int last_kind = -1;
  for (std::size_t i = 0; i < plan.tasks.size(); ++i) {
    const PlannedTask& planned = plan.tasks[i];
    const Phase phase = planned.task.phase;
    const bool back = phase == Phase::strike || phase == Phase::put_away ||
                      (phase == Phase::travel && planned.task.id == "travel-back");
    const int kind = phase == Phase::day_before ? 0 : back ? 2 : 1;
    const bool has_clock = !planned.start.clock.empty();
    // Without a clock every stretch begins at nought of its own.
    const bool goes_on = !spans.empty() && kind == last_kind && spans.back().has_clock == has_clock &&
                         (has_clock || name_of_stretch(phase) == spans.back().title);
    if (!goes_on) {
      constexpr const char* titles[] = {"The day before", "The road and the build", "The strike and the way back"};
      spans.push_back({has_clock ? std::string(titles[kind]) : std::string(name_of_stretch(phase)),
                       {},
                       planned.start.second,
                       planned.end.second,
                       has_clock});
    }
    last_kind = kind;
    ChartSpan& span = spans.back();
    span.tasks.push_back(i);
    span.from_s = std::min(span.from_s, planned.start.second), span.to_s = std::max(span.to_s, planned.end.second);
  }
  return spans;
}

/// `whole` seconds are to be drawn.
ChartScale scale_of(const ChartSpan& span, std::int64_t whole, const DayPlan& plan, double width) {
  constexpr std::array<std::int64_t, 11> strips{900,    1800,   3600,   7200,   10'800, 14'400,
                                                21'600, 28'800, 43'200, 86'400, 604'800};
  constexpr std::array<std::int64_t, 11> grids{60, 120, 300, 600, 900, 1800, 3600, 7200, 14'400, 43'200, 86'400};
  constexpr std::int64_t most_strips = 6;
  constexpr double least_grid = 10.5;  // mm: room for "00:00" and some air
  std::vector<std::int64_t> lengths;
  for (const std::size_t task : span.tasks) lengths.push_back(plan.tasks[task].seconds());
  std::ranges::sort(lengths);
  const std::int64_t usual = lengths[lengths.size() / 2];  // half of them are as long or longer
  ChartScale scale{width - gutter - right_air, strips.front(), grids.front(), usual_row};
  for (const std::int64_t strip : strips) {
    const std::int64_t before = scale.strip_s;
    scale.strip_s = strip;
    const bool too_many = (whole + before - 1) / before > most_strips;
    if (strip != strips.front() && scale.mm(usual) < number_room && !too_many) {
      scale.strip_s = before;
      break;
    }
    if (strip >= whole) break;
  }
  // A last strip with a little alone is none: the others are drawn somewhat closer.
  const std::int64_t full = whole / scale.strip_s, rest = whole % scale.strip_s;
  if (full > 0 && rest > 0 && 5 * rest <= full * scale.strip_s) scale.strip_s = (whole / full + 299) / 300 * 300;
  for (const std::int64_t grid : grids) {
    scale.grid_s = grid;
    if (scale.mm(grid) >= least_grid) break;
  }
  if (plan.crew > 12) scale.row = 5.4;
  return scale;
}

std::vector<Milestone> milestones_of(const Event& event, const ChartSpan& span) {
  std::vector<Milestone> all;
  if (!span.has_clock) return all;
  const DayTimes times = times_of(event);
  const auto add = [&](std::optional<std::int64_t> at, const char* name) {
    // A little before and after the work still belongs to it: "ready by" to the build, and not to the strike at night.
    constexpr std::int64_t before_s = 15 * 60, after_s = 30 * 60;
    if (at && *at >= span.from_s - before_s && *at <= span.to_s + after_s)
      all.push_back({*at, std::string(name) + " " + clock_of(*at)});
  };
  add(times.load_in_from_s, "load-in from");
  add(times.ready_by_s, "ready by");
  add(times.strike_from_s, "strike from");
  return all;
}

std::string axis_label(std::int64_t at_s, bool has_clock) {
  Moment moment{at_s, has_clock ? clock_of(at_s) : "", 0};
  return print_moment(moment);
}

class StripPainter {
 public:
  StripPainter(const ChartSpan& span, const DayPlan& plan, const ChartScale& scale, std::vector<Milestone> milestones,
               std::int64_t from_s, std::int64_t to_s, bool is_last)
      : span_(span), plan_(plan), scale_(scale), from_s_(from_s), to_s_(to_s) {
    for (Milestone& milestone : milestones)
      if (milestone.at_s >= from_s && (milestone.at_s < to_s || (is_last && milestone.at_s == to_s)))
        milestones_.push_back(std::move(milestone));
  }

  double height() const {
    return static_cast<double>(milestones_.size()) * label_height + axis_height +
           static_cast<double>(plan_.crew) * scale_.row + below_strip;
  }
  void paint(Marks& marks, const Rect& at) const {
    add_grid(marks, at);
    add_people(marks, at);
    for (const std::size_t task : span_.tasks) add_bars(marks, at, task);
    add_milestones(marks, at);
  }

 private:
  double top_of(const Rect& at) const {
    return at.y + static_cast<double>(milestones_.size()) * label_height + axis_height;
  }
  double bottom_of(const Rect& at) const { return top_of(at) + static_cast<double>(plan_.crew) * scale_.row; }
  double x_of(const Rect& at, std::int64_t second) const { return at.x + gutter + scale_.mm(second - from_s_); }

  void add_grid(Marks& marks, const Rect& at) const {
    const TextStyle style = type(pt_caption, ink_quiet, Face::regular, Across::centre);
    for (std::int64_t s = floored(from_s_ + scale_.grid_s - 1, scale_.grid_s); s <= to_s_; s += scale_.grid_s) {
      const double x = x_of(at, s);
      marks.push_back(line_mark(Part::drawing, {x, top_of(at) - 0.8}, {x, bottom_of(at)}, mm_hair, ink_rule));
      const std::string label = axis_label(s, span_.has_clock);
      const double wide = text_width(label, style) + 0.4;
      marks.push_back(text_mark(Part::key, {x - wide / 2, top_of(at) - axis_height, wide, 3.7}, label, style));
    }
  }
  void add_people(Marks& marks, const Rect& at) const {
    for (int person = 0; person <= plan_.crew; ++person) {
      const double y = top_of(at) + person * scale_.row;
      marks.push_back(line_mark(Part::drawing, {at.x, y}, {x_of(at, to_s_), y}, mm_hair, ink_rule));
      if (person < plan_.crew)
        marks.push_back(text_mark(Part::key, {at.x, y + (scale_.row - 4.2) / 2, gutter - 6, 4.2},
                                  std::to_string(person + 1), type(pt_body, ink_text, Face::bold)));
    }
  }
  void add_bars(Marks& marks, const Rect& at, std::size_t index) const {
    const PlannedTask& planned = plan_.tasks[index];
    const std::int64_t from = std::max(planned.start.second, from_s_), to = std::min(planned.end.second, to_s_);
    if (from >= to) return;
    const double left = x_of(at, from), width = x_of(at, to) - left, high = scale_.row * bar_share;
    for (const int person : planned.people) {
      const Rect bar{left, top_of(at) + (person - 1) * scale_.row + (scale_.row - high) / 2, width, high};
      const Ink fill = planned.critical ? dark : light;
      marks.push_back(shape_mark(Part::drawing, rect_path(bar), fill,
                                 {ink_text, planned.critical ? mm_strong : mm_hair, {}, false}));
      add_bar_text(marks, bar, planned, index);
    }
  }
  /// "12 Mount 24 clusters", or the number alone, or nothing, as there is room.
  static void add_bar_text(Marks& marks, const Rect& bar, const PlannedTask& planned, std::size_t index) {
    const Ink ink = planned.critical ? ink_paper : ink_text;
    const TextStyle style = type(pt_caption, ink, Face::bold, Across::left, Down::middle);
    const std::string number = std::to_string(index + 1), whole = number + " " + planned.task.text;
    for (const std::string& text : {whole, number}) {
      const double room = text_width(text, style) + 0.2;
      if (room > bar.width - 0.8) continue;
      const double x = text == number ? bar.x + (bar.width - room) / 2 : bar.x + 0.8;
      marks.push_back(text_mark(Part::key, {x, bar.y + (bar.height - 3.7) / 2, room, 3.7}, text, style));
      return;
    }
    // A narrow bar has its number upright.
    constexpr double least = 2.9;
    TextStyle turned = style;
    turned.across = Across::centre, turned.turned = true;
    const double length = text_width(number, turned) + 0.2;
    if (bar.width < least || length > bar.height - 0.2) return;
    const double wide = std::min(3.7, bar.width - 0.1);
    marks.push_back(text_mark(
        Part::key, {bar.x + (bar.width - wide) / 2, bar.y + (bar.height - length) / 2, wide, length}, number, turned));
  }
  void add_milestones(Marks& marks, const Rect& at) const {
    const TextStyle style = type(pt_caption, ink_text, Face::bold);
    for (std::size_t i = 0; i < milestones_.size(); ++i) {
      const double x = x_of(at, milestones_[i].at_s), y = at.y + static_cast<double>(i) * label_height;
      const double wide = text_width(milestones_[i].name, style) + 0.3;
      // Not through the hours.
      const Pen pen{ink_text, mm_strong, {1.6, 1.0}, false};
      marks.push_back(stroked_mark(Part::drawing, line_path({x, y + 0.4}, {x, top_of(at) - axis_height - 0.9}), pen));
      marks.push_back(stroked_mark(Part::drawing, line_path({x, top_of(at) - 0.8}, {x, bottom_of(at)}), pen));
      const double left = x + 1 + wide > at.right() ? x - 1 - wide : x + 1;
      marks.push_back(text_mark(Part::key, {left, y, wide, 3.7}, milestones_[i].name, style));
    }
  }

  const ChartSpan span_;
  const DayPlan& plan_;
  const ChartScale scale_;
  std::vector<Milestone> milestones_;
  std::int64_t from_s_, to_s_;
};

Row legend_row(double width) {
  const std::string critical = "critical: where it takes longer, all that follows ends later";
  const std::string other = "not critical";
  const TextStyle style = type(pt_caption, ink_text);
  const double first = text_width(critical, style) + 0.4, second = text_width(other, style) + 0.4;
  const bool beside = 9 + first + 14 + second < width;
  return {beside ? 5.4 : 10.4, [=](Marks& marks, const Rect& at) {
            add_task_number(marks, {at.x, at.y, 7, task_number_height}, "1", true);
            marks.push_back(text_mark(Part::key, {at.x + 9, at.y + 0.4, first, 3.8}, critical, style));
            const double x = beside ? at.x + 9 + first + 5 : at.x, y = beside ? at.y : at.y + 5;
            add_task_number(marks, {x, y, 7, task_number_height}, "2", false);
            marks.push_back(text_mark(Part::key, {x + 9, y + 0.4, second, 3.8}, other, style));
          }};
}

}  // namespace

double height_of_task_number(const std::string& numbers, double width) {
  const TextStyle style = type(pt_caption, ink_text, Face::bold, Across::centre);
  return std::max(task_number_height, text_height(numbers, style, width - 0.4, 12) + 1.2);
}

void add_task_number(Marks& marks, const Rect& box, const std::string& numbers, bool critical) {
  const TextStyle style = type(pt_caption, critical ? ink_paper : ink_text, Face::bold, Across::centre, Down::middle);
  marks.push_back(shape_mark(Part::key, rect_path(box), critical ? dark : light,
                             {ink_text, critical ? mm_strong : mm_hair, {}, false}));
  marks.push_back(text_mark(Part::key, {box.x + 0.2, box.y + 0.4, box.width - 0.4, box.height - 0.8}, numbers, style));
}

std::vector<Block> chart_blocks_of_day(const DayPlan& plan, const Event& event, double width) {
  std::vector<Block> blocks;
  const std::vector<ChartSpan> spans = spans_of(plan);
  for (const ChartSpan& span : spans) {
    Block block;
    block.gap = 6, block.may_split = true, block.beginning = 1;
    const std::string heading = span.title + ", person by person";
    block.head = {heading_row(Part::key, heading, width)};
    block.head_again = {heading_row(Part::key, heading + continued, width)};
    if (&span == &spans.front()) block.head.push_back(legend_row(width));
    const std::vector<Milestone> milestones = milestones_of(event, span);
    std::int64_t end = span.to_s;
    for (const Milestone& milestone : milestones) end = std::max(end, milestone.at_s);
    std::int64_t begin = span.from_s;
    for (const Milestone& milestone : milestones) begin = std::min(begin, milestone.at_s);
    const ChartScale scale = scale_of(span, end - floored(begin, 900), plan, width);
    begin = floored(begin, std::min<std::int64_t>(scale.grid_s, 900));
    for (std::int64_t from = begin; from < end; from += scale.strip_s) {
      const std::int64_t to = std::min(from + scale.strip_s, end);
      const StripPainter strip(span, plan, scale, milestones, from, to, to == end);
      block.rows.push_back({strip.height(), [strip](Marks& marks, const Rect& at) { strip.paint(marks, at); }});
    }
    blocks.push_back(std::move(block));
  }
  return blocks;
}

}  // namespace quadrille
