#include "cropful/engine/belief.hpp"

#include <Eigen/Cholesky>
#include <Eigen/Core>
#include <utility>

namespace cropful::engine {

namespace {

using Matrix = Eigen::Matrix<double, Eigen::Dynamic, Eigen::Dynamic, Eigen::RowMajor>;

Eigen::Map<Matrix> as_matrix(std::vector<double>& values, std::size_t side) {
    auto const n = static_cast<Eigen::Index>(side);
    return {values.data(), n, n};
}

Eigen::Map<Matrix const> as_matrix(std::vector<double> const& values, std::size_t side) {
    auto const n = static_cast<Eigen::Index>(side);
    return {values.data(), n, n};
}

}  // namespace

Belief::Belief(std::vector<Kin> flocks)
    : flocks_(std::move(flocks)), mean_(2 * flocks_.size(), 0.0), covariance_(mean_.size() * mean_.size(), 0.0) {
    for (std::size_t i = 0; i < flocks_.size(); ++i) {
        for (std::size_t j = 0; j < flocks_.size(); ++j) {
            for (Trait const trait : {Trait::feed, Trait::water}) {
                covariance_[index(i, trait) * mean_.size() + index(j, trait)] = alike(i, j);
            }
        }
    }
}

double Belief::alike(std::size_t one, std::size_t other) const {
    if (one == other) return 1;
    bool const of_one_kind = flocks_[one].kind == flocks_[other].kind;
    return of_one_kind ? flocks_[one].shared : shared_by_farm;
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
    auto covariance = as_matrix(covariance_, mean_.size());
    Eigen::VectorXd const shared = covariance * weights;
    double const variance = weights.dot(shared) + sd * sd;
    mean += shared * ((value - weights.dot(mean)) / variance);
    covariance -= (shared * shared.transpose() / variance).eval();
}

void Belief::reopen(std::size_t flock) {
    auto covariance = as_matrix(covariance_, mean_.size());
    for (Trait const trait : {Trait::feed, Trait::water}) {
        auto const i = static_cast<Eigen::Index>(index(flock, trait));
        covariance.row(i).setZero();
        covariance.col(i).setZero();
        covariance(i, i) = 1;
    }
}

std::vector<double> Belief::root() const {
    std::vector<double> values(covariance_.size());
    as_matrix(values, mean_.size()) = Matrix(as_matrix(covariance_, mean_.size()).llt().matrixL());
    return values;
}

std::vector<double> Belief::untaught_root(std::vector<std::size_t> const& flocks) const {
    std::size_t const n = flocks.size();
    std::vector<double> values(n * n);
    for (std::size_t i = 0; i < n; ++i) {
        for (std::size_t j = 0; j < n; ++j) values[i * n + j] = alike(flocks[i], flocks[j]);
    }
    as_matrix(values, n) = Matrix(as_matrix(std::as_const(values), n).llt().matrixL());
    return values;
}

}  // namespace cropful::engine
