#!/usr/bin/python3
"""docs/reference/design-file.schema.json is a schema of draft 7, every sample of designs/ satisfies it, and it refuses
what it should."""
import copy
import json
import pathlib
import sys

import jsonschema

ROOT = pathlib.Path(sys.argv[1])


def put(document, path, value):
    for step in path[:-1]:
        document = document[step]
    if value is DELETE:
        del document[path[-1]]
    else:
        document[path[-1]] = value


DELETE = object()
# Each makes the backpack loop a document that the schema has to refuse.
REFUSED = [
    (("format",), "other"),
    (("version",), 2),
    (("version",), DELETE),
    (("loop",), DELETE),
    (("colour",), "red"),
    (("loop", "siez"), "1 m"),
    (("loop", "size"), 0.9),
    (("loop", "size"), DELETE),
    (("loop", "outline"), "oval"),
    (("loop", "outline"), "rectangle"),
    (("loop", "turns"), 13),
    (("loop", "turns"), 1.5),
    (("loop", "corner_down"), "no"),
    (("conductor", "form"), "tube"),
    (("conductor", "metal"), DELETE),
    (("conductor", "metal"), {"temperature_coefficient": "0.004 /K"}),
    (("conductor", "braid_factor"), 0.5),
    (("joints", 0, "resistance"), DELETE),
    (("joints", 0, "count"), -1),
    (("capacitor", "maximum"), DELETE),
    (("capacitor", "loss"), {"q": 1000, "series_resistance": "1 mΩ"}),
    (("capacitor", "loss", "q"), 1e13),
    (("capacitor", "rating", "voltage"), "1 kV"),
    (("capacitor", "rating", "plate_edges"), "blunt"),
    (("capacitor", "rating", "safety_factor"), 0.9),
    (("capacitor", "arrangement"), "triple"),
    (("capacitor", "added"), [{"capacitance": "10 pF"}]),
    (("capacitor", "added"), [{"capacitance": "10 pF", "connection": "series", "gap": "1 mm"}]),
    (("capacitor", "added"), [{"capacitance": "10 pF", "connection": "series", "bands": ["80m", "80m"]}]),
    (("capacitor", "dial"), {"law": "cosine"}),
    (("capacitor", "dial"), {"law": "table"}),
    (("capacitor", "dial"), {"law": "table", "table": [{"reading": 1, "capacitance": "20 pF"}]}),
    (("capacitor", "dial"), {"scale": "turns"}),  # without its stops
    (("capacitor", "dial"), {"hand_step": 0}),
    (("capacitor", "made"), {"kind": "plates", "least_overlap": "5 mm", "most_overlap": "9 cm", "width": "9 cm"}),
    (("capacitor", "made"), {"kind": "trombone", "least_overlap": "5 mm", "most_overlap": "9 cm"}),
    (("capacitor", "temperature_coefficient"), 50e-6),
    (("calibration",), {"points": [{"reading": 5}]}),
    (("station", "working_frequencies"), [{"use": "local net"}]),
    (("coupling", "kind"), "wand"),
    (("coupling", "kind"), "tap"),  # without its length
    (("coupling",), {"kind": "transformer", "turns": 5}),
    (("coupling",), {"kind": "transformer", "turns": 0, "turn_inductance": "0.1 uH"}),
    (("feed_line",), {"impedance": "50 ohm"}),
    (("feed_line",), {"length": "5 m", "loss": [{"frequency": "10 MHz"}]}),
    (("site", "ground"), {"relative_permittivity": 13}),
    (("site", "plane"), "sloping"),
    (("station", "region"), 4),
    (("station", "bands"), ["40m", "40m"]),
    (("station", "use"), {"share": 0.2}),
    (("station", "use"), {"habit": "share_of_slots", "share": 0}),
    (("station", "limits"), ["fcc"]),
    (("station", "own_limits"), [{"name": "local", "electric": "28 V/m"}]),
]


def main():
    schema = json.loads((ROOT / "docs/reference/design-file.schema.json").read_text(encoding="utf-8"))
    jsonschema.Draft7Validator.check_schema(schema)
    validator = jsonschema.Draft7Validator(schema)
    problems = []
    samples = sorted((ROOT / "designs").glob("*.loop"))
    if len(samples) < 7:
        problems.append(f"only {len(samples)} samples in designs/")
    for sample in samples:
        for error in validator.iter_errors(json.loads(sample.read_text(encoding="utf-8"))):
            problems.append(f"{sample.name}: {error.json_path}: {error.message}")
    catalog = dict(schema["definitions"]["catalog"], definitions=schema["definitions"])
    jsonschema.Draft7Validator.check_schema(catalog)
    for error in jsonschema.Draft7Validator(catalog).iter_errors(
            json.loads((ROOT / "designs/capacitors.json").read_text(encoding="utf-8"))):
        problems.append(f"capacitors.json: {error.json_path}: {error.message}")
    sound = json.loads((ROOT / "designs/backpack.loop").read_text(encoding="utf-8"))
    for path, value in REFUSED:
        broken = copy.deepcopy(sound)
        put(broken, path, value)
        if validator.is_valid(broken):
            problems.append(f"the schema lets {path} = {value!r} pass")
    print("\n".join(problems) if problems else f"{len(samples)} samples and the catalog satisfy the schema")
    return 1 if problems else 0


if __name__ == "__main__":
    sys.exit(main())
