# The libraries ALONE (a list of files) ask for no database, no solver and no file system; OTHER is one that does, and must be
# noticed. cmake -D ALONE=a;b -D OTHER=file -D NM=nm -P engine_alone.cmake
cmake_minimum_required(VERSION 3.25)
function(asked_for library result)
    execute_process(COMMAND ${NM} --undefined-only --demangle "${library}" OUTPUT_VARIABLE symbols COMMAND_ERROR_IS_FATAL ANY)
    string(REGEX MATCHALL "[^\n]*(sqlite3_|ClpSimplex|std::filesystem|basic_i?o?fstream|basic_filebuf| fopen| open(64)?\n)[^\n]*"
           found "${symbols}")
    set(${result} "${found}" PARENT_SCOPE)
endfunction()

foreach(library IN LISTS ALONE)
    asked_for("${library}" found)
    if(found)
        message(SEND_ERROR "${library} asks for ${found}")
    endif()
endforeach()
asked_for("${OTHER}" found)
if(NOT found)
    message(SEND_ERROR "nothing was noticed in ${OTHER}")
endif()
