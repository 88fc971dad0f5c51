// The shape of the wear is seen: charts on the screen, their tables, and on paper.
import { readFile } from "node:fs/promises";
import { expect, test } from "./support/bench.mjs";

const SAMPLES = ["hill-climb-six", "pump-twin", "quarry-v-twin"];

async function open(bench, name) {
  const file = new URL(`../../public/samples/${name}.json`, import.meta.url);
  await bench.open();
  await bench.takeIn(await readFile(file, "utf8"));
  await bench.openSession("Sample");
  await bench.to("Findings");
}

/** Of every chart that can be seen: its name, and how many of its pixels are drawn. */
function drawn(page) {
  return page.locator(".plot canvas").evaluateAll((all) =>
    all
      .filter((canvas) => canvas.checkVisibility())
      .map((canvas) => {
        const { width, height } = canvas;
        // Read from a copy: the browser would draw one that is read often more slowly.
        const copy = new OffscreenCanvas(width, height).getContext("2d", { willReadFrequently: true });
        copy.drawImage(canvas, 0, 0);
        const { data } = copy.getImageData(0, 0, width, height);
        let pixels = 0;
        for (let at = 3; at < data.length; at += 4) if (data[at]) pixels += 1;
        return { name: canvas.ariaLabel, width, css: canvas.clientWidth, pixels };
      }),
  );
}

/** No chart that can be seen is blank, and there are so many at least. */
async function expectDrawn(page, least) {
  await expect
    .poll(async () => {
      const all = await drawn(page);
      const blank = all.filter(({ pixels }) => pixels < 100).map(({ name }) => name);
      return { blank, enough: least <= all.length };
    })
    .toEqual({ blank: [], enough: true });
}

const unfold = (page, selector) =>
  page.locator(selector).evaluateAll((all) => all.forEach((one) => (one.open = true)));

for (const name of SAMPLES) {
  test(`the findings of ${name} are drawn, and their tables say the same`, async ({ bench, page }) => {
    await open(bench, name);
    await expectDrawn(page, 4);
    const seen = await drawn(page);
    const ratio = await page.evaluate(() => Math.max(devicePixelRatio, 2));
    for (const { name, width, css } of seen) {
      expect(Math.abs(width - css * ratio), name).toBeLessThan(2);
    }
    // What is folded is drawn when it is unfolded.
    await unfold(page, "details.settled, details.feature-findings");
    await expectDrawn(page, seen.length + 2);

    const findings = await page.getByTestId("feature-findings").evaluateAll((all) =>
      Object.fromEntries(
        all.map((one) => [
          one.querySelector("summary b").textContent,
          [...one.querySelectorAll("[data-testid=finding]")].map((row) => [
            row.querySelector("td").firstChild.textContent,
            row.querySelector(".reads span").textContent,
          ]),
        ]),
      ),
    );
    const tables = await page.locator("section > .chart table").evaluateAll((all) =>
      all.map((table) =>
        [...table.tBodies[0].rows].map((row) => [...row.cells].map((cell) => cell.textContent)),
      ),
    );
    let compared = 0;
    for (const [feature, smallest, largest, , words] of tables.flat()) {
      if (smallest === "—") continue;
      const values = findings[feature].map(([value]) => value);
      expect(values, feature).toContain(smallest);
      expect(values, feature).toContain(largest);
      expect(findings[feature].map(([, said]) => said), feature).toContain(words);
      compared += 1;
    }
    expect(compared).toBeGreaterThan(3);
  });
}

test("a chart follows the width, the theme and the keyboard", async ({ bench, page }) => {
  await open(bench, "hill-climb-six");
  await expectDrawn(page, 4);
  const [before] = await drawn(page);
  await page.setViewportSize({ width: 740, height: 360 });
  await expect.poll(async () => (await drawn(page))[0].width).toBeGreaterThan(before.width);
  const ink = () =>
    page
      .locator(".plot canvas")
      .first()
      .evaluate((canvas) => {
        const { width, height } = canvas;
        const copy = new OffscreenCanvas(width, height).getContext("2d", { willReadFrequently: true });
        copy.drawImage(canvas, 0, 0);
        const { data } = copy.getImageData(0, 0, width, height);
        const shades = new Set();
        for (let at = 0; at < data.length; at += 4) {
          if (data[at + 3] === 255) shades.add(data.slice(at, at + 3).join());
        }
        return [...shades];
      });
  const meant = async () => {
    const colour = await page.locator("body").evaluate((body) => getComputedStyle(body).color);
    return colour.match(/\d+/g).join();
  };
  const sun = [await ink(), await meant()];
  await bench.to("Bench");
  await page.getByText("This phone").click();
  await page.getByText("Night garage").click();
  await bench.openSession("Sample");
  await bench.to("Findings");
  await expectDrawn(page, 4);
  const night = [await ink(), await meant()];
  for (const [shades, meant] of [sun, night]) expect(shades).toContain(meant);
  expect(night[1]).not.toBe(sun[1]);
  // The table is beside it, for whom the picture is none.
  const chart = page.getByTestId("chart").first();
  await chart.getByText("As a table").focus();
  await page.keyboard.press("Enter");
  await expect(chart.getByRole("columnheader", { name: "Largest" })).toBeVisible();
  await expect(page.getByRole("img", { name: "Bores: Size" })).toBeVisible();
});

for (const format of ["A4", "Letter"]) {
  test(`everything fits on ${format}`, async ({ bench, page }) => {
    await open(bench, "hill-climb-six");
    await expectDrawn(page, 4);
    await expect(page).toHaveTitle("Findings – Sample: hill-climb six (invented)");
    const charts = await page.locator(".plot canvas").count();
    const isNew = (all) => all.filter(({ width }) => width === 300).length;
    const canvases = page.locator(".plot canvas");
    expect(await canvases.evaluateAll(isNew), "folded charts wait").toBeGreaterThan(5);
    await page.pdf({ format });
    expect(await canvases.evaluateAll(isNew), "and are drawn for paper").toBe(0);
    expect(await page.locator("details[data-folded]").count(), "and folded again").toBe(0);

    // The same by hand, to look at it: 15 mm of margin, 96 px for an inch.
    const width = Math.floor(((format === "A4" ? 210 : 215.9) - 30) * (96 / 25.4));
    await page.setViewportSize({ width, height: 900 });
    await page.emulateMedia({ media: "print" });
    await page.evaluate(() => dispatchEvent(new Event("beforeprint")));
    await expectDrawn(page, charts);
    const found = await page.evaluate(() => {
      const wide = [];
      for (const one of document.querySelectorAll(".findings *")) {
        const { right, width } = one.getBoundingClientRect();
        if (width && innerWidth + 1 < right) wide.push(`${one.tagName} ${one.textContent.slice(0, 40)}`);
      }
      const seen = (selector) =>
        [...document.querySelectorAll(selector)].some((one) => one.checkVisibility());
      return {
        wide,
        navigation: seen(".bar, button"),
        folded: document.querySelectorAll("details:not([open])").length,
        named: seen(".on-paper"),
        paper: getComputedStyle(document.documentElement).backgroundColor,
      };
    });
    expect(found).toEqual({ wide: [], navigation: false, folded: 0, named: true, paper: "rgb(255, 255, 255)" });
  });
}
