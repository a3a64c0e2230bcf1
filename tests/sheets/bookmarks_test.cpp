// A document of all sheets has a bookmark for each, and under it one for each area or piece.
#include <doctest/doctest.h>

#include "studio/paint/output.hpp"
#include "tests/paint/picture.hpp"

using namespace quadrille;

namespace {

Page page_of(const std::string& sheet, const std::string& name) {
  Page page;
  page.sheet = sheet, page.name = name;
  return page;
}

/// The outline as poppler reads it.
std::string outline_of(const std::vector<Page>& pages, const std::string& title = "Party") {
  const Folder folder;
  const std::string file = folder.write("b.pdf", *to_pdf(pages, {title, "2027-06-19"}));
  std::string text = output_of("pdftohtml -xml -i -stdout '" + file + "' 2>/dev/null");
  const auto from = text.find("<outline>");
  text = from == std::string::npos ? "" : text.substr(from, text.rfind("</outline>") + 10 - from);
  std::erase(text, '\n');
  return text;
}

}  // namespace

TEST_CASE("bookmarks name every sheet and every area or piece once, at its first page") {
  const std::vector<Page> pages{page_of("Client sheet", "Gate"), page_of("Client sheet", "Gate"),
                                page_of("Client sheet", "Hall"), page_of("Build sheet", "Arch & <friends> مرحبا"),
                                page_of("Pull list", "Pull list")};
  CHECK(outline_of(pages) ==
        "<outline><item page=\"1\">Client sheet</item><outline><item page=\"1\">Gate</item><item page=\"3\">Hall</item>"
        "</outline><item page=\"4\">Build sheet</item><outline><item page=\"4\">Arch &amp; &lt;friends&gt; "
        "مرحبا</item></outline><item page=\"5\">Pull list</item></outline>");
}

TEST_CASE("a document of one sheet has a bookmark for each area or piece") {
  CHECK(outline_of({page_of("", "Gate"), page_of("", ""), page_of("", "Hall")}) ==
        "<outline><item page=\"1\">Gate</item><item page=\"3\">Hall</item></outline>");
  CHECK(outline_of({page_of("", "")}).empty());
}

TEST_CASE("the document bears the event's title and no author") {
  const Folder folder;
  const Page page = page_of("", "Gate");
  const std::string file = folder.write("t.pdf", *to_pdf(std::span(&page, 1), {"Größe & Ærø", "2027-06-19"}));
  const std::string told = output_of("pdfinfo '" + file + "'");
  CHECK(told.find("Größe & Ærø") != std::string::npos);
  CHECK(told.find("Author") == std::string::npos);
}
