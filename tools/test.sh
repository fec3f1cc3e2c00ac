#!/bin/sh
# Installs what is missing, builds, and runs every test. The last lines are ctest's own summary.
set -eu
cd "$(dirname "$0")/.."

sh tools/install_packages.sh tests
sh tools/build.sh
exec ctest --test-dir build --output-on-failure --no-label-summary -j "$(nproc 2>/dev/null || echo 2)" "$@"
