using System.Globalization;
using Throwright.Engine.Findings;
using Throwright.Engine.Sources;

namespace Throwright.Engine.Tests.Sources;

/// <summary>
/// Every published figure typed a second time, not copied from the data files: a slip of the hand has to be made
/// twice to pass. Units are converted by factors of their own.
/// </summary>
/// <remarks>Marks: R read, r read in part, S secondary, M memory, D derived, N numerical, P common practice or own choice.</remarks>
public sealed class TypedTwiceTests
{
    private const string Figures = """
        buckling/margin                     3                P
        make/bend-per-radius                0.0173           R
        make/bend-per-thickness             0.0078           R
        make/edge-distance                  2                S
        make/pitch                          3                R
        make/thin-edge-metal                1 mm             P
        make/thin-edge-printed              1.5 mm           P
        make/panel-gap                      0.1 mm           P
        make/seat-error                     1.5 deg          P
        make/threads-showing                1                r
        people/thigh-share                  0.72             P
        people/shin-share                   0.83             P
        people/shin-thickness-share         0.72             P
        people/pinch-more                   0.2              S
        clearance/least                     0.5 in           P
        clearance/hand-bare                 25 mm            P
        clearance/knob-gap                  38 mm            M
        clearance/arm-pin                   0.1875 in        P
        clearance/conduit-outside           0.5 in           P
        clearance/sheet-thickness           2 mm             P
        clearance/interest                  100 mm           P
        mount/no-wedge                      2 deg            P
        mount/much                          10 deg           P
        mount/most                          20 deg           P
        mount/play                          0.5 deg          P
        mount/friction                      0.15             P
        mount/least-knob                    19 mm            M
        make/aluminium-modulus              68.9..73.1 GPa   S
        make/bracket-fixity                 0.5              P
        make/bracket-give                   0.5 mm           P
        make/fastener-margin                2                P
        cushion/least                       0.125 in         R
        cushion/most                        12.7 mm          P
        cushion/rigging-tolerance           0.03125 in       P
        expansion/steel-1020                11.7 ppm/K       R
        expansion/steel-1040                11.3 ppm/K       R
        expansion/steel-4140                12.3 ppm/K       R
        expansion/stainless-304             17.2 ppm/K       R
        expansion/stainless-316             15.9..16.0 ppm/K R
        expansion/stainless-17-7ph          11.0 ppm/K       R
        expansion/aluminium-2024            22.9 ppm/K       R
        expansion/aluminium-6061            23.6 ppm/K       R
        expansion/aluminium-7075            23.4 ppm/K       R
        expansion/nylon-66                  144 ppm/K        R
        expansion/ptfe                      126..216 ppm/K   R
        expansion/carbon-epoxy-along        -0.5 ppm/K       R
        expansion/carbon-epoxy-across       32 ppm/K         R
        expansion/glass-epoxy-along         6.6 ppm/K        R
        expansion/glass-epoxy-across        30 ppm/K         R
        expansion/aramid-epoxy-along        -4.0 ppm/K       R
        expansion/aramid-epoxy-across       70 ppm/K         R
        expansion/fir-along                 3.8..5.1 ppm/K   R
        expansion/fir-across                25.4..33.8 ppm/K R
        expansion/oak-along                 4.6..5.9 ppm/K   R
        expansion/oak-across                30.6..39.1 ppm/K R
        expansion/carbon-quasi-isotropic    2..3 ppm/K       M
        expansion/glass-woven               11..14 ppm/K     M
        expansion/music-wire                12 ppm/K         R
        friction/ptfe-liner-new             0.04..0.12       P
        friction/plastic-liner              0.10..0.25       P
        friction/bare-coil-greased          0.12..0.20       P
        friction/bare-coil-dry              0.25..0.75       P
        friction/cold-factor                2..4             M
        hand/finger-pull                    18 N             R
        hand/t-handle-pull                  45 N             R
        hand/one-hand-brief                 50 lbf           R
        hand/prolonged                      10 lbf           R
        hand/finger-pinch                   48 N             R
        hand/estimated-load-factor          1.25             R
        hand/lock-margin                    1.5              P
        measure/tape                        0.0625 in        P
        measure/level                       0.125 in         P
        measure/wanted                      0.125 in         P
        heat/cabin-air                      76 degC          R
        heat/dashboard                      89 degC          S
        heat/clamped-margin                 15               P
        heat/free-margin                    5                P
        heat/glass-margin                   20               P
        heat/threadlocker                   150 degC         M
        joint/push-pull-factor              3.33             R
        joint/cable-factor                  2.0              R
        joint/fitting-factor                1.15             R
        joint/least-hand-load               50 lbf           R
        joint/most-hand-load                100 lbf          R
        joint/fibre-nut-hottest             250 degF         R
        joint/wiring-distance               0.5 in           M
        joint/screw-on-wire-derate          0.5              P
        joint/ultimate-factor               1.5              R
        joint/stick-strike                  67 lbf           R
        marking/least-height                0.004            R
        marking/good-height                 0.006            R
        marking/dim-light                   1.5              P
        marking/stroke-dark-on-light        6                R
        marking/stroke-light-on-dark        7..8             R
        order/shank-short                   0.03125 in       S
        order/washers-most                  3                S
        order/threads-out                   1                r
        order/rivet-length                  1.5              R
        order/steel-density                 7850 kg/m3       S
        rig/tape                            0.015625 in      P
        rig/protractor                      1 deg            P
        rig/scale                           1 N              P
        people/weak-pull                    70 N             N
        people/weak-push                    51 N             N
        people/weak-pinch                   34 N             D
        people/middle-pull                  124 N            N
        people/middle-push                  98 N             N
        route/bend-total-good               180 deg          M
        route/bend-total-most               360 deg          M
        route/radius-margin                 1.25             D
        route/direction-error               3 deg            P
        route/move-per-length               3                P
        route/straight-radius               2000 mm              P
        route/bend-agree                    20 deg           P
        route/trimming                      2 in             P
        route/order-step                    1 in             P
        route/chafe-least                   0.375 in         R
        route/clamp-step                    0.0625 in        S
        throw/transmission-angle-least      30 deg           P
        throw/transmission-angle-texts      40..45 deg       M
        throw/plain-fairlead-most           3 deg            R
        throw/swivel-margin                 2 deg            P
        throw/end-tube-swivel               8 deg            M
        valve/ball-open-loss                0.05             R
        wire/modulus-302                    193 GPa          R
        wire/strand-modulus-1x7             150..165 GPa     M
        wire/strand-modulus-1x19            150..165 GPa     M
        wire/strand-modulus-7x7             90..110 GPa      M
        wire/strand-modulus-7x19            70..95 GPa       M
        wire/strand-fill-1x7                0.77777777778    D
        wire/strand-fill-1x19               0.76             D
        wire/strand-fill-7x7                0.60493827160    D
        wire/strand-fill-7x19               0.59111111111    D
        wire/elastic-share-a228             0.65..0.75       R
        wire/elastic-share-302              0.65..0.75       M
        wire/fatigue-share                  0.35..0.45       M
        wire/hottest-a228                   120 degC         R
        wire/density-music                  7850 kg/m3       S
        wire/density-302                    8000 kg/m3       S
        """;

    // Columns in the order and unit of the publication; "-": no cell.
    private const string Tables = """
        buckling/end-fixity D : ends, factor, length
          fixed-free 0.25 2
          pinned-pinned 1 1
          fixed-pinned 2.045749 0.699156
          fixed-fixed 4 0.5
        people/seated S : size, buttock-knee mm, knee-height mm, thigh mm, hand mm
          woman5 541 469 145 165
          woman50 589 510 167 180
          woman95 646 557 191 199
          man5 569 509 157 177
          man50 617 553 180 193
          man95 669 602 207 210
        people/reach S : size, grip mm
          woman5 555
          woman50 600
          man5 610
          man50 665
          man95 715
        cable/breaking-strength R : diameter in, construction, carbon lbf, stainless lbf
          0.03125 3x7 110 110
          0.046875 7x7 270 270
          0.0625 7x7 480 480
          0.0625 7x19 480 480
          0.09375 7x7 920 920
          0.09375 7x19 1000 920
          0.125 7x19 2000 1760
          0.15625 7x19 2800 2400
          0.1875 7x19 4200 3700
          0.21875 7x19 5600 5000
          0.25 7x19 7000 6400
        heat/plastics M : material, distortion degC, operating degC, glass degC
          PLA 50 45 59
          PETG 65 - 77
          ABS 76 70 105
          ASA 85 - 100
          PC 127 115 147
          PEI 200 170 200
          nylon-12 86 - -
          nylon-66 100 90 -
          nylon-carbon 100 - -
          acetal 100 85 -
          PTFE - 260 -
          polyethylene - 80 -
        route/support-spacing r : outside in, span in
          0.25 16
          0.3125 18
          0.375 20
          0.5 23
          0.625 25.5
          0.75 27.5
          1 30
        route/clamp-cushions S : code, band, cushion, hottest degC
          DG aluminium chloroprene 100
          DF aluminium nitrile 100
          DE aluminium ethylene-propylene 100
          CF stainless nitrile 93
          CG stainless chloroprene 100
          CE stainless ethylene-propylene 135
          CH stainless silicone 204
          CJ stainless fluorosilicone 232
        order/bolts S : bolt, dash, grip in, length in
          AN3 3 0.062 0.469
          AN3 4 0.125 0.531
          AN3 5 0.25 0.656
          AN3 6 0.375 0.781
          AN3 7 0.5 0.906
          AN3 10 0.625 1.031
          AN3 11 0.75 1.156
          AN3 12 0.875 1.281
          AN3 13 1.0 1.406
          AN3 14 1.125 1.531
          AN4 3 0.062 0.469
          AN4 4 0.062 0.531
          AN4 5 0.188 0.656
          AN4 6 0.312 0.781
          AN4 7 0.438 0.906
          AN4 10 0.562 1.031
          AN4 11 0.688 1.156
          AN4 12 0.812 1.281
          AN4 13 0.938 1.406
          AN4 14 1.062 1.531
          AN5 4 0.062 0.594
          AN5 5 0.188 0.719
          AN5 6 0.312 0.844
          AN5 7 0.438 0.969
          AN5 10 0.562 1.094
          AN5 11 0.688 1.219
          AN5 12 0.812 1.344
          AN5 13 0.938 1.469
          AN5 14 1.062 1.594
          AN6 5 0.062 0.703
          AN6 6 0.188 0.828
          AN6 7 0.312 0.953
          AN6 10 0.438 1.078
          AN6 11 0.562 1.203
          AN6 12 0.688 1.328
          AN6 13 0.812 1.453
        order/sizes S : bolt, thread, diameter in, threaded in, washer, thin, washer-thickness in, thin-thickness in, cotter, nut in
          AN3 10-32 0.19 0.406 AN960-10 AN960-10L 0.063 0.032 MS24665-132 0.13
          AN4 1/4-28 0.25 0.469 AN960-416 AN960-416L 0.063 0.032 MS24665-132 0.226
          AN5 5/16-24 0.3125 0.531 AN960-516 AN960-516L 0.063 0.032 MS24665-134 0.273
          AN6 3/8-24 0.375 0.641 AN960-616 AN960-616L 0.063 0.032 MS24665-283 0.337
        order/torque R : thread, tension-low lbf in, tension-high lbf in, shear-low lbf in, shear-high lbf in, tension-most lbf in, shear-most lbf in
          8-36 12 15 7 9 20 12
          10-32 20 25 12 15 40 25
          1/4-28 50 70 30 40 100 60
          5/16-24 100 140 60 85 225 140
          3/8-24 160 190 95 110 390 240
          7/16-20 450 500 270 300 840 500
          1/2-20 480 690 290 410 1100 660
          8-32 12 15 7 9 20 12
          10-24 20 25 12 15 35 21
          1/4-20 40 50 25 30 75 45
          5/16-18 80 90 48 55 160 100
        order/set-screw-torque S : size, low lbf in, hold lbf
          No.4 5 50
          No.6 10 100
          No.8 15 150
          No.10 25 200
          1/4 87 400
          5/16 165 700
        cable/core-diameter M : class, low mm, high mm
          A 1.0 1.6
          B 1.4 2.0
          C 2.8 3.5
          D 4.5 6.5
        cable/conduit-outside M : class, low mm, high mm
          A 3 5
          B 5 7
          C 7 10
          D 11 16
        cable/clearance M : class, low mm, high mm
          A 0.3 0.6
          B 0.2 0.4
          C 0.2 0.4
          D 0.3 0.5
        cable/pull-load P : class, low N, high N
          A 90 130
          B 180 270
          C 350 550
          D 1100 1800
        cable/push-load P : class, low N, high N
          A 25 45
          B 60 90
          C 200 300
          D 600 900
        cable/least-radius M : class, low mm, high mm
          A 100 150
          B 75 150
          C 125 150
          D 200 250
        cable/good-radius P : class, low mm, high mm
          A 150 200
          B 125 200
          C 200 250
          D 300 400
        cable/friction M : class, low, high
          A 0.15 0.3
          B 0.06 0.12
          C 0.08 0.12
          D 0.08 0.12
        cable/travel M : class, low mm, high mm
          A 25 75
          B 25 100
          C 50 125
          D 75 150
        cable/end-tube-swivel M : class, low deg, high deg
          A 0 0
          B 0 8
          C 8 8
          D 8 8
        cable/coldest M : class, low degC, high degC
          A -40 -40
          B -40 -30
          C -54 -40
          D -54 -40
        cable/hottest M : class, low degC, high degC
          A 200 230
          B 90 110
          C 100 110
          D 100 110
        make/bend-radius R : alloy, thickness in, low, high
          2024-O 0.016 0 0
          2024-O 0.032 0 1
          2024-O 0.064 0 1
          2024-O 0.128 0 1
          2024-O 0.182 0 1
          2024-O 0.258 0 1
          2024-T3 0.016 1.5 3
          2024-T3 0.032 2 4
          2024-T3 0.064 3 5
          2024-T3 0.128 4 6
          2024-T3 0.182 4 6
          2024-T3 0.258 5 7
          2024-T6 0.016 2 4
          2024-T6 0.032 3 5
          2024-T6 0.064 3 5
          2024-T6 0.128 4 6
          2024-T6 0.182 5 7
          2024-T6 0.258 6 10
          5052-O 0.016 0 0
          5052-O 0.032 0 0
          5052-O 0.064 0 1
          5052-O 0.128 0 1
          5052-O 0.182 0 1
          5052-O 0.258 0 1
          5052-H32 0.016 0 0
          5052-H32 0.032 0 0
          5052-H32 0.064 0.5 1
          5052-H32 0.128 0.5 1.5
          5052-H32 0.182 0.5 1.5
          5052-H32 0.258 0.5 1.5
          5052-H34 0.016 0 0
          5052-H34 0.032 0 0
          5052-H34 0.064 0.5 1.5
          5052-H34 0.128 1.5 2.5
          5052-H34 0.182 1.5 2.5
          5052-H34 0.258 2 3
          5052-H36 0.016 0 1
          5052-H36 0.032 0.5 1.5
          5052-H36 0.064 1 2
          5052-H36 0.128 1.5 3
          5052-H36 0.182 2 4
          5052-H36 0.258 2 4
          5052-H38 0.016 0.5 1.5
          5052-H38 0.032 1 2
          5052-H38 0.064 1.5 3
          5052-H38 0.128 2 4
          5052-H38 0.182 3 5
          5052-H38 0.258 4 6
          6061-O 0.016 0 0
          6061-O 0.032 0 1
          6061-O 0.064 0 1
          6061-O 0.128 0 1
          6061-O 0.182 0 1
          6061-O 0.258 0 1
          6061-T4 0.016 0 1
          6061-T4 0.032 0 1
          6061-T4 0.064 0.5 1.5
          6061-T4 0.128 1 2
          6061-T4 0.182 1.5 3
          6061-T4 0.258 2.5 4
          6061-T6 0.016 0 1
          6061-T6 0.032 0.5 1.5
          6061-T6 0.064 1 2
          6061-T6 0.128 1.5 3
          6061-T6 0.182 2 4
          6061-T6 0.258 3 4
          7075-O 0.016 0 0
          7075-O 0.032 0 1
          7075-O 0.064 0 1
          7075-O 0.128 0.5 1.5
          7075-O 0.182 1 2
          7075-O 0.258 1.5 3
          7075-T6 0.016 2 4
          7075-T6 0.032 3 5
          7075-T6 0.064 4 6
          7075-T6 0.128 5 7
          7075-T6 0.182 5 7
          7075-T6 0.258 6 10
        make/sheet-strength M : alloy, bearing ksi, shear ksi
          2024-T3 119 37
          6061-T6 88 27
          7075-T6 144 44
        make/fasteners M : name, diameter in, shear lbf, tension lbf
          AD3 0.09375 217 -
          AD4 0.125 389 -
          AD5 0.15625 596 -
          AD6 0.1875 860 -
          AN3 0.19 2126 2210
          AN4 0.25 3682 4080
          AN5 0.3125 5752 6500
          AN6 0.375 8283 10100
        make/materials M : name, density kg/m3, group
          6061 2700 2
          2024 2780 2
          7075 2810 2
          5052 2680 2
          aluminium 2700 2
          aluminum 2700 2
          steel 7850 3
          carbon-steel 7850 3
          4130 7850 3
          stainless 8000 4
          stainless-steel 8000 4
          brass 8500 4
          bronze 8800 4
          titanium 4430 4
          carbon 1600 5
          glass 1900 0
          plywood 700 0
          wood 600 0
          PLA 1240 0
          PETG 1270 0
          ABS 1040 0
          ASA 1070 0
          acetal 1410 0
          nylon 1140 0
          polycarbonate 1200 0
          PEI 1270 0
        make/k-factor S : material, thickness in, radius in, factor
          aluminium 0.032 0.03 0.398
          aluminium 0.032 0.06 0.394
          aluminium 0.032 0.12 0.391
          aluminium 0.032 0.188 0.392
          aluminium 0.063 0.03 0.404
          aluminium 0.063 0.06 0.402
          aluminium 0.063 0.12 0.401
          aluminium 0.063 0.188 0.401
          aluminium 0.125 0.03 0.407
          aluminium 0.125 0.06 0.407
          aluminium 0.125 0.12 0.406
          aluminium 0.125 0.188 0.406
          cold-rolled-steel 0.048 0.03 0.438
          cold-rolled-steel 0.048 0.06 0.433
          cold-rolled-steel 0.048 0.12 0.433
          cold-rolled-steel 0.048 0.188 0.420
          cold-rolled-steel 0.093 0.03 0.459
          cold-rolled-steel 0.093 0.06 0.457
          cold-rolled-steel 0.093 0.12 0.456
          cold-rolled-steel 0.093 0.188 0.450
          stainless 0.029 0.03 0.483
          stainless 0.029 0.06 0.479
          stainless 0.029 0.12 0.475
          stainless 0.029 0.188 0.454
          stainless 0.078 0.03 0.449
          stainless 0.078 0.06 0.446
          stainless 0.078 0.12 0.446
          stainless 0.078 0.188 0.438
        make/relief-hole r : to in, diameter in
          0.064 0.125
          0.128 0.1875
        stroke/standard P : stroke in
          1
          1.5
          2
          2.5
          3
          4
          5
        valve/plug-cock-loss S : angle deg, loss
          5 0.05
          10 0.29
          20 1.56
          40 17.3
          60 206
        wire/modulus-a228 R : from in, to in, modulus GPa
          - 0.032 203.4
          0.033 0.063 200
          0.064 0.125 196.5
          0.125 - 193
        wire/tensile-a228 S : diameter in, strength ksi
          0.030 330
          0.032 327
          0.034 324
          0.036 321
          0.038 318
          0.040 315
          0.042 313
          0.045 309
          0.048 306
          0.051 303
          0.055 300
          0.059 296
          0.063 293
          0.067 290
          0.072 287
          0.076 284
          0.080 282
          0.085 279
          0.090 276
          0.095 274
          0.100 271
          0.102 270
          0.107 268
          0.110 267
          0.112 266
          0.121 263
          0.125 261
        wire/tensile-302 S : over in, to in, strength ksi
          0.028 0.031 285
          0.031 0.034 282
          0.034 0.037 280
          0.037 0.041 275
          0.041 0.045 272
          0.045 0.050 267
          0.050 0.054 265
          0.054 0.058 261
          0.058 0.063 258
          0.063 0.070 252
          0.070 0.075 250
          0.075 0.080 246
        """;

    // pair; static; kinetic; source; mark
    private static readonly (string Pair, string Static, string Kinetic, string Source, char Mark)[] Friction =
    [
        ("steel on steel, dry", "0.6..0.6", "0.3..0.3", "physics-open", 'R'),
        ("steel on steel, dry, second table", "0.74..0.74", "0.57..0.57", "physics-second", 'S'),
        ("steel on steel, oiled", "0.05..0.05", "0.03..0.03", "physics-open", 'R'),
        ("metal on metal, lubricated", "0.15..0.15", "0.06..0.06", "physics-second", 'S'),
        ("PTFE on steel", "0.04..0.04", "0.04..0.04", "physics-open", 'R'),
        ("nylon 6/6 on itself", "0.04..0.13", "", "crc-materials", 'R'),
        ("cast nylon 6", "", "0.32..0.32", "crc-materials", 'R'),
        ("acetal on steel", "", "0.1..0.3", "crc-materials", 'R'),
        ("acetal copolymer on steel", "", "0.15..0.15", "crc-materials", 'R'),
        ("acetal with 22 % TFE on steel", "", "0.05..0.15", "crc-materials", 'R'),
        ("bicycle gear cable in its housing", "", "0.06..0.06", "bicycle-cable-bench", 'R'),
        ("steel wire rope on a steel sheave, unlubricated", "", "0.72..0.72", "lubricants-13-59", 'R'),
        ("steel wire rope on steel wire rope, unlubricated", "", "0.75..0.75", "lubricants-13-59", 'R'),
    ];

    private static readonly Dictionary<char, Evidence> Marks = new()
    {
        ['R'] = Evidence.Read,
        ['S'] = Evidence.Secondary,
        ['M'] = Evidence.Memory,
        ['D'] = Evidence.Derived,
        ['r'] = Evidence.ReadInPart,
        ['P'] = Evidence.CommonPractice,
        ['N'] = Evidence.Numerical,
    };

    [Fact]
    public void Figures_TypedAgain_AreTheSame()
    {
        var typed = new List<string>();
        foreach (var line in Lines(Figures))
        {
            var words = Words(line);
            var datum = Published.Get(words[0]);
            var (low, high) = Band(words[1]);
            var unit = words.Length == 4 ? words[2] : "";
            Assert.Equal(unit, datum.Unit);
            Equal(Si(low, unit), datum.Low, datum.Id);
            Equal(Si(high, unit), datum.High, datum.Id);
            Equal((Si(low, unit) + Si(high, unit)) / 2, datum.Value, datum.Id);
            Assert.Equal(Marks[words[^1][0]], datum.Source.Evidence);
            typed.Add(datum.Id);
        }

        Assert.Equal(Published.All.Keys.Order(), typed.Order());
    }

    [Fact]
    public void Tables_TypedAgain_AreTheSame()
    {
        var typed = new List<string> { "cable/classes", "friction/measured" };
        var rows = new List<string[]>();
        var table = Published.Table("stroke/standard");
        foreach (var line in Lines(Tables).Append("stroke/standard P : stroke in"))
        {
            if (line.StartsWith("  ", StringComparison.Ordinal))
            {
                rows.Add(Words(line));
                continue;
            }

            if (rows.Count > 0)
                SameRows(table, rows);
            rows.Clear();
            var parts = line.Split(" : ");
            var head = Words(parts[0]);
            table = Published.Table(head[0]);
            Assert.Equal(parts[1].Split(", "), table.Columns.Select(c => $"{c.Id} {c.Unit}".TrimEnd()));
            Assert.Equal(Marks[head[1][0]], table.Source.Evidence);
            typed.Add(table.Id);
        }

        Assert.Equal(Published.Tables.Keys.Order(), typed.Distinct().Order());
    }

    [Fact]
    public void MeasuredFriction_TypedAgain_IsTheSame()
    {
        var table = Published.Table("friction/measured");
        Assert.Equal(Friction.Select(f => f.Pair), table.Rows.Select(r => r.Find("pair")!.Text));
        foreach (var (pair, ofRest, ofMotion, source, mark) in Friction)
        {
            var row = table.Row("pair", pair);
            Assert.Equal(source, row.Source.Id);
            Assert.Equal(Marks[mark], row.Source.Evidence);
            foreach (var (name, text) in new[] { ("static", ofRest), ("kinetic", ofMotion) })
            {
                var (low, high) = text.Length == 0 ? (null, null) : ((double?, double?))Band(text);
                Assert.Equal(low, row.Find($"{name}-low")?.Si);
                Assert.Equal(high, row.Find($"{name}-high")?.Si);
            }
        }
    }

    private static void SameRows(Table table, List<string[]> typed)
    {
        Assert.Equal(typed.Count, table.Rows.Count);
        foreach (var (words, row) in typed.Zip(table.Rows))
        {
            Assert.Equal(table.Columns.Count, words.Length);
            foreach (var (word, column) in words.Zip(table.Columns))
            {
                var cell = row.Find(column.Id);
                if (word == "-")
                    Assert.Null(cell);
                else if (column.Kind is null)
                    Assert.Equal(word, cell!.Text);
                else
                    Equal(Si(Number(word), column.Unit), cell!.Si!.Value, $"{table.Id} {string.Join(' ', words)}");
            }
        }
    }

    /// <summary>Factors written out here, so that a wrong unit in the data can't agree with itself.</summary>
    private static double Si(double value, string unit) => unit == "degF" ? (value - 32) / 1.8 : value * unit switch
    {
        "" or "N" or "degC" or "kg/m3" => 1,
        "in" => 0.0254,
        "mm" => 0.001,
        "lbf" => 4.4482216152605,
        "lbf in" => 4.4482216152605 * 0.0254,
        "deg" => Math.PI / 180,
        "GPa" => 1e9,
        "ksi" => 4448.2216152605 / (0.0254 * 0.0254),
        "ppm/K" => 1e-6,
        _ => throw new ArgumentException($"no factor for {unit}", nameof(unit)),
    };

    // 1e-9: the ends of typed decimals such as 0.77777777778.
    private static void Equal(double expected, double actual, string what) =>
        Assert.True(Math.Abs(expected - actual) <= 1e-9 * Math.Abs(expected), $"{what}: typed {expected:R}, in the data {actual:R}");

    private static (double Low, double High) Band(string text)
    {
        var ends = text.Split("..");
        return (Number(ends[0]), Number(ends[^1]));
    }

    private static double Number(string text) => double.Parse(text, CultureInfo.InvariantCulture);

    private static string[] Lines(string block) => block.Split('\n', StringSplitOptions.RemoveEmptyEntries);

    private static string[] Words(string line) => line.Split(' ', StringSplitOptions.RemoveEmptyEntries);
}
