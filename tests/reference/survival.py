"""Holds what `keyblock census --json` says of survival against scikit-bio (PyPI), a library of others.

Usage: survival.py KEYBLOCK CATALOGUE TABLE.csv

First the published vectors of TABLE.csv (tests/checks/chao1.csv): the library has to give the columns that
our own code is tested by. Then every design of the catalogue: the estimate depends on the sheets seen, seen
once and seen twice alone, so a vector with those numbers stands for the design.
"""

import csv
import json
import pathlib
import subprocess
import sys

from skbio.diversity.alpha import chao1, chao1_ci

# The program's interval uses 1.96 for the normal deviate, the library the exact quantile.
NEAR = 1e-3


def near(one, other):
    return abs(one - other) <= NEAR * max(1.0, abs(other))


def of_table(path):
    lines = [line for line in open(path, encoding="utf-8") if not line.startswith("#")]
    compared = 0
    for row in csv.DictReader(lines):
        counts = []
        for pair in row["frequencies"].split():
            times, sheets = map(int, pair.split(":"))
            counts += [times] * sheets
        assert near(chao1(counts), float(row["chao1_bc"])), row["name"]
        if int(row["f1"]) > 1:
            low, high = chao1_ci(counts)
            assert near(low, float(row["low95_bc"])), (row["name"], low)
            assert near(high, float(row["high95_bc"])), (row["name"], high)
        compared += 1
    return compared


def of_catalogue(keyblock, catalogue):
    compared = intervals = 0
    for folder in sorted(pathlib.Path(catalogue, "records", "designs").iterdir()):
        command = [keyblock, "census", folder.name, "--json", "--in", catalogue]
        said = json.loads(subprocess.run(command, check=True, capture_output=True).stdout)
        survival = said["survival"]
        if survival is None:
            continue
        once, twice = survival["seen_once"], survival["seen_twice"]
        counts = [1] * once + [2] * twice + [3] * (survival["sheets"] - once - twice)
        assert near(chao1(counts), survival["estimate"]), folder.name
        if survival["low"] is not None:
            low, high = chao1_ci(counts)
            assert near(low, survival["low"]) and near(high, survival["high"]), folder.name
            intervals += 1
        compared += 1
    return compared, intervals


def main(keyblock, catalogue, table):
    vectors = of_table(table)
    designs, intervals = of_catalogue(keyblock, catalogue)
    assert vectors >= 10, f"only {vectors} vectors"
    assert designs >= 10 and intervals >= 2, f"only {designs} designs, {intervals} intervals"
    print(f"survival: {vectors} vectors and {designs} designs ({intervals} with an interval) agree with scikit-bio")


if __name__ == "__main__":
    main(*sys.argv[1:])
