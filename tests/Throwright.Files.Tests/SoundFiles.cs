namespace Throwright.Files.Tests;

/// <summary>Small sound files that the tests spoil in one place at a time. Invented data.</summary>
internal static class SoundFiles
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
                "arm": { "radius": "1 1/2 in", "holes": ["1 1/4 in", "1 1/2 in"] },
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
}
