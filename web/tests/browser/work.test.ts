import type { Browser, Locator, Page } from "playwright-core";
import { afterAll, beforeAll, expect, test } from "vitest";
import { accessibilityTrouble, desktop, layoutTrouble, openPage, phone, shoot, startBrowser, visit } from "./browser";
import { type RunningShop, startShop } from "./shop";

let shop: RunningShop;
let browser: Browser;

beforeAll(async () => {
  [shop, browser] = await Promise.all([startShop("2026-02-20"), startBrowser()]);
});

afterAll(async () => {
  await browser?.close();
  await shop?.stop();
});

async function newVisit(instrument: number): Promise<number> {
  const response = await fetch(`${shop.address}/api/visits`, {
    method: "POST",
    headers: { "content-type": "application/json" },
    body: JSON.stringify({ instrument_id: instrument, date: "2026-02-20", reason: "A crack has opened.", note: "" }),
  });
  return ((await response.json()) as { id: number }).id;
}

async function read(visitId: number, measure: string, value: number, gauge: string): Promise<void> {
  const response = await fetch(`${shop.address}/api/visits/${visitId}/readings`, {
    method: "POST",
    headers: { "content-type": "application/json" },
    body: JSON.stringify({
      readings: [{ visit_id: visitId, measure, typed: String(value), value, gauge, state: "as_found" }],
    }),
  });
  expect(response.status).toBe(200);
}

async function choose(page: Page, words: string, repair: RegExp): Promise<Locator> {
  const list = page.locator("details", { has: page.getByText("All repairs", { exact: true }) }).first();
  if (!(await page.getByLabel("Look for").isVisible())) await list.locator("summary").first().click();
  await page.getByLabel("Look for").fill(words);
  await list.getByRole("button", { name: repair }).click();
  const card = page.getByRole("article", { name: repair });
  await card.waitFor();
  return card;
}

/** Step by step through a job with the clock: start, done, and the minutes told where the tap comes late. */
async function workThrough(card: Locator, most = 60): Promise<void> {
  for (let i = 0; i < most; i += 1) {
    const start = card.locator("li.next button.tap", { hasText: /^Start/ });
    if ((await start.count()) === 0 || (await start.first().isDisabled())) return;
    await start.first().click();
    const done = card.getByRole("button", { name: /^Done/ });
    await done.waitFor();
    await done.click();
    await done.waitFor({ state: "detached" });
    // A wait has begun: hands could turn to another instrument. Here it is put off by nothing but the calendar.
    if ((await card.getByText(/waits until/).count()) > 0) return;
  }
}

test.each([
  { name: "desktop", viewport: desktop },
  { name: "phone", viewport: phone },
])("two repairs from choosing to going home, on a $name", async ({ name, viewport }) => {
  const { context, page, complaints } = await openPage(browser, shop.address, viewport);
  try {
    const id = await newVisit(name === "desktop" ? 2 : 3);
    await read(id, "body_humidity", 47, "hygrometer");
    await visit(page, `/visits/${id}`);
    await page.getByRole("link", { name: "Decide and work" }).click();
    await page.getByRole("heading", { name: "Decide and work", level: 1 }).waitFor();
    await page.getByLabel("Recorded as").fill("Ada");

    const crack = await choose(page, "crack", /Open crack or seam glued/);
    const saddle = await choose(page, "saddle drop", /Drop-in saddle replaced/);
    expect(await crack.getByText(/Next question/).count()).toBe(1);
    await shoot(page, `work-1-chosen-${name}`);

    // One question, answered by pressing its outcome; the plan follows.
    const question = (await crack.locator("h4").textContent()) ?? "";
    await crack.locator(".outcomes button").first().click();
    await expect.poll(() => crack.locator("h4").textContent()).not.toBe(question);
    await crack.getByText("Answered so far").click();
    expect(await crack.getByText(question).count()).toBeGreaterThan(0);

    // The estimate: both lines before the owner, one of them refused.
    await page.getByRole("button", { name: "Put 2 lines before the owner" }).click();
    await page.getByRole("button", { name: "Owner says yes to Open crack or seam glued, with cleats" }).click();
    await page.locator("b", { hasText: / said yes$/ }).waitFor();
    await page.getByRole("button", { name: "Owner says no to Drop-in saddle replaced" }).click();
    await page.locator("b", { hasText: / said no$/ }).waitFor();
    await expect.poll(() => saddle.textContent()).toContain("the owner said no");
    await shoot(page, `work-2-agreed-${name}`);
    expect(await accessibilityTrouble(page)).toEqual([]);
    expect(await layoutTrouble(page)).toEqual([]);

    // A change after the yes says so, and asks again.
    await crack.getByLabel("How many: cleats").fill("14");
    await crack.getByLabel("How many: cleats").press("Tab");
    await page.getByText("Changed since it was offered").waitFor();
    await page.getByRole("button", { name: "Put 1 line before the owner" }).click();
    await page.getByText("no answer yet.").waitFor();
    await page.getByRole("button", { name: "Owner says yes to Open crack or seam glued, with cleats" }).click();
    await expect.poll(() => crack.textContent()).toContain("the owner said yes");

    // Work with the clock.
    const first = crack.locator("li.next");
    await first.getByRole("button", { name: /^Start/ }).click();
    await page.getByText(/Hands are at/).waitFor();
    await shoot(page, `work-3-at-work-${name}`);
    expect(await accessibilityTrouble(page)).toEqual([]);
    const field = crack.getByLabel("Minutes it took, where the tap comes late");
    await field.fill("0");
    await crack.getByRole("button", { name: /^Done/ }).click();
    await page.getByText(/Hands are at/).waitFor({ state: "detached" });
    await crack
      .getByRole("button", { name: /^Correct the minutes/ })
      .first()
      .click();
    await crack.getByLabel("It took").fill("7");
    await crack.getByRole("button", { name: "Keep", exact: true }).click();
    await crack.getByText("put right by hand").waitFor();
    await workThrough(crack);
    await shoot(page, `work-4-worked-${name}`);

    await page.getByRole("button", { name: "Hand it over today" }).click();
    await page.getByText(/Went home on 20 Feb 2026/).waitFor();
    await page.emulateMedia({ media: "print" });
    await shoot(page, `work-5-printed-${name}`);
    expect(complaints).toEqual([]);
  } finally {
    await context.close();
  }
});

test("out of its range the gate holds the work until somebody records why not", async () => {
  const { context, page, complaints } = await openPage(browser, shop.address, desktop);
  try {
    const id = await newVisit(4);
    await read(id, "body_humidity", 30, "hygrometer");
    await visit(page, `/visits/${id}/work`);
    await page.getByLabel("Recorded as").fill("Ada");
    await choose(page, "crack", /Open crack or seam glued/);
    await page.getByText("The humidity holds this work.").waitFor();
    await page.getByText("Go on all the same").click();
    await page.getByLabel("Why").fill("The owner plays tonight and knows.");
    await page.getByRole("button", { name: "Record it, as Ada" }).click();
    await page.getByText(/The owner plays tonight and knows/).waitFor();
    expect(await page.getByText("The humidity holds this work.").count()).toBe(0);
    expect(complaints).toEqual([]);
  } finally {
    await context.close();
  }
});

test("by keyboard alone: a repair is chosen, a question answered and a step started and ended", async () => {
  const { context, page } = await openPage(browser, shop.address, desktop);
  try {
    const id = await newVisit(5);
    await read(id, "body_humidity", 47, "hygrometer");
    await visit(page, `/visits/${id}/work`);
    const focusedText = (): Promise<string> => page.evaluate(() => document.activeElement?.textContent?.trim() ?? "");
    const tabTo = async (text: RegExp, most = 200): Promise<void> => {
      for (let i = 0; i < most; i += 1) {
        if (text.test(await focusedText())) return;
        await page.keyboard.press("Tab");
      }
      throw new Error(`no way by Tab to ${text}`);
    };
    await tabTo(/^Open crack or seam glued/);
    await page.keyboard.press("Enter");
    const card = page.getByRole("article", { name: /Open crack or seam glued/ });
    await card.waitFor();
    const question = await card.locator("h4").textContent();
    await page.getByRole("heading", { name: "Repairs" }).evaluate((heading) => {
      (heading as HTMLElement).tabIndex = -1;
      (heading as HTMLElement).focus();
    });
    const outcome = (await card.locator(".outcomes button").first().textContent())?.trim() ?? "";
    await tabTo(new RegExp(`^${outcome.replace(/[()]/g, "\\$&")}$`));
    await page.keyboard.press("Enter");
    await expect.poll(() => card.locator("h4").textContent()).not.toBe(question);
    await page.getByLabel("Recorded as").focus();
    await page.keyboard.press("Control+A");
    await page.keyboard.type("Nadia");
    await tabTo(/^Start/);
    await page.keyboard.press("Enter");
    await card.getByRole("button", { name: /^Done/ }).waitFor();
    await tabTo(/^Done/);
    await page.keyboard.press("Enter");
    await card.getByRole("button", { name: /^Done/ }).waitFor({ state: "detached" });
  } finally {
    await context.close();
  }
});

test("a next visit opens on what was foretold for its day against what was read", async () => {
  const { context, page, complaints } = await openPage(browser, shop.address, phone);
  try {
    const id = await newVisit(1);
    await visit(page, `/visits/${id}`);
    await page.getByRole("heading", { name: "Foretold and read" }).waitFor();
    await read(id, "action12_bass", 2.9, "ruler_64ths");
    await visit(page, `/visits/${id}`);
    await page
      .getByText(/moved as foretold|did not move as foretold/i)
      .first()
      .waitFor();
    await page.locator("figure[aria-label='Foretold and read'] svg").waitFor();
    expect(await accessibilityTrouble(page)).toEqual([]);
    expect(await layoutTrouble(page)).toEqual([]);
    await shoot(page, "work-6-foretold-phone");
    expect(complaints).toEqual([]);
  } finally {
    await context.close();
  }
});
