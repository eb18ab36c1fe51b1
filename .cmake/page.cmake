# The page for telephones: target `page` makes page.html beside the program (DEVELOPERS.md). It is this same program, compiled
# a second time by emscripten, with the screens of src/page around it.
include(ExternalProject)
find_program(EMXX em++)
find_program(NPM npm)
find_program(NODE node)
if(NOT EMXX OR NOT NPM OR NOT NODE)
    message(STATUS "No em++, npm or node: the phone page is left out (.ci/setup page installs them)")
    set(CROPFUL_PAGE OFF)
    return()
endif()
set(page_work "${PROJECT_BINARY_DIR}/page-work")
set(page_scripts "${PROJECT_SOURCE_DIR}/.cmake/page")
set(page_toolchain "/usr/share/emscripten/cmake/Modules/Platform/Emscripten.cmake")
# Debian's emscripten finds its JavaScript packages there.
set(page_env ${CMAKE_COMMAND} -E env NODE_PATH=/usr/share/nodejs)

# Third parties as objects, which no build folder loses: below the user's cache, by what they are made of.
execute_process(COMMAND "${EMXX}" --version OUTPUT_VARIABLE page_key COMMAND_ERROR_IS_FATAL ANY)
foreach(file CMakeLists.txt sources.sh parts.cmake)
    file(SHA256 "${page_scripts}/${file}" sum)
    string(APPEND page_key ${sum})
endforeach()
string(SHA256 page_key "${page_key}")
string(SUBSTRING ${page_key} 0 16 page_key)
set(page_cache "$ENV{XDG_CACHE_HOME}")
if(NOT page_cache)
    set(page_cache "$ENV{HOME}/.cache")
endif()
set(page_parts "${page_cache}/cropful/page-${page_key}")
add_custom_target(page_parts
    COMMAND ${page_env} ${CMAKE_COMMAND} -D PARTS=${page_parts} -D SCRATCH=${page_work}/parts
            -D TOOLCHAIN=${page_toolchain} -P ${page_scripts}/parts.cmake
    VERBATIM COMMENT "Third parties of the phone page")

# Libraries that are headers only, each by a link: /usr/include itself would bring the machine's C library.
find_path(PAGE_BOOST boost/version.hpp REQUIRED)
find_path(PAGE_EIGEN Eigen/Core PATH_SUFFIXES eigen3 REQUIRED)
find_path(PAGE_FMT fmt/format.h REQUIRED)
find_path(PAGE_FAST_FLOAT fast_float/fast_float.h REQUIRED)
find_path(PAGE_CLI CLI/CLI.hpp REQUIRED)
find_path(PAGE_TOML toml++/toml.h REQUIRED)
find_path(PAGE_NLOHMANN nlohmann/json.hpp REQUIRED)
file(MAKE_DIRECTORY "${page_work}/headers")
foreach(link ${PAGE_BOOST}/boost ${PAGE_EIGEN}/Eigen ${PAGE_FMT}/fmt ${PAGE_FAST_FLOAT}/fast_float ${PAGE_CLI}/CLI
        ${PAGE_TOML}/toml++ ${PAGE_NLOHMANN}/nlohmann)
    cmake_path(GET link FILENAME name)
    file(CREATE_LINK "${link}" "${page_work}/headers/${name}" SYMBOLIC)
endforeach()

ExternalProject_Add(page_program
    DEPENDS page_parts
    SOURCE_DIR "${PROJECT_SOURCE_DIR}" BINARY_DIR "${page_work}/program" PREFIX "${page_work}/program-steps"
    CONFIGURE_COMMAND ${page_env} ${CMAKE_COMMAND} -S "${PROJECT_SOURCE_DIR}" -B "${page_work}/program" -G Ninja
                      # not -Os: with it emscripten inlines nothing, and arrays take twenty times as long
                      -D CMAKE_TOOLCHAIN_FILE=${page_toolchain} -D CMAKE_BUILD_TYPE=Release
                      "-D CMAKE_CXX_FLAGS=-fwasm-exceptions -msimd128"
                      -D CROPFUL_HEADERS=${page_work}/headers -D CROPFUL_PARTS=${page_parts}
    BUILD_COMMAND ${page_env} ${CMAKE_COMMAND} --build "${page_work}/program" --target cropful
    BUILD_ALWAYS ON INSTALL_COMMAND ""
    BUILD_BYPRODUCTS "${page_work}/program/src/cropful.js")

# The tools and small libraries of src/page/package.json, by its lock file.
add_custom_target(page_packages
    COMMAND ${CMAKE_COMMAND} -D "FROM=${PROJECT_SOURCE_DIR}/src/page" -D "TO=${page_work}/packages"
            -P "${PROJECT_SOURCE_DIR}/.cmake/npm_ci.cmake"
    VERBATIM COMMENT "npm packages of the phone page")

# page/ beside the program: page.html, and what a site has around it (`cropful page -o FOLDER/`).
set(page_made "${PROJECT_BINARY_DIR}/page")
file(GLOB_RECURSE page_sources CONFIGURE_DEPENDS "${PROJECT_SOURCE_DIR}/src/page/*")
file(GLOB page_site CONFIGURE_DEPENDS "${PROJECT_SOURCE_DIR}/src/page/site/*")
set(page_program "${page_work}/program/src/cropful.js")
add_custom_command(OUTPUT "${page_made}/page.html"
    COMMAND ${CMAKE_COMMAND} -E make_directory "${page_made}"
    COMMAND ${CMAKE_COMMAND} -E copy_if_different ${page_site} "${page_made}"
    COMMAND "${NODE}" "${page_scripts}/icons.mjs" "${page_made}"
    COMMAND "${NODE}" "${page_scripts}/assemble.mjs" "${PROJECT_SOURCE_DIR}/src/page" "${page_work}/program/src"
            "${page_work}/packages/node_modules" "${page_made}/page.html"
    DEPENDS page_program page_packages "${page_program}" ${page_sources} "${page_scripts}/icons.mjs" "${page_scripts}/assemble.mjs"
    VERBATIM COMMENT "Putting page.html together")
add_custom_target(page ALL DEPENDS "${page_made}/page.html")
install(DIRECTORY "${page_made}" DESTINATION share/cropful)
