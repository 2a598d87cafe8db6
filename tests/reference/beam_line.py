"""Reference answers for the beam line of the example `tests/data/version-3.json`.

Built from the project file alone with PyNiteFEA, a general structural library; nothing is shared with the calculation
library. Centre lines are found by intersecting lines, rafters' reactions by moments about the ledger seat, one-way
braces by trying again until every brace does what it can. What no file holds is stated below with its source.

Run `python beam_line.py`; it rewrites `beam_line.json` beside itself. Inches and pounds; moments plus where the underside
of the beam is stretched, brace forces plus in tension, reactions plus up.
"""

import json
import math
from importlib.metadata import version
from pathlib import Path

from Pynite import FEModel3D

HERE = Path(__file__).parent
PROJECT = json.loads((HERE.parent / "data" / "version-3.json").read_text())["project"]
FRAME, ROOFING, PLACE, RULES = (PROJECT[key] for key in ("frame", "roofing", "place", "joinery"))
# Middle of the two scarfs; the file leaves their places open, so they are a given of the comparison.
SCARFS = [182.0, 314.0]
# NDS Supplement Table 4D and 4A, eastern hemlock-tamarack No.2 (from memory): 8x10 and 8x8 posts and timbers; 4x6.
E_TIMBER, E_BRACE = 0.9e6, 1.1e6
# Green weight, lb/ft3, and dry by 62.4 G/(1 + 0.009 G m) (1 + m/100) with G = 0.41, m = 12.
GREEN, DRY = 50.0, 62.4 * 0.41 / (1 + 0.009 * 0.41 * 12) * 1.12
# 29 gauge ribbed steel, psf of slope: heavy and light (makers' weights, from memory).
SHEET_HEAVY, SHEET_LIGHT = 0.7, 0.6


def size(name):
    sawn = FRAME["timbers"][name]["sawn"]
    return sawn["breadth_in"], sawn["depth_in"]


# ---- loads ------------------------------------------------------------------


class Section:
    """The roof in the section across the wall; y out from the wall face."""

    def __init__(self):
        self.tan = FRAME["heights"]["pitch_rise_per_run"]
        self.cos = 1 / math.hypot(1, self.tan)
        self.ledger = size("ledger")[0] + FRAME["ledger_packing_in"] - FRAME["ledger_seat_length_in"] / 2
        self.beam = FRAME["reach_in"] - FRAME["beam_seat_length_in"] / 2
        self.eave = FRAME["reach_in"] + FRAME["tail_in"] + ROOFING["eave_overhang_in"] * self.cos

    def upright_at_beam(self, per_inch):
        """An upright line load on plan from the wall to the eave, lb/in: its moment about the ledger seat by the span."""
        total = per_inch * self.eave
        return total * (self.eave / 2 - self.ledger) / (self.beam - self.ledger)

    def square_at_beam(self, per_inch):
        """A line load square to the slope, lb an inch of slope. Sum strips: each has an upright and a level part, each with
        its own arm about the ledger seat."""
        n, turning = 20000, 0.0
        step = self.eave / n
        for i in range(n):
            y = (i + 0.5) * step
            force = per_inch * step / self.cos
            up, level = force * self.cos, force * self.tan * self.cos
            out, drop = y - self.ledger, (y - self.ledger) * self.tan
            turning += up * out + level * drop
        return turning / (self.beam - self.ledger)


def rafter_rows():
    """Centres and the width of roof each carries: half way to the neighbours, the outer ones to the sheets' edge."""
    breadth, step = size("rafter")[0], FRAME["rafters"]["spacing_in"]
    first, last = FRAME["rafters"]["inset_in"] + breadth / 2, FRAME["beam_length_in"] - FRAME["rafters"]["inset_in"] - breadth / 2
    centres = []
    while first + step * len(centres) < last - 1e-9:
        centres.append(first + step * len(centres))
    centres.append(last)
    edges = [centres[0] - breadth / 2 - ROOFING["rake_in"]]
    edges += [(a + b) / 2 for a, b in zip(centres, centres[1:])]
    edges.append(centres[-1] + breadth / 2 + ROOFING["rake_in"])
    return centres, [b - a for a, b in zip(edges, edges[1:])]


def dead_at_beam(section, width, is_light):
    wood = DRY if is_light else GREEN
    breadth, depth = size("purlin")
    top_edge = (FRAME["reach_in"] + FRAME["tail_in"] - FRAME["wall_gap_in"]) / section.cos
    room = top_edge - ROOFING["first_purlin_in"] - ROOFING["last_purlin_in"] - breadth
    rows = math.ceil(room / ROOFING["purlin_spacing_in"]) + 1
    on_slope = (SHEET_LIGHT if is_light else SHEET_HEAVY) / 144 + wood / 1728 * breadth * depth * rows / top_edge
    rafter = size("rafter")
    own = wood / 1728 * rafter[0] * rafter[1] / section.cos
    return section.upright_at_beam(on_slope / section.cos * width + own)


def blocks_at(index, centres, wood):
    """Half of the block on either side of a rafter, where there are blocks over the beam."""
    if FRAME["blocks"] == "none":
        return 0.0
    breadth, depth = size("block")
    clear = [b - a - size("rafter")[0] for a, b in zip(centres, centres[1:])]
    beside = [clear[place] for place in (index - 1, index) if 0 <= place < len(clear)]
    return wood / 1728 * breadth * depth * sum(beside) / 2


def brace_weight(wood):
    return wood / 1728 * size("brace")[0] * size("brace")[1] * math.hypot(FRAME["brace_along_in"], FRAME["brace_down_in"])


def snow():
    """0.7 Ce Ct Is pg on plan: partially exposed 1.0, open to the air 1.2, category II 1.0; a slippery cold roof under 15
    degrees sheds none (ASCE 7-16, 7.3)."""
    return 0.7 * 1.0 * 1.2 * 1.0 * PLACE["ground_snow_psf"] / 144


def overhang():
    """Suction of the overhang rule, psi square to the roof: q G (0.8 + 0.9) (ASCE 7-16, 26.10-1 and 27.3.3)."""
    kz = 2.01 * (15 / 900) ** (2 / 9.5)
    ke = math.exp(-0.0000362 * PLACE["ground_elevation_in"] / 12)
    q = 0.00256 * kz * PLACE["topography_factor"] * 0.85 * ke * PLACE["wind_speed_mph"] ** 2
    return -q * 0.85 * 1.7 / 144


def rafter_forces(kind):
    """What each rafter puts on the beam, plus down, and the wood's density."""
    section = Section()
    centres, widths = rafter_rows()
    light = kind == "0.6D+0.6W"
    dead, extra = (0.6, lambda w: 0.6 * section.square_at_beam(overhang() * w)) if light else (1.0, lambda w: 0.0)
    if kind == "D+S":
        extra = lambda w: section.upright_at_beam(snow() * w)
    known = {}
    wood = DRY if light else GREEN
    for width in widths:
        if width not in known:
            known[width] = dead * dead_at_beam(section, width, light) + extra(width)
    blocks = [dead * blocks_at(index, centres, wood) for index in range(len(centres))]
    return [(x, known[width] + block) for x, width, block in zip(centres, widths, blocks)], wood * dead


# ---- frame ------------------------------------------------------------------


def meet(p, d, q, e):
    """Where the line through p along d meets the one through q along e."""
    cross = d[0] * e[1] - d[1] * e[0]
    s = ((q[0] - p[0]) * e[1] - (q[1] - p[1]) * e[0]) / cross
    return p[0] + s * d[0], p[1] + s * d[1]


def brace_line():
    """The brace right of a post, from the corner of post face and beam underside: its centre line lies half its depth
    inside the long edge. Gives foot below the beam's centre line and head from the post's."""
    along, down = FRAME["brace_along_in"], FRAME["brace_down_in"]
    half_post, half_beam, depth = size("post")[0] / 2, size("beam")[1] / 2, size("brace")[1]
    long = math.hypot(along, down)
    way = (along / long, down / long)
    inward = (-way[1], way[0])
    point = (inward[0] * depth / 2, -down + inward[1] * depth / 2)
    foot = meet(point, way, (-half_post, 0.0), (0.0, 1.0))
    head = meet(point, way, (0.0, half_beam), (1.0, 0.0))
    return half_beam - foot[1], head[0] + half_post


class Line:
    def __init__(self):
        self.axis = FRAME["heights"]["beam_seat_in"] - size("beam")[1] / 2
        self.shoulder = FRAME["heights"]["beam_seat_in"] - (FRAME["timbers"]["beam"]["ordered"]["depth_in"] - RULES["housing_in"])
        down, along = brace_line()
        self.knee = self.axis - down
        self.posts = FRAME["posts"]
        self.braces = []
        for number, post in enumerate(self.posts):
            for side, has in ((-1, post["brace_left"]), (1, post["brace_right"])):
                if has:
                    self.braces.append((number, post["x_in"] + side * along))
        self.braces.sort(key=lambda brace: (brace[0], brace[1]))
        self.places = sorted({0.0, FRAME["beam_length_in"], *(post["x_in"] for post in self.posts), *SCARFS, *(x for _, x in self.braces)})

    def foot(self, post):
        return post["pier_top_in"] + FRAME["stand_off_in"]


def build(line, braces, rafters, density, push, held):
    """braces: for each one its end springs, lb/in, 0 for none, or None where it carries nothing."""
    model = FEModel3D()
    model.add_material("timber", E_TIMBER, 4e5, 0.3, 0.0)
    model.add_material("brace", E_BRACE, 4e5, 0.3, 0.0)
    for name, (b, d) in (("beam", size("beam")), ("post", size("post")[::-1])):
        model.add_section(name, b * d, 1000.0, b * d**3 / 12, 1000.0)
    model.add_section("link", 1e6, 1e6, 1e7, 1e6)

    def node(name, x, z):
        model.add_node(name, x, z, 0.0)

    for x in line.places:
        node(f"b{x}", x, line.axis)
    for number, post in enumerate(line.posts):
        node(f"f{number}", post["x_in"], line.foot(post))
        node(f"k{number}", post["x_in"], line.knee)
        node(f"s{number}", post["x_in"], line.shoulder)
    for name in model.nodes:
        foot = name[0] == "f"
        model.def_support(name, foot, foot, True, True, True, False)
    if held:
        model.def_support(f"b{line.places[0]}", True, False, True, True, True, False)
    for a, b in zip(line.places, line.places[1:]):
        name = f"beam{a}"
        model.add_member(name, f"b{a}", f"b{b}", "timber", "beam")
        if b in SCARFS:
            model.def_releases(name, Rzj=True)
        own = density / 1728 * size("beam")[0] * size("beam")[1]
        model.add_member_dist_load(name, "FY", -own, -own, 0, b - a)
        for x, force in rafters:
            if a < x <= b:
                model.add_member_pt_load(name, "FY", -force, x - a)
    # Half of each brace hangs on the beam, half stands on its post.
    for number, x in line.braces:
        model.add_node_load(f"b{x}", "FY", -brace_weight(density) / 2)
        model.add_node_load(f"f{number}", "FY", -brace_weight(density) / 2)
    for number, post in enumerate(line.posts):
        model.add_member(f"low{number}", f"f{number}", f"k{number}", "timber", "post")
        model.add_member(f"head{number}", f"k{number}", f"s{number}", "timber", "post")
        model.def_releases(f"head{number}", Rzj=True)
        model.add_member(f"link{number}", f"b{post['x_in']}", f"s{number}", "timber", "link")
        weight = density / 1728 * size("post")[0] * size("post")[1] * (line.shoulder - line.foot(post))
        model.add_node_load(f"f{number}", "FY", -weight)
    area = size("brace")[0] * size("brace")[1]
    for index, ((number, x), spring) in enumerate(zip(line.braces, braces)):
        if spring is None:
            continue
        length = math.hypot(x - line.posts[number]["x_in"], line.axis - line.knee)
        softness = length / (E_BRACE * area) + (2 / spring if spring else 0.0)
        model.add_section(f"brace{index}", length / (E_BRACE * softness), 1000.0, 72.0, 100.0)
        model.add_member(f"brace{index}", f"k{number}", f"b{x}", "brace", f"brace{index}")
        model.def_releases(f"brace{index}", Rzi=True, Rzj=True)
    if push:
        model.add_node_load(f"b{line.places[0]}", "FX", push)
    return model


COMBO = "Combo 1"


def pull(model, index):
    member = model.members.get(f"brace{index}")
    return -member.axial(member.L() / 2) if member else 0.0


def stretch(model, line, index):
    """How much longer the distance between the ends of a brace is, to see whether one that let go is pushed again."""
    number, x = line.braces[index]
    a, b = model.nodes[f"k{number}"], model.nodes[f"b{x}"]
    long = math.hypot(b.X - a.X, b.Y - a.Y)
    return ((b.DX[COMBO] - a.DX[COMBO]) * (b.X - a.X) + (b.DY[COMBO] - a.DY[COMBO]) * (b.Y - a.Y)) / long


def solve(line, kind, rafters, density, push):
    joint = PROJECT["fixings"]["brace_joint"]
    n = len(line.braces)
    pushed = [True] * n
    for _ in range(50):
        if kind == "rigid":
            braces = [0.0] * n
        elif kind == "slack":
            braces = [None] * n
        elif kind == "soft":
            braces = [joint["pushed_lb_per_in"] if way else joint["pulled_lb_per_in"] for way in pushed]
        else:
            braces = [joint["pushed_lb_per_in"] if way else None for way in pushed]
        model = build(line, braces, rafters, density, push, kind == "slack")
        model.analyze_linear(check_stability=False)
        now = [stretch(model, line, index) < 0 for index in range(n)]
        if kind in ("rigid", "slack") or now == pushed:
            return model
        pushed = now
    raise SystemExit("the one-way braces do not settle")


def answer(line, kind, load, push=0.0):
    rafters, density = rafter_forces(load)
    model = solve(line, kind, rafters, density, push)
    largest, least = -1e18, 1e18
    over = []
    for a, b in zip(line.places, line.places[1:]):
        member = model.members[f"beam{a}"]
        sign = -1.0 if member.T()[1, 1] > 0 else 1.0
        # Between loads a moment is a flat parabola: 64 places each miss its crown by less than 1e-4 of the range.
        stations = {0.0, b - a} | {x - a for x, _ in rafters if a < x <= b}
        cuts = sorted(stations)
        for low, high in zip(cuts, cuts[1:]):
            stations |= {low + (high - low) * share / 64 for share in range(1, 64)}
        moments = [sign * member.moment("Mz", at) for at in sorted(stations)]
        largest, least = max(largest, *moments), min(least, *moments)
        over += [moments[-1]] if any(post["x_in"] == b for post in line.posts) else []
    tops = []
    for number in range(len(line.posts)):
        head = model.members[f"head{number}"]
        tops.append(head.axial(head.L() / 2))
    posts = range(len(line.posts))
    return {
        "braces": kind,
        "load": load,
        "push_lb": push,
        "foot_lb": [model.nodes[f"f{number}"].RxnFY[COMBO] for number in posts],
        "level_lb": [abs(model.nodes[f"f{number}"].RxnFX[COMBO]) for number in posts],
        "shoulder_lb": tops,
        "moment_most_lb_in": largest,
        "moment_least_lb_in": least,
        "moment_over_posts_lb_in": over,
        "brace_lb": [pull(model, index) for index in range(len(line.braces))],
        "sway_in": abs(model.nodes[f"b{line.places[0]}"].DX[COMBO]),
    }


def weight(line, load):
    rafters, density = rafter_forces(load)
    beam = density / 1728 * size("beam")[0] * size("beam")[1] * FRAME["beam_length_in"]
    posts = sum(density / 1728 * size("post")[0] * size("post")[1] * (line.shoulder - line.foot(post)) for post in line.posts)
    return sum(force for _, force in rafters) + beam + posts + brace_weight(density) * len(line.braces)


def heights(line):
    return [line.shoulder - line.foot(post) for post in line.posts]


def slack(line):
    """How far the line leans before its braces touch: eastern hemlock from green (30 %) to 15 %, the mean of 3.0 and 6.8 % of the
    post, half of it at the face (Wood Handbook, from memory); a brace whose foot stands a below the beam's middle turns it H/a."""
    back = size("post")[0] * (0.030 + 0.068) / 2 * (30 - 15) / 30 / 2
    return back * max(heights(line)) / (line.axis - line.knee)


def rounded(value):
    if isinstance(value, list):
        return [rounded(item) for item in value]
    return float(f"{value:.8g}") + 0.0 if isinstance(value, float) else value


def main():
    line = Line()
    cases = [answer(line, kind, load) for load in ("D", "D+S", "0.6D+0.6W") for kind in ("rigid", "soft", "slack")]
    # Half a percent of all that weighs, along the wall to the right (common practice), and what it pushes by the lean of slack joints.
    share = 0.005 + slack(line) / min(heights(line))
    cases.append(answer(line, "pushed only", "D+S", share * weight(line, "D+S")))
    for case in cases:
        off = sum(case["foot_lb"]) / weight(line, case["load"]) - 1
        assert abs(off) < 1e-4, (case["load"], case["braces"], off)
    rows = [{key: rounded(value) for key, value in case.items()} for case in cases]
    file = {
        "made_by": f"beam_line.py with PyNiteFEA {version('PyNiteFEA')}",
        "scarfs_in": SCARFS,
        "rafters_in": rafter_rows()[0],
        "rafter_lb": {load: rounded([force for _, force in rafter_forces(load)[0]]) for load in ("D", "D+S", "0.6D+0.6W")},
        "knee_in": rounded(line.knee),
        "brace_heads_in": rounded([x for _, x in line.braces]),
        "cases": rows,
    }
    (HERE / "beam_line.json").write_text(json.dumps(file, indent=1) + "\n")


if __name__ == "__main__":
    main()
