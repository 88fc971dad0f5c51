// A six-cylinder engine from the first reading to the last, by touch, with every touch counted;
// and the same numbers typed in full into plain fields.
import { expect, test } from "./support/bench.mjs";

// Our own bounds: touches a reading, and their share of what plain fields take.
const TAPS_MOST = 4.3;
const SHARE_MOST = 0.65;

// More than this would be no default route.
const READINGS_MOST = 200;

/** What this engine measures, invented: little worn, rod journals about a whole millimetre. */
const SIZES = { Bore: 82_008, Piston: 81_956, "Main journal": 59_988, "Rod journal": 50_001 };

/** The size at a place, in whole thousandths of a millimetre: the same however often it is read. */
function measures(feature, place) {
  const [, kind, position] = feature.match(/^(.+) (\d+)$/);
  const worn = { Bore: place.startsWith("top") ? 14 : 2, Piston: 0 }[kind] ?? -2;
  const name = [...`${feature}, ${place}`];
  const hash = name.reduce((sum, c) => (sum * 31 + c.codePointAt(0)) % 9_973, 7);
  return SIZES[kind] + worn + (Number(position) % 2) + (hash % 5) - 2;
}

/** Counts touches from now on: every time a finger comes down, wherever that is. */
function countTouches(page) {
  return page.evaluate(() => {
    window.touches = 0;
    addEventListener("pointerdown", () => window.touches++, true);
    // The keys of the phone's own keyboard, which are touched as well.
    addEventListener("keydown", () => window.touches++, true);
  });
}

const touches = (page) => page.evaluate(() => window.touches);

/** The readings of an exported session in the order they were taken, struck ones left out. */
function standing(file) {
  const { readings } = JSON.parse(file.text).session;
  const counter = ([id]) => Number(id.split("@")[0]);
  const inOrder = Object.entries(readings).sort((a, b) => counter(a) - counter(b));
  return inOrder.filter(([, reading]) => reading.strikes % 2 === 0).map(([, { value }]) => value);
}

/** Types the values in full, one field after the other; gives the touches that took. */
async function typeInFull(page, values) {
  const field = (_, n) => `<p><label>${n} <input inputmode="decimal"></label></p>`;
  const head = `<!doctype html><meta name="viewport" content="width=device-width">`;
  await page.setContent(head + values.map(field).join(""));
  await countTouches(page);
  for (const [n, value] of values.entries()) {
    await page.locator("input").nth(n).tap();
    await page.keyboard.type(value);
  }
  const typed = await page.locator("input").evaluateAll((fields) => fields.map((f) => f.value));
  expect(typed).toEqual(values);
  return touches(page);
}

test("a six-cylinder session takes few touches, and is as it was read", async ({ bench, page }) => {
  test.setTimeout(240_000);
  await bench.open();
  await bench.startSession({ cylinders: 6, name: "By touch" });
  await countTouches(page);

  const meant = [];
  const where = async () => [
    await bench.feature.textContent(),
    await bench.place.textContent(),
    await bench.said.textContent(),
    await bench.progress.textContent(),
  ];
  let here = await where();
  while (here[2] !== "Everything on the route is read.") {
    const value = (measures(here[0], here[1]) / 1_000).toFixed(3);
    await bench.read(value);
    meant.push(value);
    expect(meant.length, "the route has an end").toBeLessThanOrEqual(READINGS_MOST);
    await expect.poll(where, { message: `${here.slice(0, 2)}: ${value}` }).not.toEqual(here);
    await expect(page.getByTestId("slip")).toBeHidden();
    here = await where();
  }
  const taps = await touches(page);

  expect(standing(await bench.exportFile())).toEqual(meant);
  expect(meant.length).toBeGreaterThanOrEqual(100);
  const plain = await typeInFull(await page.context().newPage(), meant);

  const each = (count) => (count / meant.length).toFixed(2);
  const share = taps / plain;
  console.log(
    `${meant.length} readings: ${each(taps)} touches a reading, ${each(plain)} in plain fields, ` +
      `share ${share.toFixed(3)}`,
  );
  expect(taps / meant.length).toBeLessThanOrEqual(TAPS_MOST);
  expect(share).toBeLessThanOrEqual(SHARE_MOST);
});
