#include "cropful/engine/belief.hpp"

#include <Eigen/Cholesky>
#include <Eigen/Core>

namespace cropful::engine {

namespace {

using Matrix = Eigen::Matrix<double, Eigen::Dynamic, Eigen::Dynamic, Eigen::RowMajor>;

Eigen::Map<Matrix> square(std::vector<double>& values, std::size_t side) {
    auto const n = static_cast<Eigen::Index>(side);
    return {values.data(), n, n};
}

Eigen::Map<Matrix const> square(std::vector<double> const& values, std::size_t side) {
    auto const n = static_cast<Eigen::Index>(side);
    return {values.data(), n, n};
}

}  // namespace

Belief::Belief(std::size_t flocks) : mean_(2 * flocks, 0.0), covariance_(4 * flocks * flocks, 0.0) {
    auto covariance = square(covariance_, mean_.size());
    for (Eigen::Index i = 0; i < covariance.rows(); ++i) {
        for (Eigen::Index j = i % 2; j < covariance.cols(); j += 2) covariance(i, j) = i == j ? 1 : shared_by_farm;
    }
}

Belief::Law Belief::score(std::size_t flock, Trait trait) const {
    std::size_t const i = index(flock, trait);
    return {mean_[i], covariance_[i * mean_.size() + i]};
}

Belief::Law Belief::expected(Sight const& sight) const {
    std::size_t const feed = index(sight.flock, Trait::feed), water = index(sight.flock, Trait::water);
    std::size_t const n = mean_.size();
    return {sight.feed * mean_[feed] + sight.water * mean_[water],
            sight.feed * sight.feed * covariance_[feed * n + feed] +
                2 * sight.feed * sight.water * covariance_[feed * n + water] +
                sight.water * sight.water * covariance_[water * n + water]};
}

void Belief::observe(Sight const& sight, double value, double sd) {
    auto const n = static_cast<Eigen::Index>(mean_.size());
    Eigen::VectorXd weights = Eigen::VectorXd::Zero(n);
    weights(static_cast<Eigen::Index>(index(sight.flock, Trait::feed))) = sight.feed;
    weights(static_cast<Eigen::Index>(index(sight.flock, Trait::water))) = sight.water;
    Eigen::Map<Eigen::VectorXd> mean(mean_.data(), n);
    auto covariance = square(covariance_, mean_.size());
    Eigen::VectorXd const shared = covariance * weights;
    double const variance = weights.dot(shared) + sd * sd;
    mean += shared * ((value - weights.dot(mean)) / variance);
    covariance -= (shared * shared.transpose() / variance).eval();
}

void Belief::reopen(std::size_t flock) {
    auto covariance = square(covariance_, mean_.size());
    for (Trait const trait : {Trait::feed, Trait::water}) {
        auto const i = static_cast<Eigen::Index>(index(flock, trait));
        covariance.row(i).setZero();
        covariance.col(i).setZero();
        covariance(i, i) = 1;
    }
}

std::vector<double> Belief::root() const {
    std::vector<double> values(covariance_.size());
    square(values, mean_.size()) = Matrix(square(covariance_, mean_.size()).llt().matrixL());
    return values;
}

}  // namespace cropful::engine
