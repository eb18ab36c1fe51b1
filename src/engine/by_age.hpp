#pragma once

#include <utility>
#include <vector>

namespace cropful::engine {

/// A number that jumps at some ages (d), such as a share that is wasted; the first of them holds before them too.
class ByAge {
  public:
    ByAge(double always = 0) : steps_{{0, always}} {}  // NOLINT(google-explicit-constructor): a number is one by age
    explicit ByAge(std::vector<std::pair<double, double>> steps) : steps_(std::move(steps)) {}

    [[nodiscard]] double at(double age) const {
        double now = steps_.front().second;
        for (auto const& [from, number] : steps_) {
            if (from <= age) now = number;
        }
        return now;
    }
    /// Ages (d) at which it jumps.
    [[nodiscard]] std::vector<double> breaks() const {
        std::vector<double> ages;
        for (std::size_t i = 1; i < steps_.size(); ++i) ages.push_back(steps_[i].first);
        return ages;
    }

  private:
    std::vector<std::pair<double, double>> steps_;  // age from which each holds, rising; never none
};

}  // namespace cropful::engine
