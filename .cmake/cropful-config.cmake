# find_package(cropful): the targets cropful::engine and cropful::readers.
include(CMakeFindDependencyMacro)
find_dependency(Boost 1.74)
find_dependency(fmt 9)
include("${CMAKE_CURRENT_LIST_DIR}/cropful-targets.cmake")
