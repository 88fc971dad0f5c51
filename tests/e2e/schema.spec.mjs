// The published description of the file format holds for what there is, and not for anything.
import { expect, test } from "@playwright/test";
import { changed, conditions, everyKind, sample, schemaFaults, sessionFiles } from "./support/files.mjs";

test("every session file in the source tree holds to the schema", async () => {
  const files = await sessionFiles();
  expect(files.length).toBeGreaterThanOrEqual(10);
  for (const [name, text] of files) {
    expect(await schemaFaults(text), name).toEqual([]);
  }
});

const first = (records, holds = () => true) => Object.values(records).find(holds);
const sized = (session) => first(session.readings, (reading) => reading.value);
const dialled = (session) => first(session.readings, (reading) => reading.deviation);
const ranged = (session) => first(session.gauges, (gauge) => gauge.least);
const set = (session, against) => first(session.settings, (setting) => setting.against === against);

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
  "a value with a comma": (session) => (sized(session).value = "82,003"),
  "a value with a sign": (session) => (sized(session).value = "-82.003"),
  "a deviation with a plus": (session) => (dialled(session).deviation = "+0.003"),
  "a deviation of less than nothing and yet nothing": (session) =>
    (dialled(session).deviation = "-0.000"),
  "a value and a deviation": (session) => (dialled(session).value = "82.003"),
  "neither value nor deviation": (session) => delete dialled(session).deviation,
  "half a range": (session) => delete ranged(session).greatest,
  "a gauge put away by a word": (session) => (ranged(session).away = "yes"),
  "a setting of no size": (session) => (set(session, "standard").size = "0.000"),
  "a setting without its unit": (session) => delete set(session, "micrometer").unit,
  "a setting that shows nothing": (session) => delete set(session, "standard").shows,
  "a setting that shows both": (session) => (set(session, "standard").shows_deviation = "0.001"),
  "a setting on a feature without a name": (session) => delete set(session, "feature").feature,
  "a size as made of zero": (session) => (session.set_up["nominal/bore"].value = "0"),
  "the choice of a gauge that has no id": (session) =>
    (session.set_up["gauge/bore"].value = "the good one"),
  "a use without its stamp": (session) => delete session.set_up.use.at,
  "half a strike": (session) => (first(session.readings).strikes = 0.5),
  "a reading without a gauge": (session) => delete first(session.readings).gauge,
  "a reading kept once": (session) => (first(session.readings).kept = 1),
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

const settings = (session) => Object.values(session.settings);
const again = (session, key) => settings(session).find((setting) => setting[key]);

const CONDITIONS_BROKEN = {
  "a shop of 60.001 °C": (session) => (session.set_up.climate.value = "60.001"),
  "a shop of -80 °C": (session) => (session.set_up.climate.value = "-80"),
  "a temperature as a number": (session) => (session.set_up.climate.value = 21.5),
  "a climate without its stamp": (session) => delete session.set_up.climate.at,
  "a material without its stamp": (session) => delete session.set_up["material/bore"].at,
  "repeats by a word": (session) => (session.set_up["study/bore"].value = "yes"),
  "a gauge checked again both ways": (session) =>
    (again(session, "again").again_deviation = "0.001"),
  "a gauge that shows less than nothing again": (session) =>
    (again(session, "again").again = "-50.001"),
  "a check again with a plus": (session) =>
    (again(session, "again_deviation").again_deviation = "+0.0003"),
};

for (const [what, change] of Object.entries(CONDITIONS_BROKEN)) {
  test(`the schema refuses ${what}`, async () => {
    const text = await conditions();
    expect(await schemaFaults(changed(text, () => {}))).toEqual([]);
    expect(await schemaFaults(changed(text, change))).not.toEqual([]);
  });
}

const reading = (session, kind) =>
  first(session.readings, (one) => one.station.startsWith(`${kind}/`));

const EVERY_KIND_BROKEN = {
  "a shell without a wall": (session) => (reading(session, "main_shell").value = "0.000"),
  "an end play below nothing": (session) => (reading(session, "end_play").value = "-0.12"),
  "a kind asked for by a word": (session) => (session.set_up["measure/head"].value = "yes"),
  "13 o’clock": (session) => (session.set_up["high_spot/2"].value = 13),
  "half an hour": (session) => (session.set_up["high_spot/2"].value = 5.5),
  "a stroke of nothing": (session) => (session.set_up["length/stroke"].value = "0.00"),
  "a stroke without its unit": (session) => delete session.set_up["length/stroke"].unit,
  "a bar off its axis without a unit": (session) => delete session.set_up["length/bar_offset"].unit,
  "a chamber of 2001 cm³": (session) => (session.set_up["volume/chamber"].value = "2001"),
  "a chamber with a zero at its end": (session) => (session.set_up["volume/chamber"].value = "64.0"),
  "a chamber as a number": (session) => (session.set_up["volume/chamber"].value = 64),
  "a deck clearance with a plus": (session) => (session.set_up.deck_clearance.value = "+0.15"),
  "an oversize of nothing": (session) => (session.set_up["stock/piston"].value = "0.25 0.00"),
  "oversizes as a list": (session) => (session.set_up["stock/piston"].value = ["0.25", "0.50"]),
  "thirteen oversizes": (session) =>
    (session.set_up["stock/piston"].value = Array(13).fill("0.25").join(" ")),
  "a swing with a limit of nothing": (session) =>
    (session.limits["run_out/size/service"].value = "0.00"),
  "a look answered by a word of its own": (session) =>
    (session.visual_checks["wiped/main_shell/2"].value = "a little"),
  "a look without its stamp": (session) => delete session.visual_checks["hatch/bore/1"].at,
};

for (const [what, change] of Object.entries(EVERY_KIND_BROKEN)) {
  test(`the schema refuses ${what}`, async () => {
    const text = await everyKind();
    expect(await schemaFaults(changed(text, () => {}))).toEqual([]);
    expect(await schemaFaults(changed(text, change))).not.toEqual([]);
  });
}

test("the schema takes the ends of what is given, and looks of a later version", async () => {
  for (const volume of ["0", "-2000", "1999.999", "0.001", null]) {
    const change = (session) => (session.set_up["volume/chamber"].value = volume);
    expect(await schemaFaults(changed(await everyKind(), change)), volume).toEqual([]);
  }
  for (const steps of ["", "0.25", Array(12).fill("0.010").join(" ")]) {
    const change = (session) => (session.set_up["stock/piston"].value = steps);
    expect(await schemaFaults(changed(await everyKind(), change)), steps).toEqual([]);
  }
  const later = (session) => (session.visual_checks["humming/fan/1"] = { value: 3 });
  expect(await schemaFaults(changed(await everyKind(), later))).toEqual([]);
});

test("the schema takes the ends of a temperature, and words of a later version", async () => {
  const climates = ["-40", "-39.999", "0", "59.999", "60", "by_the_sea", "21.50"];
  for (const climate of climates) {
    const change = (session) => (session.set_up.climate.value = climate);
    expect(await schemaFaults(changed(await conditions(), change)), climate).toEqual([]);
  }
  const titanium = (session) => (session.set_up["material/bore"].value = "titanium");
  expect(await schemaFaults(changed(await conditions(), titanium))).toEqual([]);
});

const LATER = {
  "kind of gauge": (session) => (ranged(session).kind = "air_gauge"),
  "word for what a gauge is set against": (session) =>
    (set(session, "standard").against = "a_laser"),
  feature: (session) => (set(session, "feature").feature = "cam_lobe/2"),
  "way of a dial": (session) => (set(session, "micrometer").sense = "by_colour"),
  use: (session) => (session.set_up.use.value = "hill_climb"),
  "field of a reading": (session) => (dialled(session).hand = "left"),
};

for (const [what, change] of Object.entries(LATER)) {
  test(`the schema lets a ${what} of a later version pass`, async () => {
    expect(await schemaFaults(changed(await sample(), change))).toEqual([]);
  });
}
