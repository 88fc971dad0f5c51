// A gauge that types as a keyboard does. Its keys are given to the browser itself (Input.
// dispatchKeyEvent), each with the time at which it was pressed, 2 ms after the one before, and
// none waits for the page: so they queue up behind a page that is busy, as those of a real gauge
// do, and no noise of this machine comes between them.
import { expect, test } from "./support/bench.mjs";

test.use({ viewport: { width: 1280, height: 800 }, isMobile: false, hasTouch: false });

const SPACING_MS = 2;

/** Types texts, each with ENTER after it, as a gauge does. */
async function gaugeTypes(page, texts, { spacingMs = SPACING_MS, end = "Enter", repeat = false } = {}) {
  const session = await page.context().newCDPSession(page);
  let now = Date.now() / 1000;
  const sent = [];
  const press = (key, autoRepeat = false) => {
    const text = key.length === 1 ? key : key === "Enter" ? "\r" : undefined;
    const common = { key, timestamp: now, code: key === "Enter" ? "Enter" : "" };
    sent.push(session.send("Input.dispatchKeyEvent", { type: "keyDown", text, autoRepeat, ...common }));
    if (!autoRepeat) sent.push(session.send("Input.dispatchKeyEvent", { type: "keyUp", ...common }));
    now += spacingMs / 1000;
  };
  for (const text of texts) {
    for (const char of text) {
      press(char);
      if (repeat) press(char, true);
    }
    press(end);
  }
  await Promise.all(sent);
  await session.detach();
}

/** The readings of the exported session that stand or stood, in the order they were entered. */
async function entered(bench) {
  const { text } = await bench.exportFile();
  const readings = Object.entries(JSON.parse(text).session.readings);
  const counter = ([id]) => Number(id.split("@")[0]);
  return readings.sort((a, b) => counter(a) - counter(b)).map(([, { value }]) => value);
}

test("1 000 of 1 000 values at 2 ms arrive as typed", async ({ bench, page }) => {
  test.setTimeout(600_000);
  await bench.open();
  await bench.startSession({ cylinders: 16 });
  // Near enough to each other that none looks like a slip, in an order that does not come again:
  // one that is lost, doubled or changed shows.
  let chance = 1;
  const values = Array.from({ length: 1_000 }, () => {
    chance = (chance * 48_271) % 2_147_483_647;
    return `82.00${chance % 9}`;
  });
  await gaugeTypes(page, values);
  await expect(bench.last).toContainText(`${values.at(-1)} mm`);
  await bench.expectSaved();
  expect(await entered(bench)).toEqual(values);
});

test("comma, plus, zeros and unit are the gauge's own; its number is not completed", async ({ bench, page }) => {
  await bench.open();
  await bench.startSession();
  await gaugeTypes(page, ["82.003"]);
  await expect(bench.last).toContainText("82.003 mm");
  // A person had begun a number: nothing of it stays.
  await page.keyboard.type("9", { delay: 100 });
  await expect(bench.value).toContainText("9");
  for (const [text, value] of [
    ["82,011", "82.011 mm"],
    ["+82.012", "82.012 mm"],
    ["+0082.013", "82.013 mm"],
    ["82.014mm", "82.014 mm"],
    ["82.015 mm", "82.015 mm"],
  ]) {
    await gaugeTypes(page, [text]);
    await expect(bench.last).toContainText(value);
  }
  await gaugeTypes(page, ["82.016"], { end: "Tab" });
  await expect(bench.last).toContainText("82.016 mm");
  await gaugeTypes(page, ["82.017"], { repeat: true });
  await expect(bench.last).toContainText("82.017 mm");
  await gaugeTypes(page, ["82.018"], { spacingMs: 30 });
  await expect(bench.last).toContainText("82.018 mm");
  await expect(bench.progress).toHaveText("9 of 62");
});

test("a gauge is heard wherever the focus is, and presses nothing there", async ({ bench, page }) => {
  await bench.open();
  await bench.startSession();
  await gaugeTypes(page, ["82.003"]);
  await expect(bench.last).toContainText("82.003 mm");
  for (const [name, value] of [
    ["Skip", "82.011"],
    ["Undo", "82.012"],
  ]) {
    await bench.tool(name).focus();
    await gaugeTypes(page, [value]);
    await expect(bench.last).toContainText(`${value} mm`);
  }
  await page.evaluate(() => document.activeElement.blur());
  await gaugeTypes(page, ["82.013"]);
  await expect(bench.last).toContainText("82.013 mm");
  await expect(bench.progress).toHaveText("4 of 62");
});

test("what is refused is refused as of a person, said, and not in the way of the next", async ({ bench, page }) => {
  await bench.open();
  await bench.startSession();
  await gaugeTypes(page, ["82.003"]);
  await expect(bench.last).toContainText("82.003 mm");
  for (const [text, why] of [
    ["820.03", "This gauge reads 3 decimals: type all of them, zeros too."],
    ["820.011", "820.011 mm is no bore: 5 to 600 mm can be. Is the point in its place?"],
    ["82.0111", "This gauge reads 3 decimals: ENTER, or take one back."],
    ["82011", "The gauge typed “82011”, which is no number with a point: send it again, or type it."],
    ["82.011in", "The gauge typed “82.011in”, but is set up in another unit."],
  ]) {
    await gaugeTypes(page, [text]);
    await expect(bench.said).toHaveText(why);
    await expect(bench.last).toHaveCount(1);
  }
  await gaugeTypes(page, ["82.503"]);
  await expect(page.getByTestId("slip")).toContainText("one turn of the thimble off");
  await gaugeTypes(page, ["82.011"]);
  await expect(bench.last).toContainText("82.011 mm");
  await expect(bench.progress).toHaveText("2 of 62");
});

test("a slow typist is no gauge: the last digits are completed", async ({ bench, page }) => {
  await bench.open();
  await bench.startSession();
  await gaugeTypes(page, ["82.003", "82.014"]);
  await expect(bench.last).toContainText("82.014 mm");
  await gaugeTypes(page, ["0111"], { spacingMs: 60 });
  await expect(bench.last).toContainText("82.011 mm");
});
