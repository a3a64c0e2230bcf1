// Bytes as base64 and back.
#include "studio/files/base64.hpp"

#include <doctest/doctest.h>
#include <rapidcheck.h>

#include <string>

namespace quadrille {
namespace {

std::string joined(const std::vector<std::string>& lines) {
  std::string all;
  for (const std::string& line : lines) all += line;
  return all;
}

}  // namespace

TEST_CASE("the vectors of the standard") {
  // RFC 4648, section 10.
  const std::pair<const char*, const char*> vectors[] = {{"", ""},
                                                         {"f", "Zg=="},
                                                         {"fo", "Zm8="},
                                                         {"foo", "Zm9v"},
                                                         {"foob", "Zm9vYg=="},
                                                         {"fooba", "Zm9vYmE="},
                                                         {"foobar", "Zm9vYmFy"}};
  for (const auto& [bytes, text] : vectors) {
    CHECK(joined(base64_lines(bytes)) == text);
    const auto back = parse_base64(text);
    REQUIRE(back.error == "");
    CHECK(*back == bytes);
  }
}

TEST_CASE("all characters of the alphabet stand for their numbers") {
  // RFC 4648, table 1: the 64 numbers in order, as 48 bytes.
  std::string bytes;
  for (unsigned group = 0; group < 64; group += 4) {
    const unsigned bits = group << 18 | (group + 1) << 12 | (group + 2) << 6 | (group + 3);
    for (const unsigned shift : {16u, 8u, 0u}) bytes += static_cast<char>(bits >> shift & 0xFF);
  }
  CHECK(joined(base64_lines(bytes)) == "ABCDEFGHIJKLMNOPQRSTUVWXYZabcdefghijklmnopqrstuvwxyz0123456789+/");
}

TEST_CASE("any bytes come back, from lines of 76 characters at most, with blanks wherever they stand") {
  CHECK(rc::check([](const std::string& bytes) {
    const auto lines = base64_lines(bytes);
    std::string text;
    for (const std::string& line : lines) {
      RC_ASSERT(line.size() <= 76);
      text += "\n    " + line;
    }
    for (std::size_t i = 0; i + 1 < lines.size(); ++i) RC_ASSERT(lines[i].size() == 76u);
    const auto back = parse_base64(text + "\r\n\t");
    RC_ASSERT(static_cast<bool>(back));
    RC_ASSERT(*back == bytes);
  }));
}

TEST_CASE("what is no base64, cut off, or padded amiss is refused") {
  for (const char* text :
       {"Zg", "Zg=", "Zg===", "Z===", "====", "Zm9vYg=", "Zm9v!", "Zm9-", "Zg==Zg==", "Zh==", "Zm9=", "=Zg=", "Zm9v="})
    CHECK_MESSAGE(!parse_base64(text), text);
}

}  // namespace quadrille
