#include "studio/host/build_once.hpp"

#include <algorithm>
#include <cmath>
#include <exception>
#include <vector>

#include "sdk/hidden.hpp"
#include "sdk/quoted.hpp"
#include "studio/host/plugin_text.hpp"
#include "studio/host/sink.hpp"

namespace quadrille {
namespace {

/// Borrows `value`.
quadrille_value to_abi(const Value& value) {
  return {static_cast<std::uint32_t>(value.kind), static_cast<std::uint32_t>(value.list.size()), value.number,
          value.text.c_str(), value.list.data()};
}

/// The status that build returned; a fault where it threw or returned none of the four.
std::int32_t call(const PieceType& type, std::span<const Value> values, const quadrille_sink& sink,
                  std::optional<Fault>& fault) {
  std::vector<quadrille_value> flat;
  for (const Value& value : values) flat.push_back(to_abi(value));
  try {
    const std::int32_t status = type.build(flat.data(), static_cast<std::uint32_t>(flat.size()), &sink);
    if (status >= QUADRILLE_OK && status <= QUADRILLE_INTERNAL) return status;
    fault = {FaultKind::broken, "it ended with the unknown status " + std::to_string(status) + "."};
  } catch (const std::exception& error) {
    fault = {FaultKind::threw, "it threw an exception: " + cleaned(error.what())};
  } catch (...) {
    fault = {FaultKind::threw, "it threw something that says nothing about itself."};
  }
  return QUADRILLE_INTERNAL;
}

bool has_refusal(const Piece& piece) {
  return std::ranges::any_of(piece.messages, [](const Message& m) { return m.severity == Severity::refusal; });
}

void measure(BuiltPiece& built) {
  built.box = box_of(built.piece);
  built.spine_m = built.piece.spine.empty() ? 0 : built.piece.spine.back().at_m;
  HiddenSpine hidden = hidden_spine(built.piece.spine, built.piece.balloons);
  built.hidden_share = hidden.share;
  built.bare = std::move(hidden.bare);
}

/// What a faulty build pushed cannot be trusted.
void keep_only_messages(Piece& piece) {
  Piece only_messages;
  only_messages.messages = std::move(piece.messages);
  piece = std::move(only_messages);
}

/// Sees to it that a piece which was not built says why.
void explain(BuiltPiece& built, const PieceType& type, const std::optional<Fault>& fault, std::int32_t status) {
  auto& messages = built.piece.messages;
  if (fault && (status != QUADRILLE_INTERNAL || !has_refusal(built.piece)))
    messages.push_back({Severity::refusal, "", "The piece type " + quoted(type.id) + " failed: " + fault->sentence});
  if (!has_refusal(built.piece))
    messages.push_back({Severity::refusal, "",
                        type.name + " cannot be built with these values; its piece type does not "
                                    "say why."});
}

}  // namespace

Attempt build_once(const PieceType& type, std::span<const Value> values) {
  auto built = std::make_shared<BuiltPiece>();
  Sink sink;
  std::optional<Fault> fault;
  const std::int32_t status = call(type, values, sink.record(), fault);
  if (!fault && sink.fault()) fault = sink.fault();
  built->piece = sink.take();
  if (!fault && status != QUADRILLE_INTERNAL) fault = fault_between(built->piece);
  if (!fault && status == QUADRILLE_OK && has_refusal(built->piece))
    fault = {FaultKind::broken, "it said that all is well and pushed a refusal: " + refusal_of(*built)};
  if (!fault && status == QUADRILLE_INTERNAL) {
    const std::string why = refusal_of(*built);
    fault = {FaultKind::threw, why.empty() ? "it failed inside without saying why." : why};
  }
  built->status = fault ? Status::internal : static_cast<Status>(status);
  if (fault)
    keep_only_messages(built->piece);
  else
    measure(*built);
  if (built->status != Status::ok) explain(*built, type, fault, status);
  return {std::move(built), std::move(fault)};
}

std::string refusal_of(const BuiltPiece& built) {
  for (const Message& message : built.piece.messages)
    if (message.severity == Severity::refusal)
      return message.key.empty() ? message.text : quoted(message.key) + ": " + message.text;
  return {};
}

Box box_of(const Piece& piece) {
  Box box;
  bool empty = true;
  const auto take = [&](const Vec3& centre, const Vec3& reach) {
    box.least = empty ? Vec3(centre - reach) : Vec3(box.least.cwiseMin(centre - reach));
    box.most = empty ? Vec3(centre + reach) : Vec3(box.most.cwiseMax(centre + reach));
    empty = false;
  };
  for (const Balloon& balloon : piece.balloons) {
    take(balloon.centre, Vec3::Constant(balloon.diameter_m / 2));
    take(balloon.neck, Vec3::Zero());
  }
  for (const Vec3& node : piece.frame.nodes) take(node, Vec3::Zero());
  for (const FrameMember& member : piece.frame.members) {
    const Vec3 &from = piece.frame.nodes[member.from], &to = piece.frame.nodes[member.to];
    const Vec3 along = (to - from).normalized();
    // A disc of radius r with the unit normal n reaches r √(1 − n_k²) along the axis k.
    const Vec3 reach = member.outer_m / 2 * (Vec3::Ones() - along.cwiseProduct(along)).cwiseMax(0).cwiseSqrt();
    take(from, reach);
    take(to, reach);
  }
  return box;
}

}  // namespace quadrille
