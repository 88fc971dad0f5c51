// What to do with a torn-down engine, and how one answer or one reading changes it.
import { readFile } from "node:fs/promises";
import { expect, test } from "./support/bench.mjs";

const SAMPLE = new URL("../../public/samples/quarry-v-twin.json", import.meta.url);
const SCORE = "bore_score/1/whole/centre/0";

const total = (page) => page.getByTestId("total");
const line = (page, about) =>
  page.getByTestId("plan-line").filter({ has: page.locator("summary b").getByText(about, { exact: true }) });

async function toPlan(bench) {
  await bench.to("Findings");
  await bench.tap(bench.page.getByRole("link", { name: "What to do", exact: true }));
  await expect(bench.page.getByRole("heading", { name: "What to do", exact: true })).toBeVisible();
}

/** Opens a line of the plan and taps what stands behind it. */
async function choose(bench, about, choice) {
  const one = line(bench.page, about);
  await bench.tap(one.locator("summary"));
  await bench.tap(one.getByRole("button", { name: new RegExp(`^${choice}`) }));
}

async function price(page, label, text) {
  const field = page.getByLabel(label, { exact: true });
  await field.fill(text);
  await field.blur();
}

async function openSample(bench) {
  await bench.tap(bench.button("A V-twin with a spun bearing (invented)"));
  await bench.tap(bench.button("Take it in"));
  await bench.openSession("Sample: quarry V-twin (invented)");
  await toPlan(bench);
}

test("the look that the plan asks for changes it, without a network too", async ({ bench, page, site }) => {
  await bench.open();
  await bench.allOffline();
  await openSample(bench);
  await expect(page.getByTestId("plan")).toContainText("The cheapest by your prices");
  await expect(total(page)).toHaveText("All together 954.00");
  await expect(line(page, "Rods").locator("summary")).toContainText("replace the rod");
  await expect(page.getByTestId("next")).toContainText("Rod 2: test for cracks");
  await expect(page.getByTestId("next")).toContainText("Rods: resize the big end");

  await site.stop();
  await bench.reload();
  await expect(total(page), "the plan is there without a network").toHaveText("All together 954.00");
  await bench.to("Look");
  await bench.tap(page.locator(".stops").getByRole("button", { name: /^Rod 2/ }));
  const crack = page.getByRole("group", { name: "A crack in the rod or its cap, by a test" });
  await bench.tap(crack.getByRole("button", { name: "Not seen", exact: true }));
  await toPlan(bench);
  await expect(line(page, "Rods").locator("summary")).toContainText("resize the big end");
  await expect(total(page)).toHaveText("All together 864.00");
  await expect(page.getByTestId("next")).not.toContainText("test for cracks");
});

test("the reading that the plan asks for changes it", async ({ bench, page }) => {
  const file = JSON.parse(await readFile(SAMPLE, "utf8"));
  const { readings } = file.session;
  const [score] = Object.keys(readings).filter((id) => readings[id].station === SCORE);
  delete readings[score];
  await bench.open();
  await bench.takeIn(JSON.stringify(file));
  await bench.openSession("Sample: quarry V-twin (invented)");
  await toPlan(bench);
  const bores = line(page, "Bores").locator("summary");
  await expect(bores).toContainText("bore and hone all to 0.020 in over, a sleeve in bore 1");
  await expect(total(page)).toHaveText("All together 1144.00");
  await expect(page.getByTestId("next")).toContainText("Bore 1: measure how deep the scores are");

  await bench.to("Measure");
  await bench.toStations();
  const heading = page.getByRole("heading", { name: "Score in bore 1", exact: true });
  const stops = page.locator(".stops").filter({ has: heading });
  await bench.tap(stops.getByRole("button", { name: /^deepest/ }));
  await expect(bench.feature).toHaveText("Score in bore 1, bank 1");
  await bench.read("0.0025");
  await bench.expectSaved();
  await toPlan(bench);
  await expect(bores).not.toContainText("sleeve");
  await expect(bores).toContainText("bore and hone all to 0.020 in over");
  await expect(total(page)).toHaveText("All together 954.00");
});

test("a choice is fixed and left again, and prices decide", async ({ bench, page }) => {
  await bench.open();
  await openSample(bench);
  const journals = line(page, "Main journals").locator("summary");
  await expect(journals).toContainText("polish");
  await choose(bench, "Main journals", "grind all to 0.010 in under");
  await expect(journals).toContainText("grind all to 0.010 in under");
  await expect(journals).toContainText("fixed by you");
  await expect(line(page, "Main shells").locator("summary")).toContainText("for the journals as machined");
  await choose(bench, "Main journals", "Leave it to the plan");
  await expect(journals).not.toContainText("fixed by you");
  await expect(journals).toContainText("polish");
  await expect(total(page)).toHaveText("All together 954.00");

  await price(page, "1 × Rod", "100");
  await expect(total(page)).toHaveText("All together 914.00");
  await price(page, "1 × Rod", "-3");
  await expect(bench.notice).toContainText("A price cannot be less than nothing; leave it blank");
  await expect(total(page), "what was refused changes nothing").toHaveText("All together 914.00");
  await bench.tap(bench.notice.getByRole("button", { name: "Put away" }));
  await price(page, "1 × Rod", "");
  await expect(total(page)).toHaveText("One price is missing for the sum.");
  await expect(page.getByTestId("plan")).toContainText("The lightest that is proved to be enough");
});

test("halves of two sizes are mixed by choice alone, with what speaks against it", async ({ bench, page }) => {
  await bench.open();
  await openSample(bench);
  const mixing = page.getByTestId("mixing");
  const option = (name) => mixing.getByRole("button", { name });
  await bench.tap(mixing.locator("summary"));
  await expect(mixing).toContainText("Several service manuals forbid mixing in one bore");
  await expect(option("another size from place to place")).toHaveAttribute("aria-pressed", "true");
  await bench.tap(option("halves of two sizes as well"));
  await expect(option("halves of two sizes as well")).toHaveAttribute("aria-pressed", "true");
  await bench.tap(option(/^2/));
  await expect(option(/^2/)).toHaveAttribute("aria-pressed", "true");
  const sizes = page.getByTestId("sizes");
  await expect(sizes).toContainText("3.5092 in if evenly worn, at 3.51385 in if worn on one side");
});
