// Whatever is opened or typed: a sentence says what is wrong and where, nothing that is kept
// changes, and the app goes on.
import { expect, test } from "./support/bench.mjs";
import { changed, sample } from "./support/files.mjs";

// Of a piston, by a micrometer; the first of the file is of a bore, by a dial.
const READING = "92@5a3b1e01";
const DIAL = "62@5a3b1e01";

/** Files with something wrong, made from a good one, and the sentence each of them gets. */
const BAD_FILES = {
  "cut off": [(text) => text.slice(0, 5000), "The file is cut off: it ends at line 77, column 86."],
  empty: [() => "", "The file is cut off: it ends at line 1, column 0."],
  "with a brace turned round": [
    (text) => text.replace('"93@5a3b1e01":{', '"93@5a3b1e01":}'),
    "The file is damaged at line 136, column 15: that is not JSON.",
  ],
  "that is a note": [
    () => "Bore 1: 82.003",
    "The file is damaged at line 1, column 1: that is not JSON.",
  ],
  "of another program": [() => '{"name":"x"}', "This is not a Fenderbench session."],
  "of a later version": [
    (text) => text.replace('"version":1', '"version":2'),
    "The file has format version 2; this program reads up to 1. Update it and try again.",
  ],
  "of 3 MB": [(text) => text.padEnd(3 * 2 ** 20), "This file has 3072 kB and at most 2560 kB are read."],
  "100 000 deep": [() => "[".repeat(100_000), "The file is nested deeper than 16 levels."],
  "with an id twice": [
    (text) => text.replace('"93@5a3b1e01":', `"${READING}":`),
    `In readings: “${READING}” appears twice.`,
  ],
  "with a low limit above the high one": [
    session((s) => (s.limits["bore/size/new_low"].value = "82.500")),
    "In limits: Limits for bore, size: the low limit is above the high limit.",
  ],
  "with a limit of zero": [
    session((s) => (s.limits["bore/size/service"].value = "0")),
    "In limits: Limits for bore, size: a limit of zero cannot be.",
  ],
  "with 200 cylinders": [
    session((s) => (s.set_up.cylinders.value = 200)),
    "In set_up, cylinders: The number of cylinders must be from 1 to 16.",
  ],
  "with __proto__ among the readings": [
    (text) => text.replace('"readings":{', '"readings":{"__proto__":{"strikes":9},'),
    "In readings, __proto__: “__proto__” is not an id.",
  ],
  "in furlongs": [
    session((s) => (s.readings[READING].unit = "furlong")),
    `In readings, ${READING}: “unit” is neither “mm” nor “in”.`,
  ],
  "with 1e400 strikes": [
    (text) => text.replace('"strikes":0', '"strikes":1e400'),
    `In readings, ${DIAL}: “strikes” is not a whole number.`,
  ],
  "with a value of 1e400": [
    session((s) => (s.readings[READING].value = "1e400")),
    `In readings, ${READING}: “1e400” is not a number: digits and one point only.`,
  ],
  "with a value of zero": [
    session((s) => (s.readings[READING].value = "0.000")),
    `In readings, ${READING}: “value” is zero, which is no size.`,
  ],
  "with a deviation that is not a number": [
    session((s) => (s.readings[DIAL].deviation = "NaN")),
    `In readings, ${DIAL}: “NaN” is not a number: digits and one point only.`,
  ],
  "with a gauge that is not in it": [
    session((s) => (s.readings[READING].gauge = "999@1")),
    `In readings, ${READING}: the gauge 999@1 is not in the file.`,
  ],
  "that is not UTF-8": [
    (text) => Buffer.concat([Buffer.from(text), Buffer.from([0xff, 0xfe, 0x80])]),
    "This cannot be read: the file is not text in UTF-8. Try another copy.",
  ],
};

function session(change) {
  return (text) => changed(text, change);
}

test("bad files are refused with a sentence, and nothing changes", async ({ bench }) => {
  const text = await sample();
  await bench.open();
  await bench.startSession();
  await bench.read("82.003");
  await bench.expectSaved();
  await bench.to("Bench");
  const before = await bench.stored();

  for (const [what, [make, sentence]] of Object.entries(BAD_FILES)) {
    await test.step(`a file ${what}`, async () => {
      const bad = make(text);
      expect(bad, "it was made different").not.toBe(text);
      await bench.openFile(bad);
      await expect(bench.refused).toContainText(sentence);
      await expect(bench.refused).toContainText("Nothing was changed.");
      await expect(bench.preview).toHaveCount(0);
      expect(await bench.stored()).toEqual(before);
    });
  }

  await expect(bench.sessions).toHaveCount(1);
  await bench.openFile(text);
  await expect(bench.preview, "a good one opens").toContainText("Sample");
  await expect(bench.refused).toHaveCount(0);
  await bench.tap(bench.button("Leave it"));
  await bench.openSession("In-line 4");
  await bench.read("004");
  await expect(bench.progress).toHaveText("2 of 62");
  await bench.expectSaved();
});

test("a file that was changed after it was written says so before it is taken in", async ({ bench }) => {
  const text = await sample();
  await bench.open();
  const before = await bench.stored();
  const warning = bench.page.getByTestId("warning");
  const flipped = text.replace(/(?<=62@5a3b1e01":.*"deviation":"0\.0)\d/, (digit) => String(9 - digit));
  expect(flipped).not.toBe(text);
  await bench.openFile(flipped);
  await expect(warning).toHaveText(
    "The file was changed after it was written. Compare its readings with your notes before you use them.",
  );
  expect(await bench.stored()).toEqual(before);
  await bench.openFile(text);
  await expect(bench.preview).toBeVisible();
  await expect(warning).toHaveCount(0);
});

const BAD_LIMITS = [
  [
    ["Size: service limit", "82.01"],
    "Limits for bore, size: the service limit lies inside the limits as made, so a new part would be worn out.",
  ],
  [["Size: new, low", "82.5"], "Limits for bore, size: the low limit is above the high limit."],
  [["Size: new, low", "0"], "Limits for bore, size: a limit of zero cannot be."],
  [["Size: new, low", "wide"], "Size, new, low: “wide” is not a number: digits and one point only."],
  [["Size: new, low", "-82"], "Size, new, low: “-82” is not a number: digits and one point only."],
  [["Size: new, low", "8e1"], "Size, new, low: “8e1” is not a number: digits and one point only."],
  [
    ["Size: new, low", "1,234.5"],
    "Size, new, low: More than one point or comma: type the number without thousands marks.",
  ],
];

test("bad limits are refused with a sentence, and nothing changes", async ({ bench }) => {
  await bench.open();
  await bench.startSession();
  await bench.to("Limits");
  const kept = bench.limits("bore").getByTestId("kept");
  const refused = bench.limits("bore").getByRole("alert");
  await bench.keepLimits("bore", [
    ["Size: new, low", "82,000"],
    ["Size: new, high", " 82.020 "],
  ]);
  await expect(kept, "comma and blanks are no matter").toHaveText("Kept, saved");
  const before = await bench.stored();

  for (const [[label, typed], sentence] of BAD_LIMITS) {
    await test.step(`${label} ${typed}`, async () => {
      await bench.keepLimits("bore", [[label, typed]]);
      await expect(refused).toHaveText(sentence);
      expect(await bench.stored()).toEqual(before);
      const field = bench.limit("bore", label);
      await expect(field, "what was typed stays, to be mended").toHaveValue(typed);
    });
  }

  await bench.keepLimits("bore", [
    ["Size: new, low", "82.001"],
    ["Size: service limit", ""],
  ]);
  await expect(kept).toHaveText("Kept, saved");
  await bench.reload();
  await expect(bench.limit("bore", "Size: new, low")).toHaveValue("82.001");
  await expect(bench.limit("bore", "Size: new, high")).toHaveValue("82.020");
});
