# Installs BUILD below STAGE, then configures, builds and runs the consumer against that copy alone: by CMake, and by the
# compiler and pkg-config; then the copy is taken away again, and nothing of it may be left.
file(REMOVE_RECURSE "${STAGE}")

function(step)
  execute_process(COMMAND ${ARGN} RESULT_VARIABLE status OUTPUT_VARIABLE said ERROR_VARIABLE said)
  if(NOT status EQUAL 0)
    string(REPLACE ";" " " command "${ARGN}")
    message(FATAL_ERROR "${command}\nended with ${status}:\n${said}")
  endif()
endfunction()

step(${CMAKE_COMMAND} --install ${BUILD} --prefix ${STAGE}/prefix --config "${CONFIG}")
step(${CMAKE_COMMAND} -S ${CONSUMER} -B ${STAGE}/build -G ${GENERATOR} -DCMAKE_BUILD_TYPE=${CONFIG}
     -DCMAKE_PREFIX_PATH=${STAGE}/prefix -DCMAKE_FIND_USE_PACKAGE_REGISTRY=OFF -DCMAKE_CXX_COMPILER=${COMPILER}
     -DCMAKE_CXX_COMPILER_LAUNCHER=${LAUNCHER} -DCMAKE_CXX_FLAGS=${FLAGS})
step(${CMAKE_COMMAND} --build ${STAGE}/build --config "${CONFIG}")
foreach(example main boards_compared own_scene)
  step(${STAGE}/build/${example})
endforeach()

find_program(PKG_CONFIG pkg-config REQUIRED)
set(ENV{PKG_CONFIG_PATH} "${STAGE}/prefix/${LIBDIR}/pkgconfig")
execute_process(COMMAND ${PKG_CONFIG} --cflags --libs fillside OUTPUT_VARIABLE words COMMAND_ERROR_IS_FATAL ANY)
separate_arguments(words UNIX_COMMAND "${words}")
separate_arguments(flags UNIX_COMMAND "${FLAGS}")
step(${COMPILER} -std=c++20 ${flags} ${CONSUMER}/main.cpp -o ${STAGE}/by_pkg_config ${words}
     -Wl,-rpath,${STAGE}/prefix/${LIBDIR})
step(${STAGE}/by_pkg_config)
step(${STAGE}/prefix/bin/fillside --version)

step(${CMAKE_COMMAND} --build ${BUILD} --target uninstall --config "${CONFIG}")
file(GLOB_RECURSE left "${STAGE}/prefix/*")
if(left OR EXISTS "${STAGE}/prefix/share/fillside" OR EXISTS "${STAGE}/prefix/include/fillside")
  message(FATAL_ERROR "not taken away: ${left}")
endif()
