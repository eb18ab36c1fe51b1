#include "cropful/reports/phone_page.hpp"

#include <catch2/catch.hpp>

#include "cropful/fault.hpp"

using namespace cropful::reports;

namespace {

std::string const bare =
    "<meta charset=\"utf-8\"><script id=\"farm\" data-name=\"\"></script><script id=\"diary\"></script>";

}  // namespace

TEST_CASE("a page carries a farm and its diary in base64", "[reports][phone_page]") {
    // The test vectors of RFC 4648, section 10, one, two and three bytes past a whole three.
    REQUIRE(with_farm(bare, {"a.toml", "f", "fo"}) ==
            "<meta charset=\"utf-8\"><script id=\"farm\" data-name=\"a.toml\">Zg==</script>"
            "<script id=\"diary\">Zm8=</script>");
    REQUIRE(with_farm(bare, {"a.toml", "foo", "foobar"}).find(">Zm9v</script><script id=\"diary\">Zm9vYmFy<") !=
            std::string::npos);
    REQUIRE(with_farm(bare, {"", std::string("\0\xff\xfe", 3), ""}).find(">AP/+<") != std::string::npos);
    REQUIRE(with_farm(bare, {}) == bare);
}

TEST_CASE("a file's name is text on the page", "[reports][phone_page]") {
    REQUIRE(with_farm(bare, {"\"><script>.toml", "", ""}).find("data-name=\"&quot;&gt;&lt;script&gt;.toml\">") !=
            std::string::npos);
}

TEST_CASE("a farm goes into a page of this program only", "[reports][phone_page]") {
    REQUIRE_THROWS_WITH(with_farm("<p>another</p>", {}),
                        "page.html is no page of this program: it has no id=\"diary\">");
    REQUIRE_THROWS_AS(as_site("<p>another</p>"), cropful::WrongUse);
}

TEST_CASE("the page of a site names what keeps it", "[reports][phone_page]") {
    std::string const site = as_site(bare);
    REQUIRE(site.find("register(\"sw.js\")") != std::string::npos);
    REQUIRE(site.find("<link rel=\"manifest\" href=\"manifest.webmanifest\">") != std::string::npos);
    REQUIRE(site.starts_with("<meta charset=\"utf-8\">\n"));
}

TEST_CASE("another page has another service worker", "[reports][phone_page]") {
    std::string const first = service_worker("name(@version)", "first page");
    REQUIRE(first == service_worker("name(@version)", "first page"));
    REQUIRE(first != service_worker("name(@version)", "second page"));
    REQUIRE(first.size() == std::string("name()").size() + 16);
    REQUIRE_THROWS_WITH(service_worker("", ""), "sw.js is no service worker of this program: it has no @version");
}
