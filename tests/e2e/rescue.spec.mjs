// When the app cannot help any more, the person still gets the data out.
import { expect, test } from "@playwright/test";
import { readFile } from "node:fs/promises";
import { startServer } from "./support/server.mjs";

let site;
test.beforeEach(async () => {
  site = await startServer();
});
test.afterEach(() => site.stop());

/** Leaves data behind without starting the app, which has a layout of its own. */
async function leaveData(page) {
  await page.goto(`${site.url}manifest.webmanifest`);
  await page.evaluate(async () => {
    localStorage.setItem("fenderbench.bench", "two engines");
    localStorage.setItem("somebody-else", "private");
    await new Promise((resolve, reject) => {
      const request = indexedDB.open("fenderbench", 3);
      request.onupgradeneeded = () => {
        const store = request.result.createObjectStore("journal", { autoIncrement: true });
        store.put({ text: "bore 1 top 50.003" });
        store.put(new Uint8Array([1, 2, 3]));
      };
      request.onsuccess = () => resolve(request.result.close());
      request.onerror = reject;
    });
  });
}

/** The program itself does not arrive. `answer` says how. */
async function withoutProgram(answer) {
  const page = await (await fetch(site.url)).text();
  const [, name] = page.match(/href="?\.(\/[^" >]+\.wasm)/);
  site.override(name, answer);
}

const missing = (_, response) => response.writeHead(404).end();
const never = () => {};

async function savedFile(page) {
  const download = page.waitForEvent("download");
  await page.getByRole("button", { name: "Save all data as a file" }).tap();
  const file = await download;
  expect(file.suggestedFilename()).toMatch(/^fenderbench-rescue-[\d-]+T[\d-]+\.json$/);
  return JSON.parse(await readFile(await file.path(), "utf8"));
}

test("when the program does not load, all data can be saved", async ({ page }) => {
  await leaveData(page);
  await withoutProgram(missing);
  await page.goto(site.url);

  await expect(page.getByRole("alert")).toContainText("could not be loaded");
  const saved = await savedFile(page);
  expect(saved.localStorage).toEqual({ "fenderbench.bench": "two engines" });
  expect(saved.indexedDB).toEqual({
    journal: [
      { key: 1, value: { text: "bore 1 top 50.003" } },
      { key: 2, value: [1, 2, 3] },
    ],
  });
});

test("when the program takes too long, the page says so and offers the data", async ({ page }) => {
  await page.clock.install();
  await withoutProgram(never);
  await page.goto(site.url, { waitUntil: "domcontentloaded" });
  await page.clock.fastForward(10_000);
  await expect(page.getByRole("alert")).toHaveCount(0);
  await page.clock.fastForward(5_000);
  await expect(page.getByRole("alert")).toContainText("has not started yet");
});

test("looking for data does not make an empty database in the app's place", async ({ page }) => {
  await withoutProgram(missing);
  await page.goto(site.url);
  const saved = await savedFile(page);
  expect(saved.indexedDB).toEqual({});
  expect(await page.evaluate(() => indexedDB.databases())).toEqual([]);
});

test("when the program stops, a dialog over everything offers the data", async ({ page }) => {
  await page.goto(site.url);
  await expect(page.locator("html")).toHaveAttribute("data-started", "yes");
  await page.evaluate(() => localStorage.setItem("fenderbench.probe", "kept"));
  await page.evaluate(() => dispatchEvent(new Event("fenderbench-panic")));

  await expect(page.getByRole("alertdialog")).toContainText("has stopped");
  const saved = await savedFile(page);
  expect(saved.localStorage["fenderbench.probe"]).toBe("kept");

  await page.getByRole("button", { name: "Start again" }).tap();
  await expect(page.locator("html")).toHaveAttribute("data-started", "yes");
  await expect(page.getByRole("alertdialog")).toHaveCount(0);
});
