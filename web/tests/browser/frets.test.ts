import type { Browser } from "playwright-core";
import { afterAll, beforeAll, expect, test } from "vitest";
import {
  accessibilityTrouble,
  desktop,
  layoutTrouble,
  openPage,
  overlappingWords,
  phone,
  shoot,
  startBrowser,
  visit,
} from "./browser";
import { type RunningShop, startShop } from "./shop";

let shop: RunningShop;
let browser: Browser;
let read: number;
let unread: number;

async function numberOf(words: string): Promise<number> {
  const found = await fetch(`${shop.address}/api/instruments?search=${encodeURIComponent(words)}`);
  const { lines } = (await found.json()) as { lines: { id: number }[] };
  const [line] = lines;
  if (!line) throw new Error(`no instrument called ${words}`);
  return line.id;
}

beforeAll(async () => {
  [shop, browser] = await Promise.all([startShop(), startBrowser()]);
  read = await numberOf("maple square");
  unread = await numberOf("mahogany");
});

afterAll(async () => {
  await browser?.close();
  await shop?.stop();
});

test.each([
  { name: "phone", viewport: phone, scheme: "light" },
  { name: "desktop", viewport: desktop, scheme: "light" },
  { name: "desktop-dark", viewport: desktop, scheme: "dark" },
] as const)("crowns that were read are judged and drawn, on a $name", async ({ name, viewport, scheme }) => {
  const { context, page, complaints } = await openPage(browser, shop.address, viewport, scheme);
  try {
    await visit(page, `/instruments/${read}/frets`);
    await shoot(page, `frets-${name}`);
    expect(await page.locator("h1").textContent()).toMatch(/^Frets of /);
    expect(await page.locator(".headline").textContent()).toMatch(/Spot-level fret 9|Level the board/);
    expect(await page.locator("svg .to-remove").count()).toBeGreaterThan(0);
    expect(await page.locator("svg text", { hasText: /times/ }).count()).toBe(1);
    expect(await layoutTrouble(page)).toEqual([]);
    expect(await overlappingWords(page)).toEqual([]);
    expect(await accessibilityTrouble(page)).toEqual([]);
    expect(complaints).toEqual([]);
  } finally {
    await context.close();
  }
});

test("crowns are typed down one column by keyboard alone, judged as they come, and kept", async () => {
  const { context, page, complaints } = await openPage(browser, shop.address, desktop);
  try {
    await visit(page, `/instruments/${unread}`);
    await page.getByRole("link", { name: "Its frets" }).click();
    await page.getByLabel("Fret 1", { exact: true }).focus();
    for (let fret = 1; fret <= 20; fret += 1) {
      await page.keyboard.type(fret === 7 ? "16" : fret === 11 ? '.001"' : "0");
      if (fret < 20) await page.keyboard.press("Enter");
    }
    await page.locator(".headline", { hasText: "Spot-level fret 7" }).waitFor();
    expect(await page.locator("svg .to-remove").count()).toBeGreaterThan(0);
    expect(await page.getByText("as typed, not kept yet").count()).toBe(1);
    await shoot(page, "frets-typed");
    await page.keyboard.press("Enter");
    expect(await page.evaluate(() => document.activeElement?.textContent?.trim())).toMatch(/^Keep 20 readings/);
    await page.keyboard.press("Enter");
    await page.getByText("20 readings kept.").waitFor();
    await visit(page, `/instruments/${unread}/frets`);
    expect(await page.locator(".headline").textContent()).toMatch(/Spot-level fret 7/);
    expect(await page.getByText(/string \d \(.*\) stopped at 6 would touch it/).count()).toBeGreaterThan(0);
    expect(await accessibilityTrouble(page)).toEqual([]);
    expect(complaints).toEqual([]);
  } finally {
    await context.close();
  }
});

test("the strip for the bench is a PDF, the same every time", async () => {
  const ask = async (): Promise<Uint8Array> => {
    const answer = await fetch(`${shop.address}/api/instruments/${read}/fret-strip.pdf?today=2026-02-20`);
    expect(answer.status).toBe(200);
    expect(answer.headers.get("content-type")).toBe("application/pdf");
    return new Uint8Array(await answer.arrayBuffer());
  };
  const [once, again] = [await ask(), await ask()];
  expect(String.fromCharCode(...once.slice(0, 5))).toBe("%PDF-");
  expect(once).toEqual(again);
});
