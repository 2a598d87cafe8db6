"""Reference outlines of rafters, braces and scarfs, for the comparison test.

Every stick is cut by boolean operations of a general geometry library
(shapely): a long strip less the timbers it sits on, or an intersection of
half-planes. Nothing here lists the corners of a finished stick, and nothing is
shared with the calculation library, so the two can disagree.

All lengths are inches. Run `python outlines.py`; it rewrites `outlines.json`
beside itself and stops at the first closed form that does not hold.
"""

import json
import math
import random
from pathlib import Path

import shapely
from shapely import affinity
from shapely.geometry import LineString, Point, box
from shapely.ops import unary_union

SEED = 271828
N_CASES = 200
N_SHORT_TAILS = 20
REACH = 500.0  # stands in for "without end"; longer than any stick here
SAME_POINT = 1e-7  # two corners nearer than this are one corner
CLOSE = 1e-8
STUB = 6.0  # full beam drawn past each scarf root: then each outline is one ring
MAX_BYTES = 400_000


# ---- numbers ---------------------------------------------------------------


def draw(rng, low, high):
    """A random length in [low, high] on a 1/64 in grid, exact in binary."""
    first, last = math.ceil(low * 64), math.floor(high * 64)
    assert first <= last, (low, high)
    return (first + int(rng.random() * (last - first + 1))) / 64


def rounded(value):
    """Nine decimals, never a negative zero."""
    return round(value, 9) + 0.0


def pair(x, y):
    return [rounded(x), rounded(y)]


def assert_close(got, want, what):
    assert abs(got - want) <= CLOSE * max(1.0, abs(want)), (what, got, want)


# ---- shapes ----------------------------------------------------------------


def half_plane(start, end):
    """Everything to the left of the directed line from `start` to `end`."""
    angle = math.atan2(end[1] - start[1], end[0] - start[0])
    upper = box(-REACH, 0.0, REACH, REACH)
    turned = affinity.rotate(upper, angle, origin=(0, 0), use_radians=True)
    return affinity.translate(turned, start[0], start[1])


def line_along(point, axis):
    (x, y), (dx, dy) = point, axis
    return LineString([(x - REACH * dx, y - REACH * dy), (x + REACH * dx, y + REACH * dy)])


def plumb_line(x):
    return line_along((x, 0.0), (0.0, 1.0))


def level_line(z):
    return line_along((0.0, z), (1.0, 0.0))


def to_stick(shape, origin, u_axis, v_axis):
    """The same shape in stick coordinates (u, v)."""
    (ux, uy), (vx, vy) = u_axis, v_axis
    x0, y0 = origin
    return affinity.affine_transform(
        shape, [ux, uy, vx, vy, -(ux * x0 + uy * y0), -(vx * x0 + vy * y0)]
    )


def ring(polygon):
    """Corners in ring order, signed area positive, lowest first coordinate first.

    Doubled corners and corners on a straight edge (traces of the boolean
    operations) are dropped.
    """
    assert polygon.geom_type == "Polygon" and not polygon.interiors, polygon.wkt
    points = []
    for point in list(polygon.exterior.coords)[:-1]:
        if not points or math.dist(points[-1], point) > SAME_POINT:
            points.append(point)
    if math.dist(points[0], points[-1]) <= SAME_POINT:
        points.pop()
    n = len(points)
    corners = [
        points[i]
        for i in range(n)
        if LineString([points[i - 1], points[(i + 1) % n]]).distance(Point(points[i])) > SAME_POINT
    ]
    if shoelace(corners) < 0.0:
        corners.reverse()
    first = corners.index(min(corners))
    return corners[first:] + corners[:first]


def shoelace(points):
    following = points[1:] + points[:1]
    return sum(a[0] * b[1] - b[0] * a[1] for a, b in zip(points, following, strict=True)) / 2


def rounded_ring(polygon):
    corners = [pair(*point) for point in ring(polygon)]
    assert abs(shoelace(corners) - polygon.area) < 1e-5, "ring lost some area"
    return corners


def corner_on(corners, *lines):
    """The one corner that lies on all the given lines, or None if cut away."""
    found = [p for p in corners if all(line.distance(Point(p)) < SAME_POINT for line in lines)]
    assert len(found) <= 1, (found, [line.wkt for line in lines])
    return found[0] if found else None


def crossing(line, other):
    """The single point where two lines cross."""
    point = line.intersection(other)
    assert point.geom_type == "Point", point.wkt
    return point.x, point.y


def assert_balance(shape, parts, what):
    """The closed-form side: area and centroid of signed parts (area, first, second)."""
    area = sum(part[0] for part in parts)
    assert_close(shape.area, area, what + " area")
    for axis, got in ((1, shape.centroid.x), (2, shape.centroid.y)):
        want = sum(part[0] * part[axis] for part in parts) / area
        assert_close(got, want, f"{what} centroid, coordinate {axis}")


# ---- rafter: y out from the wall, z up -------------------------------------


def rafter_input(rng, tail_kind, short_tail):
    rise = round(1.0 + 7.0 * rng.random(), 6)
    theta = math.atan(rise / 12)
    depth, run = draw(rng, 5, 12), draw(rng, 60, 200)
    ledger_face, gap = draw(rng, 3, 8), draw(rng, 0.25, 1)
    beam_width, fall = draw(rng, 5, 12), run * rise / 12
    deepest = depth / (4 * math.sin(theta))
    seats = []
    for room in (ledger_face - gap, beam_width):
        full = rng.random() < 0.2 and room <= deepest  # seat over all the timber
        seats.append(room if full else draw(rng, 1.5, min(room, deepest)))
    back = depth * math.sin(theta) if tail_kind == "square" else 0.0
    if not short_tail:
        tail = draw(rng, back + 0.25, 24)
    elif tail_kind == "plumb":
        tail = 0.0
    else:  # the square cut runs into the bird's mouth, the seat's end survives
        tail = draw(rng, max(0.0, back - seats[1] + 0.25), back - 1 / 32)
    return {
        "rise_in_per_12": rise,
        "depth_in": depth,
        "run_in": run,
        "ledger_face_in": ledger_face,
        "gap_in": gap,
        "ledger_seat_in": seats[0],
        "beam_seat_in": seats[1],
        "beam_width_in": beam_width,
        "ledger_seat_height_in": draw(rng, fall + 70, fall + 110),
        "tail_in": tail,
        "tail_cut": tail_kind,
    }


def cut_rafter(case):
    """The rafter's shape and the named lines its corners lie on."""
    theta = math.atan(case["rise_in_per_12"] / 12)
    y_l, z_l = case["ledger_face_in"], case["ledger_seat_height_in"]
    y_b = y_l + case["run_in"]
    down, square = (math.cos(theta), -math.sin(theta)), (-math.sin(theta), -math.cos(theta))

    # The strip's underside is the box's lower edge; it reaches the ledger's top
    # where the ledger seat ends, and so fixes the beam's height.
    depth = case["depth_in"]
    strip = affinity.rotate(box(-REACH, 0.0, REACH, depth), -theta, origin=(0, 0), use_radians=True)
    strip = affinity.translate(strip, y_l - case["ledger_seat_in"], z_l)
    underside = line_along((y_l - case["ledger_seat_in"], z_l), down)
    topside = affinity.translate(underside, -depth * square[0], -depth * square[1])
    z_b = crossing(underside, plumb_line(y_b - case["beam_seat_in"]))[1]

    y_end = y_b + case["tail_in"]
    end = crossing(topside, plumb_line(y_end))
    if case["tail_cut"] == "plumb":
        tail, beyond = plumb_line(y_end), half_plane((y_end, 0.0), (y_end, -1.0))
    else:
        tail = line_along(end, square)
        beyond = half_plane(end, (end[0] + square[0], end[1] + square[1]))

    ledger = box(-REACH, -REACH, y_l, z_l)
    beam = box(y_b - case["beam_width_in"], -REACH, y_b, z_b)
    head = half_plane((case["gap_in"], 0.0), (case["gap_in"], 1.0))
    shape = strip.difference(unary_union([head, beyond])).difference(ledger).difference(beam)
    lines = {
        "ledger": bird_mouth_lines(y_l, z_l, underside),
        "beam": bird_mouth_lines(y_b, z_b, underside),
        "head": [(edge, plumb_line(case["gap_in"])) for edge in (topside, underside)],
        "tail": [(edge, tail) for edge in (topside, underside)],
    }
    origin = crossing(topside, plumb_line(y_l))
    return shape, lines, (origin, down, square), z_b


def bird_mouth_lines(heel, seat, underside):
    """Seat's inner end, heel corner, heel bottom: the two lines through each."""
    return [
        (level_line(seat), underside),
        (level_line(seat), plumb_line(heel)),
        (underside, plumb_line(heel)),
    ]


def assert_rafter(case, stick, z_b, origin):
    """Closed forms: slant parallelogram, less two bird's mouths, less a square tail."""
    t = case["rise_in_per_12"] / 12
    cos, sin = 1 / math.hypot(1, t), t / math.hypot(1, t)
    d, s_l, s_b = case["depth_in"], case["ledger_seat_in"], case["beam_seat_in"]
    h_l, h_b = d / cos - s_l * t, d / cos - s_b * t
    assert_close(origin[1] - case["ledger_seat_height_in"], h_l, "height above seat")
    drop = case["run_in"] * t + h_b - h_l
    assert_close(case["ledger_seat_height_in"] - z_b, drop, "seat drop")
    u_head = (case["gap_in"] - case["ledger_face_in"]) / cos
    u_tail = (case["run_in"] + case["tail_in"]) / cos
    parts = [(d * (u_tail - u_head), (u_head + u_tail + d * t) / 2, d / 2)]
    for heel, s in ((0.0, s_l), (case["run_in"] / cos, s_b)):
        bottom = heel + d * t  # heel plumb line where it meets the underside
        corner = bottom - s * sin * t
        inner = bottom - s / cos
        parts.append((-s * s * t / 2, (inner + corner + bottom) / 3, d - s * sin / 3))
    if case["tail_cut"] == "square":
        parts.append((-d * d * t / 2, u_tail + d * t / 3, d * 2 / 3))
    assert_balance(stick, parts, "rafter")


def rafter(case, short_tail):
    shape, lines, frame, z_b = cut_rafter(case)
    stick = to_stick(shape, *frame)
    corners = ring(stick)
    points = {}
    for place, pairs_of_lines in lines.items():
        found = [
            corner_on(corners, *(to_stick(line, *frame) for line in two_lines))
            for two_lines in pairs_of_lines
        ]
        points[place] = [corner and pair(*corner) for corner in found]
    if not short_tail:  # the named points are all the corners there are
        named = [point for place in points.values() for point in place]
        assert None not in named, ("a named corner is missing", case)
        assert set(map(tuple, named)) == {tuple(pair(*corner)) for corner in corners}, case
    if not (short_tail and case["tail_cut"] == "square"):
        assert_rafter(case, stick, z_b, frame[0])
    low, _, high, deep = stick.bounds
    assert_close(deep, case["depth_in"], "rafter depth")
    out = {
        "beam_seat_height_in": rounded(z_b),
        "area_in2": rounded(stick.area),
        "centroid_in": pair(stick.centroid.x, stick.centroid.y),
        "bounding_length_in": rounded(high - low),
        "top_edge_in": rounded(points["tail"][0][0] - points["head"][0][0]),
        "points_in": points,
    }
    if short_tail:
        out["vertices_in"] = rounded_ring(stick)
    return {"in": case, "out": out}


# ---- brace: corner of the housed lines at (0, 0), x out, z up ---------------


def brace_input(rng):
    leg = draw(rng, 18, 60)
    equal = rng.random() < 0.3
    other = leg if equal else draw(rng, max(18, leg / 2), min(60, leg * 2))
    housings = [0.0 if rng.random() < 0.15 else draw(rng, 1 / 16, 1) for _ in range(2)]
    return {
        "leg_beam_in": leg,
        "leg_post_in": other,
        "width_in": draw(rng, 3, 8),
        "housing_post_in": housings[0],
        "housing_beam_in": housings[1],
    }


def assert_brace(case, body):
    """Closed forms: triangle on the legs, less the corner's, less two noses."""
    g_h, g_v, w = case["leg_beam_in"], case["leg_post_in"], case["width_in"]
    length = math.hypot(g_h, g_v)
    foot = g_v * g_v / length  # C's foot on the long edge, from A
    height = g_h * g_v / length
    left = 1 - w / height
    parts = [
        (length * height / 2, (length + foot) / 3, height / 3),
        (
            -length * height * left**2 / 2,
            foot + left * ((length + foot) / 3 - foot),
            w + left * height / 3,
        ),
    ]
    along, across = case["housing_post_in"] * length / g_h, case["housing_post_in"] * length / g_v
    parts.append((-along * across / 2, along * 2 / 3, across / 3))
    along, across = case["housing_beam_in"] * length / g_v, case["housing_beam_in"] * length / g_h
    parts.append((-along * across / 2, length - along * 2 / 3, across / 3))
    assert_balance(body, parts, "brace")


def brace(case):
    g_h, g_v = case["leg_beam_in"], case["leg_post_in"]
    length = math.hypot(g_h, g_v)
    a, b = (0.0, -g_v), (g_h, 0.0)
    u_axis = (g_h / length, g_v / length)
    v_axis = (-u_axis[1], u_axis[0])
    long_edge = line_along(a, u_axis)
    inward = (case["width_in"] * v_axis[0], case["width_in"] * v_axis[1])
    short_edge = affinity.translate(long_edge, *inward)
    far = [(a[0] + inward[0], a[1] + inward[1]), (b[0] + inward[0], b[1] + inward[1])]
    strip = half_plane(a, b).intersection(half_plane(far[1], far[0]))
    body = strip.intersection(box(0.0, -REACH, REACH, 0.0))

    post_face, beam_face = plumb_line(case["housing_post_in"]), level_line(-case["housing_beam_in"])
    low, high = crossing(long_edge, post_face), crossing(long_edge, beam_face)
    body = body.difference(half_plane(low, (low[0] + v_axis[0], low[1] + v_axis[1])))
    body = body.difference(half_plane(high, (high[0] - v_axis[0], high[1] - v_axis[1])))
    stick = to_stick(body, a, u_axis, v_axis)
    assert_brace(case, stick)
    vertices = rounded_ring(stick)
    n_noses = (case["housing_post_in"] > 0) + (case["housing_beam_in"] > 0)
    assert len(vertices) == 4 + n_noses, (case, vertices)
    out = {
        "long_edge_in": rounded(length),
        "area_in2": rounded(stick.area),
        "centroid_in": pair(stick.centroid.x, stick.centroid.y),
        "post_face_long_edge_in": rounded(-low[1]),
        "post_face_short_edge_in": rounded(-crossing(short_edge, post_face)[1]),
        "beam_face_long_edge_in": rounded(high[0]),
        "beam_face_short_edge_in": rounded(crossing(short_edge, beam_face)[0]),
        "post_line_short_edge_in": rounded(-crossing(short_edge, plumb_line(0.0))[1]),
        "beam_line_short_edge_in": rounded(crossing(short_edge, level_line(0.0))[0]),
        "vertices_in": vertices,
    }
    return {"in": case, "out": out}


# ---- scarf: x along the beam from the lower piece's root, z up --------------

SCARF_KINDS = ("halved", "halved_squinted", "splayed", "splayed_squinted", "tabled")


def scarf_input(rng, kind):
    depth, tabled = draw(rng, 6, 12), kind == "tabled"
    halved = kind.startswith("halved")
    return {
        "kind": kind,
        "depth_in": depth,
        "length_in": draw(rng, 18, 60),
        "abutment_in": depth / 2 if halved else draw(rng, depth / 5, depth / 3),
        "squint_in": draw(rng, 0.25, 1) if tabled or kind.endswith("squinted") else 0.0,
        "table_step_in": draw(rng, depth / 8, depth / 6) if tabled else 0.0,
        "wedge_gap_in": draw(rng, 1, 1.5) if tabled else 0.0,
    }


def stepped_side(root, tip, axis, step):
    """The side left of `axis` of a lap line through `root` before x = step, `tip` after."""
    before, after = half_plane((step, 0.0), (step, 1.0)), half_plane((step, 1.0), (step, 0.0))
    sides = [half_plane(end, (end[0] + axis[0], end[1] + axis[1])) for end in (root, tip)]
    return unary_union([sides[0].intersection(before), sides[1].intersection(after)])


def cut_scarf(case, stub):
    """Lower and upper piece, each with `stub` inches of full beam past its root."""
    depth, length, a = case["depth_in"], case["length_in"], case["abutment_in"]
    slope = (depth - 2 * a + case["table_step_in"]) / length
    root, tip = (0.0, depth - a), (length, a)
    root_line = (root, (case["squint_in"], depth))
    tip_line = ((length - case["squint_in"], 0.0), tip)
    half, gap = length / 2, case["wedge_gap_in"] / 2
    below = stepped_side(root, tip, (-1.0, slope), half + gap)
    above = stepped_side(root, tip, (1.0, -slope), half - gap)
    # Past its root a piece is whole; short of it, the abutment line rules.
    lap = box(0.0, 0.0, length, depth)
    lower = unary_union(
        [
            box(-stub, 0.0, 0.0, depth),
            lap.intersection(below).intersection(half_plane(*tip_line)),
            lap.intersection(half_plane(*root_line)),
        ]
    )
    upper = unary_union(
        [
            box(length, 0.0, length + stub, depth),
            lap.intersection(above).intersection(half_plane(*reversed(root_line))),
            lap.intersection(half_plane(*reversed(tip_line))),
        ]
    )
    return lower, upper


def scarf(case):
    depth, length = case["depth_in"], case["length_in"]
    lower_whole, upper_whole = cut_scarf(case, STUB)
    lap = box(0.0, 0.0, length, depth)
    lower, upper = lower_whole.intersection(lap), upper_whole.intersection(lap)
    hole = lap.difference(unary_union([lower, upper]))
    overlap = lower_whole.intersection(upper_whole).area
    wedge = case["table_step_in"] * case["wedge_gap_in"]

    # The joint turned half round about its middle is itself.
    for piece in (lower, upper):
        assert_close(piece.area, (depth * length - wedge) / 2, "scarf area")
    assert_close(lower.centroid.x + upper.centroid.x, length, "scarf centroids along")
    assert_close(lower.centroid.y + upper.centroid.y, depth, "scarf centroids up")
    assert_close(hole.area, wedge, "wedge space")
    assert overlap < CLOSE, ("pieces overlap", overlap)
    assert_scarf_moment(case, lower)
    out = {
        "lower_area_in2": rounded(lower.area),
        "upper_area_in2": rounded(upper.area),
        "lower_centroid_in": pair(lower.centroid.x, lower.centroid.y),
        "upper_centroid_in": pair(upper.centroid.x, upper.centroid.y),
        "overlap_in2": rounded(overlap),
        "hole_in2": rounded(hole.area),
        "lower_in": rounded_ring(lower_whole),
        "upper_in": rounded_ring(upper_whole),
    }
    return {"in": case, "out": out}


def assert_scarf_moment(case, lower):
    """Closed form: block and wedge under the first slope, the squints, the raised part."""
    depth, length, a = case["depth_in"], case["length_in"], case["abutment_in"]
    e, t = case["squint_in"], case["table_step_in"]
    low, fall = a - t, depth - 2 * a + t  # the first slope carried on to the tip
    raised = (length - case["wedge_gap_in"]) / 2  # from the lower step to the tip
    parts = [
        (length * low, length / 2, low / 2),
        (length * fall / 2, length / 3, low + fall / 3),
        (e * a / 2, e / 3, depth - a / 3),
        (-e * a / 2, length - e / 3, a / 3),
        # The step lifts the surface by t: a parallelogram with upright sides.
        (raised * t, length - raised / 2, a - t / 2 + fall * raised / length / 2),
    ]
    assert_balance(lower, parts, "scarf lower piece")


# ---- the file --------------------------------------------------------------


def tail_kind(index):
    return "plumb" if index % 2 == 0 else "square"


def generate():
    rng = random.Random(SEED)
    rafters = [rafter(rafter_input(rng, tail_kind(i), False), False) for i in range(N_CASES)]
    short = [rafter(rafter_input(rng, tail_kind(i), True), True) for i in range(N_SHORT_TAILS)]
    braces = [brace(brace_input(rng)) for _ in range(N_CASES)]
    scarfs = [scarf(scarf_input(rng, SCARF_KINDS[i % len(SCARF_KINDS)])) for i in range(N_CASES)]
    return {"rafters": rafters, "rafters_short_tail": short, "braces": braces, "scarfs": scarfs}


def print_json(tables):
    """One case a line, so that a changed value shows as one changed line."""

    def compact(value):
        return json.dumps(value, separators=(",", ":"), allow_nan=False)

    head = {"source": f"shapely {shapely.__version__}, generator outlines.py seed {SEED}"}
    head |= {f"n_{name}": len(cases) for name, cases in tables.items()}
    head["stub_in"] = STUB
    blocks = [f"{compact(key)}:{compact(value)}" for key, value in head.items()]
    for name, cases in tables.items():
        rows = ",\n".join(compact(case) for case in cases)
        blocks.append(f"{compact(name)}:[\n{rows}\n]")
    return "{\n" + ",\n".join(blocks) + "\n}\n"


def main():
    text = print_json(generate())
    print(len(text), "bytes")
    assert len(text) <= MAX_BYTES, f"{len(text)} bytes is over the limit"
    Path(__file__).with_name("outlines.json").write_text(text, encoding="utf-8")


if __name__ == "__main__":
    main()
