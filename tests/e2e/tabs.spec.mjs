// Two tabs on one session, as happens when the app is opened from the home screen and a link.
import { expect, test } from "./support/bench.mjs";

/** Enters readings in two tabs by turns, and gives what each of them holds after a reload. */
async function byTurns(bench) {
  await bench.open();
  await bench.startSession();
  await bench.read("82.003");
  await bench.expectSaved();
  const tab = await bench.anotherTab();
  await tab.open(new URL(bench.page.url()).hash);
  await tab.goTo("Bore 3", "top, thrust");
  for (const value of ["82.004", "82.005", "82.006", "82.007"]) {
    await bench.page.bringToFront();
    await bench.read(value);
    await bench.expectSaved();
    await tab.page.bringToFront();
    await tab.read(value.replace("00", "01"));
    await tab.expectSaved();
  }
  const held = [];
  for (const one of [bench, tab]) {
    await one.page.bringToFront();
    await one.reload();
    held.push((await one.stations()).filter(([, values]) => values !== "open"));
  }
  return held;
}

const nine = ["003", "004", "005", "006", "007", "014", "015", "016", "017"].map((n) => `82.${n} mm`);
const values = (stations) => stations.flatMap(([, values]) => values.split(", ")).sort();

test("readings entered in two tabs by turns are all there, in both", async ({ bench }) => {
  const [here, there] = await byTurns(bench);
  expect(values(here)).toEqual(nine);
  expect(there).toEqual(here);
});

test("tabs that cannot hear each other lose nothing either", async ({ bench, context }) => {
  // As a frozen tab, or a browser without this line.
  await context.addInitScript(() => delete window.BroadcastChannel);
  const [here, there] = await byTurns(bench);
  expect(values(here)).toEqual(nine);
  expect(there).toEqual(here);
});

test("a tab shows what another one enters, and undoes only its own", async ({ bench }) => {
  await bench.open();
  await bench.startSession();
  const tab = await bench.anotherTab();
  await tab.open(new URL(bench.page.url()).hash);
  await bench.page.bringToFront();
  await bench.read("82.003");
  await bench.expectSaved();
  await tab.page.bringToFront();
  await expect(tab.progress).toHaveText("1 of 62");

  await tab.goTo("Bore 2", "top, thrust");
  await tab.read("82.004");
  await bench.page.bringToFront();
  await expect(bench.progress).toHaveText("2 of 62");
  await bench.tap(bench.tool("Undo"));
  await expect(tab.progress).toHaveText("1 of 62");
  await expect(tab.last).toContainText("82.004 mm");
});
