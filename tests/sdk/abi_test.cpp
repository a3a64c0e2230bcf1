// The contract's numbers, which plugins in the world are compiled with: the layout (abi_layout.h, checked while
// compiling), the codes, and that the C++ side says the same.
#include "sdk/abi.h"

#include <doctest/doctest.h>

#include <cstring>
#include <vector>

#include "abi_layout.h"
#include "sdk/built.hpp"
#include "sdk/records.hpp"
#include "sdk/value.hpp"

using namespace quadrille;

extern "C" const quadrille_pieces quadrille_pieces_v1;  // of abi_plugin.c

namespace {

/// True where the codes are 0, 1, 2, … or go on from `first`, in this order.
template <class... Codes>
constexpr bool counts_from(int first, Codes... codes) {
  bool in_order = true;
  ((in_order = in_order && static_cast<int>(codes) == first++), ...);
  return in_order;
}

template <class Code>
constexpr bool same(Code ours, int theirs) {
  return code_of(ours) == static_cast<std::uint32_t>(theirs);
}

}  // namespace

TEST_CASE("the codes of the contract never change") {
  static_assert(QUADRILLE_ABI_MAJOR == 1);
  static_assert(counts_from(1, QUADRILLE_LENGTH, QUADRILLE_ANGLE, QUADRILLE_MASS, QUADRILLE_COUNT, QUADRILLE_RATIO,
                            QUADRILLE_FLAG, QUADRILLE_BALLOON, QUADRILLE_SLOTS, QUADRILLE_SEED, QUADRILLE_CHOICE,
                            QUADRILLE_ROWS, QUADRILLE_PATH, QUADRILLE_MIX));
  static_assert(counts_from(0, QUADRILLE_NO_HANDLE, QUADRILLE_HANDLE_LEFT, QUADRILLE_HANDLE_RIGHT, QUADRILLE_HANDLE_TOP,
                            QUADRILLE_HANDLE_POINTS));
  static_assert(counts_from(1, QUADRILLE_RECORD_BALLOON, QUADRILLE_RECORD_CLUSTER, QUADRILLE_RECORD_SPINE_POINT,
                            QUADRILLE_RECORD_FRAME_NODE, QUADRILLE_RECORD_FRAME_MEMBER, QUADRILLE_RECORD_SUPPORT,
                            QUADRILLE_RECORD_TIE_POINT, QUADRILLE_RECORD_SUPPLY, QUADRILLE_RECORD_WORK,
                            QUADRILLE_RECORD_ANCHORING, QUADRILLE_RECORD_MESSAGE, QUADRILLE_RECORD_FACT));
  static_assert(counts_from(0, QUADRILLE_ROLE_BODY, QUADRILLE_ROLE_FILLER, QUADRILLE_ROLE_ACCENT, QUADRILLE_ROLE_TOPPER,
                            QUADRILLE_ROLE_COLLAR));
  static_assert(counts_from(0, QUADRILLE_JOINT_RIGID, QUADRILLE_JOINT_SLEEVE, QUADRILLE_JOINT_HINGE));
  static_assert(counts_from(0, QUADRILLE_REST_AS_DRAWN, QUADRILLE_REST_STRAIGHT));
  static_assert(counts_from(0, QUADRILLE_SUPPORT_PLATE, QUADRILLE_SUPPORT_SOCKET, QUADRILLE_SUPPORT_HOOK,
                            QUADRILLE_SUPPORT_SURFACE));
  static_assert(counts_from(0, QUADRILLE_TIE_FRONT, QUADRILLE_TIE_BACK, QUADRILLE_TIE_SIDE));
  static_assert(counts_from(0, QUADRILLE_WHEN_ALWAYS, QUADRILLE_WHEN_OUTDOORS, QUADRILLE_WHEN_WALKWAY,
                            QUADRILLE_WHEN_HARD_GROUND, QUADRILLE_WHEN_SOFT_GROUND, QUADRILLE_WHEN_INDOORS));
  static_assert(counts_from(0, QUADRILLE_SECURE_CLUSTERS_TO_FRAME, QUADRILLE_SECURE_CLUSTERS_TOGETHER,
                            QUADRILLE_SECURE_FRONT_AND_BACK, QUADRILLE_SECURE_BALLAST, QUADRILLE_SECURE_JOINTS,
                            QUADRILLE_SECURE_CLEARANCE, QUADRILLE_SECURE_OTHER));
  static_assert(counts_from(0, QUADRILLE_NOTE, QUADRILLE_WARNING, QUADRILLE_REFUSAL));
  static_assert(counts_from(0, QUADRILLE_OK, QUADRILLE_BAD_PARAMETER, QUADRILLE_INFEASIBLE, QUADRILLE_INTERNAL));
}

TEST_CASE("the C++ side has the codes of the contract") {
  static_assert(same(Kind::length, QUADRILLE_LENGTH) && same(Kind::angle, QUADRILLE_ANGLE) &&
                same(Kind::mass, QUADRILLE_MASS) && same(Kind::count, QUADRILLE_COUNT) &&
                same(Kind::ratio, QUADRILLE_RATIO) && same(Kind::flag, QUADRILLE_FLAG) &&
                same(Kind::balloon, QUADRILLE_BALLOON) && same(Kind::slots, QUADRILLE_SLOTS) &&
                same(Kind::seed, QUADRILLE_SEED) && same(Kind::choice, QUADRILLE_CHOICE) &&
                same(Kind::rows, QUADRILLE_ROWS) && same(Kind::path, QUADRILLE_PATH) && same(Kind::mix, QUADRILLE_MIX));
  static_assert(same(Role::body, QUADRILLE_ROLE_BODY) && same(Role::filler, QUADRILLE_ROLE_FILLER) &&
                same(Role::accent, QUADRILLE_ROLE_ACCENT) && same(Role::topper, QUADRILLE_ROLE_TOPPER) &&
                same(Role::collar, QUADRILLE_ROLE_COLLAR));
  static_assert(same(Joint::rigid, QUADRILLE_JOINT_RIGID) && same(Joint::sleeve, QUADRILLE_JOINT_SLEEVE) &&
                same(Joint::hinge, QUADRILLE_JOINT_HINGE));
  static_assert(same(Rest::as_drawn, QUADRILLE_REST_AS_DRAWN) && same(Rest::straight, QUADRILLE_REST_STRAIGHT));
  static_assert(
      same(SupportKind::plate, QUADRILLE_SUPPORT_PLATE) && same(SupportKind::socket, QUADRILLE_SUPPORT_SOCKET) &&
      same(SupportKind::hook, QUADRILLE_SUPPORT_HOOK) && same(SupportKind::surface, QUADRILLE_SUPPORT_SURFACE));
  static_assert(same(TiePurpose::front, QUADRILLE_TIE_FRONT) && same(TiePurpose::back, QUADRILLE_TIE_BACK) &&
                same(TiePurpose::side, QUADRILLE_TIE_SIDE));
  static_assert(same(When::always, QUADRILLE_WHEN_ALWAYS) && same(When::outdoors, QUADRILLE_WHEN_OUTDOORS) &&
                same(When::walkway, QUADRILLE_WHEN_WALKWAY) && same(When::hard_ground, QUADRILLE_WHEN_HARD_GROUND) &&
                same(When::soft_ground, QUADRILLE_WHEN_SOFT_GROUND) && same(When::indoors, QUADRILLE_WHEN_INDOORS));
  static_assert(
      same(Requirement::clusters_to_frame, QUADRILLE_SECURE_CLUSTERS_TO_FRAME) &&
      same(Requirement::clusters_together, QUADRILLE_SECURE_CLUSTERS_TOGETHER) &&
      same(Requirement::front_and_back, QUADRILLE_SECURE_FRONT_AND_BACK) &&
      same(Requirement::ballast, QUADRILLE_SECURE_BALLAST) && same(Requirement::joints, QUADRILLE_SECURE_JOINTS) &&
      same(Requirement::clearance, QUADRILLE_SECURE_CLEARANCE) && same(Requirement::other, QUADRILLE_SECURE_OTHER));
  static_assert(same(Severity::note, QUADRILLE_NOTE) && same(Severity::warning, QUADRILLE_WARNING) &&
                same(Severity::refusal, QUADRILLE_REFUSAL));
  static_assert(same(Status::ok, QUADRILLE_OK) && same(Status::bad_parameter, QUADRILLE_BAD_PARAMETER) &&
                same(Status::infeasible, QUADRILLE_INFEASIBLE) && same(Status::internal, QUADRILLE_INTERNAL));
}

TEST_CASE("which field of a value a kind uses follows the contract's page") {
  for (int code = QUADRILLE_LENGTH; code <= QUADRILLE_MIX; ++code) {
    const auto kind = static_cast<Kind>(code);
    CAPTURE(code);
    CHECK(is_number(kind) == (code <= QUADRILLE_SEED));
    CHECK(is_text(kind) == (code == QUADRILLE_CHOICE || code == QUADRILLE_ROWS));
  }
}

TEST_CASE("a plugin in plain C builds through the table") {
  const quadrille_piece_type& type = quadrille_pieces_v1.types[0];
  CHECK(quadrille_pieces_v1.struct_size == 48);
  CHECK(type.parameter_size == 136);
  CHECK(std::strcmp(type.id, "single") == 0);

  std::vector<Balloon> balloons;
  const quadrille_sink sink{
      sizeof(quadrille_sink), 0, &balloons,
      [](void* self, std::uint32_t record, const void* records, std::size_t count, std::size_t size) {
        if (record != QUADRILLE_RECORD_BALLOON || size != sizeof(quadrille_balloon)) return 1;
        const auto* pushed = static_cast<const quadrille_balloon*>(records);
        for (std::size_t i = 0; i < count; ++i)
          static_cast<std::vector<Balloon>*>(self)->push_back(from_record(pushed[i]));
        return 0;
      }};
  const quadrille_value value{QUADRILLE_LENGTH, 0, 0.5, "", nullptr};
  CHECK(type.build(&value, 1, &sink) == QUADRILLE_OK);
  REQUIRE(balloons.size() == 1);
  CHECK(balloons[0].diameter_m == 0.5);
  CHECK(balloons[0].centre == Vec3(0, 0, 0.25));
}
