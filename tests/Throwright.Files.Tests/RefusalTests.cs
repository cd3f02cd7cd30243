namespace Throwright.Files.Tests;

/// <summary>Every refusal: what is found and expected, and exactly where.</summary>
public class RefusalTests
{
    /// <summary>Stands in a spoiled text before the character at which the fault must be reported.</summary>
    private const char Here = '¤';

    /// <summary>
    /// What is replaced, by what, the path that is told, a part of "found", a part of "expected", and whether the schema
    /// refuses it too (a schema can't compare values).
    /// </summary>
    private static readonly (string Was, string Is, string Path, string Found, string Expected, bool SchemaSees)[] BenchCases =
    [
        // Quantities
        ("\"radius\": \"1 1/2 in\"", "\"radius\": ¤\"1,5 in\"", "$.runs[1].leverEnd.arm.radius", "\"1,5 in\": a comma is not a decimal point here", "a length, e.g. \"1.5 in\", \"1 1/2 in", true),
        ("\"radius\": \"1 1/2 in\"", "\"radius\": ¤1.5", "$.runs[1].leverEnd.arm.radius", "1.5: a bare number, its unit is not named", "a length, e.g. \"1.5 in\"", true),
        ("\"radius\": \"1 1/2 in\"", "\"radius\": ¤\"1.5\"", "$.runs[1].leverEnd.arm.radius", "\"1.5\": has no unit", "a length", true),
        ("\"radius\": \"1 1/2 in\"", "\"radius\": ¤\"1.5 lbf\"", "$.runs[1].leverEnd.arm.radius", "\"lbf\" is a unit of force, not of length", "a length", true),
        ("\"radius\": \"1 1/2 in\"", "\"radius\": ¤NaN", "$.runs[1].leverEnd.arm.radius", "NaN: not in quotes", "a length", true),
        ("\"radius\": \"1 1/2 in\"", "\"radius\": ¤\"NaN in\"", "$.runs[1].leverEnd.arm.radius", "\"NaN in\": ", "a length", true),
        ("\"radius\": \"1 1/2 in\"", "\"radius\": ¤null", "$.runs[1].leverEnd.arm.radius", "null: a member that is not known is left out", "a length", true),
        ("\"radius\": \"1 1/2 in\"", "\"radius\": ¤true", "$.runs[1].leverEnd.arm.radius", "true", "a length", true),
        ("\"radius\": \"1 1/2 in\"", "\"radius\": ¤[\"1 in\"]", "$.runs[1].leverEnd.arm.radius", "a list", "a length", true),
        ("\"radius\": \"1 1/2 in\"", "\"radius\": ¤1 1/2 in", "$.runs[1].leverEnd.arm.radius", "1 1/2 in: not in quotes", "a length", true),
        ("\"radius\": \"1 1/2 in\"", "\"radius\": ¤\"0 in\"", "$.runs[1].leverEnd.arm.radius", "\"0 in\": zero", "a length above zero, 1 mm to 2 m, also at the ends of its tolerance", false),
        ("\"radius\": \"1 1/2 in\"", "\"radius\": ¤\"-1 in\"", "$.runs[1].leverEnd.arm.radius", "below zero", "above zero", false),
        ("\"radius\": \"1 1/2 in\"", "\"radius\": ¤\"1 in ± 1.5 in\"", "$.runs[1].leverEnd.arm.radius", "the tolerance is larger than the value", "above zero", false),
        ("\"radius\": \"1 1/2 in\"", "\"radius\": ¤\"38 m\"", "$.runs[1].leverEnd.arm.radius", "larger than 2 m", "1 mm to 2 m", false),
        ("\"radius\": \"1 1/2 in\"", "\"radius\": ¤\"0.01 mm\"", "$.runs[1].leverEnd.arm.radius", "smaller than 1 mm", "1 mm to 2 m", false),
        ("\"radius\": \"1 1/2 in\"", "\"radius\": ¤\"1.9 m ± 0.2 m\"", "$.runs[1].leverEnd.arm.radius", "the tolerance lets it grow beyond 2 m", "1 mm to 2 m", false),
        ("\"radius\": \"1 1/2 in\"", "\"radius\": ¤\"1e300 m ± 1e300 %\"", "$.runs[1].leverEnd.arm.radius", "not a finite number", "a length", false),
        ("\"width\": \"3/4 in\"", "\"width\": ¤\"9 in\"", "$.runs[1].leverEnd.arm.width", "larger than 200 mm", "1 mm to 200 mm", false),
        ("[\"1 1/4 in\", \"1 1/2 in\"]", "[\"1 1/4 in\", ¤\"0 in\"]", "$.runs[1].leverEnd.arm.holes[1]", "\"0 in\": zero", "a length above zero", false),
        ("[\"1 1/4 in\", \"1 1/2 in\"]", "[¤\"1 1/4 in ± 0.1 in\", \"1 1/2 in\"]", "$.runs[1].leverEnd.arm.holes[0]", "a tolerance has no meaning here", "a length", true),
        ("[\"1 1/4 in\", \"1 1/2 in\"]", "¤\"1 1/4 in\"", "$.runs[1].leverEnd.arm.holes", "\"1 1/4 in\"", "a list [ ... ] of lengths", true),
        ("\"stroke\": \"2.5 in ± 0.03 in\"", "\"stroke\": ¤\"0 in\"", "$.runs[1].cockpitEnd.stroke", "zero", "above zero", false),
        ("\"stroke\": \"2.5 in ± 0.03 in\"", "\"stroke\": ¤\"-2 in\"", "$.runs[1].cockpitEnd.stroke", "below zero", "above zero", false),
        ("\"friction\": \"0.15 ± 0.05\"", "\"friction\": ¤\"-0.1\"", "$.runs[1].cable.friction", "below zero", "0 to 1.5", false),
        ("\"friction\": \"0.15 ± 0.05\"", "\"friction\": ¤\"0.15 ± 0.2\"", "$.runs[1].cable.friction", "the tolerance is larger than the value", "0 to 1.5", false),
        ("\"friction\": \"0.15 ± 0.05\"", "\"friction\": ¤\"1.6\"", "$.runs[1].cable.friction", "larger than 1.5", "0 to 1.5", false),
        ("\"friction\": \"0.15 ± 0.05\"", "\"friction\": ¤0.15", "$.runs[1].cable.friction", "0.15: a bare number", "a number without a unit, in quotes", true),
        ("\"length\": \"48 in\"", "\"length\": ¤\"101 m\"", "$.runs[1].cable.length", "larger than 100 m", "1 mm to 100 m", false),
        ("\"pull\": \"50 lbf\"", "\"pull\": ¤\"2000 kN\"", "$.runs[1].cable.limits.pull", "larger than 1000000 N", "1000000 N", false),
        ("\"knob\": \"0.5 lbf\"", "\"knob\": ¤\"-0.5 lbf\"", "$.runs[1].cable.drag.knob", "below zero", "a force, 0 N to 1000000 N", false),
        ("\"wanted\": \"1/8 in\"", "\"wanted\": ¤\"1/0 in\"", "$.runs[1].cushion.wanted", "the fraction has zero below the line", "a length", false),
        ("\"swivels\": \"8 deg\"", "\"swivels\": ¤\"95 deg\"", "$.runs[1].leverEnd.anchor.swivels", "larger than 90 deg", "0 deg to 90 deg", false),
        ("\"coldest\": \"-30 degC\"", "\"coldest\": ¤\"-91 degC\"", "$.environment.coldest", "smaller than -90 degC", "-90 degC to 400 degC", false),
        ("\"engineBay\": \"95 degC\"", "\"engineBay\": ¤\"401 degC\"", "$.environment.engineBay", "larger than 400 degC", "-90 degC to 400 degC", false),
        ("\"boreRatio\": \"0.66\"", "\"boreRatio\": ¤\"0.71\"", "$.runs[1].leverEnd.valve.boreRatio", "larger than 0.707", "0.01 to 0.707", false),
        ("\"torque\": \"2 lbf in\"", "\"torque\": ¤\"-2 lbf in\"", "$.runs[1].leverEnd.load.bias.torque", "below zero", "a torque", false),

        // Values against each other
        ("\"bore\": \"0.080 in ± 0.003 in\"", "\"bore\": ¤\"0.065 in ± 0.002 in\"", "$.runs[1].cable.conduit.bore", "\"0.065 in ± 0.002 in\": the core, \"0.062 in ± 0.001 in\", does not go in", "a bore larger than the core", false),
        ("\"from\": \"-45 deg ± 1 deg\"", "\"from\": ¤\"50 deg\"", "$.runs[1].leverEnd.sweep.from", "\"50 deg\": not smaller than to, \"45 deg ± 2 deg\"", "from smaller than to", false),
        ("\"from\": \"-45 deg ± 1 deg\"", "\"from\": ¤\"42 deg ± 1 deg\"", "$.runs[1].leverEnd.sweep.from", "not smaller than to", "also at the ends of both tolerances", false),
        ("\"to\": \"45 deg ± 2 deg\"", "\"to\": ¤\"314 deg ± 1 deg\"", "$.runs[1].leverEnd.sweep.to", "more than a full turn after from", "at most 360 deg", false),
        ("\"most\": \"1 in\"", "\"most\": ¤\"1/16 in\"", "$.runs[1].cushion.most", "less than wanted, \"1/8 in\"", "at least as large as wanted", false),
        ("\"longestStraight\": \"14 in\"", "\"longestStraight\": ¤\"5 ft\"", "$.runs[1].cable.longestStraight", "longer than the conduit, \"48 in\"", "a stretch of the conduit", false),
        ("\"knobOut\": \"3/16 in\"", "\"knobOut\": ¤\"3 in\"", "$.runs[1].leverEnd.swivel.rigged.knobOut", "farther out than the stroke, \"2.5 in ± 0.03 in\"", "within the stroke", false),
        ("\"rigged\": \"20 degC\"", "\"rigged\": ¤\"-31 degC\"", "$.environment.rigged", "below coldest, \"-30 degC\"", "at least as hot as coldest", false),
        ("\"cabin\": \"60 degC\"", "\"cabin\": ¤\"19 degC\"", "$.environment.cabin", "below rigged, \"20 degC\"", "at least as hot as rigged", false),
        ("\"engineBay\": \"95 degC\"", "\"engineBay\": ¤\"50 degF\"", "$.environment.engineBay", "below rigged", "at least as hot", false),
        ("\"elsewhere\": \"55 degC\"", "\"elsewhere\": ¤\"19.9 degC\"", "$.environment.elsewhere", "below rigged", "at least as hot", false),
        ("[[\"-45 deg\", \"4 lbf in\"], [\"45 deg\",", "[[\"45 deg\", \"4 lbf in\"], [¤\"45 deg\",", "$.runs[1].leverEnd.load.torqueTable[1][0]", "\"45 deg\": not above the angle of the row before", "rise", false),
        ("[[\"-45 deg\", \"4 lbf in\"], [\"45 deg\", \"9 lbf in ± 20 %\"]]", "¤[[\"-45 deg\", \"4 lbf in\"]]", "$.runs[1].leverEnd.load.torqueTable", "1 rows", "at least 2", true),
        ("[\"-45 deg\", \"4 lbf in\"]", "¤[\"-45 deg\", \"4 lbf in\", \"5 lbf in\"]", "$.runs[1].leverEnd.load.torqueTable[0]", "a list of 3", "a list of 2: arm angle, torque", true),
        ("\"holdsBy\": [\"setScrew\", \"bentTail\"]", "\"holdsBy\": [\"setScrew\", ¤\"setScrew\"]", "$.runs[1].leverEnd.swivel.holdsBy[1]", "\"setScrew\" again", "only once", true),

        // Two ways of saying one thing
        ("\"length\": \"48 in\",", "\"length\": \"48 in\", \"bendTotal\": \"90 deg\",", "$.runs[1].cable.bends", "\"bends\" beside \"bendTotal\"", "either \"bendTotal\" or \"bends\"", true),
        ("\"length\": \"5/16 in\"", "\"length\": \"5/16 in\", \"at\": \"2 in\"", "$.runs[1].leverEnd.swivel.rigged", "\"rigged\" beside \"at\"", "not both", true),
        ("\"measured\": true", "\"measured\": true, \"torque\": \"5 lbf in\"", "$.runs[1].leverEnd.load.torqueTable", "\"torqueTable\" beside \"torque\"", "not both", true),
        ("\"zone\": \"engineBay\"", "\"zone\": \"engineBay\", \"axis\": [1, 0, 0]", "$.runs[1].leverEnd.bench", "\"bench\" beside \"axis\"", "either the bench form", true),
        ("\"tip\": \"3/8 in\"", "\"tip\": \"3/8 in\", \"at\": [\"1 in\", \"2 in\", \"3 in\"]", "$.runs[1].leverEnd.bench", "\"bench\" beside \"anchor.at\"", "not both", true),
        ("\"rule\": \"squareAtMid\"", "\"rule\": \"squareAtMid\", ¤\"offset\": \"1 in\"", "$.runs[1].leverEnd.bench.offset", "\"offset\" with the rule \"squareAtMid\"", "the rule \"offset\", or no offset", true),
        ("\"bench\": { \"distance\": \"4 in\", \"rule\": \"squareAtMid\" }", "\"bench\": ¤{ \"distance\": \"4 in\", \"rule\": \"offset\" }", "$.runs[1].leverEnd.bench.offset", "no \"offset\" in the bench form of the lever end", "\"offset\"", true),

        // Words, flags, texts, counts
        ("\"kind\": \"solid\"", "\"kind\": ¤\"sollid\"", "$.runs[1].cable.core.kind", "\"sollid\"", "did you mean \"solid\"?", true),
        ("\"kind\": \"solid\"", "\"kind\": ¤\"Solid\"", "$.runs[1].cable.core.kind", "\"Solid\"", "did you mean \"solid\"?", true),
        ("\"kind\": \"solid\"", "\"kind\": ¤\"rope\"", "$.runs[1].cable.core.kind", "\"rope\"", "one of \"solid\", \"strand1x7\"", true),
        ("\"kind\": \"solid\"", "\"kind\": ¤solid", "$.runs[1].cable.core.kind", "solid", "did you mean \"solid\"?", true),
        ("\"function\": \"mixture\"", "\"function\": ¤\"mixtrue\"", "$.runs[1].function", "\"mixtrue\"", "did you mean \"mixture\"?", true),
        ("\"yardstick\": \"user\"", "\"yardstick\": ¤7", "$.yardstick", "7", "one of \"mil1472\", \"fac23\", \"user\"", true),
        ("\"emergency\": false", "\"emergency\": ¤\"false\"", "$.runs[1].emergency", "\"false\"", "true or false, without quotes", true),
        ("\"measured\": true", "\"measured\": ¤yes", "$.runs[1].leverEnd.load.measured", "yes", "true or false", true),
        ("\"fraction\": 32", "\"fraction\": ¤10", "$.display.fraction", "10", "16, 32 or 64, without quotes", true),
        ("\"fraction\": 32", "\"fraction\": ¤\"32\"", "$.display.fraction", "\"32\"", "16, 32 or 64", true),
        ("\"safeEnd\": \"rich\"", "\"safeEnd\": ¤5", "$.runs[1].safeEnd", "5", "a text in double quotes", true),
        ("\"safeEnd\": \"rich\"", "\"safeEnd\": ¤\"ri\\u001bch\"", "$.runs[1].safeEnd", "the invisible character U+001B in the text", "printable characters", false),
        ("\"safeEnd\": \"rich\"", "\"safeEnd\": ¤\"rich rich rich rich rich rich rich rich rich rich rich rich rich\"", "$.runs[1].safeEnd", "a text of 64 characters", "at most 60", true),
        ("\"name\": \"Demo\"", "\"name\": ¤\"\"", "$.aircraft.name", "an empty text", "at least one letter", true),
        ("\"id\": \"mixture\"", "\"id\": ¤\"Mixture 1\"", "$.runs[1].id", "\"Mixture 1\"", "lower case letters, digits and single hyphens", true),
        ("\"id\": \"mixture\"", "\"id\": ¤\"mix\\nture\"", "$.runs[1].id", "\"mix·ture\"", "lower case letters", true),
        ("\"id\": \"mixture\"", "\"id\": ¤\"cabin-heat\"", "$.runs[1].id", "\"cabin-heat\" again (first on line 12)", "a different id", false),

        // Members
        ("\"how\":", "¤\"hwo\":", "$.runs[1].hwo", "\"hwo\" is not known in the run", "did you mean \"how\"?", true),
        ("\"arm\": {", "\"arm\": { ¤\"Radius\": \"2 in\",", "$.runs[1].leverEnd.arm.Radius", "\"Radius\" is not known in the arm at the lever end", "did you mean \"radius\"?", true),
        ("\"arm\": {", "\"arm\": { ¤\"brightness\": 1,", "$.runs[1].leverEnd.arm.brightness", "not known in the arm", "one of \"radius\", \"holes\"", true),
        ("\"format\": 1,", "\"format\": 1, ¤\"any thing's\": 1,", "$['any thing\\'s']", "not known in the aircraft file", "one of", true),
        ("\"label\": \"MIXTURE\"", "\"label\": \"MIXTURE\", ¤\"label\": \"MIX\"", "$.runs[1].label", "\"label\" again (first on line 17)", "only once", true),
        ("\"id\": \"mixture\",", "", "$.runs[1].id", "no \"id\" in the run", "\"id\": Short name", true),
        ("\"core\": { \"kind\": \"solid\", \"diameter\": \"0.062 in ± 0.001 in\", ", "\"core\": ¤{ \"kind\": \"solid\", ", "$.runs[1].cable.core.diameter", "no \"diameter\" in the core wire", "\"diameter\": ", true),
        ("\"environment\": {\n    \"airframe\": \"aluminium\", ", "\"environment\": ¤{\n    ", "$.environment.airframe", "no \"airframe\" in the surroundings", "\"airframe\"", true),
        ("\"knob\": { \"shape\": \"round\", \"colour\": \"black\" }", "\"knob\": ¤\"round\"", "$.runs[1].cockpitEnd.knob", "\"round\"", "an object { ... } for the knob", true),
        ("\"format\": 1,", "\"format\": ¤2,", "$.format", "this file is of format 2; this program reads up to 1", "a newer Throwright", true),
        ("\"format\": 1,", "\"format\": ¤0,", "$.format", "0", "1, without quotes", true),
        ("\"format\": 1,", "\"format\": ¤\"1\",", "$.format", "\"1\"", "1, without quotes", true),
        ("{\n  \"format\": 1,", "¤{", "$.format", "no \"format\" in the aircraft file", "\"format\"", true),
        ("\"aircraft\": { \"name\": \"Demo\", \"builder\": \"\", \"note\": \"\" }", "\"aircraft\": ¤{ }", "$.aircraft.name", "no \"name\" in the aircraft", "\"name\"", true),

        // Not JSON
        ("\"label\": \"MIXTURE\",", "\"label\": \"MIXTURE\"¤", "$.runs[1].label", "no comma", "a comma before \"", true),
        ("\"how\": \"PULL FOR LEAN\",", "¤how: \"PULL FOR LEAN\",", "$.runs[1]", "how without quotes", "\"how\"", true),
        ("\"how\": \"PULL FOR LEAN\",", "\"how\": ¤\"PULL FOR LEAN,", "$.runs[1]", "a text that is not closed on its line", "a quote", true),
        ("\"radius\": \"1 1/2 in\"", "\"radius\": \"1 1/2\"¤\"", "$.runs[1].leverEnd.arm.radius", "a second quote after the end of the text", "1 3/4 in", true),
        ("\"label\": \"MIXTURE\",", "\"label\": \"MIXTURE\",¤,", "$.runs[1]", "a comma with nothing before it", "one comma", true),
        ("\"how\": \"PULL FOR LEAN\",", "\"how\": ¤“PULL”,", "$.runs[1]", "a typographic quote", "the plain quote", true),
        ("\"how\": \"PULL FOR LEAN\",", "\"how\": ¤,", "$.runs[1]", ",", "a value for \"how\"", true),
        ("\"how\": \"PULL FOR LEAN\",", "\"how\": \"PULL ¤\\q\",", "$.runs[1]", "a backslash", "\\\\", true),
        ("\"how\": \"PULL FOR LEAN\",", "\"how\": ¤\"\\ud800\",", "$.runs[1]", "half a character (U+D800)", "whole characters", true),
        ("\"how\": \"PULL FOR LEAN\",", "\"how\": \"PULL¤\tFOR\",", "$.runs[1]", "the character U+0009 inside a text", "\\t", true),
        ("\"how\": \"PULL FOR LEAN\",", "¤/* not closed", "$.runs[1]", "a comment /* that is not closed", "*/", true),
        ("\"runs\": [", "\"runs\": ¤\u00A0[", "$", "the character U+00A0", "a value for \"runs\"", true),
    ];

    private static readonly (string Was, string Is, string Path, string Found, string Expected, bool SchemaSees)[] SpatialCases =
    [
        ("\"pivot\": \"flap-pivot\"", "\"pivot\": ¤\"flap-pivto\"", "$.runs[0].leverEnd.pivot", "\"flap-pivto\": no point has this name", "did you mean \"flap-pivot\"?", false),
        ("\"pivot\": \"flap-pivot\"", "\"pivot\": ¤\"somewhere\"", "$.runs[0].leverEnd.pivot", "no point has this name", "\"flap-pivot\", \"flap-anchor\"", false),
        ("\"pivot\": \"flap-pivot\"", "\"pivot\": ¤[\"1 in\", \"2 in\"]", "$.runs[0].leverEnd.pivot", "a list of 2", "a list of 3: station (aft), buttline (right), waterline (up)", true),
        ("\"pivot\": \"flap-pivot\"", "\"pivot\": [\"1 in\", ¤2, \"3 in\"]", "$.runs[0].leverEnd.pivot[1]", "2: a bare number", "a length", true),
        ("\"flap-anchor\": [", "¤\"flap-pivot\": [\"1 in\", \"1 in\", \"1 in\"], \"flap-anchor\": [", "$.points['flap-pivot']", "\"flap-pivot\" again (first on line 5)", "only once", true),
        ("[\"16 in\", \"-3 in\", \"5.5 in\"]", "[\"16 in\", ¤\"101 m\", \"5.5 in\"]", "$.points['flap-anchor'][1]", "larger than 100 m", "-100 m to 100 m", false),
        ("[0, \"1\", 0.25]", "¤[0, 0, 0]", "$.runs[0].leverEnd.axis", "a direction without length", "direction [aft, right, up]", false),
        ("[0, \"1\", 0.25]", "[0, 0, -1]", "$.runs[0].leverEnd.arm.zero", "along its axis", "a direction across the axis", false),
        ("[0, \"1\", 0.25]", "[0, 0.01, ¤1e9]", "$.runs[0].leverEnd.axis[2]", "1e9: not between", "a plain number", true),
        ("[0, \"1\", 0.25]", "[0, ¤\"1 in\", 0.25]", "$.runs[0].leverEnd.axis[1]", "\"1 in\"", "a plain number", true),
        ("[0, \"1\", 0.25]", "[0, ¤\"1 ± 0.1\", 0.25]", "$.runs[0].leverEnd.axis[1]", "a tolerance has no meaning here", "a plain number", true),
        ("[0, \"1\", 0.25]", "[0, ¤null, 0.25]", "$.runs[0].leverEnd.axis[1]", "null: not a number", "a plain number", true),
        ("\"sweep\": \"90 deg +4/-2 deg\"", "\"sweep\": ¤\"361 deg\"", "$.runs[0].leverEnd.sweep", "larger than 360 deg", "0.1 deg to 360 deg", false),
        ("\"sweep\": \"90 deg +4/-2 deg\"", "\"sweep\": ¤\"-90 deg\"", "$.runs[0].leverEnd.sweep", "below zero", "an angle above zero", false),
        ("\"sweep\": \"90 deg +4/-2 deg\"", "\"sweep\": ¤90", "$.runs[0].leverEnd.sweep", "90: a bare number", "an angle, e.g. \"45 deg\"", true),
        ("\"leverEnd\": {\n        \"arm\": { \"radius\": \"38 mm\", \"zero\": [0, 0, 1], \"alongAxis\": \"2 mm\" },", "\"leverEnd\": ¤{\n        \"arm\": { \"radius\": \"38 mm\", \"alongAxis\": \"2 mm\" },", "$.runs[0].leverEnd.arm.zero", "no \"arm.zero\" in the lever end", "which the spatial form needs", true),
        ("\"axis\": [0, \"1\", 0.25],", "", "$.runs[0].leverEnd.axis", "no \"axis\" in the lever end", "which the spatial form needs", true),
    ];

    private static readonly (string Was, string Is, string Path, string Found, string Expected, bool SchemaSees)[] CockpitCases =
    [
        // Sheets
        ("\"sheet\": \"panel\"", "\"sheet\": ¤\"pannel\"", "$.runs[0].cockpitEnd.sheet", "\"pannel\": no sheet has this id", "did you mean \"panel\"?", false),
        ("\"sheet\": \"panel\"", "\"sheet\": ¤\"x\"", "$.runs[0].cockpitEnd.sheet", "no sheet has this id", "\"panel\", \"console\"", false),
        ("\"id\": \"console\"", "\"id\": ¤\"panel\"", "$.sheets[1].id", "\"panel\" again (first on line 11)", "a different id for each sheet", false),
        ("\"up\": [0, 0, 1],\n", "\"up\": ¤[-1, 0, 0],\n", "$.sheets[0].up", "along the normal", "a direction in the sheet", false),
        ("[\"20 in\", \"2 in\", \"30 in\"], \"diameter\": \"3/4 in", "[\"23 in\", \"2 in\", \"30 in\"], \"diameter\": \"3/4 in", "$.sheets[0].holes[0]", "3 in off the sheet", "at most 25 mm", false),
        ("[\"20 in\", \"15 in\", \"36 in\"]],\n", "¤[\"23 in\", \"15 in\", \"36 in\"]],\n", "$.sheets[0].outline[2]", "3 in off the sheet", "at most 25 mm", false),
        ("\"flap-hole\": [\"20 in\"", "\"flap-hole\": [\"24 in\"", "$.runs[0].cockpitEnd.hole", "\"flap-hole\": 4 in off the sheet panel", "a point of the sheet", false),
        ("\"normal\": [0, 0, 1] }\n  ],", "\"normal\": ¤[0, 0, 0] }\n  ],", "$.sheets[1].normal", "a direction without length", "direction", false),

        // Knob, shank, bushing
        ("\"width\": \"4 in\", \"hand\"", "\"width\": ¤\"3/4 in\", \"hand\"", "$.runs[0].cockpitEnd.knob.width", "\"3/4 in\" with diameter \"1 in\": the bar is shorter than it is thick", "width larger than diameter", false),
        ("\"diameter\": \"3/8 in\"", "\"diameter\": ¤\"0.6 in\"", "$.runs[0].cockpitEnd.shank.diameter", "as thick as the thread round it, \"0.5 in\"", "thinner", false),
        ("\"nut\": \"3/4 in\"", "\"nut\": ¤\"1/2 in\"", "$.runs[0].cockpitEnd.bushing.nut", "does not go over the thread", "nut larger than diameter", false),
        ("\"hole\": \"0.51 in\"", "\"hole\": ¤\"0.49 in\"", "$.runs[0].cockpitEnd.bushing.hole", "does not go through", "at least as large as diameter", false),
        ("\"length\": \"1 in\", \"diameter\": \"0.5 in\"", "\"length\": ¤\"1/4 in\", \"diameter\": \"0.5 in\"", "$.runs[0].cockpitEnd.bushing.length", "shorter than its nut", "larger than nutHeight", false),
        ("\"right\": \"-5 deg\"", "\"right\": ¤\"50 deg\"", "$.runs[0].cockpitEnd.tilt.right", "larger than 45 deg", "-45 deg to 45 deg", false),
        ("\"tilt\": { \"up\": \"3 deg\", \"right\": \"-5 deg\" }", "\"tilt\": ¤{ \"up\": \"45 deg\", \"right\": \"45 deg\" }", "$.runs[0].cockpitEnd.tilt", "a lean of 54.7 deg", "at most 45 deg", false),

        // Joints
        ("\"slide\": [0, 0, 1], ", "", "$.bodies[0].joints[1]", "none of \"slide\", \"turn\"", "one of", true),
        ("\"slide\": [0, 0, 1], ", "\"slide\": [0, 0, 1], ¤\"about\": [\"1 in\", \"1 in\", \"1 in\"], ", "$.bodies[0].joints[1].about", "\"about\" with a slide", "a slide without", true),
        ("\"about\": [\"24 in\", \"2 in\", \"20 in\"], ", "", "$.bodies[0].joints[0].about", "no \"about\" in the joint", "a point of the axis", true),
        ("\"to\": \"1/2 in\"", "\"to\": ¤\"5 deg\"", "$.bodies[0].joints[1].to", "\"5 deg\" for a slide", "a length", false),
        ("\"to\": \"35 deg\"", "\"to\": ¤\"3 in\"", "$.bodies[0].joints[0].to", "\"3 in\" for a turn", "an angle", false),
        ("\"from\": \"-20 deg\"", "\"from\": ¤\"40 deg\"", "$.bodies[0].joints[0].from", "not smaller than to, \"35 deg\"", "from smaller than to", false),
        ("\"from\": \"-20 deg\", \"to\": \"35 deg\"", "\"from\": \"-200 deg\", \"to\": ¤\"200 deg\"", "$.bodies[0].joints[0].to", "more than a full turn", "at most 360 deg", false),
        ("\"from\": \"-20 deg\"", "\"from\": ¤\"-400 deg\"", "$.bodies[0].joints[0].from", "smaller than -360 deg", "-360 deg to 360 deg", false),
        ("\"id\": \"lift\"", "\"id\": ¤\"lever\"", "$.bodies[0].joints[1].id", "\"lever\" again", "a different name for each joint", false),

        // Joints that go together
        ("\"follows\": \"lever\"", "\"follows\": ¤\"handle\"", "$.bodies[0].joints[2].follows", "\"handle\": the body has no such joint", "one of \"lever\", \"lift\"", false),
        ("\"follows\": \"lever\"", "\"follows\": ¤\"trigger\"", "$.bodies[0].joints[2].follows", "the joint itself", "one of \"lever\", \"lift\"", false),
        ("\"from\": \"1/8 in\", \"to\": \"1/2 in\" }", "\"from\": \"1/8 in\", \"to\": \"1/2 in\", \"follows\": ¤\"trigger\" }", "$.bodies[0].joints[1].follows", "follows another itself", "one of \"lever\"", false),
        ("\"from\": \"30 deg\"", "\"from\": ¤\"-5 deg\"", "$.bodies[0].joints[2].from", "not another than to", "from and to that differ", false),
        ("[\"lever\", \"lift\"]", "¤[\"lever\", \"lever\"]", "$.bodies[0].gates[0].joints", "\"lever\" twice", "two different joints", false),
        ("[\"lever\", \"lift\"]", "¤[\"lever\", \"tilt\"]", "$.bodies[0].gates[0].joints", "\"tilt\": the body has no such joint", "two of \"lever\", \"lift\", \"trigger\"", false),
        ("[\"lever\", \"lift\"]", "¤[\"lever\"]", "$.bodies[0].gates[0].joints", "a list of 1", "a list of 2", true),
        ("[[\"35 deg\", \"1/4 in\"]", "[[¤\"1 in\", \"1/4 in\"]", "$.bodies[0].gates[0].limit[0][0]", "\"1 in\": lever is a turn", "an angle", false),
        ("[[\"35 deg\", \"1/4 in\"]", "[[\"35 deg\", ¤\"3/4 in\"]", "$.bodies[0].gates[0].limit[0][1]", "\"3/4 in\": lift does not go there", "between the joint's own limits", false),
        ("[\"20 deg\", \"1/2 in\"]]", "¤[\"35 deg\", \"1/4 in\"]]", "$.bodies[0].gates[0].limit[1]", "the same place as the first", "another place", false),
        ("[[\"35 deg\", \"1/4 in\"], [\"20 deg\", \"1/2 in\"]]", "¤[[\"0 deg\", \"1/8 in\"], [\"20 deg\", \"1/2 in\"]]", "$.bodies[0].gates[0].limit", "passes through the joints' rest", "away from where both joints are at zero", false),
        ("[[\"35 deg\", \"1/4 in\"], [\"20 deg\", \"1/2 in\"]]", "¤[[\"35 deg\", \"1/4 in\"], [\"35 deg\", \"1/2 in\"]]", "$.bodies[0].gates[0].limit", "keeps the joints from nothing", "cuts off a corner", false),
        ("[\"pitch\", \"roll\"]", "¤[\"pitch\", \"yaw\"]", "$.bodies[2].gates[0].joints", "\"yaw\": the body has no such joint", "two of \"roll\", \"pitch\"", false),
        ("\"left\": \"10 deg\", \"right\": \"90 deg\", \"winds\": \"right\"", "\"left\": \"0 deg\", \"right\": \"0 deg\", \"winds\": ¤\"right\"", "$.runs[0].cockpitEnd.turns.winds", "\"right\" with no turn", "above 0 deg", false),

        // Parts
        ("\"to\": [\"24 in\", \"2 in\", \"25 in\"]", "\"to\": ¤[\"24 in\", \"2 in\", \"20 in\"]", "$.bodies[0].shapes[0].capsule.to", "the same place as from", "another place", false),
        ("{ \"sphere\": {", "{ \"name\": \"bar\", \"sphere\": {", "$.bodies[0].shapes[1]", "a second part called \"bar\"", "a different name", false),
        ("{ \"sphere\": {", "{ \"plane\": { \"at\": [\"1 in\", \"1 in\", \"1 in\"], \"normal\": [0, 0, 1] }, \"sphere\": {", "$.bodies[0].shapes[1].plane", "\"plane\" beside \"sphere\"", "only one of", true),
        ("\"along\": [1, 1, 0]", "\"along\": [0, 0, -1]", "$.bodies[1].shapes[0].box", "along and up are the same way", "two ways", false),
        ("\"size\": [\"10 in\"", "\"size\": [¤\"0 in\"", "$.bodies[1].shapes[0].box.size[0]", "zero", "a length above zero", false),
        ("\"aft\": \"-z\"", "\"aft\": \"-y\"", "$.bodies[1].shapes[4].mesh", "up and aft are the same axis", "two different axes", false),
        ("\"meshes/grip.stl\"", "¤\"../grip.stl\"", "$.bodies[1].shapes[4].mesh.file", "../grip.stl", "a file beside the aircraft file", false),
        ("\"at\": [\"36 in\", \"0 in\", \"30 in\"], \"accuracy\"", "\"accuracy\"", "$.bodies[1].shapes[4].mesh", "none of \"at\", \"matched\"", "one of", true),

        ("\"curve\": { \"radius\": \"60 in ± 2 in\", \"straight\": [0, 0, 1]", "\"curve\": ¤{ \"radius\": \"60 in ± 2 in\", \"straight\": [1, 0, 0]", "$.sheets[0].curve", "straight lines that do not lie in the sheet", "square to", false),

        // Ready-made
        ("\"grip\": \"5 in\"", "\"grip\": \"30 in\"", "$.bodies[2].stick.length", "the grip is longer than the stick", "length larger than grip", false),
        ("\"rimDiameter\": \"1.1 in\"", "\"rimDiameter\": \"6 in\"", "$.bodies[3].yoke.horn", "the horns are shorter", "horn larger than rimDiameter", false),
        ("\"thigh\": \"19 in\"", "\"thigh\": \"10 in\"", "$.bodies[5].leg.heel", "31.06 in from the hip: farther than thigh \"10 in\" and shin \"20 in\" reach", "a bent knee", false),
        ("{ \"id\": \"stick\",", "{ \"id\": \"stick\", ¤\"joints\": [],", "$.bodies[2].joints", "\"joints\" beside \"stick\"", "brings its own", false),

        // Names over the whole file
        ("\"id\": \"yoke\"", "\"id\": ¤\"stick\"", "$.bodies[3].id", "\"stick\" again", "a different id for each body", false),
        ("\"id\": \"yoke\"", "\"id\": ¤\"cowl-flap\"", "$.bodies[3].id", "a run has this id too", "an id that no run has", false),
        ("\"part\": \"bar\"", "\"part\": ¤\"rod\"", "$.bodies[0].touches[0].part", "\"rod\": the body has no such part", "one of \"bar\", \"sphere\"", false),
        ("\"with\": \"cowl-flap\"", "\"with\": ¤\"cowl\"", "$.bodies[0].touches[0].with", "no body, no run and no sheet has this id", "one of", false),
        ("\"with\": \"cowl-flap\"", "\"with\": ¤\"flap-lever\"", "$.bodies[0].touches[0].with", "the body itself", "another body", false),
        ("\"withPart\": \"shank\"", "\"withPart\": ¤\"rod\"", "$.bodies[0].touches[0].withPart", "\"rod\": cowl-flap has no such part", "\"shank\", \"knob\", \"hand\"", false),
        ("\"with\": \"cowl-flap\", \"withPart\": \"shank\"", "\"with\": \"stick\", \"withPart\": ¤\"shank\"", "$.bodies[0].touches[0].withPart", "stick has no such part", "\"shaft\", \"grip\"", false),
    ];

    private static readonly (string Was, string Is, string Path, string Found, string Expected, bool SchemaSees)[] RoutedCases =
    [
        // Points by tape
        ("\"A\": \"38 in\"", "¤\"Q\": \"38 in\"", "$.points['valve-pivot'].taped.Q", "\"Q\": no point has this name", "the name of another point", false),
        ("\"A\": \"38 in\"", "¤\"valve-pivot\": \"38 in\"", "$.points['valve-pivot'].taped['valve-pivot']", "the point itself", "another point", false),
        ("\"A\": \"38 in\"", "\"A\": ¤38", "$.points['valve-pivot'].taped.A", "38: a bare number, its unit is not named", "a length", true),
        ("\"A\": \"38 in\"", "\"A\": ¤\"0 in\"", "$.points['valve-pivot'].taped.A", "zero", "1 mm to 100 m", false),
        ("\"A\": \"38 in\", \"B\"", "\"A\": \"38 in\", ¤\"A\": \"37 in\", \"B\"", "$.points['valve-pivot'].taped.A", "\"A\" again", "only once", true),
        ("\"taped\": { \"A\": \"9 in\" }", "\"taped\": ¤\"9 in\"", "$.points['clamp-3'].taped", "\"9 in\"", "an object { \"name of a point\"", true),
        ("\"tape\": \"± 1/16 in\"", "\"tape\": ¤\"± 1/16\"", "$.points['valve-pivot'].tape", "has no unit", "\"± 1/16 in\"", true),
        ("\"tape\": \"± 1/16 in\"", "\"tape\": ¤\"± 0 in\"", "$.points['valve-pivot'].tape", "zero", "0.01 mm to 1 m", false),
        ("\"tape\": \"± 1/16 in\"", "\"tape\": ¤0.0625", "$.points['valve-pivot'].tape", "its unit is not named", "\"± 1/16 in\"", true),
        ("\"side\": \"above A\"", "\"side\": ¤\"abvoe A\"", "$.points['valve-pivot'].side", "\"abvoe A\"", "did you mean \"above\"?", true),
        ("\"side\": \"above A\"", "\"side\": ¤\"above Q\"", "$.points['valve-pivot'].side", "\"Q\": no point has this name", "another point", false),
        ("\"level\": \"valve-pivot\"", "\"level\": ¤\"valve-pvot\"", "$.points['valve-anchor'].level", "no point has this name", "did you mean \"valve-pivot\"?", false),
        ("\"level\": \"valve-pivot\"", "¤\"levl\": \"valve-pivot\"", "$.points['valve-anchor'].levl", "not known in a place by tape", "did you mean \"level\"?", true),
        ("\"inLine\": [\"A\", \"C\"]", "\"inLine\": ¤[\"A\"]", "$.points['clamp-3'].inLine", "1 names of points", "at least 2", true),
        ("\"inLine\": [\"A\", \"C\"]", "\"inLine\": [\"A\", ¤\"A\"]", "$.points['clamp-3'].inLine[1]", "\"A\" again", "only once", true),

        // Supports, ends, conduit
        ("\"kind\": \"grommet\"", "\"kind\": ¤\"gromet\"", "$.runs[0].cable.supports[2].kind", "\"gromet\"", "did you mean \"grommet\"?", true),
        ("{ \"at\": \"clamp-2\", \"kind\"", "¤{ \"kind\"", "$.runs[0].cable.supports[2].at", "no \"at\" in a support", "\"at\"", true),
        ("\"kind\": \"slidingClamp\"", "\"kind\": \"slidingClamp\", ¤\"fromAnchor\": \"9 in\"", "$.runs[0].cable.supports[1].fromAnchor", "\"fromAnchor\" with the kind \"slidingClamp\"", "a tight clamp", false),
        ("\"along\": [1, 0, 0.2]", "\"along\": ¤[0, 0, 0]", "$.runs[0].cable.supports[0].along", "a direction without length", "direction", false),
        ("\"at\": \"clamp-1\"", "\"at\": ¤\"clmap-1\"", "$.runs[0].cable.supports[0].at", "no point has this name", "did you mean \"clamp-1\"?", false),
        ("\"leaves\": { \"at\": [\"60 in\", \"2 in\", \"20 in\"], \"along\"", "\"leaves\": ¤{ \"along\"", "$.runs[0].cable.ends.leaves.at", "no \"at\"", "\"at\"", true),
        ("\"droop\": \"3 in ± 1/16 in\"", "\"droop\": ¤\"17 in\"", "$.runs[0].cable.conduit.tableEdge.droop", "too much for an overhang", "eight tenths", false),
        ("\"outside\": \"0.187 in ± 0.003 in\"", "\"outside\": ¤\"0.07 in\"", "$.runs[0].cable.conduit.outside", "not larger than the bore", "larger than the bore", false),
        ("\"weight\": \"0.06 lbf/ft\"", "\"weight\": ¤\"0.06 lbf\"", "$.runs[0].cable.conduit.weight", "lbf", "a weight per length", true),
        ("\"bending\": \"0.2 N m2 ± 20 %\"", "\"bending\": ¤\"0.2 N m\"", "$.runs[1].cable.conduit.bending", "N m", "a stiffness against bending", true),
        ("\"ordered\": \"62 in ± 1/8 in\"", "\"ordered\": ¤\"-62 in\"", "$.runs[0].cable.ordered", "below zero", "above zero", false),
        ("\"inBushing\": \"3/4 in\"", "¤\"arrives\": { \"at\": \"clamp-3\", \"along\": [1, 0, 0] }", "$.runs[0].cable.ends.arrives", "\"arrives\" beside the anchor in coordinates", "one place for the anchor", false),
        ("\"along\": [1, 0, 0.2], \"kind\"", "\"kind\"", "$.runs[0].cable.supports[0].along", "no \"along\" in a support", "which a clamp closed at a mark needs", false),
        ("\"trimming\": \"2 in\"", "\"trimming\": ¤\"-2 in\"", "$.runs[0].cable.ends.trimming", "below zero", "0 mm to 2 m", false),
    ];

    public static TheoryData<string, int> Cases()
    {
        var data = new TheoryData<string, int>();
        for (var i = 0; i < CockpitCases.Length; i++)
            data.Add("cockpit", i);
        for (var i = 0; i < BenchCases.Length; i++)
            data.Add("bench", i);
        for (var i = 0; i < SpatialCases.Length; i++)
            data.Add("spatial", i);
        for (var i = 0; i < RoutedCases.Length; i++)
            data.Add("routed", i);
        return data;
    }

    [Theory]
    [MemberData(nameof(Cases))]
    public void Fault_InASoundFile_IsToldWithItsPlace(string form, int number)
    {
        var spoiled = Spoiled(form, number);
        var marked = spoiled.Marked;
        var text = spoiled.Text;
        var result = AircraftFile.Parse("a.throwright.json", text);
        var problem = Assert.Single(result.Problems);
        Assert.Equal(spoiled.Path, problem.JsonPath);
        Assert.Contains(spoiled.Found, problem.Found, StringComparison.Ordinal);
        Assert.Contains(spoiled.Expected, problem.Expected, StringComparison.Ordinal);
        Assert.Equal("a.throwright.json", problem.File);

        var lines = text.Split('\n');
        var at = marked.IndexOf(Here, StringComparison.Ordinal);
        if (at >= 0)
        {
            var before = marked[..at];
            Assert.Equal((before.Count(c => c == '\n') + 1, at - before.LastIndexOf('\n')), (problem.Line, problem.Column));
        }

        // The line is shown without its blanks, control characters as dots, with the mark under the fault.
        var line = lines[problem.Line - 1];
        Assert.Equal(string.Concat(line.Trim(' ').Select(c => char.IsControl(c) ? '·' : c)), problem.LineText);
        Assert.Equal(problem.Column - 1 - (line.Length - line.TrimStart(' ').Length), problem.MarkStart);
        Assert.InRange(problem.MarkStart + problem.MarkLength, problem.MarkStart, problem.LineText.Length);
        Assert.Equal(problem.JsonPath.StartsWith("$.runs[1]", StringComparison.Ordinal) ? "MIXTURE" : problem.JsonPath.StartsWith("$.runs[0]", StringComparison.Ordinal) ? "cowl-flap" : "", problem.Run);
    }

    [Theory]
    [MemberData(nameof(Cases))]
    public void Fault_ThatASchemaCanSee_IsRefusedByTheSchema(string form, int number)
    {
        var spoiled = Spoiled(form, number);
        Assert.Equal(spoiled.SchemaSees, !PublishedSchema.Accepts(spoiled.Text));
    }

    [Fact]
    public void SoundFiles_HaveNoProblems()
    {
        Assert.Empty(AircraftFile.Parse("a", SoundFiles.Bench).Problems);
        Assert.Empty(AircraftFile.Parse("a", SoundFiles.Spatial).Problems);
        Assert.Empty(AircraftFile.Parse("a", SoundFiles.Cockpit).Problems);
        Assert.Empty(AircraftFile.Parse("a", SoundFiles.Routed).Problems);
    }

    private static (string Marked, string Text, string Path, string Found, string Expected, bool SchemaSees) Spoiled(string form, int number)
    {
        var (sound, c) = form switch
        {
            "bench" => (SoundFiles.Bench, BenchCases[number]),
            "spatial" => (SoundFiles.Spatial, SpatialCases[number]),
            "cockpit" => (SoundFiles.Cockpit, CockpitCases[number]),
            _ => (SoundFiles.Routed, RoutedCases[number]),
        };
        sound = sound.ReplaceLineEndings("\n");
        var at = sound.LastIndexOf(c.Was, StringComparison.Ordinal);
        Assert.True(at >= 0, c.Was);
        var marked = sound[..at] + c.Is + sound[(at + c.Was.Length)..];
        return (marked, marked.Replace("¤", "", StringComparison.Ordinal), c.Path, c.Found, c.Expected, c.SchemaSees);
    }

    [Theory]
    [InlineData("2999-03-01")]
    [InlineData("1926-03-01")]
    public void AsBuilt_DateNoOneCanHaveMeasuredOn_IsRefused(string date)
    {
        var result = AircraftFile.Parse("bird.json", SoundFiles.Installed.Replace("2026-03-01", date, StringComparison.Ordinal));
        var problem = Assert.Single(result.Problems);
        Assert.Equal("$.runs[0].asBuilt[0].date", problem.JsonPath);
        Assert.Contains(date, problem.Found, StringComparison.Ordinal);
        Assert.Contains("1950 to 2100", problem.Expected, StringComparison.Ordinal);
    }
}
