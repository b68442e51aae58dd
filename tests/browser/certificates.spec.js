// Certificates: the driver's words, neither verdict chosen, sign and next, the slip; and all of it by keyboard.

import { somethingToDo, tellDefect } from "./day.js";
import { expect, test } from "./test.js";

test("neither answer is chosen; without one nothing is signed; sign and next; the slip", async ({ page, demo, record }) => {
  await somethingToDo(demo);
  await page.goto("/?view=morning");
  await page.getByRole("link", { name: "Sign the next" }).click();
  const before = await record("/certificates");
  expect(before.count).toBeGreaterThanOrEqual(2);
  await expect(page.getByRole("heading", { level: 1 })).toContainText(`Certificates to sign ${before.count}`);
  const { unit, item, place } = before.now;
  await expect(page.locator("#now")).toContainText(unit);
  await expect(page.locator("#now .facts")).toContainText(before.now["one-answer"].words.split(": ")[1]);
  await expect(page.getByRole("radio", { checked: true })).toHaveCount(0);

  // The browser itself asks; and the shop refuses what another client sends.
  await page.getByLabel("Work done, or why no repair is needed").fill("New glass fitted.");
  await page.getByRole("button", { name: "Sign and next" }).click();
  expect(await page.getByLabel("repaired", { exact: true }).evaluate((radio) => radio.validity.valueMissing)).toBe(true);
  await expect(page).toHaveURL(/\/certificates/);
  const csrf = await page.locator("main input[name=csrf]").inputValue();
  const unsaid = await page.request.post("/certificates", {
    form: { csrf, unit, item: place ? `${item}/${place}` : item, words: "New glass fitted." },
    headers: { Origin: demo.url },
  });
  expect(unsaid.status()).toBe(422);
  expect(await unsaid.text()).toContain("Say which: repaired, or repair not needed. Nothing was signed.");
  expect((await record("/certificates")).count).toBe(before.count);

  await page.getByLabel("repaired", { exact: true }).check();
  await page.getByRole("button", { name: "Sign and next" }).click();
  await expect(page.getByRole("status").filter({ hasText: "Signed:" })).toContainText(unit);
  const after = await record("/certificates");
  expect(after.count).toBe(before.count - 1);
  const kept = await record(`/units/${unit}`);
  const signed = kept.papers ?? [];
  expect(JSON.stringify(kept)).toContain("New glass fitted.");
  expect(signed.length).toBeGreaterThan(0);
  // What is locked stays locked until the next driver's review.
  await page.goto(`/units/${unit}`);
  await expect(page.locator(".standing")).toContainText("awaiting review");

  await page.goBack();
  await page.getByRole("link", { name: "Print its slip for a yard without signal" }).click();
  await expect(page.locator("main")).toContainText(/\d[\d ]{9,}/);
  await expect(page.locator("main")).toContainText("Codes, one for each phone");
});

test("by keyboard alone: a certificate is read and signed, and where the focus is can be seen", async ({ page, demo, record }) => {
  await tellDefect(demo, "TH-04", { item: "wipers", word: "streaks", words: "left one" }).catch(() =>
    tellDefect(demo, "TH-04", { item: "horn", word: "other", words: "weak" }));
  const defect = (await record("/certificates?unit=TH-04")).now;
  expect(defect).toMatchObject({ unit: "TH-04", state: "open", certificate: null });
  await page.goto("/units/TH-04");
  // Skip link first.
  await page.keyboard.press("Tab");
  await expect(page.locator("a.skip")).toBeFocused();
  await expect(page.locator("a.skip")).toBeInViewport();
  await page.keyboard.press("Enter");
  await expect(page.locator("#main")).toBeFocused();
  // On to the button that certifies.
  const certify = page.getByRole("link", { name: "Certify" }).first();
  for (let n = 0; n < 60 && !(await certify.evaluate((link) => link === document.activeElement)); n++) {
    await page.keyboard.press("Tab");
  }
  await expect(certify).toBeFocused();
  const ring = await certify.evaluate((link) => {
    const { outlineStyle, outlineWidth } = getComputedStyle(link);
    return { outlineStyle, outlineWidth };
  });
  expect(ring).toEqual({ outlineStyle: "solid", outlineWidth: "3px" });
  await page.keyboard.press("Enter");
  await expect(page.getByRole("button", { name: "Sign and next" })).toBeVisible();
  const radio = page.getByLabel("repaired", { exact: true });
  for (let n = 0; n < 60 && !(await radio.evaluate((one) => one === document.activeElement)); n++) {
    await page.keyboard.press("Tab");
  }
  await page.keyboard.press("Space");
  await expect(radio).toBeChecked();
  await page.keyboard.press("ArrowDown");
  await expect(page.getByLabel("repair not needed")).toBeChecked();
  await page.keyboard.press("Tab");
  await page.keyboard.type("It works as it should; looked at with the driver.");
  await page.keyboard.press("Tab");
  await page.keyboard.press("Enter");
  await expect(page.getByRole("status").filter({ hasText: "repair not needed" })).toContainText("TH-04");
  // It is this defect that was certified, in these words, and none of it waits any more.
  const after = await record("/units/TH-04");
  const same = (row) => row.item === defect.item && row.place === defect.place;
  expect(after.papers[0]).toMatchObject({
    item: defect.item, place: defect.place, verdict: "not-needed", counts: true,
    words: "It works as it should; looked at with the driver.",
  });
  expect(after.defects.filter((row) => same(row) && row.state === "open")).toEqual([]);
});
