// A file carries a session to another phone, whole, and meets there what was added meanwhile.
import { expect, test } from "./support/bench.mjs";
import { asRows, asShown, assess } from "./support/desk.mjs";
import { sample, schemaFaults } from "./support/files.mjs";

test.beforeAll(async () => {
  // Building the desk takes as long as it takes.
  test.setTimeout(600_000);
  await assess(await sample());
});

/** An engine with readings of every kind of comparison, on this phone. Invented. */
async function measure(bench) {
  await bench.open();
  await bench.startSession({ cylinders: 2, name: "Two from the shed" });
  await bench.to("Limits");
  await bench.keepLimits("bore", [
    ["Size: new, low", "82,000"],
    ["Size: new, high", "82.020"],
    ["Size: service limit", "82.100"],
    ["Taper: new, at most", "0.010"],
  ]);
  await bench.keepLimits("main_journal", [["Size: service limit", "59.960"]]);
  await bench.to("Measure");
  for (const value of ["82.112", "020", "003", "996"]) await bench.read(value);
  await bench.expectSaved();
}

test("another phone and the desk say the same of a file as the phone that wrote it", async ({
  bench,
  another,
}) => {
  await measure(bench);
  const here = await bench.findings();
  const { name, text } = await bench.exportFile();
  expect(name).toBe("two-from-the-shed.json");
  expect(await schemaFaults(text)).toEqual([]);

  const there = await another();
  await there.open();
  const before = await there.stored();
  await there.openFile(text);
  await expect(there.preview).toContainText("2 cylinders, 4 standing readings, 0 struck.");
  await expect(there.preview).toContainText("This session is not on this device yet.");
  expect(await there.stored(), "nothing is stored before the person agrees").toEqual(before);
  await there.tap(there.button("Leave it"));
  await expect(there.preview).toHaveCount(0);
  await expect(there.sessions).toHaveCount(0);
  expect(await there.stored()).toEqual(before);

  await there.takeIn(text);
  await there.openSession("Two from the shed");
  expect(await there.findings()).toEqual(here);
  await there.reload();
  expect(await there.findings(), "it is kept there").toEqual(here);
  expect(asRows(here)).toEqual(asShown(await assess(text)));
});

test("the app says of the sample what the desk says", async ({ bench }) => {
  const text = await sample();
  await bench.open();
  await bench.takeIn(text);
  await bench.openSession("Sample");
  const shown = asRows(await bench.findings());
  expect(shown.length).toBeGreaterThan(150);
  expect(shown).toEqual(asShown(await assess(text)));
});

test("taking a file in twice adds nothing", async ({ bench, another }) => {
  await measure(bench);
  const { text } = await bench.exportFile();
  const there = await another();
  await there.open();
  for (const phone of [bench, there]) {
    if (phone === there) await there.takeIn(text);
    else await bench.to("Bench");
    await expect(phone.sessions).toHaveCount(1);
    const before = await phone.stored();
    await phone.openFile(text);
    await expect(phone.preview).toContainText("All of it is here already: nothing would change.");
    await expect(phone.button("Take it in")).toBeDisabled();
    expect(await phone.stored()).toEqual(before);
  }
});

test("two phones exchange files in either order and agree", async ({ bench, another }) => {
  await measure(bench);
  const started = await bench.exportFile();

  const mate = await another();
  await mate.open();
  await mate.takeIn(started.text);
  await mate.openSession("Two from the shed");
  // Both go on at the same station; the mate also corrects what the other had read.
  await mate.expectAt("Bore 2", "top, thrust");
  await mate.read("007");
  await mate.goTo("Bore 1", "top, thrust");
  await mate.read("012");
  await mate.expectSaved();
  await bench.to("Measure");
  await bench.expectAt("Bore 2", "top, thrust");
  await bench.read("009");
  await bench.read("010");
  await bench.tap(bench.tool("Undo"));
  await bench.expectSaved();

  const one = (await bench.exportFile()).text;
  const two = (await mate.exportFile()).text;
  const third = await another();
  await third.open();
  for (const phone of [bench, mate]) await phone.to("Bench");
  await bench.takeIn(two);
  await mate.takeIn(one);
  await third.takeIn(two);
  await third.takeIn(one);

  const held = [];
  for (const phone of [bench, mate, third]) {
    await expect(phone.sessions).toHaveCount(1);
    await phone.openSession("Two from the shed");
    const read = (await phone.stations()).filter(([, values]) => values !== "open");
    const findings = await phone.findings();
    const { session } = JSON.parse((await phone.exportFile()).text);
    held.push({ read, findings, session });
  }
  const [here, ...elsewhere] = held;
  for (const there of elsewhere) expect(there).toEqual(here);

  const { readings } = here.session;
  expect(Object.keys(readings), "no reading twice").toHaveLength(8);
  const values = new Map(here.read);
  expect(values.get("Bore 1, top, thrust"), "the corrected one").toBe("82.012 mm");
  const both = values.get("Bore 2, top, thrust").split(", ").sort();
  expect(both, "what both have read stands twice").toEqual(["82.007 mm", "82.009 mm"]);
});
