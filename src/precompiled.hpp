// What nearly every file includes, parsed once for all rooms (src/CMakeLists.txt). Files still include what they use.
#include <algorithm>
#include <array>
#include <chrono>
#include <cmath>
#include <functional>
#include <map>
#include <optional>
#include <set>
#include <span>
#include <string>
#include <string_view>
#include <utility>
#include <variant>
#include <vector>

#include "cropful/fault.hpp"
#include "cropful/quantities/make.hpp"
#include "cropful/quantities/text.hpp"
