// The door: what a browser says of the hub's own certificate, signing in, and what keeps others out.

import { expect, signIn, test } from "./test.js";

test.describe("a browser that does not know the hub's certificate", () => {
  test.use({ ignoreHTTPSErrors: false, storageState: undefined });

  test("it may be told to go on: the authority is unknown, nothing else is wrong", async ({ page, demo }) => {
    const answer = await page.goto(`${demo.url}/sign-in`).catch((error) => error);
    expect(String(answer)).toContain("net::ERR_CERT_AUTHORITY_INVALID");
  });
});

test.describe("nobody is in yet", () => {
  test.use({ storageState: { cookies: [], origins: [] } });

  test("a manager signs in and comes to where they wanted to go", async ({ page, demo, context }) => {
    await page.goto("/due");
    await expect(page).toHaveURL(/\/sign-in\?to=%2Fdue$|\/sign-in\?to=\/due$/);
    await expect(page.getByRole("heading", { level: 1 })).toHaveText("Tern Hollow Water");
    await expect(page.getByText("Its key:")).toBeVisible();
    // The password can be looked at while it is typed.
    await page.getByLabel("Password", { exact: true }).fill("abc");
    await page.getByLabel("show the password").check();
    await expect(page.locator("#password")).toHaveAttribute("type", "text");

    // A cookie that somebody else put there names nobody and is not the one that is kept.
    const planted = "A".repeat(43);
    await context.addCookies([
      { name: "__Host-session", value: planted, url: demo.url, secure: true, httpOnly: true, sameSite: "Strict" },
    ]);
    await page.getByLabel("Name").fill(demo.name);
    await page.locator("#password").fill(demo.password);
    await page.getByRole("button", { name: "Sign in" }).click();
    await expect(page).toHaveURL(/\/due$/);
    const cookie = (await context.cookies()).find(({ name }) => name === "__Host-session");
    expect(cookie).toMatchObject({ secure: true, httpOnly: true, sameSite: "Strict", path: "/", domain: "127.0.0.1" });
    expect(cookie.value).not.toBe(planted);
    expect(await page.evaluate(() => document.cookie)).not.toContain("session");

    // Out again: the old cookie opens nothing any more.
    await page.getByRole("button", { name: "Sign out" }).click();
    await expect(page).toHaveURL(/\/sign-in$/);
    await context.addCookies([{ ...cookie }]);
    await page.goto("/units");
    await expect(page).toHaveURL(/sign-in/);
    const answer = await page.request.get("/units.json");
    expect(answer.status()).toBe(401);
  });

  test("a wrong password opens nothing, says so, and makes this name wait here", async ({ page, demo }) => {
    await signIn(page, demo, { name: "Dov Petrakis", password: "not this one" });
    const told = page.getByRole("alert");
    await expect(told).toHaveText("Name or password do not match. Nothing was opened. Wait 30 s.");
    await expect(page.getByLabel("Name")).toHaveAttribute("aria-describedby", "wrong");
    const again = page.waitForResponse((answer) => answer.request().method() === "POST");
    await signIn(page, demo, { name: "Dov Petrakis", password: "not this one either" });
    const answer = await again;
    expect(answer.status()).toBe(429);
    expect(Number(answer.headers()["retry-after"])).toBeGreaterThan(0);
    await expect(told).toContainText("Wait");
  });

  test("nobody is sent to another house after signing in", async ({ page }) => {
    await page.goto("/sign-in?to=https://elsewhere.example/");
    await expect(page.locator("input[name=to]")).toHaveCount(0);
  });
});

test("nothing inline runs, nothing from elsewhere loads, nobody frames a page", async ({ page }) => {
  const answer = await page.goto("/");
  const policy = answer.headers()["content-security-policy"];
  expect(policy).toContain("default-src 'none'");
  expect(policy).toContain("frame-ancestors 'none'");
  expect(policy).not.toContain("unsafe");
  const refused = await page.evaluate(
    () =>
      new Promise((done) => {
        document.addEventListener("securitypolicyviolation", (event) => done(event.violatedDirective), { once: true });
        const script = document.createElement("script");
        script.textContent = "window.ran = true";
        document.body.append(script);
        setTimeout(() => done("nothing was refused"), 2000);
      }),
  );
  expect(refused).toContain("script-src");
  expect(await page.evaluate(() => window.ran)).toBeUndefined();
});

test("no page asks for anything that the policy refuses", async ({ page }) => {
  const refused = [];
  page.on("console", (message) => { if (/Content Security Policy/i.test(message.text())) refused.push(message.text()); });
  for (const path of ["/", "/units/TH-01", "/certificates", "/due", "/people", "/paper/TH-04", "/units/TH-03/cab-report"]) {
    await page.goto(path);
  }
  expect(refused).toEqual([]);
});

test("a form without its token, or with another's, changes nothing", async ({ page, record }) => {
  await page.goto("/people");
  const before = (await record("/people")).people.length;
  for (const token of ["", "0".repeat(43)]) {
    const form = page.locator("form[action='/people/person']");
    await form.locator("input[name=csrf]").evaluate((input, value) => { input.value = value; }, token);
    await form.getByLabel("Name").fill("Nobody Known");
    const answer = page.waitForResponse((answer) => answer.url().endsWith("/people/person"));
    await form.getByRole("button").click();
    expect((await answer).status()).toBe(403);
    await expect(page.getByText("This form did not come from a page of this console")).toBeVisible();
    await page.goto("/people");
  }
  expect((await record("/people")).people.length).toBe(before);
});

test("a reader sees everything, has no form that writes, and is refused when one is sent", async ({ page, browser, demo, record }) => {
  const name = "Wren Castellane";
  await page.goto("/people#signs");
  const form = page.locator("form[action='/people/sign-in']");
  await form.getByLabel("Name").selectOption(name);
  await form.getByLabel("May").selectOption("reader");
  await form.getByLabel("Password", { exact: true }).fill("quiet-lamp-40");
  await form.getByLabel("Password once more").fill("quiet-lamp-40");
  await form.getByRole("button", { name: "Set this sign-in" }).click();
  await expect(page.locator("#signs-table")).toContainText(name);
  expect((await record("/people")).signs).toContainEqual({ name, role: "reader", "is-person": true });

  const context = await browser.newContext({ ignoreHTTPSErrors: true, baseURL: demo.url, storageState: undefined });
  const reader = await context.newPage();
  await signIn(reader, demo, { name, password: "quiet-lamp-40" });
  await expect(reader.getByText(`Signed in: ${name}`)).toBeVisible();
  for (const path of ["/", "/units/TH-02", "/certificates", "/due", "/people", "/set-aside", "/in-and-out", "/paper", "/paper/TH-04"]) {
    await reader.goto(path);
    await expect(reader.locator("h1").first()).toBeVisible();
    const forms = await reader.locator("form[method=post]").evaluateAll((all) => all.map((form) => form.getAttribute("action")));
    expect(forms, path).toEqual(["/sign-out"]);
  }
  const csrf = await reader.locator("input[name=csrf]").first().inputValue();
  const answer = await reader.request.post("/people/person", {
    form: { csrf, name: "Nobody Known", role: "driver" },
    headers: { Origin: demo.url },
  });
  expect(answer.status()).toBe(403);
  expect((await record("/people")).people.map((one) => one.name)).not.toContain("Nobody Known");
  await context.close();
});
