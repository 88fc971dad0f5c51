// A browser that stores nothing, too little, or only half: the app says so and goes on.
import { expect, test } from "./support/bench.mjs";

/** Breaks a store before the app starts; `broken` lists which. */
function breakStores(page, broken) {
  return page.addInitScript((broken) => {
    const denied = () => {
      throw new DOMException("denied by this test", "SecurityError");
    };
    if (broken.includes("local")) Object.defineProperty(window, "localStorage", { get: denied });
    if (broken.includes("journal")) IDBFactory.prototype.open = denied;
  }, broken);
}

/** Measures a little, and exports by the button of the warning. */
async function measureUnsafely(bench) {
  await measure(bench, "not saved");
  await expect(bench.notSafe).toBeVisible();
  return exported(await bench.exportFile(bench.notSafe.getByTestId("export")));
}

/** Measures a little; `word` is what the screen then calls it. */
async function measure(bench, word) {
  await bench.startSession();
  await bench.read("82.003");
  await expect(bench.saved).toHaveText(word);
  await bench.read("014");
  await bench.tap(bench.tool("Undo"));
  await bench.read("015");
  await expect(bench.saved).toHaveText(word);
}

function exported({ text }) {
  const readings = Object.values(JSON.parse(text).session.readings);
  return readings.filter(({ strikes }) => strikes % 2 === 0).map(({ value }) => value);
}

const REFUSED = "This browser refuses to store anything here: readings stay only while this page is open.";
const NO_JOURNAL = "This browser gives no journal: the last minute of readings can be lost if it is killed.";

test("with both stores refused readings stay in memory and in the file", async ({ bench, another }) => {
  await breakStores(bench.page, ["local", "journal"]);
  await bench.open();
  await expect(bench.notice.first()).toContainText(REFUSED);
  expect(await measureUnsafely(bench)).toEqual(["82.003", "82.015"]);
  await expect(bench.notSafe).toContainText(REFUSED);

  const { text } = await bench.exportFile();
  const there = await another();
  await there.open();
  await there.takeIn(text);
  await expect(there.sessions, "the file is whole").toContainText("2 of 62 stations read");
});

test("without localStorage readings are in the journal and are called saved", async ({ bench }) => {
  await breakStores(bench.page, ["local"]);
  await bench.open();
  await expect(bench.notice).toContainText(REFUSED);
  await measure(bench, "saved");
  expect(exported(await bench.exportFile())).toEqual(["82.003", "82.015"]);
  await expect(bench.notice, "and it still says what is wrong").toContainText(REFUSED);
  await bench.reload();
  await bench.to("Measure");
  await expect(bench.progress, "the journal has them all the same").toHaveText("2 of 62");
});

test("without a journal readings are kept, and the app says what can be lost", async ({ bench }) => {
  await breakStores(bench.page, ["journal"]);
  await bench.open();
  await expect(bench.notice).toBeVisible();
  expect(await measureUnsafely(bench)).toEqual(["82.003", "82.015"]);
  await expect(bench.notSafe).toContainText(NO_JOURNAL);
  await bench.reload();
  await expect(bench.progress).toHaveText("2 of 62");
});

/** Leaves so much room in localStorage, in characters, and no more. */
function fill(page, room) {
  return page.evaluate((room) => {
    let size = 5 * 2 ** 20;
    let filler = "";
    while (size >= 1) {
      try {
        localStorage.setItem("somebody-else", filler + "x".repeat(size));
        filler += "x".repeat(size);
      } catch {
        // Half of it may fit.
      }
      size = Math.floor(size / 2);
    }
    localStorage.setItem("somebody-else", filler.slice(room));
  }, room);
}

for (const room of [0, 100]) {
  test(`with room for ${room} characters the app says so, and what was there stays`, async ({ bench }) => {
    await bench.open();
    await bench.startSession({ name: "Before it was full" });
    await bench.read("82.003");
    await bench.read("014");
    await bench.expectSaved();
    await fill(bench.page, room);
    const before = await bench.stored();

    await bench.read("015");
    await bench.expectSaved();
    await expect(bench.notice).toContainText("The space this browser gives is full.");
    const { text } = await bench.exportFile();
    const values = Object.values(JSON.parse(text).session.readings).map(({ value }) => value);
    expect(values).toEqual(["82.003", "82.014", "82.015"]);

    const after = await bench.stored();
    for (const [key, value] of Object.entries(before.local)) {
      if (!key.endsWith("/draft")) expect(after.local[key], key).toBe(value);
    }
    await bench.reload();
    await bench.to("Measure");
    await expect(bench.notice).toHaveCount(0);
    await expect(bench.progress, "the journal had room").toHaveText("3 of 62");
  });
}
