#pragma once

#include <Eigen/Core>
#include <algorithm>
#include <cstddef>

/// Many numbers at once: sums over worlds and over lucks, by Eigen. For .cpp files.
namespace cropful::engine {

using Numbers = Eigen::ArrayXd;
using NumbersIn = Eigen::Map<Numbers>;
using NumbersOf = Eigen::Map<Numbers const>;

/// Up to so many numbers, which take no memory from the heap and stay in the nearest cache.
inline constexpr std::size_t few = 128;
using Few = Eigen::Array<double, Eigen::Dynamic, 1, Eigen::ColMajor, few, 1>;

inline NumbersIn numbers(double* first, std::size_t many) { return {first, static_cast<Eigen::Index>(many)}; }
inline NumbersOf numbers(double const* first, std::size_t many) { return {first, static_cast<Eigen::Index>(many)}; }

/// Goes through `count` numbers, a few at a time: `work(from, many)`.
template <class Work>
void few_by_few(std::size_t count, Work const& work) {
    for (std::size_t from = 0; from < count; from += few) work(from, std::min(few, count - from));
}

}  // namespace cropful::engine
