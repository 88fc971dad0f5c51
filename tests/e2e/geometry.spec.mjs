// Large enough for an oily thumb, and nothing out of sight, on every screen at every size.
import { expect, test } from "./support/bench.mjs";

const SIZES = [
  { width: 320, height: 640 },
  { width: 360, height: 740 },
  { width: 412, height: 915 },
  { width: 740, height: 360 },
  { width: 1280, height: 800 },
];
/** Where ENTER must be in reach without scrolling. */
const IN_REACH = ["320×640", "360×740", "740×360"];

/** What is wrong on the screen as it stands, as sentences. */
function faults(page) {
  return page.evaluate(() => {
    const found = [];
    const wide = document.documentElement.scrollWidth - document.documentElement.clientWidth;
    if (wide > 0) found.push(`scrolls sideways by ${wide} px`);
    const controls = "a[href], summary, button, label.button, label.choice, input[type=text]";
    for (const control of document.querySelectorAll(controls)) {
      const { height, left, right } = control.getBoundingClientRect();
      if (height === 0) continue;
      const name = control.ariaLabel ?? control.textContent.trim();
      const least = control.matches("a:not(.button), summary") ? 44 : 56;
      if (height < least) found.push(`“${name}” is ${height} px high, not ${least}`);
      if (left < 0 || innerWidth < right) found.push(`“${name}” is beside the screen`);
    }
    return found;
  });
}

/** What is wrong with the keypad. */
function keypadFaults(page) {
  return page.evaluate(() => {
    const found = [];
    const keys = [...document.querySelectorAll(".keys button")];
    const box = (name) => keys.find((key) => key.ariaLabel === name).getBoundingClientRect();
    const wide = innerWidth < 360 ? 98 : 113;
    // The figures are for 360 px; on less, ENTER in sight comes first.
    const high = innerHeight < 480 ? 56 : innerWidth < 360 ? 60 : 76;
    for (const digit of "0123456789") {
      const { width, height } = box(digit);
      if (width < wide) found.push(`${digit} is ${width} px wide, not ${wide}`);
      if (height < high) found.push(`${digit} is ${height} px high, not ${high}`);
    }
    const below = [..."123456789"].filter((digit) => box("0").top <= box(digit).top);
    if (below.length) found.push(`0 is not below ${below.join(", ")}`);
    return found;
  });
}

/** What of ENTER is out of sight while nothing is scrolled. */
function enterFaults(page) {
  return page.evaluate(() => {
    scrollTo(0, 0);
    const enter = document.querySelector(".key.enter").getBoundingClientRect();
    const found = [];
    if (innerHeight < enter.bottom) found.push(`ENTER ends ${enter.bottom - innerHeight} px below the screen`);
    if (innerWidth < enter.right) found.push("ENTER ends beside the screen");
    if (enter.height < 56) found.push(`ENTER is ${enter.height} px high`);
    return found;
  });
}

/** Which hours of the clock are small or out of sight while nothing is scrolled. */
function hourFaults(page) {
  return page.evaluate(() => {
    scrollTo(0, 0);
    const found = [];
    for (const key of document.querySelectorAll(".hours button")) {
      const { width, height, bottom } = key.getBoundingClientRect();
      if (width < 98 || height < 60) found.push(`${key.ariaLabel} is ${width} × ${height} px`);
      if (innerHeight < bottom) found.push(`${key.ariaLabel} ends ${bottom - innerHeight} px below`);
    }
    return found;
  });
}

for (const viewport of SIZES) {
  const size = `${viewport.width}×${viewport.height}`;
  test(`every screen at ${size}`, async ({ bench, page }) => {
    await page.setViewportSize(viewport);
    const found = [];
    const look = async (screen) => {
      for (const fault of await faults(page)) found.push(`${screen}: ${fault}`);
    };
    const lookAtRoute = async (state) => {
      const all = [...(await faults(page)), ...(await keypadFaults(page))];
      if (IN_REACH.includes(size)) all.push(...(await enterFaults(page)));
      for (const fault of all) found.push(`route, ${state}: ${fault}`);
    };

    await bench.open();
    await look("empty bench");
    await bench.tap(page.getByRole("link", { name: "New session" }));
    await expect(bench.button("Start measuring")).toBeVisible();
    await look("new session");
    await bench.to("Bench");
    await bench.startSession({ cylinders: 6, name: "A six with a name that is quite long" });
    await lookAtRoute("at the start");
    await bench.enter();
    await expect(bench.said).toBeVisible();
    await lookAtRoute("after a refusal");
    await bench.read("182.003");
    await expect(bench.last).toBeVisible();
    await lookAtRoute("after a reading");
    await bench.goTo("Bore 1", "top, thrust");
    await expect(bench.purpose).toBeVisible();
    await lookAtRoute("in place of a reading");
    await bench.tap(bench.button("enter as read"));
    await bench.key("182.00");
    await lookAtRoute("as read");
    await bench.goTo("Main journal 1", "last end, 45° anticlockwise of throw 1");
    await lookAtRoute("at the longest place");

    await bench.stations();
    await look("stations");
    await bench.to("Limits");
    await look("limits");
    await bench.keepLimits("bore", [["Size: service limit", "82.1"]]);
    await expect(bench.limits("bore").getByTestId("kept")).toBeVisible();
    await look("limits kept");
    await bench.to("Measure");
    await lookAtRoute("beyond a limit");
    await bench.to("Findings");
    await look("findings");
    await page.locator("details").evaluateAll((all) => all.forEach((one) => (one.open = true)));
    await look("findings opened");
    await bench.tap(page.getByRole("link", { name: "What to do" }));
    await expect(page.getByTestId("plan")).toBeVisible();
    await page.locator("details").evaluateAll((all) => all.forEach((one) => (one.open = true)));
    await look("what to do");
    await bench.to("Look");
    await page.locator("details").evaluateAll((all) => all.forEach((one) => (one.open = true)));
    await look("parts to look at");
    await bench.tap(page.getByRole("button", { name: /^Main shells 1/ }));
    await expect(page.locator("img.drawing").first()).toBeVisible();
    await look("what can be seen of a part");
    await bench.tap(page.getByRole("group", { name: /^Wiped/ }).getByRole("button", { name: "Seen", exact: true }));
    await bench.tap(bench.button("All parts"));
    await page.locator("details").evaluateAll((all) => all.forEach((one) => (one.open = true)));
    await look("what is behind it");
    await bench.to("Set-up");
    await look("set-up");
    await bench.tap(page.getByRole("link", { name: "Choose what to measure" }));
    await expect(page.getByTestId("route-length")).toBeVisible();
    await look("what to measure");
    for (const kind of ["run_out", "deck"]) await bench.tap(page.getByTestId(`ask-${kind}`));
    await bench.to("Measure");
    await bench.goTo("Deck 1", "diagonal from the inlet side at the first end");
    await lookAtRoute("at the longest place of all");
    await bench.goTo("Run-out, main 1", "full swing in one turn");
    await lookAtRoute("with a gauge to take up");
    await bench.read("0.02");
    await expect(page.getByRole("group", { name: "Hour of the high spot" })).toBeVisible();
    await look("route, the hour of a high spot");
    if (IN_REACH.includes(size)) {
      for (const fault of await hourFaults(page)) found.push(`route, the hour: ${fault}`);
    }
    await bench.to("Limits");
    await page.locator("details").evaluateAll((all) => all.forEach((one) => (one.open = true)));
    await look("limits of more kinds");
    await bench.to("Bench");
    await bench.tap(bench.button("A six-cylinder, complete (invented)"));
    await expect(bench.preview).toBeVisible();
    await look("bench with a preview");
    await bench.tap(bench.button(/^Put away/));
    await expect(bench.away).toBeVisible();
    await look("bench with a session put away");
    expect(found).toEqual([]);
  });
}
