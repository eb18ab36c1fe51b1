#include <catch2/catch.hpp>

#include "faults.hpp"
#include "sample_farms.hpp"

using namespace cropful;
using namespace cropful::quantities;
using namespace cropful::domain;
using Catch::Contains;
using Catch::WithinRel;

namespace {

/// A farm with one sort of brooder and one hatch, and more keys of either.
std::string boxed_text(std::string const& box, std::string const& hatch = "") {
    return "[farm]\nname = \"F\"\n[feed.starter]\nprotein = \"24 %\"\n"
           "[disinfectant.bleach]\nstrength = \"5 %\"\nuse_at = \"0.1 %\"\n"
           "[brooder.box]\nuntil = \"3 wk\"\n" +
           box +
           "[[hatch]]\nname = \"H\"\nkind = \"coturnix\"\ndate = 2027-04-05\nchicks = 90\n"
           "feeding = [{ feed = \"starter\", from = \"0 d\" }]\nuntil = \"6 wk\"\n" +
           hatch;
}

Farm boxed(std::string const& box, std::string const& hatch = "") { return sample::farm_from(boxed_text(box, hatch)); }

std::string box_fault(std::string const& box, std::string const& hatch = "") {
    return sample::fault_of([&] { boxed(box, hatch); });
}

}  // namespace

TEST_CASE("a brooder holds one number, or one by age in any order", "[readers]") {
    auto box = boxed("holds = 120\n").brooders.at("box");
    CHECK(box.count == 1);
    REQUIRE(box.holds.size() == 1);
    CHECK(in_days(box.holds[0].from) == 0);
    CHECK(in_birds(box.holds[0].birds) == 120);
    CHECK_FALSE(box.rest);
    CHECK_FALSE(box.bedding);
    CHECK_FALSE(box.cleaning);
    box = boxed("holds = [{ from = \"2 wk\", birds = 80 }, { from = \"0 d\", birds = 150 }]\ncount = 4\n")
              .brooders.at("box");
    CHECK(box.count == 4);
    REQUIRE(box.holds.size() == 2);
    CHECK(in_birds(box.holds[0].birds) == 150);
    CHECK(in_days(box.holds[1].from) == 14);
    CHECK_THAT(box_fault("holds = [{ from = \"1 d\", birds = 80 }]\n"), Contains("birds from \"0 d\" on"));
    CHECK_THAT(box_fault("holds = []\n"), Contains("birds from \"0 d\" on"));
    CHECK_THAT(box_fault("holds = \"many\"\n"), Contains("a whole number of birds, or a list by age"));
    CHECK_THAT(box_fault("holds = [{ from = \"0 d\", birds = 80 }, { from = \"0 d\", birds = 8 }]\n"),
               Contains("not two from the same"));
}

TEST_CASE("bedding needs a floor, a disinfectant needs a solution", "[readers]") {
    std::string const bedding = "holds = 9\nbedding = { depth = \"3 in\", bag = \"8 ft3\" }\n";
    CHECK_THAT(box_fault(bedding), Contains("the brooder's floor"));
    auto const box = boxed(bedding + "floor = { length = \"6 ft\", width = \"4 ft\" }\n").brooders.at("box");
    CHECK_THAT(in_metres(box.floor->length), WithinRel(72 * 0.0254, 1e-12));
    CHECK_THAT(in_metres(box.bedding->depth), WithinRel(3 * 0.0254, 1e-12));
    CHECK_THAT(in_litres(box.bedding->bag), WithinRel(8 * 28.316846592, 1e-12));
    CHECK_FALSE(box.bedding->price);
    CHECK_THAT(box_fault("holds = 9\ndisinfectant = \"bleach\"\n"), Contains("how much ready solution"));
    CHECK_THAT(box_fault("holds = 9\nsolution = \"1 gal\"\n"), Contains("solution only beside"));
    CHECK_THAT(box_fault("holds = 9\ndisinfectant = \"blech\"\n"), Contains("perhaps \"bleach\""));
}

TEST_CASE("a hatch may come again and again", "[readers]") {
    auto const all = boxed("holds = 9\n", "every = \"3 wk\"\ntimes = 3\nbrooder = \"box\"\n").hatches;
    REQUIRE(all.size() == 3);
    for (std::size_t i = 0; i < 3; ++i) {
        CHECK(all[i].name == "H " + std::to_string(i + 1));
        CHECK(in_days(all[i].date - all[0].date) == 21.0 * static_cast<double>(i));
        CHECK(all[i].brooder == "box");
    }
    CHECK(boxed("holds = 9\n", "every = \"3 wk\"\ntimes = 1\n").hatches.at(0).name == "H 1");
    CHECK_THAT(box_fault("holds = 9\n", "every = \"3 wk\"\n"), Contains("times = 8 beside every"));
    CHECK_THAT(box_fault("holds = 9\n", "times = 3\n"), Contains("beside times"));
    CHECK_THAT(box_fault("holds = 9\n", "every = \"23 h\"\ntimes = 3\n"), Contains("at least 1 d"));
    CHECK_THAT(box_fault("holds = 9\n", "every = \"3 wk\"\ntimes = 201\n"), Contains("from 1 to 200"));
    CHECK_THAT(box_fault("holds = 9\n", "every = \"400 d\"\ntimes = 200\n"), Contains("no later than in 2199"));
}

TEST_CASE("how much they lay stands beside when they lay", "[readers]") {
    CHECK_THAT(box_fault("holds = 9\n", "lays = \"70 %\"\n"), Contains("lays only beside the key laying_from"));
    auto const hatch = boxed("holds = 9\n", "laying_from = \"5 wk\"\nlays = \"70 %\"\n").hatches.at(0);
    CHECK_THAT(*hatch.lays, WithinRel(0.7, 1e-12));
}

TEST_CASE("a numbered name may not be another hatch's", "[readers]") {
    std::string const again =
        "every = \"3 wk\"\ntimes = 2\n[[hatch]]\nname = \"H 2\"\nkind = \"coturnix\"\ndate = 2027-08-05\n"
        "chicks = 9\nfeeding = [{ feed = \"starter\", from = \"0 d\" }]\nuntil = \"6 wk\"\n";
    CHECK_THAT(box_fault("holds = 9\n", again), Contains("a name no other hatch of this file has"));
}
