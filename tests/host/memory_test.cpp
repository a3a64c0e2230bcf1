// What the host does when the memory is full: it says so, and goes on.
#include <unistd.h>

#include <atomic>
#include <cstdlib>
#include <new>
#include <thread>

#include "studio/host/builder.hpp"
#include "studio/host/sink.hpp"
#include "tests/host/fixture.hpp"

using namespace quadrille;
using namespace quadrille::testing;

namespace {

thread_local bool memory_full = false;

/// No memory for this thread until the end of the scope.
class FullMemory {
 public:
  FullMemory() { memory_full = true; }
  ~FullMemory() { memory_full = false; }
  FullMemory(const FullMemory&) = delete;
  FullMemory& operator=(const FullMemory&) = delete;
};

constexpr quadrille_balloon balloon = {{0, 0, 1}, {0, 0, 1}, 0.28, 11, 0, 0, 0, QUADRILLE_ROLE_BODY};

}  // namespace

// For this whole test program. Not inlined, or GCC takes each free for one of another kind than its new; and the form
// that does not throw too, which a sanitizer would otherwise keep to itself.
[[gnu::noinline]] void* operator new(std::size_t size, const std::nothrow_t&) noexcept {
  return memory_full ? nullptr : std::malloc(size == 0 ? 1 : size);
}
[[gnu::noinline]] void* operator new(std::size_t size) {
  void* place = operator new(size, std::nothrow);
  if (place == nullptr) throw std::bad_alloc();
  return place;
}
[[gnu::noinline]] void operator delete(void* place) noexcept { std::free(place); }
[[gnu::noinline]] void operator delete(void* place, std::size_t) noexcept { std::free(place); }
[[gnu::noinline]] void operator delete(void* place, const std::nothrow_t&) noexcept { std::free(place); }

TEST_CASE("a push that finds the memory full is a fault, not the end of the program") {
  // The sentence about it was made on the spot, in a function that may not throw: with no memory left that ended all.
  Sink sink;
  const quadrille_sink record = sink.record();
  std::int32_t answer = 0;
  {
    const FullMemory full;
    answer = record.push(record.self, QUADRILLE_RECORD_BALLOON, &balloon, 1, sizeof balloon);
  }
  CHECK(answer != 0);
  REQUIRE(sink.fault());
  CHECK(sink.fault()->kind == FaultKind::too_large);
  CHECK(sink.fault()->sentence == "the memory is full.");
}

TEST_CASE("a thread that finds the memory full leaves its piece unbuilt, and the next event builds it") {
  // What the thread had to say about it needed memory again, and what it threw then ended the program.
  if (std::thread::hardware_concurrency() < 2) return;  // there is no other thread then
  static const std::thread::id here = std::this_thread::get_id();
  static std::atomic<bool> elsewhere, here_too, full;
  elsewhere = here_too = false;
  full = true;
  PieceTypes found;
  found.types.push_back(type_of("post"));
  found.types[0].build = [](const quadrille_value*, std::uint32_t, const quadrille_sink* sink) -> std::int32_t {
    if (std::this_thread::get_id() != here) {
      elsewhere = true;
      // On a busy machine it failed at one piece and took the other as well before this thread had begun.
      for (int wait = 0; wait < 5000 && !here_too; ++wait) ::usleep(1000);
      memory_full = full;  // and stays so when build is over
    } else {
      here_too = true;
      for (int wait = 0; wait < 5000 && !elsewhere; ++wait) ::usleep(1000);
    }
    sink->push(sink->self, QUADRILLE_RECORD_BALLOON, &balloon, 1, sizeof balloon);
    return QUADRILLE_OK;
  };
  EventBuilder builder(found);
  const Event event =
      event_of({placed("a", "post", {{"height", Value::of_number(Kind::length, 1)}}), placed("b", "post")});
  const BuiltEvent built = builder.build(event);
  REQUIRE(elsewhere);
  const bool first = built.at("a")->status == Status::internal;
  const BuiltPiece &one = *built.at(first ? "a" : "b"), &other = *built.at(first ? "b" : "a");
  CHECK(one.status == Status::internal);
  CHECK(one.piece.messages.at(0).text.find("the memory is full") != std::string::npos);
  CHECK(other.status == Status::ok);
  full = false;
  for (const auto& [id, piece] : builder.build(event)) CHECK(piece->status == Status::ok);
}
