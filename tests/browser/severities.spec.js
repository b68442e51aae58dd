// What a finding locks: shown by the stops of a walk, changed, and told as the shop's own.

import { expect, test } from "./test.js";

test("a word is made to lock the road, is told as the shop's own, and is set back", async ({ page, record }) => {
  await page.goto("/certificates");
  await page.getByRole("link", { name: "what a finding locks" }).click();
  await expect(page).toHaveURL("/severities");
  const hairline = page.getByRole("group", { name: "Mirrors" }).getByLabel("hairline");
  await expect(hairline).toBeHidden();
  await page.getByText("Cab, key off", { exact: true }).click();
  await expect(hairline).toHaveValue("note");

  const severity = async () => {
    const { stops } = await record("/severities");
    const mirrors = stops.flatMap((stop) => stop.items).find(({ item }) => item === "mirrors");
    return mirrors.words.find(({ word }) => word === "hairline").severity;
  };
  await hairline.selectOption({ label: "road" });
  await page.getByRole("button", { name: "Set these: Cab, key off" }).click();
  await expect(page).toHaveURL("/severities");
  expect(await severity()).toBe("road");
  // What the shop has otherwise stands open and is counted.
  await expect(hairline).toBeVisible();
  await expect(hairline).toHaveAccessibleDescription("the shop's own; usual is: note");
  await expect(page.locator("summary").filter({ hasText: "Cab, key off" })).toContainText("1 of the shop's own");

  await hairline.selectOption({ label: "note" });
  await page.getByRole("button", { name: "Set these: Cab, key off" }).click();
  await expect(hairline).toBeHidden();
  expect(await severity()).toBe("note");
});

test("a second time within days is set beside the first", async ({ page }) => {
  await page.goto("/severities");
  await page.getByText("Under the hood", { exact: true }).click();
  const coolant = page.getByRole("group", { name: "Coolant" });
  await expect(coolant.getByLabel(/the second time in 7 days/)).toHaveValue("road");
  // The second time may not lock less than the first: nothing is changed.
  await coolant.getByLabel("low", { exact: true }).selectOption({ label: "road" });
  await coolant.getByLabel(/the second time in 7 days/).selectOption({ label: "note" });
  await page.getByRole("button", { name: "Set these: Under the hood" }).click();
  await expect(page.locator("main")).toContainText("Nothing was changed.");
});
