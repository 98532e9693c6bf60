#!/usr/bin/python3
"""Pages of docs/validation from the rows that the tests left (tests/support/compared.hpp)."""
import argparse
import pathlib
import re
import sys

TITLES = {
    "published": ("Published values", """Digits printed in books and handbooks. Those named *ex.* were seen in public
transcriptions of the books' worked examples, not on the page. The books take η = 120π and c = 3·10⁸ m/s; ours is put on
their constants first, and their rounding is in the limit."""),
    "theory": ("Theory evaluated apart from the solver", """Formulas of the literature, evaluated in the tests with
Boost.Math or the GNU Scientific Library, and laws that hold for every antenna. The Fourier series of the circular loop is
that of J. E. Storer (1956) and T. T. Wu (1962), its formulas re-derived from the kernel's Fourier integral; it leaves out
terms of the order (a/b)². A row without a figure of theirs shows 0: what must vanish."""),
    "independent-cases": ("Independent cases", """`tests/reference/data/independent_cases.json`: closed forms, integrals and
moment-method computations made apart from this project, with the uncertainty each states. They are not published
data. SI units unless a name says otherwise. Cases of category *noise* and the unused outputs of others have no
counterpart in the program and are not compared."""),
    "full-wave-cases": ("Independent full-wave cases", """`tests/reference/data/independent_fullwave_cases.json`: another
program's method of moments with Sommerfeld ground, same gaps; not published data. Limits stated there: C 0.3 % + 0.4 pF;
resistance and capacitor voltage 0.5 %, the ground's 1 %; magnetic field 1 %, electric 1.5 % at 0.5 m or more from the
wire; gain 0.05 dB. Where the two models of this program are compared with them their tables are apart."""),
    "two-models": ("The two models of this program against each other", """The closed form and the full wave answer the same
question. In free space they may differ by what each leaves out; the closed form's own statement is the limit. Over ground
the closed form does not claim to hold; high above it only what the ground sends back may part them, at most the share
3/2 (1/u + 1/u² + 1/u³) of the radiation resistance, u = 4πh/λ (a mirror's image of a small upright loop)."""),
    "power-balance": ("Power balance", """Three sums made apart: the real part of the impedance matrix, the far field with its
reflected wave over the hemisphere, and the flux of the plane-wave spectrum through the surface of the ground."""),
    "mesh": ("Mesh", """The default mesh against the extrapolation of two finer ones."""),
}
HEAD = "| case | quantity | ours | theirs | difference | limit |\n|---|---|---|---|---|---|\n"


def natural(text):
    return [float(part) if i % 2 else part for i, part in enumerate(re.split(r"(\d+(?:\.\d+)?)", text))]


def gather(directory):
    """{chapter: {table: {(case, quantity): cells}}} in the order of the tests."""
    chapters = {}
    for path in sorted(directory.glob("*.rows"), key=lambda p: p.stat().st_mtime):
        for line in path.read_text().splitlines():
            chapter, table, case, quantity, *cells = line.split("\t")
            if "|" in table + case + quantity:
                sys.exit(f"a name with a bar in {chapter}: {table}, {case}, {quantity}")
            rows = chapters.setdefault(chapter, {}).setdefault(table, {})
            if (case, quantity) in rows:
                sys.exit(f"two rows named {case} | {quantity} in {chapter}, {table}")
            rows[case, quantity] = cells
    return chapters


def page(chapter, tables):
    title, text = TITLES[chapter]
    lines = [f"# {title}\n\n{text}\n\nWritten by `scripts/validation` from the tests, which fail when it no longer holds.\n"]
    for table, rows in sorted(tables.items()):
        lines.append(f"\n## {table}\n\n{HEAD}")
        for (case, quantity), cells in sorted(rows.items(), key=lambda row: natural(row[0][0])):
            lines.append(f"| {case} | {quantity} | {' | '.join(cells[:4])} |\n")
    return "".join(lines)


def index(chapters):
    lines = ["# Validation\n\nEvery comparison with something outside the solver that it checks: our figure, theirs, the "
             "difference and its limit.\nWritten by `scripts/validation` from the tests; a test fails when a page no "
             "longer holds what it computes.\n\n*nearest* is the largest share of a limit that any row of the table "
             "uses up.\n\n| page | table | rows | nearest |\n|---|---|---|---|\n"]
    for chapter in [name for name in TITLES if name in chapters]:
        for table, rows in sorted(chapters[chapter].items()):
            worst = max(float(cells[4]) for cells in rows.values())
            lines.append(f"| [{TITLES[chapter][0]}]({chapter}.md) | {table} | {len(rows)} | {worst:.0%} |\n")
    return "".join(lines)


def row_names(text):
    table, names = "", set()
    for line in text.splitlines():
        if line.startswith("## "):
            table = line[3:]
        elif line.startswith("| ") and line.count("|") == 7:
            names.add((table, *[cell.strip() for cell in line.split("|")[1:3]]))
    return names


def main():
    parser = argparse.ArgumentParser(description=__doc__)
    parser.add_argument("rows", type=pathlib.Path)
    parser.add_argument("pages", type=pathlib.Path)
    parser.add_argument("--check", action="store_true", help="write nothing; fail where a page has other rows")
    arguments = parser.parse_args()
    chapters = gather(arguments.rows)
    if not chapters:
        sys.exit("the tests left no row")
    texts = {f"{chapter}.md": page(chapter, tables) for chapter, tables in chapters.items()}
    if arguments.check:
        for name, text in texts.items():
            path = arguments.pages / name
            if not path.exists() or row_names(path.read_text()) != row_names(text):
                sys.exit(f"{path}: other rows than the tests have; scripts/validation writes it")
        return
    texts["README.md"] = index(chapters)
    arguments.pages.mkdir(exist_ok=True)
    for name, text in texts.items():
        (arguments.pages / name).write_text(text)
    print(f"{sum(len(rows) for tables in chapters.values() for rows in tables.values())} comparisons written")


if __name__ == "__main__":
    main()
