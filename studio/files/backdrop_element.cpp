#include "studio/files/backdrop_element.hpp"

#include <optional>
#include <string_view>
#include <utility>

#include "studio/files/base64.hpp"
#include "studio/files/element_writer.hpp"

namespace quadrille {
namespace {

std::string nothing_known(const XmlNode&) { return {}; }

bool is_of(PictureMedia media, std::string_view bytes) {
  return media == PictureMedia::jpeg ? bytes.starts_with("\xFF\xD8\xFF") : bytes.starts_with("\x89PNG\r\n\x1A\n");
}

/// The picture, or what is wrong with it as the end of a sentence.
Result<StoredPicture> read_picture(ElementReader& backdrop, const XmlNode& child) {
  using Pictures = Result<StoredPicture>;
  StoredPicture picture;
  ElementReader reader(child, backdrop.reading(), backdrop.kept(), backdrop.inside("picture"));
  picture.media = reader.word("media", media_words, picture.media);
  picture.width_px = static_cast<int>(reader.required_whole("width-px", pixel_range));
  picture.height_px = static_cast<int>(reader.required_whole("height-px", pixel_range));
  auto bytes = parse_base64(reader.words());
  reader.children(nothing_known);
  reader.finish();
  if (!bytes) return Pictures::bad(std::move(bytes.error));
  if (bytes->size() > most_picture_bytes) return Pictures::bad("it is too large");
  if (!is_of(picture.media, *bytes.value))
    return Pictures::bad("it is no " + std::string(word_of(media_words, picture.media)) + " picture");
  picture.bytes = std::move(*bytes.value);
  return Pictures::good(std::move(picture));
}

}  // namespace

Result<Backdrop> read_backdrop(const XmlNode& element, Reading& reading) {
  Backdrop backdrop;
  ElementReader reader(element, reading, backdrop.preserved);
  backdrop.x_m = reader.number("x-m", place_range).value_or(0);
  backdrop.z_m = reader.number("z-m", place_range).value_or(0);
  backdrop.metres_per_pixel = reader.required_number("metres-per-pixel", pixel_scale_range);
  backdrop.fade = reader.number("fade", fade_range).value_or(Backdrop{}.fade);
  backdrop.locked = reader.word("locked", yes_or_no, false);
  backdrop.hidden = reader.word("hidden", yes_or_no, false);
  std::optional<Result<StoredPicture>> picture;
  reader.children([&](const XmlNode& child) -> std::string {
    if (child.name != "picture") return {};
    if (picture) return reader.leave("It stands twice, and only the first counts;");
    picture = read_picture(reader, child);
    return "picture";
  });
  reader.finish();
  if (!picture) return Result<Backdrop>::bad("There is no picture in the backdrop;");
  if (!*picture) return Result<Backdrop>::bad("The backdrop's picture cannot be used, since " + picture->error + ";");
  backdrop.picture = Shared<StoredPicture>(std::move(*picture->value));
  return Result<Backdrop>::good(std::move(backdrop));
}

std::string backdrop_lines(const Backdrop& backdrop, int depth) {
  const Kept kept(backdrop.preserved);
  ElementWriter writer("backdrop", depth, kept);
  writer.number("x-m", backdrop.x_m);
  writer.number("z-m", backdrop.z_m);
  writer.number("metres-per-pixel", backdrop.metres_per_pixel);
  writer.number("fade", backdrop.fade);
  writer.yes("locked", backdrop.locked);
  writer.yes("hidden", backdrop.hidden);
  const StoredPicture& held = *backdrop.picture;
  ElementWriter picture("picture", depth + 1, kept, writer.inside("picture"));
  picture.word("media", media_words, held.media, StoredPicture{}.media);
  picture.whole("width-px", held.width_px);
  picture.whole("height-px", held.height_px);
  picture.words(base64_lines(held.bytes));
  writer.child("picture", picture.finish());
  return writer.finish();
}

}  // namespace quadrille
