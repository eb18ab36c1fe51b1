# Developers and CI: warnings are errors, and the tests run under the address and undefined-behaviour sanitizers, but for those
# that compare many figures, which run the released program as well (tests/CMakeLists.txt). -Og compiles in half the time of -O1.
set(CMAKE_BUILD_TYPE "RelWithDebInfo" CACHE STRING "")
# g++ 12 sees overflows in "text" + std::string that are none (GCC bug 105651): here they would be errors.
set(CMAKE_CXX_FLAGS_RELWITHDEBINFO "-Og -g1 -Wno-stringop-overflow -Wno-stringop-overread -Wno-array-bounds" CACHE STRING "")
set(CROPFUL_TESTS ON CACHE BOOL "")
set(CROPFUL_STRICT ON CACHE BOOL "")
set(CROPFUL_SANITIZE ON CACHE BOOL "")
set(CROPFUL_PAGE ON CACHE BOOL "")
# Half as many at a time as in a release: a change compiles less anew.
set(CMAKE_UNITY_BUILD_BATCH_SIZE 12 CACHE STRING "")
