// Units, the find box, one unit.

import { expect, test } from "./test.js";

test("units that need someone stand in a table, the others are a run of doors; heads sort", async ({ page, record }) => {
  await page.goto("/units");
  const view = await record("/units");
  await expect(page.getByRole("heading", { level: 1 })).toContainText("Units 8");
  await expect(page.locator("main table tbody tr")).toHaveCount(view.needing);
  for (const door of view.quiet) await expect(page.locator(".doors").getByRole("link", { name: door })).toBeVisible();
  await page.getByRole("link", { name: "as a table" }).click();
  await expect(page.locator("main table tbody tr")).toHaveCount(8);
  await page.locator("thead").getByRole("link", { name: "Hours as read" }).click();
  await expect(page.locator("thead th[aria-sort]")).toHaveText("Hours as read");
  const asked = new URL(page.url());
  const sorted = await record(`${asked.pathname}${asked.search}`);
  expect(await page.locator("tbody th .door").allInnerTexts()).toEqual(sorted.rows.map((row) => row.unit));
});

test("the find box opens the unit that is meant, else lists those that hold what was typed", async ({ page }) => {
  await page.goto("/");
  for (const typed of ["TH-04", "th-04", "04", "4"]) {
    await page.locator("#find").fill(typed);
    await page.locator("#find").press("Enter");
    await expect(page).toHaveURL(/\/units\/TH-04$/);
  }
  await page.locator("#find").fill("TH-0");
  await page.locator("#find").press("Enter");
  await expect(page).toHaveURL(/\/units\?find=TH-0$/);
  await expect(page.getByRole("link", { name: "TH-05" }).first()).toBeVisible();
});

test("one unit tells its locks, its two clocks in words and drawing, its struck figure, its papers", async ({ page, record }) => {
  // No other test writes of this one.
  await page.goto("/units/TH-06");
  await expect(page.locator(".standing")).toContainText("Road: no lock on record");
  await page.goto("/units/TH-01");
  const view = await record("/units/TH-01");
  await expect(page.getByRole("heading", { level: 1 })).toHaveText("TH-01");
  await expect(page.locator("#due tbody tr")).toHaveCount(view.tasks.length);
  const separator = view.tasks.find((task) => task.task === "separator");
  const row = page.locator("#due tbody tr").filter({ hasText: "Separator" });
  await expect(row).toContainText(`${separator["hours-left"]} h left of 3,000.0 h, due at 3,000.0 h`);
  await expect(row.locator("svg.ruler")).toBeVisible();
  await expect(page.locator("#history")).toContainText("newest first, nothing left out");

  await page.goto("/units/TH-03");
  await expect(page.locator("#hours s").filter({ hasText: "7,421.0" }).first()).toBeVisible();
  expect(JSON.stringify(await record("/units/TH-03"))).toContain("7421.0");
});

test("a table's arrows walk its doors, Enter opens one", async ({ page }) => {
  await page.goto("/units?table=true");
  await page.locator("tbody th a").first().focus();
  await page.keyboard.press("ArrowDown");
  await page.keyboard.press("ArrowDown");
  await page.keyboard.press("ArrowUp");
  await expect(page.locator("tbody th a").nth(1)).toBeFocused();
  await page.keyboard.press("Enter");
  await expect(page).toHaveURL(/\/units\/TH-02$/);
});

test("at 320 px one part of the unit's page stands open at a time", async ({ page }) => {
  await page.setViewportSize({ width: 320, height: 800 });
  await page.goto("/units/TH-01");
  await expect(page.locator("details.part[open]")).toHaveCount(1);
  await page.locator("#history > summary").click();
  await expect(page.locator("details.part[open]")).toHaveAttribute("id", "history");
  await expect(page.locator("details.part[open]")).toHaveCount(1);
});

test("a figure is shown in US units or metric, and its record stays as it was given", async ({ page, record }) => {
  await page.goto("/units/TH-01");
  const poured = await record("/units/TH-01");
  await expect(page.locator("#fluids")).toContainText("0.21 qt");
  await page.getByRole("link", { name: "metric" }).click();
  await expect(page.getByRole("link", { name: "metric" })).toHaveAttribute("aria-current", "true");
  await expect(page.locator("#fluids")).toContainText(/0\.(199|20) L/);
  const { fluids } = await record("/units/TH-01");
  expect(fluids).toEqual(poured.fluids);
  await page.getByRole("link", { name: "US units" }).click();
  await expect(page.locator("#fluids")).toContainText("0.21 qt");
});
