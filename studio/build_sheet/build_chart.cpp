#include "studio/build_sheet/build_chart.hpp"

#include <algorithm>
#include <array>
#include <cmath>

#include "sdk/cluster.hpp"
#include "sdk/pattern.hpp"
#include "studio/build_sheet/build_picture.hpp"
#include "studio/build_sheet/build_rows.hpp"
#include "studio/build_sheet/cluster_view.hpp"
#include "studio/drawing/elevation.hpp"
#include "studio/making/hand.hpp"
#include "studio/paint/balloon_look.hpp"
#include "studio/paint/text.hpp"
#include "studio/paper/table_rows.hpp"
#include "studio/takeoff/print.hpp"

namespace quadrille {
namespace {

constexpr double swatch_step = 3.5, swatch_radius = 1.6;

std::size_t most_in_cluster(const ClusterChart& chart) {
  std::size_t most = 1;
  for (const ChartCluster& cluster : chart.clusters) most = std::max(most, cluster.balloons.size());
  return most;
}

/// Whether clusters differ in what their balloons are blown to.
bool sizes_differ(const ClusterChart& chart) {
  return std::ranges::any_of(chart.clusters, [&](const ChartCluster& cluster) {
    const ChartBalloon &one = cluster.balloons.front(), &first = chart.clusters.front().balloons.front();
    return one.inflated_m != first.inflated_m || one.nominal_in != first.nominal_in;
  });
}

/// After how many clusters colours and turns begin anew, and sizes where they are told with them.
std::size_t told_repeat(const ClusterChart& chart) { return chart.repeat > 0 ? chart.repeat : chart.colour_repeat; }

/// Sizes have a list of their own where colours and turns repeat and they do not.
bool has_size_list(const ClusterChart& chart) { return chart.repeat == 0 && chart.colour_repeat > 0; }

/// "5, 9, 13 … 41", "2–41": the numbers of the clusters from the one at `index` on that are like it.
std::string print_again(const ClusterChart& chart, std::size_t index, std::size_t repeat) {
  std::vector<std::string> numbers;
  for (std::size_t i = index; i < chart.clusters.size(); i += repeat)
    numbers.push_back(std::to_string(chart.clusters[i].number));
  std::string text = numbers.front();
  if (repeat == 1) return numbers.size() > 1 ? text + "–" + numbers.back() : text;
  for (std::size_t i = 1; i < numbers.size(); ++i) {
    if (numbers.size() > 4 && i == 3) return text + " … " + numbers.back();
    text += ", " + numbers[i];
  }
  return text;
}

/// How the cluster at `index` is turned: the first one to where one looks, the others against the one before.
std::string print_turns(const ClusterChart& chart, std::size_t index) {
  const ChartCluster& cluster = chart.clusters[index];
  return cluster.half_steps ? print_turn(*cluster.half_steps, cluster.balloons.size())
                            : "balloon 1 to the " + print_bearing(chart.start_rad);
}

struct ChartRow {
  std::string number, letters, turn, at, size;
  std::vector<const Colour*> colours;
};

struct ChartWidths {
  double number = 10, letters = 12, swatches = 15, at = 0, size = 0;
};

ChartWidths widths_of(const ClusterChart& chart, const std::vector<ChartRow>& rows) {
  const auto most = static_cast<double>(most_in_cluster(chart));
  ChartWidths widths;
  widths.letters = 2.75 * most + 1.5, widths.swatches = swatch_step * most + 0.5;
  const TextStyle style = type(pt_body, ink_text, Face::bold);
  for (const ChartRow& row : rows) widths.number = std::max(widths.number, text_width(row.number, style) + 0.5);
  const bool with_size = sizes_differ(chart) && !has_size_list(chart);
  if (with_size) widths.size = 13;
  // Where there is no room for both the running marks tell where a cluster is.
  if (told_repeat(chart) == 0 && !with_size) widths.at = 15;
  return widths;
}

std::vector<RowCell> cells_of(const ChartRow& row, const ChartWidths& widths) {
  std::vector<RowCell> cells{{row.number, widths.number, Across::left, Face::bold},
                             {row.letters, widths.letters, Across::left, Face::bold},
                             {"", widths.swatches},
                             {row.turn}};
  if (widths.size > 0) cells.push_back({row.size, widths.size, Across::right});
  if (widths.at > 0) cells.push_back({row.at, widths.at, Across::right});
  return cells;
}

Row chart_row(const ChartRow& row, const ChartWidths& widths, double width) {
  Row made = cells_row(cells_of(row, widths), width);
  const auto text = made.draw;
  made.draw = [=](Marks& marks, const Rect& at) {
    text(marks, at);
    double x = at.x + widths.number + widths.letters + 2 * 1.6 + swatch_radius;
    for (const Colour* colour : row.colours) {
      BalloonMark swatch;
      swatch.centre = swatch.neck = {x, at.y + capital_middle(table_body)};
      swatch.radius = swatch_radius;
      swatch.ink = ink_of(colour);
      swatch.finish = colour ? colour->finish : Finish::matte;
      Mark& mark = marks.emplace_back();
      mark.part = Part::key;
      mark.shape = swatch;
      x += swatch_step;
    }
  };
  return made;
}

ChartRow row_of(const BuildSubject& subject, const Setting& setting, std::size_t index, std::string number) {
  const ClusterChart& chart = subject.chart;
  const ChartCluster& cluster = chart.clusters[index];
  const LengthStyle lengths = lengths_in(setting.units);
  ChartRow row;
  row.number = std::move(number), row.letters = letters_of(cluster), row.turn = print_turns(chart, index);
  row.at = print_length(cluster.at_m, lengths);
  const ChartBalloon& first = cluster.balloons.front();
  row.size = print_sizer(subject, first.nominal_in, first.inflated_m, lengths);
  for (const ChartBalloon& balloon : cluster.balloons)
    row.colours.push_back(slot_colour(subject.placed(), balloon.slot, setting.input.palettes));
  return row;
}

/// The first cluster, which is turned to nothing, by itself; then all there are up to those that are like it.
std::vector<ChartRow> chart_rows(const BuildSubject& subject, const Setting& setting) {
  const ClusterChart& chart = subject.chart;
  const std::size_t repeat = told_repeat(chart), count = chart.clusters.size();
  std::vector<ChartRow> rows{row_of(subject, setting, 0, std::to_string(chart.clusters[0].number))};
  for (std::size_t i = 1; i < (repeat > 0 ? repeat + 1 : count); ++i)
    rows.push_back(row_of(subject, setting, i,
                          repeat > 0 ? print_again(chart, i, repeat) : std::to_string(chart.clusters[i].number)));
  return rows;
}

/// What the balloons of each cluster are blown to, those in a row that are alike together.
Block size_list(const BuildSubject& subject, const Setting& setting, double width) {
  const auto& clusters = subject.chart.clusters;
  Block block = table_block("Sizes of the clusters",
                            {{"Clusters"}, {"Size", 16, Across::right}, {"Blow to", 18, Across::right}}, width);
  block.may_split = true;
  for (std::size_t from = 0; from < clusters.size();) {
    const ChartBalloon& first = clusters[from].balloons.front();
    std::size_t to = from;
    while (to + 1 < clusters.size() && clusters[to + 1].balloons.front().inflated_m == first.inflated_m &&
           clusters[to + 1].balloons.front().nominal_in == first.nominal_in)
      ++to;
    std::string numbers = std::to_string(clusters[from].number);
    if (to > from) numbers += "–" + std::to_string(clusters[to].number);
    block.rows.push_back(cells_row(
        {{numbers, 0, Across::left, Face::bold},
         {print_nominal(first.nominal_in), 16, Across::right},
         {print_sizer(subject, first.nominal_in, first.inflated_m, lengths_in(setting.units)), 18, Across::right}},
        width));
    from = to + 1;
  }
  return block;
}

/// True where all turns of the chart go to one side.
bool turns_to_one_side(const ClusterChart& chart) {
  const auto turned = [&](int side) {
    return std::ranges::any_of(chart.clusters,
                               [&](const ChartCluster& c) { return c.half_steps.value_or(0) * side > 0; });
  };
  return !(turned(1) && turned(-1));
}

std::string climb_sentence(const BuildSubject& subject) {
  const ClusterChart& chart = subject.chart;
  switch (side_matters(chart)) {
    case SideMatters::never:
      return "Every cluster is of one colour: to which side it is turned makes no difference.";
    case SideMatters::together:
      if (turns_to_one_side(chart))
        return "To which side the clusters are turned makes no difference, as long as it is the same for all: to the "
               "right or to the left, each colour comes to the same places.";
      return "With every cluster turned to the other side than the chart says, each colour comes to the same places: "
             "that makes no difference, as long as all of them are.";
    case SideMatters::each:
      break;
  }
  const Climb climb = climb_of_legs(subject.piece(), chart);
  if (climb == Climb::neither) return "";
  const std::string side = climb == Climb::right ? "right" : "left";
  const auto feet = std::ranges::count_if(subject.supports, &NamedSupport::is_foot);
  return "Seen from the front the colours climb to the " + side + (feet == 2 ? ", on both legs." : ".");
}

std::string repeat_sentence(const ClusterChart& chart) {
  const std::size_t count = chart.clusters.size(), repeat = told_repeat(chart);
  const std::string sizes = has_size_list(chart) ? " They differ in size: see \"Sizes of the clusters\"." : "";
  if (repeat == 0) return "Nothing repeats in it: all " + std::to_string(count) + "\u00a0clusters are listed.";
  if (repeat == 1)
    return "All " + std::to_string(count) + "\u00a0clusters are of the same colours and turned alike." + sizes;
  std::string text = "It repeats every " + std::to_string(repeat) + "\u00a0clusters: 1–" + std::to_string(repeat) +
                     ", again " + std::to_string(repeat + 1) + "–" + std::to_string(2 * repeat);
  if (count > 2 * repeat) text += " and so on to " + std::to_string(count);
  if (count % repeat != 0) text += ", where it breaks off after " + std::to_string(count % repeat);
  return text + "." + sizes;
}

std::vector<std::string> sentences_of(const BuildSubject& subject) {
  const ClusterChart& chart = subject.chart;
  const std::string size = std::to_string(chart.clusters.front().balloons.size());
  std::vector<std::string> all{
      "Clusters of " + size + ", counted from " + print_start(subject) +
          ". The letters are the colours in their places: 1 to " + size +
          " anticlockwise, looked at from the side on which the next cluster comes, the front towards you.",
      "Each cluster sits in the creases of the one before it, its balloon 1 turned against that one's as the chart "
      "says: "
      "right is anticlockwise, looked at in the same way."};
  for (const std::string& more : {climb_sentence(subject), repeat_sentence(chart)})
    if (!more.empty()) all.push_back(more);
  if (chart.mirrored)
    all.push_back(
        "The legs mirror each other: counted from the far end, each cluster is the mirror image of the one with "
        "that number.");
  if (side_matters(chart) == SideMatters::each)
    all.push_back(
        "Mind the side: turned to the wrong one a cluster sits in the very same creases, and only the colours "
        "tell. Look at their run after every fourth cluster.");
  return all;
}

/// The first two clusters, the second over the first as it is turned.
Row view_row(const BuildSubject& subject, const Setting& setting) {
  constexpr double height = 42, radius = 14.5;
  return picture_row(height, [&subject, &setting](Marks& marks, const Rect& at) {
    const bool two = subject.chart.clusters.size() > 1;
    const TextStyle style = type(pt_caption, ink_quiet, Face::regular, Across::centre);
    for (std::size_t i = 0; i < (two ? 2u : 1u); ++i) {
      const double room = at.width / 2, x = at.x + (static_cast<double>(i) + 0.5) * room;
      add_cluster_view(marks, subject, setting.input.palettes, i, {x, at.y + 16}, radius);
      const ChartCluster& cluster = subject.chart.clusters[i];
      std::string text = "Cluster " + std::to_string(cluster.number);
      if (cluster.half_steps) text += ", " + print_turn(*cluster.half_steps, cluster.balloons.size());
      marks.push_back(text_mark(Part::key, {x - room / 2 + 1, at.y + 32.5, room - 2, 3.8}, "front", style));
      marks.push_back(text_mark(Part::key, {x - room / 2 + 1, at.y + 36.3, room - 2, 3.8}, text,
                                type(pt_caption, ink_text, Face::regular, Across::centre)));
    }
  });
}

}  // namespace

std::string print_start(const BuildSubject& subject) {
  const auto& clusters = subject.piece().clusters;
  const Vec3 first = clusters.empty() ? Vec3(Vec3::Zero()) : clusters.front().centre;
  const NamedSupport* nearest = nullptr;
  for (const NamedSupport& support : subject.supports)
    if (support.is_foot && (nearest == nullptr || (support.place - first).norm() < (nearest->place - first).norm()))
      nearest = &support;
  if (nearest) return "the " + nearest->name;
  const Vec3 last = clusters.empty() ? first : clusters.back().centre;
  if (std::abs(last.x() - first.x()) >= 0.05) return last.x() > first.x() ? "the left end" : "the right end";
  return last.z() >= first.z() ? "the lower end" : "the upper end";
}

std::string print_sizer(const BuildSubject& subject, double nominal_in, double inflated_m, LengthStyle lengths) {
  for (const SizerLine& size : subject.sizes)
    if (size.nominal_in == nominal_in && std::abs(size.inflated_m - inflated_m) < 5e-4)
      return print_inflated(size.sizer_m, lengths);
  return print_inflated(inflated_m, lengths);
}

std::vector<Block> chart_blocks(const BuildSubject& subject, const Setting& setting, double width) {
  const ClusterChart& chart = subject.chart;
  if (!chart.rings) return {};
  const std::vector<ChartRow> rows = chart_rows(subject, setting);
  const ChartWidths widths = widths_of(chart, rows);
  Block how = table_block("How the clusters go", {}, width);
  for (const std::string& sentence : sentences_of(subject)) how.rows.push_back(text_row(sentence, width));
  how.rows.push_back(view_row(subject, setting));
  const ChartRow captions{told_repeat(chart) > 0 ? "Clusters" : "Cluster",
                          "Colours",
                          "Turned against the one before",
                          "Along",
                          "Blow to",
                          {}};
  Block table = table_block("Cluster chart", cells_of(captions, widths), width);
  for (const ChartRow& row : rows) table.rows.push_back(chart_row(row, widths, width));
  std::vector<Block> blocks{how, table};
  if (has_size_list(chart)) blocks.push_back(size_list(subject, setting, width));
  return blocks;
}

}  // namespace quadrille
