#pragma once
// A whole design file for the tests of this folder, and one with the needed parts only.
#include <gtest/gtest.h>

#include <string>

namespace loopwright::document {

inline const std::string whole_text = R"({
  "format": "loopwright-design",
  "version": 1,
  "title": "Test loop",
  "note": "invented example",
  "loop": {
    "outline": "circle",
    "size": "36 in",
    "size_is": "diameter",
    "turns": 2,
    "arrangement": "stack",
    "turn_spacing": "2*30 mm",
    "lead": "50 mm",
    "gap": "20 mm"
  },
  "conductor": {
    "form": "tube",
    "diameter": "22 mm",
    "wall": "1 mm",
    "metal": {
      "conductivity": "58 MS/m",
      "temperature_coefficient": "0.00393 /K"
    },
    "temperature": "20 °C"
  },
  "joints": [
    {
      "count": 2,
      "resistance": "1 mΩ"
    }
  ],
  "capacitor": {
    "minimum": "12 pF",
    "maximum": "150 pF",
    "stray": "3 pF",
    "loss": {
      "q": 1000
    },
    "contact_resistance": "0 mΩ",
    "rating": {
      "peak_voltage": "2 kV"
    }
  },
  "coupling": {
    "kind": "loop",
    "diameter": "0,18 m",
    "conductor_diameter": "4 mm",
    "axis_offset": "30 mm"
  },
  "site": {
    "plane": "vertical",
    "tilt": "0°",
    "lowest_point": "1.0 m",
    "standing_level": "0 m",
    "ground": {
      "relative_permittivity": 13,
      "conductivity": "5 mS/m"
    }
  },
  "station": {
    "power": "5 W",
    "emission": "ft8",
    "region": 1,
    "bands": [
      "40m",
      "30m",
      "20m"
    ]
  }
}
)";

inline const std::string least_text = R"({"format": "loopwright-design", "version": 1,
 "loop": {"outline": "circle", "size": "1 m"},
 "conductor": {"form": "tube", "diameter": "22 mm", "wall": "1 mm", "metal": "copper"},
 "capacitor": {"minimum": "12 pF", "maximum": "150 pF"}})";

/// The text with one part exchanged; fails where the part is not there exactly once.
inline std::string with(std::string text, const std::string& part, const std::string& other) {
    const auto at = text.find(part);
    EXPECT_NE(at, std::string::npos) << part;
    EXPECT_EQ(text.find(part, at + 1), std::string::npos) << part << " is there twice";
    return at == std::string::npos ? text : text.replace(at, part.size(), other);
}

/// The whole text, in canonical form, with every key that is written only where it is not the default.
inline std::string full_text() {
    std::string text = with(whole_text, R"(      "peak_voltage": "2 kV"
    })",
                            R"(      "peak_voltage": "2 kV",
      "gap": "1 mm",
      "plate_edges": "rounded",
      "safety_factor": 2,
      "current": "12 A"
    },
    "arrangement": "butterfly",
    "added": [
      {
        "capacitance": "100 pF",
        "connection": "parallel",
        "peak_voltage": "3 kV",
        "current": "5 A",
        "q": 2000,
        "note": "silver mica",
        "bands": [
          "80m",
          "160m"
        ]
      },
      {
        "capacitance": "1 nF",
        "connection": "series"
      }
    ],
    "dial": {
      "law": "table",
      "scale": "turns",
      "at_minimum": 12,
      "at_maximum": 0.5,
      "table": [
        {
          "reading": 12,
          "capacitance": "13 pF"
        },
        {
          "reading": 4.5,
          "capacitance": "70 pF"
        },
        {
          "reading": 0.5,
          "capacitance": "0.15 nF"
        }
      ],
      "hand_step": 0.02,
      "reduction": 6,
      "backlash": 0.05
    },
    "made": {
      "kind": "plates",
      "least_overlap": "5 mm",
      "most_overlap": "11.5 cm",
      "width": "100 mm",
      "spacing": "3 mm",
      "thickness": "1.2 mm",
      "plates": 5,
      "inner_diameter": "14 mm",
      "outer_diameter": "21 mm",
      "pairs": 3,
      "relative_permittivity": 1
    },
    "temperature_coefficient": "50 ppm/K")");
    text = with(text, R"(      "conductivity": "5 mS/m"
    })",
                R"(      "conductivity": "5 mS/m"
    },
    "altitude": "1800 m",
    "air_temperature": "35 °C",
    "people_distance": "2 m")");
    text = with(text, R"(      "20m"
    ])",
                R"(      "20m"
    ],
    "use": {
      "habit": "share_of_slots",
      "share": 0.3
    },
    "limits": [
      "icnirp_1998",
      "fcc_1_1310"
    ],
    "own_limits": [
      {
        "name": "local rule",
        "electric": "28 V/m",
        "magnetic": "0.092 uT",
        "averaging": "6 min",
        "tier": "occupational"
      }
    ],
    "reach": "0.6 m",
    "working_frequencies": [
      {
        "frequency": "7.047 MHz",
        "use": "local net"
      },
      {
        "frequency": "14,2 MHz"
      }
    ])");
    return with(text, R"(      }
    ]
  }
}
)",
                R"(      }
    ]
  },
  "calibration": {
    "date": "2026-05-01",
    "note": "behind the house, dry",
    "points": [
      {
        "reading": 3.25,
        "frequency": "7.05 MHz"
      },
      {
        "reading": 11,
        "frequency": "14.1 MHz"
      }
    ]
  }
}
)");
}

} // namespace loopwright::document
