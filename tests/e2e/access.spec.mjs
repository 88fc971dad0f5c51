// What stands in the way of assistive devices, on every screen.
import { createRequire } from "node:module";
import { readFile } from "node:fs/promises";
import { expect, test } from "./support/bench.mjs";
import { Faults, inBothThemes, tour } from "./support/tour.mjs";

const axe = await readFile(createRequire(import.meta.url).resolve("axe-core/axe.min.js"), "utf8");

/** All that axe-core holds against the page as it stands, its advice too, as sentences. */
async function violations(page) {
  // As from the console: no script is put into the page, which its policy would refuse.
  if (!(await page.evaluate("typeof axe === 'object'"))) await page.evaluate(axe);
  return page.evaluate(async () => {
    const { violations } = await axe.run(document, { resultTypes: ["violations"] });
    const where = ({ nodes }) => `${nodes[0].html} (${nodes.length})`;
    return violations.map((one) => `${one.id}: ${one.help}: ${where(one)}`);
  });
}

/** What of the page a screen reader would not be told, or told twice. */
function liveFaults(page) {
  return page.evaluate(() => {
    const polite = document.querySelectorAll('[role="status"], [role="log"], [aria-live="polite"]');
    const found = [];
    if (polite.length !== 1) found.push(`${polite.length} places tell politely what happened`);
    if (document.querySelectorAll("h1").length !== 1) found.push("not one title");
    return found;
  });
}

test("axe-core holds nothing against any screen, in both themes, upright and on its side", async ({ bench, page }) => {
  test.setTimeout(300_000);
  const found = new Faults();
  const upright = page.viewportSize();
  const onItsSide = { width: 740, height: 360 };
  await tour(bench, async (name) => {
    found.add(name, await liveFaults(page));
    for (const size of [upright, onItsSide]) {
      await page.setViewportSize(size);
      await inBothThemes(page, async (theme) => {
        found.add(`${name}, ${theme}, ${size.width}×${size.height}`, await violations(page));
      });
    }
    await page.setViewportSize(upright);
  });
  expect(found.told).toEqual([]);
});

test("what happened is told from one place, which is there before", async ({ bench, page }) => {
  await bench.open();
  const place = page.locator(".notices");
  await expect(place).toHaveRole("status");
  await bench.openFile("no file of ours");
  await expect(page.getByRole("alert")).toBeVisible();
  await bench.startSession();
  await expect(place).toHaveRole("alert");
  await bench.read("82.003");
  await expect(page.locator('[aria-live="polite"]')).toContainText("82.003 mm");
  await bench.to("Limits");
  await place.evaluate((element) => (element.dataset.seen = "before"));
  await bench.keepLimits("bore", [["Size: service limit", "82.1"]]);
  await expect(page.locator('.notices[data-seen="before"]')).toContainText("Limits kept.");
  await bench.to("Findings");
  await expect(page).toHaveTitle(/^Findings – In-line/);
});

test("every verdict and comparison is a word and a shape, never a colour alone", async ({ bench, page }) => {
  const shapes = new Map();
  await tour(bench, async (name) => {
    const marks = await page.locator("svg.mark").evaluateAll((all) =>
      all.map((mark) => ({
        mark: mark.dataset.mark,
        path: mark.querySelector("path").getAttribute("d"),
        words: mark.parentElement.textContent.trim(),
      })),
    );
    for (const { mark, path, words } of marks) {
      expect(words, `the word beside ${mark} on ${name}`).toMatch(/[a-z]{2}/);
      expect(shapes.get(mark) ?? path, `one shape for ${mark}`).toBe(path);
      shapes.set(mark, path);
    }
  });
  expect(shapes.size, "marks seen").toBeGreaterThanOrEqual(6);
  expect(new Set(shapes.values()).size, "each its own shape").toBe(shapes.size);
});
