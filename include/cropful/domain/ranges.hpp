#pragma once

#include <algorithm>
#include <functional>
#include <iterator>
#include <utility>

/// Algorithms of the standard library on a whole range at a time, with what they look at of each element: a function of
/// it or one of its members. As in std::ranges, which emscripten's library has not.
namespace cropful::ranges {

template <class Range, class Test>
bool any_of(Range const& range, Test test) {
    return std::any_of(std::begin(range), std::end(range), test);
}

template <class Range, class Test>
bool all_of(Range const& range, Test test) {
    return std::all_of(std::begin(range), std::end(range), test);
}

template <class Range, class Test>
auto count_if(Range const& range, Test test) {
    return std::count_if(std::begin(range), std::end(range), test);
}

template <class Range, class Test>
auto find_if(Range& range, Test test) {
    return std::find_if(std::begin(range), std::end(range), test);
}

template <class Range, class Value, class Of = std::identity>
auto find(Range& range, Value const& value, Of of = {}) {
    return find_if(range, [&](auto const& one) { return std::invoke(of, one) == value; });
}

template <class Range, class Value>
bool contains(Range const& range, Value const& value) {
    return find(range, value) != std::end(range);
}

/// The first element that `alike` holds of together with the next.
template <class Range, class Alike = std::equal_to<>>
auto adjacent_find(Range& range, Alike alike = {}) {
    return std::adjacent_find(std::begin(range), std::end(range), alike);
}

template <class Of, class Less>
auto by(Of of, Less less) {
    return [=](auto const& a, auto const& b) { return less(std::invoke(of, a), std::invoke(of, b)); };
}

template <class Range, class Less = std::less<>, class Of = std::identity>
void stable_sort(Range& range, Less less = {}, Of of = {}) {
    std::stable_sort(std::begin(range), std::end(range), by(of, less));
}

/// The first element with more than `value`, in a range in order.
template <class Range, class Value, class Of>
auto upper_bound(Range& range, Value const& value, Of of) {
    return std::upper_bound(std::begin(range), std::end(range), value,
                            [&](Value const& a, auto const& b) { return a < std::invoke(of, b); });
}

/// The first of the least elements of a range that is not empty.
template <class Range, class Of>
auto const& min(Range const& range, Of of) {
    return *std::min_element(std::begin(range), std::end(range), by(of, std::less<>()));
}

}  // namespace cropful::ranges
