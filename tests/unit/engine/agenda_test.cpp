// The bobwhites of sample_farms.hpp: hatched on 5 April 2027, on another feed from 6 wk (17 May), 60 sold at 8 wk
// (31 May), kept to 16 wk (26 July). Nobody comes but at 07:00 and 18:00.
#include "cropful/engine/agenda.hpp"

#include <algorithm>
#include <catch2/catch.hpp>
#include <set>

#include "sample_farms.hpp"

using namespace cropful;
using namespace cropful::engine;

namespace {

std::vector<Task> tasks_of(domain::Farm const& farm, char const* from, char const* until) {
    readers::RationsReader const reader;
    auto const rations = reader.load(farm);
    return agenda(make_plan(farm, rations), rations, {}, domain::parse_moment(from), domain::parse_moment(until));
}

std::vector<Task> tasks_of(char const* from, char const* until) {
    return tasks_of(sample::farm_from(sample::bobwhites()), from, until);
}

std::vector<std::string> names_at(std::vector<Task> const& tasks, std::string const& at) {
    std::vector<std::string> names;
    for (Task const& task : tasks) {
        if (task.at.iso() == at) names.push_back(name(task.work));
    }
    return names;
}

std::vector<Task> of_work(std::vector<Task> const& tasks, Work work) {
    std::vector<Task> found;
    for (Task const& task : tasks) {
        if (task.work == work) found.push_back(task);
    }
    return found;
}

using WorkNames = std::vector<std::string>;

}  // namespace

TEST_CASE("on the first day vessels are filled before one looks for the dead", "[engine]") {
    auto const tasks = tasks_of("2027-04-05", "2027-04-06");
    CHECK(names_at(tasks, "2027-04-05T07:00") == WorkNames{"change-water", "warmth", "top-up", "move"});
    CHECK(names_at(tasks, "2027-04-05T18:00") == WorkNames{"look"});
    Task const water = of_work(tasks, Work::change_water).at(0);
    CHECK(water.vessel == "bell");
    CHECK(water.vessels == 6);
    // 128 fl oz less the 8 of the marbles, in each
    CHECK(quantities::in_litres(*water.water) == Approx(6 * 120 * 3.785411784 / 128));
    CHECK(quantities::in_litres(*water.each) == Approx(120 * 3.785411784 / 128));
    Task const chicks = of_work(tasks, Work::move).at(0);
    CHECK(chicks.why == Reason::hatching);
    CHECK(quantities::in_birds(*chicks.birds) == Approx(240));
    CHECK(of_work(tasks, Work::top_up).at(0).what == "starter");
}

TEST_CASE("one looks in at every chore with birds, from the start to before the end", "[engine]") {
    auto const looks = of_work(tasks_of("2027-04-10T07:00", "2027-04-12T07:00"), Work::look);
    std::vector<std::string> at;
    for (Task const& look : looks) at.push_back(look.at.iso());
    CHECK(at ==
          std::vector<std::string>{"2027-04-10T07:00", "2027-04-10T18:00", "2027-04-11T07:00", "2027-04-11T18:00"});
}

TEST_CASE("another feed, birds that are sold and the last of them", "[engine]") {
    auto const tasks = tasks_of("2027-05-01", "2027-08-31");
    auto const feeds = of_work(tasks, Work::change_feed);
    REQUIRE(feeds.size() == 1);
    CHECK(feeds[0].at.iso() == "2027-05-17T07:00");
    CHECK(feeds[0].what == "grower");
    CHECK(feeds[0].why == Reason::of_age);
    auto const gone = of_work(tasks, Work::remove);
    REQUIRE(gone.size() == 2);
    CHECK(gone[0].at.iso() == "2027-05-31T07:00");
    CHECK(quantities::in_birds(*gone[0].birds) == 60);
    CHECK(gone[1].at.iso() == "2027-07-26T07:00");
    CHECK(gone[1].why == Reason::last_day);
    CHECK(of_work(tasks, Work::look).back().at.iso() == "2027-07-25T18:00");
}

// Fed to 17 May 07:00; 5.1 d later is 22 May 09:24, and nobody comes before 18:00.
TEST_CASE("a withdrawal is over at the first chore after it", "[engine]") {
    auto farm = sample::farm_from(sample::bobwhites());
    farm.feeds.at("starter").medicated =
        domain::Medication{"monensin", quantities::kilograms(0.08), quantities::days(5.1)};
    auto const over = of_work(tasks_of(farm, "2027-05-01", "2027-08-31"), Work::withdrawal_ends);
    REQUIRE(over.size() == 1);
    CHECK(over[0].at.iso() == "2027-05-22T18:00");
    CHECK(over[0].what == "starter");
}

TEST_CASE("tasks are in order of time, and each has an id of its own", "[engine]") {
    auto const tasks = tasks_of("2027-04-01", "2027-08-31");
    std::set<std::string> ids;
    for (Task const& task : tasks) ids.insert(task.id);
    CHECK(ids.size() == tasks.size());
    CHECK(std::is_sorted(tasks.begin(), tasks.end(), [](Task const& a, Task const& b) { return a.at < b.at; }));
    CHECK(ids.contains("look/April/2027-04-05T18:00"));
    CHECK(ids.contains("change-feed/April/tube/grower/2027-05-17T07:00"));
}

TEST_CASE("what is fetched is fetched at the first chore of its day", "[engine]") {
    auto const farm = sample::farm_from(sample::bobwhites());
    auto const rations = readers::RationsReader().load(farm);
    Fetch const bags{.on = domain::parse_moment("2027-04-04"),
                     .what = "starter",
                     .title = "starter crumble",
                     .packs = 3,
                     .feed = quantities::kilograms(68),
                     .needed = domain::parse_moment("2027-04-05T07:00")};
    auto const tasks = agenda(make_plan(farm, rations), rations, {bags}, domain::parse_moment("2027-04-01"),
                              domain::parse_moment("2027-04-05"));
    REQUIRE(tasks.size() == 1);
    CHECK(tasks[0].id == "fetch/starter/2027-04-04T07:00");
    CHECK(tasks[0].packs == 3);
    CHECK(tasks[0].hatch.empty());
}

TEST_CASE("the last chore no later than a moment", "[engine]") {
    auto const farm = sample::farm_from(sample::bobwhites());
    auto const before = [&](char const* at) { return last_chore(farm, domain::parse_moment(at)).iso(); };
    CHECK(before("2027-04-05T07:00") == "2027-04-05T07:00");
    CHECK(before("2027-04-05T17:59") == "2027-04-05T07:00");
    CHECK(before("2027-04-05T06:59") == "2027-04-04T18:00");
}

TEST_CASE("what is done at any chore is routine", "[engine]") {
    for (Work const work : {Work::look, Work::top_up, Work::change_water}) CHECK(is_routine(work));
    for (Work const work : {Work::stir, Work::change_feed, Work::warmth, Work::move, Work::ready, Work::clean,
                            Work::remove, Work::withdrawal_ends, Work::fetch}) {
        CHECK_FALSE(is_routine(work));
    }
}
