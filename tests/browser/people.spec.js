// People and phones: somebody new, a phone that scans a code and is let in by name, a phone that is lost.

import { mkdtemp, rm } from "node:fs/promises";
import { tmpdir } from "node:os";
import { join } from "node:path";
import { NOW } from "./demo.js";
import { CREWS, exchange } from "./day.js";
import { expect, test } from "./test.js";

test("a person is added and can be chosen", async ({ page, record }) => {
  await page.goto("/people");
  const form = page.locator("form[action='/people/person']");
  await form.getByLabel("Name").fill("Maud Ferris");
  await form.getByLabel("Role").selectOption("crew");
  await form.getByRole("button", { name: "Add or change this person" }).click();
  await expect(page.locator("#people-table tbody tr").filter({ hasText: "Maud Ferris" })).toContainText("crew");
  expect((await record("/people")).people).toContainEqual(expect.objectContaining({ name: "Maud Ferris", role: "crew" }));
  await page.goto("/paper/TH-04");
  await expect(page.getByLabel("Driver on the page").locator("option", { hasText: "Maud Ferris" })).toHaveCount(1);
});

test("a phone is added: code on the screen, it asks, the keys are compared, it is let in by name", async ({ page, demo, record }) => {
  const folder = join(await mkdtemp(join(tmpdir(), "phone-")), "yard-phone-9");
  await page.goto("/people");
  await expect(page.getByLabel("Phones reach the shop at")).toHaveValue(demo.address);
  await page.getByLabel("Units it holds at first (all when few)").fill("TH-04");
  await page.getByRole("button", { name: "Add a phone" }).click();
  await expect(page).toHaveURL(/\/people\/code\/[0-9a-f]{16}$/);
  await expect(page.getByRole("img", { name: "The code as a picture" })).toBeVisible();
  await expect(page.getByRole("timer")).toContainText(/1[45] min \d\d s left, for one phone\./);
  const text = await page.locator("p.code").innerText();
  const view = await record(new URL(page.url()).pathname);
  expect(view.code).toBe(text);
  await expect(page.getByText(view.key)).toBeVisible();

  const said = await demo.phone(folder, "enrol", "--code", text, "--name", "yard phone 9", "--now", NOW);
  const key = said.match(/([0-9A-F]{2}( [0-9A-F]{2}){7})/)?.[1];
  expect(key, said).toBeTruthy();
  await exchange(demo, folder).catch(() => {});
  await page.goto("/people#phones");
  const ask = page.locator(".ask").filter({ hasText: "yard phone 9" });
  const [waiting] = (await record("/people")).asks;
  expect(waiting).toMatchObject({ name: "yard phone 9", code: "open" });
  await expect(ask).toContainText(waiting.key);
  expect(said).toContain(waiting.key);
  // Not compared: the browser asks for the tick first.
  const let_in = ask.getByRole("button", { name: "Let in, Ilse Marrow" });
  await let_in.click();
  await expect(ask).toBeVisible();
  await ask.getByLabel("the same key stands on that phone").check();
  await let_in.click();
  await expect(page.locator("#phones-table tbody tr").filter({ hasText: "yard phone 9" })).toBeVisible();
  await exchange(demo, folder);
  const shown = await demo.phone(folder, "show", "unit", "--unit", "TH-04", "--person", "Edric Loomis", "--now", NOW);
  expect(shown).toContain("TH-04");
  const phone = (await record("/people")).phones.find(({ name }) => name === "yard phone 9");
  expect(phone).toMatchObject({ stopped: false, quiet: false });
  expect((await record("/people")).asks).toEqual([]);
  await rm(folder, { recursive: true, force: true });
});

test("a lost phone is stopped with a reason; what it still holds waits for a person's word", async ({ page, demo, record }) => {
  const { person, phone } = CREWS["TH-04"];
  const folder = join(demo.folder, phone);
  await page.goto("/people");
  const row = page.locator("#phones-table tbody tr").filter({ hasText: "yard phone 7" });
  await row.getByRole("link", { name: "Lost: stop this phone" }).click();
  await expect(page.getByRole("heading", { level: 1 })).toHaveText("Lost: stop yard phone 7");
  await expect(page.getByText("Entries that are still on it are kept there")).toBeVisible();
  await page.getByLabel("Why").fill("left on a tailgate, Tue");
  await page.getByRole("button", { name: "Stop this phone" }).click();
  await expect(row).toContainText("stopped");
  const stopped = (await record("/people")).phones.find(({ name }) => name === "yard phone 7");
  expect(stopped.stopped).toBe(true);
  // The phone records on; the hub takes nothing from it and says so.
  await demo.record(folder, [{ unit: "TH-04", person, hours: "999.0", kind: "start-air", body: {} }]);
  const told = await exchange(demo, folder).catch((error) => `${error.stdout}${error.stderr}`);
  expect(told).toMatch(/stopped/i);
});
