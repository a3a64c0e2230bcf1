// The document without a window: saving, saving as, and files that change under it.
#include "studio/window/job/document.hpp"

#include "scratch.hpp"
#include "studio/model/edits.hpp"

namespace quadrille {
namespace {

Document opened(const std::filesystem::path& file) {
  auto document = Document::open(file, studio_program());
  REQUIRE_MESSAGE(document, document.error);
  return std::move(*document.value);
}

}  // namespace

TEST_CASE("an untidy file that is not touched is saved byte for byte, even after an edit was saved and undone") {
  ScratchFolder folder;
  const auto file = put_event(folder);
  // A comment and blanks that the writer would never make.
  std::string untidy = contents(file);
  const auto at = untidy.find("<area");
  REQUIRE(at != std::string::npos);
  untidy.insert(at, "<!-- talk to the caretaker -->   \n\n  ");
  put(file, untidy);
  Document document = opened(file);
  CHECK(!document.save());
  CHECK(contents(file) == untidy);
  document.edit().commit("Move", moved(document.event(), "p1", 3, 0));
  CHECK(document.history().has_changes());
  CHECK(!document.save());
  CHECK(contents(file) != untidy);
  document.edit().undo();
  CHECK(!document.save());
  CHECK(contents(file) == untidy);
}

// Nothing set the last build, so a saved piece whose type later went missing counted 0.
TEST_CASE("a changed event is saved with what was built, and undoing everything still saves the very bytes") {
  ScratchFolder folder;
  const auto file = put_event(folder);
  const std::string before = contents(file);
  Document document = opened(file);
  auto piece = std::make_shared<BuiltPiece>();
  piece->status = Status::ok;
  piece->box.most = {2.5, 0.25, 1.25};
  for (int i = 0; i < 5; ++i) {
    piece->piece.balloons.emplace_back();
    piece->piece.balloons.back().nominal_in = 11;
    piece->piece.balloons.back().diameter_m = 0.23;
  }
  const BuiltEvent built{{"p1", piece}};
  CHECK(!document.save(built));
  CHECK(contents(file) == before);  // nothing was changed
  document.edit().commit("Move", moved(document.event(), "p1", 3, 0));
  CHECK(!document.save(built));
  const auto saved = open_event(file);
  REQUIRE(saved);
  const auto& last = find_piece(saved->event, "p1")->last_built;
  REQUIRE(last);
  CHECK(last->width_m == 2.5);
  CHECK(last->counts == std::vector<LastBuilt::Count>{{11, 0.23, 0, 5}});
  CHECK(find_piece(saved->event, "p3")->last_built->counts.at(0).balloons == 36);  // its type is missing
  CHECK(!document.changed_on_disk());
  CHECK(!document.history().has_changes());
  document.edit().undo();
  CHECK(!document.save(built));
  CHECK(contents(file) == before);
}

TEST_CASE("saving as goes on with the new file and leaves the old one") {
  ScratchFolder folder;
  const auto file = put_event(folder);
  const std::string before = contents(file);
  Document document = opened(file);
  document.edit().commit("Move", moved(document.event(), "p1", 3, 0));
  CHECK(!document.save_as(folder / "other.quadrille"));
  CHECK(document.file() == folder / "other.quadrille");
  CHECK(!document.history().has_changes());
  CHECK(contents(file) == before);
}

TEST_CASE("saving where nothing can be written fails with a sentence and keeps the changes") {
  ScratchFolder folder;
  Document document = opened(put_event(folder));
  document.edit().commit("Move", moved(document.event(), "p1", 3, 0));
  const auto fault = document.save_as(folder / "no-such-folder" / "event.quadrille");
  REQUIRE(fault);
  CHECK(fault->find("no-such-folder") != std::string::npos);
  CHECK(document.history().has_changes());
  CHECK(document.file() == folder / "harvest.quadrille");
}

TEST_CASE("a file that another program changed is noticed, our own saving is not") {
  ScratchFolder folder;
  const auto file = put_event(folder);
  Document document = opened(file);
  CHECK(!document.changed_on_disk());
  document.edit().commit("Move", moved(document.event(), "p1", 3, 0));
  CHECK(!document.save());
  CHECK(!document.changed_on_disk());
  put(file, contents(file) + "<!-- by somebody else -->\n");
  CHECK(document.changed_on_disk());
}

TEST_CASE("palettes beside the event are found") {
  ScratchFolder folder;
  const auto file = put_event(folder);
  CHECK(find_colour(opened(file).palettes()->palettes, {"house", "coral"}) != nullptr);
  std::filesystem::create_directory(folder / "palettes");
  put(folder / "palettes" / "garden.xml",
      "<palette xmlns=\"urn:quadrille:palette:1\" version=\"1.0\" reader=\"1.0\" key=\"garden\" name=\"Garden\" "
      "currency=\"USD\"><colour key=\"fern\" name=\"Fern\" srgb=\"#3f7f4f\" finish=\"matte\"/></palette>");
  CHECK(find_colour(opened(file).palettes()->palettes, {"garden", "fern"}) != nullptr);
}

}  // namespace quadrille
