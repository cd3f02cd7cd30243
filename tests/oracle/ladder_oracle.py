#!/usr/bin/env python3
"""A second opinion on the travel ladder and the hand force, from the physics up, sharing no code with the program.

It reads the same aircraft files as the program, works every run out in its own way, and compares with

    throwright check FILES --json --curves

How it differs from the program:
  lever      the arm is turned in aircraft axes by Rodrigues' rotation; moment arms by complex-step differentiation
             (W. Squire, G. Trapp, SIAM Review 40 (1998) 110), no closed form of the distance
  limits     pivot, anchor, core, bore, every bend and every torque keep their own limits; temperatures are searched
             too; the extremes are found by corners, random points, single flips, L-BFGS-B and, on some runs,
             differential evolution (scipy): whatever they find does occur
  friction   Euler and Eytelwein's belt, bend by bend; the mean tension by Gauss-Legendre quadrature along the conduit
  odds       numpy's own random numbers

Published figures (expansion, modulus, density, rigging tolerance) are read from data/*.json of this repository:
expansion/expansion.json, wire/modulus.json, wire/strength.json, cushion/cushion.json, hand/forces.json.

What has to agree, and how well:
  nominal    1e-9 relative: both are exact formulas of a few dozen operations.
  least      the program's proven least may not lie above what is found here by more than 1 um (search and bound are
             numerical), and not below it by more than 20 um when the program calls it proven: it asks for 5 um
             between bound and value, and takes correlated parts of the stretch each at its own worst, as is done
             here for this comparison.
  moment arm the program asks for 50 um between bound and value, but stops after 40 boxes: 0.1 mm, on the cautious side.
  forces     the program's limits hold what is found here, and lie beyond it by no more than that of the arm.
  odds       five standard errors of the two samples: quantiles by the ranks of the samples, shares by the binomial law.

Usage:  ladder_oracle.py --program throwright.dll [--runs 50] [--seed 1] [--deep] [FILE ...]
Without files: random aircraft of ten runs each, written to a temporary folder. Needs numpy and scipy.
"""

import argparse
import itertools
import json
import math
import os
import re
import subprocess
import sys
import tempfile

import numpy as np
from scipy import optimize

REPOSITORY = os.path.dirname(os.path.dirname(os.path.dirname(os.path.abspath(__file__))))
ENGINE_SAMPLES = 50_000
OWN_SAMPLES = 100_000
STANDARD_GRAVITY = 9.80665
ARM_SLACK = 1e-4


# ---------------------------------------------------------------------------------------------- units and file

UNITS = {
    "mm": 1e-3, "m": 1.0, "in": 0.0254, "ft": 0.3048, "deg": math.pi / 180, "rad": 1.0, "N": 1.0,
    "lbf": 0.45359237 * STANDARD_GRAVITY, "N m": 1.0, "lbf in": 0.45359237 * STANDARD_GRAVITY * 0.0254,
    "N/mm": 1e3, "N/m": 1.0, "N m/rad": 1.0, "N m/deg": 180 / math.pi, "degC": 1.0, "degF": 1 / 1.8, "": 1.0,
    "GPa": 1e9, "ppm/K": 1e-6, "kg/m3": 1.0, "ppm/degC": 1e-6,
}


def number_and_unit(text):
    """"1 3/4 in" -> (1.75, "in")"""
    m = re.fullmatch(r"\s*([-+]?)(?:(\d+)[ -](?=\d+/))?(\d+/\d+|\d*\.?\d+(?:[eE][-+]?\d+)?)\s*(.*?)\s*", text)
    if m is None:
        raise ValueError(f"no number: {text!r}")
    sign, whole, rest, unit = m.groups()
    value = float(rest.split("/")[0]) / float(rest.split("/")[1]) if "/" in rest else float(rest)
    return (-1 if sign == "-" else 1) * (value + float(whole or 0)), unit


class Value:
    """A quantity in SI with the limits it may take."""

    def __init__(self, nominal, minus=0.0, plus=0.0, normal=False):
        self.nominal, self.minus, self.plus, self.normal = nominal, minus, plus, normal

    @property
    def low(self):
        return self.nominal - self.minus

    @property
    def high(self):
        return self.nominal + self.plus


def read(text):
    """Value with limits: "38 mm ± 0.5 mm", "92 deg +2/-1 deg", "0.2 N m ± 20 %", each also with "normal" behind it."""
    text = text.strip()
    normal = text.endswith(" normal")
    if normal:
        text = text[: -len(" normal")]
    if "±" in text:
        left, right = text.split("±")
        low = high = right.strip()
    elif m := re.fullmatch(r"(.*\S) \+([^/]+)/-(.+)", text):
        left, high, low = m.groups()
    else:
        left, low, high = text, "", ""
    value, unit = number_and_unit(left)
    if unit.startswith("ft "):
        # "7 ft 6 in"
        value, unit = 12 * value + number_and_unit(unit[3:])[0], "in"
    nominal = (value - 32) / 1.8 if unit == "degF" else value * UNITS[unit]

    def limit(part):
        if part == "":
            return 0.0
        amount, name = number_and_unit(part)
        return abs(nominal) * amount / 100 if name == "%" else amount * UNITS[name or unit]

    if high and low and number_and_unit(high)[1] == "" and number_and_unit(low)[1] not in ("", "%"):
        high = f"{high} {number_and_unit(low)[1]}"
    return Value(nominal, limit(low), limit(high), normal)


def exact(text, default=None):
    return default if text is None else read(text).nominal


def load_json(path):
    """JSON with // comments and trailing commas."""
    with open(path, encoding="utf-8") as f:
        text = f.read()
    kept = re.sub(r'("(?:[^"\\]|\\.)*")|//[^\n]*|/\*.*?\*/', lambda m: m.group(1) or "", text, flags=re.S)
    kept = re.sub(r'("(?:[^"\\]|\\.)*")|,(?=\s*[}\]])', lambda m: m.group(1) or "", kept)
    return json.loads(kept)


# ---------------------------------------------------------------------------------------------- published figures


class Published:
    def __init__(self):
        self.figures, self.tables = {}, {}
        for part in ("expansion/expansion", "wire/modulus", "wire/strength", "cushion/cushion", "hand/forces"):
            data = load_json(os.path.join(REPOSITORY, "data", part + ".json"))
            self.figures |= {f["id"]: f for f in data.get("figures", [])}
            self.tables |= {t["id"]: t for t in data.get("tables", [])}

    def value(self, name):
        return self.band(name).nominal

    def band(self, name):
        """A figure with the band in which it is published; without one, exact."""
        f = self.figures[name]

        def si(x):
            return read(f"{x} {f['unit']}").nominal

        if "low" not in f:
            return Value(si(f["value"]))
        low, high = si(f["low"]), si(f["high"])
        nominal = si(f["value"]) if "value" in f else 0.5 * (low + high)
        return Value(nominal, nominal - low, high - nominal)

    def airframe(self, material):
        if material != "aluminium":
            return self.band(EXPANSION[material])
        # The alloy is not asked for: skin nominal, extrusion and fitting within the band.
        alloys = [self.value(f"expansion/aluminium-{alloy}") for alloy in (2024, 6061, 7075)]
        return Value(alloys[0], alloys[0] - min(alloys), max(alloys) - alloys[0])

    def modulus(self, material, diameter):
        """Of one wire. Between two printed bands of diameter: the thicker band."""
        if material == "stainless302":
            return self.value("wire/modulus-302")
        inches = diameter / 0.0254
        rows = self.tables["wire/modulus-a228"]["rows"]
        for row in rows:
            # The first band ends below its figure, the others with it.
            if "to" not in row or inches < row["to"] - 1e-9 or ("from" in row and inches <= row["to"] + 1e-9):
                return row["modulus"] * 1e9
        raise ValueError(diameter)


EXPANSION = {
    "musicWire": "expansion/music-wire", "stainless302": "expansion/stainless-304", "carbonSteel": "expansion/steel-1020",
    "aluminium": "expansion/aluminium-2024", "steelTube": "expansion/steel-4140",
    "carbonComposite": "expansion/carbon-quasi-isotropic", "glassComposite": "expansion/glass-woven", "wood": "expansion/fir-along",
}
STRAND = {"solid": (1, 1), "strand1x7": (7, 3), "strand1x19": (19, 5), "strand7x7": (49, 9), "strand7x19": (133, 15)}


# ---------------------------------------------------------------------------------------------- searching for extremes


def scaled(lows, highs, u):
    return lows[:, None] + (highs - lows)[:, None] * u


def least(f, lows, highs, rng, deep=False):
    """Smallest value of f over the box: f takes an array (inputs, points). A value that does occur."""
    lows, highs = np.asarray(lows, float), np.asarray(highs, float)
    free = np.flatnonzero(highs > lows)
    if len(free) == 0:
        return float(f(lows[:, None])[0])
    base = 0.5 * (lows + highs)

    def at(u):
        x = np.repeat(base[:, None], u.shape[1], axis=1)
        x[free] = scaled(lows[free], highs[free], u)
        with np.errstate(invalid="ignore"):
            y = f(x)
        return np.where(np.isnan(y), np.inf, y)

    n = len(free)
    corners = (rng.random((n, 1024)) < 0.5).astype(float) if n > 9 else np.array(list(itertools.product((0.0, 1.0), repeat=n))).T
    start = np.concatenate([corners, rng.random((n, 512)), np.full((n, 1), 0.5)], axis=1)
    values = at(start)
    best, where = np.inf, None
    for i in np.argsort(values)[:5]:
        u, v = start[:, i].copy(), values[i]
        # Single inputs to either end or the middle, as long as it helps.
        while True:
            moves = np.repeat(u[:, None], 3 * n, axis=1)
            for k, to in enumerate((0.0, 0.5, 1.0)):
                moves[np.arange(n), 3 * np.arange(n) + k] = to
            y = at(moves)
            j = int(np.argmin(y))
            if not y[j] < v:
                break
            u, v = moves[:, j].copy(), y[j]
        if v < best:
            best, where = v, u

    def one(u):
        return float(at(u[:, None])[0])

    def slopes(u):
        step = 1e-6
        up, down = np.clip(u[:, None] + step * np.eye(n), 0, 1), np.clip(u[:, None] - step * np.eye(n), 0, 1)
        return (at(up) - at(down)) / (up - down)[np.arange(n), np.arange(n)]

    scale = max(abs(best), 1e-12)
    for u0 in (where, rng.random(n)):
        found = optimize.minimize(lambda u: one(u) / scale, u0, jac=lambda u: slopes(u) / scale, bounds=[(0, 1)] * n, method="L-BFGS-B", options={"maxiter": 60})
        best = min(best, one(np.clip(found.x, 0, 1)))
    if deep:
        found = optimize.differential_evolution(
            lambda u: at(u if u.ndim == 2 else u[:, None]), [(0, 1)] * n, maxiter=60, popsize=4, seed=int(rng.integers(1 << 31)),
            vectorized=True, updating="deferred", polish=False, tol=1e-12)
        best = min(best, float(found.fun))
    return best


def extremes(f, lows, highs, rng):
    return least(f, lows, highs, rng), -least(lambda x: -f(x), lows, highs, rng)


def each_least(f, lows, highs):
    """Least of f over one box for each of many places at once: f takes (inputs, points, places), lows (inputs, places)."""
    n, places = lows.shape
    grid = np.array(list(itertools.product((0.0, 0.5, 1.0), repeat=n))).T

    def at(u):
        return f(lows[:, None, :] + (highs - lows)[:, None, :] * u)

    u = np.repeat(grid[:, :, None], places, axis=2)
    half = 0.5
    best = np.full(places, np.inf)
    for _ in range(14):
        y = at(u)
        i = np.argmin(y, axis=0)
        centre = u[:, i, np.arange(places)]
        best = np.minimum(best, y[i, np.arange(places)])
        half *= 0.6
        u = np.clip(centre[:, None, :] + 2 * half * (grid[:, :, None] - 0.5), 0, 1)
    return best


# ---------------------------------------------------------------------------------------------- one run

NODES, WEIGHTS = np.polynomial.legendre.leggauss(8)
NODES, WEIGHTS = 0.5 * (NODES + 1), 0.5 * WEIGHTS


class Run:
    """One run of an aircraft file, with every limit that the file gives."""

    def __init__(self, aircraft, run, published):
        self.id, self.published = run["id"], published
        self.inputs = []
        end, lever, cable = run.get("cockpitEnd", {}), run["leverEnd"], run.get("cable", {})
        points = aircraft.get("points", {})

        self.stroke = self.add("stroke", read(end["stroke"]))
        self.knob_play = self.add("play of the shank", read(end["play"]) if "play" in end else Value(0))
        self.place_lever(lever, points)
        anchor = lever.get("anchor", {})
        self.tip = self.add("tip", read(anchor["tip"]) if "tip" in anchor else Value(0))
        self.swivel_length = self.add("length of the swivel", read(lever["swivel"]["length"]) if "length" in lever["swivel"] else Value(0))
        self.pin_play = self.add("play of the pin", read(lever["swivel"]["play"]) if "play" in lever["swivel"] else Value(0))

        # Which stop is the push stop: where the free wire is longest.
        x = self.nominal()
        at_from, at_to = self.free_wire(x, x[self.low_angle]), self.free_wire(x, x[self.high_angle])
        self.push_angle, self.pull_angle = (self.high_angle, self.low_angle) if at_to[0] >= at_from[0] else (self.low_angle, self.high_angle)

        self.load(lever.get("load"))
        self.lay_cable(cable)
        self.bracket = self.add("bracket", read(anchor["stiffness"])) if "stiffness" in anchor else None
        self.set_swivel(lever["swivel"])
        self.warm(aircraft.get("environment"), lever.get("zone", "elsewhere"))
        self.wanted = exact(run.get("cushion", {}).get("wanted"), published.value("cushion/least"))

    def add(self, name, value):
        self.inputs.append((name, value))
        return len(self.inputs) - 1

    def nominal(self):
        return np.array([[v.nominal] for _, v in self.inputs])

    def lows(self):
        return np.array([v.low for _, v in self.inputs])

    def highs(self):
        return np.array([v.high for _, v in self.inputs])

    # --- lever end

    def place_lever(self, lever, points):
        arm = lever["arm"]
        self.radius = self.add("arm radius", read(arm["radius"]))
        sweep = lever["sweep"]
        if isinstance(sweep, str):
            # One angle: half to each side of 0, and to each stop half of its tolerance.
            whole = read(sweep)
            half = whole.nominal / 2
            low, high = Value(-half, whole.plus / 2, whole.minus / 2, whole.normal), Value(half, whole.minus / 2, whole.plus / 2, whole.normal)
        else:
            low, high = read(sweep["from"]), read(sweep["to"])
        self.low_angle, self.high_angle = self.add("arm angle, from", low), self.add("arm angle, to", high)
        r = self.inputs[self.radius][1].nominal
        if "bench" in lever:
            bench = lever["bench"]
            distance = read(bench["distance"])
            middle, half = 0.5 * (low.nominal + high.nominal), 0.5 * (high.nominal - low.nominal)
            if bench["rule"] == "offset":
                middle, offset = 0.0, read(bench["offset"])
            else:
                chord, square = r * math.cos(half), r
                place = {"squareAtMid": square, "chord": chord, "halfSagitta": 0.5 * (square + chord)}[bench["rule"]]
                # The rule fixes the place; how well it is kept is taken from the distance.
                offset = Value(place, distance.minus, distance.plus, distance.normal)
            self.axis, self.zero = np.array([0.0, 0.0, 1.0]), np.array([1.0, 0.0, 0.0])
            self.along_axis = self.add("swivel along the axis", Value(0))
            self.across, self.distance = self.add("anchor offset", offset), self.add("anchor distance", distance)
            c, s = math.cos(middle), math.sin(middle)
            self.bench = (np.array([c, s, 0.0]), np.array([-s, c, 0.0]))
            self.exit = self.bench[1]
        else:
            self.bench = None
            anchor = lever["anchor"]

            def point(which, name):
                given = points[which] if isinstance(which, str) else which
                return [self.add(f"{name} {axis}", read(text)) for axis, text in zip(("station", "buttline", "waterline"), given)]

            self.pivot, self.anchor = point(lever["pivot"], "pivot"), point(anchor["at"], "anchor")
            self.axis = np.array(lever["axis"], float)
            self.axis /= np.linalg.norm(self.axis)
            zero = np.array(arm["zero"], float)
            zero -= self.axis * (zero @ self.axis)
            self.zero = zero / np.linalg.norm(zero)
            self.along_axis = self.add("swivel along the axis", read(arm["alongAxis"]) if "alongAxis" in arm else Value(0))
            self.exit = np.array(anchor["along"], float) if "along" in anchor else None
        self.quarter = np.cross(self.axis, self.zero)
        self.fixed_tip = exact(lever.get("anchor", {}).get("tip"), 0.0) if exact(lever.get("anchor", {}).get("swivels"), 0.0) == 0 else 0.0

    def anchor_from_pivot(self, x):
        if self.bench is None:
            return [x[a] - x[p] for a, p in zip(self.anchor, self.pivot)]
        across, along = self.bench
        return [x[self.across] * across[i] - x[self.distance] * along[i] for i in range(3)]

    def swivel(self, x, angle):
        """Pivot to pin, turned about the axis by Rodrigues' formula."""
        # Rodrigues for the unit arm: its part along the axis is zero, and the offset along the axis stays where it is.
        c, s = x[self.radius] * np.cos(angle), x[self.radius] * np.sin(angle)
        return [self.zero[i] * c + self.quarter[i] * s + self.axis[i] * x[self.along_axis] for i in range(3)]

    def free_wire(self, x, angle):
        pin, anchor = self.swivel(x, angle), self.anchor_from_pivot(x)
        return np.sqrt(sum((p - a) ** 2 for p, a in zip(pin, anchor)))

    def lever(self, x, angle):
        """L and dL/dphi: the complex step has no difference to lose digits in."""
        both = self.free_wire(x, angle + 1e-30j)
        return np.real(both), np.imag(both) / 1e-30

    def moment_arm(self, x, angle):
        return self.lever(x, angle)[1]

    def swing(self, angle):
        """Angle between the wire at its mouth and the conduit's end."""
        x = self.nominal()[:, 0]
        pin, anchor = np.array(self.swivel(x, angle)), np.array(self.anchor_from_pivot(x))
        middle = np.array(self.swivel(x, 0.5 * (x[self.low_angle] + x[self.high_angle])))
        along = self.exit if self.exit is not None else middle - anchor
        wire = pin - (anchor + self.fixed_tip * along / np.linalg.norm(along))
        return math.atan2(np.linalg.norm(np.cross(wire, along)), wire @ along)

    # --- device

    def load(self, load):
        load = load or {}
        self.has_load = "torque" in load or "torqueTable" in load
        self.table = [(exact(a), read(t)) for a, t in load.get("torqueTable", [])]
        if "torque" in load:
            self.table = [(0.0, read(load["torque"]))]
        # One device, one feel: all its torques lie as far between their limits as each other.
        self.torque_place = self.add("torque of the device, of its band", Value(0, 1, 1)) if any(t.low < t.high for _, t in self.table) else None
        self.torque_normal = "torque" in load and self.table[0][1].normal
        self.bias, self.bias_rate, self.bias_sign = None, 0.0, 0
        if "bias" in load:
            self.bias = self.add("device's own torque", read(load["bias"]["torque"]))
            self.bias_rate = exact(load["bias"].get("rate"), 0.0)
            self.bias_sign = 1 if load["bias"]["toward"] == "push" else -1
        self.detents = [(exact(d["at"]), exact(d["torque"]), exact(d["within"])) for d in load.get("detents", [])]
        # What was not measured is an estimate, and may be larger.
        self.estimate_most = 1.0 if not load or load.get("measured") else self.published.value("hand/estimated-load-factor")
        self.estimate, self.own_estimate = (self.add(f"excess of an estimate, {of}", Value(1, 0, self.estimate_most - 1)) for of in ("friction", "own"))

    def resists(self, x, angle):
        """Friction-like torque at a nominal arm angle, N m."""
        if not self.table:
            return np.zeros_like(x[0])
        angles = [a for a, _ in self.table]
        middle, low, high = (np.interp(angle, angles, [pick(t) for _, t in self.table]) for pick in (lambda t: t.nominal, lambda t: max(0.0, t.low), lambda t: t.high))
        share = x[self.torque_place] if self.torque_place is not None else np.zeros_like(x[0])
        return x[self.estimate] * (middle + np.where(share < 0, share * (middle - low), share * (high - middle)))

    def drives(self, x, angle):
        """Torque of the device's own toward its push stop, N m."""
        nominal = self.nominal()
        push, pull = nominal[self.push_angle, 0], nominal[self.pull_angle, 0]
        total = np.zeros_like(x[0])
        if self.bias is not None:
            total = total + self.bias_sign * x[self.own_estimate] * (x[self.bias] + self.bias_rate * abs(angle - (push if self.bias_sign > 0 else pull)))
        for at, torque, within in self.detents:
            if abs(angle - at) < within:
                total = total + math.copysign(1, push - pull) * -torque * math.sin(math.pi * (angle - at) / within)
        return total

    def torque_recipe(self):
        """The program's recipe for the ladder: one factor on the friction-like torque at both stops, one deviation of the own torque."""
        n, most = self.nominal(), self.estimate_most
        low = high = 1.0
        for stop in (self.push_angle, self.pull_angle):
            if not self.table or self.resists(n, n[stop, 0])[0] <= 0:
                continue
            angles = [a for a, _ in self.table]
            middle, least_, most_ = (np.interp(n[stop, 0], angles, [pick(t) for _, t in self.table]) for pick in (lambda t: t.nominal, lambda t: max(0.0, t.low), lambda t: t.high))
            low, high = min(low, least_ / middle), max(high, most * most_ / middle)
        torque = Value(1, 1 - low, high - 1, self.torque_normal)
        if self.bias is None:
            return torque, Value(0)
        own = self.inputs[self.bias][1]
        wound = self.bias_rate * (n[self.high_angle, 0] - n[self.low_angle, 0])
        return torque, Value(0, own.minus, own.plus + (most - 1) * (own.high + wound), own.normal)

    # --- cable

    def lay_cable(self, cable):
        self.core = cable.get("core")
        self.diameter = self.add("core diameter", read(self.core["diameter"])) if self.core else None
        conduit = cable.get("conduit", {})
        self.bore = self.add("bore", read(conduit["bore"])) if self.core and "bore" in conduit else None
        self.bends = [(self.add(f"angle of bend {i}", read(b["angle"])), self.add(f"radius of bend {i}", read(b["radius"]))) for i, b in enumerate(cable.get("bends", []))]
        self.bend_sum = self.add("bend total", read(cable["bendTotal"])) if "bendTotal" in cable else None
        self.has_bends = bool(self.bends) or self.bend_sum is not None
        self.friction = self.add("friction", read(cable["friction"])) if "friction" in cable else None
        self.length = self.add("length of the conduit", read(cable["length"])) if "length" in cable else None
        self.conduit = {way: self.add(f"conduit, {way}", read(conduit[name])) if name in conduit else None for way, name in (("pull", "pullStiffness"), ("push", "pushStiffness"))}
        drag = cable.get("drag", {})
        self.knob_drag, self.device_drag = exact(drag.get("knob"), 0.0), exact(drag.get("device"), 0.0)
        self.longest_straight = exact(cable.get("longestStraight"))
        self.conduit_material = conduit.get("material", "carbonSteel")
        self.has_forces = self.has_load and self.friction is not None and self.has_bends
        # Where along the conduit the bends lie is not known: 0 all at the knob, 1/2 evenly, 1 all at the device.
        self.bends_lie = self.add("where the bends lie", Value(0.5, 0.5, 0.5))
        if self.core:
            material, kind = self.core.get("material", "musicWire"), self.core.get("kind", "solid")
            self.wires, self.across_core = STRAND[kind]
            single = self.inputs[self.diameter][1].nominal / self.across_core
            self.wire_modulus = self.published.modulus(material, single)
            self.modulus = self.add("elastic modulus", Value(self.wire_modulus) if kind == "solid" else self.published.band("wire/strand-modulus-" + kind.removeprefix("strand")))
            self.density = self.published.value("wire/density-music" if material == "musicWire" else "wire/density-302")

    def theta(self, x):
        if self.bend_sum is not None:
            return x[self.bend_sum]
        return sum((x[a] for a, _ in self.bends), np.zeros_like(x[0]))

    def clearance(self, x):
        return x[self.bore] - x[self.diameter] if self.bore is not None else np.zeros_like(x[0])

    def axial(self, x):
        return x[self.modulus] * self.wires * math.pi / 4 * (x[self.diameter] / self.across_core) ** 2

    def bending(self, x):
        return self.wire_modulus * self.wires * math.pi / 64 * (x[self.diameter] / self.across_core) ** 4

    def own_drags(self, x):
        """Drag of the stiff core in each bend: four wall contacts of EI / (2 R sqrt(6 c R)) each, N."""
        if not self.bends or self.bore is None:
            return [np.zeros_like(x[0]) for _ in self.bends]
        c, ei = np.maximum(1e-6, self.clearance(x)), self.bending(x)
        return [4 * x[self.friction] * ei / (2 * x[r] * np.sqrt(6 * c * x[r])) for _, r in self.bends]

    def at_knob(self, x, at_device):
        force = at_device + self.device_drag
        turns = [x[a] for a, _ in self.bends] if self.bends else [x[self.bend_sum]]
        drags = self.own_drags(x) if self.bends else [0.0]
        for turn, drag in zip(turns, drags):
            growth = np.exp(x[self.friction] * turn)
            force = np.where(force >= 0, force * growth, force / growth) + drag
        return force + self.knob_drag

    def straight(self):
        """Length over which a pushed core may wind up, m."""
        if self.bore is None or (self.longest_straight is None and self.length is None):
            return None
        return self.longest_straight if self.longest_straight is not None else self.inputs[self.length][1].high

    def helix(self, x):
        """Push that winds the core up in a straight level conduit, N (Chen, Lin, Cheatham 1990)."""
        n = self.nominal()
        weight = self.density * STANDARD_GRAVITY * self.wires * math.pi / 4 * (n[self.diameter] / self.across_core) ** 2
        return 2 * math.sqrt(2) * np.sqrt(self.bending(x) * weight / (0.5 * self.clearance(x)))

    def lock_up(self, x, friction):
        return 4 * self.bending(x) / (friction * 0.5 * self.clearance(x) * self.straight())

    def wound(self, x, force):
        """Push that goes in where `force` has to come out: 1/out = 1/in + 1/lock-up, once the core is wound up."""
        if self.straight() is None:
            return force
        inverse = 1 / np.where(force > 0, force, 1) - 1 / self.lock_up(x, x[self.friction])
        return np.where((force > 0) & (force > self.helix(x)), np.where(inverse > 0, 1 / np.where(inverse > 0, inverse, 1), np.inf), force)

    def along_conduit(self, x, way):
        """Knob movement per newton of mean tension in the conduit, m/N."""
        k = self.conduit[way]
        return x[self.length] / self.axial(x) + (1 / x[k] if k is not None else 0)

    def by_place(self, x, at_knob, evenly, at_device):
        lie = x[self.bends_lie]
        return np.where(lie < 0.5, at_knob + 2 * lie * (evenly - at_knob), evenly + (2 * lie - 1) * (at_device - evenly))

    def mean_growth(self, x):
        """Mean of the tension along the conduit over the tension at its device end."""
        turn = x[self.friction] * self.theta(x)
        return self.by_place(x, 1.0, sum(w * np.exp(turn * t) for w, t in zip(WEIGHTS, NODES)), np.exp(turn))

    def mean_own(self, x):
        """The same of the core's own drag. Evenly: at t, the drag so far grown by the bends since. At the device: drag of
        the first bend, grown by all."""
        turn = x[self.friction] * self.theta(x)

        def so_far(t):
            return t * sum(w * np.exp(turn * t * s) for w, s in zip(WEIGHTS, NODES))

        return self.by_place(x, 0.0, sum(w * so_far(t) for w, t in zip(WEIGHTS, NODES)), np.exp(turn))

    def give(self, x, way):
        """Knob movement per newton at the device, m/N: core in the conduit, conduit, longest bare wire, bracket."""
        if not self.has_forces or self.core is None or self.length is None:
            return np.zeros_like(x[0])
        n = self.nominal()
        free = self.free_wire(n, n[self.push_angle])[0]
        return self.mean_growth(x) * self.along_conduit(x, way) + free / self.axial(x) + (1 / x[self.bracket] if self.bracket is not None else 0)

    def own_stretch(self, x, way, y=None):
        """Stretch by the stiff core's own drag, m; y: what is stretched, where that is looked at apart from what drags."""
        if not self.has_forces or not self.bends or self.core is None or self.bore is None or self.length is None:
            return np.zeros_like(x[0])
        return sum(self.own_drags(x)) * self.mean_own(x) * self.along_conduit(x if y is None else y, way)

    def winding(self, x, y=None):
        """Shortening of the pushed core that winds up in its conduit, with the push at the knob at the push stop, m; y: what
        winds up, where that is looked at apart from what is pushed."""
        if not self.has_forces or self.straight() is None:
            return np.zeros_like(x[0])
        angle = self.nominal()[self.push_angle, 0]
        at_device = (self.resists(x, angle) - self.drives(x, angle)) / np.abs(self.moment_arm(x, x[self.push_angle]))
        y = x if y is None else y
        # Jammed: no more shortening than at lock-up, at its highest.
        force = np.minimum(self.wound(y, self.at_knob(x, at_device)), self.lock_up(y, self.inputs[self.friction][1].low))
        r = 0.5 * self.clearance(y)
        return np.where(force > self.helix(y), self.straight() * r * r * force / (4 * self.bending(y)), 0.0)

    # --- setting and heat

    def set_swivel(self, swivel):
        if "rigged" in swivel:
            self.setting_kind = "atPushStop" if swivel["rigged"]["stop"] == "push" else "atPullStop"
            value = read(swivel["rigged"]["knobOut"])
        elif "at" in swivel:
            self.setting_kind, value = "wireLength", read(swivel["at"])
        else:
            self.setting_kind = "balanced"
            error = self.published.value("cushion/rigging-tolerance")
            value = Value(0, error, error)
        self.setting = self.add("setting of the swivel", value)

    def warm(self, environment, zone):
        self.cable_heat = self.lever_heat = None
        if environment is None or self.core is None or self.length is None:
            return
        rigged, coldest, cabin = (exact(environment[k]) for k in ("rigged", "coldest", "cabin"))
        here = exact(environment[{"cabin": "cabin", "engineBay": "engineBay", "elsewhere": "elsewhere"}[zone]])
        cold = min(0.0, coldest - rigged)
        self.cable_heat = self.add("heat of the cable, K", Value(0, -cold, max(0.0, max(here, cabin) - rigged)))
        self.lever_heat = self.add("heat of the lever end, K", Value(0, -cold, max(0.0, here - rigged)))
        grows = lambda name: self.published.value(EXPANSION[name])
        wire = grows(self.core.get("material", "musicWire"))
        self.wire_in_conduit = wire - grows(self.conduit_material)
        self.wire_grows = wire
        # An engine is mostly aluminium.
        self.bracket_grows = self.add("expansion between anchor and pivot", self.published.airframe("aluminium" if zone == "engineBay" else environment["airframe"]))

    def shift(self, x, free):
        """Knob movement by heat, outward: the wire grows more than what guides it, m."""
        if self.cable_heat is None:
            return np.zeros_like(x[0])
        return self.wire_in_conduit * x[self.length] * x[self.cable_heat] + (self.wire_grows - x[self.bracket_grows]) * free * x[self.lever_heat]

    def apart(self, x):
        """How anchor and pin move apart by heat, as a factor on the free wire. Tip and swivel grow too and take back less: not counted."""
        return 1 if self.cable_heat is None else 1 + x[self.bracket_grows] * x[self.lever_heat]

    # --- the ladder

    def derived(self, x):
        return [self.give(x, "pull"), self.give(x, "push"), self.own_stretch(x, "pull"), self.own_stretch(x, "push"), self.winding(x)]

    def ladder(self, x, derived=None):
        """Every place of the ladder for each column of inputs."""
        give_pull, give_push, own_pull, own_push, winding = self.derived(x) if derived is None else derived[:5]
        n = self.nominal()
        push, pull = x[self.push_angle], x[self.pull_angle]
        (long, arm_push), (short, arm_pull) = self.lever(x, push), self.lever(x, pull)
        drag = self.device_drag if self.has_forces else 0.0
        at_push, at_pull = n[self.push_angle, 0], n[self.pull_angle, 0]
        # Positive moment arms: pushing lengthens the free wire.
        sign = 1 if at_push > at_pull else -1
        if derived is None:
            torque_push, torque_pull = self.resists(x, at_push) - self.drives(x, at_push), self.resists(x, at_pull) + self.drives(x, at_pull)
        else:
            own = self.bias_sign * derived[6]
            torque_push = self.resists(n, at_push) * derived[5] - self.drives(n, at_push) - own
            torque_pull = self.resists(n, at_pull) * derived[5] + self.drives(n, at_pull) + own
        wire_push = torque_push / (sign * arm_push) + drag
        wire_pull = torque_pull / (sign * arm_pull) + drag
        e_push = give_push * np.maximum(0, wire_push) + own_push + winding
        e_pull = give_pull * np.maximum(0, wire_pull) + own_pull
        lost = self.clearance(x) * self.theta(x) if self.bore is not None and self.has_bends else np.zeros_like(x[0])
        lost = lost + x[self.pin_play] + x[self.knob_play]

        # Wire from anchor to pin with the knob in, as the setting makes it; a light hand stretches nothing.
        stroke, set_to = x[self.stroke], x[self.setting]
        if self.setting_kind == "wireLength":
            wire = set_to
        elif self.setting_kind == "atPushStop":
            wire = set_to + long
        elif self.setting_kind == "atPullStop":
            wire = set_to + short - lost
        else:
            # in - out = 2 error:  (W - long - e_push) - (stroke - W + short - lost - e_pull) = 2 error
            wire = 0.5 * (2 * set_to + stroke + long + short + e_push - lost - e_pull)
        knob_push, knob_pull = wire - long - e_push, wire - short + lost + e_pull
        places = {
            "throw": long - short, "lost": lost, "e_push": e_push, "e_pull": e_pull, "p0": knob_push, "p1": knob_pull,
            "long": long, "short": short, "wire": wire, "light_push": wire - long, "light_pull": wire - short + lost,
        }
        return places | self.cushions(x, places)

    def cushions(self, x, places):
        """What is left at the four ends, at the temperatures of x."""
        long, short = places["long"], places["short"]
        hardware = x[self.tip] + 0.5 * x[self.swivel_length]
        return {
            "knobIn": places["p0"] + self.shift(x, long), "knobOut": x[self.stroke] - (places["p1"] + self.shift(x, short)),
            "tipAtPull": short * self.apart(x) - hardware, "tipAtPush": long * self.apart(x) - hardware,
        }


CUSHIONS = ("knobIn", "knobOut", "tipAtPull", "tipAtPush")


# ---------------------------------------------------------------------------------------------- comparing


class Comparison:
    def __init__(self, name):
        self.name, self.faults, self.checked = name, [], 0

    def near(self, what, ours, theirs, relative=1e-9, absolute=1e-13):
        self.checked += 1
        if theirs is None or not abs(ours - theirs) <= absolute + relative * abs(ours):
            self.faults.append(f"{what}: program {theirs!r}, oracle {ours!r}")

    def within(self, what, theirs, low, high):
        self.checked += 1
        if theirs is None or not low <= theirs <= high:
            self.faults.append(f"{what}: program {theirs!r}, oracle {low!r} to {high!r}")


def compare(run, answer, rng, deep):
    out = Comparison(run.id)
    ladder = answer.get("ladder")
    if ladder is None:
        out.faults.append("the program gives no ladder")
        return out
    compare_nominal(run, answer, ladder, out)
    compare_worst(run, ladder, rng, deep, out)
    compare_odds(run, ladder, rng, out)
    compare_lever(run, answer, out)
    compare_curve(run, answer, rng, out)
    return out


def compare_nominal(run, answer, ladder, out):
    n = run.nominal()
    # Nominal sharing of the bends along the conduit: evenly.
    mine = {k: float(v[0]) for k, v in run.ladder(n).items()}
    out.near("stroke", n[run.stroke, 0], ladder["stroke"])
    for ours, theirs in (("throw", "throw"), ("lost", "lostMotion"), ("e_pull", "stretchPull"), ("e_push", "stretchPush"), ("p0", "pushStopPlace"), ("p1", "pullStopPlace")):
        out.near(theirs, mine[ours], ladder[theirs], absolute=1e-12)
    for name in CUSHIONS:
        out.near(name, mine[name], ladder[name]["nominal"], absolute=1e-11)
    out.checked += 1
    if ladder["setting"]["kind"] != run.setting_kind:
        out.faults.append(f"setting: program {ladder['setting']['kind']}, oracle {run.setting_kind}")
    for ours, theirs in (("wire", "wireLength"), ("light_push", "knobOutAtPushStop"), ("light_pull", "knobOutAtPullStop")):
        out.near(theirs, mine[ours], ladder["setting"][theirs], absolute=1e-11)
    out.near("wanted", run.wanted, ladder["wanted"])


def derived_ranges(run, rng):
    """The parts of the stretch each at its own least and most, and what the torques may deviate by."""
    lows, highs = run.lows(), run.highs()
    count = len(lows)
    twice = np.concatenate([lows, lows]), np.concatenate([highs, highs])
    parts = [
        (lambda x: run.give(x, "pull"), (lows, highs)), (lambda x: run.give(x, "push"), (lows, highs)),
        (lambda x: run.own_stretch(x[:count], "pull", x[count:]), twice), (lambda x: run.own_stretch(x[:count], "push", x[count:]), twice),
        (lambda x: run.winding(x[:count], x[count:]), twice),
    ]
    ranges = [extremes(f, *box, rng) if run.has_forces else (0.0, 0.0) for f, box in parts]
    return ranges + [(f.low, f.high) for f in run.torque_recipe()]


def compare_worst(run, ladder, rng, deep, out):
    lows, highs = run.lows(), run.highs()
    count = len(lows)
    run.ranges = derived_ranges(run, rng)
    all_lows = np.concatenate([lows, [r[0] for r in run.ranges]])
    all_highs = np.concatenate([highs, [r[1] for r in run.ranges]])
    for name in CUSHIONS:
        claim = ladder[name]["least"] if "least" in ladder[name] else -math.inf
        proven = ladder[name]["proof"] in ("corner", "converged")
        # From the parts as they are: nothing that can occur may lie below the program's least.
        occurs = least(lambda x: run.ladder(x)[name], lows, highs, rng, deep)
        out.within(f"{name}, least of what can occur ({ladder[name]['proof']})", claim, -math.inf, occurs + 1e-6)
        apart = least(lambda x: run.ladder(x[:count], x[count:])[name], all_lows, all_highs, rng, deep)
        out.within(f"{name}, least ({ladder[name]['proof']})", claim, apart - 2e-5 if proven else -math.inf, apart + 1e-6)
        most = -least(lambda x: -run.ladder(x)[name], lows, highs, rng, deep)
        out.within(f"{name}, most of what can occur", ladder[name].get("most", math.inf), most - 1e-6, math.inf)
        out.within(f"{name}, leastFound", ladder[name].get("leastFound"), claim - 1e-12, claim + 2e-5 if proven else math.inf)


def draw(value, count, rng):
    if not value.normal:
        return rng.uniform(value.low, value.high, count)
    middle, sigma = 0.5 * (value.low + value.high), (value.high - value.low) / 6
    return np.clip(rng.normal(middle, sigma, count), value.low, value.high)


def compare_odds(run, ladder, rng, out):
    """The program's recipe of the odds: each derived range and each difference of two limits drawn as one uniform range."""
    x = np.array([draw(v, OWN_SAMPLES, rng) for _, v in run.inputs])
    mixed = [rng.uniform(low, high, OWN_SAMPLES) for low, high in run.ranges[:5]] + [draw(f, OWN_SAMPLES, rng) for f in run.torque_recipe()]

    def together(a, b):
        (_, va), (_, vb) = run.inputs[a], run.inputs[b]
        low, high = va.low - vb.high, va.high - vb.low
        d = Value(va.nominal - vb.nominal, va.nominal - vb.nominal - low, high - va.nominal + vb.nominal, va.normal and vb.normal)
        x[b] = vb.nominal
        x[a] = vb.nominal + draw(d, OWN_SAMPLES, rng)

    if run.bench is None:
        for a, p in zip(run.anchor, run.pivot):
            together(a, p)
    if run.bore is not None:
        together(run.bore, run.diameter)
    if len(run.bends) > 1:
        # One range for the sum of the bends.
        total = Value(sum(run.inputs[a][1].nominal for a, _ in run.bends), sum(run.inputs[a][1].minus for a, _ in run.bends), sum(run.inputs[a][1].plus for a, _ in run.bends))
        for a, _ in run.bends[1:]:
            x[a] = run.inputs[a][1].nominal
        x[run.bends[0][0]] = draw(total, OWN_SAMPLES, rng) - sum(x[a] for a, _ in run.bends[1:])
    elif run.bends:
        v = run.inputs[run.bends[0][0]][1]
        x[run.bends[0][0]] = draw(Value(v.nominal, v.minus, v.plus), OWN_SAMPLES, rng)
    worst = places = run.ladder(x, mixed)
    if run.cable_heat is not None:
        # Temperature is not drawn: each installation meets them all.
        corners = []
        for sides in itertools.product((0, 1), repeat=3):
            for which, side in zip((run.cable_heat, run.lever_heat, run.bracket_grows), sides):
                v = run.inputs[which][1]
                x[which] = v.high if side else v.low
            corners.append(run.cushions(x, places))
        worst = {name: np.minimum.reduce([c[name] for c in corners]) for name in CUSHIONS}
    n1, n2 = ladder["samples"], OWN_SAMPLES
    for name in CUSHIONS:
        values = np.sort(worst[name])
        theirs = ladder[name]
        for label, p in (("low95", 0.025), ("high95", 0.975)):
            error = 5 * math.sqrt(p * (1 - p) * (1 / n1 + 1 / n2)) + 2 / n1
            low, high = values[max(0, int((p - error) * n2))], values[min(n2 - 1, int((p + error) * n2) + 1)]
            out.within(f"{name}, {label}", theirs[label], low - 1e-12, high + 1e-12)
        share = np.count_nonzero(values >= ladder["wanted"]) / n2
        error = 5 * math.sqrt(max(share * (1 - share), 1 / n1) * (1 / n1 + 1 / n2))
        out.within(f"{name}, share above the wanted cushion", 0.5 * (theirs["shareAboveLow"] + theirs["shareAboveHigh"]), share - error - 5 / n1, share + error + 5 / n1)


def figure(answer, name):
    return next((f for f in answer["figures"] if f["id"] == name), {})


def compare_lever(run, answer, out):
    n = run.nominal()
    low, high = n[run.low_angle, 0], n[run.high_angle, 0]
    r = n[run.radius, 0]
    for name, stop in (("arm-push", run.push_angle), ("arm-pull", run.pull_angle)):
        out.near(name, abs(run.moment_arm(n, n[stop])[0]), figure(answer, name).get("value"))
    angles = np.linspace(low, high, 20001)
    arms = np.abs(run.moment_arm(n, angles))
    out.near("transmission", math.asin(min(1.0, arms.min() / r)), figure(answer, "transmission").get("value"), relative=1e-8)
    swings = [run.swing(a) for a in np.linspace(low, high, 401)]
    i = int(np.argmax(swings))
    grid = np.linspace(low, high, 401)
    finer = optimize.minimize_scalar(lambda a: -run.swing(a), bounds=(grid[max(0, i - 1)], grid[min(400, i + 1)]), method="bounded", options={"xatol": 1e-10})
    out.near("swing", max(swings[i], -finer.fun), figure(answer, "swing").get("value"), relative=1e-8)


def compare_curve(run, answer, rng, out):
    curve = answer.get("curve")
    if curve is None:
        out.faults.append("the program gives no curve")
        return
    n = run.nominal()
    angles = np.array([p["armAngle"] for p in curve])
    out.near("first place: push stop", n[run.push_angle, 0], angles[0])
    out.near("last place: pull stop", n[run.pull_angle, 0], angles[-1])
    if run.has_load and run.has_forces:
        for at, _ in run.table if len(run.table) > 1 else []:
            if n[run.low_angle, 0] + 1e-6 < at < n[run.high_angle, 0] - 1e-6:
                out.checked += 1
                if np.abs(angles - at).min() > 1e-9:
                    out.faults.append(f"the curve leaves out the torque's corner at {at} rad")

    nominal = {k: float(v[0]) for k, v in run.ladder(n).items()}
    give_pull, give_push, own_pull, own_push, winding = (float(d[0]) for d in run.derived(n))
    length, arm = run.free_wire(n, angles), np.abs(run.moment_arm(n, angles))
    resists = np.array([run.resists(n, a)[0] for a in angles])
    drives = np.array([run.drives(n, a)[0] for a in angles])
    pull, push = (resists + drives) / arm, (resists - drives) / arm
    for i, point in enumerate(curve):
        stretch_pull = own_pull + (give_pull * max(0.0, pull[i] + run.device_drag) if run.has_forces else 0)
        stretch_push = own_push + winding + (give_push * max(0.0, push[i] + run.device_drag) if run.has_forces else 0)
        out.near(f"knob pulling, place {i}", nominal["wire"] - length[i] + nominal["lost"] + stretch_pull, point["knobPulling"], absolute=1e-11)
        out.near(f"knob pushing, place {i}", nominal["wire"] - length[i] - stretch_push, point["knobPushing"], absolute=1e-11)
    if not run.has_forces:
        out.checked += 1
        if any("pull" in p for p in curve):
            out.faults.append("the program gives forces where something is missing")
        return

    # Moment arms over the limits of the lever end; at the stops over theirs too.
    geometry = [run.radius, run.along_axis] + ([run.across, run.distance] if run.bench is not None else [])
    lows, highs = run.lows(), run.highs()
    box = [(lows[i], highs[i]) for i in geometry]
    if run.bench is None:
        box += [(lows[a] - highs[p], highs[a] - lows[p]) for a, p in zip(run.anchor, run.pivot)]
    places = len(angles)
    box_low = np.array([[b[0]] * places for b in box] + [list(angles)])
    box_high = np.array([[b[1]] * places for b in box] + [list(angles)])
    for place, stop in ((0, run.push_angle), (places - 1, run.pull_angle)):
        box_low[-1, place], box_high[-1, place] = lows[stop], highs[stop]

    def arms(x):
        full = np.repeat(n, 1, axis=1)
        inputs = [np.broadcast_to(v, x.shape[1:]) for v in full[:, 0]]
        for i, which in enumerate(geometry):
            inputs[which] = x[i]
        if run.bench is None:
            for i, (a, p) in enumerate(zip(run.anchor, run.pivot)):
                inputs[a], inputs[p] = x[len(geometry) + i], np.zeros(x.shape[1:])
        sign = 1 if run.moment_arm(n, n[run.push_angle])[0] > 0 else -1
        return sign * run.moment_arm(inputs, x[-1])

    varying = np.flatnonzero((box_high > box_low).any(axis=1))

    def search(sign):
        def f(x):
            whole = np.broadcast_to(0.5 * (box_low + box_high)[:, None, :], (len(box_low),) + x.shape[1:]).copy()
            whole[varying] = x
            return sign * arms(whole)
        return each_least(f, box_low[varying], box_high[varying]) if len(varying) else f(np.zeros((0, 1, places)))[0]

    arm_low, arm_high = search(1), -search(-1)
    for name, place in (("arm-push", 0), ("arm-pull", places - 1)):
        out.within(f"{name}, least", figure(answer, name).get("least"), arm_low[place] - ARM_SLACK, arm_low[place] + 1e-9)
        out.within(f"{name}, most", figure(answer, name).get("most"), arm_high[place] - 1e-9, arm_high[place] + ARM_SLACK)

    # Forces: corners and random points of everything else, at every place at once.
    core = [i for i in [run.diameter, run.bore] if i is not None and highs[i] > lows[i]]
    others = [i for i in [run.torque_place, run.bias, run.estimate, run.own_estimate, run.friction, run.bend_sum] + [i for b in run.bends for i in b] if i is not None and highs[i] > lows[i]]
    dims = len(others) + 2 * len(core) + 1
    corners = np.array(list(itertools.product((0.0, 1.0), repeat=dims))).T if dims <= 11 else (rng.random((dims, 4096)) < 0.5).astype(float)
    u = np.concatenate([corners, rng.random((dims, 400)), np.full((dims, 1), 0.5)], axis=1)
    # What is most or least of all by the signs of the slopes: named outright, lest chance miss it among many.
    rises = {run.torque_place: 1, run.estimate: 1, run.friction: 1, run.bend_sum: 1, run.diameter: 1, run.bore: 0} | {a: 1 for a, _ in run.bends} | {r: 0 for _, r in run.bends}
    named = []
    for most in (0, 1):
        for bias in (0, 1):
            for arm_side in (0, 1):
                for estimate in (0, 1):
                    pick = {run.bias: bias, run.own_estimate: estimate}
                    own = [pick.get(i, rises.get(i, 1) if most else 1 - rises.get(i, 1)) for i in others] + [rises[i] if most else 1 - rises[i] for i in core]
                    named.append(own + [1 - v for v in own[len(others):]] + [arm_side])
                    named.append(own + own[len(others):] + [arm_side])
    u = np.concatenate([u, np.array(named, float).T], axis=1)
    x = np.repeat(n, u.shape[1], axis=1)
    for k, which in enumerate(others + core):
        x[which] = lows[which] + (highs[which] - lows[which]) * u[k]
    # The winding core taken at its own worst, apart from the dragging one: as the program has it.
    apart = x.copy()
    for k, which in enumerate(core):
        apart[which] = lows[which] + (highs[which] - lows[which]) * u[len(others) + len(core) + k]
    for i, point in enumerate(curve):
        arm_here = arm_low[i] + (arm_high[i] - arm_low[i]) * u[-1]
        arm_wide = np.maximum(1e-6, arm_here + ARM_SLACK * (2 * u[-1] - 1))
        r, g = run.resists(x, angles[i]), run.drives(x, angles[i])
        ways = {}
        for name, torque, nominal_torque in (("pull", r + g, resists[i] + drives[i]), ("push", r - g, resists[i] - drives[i])):
            knob, wide, at_nominal = run.at_knob(x, torque / arm_here), run.at_knob(x, torque / arm_wide), run.at_knob(n, np.array([nominal_torque / arm[i]]))
            ways[name] = (knob, wide, at_nominal) if name == "pull" else (run.wound(x, knob), run.wound(apart, wide), run.wound(n, at_nominal))
        for name, (knob, wide, at_nominal) in ways.items():
            if not np.isfinite(wide).all():
                # A core that jams has no force that could be shown.
                out.checked += 1
                if not np.isfinite(knob).all() and name + "Most" in point:
                    out.faults.append(f"{name}, place {i}: program {point[name + 'Most']!r}, oracle: the core jams")
                continue
            near = 1e-9 * (1 + np.abs(knob).max())
            out.near(f"{name}, place {i}", float(at_nominal[0]), point.get(name), absolute=1e-9)
            out.within(f"{name}, most, place {i}", point.get(name + "Most"), knob.max() - near, wide.max() + near)
            out.within(f"{name}, least, place {i}", point.get(name + "Least"), wide.min() - near, knob.min() + near)


# ---------------------------------------------------------------------------------------------- random aircraft


class Maker:
    """Random but workable runs, as a builder would type them."""

    def __init__(self, rng):
        self.rng = rng

    def pick(self, *choices):
        return choices[int(self.rng.integers(len(choices)))]

    def chance(self, p):
        return bool(self.rng.random() < p)

    def limited(self, value, unit, limit, digits=2, share=None):
        text = f"{value:.{digits}f} {unit}".strip()
        kind = self.rng.random()
        # No limit larger than its value, where a value below zero makes no sense; of a coordinate nothing is lost.
        limit = math.floor(min(limit * (0.5 + self.rng.random()), abs(float(text.split()[0]))) * 10**digits) / 10**digits
        if share is not None:
            text += f" ± {share:.0f} %"
        elif kind < 0.75:
            text += f" ± {limit:.{digits}f} {unit}".rstrip()
        elif kind < 0.9:
            text += f" +{limit:.{digits}f}/-{0.5 * limit:.{digits}f} {unit}".rstrip()
        else:
            return text
        return text + (" normal" if self.chance(0.15) else "")

    def run(self, name, points):
        while True:
            run = self.lever_end(name, points)
            if run is not None:
                return run

    def lever_end(self, name, points):
        rng = self.rng
        radius = rng.uniform(20, 60)
        half = rng.uniform(15, 52)
        lever = {"arm": {"radius": self.limited(radius, "mm", 0.4)}, "swivel": {"length": self.limited(rng.uniform(5, 10), "mm", 0.3)}}
        anchor = {"tip": self.limited(rng.uniform(0, 12), "mm", 0.8, 1)}
        if self.chance(0.7):
            anchor["swivels"] = "8 deg"
        if self.chance(0.75):
            anchor["stiffness"] = self.limited(rng.uniform(80, 500), "N/mm", 0, 0, share=self.pick(10, 20, 30))
        angle = lambda a: self.limited(a, "deg", 1.2, 1)
        distance = max(rng.uniform(70, 220), 1.7 * radius)
        if self.chance(0.5):
            rule = self.pick("squareAtMid", "chord", "halfSagitta", "offset")
            lever["bench"] = {"distance": self.limited(distance, "mm", 1.0, 1), "rule": rule}
            if rule == "offset":
                lever["bench"]["offset"] = self.limited(radius * rng.uniform(0.75, 1.05), "mm", 0.8)
            if self.chance(0.5) or rule == "offset":
                middle = rng.uniform(-8, 8) if rule == "offset" else rng.uniform(-40, 40)
                lever["sweep"] = {"from": angle(middle - half), "to": angle(middle + half)}
            else:
                lever["sweep"] = angle(2 * half)
        else:
            middle = rng.uniform(-60, 60)
            lever["sweep"] = {"from": angle(middle - half), "to": angle(middle + half)}
            frame, _ = np.linalg.qr(rng.normal(size=(3, 3)))
            if np.linalg.det(frame) < 0:
                frame[:, 2] = -frame[:, 2]
            along_axis = rng.uniform(-20, 20)
            pivot = rng.uniform(-900, 900, 3)
            m = math.radians(middle)
            arm, tangent = math.cos(m) * frame[:, 0] + math.sin(m) * frame[:, 1], -math.sin(m) * frame[:, 0] + math.cos(m) * frame[:, 1]
            side = self.pick(-1, 1)
            place = pivot + arm * radius * rng.uniform(0.8, 1.05) - side * tangent * distance + frame[:, 2] * (along_axis + rng.uniform(-15, 15))
            write = lambda p: [self.limited(c, "mm", 0.8, 1) for c in p]
            pointed = self.chance(0.5)
            if pointed:
                points[f"{name}-pivot"] = write(pivot)
            lever["pivot"] = f"{name}-pivot" if pointed else write(pivot)
            anchor["at"] = write(place)
            lever["axis"] = [round(float(c), 4) for c in frame[:, 2] * rng.uniform(0.5, 2)]
            lever["arm"]["zero"] = [round(float(c), 4) for c in frame[:, 0] + frame[:, 2] * rng.uniform(-0.3, 0.3)]
            if self.chance(0.7):
                lever["arm"]["alongAxis"] = self.limited(along_axis, "mm", 0.6, 1)
            if self.chance(0.4):
                anchor["along"] = [round(float(c), 4) for c in side * tangent + 0.05 * rng.normal(size=3)]
        lever["anchor"] = anchor
        lever["zone"] = self.pick("cabin", "engineBay", "elsewhere")
        lever["swivel"]["play"] = self.limited(rng.uniform(0.05, 0.2), "mm", 0.04)
        return self.whole_run(name, lever, points)

    def whole_run(self, name, lever, points):
        rng = self.rng
        run = {"id": name, "label": name.upper(), "function": "other", "cockpitEnd": {"stroke": "100 mm", "lock": "none"}, "leverEnd": lever}
        if self.chance(0.3):
            run["cushion"] = {"wanted": f"{rng.uniform(2, 6):.1f} mm"}
        if self.chance(0.5):
            run["cockpitEnd"]["play"] = self.limited(rng.uniform(0.05, 0.4), "mm", 0.04)
        trial = Run({"points": points}, run, PUBLISHED)
        # A lever that works: well away from a dead centre, stops and limits included.
        n = trial.nominal()
        angles = np.linspace(trial.lows()[trial.low_angle] - 0.02, trial.highs()[trial.high_angle] + 0.02, 200)
        arms = trial.moment_arm(n, angles)
        if np.abs(arms).min() < 0.45 * n[trial.radius, 0] or arms.min() * arms.max() < 0:
            return None
        low, high = n[trial.low_angle, 0], n[trial.high_angle, 0]

        kind = self.pick("none", "constant", "constant", "constant", "constant", "table")
        torque = rng.uniform(0.05, 0.6)
        if kind == "constant":
            lever["load"] = {"torque": self.limited(torque, "N m", 0.1 * torque, 3, share=self.pick(10, 20, 30) if self.chance(0.7) else None)}
        elif kind == "table":
            share = self.pick(10, 20)
            at = np.sort(rng.uniform(math.degrees(low) - 5, math.degrees(high) + 5, 3)) + np.array([0.0, 0.2, 0.4])
            lever["load"] = {"torqueTable": [[f"{a:.1f} deg", f"{torque * rng.uniform(0.5, 1.5):.3f} N m ± {share} %"] for a in at]}
        if kind != "none" and self.chance(0.4):
            lever["load"]["measured"] = True
        if kind != "none" and self.chance(0.5):
            toward = self.pick("push", "pull")
            lever["load"]["bias"] = {"toward": toward, "torque": self.limited(torque * rng.uniform(0.2, 1.4), "N m", 0.15 * torque, 3)}
            if self.chance(0.4):
                lever["load"]["bias"]["rate"] = f"{torque * rng.uniform(0.05, 0.5):.3f} N m/rad"
        if kind != "none" and self.chance(0.25):
            lever["load"]["detents"] = [{"at": f"{math.degrees(self.pick(low, high)):.1f} deg", "torque": f"{0.3 * torque:.3f} N m", "within": f"{rng.uniform(4, 12):.1f} deg"}]

        cable = {}
        if self.chance(0.95):
            stranded = self.chance(0.12)
            d = rng.uniform(1.3, 2.4)
            cable["core"] = {"diameter": self.limited(d, "mm", 0.02, 3), "material": self.pick("musicWire", "stainless302")}
            if stranded:
                cable["core"]["kind"] = self.pick("strand1x7", "strand1x19", "strand7x7", "strand7x19")
            cable["conduit"] = {"material": self.pick("carbonSteel", "stainless302")}
            if self.chance(0.93):
                cable["conduit"]["bore"] = self.limited(d + rng.uniform(0.3, 0.5), "mm", 0.04, 3)
            if self.chance(0.85):
                cable["conduit"]["pullStiffness"] = self.limited(rng.uniform(300, 900), "N/mm", 0, 0, share=20)
                cable["conduit"]["pushStiffness"] = self.limited(rng.uniform(120, 400), "N/mm", 0, 0, share=20)
        if self.chance(0.95):
            cable["friction"] = self.limited(rng.uniform(0.06, 0.2), "", 0.03, 3)
        if self.chance(0.95):
            length = rng.uniform(700, 3500)
            cable["length"] = self.limited(length, "mm", 10, 0)
            if self.chance(0.6):
                cable["longestStraight"] = f"{0.4 * length:.0f} mm"
        if self.chance(0.6):
            cable["bends"] = [{"angle": self.limited(rng.uniform(30, 100), "deg", 4, 1), "radius": self.limited(rng.uniform(120, 300), "mm", 12, 0)} for _ in range(int(rng.integers(1, 4)))]
        elif self.chance(0.93):
            cable["bendTotal"] = self.limited(rng.uniform(40, 250), "deg", 8, 1)
        if self.chance(0.4):
            cable["drag"] = {"knob": f"{rng.uniform(0, 3):.1f} N", "device": f"{rng.uniform(0, 3):.1f} N"}
        run["cable"] = cable

        travel = 1000 * float(np.abs(trial.free_wire(n, np.array([low])) - trial.free_wire(n, np.array([high])))[0])
        room = rng.uniform(6, 22)
        run["cockpitEnd"]["stroke"] = self.limited(travel + room, "mm", 0.6, 1)
        setting = self.pick("balanced", "at", "push", "pull")
        inside = rng.uniform(0.25, 0.7) * room
        long = 1000 * float(trial.free_wire(n, n[trial.push_angle])[0])
        if setting == "at":
            lever["swivel"]["at"] = self.limited(long + inside, "mm", 0.7, 1)
        elif setting != "balanced":
            lever["swivel"]["rigged"] = {"stop": setting, "knobOut": self.limited(inside if setting == "push" else inside + travel, "mm", 0.7, 1)}
        return run

    def aircraft(self, index, runs):
        rng = self.rng
        points = {}
        file = {"format": 1, "aircraft": {"name": f"Random {index}"}, "display": {"length": "mm", "force": "N"}}
        if index % 4 != 3:
            file["environment"] = {
                "airframe": self.pick("aluminium", "steelTube", "carbonComposite", "glassComposite", "wood"), "rigged": f"{rng.uniform(5, 25):.0f} degC",
                "coldest": f"{rng.uniform(-45, 0):.0f} degC", "cabin": f"{rng.uniform(40, 85):.0f} degC", "engineBay": f"{rng.uniform(60, 130):.0f} degC", "elsewhere": f"{rng.uniform(30, 70):.0f} degC",
            }
        file["runs"] = [self.run(f"run-{index}-{i}", points) for i in range(runs)]
        file["points"] = points
        return file


PUBLISHED = Published()


# ---------------------------------------------------------------------------------------------- the whole


def check(program, files):
    command = ["dotnet", program] if program.endswith(".dll") else [program]
    result = subprocess.run([*command, "check", *files, "--json", "--curves", "--samples", str(ENGINE_SAMPLES)], capture_output=True, text=True, encoding="utf-8", check=False)
    try:
        return json.loads(result.stdout)
    except json.JSONDecodeError:
        sys.exit(f"the program's answer is no JSON (exit {result.returncode}): {result.stdout[:500]} {result.stderr[:2000]}")


def compare_files(program, files, seed, deep):
    agree = differ = 0
    answers = {f["file"]: f for f in check(program, files)["files"]}
    for number, path in enumerate(files):
        aircraft, answer = load_json(path), answers[path]
        for problem in answer.get("problems", []):
            print(f"{path}: refused: {problem}")
        by_id = {r["id"]: r for r in answer.get("runs", [])}
        for index, run in enumerate(aircraft["runs"]):
            theirs = by_id.get(run["id"])
            rng = np.random.default_rng([seed, number, index])
            # Differential evolution on the first run of each file, or on all.
            if theirs is None:
                out = Comparison(run["id"])
                out.faults.append("the program left the run out")
            elif "throw" not in [f["id"] for f in theirs["figures"]]:
                print(f"{run['id']}: a dead centre within the sweep, nothing to compare")
                continue
            else:
                out = compare(Run(aircraft, run, PUBLISHED), theirs, rng, deep or index == 0)
            if out.faults:
                differ += 1
                print(f"{out.name}: {len(out.faults)} of {out.checked} figures differ")
                for fault in out.faults[:12]:
                    print(f"    {fault}")
            else:
                agree += 1
                print(f"{out.name}: {out.checked} figures agree")
            sys.stdout.flush()
    print(f"oracle: {agree} runs agree, {differ} differ")
    return 1 if differ or not agree else 0


def main():
    parser = argparse.ArgumentParser(description=__doc__, formatter_class=argparse.RawDescriptionHelpFormatter)
    parser.add_argument("--program", required=True, help="throwright.dll or the executable")
    parser.add_argument("--runs", type=int, default=50)
    parser.add_argument("--seed", type=int, default=1)
    parser.add_argument("--deep", action="store_true", help="differential evolution on every run")
    parser.add_argument("--keep", help="write the random aircraft into this folder and keep them")
    parser.add_argument("files", nargs="*", metavar="FILE")
    args = parser.parse_args()
    if args.files:
        return compare_files(args.program, args.files, args.seed, args.deep)
    with tempfile.TemporaryDirectory() as temporary:
        folder = args.keep or temporary
        os.makedirs(folder, exist_ok=True)
        maker = Maker(np.random.default_rng(args.seed))
        files = []
        for index, first in enumerate(range(0, args.runs, 10)):
            path = os.path.join(folder, f"random-{index}.throwright.json")
            with open(path, "w", encoding="utf-8") as f:
                json.dump(maker.aircraft(index, min(10, args.runs - first)), f, indent=1, ensure_ascii=False)
            files.append(path)
        return compare_files(args.program, files, args.seed, args.deep)


if __name__ == "__main__":
    sys.exit(main())
