// The published description of the file format holds for what there is, and not for anything.
import { expect, test } from "@playwright/test";
import { changed, sample, schemaFaults, sessionFiles } from "./support/files.mjs";

test("every session file in the source tree holds to the schema", async () => {
  const files = await sessionFiles();
  expect(files.length).toBeGreaterThanOrEqual(6);
  for (const [name, text] of files) {
    expect(await schemaFaults(text), name).toEqual([]);
  }
});

const first = (records) => Object.values(records)[0];

const BROKEN = {
  "another format": (_, file) => (file.format = "something-else"),
  "a later version": (_, file) => (file.version = 2),
  "no session": (_, file) => delete file.session,
  "a session without an id": (session) => delete session.id,
  "a text for cylinders": (session) => (session.set_up.cylinders.value = "6"),
  "200 cylinders": (session) => (session.set_up.cylinders.value = 200),
  "a limit as a number": (session) => (session.limits["bore/size/new_low"].value = 82),
  "a limit in furlongs": (session) => (session.limits["bore/size/new_low"].unit = "furlong"),
  "a limit without its stamp": (session) => delete session.limits["bore/size/new_low"].at,
  "a value with a comma": (session) => (first(session.readings).value = "82,003"),
  "a value with a sign": (session) => (first(session.readings).value = "-82.003"),
  "half a strike": (session) => (first(session.readings).strikes = 0.5),
  "a reading without a gauge": (session) => delete first(session.readings).gauge,
  "a reading under no id": (session) => {
    session.readings.somewhere = first(session.readings);
  },
};

for (const [what, change] of Object.entries(BROKEN)) {
  test(`the schema refuses ${what}`, async () => {
    const text = await sample();
    expect(await schemaFaults(changed(text, () => {}))).toEqual([]);
    expect(await schemaFaults(changed(text, change))).not.toEqual([]);
  });
}
