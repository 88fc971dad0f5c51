// A slow phone: a touch screen, a quarter of the computer, and if asked for a poor connection.
import { instruments } from "./instruments.mjs";

/** How much slower than this computer the phone is. */
export const SLOWER = 4;

/** Slow 4G: round trip in milliseconds, bytes a second. */
export const SLOW_4G = {
  offline: false,
  latency: 150,
  downloadThroughput: 1_600_000 / 8,
  uploadThroughput: 750_000 / 8,
};

/** A quick person's time from one touch to the next, in milliseconds, never twice the same. */
const pace = () => 90 + 40 * Math.random();

export class Phone {
  /** A page of a context, not slow yet. */
  static async of(context, network) {
    const phone = new Phone();
    phone.page = await context.newPage();
    phone.browser = await context.newCDPSession(phone.page);
    await phone.page.addInitScript(instruments);
    if (network) {
      await phone.browser.send("Network.enable");
      await phone.browser.send("Network.emulateNetworkConditions", network);
    }
    return phone;
  }

  /**
   * Does something as slowly as a phone. Only then: the browser slows a page by keeping its
   * processor busy, at rest too, and would slow whatever else is measured.
   */
  async slowly(doing) {
    await this.slower(SLOWER);
    const done = await doing();
    await this.slower(1);
    return done;
  }

  slower(rate) {
    return this.browser.send("Emulation.setCPUThrottlingRate", { rate });
  }

  /** How many times slower a page really becomes. */
  async slowness() {
    const work = () => this.page.evaluate(() => globalThis.instruments.work());
    const quick = await work();
    return (await this.slowly(work)) / quick;
  }

  /** When something was first painted, in milliseconds from the start. */
  painted() {
    return this.page.evaluate(() => globalThis.instruments.painted());
  }

  /** When the largest part of the page was, before it was touched. */
  largest() {
    return this.page.evaluate(() => globalThis.instruments.largest());
  }

  /** Goes to an address and on, without waiting for more than its first bytes. */
  go(address) {
    return this.page.goto(address, { waitUntil: "commit" });
  }

  /** Touches a button or link as soon as it is there. */
  async touch(name, ...watched) {
    const aim = (aimed) => globalThis.instruments.aim(...aimed);
    const [x, y] = await this.page.evaluate(aim, [name, ...watched]);
    await this.page.touchscreen.tap(x, y);
  }

  /** The same, and how the text of an element answers it; see `answer` of the instruments. */
  async answered(name, selector, wanted = "") {
    await this.touch(name, selector, wanted);
    return this.page.evaluate(() => globalThis.instruments.answer());
  }

  async rest() {
    await this.page.waitForTimeout(pace());
  }
}
