#!/usr/bin/env python3
"""Twist-free elastic curve between clamped ends by scipy's collocation: an outside opinion for the tests.

Each input line: start direction, end point, end direction, length, load per length (13 numbers; start at the origin,
stiffness 1). Each output line: JSON with found, energy (less the work of the load), middle, peak curvature, and the seconds that
solve_bvp itself took (processor time).

Equations: r' = t, t' = k, k' = -(F - (F.t) t) - (k.k) t, F' = -load. Start: cubic Hermite curve of that length; a load
is raised in steps.
"""
import json
import sys
import time

import numpy as np
from scipy.integrate import solve_bvp

NODES = 41


def rates(length, load):
    def f(s, y):
        t, k, force = y[3:6], y[6:9], y[9:12]
        along = np.sum(force * t, axis=0)
        bend = np.sum(k * k, axis=0)
        return length * np.vstack([t, k, along * t - force - bend * t, -np.tile(load[:, None], (1, s.size))])
    return f


def ends(t0, p1, t1):
    # t is a unit vector and k is across it all the way once they are so at the start: two conditions for k there,
    # and the end direction gives two more; the pair (t, k) needs t0 (3), t0.k0 = 0 (1), end direction (2).
    e1 = np.cross(t1, np.eye(3)[np.argmin(np.abs(t1))])
    e1 /= np.linalg.norm(e1)
    e2 = np.cross(t1, e1)

    def g(a, b):
        return np.concatenate([a[0:3], a[3:6] - t0, [a[3:6] @ a[6:9]], b[0:3] - p1, [b[3:6] @ e1, b[3:6] @ e2]])
    return g


def hermite(t0, p1, t1, length):
    u = np.linspace(0, 1, 400)

    def curve(m):
        return (np.outer(u * u * (3 - 2 * u), p1) + np.outer(u * (1 - u) ** 2, m * t0) - np.outer(u * u * (1 - u), m * t1))

    low, high = 0.0, 40.0 * length
    for _ in range(80):
        mid = 0.5 * (low + high)
        if np.sum(np.linalg.norm(np.diff(curve(mid), axis=0), axis=1)) < length:
            low = mid
        else:
            high = mid
    r = curve(0.5 * (low + high))
    s = np.concatenate([[0], np.cumsum(np.linalg.norm(np.diff(r, axis=0), axis=1))])
    s /= s[-1]
    x = np.linspace(0, 1, NODES)
    r = np.array([np.interp(x, s, r[:, i]) for i in range(3)])
    t = np.gradient(r, x * length, axis=1)
    t /= np.linalg.norm(t, axis=0)
    k = np.gradient(t, x * length, axis=1)
    return x, np.vstack([r, t, k, np.zeros((3, NODES))])


def solve(numbers):
    t0, p1, t1 = (np.array(numbers[i:i + 3]) for i in (0, 3, 6))
    t0, t1 = t0 / np.linalg.norm(t0), t1 / np.linalg.norm(t1)
    length, load = numbers[9], np.array(numbers[10:13])
    x, y = hermite(t0, p1, t1, length)
    steps = (0.0, 0.25, 0.5, 1.0) if np.any(load) else (1.0,)
    seconds = 0.0
    for part in steps:
        begun = time.process_time()
        got = solve_bvp(rates(length, part * load), ends(t0, p1, t1), x, y, tol=1e-6, max_nodes=4000)
        seconds += time.process_time() - begun
        if not got.success or got.sol(1.0)[3:6] @ t1 < 0.999:
            return {"found": False, "seconds": seconds}
        x, y = got.x, got.y
    fine = np.linspace(0, 1, 4001)
    z = got.sol(fine)
    bend = np.sum(z[6:9] ** 2, axis=0)
    density = 0.5 * bend - load @ z[0:3]
    weights = np.ones(4001)
    weights[1:-1:2], weights[2:-1:2] = 4, 2
    return {"found": True, "seconds": seconds, "energy": float(length / 12000 * density @ weights), "middle": got.sol(0.5)[0:3].tolist(), "peak": float(np.sqrt(bend.max()))}


for line in sys.stdin:
    if line.strip():
        print(json.dumps(solve([float(v) for v in line.split()])))
