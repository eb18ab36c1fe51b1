// The square: arithmetic by hand.
#include "cropful/blends/square.hpp"

#include <catch2/catch.hpp>

#include "blends/weighing.hpp"
#include "cropful/fault.hpp"

using namespace cropful;
using namespace cropful::blends;
using namespace cropful::rations;
using namespace cropful::quantities;
using Catch::WithinAbs;

namespace {

SquareQuestion question(double protein, double low, double high) {
    return {.protein = protein,
            .feeds = {{"low", low, {}}, {"high", high, {}}},
            .keep = 0,
            .batch = kilograms(100),
            .scale = kilograms(1)};
}

}  // namespace

TEST_CASE("amounts are whole steps that add up to the batch", "[weigh]") {
    // thirds of 100: 33, 33, 34, the first of equal remainders
    auto const thirds = weigh({1.0 / 3, 1.0 / 3, 1.0 / 3}, kilograms(100), kilograms(1));
    CHECK_THAT(in_kilograms(thirds[0]), WithinAbs(34, 1e-9));
    CHECK_THAT(in_kilograms(thirds[1]), WithinAbs(33, 1e-9));
    // 50.4 and 49.6: the larger remainder gets the step
    auto const two = weigh({0.504, 0.496}, kilograms(100), kilograms(1));
    CHECK_THAT(in_kilograms(two[0]), WithinAbs(50, 1e-9));
    CHECK_THAT(in_kilograms(two[1]), WithinAbs(50, 1e-9));
    // a batch of 10.4 steps becomes 10
    auto const odd = weigh({0.5, 0.5}, kilograms(10.4), kilograms(1));
    CHECK_THAT(in_kilograms(odd[0] + odd[1]), WithinAbs(10, 1e-9));
}

TEST_CASE("the order of the feeds does not matter", "[square]") {
    auto const there = square(question(20, 8, 44)), back = square(question(20, 44, 8));
    CHECK_THAT(there.parts[0].share, WithinAbs(2.0 / 3, 1e-12));
    CHECK_THAT(back.parts[1].share, WithinAbs(2.0 / 3, 1e-12));
}

TEST_CASE("as weighed: 67 and 33 kg hold 19.88 %", "[square]") {
    CHECK_THAT(square(question(20, 8, 44)).protein, WithinAbs(19.88, 1e-9));
}

TEST_CASE("a target outside both feeds is answered with the nearer one", "[square]") {
    auto const rich = square(question(50, 8, 44)), poor = square(question(5, 8, 44));
    CHECK_FALSE(rich.possible);
    CHECK_THAT(rich.parts[1].share, WithinAbs(1, 1e-12));
    CHECK_FALSE(poor.possible);
    CHECK_THAT(poor.parts[0].share, WithinAbs(1, 1e-12));
}

TEST_CASE("feeds of one protein reach it, and nothing else", "[square]") {
    CHECK(square(question(20, 20, 20)).possible);
    CHECK_FALSE(square(question(21, 20, 20)).possible);
}

TEST_CASE("two feeds of one name are still two", "[square]") {
    auto same = question(20, 8, 44);
    same.feeds[0].name = same.feeds[1].name = "meal";
    auto const it = square(same);
    CHECK_THAT(it.parts[0].share, WithinAbs(2.0 / 3, 1e-12));
    CHECK_THAT(it.parts[1].share, WithinAbs(1.0 / 3, 1e-12));
}

TEST_CASE("what is kept is weighed on the same scale, and all adds up to the batch", "[square]") {
    auto kept = question(20, 8, 44);
    kept.keep = 0.033;  // 3.3 kg on a scale of 1 kg
    auto const it = square(kept);
    CHECK_THAT(in_kilograms(it.kept), WithinAbs(3, 1e-9));
    CHECK_THAT(in_kilograms(it.kept + it.parts[0].amount + it.parts[1].amount), WithinAbs(100, 1e-9));
}

TEST_CASE("a batch with no room left is no question", "[square]") {
    auto full = question(20, 8, 44);
    full.keep = 0.5;
    full.feeds.push_back({"fixed", 16, kilograms(50)});
    CHECK_THROWS_WITH(square(full), Catch::Contains("nothing is left to balance"));
}
