// Journeys of a person with a phone, against the built app in target/dist.
import { defineConfig } from "@playwright/test";

export default defineConfig({
  testDir: ".",
  outputDir: "../../target/e2e/results",
  // `cargo xtask test` reads its count from the JSON report.
  reporter: [["list"], ["json", { outputFile: "../../target/e2e/report.json" }]],
  // A journey that passes only when tried again has found something.
  retries: 0,
  forbidOnly: true,
  // One browser at a time: journeys about speed must not compete for two cores.
  workers: 1,
  timeout: 60_000,
  expect: { timeout: 10_000 },
  use: {
    viewport: { width: 360, height: 740 },
    deviceScaleFactor: 2,
    isMobile: true,
    hasTouch: true,
    locale: "en-GB",
    screenshot: "only-on-failure",
    launchOptions: {
      executablePath: process.env.CHROMIUM ?? "/usr/bin/chromium",
      args: [
        "--headless",
        "--no-sandbox",
        "--disable-gpu",
        "--disable-quic",
        "--no-first-run",
        "--disable-background-networking",
        "--disable-component-update",
        "--disable-sync",
      ],
    },
  },
});
