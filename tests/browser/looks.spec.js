// Every page, as it can be set: both languages, light and dark, more contrast, narrow, zoomed. Nothing may be
// out of reach for whoever reads by ear or by large print, nothing scrolls sideways, Spanish is Spanish.

import { expect, test } from "./test.js";
import { somethingToDo, tellDefect } from "./day.js";
import { englishOn, looksFor } from "./spanish.js";
import { PAGES } from "./pages.js";
import { CONTRAST, noWider, reachable } from "./reach.js";

test.describe.configure({ mode: "parallel" });

test.beforeAll(async ({ demo }) => somethingToDo(demo));

test("English would be found on a Spanish page", async ({ page }) => {
  expect(looksFor).toBeGreaterThan(500);
  await page.goto("/units");
  await page.evaluate(() => { document.documentElement.lang = "es"; });
  const found = await englishOn(page);
  expect(found).toContain("need someone (units-need)");
});

/** All of it, for the page at an address. */
const everywhere = async (page, path) => {
  await page.goto(path);
  await expect(page.locator("h1").first()).toBeVisible();
  await expect(page.locator("html")).toHaveAttribute("lang", "en");
  await reachable(page, "light");
  for (const set of [
    { colorScheme: "dark", contrast: "no-preference" },
    { colorScheme: "light", contrast: "more" },
    { colorScheme: "dark", contrast: "more" },
  ]) {
    await page.emulateMedia(set);
    await reachable(page, JSON.stringify(set), CONTRAST);
  }
  await page.emulateMedia({ colorScheme: "light", contrast: "no-preference" });
  // 1280 px at 200 % zoom is 640 CSS px, at 400 % it is 320.
  for (const width of [640, 320]) await noWider(page, width, `English at ${width} px`);

  await page.goto(`/words?language=es&back=${encodeURIComponent(path)}`);
  await expect(page.locator("html")).toHaveAttribute("lang", "es");
  for (const width of [640, 320]) await noWider(page, width, `Spanish at ${width} px`);
  expect(await englishOn(page), "English on a Spanish page").toEqual([]);
  await reachable(page, "Spanish, 320 px");
};

for (const [name, path] of Object.entries(PAGES)) {
  test(`${name}: reached by everybody, at any width, in both languages`, async ({ page }) => everywhere(page, path));
}

test("sign in: reached by everybody, at any width, in both languages", async ({ page, context }) => {
  await context.clearCookies();
  await everywhere(page, "/sign-in");
});

test("pages that follow a deed: reached by everybody, at any width, in both languages", async ({ page, demo, record }) => {
  test.slow();
  const here = () => new URL(page.url()).pathname + new URL(page.url()).search;
  const english = () => page.goto("/words?language=en&back=/people").then(() => page.setViewportSize({ width: 1280, height: 900 }));

  const [{ key }] = (await record("/people")).phones;
  await everywhere(page, `/people/phone/${key.replaceAll(" ", "")}/stop`);

  await english();
  await page.getByRole("button", { name: "Add a phone" }).click();
  await everywhere(page, here());

  for (const days of ["4/13/2026", "3/4/2026"]) {
    await english();
    await page.goto("/in-and-out");
    const table = `unit,date,hours\nTH-06,${days},100.5\nTH-06,13/31/2025,5.0\n`;
    await page.getByLabel("Table, as CSV").setInputFiles({ name: "t.csv", mimeType: "text/csv", buffer: Buffer.from(table) });
    await page.getByLabel("It holds").selectOption({ label: "readings of meters" });
    await page.getByRole("button", { name: "Look at it first" }).click();
    await everywhere(page, here());
  }

  await english();
  await tellDefect(demo, "TH-01", { item: "mirrors", place: "left", word: "cracked", words: "the lower glass" });
  await page.goto("/certificates?unit=TH-01&item=mirrors/left");
  await page.getByLabel("repaired", { exact: true }).check();
  await page.getByLabel("Work done, or why no repair is needed").fill("New glass.");
  await page.getByRole("button", { name: "Sign and next" }).click();
  await page.getByRole("link", { name: "Print its slip for a yard without signal" }).click();
  await everywhere(page, here());
});

test("one word of 60 letters, typed on a phone or at the desk, makes no page scroll sideways", async ({ page, demo }) => {
  test.slow();
  const long = "corrosion".repeat(7).slice(0, 60);
  await tellDefect(demo, "TH-04", { item: "mirrors", place: "right", word: "cracked", words: long });
  await page.goto("/people");
  const form = page.locator("form[action='/people/person']");
  await form.getByLabel("Name").fill(`Q${long.slice(1)}`);
  await form.getByRole("button", { name: "Add or change this person" }).click();
  await page.goto("/due?unit=TH-04");
  await page.locator("#near-table input[type=checkbox]").first().check();
  await page.getByLabel("Part", { exact: true }).fill(long);
  await page.getByRole("button", { name: "Keep the wait" }).click();
  await page.goto("/units/TH-04/note");
  await page.locator("#site").getByLabel("Words").fill(long);
  await page.locator("#site").getByRole("button", { name: "Keep the site" }).click();
  for (const path of ["/day/2026-11-09?view=evening", "/day/2026-11-09?view=morning", "/units?table=true", "/units/TH-04", "/certificates?unit=TH-04", "/due", "/people", "/units/TH-04/cab-report"]) {
    await page.goto(path);
    if (path !== "/units?table=true") expect(await page.locator("main").textContent(), path).toContain(long.slice(1));
    for (const width of [320, 1280]) await noWider(page, width, "a word of 60 letters");
  }
});
