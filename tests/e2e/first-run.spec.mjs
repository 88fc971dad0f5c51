// Somebody who was never here: shown the way once, never held up; and what to do where there is
// nothing yet.
import { expect, test } from "./support/bench.mjs";

const invitation = (bench) => bench.page.getByTestId("invitation");
const empty = (bench) => bench.page.getByTestId("empty");
const title = (bench) => bench.page.getByRole("heading", { level: 1 });

test("a newcomer is invited, sees it on the sample, and is not asked again", async ({ bench }) => {
  await bench.open();
  await expect(empty(bench)).toContainText("Nothing on the bench yet.");
  await bench.tap(invitation(bench));

  await expect(title(bench)).toHaveText("What you get");
  await expect(bench.page.getByTestId("first-part").first()).toHaveText(
    "Bore 5Taper beyond limit by 0.054 mm",
  );
  await expect(bench.page.getByTestId("first-plan")).toContainText("bore and hone all to 0.50 mm over");
  const before = await bench.stored();
  await bench.tap(bench.button("Next"));

  await expect(title(bench)).toHaveText("Type a reading");
  const task = await bench.page.getByTestId("task").textContent();
  const [, shows, digits] = task.match(/shows ([\d.]+) mm\. Type its last three digits, ([\d ]+),/);
  for (const key of ["8", "ENTER"]) {
    const { width, height } = await bench.keypad.getByRole("button", { name: key, exact: true }).boundingBox();
    expect(Math.min(width / 100, height / 56), `${key}: ${width} × ${height}`).toBeGreaterThanOrEqual(1);
  }
  await bench.key(digits[0]);
  await bench.enter();
  await expect(bench.said).toHaveText("Type the last 3 digits: 1 so far.");
  await bench.key(digits.slice(1).replaceAll(" ", ""));
  await expect(bench.value).toHaveText(shows);
  await bench.enter();
  await expect(bench.last).toHaveText(`${shows} mm reads inside service limit`);
  expect(await bench.stored(), "what is practised is kept nowhere").toEqual(before);
  await bench.tap(bench.button("Next"));

  await expect(title(bench)).toHaveText("What is kept where");
  await expect(bench.button("Next")).toBeHidden();
  await bench.tap(bench.button("Back"));
  await expect(title(bench)).toHaveText("Type a reading");
  await bench.tap(bench.button("Next"));
  await bench.tap(bench.page.getByRole("link", { name: "To the bench" }));

  await expect(title(bench)).toHaveText("Fenderbench");
  await expect(invitation(bench)).toHaveCount(0);
  await bench.reload();
  await expect(empty(bench)).toBeVisible();
  await expect(invitation(bench), "nor at the next visit").toHaveCount(0);
  await bench.tap(bench.page.getByRole("link", { name: "How it works", exact: true }));
  await expect(title(bench), "it can be seen again").toHaveText("What you get");
});

test("each of the three can be skipped", async ({ bench }) => {
  await bench.open();
  for (const on of [0, 1, 2]) {
    await bench.tap(bench.page.getByRole("link", { name: "How it works", exact: true }));
    await expect(title(bench)).toHaveText("What you get");
    for (let step = 0; step < on; step += 1) await bench.tap(bench.button("Next"));
    await bench.tap(bench.page.getByRole("link", { name: "Skip" }));
    await expect(title(bench)).toHaveText("Fenderbench");
  }
});

test("whoever starts at once is not held up, and whoever returns is not asked", async ({ bench }) => {
  await bench.open();
  await expect(invitation(bench)).toBeVisible();
  await bench.startSession();
  await bench.read("82.003");
  await bench.expectSaved();
  await bench.to("Bench");
  await expect(bench.sessions).toHaveCount(1);
  await expect(invitation(bench)).toHaveCount(0);
  await bench.tap(bench.button("Put away In-line 4"));
  await expect(empty(bench)).toBeVisible();
  await expect(invitation(bench)).toHaveCount(0);
});

test("it works without a network", async ({ bench, site }) => {
  await bench.open();
  await bench.allOffline();
  await site.stop();
  await bench.reload();
  await bench.tap(invitation(bench));
  await expect(bench.page.getByTestId("first-part")).toHaveCount(3);
});

test("where there is nothing yet, a screen says what to do next and leads there", async ({ bench }) => {
  await bench.open();
  await bench.startSession();
  await bench.to("Findings");
  await expect(empty(bench)).toContainText("Nothing is read yet.");
  await expect(bench.page.getByRole("link", { name: "What to do" })).toHaveCount(0);
  await bench.tap(empty(bench).getByRole("link", { name: "Measure" }));
  await expect(bench.feature).toHaveText("Bore 1");

  await bench.page.goto(bench.page.url().replace("/route", "/plan"));
  await expect(title(bench)).toHaveText("What to do");
  await expect(empty(bench)).toContainText("there is nothing to go by");
  await expect(bench.page.getByTestId("plan-line"), "no plan without readings").toHaveCount(0);

  await bench.page.goto(bench.page.url().replace("/plan", "/what-to-measure"));
  for (const kind of ["bore", "piston", "main_journal", "rod_journal"]) {
    const key = bench.page.getByTestId(`ask-${kind}`);
    await bench.tap(key);
    await expect(key.getByRole("checkbox")).not.toBeChecked();
  }
  await bench.to("Limits");
  await expect(empty(bench)).toContainText("Nothing is asked for.");
  await bench.tap(bench.page.getByRole("link", { name: "Measure", exact: true }));
  await expect(bench.said).toContainText("choose what to measure");
  await expect(bench.page.locator(".reading").getByRole("link", { name: "What to measure" })).toBeVisible();
  await bench.to("Limits");
  await bench.tap(empty(bench).getByRole("link", { name: "What to measure" }));
  await expect(title(bench)).toHaveText("What to measure");
});

test("the bench tells what is in no file yet, and one tap mends it", async ({ bench }) => {
  await bench.open();
  await bench.startSession();
  await bench.read("82.003");
  await bench.read("004");
  await bench.expectSaved();
  await bench.to("Bench");
  const filed = bench.page.getByTestId("filed");
  await expect(filed).toHaveText("2 readings not in a file yet");
  const line = bench.page.getByText(/^Kept on this device/);
  await expect(line).toHaveText("Kept on this device; 2 readings not in a file yet");
  const download = bench.page.waitForEvent("download");
  await bench.tap(bench.button("To a file In-line 4"));
  expect((await download).suggestedFilename()).toBe("in-line-4.json");
  await expect(filed).toHaveText(/^all in a file of \d{4}-\d{2}-\d{2}$/);
  await expect(line).toHaveText("Kept on this device, and in files");
  await expect(bench.button("To a file In-line 4")).toHaveCount(0);

  await bench.reload();
  await expect(filed, "it is known after a reload").toHaveText(/^all in a file/);
  await bench.openSession("In-line 4");
  await bench.read("005");
  await bench.expectSaved();
  await bench.to("Bench");
  await expect(filed).toHaveText("1 reading not in a file yet");
});
