// Published squares: the percentages as printed there, to their last digit.
#include <catch2/catch.hpp>

#include "cropful/blends/square.hpp"

using namespace cropful;
using namespace cropful::blends;
using namespace cropful::quantities;
using Catch::WithinAbs;

namespace {

Square balance(double protein, SquareFeed low, SquareFeed high, double keep = 0) {
    return square({.protein = protein,
                   .feeds = {std::move(low), std::move(high)},
                   .keep = keep,
                   .batch = kilograms(100),
                   .scale = kilograms(0.001)});
}

double percent_of(Square const& square, std::size_t feed) { return 100 * square.parts.at(feed).share; }

constexpr double pound = 0.45359237;  // kg

}  // namespace

TEST_CASE("corn 8.9 % and soybean meal 44.4 % to 18 %: 26.4 to 9.1 parts", "[tables]") {
    // teaching slides, Rations (pt.scribd.com/presentation/442731571): 74.4 % and 25.6 %
    auto const it = balance(18, {"corn", 8.9, {}}, {"soybean meal", 44.4, {}});
    CHECK_THAT(it.parts[0].parts, WithinAbs(26.4, 1e-9));
    CHECK_THAT(it.parts[1].parts, WithinAbs(9.1, 1e-9));
    CHECK_THAT(percent_of(it, 0), WithinAbs(74.4, 0.05));
    CHECK_THAT(percent_of(it, 1), WithinAbs(25.6, 0.05));
}

TEST_CASE("maize 8 % and soybean meal 44 % to 20 %: 24 to 12 parts", "[tables]") {
    // worked answer, askfilo.com 3431313234323034
    auto const it = balance(20, {"maize", 8, {}}, {"soybean meal", 44, {}});
    CHECK_THAT(it.parts[0].parts, WithinAbs(24, 1e-9));
    CHECK_THAT(it.parts[1].parts, WithinAbs(12, 1e-9));
}

TEST_CASE("corn 8.8 % and a supplement of 38 % to 14 %: 82.19 % and 17.81 %", "[tables]") {
    // worked answer, askfilo.com 3335333136353731
    auto const it = balance(14, {"corn", 8.8, {}}, {"supplement", 38, {}});
    CHECK_THAT(percent_of(it, 0), WithinAbs(82.19, 0.005));
    CHECK_THAT(percent_of(it, 1), WithinAbs(17.81, 0.005));
}

TEST_CASE("corn 8.8 % and soybean meal 45.8 % to 18 %, 3 % kept for minerals: 71.41 % and 25.59 %", "[tables]") {
    // teaching slides, Balancing calcium and phosphorus (slideserve.com): the square at 18.56, its parts rounded to two
    // digits there, hence 0.015
    auto const it = balance(18, {"corn", 8.8, {}}, {"soybean meal", 45.8, {}}, 0.03);
    CHECK_THAT(it.balanced, WithinAbs(18.56, 0.005));
    CHECK_THAT(percent_of(it, 0), WithinAbs(71.41, 0.015));
    CHECK_THAT(percent_of(it, 1), WithinAbs(25.59, 0.015));
}

TEST_CASE("maize 9 %, soybean meal 44 % and 20 kg of wheat bran 16 % to 18 %: 58.29 and 21.71 kg", "[tables]") {
    // worked answer, askfilo.com 3339353639363130
    auto const it = square({.protein = 18,
                            .feeds = {{"maize", 9, {}}, {"soybean meal", 44, {}}, {"wheat bran", 16, kilograms(20)}},
                            .keep = 0,
                            .batch = kilograms(100),
                            .scale = kilograms(0.01)});
    CHECK_THAT(in_kilograms(it.parts[0].amount), WithinAbs(58.29, 0.005));
    CHECK_THAT(in_kilograms(it.parts[1].amount), WithinAbs(21.71, 0.005));
    CHECK_THAT(in_kilograms(it.parts[2].amount), WithinAbs(20, 1e-9));
}

TEST_CASE("a published answer that is wrong: 1,200 lb of corn and 800 lb of soybean meal for 18 %", "[tables]") {
    // qammunity.org/18890640 claims it for corn 8.9 % and meal 44.4 %. By hand it holds (1200*8.9 + 800*44.4)/2000 =
    // 23.1 %; 2000*26.4/35.5 = 1487 lb and 513 lb hold 18 %
    CHECK_THAT((1200 * 8.9 + 800 * 44.4) / 2000, WithinAbs(23.1, 1e-9));
    auto const it = square({.protein = 18,
                            .feeds = {{"corn", 8.9, {}}, {"soybean meal", 44.4, {}}},
                            .keep = 0,
                            .batch = kilograms(2000 * pound),
                            .scale = kilograms(pound)});
    CHECK_THAT(in_kilograms(it.parts[0].amount) / pound, WithinAbs(1487, 1e-6));
    CHECK_THAT(in_kilograms(it.parts[1].amount) / pound, WithinAbs(513, 1e-6));
    CHECK_THAT(it.protein, WithinAbs(18, 0.01));
}
