// Due and visits: a visit planned from ticked rows, a part waited for, a service recorded.

import { expect, test } from "./test.js";

const tick = (page, unit, task) => page.getByRole("checkbox", { name: `${unit}, ${task}` });

test("rows are ticked and become one visit of the unit", async ({ page, record }) => {
  await page.goto("/due");
  await expect(page.locator("#near-table tbody tr")).toHaveCount((await record("/due")).count);
  // Nothing ticked: nothing planned, and it says why.
  await page.getByLabel("Day", { exact: true }).fill("2026-11-12");
  await page.getByRole("button", { name: "Plan a visit" }).click();
  await expect(page.getByText("No row was ticked. Nothing was recorded.")).toBeVisible();
  await page.goBack();

  await tick(page, "TH-08", "Cooler and scavenge").check();
  await tick(page, "TH-08", "Oil and filters").check();
  await expect(page.locator("[data-ticked]")).toHaveText("2 ticked");
  await page.getByLabel("Day", { exact: true }).fill("2026-11-12");
  await page.getByLabel("Bay").fill("bay 2");
  await page.getByLabel("Who", { exact: true }).fill("Dov Petrakis");
  await page.getByRole("button", { name: "Plan a visit" }).click();
  await expect(page).toHaveURL(/\/due#visits$/);
  const row = page.locator("#visits-table tbody tr");
  await expect(row).toContainText("Thu 12 Nov");
  await expect(row).toContainText("bay 2, Dov Petrakis");
  const [visit] = (await record("/due")).visits;
  expect(visit).toMatchObject({ unit: "TH-08", day: "2026-11-12", "where-and-who": "bay 2, Dov Petrakis" });
  expect([...visit.tasks].sort()).toEqual(["cooler-and-scavenge", "oil-and-filters"]);
});

test("a day that is over is refused, and nothing is kept of it", async ({ page, record }) => {
  await page.goto("/due");
  const planned = (await record("/due")).visits.length;
  await tick(page, "TH-01", "Separator").check();
  const day = page.getByLabel("Day", { exact: true });
  await day.evaluate((input) => input.removeAttribute("min"));
  await day.fill("2026-11-01");
  await page.getByRole("button", { name: "Plan a visit" }).click();
  await expect(page.getByText("That day is over in the yard. Nothing was recorded.")).toBeVisible();
  expect((await record("/due")).visits.length).toBe(planned);
});

test("a part is waited for", async ({ page, record }) => {
  await page.goto("/due?unit=TH-01");
  await tick(page, "TH-01", "Separator").check();
  await page.getByLabel("Part", { exact: true }).fill("separator element");
  await page.getByLabel("Promised").fill("2026-11-20");
  await page.getByRole("button", { name: "Keep the wait" }).click();
  await expect(page.locator("#near-table tbody tr").filter({ hasText: "separator element" })).toContainText("Fri 20 Nov");
  const row = (await record("/due?unit=TH-01")).rows.find(({ task }) => task === "separator");
  expect(row["waiting-for"]).toMatchObject({ part: "separator element", promised: "2026-11-20" });
  // The wait has its own button: nothing is told again to end it.
  await page.getByRole("button", { name: "The part is in, TH-01, separator element" }).click();
  await expect(page).toHaveURL(/\/due#waits$/);
  await expect(page.locator("#waits-table")).not.toContainText("separator element");
});

test("a planned visit is called off", async ({ page, record }) => {
  await page.goto("/due?unit=TH-05");
  await tick(page, "TH-05", "Separator").check();
  await page.getByLabel("Day", { exact: true }).fill("2026-11-12");
  await page.getByRole("button", { name: "Plan a visit" }).click();
  const row = page.locator("#visits-table tbody tr").filter({ hasText: "TH-05" });
  await row.getByText("Cancel the visit").first().click();
  await row.getByRole("button", { name: "Cancel the visit" }).click();
  await expect(page.locator("#visits-table tbody tr").filter({ hasText: "TH-05" })).toHaveCount(0);
  expect((await record("/due")).visits.filter(({ unit }) => unit === "TH-05")).toEqual([]);
});

test("a service is recorded with its oil, and both clocks start anew", async ({ page, record }) => {
  await page.goto("/due");
  await tick(page, "TH-02", "Oil and filters").check();
  await page.getByRole("button", { name: "Service done" }).click();
  await expect(page).toHaveURL(/\/due\/service\?/);
  expect(page.url(), "no token in an address").not.toContain("csrf");
  await expect(page.getByLabel("Oil and filters")).toBeChecked();
  await page.getByLabel("Hours of the meter then").fill("1,231.0");
  await page.getByLabel("Time").fill("16:30");
  await page.getByLabel("Done by").selectOption("Dov Petrakis");
  await page.getByLabel("Parts used, one a line, by the unit's own numbers").fill("OF-2\nAF-2");
  await page.getByLabel("How much").fill("4.5");
  await page.getByRole("button", { name: "Keep the service" }).click();
  await expect(page).toHaveURL(/\/due$/);
  await expect(tick(page, "TH-02", "Oil and filters")).toHaveCount(0);
  const unit = await record("/units/TH-02");
  const task = unit.tasks.find(({ task }) => task === "oil-and-filters");
  expect(task.last).toMatchObject({ day: "2026-11-09", hours: "1231.0" });
  expect(task.state).toBe("far-off");
  await page.goto("/units/TH-02#due");
  await expect(page.locator("#due tbody tr").filter({ hasText: "Oil and filters" })).toContainText("1,231.0");
});
