#!/usr/bin/python3
"""Every rule is shown a tree that breaks it and one that does not: a rule that cannot fail proves nothing."""
import pathlib
import tempfile
import unittest

import rules
from sources import Source

DEVELOPERS = """
The floors of `src/`:

| floor | folders |
|---|---|
| 0 | `base` |
| 2 | `band` `ground` |
| 4 | `loop` |

The floors of `ui/`:

| floor | folders |
|---|---|
| 1 | `settings` |
| 3 | `charts` `inputs` |
| 5 | `app` |
"""


class Tree(unittest.TestCase):
    def setUp(self):
        self.folder = tempfile.TemporaryDirectory()
        self.root = pathlib.Path(self.folder.name)
        self.write("DEVELOPERS.md", DEVELOPERS)

    def tearDown(self):
        self.folder.cleanup()

    def write(self, name, text):
        path = self.root / name
        path.parent.mkdir(parents=True, exist_ok=True)
        path.write_text(text, encoding="utf-8")

    def breaks(self, rule, name, text, words):
        self.write(name, text)
        problems = rules.RULES[rule](self.root)
        self.assertEqual(len(problems), 1, problems)
        self.assertTrue(problems[0].startswith(name), problems)
        self.assertIn(words, problems[0])

    def keeps(self, rule, name, text):
        self.write(name, text)
        self.assertEqual(rules.RULES[rule](self.root), [])

    def test_upward_include(self):
        self.breaks("floors", "src/band/a.cpp", '#include "loop/b.hpp"\n', "may not include loop")

    def test_sibling_include(self):
        self.breaks("floors", "src/band/a.cpp", '\n#include "ground/b.hpp"\n', "may not include ground")

    def test_core_includes_desktop(self):
        self.breaks("floors", "src/loop/a.cpp", '#include "settings/b.hpp"\n', "no folder that src/ may include")

    def test_desktop_sibling(self):
        self.breaks("floors", "ui/inputs/a.cpp", '#include "charts/b.hpp"\n', "may not include charts")

    def test_unknown_folder(self):
        self.breaks("floors", "src/other/a.cpp", "", "has no floor")

    def test_downward_includes(self):
        self.keeps("floors", "src/loop/a.cpp", '#include "loop/x.hpp"\n#include "band/b.hpp"\n#include <vector>\n')
        self.keeps("floors", "ui/app/a.cpp", '#include "charts/x.hpp"\n#include "loop/b.hpp"\n')

    def test_qt_in_core(self):
        self.breaks("no_qt_in_core", "src/loop/a.cpp", "#include <QString>\n", "QString")

    def test_charts_outside(self):
        self.breaks("qt_headers", "ui/app/a.cpp", "#include <QLineSeries>\n", "outside ui/charts")
        self.keeps("qt_headers", "ui/app/a.cpp", "#include <QWidget>\n")

    def test_widget_in_settings(self):
        self.breaks("qt_headers", "ui/settings/a.cpp", "#include <QLabel>\n", "widget header")

    def test_whole_module(self):
        self.breaks("qt_headers", "ui/app/a.cpp", "#include <QtWidgets>\n", "whole module")

    def test_heavy_header(self):
        self.breaks("heavy_headers", "src/loop/a.hpp", "#include <nlohmann/json.hpp>\n", "JSON")
        self.keeps("heavy_headers", "src/loop/a.hpp", "#include <vector>\n")
        self.breaks("heavy_headers", "src/loop/a.hpp", "#include <hamlib/rig.h>\n", "Hamlib")
        self.write("src/loop/a.hpp", "#include <vector>\n")
        self.keeps("heavy_headers", "src/loop/a.cpp", "#include <nlohmann/json.hpp>\n")

    def test_eigen_in_headers(self):
        self.breaks("heavy_headers", "src/loop/a.hpp", "#include <Eigen/Core>\n", "Eigen")
        self.write("src/loop/a.hpp", "")
        self.keeps("heavy_headers", "src/loop/detail/a.hpp", "#include <Eigen/Core>\n")
        self.keeps("heavy_headers", "src/loop/detail/b.hpp", "#include <nlohmann/json.hpp>\n")

    def test_radio_only_reads(self):
        self.breaks("radio_only_reads", "src/radio/a.cpp", "int c = rig_set_freq(rig, vfo, f);\n", "rig_set_freq")
        self.breaks("radio_only_reads", "src/radio/a.cpp", "int c = rig_set_ptt (rig, vfo, on);\n", "rig_set_ptt")
        self.breaks("radio_only_reads", "src/radio/a.cpp", "rig->caps->set_freq(rig, vfo, f);\n", "caps->set_freq")
        self.keeps("radio_only_reads", "src/radio/a.cpp", "int c = rig_get_freq(rig, vfo, &f); // no rig_set_ptt(\n")
        self.breaks("radio_only_reads", "src/loop/a.cpp", "#include <hamlib/rig.h>\n", "outside src/radio")

    def test_own_header_first(self):
        self.write("src/loop/a.hpp", "#pragma once\n")
        self.breaks("headers_first", "src/loop/a.cpp", '#include <vector>\n#include "loop/a.hpp"\n', "own header")
        self.keeps("headers_first", "src/loop/a.cpp", '#include "loop/a.hpp"\n#include <vector>\n')

    def test_header_without_a_body_is_listed(self):
        self.write("src/loop/a.hpp", "#pragma once\n")
        self.write("src/loop/b.hpp", "#pragma once\n")
        self.write("src/loop/b.cpp", '#include "loop/b.hpp"\n')
        self.assertEqual(rules.lonely_headers(self.root), ["src/loop/a.hpp"])

    def test_pragma_once(self):
        self.breaks("headers_first", "src/loop/a.hpp", "\n", "pragma once")

    def test_long_file(self):
        self.breaks("file_size", "src/loop/a.cpp", "\n" * 601, "601 lines")
        self.keeps("file_size", "src/loop/a.cpp", "\n" * 600)

    def test_fixed_colour(self):
        self.breaks("fixed_colours", "ui/app/a.cpp", "auto c = QColor(1, 2, 3);\n", "QColor(1")
        self.breaks("fixed_colours", "ui/app/a.cpp", 'set("color: #aabbcc");\n', "#aabbcc")
        self.breaks("fixed_colours", "ui/app/a.cpp", "pen.setColor(Qt::red);\n", "Qt::red")
        self.keeps("fixed_colours", "ui/app/a.cpp", "pen.setColor(palette().text().color()); // was Qt::red\n")

    def test_bare_safe(self):
        self.breaks("wording", "src/loop/a.cpp", 'auto t = "The loop is safe.";\n', "bare 'safe'")
        self.keeps("wording", "src/loop/a.cpp", 'auto t = "This is not called safe."; // safe\n')

    def test_exclamation(self):
        self.breaks("wording", "ui/app/a.cpp", 'auto t = "Done!";\n', "exclamation")

    def test_path_outside(self):
        self.breaks("wording", "docs/a.md", "see .." + "/shared/notes\n", "outside the repository")

    def test_literals_skip_comments_and_characters(self):
        self.write("src/loop/a.cpp", "// \"no\"\nchar c = '\"'; auto s = \"yes\"; /* \"no\" */ auto r = R\"(raw)\";\n")
        source = Source(self.root, self.root / "src/loop/a.cpp")
        self.assertEqual([text for _, text in source.literals()], ["yes", "raw"])


if __name__ == "__main__":
    unittest.main()
