// How fast the built app is on a slow phone, against its budgets; exit code 1 if one is missed.
import { execFileSync } from "node:child_process";
import { mkdtemp, rm } from "node:fs/promises";
import { tmpdir } from "node:os";
import { join } from "node:path";
import { fileURLToPath } from "node:url";
import { chromium } from "@playwright/test";
import config from "../playwright.config.mjs";
import { WANTED, audit } from "./audit.mjs";
import { judged, median, percentile, scored, table } from "./figures.mjs";
import { firstVisit, oneReading, planned, relaunch, takenIn, touches } from "./measures.mjs";
import { Phone, SLOWER } from "./phone.mjs";
import { quiet } from "./quiet.mjs";
import { appSite, emptySite } from "./site.mjs";

/** Everything is measured in turn, so that a busy minute of the machine falls on all alike. */
const ROUNDS = 15;
const READINGS_EACH = 6;

const READINGS = 200;

/** So often Lighthouse is asked; the middle score counts. */
const AUDITS = 5;

const { launchOptions, viewport, deviceScaleFactor, isMobile, hasTouch, locale } = config.use;
const screen = { viewport, deviceScaleFactor, isMobile, hasTouch, locale };

/** A session as the desk makes it. */
function generated() {
  const root = fileURLToPath(new URL("../../../", import.meta.url));
  const args = ["run", "--release", "--quiet", "--package", "desk", "--", "generated", String(READINGS)];
  return execFileSync("cargo", args, { cwd: root, encoding: "utf8", maxBuffer: 2 ** 26 });
}

/** All times in milliseconds, by what was measured. */
async function measured(profile) {
  const times = {};
  const keep = (name, time) => (times[name] ??= []).push(time);
  const session = generated();
  const site = await appSite();
  const empty = await emptySite();
  const browser = await chromium.launch(launchOptions);
  const own = () => browser.newContext(screen);
  const garage = () => chromium.launchPersistentContext(profile, { ...launchOptions, ...screen });
  try {
    const fender = await own();
    const address = await takenIn(fender, site, session);
    const phone = await Phone.of(fender);
    await phone.go(address);
    // Of its own: a page behind another is not painted.
    const bench = await own();
    const there = await takenIn(bench, site, session);
    const planner = await Phone.of(bench);
    const blank = await Phone.of(await own());
    await blank.go(empty.url);

    const away = await appSite();
    const kept = await garage();
    const start = await takenIn(kept, away, session);
    await kept.close();
    await away.stop();

    for (let round = 1; round <= ROUNDS; round += 1) {
      console.error(`round ${round} of ${ROUNDS}`);
      keep("slower", await blank.slowness());
      const first = await own();
      keep("quiet", await quiet());
      await firstVisit(first, site, keep);
      const again = await garage();
      keep("quiet", await quiet());
      await relaunch(again, start, keep);
      keep("quiet", await quiet());
      for (let n = 0; n < READINGS_EACH; n += 1) {
        await oneReading(phone, n, keep);
        await touches(blank, keep);
      }
      await planned(planner, there, keep);
    }
  } finally {
    await browser.close();
    await site.stop();
    await empty.stop();
  }
  return times;
}

/** The scores of each category of Lighthouse, and what it found. */
async function audited() {
  const scores = Object.fromEntries(Object.keys(WANTED).map((name) => [name, []]));
  const found = new Set();
  const site = await appSite();
  try {
    for (let n = 0; n < AUDITS; n += 1) {
      await quiet();
      const { scores: one, faults } = await audit(site.url, launchOptions);
      for (const [name, score] of Object.entries(one)) scores[name].push(score);
      faults.forEach((fault) => found.add(fault));
    }
  } finally {
    await site.stop();
  }
  return { scores, found: [...found] };
}

const profile = await mkdtemp(join(tmpdir(), "fenderbench-bench-"));
const times = await measured(profile).finally(() => rm(profile, { recursive: true, force: true, maxRetries: 5 }));
const { key, empty, enter, relaunched, shell, largest, touch, firstKey, plan } = times;
const audits = await audited();
const slower = median(times.slower);
// Unslowed, every budget would be met.
if (slower < SLOWER / 2) throw new Error(`pages became ${slower.toFixed(1)} times slower, not ${SLOWER} times`);
console.log(
  table([
    ["key to pixels", key],
    ["the same on an empty page", empty],
    [`ENTER to finding, ${READINGS} readings`, enter],
    ["offline relaunch to first key", relaunched],
    ["first visit to the shell", shell],
    ["first visit to the largest part", largest],
    ["first visit to first touch", touch],
    ["first visit to first key", firstKey],
    [`what to do, ${READINGS} readings`, plan],
  ]),
);
const busy = times.quiet.filter((came) => !came).length;
console.log(`
A page is ${slower.toFixed(1)} times slower than this computer has it.
Of ${times.quiet.length} waits for a quiet moment ${busy} were in vain.
`);
// Milliseconds: our own choice of what a person takes for at once, or waits for without a thought.
const { told, holds } = judged([
  ["from key to pixels", median(key), 50],
  ["from key to pixels in 98 of 100, 16 ms over an empty page", percentile(key, 98), percentile(empty, 98) + 16],
  ["from ENTER to what the reading says", median(enter), 100],
  ["from an offline relaunch to the first key", median(relaunched), 700],
  ["from the first visit to the shell", median(shell), 1000],
  ["from the first visit to the largest part", median(largest), 1500],
  ["from the first visit to the first key", median(firstKey), 2000],
]);
const scores = scored(audits.scores, WANTED);
console.log(told);
console.log(scores.told);
for (const fault of audits.found) console.log(`Lighthouse: ${fault}`);
process.exitCode = holds && scores.holds ? 0 : 1;
