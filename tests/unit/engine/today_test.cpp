// The bobwhites of sample_farms.hpp: hatched on 5 April 2027; warmth is another from their second week (12 April) on.
#include "cropful/engine/today.hpp"

#include <algorithm>
#include <catch2/catch.hpp>
#include <set>

#include "cropful/fault.hpp"
#include "sample_farms.hpp"

using namespace cropful;
using namespace cropful::engine;

namespace {

Today today_at(char const* now, domain::Diary const& diary = {}, double ahead = 1) {
    auto const farm = sample::farm_from(sample::bobwhites());
    return make_today(farm, readers::RationsReader().load(farm), diary, domain::parse_moment(now),
                      quantities::days(ahead));
}

domain::Entry seen(char const* at, domain::Deed deed, std::string const& note = "") {
    return {domain::parse_moment(at), "April", deed, quantities::birds(deed == domain::Deed::died ? 1 : 0), note, {}};
}

Numbered const* with_id(std::vector<Numbered> const& all, std::string const& id) {
    auto const found = std::find_if(all.begin(), all.end(), [&](Numbered const& one) { return one.task.id == id; });
    return found == all.end() ? nullptr : &*found;
}

char const* const warmer = "warmth/April/2027-04-12T07:00";

}  // namespace

TEST_CASE("today lists what is to be done until the same hour tomorrow, each with a number", "[engine]") {
    auto const today = today_at("2027-04-12T05:00");
    CHECK(today.until.iso() == "2027-04-13T05:00");
    std::set<int> numbers;
    for (Numbered const& one : today.tasks) {
        numbers.insert(one.number);
        CHECK_FALSE(one.task.at < today.now);
        CHECK(one.task.at < today.until);
        CHECK_FALSE(one.done);
    }
    CHECK(numbers.size() == today.tasks.size());
    REQUIRE(with_id(today.tasks, warmer) != nullptr);
    CHECK(with_id(today.tasks, "look/April/2027-04-12T18:00") != nullptr);
    CHECK(with_id(today.tasks, "look/April/2027-04-13T07:00") == nullptr);
    CHECK(with_id(today_at("2027-04-12T05:00", {}, 2).tasks, "look/April/2027-04-13T07:00") != nullptr);
}

TEST_CASE("numbers hold for the day, and those of what is done stay its own", "[engine]") {
    auto const morning = today_at("2027-04-12T05:00");
    auto const after = today_at("2027-04-12T06:50", {seen("2027-04-12T06:45", domain::Deed::done, warmer)});
    CHECK(with_id(after.tasks, warmer) == nullptr);
    REQUIRE(with_id(after.day, warmer) != nullptr);
    CHECK(with_id(after.day, warmer)->done);
    CHECK(with_id(after.day, warmer)->number == with_id(morning.day, warmer)->number);
    char const* const look = "look/April/2027-04-12T18:00";
    REQUIRE(with_id(after.tasks, look) != nullptr);
    CHECK(with_id(after.tasks, look)->number == with_id(morning.tasks, look)->number);
    CHECK(with_id(today_at("2027-04-12T12:00").tasks, look)->number == with_id(morning.tasks, look)->number);
}

TEST_CASE("without a diary all before now is done, with one what is not written is overdue", "[engine]") {
    CHECK(with_id(today_at("2027-04-12T12:00").tasks, warmer) == nullptr);
    auto const kept = today_at("2027-04-12T12:00", {seen("2027-04-10T12:00", domain::Deed::died)});
    REQUIRE(with_id(kept.tasks, warmer) != nullptr);
    CHECK(with_id(kept.tasks, warmer)->task.overdue);
    CHECK(with_id(kept.tasks, "look/April/2027-04-12T07:00") == nullptr);  // the next look sees to it
    auto const ticked = today_at("2027-04-12T12:00", {seen("2027-04-10T12:00", domain::Deed::died),
                                                      seen("2027-04-12T07:00", domain::Deed::done, warmer)});
    CHECK(with_id(ticked.tasks, warmer) == nullptr);
}

TEST_CASE("at the very hour of a chore one still looks in", "[engine]") {
    CHECK(with_id(today_at("2027-04-12T07:00").tasks, "look/April/2027-04-12T07:00") != nullptr);
}

TEST_CASE("what is coming is the next of each sort that a person makes ready for", "[engine]") {
    auto const today = today_at("2027-04-12T05:00");
    auto const next = [&](Work work) {
        auto const found =
            std::find_if(today.coming.begin(), today.coming.end(), [&](Task const& task) { return task.work == work; });
        return found == today.coming.end() ? "never" : found->at.iso();
    };
    CHECK(next(Work::change_feed) == "2027-05-17T07:00");
    CHECK(next(Work::remove) == "2027-05-31T07:00");
    CHECK(next(Work::move) == "never");
    CHECK(next(Work::look) == "never");
}

TEST_CASE("where all birds are gone there is no list", "[engine]") {
    CHECK_THROWS_AS(today_at("2027-09-01T05:00"), NoAnswer);
}

TEST_CASE("birds to sell that a day left undone stay on the list, once somebody ticks", "[engine]") {
    char const* const sell = "remove/April/2027-05-31T07:00";
    REQUIRE(with_id(today_at("2027-05-31T05:00").tasks, sell) != nullptr);
    domain::Diary const ticking{seen("2027-05-28T07:00", domain::Deed::done, "look/April/2027-05-28T07:00")};
    auto const with = [&](domain::Entry const& entry) {
        domain::Diary more = ticking;
        more.push_back(entry);
        return today_at("2027-06-03T05:00", more);
    };
    auto const later = today_at("2027-06-03T05:00", ticking);
    REQUIRE(with_id(later.tasks, sell) != nullptr);
    CHECK(with_id(later.tasks, sell)->task.overdue);
    CHECK(with_id(later.tasks, sell)->number == 1);
    CHECK(with_id(today_at("2027-06-15T05:00", ticking).tasks, sell) == nullptr);  // two weeks on
    CHECK(with_id(today_at("2027-06-03T05:00", {seen("2027-05-28T07:00", domain::Deed::died)}).tasks, sell) == nullptr);
    CHECK(with_id(with(seen("2027-06-01T07:00", domain::Deed::done, sell)).tasks, sell) == nullptr);
    CHECK(with_id(with(seen("2027-06-01T07:00", domain::Deed::moved_out)).tasks, sell) == nullptr);
}
