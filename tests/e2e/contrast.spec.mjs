// Read in the sun and in the dark: how far every text and every line of a control stands out,
// computed from the colours that are shown.
import { expect, test } from "./support/bench.mjs";
import { Faults, inBothThemes, tour } from "./support/tour.mjs";

/** What is read at arm's length: the number, the keys, and what the reading says. */
// A key alight for a moment after a touch is held to the rest: those that were not touched tell
// how keys are at rest.
const AT_THE_FENDER = ".value, .key:not([data-flash]), .feature, .last, .feature-findings > summary, .reads > span, .worst";
/** Within it, what stands beside those: slots not filled yet, the place, whether it is saved. */
const BESIDE = ".open, .last small, .saved";

/**
 * What stands out too little from what is behind it, as sentences. Contrast as WCAG 2.2 has it:
 * (L1 + 0.05) / (L2 + 0.05).
 */
function faint(page, wanted) {
  return page.evaluate(({ atTheFender, beside, most, least, disabled, lines }) => {
    const numbers = (colour) => {
      const [, inside] = colour.match(/^rgba?\(([^)]*)\)$/) ?? [];
      if (!inside) throw new Error(`a colour that is not computed here: ${colour}`);
      const [red, green, blue, alpha = 1] = inside.split(/[,/ ]+/).filter(Boolean).map(Number);
      return [red, green, blue, alpha];
    };
    const over = ([r, g, b, alpha], below) =>
      [r, g, b].map((one, at) => one * alpha + below[at] * (1 - alpha));
    const behind = (element) => {
      if (!element) return [255, 255, 255];
      const { backgroundColor, backgroundImage, opacity, filter } = getComputedStyle(element);
      if (backgroundImage !== "none" || opacity !== "1") throw new Error(`not plain: ${element.outerHTML}`);
      if (filter !== "none" && element.tagName !== "IMG") throw new Error(`filtered: ${element.outerHTML}`);
      const colour = numbers(backgroundColor);
      return colour[3] === 1 ? colour.slice(0, 3) : over(colour, behind(element.parentElement));
    };
    const luminance = (colour) => {
      const [r, g, b] = colour.map((one) => {
        const part = one / 255;
        return part <= 0.04045 ? part / 12.92 : ((part + 0.055) / 1.055) ** 2.4;
      });
      return 0.2126 * r + 0.7152 * g + 0.0722 * b;
    };
    const contrast = (colour, below) => {
      const [dark, light] = [luminance(over(numbers(colour), below)), luminance(below)].sort((a, b) => a - b);
      return (light + 0.05) / (dark + 0.05);
    };

    const found = [];
    let seen = 0;
    const hold = (what, name, colour, below, wanted) => {
      seen += 1;
      const is = contrast(colour, below);
      if (is < wanted) found.push(`${what} “${name}” ${colour} stands out ${is.toFixed(2)} to 1, not ${wanted}`);
    };
    const isShown = (element) => element.checkVisibility({ visibilityProperty: true }) && !element.closest(".unseen");
    const wantedOf = (element) => {
      if (element.closest(":disabled")) return disabled;
      return element.closest(atTheFender) && !element.closest(beside) ? most : least;
    };
    const short = (text) => text.trim().replace(/\s+/g, " ").slice(0, 40);

    const texts = document.createTreeWalker(document.body, NodeFilter.SHOW_TEXT);
    for (let node = texts.nextNode(); node; node = texts.nextNode()) {
      const element = node.parentElement;
      if (!node.data.trim() || !isShown(element)) continue;
      const style = getComputedStyle(element);
      const colour = element.closest("svg") ? style.fill : style.color;
      hold("text", short(node.data), colour, behind(element), wantedOf(element));
    }
    for (const input of document.querySelectorAll("input:not([type=file])")) {
      if (!isShown(input)) continue;
      if (input.type === "text") {
        const colours = [getComputedStyle(input), getComputedStyle(input, "::placeholder")];
        for (const { color } of colours) hold("text in", input.labels[0]?.textContent, color, behind(input), least);
      }
    }

    const controls = "button, .button, input:not([type=file]), .choice, [aria-current]";
    for (const control of document.querySelectorAll(controls)) {
      if (!isShown(control)) continue;
      const style = getComputedStyle(control);
      const name = control.ariaLabel ?? short(control.textContent);
      for (const side of ["Top", "Right", "Bottom", "Left"]) {
        if (parseFloat(style[`border${side}Width`]) === 0) continue;
        const colour = style[`border${side}Color`];
        // An edge that is there for the measure only.
        if (numbers(colour)[3] === 0) continue;
        hold("the edge of", name, colour, behind(control.parentElement), lines);
      }
    }
    for (const mark of document.querySelectorAll("svg.mark")) {
      if (isShown(mark)) hold("the mark", mark.dataset.mark, getComputedStyle(mark).fill, behind(mark.parentElement), lines);
    }
    const probe = document.createElement("button");
    document.body.append(probe);
    probe.focus({ focusVisible: true });
    const ring = getComputedStyle(probe);
    if (ring.outlineStyle !== "solid" || parseFloat(ring.outlineWidth) < 3) found.push("the focus has no ring of 3 px");
    hold("the ring of the focus", "", ring.outlineColor, behind(document.body), lines);
    probe.remove();
    return { found, seen };
  }, { atTheFender: AT_THE_FENDER, beside: BESIDE, ...wanted });
}

test("everything stands out from what is behind it", async ({ bench, page }) => {
  test.setTimeout(180_000);
  const wanted = {
    sun: { most: 15, least: 7, disabled: 4.5, lines: 3 },
    night: { most: 7, least: 7, disabled: 4.5, lines: 3 },
  };
  const faults = new Faults();
  await tour(bench, (name) =>
    inBothThemes(page, async (theme) => {
      const { found, seen } = await faint(page, wanted[theme]);
      expect(seen, `seen on ${name}`).toBeGreaterThanOrEqual(5);
      faults.add(`${name}, ${theme}`, found);
    }),
  );
  expect(faults.told).toEqual([]);
});

test("a colour that is too faint is found", async ({ bench, page }) => {
  await bench.open();
  await page.locator("h1").evaluate((title) => title.style.setProperty("color", "rgb(16 28 38 / 0.4)"));
  const { found } = await faint(page, { most: 15, least: 7, disabled: 4.5, lines: 3 });
  expect(found).toEqual([expect.stringContaining("“Fenderbench”")]);
});

test("where the person's own colours count, what is chosen is seen without ours", async ({ bench, page }) => {
  await page.emulateMedia({ forcedColors: "active" });
  await bench.open();
  await bench.startSession();
  const keys = bench.keypad.getByRole("button");
  const edges = await keys.evaluateAll((all) => all.map((key) => getComputedStyle(key).borderTopStyle));
  expect(new Set(edges)).toEqual(new Set(["solid"]));
  await bench.to("Look");
  const [here, other] = ["Look", "Findings"].map((name) => page.getByRole("link", { name, exact: true }));
  const weight = (locator) => locator.evaluate((element) => getComputedStyle(element).fontWeight);
  expect(await weight(here)).not.toBe(await weight(other));
  await bench.tap(page.getByRole("button", { name: /^Main shells 1/ }));
  const answer = page.getByRole("group", { name: /^Wiped/ }).getByRole("button");
  await bench.tap(answer.first());
  const ground = (locator) => locator.evaluate((element) => getComputedStyle(element).backgroundColor);
  await expect(answer.first()).toHaveAttribute("aria-pressed", "true");
  expect(await ground(answer.first())).not.toBe(await ground(answer.last()));
  const shape = page.locator("svg.mark path").first();
  await bench.to("Bench");
  const { fill, canvas } = await shape.evaluate((path) => ({
    fill: getComputedStyle(path).fill,
    canvas: getComputedStyle(document.body).backgroundColor,
  }));
  expect(fill).not.toBe(canvas);
});
