namespace Throwright.Files.Tests;

internal static partial class SoundFiles
{
    /// <summary>Everything that rules of installation ask.</summary>
    public const string Installed =
        """
        {
          "format": 1, "aircraft": { "name": "Test bird" }, "basis": "part23",
          "runs": [
            {
              "id": "fuel",
              "installation": {
                "critical": true, "guard": "button", "limitForce": "40 lbf", "side": "engine", "swivelHeld": "46 lbf", "anchorHeld": "46 lbf",
                "anchorOn": "deviceBracket", "conduitFire": "fireproof", "liner": "PTFE", "cableHottest": "110 degC",
                "joint": { "kind": "clevisPin", "turns": true, "diameter": "3/16 in", "arm": "1/8 in", "swivel": "1/4 in", "bearing": "90 ksi", "material": "steel", "heldBy": ["cotter", "structure"] },
                "legend": { "height": "3/16 in", "distance": "28 in", "lightOnDark": true },
                "near": [ { "what": "fuelLine", "distance": "1 in" } ],
                "parts": [ { "name": "wedge washer", "material": "PC", "place": "sunlit", "clamped": true } ],
                "strength": { "forked": true, "pinShear": "75 ksi", "armWidth": "1/2 in", "armEdge": "3/8 in", "armYield": "36 ksi", "bracketYield": "35 ksi", "shankYield": "30 ksi" }
              },
              "asBuilt": [ { "date": "2026-03-01", "by": "A", "note": "first", "rerigged": true, "temperature": "20 degC", "knobAtPush": "3/8 in", "knobAtPull": "2 3/8 in", "tipGap": "1 in", "lostMotion": "1/32 in", "sweep": "90 deg", "pull": "5 lbf", "push": "5 lbf", "hold": "10 lbf" } ]
            }
          ]
        }
        """;
}
