// A garland by stretches: every balloon is told with its size and colour, and whoever is seen has a name on the picture.
#include <doctest/doctest.h>

#include <array>
#include <map>
#include <optional>
#include <set>
#include <sstream>
#include <string>

#include "sdk/units.hpp"
#include "studio/paint/text.hpp"
#include "tests/build_sheet/build_pages.hpp"
#include "tests/build_sheet/garlands.hpp"
#include "tests/paper/page_checks.hpp"

using namespace quadrille;

namespace {

/// What a stretch says, read off the paper.
struct StretchRead {
  std::string heading;
  std::map<std::string, std::string> lists;  ///< by what stands at a line's left
  std::vector<TextMark> names;               ///< on and by the picture
};

bool is_name(const std::string& text) {
  return text.size() > 3 && (text[0] == '#' || text[0] == 'f') && text[1] >= '0' && text[1] <= '9' &&
         text.find(' ') != std::string::npos;
}

/// With plain blanks for those at which no line ends.
std::string with_blanks(std::string text) {
  const std::string hard = "\u00a0";
  for (std::size_t at = text.find(hard); at != std::string::npos; at = text.find(hard))
    text.replace(at, hard.size(), " ");
  return text;
}

/// In the order in which they are drawn: heading, names, lists.
std::vector<StretchRead> stretches_on(const std::vector<Page>& pages) {
  std::vector<StretchRead> all;
  for (const Page& page : pages) {
    std::string of;
    for (const Mark& mark : page.marks) {
      const auto* text = std::get_if<TextMark>(&mark.shape);
      if (text == nullptr) continue;
      if (has(text->text, " m to ")) all.emplace_back().heading = text->text;
      if (all.empty()) continue;
      if (mark.part == Part::dimension && is_name(text->text)) all.back().names.push_back(*text);
      if (mark.part != Part::key) continue;
      if (!of.empty()) all.back().lists[of] = with_blanks(text->text);
      of = text->style.face == Face::bold && (text->text[0] == '#' || has(text->text, " in ")) ? text->text : "";
    }
  }
  return all;
}

std::vector<std::string> split(const std::string& text, const std::string& by) {
  std::vector<std::string> parts;
  for (std::size_t from = 0; from <= text.size();) {
    const std::size_t to = std::min(text.find(by, from), text.size());
    parts.push_back(text.substr(from, to - from));
    from = to + by.size();
  }
  return parts;
}

/// "f1–f3, f5" as 1, 2, 3, 5.
std::vector<int> numbers_in(const std::string& text) {
  std::vector<int> numbers;
  for (const std::string& part : split(text, ", ")) {
    const auto ends = split(part, "–");
    for (int i = std::stoi(ends.front().substr(1)); i <= std::stoi(ends.back().substr(1)); ++i) numbers.push_back(i);
  }
  return numbers;
}

struct Told {
  std::multiset<std::string> seen, behind;
};

/// "16 in B, 11 in C; behind 5 in B".
Told told_of_cluster(const std::string& text) {
  Told told;
  for (const std::string& half : split(text, "; ")) {
    const bool behind = half.starts_with("behind ");
    for (const std::string& one : split(behind ? half.substr(7) : half, ", "))
      (behind ? told.behind : told.seen).insert(one);
  }
  return told;
}

std::string size_and_colour(const Balloon& balloon) {
  return std::to_string(static_cast<int>(balloon.nominal_in)) + " in " + static_cast<char>('A' + balloon.slot) +
         (balloon.role == Role::accent ? "*" : "");
}

/// The letter and star at the end of "16 in B*" or "#5 B*".
std::string colour_of(const std::string& text) { return text.substr(text.find_last_of(' ') + 1); }

double luminance(const Ink& ink) {
  const auto linear = [](double v) { return v <= 0.04045 ? v / 12.92 : std::pow((v + 0.055) / 1.055, 2.4); };
  return 0.2126 * linear(ink.red) + 0.7152 * linear(ink.green) + 0.0722 * linear(ink.blue);
}

/// WCAG 2.1, contrast ratio.
double contrast(const Ink& a, const Ink& b) {
  const double one = luminance(a) + 0.05, other = luminance(b) + 0.05;
  return std::max(one, other) / std::min(one, other);
}

}  // namespace

// "5 B" was cluster 5 on the picture and a five-inch balloon in the list beside it.
TEST_CASE("every balloon of a garland is told with its nominal size in inches and its colour") {
  const Piece piece = garland();
  const auto stretches = stretches_on(build(with_piece(piece), in_metres()));
  REQUIRE(stretches.size() == 6);
  std::size_t clusters = 0;
  int fillers = 0;
  for (std::size_t s = 0; s < stretches.size(); ++s) {
    const StretchRead& stretch = stretches[s];
    const double from = 0.5 * static_cast<double>(s);
    CHECK(stretch.heading == print_fixed(from, 2) + " m to " + print_fixed(from + 0.5, 2) + " m");
    std::map<int, std::string> told;
    for (const auto& [of, what] : stretch.lists) {
      if (of[0] == '#') {
        const auto number = static_cast<std::uint32_t>(std::stoi(of.substr(1)));
        std::multiset<std::string> wanted;
        for (const Balloon& balloon : piece.balloons)
          if (balloon.cluster == number) wanted.insert(size_and_colour(balloon));
        Told read = told_of_cluster(what);
        read.seen.merge(read.behind);
        CHECK(read.seen == wanted);
        ++clusters;
      } else {
        for (const std::string& side : split(what, "; "))
          for (const int number : numbers_in(side.substr(0, side.find(' ', side.find_last_of('f'))))) {
            CHECK(told.emplace(number, of).second);
          }
      }
    }
    // Fillers count anew in each half metre; by the formula every one holds those of two clusters, one after the other.
    int number = 0;
    for (const Balloon& balloon : piece.balloons) {
      if (balloon.cluster != 0 || static_cast<std::size_t>(balloon.neck.x() / 0.5) != s) continue;
      CHECK(told[++number] == size_and_colour(balloon));
    }
    CHECK(told.size() == static_cast<std::size_t>(number));
    fillers += number;
  }
  CHECK(clusters == piece.clusters.size());
  CHECK(fillers == 24);  // 1, 2 and 3 by turns over 12 clusters
}

// Of 748 fillers 472 had a name on the picture, and cluster balloons were left without their colour.
TEST_CASE("each balloon that is seen has its name with its colour on the picture, and what is behind has none") {
  for (const double length : {3.0, 14.0})
    for (const StretchRead& stretch : stretches_on(build(with_piece(garland(length)), in_metres()))) {
      CAPTURE(stretch.heading);
      std::multiset<std::string> wanted, drawn;
      for (const auto& [of, what] : stretch.lists) {
        if (of[0] == '#') {
          for (const std::string& one : told_of_cluster(what).seen) wanted.insert(of + " " + colour_of(one));
          continue;
        }
        for (const std::string& side : split(what, "; ")) {
          const std::size_t names_end = side.find(' ', side.find_last_of('f'));
          const std::size_t last = side.rfind("front") == std::string::npos ? names_end : side.find(" front");
          if (has(side, "behind")) continue;
          for (const int number : numbers_in(side.substr(0, std::min(names_end, last))))
            wanted.insert("f" + std::to_string(number) + " " + colour_of(of));
        }
      }
      for (const TextMark& name : stretch.names) drawn.insert(name.text);
      CHECK(drawn == wanted);
    }
}

// "f5" stood in black on navy.
TEST_CASE("a name on a balloon stands on that alone, in black or white by its colour, or on paper") {
  int on_balloon = 0, on_paper = 0;
  for (const Page& page : build(with_piece(garland(14)), in_metres())) {
    std::vector<const BalloonMark*> balls;
    for (const Mark& mark : page.marks)
      if (const auto* ball = std::get_if<BalloonMark>(&mark.shape); ball && mark.part == Part::drawing)
        balls.push_back(ball);
    for (const Mark& mark : page.marks) {
      const auto* text = std::get_if<TextMark>(&mark.shape);
      if (text == nullptr || mark.part != Part::dimension || !is_name(text->text)) continue;
      CAPTURE(text->text);
      const Rect ink = set_text(*text).ink;
      std::set<const BalloonMark*> beneath;
      for (const double x : {ink.x, ink.middle().x, ink.right()})
        for (const double y : {ink.y, ink.middle().y, ink.bottom()}) {
          const BalloonMark* top = nullptr;
          for (const BalloonMark* ball : balls)
            if (std::hypot(ball->centre.x - x, ball->centre.y - y) < ball->radius) top = ball;
          beneath.insert(top);
        }
      REQUIRE(beneath.size() == 1);
      const BalloonMark* ball = *beneath.begin();
      // 4.5: what WCAG 2.1 asks of text of this size.
      CHECK(contrast(text->style.ink, ball ? ball->ink : Ink{1, 1, 1, 1}) >= 4.5);
      ++(ball ? on_balloon : on_paper);
    }
  }
  CHECK(on_balloon > 150);
  CHECK(on_paper > 20);
}

// Fillers stood half beside the picture and half beneath the clusters, and on upright pages after them.
TEST_CASE("of a stretch the picture comes first, then the clusters, then the fillers, in one column") {
  for (Paper paper : {Paper::a4, Paper::letter, Paper::a3, Paper::tabloid}) {
    SheetOptions options = in_metres();
    options.paper = paper;
    int rows = 0;
    for (const Page& page : build(with_piece(garland(14)), options)) {
      const TextMark* heading = nullptr;
      int stage = 0;
      for (const Mark& mark : page.marks) {
        const auto* text = std::get_if<TextMark>(&mark.shape);
        if (text == nullptr || mark.part == Part::title_block) continue;
        if (has(text->text, " m to ")) heading = text, stage = 0;
        const bool is_list = mark.part == Part::key && text->style.face == Face::bold &&
                             (text->text[0] == '#' || has(text->text, " in "));
        if (!is_list) continue;
        ++rows;
        REQUIRE_MESSAGE(heading != nullptr, text->text);
        CHECK(text->box.y > heading->box.y);
        CHECK(text->box.x >= heading->box.x - 0.01);
        const int now = text->text[0] == '#' ? 1 : 2;
        CHECK(now >= stage);
        stage = now;
      }
    }
    CHECK(rows > 56 + 56);  // one for each cluster, and two or more of fillers for each of the 28 stretches
  }
}
