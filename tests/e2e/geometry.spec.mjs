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
const IN_REACH = ["320×640", "360×740", "412×915", "740×360", "1280×800"];

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
    const pad = document.querySelector(".pad");
    const keys = [...pad.querySelectorAll("button")].filter((key) => key.getBoundingClientRect().width);
    const named = (name) => keys.find((key) => (key.ariaLabel ?? key.textContent.trim()).startsWith(name));
    const box = (name) => named(name).getBoundingClientRect();
    // What is seen of a key lies inside its hit area.
    const seen = (name) => {
      const { width, height } = box(name);
      const gap = parseFloat(getComputedStyle(named(name)).borderLeftWidth);
      return { width: width - 2 * gap, height: height - 2 * gap };
    };
    const wide = innerWidth < 360 ? 100 : 112;
    // The figures are for 360 × 740; on a smaller screen ENTER in sight comes first.
    const high = innerWidth < 360 ? 56 : innerHeight < 740 && innerWidth < innerHeight ? 56 : 75;
    for (const digit of "0123456789") {
      const { width, height } = seen(digit);
      if (width < wide) found.push(`${digit} is ${width} px wide, not ${wide}`);
      if (height < high) found.push(`${digit} is ${height} px high, not ${high}`);
    }
    const below = [..."123456789"].filter((digit) => box("0").top <= box(digit).top);
    if (below.length) found.push(`0 is not below ${below.join(", ")}`);

    // ENTER is the largest, and has nothing beside it that takes back.
    const enter = box("ENTER");
    if (enter.width < 1.9 * box("0").width) found.push(`ENTER is ${enter.width} px wide`);
    for (const name of ["take back the last key", "Undo"]) {
      const other = box(name);
      const across = Math.max(other.left - enter.right, enter.left - other.right);
      const down = Math.max(other.top - enter.bottom, enter.top - other.bottom);
      if (Math.max(across, down) < 56) found.push(`${name} is ${Math.max(across, down)} px from ENTER`);
    }

    // Wherever a finger comes down among the digits, a key takes it; in a gap the nearer one does.
    const area = ["1", "3", "7", "9", "0", "ENTER"].map(box);
    const left = Math.min(...area.map((b) => b.left));
    const right = Math.max(...area.map((b) => b.right));
    const top = Math.min(...area.map((b) => b.top));
    const bottom = Math.min(innerHeight, Math.max(...area.map((b) => b.bottom)));
    for (let y = top + 0.5; y < bottom; y += 1.5) {
      for (let x = left + 0.5; x < right; x += 1.5) {
        const key = document.elementFromPoint(x, y)?.closest("button.key");
        if (!key) {
          found.push(`no key takes a touch at ${x}, ${y}`);
          x = right;
          y = bottom;
        }
      }
    }
    return found;
  });
}

/** What of the screen is too small for arm's length, too near to an edge, or cut off. */
function legibilityFaults(page) {
  return page.evaluate(() => {
    const found = [];
    const least = {
      ".number": 56, ".typed": 56, ".feature": 34, ".station": 34, ".verdict": 34, ".unit": 28,
      ".read b": 28, ".read-at": 28, ".told": 28, ".slip": 28, ".purpose p": 28, ".gauge-to-take": 28,
      ".pad .answers button": 28, ".pad .enter": 36, ".pad .zero": 36, ".pad .back": 36,
    };
    const route = document.querySelector(".route");
    for (const [selector, px] of Object.entries(least)) {
      for (const part of route.querySelectorAll(selector)) {
        const size = parseFloat(getComputedStyle(part).fontSize);
        if (size < px) found.push(`${selector} is ${size} px, not ${px}`);
      }
    }
    const value = document.querySelector(".number");
    if (!getComputedStyle(value).fontVariantNumeric.includes("tabular-nums")) found.push("figures are not tabular");
    // Lines of text in sight: each as a box of its own.
    const reading = document.querySelector(".reading").getBoundingClientRect();
    const words = document.createTreeWalker(document.querySelector(".reading"), NodeFilter.SHOW_TEXT);
    const range = document.createRange();
    for (let node = words.nextNode(); node; node = words.nextNode()) {
      const parent = node.parentElement;
      if (!node.textContent.trim() || parent.closest(".unseen, .of, .drawing, [hidden]")) continue;
      range.selectNodeContents(node);
      for (const { left, right, bottom, width } of range.getClientRects()) {
        const name = `“${node.textContent.trim()}”`;
        const [before, after] = innerWidth < innerHeight ? [24, 24] : [24, 0];
        if (!width) continue;
        if (left < before - 0.5) found.push(`${name} begins ${left} px from the edge`);
        if (innerWidth - after + 0.5 < right) found.push(`${name} ends ${innerWidth - right} px from the edge`);
        if (reading.right + 0.5 < right) found.push(`${name} is below the keys`);
        if (!parent.closest(".last") && innerHeight < bottom) found.push(`${name} is below the screen`);
      }
    }
    // What was read last: its word, and its number, whole.
    const last = document.querySelector(".recent");
    if (last?.getBoundingClientRect().width) {
      const { bottom } = last.getBoundingClientRect();
      for (const part of last.querySelectorAll(".verdict, .read")) {
        const by = part.getBoundingClientRect().bottom - bottom;
        if (1 < by) found.push(`${part.textContent} is cut off by ${by} px`);
      }
    }
    for (const key of document.querySelectorAll(".pad button, .pad .button")) {
      if (!key.offsetWidth) continue;
      range.selectNodeContents(key);
      const text = range.getBoundingClientRect();
      const { left, right, top, bottom } = key.getBoundingClientRect();
      // A line of text is measured with room above and below that letters do not fill.
      const room = 0.1 * parseFloat(getComputedStyle(key).fontSize);
      const high = text.top < top - room || bottom + room < text.bottom;
      if (text.left < left - 0.5 || right + 0.5 < text.right || high) {
        found.push(`the words of “${key.textContent}” do not fit it`);
      }
    }
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
      if (width < 76 || height < 56) found.push(`${key.ariaLabel} is ${width} × ${height} px`);
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
      const all = [...(await faults(page)), ...(await keypadFaults(page)), ...(await legibilityFaults(page))];
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
    await bench.read("182.011");
    await bench.goTo("Bore 1", "top, thrust");
    await expect(bench.purpose).toBeVisible();
    await lookAtRoute("in place of a reading");
    await bench.tap(bench.button("enter as read"));
    await bench.key("182.00");
    await lookAtRoute("as read");
    await bench.press("4");
    await bench.enter();
    await bench.tap(bench.button("enter as read"));
    await bench.read("182.504");
    await expect(page.getByTestId("slip")).toBeVisible();
    await look("route, a slip asked about");
    for (const fault of await legibilityFaults(page)) found.push(`route, a slip asked about: ${fault}`);
    await bench.tap(bench.button("Read again"));
    await bench.menu();
    await look("route, the menu");
    for (const fault of await legibilityFaults(page)) found.push(`route, the menu: ${fault}`);
    await bench.tap(bench.button("Keys"));
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
    await bench.tap(page.getByText("Or try a sample"));
    await bench.tap(bench.button("A six-cylinder, complete (invented)"));
    await expect(bench.preview).toBeVisible();
    await look("bench with a preview");
    await bench.tap(bench.button(/^Put away/));
    await expect(bench.away).toBeVisible();
    await look("bench with a session put away");
    expect(found).toEqual([]);
  });
}

for (const [width, height] of [[360, 740], [740, 360]]) {
  test(`for the left hand at ${width}×${height}`, async ({ bench, page }) => {
    await page.setViewportSize({ width, height });
    await bench.open();
    await bench.startSession();
    const sides = () =>
      page.evaluate(() => {
        const left = (selector) => document.querySelector(selector).getBoundingClientRect().left;
        const [enter, zero, digit, back] = [".enter", ".zero", ".key[value='7']", ".back"].map((key) => left(`.pad ${key}`));
        return { enterFirst: enter < zero, back: back < digit, keysFirst: left(".pad .zero") < left(".reading .place") };
      });
    const right = await sides();
    await page.evaluate(() => (document.documentElement.dataset.hand = "left"));
    expect(await keypadFaults(page)).toEqual([]);
    expect((await sides()).enterFirst).toBe(!right.enterFirst);
    // The digits keep their order for whoever knows it by heart.
    await bench.read("82.003");
    await expect(bench.last).toContainText("82.003 mm");
    expect(await keypadFaults(page)).toEqual([]);
    if (height < width) expect((await sides()).keysFirst).toBe(!right.keysFirst);
  });
}

test("a second contact and a bounce are not taken, the next touch is", async ({ bench, page }) => {
  await bench.open();
  await bench.startSession();
  const taken = (contacts) =>
    page.evaluate((contacts) => {
      // Events of the page's own making have the time they are made at: so they are told one.
      for (const [key, atMs] of contacts) {
        const event = new PointerEvent("pointerdown", { bubbles: true, cancelable: true, pointerType: "touch" });
        Object.defineProperty(event, "timeStamp", { value: atMs });
        document.querySelector(`.keys button[value="${key}"]`).dispatchEvent(event);
      }
    }, contacts);
  await taken([["8", 10_000], ["5", 10_030], ["2", 10_200], ["2", 10_260], ["point", 10_400], ["0", 10_600], ["0", 10_700]]);
  await expect(bench.value).toHaveText("82.00▢");
});

test("a key lights up for a touch however short, and differently where it is refused", async ({ bench, page }) => {
  await bench.open();
  await bench.startSession();
  const lit = (key) => page.locator(`.keys button[value="${key}"]`);
  const still = await lit("8").evaluate((key) => getComputedStyle(key).backgroundColor);
  const flashed = async (name) => {
    const button = bench.keypad.getByRole("button", { name, exact: true });
    const lit = button.evaluate(
      (key) =>
        new Promise((resolve) => {
          const tell = () => resolve(getComputedStyle(key).backgroundColor);
          key.addEventListener("animationstart", tell, { once: true });
        }),
    );
    // A touch of a tap: down and up at once.
    await bench.press(name);
    return lit;
  };
  for (const motion of ["no-preference", "reduce"]) {
    await page.emulateMedia({ reducedMotion: motion });
    const taken = await flashed("8");
    await expect(lit("8"), "and goes out").toHaveCSS("background-color", still);
    await bench.press("take back the last key");
    const refused = await flashed("ENTER");
    expect(new Set([still, taken, refused]).size, motion).toBe(3);
    await expect(page.locator(".route").getByRole("alert")).toHaveText("Nothing is typed yet: type the reading first.");
  }
});

test("one polite region tells of a reading and what comes, not of digits", async ({ bench, page }) => {
  await bench.open();
  await bench.startSession();
  const region = page.locator(".route [aria-live=polite]");
  await expect(region).toHaveCount(1);
  await expect(page.locator(".route output, .route [role=status]")).toHaveCount(0);
  const before = await region.textContent();
  await bench.key("82.003");
  expect(await region.textContent()).toBe(before);
  await bench.enter();
  await expect(region).toContainText(
    "Bore 1, top, thrust: 82.003 mm, no limit given. Next: Bore 1, top, along the crank.",
  );
  await expect(page.locator(".route").getByRole("alert")).toHaveCount(0);
});
