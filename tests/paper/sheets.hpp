// Sheets of sample events, hard ones among them, and what the tests look up on them.
#pragma once

#include <algorithm>
#include <string>
#include <vector>

#include "studio/paper/sheet.hpp"
#include "tests/drawing/sample.hpp"

namespace quadrille {

inline std::vector<Page> sheet(const sample::Job& job, const EventCount& count, const SheetOptions& options = {}) {
  return elevation_sheet({job.event, job.built, count, job.palettes}, options);
}
inline std::vector<Page> sheet(const sample::Job& job, const SheetOptions& options = {}) {
  return sheet(job, job.count(), options);
}

inline SheetOptions in_metres() {
  SheetOptions options;
  options.units = Units::metric;
  return options;
}

inline std::string all_text(const std::vector<Page>& pages) {
  std::string text;
  for (const Page& page : pages)
    for (const Mark& mark : page.marks)
      if (const auto* t = std::get_if<TextMark>(&mark.shape)) text += t->text + "\n";
  return text;
}

inline bool has(const std::string& text, const std::string& part) { return text.find(part) != std::string::npos; }

inline Rect bounds(const Mark& mark) {
  double left = 1e9, right = -1e9, top = 1e9, bottom = -1e9;
  const auto add = [&](Point2 p, double r) {
    left = std::min(left, p.x - r), right = std::max(right, p.x + r);
    top = std::min(top, p.y - r), bottom = std::max(bottom, p.y + r);
  };
  if (const auto* path = std::get_if<PathMark>(&mark.shape))
    for (const PathStep& s : path->steps)
      if (s.kind != PathStep::Kind::close) add(s.to, 0);
  if (const auto* hatch = std::get_if<HatchMark>(&mark.shape))
    for (const Point2& p : hatch->outline) add(p, 0);
  if (const auto* balloon = std::get_if<BalloonMark>(&mark.shape)) add(balloon->centre, balloon->radius);
  if (const auto* picture = std::get_if<PictureMark>(&mark.shape)) {
    add({picture->seen.x, picture->seen.y}, 0);
    add({picture->seen.right(), picture->seen.bottom()}, 0);
  }
  if (const auto* text = std::get_if<TextMark>(&mark.shape)) {
    add({text->box.x, text->box.y}, 0);
    add({text->box.right(), text->box.bottom()}, 0);
  }
  return {left, top, right - left, bottom - top};
}

inline Area& only_area(sample::Job& job, Area& room) {
  room = *job.event.areas[0];
  return room;
}

template <class Change>
sample::Job changed(Change change) {
  sample::Job job = sample::one_arch();
  Area area;
  only_area(job, area);
  change(job, area);
  job.event.areas[0] = area;
  return job;
}

inline std::string numbered(std::string stem, int number) { return stem.append(std::to_string(number)); }

/// `count` columns 2 m high in the same colours; `change` may alter the third.
inline sample::Job columns(int count, void (*change)(sample::Job&, PlacedPiece&) = nullptr) {
  return changed([&](sample::Job& job, Area& area) {
    area.pieces.clear();
    for (int i = 1; i <= count; ++i) {
      const std::string id = numbered("c", i);
      PlacedPiece piece = sample::placed(id, numbered("Aisle ", i), i, {"lagoon", "brass"});
      job.built[id] = sample::built(sample::column(2, 0.2));
      if (i == 3 && change) change(job, piece);
      area.pieces.push_back(piece);
    }
  });
}

/// The first piece becomes an arch with lines to a stake, a dead weight and a structure "s1".
inline void secure_first(sample::Job& job, Area& area, std::vector<Message> messages = {}) {
  Piece piece = sample::arch(1.2, 19, 0.23);
  piece.tie_points = {{24, TiePurpose::front, piece.frame.nodes[24], "crown, to the front"},
                      {24, TiePurpose::back, piece.frame.nodes[24], "crown, to the back"}};
  piece.messages = std::move(messages);
  job.built["p1"] = sample::built(piece);
  area.pieces[0].edit([](PlacedPiece& placed) {
    placed.lines.resize(3);
    placed.lines[0].tie = "front-1", placed.lines[0].y_m = -2.6, placed.lines[0].x_m = -1.6;
    placed.lines[1].tie = "back-1", placed.lines[1].y_m = 2, placed.lines[1].anchor = AnchorKind::dead_weight;
    placed.lines[1].mass_kg = 20;
    placed.lines[2].tie = "back-1", placed.lines[2].anchor = AnchorKind::structure;
    placed.lines[2].structure = "s1", placed.lines[2].height_m = 1.6;
  });
}

struct HardCase {
  std::string name;
  sample::Job job;
};

inline std::vector<HardCase> hard_cases() {
  std::vector<HardCase> cases{{"plain", sample::one_arch()}};
  cases.push_back({"200 letters", changed([](sample::Job& job, Area& area) {
                     std::string title;
                     while (title.size() < 200) title += "Anniversary of the lighthouse keepers ";
                     job.event.title = job.event.client = job.event.venue = title;
                     area.name = std::string(200, 'w');
                     area.pieces[0].edit([&](PlacedPiece& p) { p.name = title; });
                   })});
  cases.push_back({"40 colours", changed([](sample::Job& job, Area& area) {
                     job.palettes = {sample::palette(40)};
                     area.pieces.clear();
                     for (int i = 0; i < 7; ++i) {
                       const std::string id = numbered("p", i);
                       std::vector<std::string> colours;
                       for (int c = 0; c < 6; ++c) colours.push_back(numbered("extra-", (i * 6 + c) % 40));
                       Piece piece = sample::arch(1, 12, 0.23);
                       for (std::size_t b = 0; b < piece.balloons.size(); ++b)
                         piece.balloons[b].slot = static_cast<std::uint32_t>(b % 6);
                       area.pieces.push_back(sample::placed(id, numbered("Arch no. ", i + 1), 2 + 2.6 * i, colours));
                       job.built[id] = sample::built(piece);
                     }
                   })});
  cases.push_back({"other scripts", changed([](sample::Job& job, Area& area) {
                     job.event.title = "حفلة الصيف في البستان";
                     job.event.client = "李小花與朋友";
                     job.event.venue = "🎈🎉 Café \xff\xfe Ærø \n\t line";
                     area.name = "入口";
                     area.pieces[0].edit([](PlacedPiece& p) { p.name = "قوس البالونات 🎈"; });
                   })});
  cases.push_back({"no pieces", changed([](sample::Job&, Area& area) { area.pieces.clear(); })});
  cases.push_back({"no areas", [] {
                     sample::Job job;
                     return job;
                   }()});
  cases.push_back({"30 m wide", changed([](sample::Job& job, Area& area) {
                     job.built["p1"] = sample::built(sample::arch(15, 120, 0.28));
                     area.wall_width_m = 40, area.wall_height_m = 6;
                   })});
  cases.push_back({"very small", changed([](sample::Job& job, Area&) {
                     job.built["p1"] = sample::built(sample::column(0.3, 0.05));
                   })});
  cases.push_back({"30 columns", changed([](sample::Job& job, Area& area) {
                     area.pieces.clear();
                     for (int i = 0; i < 30; ++i) {
                       const std::string id = numbered("c", i);
                       area.pieces.push_back(sample::placed(id, "Column", 0.3 * i, {"lagoon", "brass"}));
                       job.built[id] = sample::built(sample::column(2, 0.2));
                     }
                   })});
  cases.push_back({"120 columns", changed([](sample::Job& job, Area& area) {
                     area.pieces.clear();
                     for (int i = 0; i < 120; ++i) {
                       const std::string id = numbered("c", i);
                       area.pieces.push_back(sample::placed(id, "Column", 0.9 * i, {"lagoon", "brass"}));
                       job.built[id] = sample::built(sample::column(2, 0.2));
                     }
                   })});
  cases.push_back({"two kinds in turn", changed([](sample::Job& job, Area& area) {
                     area.pieces.clear();
                     for (int i = 0; i < 40; ++i) {
                       const std::string id = numbered("c", i);
                       area.pieces.push_back(sample::placed(id, "Column", 0.9 * i, {"lagoon", "brass"}));
                       job.built[id] = sample::built(sample::column(i % 2 == 0 ? 2 : 1.5, 0.2));
                     }
                   })});
  cases.push_back({"busy site", changed([](sample::Job& job, Area& area) {
                     area.wall_width_m = 9, area.wall_height_m = 3.4;
                     for (int i = 0; i < 3; ++i) {
                       const std::string id = numbered("arch", i);
                       area.pieces.push_back(sample::placed(id, "Arch within", 2.0 + 2.1 * i, {"lagoon", "ink"}));
                       job.built[id] = sample::built(sample::arch(0.7 + 0.2 * i, 12 + 2 * i, 0.2, 0.2 + 0.1 * i));
                     }
                     constexpr StructureKind kinds[] = {
                         StructureKind::wall, StructureKind::post,    StructureKind::tree, StructureKind::railing,
                         StructureKind::beam, StructureKind::vehicle, StructureKind::other};
                     double x = -1.5;
                     for (const StructureKind kind : kinds) {
                       Structure s;
                       s.id = numbered("s", static_cast<int>(kind)), s.name = "Something that stands here";
                       s.kind = kind, s.x_m = x, s.y_m = x > 3 ? -1 : 2,
                       s.height_m = kind == StructureKind::tree ? 14 : 2.2;
                       area.structures.push_back(s);
                       x += 1.6;
                     }
                     Structure far = area.structures[2];
                     far.x_m = -40, far.name = "The old oak";
                     area.structures.push_back(far);
                     for (int i = 0; i < 5; ++i) {
                       Walkway w;
                       w.id = numbered("w", i), w.name = "Way from the kitchen", w.x_m = 0.6 * i, w.width_m = 1.2;
                       area.walkways.push_back(w);
                     }
                   })});
  cases.push_back({"missing and refused", changed([](sample::Job& job, Area& area) {
                     PlacedPiece missing = sample::placed("m", "Ribbon wall", 5, {"lagoon"});
                     missing.type = "ribbon-wall";
                     missing.last_built = LastBuilt{2.4, 2.0, 0.3, 12, {{11, 0.25, 0, 48}}};
                     PlacedPiece never = sample::placed("n", "Never built", 8, {});
                     never.type = "ribbon-wall";
                     PlacedPiece refused = sample::placed("r", "Too wide", 10, {});
                     for (const PlacedPiece& p : {missing, never, refused}) area.pieces.push_back(p);
                     auto failed = std::make_shared<BuiltPiece>();
                     failed->status = Status::infeasible;
                     failed->piece.messages = {{Severity::refusal, "span",
                                                "The span of 7 m is longer than the rod of 6 m; up to 6 m would do."}};
                     job.built["r"] = failed;
                   })});
  return cases;
}

}  // namespace quadrille
