# Developers and CI: warnings are errors, and every test runs under the address and undefined-behaviour sanitizers.
set(CMAKE_BUILD_TYPE "RelWithDebInfo" CACHE STRING "")
set(CMAKE_CXX_FLAGS_RELWITHDEBINFO "-O1 -g1" CACHE STRING "")
set(CROPFUL_TESTS ON CACHE BOOL "")
set(CROPFUL_STRICT ON CACHE BOOL "")
set(CROPFUL_SANITIZE ON CACHE BOOL "")
