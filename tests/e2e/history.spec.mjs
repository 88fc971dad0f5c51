// Undo and redo without limit, and a reload in the middle of a number.
import { expect, test } from "./support/phone.mjs";

const SIZES = { Bore: "82.0", Piston: "81.9", Main: "59.9" };

/** Enters invented readings wherever the route leads, as a gauge that types would. */
async function readOn(bench, count) {
  for (let n = 0; n < count; n += 1) {
    const [kind] = (await bench.feature.textContent()).split(" ");
    const whole = (await bench.value.textContent()) === "▢";
    const digits = String(10 + ((n * 7) % 13));
    await bench.type(whole ? SIZES[kind] + digits : SIZES[kind].at(-1) + digits);
  }
}

const read = async (bench) => (await bench.stations()).filter(([, value]) => value !== "open");

test("forty readings are undone after a reload, and done again", async ({ bench }) => {
  await bench.open();
  await bench.startSession();
  await readOn(bench, 40);
  await bench.expectSaved();
  const forty = await read(bench);
  expect(forty).toHaveLength(40);
  await bench.to("Measure");
  await bench.reload();

  const where = [];
  while (await bench.tool("Undo").isEnabled()) {
    await bench.tap(bench.tool("Undo"));
    where.push(`${await bench.feature.textContent()}, ${await bench.place.textContent()}`);
  }
  expect(where, "each undo shows where it was").toHaveLength(40);
  expect(new Set(where)).toEqual(new Set(forty.map(([station]) => station)));
  await expect(bench.progress).toHaveText("0 of 62");
  await expect(bench.last).toHaveCount(0);

  await bench.menu();
  for (let n = 0; n < 40; n += 1) await bench.tap(bench.tool("Redo"));
  await expect(bench.tool("Redo")).toBeDisabled();
  expect(await read(bench)).toEqual(forty);
  await bench.to("Measure");
  await bench.reload();
  expect(await read(bench), "what was done again is kept").toEqual(forty);
});

test("what was undone stays undone after a reload", async ({ bench }) => {
  await bench.open();
  await bench.startSession();
  await readOn(bench, 3);
  const [first, second] = await read(bench);
  await bench.to("Measure");
  await bench.tap(bench.tool("Undo"));
  await bench.expectSaved();
  await bench.reload();
  expect(await read(bench)).toEqual([first, second]);
});

test("a reading in place of another one is one step back and forth", async ({ bench }) => {
  await bench.open();
  await bench.startSession();
  await bench.read("82.003");
  await bench.read("004");
  await bench.goTo("Bore 1", "top, thrust");
  await expect(bench.purpose).toContainText("In place of 82.003 mm");
  await bench.read("013");
  await bench.expectAt("Bore 1", "bottom, thrust");
  expect((await read(bench)).map(([, value]) => value)).toEqual(["82.013 mm", "82.004 mm"]);

  await bench.to("Measure");
  await bench.tap(bench.tool("Undo"));
  await bench.expectAt("Bore 1", "top, thrust");
  expect((await read(bench)).map(([, value]) => value)).toEqual(["82.003 mm", "82.004 mm"]);
  await bench.to("Measure");
  await bench.menu();
  await bench.tap(bench.tool("Redo"));
  expect((await read(bench)).map(([, value]) => value)).toEqual(["82.013 mm", "82.004 mm"]);
});

test("limits and set-up are undone like readings", async ({ bench }) => {
  await bench.open();
  await bench.startSession();
  await bench.read("82.003");
  await bench.to("Limits");
  await bench.keepLimits("bore", [["Size: new, high", "82.000"]]);
  await expect(bench.limits("bore").getByTestId("kept")).toBeVisible();
  await bench.to("Measure");
  await expect(bench.last).toContainText("82.003 mm reads outside new limits by 0.003 mm (too large)");
  await bench.tap(bench.tool("Undo"));
  await expect(bench.last).toContainText("82.003 mm no limit given");
  await bench.menu();
  await bench.tap(bench.tool("Redo"));
  await expect(bench.last).toContainText("reads outside new limits");
});

/** Leaves a number unfinished in each of the ways there are, and comes back to it. */
async function midNumber(bench, comeBack) {
  await bench.open();
  await bench.startSession();
  await bench.key("82.0");
  bench = await comeBack(bench);
  await bench.expectAt("Bore 1", "top, thrust");
  await expect(bench.value).toHaveText("82.0▢▢");
  await bench.read("03");

  await bench.key("82.06");
  bench = await comeBack(bench);
  await bench.expectAt("Bore 1", "top, along the crank");
  await expect(bench.value).toHaveText("82.06▢");
  await bench.tap(bench.button("take back the last key"));
  await bench.read("14");

  // A repeat of a station that was read, not what the route asks for next.
  await bench.goTo("Bore 1", "top, thrust");
  await bench.tap(bench.button("keep both"));
  await bench.key("0");
  bench = await comeBack(bench);
  await bench.expectAt("Bore 1", "top, thrust");
  await expect(bench.purpose).toHaveText("A repeat: read it afresh");
  await expect(bench.value).toHaveText("82.0▢▢");

  await bench.tap(bench.button("enter as read"));
  await bench.key("82.");
  bench = await comeBack(bench);
  await expect(bench.purpose).toHaveText("A repeat: read it afresh");
  await expect(bench.value).toHaveText("82.▢▢▢");
  await expect(bench.button("decimal point")).toBeVisible();
  await bench.read("005");
  expect(await read(bench)).toEqual([
    ["Bore 1, top, thrust", "82.003 mm, 82.005 mm"],
    ["Bore 1, top, along the crank", "82.014 mm"],
  ]);
}

test("a reload in mid-number goes on there", async ({ bench }) => {
  await midNumber(bench, async (bench) => {
    await bench.reload();
    return bench;
  });
});

test("a browser closed in mid-number goes on there", async ({ phone }) => {
  await midNumber(await phone.start(), async (bench) => {
    const hash = new URL(bench.page.url()).hash;
    await phone.quit();
    const again = await phone.start();
    await again.open(hash);
    return again;
  });
});
