// The console in real Chromium: `npm ci && npx playwright test`, after `cargo build -p sumpbook-shop --bin sumpbook`.
// SUMPBOOK names another program, CHROMIUM another browser; PICTURES=1 makes the pictures of the README as well.

import { readdirSync } from "node:fs";
import { basename } from "node:path";
import { defineConfig } from "@playwright/test";

// A project for each file: workers are shared within a project only, so what one file types into its demo never
// stands on a page that another file reads.
const files = readdirSync(import.meta.dirname).filter((name) => name.endsWith(".spec.js"));

export default defineConfig({
  testDir: ".",
  projects: files.map((file) => ({ name: basename(file, ".spec.js"), testMatch: file })),
  workers: 2,
  timeout: 60_000,
  expect: { timeout: 10_000 },
  reporter: [["list"]],
  use: {
    browserName: "chromium",
    ignoreHTTPSErrors: true,
    viewport: { width: 1280, height: 900 },
    locale: "en-US",
    timezoneId: "America/Denver",
    launchOptions: {
      executablePath: process.env.CHROMIUM ?? "/usr/bin/chromium",
      args: ["--no-sandbox", "--disable-dev-shm-usage"],
    },
  },
});
