// A browser with a profile on disk: closed or killed, it starts again with what was kept.
import { spawn } from "node:child_process";
import { once } from "node:events";
import { mkdtemp, rm } from "node:fs/promises";
import { tmpdir } from "node:os";
import { join } from "node:path";
import { createInterface } from "node:readline";
import { Bench, expect, test as base } from "./bench.mjs";

export { expect };

/**
 *   phone                 a phone that is switched off
 *   await phone.start()   starts its browser; gives the bench, not opened yet
 *   await phone.quit()    closes the browser properly
 *   await phone.kill()    ends every process of it at once, as an empty battery does
 */
export const test = base.extend({
  phone: async ({ playwright, launchOptions, site }, use) => {
    const profile = await mkdtemp(join(tmpdir(), "fenderbench-phone-"));
    const phone = new Phone(playwright.chromium, launchOptions, profile, site);
    await use(phone);
    await phone.kill();
    await rm(profile, { recursive: true, force: true, maxRetries: 5 });
    expect(phone.troubles, "the app stayed quiet").toEqual([]);
  },
});

class Phone {
  troubles = [];

  constructor(chromium, launchOptions, profile, site) {
    Object.assign(this, { chromium, launchOptions, profile, site });
  }

  async start() {
    const args = [...this.launchOptions.args, `--user-data-dir=${this.profile}`];
    args.push("--remote-debugging-port=0", "--window-size=360,740", "about:blank");
    // Detached: a process group of its own, so that all of it can be killed at once.
    this.process = spawn(this.launchOptions.executablePath, args, {
      detached: true,
      stdio: ["ignore", "ignore", "pipe"],
    });
    this.ended = once(this.process, "exit");
    this.browser = await this.chromium.connectOverCDP(await this.address());
    const context = this.browser.contexts()[0];
    const page = context.pages()[0] ?? (await context.newPage());
    const bench = new Bench(page, this.site, { touch: false });
    bench.troubles = this.troubles;
    return bench.watched();
  }

  /** Where the browser listens, which it says on its error output. */
  async address() {
    const lines = createInterface({ input: this.process.stderr });
    for await (const line of lines) {
      const [, address] = line.match(/DevTools listening on (ws:\S+)/) ?? [];
      if (!address) continue;
      this.process.stderr.resume();
      return address;
    }
    throw new Error("the browser did not start");
  }

  async quit() {
    const session = await this.browser.newBrowserCDPSession();
    await session.send("Browser.close");
    await this.ended;
    this.process = null;
  }

  async kill() {
    if (!this.process) return;
    process.kill(-this.process.pid, "SIGKILL");
    await this.ended;
    this.process = null;
  }
}
