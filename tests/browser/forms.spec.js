// What a manager types in at the desk: notes of a unit, air for a job, campaigns, lay-ups, a unit by hand. Each by
// mouse or by keys as it comes, its record read afterwards, and the page held against what everybody must reach.

import { choose, openByKeys, press, tabTo, typeInto } from "./keys.js";
import { reachable } from "./reach.js";
import { expect, test } from "./test.js";

/** A part of a page; where there is room all stand open, and a script has opened them. */
const part = (page, id) => page.locator(`details#${id}[open]`);

test("another meter, hours nobody could read, dust, a sample and its answer are noted down", async ({ page, record }) => {
  const note = async (id) => {
    await page.goto("/units/TH-06/note");
    return part(page, id);
  };
  await page.goto("/units/TH-06");
  await page.getByRole("link", { name: "Note down" }).first().click();
  await expect(page).toHaveURL("/units/TH-06/note");
  await expect(page.locator("main")).toContainText("No oil sample is on record");
  await reachable(page, "notes of a unit");

  const sample = await note("sample");
  await sample.getByLabel("Number on the bottle").fill("TH06-4");
  await sample.getByLabel("Cold or hot").selectOption({ index: 1 });
  await sample.getByRole("button", { name: "Keep the sample" }).click();
  await expect(page).toHaveURL("/units/TH-06");
  const answer = await note("answer");
  await expect(answer.getByLabel("Answer to which sample").locator("option")).toHaveText(/^TH06-4, /);
  await answer.getByLabel("In the laboratory's words").fill("Water 0.2 %. Drain and look again in 50 h.");
  await answer.getByRole("button", { name: "Keep the answer" }).click();
  await expect(page.locator("#history")).toContainText("Water 0.2 %.");

  const meter = await note("meter");
  await meter.getByLabel("First figure of the new meter").fill("0.0");
  await meter.getByRole("button", { name: "Keep the exchange" }).click();
  await expect(page).toHaveURL("/units/TH-06");
  const said = JSON.stringify((await record("/units/TH-06")).history);
  for (const kind of ["sample", "meter-exchange"]) expect(said).toContain(kind);
});

test("an estimate of hours is noted by keys alone; one in the wrong order is refused and kept nowhere", async ({ page, record }) => {
  const form = part(page, "estimate");
  const fill = async (low, likely, high) => {
    await openByKeys(page, "/units/TH-07/note");
    await typeInto(page, form.getByLabel("Hours at least"), low);
    await typeInto(page, form.getByLabel("Hours likely"), likely);
    await typeInto(page, form.getByLabel("Hours at most"), high);
    await typeInto(page, form.getByLabel("How it was reckoned"), "by the site's book");
    await press(page, form.getByRole("button", { name: "Keep the estimate" }));
  };
  const before = (await record("/units/TH-07")).history.count;
  await fill("9", "6", "3");
  await expect(page.locator("main")).toContainText("at least, likely, at most, in this order. Nothing was recorded.");
  expect((await record("/units/TH-07")).history.count).toBe(before);
  await fill("3", "6", "9");
  await expect(page).toHaveURL("/units/TH-07");
  await expect(page.locator("#history")).toContainText("by the site's book");
});

test("air for the job is worked out by keys alone, and what is no figure is named and left out", async ({ page, record }) => {
  await openByKeys(page, "/air");
  await choose(page, page.getByLabel("Unit", { exact: true }), "TH-01");
  await typeInto(page, page.locator("#air-altitude"), "5906");
  await typeInto(page, page.locator("#air-holds"), "100");
  await typeInto(page, page.locator("#air-takes-1"), "sixty");
  await typeInto(page, page.locator("#air-at-1"), "90");
  await press(page, page.getByRole("button", { name: "Work it out" }));
  await expect(page).toHaveURL(/\/air\?/);
  await expect(page.locator(".strip").filter({ hasText: '"sixty" is no figure for it and was left out' })).toBeVisible();
  await expect(page.locator("#air-altitude")).toHaveValue("5906");
  await reachable(page, "air, a figure left out");
  await typeInto(page, page.locator("#air-takes-1"), "60");
  await page.keyboard.press("Enter");
  await expect(page.locator("main .strip").filter({ hasText: "is no figure" })).toHaveCount(0);
  const asked = new URL(page.url());
  const { job } = await record(`${asked.pathname}${asked.search}`);
  const rows = page.locator("#answer dl dt");
  await expect(rows).toHaveCount(job.answer.rows.length);
  expect(job.answer.rows.length).toBeGreaterThan(1);
  const figure = job.answer.rows.map((row) => row.figure).find(Boolean);
  await expect(page.locator("#answer dl")).toContainText(`${figure.value} ${figure.unit}`);
});

test("a maker's campaign is entered, a unit is looked at by hand, the work is done, and it is taken back by name", async ({ page, record }) => {
  await page.goto("/due");
  await page.getByText("Enter a maker's campaign").click();
  await page.getByLabel("Name here, such as the number of the paper").fill("KX 24-07");
  await page.getByLabel("What is to be done").fill("new drain valve");
  const { serial } = (await record("/units/TH-06")).truck.set;
  await page.getByLabel(/^Serials, one range a line/).fill(serial);
  await page.getByLabel("Last good day").fill("2026-12-01");
  await page.getByRole("button", { name: "Keep the campaign" }).click();
  await expect(page).toHaveURL("/due#campaigns");
  const told = page.locator("#campaigns details").filter({ hasText: "KX 24-07: new drain valve" }).first();
  await expect(told).toContainText("1 to be done");
  await reachable(page, "a campaign");

  await told.getByRole("link", { name: "Service done" }).click();
  await expect(page.getByRole("checkbox", { checked: true })).toHaveCount(1);
  await page.getByLabel("Time").fill("16:30");
  await page.getByLabel("Done by").selectOption("Dov Petrakis");
  await page.getByRole("button", { name: "Keep the service" }).click();
  await expect(page).toHaveURL("/due");
  await expect(told).toContainText("0 to be done");
  await expect(told).toContainText("1 done");

  // A serial that is not recorded does not compare: somebody looks, and signs with his name.
  await page.getByText("Enter a maker's campaign").click();
  await page.getByLabel("Name here, such as the number of the paper").fill("PL 9");
  await page.getByLabel("What is to be done").fill("look at the frame bolts");
  await page.getByLabel("Whose serials").selectOption({ label: "Trucks" });
  await page.getByLabel(/^Serials, one range a line/).fill("C-1..C-9");
  await page.getByLabel("Last good day").fill("2026-12-01");
  await page.getByRole("button", { name: "Keep the campaign" }).click();
  const plates = page.locator("#campaigns details").filter({ hasText: "PL 9: look at the frame bolts" }).first();
  const open = async () => (await record("/due")).campaigns.find(({ name }) => name === "PL 9").units.filter(({ state }) => state === "look");
  const [first] = await open();
  const before = (await open()).length;
  const look = plates.locator("details").filter({ hasText: `Look at ${first.unit}` });
  await look.locator("summary").click();
  await look.getByLabel("It is not meant").check();
  await look.getByLabel("What was looked at, and what it said").fill("plate says AB-7");
  await look.getByLabel("Your name, as you sign in").fill("Wren Castellane");
  await look.getByRole("button", { name: "Keep what was seen" }).click();
  await expect(page.locator("main")).toContainText("Nothing was recorded");
  // Back again, what was typed still stands.
  await page.goBack();
  await look.locator("summary").click();
  await expect(look.getByLabel("What was looked at, and what it said")).toHaveValue("plate says AB-7");
  await look.getByLabel("Your name, as you sign in").fill("Ilse Marrow");
  await look.getByRole("button", { name: "Keep what was seen" }).click();
  await expect(page).toHaveURL("/due#campaigns");
  expect((await open()).length).toBe(before - 1);

  const back = plates.locator("details").filter({ hasText: "Take PL 9 back" });
  await back.locator("summary").click();
  await back.getByLabel("Why").fill("the maker withdrew the paper");
  await back.getByLabel("Your name, as you sign in").fill("Ilse Marrow");
  await back.getByRole("button", { name: "Take it back" }).click();
  await expect(page.locator("#campaigns")).toContainText("Taken back 17:0");
});

test("a set is laid up by keys alone, and its list is answered line by line until its air is free", async ({ page, record }) => {
  await page.setViewportSize({ width: 1280, height: 900 });
  await openByKeys(page, "/units/TH-06");
  const lay = part(page, "lay-up");
  await press(page, lay.getByText("Lay up the compressor set"));
  await typeInto(page, lay.getByLabel("What was done before it was put away"), "drained, belts slack");
  await press(page, lay.getByRole("button", { name: "Keep the lay-up" }));
  await expect(page).toHaveURL("/units/TH-06#lay-up");
  await expect(lay.locator(".strip")).toContainText("drained, belts slack");
  await expect(page.locator(".standing")).toContainText("Laid up, return list not complete");
  await reachable(page, "the list before its return");

  const view = await record("/units/TH-06");
  const lines = view["lay-up"].lines.length;
  expect(lines).toBeGreaterThan(3);
  await expect(page.locator("#return-list tbody tr")).toHaveCount(lines);
  // A line is waived with a reason only.
  const rows = page.locator("#return-list tbody tr");
  await rows.nth(0).getByRole("radio", { name: /^waived/ }).check();
  await page.getByRole("button", { name: "Keep these answers" }).click();
  await expect(page.locator("main")).toContainText("A line is waived without a reason. Nothing was recorded.");
  await page.goBack();
  await expect(rows.nth(0).getByRole("radio", { name: /^waived/ })).toBeChecked();
  await rows.nth(0).getByRole("textbox").fill("new in March");
  for (let n = 1; n < lines; n++) await rows.nth(n).getByRole("radio", { name: /^done/ }).check();
  await page.getByRole("button", { name: "Keep these answers" }).click();
  await expect(page).toHaveURL("/units/TH-06#lay-up");
  await expect(lay).toContainText("waived: new in March, Ilse Marrow");
  await expect(page.locator(".standing")).not.toContainText("Laid up");
  expect((await record("/units/TH-06"))["lay-up"]["laid-up"]).toBe(false);
});

test("one unit is typed in by keys alone, and the lines of its walk follow what it has", async ({ page, record }) => {
  await openByKeys(page, "/in-and-out");
  const form = page.locator("form[action='/in-and-out/unit']");
  await typeInto(page, form.getByLabel("Door number"), "TH-21");
  await tabTo(page, form.getByLabel("In service since"));
  await page.keyboard.type("11022026");
  await typeInto(page, form.getByLabel(/^Compressor hours on that day/), "12.5");
  await typeInto(page, form.getByLabel("Serial of the compressor set"), "THW-A-21");
  await press(page, form.getByLabel("air brakes", { exact: true }), "Space");
  await press(page, form.getByLabel("hour meter", { exact: true }), "Space");
  await press(page, form.getByRole("button", { name: "Enter the unit" }));
  await expect(page).toHaveURL("/units");
  await page.goto("/units/TH-21");
  await expect(page.getByRole("heading", { level: 1 })).toHaveText("TH-21");
  await reachable(page, "a unit with no record yet");
  const lines = (await record("/paper/TH-21")).stops.flatMap((stop) => stop.lines);
  expect(lines).toContain("air-leak-released");
  expect(lines.some((line) => line.startsWith("hydraulic"))).toBe(false);
});

test("a visit is planned and called off, and a part waited for comes in, by keys alone", async ({ page, record }) => {
  const plan = async () => {
    await openByKeys(page, "/due?unit=TH-01");
    await press(page, page.getByRole("checkbox", { name: "TH-01, Separator" }), "Space");
  };
  await plan();
  await tabTo(page, page.getByLabel("Day", { exact: true }));
  await page.keyboard.type("11122026");
  await press(page, page.getByRole("button", { name: "Plan a visit" }));
  const row = page.locator("#visits-table tbody tr").filter({ hasText: "TH-01" });
  await expect(row).toBeVisible();
  await press(page, row.locator("summary"));
  await press(page, row.getByRole("button", { name: "Cancel the visit" }));
  await expect(row).toHaveCount(0);
  expect((await record("/due")).visits.filter(({ unit }) => unit === "TH-01")).toEqual([]);

  await plan();
  await typeInto(page, page.getByLabel("Part", { exact: true }), "separator element");
  await press(page, page.getByRole("button", { name: "Keep the wait" }));
  const waits = page.locator("#waits-table");
  await expect(waits).toContainText("separator element");
  await reachable(page, "due, with a wait");
  await press(page, page.getByRole("button", { name: "The part is in, TH-01, separator element" }));
  await expect(waits.filter({ hasText: "separator element" })).toHaveCount(0);
});

test("a word is made to lock more by keys alone", async ({ page, record }) => {
  await openByKeys(page, "/severities");
  await press(page, page.locator("summary").filter({ hasText: "Cab, key off" }));
  const hairline = page.getByRole("group", { name: "Mirrors" }).getByLabel("hairline");
  await choose(page, hairline, "road");
  await press(page, page.getByRole("button", { name: "Set these: Cab, key off" }));
  await expect(hairline).toHaveAccessibleDescription("the shop's own; usual is: note");
  await reachable(page, "what a finding locks, one of the shop's own");
  const words = (await record("/severities")).stops.flatMap((stop) => stop.items).find(({ item }) => item === "mirrors").words;
  expect(words.find(({ word }) => word === "hairline").severity).toBe("road");
});
