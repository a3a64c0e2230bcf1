// What one step of dragging a piece costs: snapping, the edited event, the scene, and painting off the screen, once all of
// the window and once only what the step changed. Every piece of the event is dragged through its area.
//   build/tests/drag_bench [EVENT], from the top folder of a build; by default examples/midwinter-ball.quadrille
#include <cairo.h>

#include <algorithm>
#include <cstdio>
#include <ctime>
#include <string>
#include <vector>

#include "studio/arrange/moving.hpp"
#include "studio/drawing/view.hpp"
#include "studio/files/event_file.hpp"
#include "studio/files/palette_file.hpp"
#include "studio/host/builder.hpp"
#include "studio/host/discovery.hpp"
#include "studio/host/search_plan.hpp"

using namespace quadrille;

namespace {

constexpr int width = 1240, height = 760, steps = 12;
constexpr double budget_ms = 16;

/// Of this program's own time: all is done on one thread, and what else the machine does meanwhile does not count.
double ms_since(std::clock_t start) { return 1e3 * static_cast<double>(std::clock() - start) / CLOCKS_PER_SEC; }

struct Times {
  std::vector<double> ms;
  double quantile(double share) {
    std::ranges::sort(ms);
    return ms[static_cast<std::size_t>(share * static_cast<double>(ms.size() - 1))];
  }
};

/// A picture as large as the window's drawing, painted on again and again.
class Paper {
 public:
  Paper() : surface_(cairo_image_surface_create(CAIRO_FORMAT_RGB24, width, height)), cairo_(cairo_create(surface_)) {}
  ~Paper() {
    cairo_destroy(cairo_);
    cairo_surface_destroy(surface_);
  }
  Paper(const Paper&) = delete;
  Paper& operator=(const Paper&) = delete;

  void paint(const Scene& scene, const View& view, const std::vector<Extent>& changed) {
    cairo_save(cairo_);
    for (const Extent& e : changed) {
      const Point2 corner = view.to_pixels(e.left, e.top);
      constexpr double frame = 20;  // the selection's frame, and whole pixels, as the window has it
      cairo_rectangle(cairo_, static_cast<int>(corner.x - frame), static_cast<int>(corner.y - frame),
                      static_cast<int>(e.width() * view.pixels_per_metre + 2 * frame),
                      static_cast<int>(e.height() * view.pixels_per_metre + 2 * frame));
    }
    if (!changed.empty()) cairo_clip(cairo_);
    cairo_set_source_rgb(cairo_, 1, 1, 1);
    cairo_paint(cairo_);
    paint_scene(cairo_, scene, view, width, {}, stamps_);
    cairo_restore(cairo_);
    cairo_surface_flush(surface_);
  }

 private:
  cairo_surface_t* surface_;
  cairo_t* cairo_;
  BalloonStamps stamps_;
};

Extent extent_of(const Scene& scene, const std::string& id) {
  const auto piece = std::ranges::find(scene.pieces, id, &ScenePiece::id);
  return piece == scene.pieces.end() ? Extent{} : around(piece->extent, piece->standing());
}

struct Bench {
  const Event& event;
  const BuiltEvent& built;
  const std::vector<Palette>& palettes;
  Times work, all, changed, whole_step;

  void drag(const Area& area, const std::string& id) {
    Paper paper;
    const Scene before = scene_of(area, built, palettes);
    const View view = fit_view(before, width, height, 40);
    Scene last = before;
    paper.paint(before, view, {});
    for (int i = 1; i <= steps; ++i) {
      const auto start = std::clock();
      const double way = 2.0 * i / steps - 0.7;
      const Moved moved = dragged(event, {id}, built, {way, 0}, {true, 7 / view.pixels_per_metre, false});
      const Scene scene = scene_of(*area_of(moved.event, id), built, palettes);
      const double worked = ms_since(start);
      const auto painting = std::clock();
      paper.paint(scene, view, {extent_of(last, id), extent_of(scene, id)});
      const double painted = ms_since(painting);
      if (i % 4 == 0) {
        const auto again = std::clock();
        paper.paint(scene, view, {});
        all.ms.push_back(ms_since(again));
      }
      work.ms.push_back(worked), changed.ms.push_back(painted), whole_step.ms.push_back(worked + painted);
      last = scene;
    }
  }
};

void print(const char* what, Times& times) {
  std::printf("  %-46s %8.2f %8.2f %8.2f\n", what, times.quantile(0.5), times.quantile(0.95), times.quantile(1));
}

}  // namespace

int main(int argc, char** argv) {
  const std::string file = argc > 1 ? argv[1] : "examples/midwinter-ball.quadrille";
  const auto opened = open_event(file);
  if (!opened) return std::fprintf(stderr, "%s\n", opened.error.c_str()), 1;
  const std::filesystem::path program = std::filesystem::path(QUADRILLE_BINARY_DIR) / "bin" / "quadrille";
  const LoadedPalettes palettes = load_palettes(standard_palette_folders(program, {}));
  const PieceTypes types = find_piece_types(standard_search_plan(program));
  const BuiltEvent built = EventBuilder(types).build(opened->event);
  std::printf("%s, %d x %d pixels, ms of the processor per step\n", file.c_str(), width, height);
  std::printf("  %-46s %8s %8s %8s\n", "", "median", "95 %", "most");
  double worst = 0;
  for (const auto& area : opened->event.areas) {
    Bench bench{opened->event, built, palettes.palettes, {}, {}, {}, {}};
    for (const auto& piece : area->pieces) bench.drag(*area, piece->id);
    if (bench.work.ms.empty()) continue;
    std::printf("%s: %zu pieces, %zu marks\n", area->name.c_str(), area->pieces.size(),
                scene_of(*area, built, palettes.palettes).items.size());
    print("snapping, event and scene", bench.work);
    print("painting what changed", bench.changed);
    print("the step: both together", bench.whole_step);
    print("painting all of it instead", bench.all);
    worst = std::max(worst, bench.whole_step.quantile(0.5));
  }
  std::printf("median step of the area that takes longest: %.2f ms, of %.0f ms\n", worst, budget_ms);
  return worst <= budget_ms ? 0 : 1;
}
