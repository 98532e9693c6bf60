#!/usr/bin/python3
"""What the scripts choose by the machine they stand on, tried with the tools of several made ones."""
import pathlib
import shutil
import subprocess
import sys
import tempfile
import unittest

ROOT = pathlib.Path(__file__).resolve().parents[2]
QUICK = "-DLOOPWRIGHT_QUICK=ON"


class FirstBuild(unittest.TestCase):
    """Few cached files: joined units. The callers stop at any error, so a missing tool must not look like one."""

    def options(self, ccache):
        with tempfile.TemporaryDirectory() as folder:
            tools = pathlib.Path(folder)
            for name in ("awk", "bash", "cat", "dirname"):
                (tools / name).symlink_to(shutil.which(name))
            if ccache is not None:
                (tools / "ccache").write_text(f"#!/bin/bash\n{ccache}\n", encoding="utf-8")
                (tools / "ccache").chmod(0o755)
            script = f"set -euo pipefail; source '{ROOT}/scripts/lib/build.sh'; first_build_options"
            done = subprocess.run([tools / "bash", "-c", script], env={"PATH": folder}, capture_output=True,
                                  text=True, check=True)
            return done.stdout.split()

    def test_no_ccache(self):
        self.assertEqual(self.options(None), [QUICK])

    def test_empty_cache(self):
        self.assertEqual(self.options("echo 'files_in_cache 12'"), [QUICK])

    def test_filled_cache(self):
        self.assertEqual(self.options("echo 'files_in_cache 4000'"), [])

    def test_cache_that_does_not_answer(self):
        self.assertEqual(self.options("exit 1"), [QUICK])


if __name__ == "__main__":
    sys.exit(unittest.main())
