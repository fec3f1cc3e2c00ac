# What the library is made with, found in one place by the build and by an installed package.
find_package(embree 4 CONFIG QUIET)                     # a newer Embree where there is one
if(NOT embree_FOUND)
  find_package(embree 3.13 CONFIG REQUIRED)             # Debian 12: libembree-dev; target "embree", no namespace
endif()
find_package(Eigen3 3.4 CONFIG REQUIRED)                # libeigen3-dev
find_package(tinyobjloader CONFIG REQUIRED)             # libtinyobjloader-dev (a shared library)
find_package(tomlplusplus CONFIG REQUIRED)              # libtomlplusplus-dev
find_package(fmt 9 CONFIG REQUIRED)                     # libfmt-dev
find_package(nlohmann_json 3.11 CONFIG REQUIRED)        # nlohmann-json3-dev
find_package(OpenEXR 3.1 CONFIG REQUIRED)               # libopenexr-dev
find_package(PNG 1.6 REQUIRED)                          # libpng-dev
find_package(JPEG REQUIRED)                             # libjpeg62-turbo-dev
find_package(NLopt CONFIG REQUIRED NO_CMAKE_PACKAGE_REGISTRY
             PATHS /usr/lib/${CMAKE_LIBRARY_ARCHITECTURE}/cmake/nlopt)  # libnlopt-dev; C only, so NLopt::nlopt
find_package(ZLIB REQUIRED)                              # zlib1g-dev
find_package(meshoptimizer CONFIG REQUIRED)              # libmeshoptimizer-dev
find_package(Threads REQUIRED)
find_package(PkgConfig REQUIRED)
pkg_check_modules(CAIRO REQUIRED IMPORTED_TARGET cairo>=1.16 cairo-ft cairo-pdf cairo-svg freetype2)  # libcairo2-dev
pkg_check_modules(ERFA REQUIRED IMPORTED_TARGET erfa>=2.0)  # liberfa-dev
if(PROJECT_NAME STREQUAL "fillside")                    # embedded by the build; an installed library carries it already
  find_file(DEJAVU_SANS_FILE DejaVuSans.ttf REQUIRED     # fonts-dejavu-core
            PATHS /usr/share/fonts/truetype/dejavu /usr/share/fonts/dejavu /usr/share/fonts/TTF)
endif()
if(NOT TARGET fillside_stb)                             # libstb-dev: headers only; its libstb.so holds every decoder
  find_path(STB_INCLUDE_DIR stb/stb_image_resize.h REQUIRED)
  add_library(fillside_stb INTERFACE IMPORTED GLOBAL)
  set_target_properties(fillside_stb PROPERTIES INTERFACE_SYSTEM_INCLUDE_DIRECTORIES "${STB_INCLUDE_DIR}")
endif()
