// A dial bore gauge: taken into use, set, read by counting graduations.
import { expect, test } from "./support/bench.mjs";

/** The part of the gauges screen for a gauge. */
const gauge = (bench, name) =>
  bench.page
    .getByTestId("gauge")
    .filter({ has: bench.page.getByRole("heading", { name, exact: true }) });

async function toGauges(bench) {
  await bench.to("Set-up");
  await bench.tap(bench.page.getByRole("link", { name: "Set, check or add gauges" }));
  await expect(bench.page.getByRole("heading", { name: "Gauges", exact: true })).toBeVisible();
}

test("a bore is read with a dial bore gauge set in a micrometer", async ({ bench }) => {
  await bench.open();
  await bench.startSession({ cylinders: 1 });
  await toGauges(bench);
  await bench.tap(bench.button("Dial bore gauge"));
  const dial = gauge(bench, "Dial bore gauge");
  await expect(dial).toContainText("Not set yet: nothing can be read with it.");
  const bores = bench.page.getByRole("group", { name: "Bores" });
  await bench.tap(bores.locator("label").filter({ hasText: "Dial bore gauge" }));
  await expect(bores.getByRole("radio", { name: "Dial bore gauge" })).toBeChecked();

  // Without a setting nothing can be typed, and the way there is one touch.
  await bench.to("Measure");
  await expect(bench.said).toContainText("has to be set first");
  await bench.tap(bench.page.getByRole("link", { name: "Set the gauge" }));

  await bench.tap(dial.locator("label").filter({ hasText: "A micrometer set to a size" }));
  await dial.getByLabel("Its size, mm").fill("82.000");
  await bench.tap(dial.getByRole("button", { name: "Keep this setting" }));
  await expect(dial.getByTestId("refused")).toHaveText("Say which way the dial goes.");
  await bench.tap(dial.locator("label").filter({ hasText: "Plus means larger" }));
  await bench.tap(dial.getByRole("button", { name: "Keep this setting" }));
  await expect(dial).toContainText("Set on a micrometer locked at 82.000 mm");
  await bench.expectSaved();

  await bench.to("Measure");
  await bench.expectAt("Bore 1", "top, thrust");
  await expect(bench.page.getByTestId("dial")).toHaveText("from 82.000 mm");
  await bench.key("12");
  await expect(bench.page.getByTestId("dial")).toHaveText("+0.012 mm makes 82.012 mm");
  await bench.enter();
  await expect(bench.last).toContainText("+0.012 mm");
  await bench.tap(bench.keypad.getByRole("button", { name: "plus or minus" }));
  await bench.key("3");
  await expect(bench.page.getByTestId("dial")).toHaveText("−0.003 mm makes 81.997 mm");
  // A number half typed survives a reload, its sign too.
  await bench.reload();
  await expect(bench.value).toHaveText("−3");
  await bench.enter();
  await bench.expectSaved();

  const [bore] = await bench.findings();
  const value = (label) => bore.rows.find((row) => row.label === label).value;
  expect(value("Size, smallest")).toBe("81.997 mm");
  expect(value("Size, largest")).toBe("82.012 mm");
});

test("a micrometer is checked on its standard, and refuses what it cannot reach", async ({
  bench,
}) => {
  await bench.open();
  await bench.startSession({ cylinders: 1 });
  await toGauges(bench);
  const mic = gauge(bench, "Outside micrometer");
  await bench.tap(mic.getByText("Check it on a standard"));
  await mic.getByLabel("Its size, mm").fill("50.000");
  await mic.getByLabel("What the gauge shows on it, mm").fill("50.002");
  await bench.tap(mic.getByRole("button", { name: "Keep this setting" }));
  await expect(mic).toContainText("Checked on a standard, 50.000 mm: it showed 50.002 mm.");
  await bench.tap(mic.getByText("Outside micrometer, 0.001 mm"));
  await mic.getByLabel("Range from, mm").fill("50");
  await mic.getByLabel("Range to, mm").fill("75");
  await bench.tap(mic.getByRole("button", { name: "Keep this" }));
  await expect(mic).toContainText("Outside micrometer, 0.001 mm, 50 to 75 mm");

  await bench.to("Measure");
  await bench.goTo("Main journal 1", "first end, in line with throw 1");
  await bench.read("80.000");
  await expect(bench.said).toHaveText(
    "This gauge reads from 50 mm to 75 mm: take another, or read again.",
  );
  await bench.expectAt("Main journal 1", "first end, in line with throw 1");
  for (let n = 0; n < 6; n += 1) await bench.press("take back the last key");
  await bench.read("59.990");
  await expect(bench.last).toContainText("59.990 mm");
  const findings = await bench.findings();
  const journal = findings.find(({ feature }) => feature === "Main journal 1");
  expect(journal.rows.find(({ label }) => label === "Size, mean").value).toBe("59.988 mm");
});

test("another level is read, and what the layout loses is kept and exported", async ({ bench }) => {
  await bench.open();
  await bench.startSession({ cylinders: 2 });
  await bench.toStations();
  const heading = bench.page.getByRole("heading", { name: "Bore 2", exact: true });
  const bore = bench.page.locator(".stops").filter({ has: heading });
  await bench.tap(bore.getByRole("button", { name: "Another level or direction" }));
  await bench.tap(bore.getByRole("button", { name: /^middle, 45° clockwise/ }));
  await bench.expectAt("Bore 2", "middle, 45° clockwise of thrust");
  await bench.read("82.010");
  await expect(bench.last).toContainText("Bore 2, middle");
  await bench.to("Set-up");
  await bench.tap(bench.button("Cylinders: one less"));
  await bench.to("Findings");
  await expect(bench.page.getByTestId("outside-layout")).toContainText("Bore 2, middle");
  const { text } = await bench.exportFile();
  expect(text).toContain("bore/2/whole/middle/45");
});
