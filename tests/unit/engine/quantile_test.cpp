// Order statistic i at (i + 1/2) / n: Hazen's plotting position, as numpy.quantile(..., method="hazen").
#include <catch2/catch.hpp>
#include <cmath>
#include <limits>

#include "engine/quantile.hpp"

using namespace cropful::engine;

TEST_CASE("quantiles lie between order statistics", "[quantile]") {
    std::vector<double> sample{5, 1, 4, 2, 3};  // at 10, 30, 50, 70 and 90 %
    CHECK_THAT(quantile(sample, 0.5), Catch::WithinAbs(3, 1e-12));
    CHECK_THAT(quantile(sample, 0.4), Catch::WithinAbs(2.5, 1e-12));
    CHECK_THAT(quantile(sample, 0.05), Catch::WithinAbs(1, 1e-12));  // no less than the least
    CHECK_THAT(quantile(sample, 0.99), Catch::WithinAbs(5, 1e-12));
}

TEST_CASE("a band of 100 numbers", "[quantile]") {
    std::vector<double> sample;
    for (int i = 99; i >= 0; --i) sample.push_back((i * 37) % 100);
    Band<double> const found = band(sample);
    CHECK_THAT(found.p05, Catch::WithinAbs(4.5, 1e-12));
    CHECK_THAT(found.p50, Catch::WithinAbs(49.5, 1e-12));
    CHECK_THAT(found.p95, Catch::WithinAbs(94.5, 1e-12));
}

TEST_CASE("vessels that never run out are at the far end", "[quantile]") {
    std::vector<double> sample(20, std::numeric_limits<double>::infinity());
    sample[3] = 2;
    sample[11] = 1;
    CHECK(quantile(sample, 0.025) == 1);
    CHECK(std::isinf(band(sample).p50));
}
