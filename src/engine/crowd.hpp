#pragma once

#include <optional>
#include <string>
#include <vector>

#include "cropful/domain/farm.hpp"
#include "engine/hatch_model.hpp"

namespace cropful::engine {

using namespace quantities;

/// One hatch while it lives in houses of one sort. The sort must outlive it.
class Crowd {
  public:
    Crowd(HatchModel const& model, domain::Brooder const& sort, domain::Residence const& time);
    [[nodiscard]] Duration stay() const { return to_ - from_; }
    [[nodiscard]] Heads at_first() const { return flock_.alive(from_); }
    [[nodiscard]] Heads alive(Duration age) const { return flock_.alive(age); }
    /// The ages at which it can be more crowded than before: the first, where curves bend or heads jump, and where
    /// houses hold another number.
    [[nodiscard]] std::vector<Duration> const& ages() const { return ages_; }
    /// Houses for the whole stay.
    [[nodiscard]] int needs() const;
    /// Birds of its kind that one house holds at an age.
    [[nodiscard]] Heads held(Duration age) const;
    /// How many houses its birds fill at an age: the sure number of them for a stage of housing.
    [[nodiscard]] double filled(Duration age) const;
    /// Birds that so many houses do not hold on the worst day.
    [[nodiscard]] Heads left_over(int houses) const;

  private:
    std::vector<domain::Room> rooms_;
    Flock flock_;
    Duration from_;
    Duration to_;
    std::vector<Duration> ages_;
    std::optional<int> reserved_{};  // houses that hold its birds for certain
    double sure_ = 1;
};

}  // namespace cropful::engine
