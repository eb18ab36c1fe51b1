#include "quantities/number.hpp"

#include <catch2/catch.hpp>

#include "faults.hpp"

using namespace cropful;
using namespace cropful::quantities;

namespace {

Number read(std::string_view text) { return read_number(text, {text, "a number"}); }

std::string number_fault(std::string_view text) {
    return sample::fault_of([&] { read(text); });
}

}  // namespace

TEST_CASE("numbers are read as they are spoken", "[quantities]") {
    auto const [text, value, rest] = GENERATE(table<std::string, double, std::string>({
        {"24", 24, ""},
        {"2.5 lb", 2.5, "lb"},
        {"  2.5\tlb ", 2.5, "lb"},
        {"0.125", 0.125, ""},
        {"007", 7, ""},
        {"1/2 tsp", 0.5, "tsp"},
        {"3/2 tsp", 1.5, "tsp"},
        {"1 1/2 gal", 1.5, "gal"},
        {"1 1/2gal", 1.5, "gal"},
        {"½ tsp", 0.5, "tsp"},
        {"¼", 0.25, ""},
        {"¾", 0.75, ""},
        {"⅛", 0.125, ""},
        {"⅝", 0.625, ""},
        {"1½ cups", 1.5, "cups"},
        {"1 ½ cups", 1.5, "cups"},
        {"2lb/ft3", 2, "lb/ft3"},
        {"4 oz per 128 gal", 4, "oz per 128 gal"},
        {"5 e", 5, "e"},
    }));
    CAPTURE(text);
    Number const number = read(text);
    CHECK(number.value == value);  // all are sums of powers of two
    CHECK(number.rest == rest);
}

TEST_CASE("thirds are the nearest double to a third", "[quantities]") {
    CHECK(read("⅓").value == 1.0 / 3);
    CHECK(read("⅔").value == 2.0 / 3);
    CHECK(read("1/3").value == 1.0 / 3);
}

TEST_CASE("a decimal is the nearest double, as the compiler reads it", "[quantities]") {
    CHECK(read("0.1").value == 0.1);
    CHECK(read("27.35").value == 27.35);
    CHECK(read("123456789.123456789").value == 123456789.123456789);
}

TEST_CASE("what is no plain number is refused with the cure", "[quantities]") {
    auto const [text, reason] = GENERATE(table<std::string, std::string>({
        {"2,5 kg", "write a point for decimals"},
        {"2,500", "write a point for decimals"},
        {"1.234,5", "write a point for decimals"},
        {"1e3 kg", "without an exponent"},
        {"1E+3", "without an exponent"},
        {"1e-3", "without an exponent"},
        {"-1 lb", "less than 0"},
        {"1/0 tsp", "a fraction over 0"},
        {"1 1/0 tsp", "a fraction over 0"},
        {"1 3/2 tsp", "less than 1"},
        {"2 500 kg", "without blanks in it"},
        {"2.5½ tsp", "without blanks in it"},
        {"½ ½ tsp", "without blanks in it"},
        {"½ 2 tsp", "without blanks in it"},
        {"1 1/2 3 tsp", "without blanks in it"},
        {".5 lb", "a digit before the point"},
        {"5.", "between two digits"},
        {"1.2.3", "between two digits"},
        {"1/2.5", "between two digits"},
        {"nan", "found \"nan\"; expected a number"},
        {"inf kg", "found \"inf kg\"; expected a number"},
        {"infinity", "expected a number"},
        {"+5", "expected a number"},
        {"/2", "expected a number"},
        {"", "found \"\"; expected a number"},
        {"   ", "expected a number"},
        {"lots", "found \"lots\"; expected a number"},
        {std::string(400, '9'), "too large"},
        {"1000000000000001", "too large"},
        {"0.0000000000009", "too small"},
        {"0." + std::string(330, '0') + "1", "too small"},
        {"1/" + std::string(300, '9'), "too small"},
        {std::string(300, '9') + "/3", "too large"},
    }));
    CAPTURE(text);
    CHECK_THAT(number_fault(text), Catch::Contains(reason));
}
