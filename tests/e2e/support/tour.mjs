// Every screen of the app in the states a person brings it to, for what is asked of each alike.
import { expect } from "./bench.mjs";

/**
 * Goes through the app and calls `look(name)` on every screen; `route` is true on the fender
 * screen. What is folded away is looked at opened.
 */
export async function tour(bench, look) {
  const { page } = bench;
  const at = (name) => look(name, { route: false });
  const atRoute = (state) => look(`route, ${state}`, { route: true });
  const unfold = () => page.locator("details").evaluateAll((all) => all.forEach((one) => (one.open = true)));
  const link = (name) => bench.tap(page.getByRole("link", { name, exact: true }));

  await bench.open();
  await at("bench, empty");
  await link("How it works");
  await expect(page.getByTestId("first-plan")).toBeVisible();
  await at("how it works, what you get");
  await bench.tap(bench.button("Next"));
  await expect(bench.keypad).toBeVisible();
  await at("how it works, a reading to type");
  await bench.tap(bench.button("Next"));
  await at("how it works, what is kept where");
  await link("To the bench");
  await link("New session");
  await expect(bench.button("Start measuring")).toBeVisible();
  await bench.choose("Plain: two places, the same two directions");
  await unfold();
  await at("new session");
  await bench.to("Bench");

  await bench.startSession({ cylinders: 6, name: "A six with a name that is quite long" });
  await atRoute("at the start");
  await bench.enter();
  await expect(bench.said).toBeVisible();
  await atRoute("refused");
  await bench.read("82.003");
  await expect(bench.last).toBeVisible();
  await atRoute("after a reading");
  await bench.read("82.011");
  await bench.goTo("Bore 1", "top, thrust");
  await expect(bench.purpose).toBeVisible();
  await atRoute("in place of a reading");
  await bench.tap(bench.button("enter as read"));
  await bench.key("82.00");
  await atRoute("typed as read");
  await bench.goTo("Bore 1", "bottom, thrust");
  await bench.readInFull("82.504");
  await expect(page.getByTestId("slip")).toBeVisible();
  await atRoute("asked about a slip");
  await bench.tap(bench.button("Keep it"));
  await bench.goTo("Main journal 1", "last end, 45° anticlockwise of throw 1");
  await atRoute("at a long place");
  await bench.stations();
  await bench.tap(bench.button("Another level or direction").first());
  await at("stations");

  await bench.to("Limits");
  await unfold();
  await bench.keepLimits("bore", [["Size: service limit", "eighty"]]);
  await expect(bench.refused).toBeVisible();
  await at("limits, refused");
  await bench.keepLimits("bore", [["Size: service limit", "82.1"]]);
  await expect(bench.limits("bore").getByTestId("kept")).toBeVisible();
  await at("limits, kept");
  await bench.to("Measure");
  await atRoute("beyond a limit");

  await bench.to("Set-up");
  await unfold();
  await at("set-up");
  await link("Choose what to measure");
  await expect(page.getByTestId("route-length")).toBeVisible();
  for (const kind of ["run_out", "deck"]) await bench.tap(page.getByTestId(`ask-${kind}`));
  await at("what to measure");
  await bench.to("Measure");
  await bench.goTo("Deck 1", "diagonal from the inlet side at the first end");
  await atRoute("at the longest place");
  await bench.goTo("Run-out, main 1", "full swing in one turn");
  await atRoute("with a gauge to take up");
  await bench.read("0.02");
  await expect(page.getByRole("group", { name: "Hour of the high spot" })).toBeVisible();
  await atRoute("asked for an hour");
  await bench.to("Set-up");
  await link("Set, check or add gauges");
  await expect(page.getByTestId("gauge").first()).toBeVisible();
  await bench.tap(bench.button("Telescoping gauge and micrometer"));
  await unfold();
  await at("gauges");
  await link("How to read a micrometer");
  await expect(page.getByTestId("drawn")).toBeVisible();
  await at("reading a micrometer");
  await bench.tap(bench.button("A quiz of ten"));
  await expect(bench.keypad).toBeVisible();
  await at("quiz, asked");
  await bench.key("1.234");
  await bench.enter();
  await expect(page.getByTestId("answer")).toBeVisible();
  await at("quiz, told");

  await bench.to("Bench");
  await expect(page.getByText("Or try a sample")).toBeVisible();
  await unfold();
  await bench.tap(bench.button("A six-cylinder, complete (invented)"));
  await expect(bench.preview).toBeVisible();
  await at("bench, with a preview");
  await bench.tap(bench.button("Take it in"));
  await expect(bench.preview).toHaveCount(0);
  await at("bench, with sessions");
  await bench.openSession("Sample: hill-climb six (invented)");
  await atRoute("to settle");
  await bench.to("Findings");
  await at("findings");
  await unfold();
  await at("findings, opened");
  await link("What to do");
  await expect(page.getByTestId("plan")).toBeVisible();
  await at("what to do");
  await unfold();
  await at("what to do, opened");
  await bench.to("Look");
  await bench.tap(page.getByRole("button", { name: /^Main shells 1/ }));
  await expect(page.locator("img.drawing").first()).toBeVisible();
  await bench.tap(page.getByRole("group", { name: /^Wiped/ }).getByRole("button", { name: "Seen", exact: true }));
  await at("a part looked at");
  await bench.tap(bench.button("All parts"));
  await expect(page.getByTestId("causes")).toBeVisible();
  await unfold();
  await at("parts to look at");

  await bench.to("Bench");
  await bench.tap(page.getByRole("button", { name: /^Put away A six/ }));
  await expect(bench.away).toBeVisible();
  await at("bench, with a session put away");
  await bench.open("#/0000000000000000/findings");
  await expect(page.getByRole("heading", { name: "Not here" })).toBeVisible();
  await at("no such session");
}

const THEMES = ["sun", "night"];

/** Does something in each theme, by its name, and leaves the first. */
export async function inBothThemes(page, act) {
  const show = (theme) => page.evaluate((theme) => (document.documentElement.dataset.theme = theme), theme);
  for (const theme of THEMES) {
    await show(theme);
    await act(theme);
  }
  await show(THEMES[0]);
}

/** The same thing found on many screens is told once, with where it was found first. */
export class Faults {
  #first = new Map();

  add(where, faults) {
    for (const fault of faults) if (!this.#first.has(fault)) this.#first.set(fault, where);
  }

  get told() {
    return [...this.#first].map(([fault, where]) => `${where}: ${fault}`);
  }
}
