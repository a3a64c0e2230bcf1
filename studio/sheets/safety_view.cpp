#include "studio/sheets/safety_view.hpp"

#include <algorithm>
#include <cmath>
#include <utility>
#include <variant>

namespace quadrille {
namespace {

constexpr double aside = 14, smallest_scale = 75;
constexpr double fixed_height =
    view_caption + view_headroom + view_under_floor + view_between + view_front_label + view_bar;

Vec3 place_of(const SafetyPiece& piece) { return {piece.placed->x_m, piece.placed->y_m, 0}; }

bool is_sane(const Vec3& p) { return p.allFinite() && p.cwiseAbs().maxCoeff() < 1e5; }

/// The scene of some of the pieces; walkways and structures are those of the area.
SafetyView view_of(const SafetySubject& subject, const std::vector<std::size_t>& pieces, const Setting& setting) {
  SafetyView view{pieces, *subject.area, {}, {}, {}, 10};
  view.area.pieces.clear();
  // A wall of 40 m behind two pieces would make them small.
  view.area.wall_width_m.reset(), view.area.wall_height_m.reset();
  std::optional<Extent> plan;
  for (const std::size_t index : pieces) {
    const SafetyPiece& piece = subject.pieces[index];
    for (const auto& placed : subject.area->pieces)
      if (placed->id == piece.placed->id) view.area.pieces.push_back(placed);
    if (const auto own = ground_of(piece)) plan = plan ? around(*plan, *own) : *own;
  }
  view.scene = scene_of(view.area, setting.input.built, setting.input.palettes);
  // The picture draws them itself, over all that stands there and with their ways told apart.
  std::erase_if(view.scene.items, [](const SceneItem& item) { return std::holds_alternative<SceneLine>(item.shape); });
  view.plan = plan.value_or(Extent{0, 1, -0.5, 0.5});
  const double depth = std::max(1.2 - view.plan.height(), 0.0) / 2 + 0.2;
  view.plan.floor -= depth, view.plan.top += depth;
  view.front = view.scene.extent;
  view.front.left = view.plan.left = std::min(view.front.left, view.plan.left);
  view.front.right = view.plan.right = std::max(view.front.right, view.plan.right);
  return view;
}

double scale_for(const SafetyView& view, double width, double height, Units units) {
  const double largest = units == Units::feet ? 32 : 30;  // a column alone does not want a page
  return std::max(
      largest, fitting_scale(std::max(0.3, view.front.width()), std::max(0.3, view.front.height() + view.plan.height()),
                             std::max(20.0, width - 2 * aside), std::max(20.0, height - fixed_height), units));
}

std::vector<SafetyView> views_of(const SafetySubject& subject, const Setting& setting, double width, double height) {
  std::vector<std::size_t> order;
  for (std::size_t i = 0; i < subject.pieces.size(); ++i)
    if (is_sane(place_of(subject.pieces[i]))) order.push_back(i);
  std::ranges::stable_sort(order, {}, [&](std::size_t i) { return subject.pieces[i].placed->x_m; });
  std::vector<SafetyView> views;
  std::vector<std::size_t> group;
  const auto close = [&] {
    if (group.empty()) return;
    SafetyView view = view_of(subject, group, setting);
    view.scale = scale_for(view, width, height, setting.units);
    if (std::abs(view.front.left) < 1e5 && std::abs(view.front.right) < 1e5 && std::abs(view.front.top) < 1e5)
      views.push_back(std::move(view));
    group.clear();
  };
  for (const std::size_t index : order) {
    std::vector<std::size_t> with = group;
    with.push_back(index);
    if (!group.empty() && scale_for(view_of(subject, with, setting), width, height, setting.units) > smallest_scale)
      close();
    group.push_back(index);
  }
  close();
  return views;
}

}  // namespace

std::optional<Extent> ground_of(const SafetyPiece& piece) {
  std::optional<Extent> extent;
  const auto include = [&](const Vec3& p, double reach_x, double reach_y) {
    const Vec3 at = place_of(piece) + p;
    if (!is_sane(at)) return;
    const Extent one{at.x() - reach_x, at.x() + reach_x, at.y() - reach_y, at.y() + reach_y};
    extent = extent ? around(*extent, one) : one;
  };
  for (const NamedSupport& support : piece.supports) {
    const Support& what = piece.piece->supports[support.support];
    include(support.place, std::max(0.1, what.width_m / 2), std::max(0.1, what.depth_m / 2));
  }
  for (const SpinePoint& point : piece.piece->spine) include(point.point, 0.1, 0.1);
  for (const Vec3& node : piece.piece->frame.nodes) include(node, 0.05, 0.05);
  for (const SafetyLine& line : piece.lines) include(line.laid.run.to, 0.1, 0.1);
  return extent;
}

bool has_wide_piece(const std::vector<SafetySubject>& subjects, double width_mm) {
  const double most_m = (width_mm - 2 * aside) / 10;
  for (const SafetySubject& subject : subjects)
    for (const SafetyPiece& piece : subject.pieces)
      if (const auto ground = ground_of(piece); subject.has_pictures() && ground && ground->width() > most_m)
        return true;
  return false;
}

std::vector<SafetyView> safety_views(const SafetySubject& subject, const Setting& setting, double width, double height,
                                     double first_height) {
  std::vector<SafetyView> views = views_of(subject, setting, width, height);
  constexpr double gap = 6, least = 40, little_smaller = 1.6;
  if (!views.empty() && first_height - gap > fixed_height + least) {
    const double scale = scale_for(views.front(), width, first_height - gap, setting.units);
    if (scale <= little_smaller * views.front().scale) views.front().scale = std::max(scale, views.front().scale);
  }
  return views;
}

double picture_height(const SafetyView& view) {
  return fixed_height + (view.front.height() + view.plan.height()) * 1000 / view.scale + 1;
}

}  // namespace quadrille
