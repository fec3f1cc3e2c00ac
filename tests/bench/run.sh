#!/bin/sh
# Builds into build/bench and prints the table of goals in Markdown.
#   sh tests/bench/run.sh             the goals (some minutes)
#   sh tests/bench/run.sh --details   errors at the meter points, and what the cost grows with
#   sh tests/bench/run.sh --long      z against the textbook walk of 16 million samples (an hour of processors)
#   sh tests/bench/run.sh --all       everything, and the instruction counts
# Other words go to Google Benchmark: sh tests/bench/run.sh --benchmark_filter=Rays
set -eu
cd "$(dirname "$0")/../.."

launcher=
if command -v ccache >/dev/null 2>&1; then launcher=-DCMAKE_CXX_COMPILER_LAUNCHER=ccache; fi
generator=
if [ ! -e build/bench/CMakeCache.txt ] && command -v ninja >/dev/null 2>&1; then generator='-G Ninja'; fi
log=$(mktemp)
trap 'rm -f "$log"' EXIT
if ! { cmake -S . -B build/bench $generator $launcher -DCMAKE_BUILD_TYPE=Release -DFILLSIDE_BENCHMARKS=ON &&
  cmake --build build/bench --target fillside_bench --parallel "$(nproc 2>/dev/null || echo 2)"; } >"$log" 2>&1; then
  cat "$log" >&2
  exit 1
fi

bench=build/bench/tests/bench/fillside_bench
case "${1:-}" in
  '') exec "$bench" goals ;;
  --details) exec "$bench" details ;;
  --long) exec "$bench" agreement ;;
  --all)
    "$bench" goals
    "$bench" details
    "$bench" agreement
    echo
    sh tests/bench/instructions.sh
    ;;
  *) exec "$bench" "$@" ;;
esac
