// The build sheet: everything on it stays in its place, pieces alike share one, and its numbers are those of the event.
#include "studio/build_sheet/build_sheet.hpp"

#include <doctest/doctest.h>

#include <map>
#include <set>

#include "sdk/number.hpp"
#include "studio/making/stretches.hpp"
#include "studio/paint/output.hpp"
#include "studio/paint/text.hpp"
#include "tests/making/laid.hpp"
#include "tests/paint/picture.hpp"
#include "tests/paper/page_checks.hpp"

using namespace quadrille;

namespace {

std::vector<Page> build(const sample::Job& job, const SheetOptions& options = {}) {
  const EventCount count = job.count();
  return build_sheet({job.event, job.built, count, job.palettes}, options);
}

std::size_t times(const std::string& text, const std::string& part) {
  std::size_t count = 0;
  for (std::size_t at = text.find(part); at != std::string::npos; at = text.find(part, at + 1)) ++count;
  return count;
}

/// A garland along 3 m: clusters of four unlike balloons, and fillers, by a formula.
Piece garland(double length_m = 3) {
  Piece piece;
  constexpr double sizes[] = {16, 11, 5, 9};
  const auto clusters = static_cast<std::uint32_t>(length_m / 0.25);
  for (std::uint32_t i = 0; i < clusters; ++i) {
    const Vec3 centre(0.125 + 0.25 * i, 0, 1.8);
    piece.clusters.push_back({i + 1, 0.125 + 0.25 * i, centre, Vec3::UnitX(), 0});
    for (std::uint32_t j = 0; j < 4; ++j) {
      const double nominal = sizes[(i * 7 + j * 3) % 4], angle = j * pi / 2 + i * 0.4, r = nominal * 0.0127 * 0.9;
      const Vec3 out(0.02 * j, std::cos(angle), std::sin(angle));
      const Role role = (i + j) % 9 == 0 ? Role::accent : Role::body;
      piece.balloons.push_back({centre + r * out, centre, 2 * r, nominal, (i * 5 + j) % 4, i + 1, j, role});
    }
    for (std::uint32_t j = 0; j < 1 + i % 3; ++j) {
      const Vec3 off(0.05 * j, j == 0 ? -0.3 : 0.1, j == 1 ? 0.3 : -0.2);
      piece.balloons.push_back({centre + off, centre, 0.11, 5, (i + j) % 4, 0, 0, Role::filler});
    }
  }
  piece.spine = {{0, Vec3(0, 0, 1.8)}, {length_m, Vec3(length_m, 0, 1.8)}};
  for (int i = 0; i < 4; ++i) {
    piece.frame.nodes.emplace_back(length_m * i / 3, 0, 1.8);
    piece.supports.push_back({SupportKind::hook, static_cast<std::uint32_t>(i), true, 0, 0, 0, 0, 0});
  }
  piece.tie_points = {{0, TiePurpose::side, piece.frame.nodes[0], "first end"}};
  return piece;
}

sample::Job with_piece(Piece piece) {
  return changed([&](sample::Job& job, Area& area) {
    area.pieces[0].edit([](PlacedPiece& placed) {
      placed.colours = {{"studio", "lagoon"}, {"studio", "brass"}, {"studio", "chalk"}, {"studio", "ink"}};
    });
    job.built["p1"] = sample::built(std::move(piece));
  });
}

/// An arch with lines to stakes, a dead weight and a structure, in a garden.
sample::Job secured_arch() {
  return changed([](sample::Job& job, Area& area) {
    area.site.surroundings = Surroundings::outdoors, area.site.ground = Ground::grass;
    Structure post;
    post.id = "s1", post.name = "A gate post with a long name that somebody gave it", post.x_m = 5, post.height_m = 2;
    area.structures.push_back(post);
    secure_first(job, area,
                 {{Severity::warning, "tightness", "At a tightness of 0.80 the packing is forced.", Topic::other}});
  });
}

std::vector<HardCase> build_cases() {
  std::vector<HardCase> cases = hard_cases();
  cases.push_back({"garland", with_piece(garland())});
  cases.push_back({"long garland", with_piece(garland(14))});
  cases.push_back({"secured arch", secured_arch()});
  cases.push_back({"40 alike with long names", columns(40, nullptr)});
  cases.back().job = changed([](sample::Job& job, Area& area) {
    area.pieces.clear();
    for (int i = 0; i < 40; ++i) {
      const std::string id = numbered("c", i), name(60, static_cast<char>('a' + i % 26));
      area.pieces.push_back(sample::placed(id, name, i, {"lagoon", "brass"}));
      job.built[id] = sample::built(sample::column(2, 0.2));
    }
  });
  const auto rows = laid::plan_of(PatternKind::zigzag, 6, 6, 1, 5);
  cases.push_back({"six by six", with_piece(laid::half_circle(rows, 50))});
  return cases;
}

}  // namespace

TEST_CASE("a build sheet's text stays in its box, boxes within the margins, and no text lies over another") {
  for (const HardCase& hard : build_cases())
    for (Paper paper : {Paper::a4, Paper::letter, Paper::a3, Paper::tabloid})
      for (Units units : {Units::feet, Units::metric}) {
        CAPTURE(hard.name);
        CAPTURE(static_cast<int>(paper));
        CAPTURE(static_cast<int>(units));
        SheetOptions options;
        options.paper = paper, options.units = units;
        const std::vector<Page> pages = build(hard.job, options);
        REQUIRE_FALSE(pages.empty());
        for (const Page& page : pages) check_page(page);
      }
}

TEST_CASE("nothing on a build sheet is cut short but what is longer than twelve lines, and nothing is below 7.5 pt") {
  for (const HardCase& hard : build_cases()) {
    if (hard.name == "200 letters") continue;  // the title block cuts such names
    CAPTURE(hard.name);
    for (const Page& page : build(hard.job))
      for (const Mark& mark : page.marks)
        if (const auto* text = std::get_if<TextMark>(&mark.shape)) {
          CHECK(text->style.size_pt >= 7.5);
          CHECK_MESSAGE(!(mark.part == Part::key && set_text(*text).shortened), text->text);
        }
  }
}

TEST_CASE("pieces alike share a sheet that names them all; a piece that differs has its own") {
  const std::string text = all_text(build(columns(5), in_metres()));
  CHECK(has(text, "Build: Aisle 1 to 5\n"));
  CHECK(has(text, "Make 5 of these\n"));
  for (int i = 1; i <= 5; ++i) CHECK(has(text, numbered("Aisle ", i) + ", Garden entrance\n"));
  CHECK(times(text, "How the clusters go\n") == 1);
  using Change = void (*)(sample::Job&, PlacedPiece&);
  for (const Change change :
       {Change{[](sample::Job&, PlacedPiece&p) { p.colours[1].colour = "ink"; }},
        Change{[](sample::Job&job, PlacedPiece&) { job.built["c3"] = sample::built(sample::column(1.5, 0.2)); }},
        Change{[](sample::Job&, PlacedPiece&p) { p.type = "column"; }}}) {
    const std::string other = all_text(build(columns(5, change), in_metres()));
    CHECK(has(other, "Make 4 of these\n"));
    CHECK(has(other, "What is made by this sheet\n"));
  }
}

TEST_CASE("what cannot be built is named with the reason, and an empty event says so") {
  for (const HardCase& hard : hard_cases()) {
    const std::string text = all_text(build(hard.job));
    if (hard.name == "no pieces" || hard.name == "no areas") CHECK(has(text, "There are no pieces here yet.\n"));
    if (hard.name == "missing and refused") {
      CHECK(has(text, "Ribbon wall: its piece type is not available.\n"));
      CHECK(has(text, "Too wide: The span of 7 m is longer than the rod of 6 m"));
    }
  }
  SheetOptions elsewhere;
  elsewhere.area = "no such area";
  CHECK(build(sample::one_arch(), elsewhere).empty());
}

TEST_CASE("lines, feet, warnings and parts are told as they are") {
  const std::string text = all_text(build(secured_arch(), in_metres()));
  // From the crown (0, 0, 1.45) to (-1.6, -2.6, 0): sqrt(2.56 + 6.76 + 2.1025) = 3.38 m, asin(1.45 / 3.38) = 25.4°. The
  // left foot stands at x = -1.2, so the anchor is 0.40 m to its left. Cut: a tenth more and 0.6 m, 4.32 m.
  CHECK(has(text,
            "3.38 m long (cut 4.32 m), 25° to the ground. The anchor stands 2.60 m out in front, 0.40 m to the left, "
            "seen from the left foot."));
  CHECK(has(text, "Crown, to the back, to: dead weight, 20.0 kg\n"));
  CHECK(has(text, "A gate post with a long name that somebody gave it, 1.60 m up\n"));
  CHECK(has(text, "plate 0.40 m square, 6.0 kg; ballast 10.0 kg\n"));
  CHECK(has(text, "At a tightness of 0.80 the packing is forced.\n"));
  CHECK(has(text, "L1"));
  CHECK(has(text, "From above, 1:"));
}

TEST_CASE("the balloons on a sheet add up to what is counted of its piece, and spares are the event's") {
  for (const sample::Job& job : {sample::one_arch(), with_piece(garland()), columns(3)}) {
    const EventCount count = job.count();
    // A row: size, diameter, how many, spares, as marks in this order.
    std::vector<std::string> texts;
    for (const Page& page : build(job, in_metres()))
      for (const Mark& mark : page.marks)
        if (const auto* t = std::get_if<TextMark>(&mark.shape)) texts.push_back(t->text);
    std::int64_t each = 0, spares = 0;
    for (std::size_t i = 2; i + 1 < texts.size(); ++i)
      if (texts[i - 1].ends_with(" cm") && texts[i - 2].ends_with(" in") && !texts[i].empty() &&
          texts[i].find_first_not_of("0123456789") == std::string::npos) {
        each += std::stoll(texts[i]);
        if (texts[i + 1] != "\"") spares += std::stoll(texts[i + 1]);
      }
    CHECK(each == count.pieces.front().balloons);
    std::int64_t wanted = 0;
    for (const BalloonBag& bag : count.bags) wanted += bag.spares;
    CHECK(spares == wanted);
  }
}

// The repair of a garland: number, size and colour of each balloon, read off the paper.
TEST_CASE("every balloon of a garland is on its sheet with cluster or filler number, size and colour") {
  const Piece piece = garland();
  const Folder folder;
  const auto pdf = to_pdf(build(with_piece(piece), in_metres()), {"Garland", "2027-06-19"});
  REQUIRE(pdf);
  std::string text = output_of("pdftotext -raw '" + folder.write("build.pdf", *pdf) + "' -");
  std::replace(text.begin(), text.end(), '\n', ' ');
  for (const Cluster& cluster : piece.clusters) {
    std::string row = std::to_string(cluster.number) + " ";
    std::string list;
    for (const Balloon& balloon : piece.balloons)
      if (balloon.cluster == cluster.number)
        list += (list.empty() ? "" : ", ") + std::to_string(static_cast<int>(balloon.nominal_in)) + " " +
                static_cast<char>('A' + balloon.slot) + (balloon.role == Role::accent ? "*" : "");
    row += list;
    CHECK_MESSAGE(has(text, row), row);
  }
  // Fillers count anew in each half metre; by the formula every one holds those of two clusters, one after the other.
  int fillers = 0;
  for (std::uint32_t stretch = 0; stretch < 6; ++stretch) {
    const auto heading = [](double from) {
      return print_fixed(from, 2) + " m to " + print_fixed(from + 0.5, 2) + " m";
    };
    const std::size_t from = text.find(heading(0.5 * stretch)), to = text.find(heading(0.5 * stretch + 0.5));
    REQUIRE(from != std::string::npos);
    const std::string part = text.substr(from, to - from);
    int number = 0;
    for (const Balloon& balloon : piece.balloons) {
      if (balloon.cluster != 0 || static_cast<std::uint32_t>(balloon.neck.x() / 0.5) != stretch) continue;
      const std::string row = "f" + std::to_string(++number) + ": 5 " + static_cast<char>('A' + balloon.slot) + " ";
      CHECK_MESSAGE(has(part, row), row);
    }
    CHECK_FALSE(has(part, "f" + std::to_string(number + 1) + ":"));
    fillers += number;
  }
  CHECK(fillers == 24);  // 1, 2 and 3 by turns over 12 clusters
}

// A page held one line of fillers, "Stretch by stretch, continued": the picture that names them was on the page before.
TEST_CASE("what is told of a stretch stands by its picture, in the same column") {
  for (Paper paper : {Paper::a4, Paper::letter, Paper::a3, Paper::tabloid}) {
    SheetOptions options = in_metres();
    options.paper = paper;
    int fillers = 0;
    for (const Page& page : build(with_piece(garland(14)), options)) {
      const TextMark* heading = nullptr;
      for (const Mark& mark : page.marks) {
        const auto* text = std::get_if<TextMark>(&mark.shape);
        if (text == nullptr) continue;
        if (has(text->text, " m to ")) heading = text;
        if (text->text.size() < 3 || text->text[0] != 'f' || text->text.find(": ") == std::string::npos) continue;
        if (text->text[1] < '0' || text->text[1] > '9') continue;
        ++fillers;
        REQUIRE_MESSAGE(heading != nullptr, text->text);
        CHECK(text->box.y > heading->box.y);
        CHECK(text->box.x >= heading->box.x - 0.01);
        CHECK(text->box.right() <= heading->box.right() + 0.01);
      }
    }
    CHECK(fillers == 111);  // 1, 2 and 3 by turns over 56 clusters: 18 · 6 + 1 + 2
  }
}

TEST_CASE("each running mark is told with its cluster and where the middle of that is") {
  const Piece piece = laid::half_circle(laid::plan_of(PatternKind::spiral, 4, 3, 1, 5), 41);
  const std::string text = all_text(build(with_piece(piece), in_metres()));
  const auto marks = running_marks(piece, cluster_chart(piece), 0.5);
  REQUIRE(marks.size() > 5);
  for (const RunningMark& mark : marks) {
    const std::string row = print_fixed(mark.at_m, 2) + " m\n" + std::to_string(mark.cluster) + "\n" +
                            print_fixed(mark.cluster_at_m, 2) + " m\n";
    CHECK_MESSAGE(has(text, row), row);
  }
}

TEST_CASE("a single plate without lines has no plan: it was drawn as a square as large as the column") {
  CHECK_FALSE(has(all_text(build(columns(3), in_metres())), "From above"));
  CHECK(has(all_text(build(sample::one_arch(), in_metres())), "From above"));
}

TEST_CASE("captions over a table are never bold, whatever the cells beneath them are") {
  for (const sample::Job& job : {sample::one_arch(), columns(2)})
    for (const Page& page : build(job, in_metres()))
      for (const Mark& mark : page.marks)
        if (const auto* text = std::get_if<TextMark>(&mark.shape))
          if (text->text == "Clusters" || text->text == "Colours" || text->text == "Turned")
            CHECK(text->style.face == Face::regular);
}

TEST_CASE("equal events give equal bytes") {
  const sample::Job job = with_piece(garland());
  CHECK(*to_pdf(build(job), {"A", "2027-06-19"}) == *to_pdf(build(job), {"A", "2027-06-19"}));
}

TEST_CASE("lists had uneven gaps: rows were measured for a narrower column than they were drawn in") {
  for (const sample::Job& job : {sample::one_arch(), with_piece(garland()), secured_arch(), columns(3)})
    for (Paper paper : {Paper::a4, Paper::letter, Paper::a3, Paper::tabloid}) {
      SheetOptions options;
      options.paper = paper;
      for (const Page& page : build(job, options)) {
        // Of the cells of a row the tallest gives its height.
        std::map<std::pair<double, double>, double> tallest;
        for (const Mark& mark : page.marks)
          if (const auto* text = std::get_if<TextMark>(&mark.shape); text && mark.part == Part::key)
            if (text->box.height > 4.5) {
              double& most = tallest[{text->box.y, text->box.height}];
              most = std::max(most, set_text(*text).logical.height);
            }
        for (const auto& [box, most] : tallest) CHECK(box.second - most < 0.1);
      }
    }
}

TEST_CASE("how a burst balloon is mended is told once, and for each way with its pieces") {
  CHECK(times(all_text(build(columns(3), in_metres())), "A balloon has burst\n") == 1);
  sample::Job job = columns(4, [](sample::Job&, PlacedPiece& p) { p.colours[1].colour = "ink"; });
  std::string text = all_text(build(job, in_metres()));
  CHECK(times(text, "A balloon has burst\n") == 1);
  CHECK(times(text, "Pocket every scrap") == 1);
  CHECK_FALSE(has(text, "\nAt "));
  job = columns(4, [](sample::Job& j, PlacedPiece&) { j.built["c3"] = sample::built(garland()); });
  text = all_text(build(job, in_metres()));
  CHECK(times(text, "A balloon has burst\n") == 1);
  CHECK(has(text, "\nAt Aisle 1, 2 and 4: find the number of its cluster"));
  CHECK(has(text, "\nAt Aisle 3: find its stretch by measuring along the line from the left end"));
}
