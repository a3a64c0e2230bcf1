// The photo behind an area in the event's file.
#include <doctest/doctest.h>

#include "scratch.hpp"
#include "studio/files/event_file.hpp"
#include "studio/model/area_edits.hpp"
#include "studio/model/backdrop_edits.hpp"
#include "studio/model/edits.hpp"

namespace quadrille {
namespace {

/// Begins as a JPEG does; nothing in the file's code looks further.
std::string jpeg_like(std::size_t size) {
  std::string bytes = "\xFF\xD8\xFF";
  for (std::size_t i = bytes.size(); i < size; ++i) bytes += static_cast<char>(i * 7 + i / 256);
  return bytes;
}

Event with_photo(std::size_t size = 100) {
  Event event;
  Area gate;
  gate.id = "a1";
  gate.structures.push_back({"s1", "Post", StructureKind::post, 1, 0, 2, "", {}});
  Backdrop backdrop;
  backdrop.picture = StoredPicture{jpeg_like(size), PictureMedia::jpeg, 640, 480};
  backdrop.x_m = -0.25, backdrop.z_m = 0.125, backdrop.metres_per_pixel = 0.0075, backdrop.fade = 0.5;
  backdrop.locked = true;
  gate.backdrop = std::move(backdrop);
  return with_area(std::move(event), std::move(gate));
}

const Area& gate_of(const OpenedEvent& opened) { return *opened.event.areas.at(0); }

bool holds(std::string_view text, std::string_view part) { return text.find(part) != std::string_view::npos; }

}  // namespace

TEST_CASE("a photo is written in lines and read back as it was") {
  const Event event = with_photo();
  const std::string bytes = write_event(event);
  CHECK(holds(bytes,
              "    <backdrop x-m=\"-0.25\" z-m=\"0.125\" metres-per-pixel=\"0.0075\" fade=\"0.5\" locked=\"yes\">\n"
              "      <picture media=\"jpeg\" width-px=\"640\" height-px=\"480\">\n"
              "        /9j/"));
  CHECK(holds(bytes, "\n      </picture>\n    </backdrop>\n    <structure"));
  const auto read = read_event(bytes, "f");
  REQUIRE(read.error == "");
  CHECK(read->findings.empty());
  CHECK(read->event == event);
  CHECK(write_event(read->event) == bytes);
  for (std::size_t at = 0, end = 0; at < bytes.size(); at = end + 1) {
    end = bytes.find('\n', at);
    CHECK(end - at <= 140);
  }
}

TEST_CASE("a photo of any length comes back, a large one too, and is saved and opened") {
  ScratchFolder folder;
  for (const std::size_t size : {3u, 4u, 5u, 56u, 57u, 58u, 3'000'000u}) {
    const Event event = with_photo(size);
    REQUIRE(!save_event(folder / "e.quadrille", event, nullptr));
    const auto opened = open_event(folder / "e.quadrille");
    REQUIRE(opened.error == "");
    CHECK(opened->event == event);
    // Untouched, it is saved as the very bytes.
    const std::string before = contents(folder / "e.quadrille");
    REQUIRE(!save_event(folder / "f.quadrille", opened->event, &*opened.value));
    CHECK(contents(folder / "f.quadrille") == before);
  }
}

TEST_CASE("a file with a photo says version 1.1 and may be written back by 1.0; without it is of version 1.0") {
  const Event event = with_photo();
  CHECK(holds(write_event(event), "version=\"1.1\" reader=\"1.0\""));
  CHECK(holds(write_event(without_backdrop(event, "a1")), "version=\"1.0\" reader=\"1.0\""));
  CHECK(read_event(write_event(event), "f")->findings.empty());
}

TEST_CASE("the version 1.1 fixture is read for what it says, and written again byte for byte") {
  const auto opened = open_event(fixture("event-1.1.quadrille"));
  REQUIRE(opened.error == "");
  CHECK(opened->findings.empty());
  REQUIRE(gate_of(*opened.value).backdrop.has_value());
  const Backdrop& gate = *gate_of(*opened.value).backdrop;
  CHECK(gate.x_m == -0.5);
  CHECK(gate.z_m == -0.25);
  CHECK(gate.metres_per_pixel == 1.5);
  CHECK(gate.fade == 0.4);
  CHECK(gate.locked);
  CHECK(gate.picture->media == PictureMedia::png);
  CHECK(gate.picture->width_px == 4);
  CHECK(gate.picture->bytes.ends_with(std::string("IEND\xAE\x42\x60\x82")));  // as every PNG does
  const Backdrop& barn = *opened->event.areas.at(1)->backdrop;
  CHECK(barn.hidden);
  CHECK(barn.fade == 0);
  CHECK(barn.picture == gate.picture);
  CHECK(write_event(opened->event) == contents(fixture("event-1.1.quadrille")));
}

TEST_CASE("what is not known in and around a photo is kept where it stood") {
  std::string bytes = write_event(with_photo());
  bytes = replaced(bytes, "<backdrop ", "<!-- seen from the road -->\n    <backdrop lens=\"35\" ");
  bytes = replaced(bytes, "<picture ", "<sky/>\n      <picture by=\"hand\" ");
  bytes = replaced(bytes, "      </picture>", "        <!-- cropped -->\n      </picture>");
  const auto read = read_event(bytes, "f");
  REQUIRE(read.error == "");
  CHECK(gate_of(*read.value).backdrop->picture == with_photo().areas[0]->backdrop->picture);
  CHECK(read->findings.size() == 3);  // lens, sky, by; comments are no findings
  const std::string edited = write_event(with_backdrop_fade(read->event, "a1", 0.75));
  for (const char* kept : {"<!-- seen from the road -->\n    <backdrop", "lens=\"35\"", "<sky/>\n      <picture",
                           "by=\"hand\"", "<!-- cropped -->", "fade=\"0.75\""})
    CHECK_MESSAGE(holds(edited, kept), kept);
  ScratchFolder folder;
  CHECK(!save_event(folder / "e.quadrille", with_backdrop_fade(read->event, "a1", 0.75), &*read.value));
}

TEST_CASE("a damaged picture leaves the event readable, is told, and is kept as it is") {
  const std::string good = write_event(with_photo());
  const std::pair<std::string, const char*> damaged[] = {
      {replaced(good, "/9j/", "/9j!"), "a character"},
      {replaced(good, "/9j/", "/9j"), "cut off"},
      {replaced(good, "/9j/", "Zm9v"), "no jpeg picture"},
      {replaced(good, "media=\"jpeg\"", "media=\"png\""), "no png picture"},
  };
  for (const auto& [bytes, said] : damaged) {
    const auto read = read_event(bytes, "f");
    REQUIRE(read.error == "");
    CHECK_FALSE(gate_of(*read.value).backdrop.has_value());
    REQUIRE(read->findings.size() == 1);
    CHECK_MESSAGE(holds(read->findings[0].text, said), read->findings[0].text);
    CHECK(holds(read->findings[0].text, "it is kept as it is"));
    // An edit elsewhere writes it back.
    Event edited = read->event;
    edited.title = "Changed";
    const std::string written = write_event(edited);
    const std::size_t at = bytes.find("<backdrop"), end = bytes.find("</backdrop>");
    CHECK(holds(written, bytes.substr(at, end - at)));
    ScratchFolder folder;
    CHECK(!save_event(folder / "e.quadrille", edited, &*read.value));
    // A new photo comes before it and counts.
    const auto again = with_backdrop(read->event, "a1", *with_photo().areas[0]->backdrop);
    REQUIRE(again.error == "");
    CHECK(!save_event(folder / "f.quadrille", *again, &*read.value));
    const auto opened = open_event(folder / "f.quadrille");
    CHECK(gate_of(*opened.value).backdrop.has_value());
  }
}

TEST_CASE("a photo that stands twice: the first counts, and removing it does not bring the second") {
  std::string bytes = write_event(with_photo());
  const std::size_t at = bytes.find("    <backdrop"), end = bytes.find("    <structure");
  const std::string element = bytes.substr(at, end - at);
  bytes.insert(end, replaced(element, "fade=\"0.5\"", "fade=\"0.9\""));
  const auto read = read_event(bytes, "f");
  REQUIRE(read.error == "");
  CHECK(gate_of(*read.value).backdrop->fade == 0.5);
  CHECK(read->findings.size() == 1);
  CHECK(holds(write_event(renamed_area(read->event, "a1", "Gate")), "fade=\"0.9\""));
  CHECK_FALSE(gate_of(*read_event(write_event(without_backdrop(read->event, "a1")), "f").value).backdrop.has_value());
}

TEST_CASE("numbers of a photo that cannot be meant make the file unreadable, with place and range") {
  const std::string good = write_event(with_photo());
  const auto error = [&](const char* from, const char* to) { return read_event(replaced(good, from, to), "f").error; };
  CHECK(holds(error("metres-per-pixel=\"0.0075\"", "metres-per-pixel=\"0\""), "above 0"));
  CHECK(holds(error(" metres-per-pixel=\"0.0075\"", ""), "metres-per-pixel"));
  CHECK(holds(error("fade=\"0.5\"", "fade=\"1.5\""), "0 to 1"));
  CHECK(holds(error("width-px=\"640\"", "width-px=\"64.5\""), "whole"));
  CHECK(holds(error("height-px=\"480\"", "height-px=\"0\""), "1 to 16000"));
  CHECK(holds(error("x-m=\"-0.25\"", "x-m=\"nan\""), "no number"));
}

}  // namespace quadrille
