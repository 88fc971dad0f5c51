// The drawing on the fender screen: it shows where the gauge goes, and a tap on it goes there.
import { expect, test } from "./support/bench.mjs";

test.use({ viewport: { width: 360, height: 740 } });

const drawn = (bench) => bench.page.locator(".plate");
const image = (bench) => drawn(bench).getByRole("img");
const enlarge = (bench) => bench.button("Enlarge the drawing");

/** Taps the mark that is drawn this far along in the order of the route, in the view along. */
async function tapMark(bench, state, at) {
  const mark = drawn(bench).locator(`.mark.${state}`).nth(at);
  const { x, y, width, height } = await mark.boundingBox();
  await bench.page.touchscreen.tap(x + width / 2, y + height / 2);
}

test("the drawing follows the route, and a tap on a mark goes there", async ({ bench }) => {
  await bench.open();
  await bench.startSession();
  await expect(image(bench)).toHaveAccessibleName(
    "Bore 1 from the side and from above: top, thrust now; 0 of 4 places read",
  );
  await bench.read("82.010");
  await expect(image(bench)).toHaveAccessibleName(
    "Bore 1 from the side and from above: top, along the crank now; 1 of 4 places read",
  );

  // It is enlarged over what is read, and leaves the keys alone.
  await bench.tap(enlarge(bench));
  await expect(drawn(bench)).toHaveAttribute("data-large", "yes");
  const large = await drawn(bench).boundingBox();
  const keys = await bench.page.locator(".pad").boundingBox();
  expect(large.y + large.height).toBeLessThanOrEqual(keys.y);
  const sides = await image(bench).boundingBox();
  expect(Math.min(sides.width, sides.height)).toBeGreaterThanOrEqual(150);
  await bench.tap(bench.button("Back"));
  await expect(drawn(bench)).toHaveAttribute("data-large", "no");

  // Open are: where one is, bottom thrust, bottom along the crank.
  await bench.tap(enlarge(bench));
  await tapMark(bench, "open", 2);
  await bench.expectAt("Bore 1", "bottom, along the crank");
  await expect(drawn(bench)).toHaveAttribute("data-large", "no");
  await bench.tap(enlarge(bench));
  await tapMark(bench, "read", 0);
  await bench.expectAt("Bore 1", "top, thrust");
  await expect(bench.purpose).toHaveText("In place of 82.010 mm");
});

test("a number under way is not lost to a tap on the drawing", async ({ bench }) => {
  await bench.open();
  await bench.startSession();
  await bench.key("82.0");
  await bench.tap(enlarge(bench));
  await tapMark(bench, "open", 3);
  await expect(bench.said).toHaveText(
    "A number is under way: ENTER it or take it back first, then go.",
  );
  await bench.expectAt("Bore 1", "top, thrust");
  // A key puts the large drawing away and is taken.
  await bench.tap(enlarge(bench));
  await bench.read("12");
  await expect(drawn(bench)).toHaveAttribute("data-large", "no");
  await expect(bench.last).toContainText("82.012 mm");
});

test("it is drawn anew once for a reading, and for no key", async ({ bench }) => {
  await bench.open();
  await bench.startSession();
  await expect(image(bench)).toBeVisible();
  await bench.page.evaluate(() => {
    globalThis.drawnAnew = 0;
    const count = (changes) => (globalThis.drawnAnew += changes.length);
    new MutationObserver(count).observe(document.querySelector(".plate .lines"), { childList: true });
  });
  const anew = () => bench.page.evaluate(() => globalThis.drawnAnew);
  await bench.key("82.010");
  await expect(bench.value).toHaveText("82.010");
  expect(await anew()).toBe(0);
  await bench.enter();
  await bench.expectAt("Bore 1", "top, along the crank");
  await expect.poll(anew).toBe(1);
});

test("a keyboard enlarges it and puts it away", async ({ bench }) => {
  await bench.open();
  await bench.startSession();
  await enlarge(bench).focus();
  await bench.page.keyboard.press("Enter");
  await expect(drawn(bench)).toHaveAttribute("data-large", "yes");
  await bench.button("Back").focus();
  await bench.page.keyboard.press("Enter");
  await expect(drawn(bench)).toHaveAttribute("data-large", "no");
  await bench.expectAt("Bore 1", "top, thrust");
});
