"""What the rules read: the tracked tree as files, includes and string literals. Standard library only."""
import pathlib
import re

INCLUDE = re.compile(r'^\s*#\s*include\s*([<"])([^>"]+)[>"]', re.MULTILINE)
# A character literal is skipped whole, so that '"' opens no string. Raw strings first: their body is free text.
TOKEN = re.compile(
    r'R"(?P<mark>[^()\s\\]{0,16})\((?P<raw>.*?)\)(?P=mark)"'
    r'|"(?P<text>(?:\\.|[^"\\\n])*)"'
    r"|(?<![0-9A-Za-z_])'(?:\\.|[^'\\\n])+'"
    r"|(?P<line>//[^\n]*)"
    r"|(?P<block>/\*.*?\*/)",
    re.DOTALL)


class Source:
    """One C++ file: path below the root (with forward slashes) and text."""

    def __init__(self, root, path):
        self.name = path.relative_to(root).as_posix()
        self.text = path.read_text(encoding="utf-8")
        self.parts = self.name.split("/")

    @property
    def top(self):
        return self.parts[0]

    @property
    def folder(self):
        """src/loop/detail/x.cpp is of folder loop; a file straight below src has none."""
        return self.parts[1] if len(self.parts) > 2 else ""

    @property
    def is_header(self):
        return self.name.endswith(".hpp")

    def line_of(self, offset):
        return self.text.count("\n", 0, offset) + 1

    def includes(self):
        """(line, name, quoted) of each include."""
        for found in INCLUDE.finditer(self.text):
            yield self.line_of(found.start(2)), found.group(2), found.group(1) == '"'

    def literals(self):
        """(line, text) of each string literal; comments and characters are no strings, includes neither."""
        for found in TOKEN.finditer(INCLUDE.sub(lambda m: " " * len(m.group(0)), self.text)):
            text = found.group("raw") if found.group("raw") is not None else found.group("text")
            if text is not None:
                yield self.line_of(found.start()), text

    def code(self):
        """The text with comments blanked, line numbers kept."""
        def blank(found):
            if found.group("line") is None and found.group("block") is None:
                return found.group(0)
            return re.sub(r"[^\n]", " ", found.group(0))
        return TOKEN.sub(blank, self.text)


def sources(root, *tops):
    """Every .cpp and .hpp below the given top folders, in order."""
    found = []
    for top in tops:
        for path in sorted(pathlib.Path(root, top).rglob("*")):
            if path.suffix in (".cpp", ".hpp"):
                found.append(Source(pathlib.Path(root), path))
    return found


def floors(root, heading):
    """{folder: floor} from the table below the line of DEVELOPERS.md that ends in the given words."""
    lines = pathlib.Path(root, "DEVELOPERS.md").read_text(encoding="utf-8").split("\n")
    table, inside = {}, False
    for line in lines:
        if line.rstrip().endswith(heading):
            inside = True
        row = re.match(r"^\|\s*(\d+)\s*\|(.*)\|\s*$", line)
        if inside and row:
            for folder in re.findall(r"`([a-z_]+)`", row.group(2)):
                table[folder] = int(row.group(1))
        elif inside and table and not line.startswith("|"):
            break
    return table
