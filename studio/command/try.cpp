// quadrille try: one piece built without a file.
#include <algorithm>
#include <memory>
#include <ostream>
#include <utility>

#include "sdk/number.hpp"
#include "sdk/pattern.hpp"
#include "sdk/quoted.hpp"
#include "sdk/units.hpp"
#include "sdk/value_text.hpp"
#include "studio/command/built_json.hpp"
#include "studio/command/prepare.hpp"
#include "studio/command/try_values.hpp"
#include "studio/command/verbs.hpp"
#include "studio/command/write_output.hpp"
#include "studio/host/builder.hpp"
#include "studio/host/resolve.hpp"
#include "studio/model/finding_words.hpp"
#include "studio/model/near_word.hpp"
#include "studio/paper/sheet.hpp"
#include "studio/takeoff/print.hpp"

namespace quadrille {
namespace {

/// At six digits, which is plenty to read; --json has them all.
std::string number_text(double number) { return print_significant(number, 6); }

/// "48 × 11 in inflated to 9.0 in (22.9 cm), slot A", a line for each slot and size.
void print_balloons(const Piece& piece, std::ostream& out) {
  for (const LastBuilt::Count& count : counts_of(piece))
    out << "  " << count.balloons << " × " << print_nominal(count.nominal_in) << " inflated to "
        << print_inflated(count.inflated_m, LengthStyle::feet_inches) << " ("
        << print_inflated(count.inflated_m, LengthStyle::metres) << "), slot " << slot_letter(count.slot) << '\n';
}

/// In metres or kilograms, with feet or pounds in brackets.
std::string quantity_text(const Supply& supply) {
  const SupplyLine line{supply.key, supply.label, supply.unit, supply.quantity};
  const std::string metric = print_quantity(line, LengthStyle::metres);
  const std::string feet = print_quantity(line, LengthStyle::feet_inches);
  return feet == metric ? metric : metric + " (" + feet + ")";
}

void print_summary(const PieceType& type, const BuiltPiece& built, std::ostream& out) {
  const Piece& piece = built.piece;
  out << type.name << '\n'
      << "Width " << print_both(built.box.width_m()) << ", height " << print_both(built.box.height_m()) << ", depth "
      << print_both(built.box.depth_m()) << '\n'
      << "Spine " << print_both(built.spine_m) << ", " << print_fixed(built.hidden_share * 100, 0) << " % hidden\n"
      << piece.balloons.size() << " balloons in " << piece.clusters.size() << " clusters\n";
  print_balloons(piece, out);
  if (!piece.supplies.empty()) out << "Supplies\n";
  for (const Supply& supply : piece.supplies) out << "  " << supply.label << ": " << quantity_text(supply) << '\n';
  if (!piece.facts.empty()) out << "Facts\n";
  for (const Fact& fact : piece.facts) out << "  " << fact.key << " = " << number_text(fact.number) << '\n';
}

void print_messages(const Piece& piece, std::ostream& err) {
  constexpr std::string_view severities[] = {"note: ", "warning: ", "refused: "};
  for (const Message& message : piece.messages)
    err << severities[std::min<std::size_t>(static_cast<std::size_t>(message.severity), 2)]
        << with_key(message.text, message.key) << '\n';
}

/// About lengths that were given without a unit and are unusual in metres.
void print_unit_slips(const PieceType& type, const TryRequest& request, std::ostream& err) {
  for (const std::string& word : request.values) {
    const std::size_t mark = std::min(word.find('='), word.size() - 1);
    const std::string key = word.substr(0, mark), text = word.substr(mark + 1);
    const Parameter* parameter = type.find(key);
    if (parameter == nullptr || text.find_first_not_of("0123456789.,+- ") != std::string::npos) continue;
    const auto value = parse_value(parameter->kind, text);
    const std::string meant = value ? unit_meant(*parameter, value->number) : std::string();
    if (!meant.empty())
      err << "note: " << word << " is " << in_words(parameter->kind, value->number)
          << ", since a bare number is in metres: " << meant << '\n';
  }
}

/// Colours for slots A, B, …: spread over the first palette there is; none where there is no palette.
std::vector<ColourReference> spread_colours(const std::vector<Palette>& palettes) {
  std::vector<ColourReference> colours;
  for (const Palette& palette : palettes) {
    const std::size_t size = palette.colours.size();
    if (size == 0) continue;
    for (std::size_t slot = 0; slot < most_slots; ++slot)
      colours.push_back({palette.key, palette.colours[slot * size / most_slots].key});
    break;
  }
  return colours;
}

/// The piece in an event of its own, half a metre from the area's left edge.
Exit draw_alone(const PieceType& type, const std::shared_ptr<const BuiltPiece>& built, const TryRequest& request,
                DrawingFormat format, const Console& console) {
  const auto loaded = load_palettes(standard_palette_folders(console.executable, *request.out));
  PlacedPiece placed;
  placed.id = "p1";
  placed.name = type.name;
  placed.type = type.id;
  placed.x_m = 0.5 - built->box.least.x();
  placed.colours = spread_colours(loaded.palettes);
  Area area;
  area.id = "a1";
  area.name = type.name;
  area.pieces.emplace_back(placed);
  Event event;
  event.title = type.name;
  event.areas.emplace_back(area);
  const BuiltEvent pieces{{"p1", built}};
  const EventCount total = count_event(event, pieces, loaded.palettes);
  const auto pages = elevation_sheet({event, pieces, total, loaded.palettes}, {});
  return write_drawing(pages, *request.out, format, {event.title, event.date}, {}, console);
}

std::string unknown_type(const std::string& wanted, const PieceTypes& types) {
  std::vector<std::string> ids;
  for (const PieceType& type : types.types) ids.push_back(type.id);
  std::string list;
  for (const std::string& id : ids) list += (list.empty() ? "" : ", ") + id;
  std::string sentence =
      "There is no piece type " + quoted(wanted) + "; there is " + (list.empty() ? "none" : list) + ".";
  if (const auto meant = near_word(wanted, ids)) sentence += " Did you mean " + *meant + "?";
  if (!types.refused.empty()) sentence += " Some plugin files were refused: 'quadrille pieces' says why.";
  return sentence;
}

}  // namespace

Exit try_piece(const TryRequest& request, const Console& console) {
  const auto fail = [&](Exit exit, const std::string& sentence) {
    console.err << sentence << '\n';
    return exit;
  };
  const auto format = request.out ? format_of(*request.out) : std::nullopt;
  if (request.out && !format) return fail(Exit::usage, sentence_about_ending(*request.out));
  const PieceTypes types = find_types(console);
  const PieceType* type = types.find(request.type);
  if (!type) return fail(Exit::usage, unknown_type(request.type, types));
  const auto values = values_of(*type, request.values);
  if (!values) return fail(Exit::usage, values.error);

  const auto built = build_piece(*type, *values);
  if (request.json) console.out << printed_compact(json_of(type->id, *built));
  print_messages(built->piece, console.err);
  print_unit_slips(*type, request, console.err);
  if (built->status == Status::infeasible) return Exit::problems;
  if (built->status != Status::ok) return Exit::bad_input;
  if (format) return draw_alone(*type, built, request, *format, console);
  if (!request.json) print_summary(*type, *built, console.out);
  return Exit::done;
}

}  // namespace quadrille
