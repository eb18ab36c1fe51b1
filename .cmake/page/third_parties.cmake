# In the build for a browser: what find_package finds elsewhere. CROPFUL_HEADERS holds links to libraries that are headers
# only, CROPFUL_PARTS what .cmake/page has built.
foreach(headers Boost::headers Eigen3::Eigen fmt::fmt CLI11::CLI11 nlohmann_json::nlohmann_json)
    add_library(${headers} INTERFACE IMPORTED)
    target_include_directories(${headers} SYSTEM INTERFACE "${CROPFUL_HEADERS}")
endforeach()
target_compile_definitions(fmt::fmt INTERFACE FMT_HEADER_ONLY)
add_library(SQLite::SQLite3 STATIC IMPORTED)
set_target_properties(SQLite::SQLite3 PROPERTIES IMPORTED_LOCATION "${CROPFUL_PARTS}/libparts.a"
                      INTERFACE_INCLUDE_DIRECTORIES "${CROPFUL_PARTS}/include")
set(CLP_HEADERS "${CROPFUL_PARTS}/include")
set(CLP_LIBRARY "${CROPFUL_PARTS}/libparts.a")
set(COIN_UTILS_LIBRARY "")
