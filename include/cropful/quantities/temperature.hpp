#pragma once

#include <compare>

#include "cropful/quantities/make.hpp"

namespace cropful::quantities {

/// A point on the temperature scale; only differences of two points (WarmthStep) are amounts.
class Temperature {
  public:
    static constexpr Temperature celsius(double t) { return Temperature(t); }
    static constexpr Temperature fahrenheit(double t) { return Temperature((t - 32) / 1.8); }
    [[nodiscard]] constexpr double in_celsius() const { return celsius_; }
    [[nodiscard]] constexpr double in_fahrenheit() const { return celsius_ * 1.8 + 32; }
    friend constexpr WarmthStep operator-(Temperature a, Temperature b) { return kelvins(a.celsius_ - b.celsius_); }
    friend constexpr std::partial_ordering operator<=>(Temperature, Temperature) = default;

  private:
    explicit constexpr Temperature(double t) : celsius_(t) {}
    double celsius_;
};

}  // namespace cropful::quantities
