#pragma once

#include <span>

namespace cropful::readers {

/// A file of rations/ as the build put it into the program; `name` such as "birds/bobwhite.toml".
struct BuiltIn {
    char const* name;
    char const* text;
};

/// In the order of their names.
std::span<BuiltIn const> built_in();

}  // namespace cropful::readers
