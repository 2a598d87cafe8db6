"""Fifty assignment problems with values from scipy, written to assign.json. See README.md."""
import json
import random
from pathlib import Path

import numpy as np
from scipy.optimize import linear_sum_assignment

SEED = 20250117
BARRED = 10**7  # Dearer than any real assignment of 40 pairs at up to 1000 each.


def draw(rng, number):
    """A table of costs: -1 is a pair that must not be. Sizes grow to 40 by 40; every third table has rows nobody wants."""
    most = 2 + (number * 38) // 49
    n_rows = rng.randint(max(1, most // 2), most)
    n_columns = rng.randint(max(1, most // 2), most)
    if number >= 45:
        n_rows, n_columns = most, most
    barred = rng.choice([0.0, 0.2, 0.6, 0.9])
    # Costs with many ties, as sticks alike have.
    step = rng.choice([1, 1, 50])
    cost = lambda: -1 if rng.random() < barred else rng.randrange(0, 1000, step)
    rows = [[cost() for _ in range(n_columns)] for _ in range(n_rows)]
    if number % 3 == 0:
        rows[rng.randrange(n_rows)] = [-1] * n_columns
    return rows


def solve(rows):
    """How many are placed and what they cost: most placed first, then cheapest."""
    table = np.array(rows, dtype=np.int64)
    priced = np.where(table < 0, BARRED, table)
    given = [(row, column) for row, column in zip(*linear_sum_assignment(priced)) if table[row, column] >= 0]
    return len(given), int(sum(table[row, column] for row, column in given))


def main():
    rng = random.Random(SEED)
    out = []
    for number in range(50):
        rows = draw(rng, number)
        placed, cost = solve(rows)
        # The other way round it is the same problem.
        turned = [list(column) for column in zip(*rows)]
        assert solve(turned) == (placed, cost)
        out.append({"costs": rows, "placed": placed, "cost": cost})
    lines = ",\n".join(json.dumps(one, separators=(",", ":")) for one in out)
    Path(__file__).with_name("assign.json").write_text(f'{{"seed":{SEED},"tasks":[\n{lines}\n]}}\n')


main()
