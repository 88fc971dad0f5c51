// What the bench makes of its times. The times themselves are for `cargo xtask bench`.
import { expect, test } from "@playwright/test";
import { judged, median, percentile, scored, table } from "./figures.mjs";

test("a percentile is one of the times, by rank and in any order", () => {
  const hundred = Array.from({ length: 100 }, (_, n) => 100 - n);
  expect(percentile(hundred, 98)).toBe(98);
  expect(percentile(hundred, 25)).toBe(25);
  expect(percentile([9, 100], 98)).toBe(100);
  expect(median([100, 9, 20])).toBe(20);
  expect(median([7])).toBe(7);
});

test("a budget is met up to its last millisecond, and one missed spoils all", () => {
  expect(judged([["to a key", 50, 50]])).toEqual({ told: "Budget of 50 ms to a key: met.", holds: true });
  const { told, holds } = judged([
    ["to a key", 50.1, 50],
    ["to ENTER", 1, 100],
  ]);
  expect(holds).toBe(false);
  expect(told.match(/NOT met/g)).toHaveLength(1);
});

test("the table has a line for each name, under its columns", () => {
  const lines = table([["key to pixels", [24, 32, 40]]]).split("\n");
  expect(lines).toHaveLength(2);
  expect(lines[1]).toMatch(/^key to pixels +3 +32 ms +24 ms +40 ms +40 ms$/);
  expect(lines[0]).toHaveLength(lines[1].length);
});

test("of the scores the middle one counts, and one too low spoils all", () => {
  expect(scored({ speed: [100, 99, 40] }, { speed: 99 })).toEqual({
    told: "Lighthouse, speed: 99 of 100, 99 wanted.",
    holds: true,
  });
  expect(scored({ speed: [98, 98, 100], access: [100] }, { speed: 99, access: 100 }).holds).toBe(false);
});
