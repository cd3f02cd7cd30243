#!/usr/bin/env python3
"""Makes left-wall.3mf: what a hand-held scanner brings home of a cockpit's left wall. Everything in it is invented.

Fabric between stringers and three frames, uneven samples, noise, holes where the scanner saw nothing, a ragged rim and loose
flecks; in the scanner's own axes, mm. Python 3 and its standard library. The same seed gives the same triangles.

    python3 examples/meshes/make-scan.py [FILE] [--size N]      (N x N samples; 240 gives some 106,000 triangles)

It also prints four marks, in the scan and in the aircraft, for "matched".
"""
import math
import random
import sys
import zipfile

argv = sys.argv[1:]
size = int(argv[argv.index("--size") + 1]) if "--size" in argv else 240
path = argv[0] if argv and not argv[0].startswith("--") else __file__.rsplit("/", 1)[0] + "/left-wall.3mf"
rng = random.Random(20260101)

# Aircraft axes, mm: station aft, buttline right, waterline up.
STATION, WATERLINE = (1240.0, 2010.0), (260.0, 870.0)
STRINGERS = [360.0, 480.0, 600.0, 720.0, 830.0]
FRAMES = [1300.0, 1620.0, 1940.0]


def wall(x, z):
    """Buttline of the wall: bowed outward in the middle, stringers and frames standing into the cockpit."""
    bow = 335.0 + 22.0 * math.sin(math.pi * (z - 200.0) / 720.0) + 8.0 * math.sin(math.pi * (x - 1200.0) / 850.0)
    sag = 3.5 * math.cos(2 * math.pi * (z - 360.0) / 120.0)  # fabric between stringers
    inward = max([0.0] + [12.0 * math.exp(-((z - s) / 7.0) ** 2) for s in STRINGERS])
    inward = max([inward] + [18.0 * math.exp(-((x - f) / 9.0) ** 2) for f in FRAMES])
    return -(bow + sag - inward)


# The scanner's axes: y up, turned 17 degrees about it, tipped 4, its origin somewhere on the seat.
C1, S1 = math.cos(math.radians(17)), math.sin(math.radians(17))
C2, S2 = math.cos(math.radians(4)), math.sin(math.radians(4))


def to_scan(x, y, z):
    x, y, z = x - 1700.0, y + 40.0, z - 420.0
    x, y = C1 * x + S1 * y, -S1 * x + C1 * y
    y, z = C2 * y + S2 * z, -S2 * y + C2 * z
    return (x, z, -y)


holes = [(rng.uniform(*STATION), rng.uniform(*WATERLINE), rng.uniform(8, 45), rng.uniform(8, 30), rng.uniform(0, math.pi)) for _ in range(22)]


def seen(x, z):
    for hx, hz, a, b, turn in holes:
        dx, dz = x - hx, z - hz
        u, v = math.cos(turn) * dx + math.sin(turn) * dz, -math.sin(turn) * dx + math.cos(turn) * dz
        if (u / a) ** 2 + (v / b) ** 2 < 1:
            return False
    edge = min(x - STATION[0], STATION[1] - x, z - WATERLINE[0], WATERLINE[1] - z)
    return edge > 6.0 * rng.random()


points, place = [], {}
dx, dz = (STATION[1] - STATION[0]) / (size - 1), (WATERLINE[1] - WATERLINE[0]) / (size - 1)
for i in range(size):
    for j in range(size):
        x = STATION[0] + (i + rng.uniform(-0.35, 0.35)) * dx
        z = WATERLINE[0] + (j + rng.uniform(-0.35, 0.35)) * dz
        # A scanner is off by a few tenths, and now and then by more.
        y = wall(x, z) + rng.gauss(0, 0.25) + (rng.gauss(0, 1.0) if rng.random() < 0.01 else 0.0)
        if seen(x, z):
            place[i, j] = len(points)
            points.append((x, y, z))

triangles = []
for i in range(size - 1):
    for j in range(size - 1):
        a, b, c, d = (place.get(k) for k in ((i, j), (i + 1, j), (i + 1, j + 1), (i, j + 1)))
        halves = [(a, b, c), (a, c, d)] if (i + j) % 2 else [(a, b, d), (b, c, d)]
        triangles += [h for h in halves if None not in h]

# Loose flecks, outside the wall.
for _ in range(40):
    x, z = rng.uniform(*STATION), rng.uniform(*WATERLINE)
    at = len(points)
    for _ in range(3):
        points.append((x + rng.uniform(-4, 4), wall(x, z) - rng.uniform(2, 10), z + rng.uniform(-4, 4)))
    triangles.append((at, at + 1, at + 2))

used = sorted({k for t in triangles for k in t})
number = {k: n for n, k in enumerate(used)}
model = ['<?xml version="1.0" encoding="UTF-8"?>\n<model unit="millimeter" xml:lang="en-US" xmlns="http://schemas.microsoft.com/3dmanufacturing/core/2015/02">\n<metadata name="Title">Invented left wall of a cockpit, scan-like</metadata>\n<resources><object id="1" type="surface"><mesh><vertices>\n']
for k in used:
    model.append('<vertex x="%.1f" y="%.1f" z="%.1f"/>\n' % to_scan(*points[k]))
model.append("</vertices><triangles>\n")
for t in triangles:
    model.append('<triangle v1="%d" v2="%d" v3="%d"/>\n' % tuple(number[k] for k in t))
model.append('</triangles></mesh></object></resources>\n<build><item objectid="1"/></build>\n</model>\n')

TYPES = '<?xml version="1.0" encoding="UTF-8"?>\n<Types xmlns="http://schemas.openxmlformats.org/package/2006/content-types"><Default Extension="rels" ContentType="application/vnd.openxmlformats-package.relationships+xml"/><Default Extension="model" ContentType="application/vnd.ms-package.3dmanufacturing-3dmodel+xml"/></Types>\n'
RELATIONS = '<?xml version="1.0" encoding="UTF-8"?>\n<Relationships xmlns="http://schemas.openxmlformats.org/package/2006/relationships"><Relationship Target="/3D/3dmodel.model" Id="rel0" Type="http://schemas.microsoft.com/3dmanufacturing/2013/01/3dmodel"/></Relationships>\n'
with zipfile.ZipFile(path, "w", zipfile.ZIP_DEFLATED, compresslevel=9) as package:
    for name, text in (("[Content_Types].xml", TYPES), ("_rels/.rels", RELATIONS), ("3D/3dmodel.model", "".join(model))):
        package.writestr(zipfile.ZipInfo(name, (1980, 1, 1, 0, 0, 0)), text, zipfile.ZIP_DEFLATED)

print(f"{path}: {len(triangles)} triangles, {len(used)} corners")
# Where stringers cross frames: found in the scan to half a millimetre, taped in the aircraft to one.
for x, z in ((FRAMES[0], STRINGERS[0]), (FRAMES[0], STRINGERS[4]), (FRAMES[2], STRINGERS[0]), (FRAMES[2], STRINGERS[4])):
    y = wall(x, z)
    scan = [v + rng.uniform(-0.3, 0.3) for v in to_scan(x, y, z)]
    print('{ "mesh": [%.1f, %.1f, %.1f], "aircraft": ["%.0f mm ± 1 mm", "%.0f mm ± 1 mm", "%.0f mm ± 1 mm"] },' % (*scan, x, y, z))
