# Takes away the files of the last `cmake --install`, and the folders that are then empty.
#   cmake -DMANIFESTS=build -P uninstall.cmake
file(GLOB manifests "${MANIFESTS}/install_manifest*.txt")
if(NOT manifests)
  message(FATAL_ERROR "Nothing was installed from ${MANIFESTS}: it has no install_manifest.txt.")
endif()

set(folders "")
foreach(manifest IN LISTS manifests)
  file(STRINGS "${manifest}" files)
  foreach(file IN LISTS files)
    file(REMOVE "$ENV{DESTDIR}${file}")
    cmake_path(GET file PARENT_PATH folder)
    while(folder MATCHES "fillside|libsim") # folders of its own; what others share stays
      list(APPEND folders "$ENV{DESTDIR}${folder}")
      cmake_path(GET folder PARENT_PATH folder)
    endwhile()
  endforeach()
  file(REMOVE "${manifest}")
endforeach()

list(REMOVE_DUPLICATES folders)
list(SORT folders ORDER DESCENDING) # the innermost first
foreach(folder IN LISTS folders)
  file(GLOB left "${folder}/*")
  if(NOT left AND NOT folder STREQUAL "$ENV{DESTDIR}/")
    file(REMOVE_RECURSE "${folder}")
  endif()
endforeach()
