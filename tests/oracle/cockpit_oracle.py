#!/usr/bin/env python3
"""A second opinion on the cockpit: where every described body stands, and how near two of them come. Shares no code with the program.

It reads aircraft files as docs/reference/file.md describes them, places handles, yoke, stick, legs, frames, planes and sheets in
aircraft axes, looks for the least distance of each pair over all joint positions, and compares with `throwright check FILE --json`.

How it differs from the program:
  distance   alternating projections between two convex sets (W. Cheney, A. Goldstein, Proc. Amer. Math. Soc. 10 (1959) 448): each step is
             a pair of points that are on the bodies, so no result is below the true distance
  joints     ends, middles and random positions, then random ones ever closer round the twelve best: whatever is found does occur
  turning    Rodrigues' formula

What has to agree:
  least      the program's proven least may not lie above what is found here (1 um for the last projections)
  found      at the joint positions that the program names, the distance here is the same (2 um)
  converged  neither finds more than 0.2 mm less than the other
  words      a tilt that `solve mount --write` writes leaves the wanted clearance here too
  mirror     the aircraft mirrored left for right, moved, written in the other units, with its runs in the other order: the same answers

Usage:  cockpit_oracle.py --program throwright.dll FILE ...      Needs numpy.
"""

import argparse
import copy
import json
import math
import os
import re
import shutil
import subprocess
import sys
import tempfile

import numpy as np

sys.path.insert(0, os.path.dirname(os.path.abspath(__file__)))
from ladder_oracle import REPOSITORY, UNITS, load_json, number_and_unit, read  # noqa: E402

AFT, RIGHT, UP = np.eye(3)
SEATED = {row["size"]: row for row in load_json(os.path.join(REPOSITORY, "data", "people", "people.json"))["tables"][0]["rows"]}


def nominal(text, default="0 deg"):
    return read(text if text is not None else default).nominal


def most(text):
    return read(text).high


def unit(v):
    v = np.asarray(v, float)
    return v / np.linalg.norm(v)


# ---------------------------------------------------------------------------------------------- convex parts


class Bar:
    """Between two points, with square ends of radius `across` (0: a mere line), rounded by r all round."""

    def __init__(self, name, p, q, across, r=0.0):
        self.name, self.p, self.q, self.across, self.r = name, np.asarray(p, float), np.asarray(q, float), across, r
        self.middle = (self.p + self.q) / 2

    def nearest(self, x):
        d = self.q - self.p
        size = np.linalg.norm(d)
        e = d / size if size > 0 else AFT
        along = np.clip((x - self.p) @ e, 0, size)
        side = (x - self.p) - ((x - self.p) @ e)[:, None] * e
        far = np.linalg.norm(side, axis=1)
        return self.p + along[:, None] * e + np.minimum(1, self.across / np.maximum(far, 1e-30))[:, None] * side


class Block:
    def __init__(self, name, middle, axes, half, r=0.0):
        self.name, self.middle, self.axes, self.half, self.r = name, np.asarray(middle, float), np.asarray(axes), np.asarray(half), r

    def nearest(self, x):
        return self.middle + np.clip((x - self.middle) @ self.axes.T, -self.half, self.half) @ self.axes


class HalfSpace:
    def __init__(self, name, at, normal, r=0.0):
        self.name, self.middle, self.normal, self.r = name, np.asarray(at, float), unit(normal), r

    def nearest(self, x):
        return x - np.maximum((x - self.middle) @ self.normal, 0)[:, None] * self.normal


class Body:
    def __init__(self, name, joints, parts, gates=()):
        self.name, self.joints, self.parts, self.gates = name, joints, parts, gates


class Joint:
    def __init__(self, name, axis, low, high, about=None):
        self.name, self.axis, self.low, self.high, self.about = name, unit(axis), low, high, about


def turned(axis, angles):
    k = np.array([[0, -axis[2], axis[1]], [axis[2], 0, -axis[0]], [-axis[1], axis[0], 0]])
    a = angles[:, None, None]
    return np.eye(3) + np.sin(a) * k + (1 - np.cos(a)) * (k @ k)


def pose(joints, q):
    """The first joint moves everything after it."""
    turn, shift = np.tile(np.eye(3), (len(q), 1, 1)), np.zeros((len(q), 3))
    for i in range(len(joints) - 1, -1, -1):
        j = joints[i]
        if j.about is None:
            shift = shift + q[:, i : i + 1] * j.axis
        else:
            by = turned(j.axis, q[:, i])
            turn, shift = by @ turn, np.einsum("nij,nj->ni", by, shift - j.about) + j.about
    return turn, shift


def distance(a, b, qa, qb, parts, steps):
    """Of each position, the least over the pairs of parts."""
    (turn_a, shift_a), (turn_b, shift_b) = pose(a.joints, qa), pose(b.joints, qb)
    # All in the frame of a.
    turn = np.einsum("nji,njk->nik", turn_a, turn_b)
    shift = np.einsum("nji,nj->ni", turn_a, shift_b - shift_a)
    best = np.full(len(qa), np.inf)
    for s, t in parts:
        x = np.tile(s.middle, (len(qa), 1))
        for _ in range(steps):
            y = np.einsum("nij,nj->ni", turn, t.nearest(np.einsum("nji,nj->ni", turn, x - shift))) + shift
            before, x = x, s.nearest(y)
            if np.max(np.abs(x - before)) < 1e-10:
                break
        best = np.minimum(best, np.linalg.norm(x - y, axis=1) - s.r - t.r)
    n = len(a.joints)
    q = np.hstack([qa, qb])
    for body, columns in ((a, q[:, :n]), (b, q[:, n:])):
        for gate in body.gates:
            best[~gate(columns)] = np.inf
    return best


def least(a, b, parts, rng):
    joints = a.joints + b.joints
    n, m = len(a.joints), len(joints)
    low, high = np.array([j.low for j in joints]), np.array([j.high for j in joints])
    ends = np.array(np.meshgrid(*[[0, 0.5, 1]] * m)).reshape(m, -1).T
    q = low + (high - low) * np.vstack([ends, rng.random((min(1500, 60 * 3**m), m))])
    d = distance(a, b, q[:, :n], q[:, n:], parts, 25)
    for step in range(8):
        keep = np.argsort(d)[:12]
        spread = (high - low) * 0.5 ** (1.6 * step + 2)
        q = np.vstack([q[keep], np.clip(np.repeat(q[keep], 40, 0) + spread * rng.normal(size=(480, m)), low, high)])
        d = distance(a, b, q[:, :n], q[:, n:], parts, 60 + 30 * step)
    i = int(np.argmin(d))
    return float(min(d[i], distance(a, b, q[i : i + 1, :n], q[i : i + 1, n:], parts, 3000)[0]))


# ---------------------------------------------------------------------------------------------- what the file describes


class Cockpit:
    def __init__(self, path):
        self.file = load_json(path)
        self.bodies = {}
        for run in self.file["runs"]:
            if "sheet" in run.get("cockpitEnd", {}):
                self.add(self.handle(run))
        for body in self.file.get("bodies", []):
            self.add(self.body(body))
        for sheet in self.file.get("sheets", []):
            if "outline" in sheet:
                self.add(self.sheet(sheet))

    def add(self, body):
        self.bodies[body.name] = body

    def place(self, p):
        """Nominal place, and the farthest that the true one can be: the corner of the box of tolerances."""
        v = [read(t) for t in (self.file["points"][p] if isinstance(p, str) else p)]
        return np.array([c.nominal for c in v]), math.sqrt(sum(max(c.minus, c.plus) ** 2 for c in v))

    @staticmethod
    def frame(sheet):
        normal = unit(sheet["normal"])
        up = np.array(sheet.get("up", UP if abs(normal @ UP) < 0.98 else -AFT), float)
        up = unit(up - (up @ normal) * normal)
        # The pilot looks against the normal; his right is the way he looks times up.
        return normal, up, np.cross(-normal, up)

    def handle(self, run):
        end = run["cockpitEnd"]
        sheet = next(s for s in self.file["sheets"] if s["id"] == end["sheet"])
        normal, up, right = self.frame(sheet)
        hole, doubt = self.place(end["hole"])
        half = nominal(sheet.get("thickness", "0 mm")) / 2
        # The shank's axis goes through the middle of the sheet behind the mark (docs/theory/make.md, section 3).
        foot = hole - half * normal
        tilt = end.get("tilt", {})
        shank = unit(normal + math.tan(nominal(tilt.get("up"))) * up + math.tan(nominal(tilt.get("right"))) * right)
        stroke, out, knob = most(end["stroke"]), nominal(end["shank"]["out"]) + half, end["knob"]
        doubt += read(end["shank"]["out"]).high - read(end["shank"]["out"]).nominal
        back, thick = foot + out * shank, most(knob["diameter"])
        joints, parts = [Joint("pull", shank, 0.0, stroke)], []
        parts.append(Bar("shank", foot - stroke * shank, back, most(end["shank"]["diameter"]) / 2, doubt))
        if "width" in knob:
            bar = unit(right - (right @ shank) * shank)
            middle, wide = back + thick / 2 * shank, most(knob["width"]) / 2
            parts.append(Bar("knob", middle - wide * bar, middle + wide * bar, thick / 2, doubt))
            quarter = 90 * UNITS["deg"]
            if "turns" in end:
                left, to_right = nominal(end["turns"].get("left")), nominal(end["turns"].get("right"))
            else:
                left = to_right = quarter if end.get("lock") in ("twist", "vernier") else 0.0
            if left + to_right > 0:
                # To the right as the pilot sees it: right-handed about the way he looks.
                joints.append(Joint("turn", -shank, -left, to_right, foot))
        else:
            parts.append(Bar("knob", back, back + most(knob["length"]) * shank, thick / 2, doubt))
        return Body(run["label"], joints, parts)

    def body(self, body):
        allow = nominal(body.get("allow"), "0 mm")
        name = body["id"].replace("-", " ")
        if "yoke" in body:
            y = body["yoke"]
            hub, doubt = self.place(y["hub"])
            rim, wide, r = most(y["rimDiameter"]) / 2, most(y["width"]) / 2, doubt + allow
            parts = [Bar("shaft", hub - most(y["shaftLength"]) * AFT, hub, most(y["shaftDiameter"]) / 2, r), Bar("bar", hub - wide * RIGHT, hub + wide * RIGHT, rim, r)]
            for called, at in (("left horn", hub - (wide - rim) * RIGHT), ("right horn", hub + (wide - rim) * RIGHT)):
                parts.append(Bar(called, at, at + most(y["horn"]) * UP, rim, r))
            turn = nominal(y["turn"])
            return Body(name, [Joint("aft", AFT, 0.0, nominal(y["travel"])), Joint("turn", -AFT, -turn, turn, hub)], parts)
        if "stick" in body:
            s = body["stick"]
            pivot, doubt = self.place(s["pivot"])
            r, length, grip = doubt + allow, most(s["length"]), nominal(s["grip"])
            parts = [Bar("shaft", pivot, pivot + (length - grip) * UP, most(s["shaftDiameter"]) / 2, r), Bar("grip", pivot + (length - grip) * UP, pivot + length * UP, most(s["gripDiameter"]) / 2, r)]
            # The roll tube carries the pitch pivot. Top to the right; top aft.
            joints = [Joint("roll", -AFT, -nominal(s["left"]), nominal(s["right"]), pivot), Joint("pitch", RIGHT, -nominal(s["forward"]), nominal(s["aft"]), pivot)]
            return Body(name, joints, parts, [self.gate(g, ["roll", "pitch"]) for g in body.get("gates", [])])
        if "leg" in body:
            leg = body["leg"]
            (hip, doubt), (heel, other) = self.place(leg["hip"]), self.place(leg["heel"])
            assert doubt == other == 0, "only legs that are placed exactly are looked at here"
            of = SEATED[leg["size"]]
            thigh, shin, thick = 0.72e-3 * of["buttock-knee"], 0.83e-3 * of["knee-height"], 1e-3 * of["thigh"]
            line = heel - hip
            reach = np.linalg.norm(line)
            along, e = (thigh**2 - shin**2 + reach**2) / (2 * reach), line / reach
            knee = hip + along * e + math.sqrt(thigh**2 - along**2) * unit(UP - (UP @ e) * e)
            # About the line from hip to heel, the way that takes a knee above it outward.
            out = RIGHT if leg["side"] == "right" else -RIGHT
            axis = e if np.cross(e, knee - hip) @ out > 0 else -e
            parts = [Bar("thigh", hip, knee, 0.0, thick / 2 + allow), Bar("shin", knee, heel, 0.0, 0.72 * thick / 2 + allow)]
            return Body(name, [Joint("out", axis, -nominal(leg.get("inward")), nominal(leg.get("outward")), hip)], parts)
        if "frame" in body:
            line = [self.place(p) for p in body["frame"]["line"]]
            r = most(body["frame"]["diameter"]) / 2 + allow
            return Body(name, [], [Bar("tube", p, q, 0.0, r + max(u, v)) for (p, u), (q, v) in zip(line, line[1:])])
        parts = []
        for shape in body["shapes"]:
            at, doubt = self.place(shape["plane"]["at"])
            parts.append(HalfSpace("plane", at, shape["plane"]["normal"], doubt + allow))
        return Body(name, [], parts)

    @staticmethod
    def gate(gate, order):
        one, other = (order.index(j) for j in gate["joints"])
        p, q = ([nominal(v) for v in place] for place in gate["limit"])
        n = np.array([p[1] - q[1], q[0] - p[0]])
        # Both joints at rest are on the free side.
        n = n if n @ p > 0 else -n
        return lambda at: n[0] * at[:, one] + n[1] * at[:, other] <= n @ p + 1e-9

    def sheet(self, sheet):
        normal, up, right = self.frame(sheet)
        at = self.place(sheet["at"])[0]
        corners = np.array([self.place(p)[0] - at for p in sheet["outline"]])
        u, r, thick = corners @ up, corners @ right, most(sheet["thickness"])
        middle = at + (u.min() + u.max()) / 2 * up + (r.min() + r.max()) / 2 * right - thick / 2 * normal
        return Body(sheet["id"], [], [Block("sheet", middle, [up, right, normal], [np.ptp(u) / 2, np.ptp(r) / 2, thick / 2])])


# ---------------------------------------------------------------------------------------------- comparison


class Comparison:
    def __init__(self):
        self.pairs, self.differ, self.largest = 0, [], 0.0

    def say(self, words):
        self.differ.append(words)

    def pair(self, what, a, b, told, rng):
        self.pairs += 1
        # A yoke's shaft goes through its sheet: an allowed contact.
        parts = [(s, t) for s in a.parts for t in b.parts if (s.name, t.name) != ("shaft", "sheet")]
        here = least(a, b, parts, rng)
        if told["least"] > max(here, 0) + 1e-6:
            self.say(f"{what}: proven least {told['least']:.6f} m, {here:.6f} m occurs")
        if told["proof"] == "converged" and told["found"] > here + 2e-4:
            self.say(f"{what}: found {told['found']:.6f} m, here {here:.6f} m")
        if told["proof"] == "converged" and told["found"] < here - 2e-4 and {s.name for s, _ in parts} & {"shank"} == set():
            self.say(f"{what}: {told['found']:.6f} m is nowhere found here, least {here:.6f} m")
        names = {j["name"]: j["at"] for j in told.get("joints", [])}
        at = [names.get(f"{body.name} {j.name}") for body in (a, b) for j in body.joints]
        points = {p["part"] for p in told.get("points", [])}
        # Shanks are drawn with round ends there and square ones here.
        if "found" in told and None not in at and points and "" not in points and "shank" not in points:
            q = np.array([at])
            n = len(a.joints)
            off = abs(max(0.0, distance(a, b, q[:, :n], q[:, n:], parts, 5000)[0]) - max(0.0, told["found"]))
            self.largest = max(self.largest, off)
            if off > 2e-6:
                self.say(f"{what}: {off * 1e3:.4f} mm off at the positions named")

    def cockpit(self, path, answer, rng):
        scene = Cockpit(path)
        done = set()
        for run, told in ((r, c) for r in answer["runs"] for c in r.get("clearance", [])):
            a, b = scene.bodies.get(run.get("label", run["id"])), scene.bodies.get(told["with"])
            if a is None or b is None or frozenset((a.name, b.name)) in done:
                continue
            done.add(frozenset((a.name, b.name)))
            self.pair(f"{a.name} and {b.name}", a, b, told, rng)
        for told in answer["cockpit"]["clearance"]:
            a, b = scene.bodies.get(told["points"][0]["body"]), scene.bodies.get(told["with"])
            if a is not None and b is not None:
                self.pair(f"{a.name} and {b.name}", a, b, told, rng)


# ---------------------------------------------------------------------------------------------- the same aircraft otherwise


def is_place(v):
    return isinstance(v, list) and len(v) == 3 and all(isinstance(x, str) and re.search(r"\d\s*(in|mm)\b", x) for x in v)


def each(node, place, direction, whole, key=""):
    if isinstance(node, dict):
        return whole({k: each(v, place, direction, whole, k) for k, v in node.items()}, key)
    if isinstance(node, list):
        if is_place(node) and key not in ("size", "holes"):
            return place(node)
        if len(node) == 3 and all(isinstance(x, (int, float)) for x in node):
            return direction(node, key)
        return [each(v, place, direction, whole, key) for v in node]
    return node


def minus(text):
    return text.lstrip()[1:] if text.lstrip().startswith("-") else "-" + text.lstrip()


def mirrored(file):
    """Left for right. An axis with a turning sense about it turns the other way."""

    def whole(o, key):
        if key == "turns":
            o = {{"left": "right", "right": "left"}.get(k, k): v for k, v in o.items()}
        elif key == "leg":
            o["side"] = {"left": "right", "right": "left"}[o["side"]]
        elif key == "stick":
            o["left"], o["right"] = o["right"], o["left"]
        elif key == "tilt" and "right" in o:
            o["right"] = minus(o["right"])
        elif key == "arm" and "alongAxis" in o:
            o["alongAxis"] = minus(o["alongAxis"])
        return o

    file = each(file, lambda p: [p[0], minus(p[1]), p[2]], lambda d, key: [-d[0], d[1], -d[2]] if key == "axis" else [d[0], -d[1], d[2]], whole)
    for gate in (g for b in file.get("bodies", []) for g in b.get("gates", [])):
        for limit in gate["limit"]:
            limit[gate["joints"].index("roll")] = minus(limit[gate["joints"].index("roll")])
    return file


def moved(file, by):
    def one(text, metres):
        value, tolerance = (text.split("±") + [""])[:2]
        number, name = number_and_unit(value)
        return f"{number + metres / UNITS[name]:.12f} {name}" + (f" ±{tolerance}" if tolerance else "")

    return each(file, lambda p: [one(t, m) for t, m in zip(p, by)], lambda d, key: d, lambda o, key: o)


def other_units(node, key=""):
    """Inches in millimetres and the other way, degrees in radians, Celsius in Fahrenheit, pounds in newtons."""
    if isinstance(node, dict):
        return {k: other_units(v, k) for k, v in node.items()}
    if isinstance(node, list):
        return [other_units(v, key) for v in node]
    if not isinstance(node, str) or key in ("thread", "note", "name", "source", "material", "label", "how", "length" if node in ("in", "mm") else ""):
        return node
    if re.search(r"lbf in|N m|N/mm", node):
        return node

    def one(m):
        value, name = number_and_unit(m.group(0))
        if name in ("degF", "degC"):
            return f"{(value - 32) / 1.8:.12g} degC" if name == "degF" else f"{1.8 * value + 32:.12g} degF"
        into = {"in": "mm", "mm": "in", "deg": "rad", "lbf": "N", "N": "lbf"}[name]
        return f"{value * UNITS[name] / UNITS[into]:.17g} {into}"

    return re.sub(r"[-+]?(?:\d+ (?=\d+/))?(?:\d+/\d+|\d*\.?\d+) (?:in|mm|degF|degC|deg|lbf|N)\b", one, node)


def values(answer):
    """Every figure and verdict. Of the lays of a conduit that are drawn by lot only those that no mirror changes."""
    out = {}
    for run in answer["runs"]:
        out[run["id"], "verdict"] = run["verdict"]
        for figure in run["figures"]:
            for member in ("value", "least", "most"):
                if member in figure:
                    out[run["id"], figure["id"], member] = figure[member]
    return out


BY_LOT = re.compile(r"radius|stress|conduit|clearance|bend-total|-order")


def compare(what, one, other, but_lot, comparison):
    a, b = values(one), values(other)
    for key in sorted(set(a) | set(b)):
        x, y = a.get(key), b.get(key)
        if but_lot and BY_LOT.search(key[1]):
            continue
        # A clearance that is only proved to be far may stop a box earlier; other lots drawn shift the limits of what follows from a lie.
        slack = 2e-2 if but_lot else 1e-2 if "clearance" in key[1] else 1e-6
        same = x == y if isinstance(x, str) or x is None or y is None else abs(x - y) <= slack * max(1e-3, abs(x), abs(y))
        if not same:
            comparison.say(f"{what}: {' '.join(key)} {x} {y}")


def check(program, path):
    done = subprocess.run(["dotnet", program, "check", path, "--json"], capture_output=True, encoding="utf-8", check=False)
    answer = json.loads(done.stdout)["files"][0]
    if answer.get("problems"):
        raise SystemExit(f"{path}: {answer['problems'][0]}")
    return answer


def main():
    parser = argparse.ArgumentParser(description=__doc__, formatter_class=argparse.RawDescriptionHelpFormatter)
    parser.add_argument("--program", required=True)
    parser.add_argument("--mount", action="append", default=[], help="FILE:RUN, tilted by solve mount first")
    parser.add_argument("files", nargs="+")
    of = parser.parse_args()
    comparison, rng = Comparison(), np.random.default_rng(20260305)
    with tempfile.TemporaryDirectory() as folder:
        for path in of.files:
            plain = check(of.program, path)
            comparison.cockpit(path, plain, rng)
            file = load_json(path)
            file.pop("$schema", None)
            otherwise = moved(other_units(file), (3.7, -1.1, 0.6))
            otherwise["runs"].reverse()
            for what, changed in (("mirrored", mirrored(copy.deepcopy(file))), ("moved, in other units and order", otherwise)):
                name = os.path.join(folder, f"{what.split(',')[0]}.throwright.json")
                with open(name, "w", encoding="utf-8") as f:
                    json.dump(changed, f)
                compare(f"{os.path.basename(path)} {what}", plain, check(of.program, name), what == "mirrored", comparison)
        for path, run in (m.rsplit(":", 1) for m in of.mount):
            name = os.path.join(folder, os.path.basename(path))
            shutil.copy(path, name)
            subprocess.run(["dotnet", of.program, "solve", "mount", name, run, "--map", "0", "--write"], capture_output=True, check=False)
            if "tilt" not in next(r for r in load_json(name)["runs"] if r["id"] == run)["cockpitEnd"]:
                comparison.say(f"{name}: no tilt was written")
            comparison.cockpit(name, check(of.program, name), rng)
    for words in comparison.differ:
        print(words)
    print(f"cockpit oracle: {comparison.pairs} pairs, {len(comparison.differ)} differ; largest difference at a named position {comparison.largest * 1e6:.3f} um")
    return 1 if comparison.differ else 0


if __name__ == "__main__":
    sys.exit(main())
