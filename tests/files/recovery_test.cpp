// Unsaved work that is kept, and found again after the program ended.
#include "studio/files/recovery.hpp"

#include <doctest/doctest.h>
#include <sys/wait.h>
#include <unistd.h>

#include <csignal>

#include "random_event.hpp"
#include "scratch.hpp"

namespace quadrille {
namespace {

Event party() {
  Event event;
  event.title = "Spring \"fair\"\n& more";
  Area area;
  area.id = "a1", area.name = "Porch";
  PlacedPiece piece;
  piece.id = "p1", piece.name = "Arch", piece.type = "arch", piece.x_m = 1.25;
  area.pieces = {piece};
  event.areas = {area};
  return event;
}

RecoveryEntry entry_of(const Event& event) {
  return {event, "/home/somebody/odd %41\nname \xFF.quadrille", mark_of("what was there"), "2027-06-19 14:05"};
}

}  // namespace

TEST_CASE("the mark of bytes is the published sum, with their number") {
  // FNV-1a, 64 bits: test vectors of its authors, Fowler, Noll and Vo; from memory.
  CHECK(mark_of("") == "0-cbf29ce484222325");
  CHECK(mark_of("a") == "1-af63dc4c8601ec8c");
  CHECK(mark_of("foobar") == "6-85944171f73967e8");
}

TEST_CASE("what is kept comes back, whatever the file's name") {
  const RecoveryEntry entry = entry_of(party());
  const auto again = read_recovery(write_recovery(entry), "journal");
  REQUIRE_MESSAGE(again, again.error);
  CHECK(*again == entry);
  RecoveryEntry never_saved{party(), {}, {}, "2027-06-19 14:05"};
  CHECK(*read_recovery(write_recovery(never_saved), "journal") == never_saved);
}

TEST_CASE("a journal that was cut off anywhere is told, and never taken for an event") {
  const std::string whole = write_recovery(entry_of(party()));
  for (std::size_t length = 0; length < whole.size(); ++length) {
    const auto read = read_recovery(std::string_view(whole).substr(0, length), "journal");
    CHECK_MESSAGE(!read, length);
    CHECK(!read.error.empty());
  }
  for (const std::size_t at : {whole.size() / 2, whole.size() - 3}) {
    std::string damaged = whole;
    damaged[at] = static_cast<char>(damaged[at] ^ 1);
    CHECK(!read_recovery(damaged, "journal"));
  }
  CHECK(read_recovery("quadrille recovery 2\nevent 3\n", "journal").error.find("newer version") != std::string::npos);
  CHECK(!read_recovery("<?xml version=\"1.0\"?>", "journal"));
}

TEST_CASE("a journal is nobody else's while it is held, and left behind when its holder ends without forgetting it") {
  ScratchFolder folder;
  const auto place = folder / "recovery";
  CHECK(left_behind(place).empty());
  {
    RecoveryJournal journal(place), other(place);
    REQUIRE(!journal.keep(entry_of(party())));
    REQUIRE(!other.keep(entry_of({})));
    CHECK(journal.file() != other.file());
    CHECK(left_behind(place).empty());
    other.forget();
    CHECK(!std::filesystem::exists(other.file()));
  }
  {
    const auto left = left_behind(place);
    REQUIRE(left.size() == 1);
    REQUIRE_MESSAGE(left[0].entry, left[0].entry.error);
    CHECK(left[0].entry->event == party());
    CHECK(left_behind(place).empty());  // another window that starts now does not offer it too
    RecoveryJournal fresh(place);       // and a new one does not write over it
    REQUIRE(!fresh.keep(entry_of({})));
    CHECK(fresh.file() != left[0].file);
    fresh.forget();
  }
  auto left = left_behind(place);  // put off, so still there
  REQUIRE(left.size() == 1);
  CHECK(left[0].entry->event == party());
  left[0].discard();
  CHECK(left_behind(place).empty());
  CHECK(std::filesystem::is_empty(place));
}

TEST_CASE("only what is about one file is asked for") {
  ScratchFolder folder;
  const auto place = folder / "recovery";
  {
    RecoveryJournal one(place), other(place);
    REQUIRE(!one.keep({party(), "/a/one.quadrille", "", ""}));
    REQUIRE(!other.keep({party(), "/a/other.quadrille", "", ""}));
  }
  CHECK(left_behind(place, "/a/none.quadrille").empty());
  const auto left = left_behind(place, "/a/other.quadrille");
  REQUIRE(left.size() == 1);
  CHECK(left[0].entry->file == "/a/other.quadrille");
}

TEST_CASE("a program that is killed leaves its journal to the next") {
  ScratchFolder folder;
  const auto place = folder / "recovery";
  int ready[2];
  REQUIRE(::pipe(ready) == 0);
  const pid_t child = ::fork();
  REQUIRE(child >= 0);
  if (child == 0) {
    RecoveryJournal journal(place);
    const bool kept = !journal.keep(entry_of(party()));
    const char word = kept ? 'y' : 'n';
    if (::write(ready[1], &word, 1) == 1) ::pause();
    ::_exit(0);
  }
  ::close(ready[1]);  // so that reading ends where the child ended without a word
  char word = 0;
  REQUIRE(::read(ready[0], &word, 1) == 1);
  CHECK(word == 'y');
  CHECK(left_behind(place).empty());  // it lives
  ::kill(child, SIGKILL);
  int status = 0;
  REQUIRE(::waitpid(child, &status, 0) == child);
  const auto left = left_behind(place);
  REQUIRE(left.size() == 1);
  CHECK(left[0].entry->event == party());
  ::close(ready[0]);
}

TEST_CASE("where nothing can be written that is told in a sentence, and what was kept before is still there") {
  ScratchFolder folder;
  put(folder / "recovery", "a file where the folder should be");
  RecoveryJournal journal(folder / "recovery");
  CHECK(journal.keep(entry_of(party())).value_or("").find("nothing can be kept") != std::string::npos);
  RecoveryJournal nowhere{std::filesystem::path()};
  CHECK(!nowhere.keep(entry_of(party())));
}

}  // namespace quadrille
