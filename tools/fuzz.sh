#!/bin/sh
# Builds the fuzzers of tests/fuzz with clang (into build/fuzz) and runs each from its seeds for a few seconds.
#   sh tools/fuzz.sh [SECONDS [HARNESS ...]]      # 5 seconds of each by default
# Prints a table; a finding stops it with status 1 and leaves the input in build/fuzz/findings.
set -eu
cd "$(dirname "$0")/.."
seconds=${1:-5}
[ $# -eq 0 ] || shift
[ $# -gt 0 ] || set -- $(ls tests/fuzz/seeds)

if ! command -v clang++ >/dev/null 2>&1; then
  echo "fuzz: there is no clang++ here; Debian calls it clang, with libclang-rt-14-dev" >&2
  exit 2
fi
generator=
if command -v ninja >/dev/null 2>&1; then generator=-GNinja; fi
quietly() {
  if ! log=$("$@" 2>&1); then
    printf '%s\n' "$log" >&2
    exit 1
  fi
}
[ -e build/fuzz/CMakeCache.txt ] || quietly cmake -S . -B build/fuzz $generator -DCMAKE_BUILD_TYPE=None \
  -DCMAKE_CXX_COMPILER=clang++ -DFILLSIDE_FUZZ=ON -DFILLSIDE_PRECOMPILED=ON -DFILLSIDE_PAGE_SCRIPTS=OFF -DFILLSIDE_WARNINGS_AS_ERRORS=ON
quietly cmake --build build/fuzz --target fillside_fuzzers -j "${CMAKE_BUILD_PARALLEL_LEVEL:-2}"

# Inputs go through small files: in memory where there is a place for them.
if [ -d /dev/shm ] && [ -w /dev/shm ]; then TMPDIR=/dev/shm && export TMPDIR; fi
mkdir -p build/fuzz/findings
status=0
printf '%-12s %10s %7s %7s %9s\n' harness executions edges corpus findings
for harness in "$@"; do
  seeds=tests/fuzz/seeds/$harness
  log=build/fuzz/$harness.log
  grown=build/fuzz/corpus/$harness # stays, so that a later run begins where this one ended
  mkdir -p "$grown"
  found=0
  # Looking for leaks after each input would take most of the time: tools/gates.sh looks for them in other work.
  build/fuzz/tests/fuzz/fuzz_"$harness" -seed=7 -max_total_time="$seconds" -timeout=20 -rss_limit_mb=2500 \
    -max_len=8192 -detect_leaks=0 -print_final_stats=1 -artifact_prefix=build/fuzz/findings/"$harness"- \
    "$grown" "$seeds" >"$log" 2>&1 || found=1
  runs=$(sed -n 's/^stat::number_of_executed_units: *//p' "$log")
  last=$(grep -E '^#[0-9]+.* cov: ' "$log" | tail -n 1)
  edges=$(printf '%s' "$last" | sed -n 's/.* cov: \([0-9]*\).*/\1/p')
  corpus=$(printf '%s' "$last" | sed -n 's/.* corp: \([0-9]*\).*/\1/p')
  printf '%-12s %10s %7s %7s %9s\n' "$harness" "${runs:-0}" "${edges:-0}" "${corpus:-0}" "$found"
  if [ "$found" -ne 0 ]; then
    status=1
    grep -E 'what\(\)|ERROR|runtime error|Test unit written' "$log" >&2 || tail -n 20 "$log" >&2
  fi
done
exit "$status"
