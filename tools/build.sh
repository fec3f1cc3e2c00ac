#!/bin/sh
# Configures and builds everything into build/. Run it again at any time: only what changed is made.
# CI=true or FILLSIDE_STRICT=1 stops at compiler warnings. CMAKE_BUILD_PARALLEL_LEVEL sets the number of jobs.
set -eu
cd "$(dirname "$0")/.."

strict=OFF
case "${CI:-}:${FILLSIDE_STRICT:-}" in true:* | 1:* | *:1) strict=ON ;; esac

if [ ! -e build/CMakeCache.txt ]; then
  set --
  if command -v ninja >/dev/null 2>&1; then set -- "$@" -G Ninja; fi
  if command -v ccache >/dev/null 2>&1; then set -- "$@" -DCMAKE_CXX_COMPILER_LAUNCHER=ccache; fi
  set -- "$@" -DCMAKE_BUILD_TYPE=Release
else
  set --
fi

# As many jobs as there are processors, but no more than memory holds: a heavy file takes about 1 GB to compile.
if [ -z "${CMAKE_BUILD_PARALLEL_LEVEL:-}" ]; then
  jobs=$(nproc 2>/dev/null || echo 2)
  fit=$(awk '/^MemAvailable:/ { print int($2 / 1200000) }' /proc/meminfo 2>/dev/null || true)
  if [ -n "$fit" ] && [ "$fit" -lt "$jobs" ]; then jobs=$fit; fi
  if [ "$jobs" -lt 1 ]; then jobs=1; fi
  export CMAKE_BUILD_PARALLEL_LEVEL="$jobs"
fi

if ! log=$(cmake -S . -B build "$@" -DFILLSIDE_WARNINGS_AS_ERRORS="$strict" 2>&1); then
  printf '%s\n' "$log" >&2
  exit 1
fi
cmake --build build
