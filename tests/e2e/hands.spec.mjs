// What the phone does besides the screen, with stand-ins that write down what they were asked.
import { expect, test } from "./support/bench.mjs";
import { heard, watchPhone } from "./support/phone-parts.mjs";

test.beforeEach(({ page }) => watchPhone(page));

const hear = (page, what) => expect.poll(async () => (await heard(page))[what]);

/** How often a wave goes up and down in a second, and how many parts it has. */
function shape({ rate, samples }) {
  const parts = [];
  let silent = true;
  samples.forEach((height, at) => {
    if (height === 0) return void (silent = true);
    if (silent) parts.push({ turns: 0, length: 0 });
    const part = parts.at(-1);
    if (!silent && Math.sign(height) !== Math.sign(samples[at - 1])) part.turns += 1;
    part.length += 1;
    silent = false;
  });
  return parts.map(({ turns, length }) => Math.round((turns / 2 / length) * rate));
}

test("keys, entries and refusals sound and shake apart from each other", async ({ bench, page }) => {
  await bench.open();
  await bench.startSession();
  await bench.key("8");
  await hear(page, "contexts").toBe(1);
  // The first touch wakes the sounds; some browsers let none before.
  await bench.key("2.0");
  await expect.poll(async () => (await heard(page)).sounds.length).toBeGreaterThan(0);
  const before = await heard(page);
  await bench.key("03");
  await bench.enter();
  await expect(bench.last).toContainText("82.003 mm");
  await hear(page, "shakes").toEqual([...before.shakes, "15", "15", "15"]);
  await bench.enter();
  await expect(bench.said).toHaveText("Nothing is typed yet: type the reading first.");
  await hear(page, "shakes").toEqual([...before.shakes, "15", "15", "15", "40 60 40"]);
  const { sounds, contexts } = await heard(page);
  expect(contexts).toBe(1);
  const [key, again, entry, refusal] = sounds.slice(before.sounds.length).map(shape);
  expect(again).toEqual(key);
  expect(key).toHaveLength(1);
  expect(entry).not.toEqual(key);
  expect(refusal).toHaveLength(2);
  for (const pitch of refusal) expect(pitch).toBeLessThan(Math.min(...key, ...entry) / 2);
});

test("without sound nothing sounds, and it stays so", async ({ bench, page }) => {
  await bench.open();
  const sound = page.locator("fieldset").filter({ has: page.locator("legend", { hasText: /^Sound$/ }) });
  await bench.unfold(sound);
  await bench.tap(sound.locator("label").filter({ hasText: "Off" }));
  await expect(bench.root).toHaveAttribute("data-sound", "off");
  await bench.startSession();
  await bench.read("82.003");
  await bench.read("011");
  await expect(bench.last).toContainText("82.011 mm");
  await hear(page, "shakes").not.toEqual([]);
  expect((await heard(page)).contexts).toBe(0);
  await bench.reload();
  await bench.read("017");
  await expect(bench.last).toContainText("82.017 mm");
  expect((await heard(page)).contexts).toBe(0);
});

test("what was read and the next place are said, digit by digit", async ({ bench, page }) => {
  await bench.open();
  await bench.startSession();
  await bench.read("82.003");
  await expect(bench.last).toContainText("82.003 mm");
  expect((await heard(page)).said, "nobody asked for it").toEqual([]);
  await bench.open();
  await bench.choose("What was read, and the next place");
  await bench.openSession("In-line 4");
  await bench.read("011");
  const read = "Bore 1, top, along the crank: eight two point zero one one millimetres, no limit given. ";
  const said = [`en: ${read}Next: Bore 1, bottom, thrust.`];
  await hear(page, "said").toEqual(said);
  await bench.read("1");
  said.push("en: Type the last 3 digits: 1 so far.");
  await hear(page, "said").toEqual(said);
  await bench.key("23");
  await expect(bench.value).toContainText("123");
  expect((await heard(page)).said, "keys that are taken are not said").toEqual(said);
  const { cut } = await heard(page);
  expect(cut).toBeGreaterThanOrEqual(said.length);
});

test("the screen stays on while measuring, and only then", async ({ bench, page }) => {
  await bench.open();
  expect((await heard(page)).locks).toBe(0);
  await bench.startSession();
  await hear(page, "held").toBe(1);
  expect((await heard(page)).kind).toBe("screen");
  const show = (hidden) =>
    page.evaluate((hidden) => {
      Object.defineProperty(document, "hidden", { configurable: true, value: hidden });
      document.dispatchEvent(new Event("visibilitychange", { bubbles: true }));
    }, hidden);
  await show(true);
  await hear(page, "held").toBe(0);
  await show(false);
  await hear(page, "held").toBe(1);
  await bench.open();
  await bench.choose("As the phone is set");
  await bench.openSession("In-line 4");
  await expect(bench.root).toHaveAttribute("data-measuring", "yes");
  await bench.read("82.003");
  await expect(bench.last).toContainText("82.003 mm");
  expect((await heard(page)).locks).toBe(0);
});

test("leaving the fender screen lets the phone rest", async ({ bench, page }) => {
  await bench.open();
  await bench.startSession();
  await hear(page, "held").toBe(1);
  await page.evaluate(() => (location.hash = "#/"));
  await expect(bench.root).toHaveAttribute("data-measuring", "no");
  await hear(page, "held").toBe(0);
});

test("choices are kept on the phone; what is no choice counts as the usual", async ({ bench, page }) => {
  await bench.open();
  await bench.choose("Left");
  await bench.choose("Night garage");
  await expect(bench.root).toHaveAttribute("data-hand", "left");
  await bench.reload();
  await expect(bench.root).toHaveAttribute("data-hand", "left");
  await expect(bench.root).toHaveAttribute("data-theme", "night");
  await expect(page.getByRole("radio", { name: "Left", exact: true, includeHidden: true })).toBeChecked();
  await bench.startSession();
  await bench.reload();
  await expect(bench.root).toHaveAttribute("data-hand", "left");
  await page.evaluate(() => {
    for (const name of ["hand", "theme", "sound"]) localStorage.setItem(`fenderbench/${name}`, "purple");
  });
  await bench.open();
  await bench.reload();
  await expect(bench.root).toHaveAttribute("data-hand", "right");
  await expect(bench.root).toHaveAttribute("data-theme", "sun");
  await expect(bench.root).toHaveAttribute("data-sound", "on");
});
