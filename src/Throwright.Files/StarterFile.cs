using Throwright.Files.Json;

namespace Throwright.Files;

/// <summary>The file that a new aircraft starts with: one control, every member explained.</summary>
public static class StarterFile
{
    /// <summary>The text of a starter file. It reads without problems if the name does (1 to 100 printable characters).</summary>
    public static string Text(string name)
    {
        ArgumentNullException.ThrowIfNull(name);
        return Template.Replace("\"@\"", JsonText.Quoted(name), StringComparison.Ordinal).ReplaceLineEndings("\n");
    }

    // Lines that start with // and a quote are members to be put in; the tests put in each of them and read the file.
    private const string Template =
        """
        // The push-pull controls of one aircraft.
        //
        // All that stands behind // is for you; the program skips it.
        // A measure is a text with its unit: "1 3/4 in", "44.5 mm", "90 deg", "6 lbf in", "20 lbf", "20 degC".
        // Behind it, how far it may be off, if you know: "44.5 mm ± 0.5 mm", "92 deg +2/-1 deg", "6 lbf in ± 20 %".
        // Lengths: in, mm, cm, m, ft.  Forces: lbf, N.  Torques: lbf in, N m.  Angles: deg.  Temperatures: degC, degF.
        // What you don't know yet you leave out: put // in front of the line. The program asks for what it needs.
        //
        // The figures in this file are invented. Put your own in their place before you trust an answer.
        // The kit's plans, the engine maker's manual and your local rules come first. Nothing here is an approval.
        {
          // Lets an editor help you type, if you keep the schema beside this file.
          // "$schema": "throwright.schema.json",

          // Format of this file. Leave it as it is.
          "format": 1,

          "aircraft": {
            // The name that stands on the papers.
            "name": "@",
            // Who builds it. May be left out.
            "builder": "",
            // Anything worth keeping. May be left out.
            "note": ""
          },

          // How figures are shown to you. You may type in any unit all the same.
          "display": {
            // "in" or "mm".
            "length": "in",
            // "lbf" or "N".
            "force": "lbf",
            // Smallest part of an inch on your tape: 16, 32 or 64.
            "fraction": 32
          },

          // Built or certificated to what: "amateurBuilt", "part23" or "car3". Says of each published rule whether it binds.
          "basis": "amateurBuilt",
          // Hand forces are measured against a published list: "mil1472" (a guide for everybody), "fac23" (written for
          // flight controls, for comparison), or "user": your own limit, with "handForceMost" in each run.
          "yardstick": "mil1472",

          // Heat and cold move the controls. Left out as a whole: heat is not looked at.
          "environment": {
            // What spans the way from knob to device: "aluminium", "steelTube", "carbonComposite", "glassComposite" or "wood".
            "airframe": "aluminium",
            // The shop on the day you rig the controls.
            "rigged": "20 degC",
            // The coldest morning on the ramp.
            "coldest": "-30 degC",
            // The hottest that each place gets: cabin in the sun, engine bay after shut-down, the rest of the structure.
            "cabin": "60 degC",
            "engineBay": "95 degC",
            "elsewhere": "60 degC"
          },

          // Places that you have measured, by name: [station aft, buttline right, waterline up], with tape and plumb line
          // from your datum. Only the spatial form below needs them.
          // "points": { "mixture-pivot": ["12 in", "-3 in ± 1/16 in", "4 in"], "mixture-anchor": ["16 in", "-3 in", "5 1/2 in"] },
          // Where no ruler reaches, a place by tape: distances from points that are known, each under its name; three fix it,
          // the fourth checks it. "tape" is how far a reading may be off. Two places mirrored at the known points fit alike:
          // "side" says which ("rightOf", "leftOf", "above", "below", "forwardOf", "aftOf", alone or with a point's name).
          //   "mixture-arm": { "taped": { "A": "31 1/8 in", "B": "28 5/16 in", "C": "40 in" }, "tape": "± 1/16 in", "side": "above A" }
          // What else is known of it helps: "level": "A" (same waterline), "plumb": "A" (straight above or below), "sameStation": "A"
          // and "sameButtline": "A", "inLine": ["A", "B"] (by a string), each good to "within": "± 1/8 in"; or a coordinate by
          // itself, "station": "12 in" or "buttline": "-3 in" or "waterline": "4 in". throwright measure --write notes the place under "at".

          // Only for the clearance of handles, and for a mount that has to lean. All of it may wait.
          // Your eyes and the point of your shoulder, seated as in flight; how far you reach from there to a stick in the fist;
          // whose legs must find room and who must reach at least: "woman5", "woman50", "woman95", "man5", "man50", "man95".
          // "pilot": { "eye": ["45 in", "0 in", "42 in"], "shoulder": ["50 in", "8 in", "34 in"], "reach": "26 in", "largest": "man95", "smallest": "woman5", "strength": { "pull": "25 lbf", "push": "20 lbf", "pinch": "10 lbf" } },
          // Panels and consoles that carry bushings: a point on the face toward you, and the way it faces (toward you). "curve" only where
          // it is bent: which way a straight edge lies on it, and whether it bulges "toward" or "away" from you.
          // "sheets": [ { "id": "panel", "at": ["20 in", "0 in", "30 in"], "normal": [1, 0, 0.2], "up": [0, 0, 1], "thickness": "0.063 in", "material": "2024-T3", "curve": { "radius": "40 in", "straight": [0, 1, 0], "bulges": "toward" }, "outline": [["20 in", "-15 in", "30 in"], ["20 in", "15 in", "30 in"], ["18.8 in", "0 in", "36 in"]], "holes": [{ "at": ["20 in", "-6 in", "30 in"], "diameter": "3/4 in" }] } ],
          // What a handle must not meet, each from a few measurements. Joints are at zero where you measure.
          // "bodies": [ { "id": "stick", "stick": { "pivot": ["36 in", "0 in", "12 in"], "length": "22 in", "grip": "5 in", "shaftDiameter": "1 in", "gripDiameter": "1 1/2 in", "forward": "15 deg", "aft": "20 deg", "left": "20 deg", "right": "20 deg" } } ],
          // More of them, to put between those brackets. "keepAway" is the distance that conduits keep ("heat", "edge" or "other"):
          //   { "id": "exhaust", "shapes": [ { "capsule": { "from": ["8 in", "-6 in", "16 in"], "to": ["16 in", "-6 in", "12 in"], "radius": "1 in" } } ], "keepAway": { "distance": "3 in", "because": "heat" } },
          // "allow" is for clothing, all round. "gates" cut off a corner that a stick
          // or yoke does not reach (or any two joints): two places measured at that limit.
          //   { "id": "right-stick", "stick": { "pivot": ["36 in", "16 in", "12 in"], "length": "22 in", "grip": "5 in", "shaftDiameter": "1 in", "gripDiameter": "1 1/2 in", "forward": "15 deg", "aft": "20 deg", "left": "20 deg", "right": "20 deg" }, "gates": [ { "joints": ["pitch", "roll"], "limit": [["20 deg", "12 deg"], ["8 deg", "20 deg"]] } ] },
          //   { "id": "yoke", "yoke": { "hub": ["30 in", "14 in", "28 in"], "shaftLength": "10 in", "shaftDiameter": "1 in", "width": "12 in", "horn": "5 in", "rimDiameter": "1 in", "travel": "7 in", "turn": "80 deg" } },
          //   { "id": "right-leg", "leg": { "side": "right", "hip": ["52 in", "4 in", "20 in"], "heel": ["22 in", "5 in", "12 in"], "size": "man95", "outward": "20 deg", "inward": "5 deg" }, "allow": "1/4 in" },
          //   { "id": "left-leg", "leg": { "side": "left", "hip": ["52 in", "-4 in", "20 in"], "heel": ["22 in", "-5 in", "12 in"], "thigh": "19 in", "shin": "20 in", "thighDiameter": "8 in", "shinDiameter": "6 in" } },
          //   { "id": "pedals", "pedals": { "left": ["18 in", "-5 in", "11 in"], "right": ["18 in", "5 in", "11 in"], "width": "4 in", "length": "10 in", "thickness": "4 in", "swing": "20 deg" } },
          //   { "id": "canopy-bow", "frame": { "line": [["20 in", "-15 in", "36 in"], ["20 in", "0 in", "44 in"], ["20 in", "15 in", "36 in"]], "diameter": "1 in" } },
          // Anything else: joints from the airframe outward, each a slide or a turn; parts of one shape each. "touches" names parts
          // that may touch, and why. "follows" is a joint that another takes along: at from when that one is at from, at to likewise.
          //   { "id": "floor", "shapes": [ { "plane": { "at": ["0 in", "0 in", "10 in"], "normal": [0, 0, 1] } } ], "note": "" },
          //   { "id": "flap-lever", "joints": [ { "id": "lever", "turn": [0, 1, 0], "about": ["24 in", "2 in", "20 in"], "from": "-20 deg", "to": "35 deg" }, { "id": "lift", "slide": [0, 0, 1], "from": "0 in", "to": "1/2 in", "follows": "lever" } ], "shapes": [ { "name": "bar", "capsule": { "from": ["24 in", "2 in", "20 in"], "to": ["24 in", "2 in", "25 in"], "radius": "1/4 in" } } ], "touches": [ { "part": "bar", "with": "mixture", "withPart": "shank", "why": "rests there when closed" } ] },
          //   { "id": "trim-box", "shapes": [ { "box": { "centre": ["30 in", "0 in", "12 in"], "size": ["10 in", "4 in", "3 in"], "along": [1, 0, 0], "up": [0, 0, 1] } }, { "sphere": { "centre": ["26 in", "0 in", "14 in"], "radius": "1 in" } }, { "cylinder": { "from": ["28 in", "0 in", "13 in"], "to": ["28 in", "0 in", "16 in"], "radius": "1 in" } }, { "cone": { "from": ["32 in", "0 in", "13 in"], "to": ["32 in", "0 in", "16 in"], "radius": "1 in", "endRadius": "1/4 in" } } ] },
          // A part can be a scan in a file of its own: its unit ("mm", "cm", "m", "in", "ft"), which of its axes ("x", "y", "z", "-x",
          // "-y", "-z") point up and aft, and where its origin lies, or three places that you find in both; and its accuracy.
          //   { "id": "grip", "shapes": [ { "mesh": { "file": "grip.stl", "unit": "mm", "up": "z", "aft": "x", "at": ["36 in", "0 in", "30 in"], "accuracy": "0.5 mm" } } ] },
          //   { "id": "cowl", "shapes": [ { "mesh": { "file": "cowl.stl", "unit": "in", "matched": [ { "mesh": [0, 0, 0], "aircraft": ["8 in", "0 in", "30 in"] }, { "mesh": [4, 0, 0], "aircraft": ["12 in", "0 in", "30 in"] }, { "mesh": [0, 5, 0], "aircraft": ["8 in", "5 in", "30 in"] } ] } } ] },

          // One entry for each control, from your hand to the device.
          "runs": [
            {
              // Short name for commands and file names: lower case, digits, hyphens.
              "id": "mixture",
              // The words you will engrave: the name, and how it is worked.
              "label": "MIXTURE",
              "how": "PULL FOR LEAN",
              // What it does: "throttle", "mixture", "propeller", "carburettorHeat", "alternateAir", "cowlFlap", "cabinHeat",
              // "cabinAir", "fuelShutoff", "parkingBrake", "tailwheelLock", "waterRudder", "canopyLatch", "baggageLatch",
              // "emergencyGear", "choke", "primer" or "other". Some have rules of their own.
              "function": "mixture",
              // true for a control that is used in an emergency, such as a fuel shutoff.
              "emergency": false,
              // Where the device should be if the cable parts, in the words of pushMeans or pullMeans, or "as set".
              "safeEnd": "rich",
              // Anything worth keeping. May be left out.
              "note": "",

              // Travel that must be left when the device is at its stops: least and most. Left out: the published figures.
              // "cushion": { "wanted": "1/8 in", "most": "1 in" },
              // Your own limit for the force at the knob. Left out: the yardstick's.
              // "handForceMost": "15 lbf",

              // The knob in the panel.
              "cockpitEnd": {
                // Pull the knob from its IN stop to its OUT stop, cable free at the other end, and measure with a steel rule.
                "stroke": "3 in ± 1/32 in",
                // What the device does when you push, and when you pull.
                "pushMeans": "rich",
                "pullMeans": "idle cut-off",
                // Shape: "round" (fingers), "tHandle" (four fingers), "leverHandle" (whole hand).
                "knob": { "shape": "round", "colour": "black" },
                // What holds it: "none", "pressToRelease", "twist", "vernier" or "friction".
                "lock": "vernier",
                // The pull that the lock holds, with a spring scale.
                // "lockHolds": "20 lbf",
                // Hold the wire still and move the knob: how far it moves freely.
                // "play": "0.01 in ± 0.005 in",
                // For clearance: the knob's sizes ("width" for the bar of a T-handle, "hand": room that must stay free round it),
                //   "knob": { "shape": "tHandle", "colour": "black", "diameter": "1 in", "length": "1 in", "width": "4 in", "hand": "1 in" }
                // how far it turns ("winds": like a screw, this way as it is pulled), the shank (from the sheet's face toward you to the back of the knob, pushed in), sheet and hole,
                // "turns": { "left": "0 deg", "right": "90 deg", "winds": "right" },
                // "shank": { "diameter": "3/8 in", "out": "1/2 in" },
                // "sheet": "panel",
                // "hole": ["20 in", "3 in", "30 in"],
                // lean of the shank against the sheet, and the clearance you want all round.
                // "tilt": { "up": "0 deg", "right": "5 deg" },
                // "clear": "1/2 in",
                // The bushing: thread that can be used, its outside, nut across flats, its height, hole in the sheet.
                // "bushing": { "thread": "1/2-20 UNF", "length": "1 in", "diameter": "1/2 in", "nut": "3/4 in", "nutHeight": "5/16 in", "hole": "0.51 in" },
                // For a shank that leans: how you want its two wedges ("stock": "metal" or "printed", a test piece), and what keeps them
                // from turning ("key": "pin", "flat" with "flatAt", or "none").
                // "wedge": { "stock": "metal", "key": "pin", "material": "6061-T6", "finish": "primer", "outside": "1 1/4 in", "thinEdge": "1/16 in", "chamfer": "0.02 in", "pinDiameter": "1/8 in", "pinDepth": "0.08 in", "kerf": "0.08 in", "washers": "0 in" },
                //   on a bushing with a flat: "key": "flat", "flatAt": "0.22 in"
              },

              // Core wire and conduit.
              "cable": {
                "core": {
                  // "solid", or strands: "strand1x7", "strand1x19", "strand7x7", "strand7x19".
                  "kind": "solid",
                  // With a micrometer or caliper.
                  "diameter": "0.062 in ± 0.001 in",
                  // "musicWire" (a magnet holds it) or "stainless302".
                  "material": "musicWire"
                },
                "conduit": {
                  // Outside diameter, with a caliper: clamps go by it.
                  // "outside": "0.187 in ± 0.003 in",
                  // Inside diameter: the largest drill shank that goes in.
                  "bore": "0.080 in ± 0.003 in",
                  // "carbonSteel" or "stainless302".
                  "material": "carbonSteel",
                  // The smallest bend radius that the cable's maker allows.
                  "minRadius": "4 in",
                  // How it lies where it is slack: its weight, and its stiffness against bending with the core in it. Few makers
                  // say the stiffness. A table's edge gives it: hold a piece level, measure what stands out and how far its tip hangs.
                  // "weight": "0.06 lbf/ft ± 5 %",
                  // "tableEdge": { "overhang": "20 in", "droop": "3 in ± 1/8 in" },
                  // "bending": "0.2 N m2 ± 20 %",
                  // How stiff the whole conduit is along its length, core pulled and core pushed. Few makers say it.
                  // "pullStiffness": "400 N/mm ± 30 %",
                  // "pushStiffness": "60 N/mm ± 30 %",
                },
                // Friction of the core in the conduit, no unit. A guess with a wide band is better than none.
                "friction": "0.12 ± 0.04",
                // Length of the conduit, end to end, with a tape.
                "length": "48 in ± 1/4 in",
                // Bend by bend, from the device to the knob: the angle it turns, and its radius (a cardboard arc helps).
                "bends": [ { "angle": "70 deg ± 8 deg", "radius": "8 in ± 1 in" }, { "angle": "50 deg ± 8 deg", "radius": "9 in ± 1 in" } ],
                // Instead of bends only their sum will do at first, "bendTotal": "120 deg ± 15 deg". A half circle is 180 deg.
                // Then the stiff core's drag in the bends can't be counted.
                // The longest stretch without a bend.
                // "longestStraight": "14 in",
                // The way in coordinates. Then the program finds how the conduit lies, and bends, radius and length follow.
                // What holds it, from the device to the knob: a place as a name from "points" or as three lengths; "tightClamp" (grips),
                // "slidingClamp" (lets it slide) or "grommet" (holds the place only); the clamp's line (aft, right, up), if it can't
                // turn; its inside diameter; for a tight clamp closed at a mark, the conduit from the anchor to it, "fromAnchor".
                // throwright solve route keeps grommets, and clamps that say "stays": true.
                // "supports": [ { "at": ["20 in", "-3 in", "6 in"], "kind": "tightClamp", "along": [1, 0, 0], "size": "3/16 in", "stays": true } ],
                // Where supports may sit, for throwright solve route. Left out: anywhere.
                // "places": [["24 in", "-3 in", "6 in"], ["30 in", "-3 in", "7 in"]],
                // Where the conduit leaves the knob's bushing, and which way; what of conduit and wire sits inside the fittings; wire to
                // cut off at fitting; the step in which lengths are ordered. With a lever
                // end on the bench also where the conduit arrives at the anchor, toward the arm.
                // "ends": { "leaves": { "at": ["40 in", "-2 in", "8 in"], "along": [-1, 0, 0] }, "arrives": { "at": ["12 in", "-3 in", "4 in"], "along": [-1, 0, 0] }, "inBushing": "3/4 in", "inAnchor": "3/8 in", "wireInKnob": "1 1/2 in", "wireBeyondPin": "3/4 in", "trimming": "2 in", "orderStep": "1 in", "moves": [ { "name": "engine down", "up": "-1/4 in", "aft": "0 in", "right": "0 in", "turn": "1 deg", "about": [0, 1, 0] } ], "twist": { "turn": "90 deg", "torsion": "0.77" } },
                // The conduit's length as ordered or delivered.
                // "ordered": "48 in ± 1/8 in",
                // The largest pull and push that the cable's maker allows.
                // "limits": { "pull": "50 lbf", "push": "15 lbf" },
                // Drag of the wipers or seals, cable in your hands: at the knob end and at the device end.
                // "drag": { "knob": "0.5 lbf", "device": "0 lbf" },
                // Where these figures come from: the maker's sheet, your own measurement, a guess.
                "source": "invented for this file"
              },

              // The device and the arm on it.
              "leverEnd": {
                "arm": {
                  // Centre of the pivot to the centre of the hole in use, with a caliper.
                  "radius": "1 1/2 in ± 1/64 in",
                  // The same for every hole in the arm: the program may propose another.
                  "holes": ["1 1/4 in", "1 1/2 in"],
                  // Across the arm at its holes, for clearance.
                  // "width": "1/2 in",
                  // Spatial form only: direction of the arm at arm angle 0, from pivot to hole, and how far the hole lies
                  // from the pivot point along the axis.
                  // "zero": [0, 0, 1],
                  // "alongAxis": "0 in",
                },
                // From stop to stop of the device, with a protractor or an angle gauge on the arm. One angle means half of it to
                // each side of arm angle 0. Or each stop by itself: { "from": "-40 deg", "to": "50 deg" }.
                "sweep": "90 deg ± 2 deg",

                // Where the anchor of the conduit stands. On a bench, without coordinates:
                "bench": {
                  // Arm half way: from the anchor to the hole of the arm, along the wire.
                  "distance": "5 in ± 1/16 in",
                  // "squareAtMid": the wire is square to the arm half way. "chord": the anchor lies on the line through the
                  // hole's two end places. "halfSagitta": half way between the two. "offset": measured, with
                  // "offset": pivot to the line of the wire.
                  "rule": "halfSagitta"
                },
                // Instead of bench, the spatial form: in coordinates, each place as a name from "points" or as three lengths.
                // It needs pivot, axis, arm.zero and anchor.at together. The arm's angle turns right-handed about the axis.
                // "pivot": "mixture-pivot",
                // "axis": [0, 1, 0],

                "anchor": {
                  // Spatial form only: where the anchor holds the conduit, and the way the conduit's end points (aft, right, up).
                  // "at": "mixture-anchor",
                  // "along": [-1, 0, 0],
                  // How far the end tube stands out of the anchor, toward the arm.
                  "tip": "3/8 in",
                  // How far the end tube can tilt to each side. 0 deg: it is fixed.
                  "swivels": "8 deg",
                  // How stiff the bracket is along the wire: hang on a weight and measure how far it gives.
                  // "stiffness": "2000 lbf/in ± 30 %",
                },
                // If you make the bracket of bent sheet: base leg on the structure, standing leg with the conduit's hole; "base", "standing"
                // and "at" from the outside corner of the bend. Its stiffness is worked out if you do not type one above. "neutral" is
                // the place of the neutral line from your own test bend. "top" is a second bend and the leg beyond it, of shape "z" or "u" (a
                // channel); then "standing" is from corner to corner and "conduitIn" may be "top". "conduitAbove": the conduit lies along its
                // leg in a clamp, its axis this far from the leg; left out it goes through square.
                // "bracket": { "material": "6061-T6", "thickness": "0.063 in", "bend": "90 deg", "radius": "0.19 in", "base": "1 1/2 in", "standing": "1 1/4 in", "top": { "shape": "z", "length": "1 in", "bend": "90 deg", "radius": "0.19 in" }, "conduitIn": "standing", "conduitAbove": "0.2 in", "width": "1 1/4 in", "corner": "0.16 in", "neutral": "0.447", "conduit": { "at": "0.8 in", "across": "0 in", "diameter": "0.25 in" }, "fasteners": [ { "at": "0.75 in", "across": "0.3 in", "diameter": "0.19 in" }, { "at": "0.75 in", "across": "-0.3 in", "diameter": "0.19 in" } ], "fastener": "AN3" },

                // The fitting that holds the wire in the arm's hole.
                "swivel": {
                  // Its length along the wire.
                  "length": "5/16 in",
                  // Play of its pin in the hole: hole diameter less pin diameter.
                  "play": "0.003 in ± 0.002 in",
                  // Where it sits: wire from the conduit's end at the anchor to the pin, knob pushed fully in. Left out: a place is proposed.
                  // "at": "2 1/2 in ± 1/32 in",
                  // Instead of at: device lightly against one stop ("push" or "pull": the way the knob goes, pushed or pulled no
                  // harder than keeps it there; with a spring, the stop the spring holds), how far the knob is out.
                  // "rigged": { "stop": "push", "knobOut": "3/16 in ± 1/64 in" },
                  // All that holds the wire: "setScrew", "threadlocker", "bentTail", "crimp", "loopedEye".
                  "holdsBy": ["setScrew", "bentTail"]
                },

                // What the device asks for.
                "load": {
                  // Pull square at the hole with a spring scale; force times radius. It resists both ways.
                  "torque": "0.6 lbf in ± 20 %",
                  // Instead of torque, where it changes along the sweep: arm angle and torque, angles rising.
                  // "torqueTable": [ ["-45 deg", "4 lbf in"], ["0 deg", "6 lbf in ± 20 %"], ["45 deg", "9 lbf in"] ],
                  // true once you have measured it; false while it is a guess.
                  "measured": false,
                  // A spring, weight or pressure that moves the device by itself: toward which stop, torque at that stop, what is
                  // added for each degree away from it, and whether a spring does it (springs break).
                  // "bias": { "toward": "push", "torque": "2 lbf in", "rate": "0.02 lbf in/deg", "spring": true },
                  // Places where the device clicks in: arm angle, largest torque, how far to each side it is felt.
                  // "detents": [ { "at": "45 deg", "torque": "1 lbf in", "within": "5 deg" } ],
                },

                // Where the device sits, for the heat: "cabin", "engineBay" or "elsewhere".
                "zone": "engineBay",
                // Only for a ball or plug valve: bore radius over ball radius, the stop at which it is open, loss of the line.
                // "valve": { "boreRatio": "0.66", "open": "push", "lineLoss": "5" },
              },

              // What published rules of installation ask beyond the geometry. Each may wait: the rule then waits too.
              "installation": {
                // true: losing it would prevent continued safe flight; every joint then needs two retaining devices.
                // "critical": true,
                // Against being worked by mistake: "none", "cover", "gate", "button" or "twist".
                // "guard": "button",
                // Force of the hand that it is built to stand with the device jammed. The rules leave it to you.
                // "limitForce": "40 lbf",
                // Side of the firewall the device is on: "cabin" or "engine".
                // "side": "engine",
                // Bolt or pin ("bolt", "clevisPin") of swivel and arm: whether it turns, its diameter, thickness of the arm and of the swivel on it,
                // ultimate bearing strength of the softer one. What holds it: "cotter", "selfLockingNut", "allMetalNut", "castleNut",
                // "selfLockingCastleNut", "lockwire", "lockWasher", "checkNut", "threadlocker", "springClip", "structure".
                // "joint": { "kind": "bolt", "turns": true, "diameter": "3/16 in", "arm": "1/8 in", "swivel": "1/4 in", "bearing": "90 ksi", "material": "steel", "heldBy": ["castleNut", "cotter"] },
                // Pull that the wire in its fitting, and the conduit in its anchor, stood when you tested them.
                // "swivelHeld": "46 lbf",
                // "anchorHeld": "46 lbf",
                // The anchor stands on "structure", "deviceBracket" or "fluidLine".
                // "anchorOn": "structure",
                // The conduit in a fire, by its maker: "notStated", "fireResistant" or "fireproof".
                // "conduitFire": "notStated",
                // Its liner, and the highest temperature that the maker states.
                // "liner": "PTFE",
                // "cableHottest": "110 degC",
                // Lettering beside the knob: height of the capitals, eye to lettering, light on dark or not.
                // "legend": { "height": "3/16 in", "distance": "28 in", "lightOnDark": true },
                // What it passes closely: "wiring", "fuelLine", "exhaust", "controlCable" or "other".
                // "near": [ { "what": "wiring", "distance": "1 in" } ],
                // Plastic parts against the heat of their place: "cabin", "sunlit", "engineBay" or "elsewhere"; clamped by a nut or not.
                // "parts": [ { "name": "wedge washer", "material": "PC", "place": "sunlit", "clamped": true } ],
                // Strength with the device jammed: sizes with a caliper, strengths by the specification of the material.
                // "strength": { "forked": false, "pinShear": "75 ksi", "armWidth": "1/2 in", "armEdge": "3/8 in", "armYield": "36 ksi", "bracketYield": "35 ksi", "shankYield": "30 ksi" },
              },

              // What you measured on the aircraft, one entry for each rigging or inspection: throwright rig writes it.
              // "asBuilt": [ { "date": "2026-03-01", "by": "A. Builder", "note": "first rigging", "rerigged": true, "temperature": "20 degC", "knobAtPush": "3/8 in", "knobAtPull": "2 3/8 in", "tipGap": "1 in", "lostMotion": "1/32 in", "sweep": "90 deg", "pull": "5 lbf", "push": "5 lbf", "hold": "10 lbf" } ],
            }
          ]
        }

        """;
}
