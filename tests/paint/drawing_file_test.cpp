// What a drawing's file is called and what it becomes.
#include "studio/paint/drawing_file.hpp"

#include <doctest/doctest.h>

namespace quadrille {
namespace {

TEST_CASE("the ending says the format, in either case; others are refused in words") {
  CHECK(format_of("a.pdf") == DrawingFormat::pdf);
  CHECK(format_of("/b/c.SVG") == DrawingFormat::svg);
  CHECK(format_of("d.tar.Png") == DrawingFormat::png);
  for (const char* name : {"", "a", "a.doc", ".pdf", "pdf", "a.pdf/"}) CHECK_FALSE(format_of(name));
  CHECK(sentence_about_ending("a.doc") ==
        "a.doc: a drawing becomes what its name ends in, which is to be .pdf, .svg or .png.");
}

TEST_CASE("a PDF holds all pages; of the others each page has a file of its own, numbered from 1") {
  using Files = std::vector<std::filesystem::path>;
  CHECK(drawing_files("x/a.pdf", DrawingFormat::pdf, 3) == Files{"x/a.pdf"});
  CHECK(drawing_files("x/a.b.png", DrawingFormat::png, 2) == Files{"x/a.b-1.png", "x/a.b-2.png"});
  CHECK(drawing_files("a.svg", DrawingFormat::svg, 1) == Files{"a.svg"});
  CHECK(drawing_files("a.svg", DrawingFormat::svg, 0).empty());
}

TEST_CASE("each numbered file holds its own page") {
  std::vector<Page> pages(2);
  pages[1].width = 100;
  const auto bytes = [&](std::size_t number, DrawingFormat format) {
    const auto made = drawing_bytes(pages, number, format, {"Title", "2027-06-19"});
    REQUIRE_MESSAGE(made, made.error);
    return *made.value;
  };
  CHECK(bytes(0, DrawingFormat::svg).find("width=\"210mm\"") != std::string::npos);
  CHECK(bytes(1, DrawingFormat::svg).find("width=\"100mm\"") != std::string::npos);
  CHECK(bytes(0, DrawingFormat::pdf).starts_with("%PDF-"));
  CHECK(bytes(1, DrawingFormat::png).starts_with("\x89PNG"));
}

}  // namespace
}  // namespace quadrille
