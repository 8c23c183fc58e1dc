import type { Browser } from "playwright-core";
import { afterAll, beforeAll, expect, test } from "vitest";
import {
  accessibilityTrouble,
  desktop,
  layoutTrouble,
  openPage,
  overlappingWords,
  phone,
  settled,
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
  "/instruments/1/intonation",
  "/instruments/1/neck",
  "/instruments/3/neck",
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

test.each(pages)("%s reads and fits on every screen and says nothing in the console", async (path) => {
  const { context, page, complaints } = await openPage(browser, shop.address, phone);
  try {
    await visit(page, path);
    expect(await page.locator("h1").count(), "one heading names the page").toBe(1);
    expect(await page.title()).toMatch(/ – Tailblock$/);
    for (const { name, viewport, scheme } of looks) {
      await page.setViewportSize(viewport);
      await page.emulateMedia({ colorScheme: scheme });
      await settled(page);
      await shoot(page, `${path.replaceAll("/", "-").slice(1)}-${name}`);
      expect(await layoutTrouble(page), name).toEqual([]);
      expect(await overlappingWords(page), name).toEqual([]);
      if (name !== "tablet") expect(await accessibilityTrouble(page), name).toEqual([]);
    }
    expect(complaints).toEqual([]);
  } finally {
    await context.close();
  }
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
      const folded = page.getByRole("button", { name: /^Show its figures/ });
      while ((await folded.count()) > 0) await folded.first().click();
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

test("octave errors typed on the intonation page are kept as readings and narrow their strings", async () => {
  const { context, page, complaints } = await openPage(browser, shop.address, desktop);
  try {
    await visit(page, "/instruments/2/intonation");
    await expect.poll(() => page.getByText("not read", { exact: true }).count()).toBe(6);
    await page.getByLabel("low E", { exact: true }).fill("+4,5");
    await page.getByLabel("B", { exact: true }).fill("3 cents");
    await page.getByRole("button", { name: "Keep as readings of today" }).click();
    await expect.poll(() => page.getByText("2 readings kept.").count()).toBe(1);
    await expect.poll(() => page.getByText("not read", { exact: true }).count()).toBe(4);
    expect(await page.getByText("kept: +4.5").count()).toBe(1);
    await page.getByLabel("A", { exact: true }).fill("a lot");
    await page.getByRole("button", { name: "Keep as readings of today" }).click();
    await expect.poll(() => page.getByText("A: a lot is not a number of cents").count()).toBe(1);
    expect(complaints).toEqual([]);
  } finally {
    await context.close();
  }
});

test("a slot and crests that were measured are drawn, and judged", async () => {
  const ask = async (path: string, body: unknown): Promise<{ id: number }> => {
    const headers = { "Content-Type": "application/json" };
    const answer = await fetch(`${shop.address}/api/${path}`, { method: "POST", headers, body: JSON.stringify(body) });
    expect(answer.status, path).toBe(200);
    return (await answer.json()) as { id: number };
  };
  const visited = { id: 0, instrument_id: 4, date: "2026-02-20", reason: "", note: "" };
  const { id } = await ask("visits", visited);
  const read = (measure: string, value: number, gauge: string, gauge_sd: number) => ({
    visit_id: id,
    measure,
    typed: `${value}`,
    value,
    gauge,
    gauge_sd,
    state: "as_found",
  });
  await ask(`visits/${id}/readings`, {
    readings: [
      read("slot_front_bass", 318.4, "ruler_half_mm", 0.15),
      read("slot_front_treble", 316.2, "ruler_half_mm", 0.15),
      ...[1.2, 1.9, 0.8, 1.1, 1.3, 1.6].map((mm, i) => read(`crest_${i + 1}`, mm, "ruler_half_mm", 0.15)),
      ...[1, 3, 0.5, 1, 2, 5].map((cents, i) => read(`octave_error_${i + 1}`, cents, "strobe_tuner", 0.5)),
    ],
  });
  for (const [look, viewport] of [["phone", phone] as const, ["desktop", desktop] as const]) {
    const { context, page, complaints } = await openPage(browser, shop.address, viewport);
    try {
      await visit(page, "/instruments/4/intonation");
      expect(await page.locator(".headline").textContent()).toMatch(/slot|saddle's top/);
      expect(await page.locator("svg .saddle-top").count()).toBe(1);
      expect(await page.locator("svg .crest-range").count()).toBe(6);
      expect(await layoutTrouble(page)).toEqual([]);
      expect(await overlappingWords(page)).toEqual([]);
      expect(await accessibilityTrouble(page)).toEqual([]);
      await shoot(page, `instruments-4-intonation-${look}`);
      expect(complaints).toEqual([]);
    } finally {
      await context.close();
    }
  }
});

test("the neck's sliders redraw the taper, and steps that cannot be undone ask the owner", async () => {
  const { context, page, complaints } = await openPage(browser, shop.address, desktop);
  try {
    await visit(page, "/instruments/3/neck");
    const cap = page.locator(".lists table").first().locator("tr").last().locator("td");
    const before = await cap.textContent();
    const slider = page.getByRole("slider", { name: /Saddle over the bridge afterwards, bass/ });
    await slider.focus();
    for (let i = 0; i < 8; i += 1) await page.keyboard.press("ArrowRight");
    await expect.poll(() => cap.textContent()).not.toBe(before);
    await page.getByRole("button", { name: "Back to what the year asks for" }).click();
    await expect.poll(() => cap.textContent()).toBe(before);
    expect(await page.getByText("only with the owner’s yes").count()).toBeGreaterThan(2);
    expect(await page.getByText(/Steam scalds/).count()).toBe(1);
    expect(complaints).toEqual([]);
  } finally {
    await context.close();
  }
});
