// How sure a value is, what would settle it, and slips caught at ENTER.
import { expect, test } from "./support/bench.mjs";

test("a turn of the thimble is asked about, and kept only when the person says so", async ({ bench }) => {
  await bench.open();
  await bench.startSession();
  for (const value of ["82.003", "004", "002", "003"]) await bench.read(value);
  await bench.expectAt("Bore 2", "top, thrust");
  const slip = bench.page.getByTestId("slip");
  await expect(slip).toBeHidden();

  const turned = () => bench.readInFull("82.504");
  await turned();
  await expect(slip).toContainText("one turn of the thimble off: without that, 82.004 mm.");
  await expect(bench.progress).toHaveText("4 of 62");
  await bench.tap(bench.button("Read again"));
  await expect(slip).toBeHidden();
  await expect(bench.progress).toHaveText("4 of 62");

  await turned();
  await bench.tap(bench.button("Type it right"));
  await bench.read("82.004");
  await expect(bench.last).toContainText("82.004 mm");
  await expect(bench.progress).toHaveText("5 of 62");

  await turned();
  await bench.tap(bench.button("Keep it"));
  await expect(bench.progress).toHaveText("6 of 62");
  await bench.expectSaved();
  const { text } = await bench.exportFile();
  const readings = Object.values(JSON.parse(text).session.readings);
  expect(readings.filter((reading) => reading.kept).map((reading) => reading.value)).toEqual(["82.504"]);
});

test("a value opens its doubt, and the route goes on with what settles it", async ({ bench, site }) => {
  await bench.open();
  await bench.allOffline();
  await site.stop();
  await bench.tap(bench.button("A six-cylinder, complete (invented)"));
  await bench.tap(bench.button("Take it in"));
  await bench.openSession("Sample");
  await expect(bench.purpose).toContainText("To settle the");

  await bench.to("Findings");
  const open = bench.page
    .getByTestId("feature-findings")
    .filter({ hasText: "Out-of-round too close to call" })
    .first();
  await bench.tap(open.locator("summary").first());
  const sure = open.getByTestId("how-sure").locator("details").first();
  await bench.tap(sure.locator("summary"));
  await expect(sure).toContainText("your noise alone would show up to");
  await expect(sure).toContainText("Most of the doubt: readings of one spot differ, by hand and gauge.");
  await expect(sure).toContainText("To settle it, read:");
  await expect(sure.getByRole("row").nth(1)).toContainText("%");
});

test("a gauge that has drifted says so, and the doubt counts", async ({ bench }) => {
  await bench.open();
  await bench.startSession({ cylinders: 1 });
  await bench.to("Set-up");
  await bench.tap(bench.page.getByRole("link", { name: "Set, check or add gauges" }));
  const name = "Outside micrometer";
  const gauge = bench.page
    .getByTestId("gauge")
    .filter({ has: bench.page.getByRole("heading", { name, exact: true }) });
  await bench.tap(gauge.locator("summary").filter({ hasText: "Check it on a standard" }));
  await gauge.getByLabel("Its size, mm").fill("75.000");
  await gauge.getByLabel("What the gauge shows on it, mm").fill("75.002");
  await bench.tap(gauge.getByRole("button", { name: "Keep this setting" }));
  await expect(gauge).toContainText("Checked on a standard, 75.000 mm: it showed 75.002 mm.");
  await bench.tap(gauge.locator("summary").filter({ hasText: "Check it again at the end" }));
  await gauge.getByLabel("What it shows on it now, mm").fill("75.012");
  await bench.tap(gauge.getByRole("button", { name: "Keep this check" }));
  await expect(gauge).toContainText("read again what was read in this setting");
  await bench.expectSaved();
});

test("a wrong value put right in its place is not asked about because of the wrong one", async ({ bench }) => {
  await bench.open();
  await bench.startSession();
  for (const value of ["82.003", "004", "002", "003"]) await bench.read(value);
  await bench.readInFull("82.504");
  await bench.tap(bench.button("Keep it"));
  await bench.goTo("Bore 2", "top, thrust");
  await expect(bench.purpose).toContainText("In place of 82.504 mm");
  await bench.readInFull("82.004");
  await expect(bench.page.getByTestId("slip")).toBeHidden();
  await expect(bench.last).toContainText("82.004 mm");
});
