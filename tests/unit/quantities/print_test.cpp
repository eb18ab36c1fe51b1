#include "cropful/quantities/print.hpp"

#include <catch2/catch.hpp>

#include <limits>

using namespace cropful::quantities;

namespace {

Mass pounds(double x) { return kilograms(x * 0.45359237); }   // NIST HB 44 App. C
Volume gallons(double x) { return litres(x * 3.785411784); }  // 231 in3, NIST HB 44 App. C
Duration hours(double x) { return days(x / 24); }

std::string us(Mass m) { return print(m, Measures::us); }
std::string metric(Mass m) { return print(m, Measures::metric); }
std::string us(Volume v) { return print(v, Measures::us); }
std::string metric(Volume v) { return print(v, Measures::metric); }

}  // namespace

TEST_CASE("numbers have commas and fixed decimals", "[quantities]") {
    CHECK(number(0, 0) == "0");
    CHECK(number(999, 0) == "999");
    CHECK(number(1000, 0) == "1,000");
    CHECK(number(1234567.891, 2) == "1,234,567.89");
    CHECK(number(-1234.5, 1) == "-1,234.5");
    CHECK(number(-123.5, 1) == "-123.5");
    CHECK(number(-0.04, 1) == "0.0");
    CHECK(number(-0.0, 0) == "0");
    CHECK(number(999.96, 1) == "1,000.0");
    CHECK(number(std::numeric_limits<double>::infinity(), 0) == "inf");
}

TEST_CASE("plain numbers have four digits and no zeros at the end", "[quantities]") {
    CHECK(plain(0) == "0");
    CHECK(plain(24) == "24");
    CHECK(plain(0.75) == "0.75");
    CHECK(plain(1.23456) == "1.235");
    CHECK(plain(12.3456) == "12.35");
    CHECK(plain(0.00123456) == "0.001235");
    CHECK(plain(0.0000001) == "0.0000001");
    CHECK(plain(2900) == "2900");
    CHECK(plain(12345.6) == "12346");
    CHECK(plain(9999.9) == "10000");
    CHECK(plain(-0.5) == "-0.5");
}

TEST_CASE("weights in pounds and ounces", "[quantities]") {
    CHECK(us(pounds(583.2)) == "583 lb");
    CHECK(us(pounds(12345)) == "12,345 lb");
    CHECK(us(pounds(99.97)) == "100 lb");
    CHECK(us(pounds(15.21)) == "15.2 lb");
    CHECK(us(pounds(50)) == "50 lb");
    CHECK(us(pounds(1)) == "1 lb");
    CHECK(us(pounds(0.999)) == "1 lb");  // 15.98 oz is no 16 oz
    CHECK(us(pounds(0.98)) == "15.7 oz");
    CHECK(us(pounds(0.4)) == "6.4 oz");
    CHECK(us(kilograms(0)) == "0 oz");
}

TEST_CASE("weights in kilograms and grams", "[quantities]") {
    CHECK(metric(kilograms(1234.4)) == "1,234 kg");
    CHECK(metric(kilograms(264.4)) == "264 kg");
    CHECK(metric(kilograms(22.68)) == "22.7 kg");
    CHECK(metric(kilograms(6.9)) == "6.9 kg");
    CHECK(metric(kilograms(6.854)) == "6.85 kg");
    CHECK(metric(kilograms(9.998)) == "10 kg");
    CHECK(metric(kilograms(0.9996)) == "1 kg");
    CHECK(metric(kilograms(0.18)) == "180 g");
    CHECK(metric(kilograms(0.00346)) == "3.5 g");
    CHECK(metric(kilograms(0)) == "0 g");
    CHECK(print(kilograms(6.9), Measures::uk) == "6.9 kg");
}

TEST_CASE("volumes in gallons, quarts and fluid ounces", "[quantities]") {
    CHECK(us(gallons(1500)) == "1,500 gal");
    CHECK(us(gallons(12.4)) == "12 gal");
    CHECK(us(gallons(1.19)) == "1.2 gal");
    CHECK(us(gallons(0.995)) == "1 gal");  // 3.98 qt is no 4 qt
    CHECK(us(gallons(0.6)) == "2.4 qt");
    CHECK(us(gallons(0.25)) == "1 qt");
    CHECK(us(gallons(5.0 / 128)) == "5 fl oz");
    CHECK(us(gallons(0.03)) == "3.8 fl oz");  // 3.84
}

TEST_CASE("volumes in litres and millilitres", "[quantities]") {
    CHECK(metric(litres(1500)) == "1,500 L");
    CHECK(metric(litres(150.2)) == "150 L");
    CHECK(metric(litres(4.5)) == "4.5 L");
    CHECK(metric(litres(0.9996)) == "1 L");
    CHECK(metric(litres(0.15)) == "150 mL");
    CHECK(metric(litres(0.0049)) == "4.9 mL");
    CHECK(print(litres(4.5), Measures::uk) == "4.5 L");
}

TEST_CASE("durations never promise more than there is", "[quantities]") {
    CHECK(print(days(20) + hours(15.99)) == "20 d 15 h");
    CHECK(print(days(20)) == "20 d");
    CHECK(print(days(2)) == "2 d");
    CHECK(print(hours(47.9)) == "47 h");
    CHECK(print(hours(15)) == "15 h");
    CHECK(print(hours(9.5)) == "9 h");
    CHECK(print(hours(2)) == "2 h");
    CHECK(print(hours(1.999)) == "119 min");
    CHECK(print(hours(0.75)) == "45 min");
    CHECK(print(days(0)) == "0 min");
    CHECK(print(days(42)) == "6 wk");
    CHECK(print(days(14)) == "2 wk");
    CHECK(print(days(7)) == "7 d");
    CHECK(print(days(42) - hours(1)) == "41 d 23 h");
    CHECK(print(-hours(9)) == "-9 h");
    for (int h = 2; h < 48; ++h) CHECK(print(hours(h)) == std::to_string(h) + " h");
}

TEST_CASE("ages in days, and in weeks from the second", "[quantities]") {
    CHECK(print_age(days(0)) == "day 0");
    CHECK(print_age(days(7)) == "day 7");
    CHECK(print_age(days(12.7)) == "day 12");
    CHECK(print_age(days(14)) == "2 wk");
    CHECK(print_age(days(42)) == "6 wk");
    CHECK(print_age(days(43)) == "day 43");
}

TEST_CASE("temperatures in whole degrees", "[quantities]") {
    CHECK(print(Temperature::celsius(21.1), Measures::us) == "70 F");  // 69.98
    CHECK(print(Temperature::celsius(21.1), Measures::metric) == "21 C");
    CHECK(print(Temperature::celsius(21.1), Measures::uk) == "21 C");
    CHECK(print(Temperature::celsius(-0.4), Measures::metric) == "0 C");
    CHECK(print(Temperature::celsius(-5), Measures::metric) == "-5 C");
}

TEST_CASE("money and percentages", "[quantities]") {
    CHECK(print(money(330), "USD") == "330.00 USD");
    CHECK(print(money(1234.5), "GBP") == "1,234.50 GBP");
    CHECK(percent(0.245) == "24.5 %");
    CHECK(percent(0.24) == "24 %");
    CHECK(percent(0.333333) == "33.3 %");
    CHECK(percent(0.0125) == "1.25 %");
    CHECK(percent(0.0007) == "0.07 %");
    CHECK(percent(0) == "0 %");
    CHECK(percent(1) == "100 %");
    CHECK(percent(-0.05) == "-5 %");
}
