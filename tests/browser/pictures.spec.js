// The pictures of the README. Only with PICTURES=1; a picture is made, not compared.

import { execFile } from "node:child_process";
import { mkdir, stat } from "node:fs/promises";
import { promisify } from "node:util";
import { somethingToDo } from "./day.js";
import { expect, test } from "./test.js";

const run = promisify(execFile);
const FOLDER = "../../docs/pictures";
const MOST_BYTES = 200_000;

test.skip(process.env.PICTURES !== "1", "pictures are made with PICTURES=1");

const PICTURES = [
  { name: "day-sheet", path: "/day/2026-10-20?view=evening", height: 1060 },
  { name: "unit", path: "/units/TH-01", height: 900 },
  { name: "certificates", path: "/certificates", height: 860, toDo: true },
  { name: "due", path: "/due", height: 900 },
  { name: "day-sheet-narrow", path: "/day/2026-10-20?view=evening", width: 320, height: 900 },
  { name: "day-sheet-spanish", path: "/day/2026-10-20?view=evening", height: 1060, language: "es" },
  { name: "day-sheet-dark", path: "/day/2026-10-20?view=evening", height: 1060, dark: true },
];

for (const { name, path, width = 1280, height, language, dark, toDo } of PICTURES) {
  test(`picture: ${name}`, async ({ page, demo }) => {
    if (toDo) await somethingToDo(demo);
    await mkdir(FOLDER, { recursive: true });
    await page.setViewportSize({ width, height });
    if (dark) await page.emulateMedia({ colorScheme: "dark" });
    if (language) await page.goto(`/words?language=${language}&back=${encodeURIComponent(path)}`);
    else await page.goto(path);
    await page.evaluate(() => document.fonts.ready);
    const file = `${FOLDER}/${name}.png`;
    await page.screenshot({ path: file });
    // Fewer colours where there is a program for it; the pictures are flat.
    await run("pngquant", ["--force", "--skip-if-larger", "--output", file, "64", file]).catch(() => {});
    expect((await stat(file)).size, `${name} is small`).toBeLessThan(MOST_BYTES);
  });
}
