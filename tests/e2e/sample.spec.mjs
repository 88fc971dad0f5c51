// The sample shows a newcomer what the app does, without a network and without a gauge.
import { expect, test } from "./support/bench.mjs";

test("the sample opens without a network and shows what is worn", async ({ bench, site }) => {
  await bench.open();
  await bench.allOffline();
  await site.stop();
  await bench.reload();
  const before = await bench.stored();
  await bench.tap(bench.button("A six-cylinder, complete (invented)"));
  await expect(bench.preview).toContainText("Sample: hill-climb six (invented)");
  await expect(bench.preview).toContainText("6 cylinders, 103 standing readings, 1 struck.");
  await expect(bench.page.getByTestId("warning")).toHaveCount(0);
  expect(await bench.stored()).toEqual(before);
  await bench.tap(bench.button("Take it in"));

  await bench.openSession("Sample");
  await expect(bench.purpose, "the route goes on with what settles most").toContainText("To settle the");
  await expect(bench.progress).toHaveText(/^103 of 10[4-9]$/);
  const values = (await bench.stations()).flatMap(([, values]) => values.split(", "));
  expect(values, "the struck reading counts nowhere").toHaveLength(103);

  const findings = await bench.findings();
  const beyond = findings.filter(({ words }) => words.includes("beyond limit"));
  expect(beyond.map(({ feature, words }) => `${feature}: ${words}`)).toEqual([
    "Bore 5: Taper beyond limit by 0.054 mm",
    "Piston 5: Piston-to-wall beyond limit by 0.047 mm (too large)",
    "Rod journal 2: Out-of-round beyond limit by ≈ 0.031 mm",
  ]);
});

test("the sample once deleted can be tried again", async ({ bench }) => {
  await bench.open();
  for (let time = 0; time < 2; time += 1) {
    await bench.tap(bench.button("A six-cylinder, complete (invented)"));
    await bench.tap(bench.button("Take it in"));
    await expect(bench.sessions).toHaveCount(1);
    await bench.tap(bench.button("Put away Sample: hill-climb six (invented)"));
    await bench.tap(bench.away.getByRole("button", { name: "Delete …" }));
    await bench.tap(bench.away.getByRole("button", { name: "Yes, delete for good" }));
    await expect(bench.away).toHaveCount(0);
  }
});
