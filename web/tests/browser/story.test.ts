import type { Browser, Page } from "playwright-core";
import { afterAll, beforeAll, expect, test } from "vitest";
import { accessibilityTrouble, desktop, openPage, phone, shoot, startBrowser, visit } from "./browser";
import { newInstrument } from "./hands";
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

/** Sets the visit's day, then types the readings as a hand at the bench would, Enter after each. */
async function readAtVisit(page: Page, day: string, reason: string, typed: Record<string, string>): Promise<void> {
  if (!(await page.getByLabel("Day", { exact: true }).isVisible()))
    await page.getByText("Day, reason and note").click();
  await page.getByLabel("Day", { exact: true }).fill(day);
  await page.getByLabel("What the owner said").fill(reason);
  await page.getByRole("button", { name: "Keep", exact: true }).click();
  await expect.poll(() => page.locator("h1").textContent()).toContain(day.slice(0, 4));
  await page.locator("input[data-reading='action12_bass']").focus();
  for (let i = 0; i < Object.keys(typed).length + 4; i += 1) {
    const measure = await page.evaluate(() => (document.activeElement as HTMLElement | null)?.dataset.reading);
    if (measure === undefined) break;
    const text = typed[measure];
    if (text !== undefined) await page.keyboard.type(text);
    await page.keyboard.press("Enter");
  }
  const count = Object.keys(typed).length;
  await page.getByRole("button", { name: `Keep ${count} readings` }).click();
  await page.getByText(`${count} readings kept.`).waitFor();
}

test.each([
  { name: "desktop", viewport: desktop },
  { name: "phone", viewport: phone },
])("from a new instrument to a saddle that is chosen and kept, on a $name", async ({ name, viewport }) => {
  const { context, page, complaints } = await openPage(browser, shop.address, viewport);
  try {
    const called = `the story guitar on a ${name}`;
    await newInstrument(page, called);
    const instrument = new URL(page.url()).pathname;
    await shoot(page, `story-1-new-${name}`);

    await page.getByRole("button", { name: "New visit today" }).click();
    await page.getByRole("heading", { name: "Readings" }).waitFor();
    await readAtVisit(page, "2025-08-15", "Plays lovely.", {
      action12_bass: "6/64",
      action12_treble: "1.9",
      relief: '.008"',
      saddle_exposure_bass: "3 mm",
      saddle_exposure_treble: "2,6 mm",
    });
    await shoot(page, `story-2-august-${name}`);

    await page.getByRole("link", { name: "What it means" }).click();
    await page.getByRole("button", { name: "New visit today" }).click();
    await page.getByRole("heading", { name: "Readings" }).waitFor();
    await readAtVisit(page, "2026-02-20", "Buzzes on the low strings since the new year.", {
      action12_bass: "1.85 mm",
      action12_treble: '.057"',
    });
    await shoot(page, `story-3-february-${name}`);

    await page.getByRole("link", { name: "What it means" }).click();
    await page.getByRole("heading", { name: "The year" }).waitFor();
    await page.locator("figure[aria-label^='The year'] svg").first().waitFor();
    expect(await page.locator("figure[aria-label^='The year'] svg").count()).toBe(2);
    expect(await page.locator("figure[aria-label^='The year'] svg .reading").count()).toBe(4);
    expect((await page.locator(".headline").allTextContents()).join(" ")).toMatch(/season/i);
    expect(await accessibilityTrouble(page)).toEqual([]);
    await shoot(page, `story-4-year-${name}`);

    const card = page.locator("article.advised");
    const title = (await card.locator("h3").textContent()) ?? "";
    await card.getByRole("button", { name: "Choose this" }).click();
    await page.getByLabel("Why this one").fill("Least work for the most days.");
    await page.getByRole("button", { name: "Keep the decision" }).click();
    await card.getByText("chosen 20 Feb").waitFor();

    await page.reload({ waitUntil: "networkidle" });
    expect(new URL(page.url()).pathname).toBe(instrument);
    await page.locator("article.advised").getByText("chosen 20 Feb").waitFor();
    expect(await page.locator("article.advised h3").textContent()).toBe(title);
    expect(await page.getByText("Least work for the most days.").count()).toBe(1);
    await shoot(page, `story-5-chosen-${name}`);
    expect(complaints).toEqual([]);
  } finally {
    await context.close();
  }
});

test("a reading outside the usual range asks, and a correction keeps the old one", async () => {
  const { context, page, complaints } = await openPage(browser, shop.address, desktop);
  try {
    await visit(page, "/instruments/1");
    await page.getByRole("button", { name: /visit/i }).first().click();
    await page.getByRole("heading", { name: "Readings" }).waitFor();
    await page.getByRole("radio", { name: "64ths" }).check({ force: true });
    const bass = page.locator("input[data-reading='action12_bass']");
    await bass.fill("2");
    await page.getByText("0.79 mm").waitFor();
    await page.getByRole("button", { name: "Keep the reading" }).click();
    await page.getByText("is not ready").waitFor();
    await page.getByRole("checkbox", { name: /Keep it all the same/ }).check();
    await page.getByRole("button", { name: "Keep the reading" }).click();
    await page.getByText("1 reading kept.").waitFor();

    await page.getByRole("button", { name: "Correct action at fret 12, bass" }).last().click();
    await bass.fill("5/64");
    await page.locator(".means", { hasText: "1.98 mm" }).waitFor();
    await page.getByRole("button", { name: "Keep the reading" }).click();
    await page.locator("del", { hasText: "2/64" }).waitFor();
    expect(await page.locator("tr.struck").count()).toBe(1);
    await shoot(page, "visit-corrected-desktop");
    expect(complaints).toEqual([]);
  } finally {
    await context.close();
  }
});

test("what the program refuses stands beside the field it is about", async () => {
  const { context, page } = await openPage(browser, shop.address, desktop);
  try {
    await visit(page, "/instruments/1/edit");
    await page.getByText("Neck, slot and top").click();
    const depth = page.getByLabel("Slot depth");
    await depth.fill("400 mm");
    await page.getByText("400.00 mm").waitFor();
    await page.getByRole("button", { name: "Keep this instrument" }).click();
    await page.getByRole("alert").waitFor();
    const described = await depth.getAttribute("aria-describedby");
    expect(await page.locator(`[id="${described}"]`).textContent()).toMatch(/outside/);
  } finally {
    await context.close();
  }
});
