"""Writes regions.json: figures of regions as a computational geometry library
has them. Nothing here knows of package curve.

    apt-get install python3-shapely && /usr/bin/python3 regions.py    # two minutes

Shapely (licence BSD-3-Clause) over GEOS (licence LGPL-2.1-or-later). It knows
only straight lines, so every curve is flattened here, into FINE chords where
areas and lengths are asked for, into COARSE ones for distances and buffers.
The outlines are drawn from a fixed seed and rounded to a thousandth of a
millimetre before anything is computed.
"""

import json
import math
import os
import random

import numpy as np
import shapely
import shapely.geos
from shapely.geometry import LineString, Point, Polygon
from shapely.prepared import prep

FINE, COARSE = 6000, 1200
rnd = random.Random(1911)


def tidy(x):
    return round(x, 3) + 0.0


def polar(radius, angle):
    return tidy(radius * math.cos(angle)), tidy(radius * math.sin(angle))


# Segments: ("L", a, b), ("C", a, b, c, d), ("A", a, rx, ry, turn, large, sweep, b).


def flat(seg, n):
    """The points of a segment at n + 1 even parameters."""
    t = np.linspace(0, 1, n + 1)[:, None]
    if seg[0] == "L":
        return np.array([seg[1], seg[2]], float)
    if seg[0] == "C":
        a, b, c, d = (np.array(p, float) for p in seg[1:])
        s = 1 - t
        return s**3 * a + 3 * s**2 * t * b + 3 * s * t**2 * c + t**3 * d
    # W3C SVG 2, appendix B.2.4, in the plane where the ellipse is the unit circle.
    _, a, rx, ry, turn, large, sweep, b = seg
    cos, sin = math.cos(math.radians(turn)), math.sin(math.radians(turn))
    to_paper = np.array([[cos * rx, -sin * ry], [sin * rx, cos * ry]])
    u, v = (np.linalg.solve(to_paper, np.array(p, float)) for p in (a, b))
    half = (u - v) / 2
    far = math.sqrt(1 / (half @ half) - 1) * (1 if large != sweep else -1)
    centre = (u + v) / 2 + far * np.array([half[1], -half[0]])
    start, end = (math.atan2(*(p - centre)[::-1]) for p in (u, v))
    if sweep and end < start:
        end += 2 * math.pi
    if not sweep and end > start:
        end -= 2 * math.pi
    angle = start + (end - start) * t
    return (centre + np.hstack([np.cos(angle), np.sin(angle)])) @ to_paper.T


def flatten(segs, n):
    """The chords' ends along a path. Where segments meet only the given point is
    kept: a second one an ulp away makes GEOS draw a mitre into the blue."""
    return np.vstack([segs[0][1]] + [np.vstack([flat(s, n)[1:-1], s[-1]]) for s in segs])


def data(segs):
    out = ["M %.10g %.10g" % segs[0][1]]
    for s in segs:
        if s[0] == "A":
            out.append("A %.10g %.10g %.10g %d %d %.10g %.10g" % (*s[2:7], *s[7]))
        else:
            out.append(s[0] + " " + " ".join("%.10g %.10g" % p for p in s[2:]))
    return " ".join(out)


def between(a, b, share, aside):
    """The point at a share of the way from a to b, and aside of it."""
    dx, dy = b[0] - a[0], b[1] - a[1]
    return tidy(a[0] + share * dx - aside * dy), tidy(a[1] + share * dy + aside * dx)


def side(a, b, bend=1.0):
    kind = rnd.randrange(6)
    chord = math.dist(a, b)
    if kind == 0:
        return [("L", a, b)]
    if kind == 1:
        m = between(a, b, 0.5, rnd.uniform(-0.1, 0.1) * bend)
        return [("L", a, m), ("L", m, b)]
    if kind == 2:  # a bow
        h = rnd.uniform(-0.25, 0.25) * bend
        return [("C", a, between(a, b, 0.3, h), between(a, b, 0.7, h), b)]
    if kind == 3:  # an S
        h = rnd.uniform(-0.25, 0.25) * bend
        return [("C", a, between(a, b, 0.3, h), between(a, b, 0.7, -h), b)]
    if kind == 4:
        r = tidy(chord * rnd.uniform(0.9, 2) / bend)
        return [("A", a, r, r, 0, 0, rnd.randrange(2), b)]
    rx, ry = (tidy(chord * rnd.uniform(0.9, 1.5) / bend) for _ in "xy")
    return [("A", a, rx, ry, tidy(rnd.uniform(-90, 90)), 0, rnd.randrange(2), b)]


def star():
    """Edges about the origin, run either way round, convex or not."""
    while True:
        n, way = rnd.randint(3, 7), rnd.choice([-1, 1])
        corners = [polar(rnd.uniform(50, 200), way * 2 * math.pi * (i + rnd.uniform(-0.2, 0.2)) / n) for i in range(n)]
        edges = [side(corners[i], corners[(i + 1) % n]) for i in range(n)]
        if polygon(edges, 200).is_valid:
            return edges


def roving():
    """A path of one to three segments that may stand anywhere about the origin."""
    at = polar(rnd.uniform(0, 160), rnd.uniform(0, 7))
    segs = []
    for _ in range(rnd.randint(1, 3)):
        to = polar(rnd.uniform(20, 230), rnd.uniform(0, 7))
        segs += side(at, to)
        at = to
    return segs


def polygon(edges, n):
    return Polygon(flatten([s for e in edges for s in e], n))


def outside(path, region, n=COARSE):
    """How far the path stands outside at worst: dense samples, and denser ones
    wherever the worst may lie."""
    near = prep(region)

    def far(p):
        q = Point(p)
        return 0.0 if near.contains(q) else region.distance(q)

    pts = flatten(path, n)
    spread = []
    for p, q in zip(pts, pts[1:]):
        parts = max(1, math.ceil(math.dist(p, q) / 0.25))
        spread += [p + (q - p) * i / parts for i in range(parts)]
    pts = np.array(spread + [pts[-1]])
    found = [far(p) for p in pts]
    for i in range(len(pts) - 1):
        step = math.dist(pts[i], pts[i + 1])
        if max(found[i], found[i + 1]) + step / 2 > max(found):
            found += [far(pts[i] + (pts[i + 1] - pts[i]) * k / 20) for k in range(1, 20)]
    return max(found)


def figures(name, edges, paths=(), probes=10):
    fine, coarse = polygon(edges, FINE), polygon(edges, COARSE)
    assert coarse.is_valid, name
    x0, y0, x1, y1 = coarse.bounds
    inside, without = [], []
    while len(inside) + len(without) < probes:
        p = tidy(rnd.uniform(x0 - 10, x1 + 10)), tidy(rnd.uniform(y0 - 10, y1 + 10))
        if coarse.exterior.distance(Point(p)) > 0.02:
            (inside if coarse.contains(Point(p)) else without).append(p)
    return {
        "name": name,
        "edges": [data(e) for e in edges],
        "area": fine.area,
        "perimeter": fine.exterior.length,
        "clockwise": fine.exterior.is_ccw,  # GEOS has Y upward
        "inside": inside,
        "without": without,
        "paths": [{"path": data(p), "outside": outside(p, coarse)} for p in paths],
    }


def offset(name, edges, d, join):
    """The outline at distance d, outward if d is positive, with mitred or round
    corners: its area, and points of it. None where GEOS contradicts itself: an
    inward outline keeps its distance but for blunt corners that point inward,
    yet now and then a spike runs right across."""
    region = polygon(edges, COARSE)
    ring = region.buffer(d, resolution=256, join_style=join, mitre_limit=4)
    assert ring.geom_type == "Polygon" and not ring.interiors, (name, d)
    points = [ring.exterior.interpolate((i + 0.5) / 24, normalized=True) for i in range(24)]
    if d < 0 and max(region.exterior.distance(p) for p in points) > 1.1 * -d:
        print("dropped:", name)
        return None
    return {
        "name": name,
        "edges": [data(e) for e in edges],
        "d": d,
        "area": ring.area,
        "points": [p.coords[0] for p in points],
    }


# Pieces a cutter draws, in millimetres.
BODICE = [
    [("C", (0, 88), (34, 88), (66, 62), (74, 0))],  # neckline
    [("L", (74, 0), (196, 42))],  # shoulder
    [("C", (196, 42), (184, 96), (176, 150), (190, 190)), ("C", (190, 190), (198, 214), (222, 236), (252, 240))],
    [("C", (252, 240), (246, 300), (236, 350), (232, 410))],  # side
    [("C", (232, 410), (150, 426), (70, 430), (0, 430))],  # waist
    [("L", (0, 430), (0, 88))],  # centre front
]
SLEEVE = [
    [
        ("C", (0, 150), (38, 138), (58, 84), (92, 38)),
        ("C", (92, 38), (112, 12), (140, 0), (168, 0)),
        ("C", (168, 0), (204, 0), (236, 26), (258, 66)),
        ("C", (258, 66), (284, 112), (306, 142), (344, 150)),
    ],
    [("L", (344, 150), (290, 560))],
    [("C", (290, 560), (220, 572), (120, 548), (54, 560))],
    [("L", (54, 560), (0, 150))],
]
QUARTER = [  # a quarter of a circular skirt: waist and hem are arcs
    [("A", (110, 0), 110, 110, 0, 0, 1, (0, 110))],
    [("L", (0, 110), (0, 710))],
    [("A", (0, 710), 710, 710, 0, 0, 0, (710, 0))],
    [("L", (710, 0), (110, 0))],
]
PANEL = [
    [("C", (0, 0), (60, 12), (120, 12), (180, 0))],
    [("C", (180, 0), (196, 70), (212, 140), (214, 210)), ("L", (214, 210), (262, 620))],
    [("A", (262, 620), 900, 900, 0, 0, 1, (-82, 620))],
    [("L", (-82, 620), (-34, 210)), ("C", (-34, 210), (-32, 140), (-16, 70), (0, 0))],
]
DRAWN = {"bodice": BODICE, "sleeve": SLEEVE, "quarter of a skirt": QUARTER, "flared panel": PANEL}


def drawn(name, edges):
    """The piece, with its own edges and edges of it moved a little as paths."""
    paths = list(edges)
    for e in edges:
        dx, dy = tidy(rnd.uniform(-6, 6)), tidy(rnd.uniform(-6, 6))
        paths.append([move(s, dx, dy) for s in e])
    return figures(name, edges, paths, 20)


def move(seg, dx, dy):
    return tuple((tidy(p[0] + dx), tidy(p[1] + dy)) if isinstance(p, tuple) else p for p in seg)


def gentle():
    """Edges with sides that bend little and corners of 60 to 150 degrees."""
    while True:
        n = rnd.randint(4, 6)
        corners = [polar(rnd.uniform(150, 200), 2 * math.pi * (i + rnd.uniform(-0.1, 0.1)) / n) for i in range(n)]
        edges = [side(corners[i], corners[(i + 1) % n], 0.4) for i in range(n)]
        if polygon(edges, 200).is_valid:
            return edges


def rounded():
    """One smooth closed edge: an ellipse, or cubics through points about one."""
    if rnd.random() < 0.4:
        rx, ry = tidy(rnd.uniform(120, 200)), tidy(rnd.uniform(80, 120))
        tips = [(rx, 0.0), (0.0, ry), (-rx, 0.0), (0.0, -ry)]
        return [[("A", tips[i], rx, ry, 0, 0, 1, tips[(i + 1) % 4]) for i in range(4)]]
    n = 8
    at = [2 * math.pi * i / n for i in range(n)]
    pts = [polar(rnd.uniform(140, 160), t) for t in at]
    segs = []
    for i in range(n):
        before, a, b, after = (pts[(i + k) % n] for k in (-1, 0, 1, 2))
        c1 = tidy(a[0] + (b[0] - before[0]) / 6), tidy(a[1] + (b[1] - before[1]) / 6)
        c2 = tidy(b[0] - (after[0] - a[0]) / 6), tidy(b[1] - (after[1] - a[1]) / 6)
        segs.append(("C", a, c1, c2, b))
    return [segs]


MITRED, ROUND = 2, 1

regions = [drawn(name, edges) for name, edges in DRAWN.items()]
regions += [figures(f"star {i}", star(), [roving(), roving()]) for i in range(200)]
offsets = [offset(f"{name} {d:+}", edges, d, MITRED) for name, edges in DRAWN.items() for d in (-6, 6, 15)]
for i in range(30):
    edges, d = gentle(), tidy(rnd.uniform(3, 20))
    offsets += [offset(f"gentle {i} {d:+}", edges, d, MITRED), offset(f"gentle {i} {-d:+}", edges, -d, MITRED)]
for i in range(20):
    edges, d = rounded(), tidy(rnd.uniform(3, 20))
    offsets += [offset(f"rounded {i} {d:+}", edges, d, ROUND), offset(f"rounded {i} {-d:+}", edges, -d, ROUND)]
offsets = [o for o in offsets if o]


def digits(x):
    if isinstance(x, float):
        return round(x, 6)
    if isinstance(x, dict):
        return {k: digits(v) for k, v in x.items()}
    return [digits(v) for v in x] if isinstance(x, (list, tuple)) else x


by = {"shapely": shapely.__version__, "GEOS": ".".join(map(str, shapely.geos.geos_version))}
with open(os.path.join(os.path.dirname(os.path.abspath(__file__)), "regions.json"), "w") as out:
    lines = [f'"by": {json.dumps(by)}']
    for key, rows in (("regions", regions), ("offsets", offsets)):
        lines.append(f'"{key}": [\n' + ",\n".join(json.dumps(digits(r), separators=(",", ":")) for r in rows) + "\n]")
    out.write("{" + ",\n".join(lines) + "}\n")
