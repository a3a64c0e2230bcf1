#include "studio/statics/stiffness.hpp"

#include <utility>

namespace quadrille {

Stiffness::Stiffness(const Eigen::SparseMatrix<double>& pattern, Eigen::VectorXd weights)
    : shifted_(pattern), weights_(std::move(weights)) {
  factors_.analyzePattern(pattern);
}

Firmness Stiffness::factorise(const Eigen::SparseMatrix<double>& matrix, double shift) {
  diagonal_ = matrix.diagonal();
  largest_ = (diagonal_.array() / weights_.array()).abs().maxCoeff();
  if (shift == 0) {
    factors_.factorize(matrix);
  } else {
    shifted_ = matrix;
    for (Eigen::Index i = 0; i < shifted_.outerSize(); ++i)
      shifted_.valuePtr()[shifted_.outerIndexPtr()[i]] += shift * weights_(i);  // the diagonal leads each column
    factors_.factorize(shifted_);
  }
  // Eigen stops only at a pivot of exactly 0, and at what is not a number.
  if (factors_.info() != Eigen::Success) return diagonal_.allFinite() ? Firmness::neutral : Firmness::unstable;
  const auto pivots = factors_.vectorD();
  const auto& order = factors_.permutationP().indices();
  Firmness firmness = Firmness::stable;
  for (Eigen::Index i = 0; i < diagonal_.size(); ++i) {
    const double pivot = pivots(order(i)), rounding = 1e-12 * (std::abs(diagonal_(i)) + shift * weights_(i));
    if (!(pivot >= -rounding)) return Firmness::unstable;
    if (pivot <= rounding) firmness = Firmness::neutral;
  }
  return firmness;
}

}  // namespace quadrille
