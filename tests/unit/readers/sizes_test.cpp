// How much of anything a farm file may hold.
#include <catch2/catch.hpp>

#include <sys/stat.h>

#include <filesystem>

#include "cropful/fault.hpp"
#include "faults.hpp"
#include "readers/document.hpp"
#include "sample_farms.hpp"

using namespace cropful;
using Catch::Contains;
using sample::fault_of;

namespace {

std::string feeds(int count) {
    std::string text;
    for (int i = 0; i < count; ++i) text += "[feed.f" + std::to_string(i) + "]\nprotein = \"24 %\"\n";
    return text;
}

std::string hatches(int count, std::string const& more = "") {
    std::string text;
    for (int i = 0; i < count; ++i) {
        text +=
            "[[hatch]]\nname = \"h" + std::to_string(i) +
            "\"\nkind = \"bobwhite\"\ndate = 2027-04-05\nchicks = 9\nfeeding = [{ feed = \"f0\", from = \"0 d\" }]\n"
            "until = \"6 wk\"\n" +
            more;
    }
    return text;
}

std::string sizes_fault(std::string const& tables) {
    return fault_of([&] { sample::farm_from("[farm]\nname = \"F\"\n" + tables); });
}

}  // namespace

TEST_CASE("at most 1000 tables of a sort", "[readers]") {
    CHECK(sizes_fault(feeds(1000) + hatches(1)) == "no fault");
    CHECK_THAT(sizes_fault(feeds(1001) + hatches(1)), Contains("found 1001 tables [feed.name]; expected at most 1000"));
}

TEST_CASE("at most 200 items in a list", "[readers]") {
    auto const removed = [](int count) {
        std::string text = "removed = [";
        for (int i = 0; i < count; ++i) text += "{ at = \"5 d\", birds = 1 },";
        return text + "]\n";
    };
    CHECK(sizes_fault(feeds(1) + hatches(1, removed(200))) == "no fault");
    CHECK_THAT(sizes_fault(feeds(1) + hatches(1, removed(201))),
               Contains("hatch.1.removed: found 201 items in a list; expected at most 200"));
}

TEST_CASE("at most 900 hatches, before they are made", "[readers]") {
    CHECK(sizes_fault(feeds(1) + hatches(900)) == "no fault");
    CHECK_THAT(sizes_fault(feeds(1) + hatches(901)),
               Contains("found one hatch more; expected at most 900 hatches in a file"));
    std::string const again = "every = \"1 d\"\ntimes = 140\n";
    CHECK(sizes_fault(feeds(1) + hatches(6, again)) == "no fault");
    CHECK_THAT(sizes_fault(feeds(1) + hatches(7, again)), Contains("hatch.7.times: found 140"));
    CHECK_THAT(sizes_fault(feeds(1) + hatches(7, again)), Contains("with these it has 980"));
}
