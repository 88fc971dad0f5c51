// The main journey: an engine on the bench, no reception, oily hands.
import { expect, test } from "./support/bench.mjs";

// Invented, like every number in these journeys.
const LIMITS = [
  ["Size: new, low", "82.000"],
  ["Size: new, high", "82.020"],
  ["Size: service limit", "82.100"],
  ["Out-of-round: service limit", "0.040"],
];

test("from the first visit to a finding, with the server gone", async ({ bench, site }) => {
  await bench.open();
  await bench.readyOffline();
  await site.stop();
  await bench.reload();

  await bench.startSession({ cylinders: 6 });
  await bench.to("Limits");
  await bench.keepLimits("bore", LIMITS);
  await expect(bench.limits("bore").getByTestId("kept")).toHaveText("Kept, saved");

  await bench.to("Measure");
  await bench.expectAt("Bore 1", "top, thrust");
  await expect(bench.progress).toHaveText("0 of 90");
  await bench.read("82.112");
  await expect(bench.last).toContainText("82.112 mm reads beyond limit by 0.012 mm (too large)");
  await bench.expectSaved();

  // The first was typed in full. From now on the last three digits do.
  await bench.expectAt("Bore 1", "top, along the crank");
  await expect(bench.value).toHaveText("82.▢▢▢");
  await bench.key("06");
  await expect(bench.value).toHaveText("82.06▢");
  await bench.key("1");
  await bench.enter();
  await bench.expectAt("Bore 1", "bottom, thrust");
  await bench.read("020");
  await bench.read("018");
  await bench.expectAt("Bore 2", "top, thrust");
  await bench.read("996");
  await expect(bench.last).toContainText("81.996 mm reads beyond limit by 0.004 mm (too small)");
  await bench.expectSaved();
  await expect(bench.progress).toHaveText("5 of 90");

  const findings = await bench.findings();
  const [first, second] = findings;
  expect(first.words).toBe("Size too close to call");
  expect(first.rows).toContainEqual({
    label: "Size, largest",
    value: "82.112 mm",
    mark: "open",
    words: "too close to call",
    guide: "",
  });
  expect(first.rows).toContainEqual({
    label: "Out-of-round, top",
    value: "+0.051 mm",
    mark: "shape",
    words: "reads beyond limit by 0.011 mm",
    guide: "",
  });
  expect(first.rows).toContainEqual({
    label: "Size, smallest",
    value: "82.018 mm",
    mark: "service",
    words: "within service limit",
    guide: "",
  });
  expect(second.words).toContain("not all of it measured");
  expect(second.missing).toContain("Bore 2, bottom, thrust");

  await bench.reload();
  expect(await bench.findings(), "the same after another start").toEqual(findings);
  await bench.to("Bench");
  await expect(bench.sessions).toContainText("5 of 90 stations read");
});

test("from New session to the first saved reading takes less than a minute", async ({ bench }) => {
  await bench.open();
  bench.pace = 400;
  const start = performance.now();
  await bench.startSession({ cylinders: 6, name: "Six from the shed" });
  await bench.read("82.003");
  await bench.expectSaved();
  const seconds = (performance.now() - start) / 1000;
  expect(seconds, "the pace of a person is in it").toBeGreaterThan(9 * 0.4);
  expect(seconds).toBeLessThan(60);
});

test("nothing is refused before ENTER, and a refusal keeps what was typed", async ({ bench }) => {
  await bench.open();
  await bench.startSession();
  await bench.enter();
  await expect(bench.said).toHaveText("Nothing is typed yet: type the reading first.");
  await bench.key("82.0");
  await expect(bench.said).toBeHidden();
  await bench.enter();
  await expect(bench.said).toHaveText("This gauge reads 3 decimals: type all of them, zeros too.");
  await expect(bench.value).toHaveText("82.0▢▢");
  await bench.key("03");
  await expect(bench.said).toBeHidden();
  await bench.enter();
  await bench.expectAt("Bore 1", "top, along the crank");
  await bench.read("82.011");
  await bench.expectAt("Bore 1", "bottom, thrust");

  await bench.read("82");
  await expect(bench.said).toHaveText("Type the last 3 digits: 2 so far.");
  await expect(bench.progress).toHaveText("2 of 62");
  await bench.key("1");
  await expect(bench.value).toHaveText("81.821");

  // A lost point: no engine has such a bore.
  await bench.tap(bench.button("enter as read"));
  await bench.read("820.003");
  await expect(bench.said).toHaveText(
    "820.003 mm is no bore: 5 to 600 mm can be. Is the point in its place?",
  );
  await expect(bench.value).toHaveText("820.003");
});
