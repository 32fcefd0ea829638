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
    compared = 0
    for folder in sorted(pathlib.Path(catalogue, "records", "designs").iterdir()):
        command = [keyblock, "census", folder.name, "--json", "--in", catalogue]
        said = json.loads(subprocess.run(command, check=True, capture_output=True).stdout)
        survival = said["survival"]
        if survival is None:
            continue
        once, twice = survival["seen_once"], survival["seen_twice"]
        counts = [1] * once + [2] * twice + [3] * (survival["sheets"] - once - twice)
        assert near(chao1(counts), survival["estimate"]), folder.name
        low, high = chao1_ci(counts)
        assert near(low, survival["low"]) and near(high, survival["high"]), folder.name
        compared += 1
    return compared


def main(keyblock, catalogue, table):
    vectors = of_table(table)
    designs = of_catalogue(keyblock, catalogue)
    assert vectors >= 10, f"only {vectors} vectors"
    # Most designs of the catalogue declare an edition, so the program estimates nothing for them.
    assert designs >= 1, "no design with an estimate"
    print(f"survival: {vectors} vectors and the designs with an estimate ({designs}) agree with scikit-bio")


if __name__ == "__main__":
    main(*sys.argv[1:])
