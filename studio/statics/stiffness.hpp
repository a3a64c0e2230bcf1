// The factorised tangent of a frame, and what its pivots say about stability.
#pragma once

#include <Eigen/SparseCholesky>
#include <Eigen/SparseCore>

namespace quadrille {

enum class Firmness {
  stable,   ///< every pivot clearly above 0: positive definite
  neutral,  ///< none clearly below 0, some lost in rounding: a motion without resistance
  unstable  ///< some pivot clearly below 0
};

/// LDLᵀ of a symmetric matrix whose pattern is analysed once. By Sylvester's law of inertia the matrix has as many negative
/// eigenvalues as pivots. A pivot below 1e-12 of its diagonal entry is taken for rounding.
class Stiffness {
 public:
  /// `pattern`: lower triangle with a full diagonal. `weights`: what a unit of shift adds to each diagonal entry.
  Stiffness(const Eigen::SparseMatrix<double>& pattern, Eigen::VectorXd weights);

  /// Factorises `matrix` + shift × weights.
  Firmness factorise(const Eigen::SparseMatrix<double>& matrix, double shift);
  /// Of the last factorised; meaningless unless it was stable.
  Eigen::VectorXd solve(const Eigen::VectorXd& right) const { return factors_.solve(right); }
  /// Largest diagonal entry per unit of weight of the last factorised matrix, before the shift.
  double largest() const { return largest_; }

 private:
  Eigen::SimplicialLDLT<Eigen::SparseMatrix<double>, Eigen::Lower, Eigen::AMDOrdering<int>> factors_;
  Eigen::SparseMatrix<double> shifted_;
  Eigen::VectorXd weights_, diagonal_;
  double largest_ = 0;
};

}  // namespace quadrille
