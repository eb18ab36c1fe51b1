# Copies the scripts (.mjs) and package files of FROM to a folder of the build tree and installs there, once for each lock file,
# what they use.   cmake -D FROM=dir -D TO=dir -P npm_ci.cmake
cmake_minimum_required(VERSION 3.25)
find_program(npm npm REQUIRED)
file(GLOB files "${FROM}/*.mjs" "${FROM}/package.json")
file(COPY ${files} DESTINATION "${TO}")
file(READ "${FROM}/package-lock.json" wanted)
set(installed "")
if(EXISTS "${TO}/node_modules/installed-lock.json")
    file(READ "${TO}/node_modules/installed-lock.json" installed)
endif()
if(wanted STREQUAL installed)
    return()
endif()
file(COPY "${FROM}/package-lock.json" DESTINATION "${TO}")
execute_process(COMMAND "${npm}" ci --ignore-scripts --no-audit --no-fund WORKING_DIRECTORY "${TO}"
                COMMAND_ERROR_IS_FATAL ANY)
file(WRITE "${TO}/node_modules/installed-lock.json" "${wanted}")
