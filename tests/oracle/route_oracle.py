#!/usr/bin/env python3
"""A second opinion on measure and route, from the physics up, sharing no code with the program.

Random aircraft files are written, worked out here, and compared with

    throwright measure FILE --json        throwright check FILE --json --curves

measure    each taped point by scipy's least_squares over distances, level, plumb line, same station and buttline, string and single
           coordinates, in all spellings of units and limits; covariance from the Jacobian at the solution.
route      the elastic curve over all spans at once by scipy's collocation (solve_bvp): 12 unknowns a span and its length, conditions at ends
           and supports as docs/theory/route.md states them, natural or given length, marks, with and without weight. First from starts of its own,
           then, if these miss, from the program's answer: either way it must be a solution, and none found may store less energy.
order      conduit and wire added up from the parts of the file.
otherwise  the same runs moved, turned, mirrored, called from the other end, their clamps' lines the other way round, in inches and in metres.

What has to agree, and how well:
  measure    place 1e-8 m (answers have that many digits), standard deviations 1e-6 relative
  length     1e-8 relative; radius and bend total 3e-6 (meshes of both); energy never lower here by more than 1e-8 relative
  otherwise  1e-9 relative; called from the other end the longest straight 5e-3 (its end between two nodes), move per length 1e-5; no hand force then, which goes by the order
           of the bends, and no move per length of a marked clamp

Usage:  route_oracle.py --program throwright.dll [--runs 12] [--otherwise 40] [--points 40] [--starts 2] [--seed 1]
Needs numpy and scipy.
"""

import argparse
import copy
import json
import os
import subprocess
import sys
import tempfile
import warnings

import numpy as np
from scipy.integrate import solve_bvp
from scipy.optimize import least_squares
from scipy.spatial.transform import Rotation

IN_BUSHING, IN_ANCHOR = 0.010, 0.005
WEIGHT, STIFFNESS = 1.0, 0.1


class Comparison:
    def __init__(self):
        self.differ, self.largest = [], {}

    def say(self, words):
        self.differ.append(words)

    def near(self, what, key, theirs, own, slack, scale=None):
        off = abs(theirs - own) / (scale or max(abs(own), 1e-12))
        self.largest[key] = max(self.largest.get(key, 0.0), off)
        if not off <= slack:
            self.say(f"{what}: {key} {theirs:.12g}, here {own:.12g}")


def ask(program, folder, command, file, *options):
    path = os.path.join(folder, "a.throwright.json")
    with open(path, "w", encoding="utf-8") as f:
        json.dump(file, f, ensure_ascii=False)
    done = subprocess.run(["dotnet", program, command, path, "--json", *options], capture_output=True, encoding="utf-8", check=False)
    if not done.stdout.strip():
        raise SystemExit(f"{command}: {done.stderr}")
    answer = json.loads(done.stdout)
    answer = answer["files"][0] if "files" in answer else answer
    if answer.get("problems"):
        raise SystemExit(f"{command}: {answer['problems'][0]}")
    return answer


def direction(rng):
    v = rng.normal(size=3)
    return v / np.linalg.norm(v)


# ---------------------------------------------------------------------------------------------- measure

SPELLINGS = {
    "in": 0.0254, "mm": 1e-3, "cm": 1e-2, "m": 1.0, "ft": 0.3048, "inch": 0.0254, "inches": 0.0254, '"': 0.0254, "″": 0.0254,
    "'": 0.3048, "′": 0.3048, "feet": 0.3048, "foot": 0.3048, "thou": 2.54e-5, "µm": 1e-6, "um": 1e-6,
}
AXES = {"station": 0, "buttline": 1, "waterline": 2}


class Tape:
    """One file of known and taped points."""

    def __init__(self, rng):
        self.rng = rng
        self.known = {f"mark-{i}": self.anywhere() for i in range(7)}
        self.limit = {n: rng.choice([0, 0, 0.0005, 0.001]) for n in self.known}
        self.points = {n: [self.text(c) + (f" ± {self.text(self.limit[n])}" if self.limit[n] else "") for c in p] for n, p in self.known.items()}
        self.readings = {}
        for name in ("one", "two", "three", "four"):
            self.add(name)

    def anywhere(self):
        return self.rng.uniform(-1, 1, 3) * (1, 0.5, 0.6) + (1.5, 0, 0.7)

    def text(self, metres):
        name = str(self.rng.choice(list(SPELLINGS)))
        return f"{metres / SPELLINGS[name]:.17g} {name}"

    def limits(self, half, value):
        return [
            (f" ± {self.text(half)}", half / 3 ** 0.5), (f" ± {self.text(half)} normal", half / 3),
            (f" +{self.text(half)}/-{self.text(half)}", half / 3 ** 0.5), (f" ± {half / value * 100:.17g} %", half / 3 ** 0.5),
        ][self.rng.integers(4)]

    def add(self, name):
        rng, at, taped = self.rng, self.anywhere(), {}
        tape, within = rng.choice([0.001, 0.0015]), 0.003
        point, rows = {"taped": taped, "tape": f"± {self.text(tape)}", "within": f"± {self.text(within)}"}, []
        names = list(rng.choice(list(self.limit)[:7], rng.integers(3, 7), replace=False))
        for n in names:
            true = np.linalg.norm(at - self.known[n])
            half = 0.002 if rng.random() < 0.4 else tape
            read = true + 0.7 * half * rng.uniform(-1, 1)
            words, sigma = self.limits(half, read) if half == 0.002 else ("", half / 3 ** 0.5)
            taped[n] = self.text(read) + words
            rows.append(("distance", self.known[n], read, np.hypot(sigma, self.limit[n] / 3 ** 0.5)))
        sigma = within / 3 ** 0.5
        for helper in rng.permutation(["level", "plumb", "sameStation", "sameButtline", "inLine", "station", "buttline", "waterline"])[: rng.integers(0, 3)]:
            if helper in AXES:
                k = AXES[helper]
                point[helper] = f"{self.text(at[k] + 0.0005)} ± {self.text(0.002)}"
                rows.append(("along", np.eye(3)[k], at[k] + 0.0005, 0.002 / 3 ** 0.5))
                continue
            other, label = self.anywhere(), f"{name}-{helper}"
            held = {"level": [2], "sameStation": [0], "sameButtline": [1], "plumb": [0, 1], "inLine": []}[helper]
            for k in held:
                other[k] = at[k] + 0.0007
                rows.append(("along", np.eye(3)[k], other[k], sigma))
            point[helper] = label
            self.points[label] = [self.text(c) for c in other]
            if helper == "inLine":
                second = at + (at - other) * rng.uniform(0.3, 1.5) + 0.0005 * rng.normal(size=3)
                self.points[label + "-2"] = [self.text(c) for c in second]
                point[helper] = [label, label + "-2"]
                rows.append(("line", other, second, sigma))
        if len(names) == 3:
            a, b, c = (self.known[n] for n in names)
            n = np.cross(b - a, c - a)
            n /= np.linalg.norm(n)
            k = int(np.argmax(np.abs(n)))
            further = -((at - a) @ n) * n[k] < 0
            point["side"] = (("forwardOf", "aftOf"), ("leftOf", "rightOf"), ("below", "above"))[k][int(further)]
        self.points[name] = point
        self.readings[name] = (at, rows)

    def file(self):
        return {"format": 1, "aircraft": {"name": "taped"}, "points": self.points, "runs": []}

    def compare(self, answer, comparison, number):
        count = 0
        for told in answer["points"]:
            at, rows = self.readings[told["name"]]
            # Two places, or readings that disagree: told as such, and no deviations to compare.
            if "place" not in told or any("disagree" in f["sentence"] for f in told["findings"]):
                continue
            got = least_squares(residuals, at, args=(rows,), xtol=1e-15, ftol=1e-15, gtol=1e-15)
            spread = np.linalg.inv(got.jac.T @ got.jac)
            what = f"points {number}, {told['name']}"
            for k in range(3):
                comparison.near(what, "place", told["place"][k], got.x[k], 1e-8, 1.0)
                comparison.near(what, "sigma", told["sigma"][k], spread[k, k] ** 0.5, 2e-6)
            comparison.near(what, "worst sigma", told["worstSigma"], np.linalg.eigvalsh(spread)[-1] ** 0.5, 2e-6)
            count += 1
        return count


def residuals(x, rows):
    out = []
    for kind, a, b, sigma in rows:
        if kind == "distance":
            out.append((np.linalg.norm(x - a) - b) / sigma)
        elif kind == "along":
            out.append((a @ x - b) / sigma)
        else:
            out += [(x - a) @ e / sigma for e in across((b - a) / np.linalg.norm(b - a))]
    return np.array(out)


# ---------------------------------------------------------------------------------------------- route: files


def run_of(rng, number, weight):
    """Points and directions from the knob to the device, in metres."""
    count = rng.integers(0, 4)
    p, d = rng.normal(size=3) * 0.1, direction(rng)
    points, ways = [p], [d]
    for span in rng.uniform(0.25, 0.5, size=count + 1):
        to = d + 0.5 * direction(rng)
        to /= np.linalg.norm(to)
        step = 0.6 * d + 0.4 * to
        p, d = p + span * step / np.linalg.norm(step), to
        points.append(p)
        ways.append(d)
    supports = []
    for k in range(1, count + 1):
        kind, along = str(rng.choice(["tightClamp", "slidingClamp", "grommet"])), None
        if kind != "grommet" and rng.random() < 0.6:
            along = ways[k] + 0.15 * rng.normal(size=3)
            along *= rng.choice([-1, 1, 1]) / np.linalg.norm(along)
        supports.append({"at": points[k], "along": along, "kind": kind})
    run = {"id": f"run-{number}", "leaves": (points[0], ways[0]), "arrives": (points[-1], ways[-1]), "supports": supports, "length": None, "mark": None, "weight": weight}
    chords = [np.linalg.norm(b - a) for a, b in zip(points, points[1:])]
    if rng.random() < 0.5:
        run["length"] = sum(chords) * rng.uniform(1.02, 1.08)
        marked = [k for k, s in enumerate(supports) if s["kind"] == "tightClamp" and s["along"] is not None]
        if marked:
            run["mark"] = (marked[0], sum(chords[marked[0] + 1:]) * run["length"] / sum(chords))
    return run


def written(run, unit="mm"):
    size = {"mm": 1e-3, "in": 0.0254, "m": 1.0}[unit]

    def length(x):
        return f"{x / size:.16g} {unit}"

    def place(p):
        return [length(c) for c in p]

    def way(d):
        return [float(c) for c in d]

    supports = []
    for k, s in enumerate(run["supports"]):
        told = {"at": place(s["at"]), "kind": s["kind"]}
        if s["along"] is not None:
            told["along"] = way(s["along"])
        if run["mark"] and run["mark"][0] == k:
            told["fromAnchor"] = length(run["mark"][1])
        supports.append(told)
    cable = {
        "core": {"diameter": length(0.0015)},
        "conduit": {"outside": length(0.005), "bore": length(0.002), "minRadius": length(0.1)},
        "friction": "0.12",
        # The file's order is from the device to the knob.
        "supports": supports[::-1],
        "ends": {
            "leaves": {"at": place(run["leaves"][0]), "along": way(run["leaves"][1])},
            "arrives": {"at": place(run["arrives"][0]), "along": way(run["arrives"][1])},
            "inBushing": length(IN_BUSHING), "inAnchor": length(IN_ANCHOR), "wireInKnob": length(0.03), "wireBeyondPin": length(0.02),
            "orderStep": length(0.0254), "trimming": length(0.05),
        },
    }
    if run["weight"]:
        cable["conduit"] |= {"weight": f"{WEIGHT} N/m", "bending": f"{STIFFNESS} N m2"}
    if run["length"]:
        cable["length"] = length(run["length"] + IN_BUSHING + IN_ANCHOR)
    return {
        "id": run["id"],
        "cockpitEnd": {"stroke": length(0.05), "pushMeans": "open", "pullMeans": "shut"},
        "cable": cable,
        "leverEnd": {
            "arm": {"radius": length(0.03)}, "sweep": "75 deg", "bench": {"distance": length(0.1), "rule": "halfSagitta"},
            "anchor": {"tip": length(0.005), "swivels": "8 deg"}, "swivel": {"length": length(0.008)}, "load": {"measured": True, "torque": "0.07 N m"},
        },
    }


def aircraft(runs, unit="mm"):
    return {"format": 1, "aircraft": {"name": "routed"}, "runs": [written(r, unit) for r in runs]}


def figures(answer):
    return {r["id"]: {f["id"]: f["value"] for f in r["figures"] if "value" in f} for r in answer["runs"]}


# ---------------------------------------------------------------------------------------------- route: the curve


def across(t):
    e = np.cross(t, np.eye(3)[np.argmin(np.abs(t))])
    e /= np.linalg.norm(e)
    return e, np.cross(t, e)


class Curve:
    """t' = k, k' = -(F - (F.t) t) - (k.k) t, F' = -q in each span, B = 1, measured in the straight way over the holds."""

    def __init__(self, run):
        p = np.array([run["leaves"][0], *(s["at"] for s in run["supports"]), run["arrives"][0]])
        self.ways = [run["leaves"][1], *(s["along"] for s in run["supports"]), run["arrives"][1]]
        self.spans = len(p) - 1
        self.unit = np.sum(np.linalg.norm(np.diff(p, axis=0), axis=1))
        self.origin, self.points = p[0], (p - p[0]) / self.unit
        for i in range(1, self.spans):
            if self.ways[i] is not None and self.ways[i] @ (self.straight(i - 1) + self.straight(i)) < 0:
                self.ways[i] = -self.ways[i]
        self.length = run["length"] and run["length"] / self.unit
        self.mark = run["mark"] and (run["mark"][0] + 1, run["mark"][1] / self.unit)
        self.load = np.array([0, 0, -WEIGHT / STIFFNESS]) * self.unit ** 3 if run["weight"] else np.zeros(3)

    def straight(self, i):
        d = self.points[i + 1] - self.points[i]
        return d / np.linalg.norm(d)

    def start(self, rng=None):
        """A cubic through each span, bowed by chance."""
        tangents = [w if w is not None else self.straight(i - 1) + self.straight(i) for i, w in enumerate(self.ways)]
        tangents = [t / np.linalg.norm(t) for t in tangents]
        lines, u = [], np.linspace(0, 1, 400)[:, None]
        for i in range(self.spans):
            a, b = self.points[i], self.points[i + 1]
            m = 1.05 * np.linalg.norm(b - a)
            r = a + (b - a) * u * u * (3 - 2 * u) + m * (tangents[i] * u * (1 - u) ** 2 - tangents[i + 1] * u * u * (1 - u))
            if rng is not None:
                r = r + 0.15 * m * rng.normal(size=3) * np.sin(np.pi * u) ** 2
            lines.append(r)
        return lines

    def told(self, lie):
        """The program's own centre line, cut at the holds."""
        r = (np.array([[n["station"], n["buttline"], n["waterline"]] for n in lie]) - self.origin) / self.unit
        cuts = [int(np.argmin(np.linalg.norm(r - p, axis=1))) for p in self.points]
        return [r[a:b + 1] for a, b in zip(cuts, cuts[1:])]

    def solve(self, lines):
        x, columns, lengths = np.linspace(0, 1, 21), [], []
        for r in lines:
            s = np.concatenate([[0], np.cumsum(np.linalg.norm(np.diff(r, axis=0), axis=1))])
            r = np.array([np.interp(x * s[-1], s, c) for c in r.T]).T
            t = np.gradient(r, x * s[-1], axis=0)
            t /= np.linalg.norm(t, axis=1)[:, None]
            columns += [r.T, t.T, np.gradient(t, x * s[-1], axis=0).T, np.zeros((3, 21))]
            lengths.append(s[-1])
        y, lengths = np.vstack(columns), np.array(lengths)
        if self.length:
            lengths *= self.length / lengths.sum()
        for part in (0.0, 0.3, 0.6, 1.0) if self.load.any() else (1.0,):
            try:
                got = solve_bvp(self.rates(part * self.load), self.conditions, x, y, p=lengths, tol=1e-7 if part == 1 else 1e-3, max_nodes=3000)
            except (ValueError, np.linalg.LinAlgError):
                return None
            x, y, lengths = got.x, got.y, got.p
            if not got.success or np.any(lengths <= 0):
                return None
        end = got.sol(1.0)
        for i in range(1, self.spans + 1):
            if self.ways[i] is not None and end[12 * i - 9:12 * i - 6] @ self.ways[i] < 0.9:
                return None
        return self.read(got.sol, lengths)

    def rates(self, load):
        def f(x, y, lengths):
            out = np.empty_like(y)
            for i, s in enumerate(lengths):
                t, k, force = y[12 * i + 3:12 * i + 6], y[12 * i + 6:12 * i + 9], y[12 * i + 9:12 * i + 12]
                along, bend = np.sum(force * t, axis=0), np.sum(k * k, axis=0)
                out[12 * i:12 * i + 12] = s * np.vstack([t, k, along * t - force - bend * t, np.tile(-load[:, None], (1, x.size))])
            return out
        return f

    def conditions(self, first, last, lengths):
        def h(v):
            return 0.5 * v[6:9] @ v[6:9] + v[9:12] @ v[3:6]

        c = [*(first[0:3] - self.points[0]), *(first[3:6] - self.ways[0]), first[3:6] @ first[6:9]]
        for i in range(1, self.spans):
            before, behind, way = last[12 * i - 12:12 * i], first[12 * i:12 * i + 12], self.ways[i]
            c += [*(before[0:3] - self.points[i]), *(behind[0:3] - self.points[i])]
            if way is not None:
                c += [*(before[3:6] @ e for e in across(way)), *(behind[3:6] - way), behind[3:6] @ behind[6:9]]
            else:
                c += [*(before[3:6] - behind[3:6]), *(before[6:9] - behind[6:9])]
            c.append(lengths[i:].sum() - self.mark[1] if self.mark and self.mark[0] == i else h(before) - h(behind))
        end = last[-12:]
        c += [*(end[0:3] - self.points[-1]), *(end[3:6] @ e for e in across(self.ways[-1]))]
        c.append(lengths.sum() - self.length if self.length else h(first[:12]) + h(end))
        return np.array(c)

    def read(self, solution, lengths):
        x = np.linspace(0, 1, 2001)
        w = np.ones(2001)
        w[1:-1:2], w[2:-1:2] = 4, 2
        z, energy, bend, most = solution(x), 0.0, 0.0, 0.0
        middle = 0.5 * (self.points[0] + self.points[-1])
        for i, s in enumerate(lengths):
            r, k = z[12 * i:12 * i + 3], np.linalg.norm(z[12 * i + 6:12 * i + 9], axis=0)
            energy += s / 6000 * w @ (0.5 * k * k - self.load @ (r - middle[:, None]))
            bend, most = bend + s / 6000 * w @ k, max(most, k.max())
        return {"energy": energy, "length": lengths.sum() * self.unit, "radius": self.unit / most, "bend": bend, "longest": lengths.max() * self.unit}


def compare_lie(run, answer, told, comparison, rng, starts):
    curve = Curve(run)
    own = [s for s in (curve.solve(curve.start(rng if n else None)) for n in range(starts)) if s]
    theirs = curve.solve(curve.told(answer["lie"]))
    if theirs is None:
        comparison.say(f"{run['id']}: what is told is no solution here")
        return False
    low = min(own, key=lambda s: s["energy"]) if own else theirs
    if low["energy"] < theirs["energy"] - 1e-8 * max(1, abs(theirs["energy"])):
        comparison.say(f"{run['id']}: {low['energy']} is lower than {theirs['energy']}")
    found = any(abs(s["energy"] - theirs["energy"]) < 1e-7 * max(1, abs(theirs["energy"])) for s in own)
    for figure, key, slack, add in (("conduit-length", "length", 1e-8, IN_BUSHING + IN_ANCHOR), ("support-spacing", "longest", 1e-6, 0), ("least-radius", "radius", 3e-6, 0), ("bend-total", "bend", 3e-6, 0)):
        comparison.near(run["id"], figure, told[figure], theirs[key] + add, slack)
    # Wire that stands out at the device when the knob is in: the longest free wire and the knob's place at the push stop.
    conduit = np.ceil((told["conduit-length"]) / 0.0254 - 1e-9) * 0.0254
    comparison.near(run["id"], "conduit-order", told["conduit-order"], conduit, 1e-9)
    free = told["tip-cushion-push"] + 0.005 + 0.004 - IN_ANCHOR + told["cushion-in"]
    comparison.near(run["id"], "wire-order", told["wire-order"], np.ceil((conduit + free + 0.05 + 0.05) / 0.0254 - 1e-9) * 0.0254, 1e-9)
    return found


# ---------------------------------------------------------------------------------------------- the same runs otherwise

FIGURES = ("conduit-length", "least-radius", "bend-total", "longest-straight", "support-spacing", "move-per-length", "conduit-order", "wire-order", "lost-motion", "hand-pull", "hand-push", "cushion-in", "cushion-out")


def carried(run, place, way):
    other = copy.deepcopy(run)
    other["leaves"], other["arrives"] = ((place(p), way(d)) for p, d in (run["leaves"], run["arrives"]))
    for s in other["supports"]:
        s["at"], s["along"] = place(s["at"]), None if s["along"] is None else way(s["along"])
    return other


def reversed_(run):
    other = copy.deepcopy(run)
    other["leaves"], other["arrives"] = (run["arrives"][0], -run["arrives"][1]), (run["leaves"][0], -run["leaves"][1])
    other["supports"] = other["supports"][::-1]
    if run["mark"]:
        other["mark"] = (len(run["supports"]) - 1 - run["mark"][0], run["length"] - run["mark"][1])
    return other


def flipped(run):
    other = copy.deepcopy(run)
    for s in other["supports"]:
        s["along"] = None if s["along"] is None else -s["along"]
    return other


def compare_otherwise(program, folder, runs, seed, comparison):
    weight = runs[0]["weight"]
    turn = Rotation.from_rotvec([0, 0, 1.234]).as_matrix() if weight else Rotation.random(random_state=seed).as_matrix()
    shift, mirror = np.array([1.234, -0.77, 0.456]), np.diag([1.0, -1.0, 1.0])
    plain = figures(ask(program, folder, "check", aircraft(runs)))
    ways = {
        "moved": [carried(r, lambda p: p + shift, lambda d: d) for r in runs],
        "turned": [carried(r, lambda p: turn @ p, lambda d: turn @ d) for r in runs],
        "mirrored": [carried(r, lambda p: mirror @ p, lambda d: mirror @ d) for r in runs],
        "from the other end": [reversed_(r) for r in runs],
        "lines the other way": [flipped(r) for r in runs],
        "in": runs, "m": runs,
    }
    for what, changed in ways.items():
        other = figures(ask(program, folder, "check", aircraft(changed, what if what in ("in", "m") else "mm")))
        back = what == "from the other end"
        for name, told in plain.items():
            for figure in FIGURES:
                a, b = told.get(figure), other.get(name, {}).get(figure)
                # What is added lies on the other side of a mark, which counts from the other end then.
                marked = figure == "move-per-length" and next(r for r in runs if r["id"] == name)["mark"]
                if back and (figure.startswith(("hand", "cushion", "wire")) or marked or a is None):
                    continue
                if a is None or b is None:
                    if a is not b:
                        comparison.say(f"{what}, {name}: {figure} {a} {b}")
                    continue
                loose = 2e-8 if weight else 1e-9
                comparison.near(f"{what}, {name}", f"otherwise {figure}", b, a, {"longest-straight": 5e-3, "move-per-length": 1e-5}.get(figure, loose) if back else loose)


def main():
    parser = argparse.ArgumentParser(description=__doc__, formatter_class=argparse.RawDescriptionHelpFormatter)
    parser.add_argument("--program", required=True)
    parser.add_argument("--runs", type=int, default=12)
    parser.add_argument("--otherwise", type=int, default=40)
    parser.add_argument("--points", type=int, default=40)
    parser.add_argument("--starts", type=int, default=2)
    parser.add_argument("--seed", type=int, default=1)
    of = parser.parse_args()
    warnings.simplefilter("ignore")
    comparison, rng = Comparison(), np.random.default_rng(of.seed)
    points = found = 0
    with tempfile.TemporaryDirectory() as folder:
        for n in range((of.points + 3) // 4):
            tape = Tape(rng)
            points += tape.compare(ask(of.program, folder, "measure", tape.file()), comparison, n)
        runs = [run_of(rng, n, n % 3 == 2) for n in range(of.runs)]
        answer = ask(of.program, folder, "check", aircraft(runs), "--curves")
        told = figures(answer)
        for run, of_run in zip(runs, answer["runs"]):
            if "lie" in of_run:
                found += compare_lie(run, of_run, told[run["id"]], comparison, rng, of.starts)
            else:
                comparison.say(f"{run['id']}: no lie is told")
        for weight in (False, True):
            compare_otherwise(of.program, folder, [run_of(rng, n, weight) for n in range(of.otherwise // 2)], of.seed, comparison)
    for words in comparison.differ:
        print(words)
    print("largest differences: " + ", ".join(f"{k} {v:.1e}" for k, v in comparison.largest.items() if not k.startswith("otherwise")))
    print("the same otherwise: " + ", ".join(f"{k[10:]} {v:.1e}" for k, v in comparison.largest.items() if k.startswith("otherwise")))
    print(f"route oracle: {points} points, {of.runs} lies ({found} found from starts of its own), {of.otherwise} runs otherwise, {len(comparison.differ)} differ")
    return 1 if comparison.differ else 0


if __name__ == "__main__":
    sys.exit(main())
