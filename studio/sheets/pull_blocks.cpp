#include "studio/sheets/pull_blocks.hpp"

#include <algorithm>
#include <map>
#include <string>
#include <utility>

#include "sdk/number.hpp"
#include "studio/build_sheet/build_rows.hpp"
#include "studio/making/feet.hpp"
#include "studio/model/amounts.hpp"
#include "studio/model/finding_words.hpp"
#include "studio/model/lengths.hpp"
#include "studio/model/one_unit.hpp"
#include "studio/paint/text.hpp"
#include "studio/paper/table_rows.hpp"
#include "studio/sheets/alike_names.hpp"
#include "studio/sheets/tick_row.hpp"
#include "studio/takeoff/containers.hpp"
#include "studio/takeoff/tools.hpp"

namespace quadrille {
namespace {

std::string so_many_of(std::int64_t count, const char* thing) {
  return std::to_string(count) + " " + thing + (count == 1 ? "" : "s");
}

/// "2 on the left foot, 2 on the right foot": where the containers go that stand in `places` from `i` on and belong to the
/// same piece; `i` is moved past them.
std::string feet_of(const FilledContainers& filled, std::size_t& i, const SheetInput& input) {
  const std::string& id = filled.places[i].piece;
  const std::vector<NamedSupport> named = named_supports(input.built.at(id)->piece);
  std::string text;
  for (; i < filled.places.size() && filled.places[i].piece == id; ++i) {
    const ContainerPlace& place = filled.places[i];
    const auto found = std::ranges::find_if(
        named, [&](const NamedSupport& support) { return place.support && support.support == *place.support; });
    text += (text.empty() ? "" : ", ") + std::to_string(place.containers) +
            (found == named.end()    ? " beside it"
             : found->name == "foot" ? " on its foot"
                                     : " on the " + found->name);
  }
  return text;
}

/// "Gate arch: 2 on the left foot, 2 on the right foot", "Aisle columns 1 to 8, each: 1 on its foot": where the containers
/// of each piece go, neighbours that have them in the same places and differ in their number alone told together.
std::vector<std::string> places_of(const FilledContainers& filled, const SheetInput& input) {
  struct Told {
    std::vector<std::string> names;
    std::string feet;
  };
  std::vector<Told> all;
  for (std::size_t i = 0; i < filled.places.size();) {
    const PlacedPiece* const placed = find_piece(input.event, filled.places[i].piece);
    const std::string name = placed == nullptr || placed->name.empty() ? "Unnamed piece" : placed->name;
    const std::string feet = feet_of(filled, i, input);
    if (!all.empty() && all.back().feet == feet && differ_in_number(all.back().names.back(), name))
      all.back().names.push_back(name);
    else
      all.push_back({{name}, feet});
  }
  std::vector<std::string> texts;
  for (const Told& told : all)
    texts.push_back(print_names(told.names) + (told.names.size() > 1 ? ", each: " : ": ") + told.feet);
  return texts;
}

/// Quiet rows of what belongs to the row before them, as many paragraphs as it takes.
void add_details(Block& block, const std::vector<std::string>& details, double width) {
  constexpr int most_lines = 6;
  const TextStyle style = type(pt_caption, ink_quiet);
  std::string text;
  const auto set = [&] {
    const double height = text_height(text, style, width);
    constexpr double above = 1.4;  // off the rule over it
    block.rows.push_back({height + above + 0.6,
                          [=](Marks& marks, const Rect& at) {
                            marks.push_back(text_mark(Part::key, {at.x, at.y + above, at.width, height}, text, style));
                          },
                          true});
  };
  const double fits = text_height(std::string("x"), style, width) * most_lines + 0.1;
  for (const std::string& detail : details) {
    const std::string more = text.empty() ? detail : text + "; " + detail;
    if (!text.empty() && text_height(more, style, width) > fits) {
      set();
      text = detail;
    } else {
      text = more;
    }
  }
  if (!text.empty()) set();
}

/// "In each: 5 × Glass fibre rod, 14 mm": as the supplies are called that the parts stand for.
std::string parts_of(const FrameKit& kit, const SuppliesOrder& supplies) {
  std::string text;
  for (const FrameKit::Part& part : kit.parts) {
    const auto line = std::ranges::find_if(supplies.lines, [&](const SupplyOrder& supply) {
      return supply.key == part.supply || supply.key.starts_with(part.supply + "-");
    });
    const std::string& name = line == supplies.lines.end() ? part.supply : line->name;
    text += (text.empty() ? "In each: " : "; ") + print_number(part.quantity) + " × " + name;
  }
  return text;
}

/// How the quantity beside it is come by, which is what the kits do not bring: "from stock; 2 more come in kits".
std::string source_beside_kits(const SupplyOrder& supply, LengthStyle lengths) {
  SupplyOrder loose = supply;
  loose.needed -= loose.from_kits, loose.from_kits = 0;
  return print_source(loose, lengths) +
         (supply.from_kits > 0 ? "; " + print_quantity(supply.from_kits, supply.unit, lengths) + " more come in kits"
                               : "");
}

}  // namespace

std::vector<Block> load_blocks(const Setting& setting, double width) {
  const SheetInput& input = setting.input;
  Block block = table_block("The load", {}, width);
  if (input.count.pieces.empty()) {
    block.rows.push_back(text_row("There is nothing to take: the event has no piece that is built.", width));
    return {block};
  }
  if (input.supplies != nullptr)
    block.rows.push_back(text_row("Kits and supplies weigh about " +
                                      print_mass(input.supplies->mass_kg, masses_in(setting.units), 0) +
                                      " in all, with what the ballast is filled with.",
                                  width));
  if (input.plan != nullptr)
    for (const PlannedTask& planned : input.plan->tasks)
      if (planned.task.id == "load-vehicle")
        block.rows.push_back(text_row("To load it at home one person alone walks to the vehicle " +
                                          so_many_of(planned.task.parts, "time") +
                                          ". The day sheet has the trips at the venue, counted for each area.",
                                      width));
  block.rows.push_back(text_row("Tick the left box when it is in the vehicle, the right one when it is back.", width));
  const auto missing = [&](const char* what) {
    block.rows.push_back(text_row(std::string(what) + " This list is not complete without it.", width));
  };
  if (input.house == nullptr) missing("The house with its tools and its ballast containers was not read.");
  if (input.supplies == nullptr) missing("What is in stock and what is bought was not reckoned.");
  if (input.power == nullptr) missing("Cords and power were not reckoned.");
  for (const PieceCount& piece : input.count.pieces)
    if (const std::string state = print_state(piece); !state.empty())
      block.rows.push_back(text_row((piece.name.empty() ? "Unnamed piece" : piece.name) + ": " + state +
                                        (piece.not_built ? "; nothing of it is on this list." : "."),
                                    width));
  return {block};
}

std::vector<Block> home_blocks(const Setting& setting, double width) {
  const SheetInput& input = setting.input;
  bool fills = false, charges = false;
  Block block;
  if (input.house != nullptr) {
    const House& house = *input.house;
    const bool sand = house.ballast_fill == BallastFill::sand;
    for (const FilledContainers& filled : containers_to_fill(input.event, input.built, house)) {
      TickLine line{so_many_of(filled.containers, "container") + " with " +
                    (sand ? print_quantity(filled.each_kg, "kg", lengths_in(setting.units)) + " of sand each"
                          : print_litres(filled.each_kg, setting.units) + " of water each, " +
                                print_mass(filled.each_kg, masses_in(setting.units)))};
      block.rows.push_back(tick_row(line, width));
      add_details(block, places_of(filled, input), width);
      fills = true;
    }
  }
  for (const SupplyLine& supply : input.count.supplies)
    if (supply.key.starts_with("dead-weight-")) {
      block.rows.push_back(tick_row({in_one_unit(supply.name, setting.units), "", "fill it, or fetch it filled",
                                     print_quantity(supply, lengths_in(setting.units))},
                                    width));
      fills = true;
    }
  if (input.power != nullptr && input.house != nullptr)
    for (const Tool& tool : tools_of(input.event, input.built, input.count, *input.house, *input.power))
      if (tool.key == "tool-battery") {
        block.rows.push_back(tick_row({tool.name + ", charged or fuelled", "", tool.why}, width));
        charges = true;
      }
  if (block.rows.empty()) return {};
  Block headed = tick_block(fills && charges ? "To fill and to charge at home"
                            : fills          ? "To fill at home"
                                             : "To charge at home",
                            width);
  headed.rows = std::move(block.rows);
  return {headed};
}

std::vector<Block> balloon_bag_blocks(const Setting& setting, double width) {
  const SheetInput& input = setting.input;
  if (input.count.bags.empty()) return {};
  Block block = tick_block("Balloons, in bags", width);
  for (const BalloonBag& bag : input.count.bags) {
    TickLine line{print_nominal(bag.nominal_in) + "  " + bag.colour_name};
    line.detail = std::to_string(bag.used) + " to use, " + so_many_of(bag.spares, "spare") + "; " + print_packs(bag) +
                  (bag.on_hand > 0 && !bag.bought.empty() ? ", " + std::to_string(bag.on_hand) + " from stock" : "");
    line.quantity = std::to_string(bag.used + bag.spares);
    line.has_swatch = true, line.colour = find_colour(input.palettes, bag.colour);
    block.rows.push_back(tick_row(line, width));
  }
  return {block};
}

std::vector<Block> place_blocks(const Setting& setting, double width) {
  const SheetInput& input = setting.input;
  const LengthStyle lengths = lengths_in(setting.units);
  if (input.supplies == nullptr) {
    // Without stock, what is needed all the same.
    Block block = tick_block("Supplies", width);
    for (const SupplyLine& supply : input.count.supplies)
      block.rows.push_back(
          tick_row({in_one_unit(supply.name, setting.units), "", "", print_quantity(supply, lengths)}, width));
    return block.rows.empty() ? std::vector<Block>{} : std::vector<Block>{block};
  }
  const auto is_placed = [](const auto& line) { return !line.kept_where.empty(); };
  const bool any_placed =
      std::ranges::any_of(input.supplies->kits, is_placed) || std::ranges::any_of(input.supplies->lines, is_placed);
  const char* const unplaced = any_placed ? "Everything else, no place noted" : "Frames, bases and supplies";
  std::map<std::string, Block> places;
  const auto place = [&](const std::string& name) -> Block& {
    const auto found = places.find(name);
    return found != places.end()
               ? found->second
               : places.emplace(name, tick_block(name.empty() ? unplaced : name, width, true)).first->second;
  };
  for (const KitOrder& kit : input.supplies->kits) {
    TickLine line{"Kit: " + kit.name};
    line.quantity = std::to_string(kit.kits), line.has_second_box = true;
    if (input.house != nullptr)
      if (const auto own = std::ranges::find(input.house->kits, kit.key, &FrameKit::key);
          own != input.house->kits.end())
        line.detail = in_one_unit(parts_of(*own, *input.supplies), setting.units);
    place(kit.kept_where).rows.push_back(tick_row(line, width, true));
  }
  for (const SupplyOrder& supply : input.supplies->lines) {
    if (!is_pulled(supply)) continue;
    TickLine line{in_one_unit(supply.name, setting.units)};
    line.quantity = print_quantity(supply.needed - supply.from_kits, supply.unit, lengths);
    line.detail = source_beside_kits(supply, lengths);
    if (const std::string use = print_use(supply); use == "used up") line.detail += "; " + use;
    line.has_second_box = supply.reused;
    place(supply.kept_where).rows.push_back(tick_row(line, width, true));
  }
  std::vector<Block> blocks;
  for (auto& [name, block] : places)
    if (!name.empty()) blocks.push_back(std::move(block));
  if (const auto last = places.find(""); last != places.end()) blocks.push_back(std::move(last->second));
  return blocks;
}

std::vector<Block> tool_blocks(const Setting& setting, double width) {
  const SheetInput& input = setting.input;
  if (input.house == nullptr) return {};
  const std::vector<AreaPower> none;
  const auto& power = input.power != nullptr ? *input.power : none;
  Block block = tick_block("Tools", width, true);
  for (const Tool& tool : tools_of(input.event, input.built, input.count, *input.house, power)) {
    TickLine line{tool.name};
    line.detail = tool.why + (tool.why.empty() || tool.kept_where.empty() ? "" : "; ") + tool.kept_where;
    line.has_second_box = tool.reused;
    block.rows.push_back(tick_row(line, width, true));
  }
  if (block.rows.empty()) return {};
  return {block};
}

}  // namespace quadrille
