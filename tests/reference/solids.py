"""Reference volumes, centres and overlaps of solids, for the comparison test.

The example's sticks (stick_solids.py), 200 joints of two sticks at random
places and turns, and 50 convex bodies moved through a room with something in
it, all cut by the boolean operations of a general solid library (manifold3d).
The joints are invented, the seed is fixed; sizes are rounded before they are
used, so both sides cut the same.

Inches. Run `python solids.py`; it rewrites `solids.json` beside itself and stops
at the first check that does not hold. `--time` measures the joints.
"""

import json
import math
import random
import sys
import time
from pathlib import Path

import numpy as np
from manifold3d import Manifold

from stick_solids import block, drawn_out, example, measured, moments, round_hole, rounded, united

SEED = 314159
N_JOINTS, N_SWEEPS = 200, 50
MAX_BYTES = 300_000
NOTHING = 1e-9  # an overlap below this is the arithmetic's, in cubic inches
ASIDE = 7.0  # how far a cutting body reaches past the wood


# ---- numbers and bodies as the file has them -------------------------------


def draw(rng, low, high, grid=16):
    return rng.randint(math.ceil(low * grid), math.floor(high * grid)) / grid


def short(values, digits=4):
    return [round(float(value), digits) + 0.0 for value in values]


def box(x, y, z):
    return {"box": [x[0], y[0], z[0], x[1], y[1], z[1]]}


def prism(axis, outline, low, high, digits=4):
    return {"axis": axis, "outline": [short(corner, digits) for corner in outline], "depths": [low, high]}


def hole(start, end, diameter):
    return {"hole": [*short(start), *short(end), diameter]}


def quaternion(rng, most=math.pi):
    """A turn by up to `most` about a random line; not of length one until it is used."""
    axis = np.array([rng.gauss(0, 1) for _ in range(3)])
    half = rng.uniform(-most, most) / 2
    return short([math.cos(half), *(axis / np.linalg.norm(axis) * math.sin(half))])


def turn(q):
    w, x, y, z = np.array(q) / np.linalg.norm(q)
    return np.array(
        [
            [1 - 2 * (y * y + z * z), 2 * (x * y - w * z), 2 * (x * z + w * y)],
            [2 * (x * y + w * z), 1 - 2 * (x * x + z * z), 2 * (y * z - w * x)],
            [2 * (x * z - w * y), 2 * (y * z + w * x), 1 - 2 * (x * x + y * y)],
        ]
    )


def placed(body, q, by):
    return body.transform(np.column_stack([turn(q), by]))


def made(body):
    if "box" in body:
        return block(body["box"][:3], body["box"][3:])
    if "hole" in body:
        return round_hole(body["hole"][:3], body["hole"][3:6], body["hole"][6])
    return drawn_out(body["outline"], body["axis"], *body["depths"])


def wood(stick):
    stock = united([made(body) for body in stick["stock"]])
    return stock - united([made(body) for body in stick["cuts"]])


# ---- joints: two sticks that only fit --------------------------------------


def tenon(rng):
    """A post's head under a beam: housing, blind mortise, one to three drawbored pegs."""
    w, d, beam = draw(rng, 5, 9), draw(rng, 5, 9), draw(rng, 7, 8)
    across, thick = (draw(rng, 0, 1.5), w - draw(rng, 0, 1.5)), draw(rng, 1.5, 2.5)
    face, long, deep = draw(rng, 1, 2), draw(rng, 3, 5), draw(rng, 0, 1)
    cheeks = (face, face + thick)
    cuts = [box((-ASIDE, w + ASIDE), out, (0, long + ASIDE)) for out in ((-ASIDE, face), (face + thick, d + ASIDE))]
    cuts += [box(out, (0, d), (0, long)) for out in ((-ASIDE, across[0]), (across[1], w + ASIDE))]
    slack = rng.choice([0, 0.0625])
    beam_cuts = [box((0, w), (0, d), (-deep, 0)), box((across[0] - slack, across[1] + slack), cheeks, (0, long + 0.25))]
    for n in range(rng.randint(1, 3)):
        x, z = across[0] + (n + 0.5) * (across[1] - across[0]) / 3, 1.5
        cuts.append(hole((x, -1, z - 0.125), (x, d + 1, z - 0.125), 0.75))
        beam_cuts.append(hole((x, -1, z), (x, d + 5, z), 0.75))
    return [
        {"stock": [box((0, w), (0, d), (-30, long))], "cuts": cuts},
        {"stock": [box((-20, 20), (0, d + draw(rng, 0, 2)), (-deep, beam))], "cuts": beam_cuts},
    ]


def crossing(rng):
    """Two sticks halved over each other at an angle, their floors in one plane; some with a tail that widens."""
    half, across, h, angle = draw(rng, 2, 4), draw(rng, 2, 4), draw(rng, 4, 8), rng.uniform(0.3, 2.8)
    along, aside = np.array((math.cos(angle), math.sin(angle))), np.array((-math.sin(angle), math.cos(angle)))
    wide = across * rng.choice([1, 1, 0.7])
    outline = [-24 * along - wide * aside, 24 * along - across * aside, 24 * along + across * aside, -24 * along + wide * aside]
    floor = draw(rng, 1.5, h - 1.5)
    return [
        {"stock": [box((-40, 40), (-half, half), (0, h))], "cuts": [prism("z", outline, floor, h)]},
        {"stock": [prism("z", outline, 0, h)], "cuts": [box((-40, 40), (-half, half), (0, floor))]},
    ]


def scarf(rng):
    """Halved or splayed, square or squinted, plain or with a table and wedges; drawn as outlines or cut from boxes."""
    depth, lap, b = draw(rng, 6, 8), draw(rng, 20, 48), draw(rng, 5, 9)
    high = depth / 2 if rng.random() < 0.3 else draw(rng, 1.5, depth / 3)
    squint = rng.choice([0, 0.25, 0.5])
    fall, table, gap = (depth - 2 * high) / lap, 0, 0
    if high < depth / 2 and rng.random() < 0.5:
        # A fall in sixteenths and a lap in inches: every corner is a decimal of eight places, so the faces meet.
        lap, fall, gap = rng.randint(12, 24) * 2, rng.choice([0.0625, 0.125]), draw(rng, 0.25, 1, 8)
        table = draw(rng, 0.25, fall * lap / 2)
        depth = 2 * high + fall * lap - table
    faces = []
    for way in (1, -1):
        face = [(lap - squint, 0), (lap, high)]
        if table:
            x = lap / 2 + way * gap / 2
            face += [(x, depth - high - x * fall + table), (x, depth - high - x * fall)]
        faces.append([*face, (0, depth - high), (squint, depth)])
    lower, upper = faces
    pegs = [hole((x, -1, depth / 2), (x, b + 1, depth / 2), 0.75) for x in short((lap * 0.3, lap * 0.7), 2)]
    if rng.random() < 0.5:
        ends = [[(-10, 0), *lower, (-10, depth)], [(lap + 10, 0), *upper, (lap + 10, depth)]]
        return [{"stock": [prism("y", end, 0, b, 8)], "cuts": pegs} for end in ends]
    waste = [*lower, (lap + 1, depth), (lap + 1, 0)], [*upper, (-1, depth), (-1, 0)]
    stock = box((-10, lap), (0, b), (0, depth)), box((0, lap + 10), (0, b), (0, depth))
    return [{"stock": [whole], "cuts": [prism("y", part, 0, b, 8), *pegs]} for whole, part in zip(stock, waste)]


def birds_mouth(rng):
    """A rafter over a beam, its notch cut by the quadrant under the seat and behind the heel."""
    tan, d, b, seat = draw(rng, 1, 8) / 12, draw(rng, 5, 9), draw(rng, 2, 4), draw(rng, 1.5, 3.5)
    plumb = d * math.hypot(1, tan)
    under = [(-40, (40 - seat) * tan), (20, -(20 + seat) * tan)]
    outline = [*under, (20, under[1][1] + plumb), (-40, under[0][1] + plumb)]
    return [
        {"stock": [prism("x", outline, 0, b)], "cuts": [box((-1, b + 1), (-30, 0), (-40, 0))]},
        {"stock": [box((-20, 20), (-draw(rng, 6, 9), 0), (-10, 0))], "cuts": [box((0, b), (-2, 0), (-0.25, 0))] * rng.randint(0, 1)},
    ]


def knee(rng):
    """A brace let into a post: housing with a nose, mortise, bare-faced or not, pegged."""
    angle, leg, width, p = rng.uniform(0.6, 0.95), 36.0, draw(rng, 4, 6), draw(rng, 0.25, 0.75)
    t, rise, b = 1 / math.tan(angle), width / math.sin(angle), draw(rng, 3, 4)
    floor, face, slack = -leg + p * t + p / t, -leg + p * t, 0.25
    short_edge, long, far = -leg + rise, 2.5, 20.0
    body = [(0, floor), (p, face), (far, -leg + far * t), (far, short_edge + far * t), (0, short_edge)]
    entering = [(0, floor), (0, short_edge), (-long, max(short_edge - long * t, floor + 0.0625)), (-long, floor)]
    housing = [(0, floor), (p, face), (p, short_edge + p * t + slack), (0, short_edge + slack)]
    mortise = [(0, floor), (0, short_edge + slack), (-long - 0.25, short_edge + slack), (-long - 0.25, floor)]
    inner, middle = b - rng.choice([0, 1]), (floor + short_edge) / 2
    low = 1 if inner > 2 else 0
    return [
        {
            "stock": [prism("y", body, 0, b), prism("y", entering, low, inner)],
            "cuts": [hole((-1.375, -1, middle + 0.125), (-1.375, b + 1, middle + 0.125), 0.75)],
        },
        {
            "stock": [box((-8 + p, p), (-2, b + 2), (-60, 0))],
            "cuts": [prism("y", housing, 0, b), prism("y", mortise, low, inner), hole((-1.5, -3, middle), (-1.5, b + 3, middle), 0.75)],
        },
    ]


def bored(rng):
    """Two sticks face to face: slanting holes through both, round hollows over their edges, each with its own sixteen corners."""
    w, one, two = draw(rng, 4, 8), draw(rng, 4, 8), draw(rng, 4, 8)
    first, second = [], []
    for n in range(rng.randint(1, 4)):
        x = -16 + 9 * n
        slant = rng.uniform(-2, 2)
        line = (x - slant, w / 2, -two - 2), (x + slant, w / 2, one + 2)
        first.append(hole(*line, 0.75))
        second.append(hole(*line, 1))
    for n in range(rng.randint(1, 2)):
        centre, radius, turned = (-14 + 15 * n, rng.uniform(-1, 1)), rng.uniform(0.5, 3), rng.uniform(0, 1)
        ring = [(centre[0] + radius * math.cos(turned + k * math.pi / 8), centre[1] + radius * math.sin(turned + k * math.pi / 8)) for k in range(16)]
        (first if n else second).append(prism("y", ring, -1, draw(rng, 1, w + 1)))
    return [
        {"stock": [box((-22, 22), (0, w), (0, one))], "cuts": first},
        {"stock": [box((-22, 22), (0, w), (-two, 0))], "cuts": second},
    ]


def dovetail(rng):
    """A tail let down into its socket, its shoulders and floor in the planes of the sticks."""
    w, h, deep, flare = draw(rng, 4, 8), draw(rng, 6, 10), draw(rng, 2, 4), draw(rng, 0.25, 1)
    floor = draw(rng, 2, h - 2)
    tail = [(0, flare), (0, w - flare), (deep, w), (deep, 0)]
    beside = [[(0, -1), (0, flare), (deep, 0), (deep, -1)], [(0, w + 1), (0, w - flare), (deep, w), (deep, w + 1)]]
    cuts = [prism("z", part, 0, h) for part in beside] + [box((0, deep), (0, w), (0, floor))]
    return [
        {"stock": [box((-20, deep), (0, w), (0, h))], "cuts": cuts},
        {"stock": [box((0, 8), (-15, w + 15), (0, h))], "cuts": [prism("z", tail, floor, h)]},
    ]


def riddled(rng):
    """Many cuts whose faces lie in a few planes: they touch, overlap, repeat each other; a rail through some of them."""
    grid = lambda low, high: rng.sample(range(low, high + 1), 2)  # noqa: E731
    cuts = [box(sorted(grid(-10, 10)), sorted(grid(-1, 5)), sorted(grid(-1, 5))) for _ in range(rng.randint(8, 14))]
    cuts = [{"box": [max(-12, v) for v in cut["box"]]} for cut in cuts]
    return [
        {"stock": [box((-12, 8), (0, 4), (0, 4))], "cuts": cuts},
        {"stock": [box((-12, 8), (-3, rng.randint(1, 3)), (rng.randint(0, 1), rng.randint(2, 4)))], "cuts": []},
    ]


KINDS = [tenon, crossing, scarf, birds_mouth, knee, bored, dovetail, riddled]
STILL = [1, 0, 0, 0]


def joint(rng, kind):
    case = {"kind": kind.__name__, "sticks": kind(rng)}
    straight = rng.random() < 0.2
    case["turn"] = rng.choice([STILL, [1, 1, 0, 0], [1, 1, 1, 1]]) if straight else quaternion(rng)
    case["move"] = [draw(rng, -200, 200) for _ in range(3)]
    chance = rng.random()
    if chance < 0.5:
        # One of the sticks a hair, a sixteenth or half an inch from its place.
        step = rng.choice([1e-5, 1e-3, 0.0625, 0.5])
        case["slip"] = short([rng.choice([-1, 0, 1]) * step for _ in range(3)], 6)
    if chance < 0.2:
        case["twist"] = quaternion(rng, rng.choice([0.002, 0.05, 3]))
    return case


def sticks_of(case):
    one, two = (wood(stick) for stick in case["sticks"])
    two = placed(two, case.get("twist", STILL), case.get("slip", [0, 0, 0]))
    return [placed(stick, case["turn"], case["move"]) for stick in (one, two)]


def overlap(one, two):
    shared = (one ^ two).volume()
    return rounded(shared) if shared > NOTHING else 0.0


def joint_answer(case):
    one, two = sticks_of(case)
    out = {"sticks": [measured(one), measured(two)], "overlap_in3": overlap(one, two)}
    if "slip" not in case and case["kind"] != "riddled":
        assert out["overlap_in3"] == 0.0, (case["kind"], out["overlap_in3"])
    return out


# ---- bodies moved through a room -------------------------------------------


def moved_body(rng):
    n = rng.randint(3, 9)
    angles = sorted(rng.uniform(0, 2 * math.pi / n * 0.4) + 2 * math.pi * k / n for k in range(n))
    outline = [short((6 * math.cos(a), 4 * math.sin(a)), 2) for a in angles]
    low, high = 0, draw(rng, 1, 20)
    planes = []
    for _ in range(rng.randint(0, 4)):
        normal = short([rng.gauss(0, 1) for _ in range(3)])
        planes.append({"place": short(np.array((0, 0, high / 2)) + np.array(normal) * rng.uniform(0.2, 2)), "normal": normal})
    edge = np.array(outline[1]) - np.array(outline[0])
    ways = [(0, 0, 7), (5, 0, 0), (*(3 * edge), 0), (*edge, -4), short([rng.uniform(-20, 20) for _ in range(3)])]
    return {
        "body": prism("z", outline, low, high),
        "planes": planes,
        "by": short(rng.choice(ways)),
        "turn": rng.choice([STILL, quaternion(rng), quaternion(rng)]),
        "other": box((draw(rng, -8, 0), draw(rng, 1, 8)), (-6, draw(rng, -5, 6)), (draw(rng, -9, 0), draw(rng, 1, 9))),
        "other_turn": rng.choice([STILL, quaternion(rng)]),
        "other_move": [draw(rng, -6, 6) for _ in range(3)],
    }


def sweep_answer(case):
    body = made(case["body"])
    for plane in case["planes"]:
        normal = np.array(plane["normal"]) / np.linalg.norm(plane["normal"])
        body = body.trim_by_plane(tuple(-normal), -float(normal @ plane["place"]))
    first = placed(body, case["turn"], [0, 0, 0])
    room = Manifold.batch_hull([first, first.translate(tuple(turn(case["turn"]) @ case["by"]))])
    other = placed(made(case["other"]), case["other_turn"], case["other_move"])
    volume, _ = moments(body)
    assert volume > 1e-3 and room.volume() >= volume - 1e-9, volume
    return {"body_in3": rounded(volume), "room_in3": rounded(room.volume()), "overlap_in3": overlap(room, other)}


# ---- the file --------------------------------------------------------------


def main():
    rng = random.Random(SEED)
    joints = [joint(rng, KINDS[index % len(KINDS)]) for index in range(N_JOINTS)]
    sweeps = [moved_body(rng) for _ in range(N_SWEEPS)]
    answer = {
        "unit": "inches",
        "seed": SEED,
        "example": example(),
        "joints": [{"in": case, "out": joint_answer(case)} for case in joints],
        "sweeps": [{"in": case, "out": sweep_answer(case)} for case in sweeps],
    }
    lines = json.dumps(answer, separators=(",", ":")).replace('{"in"', '\n{"in"')
    assert len(lines) < MAX_BYTES, len(lines)
    Path(__file__).with_name("solids.json").write_text(lines + "\n")
    clashes = sum(case["out"]["overlap_in3"] > 0 for case in answer["joints"])
    met = sum(case["out"]["overlap_in3"] > 0 for case in answer["sweeps"])
    print(f"{len(lines)} bytes; {clashes} of {N_JOINTS} joints share wood, {met} of {N_SWEEPS} rooms")


def measure():
    rng = random.Random(SEED)
    joints = [joint(rng, KINDS[index % len(KINDS)]) for index in range(N_JOINTS)]
    times = []
    for _ in range(7):
        start = time.perf_counter()
        for case in joints:
            one, two = sticks_of(case)
            one.volume(), two.volume(), (one ^ two).volume()
        times.append(time.perf_counter() - start)
    print(f"manifold3d, {N_JOINTS} joints: median {sorted(times)[3] * 1e3:.1f} ms, best {min(times) * 1e3:.1f} ms")


if __name__ == "__main__":
    measure() if "--time" in sys.argv else main()
