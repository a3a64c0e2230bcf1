// What a piece says survives the way through flat records, field by field.
#include "sdk/records.hpp"

#include <doctest/doctest.h>

#include <cstring>

using namespace quadrille;

// Every field has a value of its own, so that two that were exchanged, or one that was left out, cannot pass.

TEST_CASE("records read back as the values they were made from") {
  const Balloon balloon{{1, 2, 3}, {4, 5, 6}, 0.28, 11, 7, 8, 9, Role::topper};
  CHECK(from_record(to_record(balloon)) == balloon);
  const Cluster cluster{10, 0.5, {1, 2, 3}, {0, 1, 0}, 0.7};
  CHECK(from_record(to_record(cluster)) == cluster);
  const SpinePoint point{1.5, {1, 2, 3}};
  CHECK(from_record(to_record(point)) == point);
  const Vec3 node{1, 2, 3};
  CHECK(from_record(to_record(node)) == node);
  const FrameMember member{1, 2, Joint::hinge, Rest::straight, 0.02, 0.01, 9e9, 1400, 5e7};
  CHECK(from_record(to_record(member)) == member);
  for (const bool turns : {false, true}) {
    const Support support{SupportKind::hook, 3, turns, 0.4, 0.5, 6, 7, 8};
    CHECK(from_record(to_record(support)) == support);
  }
  const TiePoint tie{4, TiePurpose::side, {1, 2, 3}, "crown, to the side"};
  CHECK(from_record(to_record(tie)) == tie);
  const Supply supply{"rod", "Rod", "m", 6.5};
  CHECK(from_record(to_record(supply)) == supply);
  const Work work{"tie", "Tie quads", 33};
  CHECK(from_record(to_record(work)) == work);
  const AnchoringRule rule{Requirement::joints, When::walkway, "key", "text", "reason", "source"};
  CHECK(from_record(to_record(rule)) == rule);
  const Message message{Severity::warning, "span", "Too wide.", Topic::bare_frame};
  CHECK(from_record(to_record(message)) == message);
  // A plugin of a later version may send a topic that is not known here.
  auto later = to_record(message);
  later.topic = 9;
  CHECK(from_record(later).topic == Topic::other);
  const Fact fact{"height_m", 2.4};
  CHECK(from_record(to_record(fact)) == fact);
}

TEST_CASE("each field of a record holds the field of that meaning") {
  const auto balloon = to_record(Balloon{{1, 2, 3}, {4, 5, 6}, 0.28, 11, 7, 8, 9, Role::topper});
  CHECK(balloon.centre[2] == 3);
  CHECK(balloon.neck[0] == 4);
  CHECK(balloon.diameter == 0.28);
  CHECK(balloon.nominal == 11);
  CHECK(balloon.slot == 7);
  CHECK(balloon.cluster == 8);
  CHECK(balloon.place == 9);
  CHECK(balloon.role == QUADRILLE_ROLE_TOPPER);
  const auto member = to_record(FrameMember{1, 2, Joint::hinge, Rest::straight, 0.02, 0.01, 9e9, 1400, 5e7});
  CHECK(member.from == 1);
  CHECK(member.to == 2);
  CHECK(member.joint_from == QUADRILLE_JOINT_HINGE);
  CHECK(member.rest == QUADRILLE_REST_STRAIGHT);
  CHECK(member.outer == 0.02);
  CHECK(member.inner == 0.01);
  CHECK(member.young == 9e9);
  CHECK(member.density == 1400);
  CHECK(member.strength == 5e7);
  const auto support = to_record(Support{SupportKind::hook, 3, true, 0.4, 0.5, 6, 7, 8});
  CHECK(support.kind == QUADRILLE_SUPPORT_HOOK);
  CHECK(support.turns == 1);
  CHECK(support.width == 0.4);
  CHECK(support.depth == 0.5);
  CHECK(support.own_mass == 6);
  CHECK(support.ballast == 7);
  CHECK(support.ballast_limit == 8);
  const AnchoringRule rule{Requirement::joints, When::walkway, "key", "text", "reason", "source"};
  const auto anchoring = to_record(rule);
  CHECK(anchoring.requirement == QUADRILLE_SECURE_JOINTS);
  CHECK(anchoring.when == QUADRILLE_WHEN_WALKWAY);
  CHECK(std::strcmp(anchoring.text, "text") == 0);
  CHECK(std::strcmp(anchoring.source, "source") == 0);
}
