import type { Page } from "playwright-core";
import { afterAll, beforeAll, expect, test } from "vitest";
import {
  accessibilityTrouble,
  desktop,
  layoutTrouble,
  openPage,
  overlappingWords,
  phone,
  startBrowser,
  visit,
} from "./browser";
import { type RunningShop, startShop } from "./shop";

let shop: RunningShop;
let browser: Awaited<ReturnType<typeof startBrowser>>;

beforeAll(async () => {
  [shop, browser] = await Promise.all([startShop("2026-02-20"), startBrowser()]);
});

afterAll(async () => {
  await browser?.close();
  await shop?.stop();
});

const strings = (page: Page) => page.locator("section[aria-labelledby='strings']");
const slider = (page: Page, name: string) => strings(page).getByRole("slider", { name, exact: true });
const at12 = (page: Page) => strings(page).locator(".at-12 td").first();

/** Every cell carries its mark: the whole map has been run against the frets. */
async function confirmed(page: Page): Promise<void> {
  await strings(page).locator(".sliders").scrollIntoViewIfNeeded();
  await expect
    .poll(() => strings(page).locator("[role='gridcell'][aria-label*='not run yet']").count(), { timeout: 120_000 })
    .toBe(0);
}

test.each([
  { name: "desktop", viewport: desktop },
  { name: "phone", viewport: phone },
])("every slider moves the drawing, and 'as measured' brings all back, on a $name", async ({ name, viewport }) => {
  const { context, page, complaints } = await openPage(browser, shop.address, viewport);
  try {
    await visit(page, "/instruments/1");
    await slider(page, "Saddle, bass").scrollIntoViewIfNeeded();
    await confirmed(page);
    expect(await layoutTrouble(page)).toEqual([]);
    expect(await overlappingWords(page)).toEqual([]);
    await strings(page).screenshot({ path: `../build/screens/strings-1-${name}.png` });
    const before = await at12(page).textContent();
    const map = await strings(page).locator("[role='grid']").textContent();
    for (const one of ["Saddle, bass", "Saddle, treble", "Relief", "Attack", "Crown of fret 5"]) {
      await slider(page, one).first().focus();
      const earlier = await strings(page).locator("[data-drawn]").getAttribute("data-drawn");
      for (let i = 0; i < 6; i += 1) await page.keyboard.press("ArrowLeft");
      await expect.poll(() => strings(page).locator("[data-drawn]").getAttribute("data-drawn")).not.toBe(earlier);
    }
    await expect.poll(() => at12(page).textContent()).not.toBe(before);
    await confirmed(page);
    expect(await overlappingWords(page)).toEqual([]);
    expect(await accessibilityTrouble(page)).toEqual([]);
    await strings(page).screenshot({ path: `../build/screens/strings-2-moved-${name}.png` });
    await page.getByRole("button", { name: "As measured" }).click();
    await expect.poll(() => at12(page).textContent()).toBe(before);
    await confirmed(page);
    expect(await strings(page).locator("[role='grid']").textContent()).toBe(map);
    expect(complaints).toEqual([]);
  } finally {
    await context.close();
  }
});

test("turning the rod moves the strings, reading relief again does not", async () => {
  const { context, page } = await openPage(browser, shop.address, desktop);
  try {
    await visit(page, "/instruments/1");
    const before = await at12(page).textContent();
    const number = strings(page).getByLabel("Relief, as a number");
    await strings(page).getByRole("radio", { name: "read it again" }).check();
    await number.fill('.014"');
    await number.press("Enter");
    await expect.poll(() => strings(page).locator(".at-12").textContent()).toContain("0.36 mm");
    expect(await at12(page).textContent()).toBe(before);
    await strings(page).getByRole("radio", { name: "bow the neck" }).check();
    await number.fill("0.1 mm");
    await number.press("Enter");
    await expect.poll(() => strings(page).locator(".at-12").textContent()).toContain("0.10 mm");
    expect(await at12(page).textContent()).not.toBe(before);
  } finally {
    await context.close();
  }
});

test("a number in any notation moves a slider, and what cannot be is refused in one line", async () => {
  const { context, page } = await openPage(browser, shop.address, desktop);
  try {
    await visit(page, "/instruments/1");
    const number = strings(page).getByLabel("Saddle, bass, as a number");
    await number.fill("1/64");
    await number.press("Enter");
    await expect.poll(() => slider(page, "Saddle, bass").inputValue()).toBe("0.4");
    await number.fill("tall");
    await number.press("Enter");
    await strings(page).getByRole("alert").waitFor();
    await number.fill("60 mm");
    await number.press("Enter");
    await expect
      .poll(() => strings(page).getByRole("alert").allTextContents())
      .toEqual([expect.stringContaining("outside -10..10 mm")]);
  } finally {
    await context.close();
  }
});

test("a crown is chosen and raised on the drawing, by key, mouse and touch", async () => {
  const { context, page, complaints } = await openPage(browser, shop.address, desktop);
  try {
    await visit(page, "/instruments/1");
    const handle = strings(page).locator(".handle");
    await handle.focus();
    await page.keyboard.press("ArrowRight");
    await expect.poll(() => handle.getAttribute("aria-label")).toBe("Crown of fret 6");
    for (let i = 0; i < 3; i += 1) await page.keyboard.press("ArrowUp");
    await expect.poll(() => handle.getAttribute("aria-valuetext")).toBe("raised by 0.03 mm");
    const box = await handle.boundingBox();
    if (!box) throw new Error("the handle is not drawn");
    await page.mouse.move(box.x + 14, box.y + 14);
    await page.mouse.down();
    await page.mouse.move(box.x + 14, box.y - 16, { steps: 5 });
    await page.mouse.up();
    await expect.poll(() => handle.getAttribute("aria-valuetext")).toBe("raised by 0.13 mm");
    await strings(page).getByText("Fret 6 is high").waitFor();
    await strings(page).screenshot({ path: "../build/screens/strings-3-high-fret.png" });
    await strings(page).getByRole("button", { name: "Try it" }).first().click();
    await expect.poll(() => strings(page).getByText("Fret 6 is high").count()).toBe(0);
    await handle.focus();
    await page.keyboard.press("Home");
    await expect.poll(() => handle.getAttribute("aria-valuetext")).toBe("as measured");
    const drawing = strings(page).locator(".hits");
    const all = await drawing.boundingBox();
    if (!all) throw new Error("there is no drawing");
    await drawing.click({ position: { x: all.width * 0.35, y: all.height * 0.7 } });
    await expect.poll(() => handle.getAttribute("aria-label")).not.toBe("Crown of fret 6");
    expect(complaints).toEqual([]);
  } finally {
    await context.close();
  }
});

test("the map is walked by keys, each note is drawn and named with its verdict", async () => {
  const { context, page, complaints } = await openPage(browser, shop.address, desktop);
  try {
    await visit(page, "/instruments/1");
    await confirmed(page);
    const heading = strings(page).getByRole("heading", { level: 3 });
    await strings(page).locator("[role='gridcell'][aria-label^='low E at fret 4:']").click();
    await expect.poll(() => heading.textContent()).toBe("low E at fret 4, close up");
    await page.keyboard.press("ArrowDown");
    await expect.poll(() => heading.textContent()).toBe("A at fret 4, close up");
    await page.keyboard.press("ArrowRight");
    await expect.poll(() => heading.textContent()).toBe("A at fret 5, close up");
    await expect
      .poll(() => page.evaluate(() => document.activeElement?.getAttribute("aria-label")))
      .toMatch(/^A at fret 5: (clear|doubtful|touches), .* over fret \d+; (sounds clean|buzzes on .* playing)$/);
    expect(complaints).toEqual([]);
  } finally {
    await context.close();
  }
});

test("a note is heard with the frets and without, one at a time", async () => {
  const { context, page, complaints } = await openPage(browser, shop.address, desktop);
  try {
    await visit(page, "/instruments/1");
    const hear = strings(page).locator(".hear");
    expect(await hear.getAttribute("data-playing")).toBe("");
    await strings(page)
      .getByRole("button", { name: /^Hear it ?:/ })
      .focus();
    await page.keyboard.press("Enter");
    await expect.poll(() => hear.getAttribute("data-playing")).toBe("with");
    await strings(page).getByRole("button", { name: "Hear it without the frets" }).click();
    await expect.poll(() => hear.getAttribute("data-playing")).toBe("without");
    await expect.poll(() => hear.getAttribute("data-playing"), { timeout: 10_000 }).toBe("");
    expect(complaints).toEqual([]);
  } finally {
    await context.close();
  }
});

test("what contact says of an earlier set-up is not shown on a later one", async () => {
  const { context, page } = await openPage(browser, shop.address, desktop);
  try {
    let held = 0;
    await page.route("**/api/compute/contact-map", async (route) => {
      held += 1;
      // The first round's answers are kept back until the second round has been drawn.
      if (held <= 2) await new Promise((later) => setTimeout(later, 1500));
      await route.continue().catch(() => undefined);
    });
    await visit(page, "/instruments/1");
    await slider(page, "Attack").focus();
    for (let i = 0; i < 10; i += 1) await page.keyboard.press("ArrowRight");
    await confirmed(page);
    const shown = await strings(page)
      .locator("[role='gridcell']")
      .evaluateAll((cells) => cells.map((cell) => cell.ariaLabel));
    await page.waitForTimeout(2000);
    const later = await strings(page)
      .locator("[role='gridcell']")
      .evaluateAll((cells) => cells.map((cell) => cell.ariaLabel));
    expect(later).toEqual(shown);
  } finally {
    await context.close();
  }
});

test("every move of a slider comes onto the map, and how soon is told", async () => {
  const { context, page } = await openPage(browser, shop.address, desktop);
  try {
    await visit(page, "/instruments/1");
    await confirmed(page);
    await page.evaluate(() => {
      const at: { moved: number[]; recoloured: [number, number][]; painted: [number, number][] } = {
        moved: [],
        recoloured: [],
        painted: [],
      };
      Object.assign(window, { at });
      document.addEventListener("input", () => at.moved.push(performance.now()), true);
      const map = document.querySelector("[data-drawn]");
      if (!(map instanceof HTMLElement)) return;
      new MutationObserver(() => {
        const number = Number(map.dataset.drawn);
        at.recoloured.push([number, performance.now()]);
        requestAnimationFrame(() => {
          const after = new MessageChannel();
          after.port1.onmessage = () => at.painted.push([number, performance.now()]);
          after.port2.postMessage(0);
        });
      }).observe(map, { attributes: true, attributeFilter: ["data-drawn"] });
    });
    await slider(page, "Saddle, bass").focus();
    const first = Number(await strings(page).locator("[data-drawn]").getAttribute("data-drawn"));
    for (let i = 0; i < 60; i += 1) await page.keyboard.press(i % 40 < 20 ? "ArrowRight" : "ArrowLeft", { delay: 20 });
    await expect
      .poll(async () => Number(await strings(page).locator("[data-drawn]").getAttribute("data-drawn")))
      .toBeGreaterThanOrEqual(first + 60);
    await page.waitForTimeout(300);
    const times = await page.evaluate(() => (window as unknown as { at: Record<string, unknown> }).at);
    const { moved, recoloured, painted } = times as {
      moved: number[];
      recoloured: [number, number][];
      painted: [number, number][];
    };
    const after = (events: [number, number][]): number[] =>
      moved
        .map((at, i) => (events.find(([number]) => number >= first + i + 1)?.[1] ?? Number.POSITIVE_INFINITY) - at)
        .sort((a, b) => a - b);
    const quantile = (sorted: number[], share: number) => sorted[Math.floor(share * (sorted.length - 1))] ?? Number.NaN;
    for (const [what, sorted] of [
      ["recoloured", after(recoloured)],
      ["painted", after(painted)],
    ] as const) {
      console.info(
        `slider to map ${what}: p50 ${quantile(sorted, 0.5).toFixed(1)} ms, p95 ${quantile(sorted, 0.95).toFixed(1)} ms, ${sorted.length} moves`,
      );
    }
    expect(moved.length).toBe(60);
    // How soon is told above, not held here: it is the machine's load as much as the page.
    expect(after(painted).every(Number.isFinite)).toBe(true);
  } finally {
    await context.close();
  }
});
