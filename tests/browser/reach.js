// What every page must be for everybody: nothing that axe finds, and no wider than its window.

import { AxeBuilder } from "@axe-core/playwright";
import { expect } from "@playwright/test";

// The face asks for 7:1 and for targets that can be hit, beyond what axe looks at by itself.
const STRICTER = { rules: { "color-contrast-enhanced": { enabled: true }, "target-size": { enabled: true } } };
// 7:1 holds 4.5:1 within it.
export const CONTRAST = { runOnly: ["color-contrast-enhanced"] };

/** No violation on the page as it stands. */
// No frames here, so one page is enough for axe: it need not open another for each look.
export const reachable = async (page, how, options = STRICTER) => {
  const { violations } = await new AxeBuilder({ page }).options(options).setLegacyMode().analyze();
  const told = violations.map((v) => `${v.id}: ${v.help}\n  ${v.nodes.map((n) => n.html.slice(0, 200)).join("\n  ")}`);
  expect(told, `axe, ${how}`).toEqual([]);
};

/** Nothing scrolls sideways at a width. */
export const noWider = async (page, width, how) => {
  await page.setViewportSize({ width, height: 800 });
  const wide = await page.evaluate(() => {
    const { scrollWidth, clientWidth } = document.scrollingElement;
    if (scrollWidth <= clientWidth) return [];
    const over = [...document.body.querySelectorAll("*")].filter((one) => one.getBoundingClientRect().right > clientWidth);
    return [`${scrollWidth} px of ${clientWidth}`, ...over.map((one) => one.outerHTML.slice(0, 120)).slice(-5)];
  });
  expect(wide, `${how}, ${new URL(page.url()).pathname}: nothing scrolls sideways`).toEqual([]);
};
