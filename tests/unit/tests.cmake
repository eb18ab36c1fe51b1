# Tests in C++, one program a room, and what the types promise.
file(GLOB rooms RELATIVE "${CMAKE_CURRENT_SOURCE_DIR}/unit" CONFIGURE_DEPENDS unit/*)
list(REMOVE_ITEM rooms tests.cmake)
foreach(room IN LISTS rooms)
    catch_tests(unit.${room} "${CMAKE_CURRENT_SOURCE_DIR}/unit/${room}" cropful_${room} nlohmann_json::nlohmann_json)
    quick(unit.${room})
endforeach()
set(everything cropful_blends cropful_commands nlohmann_json::nlohmann_json)
catch_tests(laws "${CMAKE_CURRENT_SOURCE_DIR}/laws" ${everything})
catch_tests(tables "${CMAKE_CURRENT_SOURCE_DIR}/tables" ${everything})
quick(tables)

# The engine and the rooms below it, and what reads: without SQLite, Clp and a file system.
set(alone fault quantities domain curves rations engine readers)
list(TRANSFORM alone REPLACE "(.+)" "$<TARGET_FILE:cropful_\\1>")
foreach(other store blends)
    add_test(NAME engine_alone.${other}
             COMMAND ${CMAKE_COMMAND} -D "ALONE=${alone}" -D OTHER=$<TARGET_FILE:cropful_${other}> -D NM=${CMAKE_NM}
                     -P ${support}/engine_alone.cmake)
    quick(engine_alone.${other})
endforeach()

# A program of another project against the installed package.
set(built "${PROJECT_BINARY_DIR}")
if(CROPFUL_SANITIZE)
    set(built "${PROJECT_BINARY_DIR}/released")
endif()
add_test(NAME postinstall
         COMMAND ${CMAKE_COMMAND} -D BUILT=${built} -D SOURCE=${CMAKE_CURRENT_SOURCE_DIR}/postinstall
                 -D SCRATCH=${CMAKE_CURRENT_BINARY_DIR}/postinstall -D CXX=${CMAKE_CXX_COMPILER}
                 -P ${CMAKE_CURRENT_SOURCE_DIR}/postinstall/run.cmake)

# What the types promise: it is enough that these compile.
file(GLOB statics CONFIGURE_DEPENDS static/*.cpp)
if(statics)
    add_library(tests_static OBJECT ${statics})
    target_link_libraries(tests_static PRIVATE cropful_settings)
endif()

file(GLOB deeds CONFIGURE_DEPENDS forbidden/*.cpp)
foreach(deed IN LISTS deeds)
    cmake_path(GET deed STEM name)
    add_test(NAME forbidden.${name}
             COMMAND ${CMAKE_COMMAND} -D CXX=${CMAKE_CXX_COMPILER} -D INCLUDE=${PROJECT_SOURCE_DIR}/include
                     -D DEED=${deed} -P ${support}/forbidden.cmake)
    quick(forbidden.${name})
endforeach()
