// Which level holds for whom; the table of these cases is invented.
#include <catch2/catch.hpp>

#include "cropful/rations/water.hpp"

using namespace cropful;
using namespace cropful::quantities;
using rations::Drinking;
using rations::graded;
using rations::WaterGrade;
using rations::WaterRow;
using rations::WaterTable;

namespace {

WaterRow level(double above, WaterGrade grade) {
    return {.item = "sodium", .unit = "mg/L", .applies = "poultry", .level = above, .grade = grade};
}

WaterTable levels() {
    WaterTable table;
    table.rows = {level(983, WaterGrade::stop), level(32, WaterGrade::aim), level(50, WaterGrade::guide)};
    return table;
}

Drinking const quail{"bobwhite", days(10), false};

}  // namespace

TEST_CASE("a level holds beyond it, and a stop from it on", "[water]") {
    auto const table = levels();
    CHECK(graded(table, "sodium", 32, quail).grade == WaterGrade::fits);
    CHECK(graded(table, "sodium", 32, quail).row == nullptr);
    CHECK(graded(table, "sodium", 32.01, quail).grade == WaterGrade::aim);
    CHECK(graded(table, "sodium", 50, quail).grade == WaterGrade::aim);
    CHECK(graded(table, "sodium", 50.01, quail).row->level == 50);
    CHECK(graded(table, "sodium", 982.9, quail).grade == WaterGrade::guide);
    CHECK(graded(table, "sodium", 983, quail).grade == WaterGrade::stop);
    CHECK(graded(table, "chloride", 983, quail).row == nullptr);
}

TEST_CASE("a level below which something is to be said", "[water]") {
    WaterTable table;
    for (auto const& [below, grade] : {std::pair{6.0, WaterGrade::caution}, std::pair{6.3, WaterGrade::guide}}) {
        WaterRow row = level(below, grade);
        row.below = true;
        table.rows.push_back(row);
    }
    CHECK(graded(table, "sodium", 6.3, quail).row == nullptr);
    CHECK(graded(table, "sodium", 6.29, quail).grade == WaterGrade::guide);
    CHECK(graded(table, "sodium", 6.0, quail).grade == WaterGrade::guide);
    CHECK(graded(table, "sodium", 5.99, quail).grade == WaterGrade::caution);
}

TEST_CASE("of other birds a level is a guide, and a stop a stop", "[water]") {
    WaterTable table;
    table.rows = {level(350, WaterGrade::caution), level(983, WaterGrade::stop)};
    table.rows[0].kinds = {"chicken"};
    table.rows[1].kinds = {"coturnix"};
    CHECK(graded(table, "sodium", 400, quail).grade == WaterGrade::guide);
    CHECK(graded(table, "sodium", 400, quail).row->level == 350);
    CHECK(graded(table, "sodium", 400, {"chicken", days(10), false}).grade == WaterGrade::caution);
    CHECK(graded(table, "sodium", 983, quail).grade == WaterGrade::stop);
    CHECK(graded(table, "sodium", 400, {}).grade == WaterGrade::caution);  // whoever drinks it
}

TEST_CASE("a level for an age, for birds in lay, for people", "[water]") {
    WaterTable table;
    table.rows = {level(10, WaterGrade::caution), level(20, WaterGrade::stop), level(5, WaterGrade::guide)};
    table.rows[0].from = days(7);
    table.rows[0].until = days(42);
    table.rows[1].layers = false;
    table.rows[2].people = true;
    auto const at = [&](double value, double age, bool laying) {
        return graded(table, "sodium", value, {"bobwhite", days(age), laying}).grade;
    };
    CHECK(at(15, 6.9, false) == WaterGrade::fits);
    CHECK(at(15, 7, false) == WaterGrade::caution);
    CHECK(at(15, 41.9, false) == WaterGrade::caution);
    CHECK(at(15, 42, false) == WaterGrade::fits);
    CHECK(at(20, 60, false) == WaterGrade::stop);
    CHECK(at(20, 60, true) == WaterGrade::fits);
    CHECK(rations::row_for_people(table, "sodium", 5) == nullptr);
    CHECK(rations::row_for_people(table, "sodium", 5.1) != nullptr);
    CHECK(graded(table, "sodium", 1e4, {}).grade == WaterGrade::stop);  // of any age
}

TEST_CASE("dissolved solids by conductivity", "[water]") {
    // 640 mg/L for each dS/m to 5 dS/m, 800 above (AgriFutures Australia)
    WaterTable table;
    table.tds.factor = 640;
    table.strong_tds.factor = 800;
    auto const solids = [&](double conducted) {
        return in_milligrams_per_litre(rations::solids_of(Conductivity::microsiemens_per_centimetre(conducted), table));
    };
    CHECK_THAT(solids(1500), Catch::Matchers::WithinRel(960.0, 1e-12));
    CHECK_THAT(solids(5000), Catch::Matchers::WithinRel(3200.0, 1e-12));
    CHECK_THAT(solids(5001), Catch::Matchers::WithinRel(4000.8, 1e-12));
}
