#pragma once

#include <string_view>

namespace cropful {

/// The program's version, as the build states it: "0.1.0".
std::string_view version();

}  // namespace cropful
