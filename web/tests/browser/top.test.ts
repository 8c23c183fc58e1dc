import type { Browser, Page } from "playwright-core";
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
  visit,
} from "./browser";
import { type RunningShop, startShop } from "./shop";

let shop: RunningShop;
let browser: Browser;
let parlour: number | undefined;

beforeAll(async () => {
  [shop, browser] = await Promise.all([startShop(), startBrowser()]);
  const found = await fetch(`${shop.address}/api/instruments?search=ladder-braced+parlour`);
  parlour = ((await found.json()) as { lines: { id: number }[] }).lines[0]?.id;
});

afterAll(async () => {
  await browser?.close();
  await shop?.stop();
});

const maps = (page: Page) => page.locator(".map");
const row = (page: Page, words: string) => page.locator(".numbers tr", { hasText: words }).first();
const difference = (page: Page, words: string) => row(page, words).locator("td").last();

test.each([
  { name: "phone", viewport: phone, scheme: "light" },
  { name: "desktop", viewport: desktop, scheme: "light" },
  { name: "desktop-dark", viewport: desktop, scheme: "dark" },
] as const)("a brace is loosened and the difference seen, in picture and numbers, on a $name", async (screen) => {
  const { context, page, complaints } = await openPage(browser, shop.address, screen.viewport, screen.scheme);
  try {
    await visit(page, "/instruments/1");
    await page.getByRole("link", { name: "Its top" }).click();
    await page.locator("svg .rim").first().waitFor();
    expect(await page.locator("h1").textContent()).toMatch(/^Top of /);
    expect(await maps(page).count()).toBe(1);
    expect(await page.locator("svg text.level").count()).toBeGreaterThan(2);
    await shoot(page, `top-1-${screen.name}`);
    await page.getByLabel("Brace loose").selectOption("X leg to treble");
    await expect.poll(() => maps(page).count()).toBe(2);
    expect(await maps(page).nth(1).locator("h3").textContent()).toContain("X leg to treble loose by 60.00 mm");
    expect(await maps(page).nth(1).locator("svg .brace.loose").count()).toBe(1);
    await expect.poll(() => difference(page, "Stiffness at the saddle").textContent()).toMatch(/^−\d/);
    const at60 = await difference(page, "Stiffness at the saddle").textContent();
    await page.getByRole("slider", { name: "Loose length", exact: true }).focus();
    for (let i = 0; i < 20; i += 1) await page.keyboard.press("ArrowRight");
    await expect.poll(() => maps(page).nth(1).locator("h3").textContent()).toContain("loose by 80.00 mm");
    expect(await difference(page, "Stiffness at the saddle").textContent()).not.toBe(at60);
    await shoot(page, `top-2-loose-${screen.name}`);
    expect(await layoutTrouble(page)).toEqual([]);
    expect(await overlappingWords(page)).toEqual([]);
    expect(await accessibilityTrouble(page)).toEqual([]);
    expect(complaints).toEqual([]);
  } finally {
    await context.close();
  }
});

test("the table of every picture is one key away and tells the same", async () => {
  const { context, page, complaints } = await openPage(browser, shop.address, desktop);
  try {
    await visit(page, "/instruments/1/top");
    await page.locator("svg .rim").first().waitFor();
    await page.getByLabel("Brace loose").selectOption("X leg to bass");
    await expect.poll(() => maps(page).count()).toBe(2);
    for (const name of [
      "The top as recorded",
      "What the change adds",
      "Across at the saddle",
      "Along the centre line",
    ]) {
      const figure = page.getByRole("figure", { name, exact: true });
      await figure.getByRole("button", { name: /Show the numbers/ }).focus();
      await page.keyboard.press("t");
      await figure.locator("table").waitFor();
      expect(await figure.locator("tbody tr").count()).toBeGreaterThan(8);
    }
    expect(await layoutTrouble(page)).toEqual([]);
    expect(await accessibilityTrouble(page)).toEqual([]);
    await shoot(page, "top-3-tables");
    const along = page.getByRole("figure", { name: "Along the centre line", exact: true });
    expect(await along.locator("tbody").textContent()).toContain("hole");
    await along.getByRole("button", { name: /Show the picture/ }).focus();
    await page.keyboard.press("t");
    expect(await along.locator("svg .as-changed").count()).toBeGreaterThan(0);
    expect(complaints).toEqual([]);
  } finally {
    await context.close();
  }
});

test("air, strings and thickness move it, by key, and 'as recorded' brings the changes back", async () => {
  const { context, page, complaints } = await openPage(browser, shop.address, desktop);
  try {
    await visit(page, "/instruments/1/top");
    await page.locator("svg .rim").first().waitFor();
    const air = page.getByRole("slider", { name: "Air the wood is settled in" });
    await air.focus();
    await page.keyboard.press("End");
    await expect.poll(() => page.getByRole("radio", { name: "with the air" }).isChecked()).toBe(true);
    await expect.poll(() => row(page, "Action at fret 12").locator("td").first().textContent()).toMatch(/^\d/);
    await page.keyboard.press("Home");
    await expect.poll(() => row(page, "Action at fret 12").locator("td").first().textContent()).toMatch(/^−/);
    await page.getByText("good to a factor of about two").first().waitFor();
    await page.getByRole("radio", { name: "pull across the grain" }).check();
    await expect.poll(() => page.locator("svg .found").count()).toBe(1);
    await page.getByLabel("Strings", { exact: true }).selectOption("medium");
    await expect.poll(() => difference(page, "Bridge leans, at once").textContent()).toMatch(/^\+/);
    const number = page.getByLabel("Top thickness, as a number");
    await number.fill("2.2 mm");
    await number.press("Enter");
    await expect.poll(() => difference(page, "Stiffness at the saddle").textContent()).toMatch(/^−/);
    await shoot(page, "top-4-across");
    expect(await overlappingWords(page)).toEqual([]);
    await number.fill("9 mm");
    await number.press("Enter");
    await expect
      .poll(() => page.getByRole("alert").allTextContents())
      .toEqual([expect.stringContaining("outside 1..6 mm")]);
    await page.getByRole("button", { name: "As recorded" }).click();
    await expect.poll(() => maps(page).count()).toBe(1);
    expect(await page.getByRole("alert").count()).toBe(0);
    expect(complaints.filter((line) => !line.includes("422"))).toEqual([]);
  } finally {
    await context.close();
  }
});

test("what was mended since it was last seen no longer counts, and the day is told", async () => {
  const { context, page } = await openPage(browser, shop.address, phone);
  try {
    await visit(page, `/instruments/${parlour}/top`);
    await page.locator("svg .rim").first().waitFor();
    const found = page.getByRole("region", { name: "What the survey found on it" });
    expect(await found.textContent()).toMatch(/it\s+was mended on/);
    expect(await found.locator(".found li").count()).toBe(0);
    expect(await page.locator("svg .surveyed").count()).toBe(0);
  } finally {
    await context.close();
  }
});

/** The bar that was glued has let go again. */
async function findBarLoose(): Promise<void> {
  const { visits } = (await (await fetch(`${shop.address}/api/instruments/${parlour}`)).json()) as {
    visits: { visit: { id: number } }[];
  };
  const kept = await fetch(`${shop.address}/api/visits/${visits.at(-1)?.visit.id}/findings`, {
    method: "POST",
    headers: { "content-type": "application/json" },
    body: JSON.stringify({
      kind: "brace_loose",
      view: "top_inside",
      shape: "line",
      points: [
        { x_mm: 242, y_mm: -124 },
        { x_mm: 242, y_mm: -80 },
      ],
      part: "bar below the hole",
      extents: [{ measure: "brace_gap_length", typed: "70 mm", value_mm: 70 }],
    }),
  });
  expect(await kept.text()).not.toContain("refused");
}

describe("a loose bar", () => {
  beforeAll(findBarLoose);

  test.each([
    { name: "phone", viewport: phone },
    { name: "desktop", viewport: desktop },
  ] as const)(
    "what the survey found is counted, drawn by its number and taken away when mended, on a $name",
    async (screen) => {
      const { context, page, complaints } = await openPage(browser, shop.address, screen.viewport);
      try {
        await visit(page, `/instruments/${parlour}/top`);
        await page.locator("svg .rim").first().waitFor();
        const found = page.getByRole("region", { name: "What the survey found on it" });
        const bar = found.locator(".found li", { hasText: "brace loose, bar below the hole" });
        expect(await bar.textContent()).toMatch(/taken as off the top over 70\smm/);
        const number = (await bar.locator("b").textContent()) ?? "";
        expect(await maps(page).first().locator("svg .surveyed.line").count()).toBe(1);
        expect(await maps(page).first().locator("svg .numeral").allTextContents()).toEqual([number]);
        await page.getByLabel("As if everything the survey found were mended").check();
        await expect.poll(() => maps(page).count()).toBe(2);
        expect(await maps(page).nth(1).locator("h3").textContent()).toContain("everything that was found is mended");
        await expect.poll(() => difference(page, "Stiffness at the saddle").textContent()).toMatch(/^\+\d/);
        expect(await maps(page).nth(1).locator("svg .surveyed").count()).toBe(0);
        await shoot(page, `top-5-surveyed-${screen.name}`);
        expect(await layoutTrouble(page)).toEqual([]);
        expect(await overlappingWords(page)).toEqual([]);
        expect(await accessibilityTrouble(page)).toEqual([]);
        await page.getByRole("button", { name: "As recorded" }).click();
        await expect.poll(() => maps(page).count()).toBe(1);
        expect(complaints).toEqual([]);
      } finally {
        await context.close();
      }
    },
  );
});

test("without a bracing on record nothing is drawn until one is chosen", async () => {
  const { context, page } = await openPage(browser, shop.address, phone);
  try {
    const kept = (await (await fetch(`${shop.address}/api/instruments/1`)).json()) as {
      instrument: { design: { bracing: string } };
    };
    kept.instrument.design.bracing = "other";
    const put = await fetch(`${shop.address}/api/instruments/1`, {
      method: "PUT",
      headers: { "content-type": "application/json" },
      body: JSON.stringify(kept.instrument),
    });
    expect(put.ok).toBe(true);
    await visit(page, "/instruments/1/top");
    await page.getByText("recorded as other than X, ladder or fan").waitFor();
    expect(await page.locator("svg .rim").count()).toBe(0);
    expect(await layoutTrouble(page)).toEqual([]);
    expect(await accessibilityTrouble(page)).toEqual([]);
    await page.getByLabel("Bracing taken as").selectOption("fan");
    await page.locator("svg .rim").first().waitFor();
    expect(await page.getByLabel("Brace loose").locator("option").count()).toBeGreaterThan(5);
  } finally {
    await context.close();
  }
});
