// In reach of a finger and of the eye on every screen, however narrow the screen and however large
// the text: what is to be touched is there, large enough and alone; no word is cut off.
import { expect, test } from "./support/bench.mjs";
import { Faults, tour } from "./support/tour.mjs";

const CONTROLS = "a[href], summary, button, label.button, label.choice, input[type=text], select";

/** What cannot be touched, or is touched by mistake, as sentences. */
function touchFaults(page, { least, route }) {
  return page.evaluate(({ controls, least, route }) => {
    const found = [];
    const shown = [...document.querySelectorAll(controls)].filter(
      (one) => one.checkVisibility({ visibilityProperty: true }) && one.getBoundingClientRect().width,
    );
    const name = (one) => `“${(one.ariaLabel ?? one.textContent).trim().replace(/\s+/g, " ").slice(0, 40)}”`;
    const at = scrollY;
    for (const one of shown) {
      const { width, height } = one.getBoundingClientRect();
      if (route && Math.min(width, height) < least) found.push(`${name(one)} is ${width} × ${height} px`);
      // What is disabled takes no touch.
      if (one.disabled) continue;
      one.scrollIntoView({ block: "center", behavior: "instant" });
      const { left, right, top, bottom } = one.getBoundingClientRect();
      // Corners may be another's: a line of text that wraps is no box.
      const points = [[0.5, 0.5], [0.1, 0.5], [0.9, 0.5]].map(([x, y]) => [
        left + x * (right - left),
        top + y * (bottom - top),
      ]);
      for (const [x, y] of points) {
        const there = document.elementFromPoint(x, y);
        const takes = there && (one.contains(there) || there.closest(controls) === one);
        const inLine = getComputedStyle(one).display === "inline";
        if (!takes && !inLine) {
          found.push(`at ${Math.round(x)}, ${Math.round(y)} of ${name(one)} lies ${there?.outerHTML.slice(0, 60)}`);
          break;
        }
      }
    }
    const boxes = shown.map((one) => [one, one.getBoundingClientRect()]);
    for (const [one, a] of boxes) {
      for (const [other, b] of boxes) {
        if (one === other || one.contains(other) || other.contains(one)) continue;
        if (!(one.compareDocumentPosition(other) & Node.DOCUMENT_POSITION_FOLLOWING)) continue;
        const across = Math.min(a.right, b.right) - Math.max(a.left, b.left);
        const down = Math.min(a.bottom, b.bottom) - Math.max(a.top, b.top);
        // Edges are shared.
        if (2 < across && 2 < down) found.push(`${name(one)} and ${name(other)} overlap`);
      }
    }
    scrollTo(0, at);
    return found;
  }, { controls: CONTROLS, least, route });
}

/** What is cut off, or beside the screen, as sentences. */
function textFaults(page) {
  return page.evaluate(() => {
    const found = [];
    const wide = document.documentElement.scrollWidth - document.documentElement.clientWidth;
    if (wide > 0) found.push(`scrolls sideways by ${wide} px`);
    /** Whether what holds it can be scrolled: a table that is wider than the screen. */
    const scrolls = (element) => {
      for (let box = element; box && box !== document.body; box = box.parentElement) {
        if (["auto", "scroll"].includes(getComputedStyle(box).overflowX)) return true;
      }
      return false;
    };
    const texts = document.createTreeWalker(document.body, NodeFilter.SHOW_TEXT);
    const range = document.createRange();
    for (let node = texts.nextNode(); node; node = texts.nextNode()) {
      const element = node.parentElement;
      // What was read last has the lines that are left, and is told in whole under Go to.
      if (!node.data.trim() || element.closest(".unseen, .of, .last, svg, canvas")) continue;
      if (!element.checkVisibility({ visibilityProperty: true })) continue;
      const name = `“${node.data.trim().slice(0, 40)}”`;
      range.selectNodeContents(node);
      const { left, right, top, bottom, width } = range.getBoundingClientRect();
      if (!width) continue;
      const beyond = left < -0.5 || document.documentElement.clientWidth + 0.5 < right;
      if (beyond && !scrolls(element)) found.push(`${name} goes beyond the screen`);
      // Half a line above and below is room that letters do not fill.
      const room = 0.3 * parseFloat(getComputedStyle(element).fontSize);
      for (let box = element; box && box !== document.body; box = box.parentElement) {
        const { overflowX, overflowY } = getComputedStyle(box);
        const edge = box.getBoundingClientRect();
        if (scrolls(box)) break;
        if (overflowX !== "visible" && (left < edge.left - 1 || edge.right + 1 < right)) {
          found.push(`${name} is cut off at the side`);
        }
        if (overflowY !== "visible" && (top < edge.top - room || edge.bottom + room < bottom)) {
          found.push(`${name} is cut off above or below`);
        }
      }
      const button = element.closest("button, .button");
      if (button) {
        const edge = button.getBoundingClientRect();
        const beyond = left < edge.left - 0.5 || edge.right + 0.5 < right;
        if (beyond || top < edge.top - room || edge.bottom + room < bottom) found.push(`${name} does not fit its key`);
      }
    }
    return found;
  });
}

for (const width of [320, 360, 412]) {
  test(`every control at ${width} px takes its touch and no other’s`, async ({ bench, page }) => {
    test.setTimeout(180_000);
    await page.setViewportSize({ width, height: 740 });
    const faults = new Faults();
    await tour(bench, async (name, { route }) => faults.add(name, await touchFaults(page, { least: 56, route })));
    expect(faults.told).toEqual([]);
  });
}

test("two controls that overlap are found", async ({ bench, page }) => {
  await bench.open();
  const [first] = await page.locator(".button").all();
  await first.evaluate((one) => one.style.setProperty("margin-bottom", "-40px"));
  expect(await touchFaults(page, { least: 56, route: false })).not.toEqual([]);
});

test("a text that is cut off, or goes beyond the screen, is found", async ({ bench, page }) => {
  await bench.open();
  expect(await textFaults(page)).toEqual([]);
  const [title] = await page.locator("h1").all();
  await title.evaluate((one) => Object.assign(one.style, { width: "40px", overflow: "hidden", whiteSpace: "nowrap", overflowWrap: "normal" }));
  expect(await textFaults(page)).toEqual([expect.stringContaining("cut off at the side")]);
  await title.evaluate((one) => Object.assign(one.style, { width: "", overflow: "", marginLeft: "300px" }));
  expect(await textFaults(page)).toContainEqual(expect.stringContaining("beyond the screen"));
});

for (const [width, height] of [[360, 740], [740, 360]]) {
  test(`with text twice as large nothing is cut off at ${width}×${height}`, async ({ bench, page }) => {
    test.setTimeout(180_000);
    await page.setViewportSize({ width, height });
    const browser = await page.context().newCDPSession(page);
    const large = (times) =>
      browser.send("Page.setFontSizes", { fontSizes: { standard: 16 * times, fixed: 13 * times } });
    const faults = new Faults();
    await tour(bench, async (name) => {
      await large(2);
      const root = await page.evaluate(() => getComputedStyle(document.documentElement).fontSize);
      expect(root, "text is twice as large").toBe("32px");
      faults.add(name, await textFaults(page));
      await large(1);
    });
    expect(faults.told).toEqual([]);
  });
}

test("with text spaced out as far as the person wants it nothing is cut off", async ({ bench, page }) => {
  test.setTimeout(180_000);
  // What WCAG 2.2 asks for in 1.4.12.
  await page.addInitScript(() => {
    addEventListener("DOMContentLoaded", () => {
      const spaced = new CSSStyleSheet();
      spaced.replaceSync(`* {
        line-height: 1.5 !important; letter-spacing: 0.12em !important; word-spacing: 0.16em !important;
      } p { margin-bottom: 2em !important; }`);
      document.adoptedStyleSheets = [spaced];
    });
  });
  const faults = new Faults();
  await tour(bench, async (name, { route }) => {
    if (!route) faults.add(name, await textFaults(page));
  });
  expect(faults.told).toEqual([]);
});

/** What the styles could move, whether or not it moves just then, as sentences. */
function moving(page) {
  return page.evaluate(() => {
    const still = /^(background-color|color|border-color)$/;
    const found = [];
    const look = (rules) => {
      for (const rule of rules) {
        if (rule.media && !matchMedia(rule.media.mediaText).matches) continue;
        const names = [...(rule.style ?? [])];
        if (rule instanceof CSSKeyframeRule) {
          const moved = names.filter((name) => !still.test(name));
          if (moved.length) found.push(`${rule.parentRule.name} moves ${moved}`);
        } else {
          const all = ["transition-duration", "scroll-behavior"].filter((name) => names.includes(name));
          for (const name of all) found.push(`${rule.selectorText} has ${name}`);
        }
        if (rule.cssRules) look(rule.cssRules);
      }
    };
    for (const { cssRules } of [...document.styleSheets, ...document.adoptedStyleSheets]) look(cssRules);
    return found;
  });
}

test("with motion reduced nothing moves, and what would is found", async ({ bench, page }) => {
  await page.emulateMedia({ reducedMotion: "reduce" });
  await bench.open();
  await expect(bench.root).toHaveAttribute("data-later", "here");
  expect(await page.evaluate(() => document.styleSheets.length), "both style files").toBe(2);
  expect(await moving(page)).toEqual([]);
  await page.evaluate(() => {
    const sheet = new CSSStyleSheet();
    sheet.replaceSync("a { transition: top 1s; } @keyframes slide { to { left: 9px; } }");
    document.adoptedStyleSheets = [sheet];
  });
  expect(await moving(page)).toHaveLength(2);
});
