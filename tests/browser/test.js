// What every test stands on: a demo for each worker of a file, and a browser that is signed in.

import { existsSync } from "node:fs";
import { test as base, expect } from "@playwright/test";
import { begin } from "./demo.js";

export { expect };

/** Signs in on the page as the demo's manager does. */
export const signIn = async (page, demo, { name = demo.name, password = demo.password } = {}) => {
  await page.goto("/sign-in");
  await page.getByLabel(/^(Name|Nombre)$/).fill(name);
  await page.locator("#password").fill(password);
  await page.locator("main form button").click();
};

export const test = base.extend({
  demo: [
    async ({}, use) => {
      const demo = await begin();
      await use(demo);
      // Ctrl-C ends it in order, and nothing of it is left behind.
      const { code, said } = await demo.end();
      expect(code, said).toBe(0);
      expect(said).toContain("Stopped. Nothing is left behind.");
      expect(demo.folder).toContain("tern-hollow-water-");
      expect(existsSync(demo.folder), demo.folder).toBe(false);
    },
    { scope: "worker", timeout: 120_000 },
  ],
  baseURL: async ({ demo }, use) => use(demo.url),
  // Signed in once for each worker: a password is meant to take its time.
  kept: [
    async ({ demo, browser }, use) => {
      const context = await browser.newContext({ ignoreHTTPSErrors: true, baseURL: demo.url });
      const page = await context.newPage();
      await signIn(page, demo);
      await expect(page.locator("h1")).toBeVisible();
      const state = await context.storageState();
      await context.close();
      await use(state);
    },
    { scope: "worker", timeout: 60_000 },
  ],
  storageState: async ({ kept }, use) => use(kept),
  /** The record behind a page: the same address with `.json`. */
  record: async ({ page }, use) =>
    use(async (path) => {
      const [way, query] = path.split("?");
      const answer = await page.request.get(`${way}.json${query ? `?${query}` : ""}`);
      expect(answer.status(), `${path} as JSON`).toBe(200);
      return answer.json();
    }),
});
