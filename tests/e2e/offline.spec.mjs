// The promise of the garage without reception: once seen, the app needs no network.
import { expect, test } from "@playwright/test";
import { readFile, writeFile } from "node:fs/promises";
import { join } from "node:path";
import { startServer } from "./support/server.mjs";
import { newerVersion } from "./support/versions.mjs";

let site;
test.beforeEach(async () => {
  site = await startServer();
});
test.afterEach(() => site.stop());

const root = (page) => page.locator("html");

async function ready(page) {
  await page.goto(site.url);
  await expect(root(page)).toHaveAttribute("data-worker", "ready");
}

test("after one visit the app opens with the server stopped", async ({ page }) => {
  const foreign = [];
  page.on("request", (request) => {
    if (!request.url().startsWith(site.url) && !request.url().startsWith("data:")) foreign.push(request.url());
  });
  await ready(page);
  await expect(root(page)).toHaveAttribute("data-started", "yes");

  await site.stop();
  await expect(fetch(site.url), "the server is really gone").rejects.toThrow();
  await page.reload();

  await expect(root(page)).toHaveAttribute("data-started", "yes");
  await expect(page.locator("#app")).not.toBeEmpty();
  expect(foreign, "nothing is fetched from elsewhere").toEqual([]);
});

test("drawings and samples come once the page is at rest, and then work offline", async ({ page }) => {
  await page.clock.install();
  await ready(page);
  await expect(root(page)).toHaveAttribute("data-started", "yes");
  const isLater = (path) => /^\/(drawings\.svg|samples\/)/.test(path);
  expect(site.requests.filter(isLater), "a start does not wait for them").toEqual([]);

  // A first try without a network does no harm.
  site.override("/drawings.svg", (_, response) => response.destroy());
  await page.clock.fastForward(5_000);
  await expect.poll(() => site.requests).toContain("/drawings.svg");
  await expect(root(page)).not.toHaveAttribute("data-rest", "kept");
  site.override("/drawings.svg", null);

  await page.reload();
  await expect(root(page)).toHaveAttribute("data-worker", "ready");
  await page.clock.fastForward(5_000);
  await expect(root(page)).toHaveAttribute("data-rest", "kept");

  await site.stop();
  await page.reload();
  await expect(root(page)).toHaveAttribute("data-started", "yes");
  for (const file of ["drawings.svg", "samples/pump-twin.json"]) {
    expect(await page.evaluate(async (file) => (await fetch(file)).ok, file), file).toBe(true);
  }
});

test("a version that waits has its drawings before it takes over", async ({ page }) => {
  await ready(page);
  await expect(root(page)).toHaveAttribute("data-rest", "kept");
  site.folder = await newerVersion("drawn");
  await page.reload();
  await expect(root(page)).toHaveAttribute("data-worker", "waiting");
  const complete = () => page.evaluate(async () => {
    const names = await caches.keys();
    const lists = names.map(async (name) => (await caches.open(name)).match("rest.json"));
    return (await Promise.all(lists)).filter(Boolean).length;
  });
  await expect.poll(complete).toBe(2);
});

test("a later start asks the network for nothing but a newer worker", async ({ page }) => {
  await ready(page);
  await expect(root(page)).toHaveAttribute("data-rest", "kept");
  const before = site.requests.length;
  await page.reload();
  await expect(root(page)).toHaveAttribute("data-worker", "ready");
  // The last thing a start does is to look for a newer worker.
  await expect.poll(() => site.requests.slice(before)).toContain("/sw.js");
  expect(new Set(site.requests.slice(before))).toEqual(new Set(["/sw.js"]));
});

test("a newer version waits for consent, then replaces the old one with one reload", async ({ page }) => {
  await ready(page);
  site.folder = await newerVersion("newer");
  await page.reload();
  await expect(root(page)).toHaveAttribute("data-worker", "waiting");
  await expect(root(page), "the old version still runs").not.toHaveAttribute("data-version", "newer");

  let loads = 0;
  page.on("load", () => (loads += 1));
  await page.evaluate(() => dispatchEvent(new CustomEvent("fenderbench-take-over")));
  await expect(root(page)).toHaveAttribute("data-version", "newer");
  await expect(root(page)).toHaveAttribute("data-worker", "ready");
  await expect.poll(() => page.evaluate(() => caches.keys()), "the old copy is gone").toHaveLength(1);
  expect(loads).toBe(1);

  await site.stop();
  await page.reload();
  await expect(root(page)).toHaveAttribute("data-version", "newer");
});

test("a second page learns that its version was replaced, and is left alone", async ({ context, page }) => {
  await ready(page);
  const second = await context.newPage();
  await ready(second);
  site.folder = await newerVersion("newer");
  await page.reload();
  await expect(root(page)).toHaveAttribute("data-worker", "waiting");

  await page.evaluate(() => dispatchEvent(new CustomEvent("fenderbench-take-over")));
  await expect(root(page)).toHaveAttribute("data-version", "newer");
  await expect(root(second)).toHaveAttribute("data-worker", "replaced");
  await expect(root(second)).not.toHaveAttribute("data-version", "newer");
});

test("a worker that does not take over is replaced by a fresh copy, and data stays", async ({ page }) => {
  await page.clock.install();
  await ready(page);
  await page.evaluate(() => localStorage.setItem("fenderbench.probe", "kept"));
  site.folder = await newerVersion("stuck");
  const worker = await readFile(join(site.folder, "sw.js"), "utf8");
  expect(worker).toContain("skipWaiting()");
  await writeFile(join(site.folder, "sw.js"), worker.replace("skipWaiting()", "undefined"));
  await page.reload();
  await expect(root(page)).toHaveAttribute("data-worker", "waiting");

  await page.evaluate(() => dispatchEvent(new CustomEvent("fenderbench-take-over")));
  await page.clock.fastForward(10_000);
  await expect(root(page)).toHaveAttribute("data-version", "stuck");
  await expect(root(page)).toHaveAttribute("data-worker", "ready");
  expect(await page.evaluate(() => localStorage.getItem("fenderbench.probe"))).toBe("kept");
});

test("a half-finished upload changes nothing", async ({ page }) => {
  await ready(page);
  const kept = await page.evaluate(() => caches.keys());

  site.folder = await newerVersion("torn");
  // The new worker has arrived on the server; the page that it lists has not.
  site.override("/", (_, response) => response.end("<!doctype html><title>Old</title>"));
  const end = await page.evaluate(async () => {
    const registration = await navigator.serviceWorker.ready;
    await registration.update();
    const worker = registration.installing;
    return new Promise((resolve) => {
      worker.onstatechange = () => resolve(worker.state);
    });
  });
  expect(end).toBe("redundant");
  expect(await page.evaluate(() => caches.keys())).toEqual(kept);
  await expect(root(page)).toHaveAttribute("data-worker", "ready");

  await site.stop();
  await page.reload();
  await expect(page.locator("#app")).not.toBeEmpty();
});
