# Installs BUILD below STAGE, then configures, builds and runs the consumer against that copy alone.
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
