// Reading pictures: upright whichever way the camera was held, bounded, and with a sentence where it cannot be.
#include "studio/paint/decoded_picture.hpp"

#include <doctest/doctest.h>

#include <cmath>
#include <string>
#include <utility>

#include "studio/paint/import_picture.hpp"
#include "studio/paint/jpeg_parts.hpp"
#include "tests/paint/photos.hpp"

using namespace quadrille;

namespace {

/// Which of the four quarters a colour is from: R, G, B or W.
char letter_of(const Ink& ink) {
  if (ink.red > 0.8 && ink.green > 0.8 && ink.blue > 0.8) return 'W';
  if (ink.red > ink.green && ink.red > ink.blue) return 'R';
  return ink.green > ink.blue ? 'G' : 'B';
}

/// The quarters as they are seen: upper left, upper right, lower left, lower right.
std::string seen(const DecodedPicture& picture) {
  const double w = picture.width_px(), h = picture.height_px();
  std::string letters;
  for (const double y : {h / 4, h * 3 / 4})
    for (const double x : {w / 4, w * 3 / 4}) letters += letter_of(picture.mean_colour({x, y}, 2));
  return letters;
}

bool holds(std::string_view text, std::string_view part) { return text.find(part) != std::string_view::npos; }

/// A PNG's head that promises width × height pixels, with nothing behind it. Source: PNG (ISO/IEC 15948), 5.3 and
/// 11.2.2; the check sum is by the polynomial of annex D.
std::string promised_png(unsigned width, unsigned height) {
  const auto four = [](unsigned n) {
    std::string bytes;
    for (const unsigned shift : {24u, 16u, 8u, 0u}) bytes += static_cast<char>(n >> shift & 0xFF);
    return bytes;
  };
  const std::string head = "IHDR" + four(width) + four(height) + std::string("\x08\x02\x00\x00\x00", 5);
  unsigned sum = 0xFFFFFFFF;
  for (const char c : head) {
    sum ^= static_cast<unsigned char>(c);
    for (int bit = 0; bit < 8; ++bit) sum = sum & 1 ? 0xEDB88320 ^ sum >> 1 : sum >> 1;
  }
  return "\x89PNG\r\n\x1A\n" + four(13) + head + four(~sum) + four(0) + "IDAT" + four(0x35AF061E);
}

}  // namespace

TEST_CASE("a picture is seen upright for each of the eight ways in which a camera was held") {
  // What stands where, by the standard's table: of the stored pixels, row 0 is the visual top, top, bottom, bottom, left,
  // right, right, left, and column 0 the visual left, right, right, left, top, top, bottom, bottom (CIPA DC-008, 4.6.4
  // A, Orientation). Stored: R G over B W; red is where row 0 and column 0 meet, green at the other end of row 0.
  const char* expected[] = {"RGBW", "GRWB", "WBGR", "BWRG", "RBGW", "BRWG", "WGBR", "GWRB"};
  const std::string stored = jpeg_of_quarters(96, 64);
  for (int orientation = 1; orientation <= 8; ++orientation) {
    const auto decoded = decode_picture(held(stored, orientation));
    REQUIRE_MESSAGE(decoded.error == "", decoded.error);
    CHECK_MESSAGE(seen(*decoded) == expected[orientation - 1], "orientation ", orientation);
    CHECK(decoded->width_px() == (orientation < 5 ? 96 : 64));
    CHECK(decoded->height_px() == (orientation < 5 ? 64 : 96));
    CHECK(decoded->was_turned() == (orientation > 1));
    // Imported, the pixels themselves stand so, and nothing says any more that they are to be turned.
    const auto imported = import_picture(held(stored, orientation));
    REQUIRE(imported.error == "");
    CHECK(imported->width_px == decoded->width_px());
    CHECK(imported->height_px == decoded->height_px());
    CHECK_FALSE(holds(imported->bytes, "Exif"));
    const auto again = decode_picture(imported->bytes);
    REQUIRE(again.error == "");
    CHECK(seen(*again) == expected[orientation - 1]);
    CHECK_FALSE(again->was_turned());
  }
}

TEST_CASE("an upright JPEG of a fit size keeps its pixels and loses what its camera noted") {
  const std::string plain = jpeg_of_quarters(96, 64);
  const std::string noted = held(plain, 1, "5 Mill Lane").insert(2, segment('\xFE', "a comment"));
  const auto imported = import_picture(noted);
  REQUIRE(imported.error == "");
  CHECK(imported->media == PictureMedia::jpeg);
  CHECK(imported->bytes == plain);
  CHECK(without_description(plain) == plain);
  CHECK(without_description(noted) == plain);
  // Behind the end a camera had put a second picture with its own notes, and a comment stood after the pixels: both were
  // kept. One that is cut off among its pixels is kept as far as it goes.
  CHECK(without_description(plain + held(plain, 1, "5 Mill Lane")) == plain);
  const std::string unended = plain.substr(0, plain.size() - 2);
  CHECK(without_description(unended + segment('\xFE', "a comment") + plain.substr(unended.size())) == plain);
  CHECK(without_description(unended) == unended);
  // What is no JPEG, or breaks off within its head, stays as it is.
  for (const std::string& other : {std::string("GIF89a"), noted.substr(0, 30), std::string("\xFF\xD8\xFF\xE1\x00", 5)})
    CHECK(without_description(other) == other);
}

TEST_CASE("the channels of a JPEG are read from its frame's head") {
  CHECK(jpeg_channels(jpeg_of_quarters(8, 8)) == 3);
  CHECK(jpeg_channels(held(jpeg_of_quarters(8, 8), 3)) == 3);
  CHECK(jpeg_channels("\x89PNG") == 0);
  CHECK(jpeg_channels("") == 0);
  // By hand from T.81, B.2.2: SOF0, length 11, 8 bits, 1 × 1, one component.
  const std::string grey =
      std::string("\xFF\xD8", 2) + segment('\xC0', std::string("\x08\0\x01\0\x01\x01\x01\x11\0", 9));
  CHECK(jpeg_channels(grey) == 1);
}

TEST_CASE("a large picture is made smaller, its shape kept, and stays what it shows") {
  const auto imported = import_picture(held(jpeg_of_quarters(3600, 1200), 6));
  REQUIRE(imported.error == "");
  CHECK(imported->height_px == imported_side_px);
  CHECK(imported->width_px == 800);
  const auto decoded = decode_picture(imported->bytes);
  REQUIRE(decoded.error == "");
  CHECK(decoded->width_px() == 800);
  CHECK(seen(*decoded) == "BRWG");
}

TEST_CASE("what is transparent stays so as PNG; a drawing stays PNG, other kinds become JPEG") {
  const auto clear = import_picture(file_of(quarters(40, 40, 0), "png"));
  REQUIRE(clear.error == "");
  CHECK(clear->media == PictureMedia::png);
  const auto decoded = decode_picture(clear->bytes);
  REQUIRE(decoded.error == "");
  CHECK(decoded->has_transparency());
  CHECK(seen(*decoded) == "RGBW");  // seen before white
  const auto opaque = import_picture(file_of(quarters(40, 40), "png"));
  CHECK(opaque->media == PictureMedia::png);
  CHECK_FALSE(decode_picture(opaque->bytes)->has_transparency());
  const auto other = import_picture(file_of(quarters(40, 40), "bmp"));
  REQUIRE(other.error == "");
  CHECK(other->media == PictureMedia::jpeg);
  CHECK(other->bytes.starts_with("\xFF\xD8\xFF"));
}

TEST_CASE("what is no picture, cut off, or empty is refused with a sentence") {
  const std::string jpeg = jpeg_of_quarters(96, 64), png = file_of(quarters(96, 64), "png");
  for (const std::string& bytes : {std::string(), std::string("\xFF\xD8\xFF"), std::string("words, no picture"),
                                   png.substr(0, 20), png.substr(0, 40), jpeg.substr(0, 100)}) {
    CAPTURE(bytes.size());
    const auto decoded = decode_picture(bytes);
    CHECK(decoded.error.starts_with("This picture cannot be read: "));
    CHECK(decoded.error.ends_with("."));
    CHECK(import_picture(bytes).error == decoded.error);
  }
}

TEST_CASE("a file that promises more pixels than are accepted is refused before room is made for them") {
  // 40,000 × 40,000 pixels are 6.4 GB: making room for them would be seen in the time and memory of this test.
  const auto decoded = decode_picture(promised_png(40'000, 40'000));
  CHECK(decoded.error == "This picture cannot be read: it has 1600 million pixels, and 120 are accepted.");
  CHECK(holds(import_picture(promised_png(200'000, 200'000)).error, "million pixels"));
  // Of fit size, the same file is only cut off.
  CHECK_FALSE(holds(decode_picture(promised_png(400, 400)).error, "million"));
}

TEST_CASE("a colour is the mean of light over a patch, and beyond the edge that of the edge") {
  // Black and white in turns: half the light, which in sRGB is 188 of 255 (IEC 61966-2-1: 0.5 -> 1.055 × 0.5^(1/2.4) -
  // 0.055 = 0.7354), not 128.
  GdkPixbuf* pixbuf = gdk_pixbuf_new(GDK_COLORSPACE_RGB, FALSE, 8, 64, 64);
  for (int y = 0; y < 64; ++y)
    for (int x = 0; x < 64; ++x)
      for (int c = 0; c < 3; ++c)
        gdk_pixbuf_get_pixels(pixbuf)[y * gdk_pixbuf_get_rowstride(pixbuf) + x * 3 + c] = (x + y) % 2 ? 255 : 0;
  const auto checks = decode_picture(file_of(pixbuf, "png"));
  REQUIRE(checks.error == "");
  const Ink mean = checks->mean_colour({32, 32}, 20);
  CHECK(mean.red == doctest::Approx(0.7354).epsilon(0.01));
  CHECK(mean.green == mean.red);
  CHECK(checks->mean_colour({10.5, 10.5}, 0).red == 0);
  CHECK(checks->mean_colour({11.5, 10.5}, 0).red == doctest::Approx(1));
  const auto four = decode_picture(file_of(quarters(40, 40), "png"));
  CHECK(letter_of(four->mean_colour({-100, -5}, 3)) == 'R');
  CHECK(letter_of(four->mean_colour({500, 500}, 3)) == 'W');
}
