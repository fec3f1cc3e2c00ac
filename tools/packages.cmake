# Debian packages by `cpack --config build/CPackConfig.cmake`, and `cmake --build build --target uninstall`.
set(CPACK_GENERATOR DEB)
set(CPACK_PACKAGE_CONTACT "the fillside team <fillside@localhost>")
set(CPACK_PACKAGING_INSTALL_PREFIX /usr)
set(CPACK_STRIP_FILES ON)
set(CPACK_OUTPUT_FILE_PREFIX "${PROJECT_BINARY_DIR}/packages")
set(CPACK_COMPONENTS_ALL program development)
set(CPACK_DEB_COMPONENT_INSTALL ON)
set(CPACK_DEBIAN_FILE_NAME DEB-DEFAULT)
set(CPACK_DEBIAN_PACKAGE_SHLIBDEPS ON) # what the program is linked with, by dpkg-shlibdeps
set(CPACK_DEBIAN_PROGRAM_PACKAGE_NAME fillside)
set(CPACK_DEBIAN_PROGRAM_PACKAGE_SECTION graphics)
set(CPACK_COMPONENT_PROGRAM_DESCRIPTION
    "The command line, its manual, completion for shells, a schema for editors, and scenes.")
set(CPACK_DEBIAN_DEVELOPMENT_PACKAGE_NAME libfillside-dev)
set(CPACK_DEBIAN_DEVELOPMENT_PACKAGE_SECTION libdevel)
set(CPACK_COMPONENT_DEVELOPMENT_DESCRIPTION
    "The library: headers, the library, and what CMake and pkg-config need to find it.")
set(CPACK_DEBIAN_DEVELOPMENT_PACKAGE_DEPENDS "libeigen3-dev")
if(BUILD_SHARED_LIBS)
  string(APPEND CPACK_DEBIAN_DEVELOPMENT_PACKAGE_DEPENDS ", fillside (= ${PROJECT_VERSION})")
else()
  string(APPEND CPACK_DEBIAN_DEVELOPMENT_PACKAGE_DEPENDS ", libembree-dev, libtinyobjloader-dev, libtomlplusplus-dev, "
         "libfmt-dev, nlohmann-json3-dev, libopenexr-dev, libpng-dev, libjpeg62-turbo-dev, libnlopt-dev, libcairo2-dev, "
         "libfreetype-dev, liberfa-dev, libmeshoptimizer-dev, libstb-dev, zlib1g-dev")
endif()
include(CPack)

add_custom_target(uninstall COMMAND ${CMAKE_COMMAND} "-DMANIFESTS=${PROJECT_BINARY_DIR}"
                  -P "${CMAKE_CURRENT_LIST_DIR}/uninstall.cmake" COMMENT "Taking away what was installed")
