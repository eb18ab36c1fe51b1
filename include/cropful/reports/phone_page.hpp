#pragma once

#include <string>

/// The page for telephones. What it is made of is built with the program (.cmake/page.cmake); a farm is put into it
/// here.
namespace cropful::reports {

/// A farm file and its diary, as they are; all empty for none.
struct CarriedFarm {
    std::string name;  // of the file
    std::string farm;
    std::string diary;
};

/// `page` with the farm in its elements of the ids "farm", with the name, and "diary", both in base64. Throws WrongUse
/// where it has not these, and so is no such page.
std::string with_farm(std::string page, CarriedFarm const& carried);

/// `page` as one of a site that is kept on the telephone by its service worker sw.js.
std::string as_site(std::string page);
/// The text of sw.js for a site: another text for another page.
std::string service_worker(std::string text, std::string const& page);

}  // namespace cropful::reports
