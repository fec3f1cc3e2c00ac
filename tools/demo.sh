#!/bin/sh
# Installs what is missing, builds, and lights one table by a window: what a meter reads beside a citrus tart, maps
# of how the light falls off and how much of it is fill, and the picture. The files go to out/demo.
set -eu
cd "$(dirname "$0")/.."

sh tools/install_packages.sh
sh tools/build.sh

scene=scenes/citrus_tart.toml
out=out/demo
fillside=build/tools/fillside
mkdir -p "$out"

echo
echo "What the meters read in $scene:"
"$fillside" meter "$scene"
"$fillside" map "$scene" falloff fill -o "$out"
"$fillside" render "$scene" -o "$out"

echo
echo "Made from $scene:"
find "$out" -type f ! -name '.*' | LC_ALL=C sort | sed 's/^/  /'
