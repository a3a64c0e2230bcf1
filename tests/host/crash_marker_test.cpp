// A plugin that ends the program is skipped at the next start, and can be tried again.
#include "studio/host/crash_marker.hpp"

#include <poll.h>

#include <array>
#include <chrono>
#include <thread>

#include "tests/host/fixture.hpp"

using namespace quadrille;
using namespace quadrille::testing;

namespace {

/// A folder with plugins and a state folder beside it.
struct Place {
  TempFolder folder;
  SearchPlan plan{{folder.path() / "pieces"}, folder.path() / "state", false};

  explicit Place(std::initializer_list<const char*> names) {
    std::filesystem::create_directories(folder.path() / "pieces");
    for (const char* name : names)
      std::filesystem::copy_file(plugin(name), folder.path() / "pieces" / (std::string(name) + ".so"));
  }
  std::filesystem::path file(const std::string& name) const { return folder.path() / "pieces" / (name + ".so"); }
  std::size_t markers(const char* extension) const {
    std::size_t count = 0;
    std::error_code none;
    for (const auto& entry : std::filesystem::directory_iterator(folder.path() / "state" / "pieces", none))
      count += entry.path().extension() == extension ? 1 : 0;
    return count;
  }
  int start() const {
    return outcome_of_child([this] { find_piece_types(plan); });
  }
};

void touch(const std::filesystem::path& file) {
  std::filesystem::last_write_time(file, std::filesystem::last_write_time(file) + std::chrono::seconds(2));
}

}  // namespace

TEST_CASE("a plugin that ends the program at its first build or load is skipped at the next start, the others load") {
  for (const char* crashing : {"aborts_at_build", "aborts_at_load", "ends_at_build"}) {
    CAPTURE(crashing);
    Place place({crashing, "plain", "post"});
    CHECK(place.start() != child_went_through);
    CHECK(place.markers(".trying") == 1);
    const PieceTypes found = find_piece_types(place.plan);
    CHECK(found.types.size() == 2);
    REQUIRE(found.refused.size() == 1);
    CHECK(found.refused[0].reason == RefusalReason::crashed_before);
    CHECK(found.refused[0].file == place.file(crashing));
    CHECK(found.refused[0].sentence.find("quadrille pieces --try-again") != std::string::npos);
    CHECK(find_piece_types(place.plan).refused.size() == 1);  // and at the start after that
  }
}

TEST_CASE("one that crashed gets another chance when asked, or when the file changes") {
  Place place({"aborts_at_build"});
  CHECK(place.start() != child_went_through);
  CHECK(place.start() == child_went_through);
  SearchPlan again = place.plan;
  again.try_crashed_again = true;
  CHECK(outcome_of_child([&] { find_piece_types(again); }) != child_went_through);
  CHECK(place.start() == child_went_through);
  touch(place.file("aborts_at_build"));
  CHECK(place.start() != child_went_through);
  CHECK(place.start() == child_went_through);

  const Environment mended("QUADRILLE_TEST_BEHAVE", "yes");
  CHECK(find_piece_types(again).types.size() == 1);
  CHECK(find_piece_types(place.plan).types.size() == 1);  // forgiven for good
}

TEST_CASE("a file that survived is remembered, and no marker is written for it again") {
  Place place({"plain", "throws"});
  find_piece_types(place.plan);
  CHECK(place.markers(".trying") == 0);
  CHECK(place.markers(".known") == 2);  // a refusal is no crash
  // A marker written and removed would leave its trace in the time of change of the folder.
  const auto state = place.folder.path() / "state" / "pieces";
  const auto before = std::filesystem::last_write_time(state);
  std::this_thread::sleep_for(std::chrono::milliseconds(30));
  find_piece_types(place.plan);
  CHECK(std::filesystem::last_write_time(state) == before);
  touch(place.file("plain"));
  find_piece_types(place.plan);
  CHECK(std::filesystem::last_write_time(state) != before);
}

TEST_CASE("a file that the gate refuses before loading leaves no marker") {
  Place place({"newer_major", "no_symbol"});
  CHECK(find_piece_types(place.plan).refused.size() == 2);
  CHECK_FALSE(std::filesystem::exists(place.folder.path() / "state"));
}

TEST_CASE("a state folder that cannot be used, or holds rubbish, stops nothing") {
  Place place({"plain"});
  write(place.folder.path() / "state", "a file where the folder should be");
  CHECK(find_piece_types(place.plan).types.size() == 1);
  place.plan.state_folder = "/proc/no/such/folder";
  CHECK(find_piece_types(place.plan).types.size() == 1);
  place.plan.state_folder = std::nullopt;
  CHECK(find_piece_types(place.plan).types.size() == 1);

  place.plan.state_folder = place.folder.path() / "other";
  find_piece_types(place.plan);
  for (const auto& entry : std::filesystem::directory_iterator(place.folder.path() / "other" / "pieces")) {
    write(entry.path(), std::string("\0\xFF rubbish", 10));
    write(std::filesystem::path(entry.path()).replace_extension(".trying"), std::string(100'000, '\xFF'));
  }
  const PieceTypes found = find_piece_types(place.plan);
  CHECK(found.types.size() == 1);
  CHECK(found.refused.empty());
}

TEST_CASE("a process that tries a file at this moment is waited for, not taken for a crash") {
  Place place({"plain"});
  std::optional<Trial> here(Trial::begin(place.plan.state_folder, place.file("plain"), false));
  CHECK(place.markers(".trying") == 1);
  std::array<int, 2> pipe{};
  REQUIRE(::pipe(pipe.data()) == 0);
  const pid_t child = start_child([&] {
    const char started = 's';
    if (::write(pipe[1], &started, 1) != 1) ::_exit(9);
    const PieceTypes found = find_piece_types(place.plan);
    const char ended = 'e';
    if (::write(pipe[1], &ended, 1) != 1) ::_exit(9);
    ::_exit(found.types.size() == 1 && found.refused.empty() ? 7 : 8);
  });
  ::close(pipe[1]);
  char said = ' ';
  REQUIRE(::read(pipe[0], &said, 1) == 1);
  REQUIRE(said == 's');
  // It once slept a while instead of asking, and passed without any waiting where the child began late. Now the child is
  // seen to run, and not to have ended, while the file is still being tried.
  pollfd ended{pipe[0], POLLIN, 0};
  CHECK(::poll(&ended, 1, 300) == 0);
  here->survived();
  CHECK(outcome_of(child) == 7);
  ::close(pipe[0]);
}

TEST_CASE("eight starts at once over the same new plugins all find them") {
  Place place({"plain", "post"});
  std::array<pid_t, 8> starts{};
  for (pid_t& start : starts)
    start = start_child([&] {
      const PieceTypes found = find_piece_types(place.plan);
      ::_exit(found.types.size() == 2 && found.refused.empty() ? 7 : 8);
    });
  for (const pid_t start : starts) CHECK(outcome_of(start) == 7);
  CHECK(place.markers(".trying") == 0);
}
