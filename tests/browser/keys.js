// A page worked with the keyboard alone.

import { expect } from "@playwright/test";

const MOST = 300;

/** Opens a page and goes past what stands around every page, as the first press of Tab offers. */
export const openByKeys = async (page, path) => {
  await page.goto(path);
  await page.keyboard.press("Tab");
  await expect(page.locator("a.skip")).toBeFocused();
  await page.keyboard.press("Enter");
  await expect(page.locator("main")).toBeFocused();
};

/** Tabs on until this has the focus, and holds that the focus is seen. */
export const tabTo = async (page, target, key = "Tab") => {
  const has = () => target.evaluate((one) => one === document.activeElement);
  for (let pressed = 0; !(await has()); pressed++) {
    expect(pressed, `${target} is reached by ${key}`).toBeLessThan(MOST);
    await page.keyboard.press(key);
  }
  const ring = await target.evaluate((one) => getComputedStyle(one).outlineStyle);
  expect(ring, `${target} shows that it has the focus`).not.toBe("none");
};

/** Tabs to a field and types into it; what stood there is typed over. */
export const typeInto = async (page, target, text) => {
  await tabTo(page, target);
  await page.keyboard.press("Control+a");
  await page.keyboard.type(text);
};

/** Tabs to a list of choices and takes the one that begins so. */
export const choose = async (page, target, text) => {
  await tabTo(page, target);
  await page.keyboard.type(text);
  await expect(target.locator("option:checked")).toHaveText(new RegExp(`^${text}`, "i"));
};

/** Tabs to something and presses a key on it. */
export const press = async (page, target, key = "Enter") => {
  await tabTo(page, target);
  await page.keyboard.press(key);
};
