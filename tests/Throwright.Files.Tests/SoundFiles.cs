namespace Throwright.Files.Tests;

/// <summary>Small sound files that the tests spoil in one place at a time. Invented data.</summary>
internal static partial class SoundFiles
{
    public const string Bench =
        """
        {
          "format": 1,
          "aircraft": { "name": "Demo", "builder": "", "note": "" },
          "display": { "length": "in", "force": "lbf", "fraction": 32 },
          "yardstick": "user",
          "environment": {
            "airframe": "aluminium", "rigged": "20 degC", "coldest": "-30 degC",
            "cabin": "60 degC", "engineBay": "95 degC", "elsewhere": "55 degC"
          },
          "runs": [
            {
              "id": "cabin-heat",
              "label": "CABIN HEAT"
            },
            {
              "id": "mixture",
              "label": "MIXTURE",
              "how": "PULL FOR LEAN",
              "function": "mixture",
              "emergency": false,
              "safeEnd": "rich",
              "note": "",
              "cushion": { "wanted": "1/8 in", "most": "1 in" },
              "handForceMost": "15 lbf",
              "cockpitEnd": {
                "stroke": "2.5 in ± 0.03 in", "pushMeans": "rich", "pullMeans": "lean",
                "knob": { "shape": "round", "colour": "black" },
                "lock": "vernier", "lockHolds": "20 lbf", "play": "0.01 in"
              },
              "cable": {
                "core": { "kind": "solid", "diameter": "0.062 in ± 0.001 in", "material": "musicWire" },
                "conduit": { "bore": "0.080 in ± 0.003 in", "material": "carbonSteel", "minRadius": "4 in", "pullStiffness": "400 N/mm ± 10 %", "pushStiffness": "60 N/mm" },
                "friction": "0.15 ± 0.05",
                "length": "48 in",
                "bends": [ { "angle": "90 deg", "radius": "5 in" } ],
                "longestStraight": "14 in",
                "limits": { "pull": "50 lbf", "push": "15 lbf" },
                "drag": { "knob": "0.5 lbf", "device": "0.25 lbf" },
                "source": "invented"
              },
              "leverEnd": {
                "arm": { "radius": "1 1/2 in", "holes": ["1 1/4 in", "1 1/2 in"], "width": "3/4 in" },
                "sweep": { "from": "-45 deg ± 1 deg", "to": "45 deg ± 2 deg" },
                "bench": { "distance": "4 in", "rule": "squareAtMid" },
                "anchor": { "tip": "3/8 in", "swivels": "8 deg", "stiffness": "2000 lbf/in" },
                "swivel": {
                  "length": "5/16 in", "play": "0.003 in",
                  "rigged": { "stop": "push", "knobOut": "3/16 in" },
                  "holdsBy": ["setScrew", "bentTail"]
                },
                "load": {
                  "torqueTable": [["-45 deg", "4 lbf in"], ["45 deg", "9 lbf in ± 20 %"]],
                  "measured": true,
                  "bias": { "toward": "push", "torque": "2 lbf in", "rate": "0.02 lbf in/deg", "spring": true },
                  "detents": [ { "at": "45 deg", "torque": "1 lbf in", "within": "5 deg" } ]
                },
                "zone": "engineBay",
                "valve": { "boreRatio": "0.66", "open": "push", "lineLoss": "7" }
              }
            }
          ]
        }
        """;

    public const string Spatial =
        """
        {
          "format": 1,
          "aircraft": { "name": "Demo" },
          "points": {
            "flap-pivot": ["12 in", "-3 in ± 1/16 in", "4 in"],
            "flap-anchor": ["16 in", "-3 in", "5.5 in"]
          },
          "runs": [
            {
              "id": "cowl-flap",
              "cable": { "core": { "diameter": "0.062 in" }, "bendTotal": "180 deg" },
              "leverEnd": {
                "arm": { "radius": "38 mm", "zero": [0, 0, 1], "alongAxis": "2 mm" },
                "sweep": "90 deg +4/-2 deg",
                "pivot": "flap-pivot",
                "axis": [0, "1", 0.25],
                "anchor": { "at": "flap-anchor", "along": [-1, 0, 0] },
                "swivel": { "at": "60 mm ± 1 mm" },
                "load": { "torque": "6 lbf in" }
              }
            }
          ]
        }
        """;

    /// <summary>Everything that clearance and mount look at.</summary>
    public const string Cockpit =
        """
        {
          "format": 1,
          "aircraft": { "name": "Demo" },
          "points": { "flap-hole": ["20 in", "3 in ± 1/16 in", "30 in"] },
          "pilot": {
            "eye": ["45 in", "0 in", "42 in"], "shoulder": ["50 in", "8 in", "34 in"], "reach": "25 in",
            "largest": "man50", "smallest": "woman50", "strength": { "pull": "25 lbf", "push": "20 lbf", "pinch": "10 lbf" }
          },
          "sheets": [
            {
              "id": "panel", "at": ["20 in", "0 in", "30 in"], "normal": [1, 0, 0], "up": [0, 0, 1],
              "thickness": "0.063 in ± 0.003 in", "material": "2024-T3", "curve": { "radius": "60 in ± 2 in", "straight": [0, 0, 1], "bulges": "away" },
              "outline": [["20 in", "-15 in", "28 in"], ["20 in", "15 in", "28 in"], ["20 in", "15 in", "36 in"]],
              "holes": [{ "at": ["20 in", "2 in", "30 in"], "diameter": "3/4 in ± 1/32 in" }]
            },
            { "id": "console", "at": ["30 in", "0 in", "16 in"], "normal": [0, 0, 1] }
          ],
          "bodies": [
            {
              "id": "flap-lever", "note": "invented",
              "joints": [
                { "id": "lever", "turn": [0, 1, 0], "about": ["24 in", "2 in", "20 in"], "from": "-20 deg", "to": "35 deg" },
                { "id": "lift", "slide": [0, 0, 1], "from": "1/8 in", "to": "1/2 in" },
                { "id": "trigger", "turn": [1, 0, 0], "about": ["24 in", "2 in", "25 in"], "from": "30 deg", "to": "-5 deg", "follows": "lever" }
              ],
              "gates": [ { "joints": ["lever", "lift"], "limit": [["35 deg", "1/4 in"], ["20 deg", "1/2 in"]] } ],
              "shapes": [
                { "name": "bar", "capsule": { "from": ["24 in", "2 in", "20 in"], "to": ["24 in", "2 in", "25 in"], "radius": "1/4 in" } },
                { "sphere": { "centre": ["24 in", "2 in", "25.5 in"], "radius": "3/4 in ± 1/16 in" } }
              ],
              "allow": "1/4 in",
              "keepAway": { "distance": "2 in", "because": "heat" },
              "touches": [ { "part": "bar", "with": "cowl-flap", "withPart": "shank", "why": "rests there" } ]
            },
            {
              "id": "box",
              "shapes": [
                { "box": { "centre": ["30 in", "0 in", "12 in"], "size": ["10 in", "4 in", "3 in"], "along": [1, 1, 0], "up": [0, 0, 1] } },
                { "cylinder": { "from": ["24 in", "1 in", "22 in"], "to": ["24 in", "3 in", "22 in"], "radius": "1/2 in" } },
                { "cone": { "from": ["24 in", "2 in", "20 in"], "to": ["24 in", "2 in", "21 in"], "radius": "1 in", "endRadius": "1/2 in" } },
                { "plane": { "at": ["0 in", "0 in", "10 in"], "normal": [0, 0, 1] } },
                { "mesh": { "file": "meshes/grip.stl", "unit": "cm", "up": "y", "aft": "-z", "at": ["36 in", "0 in", "30 in"], "accuracy": "0.5 mm" } },
                { "mesh": { "file": "cowl.stl", "unit": "in", "matched": [
                  { "mesh": [1.5, 0, 0], "aircraft": "flap-hole" }, { "mesh": [4, 2, 0], "aircraft": ["1 in", "0 in", "0 in"] }, { "mesh": [0, 5, 3], "aircraft": ["0 in", "1 in", "0 in"] } ] } }
              ]
            },
            { "id": "stick",
              "stick": { "pivot": ["36 in", "0 in", "12 in"], "length": "22 in", "grip": "5 in", "shaftDiameter": "1 in", "gripDiameter": "1 1/2 in",
              "forward": "15 deg", "aft": "20 deg", "left": "21 deg", "right": "22 deg" },
              "gates": [ { "joints": ["pitch", "roll"], "limit": [["20 deg", "12 deg"], ["8 deg", "22 deg"]] } ] },
            { "id": "yoke",
              "yoke": { "hub": ["30 in", "14 in", "28 in"], "shaftLength": "10 in", "shaftDiameter": "1 in", "width": "12 in", "horn": "5 in",
              "rimDiameter": "1.1 in", "travel": "7 in", "turn": "80 deg" } },
            { "id": "pedals",
              "pedals": { "left": ["18 in", "-5 in", "11 in"], "right": ["18 in", "5 in", "11 in"], "width": "4 in", "length": "10 in", "thickness": "4 in", "swing": "20 deg" } },
            { "id": "right-leg",
              "leg": { "side": "right", "hip": ["52 in", "4 in", "20 in"], "heel": ["22 in", "5 in", "12 in"], "size": "woman95",
              "thigh": "19 in", "shin": "20 in", "thighDiameter": "8 in", "shinDiameter": "6 in", "outward": "20 deg", "inward": "5 deg" } },
            { "id": "bow", "frame": { "line": [["20 in", "-15 in", "36 in"], ["20 in", "0 in", "44 in"], ["20 in", "15 in", "36 in"]], "diameter": "1 in" } }
          ],
          "runs": [
            {
              "id": "cowl-flap",
              "cockpitEnd": {
                "stroke": "3 in",
                "sheet": "panel", "hole": "flap-hole", "tilt": { "up": "3 deg", "right": "-5 deg" },
                "turns": { "left": "10 deg", "right": "90 deg", "winds": "right" },
                "knob": { "shape": "tHandle", "colour": "black", "diameter": "1 in", "length": "1.1 in", "width": "4 in", "hand": "1.2 in" },
                "shank": { "diameter": "3/8 in", "out": "1/2 in" },
                "bushing": { "thread": "1/2-20 UNF", "length": "1 in", "diameter": "0.5 in", "nut": "3/4 in", "nutHeight": "5/16 in", "hole": "0.51 in" },
                "wedge": {
                  "stock": "printed", "key": "flat", "material": "PETG", "finish": "none", "outside": "1.25 in", "thinEdge": "0.08 in", "chamfer": "0.02 in",
                  "pinDiameter": "0.1 in", "pinDepth": "0.07 in", "flatAt": "0.22 in", "kerf": "0.07 in", "washers": "0.03 in"
                },
                "clear": "0.4 in"
              },
              "leverEnd": {
                "bracket": {
                  "material": "6061-T6", "thickness": "0.063 in", "bend": "80 deg", "radius": "0.13 in", "base": "1.6 in", "standing": "1.25 in", "width": "1.5 in",
                  "top": { "shape": "u", "length": "1 in", "bend": "70 deg", "radius": "0.15 in" }, "conduitIn": "top", "conduitAbove": "0.3 in",
                  "corner": "0.1 in", "neutral": "0.44", "conduit": { "at": "0.75 in", "across": "0.1 in", "diameter": "0.25 in" },
                  "fasteners": [ { "at": "0.65 in", "across": "0.3 in", "diameter": "0.19 in" }, { "at": "1.2 in", "diameter": "0.19 in" } ], "fastener": "AN3"
                }
              }
            }
          ]
        }
        """;
}
