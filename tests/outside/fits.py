"""Fitted ovals against numpy's least squares.

Reads the features of `desk fits`, builds the design matrix from cosines and
sines of its own, and compares every number of every fit.
"""

import json
import subprocess
import sys
from fractions import Fraction

import numpy

# Relative to the number itself. The readings are brought near zero first, as
# a double has 16 digits and an oval may begin at the eighth.
MOST = 1e-9
DIRECTIONS = {0, 45, 90, 135}


class Group:
    """Comparisons of one kind, told in one line."""

    def __init__(self, name):
        self.name, self.count, self.failed, self.worst = name, 0, 0, 0.0

    def compare(self, off, most):
        """Counts one: how far off, and how far at most."""
        self.count += 1
        # Also where it is not a number.
        self.failed += not off <= most
        self.worst = max(self.worst, off)

    def tell(self):
        word = "ok" if self.count and not self.failed else "FAILED"
        print(f"{self.name:<44}{self.count:>6} compared, worst {self.worst:.1e}  {word}")
        return word == "ok"


def relative(ours, theirs):
    return float(abs(ours - Fraction(theirs)) / abs(ours)) if ours else abs(theirs)


def main():
    command = ["cargo", "run", "--quiet", "--package", "desk", "--", "fits"]
    said = subprocess.run(command, check=True, stdout=subprocess.PIPE, text=True)
    features = [json.loads(line) for line in said.stdout.splitlines()]

    ranks = Group("a fit exactly where the rank allows one")
    freedoms = Group("degrees of freedom")
    means, cosines, sines = Group("means above the least reading"), Group("cosine parts"), Group("sine parts")
    sizes = Group("oval size, off by quanta (half is rounding)")
    axes = Group("oval axis, off by 0.0001 degrees")

    for feature in features:
        places, readings, fit = feature["places"], feature["readings"], feature["fit"]
        assert all(angle in DIRECTIONS for _, angle in places)
        levels = sorted({along for along, _ in places})
        turn = numpy.radians([2.0 * angle for _, angle in places])
        own = [[float(along == level) for level in levels] for along, _ in places]
        matrix = numpy.column_stack([*numpy.array(own).T, numpy.cos(turn), numpy.sin(turn)])
        near = min(readings, default=0)
        data = numpy.array([reading - near for reading in readings], dtype=float)
        solution, _, rank, _ = numpy.linalg.lstsq(matrix, data, rcond=1e-9)
        full = bool(readings) and rank == len(levels) + 2
        ranks.compare(float(full != (fit is not None)), 0)
        if fit is None or not full:
            continue

        freedoms.compare(abs(fit["freedom"] - (len(readings) - rank)), 0)
        *level_means, a, b = solution.tolist()
        assert [rank for rank, _, _ in fit["means"]] == levels
        for (_, top, bottom), theirs in zip(fit["means"], level_means, strict=True):
            ours = Fraction(int(top), int(bottom))
            means.compare(relative(ours - near, theirs), MOST)
        for group, key, theirs in [(cosines, "cosine", a), (sines, "sine", b)]:
            top, bottom = fit[key]
            group.compare(relative(Fraction(int(top), int(bottom)), theirs), MOST)

        size = 2 * numpy.hypot(a, b)
        sizes.compare(abs(fit["size"] - size), 0 if fit["exact"] else 0.5 + MOST * size)
        if fit["axis"] is not None:
            axis = numpy.degrees(numpy.arctan2(b, a)) / 2 * 10_000
            off = abs(fit["axis"] - axis) % 1_800_000
            # Half a digit, and what the oval's relative error turns it by.
            axes.compare(min(off, 1_800_000 - off), 0.5 + MOST * 1_800_000)

    groups = [ranks, freedoms, means, cosines, sines, sizes, axes]
    passed = sum([group.tell() for group in groups])
    print(f"{passed} passed, {len(groups) - passed} failed")
    return int(passed != len(groups))


sys.exit(main())
