// What is measured, one time each. All times are milliseconds.
import { Bench, expect } from "../support/bench.mjs";
import { Phone, SLOW_4G } from "./phone.mjs";

const VALUE = '[data-testid="value"]';
const PROGRESS = '[data-testid="progress"]';
const LAST = '[data-testid="last"]';

/** Readings entered and taken back beforehand, two changes each. */
const TAKEN_BACK = 100;

/**
 * A context with the app kept offline, this session taken in, and a journal of as many changes
 * as two hundred readings make; gives the address of the fender screen.
 */
export async function takenIn(context, site, session) {
  const page = await context.newPage();
  const bench = new Bench(page, site);
  await bench.open();
  await bench.readyOffline();
  await bench.takeIn(session);
  await bench.openSession(JSON.parse(session).session.set_up.name.value);
  const before = await bench.progress.textContent();
  for (let n = 0; n < TAKEN_BACK; n += 1) {
    await bench.type(`01${n % 10}`);
    await bench.tap(bench.tool("Undo"));
  }
  await expect(bench.progress).toHaveText(before);
  await bench.expectSaved();
  const address = page.url();
  await page.close();
  return address;
}

/**
 * Nothing of the app is there yet, and the connection is poor: to the first paint, to the first
 * touch answered, and over New session and Start measuring to the first key on the screen.
 */
export async function firstVisit(context, site, keep) {
  const phone = await Phone.of(context, SLOW_4G);
  await phone.slowly(async () => {
    await phone.go(site.url);
    keep("touch", (await phone.answered("New session", "#app", "Start measuring")).at);
    await phone.touch("Start measuring");
    keep("firstKey", (await phone.answered("8", VALUE, "8")).at);
  });
  keep("shell", await phone.painted());
  keep("largest", await phone.largest());
  await context.close();
}

/** The browser is started anew without a server: to the first key on the screen. */
export async function relaunch(context, address, keep) {
  const phone = await Phone.of(context);
  await phone.slowly(async () => {
    await phone.go(address);
    keep("relaunched", (await phone.answered("8", VALUE, "8")).at);
  });
  // What was typed is kept: the next start must find the place as this one did.
  await phone.answered("take back the last key", VALUE);
  await context.close();
}

/** One reading with its keys and ENTER, taken back at the end so that there are never more. */
export async function oneReading(phone, n, keep) {
  const digits = `01${n % 10}`;
  await phone.slowly(async () => {
    for (const digit of digits) {
      await phone.rest();
      keep("key", (await phone.answered(digit, VALUE, digit)).took);
    }
    await phone.rest();
    keep("enter", (await phone.answered("ENTER", LAST, `${digits} mm`)).took);
  });
  await phone.answered("Undo", PROGRESS);
}

/** As many touches of the empty page as a reading has keys. */
export async function touches(blank, keep) {
  await blank.slowly(async () => {
    for (let n = 0; n < 3; n += 1) {
      await blank.rest();
      keep("empty", (await blank.answered("touch", "button")).took);
    }
  });
}

/** From the findings to what to do: everything worked out and on the screen. */
export async function planned(phone, address, keep) {
  await phone.go(address.replace(/[^/]*$/, "findings"));
  await phone.page.locator("[data-testid=kind]").first().waitFor();
  await phone.slowly(async () => {
    await phone.rest();
    keep("plan", (await phone.answered("What to do", "#app", "The plan for the set")).took);
  });
}
