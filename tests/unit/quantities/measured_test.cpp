// What is measured out: read back with factors of NIST HB 44 (2023) App. C (1 lb = 0.45359237 kg = 16 oz,
// 1 gal = 3.785411784 L = 4 qt = 128 fl oz = 256 tbsp = 768 tsp, 1 ft3 = 28.316846592 L), it is the amount within 0.4
// %.
#include <catch2/catch.hpp>
#include <cmath>
#include <map>
#include <random>
#include <sstream>

#include "cropful/quantities/make.hpp"
#include "cropful/quantities/print.hpp"

using namespace cropful::quantities;

namespace {

std::map<std::string, double> const kilograms_in{
    {"kg", 1}, {"g", 1e-3}, {"mg", 1e-6}, {"lb", 0.45359237}, {"oz", 0.45359237 / 16}};
std::map<std::string, double> const litres_in{{"L", 1},
                                              {"mL", 1e-3},
                                              {"gal", 3.785411784},
                                              {"qt", 3.785411784 / 4},
                                              {"floz", 3.785411784 / 128},
                                              {"tbsp", 3.785411784 / 256},
                                              {"tsp", 3.785411784 / 768},
                                              {"ft3", 28.316846592}};

/// "1,234.5" or "3/8".
double figure(std::string text) {
    std::erase(text, ',');
    if (auto const bar = text.find('/'); bar != std::string::npos) {
        return std::stod(text.substr(0, bar)) / std::stod(text.substr(bar + 1));
    }
    return std::stod(text);
}

/// The sum of an amount such as "2 tbsp 1 1/2 tsp".
double read_back(std::string text, std::map<std::string, double> const& units) {
    if (auto const ounces = text.find("fl oz"); ounces != std::string::npos) text.replace(ounces, 5, "floz");
    std::istringstream words(text);
    double sum = 0, count = 0;
    for (std::string word; words >> word;) {
        if (auto const unit = units.find(word); unit != units.end()) {
            sum += count * unit->second;
            count = 0;
        } else {
            count += figure(word);
        }
    }
    REQUIRE(count == 0);  // every figure has a unit
    return sum;
}

/// What stands before and inside the brackets, or before and after the comma.
std::pair<std::string, std::string> parts(std::string const& text) {
    if (auto const open = text.find(" ("); open != std::string::npos) {
        return {text.substr(0, open), text.substr(open + 2, text.size() - open - 3)};
    }
    if (auto const comma = text.find(", just "); comma != std::string::npos) {
        return {text.substr(0, comma), text.substr(comma + 2)};
    }
    return {text, ""};
}

double off(double shown, double amount) { return std::abs(shown / amount - 1); }

/// From a hundredth of a gram or mL to a thousand tonnes or m3, every size as likely.
double some_amount(std::mt19937& random) { return std::pow(10.0, std::uniform_real_distribution(-5.0, 6.0)(random)); }

constexpr double near = 0.004 + 1e-9;

}  // namespace

TEST_CASE("whatever is measured out is shown within 0.4 % of it", "[quantities]") {
    std::mt19937 random(20270405);  // any seed
    for (int i = 0; i < 20000; ++i) {
        double const x = some_amount(random);
        for (Measures const measures : {Measures::us, Measures::metric, Measures::uk}) {
            auto const mass = print_measured(kilograms(x), measures), volume = print_measured(litres(x), measures);
            auto const bulk = print_bulk(litres(x), measures);
            INFO(x << ": " << mass << "; " << volume << "; " << bulk);
            REQUIRE(off(read_back(mass, kilograms_in), x) < near);
            REQUIRE(off(read_back(volume, litres_in), x) < near);
            REQUIRE(off(read_back(bulk, litres_in), x) < near);
        }
    }
}

TEST_CASE("of a dose both figures hold, and a spoon is named as exact only within 0.5 %", "[quantities]") {
    std::mt19937 random(20270406);  // any seed
    for (int i = 0; i < 20000; ++i) {
        double const x = some_amount(random) / 100;
        for (Measures const measures : {Measures::us, Measures::metric, Measures::uk}) {
            auto const [first, second] = parts(print_dose(kilograms(x), measures));
            INFO(x << " kg: " << first << "; " << second);
            REQUIRE(off(read_back(first, kilograms_in), x) < near);
            if (!second.empty()) REQUIRE(off(read_back(second, kilograms_in), x) < near);
        }
        auto const [first, second] = parts(print_dose(litres(x), Measures::us));
        INFO(x << " L: " << first << "; " << second);
        bool const spooned = first.find("tsp") != std::string::npos || first.find("tbsp") != std::string::npos;
        REQUIRE(off(read_back(first, litres_in), x) < (spooned ? 0.005 + 1e-9 : near));
        if (spooned) REQUIRE(off(read_back(second, litres_in), x) < near);
        if (second.starts_with("just over ")) REQUIRE(read_back(second.substr(10), litres_in) < x);
        if (second.starts_with("just under ")) REQUIRE(read_back(second.substr(11), litres_in) > x);
    }
}

TEST_CASE("a dose and its water, both as shown, keep the label's rate to 1 %", "[quantities]") {
    std::mt19937 random(20270407);  // any seed
    for (int i = 0; i < 20000; ++i) {
        double const water = some_amount(random),
                     rate = std::pow(10.0, std::uniform_real_distribution(-5.0, -1.0)(random));
        for (Measures const measures : {Measures::us, Measures::metric}) {
            double const into = read_back(print_measured(litres(water), measures), litres_in);
            auto const weighed = parts(print_dose(kilograms(water * rate), measures)).first;
            auto const poured = parts(print_dose(litres(water * rate), measures)).first;
            INFO(water << " L at " << rate << ": " << weighed << "; " << poured);
            REQUIRE(off(read_back(weighed, kilograms_in) / into, rate) < 0.01);
            REQUIRE(off(read_back(poured, litres_in) / into, rate) < 0.01);
        }
    }
}

TEST_CASE("measured amounts as they are read", "[quantities]") {
    auto const us = [](auto x) { return print_measured(x, Measures::us); };
    auto const metric = [](auto x) { return print_measured(x, Measures::metric); };
    CHECK(metric(litres(1.25)) == "1.25 L");
    CHECK(metric(litres(1.149)) == "1.15 L");
    CHECK(metric(litres(1250)) == "1,250 L");
    CHECK(metric(litres(0.9999)) == "1 L");
    CHECK(metric(litres(0.0006)) == "0.6 mL");
    CHECK(metric(kilograms(0.01049)) == "10.5 g");
    CHECK(metric(kilograms(1.5)) == "1.5 kg");
    CHECK(metric(kilograms(0.00004)) == "40 mg");
    CHECK(us(litres(2 * 3.785411784)) == "2 gal");
    CHECK(us(litres(0.94 * 3.785411784)) == "3.76 qt");
    CHECK(us(litres(3.1 * 3.785411784 / 128)) == "3.1 fl oz");
    CHECK(us(litres(0.3 * 3.785411784 / 128)) == "8.9 mL");
    CHECK(us(kilograms(0.45359237 * 15.98 / 16)) == "1 lb");  // not 16 oz
    CHECK(us(kilograms(0.45359237 * 5.44)) == "5.44 lb");
    CHECK(us(kilograms(0)) == "0 oz");
    CHECK(print_bulk(litres(0.55 * 28.316846592), Measures::us) == "0.55 ft3");
}

TEST_CASE("spoons as they lie in the drawer", "[quantities]") {
    auto const dose = [](double teaspoons) { return print_dose(litres(teaspoons * 3.785411784 / 768), Measures::us); };
    CHECK(dose(0) == "0 mL");
    CHECK(dose(0.06) == "0.296 mL");
    CHECK(dose(0.125) == "1/8 tsp (0.616 mL)");
    CHECK(dose(0.5) == "1/2 tsp (2.46 mL)");
    CHECK(dose(1.25) == "1 1/4 tsp (6.16 mL)");
    CHECK(dose(1.3) == "6.4 mL, just over 1 1/4 tsp");
    CHECK(dose(2.95) == "14.5 mL, just under 1 tbsp");
    CHECK(dose(6.5) == "2 tbsp 1/2 tsp (32 mL)");
    CHECK(dose(8) == "2 tbsp 2 tsp (39.4 mL)");
    CHECK(dose(48) == "8 fl oz");  // more than half a cup is poured
    CHECK(print_dose(litres(0.00616), Measures::metric) == "6.16 mL");
    CHECK(spoon_measures(litres(0.005)));
    CHECK_FALSE(spoon_measures(litres(0.0003)));
}

TEST_CASE("products by weight", "[quantities]") {
    CHECK(print_dose(kilograms(0.003), Measures::us) == "3 g");
    CHECK(print_dose(kilograms(0.0283), Measures::us) == "28.3 g");
    CHECK(print_dose(kilograms(0.116), Measures::us) == "4.1 oz (116 g)");  // 4.092 oz, 0.2 % off
    CHECK(print_dose(kilograms(0.45359237 * 2), Measures::us) == "2 lb (907 g)");
    CHECK(print_dose(kilograms(0.003), Measures::metric) == "3 g");
    CHECK(print_dose(kilograms(0.00004), Measures::us) == "40 mg");
    CHECK(print_dose(kilograms(0), Measures::us) == "0 mg");
}
