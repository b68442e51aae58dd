// Set aside and to settle: by name, with a reason, and it stays visible.

import { expect, test } from "./test.js";

test("a disputed reading is settled by name and reason; without either nothing happens", async ({ page, record }) => {
  await page.goto("/set-aside");
  const before = await record("/set-aside");
  const reading = before.readings.find((row) => row.why === "unlike-this-unit");
  const [figure] = reading.figures;
  const article = page.locator("article").filter({ hasText: "Much more than this unit runs in a day." });
  const name = article.getByLabel("Your name, about this figure").first();
  const why = article.getByLabel("because").first();
  const stands = article.getByRole("button", { name: "This figure stands" }).first();
  await why.fill("Read again from the photo.");
  await stands.click();
  expect(await name.evaluate((input) => input.validity.valueMissing), "the name is typed, not offered").toBe(true);

  await name.fill("Dov Petrakis");
  await stands.click();
  await expect(page.getByText("That is not the name of this sign-in. Nothing was recorded.")).toBeVisible();
  expect((await record("/set-aside")).settled.length).toBe(before.settled.length);

  await page.goto("/set-aside");
  await name.fill("Ilse Marrow");
  await why.fill("Read again from the photo.");
  await stands.click();
  await expect(page.locator("#settled-table")).toContainText("Read again from the photo.");
  const after = await record("/set-aside");
  expect(after.settled[0]).toMatchObject({ who: "Ilse Marrow", verdict: "reading-stands", why: "Read again from the photo." });
  expect(after.settled[0].about[0].entry).toBe(figure.entry);
});

test("a service told twice becomes one", async ({ page, record }) => {
  await page.goto("/set-aside");
  const article = page.locator("article").filter({ hasText: "Entered twice" });
  await article.getByLabel("Your name, about the two").fill("Ilse Marrow");
  await article.getByLabel("because").fill("Dov did it, Amos wrote it down again.");
  await article.getByRole("button", { name: "One and the same service" }).click();
  await expect(page.locator("article").filter({ hasText: "Entered twice" })).toHaveCount(0);
  const view = await record("/set-aside");
  expect(view.twice).toEqual([]);
  expect(view.settled[0].verdict).toBe("same-service");
});
