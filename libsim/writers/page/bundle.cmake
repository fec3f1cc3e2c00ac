# Makes the page's style and scripts in the build tree: page.css, report.js, report.css, room.js, notices.txt, and
# the SHA-256 of each for the page's content policy.
#   cmake -DSOURCE=... -DOUT=... -DNPM=... -DNODE=... -P bundle.cmake
# Without npm, or where it cannot fetch, the scripts are empty: the page then shows pictures and tables only.
set(made report.js report.css room.js slider.css notices.txt)
file(MAKE_DIRECTORY "${OUT}")
file(COPY_FILE "${SOURCE}/page.css" "${OUT}/page.css" ONLY_IF_DIFFERENT)

set(bundled FALSE)
if(NPM AND NODE)
  file(SHA256 "${SOURCE}/package-lock.json" wanted)
  set(have "")
  if(EXISTS "${OUT}/installed.txt")
    file(READ "${OUT}/installed.txt" have)
  endif()
  set(status 0)
  if(NOT have STREQUAL wanted)
    file(COPY "${SOURCE}/package.json" "${SOURCE}/package-lock.json" DESTINATION "${OUT}")
    execute_process(COMMAND "${NPM}" ci --ignore-scripts --no-audit --no-fund --loglevel=error
                    WORKING_DIRECTORY "${OUT}" RESULT_VARIABLE status OUTPUT_QUIET ERROR_VARIABLE fault)
    if(status EQUAL 0)
      file(WRITE "${OUT}/installed.txt" "${wanted}")
    endif()
  endif()
  if(status EQUAL 0)
    execute_process(COMMAND "${NODE}" "${SOURCE}/bundle.mjs" "${SOURCE}" "${OUT}" RESULT_VARIABLE status
                    ERROR_VARIABLE fault)
    if(NOT status EQUAL 0)
      message(FATAL_ERROR "The page's scripts could not be bundled:\n${fault}")
    endif()
    set(bundled TRUE)
  else()
    message(WARNING "npm could not fetch the page's libraries; the report page is made without scripts. To try "
                    "again, delete ${OUT}.\n${fault}")
  endif()
endif()

if(NOT bundled)
  foreach(name IN LISTS made)
    file(WRITE "${OUT}/${name}" "")
  endforeach()
endif()
foreach(name IN ITEMS page.css report.js report.css room.js slider.css)
  file(SHA256 "${OUT}/${name}" hash)
  file(WRITE "${OUT}/${name}.sha256" "${hash}")
endforeach()
