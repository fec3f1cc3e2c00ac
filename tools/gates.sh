#!/bin/sh
# What the tests cannot see, in builds of their own below build/:
#   address   clang, warnings as errors; memory and undefined behaviour watched; each fuzzer a few seconds
#   threads   clang; two threads at one place
#   shared    the usual build linked as a shared library, found and used by a stranger's project, taken away again
#   recent    clang-tidy by .clang-tidy, on the files of the last commits
#   tidy      the same on every file of the library (not part of the usual)
#   packages  the Debian packages: made, unpacked, the program run from them
#   books     address again, and the light by the books in that build (not part of the usual: minutes)
#   coverage  g++; which lines the tests reach, without those that take minutes where every line is counted (not part of the
#             usual: half an hour and more)
#   sh tools/gates.sh [GATE ...]    # the usual ones by default
set -eu
cd "$(dirname "$0")/.."
jobs=${CMAKE_BUILD_PARALLEL_LEVEL:-$(nproc 2>/dev/null || echo 2)}
started=$(date +%s)

quietly() {
  if ! log=$("$@" 2>&1); then
    printf '%s\n' "$log" | tail -n 60 >&2
    exit 1
  fi
}
done_with() {
  now=$(date +%s)
  printf '%-9s %s (%d s)\n' "$1" "$2" $((now - started))
  started=$now
}

address() {
  sh tools/fuzz.sh "${FUZZ_SECONDS:-3}"
  quietly cmake --build build/fuzz --target one_of_each -j "$jobs"
  # Cairo and FreeType keep what they have once set up; that is theirs.
  leaks=suppressions=tests/sanitised/not_ours.txt
  # Looking for leaks stops the program as a debugger does, which some containers forbid.
  echo 'int main() {}' | quietly clang++ -fsanitize=address -x c++ - -o build/fuzz/nothing
  if ! build/fuzz/nothing >/dev/null 2>&1; then
    leaks=detect_leaks=0
    echo "address: leaks cannot be looked for here"
  fi
  quietly env LSAN_OPTIONS="$leaks" build/fuzz/tests/sanitised/one_of_each "$@"
  done_with "${1:-address}" "no finding"
}

threads() {
  [ -e build/threads/CMakeCache.txt ] || quietly cmake -S . -B build/threads -G Ninja -DCMAKE_BUILD_TYPE=None \
    -DCMAKE_CXX_COMPILER=clang++ -DFILLSIDE_SANITISE=thread -DFILLSIDE_PAGE_SCRIPTS=OFF \
    -DFILLSIDE_PRECOMPILED=ON
  quietly cmake --build build/threads --target one_of_each -j "$jobs"
  quietly env TSAN_OPTIONS=halt_on_error=1 build/threads/tests/sanitised/one_of_each
  done_with threads "no finding"
}

shared() {
  [ -e build/shared/CMakeCache.txt ] || quietly cmake -S . -B build/shared -G Ninja -DCMAKE_BUILD_TYPE=Release \
    -DBUILD_SHARED_LIBS=ON -DFILLSIDE_TESTS=OFF -DFILLSIDE_PAGE_SCRIPTS=OFF -DFILLSIDE_OBJECTS_FROM="$PWD/build"
  quietly cmake --build build/shared -j "$jobs"
  quietly cmake -DBUILD="$PWD/build/shared" -DCONSUMER="$PWD/tests/consumer" -DSTAGE="$PWD/build/shared/consumer" \
    -DGENERATOR=Ninja -DCONFIG=Release -DCOMPILER=c++ -DLAUNCHER= -DFLAGS= -DLIBDIR=lib -P tests/consumer/try_install.cmake
  done_with shared "installed, found by CMake and pkg-config, used, taken away"
}

# Reads lines of file names. The answer of clang-tidy is what its checks find, not its count of what it passed over.
tidied() {
  [ -e build/fuzz/compile_commands.json ] || {
    echo "tidy: it reads the build of the gate address; run that first" >&2
    exit 2
  }
  quietly xargs -r -P "$jobs" -n 4 clang-tidy -p build/fuzz --quiet --warnings-as-errors='*'
}
recent() {
  files=$(git log -n 60 --diff-filter=d --name-only --format= -- 'libsim/*.cpp' | awk '!seen[$0]++' | while read -r file; do
    if [ -e "$file" ]; then echo "$file"; fi
  done | head -n "${TIDY_FILES:-24}")
  echo "$files" | tidied
  done_with recent "no finding in $(echo "$files" | grep -c .) files"
}
tidy() {
  find libsim -name '*.cpp' | sort | tidied
  done_with tidy "no finding"
}

packages() {
  rm -rf build/packages
  (cd build && quietly cpack --config CPackConfig.cmake)
  for package in build/packages/*.deb; do dpkg-deb -x "$package" build/packages/unpacked; done
  for file in bin/fillside share/man/man1/fillside.1 share/man/man5/fillside-scene.5 share/doc/fillside/notices.txt \
    share/bash-completion/completions/fillside share/zsh/site-functions/_fillside share/fish/vendor_completions.d/fillside.fish \
    share/fillside/fillside.schema.json share/fillside/scenes/citrus_tart.toml include/fillside/libsim/fillside.h; do
    [ -s "build/packages/unpacked/usr/$file" ] || {
      echo "packages: $file is not in them" >&2
      exit 1
    }
  done
  quietly build/packages/unpacked/usr/bin/fillside check build/packages/unpacked/usr/share/fillside/scenes/first_light.toml
  done_with packages "$(du -ch build/packages/*.deb | tail -n 1 | cut -f 1) packed, $(du -sh build/packages/unpacked | cut -f 1) installed"
}

coverage() {
  [ -e build/coverage/CMakeCache.txt ] || quietly cmake -S . -B build/coverage -G Ninja -DCMAKE_BUILD_TYPE=None \
    -DCMAKE_CXX_FLAGS="-O1 --coverage -fprofile-update=atomic" -DFILLSIDE_BENCHMARKS=OFF -DFILLSIDE_PRECOMPILED=ON
  quietly cmake --build build/coverage -j "$jobs"
  quietly ctest --test-dir build/coverage -j "$jobs" \
    -E '^(consumer|page)|WalkThroughs|Readme|IndependentRun|LessonVerb|SharedReading|Calendar\.|DaylitSet'
  gcovr --root . --filter libsim/ --filter tools/ --txt build/coverage/coverage.txt --json-summary build/coverage/coverage.json \
    -j "$jobs" build/coverage >/dev/null
  done_with coverage "$(tail -n 3 build/coverage/coverage.txt | grep TOTAL)"
}

[ $# -gt 0 ] || set -- address threads shared recent packages
for gate in "$@"; do
  case "$gate" in
    address | threads | shared | recent | tidy | packages | coverage) "$gate" ;;
    books) address by_the_books ;;
    *)
      echo "gates: there is no gate '$gate'" >&2
      exit 2
      ;;
  esac
done
