// Deaths and hatches against published figures. Each check says whether the figure helped to build the table.
#include <catch2/catch.hpp>

#include "kinds.hpp"

using namespace cropful;
using namespace cropful::quantities;
using curves::Band;
using sample::kind;

namespace {

constexpr double rounding = 0.05;  // points: rows are written to a tenth

/// Whether low and high of a kind hold so many per cent dead by an age.
void holds(rations::Kind const& bird, double age, double per_cent) {
    INFO(bird.key << ", " << per_cent << " % by day " << age);
    CHECK(bird.mortality.curve.value(days(age), Band::low) <= per_cent + rounding);
    CHECK(bird.mortality.curve.value(days(age), Band::high) >= per_cent - rounding);
}

void holds(rations::HatchRate const& rate, double per_cent) {
    INFO(per_cent << " % hatched");
    CHECK(100 * rate.low <= per_cent + 0.5);  // written to a whole per cent
    CHECK(100 * rate.high >= per_cent - 0.5);
}

}  // namespace

TEST_CASE("deaths of pheasants", "[tables]") {
    auto const bird = kind("pheasant");
    // Best and worst of four groups of 2,000 to 15 and 42 d (Djordjevic et al., Acta Veterinaria); best and worst of
    // three years of a good and a poor farm to 40 d (Popovic et al.); 4.45 % to 90 d (Strakova et al. 2005). BUILT
    // FROM.
    for (double const dead : {0.73, 2.7}) holds(bird, 15, dead);
    for (double const dead : {1.27, 3.0}) holds(bird, 42, dead);
    for (double const dead : {3.6, 4.47, 8.33, 13.39}) holds(bird, 40, dead);
    holds(bird, 90, 4.45);
    // The same two farms to 9 d: 0.26 to 0.70 and 2.21 to 3.62 %. Independent. Only the best year lies under low.
    for (double const dead : {0.70, 2.21, 3.62}) holds(bird, 9, dead);
    // Gamekeepers expect 5 % to 14 d and 5 % of the rest by 6 to 8 weeks (Game Farmers' Association, in Pitchcare).
    // Common practice, independent.
    holds(bird, 14, 5);
    holds(bird, 49, 9.75);
}

TEST_CASE("deaths of coturnix", "[tables]") {
    // Farm records of two years, Bhubaneswar (Int. Res. J. Biol. Sci. 4(7):29-33, 2015): 7.25, 2.06 and 0.93 % in weeks
    // 1 to 3; in the monsoon 8.99, 3.12, 1.75, in winter 7.63, 2.52, 0.87, in summer 6.69, 1.62, 0.84. The year's
    // figures for weeks 1 and 2: BUILT FROM; the third week and the seasons are independent. Bands: low to high, and
    // the usual flock within a tenth to a seventh of the year's.
    auto const weeks = GENERATE(std::vector{7.25, 2.06, 0.93}, std::vector{8.99, 3.12, 1.75},
                                std::vector{7.63, 2.52, 0.87}, std::vector{6.69, 1.62, 0.84});
    char const* const name = GENERATE("coturnix", "coturnix-jumbo");
    auto const bird = kind(name);
    double alive = 1;
    for (std::size_t week = 0; week < weeks.size(); ++week) {
        alive *= 1 - weeks[week] / 100;
        double const age = 7 * static_cast<double>(week + 1), dead = 100 * (1 - alive);
        holds(bird, age, dead);
        if (weeks[0] == 7.25) CHECK_THAT(bird.mortality.curve.value(days(age)), Catch::WithinRel(dead, 1.0 / 7));
    }
}

TEST_CASE("eggs of pheasants that hatch", "[tables]") {
    // 62.0 % of eggs set (Cetin et al. 1997); 43 to 54, 52 to 58 and 51 to 55 % in three housings (Genc & Ozbey 2013).
    // BUILT FROM. British gamekeepers' 75 % lies over it and is said beside it.
    auto const rate = kind("pheasant").hatch_rate;
    for (double const hatched : {62.0, 43.0, 54.0, 52.0, 58.0, 51.0, 55.0}) holds(rate, hatched);
    double const housings = (43 + 54 + 52 + 58 + 51 + 55) / 6.0;
    CHECK((100 * rate.value > housings && 100 * rate.value < 62));
    CHECK_THAT(rate.note, Catch::Contains("75 %"));
}

TEST_CASE("eggs of partridges that hatch", "[tables]") {
    // Chukars 81.3 and 53.6 %, rock partridges 75.9, 88.0, 78.5, 77.1, 67.1 and 78.1 % of eggs set (eurasianjvetsci.org
    // id 498, 425, 266; veteriner.fusabil.org id 599). BUILT FROM. Red-legged partridges 64 %: independent.
    auto const rate = kind("chukar").hatch_rate;
    double mean = 0;
    for (double const hatched : {81.3, 53.6, 75.9, 88.0, 78.5, 77.1, 67.1, 78.1}) {
        holds(rate, hatched);
        mean += hatched / 8;
    }
    CHECK_THAT(100 * rate.value, Catch::WithinRel(mean, 0.03));
    holds(rate, 64);
}

TEST_CASE("eggs of coturnix that hatch", "[tables]") {
    // 3,776 chicks of 5,183 eggs of hens in their first month of lay; 683 of 2,601 (26.3 %) in their eighth, where
    // young hens' eggs of those weights gave 1,847 (71.0 %) (S. Inal, table 3). Independent of the rate, which holds
    // only for hens that are not old: the note says so.
    char const* const name = GENERATE("coturnix", "coturnix-jumbo");
    auto const rate = kind(name).hatch_rate;
    holds(rate, 100 * 3776.0 / 5183);
    CHECK(100 * rate.low > 100 * 683.0 / 2601);
    CHECK_THAT(rate.note, Catch::Contains("72.9 %") && Catch::Contains("26 %") && Catch::Contains("71 %"));
}
