# cmake --build build --target package: a Debian package of the program, its manual page, completions, tables and guide. With
# CROPFUL_ALONE it is an archive to unpack anywhere, whose program needs the C and C++ libraries and nothing else.
install(FILES docs/guide.md docs/files.md docs/errors.md docs/model.md docs/bibliography.md docs/changes.md
        DESTINATION share/doc/cropful)

set(CPACK_PACKAGE_NAME cropful)
set(CPACK_PACKAGE_VENDOR "the engineers of cropful")
set(CPACK_PACKAGE_CONTACT "the engineers of cropful <cropful@example.org>")
set(CPACK_PACKAGE_DESCRIPTION_SUMMARY "feed, water and supplements for a hatch of gamebirds")
set(CPACK_INSTALL_CMAKE_PROJECTS "${PROJECT_BINARY_DIR};cropful;Unspecified;/")  # not what other projects build with
set(CPACK_STRIP_FILES ON)
set(CPACK_PACKAGE_FILE_NAME "cropful-${PROJECT_VERSION}-${CMAKE_SYSTEM_PROCESSOR}")
set(CPACK_THREADS 0)

if(CROPFUL_ALONE)
    set(CPACK_GENERATOR TXZ)
else()
    set(CPACK_GENERATOR DEB)
    set(CPACK_PACKAGING_INSTALL_PREFIX /usr)
    set(CPACK_DEBIAN_FILE_NAME DEB-DEFAULT)
    set(CPACK_DEBIAN_PACKAGE_SHLIBDEPS ON)
    set(CPACK_DEBIAN_PACKAGE_SECTION utils)
    set(CPACK_DEBIAN_PACKAGE_DESCRIPTION [[
For growers who hatch quail and other gamebirds by the few hundred: how much
of which feed to have on hand, how long each hopper and drinker lasts before
somebody must be there, and how much supplement to stir into the water. Every
figure is printed with its unit, its source and how far it can be trusted.]])
    set(CPACK_PRE_BUILD_SCRIPTS "${PROJECT_SOURCE_DIR}/.cmake/debian.cmake")
endif()
include(CPack)
