// A micrometer is set by steps and its reading taken to the keypad; a quiz of ten.
import { expect, test } from "./support/bench.mjs";

/** Opens the reading helper the way somebody gets there from the fender screen. */
async function toHelper(bench) {
  await bench.toStations();
  await bench.tap(bench.page.getByRole("link", { name: "How do I read this?" }));
  await expect(bench.page.getByRole("heading", { name: "Reading a micrometer" })).toBeVisible();
}

async function press(bench, name, times = 1) {
  for (let n = 0; n < times; n += 1) await bench.tap(bench.button(name));
}

/** What is seen on the scales of an inch micrometer with vernier, by the words of the drawing. */
async function seen(page) {
  const words = await page.getByTestId("drawn").getByRole("img").getAttribute("aria-label");
  const [, start] = words.match(/^(\d+)–/);
  const counts = [...words.matchAll(/: (\d+)/g)].map(([, count]) => Number(count));
  const [numbers, lines, thimble, vernier] = counts;
  expect(counts).toHaveLength(4);
  return Number(start) * 10_000 + numbers * 1_000 + lines * 250 + thimble * 10 + vernier;
}

const inches = (tenths) => (tenths / 10_000).toFixed(4);

/** Controls that are too small, and what is beside the screen. */
function faults(page) {
  return page.evaluate(() => {
    const found = [];
    const wide = document.documentElement.scrollWidth - document.documentElement.clientWidth;
    if (wide > 0) found.push(`scrolls sideways by ${wide} px`);
    for (const control of document.querySelectorAll(".micrometer button, .micrometer label.choice")) {
      const { width, height, left, right } = control.getBoundingClientRect();
      const name = control.ariaLabel ?? control.textContent;
      if (Math.min(width, height) < 56) found.push(`“${name}” is ${width} × ${height} px`);
      if (left < 0 || innerWidth < right) found.push(`“${name}” is beside the screen`);
      // A key of the keypad reaches into the gaps beside it.
      const spills = control.clientWidth < control.scrollWidth;
      if (spills && !control.matches(".key")) found.push(`“${name}” overflows`);
    }
    return found;
  });
}

test("a reading set by steps goes to the keypad, and ENTER takes it", async ({ bench, page }) => {
  await bench.open();
  await bench.startSession({ cylinders: 1 });
  await bench.goTo("Main journal 1", "first end, in line with throw 1");
  await toHelper(bench);
  await press(bench, "Range +25", 2);
  await press(bench, "Sleeve +5");
  await press(bench, "Sleeve +0.5");
  await press(bench, "Thimble +0.05", 6);
  await press(bench, "Thimble −0.01", 2);
  await press(bench, "Vernier +0.001", 3);
  await expect(page.getByTestId("sum").locator("li").last()).toHaveText(/55\.783$/);
  expect(await faults(page)).toEqual([]);
  await bench.tap(page.getByRole("button", { name: /^55\.783 mm to the keypad: Main journal 1/ }));
  await bench.expectAt("Main journal 1", "first end, in line with throw 1");
  await expect(bench.value).toHaveText("55.783");
  // Nothing is entered but by the person.
  await expect(bench.progress).toContainText(/^0 of/);
  await bench.enter();
  await expect(bench.last).toContainText("55.783 mm");
  await bench.expectSaved();
});

test("a micrometer goes as far as its range, and another one is taken", async ({ bench, page }) => {
  await bench.open();
  await bench.startSession({ cylinders: 1 });
  await toHelper(bench);
  await expect(bench.button("Vernier −0.001")).toBeDisabled();
  await expect(bench.button("Range −25")).toBeDisabled();
  await press(bench, "Sleeve +5", 5);
  await expect(bench.button("Vernier +0.001")).toBeDisabled();
  await press(bench, "Thimble −0.01");
  await expect(page.getByTestId("sum").locator("li").last()).toHaveText(/24\.990$/);
  await bench.choose("0.001 in");
  await expect(bench.button("Vernier +0.001")).toHaveCount(0);
  await press(bench, "Thimble +.005");
  await expect(page.getByTestId("sum").locator("li").last()).toHaveText(/0\.005$/);
  // The gauge in use reads millimetres.
  await expect(page.getByRole("button", { name: /to the keypad/ })).toHaveCount(0);
});

test("a quiz of ten: nine right, one a turn of the thimble off", async ({ bench, page }) => {
  await bench.open();
  await bench.startSession({ cylinders: 1, unit: "in" });
  await toHelper(bench);
  await bench.tap(bench.button("A quiz of ten"));
  const title = page.getByTestId("title");
  let truth = "";
  for (let n = 1; n <= 10; n += 1) {
    await expect(title).toHaveText(`${n} of 10: what does it read?`);
    await expect(page.getByTestId("drawn").locator(".on")).toHaveCount(0);
    if (n === 1) expect(await faults(page)).toEqual([]);
    const reads = await seen(page);
    const typed = inches(reads + (n === 4 ? 250 : 0));
    await bench.key(typed);
    await bench.enter();
    const answer = page.getByTestId("answer");
    if (n === 4) {
      truth = inches(reads);
      await expect(answer).toContainText(`${typed}: wrong. One turn of the thimble too much`);
    } else {
      await expect(answer).toHaveText(`${typed}: right.`);
    }
    await expect(page.getByTestId("drawn").locator(".on")).toHaveCount(3);
    await bench.tap(bench.button("Next"));
  }
  await expect(title).toHaveText("9 of 10 right");
  await expect(page.getByTestId("wrong")).toHaveCount(1);
  await expect(page.getByTestId("sum").locator("li").last()).toHaveText(new RegExp(`${truth}$`));
  await bench.tap(bench.button("Back to the helper"));
  await expect(page.getByRole("heading", { name: "Reading a micrometer" })).toBeVisible();
});
