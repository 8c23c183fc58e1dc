import type { Browser } from "playwright-core";
import { afterAll, beforeAll, describe, expect, test } from "vitest";
import {
  accessibilityTrouble,
  desktop,
  layoutTrouble,
  openPage,
  overlappingWords,
  phone,
  shoot,
  startBrowser,
  tablet,
  visit,
} from "./browser";
import { type RunningShop, startShop } from "./shop";

let shop: RunningShop;
let browser: Browser;

beforeAll(async () => {
  [shop, browser] = await Promise.all([startShop(), startBrowser()]);
});

afterAll(async () => {
  await browser?.close();
  await shop?.stop();
});

const pages = [
  "/instruments",
  "/instruments/1",
  "/instruments/2",
  "/new",
  "/instruments/1/edit",
  "/visits/1",
  "/homes",
  "/homes/1",
];

const looks = [
  { name: "phone", viewport: phone, scheme: "light" },
  { name: "tablet", viewport: tablet, scheme: "light" },
  { name: "desktop", viewport: desktop, scheme: "light" },
  { name: "desktop-dark", viewport: desktop, scheme: "dark" },
] as const;

describe.each(looks)("on a $name", ({ name, viewport, scheme }) => {
  test.each(pages)("%s reads, fits and says nothing in the console", async (path) => {
    const { context, page, complaints } = await openPage(browser, shop.address, viewport, scheme);
    try {
      await visit(page, path);
      await shoot(page, `${path.replaceAll("/", "-").slice(1)}-${name}`);
      expect(await page.locator("h1").count(), "one heading names the page").toBe(1);
      expect(await page.title()).toMatch(/ – Tailblock$/);
      expect(await layoutTrouble(page)).toEqual([]);
      expect(await overlappingWords(page)).toEqual([]);
      expect(await accessibilityTrouble(page)).toEqual([]);
      expect(complaints).toEqual([]);
    } finally {
      await context.close();
    }
  });
});

test.each([
  { name: "phone", viewport: phone },
  { name: "desktop", viewport: desktop },
])("in 64ths and thousandths the words of a picture keep apart too, on a $name", async ({ name, viewport }) => {
  const { context, page } = await openPage(browser, shop.address, viewport);
  try {
    await visit(page, "/instruments/1");
    for (const notation of ["64ths", "thou"]) {
      await page.getByRole("radio", { name: notation }).check({ force: true });
      for (const button of await page.getByRole("button", { name: /^Show its figures/ }).all()) await button.click();
      expect(await layoutTrouble(page), notation).toEqual([]);
      expect(await overlappingWords(page), notation).toEqual([]);
      await shoot(page, `instruments-1-${notation}-${name}`);
    }
  } finally {
    await context.close();
  }
});

test("every picture of an instrument has its table one key away", async () => {
  const { context, page } = await openPage(browser, shop.address, desktop);
  try {
    await visit(page, "/instruments/1");
    const pictures = page.locator("figure");
    const count = await pictures.count();
    expect(count).toBeGreaterThan(1);
    for (let i = 0; i < count; i += 1) {
      const figure = pictures.nth(i);
      await figure.getByRole("button", { name: "Show the numbers" }).focus();
      await page.keyboard.press("t");
      expect(await figure.locator("table").count(), `picture ${i}`).toBeGreaterThan(0);
      expect(await figure.locator("svg").count(), `picture ${i}`).toBe(0);
    }
    expect(await accessibilityTrouble(page)).toEqual([]);
    await shoot(page, "instruments-1-tables-desktop");
  } finally {
    await context.close();
  }
});

test("the first page is under 120 kB over the wire", async () => {
  const { context, page } = await openPage(browser, shop.address, desktop);
  try {
    const wire = await context.newCDPSession(page);
    await wire.send("Network.enable");
    const sizes = new Map<string, number>();
    const addresses = new Map<string, string>();
    wire.on("Network.responseReceived", ({ requestId, response }) => addresses.set(requestId, response.url));
    wire.on("Network.loadingFinished", ({ requestId, encodedDataLength }) => sizes.set(requestId, encodedDataLength));
    await visit(page, "/instruments/1");
    const files = [...sizes].filter(([id]) => !addresses.get(id)?.includes("/api/"));
    const total = files.reduce((sum, [, size]) => sum + size, 0);
    const listed = files.map(([id, size]) => `${addresses.get(id)} ${size}`).join("\n");
    console.info(`first page: ${total} bytes\n${listed}`);
    expect(total, listed).toBeLessThan(120_000);
  } finally {
    await context.close();
  }
});

test("a reader without a mouse reaches the page, its list and a filter", async () => {
  const { context, page } = await openPage(browser, shop.address, desktop);
  try {
    await visit(page, "/instruments");
    await page.keyboard.press("Tab");
    expect(await page.evaluate(() => document.activeElement?.textContent)).toBe("To the page");
    await page.keyboard.press("Enter");
    await page.keyboard.press("Tab");
    expect(await page.evaluate(() => document.activeElement?.textContent)).toBe("New instrument");
    await page.keyboard.press("Tab");
    await page.keyboard.type("black ladder");
    await expect.poll(() => page.locator(".lines li:not(.heads)").count()).toBe(1);
    await page.keyboard.press("Tab");
    await page.keyboard.press("Tab");
    await page.keyboard.press("Tab");
    await page.keyboard.press("Tab");
    await page.keyboard.press("Enter");
    await expect.poll(() => page.locator("h1").textContent()).toContain("parlour");
    expect(await page.evaluate(() => document.activeElement?.id)).toBe("page");
  } finally {
    await context.close();
  }
});

test("moving a slider redraws the string line and its map", async () => {
  const { context, page, complaints } = await openPage(browser, shop.address, desktop);
  try {
    await visit(page, "/instruments/1");
    const bass = page.getByRole("slider", { name: "Saddle, bass", exact: true });
    const at12 = page.locator(".at-12 td").first();
    const before = await at12.textContent();
    await bass.focus();
    for (let i = 0; i < 10; i += 1) await page.keyboard.press("ArrowRight");
    await expect.poll(() => at12.textContent()).not.toBe(before);
    await page.getByRole("button", { name: "As measured" }).click();
    await expect.poll(() => at12.textContent()).toBe(before);
    expect(complaints).toEqual([]);
  } finally {
    await context.close();
  }
});
