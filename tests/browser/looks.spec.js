// Every page, as it can be set: both languages, light and dark, more contrast, narrow, zoomed. Nothing may be
// out of reach for whoever reads by ear or by large print, nothing scrolls sideways, Spanish is Spanish.

import { AxeBuilder } from "@axe-core/playwright";
import { expect, test } from "./test.js";
import { somethingToDo } from "./day.js";
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
  const [whole, seen] = await page.evaluate(() => {
    const { scrollWidth, clientWidth } = document.scrollingElement;
    return [scrollWidth, clientWidth];
  });
  expect(whole, `${how}: nothing scrolls sideways`).toBeLessThanOrEqual(seen);
};

test.beforeAll(async ({ demo }) => somethingToDo(demo));

test("English would be found on a Spanish page", async ({ page }) => {
  expect(looksFor).toBeGreaterThan(500);
  await page.goto("/units");
  await page.evaluate(() => { document.documentElement.lang = "es"; });
  const found = await englishOn(page);
  expect(found).toContain("need someone (units-need)");
});

for (const [name, path] of [...Object.entries(PAGES), ["sign in", "/sign-in"]]) {
  test(`${name}: reached by everybody, at any width, in both languages`, async ({ page, context }) => {
    if (name === "sign in") await context.clearCookies();
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
  });
}
