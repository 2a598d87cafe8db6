"""Reference answers for cutting stock, for the comparison test.

A thousand invented cutting tasks of a timber frame (rafters, purlins, beam pieces, braces, blocks; fixed seed) are solved
to proven optimality by HiGHS, a general integer solver, over every way to cut every bar that no further stick fits into.
A task that it does not prove within a fixed number of nodes is left out and
another drawn, so the hardest tasks are not here; the file's head says how many were. Tasks with few sticks are solved a second time by CP-SAT (OR-Tools), stick by stick into bars; both must agree before
anything is written. Nothing is shared with the calculation library.

Lengths in 1/64 in, prices in cents. Run `python nest.py`; it rewrites `nest.json` beside itself. `python nest.py --time`
prints the median time of HiGHS on the tasks as well.
"""

import json
import random
import statistics
import sys
import time
from importlib.metadata import version
from pathlib import Path

import highspy
import numpy as np
from ortools.sat.python import cp_model

SEED = 271828
N_TASKS = 1000
MOST_PATTERNS = 4_000
MOST_NODES = 300
MOST_BYTES = 400_000
INCH = 64
FOOT = 12 * INCH


def inches(rng, low, high, step):
    """A length between two, in steps of 1/step in."""
    return round(rng.uniform(low, high) * step) * INCH // step


def sticks(rng):
    """Rows of length and count of one section's sticks; at most 60 in all."""
    step = rng.choice([1, 2, 4, 8, 16])
    rows = []

    def add(low, high, fewest, most):
        rows.append([inches(rng, low, high, step), rng.randint(fewest, most)])

    what = rng.choice(["rafters", "purlins", "beam", "braces", "frame", "blocks", "remnants", "remnants"])
    if what == "rafters":
        add(100, 190, 6, 24)
        if rng.random() < 0.5:
            add(60, 150, 1, 8)
    if what == "purlins":
        for _ in range(rng.randint(2, 5)):
            add(48, 230, 1, 9)
    if what == "beam":
        for _ in range(rng.randint(2, 6)):
            add(90, 232, 1, 3)
        add(70, 110, 2, 6)
    if what == "braces":
        add(40, 62, 4, 16)
        add(20, 50, 0, 8)
        add(86, 120, 2, 6)
    if what == "frame":
        add(110, 180, 4, 14)
        add(80, 110, 2, 8)
        add(38, 60, 4, 12)
        add(18, 30, 4, 14)
    if what == "blocks":
        add(19, 23, 10, 30)
        add(12, 18, 1, 6)
        add(60, 110, 1, 8)
    if what == "remnants":
        for _ in range(rng.randint(6, 20)):
            add(30, 200, 1, 3)
    merged = {}
    for length, count in rows:
        merged[length] = merged.get(length, 0) + count
    rows = [[length, count] for length, count in merged.items() if count > 0]
    while sum(count for _, count in rows) > 60:
        rows[rng.randrange(len(rows))][1] -= 1
        rows = [row for row in rows if row[1] > 0]
    rng.shuffle(rows)
    return rows


def stock(rng, n_sticks):
    """Rows of length, price in cents, and how many there are (-1: as many as wanted)."""
    feet = sorted(rng.sample([6, 8, 10, 12, 14, 16, 18, 20, 22, 24], rng.randint(1, 8)))
    board_feet = rng.choice([32, 48, 24, 8, 80]) / 12
    per_board_foot = rng.uniform(0.8, 2.4)
    kind = rng.choice(["even", "dearer", "by_hand", "dollars"])
    rows = []
    for foot in feet:
        price = foot * board_feet * per_board_foot
        if kind == "dearer":
            price *= 1 + 0.02 * max(0, foot - 12)
        if kind == "by_hand":
            price *= rng.uniform(0.93, 1.07)
        cents = round(price) * 100 if kind == "dollars" else round(price * 100)
        count = rng.randint(1, max(2, n_sticks // 2)) if rng.random() < 0.25 else -1
        rows.append([foot * FOOT, cents, count])
    return rows


def task(rng):
    rows = sticks(rng)
    n = sum(count for _, count in rows)
    kerf = rng.choice([0, INCH // 8, 3 * INCH // 16, INCH // 4])
    trim = rng.choice([0, INCH, 2 * INCH, 6 * INCH])
    return dict(kerf=kerf, trim=trim, sticks=rows, stock=stock(rng, n))


def patterns(sizes, counts, room):
    """Every way to cut a bar that no further stick fits into; nothing where there are too many."""
    found, taken = [], [0] * len(sizes)

    def look(kind, left):
        if len(found) > MOST_PATTERNS:
            return
        if kind == len(sizes):
            if not any(taken[k] < counts[k] and sizes[k] <= left for k in range(len(sizes))) and any(taken):
                found.append(tuple(taken))
            return
        for n in range(min(counts[kind], left // sizes[kind]), -1, -1):
            taken[kind] = n
            look(kind + 1, left - n * sizes[kind])
        taken[kind] = 0

    if room > 0:
        look(0, room)
    return found


def columns(of):
    """Columns (stock, pattern) of the sticks that some stock holds, and those sticks; nothing where there are too many."""
    kerf, trim = of["kerf"], of["trim"]
    most = max(length for length, _, _ in of["stock"]) - trim
    rows = [(length, count) for length, count in of["sticks"] if length <= most]
    sizes, counts = [length + kerf for length, _ in rows], [count for _, count in rows]
    found = []
    for place, (length, _, _) in enumerate(of["stock"]):
        found += [(place, cut) for cut in patterns(sizes, counts, length - trim + kerf)]
        if len(found) > MOST_PATTERNS:
            return None, None
    return rows, found


def solve(of, rows, found, prices, lack):
    """Least sum of prices, a stick without a place counting `lack`; returns the stock of each bar and the sticks lacking;
    nothing where the nodes ran out."""
    n, model = sum(count for _, count in rows), highspy.Highs()
    model.setOptionValue("output_flag", False)
    model.setOptionValue("threads", 1)
    model.setOptionValue("mip_rel_gap", 0.0)
    model.setOptionValue("mip_abs_gap", 0.4)
    model.setOptionValue("mip_feasibility_tolerance", 1e-9)
    model.setOptionValue("mip_max_nodes", MOST_NODES)
    for length, count in rows:
        model.addRow(float(count), highspy.kHighsInf, 0, np.array([], dtype=np.int32), np.array([]))
    limited = {}
    for place, (_, _, count) in enumerate(of["stock"]):
        if count >= 0:
            limited[place] = len(rows) + len(limited)
            model.addRow(0.0, float(count), 0, np.array([], dtype=np.int32), np.array([]))
    for place, cut in found:
        entries = {k: float(c) for k, c in enumerate(cut) if c}
        if place in limited:
            entries[limited[place]] = 1.0
        model.addCol(float(prices[place]), 0.0, float(n), len(entries), np.array(list(entries), dtype=np.int32), np.array(list(entries.values())))
    for k, (_, count) in enumerate(rows):
        model.addCol(float(lack), 0.0, float(count), 1, np.array([k], dtype=np.int32), np.array([1.0]))
    for column in range(len(found) + len(rows)):
        model.changeColIntegrality(column, highspy.HighsVarType.kInteger)
    model.run()
    if model.getModelStatus() != highspy.HighsModelStatus.kOptimal:
        return None, 0
    values = [round(value) for value in model.getSolution().col_value]
    bars = [place for (place, _), value in zip(found, values) for _ in range(value)]
    lacking = sum(values[len(found):])
    # The rounded answer is checked for itself.
    for k, (_, count) in enumerate(rows):
        assert sum(cut[k] * value for (_, cut), value in zip(found, values)) + values[len(found) + k] >= count
    assert all(bars.count(place) <= of["stock"][place][2] for place in limited)
    return bars, lacking


def answer(of, rows, found):
    """Least cost, its sticks lacking, and the fewest bars; nothing where the nodes ran out."""
    n = sum(count for _, count in rows)
    cents = [price for _, price, _ in of["stock"]]
    bars, lacking = solve(of, rows, found, cents, max(cents) * n + 1)
    few, few_lacking = solve(of, rows, found, [1] * len(cents), n + 1) if bars is not None else (None, 0)
    if few is None:
        return None
    assert few_lacking == lacking
    return [sum(cents[place] for place in bars), lacking, len(few)]


def second(of):
    """Least cost by CP-SAT, each stick to a bar of its own; every stick must have a place."""
    kerf, trim = of["kerf"], of["trim"]
    sizes = [length + kerf for length, count in of["sticks"] for _ in range(count)]
    model = cp_model.CpModel()
    bars = []
    for place, (length, price, count) in enumerate(of["stock"]):
        lot = range(count if 0 <= count < len(sizes) else len(sizes))
        bars += [(length - trim + kerf, price, model.new_bool_var(f"b{place}_{k}"), place) for k in lot]
    for before, after in zip(bars, bars[1:]):
        if before[3] == after[3]:
            model.add_implication(after[2], before[2])
    into = [[model.new_bool_var("") for _ in bars] for _ in sizes]
    for row in into:
        model.add_exactly_one(row)
    for at, (room, _, used, _) in enumerate(bars):
        model.add(sum(size * row[at] for size, row in zip(sizes, into)) <= room * used)
    model.minimize(sum(price * used for _, price, used, _ in bars))
    solver = cp_model.CpSolver()
    solver.parameters.num_workers = 1
    solver.parameters.max_deterministic_time = 3.0
    return round(solver.objective_value) if solver.solve(model) == cp_model.OPTIMAL else None


def main():
    rng = random.Random(SEED)
    tasks, times, n_second, n_out = [], [], 0, 0
    while len(tasks) < N_TASKS:
        of = task(rng)
        rows, found = columns(of)
        if not rows or not found:
            continue
        start = time.perf_counter()
        out = answer(of, rows, found)
        if out is None:
            n_out += 1
            continue
        times.append((time.perf_counter() - start) / 2)
        too_long = sum(count for length, count in of["sticks"]) - sum(count for _, count in rows)
        if out[1] == 0 and too_long == 0 and sum(count for _, count in rows) <= 8 and n_second < 60:
            other = second(of)
            assert other in (None, out[0]), (of, out, other)
            n_second += other is not None
        tasks.append([of["kerf"], of["trim"], of["sticks"], of["stock"], out])
        if len(tasks) % 100 == 0 or "-v" in sys.argv:
            print(len(tasks), flush=True)
    head = {
        "made_by": f"nest.py, highspy {version('highspy')}; ortools {version('ortools')} agrees on {n_second} tasks; "
        f"{n_out} tasks left out",
        "units": "lengths 1/64 in, prices cents",
        "task": "kerf, trim, sticks [length, count], stock [length, price, count or -1], "
        "[least cost, sticks lacking beside those too long, fewest bars]",
    }
    lines = ",\n".join(json.dumps(row, separators=(",", ":")) for row in tasks)
    text = json.dumps(head, indent=1)[:-2] + ',\n "tasks": [\n' + lines + "\n]}\n"
    assert len(text) < MOST_BYTES, len(text)
    (Path(__file__).parent / "nest.json").write_text(text)
    print(f"{len(tasks)} tasks, {n_second} solved twice, {len(text)} bytes")
    if "--time" in sys.argv:
        print(f"median {statistics.median(times) * 1e3:.2f} ms, worst {max(times) * 1e3:.0f} ms a task")


if __name__ == "__main__":
    main()
