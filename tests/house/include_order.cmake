# Includes go one way: each room sees itself and the rooms before it. Some see less: what is stored and read needs no engine,
# what is read no files, and what is reported neither.
# version is part of fault.
include("${CMAKE_CURRENT_LIST_DIR}/findings.cmake")
set(rooms fault quantities domain curves rations engine blends store readers reports commands page main)

set(apart "store rations" "store engine" "store blends" "readers engine" "readers blends" "readers store"
    "reports store" "reports readers")

# "include/cropful/domain/farm.hpp", "src/domain/farm.cpp", "domain/farm.hpp" and "fault.hpp" as a room.
function(room_of path result)
    string(REGEX REPLACE "^(include/cropful|src|cropful)/" "" path "${path}")
    string(REGEX MATCH "^[a-z_]+" room "${path}")
    string(REGEX REPLACE "^version$" "fault" room "${room}")
    set(${result} "${room}" PARENT_SCOPE)
endfunction()

function(judge file included)
    room_of("${file}" here)
    room_of("${included}" there)
    list(FIND rooms "${here}" rank)
    list(FIND rooms "${there}" other)
    if(rank EQUAL -1)
        finding("${file}: ${here} is no room")
    elseif(included MATCHES "\\.\\./")
        finding("${file}: ${included} leaves its room by ..")
    elseif(other GREATER rank OR "${here} ${there}" IN_LIST apart)
        finding("${file}: ${here} must not include ${there} (${included})")
    elseif(other EQUAL -1)
        finding("${file}: ${included} is in no room")
    endif()
endfunction()

sources(files)
list(LENGTH files count)
looked_at(${count})
foreach(file IN LISTS files)
    file(STRINGS "${ROOT}/${file}" lines REGEX "^[ \t]*#[ \t]*include[ \t]*\"")
    foreach(line IN LISTS lines)
        string(REGEX REPLACE "^[^\"]*\"([^\"]*)\".*" "\\1" included "${line}")
        judge("${file}" "${included}")
    endforeach()
endforeach()
report()
