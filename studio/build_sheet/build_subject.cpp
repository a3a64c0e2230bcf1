#include "studio/build_sheet/build_subject.hpp"

#include <algorithm>
#include <cmath>
#include <utility>

#include "studio/model/finding_words.hpp"
#include "studio/takeoff/count.hpp"
#include "studio/takeoff/placing.hpp"

namespace quadrille {
namespace {

/// Everything of a site that a build sheet depends on.
bool same_site(const Site& a, const Site& b) {
  return a.surroundings == b.surroundings && is_hard(a.ground) == is_hard(b.ground);
}

bool same_lines(const BuildSubject& a, const BuildSubject& b, LengthStyle lengths) {
  return std::ranges::equal(a.lines, b.lines, [&](const AnchoredLine& one, const AnchoredLine& other) {
    const SecuringLine &first = a.placed().lines[one.line], &second = b.placed().lines[other.line];
    return one.run.tie_point == other.run.tie_point && (one.run.to - other.run.to).norm() < 0.005 &&
           first.cord == second.cord &&
           print_anchor(first, a.area(), lengths) == print_anchor(second, b.area(), lengths);
  });
}

bool alike(const BuildSubject& a, const BuildSubject& b, LengthStyle lengths) {
  return a.placed().type == b.placed().type && a.placed().colours == b.placed().colours && a.piece() == b.piece() &&
         same_site(a.area().site, b.area().site) && a.area().walkways.empty() == b.area().walkways.empty() &&
         a.sizes == b.sizes && same_lines(a, b, lengths);
}

const PieceCount* find_count(const EventCount& count, const std::string& id) {
  const auto found = std::ranges::find(count.pieces, id, &PieceCount::id);
  return found == count.pieces.end() ? nullptr : &*found;
}

BuildSubject subject_of(BuildPiece piece, std::shared_ptr<const BuiltPiece> built) {
  BuildSubject subject;
  const Piece& made = built->piece;
  subject.lines = anchored_lines(*piece.placed, made, *piece.area);
  subject.counts = counts_of(made);
  subject.sizes = sizer_lines(subject.counts, piece.area->site);
  subject.pieces = {std::move(piece)};
  subject.built = std::move(built);
  return subject;
}

/// What only one of the pieces alike has to be asked for.
void complete(BuildSubject& subject) {
  const Piece& piece = subject.piece();
  subject.chart = cluster_chart(piece);
  subject.loose = loose_balloons(piece);
  subject.frame = frame_sections(piece.frame);
  subject.supports = named_supports(piece);
}

std::string why_left_out(const BuildPiece& piece, const BuiltEvent& built) {
  const auto found = built.find(piece.placed->id);
  if (found == built.end()) return piece.name() + ": its piece type is not available.";
  for (const Message& message : found->second->piece.messages)
    if (message.severity == Severity::refusal) return piece.name() + ": " + message.text;
  return piece.name() + ": it cannot be built as it is set.";
}

}  // namespace

std::string BuildSubject::title() const {
  if (pieces.size() == 1) return pieces.front().name();
  std::vector<std::string> names;
  for (const BuildPiece& piece : pieces) names.push_back(piece.name());
  const std::string all = print_names(names);
  constexpr std::size_t longest = 48;  // bytes; more does not go over a page, and all names are beneath
  return all.size() <= longest ? all : names.front() + " (" + std::to_string(names.size()) + " alike)";
}

std::int64_t containers_on(const BuildSubject& subject, const Support& support) {
  const PieceCount* counted = subject.pieces.front().count;
  if (counted == nullptr || !(support.ballast_kg > 0)) return 0;
  double containers = 0, ballast_kg = 0;
  for (const SupplyLine& supply : counted->supplies)
    if (supply.key == ballast_container_key) containers += supply.quantity;
  for (const Support& other : subject.piece().supports) ballast_kg += other.ballast_kg;
  constexpr double most = 1000;  // as far as anybody looks at them one by one
  return std::llround(std::min(most, containers * support.ballast_kg / ballast_kg));
}

std::vector<LooseGroup> loose_groups(const BuildSubject& subject) {
  const auto& loose = subject.loose;
  const auto balloon = [&](const LooseBalloon& one) -> const Balloon& { return subject.piece().balloons[one.balloon]; };
  std::vector<LooseGroup> groups;
  for (const LooseBalloon& one : loose) {
    const auto goes_with = [&](const LooseBalloon& first) {
      const Balloon &a = balloon(one), &b = balloon(first);
      return std::abs(one.at_m - first.at_m) < 0.01 && a.role == b.role && a.slot == b.slot &&
             a.nominal_in == b.nominal_in;
    };
    if (groups.empty() || !goes_with(*groups.back().all.front())) groups.emplace_back();
    groups.back().all.push_back(&one);
  }
  for (LooseGroup& group : groups) {
    group.name = group.all.front()->name;
    if (group.all.size() > 1) group.name += "–" + group.all.back()->name;
  }
  return groups;
}

std::vector<BuildSubject> build_subjects(const Setting& setting, std::vector<std::string>& left_out) {
  const SheetInput& input = setting.input;
  const auto& wanted = setting.options.area;
  std::vector<BuildSubject> subjects;
  for (const auto& area : input.event.areas) {
    if (wanted && *wanted != area->id && *wanted != area->name) continue;
    std::size_t number = 0;
    for (const auto& placed : area->pieces) {
      if (placed->hidden) continue;
      const BuildPiece piece{&*area, &*placed, find_count(input.count, placed->id), ++number};
      const auto built = input.built.find(placed->id);
      if (built == input.built.end() || built->second->status != Status::ok) {
        left_out.push_back(why_left_out(piece, input.built));
        continue;
      }
      BuildSubject subject = subject_of(piece, built->second);
      const auto same = std::ranges::find_if(
          subjects, [&](const BuildSubject& other) { return alike(other, subject, lengths_in(setting.units)); });
      if (same != subjects.end())
        same->pieces.push_back(piece);
      else
        subjects.push_back(std::move(subject));
    }
  }
  for (BuildSubject& subject : subjects) complete(subject);
  return subjects;
}

}  // namespace quadrille
