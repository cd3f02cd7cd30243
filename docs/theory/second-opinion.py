#!/usr/bin/env python3
"""Every figure of the theory pages by a second way that shares no code with the program.

    python3 docs/theory/second-opinion.py

Needs numpy and scipy. Prints each figure under the heading of the page that shows it; check ids stand in front where
the figure is one of data/checks.json. Lengths mm, forces N, stresses MPa, angles as named.
"""
from itertools import product
from math import acos, asin, atan2, comb, cos, cosh, degrees, exp, factorial, floor, hypot, pi, radians, sin, sinh, sqrt, tan

import numpy as np
from scipy import stats
from scipy.integrate import solve_bvp, solve_ivp
from scipy.optimize import brentq, lsq_linear

E, d = 193e3, 1.5
EI, EA = E * pi * d**4 / 64, E * pi * d**2 / 4


def show(name, *values):
    print(f"  {name:<58}", *(f"{v:.6g}" if isinstance(v, float) else v for v in values))


def throw():
    print("throw.md")
    # K1: the lever turned by a rotation matrix; the constants of the closed form by dotting out.
    o, k = np.array([10.0, 20, 30]), np.array([1.0, 2, 2]) / 3
    v, anchor, along = np.array([40.0, 20, 30]) - o, np.array([-60.0, 90, -20]), np.array([0.8, -0.6, 0])
    cross = np.array([[0, -k[2], k[1]], [k[2], 0, -k[0]], [-k[1], k[0], 0]])

    def pin(phi):
        return o + (np.eye(3) * cos(phi) + (1 - cos(phi)) * np.outer(k, k) + sin(phi) * cross) @ v

    def length(phi):
        return np.linalg.norm(pin(phi) - anchor)

    u = v - (v @ k) * k
    r = np.linalg.norm(u)
    u = u / r
    a, b, c = (anchor - o - (v @ k) * k) @ np.array([u, np.cross(k, u), k]).T
    big_c, big_d, phi0 = r * r + a * a + b * b + c * c, 2 * r * hypot(a, b), atan2(b, a)
    show("K1 r, a, b, c", r, a, b, c)
    show("K1 C, D", big_c, big_d)
    for deg in (0, 30, 60, 90):
        phi = radians(deg)
        m = (length(phi + 1e-6) - length(phi - 1e-6)) / 2e-6
        swing = degrees(acos((pin(phi) - anchor) @ along / length(phi)))
        closed = sqrt(big_c - big_d * cos(phi - phi0))
        show(f"K1 {deg} deg: L, closed form less that, dL/dphi", f"{length(phi):.6f}", f"{closed - length(phi):.0e}", f"{m:.6f}")
        show("   swing, wire to arm, deg", swing, degrees(asin(abs(m) / r)))
    show("K1b dead centres, deg", f"{degrees(phi0):.6f}", f"{degrees(phi0) + 180:.6f}")
    psi = np.linspace(0, pi, 2_000_001)
    arm = big_d * np.sin(psi) / 2 / np.sqrt(big_c - big_d * np.cos(psi))
    crest = (big_c - sqrt(big_c**2 - big_d**2)) / big_d
    show("crest by scan: at deg, arm", degrees(psi[arm.argmax()]), arm.max())
    show("crest by formula: at deg, arm", degrees(acos(crest)), sqrt(big_d * crest / 2))

    def bench(offset, r, s, h):
        def free(phi):
            return hypot(r * cos(phi) - offset, r * sin(phi) + s)

        phi = np.linspace(-h, h, 100_001)
        swing = np.degrees(np.arctan2(offset - r * np.cos(phi), r * np.sin(phi) + s))
        ends = [r * (offset * sin(f) + s * cos(f)) / free(f) for f in (-h, h)]
        return free(h) - free(-h), float(swing.min()), float(swing.max()), *ends, free(-h), free(0), free(h)

    for r, s, deg in ((30, 100, 45), (30, 300, 45), (25, 75, 40), (30, 100, 30)):
        h = radians(deg)
        p, q = r * sin(h), r * (1 - cos(h))
        for rule, offset in (("square", r), ("chord", r * cos(h)), ("half sagitta", r * (1 + cos(h)) / 2)):
            t, low, high, first, last, *free = bench(offset, r, s, h)
            show(f"K2, K3 r {r} s {s} +-{deg}, {rule}: throw", f"{t:.6f}")
            show("   swing deg, arms, L", f"{low:.5f} {high:.5f}", f"{first:.5f} {last:.5f}", *(f"{x:.6f}" for x in free))
        show("   2p, shortfall short and long form", 2 * p, 2 * p * q * q / s**2 / 2, 2 * p * q * q / (s * s - p * p) / 2)
        show("   push half less pull half, by q^2 s/(s^2 - p^2)", q * q * s / (s * s - p * p))
    for e in (1, 2, 5):
        show(f"anchor {e} off the chord line, r 30 s 100 +-45: throw", bench(30 * cos(pi / 4) + e, 30, 100, pi / 4)[0])
    show("anchor inside the chord, s 10: |L+ - L-|", abs(bench(30 * cos(pi / 4), 30, 10, pi / 4)[0]))
    near = hypot(30, 100)
    show("first 5 deg from a dead centre, r 30 d 104.4: wire", sqrt(900 + near**2 - 60 * near * cos(radians(5))) - (near - 30))
    show("K6 slider-crank from L^2 = C - D cos", f"{brentq(lambda x: 0.01 + x * x - 0.2 * x * cos(pi / 4) - 0.16, 0.3, 1):.9f}")
    show("K7 stress", 3 * E * d * 8.787 / (2 * 100**2))
    s, delta = 100.0, 8.787

    def elastica(_, z, p):
        return np.vstack([p[1] * z[1], -p[1] * p[0] * np.cos(z[0]) / EI, p[1] * np.cos(z[0]), p[1] * np.sin(z[0])])

    def held(a, b, _):
        return np.array([a[0], a[2], a[3], b[1], b[2] - s, b[3] - delta])

    t = np.linspace(0, 1, 201)
    guess = np.vstack([2 * delta / s * t, 3 * delta / s**2 * (1 - t), s * t, delta * t * t])
    full = solve_bvp(elastica, held, t, guess, p=[3 * EI * delta / s**3, s], tol=1e-8)
    show("K7 by the full elastica over small slopes", float(full.y[1][0] * s * s / (3 * delta)))
    for force in (10, 20, 50, 100, 200, -10, -15.8, -30, -40, -47.3):
        # Small slopes: EI y'''' = F y''; clamped at 0, free to turn at s, held at delta there.
        def slope(_, y, f=force):
            return np.vstack([y[1], y[2], y[3], f / EI * y[2]])

        def ends(p, q):
            return np.array([p[0], p[1], q[0] - delta, q[2]])

        x = np.linspace(0, s, 201)
        y = np.zeros((4, x.size))
        y[0] = delta * (x / s) ** 2
        found = solve_bvp(slope, ends, x, y, tol=1e-8, max_nodes=20000)
        bend = found.sol(np.linspace(0, s, 4001))[2] * s * s / (3 * delta)
        w = s * sqrt(abs(force) / EI)
        if force > 0:
            formula = w * w / 3 * sinh(w) / (w * cosh(w) - sinh(w))
        else:
            formula = w * w / 3 * (sin(w) if w < pi / 2 else 1) / (sin(w) - w * cos(w))
        show(f"bend at a fixed tip under {force:+} N: solved, formula", float(np.abs(bend).max()), formula)


def cushion():
    print("cushion.md")
    show("L1", f"{0.5 * radians(270):.6f}")
    radius, rise, turn, c = 60.0, 40.0, 1.25 * 2 * pi, 0.6
    k, tau, ell = radius / (radius**2 + rise**2), rise / (radius**2 + rise**2), turn * hypot(radius, rise)
    exact = ell * (hypot(1 + c * k / 2, c * tau / 2) - hypot(1 - c * k / 2, c * tau / 2))
    show("L2 bend total rad and deg, exact, c Theta", f"{k * ell:.9f}", degrees(k * ell), f"{exact:.9f}", f"{c * k * ell:.9f}")
    show("L2 angle between the end tangents, deg", degrees(acos((rise**2 + radius**2 * cos(turn)) / (radius**2 + rise**2))))
    x = 0.15 * radians(270)
    part = 50 * 100 / (EA * 0.15)
    show("L3 pull, release, dead band", *(f"{v:.6f}" for v in (part * (exp(x) - 1), part * (1 - exp(-x)), 2 * part * (cosh(x) - 1))))
    show("E1 at 200 and 193 GPa", f"{200e3 * pi * d**2 / 4 / 1000:.3f}", f"{EA / 1000:.3f}")
    show("E3", 80e3 * 1.2**4 / (8 * 5**3 * 100))
    for x in (0.2, 0.5, 0.94):
        show(f"mean growth at mu Theta {x}: bends even, all at the device", (exp(x) - 1) / x, exp(x))
    show("E4", (17.2 - 11.7) * 1e-6 * 2000 * 60)
    show("E4b taut carbon-steel wire in 2024", (11.7 - 22.9) * 1e-6 * 2000 * 60, (22.9 - 11.7) * 1e-6 * 2000 * 65)
    for th in (0.2, 0.5, 1, 2):
        chord = lambda q: sin(q / 2) / (q / 2)
        slope = (chord(th + 1e-6) - chord(th - 1e-6)) / 2e-6
        show(f"arc of 1 m turning {th} rad, ends 1.4 apart more: c dTheta at c 0.5", 0.5 * 1.4 / 1000 / abs(slope))
    show("tip cushion, 75 of free wire in aluminium, 60 K", 22.9e-6 * 75 * 60)
    for n in (1, 2, 3, 4, 6, 12):
        top = min(n, (sqrt(n) + n) / 2)
        inside = sum((-1) ** i * comb(n, i) * (top - i) ** n for i in range(floor(top) + 1)) / factorial(n)
        show(f"{n} equal uniform parts outside root-sum-square", f"{2 * (1 - inside):.4f}")
    show("many parts", f"{2 * stats.norm.sf(sqrt(3)):.4f}")
    t = np.array([0.10, 0.05, 0.03, 0.05])

    def share(y):
        terms = [(-1) ** sum(s) * max(0, y + t.sum() - 2 * (t @ s)) ** 4 for s in product((0, 1), repeat=4)]
        return 2 * (1 - sum(terms) / (24 * np.prod(2 * t)))

    rss = float(np.sqrt((t**2).sum()))
    show("T1 worst, root-sum-square", float(t.sum()), f"{rss:.6f}")
    show("T2 outside root-sum-square, outside 0.15", f"{share(rss):.6f}", f"{share(0.15):.7f}")
    xs = np.linspace(-4, 4, 8001)
    twelve = np.array([sum((-1) ** i * comb(12, i) * (q + 6 - i) ** 12 for i in range(floor(q + 6) + 1)) / factorial(12) for q in xs])
    show("twelve uniform numbers less six against the normal law", float(np.abs(twelve - stats.norm.cdf(xs)).max()))
    show("T4", *(next(n for n in range(1, 999) if stats.binom.cdf(r - 1, n, 0.05) <= 0.05) for r in range(1, 6)))
    z = stats.norm.ppf(0.975)
    for hits, n in ((81, 263), (15, 148), (0, 20), (1, 29)):
        p = hits / n
        mid, half = p + z * z / 2 / n, z * sqrt(p * (1 - p) / n + z * z / 4 / n**2)
        show(f"T5 {hits}/{n}", f"{(mid - half) / (1 + z * z / n):.4f} {(mid + half) / (1 + z * z / n):.4f}")
    b = radians(40)
    rng = np.random.default_rng(1)
    z, az = rng.uniform(cos(b), 1, 2_000_000), rng.uniform(0, 2 * pi, 2_000_000)
    flat = np.sqrt(1 - z * z) * np.cos(az)
    for deg in (5, 10, 30, 60):
        q = radians(deg)
        outer, inner = acos((cos(q) - cos(b) ** 2) / sin(b) ** 2), acos(cos(b) * (1 - cos(q)) / (sin(b) * sin(q)))
        formula = (2 * (pi - outer) - 4 * cos(b) * inner) / (2 * pi * (1 - cos(b)))
        show(f"Q2 2 beta 80, {deg} deg: formula, sampled", f"{formula:.4f}", f"{float((flat * sin(q) + z * cos(q) >= cos(b)).mean()):.4f}")
    show("Q1", *(f"{2 / pi * (acos(x) - x * sqrt(1 - x * x)):.6f}" for x in (0.1, 0.25, 0.5, 0.75)))
    show("Q3 open loss 0, and 0.05", f"{sqrt(5 / 5.29):.4f}", f"{sqrt(5.05 / 5.29):.4f}")


def stiff_core(big_r, c, deg, n=300, straight=50):
    """Wall forces by least bending energy between two walls, finely divided; (sum of |N|) / 4, and where they act."""
    arc = radians(deg) * big_r
    s = np.linspace(0, 2 * straight + arc, n + 1)
    h = s[1]
    bent = np.clip(np.minimum(s + h / 2, straight + arc) - np.maximum(s - h / 2, straight), 0, h) / h / big_r
    second = (np.eye(n - 1, n + 1) - 2 * np.eye(n - 1, n + 1, 1) + np.eye(n - 1, n + 1, 2)) / h**2 * sqrt(EI * h)
    right = -bent[1:-1] * sqrt(EI * h)
    y = lsq_linear(second, right, bounds=(-c / 2, c / 2), method="bvls", tol=1e-12, max_iter=3000).x
    force = second.T @ (second @ y - right)
    return float(np.abs(force).sum() / 4)


def hand_force():
    print("hand-force.md")
    show("F1", f"{981 * exp(-0.2 * 1.5 * pi):.2f}")
    for mu in (0.05, 0.10, 0.15, 0.20):
        show(f"F2 mu {mu}", *(f"{exp(mu * radians(a)):.4f}" for a in (90, 180, 270, 360)))
    show("F3", f"{45 * exp(0.15 * pi) + 3:.5f}")
    ode = solve_ivp(lambda q, f: [1 * sin(q) + 0.15 * abs(f[0] - 1 * cos(q))], (0, pi / 2), [2], rtol=1e-11, atol=1e-12)
    show("F4 by integration", f"{float(ode.y[0, -1]):.6f}")
    ode = solve_ivp(lambda q, f: [0.02722 * sin(q) + 0.15 * abs(f[0] - 0.02722 * cos(q))], (0, pi / 2), [50], rtol=1e-11)
    show("1.5 mm steel wire, R 200, at 50 N: share of weight", float(ode.y[0, -1]) / (50 * exp(0.15 * pi / 2)) - 1)
    for big_r, c in ((100, 0.5), (200, 0.5), (100, 0.3)):
        half = sqrt(6 * c * big_r)
        show(f"F5 R {big_r} c {c}: l, N, divided wire, 4 mu N at 0.15", half, EI / (2 * half * big_r), stiff_core(big_r, c, 9000 / big_r), 0.6 * EI / (2 * half * big_r))
    for deg in (5, 10, 15, 20):
        show(f"   bend of {deg} deg, R 100 c 0.5: sum of wall forces", 4 * stiff_core(100, 0.5, deg))
    for n, k in ((7, 3), (19, 5), (49, 9), (133, 15)):
        show(f"strand of {n} wires, {k} across: solid over strand", k**4 / n)
    root = brentq(lambda q: tan(q) - q, 4.4, 4.6)
    show("fixed and pinned: C", f"{(root / pi) ** 2:.6f}")
    for free in (40, 60, 80, 100):
        show(f"B4 {free}: pinned, fixed and pinned", f"{pi**2 * EI / free**2:.2f}", f"{root**2 * EI / free**2:.2f}")
    w, r = 1.36085e-4, 0.25
    k2 = np.linspace(1e-4, 0.1, 2_000_001)
    show("B6 snaking by least of E I k^2 + w/(r k^2), formula, helix", float((EI * k2**2 + w / (r * k2**2)).min()), 2 * sqrt(EI * w / r), sqrt(8) * sqrt(EI * w / r))
    out = solve_ivp(lambda x, f: [-0.15 * r * f[0] ** 2 / (4 * EI)], (0, 1000), [100], rtol=1e-11)
    show("B7 pitch, contact, shortening per m, force after 1 m", sqrt(8 * pi**2 * EI / 100), r * 100**2 / (4 * EI), r * r * 100 / (4 * EI) * 1000, float(out.y[0, -1]))
    ei = 49 * E * pi * (d / 9) ** 4 / 64
    show("B8 E I, lock-up, of 30", ei, 4 * ei / (0.15 * r * 1000), 1 / (1 / 30 + 0.15 * r * 1000 / (4 * ei)))
    for wire, mu, r, ell in ((1.5, 0.15, 0.25, 1000), (1.0, 0.25, 0.5, 2000), (0.8, 0.25, 0.25, 2000)):
        lock = 4 * E * pi * wire**4 / 64 / (mu * r * ell)
        show(f"helix friction, d {wire} mu {mu} r {r} L {ell}: lock-up, in for 50 out", lock, 1 / (1 / 50 - 1 / lock))
    show("S2 stress, least radius at 0.65 of 258 ksi", E * d / 200, E * d / 2 / (0.65 * 258 * 6.894757))
    show("V5", 20 * (tan(pi / 4) + 0.15) / (1 - 0.15 * tan(pi / 4)))


if __name__ == "__main__":
    throw()
    cushion()
    hand_force()
