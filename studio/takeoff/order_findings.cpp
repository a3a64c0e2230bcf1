#include "studio/takeoff/order_findings.hpp"

#include <algorithm>
#include <set>
#include <string>
#include <utility>
#include <vector>

#include "sdk/number.hpp"
#include "sdk/pattern.hpp"
#include "studio/takeoff/market.hpp"
#include "studio/takeoff/print.hpp"

namespace quadrille {
namespace {

constexpr std::size_t most_listed = 6;
constexpr std::size_t most_alike = 3;

/// "5, 11 and 16"; where more are left out "A, B, … and 3 more".
std::string list_of(const std::vector<std::string>& items, std::size_t most) {
  std::string list;
  const std::size_t shown = items.size() <= most ? items.size() : most - 1;
  for (std::size_t i = 0; i < shown; ++i) list += (i == 0 ? "" : i + 1 == items.size() ? " and " : ", ") + items[i];
  if (shown < items.size()) list += " and " + std::to_string(items.size() - shown) + " more";
  return list;
}

std::string remedy_for(const BalloonBag& bag, std::span<const Palette> palettes, const House& house) {
  std::vector<std::string> sizes;
  for (const double size : sizes_sold(bag.colour, palettes, house)) sizes.push_back(print_number(size));
  std::vector<std::string> alike = alike_sold(bag.colour, bag.nominal_in, palettes, house);
  alike.resize(std::min(alike.size(), most_alike));
  const std::string size = print_nominal(bag.nominal_in);
  std::string text = bag.colour_name +
                     (sizes.empty() ? " is sold in no size." : " is sold in " + list_of(sizes, sizes.size()) + " in.");
  if (alike.empty())
    text += " No colour of its palette is sold in " + size + ".";
  else
    text +=
        " In " + size + (alike.size() == 1 ? " there is " : " the most alike are ") + list_of(alike, most_alike) + ".";
  return text + " Or put packs that you know of into the palette or the house.";
}

/// "slot B" where one slot of the piece has the colour, "slots A, C" where several have.
std::string slots_of(const PlacedPiece& piece, const ColourReference& colour) {
  std::string slots;
  std::size_t number = 0;
  for (std::size_t slot = 0; slot < piece.colours.size(); ++slot)
    if (piece.colours[slot] == colour) {
      slots += (slots.empty() ? "" : ", ") + slot_name(slot);
      ++number;
    }
  return (number == 1 ? "slot " : "slots ") + slots;
}

/// The pieces that have balloons of a bag.
std::vector<const PieceCount*> pieces_with(const BalloonBag& bag, const EventCount& count) {
  std::vector<const PieceCount*> pieces;
  for (const PieceCount& piece : count.pieces)
    if (std::ranges::any_of(piece.lines, [&](const BalloonLine& line) {
          return line.colour == bag.colour && line.nominal_in == bag.nominal_in;
        }))
      pieces.push_back(&piece);
  return pieces;
}

void say_not_sold(const Event& event, const EventCount& count, const BalloonBag& bag, std::span<const Palette> palettes,
                  const House& house, Findings& findings) {
  const auto pieces = pieces_with(bag, count);
  Finding finding{Weight::problem, "size-not-sold", {}, {}, {}, {}, remedy_for(bag, palettes, house)};
  finding.text = bag.colour_name + " is not sold in " + print_nominal(bag.nominal_in) + ", and " +
                 std::to_string(bag.used) + (bag.used == 1 ? " balloon is" : " balloons are") + " of it";
  std::vector<std::string> names;
  for (const PieceCount* piece : pieces) {
    const PlacedPiece* const placed = find_piece(event, piece->id);
    const std::string slots = placed == nullptr ? "" : slots_of(*placed, bag.colour);
    names.push_back((piece->name.empty() ? piece->id : piece->name) + " (" + slots + ")");
    if (pieces.size() == 1) finding.area = piece->area, finding.piece = piece->id, finding.key = slots;
  }
  finding.text += pieces.size() == 1 ? "." : ": " + list_of(names, most_listed) + ".";
  findings.push_back(std::move(finding));
}

void say_other_currencies(const Event& event, const EventCount& count, const House& house, Findings& findings) {
  std::set<std::string> said;
  for (const BalloonBag& bag : count.bags) {
    if (bag.bought.empty() || bag.currency == event.currency || bag.currency == house.currency) continue;
    if (said.insert(bag.colour.palette).second)
      findings.push_back(
          {Weight::warning,
           "other-currency",
           {},
           {},
           "currency",
           "The palette \"" + bag.colour.palette + "\" has its prices in " + bag.currency +
               ", and the event reckons in " + event.currency + "; they are not converted.",
           "Use a palette with prices in " + event.currency + ", or put your own packs into the house."});
  }
  if (house.currency != event.currency)
    findings.push_back({Weight::warning,
                        "other-currency",
                        {},
                        {},
                        "currency",
                        "The house has its prices in " + house.currency + ", and the event reckons in " +
                            event.currency + "; they are not converted.",
                        "Set one of the two currencies to the other."});
}

void say_no_prices(const SuppliesOrder& supplies, Findings& findings) {
  for (const SupplyOrder& line : supplies.lines)
    if (!line.cost_minor && line.to_buy > 0)
      findings.push_back({Weight::note,
                          "no-price",
                          {},
                          {},
                          line.key,
                          "No price for \"" + line.name + "\": its cost is not known and is in no sum.",
                          "Put a supply with the key \"" + line.key + "\", or the beginning of it, into the house."});
}

}  // namespace

Findings order_findings(const Event& event, const EventCount& count, const SuppliesOrder& supplies,
                        std::span<const Palette> palettes, const House& house) {
  Findings findings;
  for (const BalloonBag& bag : count.bags)
    if (!bag.is_sold && bag.order > 0 && find_colour(palettes, bag.colour) != nullptr)
      say_not_sold(event, count, bag, palettes, house, findings);
  say_other_currencies(event, count, house, findings);
  say_no_prices(supplies, findings);
  return findings;
}

}  // namespace quadrille
