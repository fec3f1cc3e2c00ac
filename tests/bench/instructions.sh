#!/bin/sh
# Instructions of the innermost loop, counted by callgrind: the same on every run of the same build, however busy
# the machine. Compares with the figures kept in instructions.txt; with --keep it writes them anew.
#   sh tests/bench/instructions.sh [--keep] [BENCH PROGRAM]
set -eu
cd "$(dirname "$0")/../.."

keep=no
if [ "${1:-}" = --keep ]; then
  keep=yes
  shift
fi
bench=${1:-build/bench/tests/bench/fillside_bench}
kept=tests/bench/instructions.txt
samples=$((4 * 16 * 64)) # of hot_loop.cpp

if ! command -v valgrind >/dev/null 2>&1; then
  echo "valgrind is not installed (Debian: apt-get install valgrind)." >&2
  exit 1
fi
folder=$(mktemp -d)
trap 'rm -rf "$folder"' EXIT
if ! valgrind --tool=callgrind --collect-atstart=no '--toggle-collect=fillside::measure(*' \
  --callgrind-out-file="$folder/out" "$bench" hot-loop >"$folder/said" 2>&1; then
  cat "$folder/said" >&2
  exit 1
fi
callgrind_annotate --threshold=100 "$folder/out" >"$folder/annotated"
total=$(awk '/PROGRAM TOTALS/ { gsub(",", "", $1); print $1 }' "$folder/annotated")

# "instructions-of-it name", Embree and the C library's mathematics as one each.
awk '/^ *[0-9,]+ *\(/ && !/PROGRAM TOTALS/ {
  count = $1; gsub(",", "", count)
  name = $0; sub(/^[^)]*\) */, "", name)
  if (name ~ /libembree/) name = "Embree"
  else if (name ~ /libm[.-]|sysdeps|\/math\//) name = "mathematics (libm)"
  else if (name ~ /libc[.-]/) name = "memory and more (libc)"
  else {
    sub(/^[^:]*:/, "", name); sub(/ \[.*$/, "", name)
    gsub(/fillside::|\(anonymous namespace\)::/, "", name); sub(/\(.*$/, "", name)
  }
  sum[name] += count
} END { for (name in sum) printf "%d\t%s\n", sum[name], name }' "$folder/annotated" | sort -gr >"$folder/by_name"

{
  echo "instructions per sample: $((total / samples))"
  head -n 14 "$folder/by_name" | awk -F '\t' -v total="$total" '{ printf "%5.1f %%  %s\n", 100 * $1 / total, $2 }'
} >"$folder/now"

cat "$folder/now"
if [ "$keep" = yes ]; then
  cp "$folder/now" "$kept"
  exit 0
fi
if [ -e "$kept" ]; then
  before=$(sed -n 's/^instructions per sample: //p' "$kept")
  now=$((total / samples))
  awk -v a="$before" -v b="$now" 'BEGIN { printf "kept: %d; now %+.2f %%\n", a, 100 * (b / a - 1) }'
fi
