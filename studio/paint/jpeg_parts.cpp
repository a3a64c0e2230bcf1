#include "studio/paint/jpeg_parts.hpp"

#include <cstddef>

namespace quadrille {
namespace {

unsigned byte_at(std::string_view bytes, std::size_t at) { return static_cast<unsigned char>(bytes[at]); }

/// One segment before the pixels: 0xFF, its marker, two bytes of length, and what it holds.
struct Segment {
  unsigned marker = 0;
  std::string_view whole;
};

constexpr unsigned start_of_scan = 0xDA, comment = 0xFE, jfif = 0xE0, colour_transform = 0xEE;
constexpr std::string_view end_of_image = "\xFF\xD9";

bool is_application(unsigned marker) { return marker >= 0xE0 && marker <= 0xEF; }
/// Baseline, progressive and the others; C4, C8 and CC are something else.
bool is_frame_head(unsigned marker) {
  return marker >= 0xC0 && marker <= 0xCF && marker != 0xC4 && marker != 0xC8 && marker != 0xCC;
}

/// Any number of FF may fill the room before a marker.
void skip_filling(std::string_view& rest) {
  while (rest.size() >= 2 && byte_at(rest, 0) == 0xFF && byte_at(rest, 1) == 0xFF) rest.remove_prefix(1);
}

/// Takes the next segment from the front of `rest`; a marker of 0 where there is none.
Segment take_segment(std::string_view& rest) {
  skip_filling(rest);
  if (rest.size() < 4 || byte_at(rest, 0) != 0xFF) return {};
  const std::size_t length = 2 + (byte_at(rest, 2) << 8 | byte_at(rest, 3));
  if (length < 4 || length > rest.size()) return {};
  Segment segment{byte_at(rest, 1), rest.substr(0, length)};
  rest.remove_prefix(length);
  return segment;
}

/// Takes the coded pixels from the front of `rest`: up to the next marker, or all of it where there is none. Among them
/// stand FF 00, which is a byte of theirs, and the markers D0 to D7, at which decoding may begin again.
std::string_view take_pixels(std::string_view& rest) {
  std::size_t end = rest.find('\xFF');
  for (; end != std::string_view::npos; end = rest.find('\xFF', end + 1)) {
    const unsigned next = end + 1 < rest.size() ? byte_at(rest, end + 1) : 0;
    if (next != 0 && next != 0xFF && (next < 0xD0 || next > 0xD7)) break;
  }
  const std::string_view pixels = rest.substr(0, end);
  rest.remove_prefix(pixels.size());
  return pixels;
}

}  // namespace

int jpeg_channels(std::string_view jpeg) {
  if (!jpeg.starts_with("\xFF\xD8")) return 0;
  jpeg.remove_prefix(2);
  for (Segment next = take_segment(jpeg); next.marker != 0 && next.marker != start_of_scan; next = take_segment(jpeg))
    if (is_frame_head(next.marker) && next.whole.size() >= 10) return static_cast<int>(byte_at(next.whole, 9));
  return 0;
}

std::string without_description(std::string_view jpeg) {
  if (!jpeg.starts_with("\xFF\xD8")) return std::string(jpeg);
  std::string kept(jpeg.substr(0, 2));
  std::string_view rest = jpeg.substr(2);
  bool has_pixels = false;
  for (;;) {
    skip_filling(rest);
    // Behind the end cameras put further pictures and films, with descriptions of their own.
    if (has_pixels && rest.starts_with(end_of_image)) return kept.append(end_of_image);
    const Segment next = take_segment(rest);
    if (next.marker == 0) return has_pixels ? kept.append(rest) : std::string(jpeg);
    const bool describes = next.marker == comment ||
                           (is_application(next.marker) && next.marker != jfif && next.marker != colour_transform);
    if (!describes) kept += next.whole;
    if (next.marker != start_of_scan) continue;
    kept += take_pixels(rest);
    has_pixels = true;
  }
}

}  // namespace quadrille
