#pragma once

#include <cstddef>
#include <optional>
#include <string_view>

namespace cropful::readers {

/// The line in which a TOML text first goes deeper than `most`: the parts of its table's header, of the dotted keys and
/// of the tables and lists around a value count together, over as many lines as they take. Absent: nowhere. What is no
/// TOML may be counted wrong from the first fault on.
std::optional<std::size_t> too_deep(std::string_view text, std::size_t most);

}  // namespace cropful::readers
