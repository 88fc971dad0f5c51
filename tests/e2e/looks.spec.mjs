// What a person sees, answered in one tap each, and what is behind it.
import { expect, test } from "./support/bench.mjs";

/** The list of all parts; a part by its name. */
const part = (page, name) => page.locator(".stops").getByRole("button", { name: new RegExp(`^${name}`) });
const look = (page, words) => page.getByRole("group", { name: words });
const answer = (page, words, answer) => look(page, words).getByRole("button", { name: answer, exact: true });
const cause = (page, title) => page.getByTestId("cause").filter({ hasText: title });

async function open(bench, name) {
  await bench.tap(part(bench.page, name));
  await expect(bench.page.getByTestId("part")).toHaveText(name);
}

async function give(bench, words, given) {
  const key = answer(bench.page, words, given);
  await bench.tap(key);
  await expect(key).toHaveAttribute("aria-pressed", "true");
}

test("a knock and a spun shell make a loose bearing likely, and it stays so", async ({ bench, page, site }) => {
  await bench.open();
  await bench.startSession({ cylinders: 4 });
  await bench.to("Look");
  await expect(page.getByTestId("cause")).toHaveCount(0);

  await open(bench, "How it ran");
  await expect(page.getByTestId("look").first().locator("img"), "a sound has no drawing").toHaveCount(0);
  await give(bench, /^A light double rap/, "Seen");
  await bench.tap(bench.button("All parts"));
  await expect(part(page, "How it ran")).toContainText("A light double rap off load");
  await expect(cause(page, "A rod bearing is loose")).toContainText("a hint");
  await expect(page.getByTestId("aftermath")).toHaveCount(0);

  await open(bench, "Rod shells 3");
  const drawn = () => page.locator("img.drawing").evaluateAll((all) => all.every((one) => one.naturalWidth > 0));
  await expect.poll(drawn, "every look has its drawing").toBe(true);
  await give(bench, "Turned in its housing", "Seen");
  await bench.tap(bench.button("All parts"));

  const loose = cause(page, "Cylinder 3: A rod bearing is loose");
  await expect(loose).toContainText("not proved until measured");
  await bench.tap(loose.locator("summary"));
  await expect(loose).toContainText("Rod shells 3: Turned in its housing");
  await expect(loose.getByTestId("needs")).toHaveText("Still to measure: oil clearance too large?");
  await expect(page.getByTestId("aftermath")).toContainText("Replace the oil cooler");

  await bench.allOffline();
  await site.stop();
  await bench.reload();
  await expect(cause(page, "Cylinder 3: A rod bearing is loose"), "the answers were kept").toBeVisible();
  await open(bench, "Rod shells 3");
  await expect(answer(page, "Turned in its housing", "Seen")).toHaveAttribute("aria-pressed", "true");
  await expect.poll(drawn, "and so were the drawings").toBe(true);
});

test("an answer is taken back by a second tap or by undo, and the rest in one tap", async ({ bench, page }) => {
  await bench.open();
  await bench.startSession({ cylinders: 2 });
  await bench.to("Look");
  await open(bench, "Bore 1");
  await expect(bench.button("Undo")).toBeDisabled();
  await give(bench, "A shiny mirror", "Seen");
  await bench.tap(answer(page, "A shiny mirror", "Seen"));
  await expect(answer(page, "A shiny mirror", "Seen")).toHaveAttribute("aria-pressed", "false");
  await bench.tap(bench.button("Undo"));
  await expect(answer(page, "A shiny mirror", "Seen")).toHaveAttribute("aria-pressed", "true");

  await bench.tap(bench.button("Nothing else seen"));
  await expect(bench.button("Nothing else seen")).toBeDisabled();
  await expect(answer(page, "A deep score", "Not seen")).toHaveAttribute("aria-pressed", "true");
  const crack = answer(page, "A crack", "Not seen");
  await expect(crack, "a crack takes a test").toHaveAttribute("aria-pressed", "false");
  await bench.tap(bench.button("Undo"));
  await expect(answer(page, "A deep score", "Not seen")).toHaveAttribute("aria-pressed", "false");

  await bench.tap(page.getByTestId("next"));
  await expect(page.getByTestId("part")).toHaveText("Bore 2");
  await expect(bench.button("Undo"), "only what was answered here is taken back here").toBeDisabled();
});

test("answers that cannot both be are told, and a number outweighs a look", async ({ bench, page }) => {
  await bench.open();
  await bench.startSession({ cylinders: 1 });
  await bench.read("80.300");
  await bench.read("300");
  await bench.read("000");
  await bench.read("000");
  await bench.to("Limits");
  await bench.keepLimits("bore", [["Taper: service limit", "0.1"]]);

  await bench.to("Look");
  await bench.tap(page.getByTestId("before").locator("summary"));
  await expect(page.getByTestId("before")).toContainText("Tag each shell as it comes out");
  await open(bench, "Bore 1");
  await give(bench, "A shiny mirror", "Seen");
  await give(bench, "The hatch still to be seen", "Seen");
  await bench.tap(bench.button("All parts"));
  await expect(page.getByTestId("clash")).toContainText("cannot both be. Look again.");
  const glazed = cause(page, "The bore is glazed");
  await expect(glazed).toContainText("a measurement says no: look again");
  await bench.tap(glazed.locator("summary"));
  await expect(glazed).toContainText("Bore 1, measured: the bore tapered");
});
