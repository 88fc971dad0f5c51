// Sessions are put away, put back, and deleted only after a second question.
import { expect, test } from "./support/bench.mjs";

test("put away, put back, and deleted for good", async ({ bench }) => {
  await bench.open();
  await bench.startSession({ name: "Finished" });
  await bench.read("82.003");
  await bench.expectSaved();
  const { text } = await bench.exportFile();
  const { id } = JSON.parse(text).session;
  await bench.to("Bench");
  await bench.startSession({ name: "On the bench" });
  await bench.to("Bench");
  await expect(bench.sessions).toHaveCount(2);

  await bench.tap(bench.button("Put away Finished"));
  await expect(bench.sessions).toHaveCount(1);
  await expect(bench.away).toContainText("Finished");
  await bench.reload();
  await expect(bench.away, "also after another start").toContainText("Finished");
  await bench.tap(bench.away.getByRole("button", { name: "Put back" }));
  await expect(bench.away).toHaveCount(0);
  await expect(bench.sessions).toHaveCount(2);

  await bench.tap(bench.button("Put away Finished"));
  const before = await bench.stored();
  await bench.tap(bench.away.getByRole("button", { name: "Delete …" }));
  const sure = bench.away.getByRole("button", { name: "Yes, delete for good" });
  await expect(sure).toBeVisible();
  expect(await bench.stored(), "nothing is deleted yet").toEqual(before);
  await bench.tap(sure);
  await expect(bench.away).toHaveCount(0);
  await expect.poll(async () => JSON.stringify(await bench.stored())).not.toContain(id);
  await bench.reload();
  await expect(bench.sessions).toHaveCount(1);
  await expect(bench.sessions).toContainText("On the bench");
  await expect(bench.away).toHaveCount(0);

  await bench.takeIn(text);
  await expect(bench.sessions, "the file is the backup").toHaveCount(2);
});

test("the address of a session that is not here says so", async ({ bench }) => {
  await bench.open("#/00000000000000aa/route");
  await expect(bench.page.getByRole("heading")).toHaveText("Not here");
  await bench.tap(bench.page.getByRole("link", { name: "To the bench" }));
  await expect(bench.page.getByRole("heading", { name: "Fenderbench" })).toBeVisible();
});
