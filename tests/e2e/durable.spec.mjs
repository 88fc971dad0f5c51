// "Saved" is a promise: it holds against a killed browser, a cleared store and a flipped bit.
import { expect, test } from "./support/phone.mjs";

test("what was called saved survives a browser killed at that moment", async ({ phone }) => {
  let bench = await phone.start();
  await bench.open();
  await bench.startSession({ name: "Before the battery died" });
  const typed = ["82.003", "82.014", "005", "016"];
  for (const [n, value] of typed.entries()) {
    await bench.type(value);
    await bench.page.waitForFunction(
      (read) =>
        document.querySelector('[data-testid="progress"]')?.textContent.startsWith(`${read} `) &&
        document.querySelector('[data-testid="saved"]')?.dataset.saved === "safe",
      n + 1,
    );
    await phone.kill();

    bench = await phone.start();
    await bench.open();
    await expect(bench.notice).toHaveCount(0);
    await bench.openSession("Before the battery died");
    await expect(bench.progress).toHaveText(`${n + 1} of 62`);
    await expect(bench.last).toContainText(`82.0${value.slice(-2)} mm`);
  }
});

test("with localStorage emptied everything comes back from the journal", async ({ bench }) => {
  await bench.open();
  await bench.startSession({ name: "Emptied" });
  await bench.to("Limits");
  await bench.keepLimits("bore", [["Size: new, high", "82.010"]]);
  await bench.to("Measure");
  await bench.read("82.003");
  await bench.read("014");
  await bench.expectSaved();
  const findings = await bench.findings();

  await bench.page.evaluate(() => localStorage.clear());
  await bench.reload();
  expect(await bench.findings()).toEqual(findings);
  await bench.to("Measure");
  await bench.read("005");
  await bench.expectSaved();
  await bench.page.evaluate(() => indexedDB.deleteDatabase("fenderbench"));
  await bench.reload();
  await expect(bench.progress, "and from there back into localStorage").toHaveText("3 of 62");
});

/** Changes one letter in the middle of the newest head, without the journal noticing. */
function damageHead(page) {
  return page.evaluate(() => {
    const heads = Object.keys(localStorage).filter((key) => /\/head-[ab]$/.test(key));
    const turn = (key) => Number(localStorage.getItem(key).split("\n", 1)[0]);
    const [key] = heads.sort((a, b) => turn(b) - turn(a));
    const text = localStorage.getItem(key);
    const at = text.indexOf('"value":"82') + 10;
    localStorage.setItem(key, `${text.slice(0, at)}7${text.slice(at + 1)}`);
    return { key, damaged: localStorage.getItem(key), text };
  });
}

test("a damaged part is set aside with a notice, and nothing is lost", async ({ bench }) => {
  await bench.open();
  await bench.startSession({ name: "Flipped" });
  await bench.read("82.003");
  await bench.read("014");
  await bench.expectSaved();
  const findings = await bench.findings();
  const { key, damaged, text } = await damageHead(bench.page);
  expect(damaged).not.toBe(text);

  await bench.reload();
  await expect(bench.notice).toContainText(
    "A stored part of “Flipped” is damaged. It was set aside; everything that could be read is here. Where readings are missing, open your last file of it.",
  );
  expect(await bench.findings()).toEqual(findings);
  const { local } = await bench.stored();
  const kept = Object.entries(local).filter(([name]) => name.includes(key) && name !== key);
  expect(kept.map(([, value]) => value), "the damaged text is kept").toEqual([damaged]);

  await bench.tap(bench.notice.getByRole("button", { name: "Put away" }));
  await expect(bench.notice).toHaveCount(0);
  await bench.to("Measure");
  await bench.read("005");
  await bench.read("016");
  await bench.expectSaved();
  await bench.reload();
  await expect(bench.notice, "it mends itself").toHaveCount(0);
  await expect(bench.progress).toHaveText("4 of 62");
});
