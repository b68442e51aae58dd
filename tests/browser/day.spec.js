// The day sheet: both views, closing a day, and entries that come in while somebody reads it.

import { join } from "node:path";
import { CREWS, exchange, somethingToDo } from "./day.js";
import { expect, test } from "./test.js";

test("17:00: the sentence first, then what happened, section by section; 06:00: what to do", async ({ page, record }) => {
  await page.goto("/day/2026-11-09");
  const view = await record("/day/2026-11-09");
  expect(view.sheet.view).toBe("evening");
  await expect(page.getByRole("heading", { level: 1 })).toHaveText("Monday 9 November 2026");
  await expect(page.locator(".known")).toContainText("as known at 17:0");
  const sentences = view.sheet.sentences.filter((said) => !said.startsWith("Phones:"));
  expect(sentences.length).toBeGreaterThan(0);
  for (const sentence of sentences) await expect(page.locator(".says").filter({ hasText: sentence })).toBeVisible();
  const heads = await page.locator("main section > h2").allInnerTexts();
  expect(heads.map((head) => head.replace(/^\d+\s+/, ""))).toEqual([
    "Used without a pre-trip", "Used against a lock-out", "Not reported, of 7 expected out", "New defects, worst first",
    "Locked now", "Past due, due, coming up", "Reminders and other display notes", "Top-ups",
    "Who's drinking oil?", "To settle", "Set aside",
    "Came in late, after this day's first closing",
  ]);
  const due = view.sheet.sections.due;
  await expect(page.locator("#due h2")).toContainText(String(due.count));
  await expect(page.locator("#due table").first().locator("tbody tr").first()).toContainText(due.rows[0].unit);
  // The board ends with tomorrow.
  await expect(page.locator("main .board > :last-child")).toContainText("Tomorrow:");
  // An empty section keeps its line: an empty line is an answer.
  await expect(page.locator("#without")).toContainText("none recorded");

  await page.getByRole("link", { name: "06:00 view" }).click();
  const morning = await page.locator("main section > h2").allInnerTexts();
  expect(morning.map((head) => head.replace(/^\d+\s+/, ""))).toEqual([
    "Locked: road, air or an outlet", "Certificates to sign", "Expected out", "Past due, due today", "In the bays today",
    "Phones not heard from in 24 h", "Paper pages to type", "Came late for Sun 8 Nov",
  ]);
  expect((await record("/day/2026-11-09?view=morning")).sheet.view).toBe("morning");
});

test("the demo's strip leads to its three looks", async ({ page }) => {
  await page.goto("/");
  const strip = page.getByRole("complementary", { name: "Invented fleet" });
  await strip.getByRole("link", { name: "TH-02's two answers" }).click();
  const row = page.locator("#defects-table tbody tr").filter({ hasText: "TH-02" });
  await expect(row).toContainText("OK, Bettina Quaye 06:41");
  await expect(row).toContainText("out: left stop lamp, Hattie Brun 06:44");
  await strip.getByRole("link", { name: "TH-03's struck 7,421.0" }).click();
  await expect(page.locator("#hours s").filter({ hasText: "7,421.0" }).first()).toBeVisible();
  await strip.getByRole("link", { name: "TH-01's ruler" }).click();
  await expect(page.locator("#due svg.ruler").first()).toBeVisible();
});

test("a day is closed as its next version, and the version stays as it was", async ({ page, record }) => {
  const day = "/day/2026-11-06";
  await page.goto(day);
  const before = (await record(day)).versions.length;
  await page.getByRole("button", { name: `Close as version ${before + 1}` }).click();
  await expect(page.getByRole("button", { name: `Close as version ${before + 2}` })).toBeVisible();
  const after = (await record(day)).versions;
  expect(after.length).toBe(before + 1);
  expect(after.at(-1)).toMatchObject({ version: before + 1, by: "Ilse Marrow" });
  await page.locator("details.versions summary").click();
  await page.getByRole("link", { name: new RegExp(`^Version ${before + 1}, as known at`) }).click();
  await expect(page.locator(".known")).toContainText(`version ${before + 1}, closed`);
  await expect(page.getByRole("button", { name: /Close as/ })).toHaveCount(0);
  expect((await record(`${day}?version=${before + 1}`)).version).toBe(before + 1);
});

test("what changed between versions is told in the reader's language", async ({ page, demo, record, context }) => {
  const day = "/day/2026-11-05";
  const versions = async () => (await record(day)).versions;
  if ((await versions()).length === 0) {
    await page.goto(day);
    await page.getByRole("button", { name: "Close as version 1" }).click();
  }
  // Somebody hands in late what he found that day.
  const { person, phone } = CREWS["TH-01"];
  const folder = join(demo.folder, phone);
  const at = "2026-11-05T15:40:00-07:00";
  await demo.record(folder, [{ unit: "TH-01", person, at, hours: "2923.0", kind: "end-of-day",
    body: { defects: [{ item: "horn", answer: "defect", word: "other", words: "débil" }], "none-found": false } }]);
  await exchange(demo, folder);
  const before = (await versions()).length;
  await page.goto(day);
  await page.getByRole("button", { name: `Close as version ${before + 1}` }).click();
  const newest = (await versions()).at(-1);
  expect(newest.changes.length).toBeGreaterThan(0);
  await page.goto(`/words?language=es&back=${encodeURIComponent(`${day}?version=${newest.version}`)}`);
  await page.goto(`${day}?version=${newest.version}`);
  const told = page.locator("details.versions");
  await expect(told).toContainText("TH-01");
  await expect(told.locator("[lang=en]")).toHaveCount(0);
  for (const line of newest.changes) await expect(told).not.toContainText(line);
  await context.clearCookies({ name: "language" });
});

test("entries that come in move no row under the hand", async ({ page, demo, record }) => {
  await somethingToDo(demo);
  await page.clock.install();
  await page.goto("/day/2026-11-09?view=evening");
  const rows = () =>
    page.locator("main tbody tr, main h2").evaluateAll((all) =>
      all.map((one) => `${Math.round(one.getBoundingClientRect().top + scrollY)} ${one.textContent}`));
  const known = await rows();
  const mark = (await record("/day/2026-11-09")).mark;
  const { person, phone } = CREWS["TH-01"];
  const folder = join(demo.folder, phone);
  await demo.record(folder, [
    { unit: "TH-01", person, hours: "2927.1", kind: "start-air", body: {} },
    { unit: "TH-01", person, kind: "end-of-day", body: { "none-found": true } },
  ]);
  await exchange(demo, folder);
  expect((await record("/day/2026-11-09")).mark).toBeGreaterThan(mark);
  // The page asks every 15 seconds.
  await page.clock.fastForward(16_000);
  const told = page.locator("#came-in a");
  await expect(told).toBeVisible();
  await expect(told).toHaveText(/^\d+ new since 17:0\d: show$/);
  const shift = (row) => row.replace(/^\d+ /, "");
  const now = await rows();
  expect(now.map(shift)).toEqual(known.map(shift));
  expect(now, "no row moved").toEqual(known);
  await told.click();
  await expect(page.locator("#came-in a")).toBeHidden();
});
