#pragma once

#include <cstddef>
#include <string>
#include <vector>

namespace cropful::engine {

/// What makes one flock like another before anything is seen of them.
struct Kin {
    std::string kind;
    double shared;  // of the variance of each of its scores: the doubt about the kind's tables, the same for all its
                    // flocks; `Belief::shared_by_farm` to 1, the same for all flocks of a kind
    bool rate_unknown = false;  // it is of eggs, and how many of them hatch is in doubt
};

/// What is believed of the standard scores of a farm's flocks: a joint normal law. Before anything is seen each score
/// has mean 0 and variance 1; the same trait of two flocks of one kind correlates by what the kind shares, of two kinds
/// by `shared_by_farm`. So one flock teaches something about the next, and to split a flock takes nothing from the
/// doubt about its table.
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

    explicit Belief(std::vector<Kin> flocks = {});
    [[nodiscard]] std::size_t flocks() const { return flocks_.size(); }
    [[nodiscard]] Law score(std::size_t flock, Trait trait) const;
    /// The law of the sum, without the error of measuring it.
    [[nodiscard]] Law expected(Sight const& sight) const;
    /// The linear-Gaussian (Kalman) step: the sum was measured as `value` with a normal error of this sd.
    void observe(Sight const& sight, double value, double sd);
    /// Forgets how well a flock is known but keeps its means.
    void reopen(std::size_t flock);
    /// Lower Cholesky factor of the covariance, row by row, 2 x flocks on a side: feed and water of each flock in turn.
    [[nodiscard]] std::vector<double> root() const;
    /// The same of one trait of some flocks before anything is seen: of deaths and hatch rates, which no diary teaches.
    [[nodiscard]] std::vector<double> untaught_root(std::vector<std::size_t> const& flocks) const;
    [[nodiscard]] bool rate_unknown(std::size_t flock) const { return flocks_[flock].rate_unknown; }

    /// Possible worlds drawn from it, unless asked otherwise. With fewer, 5 % points of farms of several hatches are
    /// more than 1 % of a band off.
    static constexpr std::size_t usual_worlds = 16384;
    /// Correlation between two flocks of one farm that are of two kinds; chosen here, no source.
    static constexpr double shared_by_farm = 0.25;
    /// Correlation between two flocks of one kind: where the weeks of its table were measured, and where they are a
    /// model's only; chosen here, no source.
    static constexpr double shared_by_kind = 0.5;
    static constexpr double shared_by_model = 0.85;

  private:
    [[nodiscard]] static std::size_t index(std::size_t flock, Trait trait) {
        return 2 * flock + (trait == Trait::feed ? 0 : 1);
    }
    /// Correlation of a trait of two flocks before anything is seen.
    [[nodiscard]] double alike(std::size_t one, std::size_t other) const;
    std::vector<Kin> flocks_;
    std::vector<double> mean_;        // 2 x flocks: feed and water of each
    std::vector<double> covariance_;  // row by row
};

}  // namespace cropful::engine
