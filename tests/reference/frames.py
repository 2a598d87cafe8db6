"""Reference answers for plane frames, for the comparison test.

Random post-and-beam frames with knee braces (invented numbers, fixed seed) are solved by two general structural
libraries: openseespy, with every member cut into short elements at its load breaks and stations, and PyNiteFEA, with
whole members. Both must agree before anything is written. PyNiteFEA has no rigid links: it is given stiff bars in their
place, once and once more twice as stiff, and what a bar without end would do follows from both, since the error goes with
1/stiffness. Nothing is shared with the calculation library.

Inches and pounds. x along, z up; reactions and movements along x, along z, counter-clockwise. Member values: N tension
positive, V = dM/ds, M positive when it stretches the side to the right of from -> to, d square to the member, to its left.
Run `python frames.py`; it rewrites `frames.json` beside itself. `python frames.py --time` measures one frame instead.
"""

import json
import math
import random
import sys
import time
from importlib.metadata import version
from pathlib import Path

import openseespy.opensees as ops
from Pynite import FEModel3D

SEED = 314159
N_FRAMES = 500
AGREE = 1e-6
MAX_BYTES = 1_500_000
E = 1.3e6
# Area and second moment of area: 8x8 post, 8x10 beam, 4x6 brace.
SECTIONS = [(64.0, 341.3333), (80.0, 666.6667), (24.0, 72.0)]
POST, BEAM, BRACE = 0, 1, 2
# How many times as stiff as its section the bar is that stands for a rigid link where a library has none: the square of
# its error is below the comparison, and so is the rounding.
STIFF = 1000.0


class Frame:
    """nodes [x, z]; supports [node, x, z, rotation, settlement x, settlement z]; ground [node, kx, kz, kr];
    members dicts; loads [member, at, x, z], [member, from, to, x1, x2, z1, z2]; forces [node, x, z, moment]."""

    def __init__(self):
        self.nodes, self.supports, self.ground, self.members = [], [], [], []
        self.points, self.spreads, self.forces = [], [], []

    def node(self, x, z):
        self.nodes.append([x, z])
        return len(self.nodes) - 1

    def member(self, start, end, section, hinges=(0, 0), acts=0, spring=0, rigid=0):
        self.members.append(dict(start=start, end=end, section=section, hinges=hinges, acts=acts, spring=spring, rigid=rigid))
        return len(self.members) - 1

    def length(self, m):
        (x1, z1), (x2, z2) = (self.nodes[self.members[m][k]] for k in ("start", "end"))
        return math.hypot(x2 - x1, z2 - z1)

    def direction(self, m):
        (x1, z1), (x2, z2) = (self.nodes[self.members[m][k]] for k in ("start", "end"))
        return (x2 - x1) / self.length(m), (z2 - z1) / self.length(m)

    def axial_area(self, m):
        """Area that makes the bar as soft as bar and end springs in series: 1/k = L/EA + 2/spring."""
        member, area = self.members[m], SECTIONS[self.members[m]["section"]][0]
        if not member["spring"]:
            return area
        length = self.length(m)
        return length / E / (length / (E * area) + 2.0 / member["spring"])

    def is_loaded(self, m):
        return any(load[0] == m for load in self.points + self.spreads)


# ---- random frames ---------------------------------------------------------


def draw_frame(rng, index):
    frame = Frame()
    draw = lambda low, high: round(rng.uniform(low, high) * 4) / 4
    has_link = index % 8 == 0
    acts = rng.choice([1, 2]) if index % 4 == 1 else 0
    spring = rng.choice([0, 0, 20000, 50000, 1000000]) if index % 3 else 0
    top, n_posts = 112.0, rng.choice([2, 2, 3, 3, 4])
    xs = [draw(0, 20)]
    for _ in range(n_posts - 1):
        xs.append(xs[-1] + draw(96, 170))
    end = xs[-1] + draw(6, 24)
    line = {0.0: None, end: None}
    posts, braces = [], []
    for p, x in enumerate(xs):
        head = frame.node(x, top)
        line[x] = head
        foot = frame.node(x + (draw(-10, 10) if rng.random() < 0.1 else 0), top - draw(80, 108))
        below = frame.node(x, top - 5) if has_link else head
        if has_link:
            frame.member(below, head, BEAM, rigid=1)
        down, along = draw(20, 40), draw(20, 40)
        share = down / (top - frame.nodes[foot][1])
        knee = frame.node(round(x + (frame.nodes[foot][0] - x) * share, 3), top - down)
        frame.member(foot, knee, POST)
        posts.append(frame.member(knee, below, POST, (0, 1)))
        draw_base(frame, rng, foot)
        for side in (-1, 1):
            at = x + side * along
            if 0 < at < end and not any(abs(at - other) < 4 for other in line) and rng.random() < 0.85:
                line[at] = frame.node(at, top)
                braces.append((knee, line[at]))
    # A scarf: one hinge in the beam, off every post.
    hinge = None
    if rng.random() < 0.5:
        hinge = draw(xs[0] + 44, xs[-1] - 44)
        if all(abs(hinge - at) > 4 for at in line):
            line[hinge] = frame.node(hinge, top)
        else:
            hinge = None
    for at in (0.0, end):
        if line[at] is None:
            line[at] = frame.node(at, top)
    places = sorted(line)
    beams = [frame.member(line[a], line[b], BEAM, (0, int(b == hinge))) for a, b in zip(places, places[1:])]
    knees = [frame.member(a, b, BRACE, (1, 1), acts, spring) for a, b in braces]
    draw_loads(frame, rng, beams, knees if not acts and not spring else [])
    return frame


def draw_base(frame, rng, foot):
    sinks = -0.25 if rng.random() < 0.2 else 0.0
    kind = rng.random()
    if kind < 0.15 and not sinks:
        frame.supports.append([foot, 1, 0, 0, 0.0, 0.0])
        frame.ground.append([foot, 0, rng.choice([20000, 100000]), 0])
    elif kind < 0.3:
        frame.supports.append([foot, 1, 1, 1, 0.0, sinks])
    else:
        frame.supports.append([foot, 1, 1, 0, 0.0, sinks])


def place(rng, length, offset):
    """A place on a 4 in grid: breaks lie apart, for elements a hundredth of an inch long would eat openseespy's digits."""
    if length < 12:
        return length / 2 if offset == 0 else length / 4
    return 4.0 * rng.randint(1, int((length - 3) / 4) - 1) + offset


def draw_loads(frame, rng, beams, loadable):
    for beam in beams:
        length = frame.length(beam)
        if rng.random() < 0.6:
            frame.points.append([beam, place(rng, length, 0), round(rng.uniform(-200, 200)), -round(rng.uniform(100, 2500))])
        if rng.random() < 0.5:
            a, b = sorted(place(rng, length, 0) for _ in "ab")
            a, b = (0.0, length) if rng.random() < 0.4 else (a, b)
            if b - a > 1:
                frame.spreads.append([beam, a, b, 0, 0, -round(rng.uniform(0, 40), 1), -round(rng.uniform(0, 40), 1)])
    for post in [m for m, member in enumerate(frame.members) if member["section"] == POST and rng.random() < 0.3]:
        wind = [round(rng.uniform(-3, 3), 2) for _ in "ab"]
        frame.spreads.append([post, 0.0, frame.length(post), *wind, -0.5, -0.5])
    for brace in [m for m in loadable if rng.random() < 0.3]:
        frame.spreads.append([brace, 0.0, frame.length(brace), 0.1, 0, -0.6, -0.4])
    if rng.random() < 0.7:
        node = frame.members[beams[0]]["start"]
        frame.forces.append([node, round(rng.uniform(-2000, 2000)), round(rng.uniform(-500, 500)), round(rng.uniform(-5000, 5000))])


# ---- openseespy ------------------------------------------------------------


def turning_nodes(frame, active):
    turns = set()
    for m, member in enumerate(frame.members):
        if active[m]:
            turns |= {member[k] for k, hinge in zip(("start", "end"), member["hinges"]) if not hinge}
    return turns


def solve_opensees(frame, active, stations):
    """Movements, reactions, member values at stations: (m, s) -> (N, V, M, d); axial force of every bar."""
    ops.wipe()
    ops.model("basic", "-ndm", 2, "-ndf", 3)
    for n, (x, z) in enumerate(frame.nodes):
        ops.node(n, x, z)
    ops.geomTransf("Linear", 1)
    held = {s[0]: list(s[1:4]) for s in frame.supports}
    for n in range(len(frame.nodes)):
        fixed = held.get(n, [0, 0, 0])
        if n not in turning_nodes(frame, active):
            fixed = [*fixed[:2], 1]
        if any(fixed):
            ops.fix(n, *fixed)
    tags = Tags(len(frame.nodes))
    for n, *stiffness in frame.ground:
        ground, x, z = tags.node(), *frame.nodes[n]
        ops.node(ground, x, z)
        ops.fix(ground, 1, 1, 1)
        mats = []
        for value in stiffness:
            mats.append(tags.material())
            ops.uniaxialMaterial("Elastic", mats[-1], float(value))
        ops.element("zeroLength", tags.element(), ground, n, "-mat", *mats, "-dir", 1, 2, 3)
    ops.timeSeries("Linear", 1)
    ops.pattern("Plain", 1, 1)
    for n, x, z, moment in frame.forces:
        ops.load(n, float(x), float(z), float(moment))
    for n, _, _, _, sx, sz in frame.supports:
        for dof, value in ((1, sx), (2, sz)):
            if value:
                ops.sp(n, dof, value)
    chains, bars = {}, {}
    for m, member in enumerate(frame.members):
        if member["rigid"]:
            ops.rigidLink("beam", member["start"], member["end"])
        elif active[m]:
            if member["hinges"] == (1, 1) and not frame.is_loaded(m):
                bars[m] = tags.element()
                material = tags.material()
                ops.uniaxialMaterial("Elastic", material, E)
                ops.element("Truss", bars[m], member["start"], member["end"], frame.axial_area(m), material)
            else:
                chains[m] = chain(frame, m, stations[m], tags)
    ops.system("UmfPack")
    ops.numberer("RCM")
    ops.constraints("Transformation")
    ops.integrator("LoadControl", 1.0)
    ops.algorithm("Linear")
    ops.analysis("Static")
    assert ops.analyze(1) == 0
    ops.reactions()
    return read_opensees(frame, active, stations, chains, bars)


class Tags:
    def __init__(self, first):
        self.counts = {"node": first, "element": 0, "material": 0}

    def next(self, kind):
        self.counts[kind] += 1
        return self.counts[kind]

    node = lambda self: self.next("node")
    element = lambda self: self.next("element")
    material = lambda self: self.next("material")


def chain(frame, m, stations, tags):
    """A member as elements between its breaks; a hinge is a second node that shares the first one's place."""
    member, length, (c, s) = frame.members[m], frame.length(m), frame.direction(m)
    x0, z0 = frame.nodes[member["start"]]
    points = [load for load in frame.points if load[0] == m]
    spreads = [load for load in frame.spreads if load[0] == m]
    breaks = {0.0, length, *stations, *(p[1] for p in points)}
    breaks |= {place for spread in spreads for place in spread[1:3]}
    breaks = sorted(breaks)
    nodes = [end_node(frame, member["start"], member["hinges"][0], tags)]
    for at in breaks[1:-1]:
        nodes.append(tags.node())
        ops.node(nodes[-1], x0 + at * c, z0 + at * s)
    nodes.append(end_node(frame, member["end"], member["hinges"][1], tags))
    for _, at, fx, fz in points:
        ops.load(nodes[breaks.index(at)], float(fx), float(fz), 0.0)
    area, inertia = SECTIONS[member["section"]]
    pieces = []
    for i, (a, b) in enumerate(zip(breaks, breaks[1:])):
        tag = tags.element()
        ops.element("elasticBeamColumn", tag, nodes[i], nodes[i + 1], area, E, inertia, 1)
        for _, start, end, x1, x2, z1, z2 in spreads:
            if start <= a and b <= end:
                at = lambda s, p, q: p + (q - p) * (s - start) / (end - start)
                (xa, xb), (za, zb) = ([at(s, p, q) for s in (a, b)] for p, q in ((x1, x2), (z1, z2)))
                turn = lambda x, z: (z * c - x * s, x * c + z * s)
                (ya, pa), (yb, pb) = turn(xa, za), turn(xb, zb)
                ops.eleLoad("-ele", tag, "-type", "-beamUniform", ya, pa, 0.0, 1.0, yb, pb)
        pieces.append((a, b, tag, nodes[i], nodes[i + 1]))
    return pieces


def end_node(frame, node, hinge, tags):
    if not hinge:
        return node
    twin = tags.node()
    ops.node(twin, *frame.nodes[node])
    ops.equalDOF(node, twin, 1, 2)
    return twin


def read_opensees(frame, active, stations, chains, bars):
    turns = turning_nodes(frame, active)
    moved = [[*ops.nodeDisp(n)[:2], ops.nodeDisp(n)[2] if n in turns else None] for n in range(len(frame.nodes))]
    given = [[0.0, 0.0, 0.0] for _ in frame.nodes]
    for n, x, z, r, _, _ in frame.supports:
        given[n] = [value if held else 0.0 for value, held in zip(ops.nodeReaction(n), (x, z, r))]
    for n, kx, kz, kr in frame.ground:
        for i, k in enumerate((kx, kz, kr)):
            given[n][i] -= k * moved[n][i] if k else 0.0
    values, axial = {}, {}
    for m, pieces in chains.items():
        c, s = frame.direction(m)
        left = lambda node: ops.nodeDisp(node)[1] * c - ops.nodeDisp(node)[0] * s
        for a, b, tag, _, end in pieces:
            if b in stations[m]:
                forces = ops.eleResponse(tag, "localForce")
                values[m, b] = [forces[3], -forces[4], forces[5], left(end)]
    for m, tag in bars.items():
        axial[m] = ops.eleResponse(tag, "axialForce")[0]
        c, s = frame.direction(m)
        left = [ops.nodeDisp(frame.members[m][k])[1] * c - ops.nodeDisp(frame.members[m][k])[0] * s for k in ("start", "end")]
        for at in stations[m]:
            values[m, at] = [axial[m], 0.0, 0.0, left[0] + (left[1] - left[0]) * at / frame.length(m)]
    return moved, given, values, axial


def settle_one_way(frame, stations):
    """The one-way members that have let go: dropped and taken back until none is asked for what it cannot give."""
    active, seen = [True] * len(frame.members), set()
    while tuple(active) not in seen:
        seen.add(tuple(active))
        moved, given, values, axial = solve_opensees(frame, active, stations)
        largest = max((abs(force) for force in axial.values()), default=0.0)
        changed = list(active)
        for m, member in enumerate(frame.members):
            if member["acts"]:
                c, s = frame.direction(m)
                a, b = (moved[member[k]] for k in ("start", "end"))
                longer = ((b[0] - a[0]) * c + (b[1] - a[1]) * s) * E * frame.axial_area(m) / frame.length(m)
                if abs(longer) > 1e-7 * largest:
                    changed[m] = (longer < 0) == (member["acts"] == 1)
                else:
                    return None  # too near to nothing to be a fair question
        if changed == active:
            return active, moved, given, values
        active = changed
    return None


# ---- PyNiteFEA -------------------------------------------------------------


def build_pynite(frame, active, stiff):
    model = FEModel3D()
    model.add_material("wood", E, 5e5, 0.3, 0.0)
    for n, (x, z) in enumerate(frame.nodes):
        model.add_node(str(n), x, z, 0.0)
    held = {s[0]: s[1:4] for s in frame.supports}
    turns = turning_nodes(frame, active)
    for n in range(len(frame.nodes)):
        x, z, r = held.get(n, (0, 0, 0))
        model.def_support(str(n), bool(x), bool(z), True, True, True, bool(r) or n not in turns)
    for n, _, kz, _ in frame.ground:
        model.def_support_spring(str(n), "DY", kz)
    for n, _, _, _, _, sz in frame.supports:
        if sz:
            model.def_node_disp(str(n), "DY", sz)
    for m, member in enumerate(frame.members):
        if active[m]:
            times = stiff if member["rigid"] else 1.0
            inertia = SECTIONS[member["section"]][1]
            model.add_section(f"s{m}", frame.axial_area(m) * times, 500.0, inertia * times, 100.0)
            model.add_member(str(m), str(member["start"]), str(member["end"]), "wood", f"s{m}")
            model.def_releases(str(m), Rzi=bool(member["hinges"][0]), Rzj=bool(member["hinges"][1]))
    for m, at, x, z in frame.points:
        model.add_member_pt_load(str(m), "FX", x, at)
        model.add_member_pt_load(str(m), "FY", z, at)
    for m, a, b, x1, x2, z1, z2 in frame.spreads:
        model.add_member_dist_load(str(m), "FX", x1, x2, a, b)
        model.add_member_dist_load(str(m), "FY", z1, z2, a, b)
    for n, x, z, moment in frame.forces:
        for way, value in (("FX", x), ("FY", z), ("MZ", moment)):
            model.add_node_load(str(n), way, value)
    return model


def turned(frame, model, m):
    """+1 where PyNite's second axis points to the left of the member, else -1."""
    c, s = frame.direction(m)
    axis = model.members[str(m)].T()[1, 0:2]
    return 1.0 if axis[0] * -s + axis[1] * c > 0 else -1.0


def solve_pynite(frame, active, stations):
    once = solve_stiff(frame, active, stations, STIFF)
    if not any(member["rigid"] for member in frame.members):
        return once
    return without_end(once, solve_stiff(frame, active, stations, 2.0 * STIFF))


def without_end(once, twice):
    """What stiffness without end gives, from what one and twice as much give."""
    if isinstance(once, dict):
        return {key: without_end(once[key], twice[key]) for key in once}
    if isinstance(once, (list, tuple)):
        return [without_end(a, b) for a, b in zip(once, twice)]
    return 2.0 * twice - once


def solve_stiff(frame, active, stations, stiff):
    model = build_pynite(frame, active, stiff)
    model.analyze_linear(check_stability=False)
    nodes, combo = model.nodes, "Combo 1"
    moved = [[nodes[str(n)].DX[combo], nodes[str(n)].DY[combo], nodes[str(n)].RZ[combo]] for n in range(len(frame.nodes))]
    given = [[nodes[str(n)].RxnFX[combo], nodes[str(n)].RxnFY[combo], nodes[str(n)].RxnMZ[combo]] for n in range(len(frame.nodes))]
    values, extremes = {}, {}
    for m in range(len(frame.members)):
        if active[m]:
            member, sign = model.members[str(m)], turned(frame, model, m)
            for s in stations[m]:
                values[m, s] = [-member.axial(s), sign * member.shear("Fy", s), -sign * member.moment("Mz", s), sign * member.deflection("dy", s)]
            if frame.is_loaded(m):
                pair = (-sign * member.max_moment("Mz"), -sign * member.min_moment("Mz"))
                extremes[m] = (min(pair), max(pair))
    return moved, given, values, extremes


# ---- both together ---------------------------------------------------------


def largest(rows, column):
    return max((abs(row[column] or 0.0) for row in rows), default=0.0)


def agreement(one, other, turns):
    """The worst difference, as a share of the largest value of its kind."""
    worst = 0.0
    for a, b, kinds in ((one[0], other[0], ((0, 1), (2,))), (one[1], other[1], ((0, 1), (2,))),
                        (list(one[2].values()), [other[2][k] for k in one[2]], ((0,), (1,), (2,), (3,)))):
        for kind in kinds:
            scale = max(largest(a, column) for column in kind)
            for column in kind:
                for row, (p, q) in enumerate(zip(a, b)):
                    if p[column] is not None and scale > 0:
                        worst = max(worst, abs(p[column] - q[column]) / scale)
    return worst


def nine(value):
    if value is None:
        return None
    value = float(f"{value:.9g}") + 0.0
    return int(value) if value == int(value) and abs(value) < 1e9 else value


def nines(rows):
    return [[nine(value) if not isinstance(value, list) else value for value in row] for row in rows]


def case(rng, index):
    while True:
        frame = draw_frame(rng, index)
        stations = [[place(rng, frame.length(m), 2)] for m in range(len(frame.members))]
        try:
            settled = settle_one_way(frame, stations)
        except AssertionError:
            continue
        # Drawn hinges can make a mechanism, which a library may solve into nonsense.
        if settled and max(largest(settled[1], 0), largest(settled[1], 1)) < 10.0:
            break
    active, moved, given, values = settled
    other = solve_pynite(frame, active, stations)
    worst, extremes = agreement((moved, given, values), other, None), other[3]
    assert worst <= AGREE, (index, worst)
    members = [[m["start"], m["end"], m["section"], *m["hinges"], m["acts"], m["spring"], m["rigid"]] for m in frame.members]
    entry = {
        "nodes": frame.nodes, "supports": frame.supports, "ground": frame.ground, "members": members,
        "points": frame.points, "spreads": frame.spreads, "forces": frame.forces,
        "dropped": [m for m, is_active in enumerate(active) if not is_active],
        "moved": nines(moved), "given": nines([[n, *given[n]] for n in sorted({s[0] for s in frame.supports})]),
        "at": nines([[m, s, *row] for (m, s), row in values.items()]),
        "moment_range": nines([[m, *pair] for m, pair in extremes.items()]),
    }
    return entry, worst


def main():
    rng = random.Random(SEED)
    cases, worsts = [], []
    for index in range(N_FRAMES):
        entry, worst = case(rng, index)
        cases.append(entry)
        worsts.append(worst)
    n_members = sum(len(entry["members"]) for entry in cases)
    head = {
        "source": f"openseespy {version('openseespy')}, PyNiteFEA {version('PyNiteFEA')}, generator frames.py seed {SEED}",
        "e_psi": E, "sections_in2_in4": SECTIONS, "n_frames": N_FRAMES, "n_by_both": len(worsts), "n_members": n_members,
        "n_dropping": sum(bool(entry["dropped"]) for entry in cases), "worst_difference": nine(max(worsts)),
    }
    lines = ",\n".join(json.dumps(entry, separators=(",", ":")) for entry in cases)
    text = json.dumps(head, indent=1)[:-2] + ',\n "frames": [\n' + lines + "\n]}\n"
    assert len(text) <= MAX_BYTES, len(text)
    Path(__file__).with_name("frames.json").write_text(text)
    print(head, len(text))


def bench_frame():
    """20 nodes, 25 members: the frame of the project's own benchmark. Four posts, six braces, fifteen beam and post lengths."""
    frame = Frame()
    xs, top = [0.0, 120.0, 240.0, 360.0], 96.0
    feet = [frame.node(x, 0.0) for x in xs]
    knees = [frame.node(x, 60.0) for x in xs]
    places = [0.0, 36.0, 60.0, 84.0, 120.0, 156.0, 204.0, 240.0, 276.0, 300.0, 324.0, 360.0]
    line = [frame.node(x, top) for x in places]
    heads = [line[places.index(x)] for x in xs]
    for foot, knee, head in zip(feet, knees, heads):
        frame.member(foot, knee, POST)
        frame.member(knee, head, POST, (0, 1))
    beams = [frame.member(a, b, BEAM) for a, b in zip(line, line[1:])]
    for knee, place in ((0, 36.0), (1, 84.0), (1, 156.0), (2, 204.0), (2, 276.0), (3, 324.0)):
        frame.member(knees[knee], line[places.index(place)], BRACE, (1, 1))
    frame.supports = [[foot, 1, 1, 0, 0.0, 0.0] for foot in feet]
    for beam in beams:
        frame.spreads.append([beam, 0.0, frame.length(beam), 0, 0, -20.0, -30.0])
        frame.points.append([beam, frame.length(beam) / 2 - 1, 0, -700])
    frame.forces = [[line[0], 500, 0, 0]]
    return frame


def measure():
    frame = bench_frame()
    assert (len(frame.nodes), len(frame.members)) == (20, 25), (len(frame.nodes), len(frame.members))
    active, stations = [True] * 25, [[] for _ in frame.members]
    for name, solve in (("openseespy", solve_opensees), ("PyNiteFEA", solve_pynite)):
        times = []
        for _ in range(30 if solve is solve_opensees else 10):
            start = time.perf_counter()
            solve(frame, active, stations)
            times.append(time.perf_counter() - start)
        print(f"{name}: median {sorted(times)[len(times) // 2] * 1e3:.2f} ms, best {min(times) * 1e3:.2f} ms")


if __name__ == "__main__":
    measure() if "--time" in sys.argv else main()
