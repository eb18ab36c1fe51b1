#pragma once

#include <cstddef>
#include <vector>

namespace cropful::engine {

/// What is believed of the standard scores of a farm's flocks: a joint normal law. Before anything is seen each score
/// has mean 0 and variance 1, and the same trait of two flocks correlates by `shared_by_farm`, so that one flock
/// teaches a little about the next.
class Belief {
  public:
    enum class Trait { feed, water };
    /// A weighted sum of one flock's scores, such as the logarithm of what it used over what the table foretold.
    struct Sight {
        std::size_t flock;
        double feed;   // weight of its feed score
        double water;  // weight of its water score
    };
    struct Law {
        double mean = 0;
        double variance = 1;
    };

    explicit Belief(std::size_t flocks = 0);
    [[nodiscard]] std::size_t flocks() const { return mean_.size() / 2; }
    [[nodiscard]] Law score(std::size_t flock, Trait trait) const;
    /// The law of the sum, without the error of measuring it.
    [[nodiscard]] Law expected(Sight const& sight) const;
    /// The linear-Gaussian (Kalman) step: the sum was measured as `value` with a normal error of this sd.
    void observe(Sight const& sight, double value, double sd);
    /// Forgets how well a flock is known but keeps its means.
    void reopen(std::size_t flock);
    /// Lower Cholesky factor of the covariance, row by row, 2 x flocks on a side: feed and water of each flock in turn.
    [[nodiscard]] std::vector<double> root() const;

    /// Possible worlds drawn from it, unless asked otherwise. With fewer, 5 % points of farms of several hatches are
    /// more than 1 % of a band off.
    static constexpr std::size_t usual_worlds = 16384;
    /// Correlation between two flocks of one farm; chosen here, no source.
    static constexpr double shared_by_farm = 0.25;

  private:
    [[nodiscard]] static std::size_t index(std::size_t flock, Trait trait) {
        return 2 * flock + (trait == Trait::feed ? 0 : 1);
    }
    std::vector<double> mean_;        // 2 x flocks: feed and water of each
    std::vector<double> covariance_;  // row by row
};

}  // namespace cropful::engine
