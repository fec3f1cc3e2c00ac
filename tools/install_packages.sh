#!/bin/sh
# Installs what the build needs and this machine lacks, from Debian's own archive. Says nothing when nothing is
# missing. Written for Debian 12; names are the same on its relatives.
#   sh tools/install_packages.sh [tests | gates]    # for the tests; for tools/gates.sh as well
set -eu

build='g++ cmake ninja-build pkg-config git'
library='libembree-dev libeigen3-dev libtinyobjloader-dev libstb-dev libtomlplusplus-dev nlohmann-json3-dev libfmt-dev
  libpng-dev libjpeg62-turbo-dev libopenexr-dev libnlopt-dev libcairo2-dev libfreetype-dev liberfa-dev fonts-dejavu-core
  zlib1g-dev libmeshoptimizer-dev'
program='libcli11-dev scdoc'
tests='libgtest-dev libgmock-dev librapidcheck-dev libgsl-dev libbenchmark-dev python3-jsonschema locales'
gates='clang clang-tidy libclang-rt-14-dev dpkg-dev gcovr'
# The report page is tried in a browser, which is large: only for the tests, and only where npm makes its scripts.
if [ -n "${1:-}" ] && command -v npm >/dev/null 2>&1; then tests="$tests chromium"; fi
wanted="$build $library $program $tests"
if [ "${1:-}" = gates ]; then wanted="$wanted $gates"; fi

if ! command -v apt-get >/dev/null 2>&1; then
  echo "No apt-get here, so nothing was installed. The build needs what Debian calls:" >&2
  echo $wanted >&2
  exit 0 # CMake will name what is really missing
fi

have=$(dpkg-query -W -f '${Package} ${db:Status-Status}\n' $wanted 2>/dev/null | sed -n 's/ installed$//p' || true)
missing=
for package in $wanted; do
  printf '%s\n' "$have" | grep -qxF -e "$package" || missing="$missing $package"
done
[ -n "$missing" ] || exit 0

as_root=
if [ "$(id -u)" -ne 0 ]; then
  if ! command -v sudo >/dev/null 2>&1; then
    echo "These packages are missing, and only root may install them:" >&2
    echo "  apt-get install --no-install-recommends$missing" >&2
    exit 1
  fi
  as_root=sudo
fi

get() { $as_root env DEBIAN_FRONTEND=noninteractive apt-get -q -y -o DPkg::Lock::Timeout=300 "$@"; }

echo "Installing:$missing"
log=$(mktemp)
trap 'rm -f "$log"' EXIT
get update >"$log" 2>&1 || echo "Package lists could not be refreshed; trying with those at hand." >&2
if ! get install --no-install-recommends $missing >"$log" 2>&1; then
  tail -n 20 "$log" >&2
  exit 1
fi
