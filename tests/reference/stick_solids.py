"""The example's sticks as solids, from the project file and the definitions of the joints.

Every stick is put together from half-spaces by the boolean operations of a
general solid library (manifold3d), never listed corner by corner: the beam is
cut whole and then parted at its scarfs, a post is a body with a tenon set on
it, a pocket is the brace's own plank within the post. Nothing is shared with
the calculation library, so the two can disagree. Inches; x along the wall, y
out from it, z up.
"""

import json
import math
from pathlib import Path

import numpy as np
from manifold3d import CrossSection, FillRule, Manifold

HERE = Path(__file__).parent
FAR = 2000.0  # stands in for "without end"

# Places the program chooses by a search; the file leaves them open, so they are a given of the comparison.
SCARFS = [182.0, 314.0]  # middle of each lap
LOWER_ON_LEFT = [True, True]  # its lower piece is the one on the left
LEDGER_SPLICES = [180.0]  # middle of each half lap
PURLIN_BUTTS = [[194.0], [218.0], [194.0], [218.0], [194.0], [218.0], [194.0]]  # a list a row, from the eave

X, Y, Z = (1.0, 0.0, 0.0), (0.0, 1.0, 0.0), (0.0, 0.0, 1.0)


# ---- bodies ----------------------------------------------------------------


def block(low, high):
    low, high = np.minimum(low, high), np.maximum(low, high)
    return Manifold.cube(tuple(high - low)).translate(tuple(low))


def within(*planes):
    """The room within planes, each (place on it, direction outward)."""
    body = block((-FAR, -FAR, -FAR), (FAR, FAR, FAR))
    for place, outward in planes:
        outward = np.array(outward, float) / np.linalg.norm(outward)
        body = body.trim_by_plane(tuple(-outward), -float(np.dot(outward, place)))
    return body


def round_hole(start, end, diameter):
    """A regular prism of sixteen sides with the circle's area: n/2 r^2 sin(2 pi/n) = pi d^2/4."""
    start, end = np.array(start, float), np.array(end, float)
    along = (end - start) / np.linalg.norm(end - start)
    one = np.cross(along, X if abs(along[0]) < 0.5 else Y)
    one /= np.linalg.norm(one)
    two = np.cross(along, one)
    radius = math.sqrt(math.pi * diameter**2 / 4 / (8 * math.sin(math.pi / 8)))
    ring = [radius * (one * math.cos(a) + two * math.sin(a)) for a in np.arange(16) * math.pi / 8]
    return Manifold.hull_points(np.array([place + corner for place in (start, end) for corner in ring]))


def drawn_out(outline, axis, low, high):
    """An outline in (y, z), (x, z) or (x, y), drawn out along the third axis."""
    flat = CrossSection([np.array(outline, float)], fillrule=FillRule.NonZero)
    body = Manifold.extrude(flat, high - low)
    columns = {"x": (Y, Z, X), "y": (X, Z, Y), "z": (X, Y, Z)}[axis]
    matrix = np.column_stack([*columns, low * np.array(columns[2])])
    return body.transform(matrix)


def united(bodies):
    return sum(bodies[1:], bodies[0]) if bodies else Manifold()


def moments(body):
    """Volume and centre, from the tetrahedra over the middle of the surface's corners."""
    mesh = body.to_mesh64()
    if len(mesh.tri_verts) == 0:
        return 0.0, np.zeros(3)
    places = np.array(mesh.vert_properties)[:, :3]
    apex = places.mean(axis=0)
    corners = (places - apex)[np.array(mesh.tri_verts)]
    parts = np.einsum("ij,ij->i", corners[:, 0], np.cross(corners[:, 1], corners[:, 2])) / 6
    volume = parts.sum()
    return float(volume), apex + (corners.sum(axis=1) / 4 * parts[:, None]).sum(axis=0) / volume


def rounded(value, digits=9):
    return round(float(value), digits) + 0.0


def close(found, expected, what):
    assert abs(found - expected) <= 1e-8 * max(1.0, abs(expected)), (what, found, expected)


def measured(body):
    volume, centre = moments(body)
    close(volume, body.volume(), "volume")
    return {"volume_in3": rounded(volume), "centre_in": [rounded(c) for c in centre]}


# ---- the example's sticks --------------------------------------------------

FRAME = ROOFING = RULES = None


def load():
    global FRAME, ROOFING, RULES
    project = json.loads((HERE.parent / "data" / "version-3.json").read_text())["project"]
    FRAME, ROOFING, RULES = project["frame"], project["roofing"], {k.removesuffix("_in"): v for k, v in project["joinery"].items()}


def size(timber):
    sawn = FRAME["timbers"][timber]["sawn"]
    return sawn["breadth_in"], sawn["depth_in"]


class Line:
    """Heights and faces every stick shares."""

    def __init__(self):
        self.tan = FRAME["heights"]["pitch_rise_per_run"]
        self.cos = 1 / math.hypot(1, self.tan)
        self.sin = self.tan * self.cos
        self.outer = FRAME["reach_in"]
        self.seat = FRAME["heights"]["beam_seat_in"]
        self.beam_breadth, self.beam_depth = size("beam")
        self.under = self.seat - self.beam_depth
        # The shoulder stands a housing above the real underside.
        self.shoulder = self.under + RULES["housing"]
        self.ledger_heel = FRAME["ledger_packing_in"] + size("ledger")[0]
        seats = FRAME["ledger_seat_length_in"], FRAME["beam_seat_length_in"]
        self.ledger_seat = self.seat + (self.outer - self.ledger_heel + seats[0] - seats[1]) * self.tan
        # Top edge of the rafters over the beam's heel.
        self.top_at_beam = self.seat + size("rafter")[1] / self.cos - seats[1] * self.tan

    def top(self, y):
        return self.top_at_beam + (self.outer - y) * self.tan


def cheeks(thickness):
    far = LINE.outer - RULES["tenon_offset"]
    return far - thickness, far


def runs(low, high, joints):
    """Runs of an arris between joints: whole stops at the ends, a quarter of one beside a joint."""
    stop, found, start = RULES["chamfer_stop"], [], low + RULES["chamfer_stop"]
    for near, far in sorted((near - stop / 4, far + stop / 4) for near, far in joints if far > low and near < high):
        if min(near, high - stop) - start >= stop:
            found.append((start, min(near, high - stop)))
        start = max(start, far)
    if high - stop - start >= stop:
        found.append((start, high - stop))
    return found


def chamfer(ends, faces):
    """The corner taken off an arris between two places, running out at 45 degrees at both ends."""
    one, two = (np.array(end, float) for end in ends)
    along, size_in = (two - one) / np.linalg.norm(two - one), RULES["chamfer"]
    planes = [(one + np.array(faces[0]) * size_in, np.array(faces[0], float) + np.array(faces[1]))]
    planes += [(one, -np.array(face, float)) for face in faces]
    # On both faces the end runs in by as much as it lies away from the arris.
    slant = np.array(faces[0], float) + np.array(faces[1])
    planes += [(two, along + slant), (one, slant - along)]
    return within(*planes)


class Knee:
    """One brace and its two pockets. In its plane `a` runs along the beam and `d` down the post, from the corner of the housed lines."""

    def __init__(self, number, post, side):
        half = FRAME["timbers"]["post"]["ordered"]["breadth_in"] / 2
        self.way = 1.0 if side == "R" else -1.0
        self.mark, self.post, self.side = f"K{number}{side}", number, side
        self.corner = np.array((post["x_in"] + self.way * (half - RULES["housing"]), 0.0, LINE.shoulder))
        self.along, self.down = FRAME["brace_along_in"], FRAME["brace_down_in"]
        self.breadth, self.width = size("brace")
        self.thickness = min(RULES["tenon_thickness"], self.breadth - RULES["tenon_offset"])
        long_edge = math.hypot(self.along, self.down)
        self.sin, self.cos = self.along / long_edge, self.down / long_edge

    def place(self, a, d):
        return self.corner + np.array((self.way * a, LINE.outer, -d))

    def facing(self, a, d):
        return np.array((self.way * a, 0.0, -d))

    def plank(self, slip=(0.0, 0.0)):
        """Between its long and its short edge; the short one moved toward the corner by so much along beam and post."""
        away = self.facing(self.cos, self.sin)
        across = self.width + slip[0] * self.cos + slip[1] * self.sin
        return [(self.place(self.along, 0), away), (self.place(self.along, 0) - away * across, -away)]

    def deep(self, thickness=None):
        low, high = cheeks(thickness) if thickness else (LINE.outer - self.breadth, LINE.outer)
        return [((0, low, 0), (0, -1, 0)), ((0, high, 0), Y)]

    def nose(self, at_post):
        """The cut square to the long edge where it comes through the real face, a housing before the housed line."""
        p = RULES["housing"]
        away = self.facing(-self.sin, self.cos) if at_post else self.facing(self.sin, -self.cos)
        on_face = self.place(p, self.down - p * self.cos / self.sin) if at_post else self.place(self.along - p * self.sin / self.cos, p)
        return on_face, away

    def nose_on_floor(self, at_post):
        p, lean = RULES["housing"], self.cos / self.sin if at_post else self.sin / self.cos
        return (self.down if at_post else self.along) - p * lean - p / lean

    def line(self, at_post, depth=0.0):
        """The housed line of post or beam, or a line so much deeper: outward is into that stick."""
        return (self.place(-depth, 0), self.facing(-1, 0)) if at_post else (self.place(0, -depth), self.facing(0, -1))

    def edge(self, at_post, along, sign):
        """A plane square to the housed line."""
        return (self.place(0, along), self.facing(0, sign)) if at_post else (self.place(along, 0), self.facing(sign, 0))

    def flipped(self, plane):
        return plane[0], -np.array(plane[1])

    def stick(self):
        parts = [within(*self.plank(), *self.deep(), *(f(at) for at in (True, False) for f in (self.line, self.nose)))]
        holes = []
        for at_post in (True, False):
            beyond = [self.flipped(self.line(at_post)), self.line(at_post, RULES["brace_tenon"]), self.edge(at_post, self.nose_on_floor(at_post), 1)]
            parts.append(within(self.plank()[1], *self.deep(self.thickness), *beyond))
            holes.append(self.peg(at_post, RULES["drawbore"], self.breadth))
        return united(parts) - united(holes)

    def short_edge(self, at_post):
        """Where the short edge meets the housed line, the pocket's clearance on the corner side included."""
        return (self.down - self.width / self.sin if at_post else self.along - self.width / self.cos) - RULES["pocket_clearance"]

    def peg(self, at_post, drawbore, thickness):
        """A peg's distance from the housed line, midway along the mortise; the brace's own is drawn along it, away from the nose."""
        middle, deep = (self.short_edge(at_post) + self.nose_on_floor(at_post)) / 2, RULES["peg_from_shoulder"]
        along = np.array((self.sin, -self.cos)) * drawbore * (1 if at_post else -1)
        a, d = np.array((-deep, middle) if at_post else (middle, -deep)) + along
        outer = self.place(a, d)
        return round_hole(outer, outer - np.array((0, thickness, 0)), RULES["peg"])

    def pocket(self, at_post, thickness):
        slip = (0.0, RULES["pocket_clearance"]) if at_post else (RULES["pocket_clearance"], 0.0)
        housing = within(*self.plank(slip), *self.deep(), self.line(at_post), self.nose(at_post), self.flipped(self.line(at_post, -RULES["housing"])))
        deep = self.line(at_post, RULES["brace_tenon"] + RULES["blind_clearance"])
        sides = self.edge(at_post, self.nose_on_floor(at_post), 1), self.edge(at_post, self.short_edge(at_post), -1)
        mortise = within(*self.deep(self.thickness), self.flipped(self.line(at_post)), deep, *sides)
        return [housing, mortise, self.peg(at_post, 0.0, thickness)]

    def on_face(self, at_post):
        """What the housing takes of the real face, along it from the corner."""
        lean = self.cos / self.sin if at_post else self.sin / self.cos
        shift = RULES["housing"] * lean
        return self.short_edge(at_post) - shift, (self.down if at_post else self.along) - shift


def knees():
    found = []
    for number, post in enumerate(FRAME["posts"], 1):
        found += [Knee(number, post, side) for side, wanted in (("L", post["brace_left"]), ("R", post["brace_right"])) if wanted]
    return found


def tenon_of(index, left, right):
    """Edges of a post's tenon along the beam: an end post's is shouldered on the outside."""
    last = len(FRAME["posts"]) - 1
    return left + RULES["end_shoulder"] * (index == 0), right - RULES["end_shoulder"] * (index == last)


def head_pegs(tenon, drawbore, thickness):
    quarter = (tenon[1] - tenon[0]) / 4
    places = [tenon[0] + quarter, tenon[1] - quarter] if 4 * quarter >= RULES["two_pegs_from"] else [tenon[0] + 2 * quarter]
    heights = [LINE.shoulder + RULES["peg_from_shoulder"] + RULES["peg"] / 2 * n - drawbore for n in range(2)]
    return [round_hole((x, LINE.outer, z), (x, LINE.outer - thickness, z), RULES["peg"]) for x, z in zip(places, heights)]


def posts():
    breadth, depth = size("post")
    for index, post in enumerate(FRAME["posts"]):
        left, foot = post["x_in"] - breadth / 2, post["pier_top_in"] + FRAME["stand_off_in"]
        right, tenon = left + breadth, tenon_of(index, left, left + breadth)
        inner, outer = cheeks(RULES["tenon_thickness"])
        body = block((left, LINE.outer - depth, foot), (right, LINE.outer, LINE.shoulder))
        body += block((tenon[0], inner, LINE.shoulder), (tenon[1], outer, LINE.shoulder + RULES["post_tenon"]))
        here = [knee for knee in knees() if knee.post == index + 1]
        waste = head_pegs(tenon, RULES["drawbore"], depth) + [part for knee in here for part in knee.pocket(True, depth)]
        for near, far in runs(0, LINE.shoulder - foot, [knee.on_face(True) for knee in here]):
            for x, inward in ((left, X), (right, (-1, 0, 0))):
                ends = [(x, LINE.outer, LINE.shoulder - at) for at in (near, far)]
                waste.append(chamfer(ends, (inward, (0, -1, 0))))
        yield f"P{index + 1}", body - united(waste)


def scarf_lower(index):
    """Everything on the lower piece's side of a scarf."""
    lap, depth = FRAME["scarfs"]["lap_in"], LINE.beam_depth
    high, lean = depth * RULES["scarf_abutment_share"], RULES["scarf_squint"]
    way = 1.0 if LOWER_ON_LEFT[index] else -1.0
    root = np.array((SCARFS[index] - way * lap / 2, 0, LINE.under + depth - high))
    tip = np.array((SCARFS[index] + way * lap / 2, 0, LINE.under + high))
    # The tip leans over by the squint from its foot, the root's abutment from its top.
    behind_root = within((root, (way * high, 0, -lean)))
    under_face = within((root, (way * (depth - 2 * high), 0, lap)), (tip, (way * high, 0, -lean)))
    return behind_root + under_face


def beams():
    breadth, ends = LINE.beam_breadth, [0.0]
    post_breadth, post_depth = size("post")
    whole = block((0, LINE.outer - breadth, LINE.under), (FRAME["beam_length_in"], LINE.outer, LINE.seat))
    waste, joints = [], []
    inner, outer = cheeks(RULES["tenon_thickness"])
    for index, post in enumerate(FRAME["posts"]):
        left, right = post["x_in"] - post_breadth / 2, post["x_in"] + post_breadth / 2
        tenon, top = tenon_of(index, left, right), LINE.shoulder + RULES["post_tenon"] + RULES["blind_clearance"]
        waste.append(block((left, LINE.outer - min(post_depth, breadth), LINE.under), (right, LINE.outer, LINE.shoulder)))
        waste.append(block((tenon[0], inner, LINE.shoulder), (tenon[1], outer, top)))
        waste += head_pegs(tenon, 0.0, breadth)
        joints.append((left, right))
    for knee in knees():
        waste += knee.pocket(False, breadth)
        joints.append(tuple(sorted(knee.corner[0] + knee.way * a for a in knee.on_face(False))))
    half = FRAME["scarfs"]["lap_in"] / 2
    joints += [(x - half, x + half) for x in SCARFS]
    whole -= united(waste)
    for number in range(len(SCARFS) + 1):
        left = SCARFS[number - 1] - half if number else 0.0
        right = SCARFS[number] + half if number < len(SCARFS) else FRAME["beam_length_in"]
        piece = whole ^ block((left, -FAR, -FAR), (right, FAR, FAR))
        for index, is_left_of in ((number - 1, False), (number, True)):
            if 0 <= index < len(SCARFS):
                piece = piece ^ scarf_lower(index) if LOWER_ON_LEFT[index] == is_left_of else piece - scarf_lower(index)
        for near, far in runs(left, right, joints):
            for y, inward in ((LINE.outer, (0, -1, 0)), (LINE.outer - breadth, Y)):
                piece -= chamfer([(near, y, LINE.under), (far, y, LINE.under)], (Z, inward))
        yield f"B{number + 1}", piece


def rafter_places():
    breadth, length, step = size("rafter")[0], FRAME["beam_length_in"], FRAME["rafters"]["spacing_in"]
    first, last = FRAME["rafters"]["inset_in"] + breadth / 2, length - FRAME["rafters"]["inset_in"] - breadth / 2
    places = list(np.arange(first, last, step))
    assert last - places[-1] >= 2 * breadth, "a last bay too narrow for a block"
    return [*places, last]


def rafters():
    breadth, depth = size("rafter")
    down = np.array((0, LINE.sin, LINE.cos))
    top = np.array((0, LINE.outer, LINE.top_at_beam))
    tail = LINE.outer + FRAME["tail_in"]
    ends = [((0, FRAME["wall_gap_in"], 0), (0, -1, 0)), ((0, tail, 0), Y)]
    assert FRAME["tail_cut"] == "plumb"
    for number, x in enumerate(rafter_places(), 1):
        sides = [((x - breadth / 2, 0, 0), (-1, 0, 0)), ((x + breadth / 2, 0, 0), X)]
        body = within((top, down), (top - down * depth, -down), *ends, *sides)
        for heel, seat in ((LINE.ledger_heel, LINE.ledger_seat), (LINE.outer, LINE.seat)):
            body -= within(((0, heel, 0), Y), ((0, 0, seat), Z))
        yield f"R{number}", body


def ledgers():
    breadth, depth = size("ledger")
    half, back = FRAME["ledger_lap_in"] / 2, FRAME["ledger_packing_in"]
    ends = [0.0, *LEDGER_SPLICES, FRAME["beam_length_in"]]
    middle = LINE.ledger_seat - depth / 2
    for index, (left, right) in enumerate(zip(ends, ends[1:])):
        upper = left - (half if index else 0), right - (half if index + 2 < len(ends) else 0)
        lower = left + (half if index else 0), right + (half if index + 2 < len(ends) else 0)
        body = block((upper[0], back, middle), (upper[1], back + breadth, LINE.ledger_seat))
        yield f"L{index + 1}", body + block((lower[0], back, LINE.ledger_seat - depth), (lower[1], back + breadth, middle))


def purlins():
    breadth, depth = size("purlin")
    places = rafter_places()
    rakes = [places[0] - size("rafter")[0] / 2 - ROOFING["rake_in"], places[-1] + size("rafter")[0] / 2 + ROOFING["rake_in"]]
    up, over = np.array((0, -LINE.cos, LINE.sin)), np.array((0, LINE.sin, LINE.cos))
    eave = FRAME["tail_in"] + LINE.outer
    eave = np.array((0, eave, LINE.top(eave)))
    edge = (eave[1] - FRAME["wall_gap_in"]) / LINE.cos
    first, last = ROOFING["first_purlin_in"], edge - ROOFING["last_purlin_in"] - breadth
    n_spaces = math.ceil((last - first) / ROOFING["purlin_spacing_in"])
    assert len(PURLIN_BUTTS) == n_spaces + 1, n_spaces
    for row, butts in enumerate(PURLIN_BUTTS):
        low = eave + up * (first + (last - first) * row / n_spaces)
        ends = [rakes[0], *butts, rakes[1]]
        for index, (left, right) in enumerate(zip(ends, ends[1:])):
            sides = [((left, 0, 0), (-1, 0, 0)), ((right, 0, 0), X)]
            body = within((low, -up), (low + up * breadth, up), (low, -over), (low + over * depth, over), *sides)
            yield f"N{row + 1}{'abcdefg'[index]}", body


def blocks():
    breadth, depth = size("block")
    half = size("rafter")[0] / 2
    places = rafter_places()
    for number, (left, right) in enumerate(zip(places, places[1:]), 1):
        yield f"X{number}", block((left + half, LINE.outer - breadth, LINE.seat), (right - half, LINE.outer, LINE.seat + depth))


LINE = None


def example():
    global LINE
    load()
    LINE = Line()
    sticks = [*posts(), *beams(), *((knee.mark, knee.stick()) for knee in knees()), *rafters(), *ledgers(), *purlins(), *blocks()]
    for index, (mark, one) in enumerate(sticks):
        for other, two in sticks[index + 1 :]:
            assert (one ^ two).volume() < 1e-6, (mark, other, (one ^ two).volume())
    given = {"scarfs_in": SCARFS, "lower_on_left": LOWER_ON_LEFT, "ledger_splices_in": LEDGER_SPLICES, "purlin_butts_in": PURLIN_BUTTS}
    return {"given": given, "sticks": {mark: measured(body) for mark, body in sticks}}
