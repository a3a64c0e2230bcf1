// Finding plugin files: order, duplicates, links, things that only look like plugins, and where to look.
#include "studio/host/discovery.hpp"

#include "tests/host/fixture.hpp"

using namespace quadrille;
using namespace quadrille::testing;

namespace {

void put(const std::filesystem::path& folder, const std::string& name, const std::string& as) {
  std::filesystem::create_directories(folder);
  std::filesystem::copy_file(plugin(name), folder / as);
}

}  // namespace

TEST_CASE("the good ones load among all that is not") {
  const TempFolder folder;
  write(folder.path() / "a-text.so", "notes");
  write(folder.path() / "b-empty.so", "");
  write(folder.path() / "c-cut.so", read(plugin("post")).substr(0, 9000));
  std::filesystem::create_directory(folder.path() / "d-folder.so");
  std::filesystem::create_symlink("nowhere", folder.path() / "e-dangling.so");
  for (const char* name :
       {"no_symbol", "newer_major", "newer_minor", "small_struct", "throws", "not_finite", "ten_million"})
    put(folder.path(), name, std::string("f-") + name + ".so");
  put(folder.path(), "post", "g-post.so");
  put(folder.path(), "post_again", "h-post.so");
  put(folder.path(), "plain", "i-plain.so");
  put(folder.path(), "plain", "plain.txt");
  const PieceTypes found = find_piece_types({{folder.path()}, std::nullopt, false});

  REQUIRE(found.types.size() == 2);
  CHECK(found.types[0].id == "post");
  CHECK(found.types[0].file.filename() == "g-post.so");
  CHECK(found.types[1].id == "plain");
  CHECK(found.find("plain") == &found.types[1]);
  CHECK(found.find("nothing") == nullptr);

  std::vector<std::pair<std::string, std::string>> refused;
  for (const RefusedFile& file : found.refused)
    refused.emplace_back(file.file.filename().string(), key_of(file.reason));
  CHECK(refused == std::vector<std::pair<std::string, std::string>>{{"a-text.so", "not-a-library"},
                                                                    {"b-empty.so", "not-a-library"},
                                                                    {"c-cut.so", "not-a-library"},
                                                                    {"d-folder.so", "not-a-library"},
                                                                    {"e-dangling.so", "not-a-library"},
                                                                    {"f-newer_major.so", "newer-major"},
                                                                    {"f-newer_minor.so", "newer-minor"},
                                                                    {"f-no_symbol.so", "no-symbol"},
                                                                    {"f-not_finite.so", "build-not-finite"},
                                                                    {"f-small_struct.so", "struct-too-small"},
                                                                    {"f-ten_million.so", "build-too-large"},
                                                                    {"f-throws.so", "build-throws"},
                                                                    {"h-post.so", "duplicate-id"}});
}

TEST_CASE("an id met again loses to the first folder, and the sentence names the winner") {
  const TempFolder folder;
  put(folder.path() / "second", "post", "a.so");
  put(folder.path() / "first", "post_again", "z.so");
  const PieceTypes found = find_piece_types({{folder.path() / "first", folder.path() / "second"}, std::nullopt, false});
  REQUIRE(found.types.size() == 1);
  CHECK(found.types[0].file == folder.path() / "first" / "z.so");
  REQUIRE(found.refused.size() == 1);
  CHECK(found.refused[0].reason == RefusalReason::duplicate_id);
  CHECK(found.refused[0].type == "post");
  CHECK(found.refused[0].sentence.find("z.so") != std::string::npos);
}

TEST_CASE("one file met through links and in the same folder twice is taken once, without complaint") {
  const TempFolder folder;
  put(folder.path() / "real", "post", "post.so");
  std::filesystem::create_directories(folder.path() / "linked");
  std::filesystem::create_symlink(folder.path() / "real" / "post.so", folder.path() / "linked" / "other-name.so");
  std::filesystem::create_directory_symlink(folder.path() / "real", folder.path() / "whole");
  const PieceTypes found = find_piece_types({{folder.path() / "linked", folder.path() / "real", folder.path() / "whole",
                                              folder.path() / "real", folder.path() / "not-there"},
                                             std::nullopt,
                                             false});
  CHECK(found.types.size() == 1);
  CHECK(found.refused.empty());
}

TEST_CASE("a folder that is a file is reported, one that is not there is passed over") {
  const TempFolder folder;
  write(folder.path() / "file", "");
  const PieceTypes found = find_piece_types({{folder.path() / "file", folder.path() / "nothing"}, std::nullopt, false});
  REQUIRE(found.refused.size() == 1);
  CHECK(found.refused[0].reason == RefusalReason::cannot_load);
}

TEST_CASE("a UTF-8 file name is kept") {
  const TempFolder folder;
  put(folder.path(), "post", "Bögen – 拱.so");
  const PieceTypes found = find_piece_types({{folder.path()}, std::nullopt, false});
  REQUIRE(found.types.size() == 1);
  CHECK(found.types[0].file.filename().string() == "Bögen – 拱.so");
}

TEST_CASE("the search plan: the listed folders, beside the program, the installed folder, the user's own") {
  const Environment listed("QUADRILLE_PIECES_PATH", "/one::/two"), home("HOME", "/home/someone"),
      data("XDG_DATA_HOME", nullptr), state("XDG_STATE_HOME", nullptr);
  const SearchPlan plan = standard_search_plan("/opt/q/bin/quadrille");
  REQUIRE(plan.folders.size() == 6);
  CHECK(plan.folders[0] == "/one");
  CHECK(plan.folders[1] == "/two");
  CHECK(plan.folders[2] == "/opt/q/bin/pieces");
  CHECK(plan.folders[3] == "/opt/q/pieces");
  CHECK(plan.folders[4].string().starts_with("/opt/q/lib"));
  CHECK(plan.folders[4].string().ends_with("quadrille/pieces"));
  CHECK(plan.folders[5] == "/home/someone/.local/share/quadrille/pieces");
  CHECK(plan.state_folder == std::filesystem::path("/home/someone/.local/state/quadrille"));
}

TEST_CASE("the search plan: XDG folders count where they are absolute, and no HOME leaves out what cannot be known") {
  const Environment listed("QUADRILLE_PIECES_PATH", nullptr), home("HOME", nullptr), data("XDG_DATA_HOME", "/data"),
      state("XDG_STATE_HOME", "relative");
  const SearchPlan plan = standard_search_plan("/opt/q/bin/quadrille");
  REQUIRE(plan.folders.size() == 4);
  CHECK(plan.folders.back() == "/data/quadrille/pieces");
  CHECK_FALSE(plan.state_folder);
  CHECK(standard_search_plan("").folders.size() == 1);
}
