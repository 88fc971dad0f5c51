// Measuring more than bores, pistons and journals: chosen, read, found again, handed on.
import { expect, test } from "./support/bench.mjs";
import { schemaFaults } from "./support/files.mjs";

/** Asks for a kind, or not any more, on the screen that offers all of them. */
async function turn(bench, kind, on) {
  const row = bench.page.getByTestId(`ask-${kind}`);
  await bench.tap(row);
  await expect(row.getByRole("checkbox")).toBeChecked({ checked: on });
}

async function toKinds(bench) {
  await bench.to("Set-up");
  await bench.tap(bench.page.getByRole("link", { name: "Choose what to measure" }));
  await expect(bench.page.getByRole("heading", { name: "What to measure" })).toBeVisible();
}

/** A session of one cylinder that asks for these kinds and none of the usual ones. */
async function asking(bench, kinds) {
  await bench.open();
  await bench.startSession({ cylinders: 1 });
  await toKinds(bench);
  for (const kind of ["bore", "piston", "main_journal", "rod_journal"]) await turn(bench, kind, false);
  await expect(bench.page.getByTestId("route-length")).toHaveText("Nothing is asked for.");
  for (const kind of kinds) await turn(bench, kind, true);
}

const hours = (bench) => bench.page.getByRole("group", { name: "Hour of the high spot" });

test("end play, housings, shells, strip and run-out are chosen, read and handed on", async ({
  bench,
}) => {
  await asking(bench, ["end_play", "run_out", "main_housing", "main_shell", "main_strip"]);
  await expect(bench.page.getByTestId("route-length")).toContainText("stations, ≈");
  await bench.tap(bench.button("Measure"));

  // What is lost first is read first, with the gauge for it, and in full.
  await bench.expectAt("Crank end play", "to and fro");
  const gauge = bench.page.getByTestId("gauge-to-take");
  await expect(gauge).toHaveText("Now: dial indicator");
  await bench.read("30.00");
  await expect(bench.said).toHaveText("30.00 mm is no crank end play. Is the point in its place?");
  for (let n = 0; n < 5; n += 1) await bench.press("take back the last key");
  await bench.read("0.12");

  // The run-out of a main journal has an hour.
  await bench.expectAt("Run-out, main 1", "full swing in one turn");
  await bench.read(".00");
  await bench.expectAt("Run-out, main 2", "full swing in one turn");
  await bench.read(".03");
  await expect(hours(bench)).toBeVisible();
  await expect(bench.keypad).toHaveCount(0);
  await expect(bench.purpose).toContainText("0.03 mm: at what hour was the most?");
  await bench.reload();
  await expect(bench.purpose).toContainText("0.03 mm: at what hour was the most?");
  await bench.tap(hours(bench).getByRole("button", { name: "5", exact: true }));

  await bench.expectAt("Main housing bore 1", "first end, square to the joint");
  await expect(gauge).toHaveText("Now: telescoping gauge and micrometer");
  await expect(gauge).toBeVisible();
  await bench.read("64.006");
  await expect(gauge).toBeHidden();
  await bench.expectAt("Main housing bore 1", "first end, near the joint, clockwise");
  for (const last of ["002", "001", "005"]) await bench.read(last);
  for (const last of ["006", "002", "001", "005"]) await bench.read(last);

  await bench.expectAt("Main shells 1", "upper, crown");
  await bench.read("2.006");
  await bench.expectAt("Main shells 1", "lower, crown");
  await bench.read("005");
  await bench.read("006");
  await bench.read("004");

  await bench.expectAt("Main strip 1", "widest of the strip");
  await bench.read("0.05");
  await bench.read("0.04");
  await bench.expectSaved();

  const findings = await bench.findings();
  const value = (feature, label) =>
    findings.find((one) => one.feature === feature).rows.find((row) => row.label === label).value;
  expect(value("Crank end play", "End play")).toBe("0.120 mm");
  expect(value("Run-out, main 2", "Run-out, full swing")).toBe("0.030 mm");
  await bench.tap(bench.page.locator("summary").filter({ hasText: /^All 2: 2 without a limit/ }).first());
  await bench.tap(bench.page.locator("summary b").getByText("Run-out, main 2"));
  await expect(bench.page.getByText("most at 5 o’clock")).toBeVisible();
  expect(value("Main housing bore 1", "Size, largest")).toBe("64.006 mm");
  expect(value("Main shells 2", "Wall at the crown, smallest")).toBe("2.004 mm");
  expect(value("Main strip 1", "Oil clearance by strip")).toBe("0.050 mm");

  const { text } = await bench.exportFile();
  expect(await schemaFaults(text)).toEqual([]);
  const { set_up: setUp, readings } = JSON.parse(text).session;
  expect(setUp["high_spot/2"].value).toBe(5);
  expect(setUp["measure/end_play"].value).toBe(true);
  expect(setUp["measure/bore"].value).toBe(false);
  const stations = Object.values(readings).map(({ station }) => station);
  expect(stations).toContain("main_shell/2/lower/first/0");
  expect(stations).toContain("end_play/1/whole/centre/0");
});

test("the hour of a high spot can be left out, put right and undone", async ({ bench }) => {
  await asking(bench, ["run_out"]);
  await bench.to("Measure");
  await bench.read("0.02");
  // A second touch of ENTER does not pass it over.
  await bench.page.keyboard.press("Enter");
  await expect(bench.said).toHaveText(
    "First the hour of the high spot, or Skip to leave it out.",
  );
  await bench.tap(bench.tool("Skip"));
  await bench.expectAt("Run-out, main 2", "full swing in one turn");
  await bench.goTo("Run-out, main 1", "full swing in one turn");
  await expect(bench.purpose).toHaveText("In place of 0.02 mm");
  await bench.read("0.03");
  await bench.tap(hours(bench).getByRole("button", { name: "12", exact: true }));
  await bench.expectAt("Run-out, main 2", "full swing in one turn");
  const at = async () => (await bench.stations()).find(([name]) => name.startsWith("Run-out, main 1"));
  expect((await at())[1]).toBe("0.03 mm at 12 o’clock");
  await bench.to("Measure");
  await bench.tap(bench.tool("Undo"));
  await bench.expectAt("Run-out, main 1", "full swing in one turn");
  await expect(hours(bench)).toBeVisible();
  expect((await at())[1]).toBe("0.03 mm");
});

test("what is lost first comes first, though something else was begun", async ({ bench }) => {
  await bench.open();
  await bench.startSession({ cylinders: 1 });
  await bench.read("82.003");
  await toKinds(bench);
  await turn(bench, "rod_side", true);
  await bench.tap(bench.button("Measure"));
  await bench.expectAt("Rod side clearance 1", "beside the rod");
  await bench.read("0.25");
  await bench.expectAt("Bore 1", "top, along the crank");
});

test("strokes, volumes and sizes to be had are kept with the set-up", async ({ bench }) => {
  await bench.open();
  await bench.startSession({ cylinders: 1 });
  await bench.to("Set-up");
  const given = bench.page.getByTestId("given");
  await bench.tap(given.getByText("Stroke, gasket, volumes, sizes to be had"));
  await given.getByLabel("Stroke, mm").fill("88.9");
  await given.getByLabel("Dish of the piston, cm³").fill("flat");
  await bench.tap(given.getByRole("button", { name: "Keep these" }));
  await expect(bench.refused).toHaveText(
    "Dish of the piston, cm³: type cubic centimetres, as 64.5.",
  );
  await given.getByLabel("Dish of the piston, cm³").fill("-5.25");
  await expect(given).toContainText("Blank: common practice, 0.25 0.50 0.75 1.00.");
  await given.getByLabel("Pistons to be had, oversizes, mm").fill("0.50 1.00");
  await bench.tap(given.getByRole("button", { name: "Keep these" }));
  await expect(given.getByText("Kept.")).toBeVisible();
  await bench.expectSaved();
  const { text } = await bench.exportFile();
  expect(await schemaFaults(text)).toEqual([]);
  const { set_up: setUp } = JSON.parse(text).session;
  expect(setUp["length/stroke"]).toMatchObject({ value: "88.9", unit: "mm" });
  expect(setUp["volume/piston_top"].value).toBe("-5.25");
  expect(setUp["stock/piston"]).toMatchObject({ value: "0.50 1.00", unit: "mm" });
});
