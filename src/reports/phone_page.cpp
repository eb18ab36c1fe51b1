#include "cropful/reports/phone_page.hpp"

#include <algorithm>
#include <cstdint>
#include <string_view>

#include "cropful/fault.hpp"
#include "reports/html.hpp"
#include "reports/ical.hpp"

namespace cropful::reports {

namespace {

/// RFC 4648.
std::string base64(std::string_view bytes) {
    constexpr std::string_view digits = "ABCDEFGHIJKLMNOPQRSTUVWXYZabcdefghijklmnopqrstuvwxyz0123456789+/";
    std::string text;
    for (std::size_t i = 0; i < bytes.size(); i += 3) {
        std::uint32_t three = 0;
        for (std::size_t j = i; j < i + 3; ++j) {
            three = three << 8U | (j < bytes.size() ? static_cast<unsigned char>(bytes[j]) : 0U);
        }
        std::size_t const held = std::min<std::size_t>(3, bytes.size() - i) + 1;  // digits that say something
        for (std::size_t j = 0; j < 4; ++j) text += j < held ? digits[three >> (18 - 6 * j) & 63U] : '=';
    }
    return text;
}

/// Puts `words` behind the first `place`.
void insert_behind(std::string& page, std::string_view place, std::string const& words) {
    std::size_t const at = page.find(place);
    if (at == std::string::npos)
        throw WrongUse("page.html is no page of this program: it has no " + std::string(place));
    page.insert(at + place.size(), words);
}

constexpr char const* site_head = R"(
<link rel="manifest" href="manifest.webmanifest">
<link rel="icon" href="icon.svg" type="image/svg+xml">
<link rel="apple-touch-icon" href="icon-192.png">
<script>navigator.serviceWorker?.register("sw.js");</script>)";

}  // namespace

std::string with_farm(std::string page, CarriedFarm const& carried) {
    insert_behind(page, R"(id="diary">)", base64(carried.diary));
    insert_behind(page, R"(id="farm" data-name="">)", base64(carried.farm));
    insert_behind(page, R"(id="farm" data-name=")", as_html(carried.name));
    return page;
}

std::string as_site(std::string page) {
    insert_behind(page, "<meta charset=\"utf-8\">", site_head);
    return page;
}

std::string service_worker(std::string text, std::string const& page) {
    constexpr std::string_view place = "@version";
    std::size_t const at = text.find(place);
    if (at == std::string::npos) throw WrongUse("sw.js is no service worker of this program: it has no @version");
    return text.replace(at, place.size(), fingerprint({page}));
}

}  // namespace cropful::reports
