// What Lighthouse says of the first visit, as it judges phones.
import { createServer } from "node:net";
import { chromium } from "@playwright/test";
import lighthouse from "lighthouse";

/** Its categories with the least that is wanted of each, of 100. */
export const WANTED = { performance: 99, accessibility: 100, "best-practices": 100 };

/** A port nobody listens on. */
function freePort() {
  return new Promise((resolve, reject) => {
    const server = createServer().on("error", reject);
    server.listen(0, "127.0.0.1", () => {
      const { port } = server.address();
      server.close(() => resolve(port));
    });
  });
}

/** The scores of one visit by a browser of its own, of 100, and what was not perfect. */
export async function audit(url, launchOptions) {
  const port = await freePort();
  const args = [...launchOptions.args, `--remote-debugging-port=${port}`];
  const browser = await chromium.launch({ ...launchOptions, args });
  try {
    const wanted = { port, logLevel: "error", onlyCategories: Object.keys(WANTED) };
    const { lhr } = await lighthouse(url, wanted);
    const scores = Object.keys(WANTED).map((name) => [name, Math.round(100 * lhr.categories[name].score)]);
    const faults = Object.values(lhr.audits)
      .filter(({ score, scoreDisplayMode }) => score !== null && score < 0.9 && scoreDisplayMode !== "informative")
      .map(({ id, displayValue = "" }) => `${id} ${displayValue}`.trim());
    return { scores: Object.fromEntries(scores), faults };
  } finally {
    await browser.close();
  }
}
