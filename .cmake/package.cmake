# cmake --build build --target package: a Debian package of the program, its manual page, completions, tables and guide; with
# CROPFUL_ALONE also an archive to unpack anywhere, whose program needs the C and C++ libraries and nothing else.
install(FILES docs/guide.md docs/files.md docs/errors.md docs/model.md docs/bibliography.md docs/changes.md
        DESTINATION share/doc/cropful)

set(CPACK_PACKAGE_NAME cropful)
set(CPACK_PACKAGE_VENDOR "the engineers of cropful")
set(CPACK_PACKAGE_CONTACT "the engineers of cropful <cropful@example.org>")
set(CPACK_PACKAGE_DESCRIPTION_SUMMARY "feed, water and supplements for a hatch of gamebirds")
set(CPACK_PACKAGE_FILE_NAME "cropful-${PROJECT_VERSION}-${CMAKE_SYSTEM_PROCESSOR}")
set(CPACK_STRIP_FILES ON)
set(CPACK_THREADS 0)
set(CPACK_DEBIAN_FILE_NAME DEB-DEFAULT)
set(CPACK_DEBIAN_PACKAGE_SHLIBDEPS ON)
set(CPACK_DEBIAN_PACKAGE_SECTION utils)
set(CPACK_DEBIAN_PACKAGE_DESCRIPTION [[
For growers who hatch quail and other gamebirds by the few hundred: how much
of which feed to have on hand, how long each hopper and drinker lasts before
somebody must be there, and how much supplement to stir into the water. Every
figure is printed with its unit, its source and how far it can be trusted.]])
set(CPACK_GENERATOR DEB)
if(CROPFUL_ALONE)
    list(APPEND CPACK_GENERATOR TXZ)
endif()
set(CPACK_PROJECT_CONFIG_FILE "${PROJECT_SOURCE_DIR}/.cmake/package_kind.cmake")
include(CPack)
