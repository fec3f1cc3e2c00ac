#!/bin/sh
# Makes everything in renders/ from scenes/: one command a picture. About half an hour on two cores.
#   sh tools/gallery.sh            all of it
#   sh tools/gallery.sh tart       only what has "tart" in its name
#   PIXELS=160 SECONDS_EACH=3 OUT=out/gallery sh tools/gallery.sh    a quick look, elsewhere
set -eu
cd "$(dirname "$0")/.."

sh tools/build.sh
fillside="$PWD/build/tools/fillside"
only=${1:-}
out=${OUT:-renders}
wide=${PIXELS:-600}         # long side of a picture
each=${SECONDS_EACH:-35}    # gloss settles slowly, so pictures stop by the clock
mkdir -p "$out"

# The meter makes a grey card grey; food on pale wood is shown a little brighter, as one would develop it.
picture() { # name scene [options]
  name=$1 scene=$2
  shift 2
  long=$each
  case "$name" in # light that glass and gloss turn settles slowly
    pickle_jar* | iced_tea*) long=$((3 * each)) ;;
    lentil_soup*) long=$((2 * each)) ;;
  esac
  case "$name" in *"$only"*)
    "$fillside" render "scenes/$scene.toml" --name "$name" --pixels "$wide" --seconds "$long" -o "$out" "$@" ;;
  esac
  rm -f "$out/$name.exr" # the layers are large; render them at home
}

maps() { # name scene maps...
  name=$1 scene=$2
  shift 2
  case "$name" in *"$only"*)
    "$fillside" map "scenes/$scene.toml" --name "$name" --precision "0.08 stop" -o "$out" "$@" ;;
  esac
  for file in "$out/$name"-*.csv; do rm -f "$file"; done
}

readings() { # name scene [options]
  name=$1 scene=$2
  shift 2
  case "$name" in *"$only"*)
    "$fillside" meter "scenes/$scene.toml" --precision "0.02 stop" "$@" >"$out/$name.txt" ;;
  esac
}

changes() { # name scene options...
  name=$1 scene=$2
  shift 2
  case "$name" in *"$only"*)
    "$fillside" compare "scenes/$scene.toml" --name "$scene" -o "$out" "$@" >"$out/$name.txt" ;;
  esac
  for file in "$out/$scene"-*-change.csv; do rm -f "$file"; done
}

series() { # name scene options...
  name=$1 scene=$2
  shift 2
  case "$name" in *"$only"*)
    "$fillside" series "scenes/$scene.toml" --name "$name" -o "$out" "$@" ;;
  esac
  rm -rf "$out/$name-series" "$out/$name-series.csv" # what is kept for an interrupted run
}

plan() { # name scene
  case "$1" in *"$only"*)
    "$fillside" plan "scenes/$2.toml" --name "$1" --precision "0.02 stop" -o "$out" --quiet | sed '$d' >"$out/$1-plan.txt"
    "$fillside" plan "scenes/$2.toml" --name "$1" -o "$out" --cut --stock A2,50x70cm --quiet >/dev/null ;;
  esac
  rm -f "$out/$1-plan.svg" "$out/$1-plan.pdf" "$out/$1-cut.svg" "$out/$1-cut.pdf" # print these at home
}

# A. Citrus tart: how much does a white board lift the shadow side, and is a large one farther off as good?
picture citrus_tart citrus_tart --brighter "2/3 stop"
picture citrus_tart-no_board citrus_tart --brighter "2/3 stop" --set board.near.used=false
picture citrus_tart-large_board citrus_tart --brighter "2/3 stop" --set board.near.used=false --set board.far.used=true
maps citrus_tart citrus_tart falloff fill gain
maps citrus_tart-no_board citrus_tart fill --set board.near.used=false
readings citrus_tart citrus_tart
readings citrus_tart-no_board citrus_tart --set board.near.used=false
changes citrus_tart-changes citrus_tart --variant "no board: board.near.used=false" \
  --variant "large board: board.near.used=false, board.far.used=true" --map illuminance
series citrus_tart_distance citrus_tart --vary "board.near.distance=15cm,18cm,22cm,30cm,45cm,60cm" --pictures

plan citrus_tart citrus_tart

# Rules of thumb, put to the test.
case "rules_of_thumb" in *"$only"*) "$fillside" rules >"$out/rules_of_thumb.md" ;; esac

# The page on the wall: its top, as the browser of the page's tests shows it.
case "citrus_tart-report" in *"$only"*)
  browser=$(command -v chromium || true)
  libraries=build/libsim/page
  if [ -n "$browser" ] && command -v node >/dev/null && [ -d "$libraries/node_modules/playwright-core" ]; then
    folder=$(mktemp -d)
    "$fillside" report scenes/citrus_tart.toml --variant "no board: board.near.used=false" \
      --variant "large board: board.near.used=false, board.far.used=true" -o "$folder/tart.html" -q
    node tools/page_top.mjs "$folder/tart.html" "$out/citrus_tart-report.png" "$libraries" "$browser"
    rm -rf "$folder"
  else
    echo "citrus_tart-report.png stays as it is: it needs chromium, node and playwright-core" >&2
  fi ;;
esac

# Lessons' sheets for the wall.
lesson() { # name scene
  case "$1" in *"$only"*)
    folder=$(mktemp -d)
    "$fillside" lesson "scenes/lessons/$2.toml" -o "$folder" -q
    cp "$folder/$2-sheet.png" "$out/$1.png"
    rm -rf "$folder" ;;
  esac
}
lesson lesson_01-sheet 01_round_the_clock
lesson lesson_04-sheet 04_one_card_one_ruler
lesson lesson_06-sheet 06_the_table_is_a_reflector

# B. Red lentil soup: where does the curtain mirror in it?
picture lentil_soup lentil_soup --brighter "2/3 stop"
picture lentil_soup-veil lentil_soup --brighter "2/3 stop" --set "camera.elevation=45 deg"
picture lentil_soup-no_cards lentil_soup --brighter "2/3 stop" --set board.left.used=false --set board.right.used=false
maps lentil_soup lentil_soup fill
readings lentil_soup lentil_soup

# C. Pickle jar, bright field: where does the glass end?
picture pickle_jar pickle_jar --brighter "-1/3 stop"
picture pickle_jar-no_strips pickle_jar --brighter "-1/3 stop" --set board.left.used=false --set board.right.used=false

# D. Rye loaf: what makes the mood, the black card or the dark table?
picture rye_loaf rye_loaf
picture rye_loaf-white_cloth rye_loaf --set table.picture= --set "table.surface=white tablecloth" \
  --set board.black.used=false

# E. Dumplings, flat lay: is the field even?
picture dumplings_flat_lay dumplings_flat_lay --brighter "2/3 stop"
picture dumplings_flat_lay-no_board dumplings_flat_lay --brighter "2/3 stop" --set board.across.used=false
maps dumplings_flat_lay dumplings_flat_lay falloff visibility
readings dumplings_flat_lay dumplings_flat_lay

# F. Iced tea in low sun, bare and behind a sheer.
picture iced_tea_low_sun iced_tea_low_sun
picture iced_tea_sheer iced_tea_sheer --brighter "1/3 stop"

# A north window, and its year.
picture north_window north_window --brighter "1/3 stop"
case "north_window-year" in *"$only"*) "$fillside" calendar scenes/north_window.toml -o "$out" ;; esac
rm -f "$out/north_window-calendar.csv"
