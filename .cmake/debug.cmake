# Shorter compiler messages for quantity mistakes (docs/errors.md).
set(CMAKE_BUILD_TYPE "Debug" CACHE STRING "")
set(CMAKE_CXX_FLAGS "-fno-pretty-templates -fmax-errors=1" CACHE STRING "")
set(CROPFUL_TESTS ON CACHE BOOL "")
