#!/usr/bin/env python3
"""Plants one fault after another in a copy of the physics and looks whether the tests find it.

    python3 tests/planted_faults/plant.py                 all faults of faults.json
    python3 tests/planted_faults/plant.py "lost pi" sun   those with such words in their names
    python3 tests/planted_faults/plant.py --list          their names

The copy and its build lie in build/planted; the tree itself is never touched. The tests must pass there first, without
a fault. Status: 0 all caught, 1 one was not, 2 the table or the untouched tree is at fault.
"""

import argparse
import fcntl
import json
import os
import re
import shutil
import signal
import subprocess
import sys
import time
from pathlib import Path

ROOT = Path(__file__).resolve().parents[2]
COPY = ROOT / "build" / "planted"
BUILD = COPY / "build"
HANGS_AFTER_S = 600  # a fault may well keep a walk from ever ending


class WrongTable(Exception):
    """The table, or the tree without a fault, is not fit for the check."""


def read_table():
    faults = json.loads((Path(__file__).parent / "faults.json").read_text())
    for fault in faults:
        count = (ROOT / fault["file"]).read_text().count(fault["find"])
        if count != 1:
            raise WrongTable(f'"{fault["fault"]}": its text stands {count} times in {fault["file"]}, not once')
    return faults


def keep_copy_to_oneself():
    """Two runs in one copy would find each other's faults. Held until the process ends."""
    BUILD.mkdir(parents=True, exist_ok=True)
    held = open(BUILD / "in_use", "w")
    try:
        fcntl.flock(held, fcntl.LOCK_EX | fcntl.LOCK_NB)
    except OSError:
        raise WrongTable("another run is at work in build/planted") from None
    return held


def bring_copy_up_to_date():
    """Files that are the same keep their time, so that only what changed is made again."""
    listed = subprocess.run(["git", "ls-files", "-co", "--exclude-standard", "-z"], cwd=ROOT, check=True,
                            capture_output=True, text=True).stdout
    wanted = {name for name in listed.split("\0") if name and (ROOT / name).is_file()}
    for name in wanted:
        source, copy = ROOT / name, COPY / name
        if not copy.exists() or copy.read_bytes() != source.read_bytes():
            copy.parent.mkdir(parents=True, exist_ok=True)
            shutil.copy(source, copy)
    for copy in COPY.rglob("*"):
        if copy.is_file() and BUILD not in copy.parents and str(copy.relative_to(COPY)) not in wanted:
            copy.unlink()


def configure():
    strict = os.environ.get("CI") == "true" or os.environ.get("FILLSIDE_STRICT") == "1"
    options = ["-G", "Ninja"] if shutil.which("ninja") else []
    if shutil.which("ccache"):
        options.append("-DCMAKE_CXX_COMPILER_LAUNCHER=ccache")
    # A shared library, so that a fault takes one link, not one for each test executable.
    options += ["-DCMAKE_BUILD_TYPE=Release", "-DBUILD_SHARED_LIBS=ON", "-DCMAKE_LINK_DEPENDS_NO_SHARED=ON",
                "-DFILLSIDE_PAGE_SCRIPTS=OFF", "-DFILLSIDE_BENCHMARKS=OFF",
                f"-DFILLSIDE_WARNINGS_AS_ERRORS={'ON' if strict else 'OFF'}"]
    if not (BUILD / "CMakeCache.txt").exists():
        subprocess.run(["cmake", "-S", COPY, "-B", BUILD, *options], check=True, stdout=subprocess.DEVNULL)


def target_of(folder):
    return f"fillside_{folder}_tests"


def build(folders, jobs):
    """Nothing, or what the compiler says."""
    command = ["cmake", "--build", BUILD, "--target", "fillside_sim", *map(target_of, folders)]
    made = subprocess.run([*command, "-j", str(jobs)], stdout=subprocess.PIPE, stderr=subprocess.STDOUT, text=True)
    return made.stdout if made.returncode != 0 else None


def complaint_of(folder, tests):
    """Nothing when the tests pass, else the first that fails, or how they end otherwise."""
    command = [BUILD / "tests" / target_of(folder), f"--gtest_filter={tests}"]
    environment = {**os.environ, "RC_PARAMS": "seed=20"}
    try:
        ran = subprocess.run(command, env=environment, timeout=HANGS_AFTER_S, stdout=subprocess.PIPE,
                             stderr=subprocess.STDOUT, text=True, errors="replace")
    except subprocess.TimeoutExpired:
        return "does not end"
    failed = re.search(r"^\[  FAILED  \] ([\w./]+)", ran.stdout, re.MULTILINE)
    if failed:
        return failed.group(1)
    return None if ran.returncode == 0 else f"ends with status {ran.returncode}"


def check_that_there_are(folder, tests):
    """In every part of a choice; a part that names none would be passed over without a word."""
    for part in tests.split(":"):
        command = [BUILD / "tests" / target_of(folder), "--gtest_list_tests", f"--gtest_filter={part}"]
        listed = subprocess.run(command, check=True, capture_output=True, text=True).stdout
        if not re.search(r"^  \w", listed, re.MULTILINE):
            raise WrongTable(f'no test of {folder} is called "{part}"')


def finder_of(fault):
    for folder, tests in fault["caught by"].items():
        complaint = complaint_of(folder, tests)
        if complaint:
            return f"{folder}: {complaint}"
    return None


def check_without_fault(faults, jobs):
    choices = {}
    for fault in faults:
        for folder, tests in fault["caught by"].items():
            choices.setdefault(folder, set()).add(tests)
    print("building the tree as it is ...", flush=True)
    if says := build(choices, jobs):
        raise WrongTable("the tree itself does not build:\n" + says[-3000:])
    for folder, filters in sorted(choices.items()):
        together = ":".join(sorted(filters))
        check_that_there_are(folder, together)
        if complaint := complaint_of(folder, together):
            raise WrongTable(f"without any fault: {folder}: {complaint}")
        print(f"without a fault the tests of {folder} pass", flush=True)


def plant(fault, jobs):
    """What found the fault; nothing when nothing did."""
    planted = COPY / fault["file"]
    as_it_is = planted.read_text()
    try:
        planted.write_text(as_it_is.replace(fault["find"], fault["put"]))
        if says := build(fault["caught by"], jobs):
            raise WrongTable(f'"{fault["fault"]}" does not compile:\n{says[-3000:]}')
        return finder_of(fault)
    finally:
        planted.write_text(as_it_is)


def run(faults, jobs):
    began_s = time.monotonic()
    held = keep_copy_to_oneself()  # until the run is over
    signal.signal(signal.SIGTERM, lambda *_: sys.exit(143))  # by way of every "finally"
    bring_copy_up_to_date()
    configure()
    check_without_fault(faults, jobs)
    missed, unfit = [], []
    for fault in faults:
        start_s = time.monotonic()
        try:
            found = plant(fault, jobs)
        except WrongTable as wrong:
            unfit.append(str(wrong))
            continue
        print(f'{"caught    " if found else "NOT CAUGHT"} {time.monotonic() - start_s:5.0f} s  {fault["fault"]}'
              f'  ({found or fault["file"]})', flush=True)
        if not found:
            missed.append(fault["fault"])
    for name in missed:
        print(f"NOT CAUGHT: {name}")
    for wrong in unfit:
        print(f"UNFIT: {wrong}")
    caught = len(faults) - len(missed) - len(unfit)
    minutes = (time.monotonic() - began_s) / 60
    print(f"{len(faults)} faults planted, {caught} caught, in {minutes:.0f} minutes")
    held.close()
    return 2 if unfit else (1 if missed else 0)


def main():
    told = argparse.ArgumentParser(description=__doc__, formatter_class=argparse.RawDescriptionHelpFormatter)
    told.add_argument("words", nargs="*", help="only faults whose names hold one of these")
    told.add_argument("--jobs", type=int, default=os.cpu_count(), help="of the build")
    told.add_argument("--list", action="store_true", help="name the faults and stop")
    said = told.parse_args()
    try:
        faults = [f for f in read_table() if not said.words or any(word in f["fault"] for word in said.words)]
        if not faults:
            raise WrongTable("no fault is called that")
        if said.list:
            print("\n".join(f["fault"] for f in faults))
            return 0
        return run(faults, said.jobs)
    except WrongTable as wrong:
        print(wrong, file=sys.stderr)
        return 2


if __name__ == "__main__":
    sys.exit(main())
