// What the tests of the host share: folders that go away, the plugins built for them, pieces of an event.
#pragma once

#include <doctest/doctest.h>
#include <stdlib.h>
#include <sys/wait.h>
#include <unistd.h>

#include <csignal>
#include <filesystem>
#include <fstream>
#include <functional>
#include <initializer_list>
#include <string>

#include "studio/host/discovery.hpp"
#include "studio/host/gate.hpp"
#include "studio/model/event.hpp"
#include "tests/places.hpp"

namespace quadrille::testing {

/// A fresh folder that is removed with all it holds.
class TempFolder {
 public:
  TempFolder() {
    std::string name = (std::filesystem::temp_directory_path() / "quadrille-host-XXXXXX").string();
    REQUIRE(::mkdtemp(name.data()) != nullptr);
    path_ = std::filesystem::canonical(name);
  }
  ~TempFolder() {
    std::error_code ignored;
    std::filesystem::remove_all(path_, ignored);
  }
  TempFolder(const TempFolder&) = delete;
  TempFolder& operator=(const TempFolder&) = delete;
  const std::filesystem::path& path() const { return path_; }

 private:
  std::filesystem::path path_;
};

/// A variable of the environment, set (or unset, with null) until the end of the scope.
class Environment {
 public:
  Environment(const char* name, const char* value) : name_(name) {
    if (const char* before = ::getenv(name)) before_ = before;
    set(value);
  }
  ~Environment() { set(before_ ? before_->c_str() : nullptr); }
  Environment(const Environment&) = delete;
  Environment& operator=(const Environment&) = delete;

 private:
  void set(const char* value) const { value != nullptr ? ::setenv(name_, value, 1) : ::unsetenv(name_); }
  const char* name_;
  std::optional<std::string> before_;
};

/// A plugin built for the tests.
inline std::filesystem::path plugin(const std::string& name) {
  return std::filesystem::path(build_place("tests/host/plugins")) / (name + ".so");
}

/// As a new file: some file systems write out at once what replaces an old one, which takes long.
inline void write(const std::filesystem::path& file, const std::string& bytes) {
  std::filesystem::remove(file);
  std::ofstream(file, std::ios::binary) << bytes;
}

inline std::string read(const std::filesystem::path& file) {
  std::ifstream stream(file, std::ios::binary);
  return {std::istreambuf_iterator<char>(stream), {}};
}

/// The one reason why `file` is refused; fails the test where it is not refused once.
inline RefusedFile refusal(const std::filesystem::path& file) {
  const Admission admission = admit(file, std::nullopt, false);
  CHECK(admission.types.empty());
  REQUIRE(admission.refused.size() == 1);
  CHECK(admission.refused[0].file == file);
  CHECK_FALSE(admission.refused[0].sentence.empty());
  return admission.refused[0];
}

/// A piece type of a test plugin that the gate takes.
inline PieceType type_of(const std::string& plugin_name) {
  Admission admission = admit(plugin(plugin_name), std::nullopt, false);
  for (const RefusedFile& refused : admission.refused) FAIL(refused.sentence);
  REQUIRE(admission.types.size() == 1);
  return admission.types[0];
}

/// A child process that runs `work`; its exit status is 42 where that comes to its end.
inline pid_t start_child(const std::function<void()>& work) {
  const pid_t child = ::fork();
  REQUIRE(child >= 0);
  if (child != 0) return child;
  for (const int number : {SIGABRT, SIGSEGV, SIGTERM}) std::signal(number, SIG_DFL);
  ::close(2);  // what a sanitizer would say of a wanted crash
  work();
  ::_exit(42);
}

/// How it ends: its exit status, or 1000 + the signal that ended it.
inline int outcome_of(pid_t child) {
  int status = 0;
  REQUIRE(::waitpid(child, &status, 0) == child);
  return WIFEXITED(status) ? WEXITSTATUS(status) : 1000 + WTERMSIG(status);
}

inline int outcome_of_child(const std::function<void()>& work) { return outcome_of(start_child(work)); }

inline constexpr int child_went_through = 42;

inline PlacedPiece placed(const std::string& id, const std::string& type, ValueMap values = {}) {
  PlacedPiece piece;
  piece.id = id;
  piece.type = type;
  piece.values = std::move(values);
  return piece;
}

inline Event event_of(const std::vector<PlacedPiece>& pieces) {
  Area area;
  area.id = "area";
  for (const PlacedPiece& piece : pieces) area.pieces.push_back(piece);
  Event event;
  event.areas.push_back(area);
  return event;
}

}  // namespace quadrille::testing
