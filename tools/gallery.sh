#!/bin/sh
# Makes everything in renders/ from scenes/: one command a picture. A few minutes on two cores.
#   sh tools/gallery.sh            all of it
#   sh tools/gallery.sh tart       only what has "tart" in its name
set -eu
cd "$(dirname "$0")/.."

sh tools/build.sh
fillside="$PWD/build/tools/fillside"
only=${1:-}

picture() { # name scene [options]
  name=$1 scene=$2
  shift 2
  case "$name" in *"$only"*) "$fillside" render "scenes/$scene.toml" --name "$name" --pixels 600 --precision "0.06 stop" -o renders "$@" ;; esac
  rm -f "renders/$name.exr" # the layers are large; render them at home
}

maps() { # name scene maps...
  name=$1 scene=$2
  shift 2
  case "$name" in *"$only"*) "$fillside" map "scenes/$scene.toml" --name "$name" --precision "0.1 stop" -o renders "$@" ;; esac
  for file in renders/"$name"-*.csv; do rm -f "$file"; done
}

# Glass in the sun settles slowly: these stop by the clock.
sunlit() { # scene
  case "$1" in *"$only"*) "$fillside" render "scenes/$1.toml" --pixels 480 --seconds 60 -o renders ;; esac
  rm -f "renders/$1.exr"
}

readings() { # name scene [options]
  name=$1 scene=$2
  shift 2
  case "$name" in *"$only"*) "$fillside" meter "scenes/$scene.toml" --precision "0.02 stop" "$@" >"renders/$name.txt" ;; esac
}

picture citrus_tart citrus_tart
picture citrus_tart-no_board citrus_tart --set board.near.used=false
picture citrus_tart-large_board citrus_tart --set board.near.used=false --set board.far.used=true
maps citrus_tart citrus_tart falloff fill gain
maps citrus_tart-no_board citrus_tart fill --set board.near.used=false
readings citrus_tart citrus_tart
readings citrus_tart-no_board citrus_tart --set board.near.used=false

picture lentil_soup lentil_soup
picture lentil_soup-no_cards lentil_soup --set board.left.used=false --set board.right.used=false
maps lentil_soup lentil_soup fill
readings lentil_soup lentil_soup

picture dumplings_flat_lay dumplings_flat_lay
picture dumplings_flat_lay-no_board dumplings_flat_lay --set board.across.used=false
maps dumplings_flat_lay dumplings_flat_lay falloff visibility
readings dumplings_flat_lay dumplings_flat_lay

picture rye_loaf rye_loaf
picture rye_loaf-white_cloth rye_loaf --set "table.surface=white tablecloth" --set board.black.used=false
picture pickle_jar pickle_jar
picture pickle_jar-no_strips pickle_jar --set board.left.used=false --set board.right.used=false

sunlit iced_tea_low_sun
sunlit iced_tea_sheer
sunlit north_window
case "north_window-year" in *"$only"*) "$fillside" calendar scenes/north_window.toml -o renders ;; esac
rm -f renders/north_window-calendar.csv
