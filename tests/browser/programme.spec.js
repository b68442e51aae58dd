// The service programme: shown, changed for every unit, set for one alone; the due list follows.

import { expect, test } from "./test.js";

test("an interval is changed for every unit, and one unit has one of its own", async ({ page, record }) => {
  await page.goto("/due");
  await page.getByRole("link", { name: "the service programme" }).click();
  const cooler = page.getByRole("group", { name: "Cooler and scavenge" });
  await expect(cooler.getByLabel("Every, months")).toHaveValue("12");
  await cooler.getByLabel("Every, months").fill("3");
  const added = page.getByRole("group", { name: "Another task" }).first();
  await added.getByLabel("Name").fill("Grease the PTO shaft");
  await added.getByLabel("Every, months").fill("1");
  await page.getByRole("button", { name: "Set the programme" }).click();
  await expect(page).toHaveURL("/programme");
  await expect(page.getByRole("group", { name: "grease the pto shaft" }).getByLabel("Every, months")).toHaveValue("1");
  await expect(cooler.getByLabel("Every, months")).toHaveValue("3");
  const greased = async () => (await record("/due")).rows.filter(({ task }) => task === "grease-the-pto-shaft");
  const all = (await greased()).length;
  expect(all).toBeGreaterThan(3);

  await page.getByLabel("Of", { exact: true }).selectOption("TH-01");
  await page.getByRole("button", { name: "Show" }).click();
  await expect(page.locator("h1")).toHaveText("Service programme of TH-01");
  await page.getByRole("group", { name: "grease the pto shaft" }).getByLabel("leave this task out from now on").check();
  await page.getByRole("button", { name: "Set the programme of TH-01" }).click();
  await expect(page.locator("main")).toContainText("TH-01 has a programme of its own.");
  expect((await greased()).length).toBe(all - 1);

  // A figure that cannot be read: nothing is changed, and it says of which task.
  await page.getByRole("group", { name: "Separator" }).getByLabel("Every, months").fill("often");
  await page.getByRole("button", { name: "Set the programme of TH-01" }).click();
  await expect(page.locator("main")).toContainText('A figure of "Separator" cannot be read. Nothing was changed.');
});
