// Without a touch: a keyboard, or a gauge that types.
import { expect, test } from "./support/bench.mjs";

test.use({ viewport: { width: 1280, height: 800 }, isMobile: false, hasTouch: false });

/** Presses Tab until something has the focus. */
async function tabTo(page, locator) {
  await expect(locator).toBeVisible();
  for (let steps = 0; steps < 40; steps += 1) {
    if (await locator.evaluate((element) => element === document.activeElement)) return;
    await page.keyboard.press("Tab");
  }
  throw new Error(`Tab does not lead to ${locator}`);
}

test("from the bench to the first saved reading by keyboard alone", async ({ bench, page }) => {
  const { keyboard } = page;
  await bench.open();
  await tabTo(page, page.getByRole("link", { name: "New session" }));
  await keyboard.press("Enter");
  await tabTo(page, page.getByLabel("Name"));
  await keyboard.type("By hand");
  await tabTo(page, page.getByRole("radio", { name: "In-line" }));
  await keyboard.press("ArrowRight");
  await expect(page.getByRole("radio", { name: "V", exact: true })).toBeChecked();
  await tabTo(page, bench.button("Cylinders: one more"));
  await keyboard.press("Enter");
  await keyboard.press("Space");
  await tabTo(page, bench.button("Start measuring"));
  await keyboard.press("Enter");

  await bench.expectAt("Bore 1, bank 1", "top, thrust");
  // At the pace of a person: a gauge types faster, and its number counts as a whole.
  await keyboard.type("82,0034", { delay: 60 });
  await expect(bench.said).toHaveText("This gauge reads 3 decimals: ENTER, or take one back.");
  await keyboard.press("Backspace");
  await keyboard.type("4");
  await keyboard.press("Enter");
  await expect(bench.last).toContainText("82.004 mm");
  await bench.expectSaved();
  await bench.to("Set-up");
  await expect(page.getByLabel("Name")).toHaveValue("By hand");
  await expect(page.getByRole("group", { name: "Cylinders", exact: true }).locator("output")).toHaveText("6");
});

/** What an engine measures, invented: the same size at every place of a kind, give or take. */
const SIZES = { Bore: 82.003, Piston: 81.955, Main: 59.986, Rod: 49.992 };

test("the whole job by keyboard alone: measured, told, advised, in a file", async ({ bench, page }) => {
  test.setTimeout(120_000);
  const { keyboard } = page;
  const go = async (locator) => {
    await tabTo(page, locator);
    await keyboard.press("Enter");
  };
  await bench.open();
  await go(page.getByRole("link", { name: "New session" }));
  const less = bench.button("Cylinders: one less");
  await tabTo(page, less);
  for (let n = 0; n < 3; n += 1) await keyboard.press("Enter");
  await go(bench.button("Start measuring"));

  const typed = [];
  const where = async () => [await bench.feature.textContent(), await bench.place.textContent()].join();
  while (!(await bench.said.textContent()).startsWith("Everything on the route is read.")) {
    const here = await where();
    const value = (SIZES[here.split(" ")[0]] + (typed.length % 3) / 1_000).toFixed(3);
    await keyboard.type(await bench.wanted(value), { delay: 60 });
    await keyboard.press("Enter");
    typed.push(value);
    await expect(bench.last).toContainText(`${value} mm`);
    expect(typed.length, "the route has an end").toBeLessThan(60);
  }
  await go(page.getByRole("link", { name: "See the findings" }));
  await expect(page.getByRole("heading", { name: "Findings" })).toBeVisible();
  const chart = page.getByTestId("chart").first();
  await go(chart.getByText("As a table"));
  await expect(chart.getByRole("table")).toBeVisible();
  await go(page.getByRole("link", { name: "What to do" }));
  await expect(page.getByTestId("plan")).toBeVisible();
  await go(page.getByRole("link", { name: "Set-up", exact: true }));
  const download = page.waitForEvent("download");
  await go(bench.button("Export a file"));
  const file = await (await download).createReadStream();
  let text = "";
  for await (const part of file) text += part;
  const { readings } = JSON.parse(text).session;
  expect(Object.values(readings).map(({ value }) => value).sort()).toEqual(typed.sort());
});

test("the keys of the keypad are pressed by keyboard too", async ({ bench, page }) => {
  await bench.open();
  await bench.startSession();
  const key = (name) => bench.keypad.getByRole("button", { name, exact: true });
  await tabTo(page, key("8"));
  await page.keyboard.press("Enter");
  await tabTo(page, key("2"));
  await page.keyboard.press("Space");
  await expect(bench.value).toHaveText("82");
  await page.keyboard.type(".003", { delay: 60 });
  await tabTo(page, key("ENTER"));
  await page.keyboard.press("Enter");
  await expect(bench.last).toContainText("82.003 mm");
});

test("a gauge that types goes on after a tap on a tool", async ({ bench }) => {
  await bench.open();
  await bench.startSession();
  await bench.type("82.003");
  await bench.tap(bench.tool("Skip"));
  await bench.expectAt("Bore 1", "bottom, thrust");
  await bench.type("82.014");
  await expect(bench.last).toContainText("82.014 mm");
  await bench.tap(bench.tool("Undo"));
  await bench.type("82.015");
  await expect(bench.last).toContainText("82.015 mm");
  await expect(bench.progress).toHaveText("2 of 62");
});

test("64 readings typed as fast as a gauge can are all there", async ({ bench, page }) => {
  await bench.open();
  await bench.startSession({ cylinders: 16 });
  await bench.type("82.000");
  await bench.type("82.001");
  const typed = [];
  for (let n = 2; n < 64; n += 1) typed.push(`${String(n).padStart(3, "0")}\n`);
  await page.keyboard.type(typed.join(""));
  await expect(bench.last).toContainText("82.063 mm");
  await bench.expectSaved();
  await bench.reload();
  const read = (await bench.stations()).filter(([, values]) => values !== "open");
  const expected = typed.map((text) => `82.${text.trim()} mm`);
  expect(read.map(([, value]) => value)).toEqual(["82.000 mm", "82.001 mm", ...expected]);
});
