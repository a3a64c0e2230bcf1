// What builds have to say about an event, as findings.
#include <algorithm>

#include "sdk/hidden.hpp"
#include "sdk/number.hpp"
#include "sdk/pattern_check.hpp"
#include "sdk/quoted.hpp"
#include "sdk/value_text.hpp"
#include "studio/host/builder.hpp"
#include "studio/host/resolve.hpp"
#include "studio/model/lengths.hpp"
#include "studio/model/near_word.hpp"

namespace quadrille {
namespace {

constexpr double hardly_hidden = 0.6;  // of the frame: with less, anybody sees it. Common practice, no source
constexpr std::size_t most_listed = 5;

/// Adds findings about one piece.
class PieceFindings {
 public:
  PieceFindings(const Area& area, const PlacedPiece& piece, Units units, Findings& findings)
      : area_(area), piece_(piece), findings_(findings), style_(lengths_in(units)) {}

  void type_missing(const PieceTypes& types) {
    const auto refused = std::ranges::find(types.refused, piece_.type, &RefusedFile::type);
    std::string why = "The piece type " + quoted(piece_.type) + " is not available";
    if (!piece_.type.empty() && refused != types.refused.end()) why += " (" + refused->sentence + ")";
    const bool counted = piece_.last_built.has_value();
    std::vector<std::string> ids;
    for (const PieceType& type : types.types) ids.push_back(type.id);
    const auto meant = near_word(piece_.type, ids);
    add(counted ? Weight::warning : Weight::problem, "type-missing", "",
        why + (counted ? ", so the piece is drawn at its last size and counted as last calculated."
                       : ", so only the piece's place is drawn, and nothing is counted for it."),
        (meant ? "Did you mean " + quoted(*meant) + "? Otherwise put" : std::string("Put")) +
            " the plugin that has this piece type where the studio looks for it; 'quadrille pieces' lists what was "
            "found.");
  }

  /// The remedy of a refusal goes with a value that was probably meant in feet or inches.
  void messages(const Piece& piece, const PieceTypes& types) {
    for (const Message& message : piece.messages) {
      const bool refusal = message.severity == Severity::refusal, warning = message.severity == Severity::warning;
      add(refusal   ? Weight::problem
          : warning ? Weight::warning
                    : Weight::note,
          refusal   ? "refused"
          : warning ? "warning"
                    : "note",
          message.key, message.text, refusal ? unit_slip(types) : "");
      findings_.back().change = change_of(message.remedy, types);
    }
  }

  /// Only where the frame shows, and the piece type has not said so itself.
  void hidden_share(const BuiltPiece& built) {
    if (built.bare.empty() || built.hidden_share >= hidden_aim) return;
    if (std::ranges::count(built.piece.messages, Topic::bare_frame, &Message::topic) > 0) return;
    const auto longer = [](const Stretch& a, const Stretch& b) { return a.to_m - a.from_m < b.to_m - b.from_m; };
    const Stretch longest = *std::ranges::max_element(built.bare, longer);
    add(built.hidden_share < hardly_hidden ? Weight::warning : Weight::note, "frame-shows", "",
        print_fixed(100 * built.hidden_share, 0) + " % of the frame is hidden; the longest bare stretch runs from " +
            length(longest.from_m) + " to " + length(longest.to_m) + " along it.",
        "");
  }

  void pattern(const Piece& piece) {
    const auto breaks = pattern_breaks(piece);
    for (std::size_t i = 0; i < std::min(breaks.size(), most_listed); ++i)
      add(Weight::warning, "pattern-breaks", "", breaks[i].text, "");
    if (breaks.size() > most_listed)
      add(Weight::warning, "pattern-breaks", "",
          std::to_string(breaks.size() - most_listed) + " more clusters break the pattern.", "");
  }

 private:
  /// The change that a message's remedy writes; nothing where it writes none that the type would accept, or one that
  /// changes nothing.
  std::optional<ValueChange> change_of(const std::string& remedy, const PieceTypes& types) const {
    const std::size_t equal = remedy.find('=');
    const PieceType* type = types.find(piece_.type);
    if (equal == std::string::npos || type == nullptr) return std::nullopt;
    const Parameter* parameter = type->find(std::string_view(remedy).substr(0, equal));
    if (parameter == nullptr) return std::nullopt;
    const auto value = parse_value(parameter->kind, std::string_view(remedy).substr(equal + 1));
    if (!value || !fault_of_value(*parameter, *value).empty() || *value == value_of(piece_.values, *parameter))
      return std::nullopt;
    const std::string_view held = held_under(piece_.values, *parameter);
    return ValueChange{piece_.id, held.empty() ? parameter->key : std::string(held), *value};
  }
  /// A sentence about the first such value; empty where there is none.
  std::string unit_slip(const PieceTypes& types) const {
    const PieceType* type = types.find(piece_.type);
    if (type == nullptr) return {};
    for (const auto& [key, value] : piece_.values) {
      const Parameter* parameter = type->find(key);
      if (parameter == nullptr || parameter->kind != value.kind) continue;
      if (const std::string meant = unit_meant(*parameter, value.number); !meant.empty())
        return parameter->label + " is " + in_words(value.kind, value.number) + ": " + meant;
    }
    return {};
  }
  std::string length(double metres) const { return print_length(metres, style_); }
  void add(Weight weight, std::string code, std::string key, std::string text, std::string remedy) {
    findings_.push_back(
        {weight, std::move(code), area_.id, piece_.id, std::move(key), std::move(text), std::move(remedy)});
  }

  const Area& area_;
  const PlacedPiece& piece_;
  Findings& findings_;
  LengthStyle style_;
};

}  // namespace

Findings findings_of(const Event& event, const BuiltEvent& built, const PieceTypes& types) {
  Findings findings;
  for (const auto& area : event.areas)
    for (const auto& piece : area->pieces) {
      PieceFindings about(*area, *piece, event.units, findings);
      const auto found = built.find(piece->id);
      if (found == built.end() || found->second == nullptr) {
        if (types.find(piece->type) == nullptr) about.type_missing(types);
        continue;
      }
      about.messages(found->second->piece, types);
      if (found->second->status != Status::ok) continue;
      about.hidden_share(*found->second);
      about.pattern(found->second->piece);
    }
  return findings;
}

Findings findings_of_refused(const PieceTypes& types) {
  Findings findings;
  for (const RefusedFile& file : types.refused) {
    const bool crashed = file.reason == RefusalReason::crashed_before;
    findings.push_back({Weight::warning, "plugin-" + std::string(key_of(file.reason)), "", "", "",
                        file.file.string() + ": " + file.sentence,
                        crashed ? "The list of piece types in the studio, or 'quadrille pieces --try-again', gives it "
                                  "another chance."
                                : ""});
  }
  return findings;
}

}  // namespace quadrille
