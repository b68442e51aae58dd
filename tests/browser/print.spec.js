// What is printed: A4 and Letter, so many pages, and no person's name beside a fault on the board.

import { execFile } from "node:child_process";
import { mkdir, writeFile } from "node:fs/promises";
import { promisify } from "node:util";
import { somethingToDo } from "./day.js";
import { expect, test } from "./test.js";

const run = promisify(execFile);
/** In points, upright, as Chromium rounds them up. */
const SIZES = { A4: [596, 843], Letter: [612, 792] };
const PEOPLE = ["Amos", "Bettina", "Carmelo", "Dinah", "Edric", "Fenna", "Gil", "Hattie", "Ivo"];

/** Prints the page as a browser does; gives pages, their size in points, and the words on each. */
const printed = async (page, name, format) => {
  // Everything a print needs is there before it begins: the style of the print and its letters.
  await page.emulateMedia({ media: "print" });
  await page.evaluate(() => document.fonts.ready);
  const bytes = await page.pdf({ format, preferCSSPageSize: true, printBackground: false });
  await mkdir("test-results/prints", { recursive: true });
  const file = `test-results/prints/${name}-${format}.pdf`;
  await writeFile(file, bytes);
  // What was printed is kept beside a failure.
  await test.info().attach(`${name}-${format}.pdf`, { body: bytes, contentType: "application/pdf" });
  const { stdout: info } = await run("pdfinfo", [file]);
  const { stdout: text } = await run("pdftotext", ["-layout", file, "-"]);
  const [, width, height] = info.match(/Page size:\s+([\d.]+) x ([\d.]+)/).map(Number);
  return { pages: Number(info.match(/Pages:\s+(\d+)/)[1]), width, height, sheets: text.split("\f").slice(0, -1) };
};

const hasPoppler = await run("pdfinfo", ["-v"]).then(() => true, () => false);
test.skip(!hasPoppler, "pdfinfo and pdftotext (poppler-utils) read what was printed");

for (const format of ["A4", "Letter"]) {
  test(`${format}: the day sheet for the board is landscape and names nobody beside a fault`, async ({ page, demo }) => {
    await somethingToDo(demo);
    for (const [name, path] of [["board", "/day/2026-10-20"], ["board-now", "/day/2026-11-09?view=evening"], ["board-morning", "/day/2026-11-09?view=morning"]]) {
      await page.goto(path);
      const { pages, width, height, sheets } = await printed(page, name, format);
      expect([Math.ceil(width), Math.ceil(height)], `${name} is landscape`).toEqual([SIZES[format][1], SIZES[format][0]]);
      // Every row stands on paper, those that are folded on the screen as well: they take what sheets they take.
      expect(pages, name).toBeLessThanOrEqual(3);
      const all = sheets.join("\n");
      expect(all).toContain("TH-02");
      expect(all).toContain("as known at");
      if (name !== "board") expect(all, "a row that is folded on the screen").toContain("Separator");
      for (const person of PEOPLE) expect(all, `${person} on the board, ${name}`).not.toContain(person);
      // What can only be pressed is not printed.
      for (const pressed of ["Certify", "Close as version", "Sign out", "look here first", "06:00 view"]) expect(all).not.toContain(pressed);
      expect(all).toMatch(new RegExp(`1\\s*/\\s*${pages}`));
    }
  });

  test(`${format}: the cab report is one page for each language, with unit and "as known at" on it`, async ({ page }) => {
    await page.goto("/units/TH-03/cab-report");
    const { pages, width, height, sheets } = await printed(page, "cab-report", format);
    expect([Math.ceil(width), Math.ceil(height)]).toEqual(SIZES[format]);
    expect(pages).toBe(2);
    const all = sheets.join("\n");
    for (const told of ["TH-03", "as known at", "según lo sabido"]) expect(all).toContain(told);
    for (const part of ["(i)", "(viii)", "(xi)"]) expect(all).toContain(part);
  });

  test(`${format}: a door tag and a drum's label are one sheet each, in both languages`, async ({ page }) => {
    for (const [name, path, told] of [
      ["door-tag", "/units/TH-03/door-tag", ["TH-03", "type the number", "se escribe el número"]],
      ["drum-label", "/drum-label?family=mineral&grade=ISO%20VG%2046", ["ISO VG 46", "mineral", "not the same oil", "no es el mismo aceite"]],
    ]) {
      await page.goto(path);
      const { pages, width, height, sheets } = await printed(page, name, format);
      expect([Math.ceil(width), Math.ceil(height)], name).toEqual(SIZES[format]);
      expect(pages, name).toBe(1);
      for (const words of told) expect(sheets[0], name).toContain(words);
      for (const pressed of ["Sign out", "Day sheet", "clear tape"]) expect(sheets[0], name).not.toContain(pressed);
      // Dark enough for a camera, whatever the theme: black on white.
      const drawn = await page.locator("section.label svg.qr path").evaluate((path) => getComputedStyle(path).fill);
      expect(drawn, name).toBe("rgb(0, 0, 0)");
    }
  });

  test(`${format}: a blank page tells its unit, edition and number on every sheet`, async ({ page, record }) => {
    await page.goto("/paper/TH-01/blank");
    const { pages, sheets } = await printed(page, "blank", format);
    const drawn = await page.locator("section.sheet").count();
    expect(pages, "one printed page for each sheet").toBe(drawn);
    const { edition } = await record("/paper/TH-01/blank");
    for (const sheet of sheets) expect(sheet).toMatch(new RegExp(`TH-01\\s+edi(tion|ción) ${edition}`));
    expect(sheets[0]).toContain(`1 of ${drawn / 2}`);
    expect(sheets.at(-1)).toContain("Firma");
  });
}
