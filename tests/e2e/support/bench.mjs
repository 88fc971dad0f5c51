// What a person does with the app, so that journeys read as what happens.
import { expect, test as base } from "@playwright/test";
import { readFile } from "node:fs/promises";
import { startServer } from "./server.mjs";

export { expect };

/**
 *   site      a server of this journey's own
 *   bench     the app on a phone, not opened yet
 *   another   another phone: await another()
 *
 * At the end of every journey each of them must have stayed quiet: nothing asked for elsewhere,
 * nothing refused by the content security policy, no error in the console.
 */
export const test = base.extend({
  site: async ({}, use) => {
    const site = await startServer();
    await use(site);
    await site.stop();
  },
  bench: async ({ page, site, hasTouch }, use) => {
    const bench = await new Bench(page, site, { touch: hasTouch }).watched();
    await use(bench);
    expect(bench.troubles, "the app stayed quiet").toEqual([]);
  },
  another: async ({ browser, site }, use) => {
    const others = [];
    await use(async () => {
      const context = await browser.newContext();
      const bench = await new Bench(await context.newPage(), site).watched();
      others.push({ bench, context });
      return bench;
    });
    for (const { bench, context } of others) {
      expect(bench.troubles, "the other phone stayed quiet").toEqual([]);
      await context.close();
    }
  },
});

/** From one touch of a key to the next a finger takes at least this long, in milliseconds. */
const FINGER_MS = 90;

const KEYS = { ".": "decimal point", ",": "decimal point" };

export class Bench {
  /** What must not happen, as it happened. */
  troubles = [];
  /** How long a person takes from one tap to the next, in milliseconds. */
  pace = 0;
  /** When something was touched last. */
  touched = 0;

  constructor(page, site, { touch = true } = {}) {
    this.page = page;
    this.site = site;
    this.touch = touch;
    this.root = page.locator("html");
    this.keypad = page.getByRole("group", { name: "Keypad" });
    this.tools = page.getByRole("group", { name: "Route" });
    this.menuKey = page.getByRole("button", { name: /^Menu/ });
    this.feature = page.getByTestId("feature");
    this.place = page.getByTestId("place");
    this.progress = page.getByTestId("progress");
    this.value = page.getByTestId("value");
    this.purpose = page.getByTestId("purpose");
    this.said = page.getByTestId("said");
    this.last = page.getByTestId("last");
    this.saved = page.getByTestId("saved");
    this.sessions = page.getByTestId("session");
    this.away = page.getByTestId("away");
    this.preview = page.getByTestId("preview");
    this.refused = page.getByTestId("refused");
    this.notice = page.getByTestId("notice");
    this.notSafe = page.getByTestId("not-safe");
  }

  /** Keeps watch over the page from its first line on. */
  async watched() {
    const { page, site, troubles } = this;
    page.setDefaultTimeout(10_000);
    page.on("pageerror", (error) => troubles.push(`error: ${error.message}`));
    page.on("console", (message) => {
      if (["error", "warning"].includes(message.type())) troubles.push(`console: ${message.text()}`);
    });
    page.on("request", (request) => {
      const own = request.url().startsWith(site.url) || /^(blob|data):/.test(request.url());
      if (!own) troubles.push(`request: ${request.url()}`);
    });
    await page.addInitScript(() => {
      addEventListener("securitypolicyviolation", (event) => {
        console.error(`policy: ${event.violatedDirective} ${event.blockedURI}`);
      });
    });
    return this;
  }

  /** The app in another tab of the same browser. */
  async anotherTab() {
    const tab = new Bench(await this.page.context().newPage(), this.site, this);
    tab.troubles = this.troubles;
    return tab.watched();
  }

  async tap(locator) {
    // The one wait that is not for the app: it is the person's.
    if (this.pace) await this.page.waitForTimeout(this.pace);
    await (this.touch ? locator.tap() : locator.click());
    this.touched = Date.now();
  }

  button(name) {
    return this.page.getByRole("button", { name, exact: true });
  }

  // Opening and moving about.

  async open(hash = "") {
    await this.page.goto(this.site.url + hash);
    await this.started();
  }

  async reload() {
    await this.page.reload();
    await this.started();
  }

  async started() {
    await expect(this.root).toHaveAttribute("data-started", "yes");
  }

  async readyOffline() {
    await expect(this.root).toHaveAttribute("data-worker", "ready");
  }

  /** What a start does not need, the drawings and samples, is kept a while after it. */
  async allOffline() {
    await expect(this.root).toHaveAttribute("data-rest", "kept");
  }

  /** Goes to a screen by the bar: Bench, Measure, Findings, Limits, Set-up. */
  async to(screen) {
    if (await this.menuKey.isVisible()) {
      if (screen === "Measure") return;
      await this.menu();
    }
    const link = this.page.getByRole("navigation").getByRole("link", { name: screen, exact: true });
    await this.tap(link);
    if (screen === "Measure") await expect(this.feature).toBeVisible();
    else if (screen !== "Bench") await expect(link).toHaveAttribute("aria-current", "page");
    else await expect(this.page.getByRole("heading", { name: "Fenderbench" })).toBeVisible();
  }

  /** Opens the menu of the fender screen, if it is not open. */
  async menu() {
    if ((await this.menuKey.getAttribute("aria-expanded")) === "false") await this.tap(this.menuKey);
    await expect(this.menuKey).toHaveAttribute("aria-expanded", "true");
  }

  // The set-up.

  /** A new session: an in-line engine, as many cylinders as asked for, all else as offered. */
  async startSession({ cylinders = 4, unit = "mm", name = "" } = {}) {
    await this.tap(this.page.getByRole("link", { name: "New session" }));
    if (name) await this.page.getByLabel("Name").fill(name);
    const stepper = this.page.getByRole("group", { name: "Cylinders", exact: true });
    const step = cylinders < 4 ? "Cylinders: one less" : "Cylinders: one more";
    for (let n = 4; n !== cylinders; n += Math.sign(cylinders - 4)) await this.tap(this.button(step));
    await expect(stepper.locator("output")).toHaveText(String(cylinders));
    if (unit !== "mm") await this.choose(unit);
    await this.tap(this.button("Start measuring"));
    await expect(this.feature).toHaveText("Bore 1");
  }

  /** Opens what something is folded away in. */
  async unfold(locator) {
    await expect(locator).toBeAttached();
    const fold = this.page.locator("details:not([open])").filter({ has: locator });
    if (await fold.count()) await this.tap(fold.locator("> summary"));
  }

  /** Takes one of a few answers. */
  async choose(answer) {
    const radio = this.page.getByRole("radio", { name: answer, exact: true, includeHidden: true });
    await this.unfold(radio);
    await this.tap(this.page.locator("label").filter({ has: radio }));
    await expect(radio).toBeChecked();
  }

  /** The part of the limits screen for a kind: bore, piston, main_journal, rod_journal. */
  limits(kind) {
    return this.page.getByTestId(`limits-${kind}`);
  }

  /** The field of a limit, by the two parts of its label: "Size: new, low". */
  limit(kind, label) {
    const [what, which] = label.split(": ");
    return this.limits(kind).getByLabel(new RegExp(`^${what}[:, ]*${which}$`));
  }

  /** Types limits into their fields and keeps them. */
  async keepLimits(kind, limits) {
    for (const [label, text] of limits) await this.limit(kind, label).fill(text);
    await this.tap(this.limits(kind).getByRole("button", { name: "Keep these limits" }));
  }

  // Measuring.

  async expectAt(feature, place) {
    await expect(this.feature).toHaveText(feature);
    await expect(this.place).toHaveText(place);
  }

  /** Taps the keys of a number, without ENTER. */
  async key(text) {
    for (const char of text) await this.press(KEYS[char] ?? char);
  }

  async enter() {
    await this.press("ENTER");
  }

  /** Taps a key as quickly as a finger can; what is quicker is taken for a bounce. */
  async press(name) {
    const early = this.touched + FINGER_MS - Date.now();
    if (0 < early) await this.page.waitForTimeout(early);
    await this.tap(this.keypad.getByRole("button", { name, exact: true }));
  }

  /**
   * Reads a value: taps its keys and ENTER. Of a size in full only the last three digits where the
   * keypad completes it, and of three digits all of it where it does not yet.
   */
  async read(text) {
    await this.key(await this.wanted(text));
    await this.enter();
  }

  /** The same, all of it typed wherever it is. */
  async readInFull(text) {
    const asRead = this.button("enter as read");
    if (await asRead.isVisible()) await this.tap(asRead);
    await this.read(text);
  }

  async wanted(text) {
    const [lead, typed] = await this.value.evaluate((value) =>
      [".lead", ".typed"].map((part) => value.querySelector(part).textContent),
    );
    if (text.includes(".")) this.full = text;
    if (typed) return text;
    if (/\d/.test(lead)) return text.replace(".", "").slice(-3);
    if (lead || !this.full || !/^\d{3}$/.test(text)) return text;
    const digits = [...text];
    const last = [...this.full].reverse().map((c) => (/\d/.test(c) && digits.pop()) || c);
    return last.reverse().join("");
  }

  /** Reads a value with a keyboard, or with a gauge that types. */
  async type(text) {
    await this.page.keyboard.type(text);
    await this.page.keyboard.press("Enter");
  }

  async expectSaved() {
    await expect(this.saved).toHaveText("saved");
  }

  /** A tool of the fender screen; Repeat and Redo are in its menu. */
  tool(name) {
    return this.button(name);
  }

  /** Opens the list of all stations. */
  async toStations() {
    await this.menu();
    await this.tap(this.page.getByRole("navigation").getByRole("link", { name: "Go to" }));
    await expect(this.page.getByRole("heading", { name: "Go to" })).toBeVisible();
  }

  /** What stands at each station, by feature and place. */
  async stations() {
    await this.toStations();
    return this.page.locator(".stops:not([data-testid])").evaluateAll((sections) =>
      sections.flatMap((section) =>
        [...section.querySelectorAll("button[data-read]")].map((row) => [
          `${section.querySelector("h2").textContent}, ${row.querySelector("span").textContent}`,
          row.querySelector("b").textContent.replaceAll("\u00a0", " "),
        ]),
      ),
    );
  }

  /** Goes to a station by the list of them. */
  async goTo(feature, place) {
    await this.toStations();
    const heading = this.page.getByRole("heading", { name: feature, exact: true });
    const of = this.page.locator(".stops").filter({ has: heading });
    await this.tap(of.getByRole("button", { name: new RegExp(`^${place}`) }));
    await this.expectAt(feature, place);
  }

  // The findings.

  /** Every feature with its rows, as shown. */
  async findings() {
    await this.to("Findings");
    return this.page.getByTestId("feature-findings").evaluateAll((features) =>
      features.map((feature) => ({
        feature: feature.querySelector("summary b").textContent,
        mark: feature.querySelector("summary .mark").dataset.mark,
        words: feature.querySelector("summary span").textContent,
        missing: feature.querySelector(".missing")?.textContent ?? "",
        rows: [...feature.querySelectorAll("[data-testid=finding]")].map((row) => ({
          label: row.querySelector("th").textContent,
          value: row.querySelector("td").firstChild.textContent,
          mark: row.querySelector(".mark").dataset.mark,
          words: row.querySelector(".reads span").textContent,
          guide: row.querySelector(".reads small.guide")?.textContent ?? "",
        })),
      })),
    );
  }

  // Files.

  /** Exports the open session, from the set-up or by another button; gives name and text. */
  async exportFile(button) {
    if (!button) {
      await this.to("Set-up");
      button = this.page.locator(".sheet").getByTestId("export");
    }
    const download = this.page.waitForEvent("download");
    await this.tap(button);
    const file = await download;
    return { name: file.suggestedFilename(), text: await readFile(await file.path(), "utf8") };
  }

  /** Chooses a file on the bench; `content` is text or bytes. */
  async openFile(content, name = "session.json") {
    const file = { name, mimeType: "application/json", buffer: Buffer.from(content) };
    await this.page.getByTestId("file").setInputFiles(file);
  }

  /** Opens a file, looks at what it holds, and takes it in. */
  async takeIn(content) {
    await this.openFile(content);
    await this.tap(this.preview.getByRole("button", { name: "Take it in" }));
    await expect(this.preview).toHaveCount(0);
  }

  /** Opens a session on the bench by its name. */
  async openSession(name) {
    const link = this.sessions.getByRole("link").filter({ hasText: name });
    await this.tap(link);
    await expect(this.feature).toBeVisible();
  }

  /** Everything the browser keeps for the app. */
  stored() {
    return this.page.evaluate(async () => {
      const open = indexedDB.open("fenderbench");
      const database = await new Promise((resolve, reject) => {
        open.onsuccess = () => resolve(open.result);
        open.onerror = () => reject(open.error);
      });
      const all = database.transaction("journal").objectStore("journal").getAll();
      const journal = await new Promise((resolve) => {
        all.onsuccess = () => resolve(all.result);
      });
      database.close();
      return { local: { ...localStorage }, journal };
    });
  }
}
