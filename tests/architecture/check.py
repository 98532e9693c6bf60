#!/usr/bin/python3
"""check.py RULE ROOT: prints what breaks the rule; exit status 1 then. Also:
check.py headers_alone ROOT COMPILER OPTIONS...: compiles each header that no .cpp of its name includes first.
check.py links_no_qt PROGRAM: the program's libraries, by the loader's own word."""
import concurrent.futures
import pathlib
import subprocess
import sys

from rules import RULES, lonely_headers


def headers_alone(root, compiler):
    def problem(name):
        include = name.split("/", 1)[1]
        done = subprocess.run([*compiler, "-std=c++20", "-fsyntax-only", "-x", "c++", "-"], text=True,
                              input=f'#include "{include}"\n', capture_output=True)
        return f"{name}:1: does not compile alone\n{done.stderr}" if done.returncode else None

    names = lonely_headers(root)
    print(f"{len(names)} headers compiled alone")
    with concurrent.futures.ThreadPoolExecutor(2) as pool:
        return [text for text in pool.map(problem, names) if text]


def links_no_qt(program):
    done = subprocess.run(["ldd", program], capture_output=True, text=True, check=True)
    lines = [line.strip() for line in done.stdout.split("\n") if line.strip()]
    if not any("libc.so" in line for line in lines):
        return [f"{program}: ldd lists no C library, so its answer is not believed: {done.stdout}"]
    return [f"{program} needs {line}" for line in lines if line.startswith(("libQt", "libX11", "libGL"))]


def main(rule, target, *compiler):
    if rule == "links_no_qt":
        problems = links_no_qt(target)
    elif rule == "headers_alone":
        problems = headers_alone(pathlib.Path(target), compiler)
    else:
        problems = RULES[rule](pathlib.Path(target))
    for problem in problems:
        print(problem)
    print(f"{rule}: {len(problems)} problems")
    return 1 if problems else 0


if __name__ == "__main__":
    sys.exit(main(*sys.argv[1:]))
