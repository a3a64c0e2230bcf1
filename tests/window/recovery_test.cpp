// Unsaved work is kept after each edit, forgotten when it is saved, and restored without touching the file.
#include <sys/resource.h>

#include <algorithm>
#include <csignal>

#include "by_hand.hpp"
#include "studio/files/recovery.hpp"
#include "studio/model/edits.hpp"
#include "studio/window/job/recovery_writer.hpp"
#include "studio/window/panels/form_panel.hpp"
#include "toolkit.hpp"

namespace quadrille {
namespace {

/// The journals of this test alone.
class OwnState {
 public:
  OwnState() : before_(std::getenv("XDG_STATE_HOME")) { ::setenv("XDG_STATE_HOME", (folder_ / "state").c_str(), 1); }
  ~OwnState() { ::setenv("XDG_STATE_HOME", before_.c_str(), 1); }
  std::size_t journals() const {
    std::size_t count = 0;
    std::error_code none;
    for (std::filesystem::directory_iterator entry(recovery_folder(), none), end; !none && entry != end;
         entry.increment(none))
      count += entry->path().extension() == ".journal";
    return count;
  }

 private:
  ScratchFolder folder_;
  std::string before_;
};

/// What a window that ended without saving leaves.
void leave_behind(const RecoveryEntry& entry) {
  RecoveryJournal journal(recovery_folder());
  REQUIRE(!journal.keep(entry));
}

}  // namespace

TEST_CASE("an edit is kept until it is saved or undone, and is gone after a clean close") {
  Toolkit::instance();
  OwnState state;
  ScratchFolder folder;
  {
    OpenWindow window;
    window.open(put_event(folder));
    CHECK(state.journals() == 0);
    window->select("a1", "p1");
    window->move_selected(0.5);
    REQUIRE(window.pump_until([&] { return state.journals() == 1; }));
    CHECK(left_behind(recovery_folder()).empty());  // its window is open
    window->undo();
    REQUIRE(window.pump_until([&] { return state.journals() == 0; }));
    window->redo();
    REQUIRE(window.pump_until([&] { return state.journals() == 1; }));
    REQUIRE(window->save());
    REQUIRE(window.pump_until([&] { return state.journals() == 0; }));
    window->move_selected(0.5);
    REQUIRE(window.pump_until([&] { return state.journals() == 1; }));
    Dialogs dialogs({wxID_NO});  // discard the changes
    window->Close();
    REQUIRE(window.pump_until([&] { return !window.reference(); }));
  }
  CHECK(state.journals() == 0);
}

TEST_CASE("what a window kept when it could not ask is restored over the file's own event, which stays as it is") {
  Toolkit::instance();
  OwnState state;
  ScratchFolder folder;
  const auto file = put_event(folder);
  const std::string before = contents(file);
  double moved_to = 0;
  {
    OpenWindow window;
    window.open(file);
    window->select("a1", "p1");
    for (int i = 0; i < 3; ++i) window->move_selected(0.5);
    moved_to = place_of(window->document()->event(), "p1");
  }  // closed without asking, as when the desktop ends
  REQUIRE(state.journals() == 1);
  OpenWindow window;
  {
    Dialogs dialogs({wxID_CANCEL});
    CHECK(!window->offer_recovery());  // later
    CHECK(dialogs.said().at(0).find("Harvest supper") != std::string::npos);
  }
  CHECK(!window->offer_recovery(folder / "other.quadrille"));  // it is about another file
  CHECK(state.journals() == 1);
  Dialogs dialogs({wxID_YES});
  REQUIRE(window->offer_recovery(file));
  CHECK(place_of(window->document()->event(), "p1") == moved_to);
  CHECK(window->document()->file() == file);
  CHECK(window->document()->has_changes());
  CHECK(contents(file) == before);
  window->undo();
  CHECK(place_of(window->document()->event(), "p1") == 2.0);  // as the file has it
  window->redo();
  REQUIRE(window->save());
  CHECK(place_of(open_event(file)->event, "p1") == moved_to);
  CHECK(window.pump_until([&] { return state.journals() == 0; }));
}

TEST_CASE("where nobody can be asked, what is typed and not entered yet is kept as well") {
  Toolkit::instance();
  OwnState state;
  ScratchFolder folder;
  const auto file = put_event(folder);
  {
    OpenWindow window;
    window.open(file);
    window->select("a1", "p1");
    auto* const span = dynamic_cast<wxTextCtrl*>(window->form().input("span"));
    REQUIRE(span != nullptr);
    span->ChangeValue("2.9");  // and no Enter
  }
  OpenWindow window;
  Dialogs dialogs({wxID_YES});
  REQUIRE(window->offer_recovery(file));
  CHECK(piece(window, "p1").values.at("span").number == doctest::Approx(2.9));
}

TEST_CASE("work on a file that was changed since is restored without a file, so that saving replaces nothing") {
  Toolkit::instance();
  OwnState state;
  ScratchFolder folder;
  const auto file = put_event(folder);
  const Event event = moved(harvest_event(), "p1", 3, 0);
  leave_behind({event, file, mark_of("what stood there once"), "2027-06-19 14:05"});
  OpenWindow window;
  Dialogs dialogs({wxID_YES});
  REQUIRE(window->offer_recovery());
  CHECK(!window->document()->has_file());
  CHECK(window->document()->event() == event);
}

TEST_CASE("what was kept can be discarded, and what cannot be read says so") {
  Toolkit::instance();
  OwnState state;
  leave_behind({harvest_event(), {}, {}, "2027-06-19 14:05"});
  put(recovery_folder() / "7.journal", "quadrille recovery 1\nchanged now\n");
  OpenWindow window;
  Dialogs dialogs({wxID_NO, wxID_NO});
  CHECK(!window->offer_recovery());
  CHECK(state.journals() == 0);
  const auto tells_cut = [](const std::string& text) { return text.find("cut off") != std::string::npos; };
  CHECK(std::ranges::count_if(dialogs.said(), tells_cut) == 1);
  CHECK(!window->document());
}

TEST_CASE("where the disk is full the writer says so once, and keeps again when there is room") {
  ScratchFolder folder;
  std::vector<std::string> told;
  std::mutex mutex;
  const auto said = [&] {
    const std::lock_guard lock(mutex);
    return told.size();
  };
  RecoveryWriter writer(folder / "recovery", [&](std::string fault) {
    const std::lock_guard lock(mutex);
    told.push_back(std::move(fault));
  });
  // A file that may not grow is refused as on a full disk.
  ::signal(SIGXFSZ, SIG_IGN);
  rlimit before{};
  REQUIRE(::getrlimit(RLIMIT_FSIZE, &before) == 0);
  const auto entry = [] { return RecoveryEntry{harvest_event(), {}, {}, "now"}; };
  rlimit none = before;
  none.rlim_cur = 16;
  REQUIRE(::setrlimit(RLIMIT_FSIZE, &none) == 0);
  writer.keep(entry);
  const bool refused = Toolkit::instance().pump_until([&] { return said() == 1; });
  REQUIRE(::setrlimit(RLIMIT_FSIZE, &before) == 0);
  CHECK(refused);
  writer.keep(entry);
  CHECK(Toolkit::instance().pump_until([&] { return std::filesystem::exists(folder / "recovery/0.journal"); }));
  writer.end({});
  CHECK(!std::filesystem::exists(folder / "recovery/0.journal"));
  CHECK(said() == 1);
}

TEST_CASE("a disk that fills while saving is told, and the document lives on") {
  ScratchFolder folder;
  OpenWindow window;
  const auto file = put_event(folder);
  const std::string before_save = contents(file);
  window.open(file);
  window->select("a1", "p1");
  window->move_selected(0.5);
  ::signal(SIGXFSZ, SIG_IGN);
  rlimit before{};
  REQUIRE(::getrlimit(RLIMIT_FSIZE, &before) == 0);
  rlimit none = before;
  none.rlim_cur = 64;
  {
    Dialogs dialogs({wxID_OK});
    REQUIRE(::setrlimit(RLIMIT_FSIZE, &none) == 0);
    const bool saved = window->save();
    REQUIRE(::setrlimit(RLIMIT_FSIZE, &before) == 0);
    CHECK(!saved);
    CHECK(dialogs.said().at(0).find("could not be saved") != std::string::npos);
  }
  CHECK(contents(file) == before_save);
  CHECK(window->document()->has_changes());
  CHECK(window->save());
  CHECK(contents(file) != before_save);
}

}  // namespace quadrille
