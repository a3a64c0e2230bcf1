// The guard of a piece type when memory runs out. Replaces the operator new of this test program.
#include <doctest/doctest.h>

#include <cstdlib>
#include <new>
#include <string>
#include <string_view>
#include <vector>

#include "sdk/piece.hpp"

namespace {

thread_local long left = -1;  ///< allocations that still succeed; below 0: all do

void* allocate_if_left(std::size_t size) noexcept {
  if (left == 0) return nullptr;
  if (left > 0) --left;
  return std::malloc(size == 0 ? 1 : size);
}

void* allocate(std::size_t size) {
  if (void* const block = allocate_if_left(size)) return block;
  throw std::bad_alloc();
}

}  // namespace

void* operator new(std::size_t size) { return allocate(size); }
void* operator new[](std::size_t size) { return allocate(size); }
// The form that does not throw too: std::stable_sort takes it, and a sanitizer would otherwise keep it to itself.
void* operator new(std::size_t size, const std::nothrow_t&) noexcept { return allocate_if_left(size); }
void* operator new[](std::size_t size, const std::nothrow_t&) noexcept { return allocate_if_left(size); }
void operator delete(void* block, const std::nothrow_t&) noexcept { std::free(block); }
void operator delete[](void* block, const std::nothrow_t&) noexcept { std::free(block); }
void operator delete(void* block) noexcept { std::free(block); }
void operator delete[](void* block) noexcept { std::free(block); }
void operator delete(void* block, std::size_t) noexcept { std::free(block); }
void operator delete[](void* block, std::size_t) noexcept { std::free(block); }

using namespace quadrille;

namespace {

constexpr quadrille_parameter parameters[] = {length("span", "Span", "A length.", "Test").range(0, 8)};

Piece build(const Values&) {
  Piece so_far;
  so_far.balloons.resize(100);
  so_far.facts = {{"a_fact_with_a_key_too_long_to_be_kept_in_place", 1}};
  throw Infeasible("span", "It contradicts itself, in a sentence too long to be kept in place: change the span.",
                   std::move(so_far));
}

constexpr quadrille_piece_type type = piece_type<parameters, build>("test", "Test", "For the guard.");

struct Seen {
  int refusals = 0, balloons = 0;
  std::string_view sentence = {};  ///< of the refusal; names no memory of its own
};

std::string_view memory_words(std::string_view text) {
  constexpr std::string_view full = "The memory is full";
  return text.starts_with(full) ? full : std::string_view();
}

std::int32_t push(void* self, std::uint32_t record, const void* data, std::size_t count, std::size_t) {
  auto& seen = *static_cast<Seen*>(self);
  if (record == QUADRILLE_RECORD_BALLOON) seen.balloons += static_cast<int>(count);
  if (record == QUADRILLE_RECORD_MESSAGE && static_cast<const quadrille_message*>(data)->severity == QUADRILLE_REFUSAL)
    ++seen.refusals, seen.sentence = memory_words(static_cast<const quadrille_message*>(data)->text);
  return 0;
}

}  // namespace

TEST_CASE(
    "running out of memory while showing what was refused ended the program: now the refusal still gets through") {
  const quadrille_value value{QUADRILLE_LENGTH, 0, 1, "", nullptr};
  bool all_shown = false;
  for (long allocations = 0; allocations < 60 && !all_shown; ++allocations) {
    Seen seen;
    const quadrille_sink sink{sizeof(quadrille_sink), 0, &seen, push};
    left = allocations;
    const std::int32_t status = type.build(&value, 1, &sink);
    left = -1;
    CAPTURE(allocations);
    CHECK((status == QUADRILLE_INFEASIBLE || status == QUADRILLE_INTERNAL));
    CHECK(seen.refusals == 1);
    // Without an allocation of its own it once said "std::bad_alloc".
    if (status == QUADRILLE_INTERNAL) CHECK(seen.sentence == "The memory is full");
    all_shown = status == QUADRILLE_INFEASIBLE && seen.balloons == 100;
  }
  CHECK(all_shown);  // with enough memory
}
