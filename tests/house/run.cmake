# Holds ROOT to one rule of the house, then shows that the rule can fail.
# cmake -D RULE=name -D ROOT=dir -D SCRATCH=dir [-D PROGRAM=file] [-D VERSION=x.y.z] -P run.cmake
# A rule is <name>.cmake or <name>.py here: it looks at ROOT, names every finding and fails when there is one.
# bad/<name>.cmake calls bad() for trees the rule must refuse and good() for trees it must accept.
cmake_minimum_required(VERSION 3.25)
find_program(python python3 NO_DEFAULT_PATH PATHS /usr/bin)

function(judge root)
    if(EXISTS "${CMAKE_CURRENT_FUNCTION_LIST_DIR}/${RULE}.py")
        set(command ${python} -B "${CMAKE_CURRENT_FUNCTION_LIST_DIR}/${RULE}.py" "${root}" "${PROGRAM}")
    else()
        set(command ${CMAKE_COMMAND} -D "ROOT=${root}" -D "PROGRAM=${PROGRAM}" -D "VERSION=${VERSION}"
            -P "${CMAKE_CURRENT_FUNCTION_LIST_DIR}/${RULE}.cmake")
    endif()
    execute_process(COMMAND ${command} RESULT_VARIABLE status OUTPUT_VARIABLE out ERROR_VARIABLE err)
    string(REGEX REPLACE "[ \n]+" " " words "${out}${err}")  # CMake folds long messages
    set(status "${status}" PARENT_SCOPE)
    set(said "${out}${err}" PARENT_SCOPE)
    set(words "${words}" PARENT_SCOPE)
endfunction()

# A fresh tree holding one file; `base`, when set, is a folder to start from.
function(plant file text)
    file(REMOVE_RECURSE "${SCRATCH}")
    file(MAKE_DIRECTORY "${SCRATCH}")
    if(base)
        file(COPY "${base}/" DESTINATION "${SCRATCH}")
    endif()
    file(WRITE "${SCRATCH}/${file}" "${text}")
endfunction()

function(bad file text finding)
    plant("${file}" "${text}")
    judge("${SCRATCH}")
    string(FIND "${words}" "${finding}" found)
    if(status STREQUAL "0" OR found EQUAL -1)
        message(SEND_ERROR "${RULE} did not find \"${finding}\" in ${file}; it ended with ${status} and said:\n${said}")
    endif()
    math(EXPR shown "${shown} + 1")
    set(shown ${shown} PARENT_SCOPE)
endfunction()

function(good file text)
    plant("${file}" "${text}")
    judge("${SCRATCH}")
    if(NOT status STREQUAL "0")
        message(SEND_ERROR "${RULE} refused ${file}, which is sound:\n${said}")
    endif()
endfunction()

set(shown 0)
include("${CMAKE_CURRENT_LIST_DIR}/bad/${RULE}.cmake")
if(shown EQUAL 0)
    message(SEND_ERROR "bad/${RULE}.cmake shows no finding")
endif()
file(REMOVE_RECURSE "${SCRATCH}")
judge("${ROOT}")
message("${said}")
if(NOT status STREQUAL "0")
    message(FATAL_ERROR "${RULE}: see above")
endif()
