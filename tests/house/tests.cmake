# Every file in house is a rule but these four, and a rule without a file in bad/ fails.
file(GLOB rules RELATIVE "${CMAKE_CURRENT_SOURCE_DIR}/house" CONFIGURE_DEPENDS house/*.cmake house/*.py)
list(REMOVE_ITEM rules run.cmake findings.cmake tests.cmake program_help.py)
find_program(clang_format clang-format)
if(NOT clang_format)
    message(STATUS "No clang-format: house.formatting is left out")
    list(REMOVE_ITEM rules formatting.cmake)
endif()
foreach(rule IN LISTS rules)
    cmake_path(GET rule STEM rule)
    add_test(NAME house.${rule}
             COMMAND ${CMAKE_COMMAND} -D RULE=${rule} -D ROOT=${PROJECT_SOURCE_DIR} -D PROGRAM=${released}
                     -D SCRATCH=${CMAKE_CURRENT_BINARY_DIR}/house/${rule}
                     -P ${CMAKE_CURRENT_SOURCE_DIR}/house/run.cmake)
    quick(house.${rule})
endforeach()
