// Runs the real command in a clean environment and a folder of its own.
#pragma once

#include <fcntl.h>
#include <sys/wait.h>
#include <unistd.h>

#include <cstdlib>
#include <filesystem>
#include <fstream>
#include <iterator>
#include <map>
#include <stdexcept>
#include <string>
#include <string_view>
#include <vector>

#include "tests/places.hpp"
#include "tests/sanitized.hpp"

namespace quadrille {

inline std::string bytes_of(const std::filesystem::path& file) {
  std::ifstream stream(file, std::ios::binary);
  return {std::istreambuf_iterator<char>(stream), {}};
}

inline void put_file(const std::filesystem::path& file, std::string_view bytes) {
  std::filesystem::create_directories(file.parent_path());
  std::ofstream(file, std::ios::binary) << bytes;
}

/// A folder that goes with the object.
class Folder {
 public:
  Folder() {
    std::string name = (std::filesystem::temp_directory_path() / "quadrille-test-XXXXXX").string();
    if (mkdtemp(name.data()) == nullptr) throw std::runtime_error("no temporary folder");
    path_ = name;
  }
  ~Folder() {
    std::error_code ignored;
    std::filesystem::remove_all(path_, ignored);
  }
  Folder(const Folder&) = delete;
  Folder& operator=(const Folder&) = delete;
  const std::filesystem::path& path() const { return path_; }
  std::string operator/(const std::string& name) const { return (path_ / name).string(); }

 private:
  std::filesystem::path path_;
};

struct Ran {
  int exit = -1;  ///< -1 where the program was ended by a signal
  std::string out, err;
};

using Environment = std::map<std::string, std::string>;

/// For builds with sanitizers.
inline const std::string leaks_of_others =
    "print_suppressions=0:suppressions=" + source_place("tests/command/leaks_of_others.txt");

/// Home and state in `folder`, and the palettes of `folder`/palettes only.
inline Environment environment_in(const Folder& folder) {
  return {{"PATH", "/usr/bin:/bin"},
          {"HOME", folder / "home"},
          {"QUADRILLE_PALETTES_PATH", folder / "palettes"},
          {"LSAN_OPTIONS", leaks_of_others},
          {"LANG", "C.UTF-8"}};
}

/// Runs `program` (found in PATH) with `arguments`; only `environment` is set. What it prints goes through files in
/// `folder`; `out` is another place for its standard output.
inline Ran run_in(const Folder& folder, const std::string& program, const std::vector<std::string>& arguments,
                  const Environment& environment, const std::string& out = {}) {
  const std::string out_file = out.empty() ? folder / ".out" : out, err_file = folder / ".err";
  std::vector<std::string> words{program}, settings;
  words.insert(words.end(), arguments.begin(), arguments.end());
  for (const auto& [name, value] : environment) settings.push_back(name + "=" + value);
  const auto pointers = [](std::vector<std::string>& texts) {
    std::vector<char*> list;
    for (std::string& text : texts) list.push_back(text.data());
    list.push_back(nullptr);
    return list;
  };
  const auto word_list = pointers(words), setting_list = pointers(settings);
  const pid_t child = fork();
  if (child == 0) {
    dup2(open(out_file.c_str(), O_WRONLY | O_CREAT | O_TRUNC, 0600), 1);
    dup2(open(err_file.c_str(), O_WRONLY | O_CREAT | O_TRUNC, 0600), 2);
    execvpe(program.c_str(), word_list.data(), setting_list.data());
    _exit(127);
  }
  int status = 0;
  waitpid(child, &status, 0);
  return {WIFEXITED(status) ? WEXITSTATUS(status) : -1, out.empty() ? bytes_of(out_file) : "", bytes_of(err_file)};
}

inline const std::string quadrille_program = build_place("bin/quadrille");

inline Ran quadrille_in(const Folder& folder, const std::vector<std::string>& arguments) {
  return run_in(folder, quadrille_program, arguments, environment_in(folder));
}

}  // namespace quadrille
