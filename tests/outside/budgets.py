"""Computes the budgets of `desk budgets` again with GTC, a general library for
measurement uncertainty (PyPI: GTC), and the factors with SciPy, which GTC brings
along, and compares.

The last line printed is the count.
"""

import json
import subprocess
import sys
import time
from math import inf

from GTC import multiple_ureal, ureal
from scipy.special import ndtri, stdtrit

RELATIVE = 1e-9
P = 0.975
BUDGETS_MIN = 60


def errors(case):
    """An uncertain number of nothing for each draw that occurs."""
    draws = {}
    for reading in case["readings"]:
        for source, draw, _ in reading["terms"]:
            draws.setdefault(source, set()).add(draw)
    of = {}
    for source, numbers in draws.items():
        u, dof = case["sources"][source]
        numbers = sorted(numbers)
        # Draws of one source are independent errors under one estimate of
        # their size: what GTC calls an ensemble.
        if dof is None:
            values = [ureal(0, u, inf) for _ in numbers]
        else:
            values = multiple_ureal([0] * len(numbers), [u] * len(numbers), dof)
        of.update({(source, number): value for number, value in zip(numbers, values)})
    return of


def computed(case):
    """Value, standard uncertainty, degrees of freedom and 95 % factor."""
    of = errors(case)
    readings = []
    for reading in case["readings"]:
        value = reading["value"]
        for source, draw, sensitivity in reading["terms"]:
            value = value + sensitivity * of[source, draw]
        readings.append(value)

    def weighted(part):
        terms = zip(part["weights"], readings)
        return sum(weight * reading for weight, reading in terms) / part["over"]

    a, b = weighted(case["a"]), weighted(case["b"])
    match case["how"]:
        case "sum":
            result = a + b
        case "difference":
            result = a - b
        case "product":
            result = a * b / case["scale"]
        case how:
            raise ValueError(how)
    # Not GTC's own factor, which is the normal one from some 1e5 on.
    k = ndtri(P) if result.df == inf else stdtrit(result.df, P)
    return result.x, result.u, result.df, float(k)


def is_near(ours, theirs, size):
    if ours == theirs:
        return True
    return abs(ours - theirs) <= RELATIVE * size


def differences(case, theirs):
    numerator, denominator = case["value"]
    nu = inf if case["nu"] is None else case["nu"]
    ours = (numerator / denominator, case["u"], nu, case["k"])
    # Values may cancel, so they are held against what they were made of.
    largest = max(abs(reading["value"]) for reading in case["readings"])
    sizes = (max(abs(ours[0]), largest), ours[1], nu, ours[3])
    names = ("value", "u", "nu", "k")
    for name, our, their, size in zip(names, ours, theirs, sizes):
        if not is_near(our, their, size):
            yield f"{name}: {our!r} here, {their!r} there"


def main():
    desk = ["cargo", "run", "--quiet", "--release", "--package", "desk", "--", "budgets"]
    told = subprocess.run(desk, check=True, stdout=subprocess.PIPE, text=True).stdout
    lines = [json.loads(line) for line in told.splitlines()]
    cases = [line for line in lines if "how" in line]
    announced = sum(line.get("budgets", 0) for line in lines)
    ours = sum(line.get("seconds", 0) for line in lines)
    passed = failed = 0
    start = time.perf_counter()
    results = [computed(case) for case in cases]
    seconds = time.perf_counter() - start
    for number, (case, theirs) in enumerate(zip(cases, results), 1):
        found = list(differences(case, theirs))
        for difference in found:
            print(f"budget {number} ({case['how']}): {difference}")
        failed += bool(found)
        passed += not found
    if announced != len(cases) or len(cases) < BUDGETS_MIN:
        print(f"{len(cases)} budgets came in, {announced} were announced")
        failed += 1
    each = 1e6 / max(len(cases), 1)
    print(f"{'here':>12}{ours * each:>12.2f} µs a budget")
    print(f"{'GTC':>12}{seconds * each:>12.2f} µs a budget")
    print(f"{passed} passed, {failed} failed")
    return bool(failed)


if __name__ == "__main__":
    sys.exit(main())
