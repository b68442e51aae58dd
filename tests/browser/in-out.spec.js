// In and out: a table looked at before it comes in, and everything that can be taken out.

import { readFile } from "node:fs/promises";
import { expect, test } from "./test.js";

const csv = (name, text) => ({ name, mimeType: "text/csv", buffer: Buffer.from(text) });

const look = async (page, file, what) => {
  await page.goto("/in-and-out");
  await page.getByLabel("Table, as CSV").setInputFiles(file);
  await page.getByLabel("It holds").selectOption({ label: what });
  await page.getByRole("button", { name: "Look at it first" }).click();
  await expect(page).toHaveURL(/\/in-and-out\/dry-run\//);
};

test("readings come in after a dry run; days that can be two are asked about; twice brings nothing double", async ({ page, record }) => {
  const table = csv("old-readings.csv", "unit,date,hours\nTH-05,3/4/2026,10.5\nTH-05,4/5/2026,21.0\nTH-05,13/31/2025,5.0\nTH-99,5/6/2026,9.0\n");
  await look(page, table, "readings");
  await expect(page.locator(".strip").filter({ hasText: "Nothing was brought in. Say which" })).toContainText("3/4/2026 can be");
  await page.getByLabel("Its days: 10/12/2026 is").selectOption("mdy");
  await page.getByRole("button", { name: "Look at it first" }).click();
  await expect(page.getByText("Dry run: 2 good, 2 refused, 0 already here")).toBeVisible();
  await expect(page.getByText("Nothing was brought in yet.")).toBeVisible();
  const refused = page.locator("#refused-table");
  await expect(refused).toContainText("13/31/2025");
  await expect(refused).toContainText("TH-99");
  await expect(page.locator("#first-table")).toContainText("Wednesday 4 March 2026");
  const dry = await record(new URL(page.url()).pathname);
  expect(dry).toMatchObject({ good: 2, "refused-rows": 2 });

  const saved = page.waitForEvent("download");
  await page.getByRole("link", { name: /^Save the 2/ }).click();
  const rows = await readFile(await (await saved).path(), "utf8");
  expect(rows).toContain("13/31/2025");
  expect(rows).not.toContain("3/4/2026");

  await page.getByRole("button", { name: "Bring in 2" }).click();
  await expect(page.getByText("2 rows were brought in.")).toBeVisible();
  expect(JSON.stringify((await record("/units/TH-05")).hours)).toContain("10.5");
  await page.goto("/units/TH-05");
  await expect(page.locator("#history")).toContainText("brought in");

  await look(page, table, "readings");
  await page.getByLabel("Its days: 10/12/2026 is").selectOption("mdy");
  await page.getByRole("button", { name: "Look at it first" }).click();
  await expect(page.getByText("Dry run: 0 good, 2 refused, 2 already here")).toBeVisible();
  await expect(page.getByRole("button", { name: /^Bring in/ })).toHaveCount(0);
});

test("tables, a pack and the calendar are taken out", async ({ page, record }) => {
  await page.goto("/in-and-out");
  const taken = async (press) => {
    const download = page.waitForEvent("download");
    await press();
    const file = await download;
    return { name: file.suggestedFilename(), bytes: await readFile(await file.path()) };
  };
  const readings = await taken(() => page.getByRole("link", { name: "Readings" }).click());
  expect(readings.name).toMatch(/^[\w.-]*readings[\w.-]*\.csv$/);
  expect(readings.bytes.toString("utf8")).toContain("TH-03");

  await page.getByLabel("Unit", { exact: true }).selectOption("TH-03");
  const pack = await taken(() => page.getByRole("button", { name: "Make the pack" }).click());
  expect(pack.name).toMatch(/pack.*TH-03.*\.zip$/);
  expect(pack.bytes.subarray(0, 2).toString()).toBe("PK");

  await page.getByRole("button", { name: "Gaps the pack will state first" }).click();
  const { gaps } = await record("/in-and-out/gaps?unit=TH-03");
  await expect(page.locator("#gaps-table tbody tr")).toHaveCount(gaps.length);
  await expect(page.locator("#gaps-table"), "no machine's words").not.toContainText(/T\d\d:\d\d:\d\d|service-done|oil-and-filters/);

  await page.goto("/in-and-out");
  await page.getByRole("button", { name: "Make an address" }).click();
  const feed = page.locator("a", { has: page.locator("code") });
  const path = await feed.getAttribute("href");
  const calendar = await page.request.get(path, { headers: { cookie: "" } });
  expect(calendar.status()).toBe(200);
  expect(calendar.headers()["content-type"]).toContain("text/calendar");
  const text = await calendar.text();
  expect(text).toContain("BEGIN:VEVENT");
  expect(text).toContain("TH-08");
  await page.getByRole("button", { name: "End this address" }).click();
  await expect(page.getByText("No address was made yet.")).toBeVisible();
  expect((await page.request.get(path)).status()).toBe(404);
});
