namespace Throwright.Files.Tests;

internal static partial class SoundFiles
{
    /// <summary>Points by tape, and a conduit with supports and ends.</summary>
    public const string Routed =
        """
        {
          "format": 1,
          "aircraft": { "name": "Demo" },
          "points": {
            "A": ["0 in", "-20 in", "10 in"], "B": ["0 in", "20 in", "10 in"], "C": ["30 in", "0 in", "12 in"],
            "valve-pivot": {
              "taped": { "A": "38 in", "B": "29 in ± 1/8 in", "C": "24 in" }, "tape": "± 1/16 in",
              "side": "above A"
            },
            "valve-anchor": {
              "taped": { "A": "38 5/8 in", "B": "27 in", "C": "21 in", "valve-pivot": "4 in" },
              "level": "valve-pivot", "within": "+/- 1/8 in", "side": "above",
              "at": ["20 in", "6 in", "35 in"]
            },
            "clamp-1": { "plumb": "C", "waterline": "5 in ± 1/16 in" },
            "clamp-2": { "sameStation": "C", "sameButtline": "B", "station": "30 in", "buttline": "20 in", "taped": { "B": "31 in" }, "side": "below B" },
            "clamp-3": { "inLine": ["A", "C"], "taped": { "A": "9 in" } }
          },
          "runs": [
            {
              "id": "cowl-flap",
              "cable": {
                "conduit": {
                  "outside": "0.187 in ± 0.003 in", "bore": "0.078 in",
                  "tableEdge": { "overhang": "20 in", "droop": "3 in ± 1/16 in" }, "weight": "0.06 lbf/ft"
                },
                "ordered": "62 in ± 1/8 in",
                "supports": [
                  { "at": "clamp-1", "along": [1, 0, 0.2], "kind": "tightClamp", "size": "3/16 in", "fromAnchor": "12 in ± 1/4 in", "stays": true },
                  { "at": ["40 in", "0 in", "5 in"], "along": [1, 0, 0], "kind": "slidingClamp" },
                  { "at": "clamp-2", "kind": "grommet" }
                ],
                "places": ["clamp-3", ["44 in", "1 in", "6 in"]],
                "ends": {
                  "leaves": { "at": ["60 in", "2 in", "20 in"], "along": [-1, 0, 0] },
                  "inBushing": "3/4 in", "inAnchor": "1 in", "wireInKnob": "1 1/2 in",
                  "wireBeyondPin": "3/4 in", "trimming": "2 in", "orderStep": "1 in",
                  "moves": [ { "name": "engine down", "up": "-1/4 in", "aft": "1/16 in", "right": "1/8 in", "turn": "1 deg", "about": [0, 1, 0] } ],
                  "twist": { "turn": "90 deg", "torsion": "0.5" }
                }
              },
              "leverEnd": {
                "arm": { "radius": "38 mm", "zero": [0, 0, 1] },
                "sweep": "90 deg", "pivot": "valve-pivot", "axis": [0, 1, 0],
                "anchor": { "at": "valve-anchor", "along": [1, 0, 0] }
              }
            },
            {
              "id": "other", "label": "MIXTURE",
              "cable": { "conduit": { "bending": "0.2 N m2 ± 20 %" }, "ends": { "arrives": { "at": "clamp-3", "along": [0, 0, 1] } } }
            }
          ]
        }
        """;
}
