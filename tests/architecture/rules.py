"""The rules of the tree. Each takes the root and gives a list of 'file:line: what is wrong'; see DEVELOPERS.md."""
import pathlib
import re

from sources import floors, sources

HARD_LINES = 600
# Tables: long by nature, a reason each. Nothing else may be longer than HARD_LINES.
LONG_TABLES = {}


def _table_of(root, top):
    heading = "floors of `src/`:" if top == "src" else "floors of `ui/`:"
    return floors(root, heading)


def floors_rule(root):
    """A folder includes only lower floors and itself, never a sibling; src includes nothing of ui."""
    problems = []
    core, desktop = _table_of(root, "src"), _table_of(root, "ui")
    if not core or not desktop:
        return ["DEVELOPERS.md: the tables of floors were not found"]
    for source in sources(root, "src", "ui"):
        table = core if source.top == "src" else desktop
        if source.folder not in table:
            problems.append(f"{source.name}:1: folder '{source.folder}' has no floor in DEVELOPERS.md")
            continue
        for line, name, quoted in source.includes():
            target = name.split("/")[0]
            if not quoted or "/" not in name:
                if quoted:
                    problems.append(f"{source.name}:{line}: write the folder: #include \"folder/{name}\"")
                continue
            if source.top == "ui" and target in core and target not in desktop:
                continue
            if target not in table:
                problems.append(f"{source.name}:{line}: '{name}' is of no folder that {source.top}/ may include")
            elif target != source.folder and table[target] >= table[source.folder]:
                problems.append(f"{source.name}:{line}: {source.folder} (floor {table[source.folder]}) may not "
                                f"include {target} (floor {table[target]})")
    return problems


def _is_qt(name):
    return re.match(r"^Q[A-Z]|^Qt[A-Z]\w*/|^q[a-z]+\.h$", name) is not None


def no_qt_in_core(root):
    return [f"{source.name}:{line}: Qt in the core: {name}" for source in sources(root, "src")
            for line, name, _ in source.includes() if _is_qt(name)]


def _qt_classes(module):
    """Class headers of a Qt module as Debian installs them; empty set where Qt is not installed."""
    for folder in pathlib.Path("/usr/include").glob(f"*/qt6/{module}"):
        return {path.name for path in folder.iterdir() if re.match(r"^Q[A-Z]\w+$", path.name)}
    return set()


WINDOW_FREE = ("session", "jobs", "models", "settings")


def qt_headers(root):
    """Charts only in ui/charts; no widgets where no window is; never a whole module."""
    problems = []
    charts, widgets = _qt_classes("QtCharts") - {"QtCharts"}, _qt_classes("QtWidgets") - {"QtWidgets"}
    if not charts or not widgets:
        return ["the Qt headers are not installed, so their use cannot be checked"]
    # These live in QtWidgets for history only, or are in both; none opens a window.
    widgets -= {"QUndoStack", "QUndoCommand", "QUndoGroup"}
    for source in sources(root, "ui", "tests"):
        for line, name, _ in source.includes():
            last = name.split("/")[-1]
            if re.match(r"^Qt(Core|Gui|Widgets|Charts|Svg|Test|PrintSupport|Concurrent)(/\1)?$", name) or \
                    re.match(r"^(Qt\w+)/\1$", name):
                if name not in ("QtTest/QtTest",):
                    problems.append(f"{source.name}:{line}: whole module {name}")
            if source.top != "ui":
                continue
            if (last in charts or name.startswith("QtCharts/")) and source.folder != "charts":
                problems.append(f"{source.name}:{line}: Qt Charts outside ui/charts: {name}")
            if source.folder in WINDOW_FREE and (last in widgets or name.startswith("QtWidgets/")):
                problems.append(f"{source.name}:{line}: widget header in {source.folder}: {name}")
    return problems


HEAVY = {"nlohmann/": "JSON", "CLI/": "CLI11", "tbb/": "oneTBB", "oneapi/": "oneTBB", "Eigen/": "Eigen", "hamlib/": "Hamlib"}


def heavy_headers(root):
    """JSON, CLI11, oneTBB and Eigen stay out of headers but those of a folder's detail/; Eigen may be in numeric/."""
    problems = []
    for source in sources(root, "src", "ui"):
        if not source.is_header:
            continue
        for line, name, _ in source.includes():
            for start, what in HEAVY.items():
                allowed = "detail" in source.parts or (what == "Eigen" and source.folder == "numeric")
                if name.startswith(start) and not allowed:
                    problems.append(f"{source.name}:{line}: {what} in a header: {name}")
    return problems


# All that the program may ask of Hamlib: open and close a line, read the frequency, the list of drivers, and
# what concerns Hamlib itself on this computer (its log, its own settings of the line).
RADIO_CALLS = {"rig_init", "rig_open", "rig_close", "rig_cleanup", "rig_get_freq", "rig_load_all_backends",
               "rig_list_foreach", "rig_set_debug", "rig_set_conf", "rig_token_lookup"}


def radio_only_reads(root):
    """Hamlib in src/radio only, and there no call that could set anything on a radio or key it."""
    problems = []
    for source in sources(root, "src", "ui"):
        for line, name, _ in source.includes():
            if name.startswith("hamlib/") and source.folder != "radio":
                problems.append(f"{source.name}:{line}: Hamlib outside src/radio: {name}")
        if source.name.startswith("src/radio/"):
            code = source.code()
            for found in re.finditer(r"\b(?:rig|amp|rot|network|serial|ser)_\w+(?=\s*\()|\bcaps\s*->\s*(?:set|send|vfo_op)\w*", code):
                if found.group(0) not in RADIO_CALLS:
                    problems.append(f"{source.name}:{source.line_of(found.start())}: {found.group(0)} is none of "
                                    "the calls that only read")
    return problems


def headers_first(root):
    """x.cpp includes x.hpp before anything else: so every build proves that the header compiles alone. Headers
    without a .cpp are compiled alone by the test headers_alone. Every header has #pragma once."""
    problems = []
    found = sources(root, "src", "ui")
    headers = {source.name for source in found if source.is_header}
    for source in found:
        if source.is_header:
            if not re.search(r"^#pragma once$", source.text, re.MULTILINE):
                problems.append(f"{source.name}:1: #pragma once is missing")
            continue
        own = source.name[:-4] + ".hpp"
        if own in headers:
            first = next((name for _, name, quoted in source.includes()), "")
            if f"{source.top}/{first}" != own:
                problems.append(f"{source.name}:1: the first include has to be its own header, not '{first}'")
    return problems


def lonely_headers(root):
    """Headers that no .cpp of the same name proves."""
    found = sources(root, "src", "ui")
    bodies = {source.name for source in found if not source.is_header}
    return [source.name for source in found if source.is_header and source.name[:-4] + ".cpp" not in bodies]


def file_size(root):
    problems = []
    for source in sources(root, "src", "ui", "tests"):
        lines = source.text.count("\n")
        if lines > HARD_LINES and source.name not in LONG_TABLES:
            problems.append(f"{source.name}:{HARD_LINES}: {lines} lines, {HARD_LINES} is the most")
    return problems


COLOUR = re.compile(r'QColor\s*[({]\s*(?:\d|0x|"|QStringLiteral)|\bqRgba?\s*\(\s*\d|'
                    r"Qt::(?:dark)?(?:[Rr]ed|[Gg]reen|[Bb]lue|[Cc]yan|[Mm]agenta|[Yy]ellow|[Gg]ray)\b|"
                    r"Qt::(?:black|white|lightGray)\b|QColorConstants::(?!Transparent)")
COLOUR_TEXT = re.compile(r"#(?:[0-9a-fA-F]{3}|[0-9a-fA-F]{6}|[0-9a-fA-F]{8})\b|\brgba?\s*\(\s*\d")


def fixed_colours(root):
    """Colours come from the widget palette or from the one palette of the program (ui/charts, ui/drawings)."""
    problems = []
    for source in sources(root, "ui"):
        if source.folder in ("charts", "drawings") and "palette" in source.parts[-1]:
            continue
        code = source.code()
        for found in COLOUR.finditer(code):
            problems.append(f"{source.name}:{source.line_of(found.start())}: fixed colour {found.group(0)}")
        for line, text in source.literals():
            if COLOUR_TEXT.search(text):
                problems.append(f"{source.name}:{line}: fixed colour in \"{text}\"")
    return problems


# 'safe' may only be denied or be part of another word: nothing here can promise that a field or a voltage is safe.
SAFE = re.compile(r"\bsafe(?:ly|ty)?\b", re.IGNORECASE)
DENIED = re.compile(r"\b(?:not|never|no|nor|un)\b[^.]*\bsafe(?:ly|ty)?\b|\bsafety\s+(?:rules?|codes?|standards?)\b",
                    re.IGNORECASE)


def wording(root):
    """No bare 'safe' and no exclamation mark in what a person reads; no path of one machine anywhere."""
    problems = []
    for source in sources(root, "src", "ui"):
        for line, text in source.literals():
            if SAFE.search(text) and not DENIED.search(text):
                problems.append(f"{source.name}:{line}: a bare 'safe' in \"{text}\"")
            if re.search(r"[A-Za-z]!(?:\s|$)", text):
                problems.append(f"{source.name}:{line}: an exclamation mark in \"{text}\"")
    private = re.compile("\\.\\./" + "shared" + r"\b|(?<![\w/.])/" + r"work/\w")
    for top in ("src", "ui", "tests", "designs", "docs", "scripts"):
        for path in sorted(pathlib.Path(root, top).rglob("*")):
            if path.suffix in (".cpp", ".hpp", ".md", ".loop", ".json", ".py", ".cmake", ".txt", ""):
                if path.is_file():
                    for number, text in enumerate(path.read_text(encoding="utf-8").split("\n"), 1):
                        if private.search(text):
                            problems.append(f"{path.relative_to(root)}:{number}: a path outside the repository")
    return problems


RULES = {
    "floors": floors_rule,
    "no_qt_in_core": no_qt_in_core,
    "qt_headers": qt_headers,
    "heavy_headers": heavy_headers,
    "radio_only_reads": radio_only_reads,
    "headers_first": headers_first,
    "file_size": file_size,
    "fixed_colours": fixed_colours,
    "wording": wording,
}
