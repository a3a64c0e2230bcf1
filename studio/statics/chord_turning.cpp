#include "studio/statics/chord_turning.hpp"

#include "studio/statics/rotation.hpp"

namespace quadrille {
namespace {

double weight_of(const FrameModel& model, const FrameElement& element) {
  return 1 / (model.nodes[element.to] - model.nodes[element.from]).norm();
}

}  // namespace

ChordTurning::ChordTurning(const FrameModel& model) : model_(model) {
  for (std::size_t axis = 0; axis < 3; ++axis) {
    auto made = std::make_unique<Axis>();
    made->free.assign(model.nodes.size(), 0);
    for (const FrameSupport& support : model.supports)
      if (!support.moves[axis]) made->free[support.node] = -1;
    for (int& number : made->free)
      if (number == 0) number = made->size++;
    std::vector<Eigen::Triplet<double>> entries;
    for (const FrameElement& element : model.elements) {
      const double weight = weight_of(model, element);
      const int from = made->free[element.from], to = made->free[element.to];
      // A little more than 1 on the diagonal, so that a part that only lines hold has a place too.
      if (from >= 0) entries.emplace_back(from, from, weight * (1 + 1e-9));
      if (to >= 0) entries.emplace_back(to, to, weight * (1 + 1e-9));
      if (from >= 0 && to >= 0) entries.emplace_back(std::max(from, to), std::min(from, to), -weight);
    }
    Eigen::SparseMatrix<double> matrix(made->size, made->size);
    matrix.setFromTriplets(entries.begin(), entries.end());
    if (made->size > 0) made->factors.compute(matrix);
    axes_[axis] = std::move(made);
  }
}

void ChordTurning::move(std::vector<Vec3>& shifts, const Eigen::Ref<const Eigen::VectorXd>& step) const {
  std::array<Eigen::VectorXd, 3> right;
  for (std::size_t axis = 0; axis < 3; ++axis) right[axis] = Eigen::VectorXd::Zero(axes_[axis]->size);
  const auto of_step = [&](std::uint32_t node) { return Vec3(step.segment<3>(3 * static_cast<Eigen::Index>(node))); };
  for (const FrameElement& element : model_.elements) {
    const Vec3 chord =
        model_.nodes[element.to] - model_.nodes[element.from] + shifts[element.to] - shifts[element.from];
    const Vec3 change = of_step(element.to) - of_step(element.from);
    const double square = chord.squaredNorm();
    const Vec3 turned = turn_by(chord.cross(change) / square) * (chord * (1 + chord.dot(change) / square));
    const Vec3 beyond = weight_of(model_, element) * (turned - chord - change);
    for (std::size_t axis = 0; axis < 3; ++axis) {
      const auto& free = axes_[axis]->free;
      if (free[element.from] >= 0) right[axis](free[element.from]) -= beyond[static_cast<int>(axis)];
      if (free[element.to] >= 0) right[axis](free[element.to]) += beyond[static_cast<int>(axis)];
    }
  }
  for (std::size_t i = 0; i < shifts.size(); ++i) shifts[i] += of_step(static_cast<std::uint32_t>(i));
  for (std::size_t axis = 0; axis < 3; ++axis) {
    if (axes_[axis]->size == 0) continue;
    const Eigen::VectorXd more = axes_[axis]->factors.solve(right[axis]);
    for (std::size_t i = 0; i < shifts.size(); ++i)
      if (const int number = axes_[axis]->free[i]; number >= 0) shifts[i][static_cast<int>(axis)] += more(number);
  }
}

}  // namespace quadrille
