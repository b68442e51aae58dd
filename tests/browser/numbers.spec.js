// The rules' numbers: shown with what is usual, changed, refused by name, and every page counts with them.

import { expect, test } from "./test.js";

test("a number is changed, the due list follows, and what is out of bounds is refused by its name", async ({ page, record }) => {
  await page.goto("/due");
  await page.getByRole("link", { name: "the rules' numbers" }).click();
  const days = page.getByLabel("Coming up: days before its last good day");
  await expect(days).toHaveValue("14");
  await expect(days).toHaveAccessibleDescription("usual; from 0 to 366");

  const comingUp = async () => (await record("/due")).rows.filter((row) => row.state === "coming-up").length;
  const before = await comingUp();
  await days.fill("200");
  await page.getByRole("button", { name: "Set these numbers" }).click();
  await expect(page).toHaveURL("/numbers");
  await expect(days).toHaveAccessibleDescription("the shop's own; usual is 14");
  expect(await comingUp()).toBeGreaterThan(before);

  await page.getByLabel("A pre-trip covers, minutes").fill("14 h");
  await page.getByRole("button", { name: "Set these numbers" }).click();
  await expect(page.locator("main")).toContainText("goes from 60 to 1440. Nothing was changed.");
  await page.goto("/numbers");
  await expect(page.getByLabel("A pre-trip covers, minutes")).toHaveValue("840");

  // Left empty it is the usual one.
  await days.fill("");
  await page.getByRole("button", { name: "Set these numbers" }).click();
  await expect(days).toHaveValue("14");
  expect(await comingUp()).toBe(before);
});
