#!/bin/sh
# Two command lines in turn, A B B A A B ..., start to exit: what a change does to what a person waits for.
#   sh tests/bench/paired.sh [-n PAIRS] 'COMMAND A' 'COMMAND B'
#   sh tests/bench/paired.sh 'old/tools/fillside meter scenes/citrus_tart.toml -q' \
#                            'build/tools/fillside meter scenes/citrus_tart.toml -q'
# Prints medians of clock, processor time and peak memory, and the median over the pairs of B / A. Needs bash, and
# the package `time` for the memory. What the commands print is thrown away.
set -eu

pairs=7
if [ "${1:-}" = -n ]; then
  pairs=$2
  shift 2
fi
if [ $# -ne 2 ]; then
  sed -n '2,7s/^# \{0,1\}//p' "$0" >&2
  exit 2
fi

folder=$(mktemp -d)
trap 'rm -rf "$folder"' EXIT

# Appends "clock processors memory" of one run to a file.
run_once() { # COMMAND FILE
  status=0
  if [ -x /usr/bin/time ]; then
    /usr/bin/time -o "$folder/time" -f '%e %U %S %M' sh -c "$1" >/dev/null 2>"$folder/said" || status=$?
    awk 'NF == 4 { print $1, $2 + $3, $4 / 1024 }' "$folder/time" >>"$2"
  else
    bash -c 'TIMEFORMAT="%3R %3U %3S"; { time sh -c "$1" >/dev/null 2>"$2"; } 2>"$3"' - \
      "$1" "$folder/said" "$folder/time" || status=$?
    awk '{ print $1, $2 + $3, 0 }' "$folder/time" >>"$2"
  fi
  if [ "$status" -ne 0 ]; then
    echo "Status $status from: $1" >&2
    cat "$folder/said" >&2
    exit 1
  fi
}

median() { sort -g | awk '{ v[NR] = $1 } END { print NR % 2 ? v[(NR + 1) / 2] : (v[NR / 2] + v[NR / 2 + 1]) / 2 }'; }
column() { awk -v c="$1" '{ print $c }' "$2"; }

run_once "$1" "$folder/warm" # files in the cache for both
run_once "$2" "$folder/warm"
pair=0
while [ "$pair" -lt "$pairs" ]; do
  if [ $((pair % 2)) -eq 0 ]; then
    run_once "$1" "$folder/a"
    run_once "$2" "$folder/b"
  else
    run_once "$2" "$folder/b"
    run_once "$1" "$folder/a"
  fi
  pair=$((pair + 1))
done

echo "A: $1"
echo "B: $2"
echo
echo "| $pairs pairs | A | B | B / A |"
echo "|---|---|---|---|"
paste -d ' ' "$folder/a" "$folder/b" >"$folder/both"
number=1
for name in 'clock, s' 'processors, s' 'peak memory, MB'; do
  ratio=$(awk -v c="$number" '$c > 0 { print $(c + 3) / $c }' "$folder/both" | median)
  printf '| %s | %.3f | %.3f | %s |\n' "$name" "$(column "$number" "$folder/a" | median)" \
    "$(column "$number" "$folder/b" | median)" "${ratio:--}"
  number=$((number + 1))
done
