#!/usr/bin/python3
"""clang-tidy on the translation units that changed, two rules added:

- A unit found clean is remembered by what the compiler would read (preprocessed text, comments kept), the checks and
  clang-tidy's version, in ~/.cache/loopwright-tidy. It is not read again until one of these changes.
- With a time budget the most recently changed units go first, and what was not reached is said.
"""
import argparse
import concurrent.futures
import hashlib
import json
import os
import pathlib
import shlex
import subprocess
import sys
import time

ROOT = pathlib.Path(__file__).resolve().parents[2]
CACHE = pathlib.Path(os.environ.get("XDG_CACHE_HOME", pathlib.Path.home() / ".cache")) / "loopwright-tidy"


# How long a unit that was begun within the budget may go on: some tests take a minute and a half each.
GRACE_S = 15


def git(*arguments):
    done = subprocess.run(["git", "-C", str(ROOT), *arguments], capture_output=True, text=True)
    return done.stdout.split("\n") if done.returncode == 0 else []


def base_commit():
    """Where this work left the published branch; None where it did not leave it (a clone of main, as in CI)."""
    head = git("rev-parse", "HEAD")[0]
    for name in ("@{upstream}", "origin/main", "main"):
        base = git("merge-base", "HEAD", name)
        if base and base[0] and base[0] != head:
            return base[0]
    return None


def by_latest_change():
    """Tracked files, latest commit first; uncommitted ones before all."""
    order = {}
    for line in git("diff", "--name-only", "HEAD") + git("log", "--format=", "--name-only"):
        if line:
            order.setdefault(line, len(order))
    return order


def changed_since(base):
    names = git("diff", "--name-only", base) + git("ls-files", "--others", "--exclude-standard")
    return {name for name in names if name}


def units(build):
    """{path relative to the root: command words} of our own translation units."""
    found = {}
    for entry in json.loads((build / "compile_commands.json").read_text()):
        path = pathlib.Path(entry["directory"], entry["file"]).resolve()
        if path.is_relative_to(ROOT) and not path.is_relative_to(build.resolve()):
            found[str(path.relative_to(ROOT))] = (entry["directory"], shlex.split(entry["command"]))
    return found


def compiler_words(words):
    """The compiler and its options, without a launcher, the output and the file."""
    start = next(i for i, word in enumerate(words) if pathlib.Path(word).name in ("c++", "g++", "clang++"))
    kept, skip = [], False
    for word in words[start:]:
        if skip:
            skip = False
        elif word == "-o":
            skip = True
        elif word != "-c":
            kept.append(word)
    return kept


def fingerprint(directory, words, version):
    done = subprocess.run([*compiler_words(words), "-E", "-C"], cwd=directory, capture_output=True)
    if done.returncode != 0:
        return None
    text = done.stdout.replace(str(ROOT).encode(), b".")
    settings = (ROOT / ".clang-tidy").read_bytes() + version
    return hashlib.sha256(settings + text).hexdigest()


def check(name, directory, words, build, version, deadline):
    if deadline and time.monotonic() > deadline:
        return name, "not reached", ""
    key = fingerprint(directory, words, version)
    if key and (CACHE / key).exists():
        return name, "clean before", ""
    left = deadline - time.monotonic() + GRACE_S if deadline else None
    try:
        done = subprocess.run(["clang-tidy", "--quiet", "-p", str(build), str(ROOT / name)],
                              capture_output=True, text=True, timeout=left)
    except subprocess.TimeoutExpired:
        return name, "not read to the end", ""
    if done.returncode != 0:
        return name, "refused", done.stdout + done.stderr
    if key:
        CACHE.mkdir(parents=True, exist_ok=True)
        (CACHE / key).touch()
    return name, "clean", ""


def included_by_change(name, directory, words, changed_headers):
    """Does the unit read one of the changed headers? Asked of the compiler, system headers left out."""
    done = subprocess.run([*compiler_words(words), "-MM"], cwd=directory, capture_output=True, text=True)
    read = {os.path.normpath(os.path.join(directory, word)) for word in done.stdout.replace("\\\n", " ").split()}
    return any(str(ROOT / header) in read for header in changed_headers)


def chosen(all_units, base):
    changed = changed_since(base)
    headers = {name for name in changed if name.endswith(".hpp")}
    direct = [name for name in all_units if name in changed]
    if not headers:
        return direct
    # One unit for each changed header is enough to read it; its own .cpp where there is one.
    for header in sorted(headers):
        own = header[:-4] + ".cpp"
        if own in all_units:
            direct.append(own)
            continue
        folder = header.split("/")[0] + "/"
        for name in sorted(all_units, key=lambda unit: not unit.startswith(folder)):
            if included_by_change(name, *all_units[name], {header}):
                direct.append(name)
                break
    return list(dict.fromkeys(direct))


def main():
    parser = argparse.ArgumentParser(description=__doc__.split("\n", maxsplit=1)[0])
    parser.add_argument("--build", type=pathlib.Path, required=True)
    parser.add_argument("--jobs", type=int, default=2)
    parser.add_argument("--all", action="store_true", help="every unit, not only what changed")
    arguments = parser.parse_args()
    in_ci = os.environ.get("CI") == "true"
    budget = float(os.environ.get("LOOPWRIGHT_TIDY_SECONDS", "20" if in_ci else "0"))
    build = (ROOT / arguments.build).resolve()
    all_units = units(build)
    if not all_units:
        sys.exit("compile_commands.json names no source of this project")
    base = None if arguments.all else base_commit()
    names = list(all_units) if base is None else chosen(all_units, base)
    latest = by_latest_change()
    names.sort(key=lambda name: latest.get(name, -1))
    version = subprocess.run(["clang-tidy", "--version"], capture_output=True, check=True).stdout
    deadline = time.monotonic() + budget if budget else None
    results = {}
    with concurrent.futures.ThreadPoolExecutor(arguments.jobs) as pool:
        waiting = [pool.submit(check, name, *all_units[name], build, version, deadline) for name in names]
        for future in concurrent.futures.as_completed(waiting):
            name, verdict, text = future.result()
            results.setdefault(verdict, []).append(name)
            if text:
                print(text, flush=True)
    what = "all" if base is None else f"changed since {base[:12]}"
    print(f"{len(names)} units ({what}): " + ", ".join(f"{len(v)} {k}" for k, v in sorted(results.items())))
    for name in results.get("refused", []):
        print(f"clang-tidy refuses {name}")
    if results.get("not reached"):
        print(f"The time budget of {budget:.0f} s ended before {len(results['not reached'])} older units.")
    if budget and names and len(results.get("not reached", [])) == len(names):
        sys.exit("The time budget let clang-tidy read nothing.")
    sys.exit(1 if results.get("refused") else 0)


if __name__ == "__main__":
    main()
