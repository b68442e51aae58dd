// Every page, as it can be set: both languages, light and dark, more contrast, narrow, zoomed. Nothing may be
// out of reach for whoever reads by ear or by large print, nothing scrolls sideways, Spanish is Spanish.

import { AxeBuilder } from "@axe-core/playwright";
import { expect, test } from "./test.js";
import { somethingToDo, tellDefect } from "./day.js";
import { englishOn, looksFor } from "./spanish.js";
import { PAGES } from "./pages.js";

// The face asks for 7:1 and for targets that can be hit, beyond what axe looks at by itself.
const STRICTER = { rules: { "color-contrast-enhanced": { enabled: true }, "target-size": { enabled: true } } };
// 7:1 holds 4.5:1 within it.
const CONTRAST = { runOnly: ["color-contrast-enhanced"] };

test.describe.configure({ mode: "parallel" });

// No frames here, so one page is enough for axe: it need not open another for each look.
const reachable = async (page, how, options = STRICTER) => {
  const { violations } = await new AxeBuilder({ page }).options(options).setLegacyMode().analyze();
  const told = violations.map((v) => `${v.id}: ${v.help}\n  ${v.nodes.map((n) => n.html.slice(0, 200)).join("\n  ")}`);
  expect(told, `axe, ${how}`).toEqual([]);
};

const noWider = async (page, width, how) => {
  await page.setViewportSize({ width, height: 800 });
  const wide = await page.evaluate(() => {
    const { scrollWidth, clientWidth } = document.scrollingElement;
    if (scrollWidth <= clientWidth) return [];
    const over = [...document.body.querySelectorAll("*")].filter((one) => one.getBoundingClientRect().right > clientWidth);
    return [`${scrollWidth} px of ${clientWidth}`, ...over.map((one) => one.outerHTML.slice(0, 120)).slice(-5)];
  });
  expect(wide, `${how}, ${new URL(page.url()).pathname}: nothing scrolls sideways`).toEqual([]);
};

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
