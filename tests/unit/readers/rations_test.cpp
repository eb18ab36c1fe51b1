#include "cropful/readers/rations.hpp"

#include <catch2/catch.hpp>
#include <map>

#include "cropful/fault.hpp"
#include "sample_farms.hpp"

using namespace cropful;
using namespace cropful::readers;
using Catch::Contains;
using Catch::WithinRel;
using quantities::days;

namespace {

/// Files in front of those built in.
class Front {
  public:
    void put(std::string const& name, std::string const& text) { files_[name] = text; }
    [[nodiscard]] RationsReader reader() const {
        return RationsReader({.keys =
                                  [this](std::string const& folder) {
                                      std::vector<std::string> keys;
                                      for (auto const& [name, text] : files_) {
                                          if (!name.starts_with(folder + "/")) continue;
                                          keys.push_back(
                                              name.substr(folder.size() + 1, name.find(".toml") - folder.size() - 1));
                                      }
                                      return keys;
                                  },
                              .file = [this](std::string const& name) -> std::optional<RationsFile> {
                                  auto const found = files_.find(name);
                                  if (found == files_.end()) return std::nullopt;
                                  return RationsFile{"front/" + name, found->second};
                              }});
    }

  private:
    std::map<std::string, std::string> files_;
};

/// The built-in bobwhite with one text put in place of another.
std::string bobwhite(std::string const& from = "", std::string const& to = "") {
    std::string text = RationsReader().file("birds/bobwhite.toml").text;
    auto const at = text.find(from);
    REQUIRE(at != std::string::npos);
    return text.replace(at, from.size(), to);
}

std::string fault_with(std::string const& from, std::string const& to) {
    Front front;
    front.put("birds/partridge.toml", bobwhite(from, to));
    try {
        static_cast<void>(front.reader().kind("partridge"));
    } catch (BadInput const& bad) {
        return bad.what();
    }
    return "no fault";
}

}  // namespace

TEST_CASE("everything built in can be read", "[readers]") {
    RationsReader const rations;
    for (auto const& key : rations.kinds()) {
        auto const kind = rations.kind(key);
        CHECK(kind.key == key);
        CHECK(kind.growing.curve.rows().size() >= 4);
        CHECK_NOTHROW(rations.needs(kind.needs_table));
        CHECK(quantities::in_days(kind.brooding_ends()) > 0);
    }
    CHECK(rations.kinds().size() >= 5);
    CHECK(rations.needs_tables().size() >= 3);
}

TEST_CASE("a kind's figures are those of its file", "[readers]") {
    auto const kind = RationsReader().kind("bobwhite");
    CHECK(kind.latin == "Colinus virginianus");
    CHECK(kind.growing.curve.value(days(14)) == 5.3);
    CHECK(kind.mortality.curve.value(days(42)) == 11);
    CHECK_THAT(kind.hatch_rate.value, WithinRel(0.65, 1e-12));
    CHECK(kind.water.ratio[1] == 2);
    CHECK_THAT(kind.water_heat.above.in_celsius(), WithinRel(21.0, 1e-12));
    CHECK_THAT(kind.brooding.rows.at(0).high.in_fahrenheit(), WithinRel(95.0, 1e-12));
    CHECK(quantities::in_days(kind.brooding_ends()) == 35);
    CHECK(kind.growing.source.standing == domain::Standing::derived);
    CHECK_FALSE(RationsReader().kind("pheasant").laying.has_value());
}

TEST_CASE("a needs table starts each phase with protein and keeps the order of the file", "[readers]") {
    auto const table = RationsReader().needs("bobwhite");
    REQUIRE(table.phases.size() == 3);
    auto const& first = table.phases[0];
    CHECK(first.needs.at(0).nutrient == "protein");
    CHECK_THAT(first.needs.at(0).level, WithinRel(26.0, 1e-12));
    CHECK(first.needs.at(1).nutrient == "met_cys");
    CHECK(first.to == days(42));
    CHECK(table.phases[2].laying);
    CHECK_FALSE(table.notes.empty());
}

TEST_CASE("a kind is known by key and by its other names, however written", "[readers]") {
    RationsReader const rations;
    CHECK(rations.kind_key("Coturnix Jumbo") == "coturnix-jumbo");
    CHECK(rations.kind_key("coturnix_jumbo") == "coturnix-jumbo");
    CHECK(rations.kind_key("BOBWHITE") == "bobwhite");
    CHECK(rations.kind_key("japanese quail") == "coturnix");
    CHECK(rations.kind_key("Colinus virginianus") == "bobwhite");
    CHECK_THROWS_WITH(rations.kind_key("bobwite"), Contains("perhaps \"bobwhite\""));
    CHECK_THROWS_AS(rations.kind_key(""), BadInput);
    CHECK_THROWS_WITH(rations.kind("emu"), Contains("one of bobwhite"));
}

TEST_CASE("no name leads to two kinds", "[readers]") {
    RationsReader const rations;
    for (auto const& key : rations.kinds()) {
        for (auto const& name : rations.kind(key).also) CHECK(rations.kind_key(name) == key);
    }
}

TEST_CASE("what a farm needs is gathered, and no more", "[readers]") {
    auto const rations = RationsReader().load(sample::farm_from(sample::bobwhites()));
    CHECK(rations.kinds.size() == 1);
    CHECK(rations.needs.contains("bobwhite"));
    CHECK(rations.forms.size() == 3);
    CHECK_FALSE(rations.limits.empty());
    CHECK(rations.limits.at(0).words == "1.5 %");
    CHECK_THAT(rations.limits.at(0).level, WithinRel(1.5, 1e-12));
    CHECK(rations.water.rows.at(0).item == "tds");
    CHECK_THAT(rations.water.rows.at(0).level, WithinRel(1000.0, 1e-12));
    CHECK(rations.water.ceilings.empty());
    auto const with_water = RationsReader().load(sample::farm_from(sample::bobwhites() + "[water]\nph = 7\n"));
    CHECK(with_water.water.ceilings.size() == 2);  // growing, and in lay
    CHECK(rations.drugs.at(0).name == "monensin");
}

TEST_CASE("a file in front wins, a new one is found, the rest is built in", "[readers]") {
    Front front;
    front.put("birds/bobwhite.toml", bobwhite("title = \"bobwhite\"", "title = \"My line\""));
    front.put("birds/partridge.toml", bobwhite("also = [", "also = [\"my partridge\", "));
    RationsReader const rations = front.reader();
    CHECK(rations.kind("bobwhite").title == "My line");
    CHECK(rations.kind("coturnix").latin == "Coturnix japonica");
    CHECK(rations.kind_key("my partridge") == "partridge");
    CHECK(rations.kinds().size() == RationsReader().kinds().size() + 1);
    CHECK(rations.file("limits.toml").name == "rations/limits.toml");
}

TEST_CASE("a file that is not built in is wrong use", "[readers]") {
    CHECK_THROWS_AS(RationsReader().file("birds/none.toml"), WrongUse);
}

TEST_CASE("rations are held to their form", "[readers]") {
    CHECK(fault_with("", "") == "no fault");
    CHECK_THAT(fault_with("[7, 2.7, 3.1, 3.7]", "[7, 3.2, 3.1, 3.7]"),
               Contains("growing.rows.3") && Contains("low to high"));
    CHECK_THAT(fault_with("[7, 2.7, 3.1, 3.7]", "[2, 2.7, 3.1, 3.7]"), Contains("growing.rows"));
    CHECK_THAT(fault_with("[7, 2.7, 3.1, 3.7]", "[7, 2.7, 3.1]"), Contains("a list of 4 numbers"));
    CHECK_THAT(fault_with("[7, 2.7, 3.1, 3.7]", "[7, 2.7, nan, 3.7]"), Contains("growing.rows.3.3"));
    CHECK_THAT(fault_with("g/bird/d", "lb/bird/d"), Contains("growing.unit") && Contains("\"g/bird/d\""));
    CHECK_THAT(fault_with("from memory\"\n\n# Feed", "hearsay\"\n\n# Feed"), Contains("needs.standing"));
    CHECK_THAT(fault_with("latin", "lation"), Contains("latin: found nothing"));
    CHECK_THAT(fault_with("[8, 14, 85, 90]", "[9, 14, 85, 90]"), Contains("brooding.rows") && Contains("follow on"));
    CHECK_THAT(fault_with("[112, 7, 15, 28]", "[112, 7, 15, 100]"), Contains("less than 100 % dead"));
    CHECK_THAT(fault_with("elasticity = 0.9", "elasticity = 9"), Contains("feed_energy.elasticity"));
    CHECK_THAT(fault_with("[space]", "[space]\nwidth = 2"), Contains("space.width: found an unknown key"));
}

TEST_CASE("a needs table that is not there is a fault that names those that are", "[readers]") {
    Front front;
    front.put("birds/bobwhite.toml", bobwhite("table = \"bobwhite\"", "table = \"bobwite\""));
    CHECK_THROWS_WITH(front.reader().load(sample::farm_from(sample::bobwhites())), Contains("perhaps \"bobwhite\""));
}
