// The console in real Chromium: `npm ci && npx playwright test`, after `cargo build -p sumpbook-shop --bin sumpbook`.
// SUMPBOOK names another program, CHROMIUM another browser; PICTURES=1 makes the pictures of the README as well.

import { defineConfig } from "@playwright/test";

export default defineConfig({
  testDir: ".",
  testMatch: "*.spec.js",
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
