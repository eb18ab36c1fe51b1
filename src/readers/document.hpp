#pragma once

#include <cstddef>
#include <cstdint>
#include <string>
#include <variant>
#include <vector>

#include "cropful/quantities/text.hpp"

namespace cropful::readers {

struct Node;

/// A date, a date with a time, or a time alone, as the file has it.
struct Date {
    std::string day;        // "2027-04-05"; a time alone: "07:30:00"
    double since_midnight;  // days
    bool zoned;             // has an offset from UTC
    bool timed = false;     // a time stands beside the day
};

struct Entry;
using List = std::vector<Node>;
using Entries = std::vector<Entry>;  // in the order of the file

/// What stands behind a key.
struct Node {
    std::variant<std::string, std::int64_t, double, bool, Date, List, Entries> content;
    std::size_t line = 0;
};

struct Entry {
    std::string key;
    std::size_t line;
    Node value;
};

/// A file's content, parsed. `measures` becomes known once [farm] has been read.
struct Document {
    std::string file;
    Node root;
    quantities::Measures measures = quantities::Measures::us;
};

/// Throws BadInput with file and line where the text is not TOML.
Document parse_document(std::string const& text, std::string const& file);

}  // namespace cropful::readers
