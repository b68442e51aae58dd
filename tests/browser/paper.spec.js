// A page of paper: blank to print, and a signed one typed in beside its photo, by keyboard.

import { expect, test } from "./test.js";

/** A small photo: one grey pixel, as PNG. */
const PHOTO = Buffer.from("iVBORw0KGgoAAAANSUhEUgAAAAEAAAABCAAAAAA6fptVAAAACklEQVR4nGNoAAAAggCBd81ytgAAAABJRU5ErkJggg==", "base64");

test("a blank page has only what the unit has, one circle for each line and answer, in both languages", async ({ page, record }) => {
  await page.goto("/paper");
  await page.locator("#blank-head ~ .doors").getByRole("link", { name: "TH-04" }).click();
  const view = await record("/paper/TH-04/blank");
  const lines = view.stops.flatMap((stop) => stop.lines).length;
  for (const language of ["en", "es"]) {
    const sheets = page.locator(`section.sheet[lang=${language}]`);
    expect(await sheets.locator(".pl:not(.keys)").count(), language).toBe(lines);
    expect(await sheets.locator(".pl .o").count()).toBe(4 * lines);
    await expect(sheets.locator("svg.glass")).toHaveCount(1);
  }
  await expect(page.locator("section.sheet").first()).toContainText(`edition ${view.edition}`);
  await expect(page.locator("main")).not.toContainText(/all ok/i);
});

test("a signed page is typed in with the keys 1 to 4, beside its photo, without a mouse", async ({ page, record }) => {
  test.slow();
  await page.goto("/paper");
  await page.getByLabel("Unit", { exact: true }).fill("TH-05");
  await page.getByLabel(/^Photo of the page/).setInputFiles({ name: "page.png", mimeType: "image/png", buffer: PHOTO });
  await page.getByRole("button", { name: "To the form" }).focus();
  await page.keyboard.press("Enter");
  await expect(page).toHaveURL(/\/paper\/TH-05\?photo=[0-9a-f]{64}$/);
  await expect(page.getByAltText("Photo of the signed page")).toBeVisible();
  await page.getByRole("button", { name: "Turn" }).press("Enter");
  await expect(page.locator("#page-photo")).toHaveClass(/turn-1/);

  const before = await record("/units/TH-05");
  const lines = page.locator(".typed-page .line");
  const count = await lines.count();
  expect(count).toBe((await record("/paper/TH-05")).stops.flatMap((stop) => stop.lines).length);
  await expect(page.locator(".typed-page input[type=radio]:checked"), "nothing is answered beforehand").toHaveCount(0);
  await lines.first().locator("input").first().focus();
  // The second line is a defect: its word is asked for at once.
  await page.keyboard.press("1");
  await page.keyboard.press("2");
  const word = lines.nth(1).locator("select");
  await expect(word).toBeFocused();
  await page.keyboard.press("ArrowDown");
  expect(await word.inputValue()).not.toBe("");
  await page.keyboard.press("Tab");
  await page.keyboard.type("a drop on the ground");
  await page.keyboard.press("Tab");
  await expect(lines.nth(2).locator("input[type=radio]").first()).toBeFocused();
  await page.keyboard.press("3");
  await page.keyboard.press("4");
  await expect(lines.nth(3).locator(".more input")).toBeFocused();
  await page.keyboard.type("too dark");
  await page.keyboard.press("Tab");
  for (let n = 4; n < count - 1; n++) await page.keyboard.press("1");
  await expect(page.locator("[data-typed]")).toHaveText(`${count - 1} of ${count} typed`);

  // One line is open: nothing is kept, and all that was typed still stands.
  await page.getByLabel("Driver on the page").selectOption("Gil Sandoval");
  await page.getByLabel("Signed on paper at").fill("06:40");
  await page.getByLabel("page no.").fill("0117");
  await page.getByRole("button", { name: "Keep as paper" }).press("Enter");
  await expect(page.getByRole("alert")).toContainText("Some lines are open. Nothing was recorded.");
  await expect(lines.nth(1).locator(".more input")).toHaveValue("a drop on the ground");
  await expect(page.locator("[data-typed]")).toHaveText(`${count - 1} of ${count} typed`);

  await lines.last().locator("input").first().focus();
  await page.keyboard.press("1");
  await page.getByRole("button", { name: "Keep as paper" }).press("Enter");
  await expect(page.getByRole("status").filter({ hasText: "The page is kept. The next one?" })).toBeVisible();
  const after = await record("/units/TH-05");
  expect(after.history.count ?? after.history.entries.length).toBeGreaterThan(before.history.count ?? before.history.entries.length);
  expect(JSON.stringify(after.defects)).toContain("a drop on the ground");
  await page.goto("/units/TH-05");
  await expect(page.locator("#history")).toContainText("paper");
});
