// The lists that go with a cluster chart: running marks, single balloons.
#include <algorithm>
#include <array>

#include "sdk/pattern.hpp"
#include "studio/build_sheet/build_chart.hpp"
#include "studio/build_sheet/build_picture.hpp"
#include "studio/build_sheet/build_rows.hpp"
#include "studio/paint/text.hpp"
#include "studio/paper/table_rows.hpp"
#include "studio/takeoff/print.hpp"

namespace quadrille {

std::vector<Block> running_mark_blocks(const BuildSubject& subject, const Setting& setting, double width) {
  const LengthStyle lengths = lengths_in(setting.units);
  const auto marks = running_marks(subject.piece(), subject.chart, running_step_m(setting.units));
  if (marks.empty() || !subject.chart.rings) return {};
  // Two marks side by side: a list of its own length is not worth a page.
  constexpr double cluster_room = 10, between = 3;
  const double mark_room = std::max(9.0, text_width(print_length(marks.back().at_m, lengths), table_body) + 0.5);
  const auto twice = [&](const std::array<std::vector<RowCell>, 2>& halves) {
    std::vector<RowCell> cells = halves[0];
    cells.push_back({"", between});
    cells.insert(cells.end(), halves[1].begin(), halves[1].end());
    return cells;
  };
  const auto cells_of = [&](const std::string& at, const std::string& cluster, const std::string& middle) {
    return std::vector<RowCell>{{at, mark_room, Across::left, Face::regular},
                                {cluster, cluster_room, Across::right, Face::bold},
                                {middle, 0, Across::right}};
  };
  const auto captions = cells_of("Along", "Cluster", "Its middle");
  Block block = table_block("Running marks from " + print_start(subject), {}, width);
  for (auto* head : {&block.head, &block.head_again})
    head->insert(head->end() - 1, captions_row(twice({captions, captions}), width));
  block.may_split = true;
  for (std::size_t i = 0; i < marks.size(); i += 2) {
    const auto half = [&](std::size_t index) {
      if (index >= marks.size()) return cells_of("", "", "");
      const RunningMark& mark = marks[index];
      return cells_of(print_length(mark.at_m, lengths), std::to_string(mark.cluster),
                      print_length(mark.cluster_at_m, lengths));
    };
    block.rows.push_back(cells_row(twice({half(i), half(i + 1)}), width));
  }
  return {block};
}

std::vector<Block> loose_blocks(const BuildSubject& subject, const Setting& setting, double width) {
  if (subject.loose.empty() || !subject.chart.rings) return {};
  const LengthStyle lengths = lengths_in(setting.units);
  constexpr double name = 13, colour = 11, blown = 14, along = 15;
  Block block = table_block("Single balloons",
                            {{"Name", name},
                             {"What"},
                             {"Colour", colour},
                             {"Blow to", blown, Across::right},
                             {"Along", along, Across::right}},
                            width);
  for (const LooseGroup& group : loose_groups(subject)) {
    const LooseBalloon& one = *group.all.front();
    const Balloon& first = subject.piece().balloons[one.balloon];
    const bool several = group.all.size() > 1, on_top = first.role == Role::topper && one.side == "on top";
    std::string what = std::string(print_role(first.role)) + ", " + print_nominal(first.nominal_in);
    if (several || !on_top) what += several ? ", one in each crease" : ", " + one.side;
    // Where the neck of a topper is tied is not where it is: that is past the end of the spine.
    block.rows.push_back(
        cells_row({{group.name, name, Across::left, Face::bold},
                   {what},
                   {letter_of(first.slot), colour, Across::left, Face::bold},
                   {print_sizer(subject, first.nominal_in, first.diameter_m, lengths), blown, Across::right},
                   {on_top ? "on top" : print_length(one.at_m, lengths), along, Across::right}},
                  width));
  }
  return {block};
}

}  // namespace quadrille
