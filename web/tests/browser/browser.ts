import { mkdirSync } from "node:fs";
import { fileURLToPath } from "node:url";
import AxeBuilder from "@axe-core/playwright";
import { type Browser, type BrowserContext, chromium, type Page } from "playwright-core";

export const phone = { width: 390, height: 844 } as const;
export const tablet = { width: 820, height: 1180 } as const;
export const desktop = { width: 1280, height: 900 } as const;

const screens = fileURLToPath(new URL("../../../build/screens/", import.meta.url));
mkdirSync(screens, { recursive: true });

export function startBrowser(): Promise<Browser> {
  return chromium.launch({
    executablePath: process.env.CHROMIUM ?? "/usr/bin/chromium",
    args: [
      "--no-sandbox",
      "--disable-gpu",
      "--disable-quic",
      "--no-first-run",
      "--disable-background-networking",
      "--disable-component-update",
      "--disable-sync",
    ],
  });
}

export interface Watched {
  readonly context: BrowserContext;
  readonly page: Page;
  /** Everything the console complained of, with the page it was on. */
  readonly complaints: string[];
}

export async function openPage(
  browser: Browser,
  address: string,
  viewport: { readonly width: number; readonly height: number },
  colorScheme: "light" | "dark" = "light",
): Promise<Watched> {
  const context = await browser.newContext({ viewport, colorScheme, baseURL: address });
  context.setDefaultTimeout(120_000); // a guard against hanging, not a limit of speed
  const page = await context.newPage();
  const complaints: string[] = [];
  page.on("console", (message) => {
    // A reading that is half typed is refused until it is whole, and Chromium logs every refusal.
    if (message.location().url.includes("/api/read-length")) return;
    if (message.type() === "error" || message.type() === "warning")
      complaints.push(`${page.url()} ${message.text()} ${message.location().url}`);
  });
  page.on("pageerror", (error) => complaints.push(`${page.url()} ${error.message}`));
  return { context, page, complaints };
}

/** Goes there and waits until nothing is being fetched any more. */
export async function visit(page: Page, path: string): Promise<void> {
  await page.goto(path, { waitUntil: "networkidle" });
  await page.evaluate(() => document.fonts.ready);
}

/** Waits until what a new size or scheme asks for has been drawn. */
export function settled(page: Page): Promise<void> {
  return page.evaluate(
    () => new Promise((done) => requestAnimationFrame(() => requestAnimationFrame(() => setTimeout(done, 100)))),
  );
}

export async function shoot(page: Page, name: string): Promise<void> {
  await page.screenshot({ path: `${screens}${name}.png`, fullPage: true });
}

const standards = ["wcag2a", "wcag2aa", "wcag21a", "wcag21aa", "wcag22aa", "best-practice"];

/** One line a violation; empty when there is none. Passes are not listed and no page is opened for frames of another origin: a fifth of the time. */
export async function accessibilityTrouble(page: Page): Promise<string[]> {
  const { violations } = await new AxeBuilder({ page })
    .setLegacyMode(true)
    .options({ runOnly: standards, resultTypes: ["violations"] })
    .analyze();
  return violations.map(({ id, nodes }) => `${id}: ${nodes.map((node) => node.target.join(" ")).join("; ")}`);
}

/** Elements that stick out of the page sideways, and text cut off by its own box. */
export function layoutTrouble(page: Page): Promise<string[]> {
  return page.evaluate(() => {
    const found: string[] = [];
    const named = (element: Element): string =>
      `${element.tagName.toLowerCase()}.${String(element.getAttribute("class") ?? "")} "${(element.textContent ?? "").trim().slice(0, 40)}"`;
    const over = document.documentElement.scrollWidth - document.documentElement.clientWidth;
    if (over > 0) found.push(`the page is ${over} px too wide`);
    const scrolls = (element: Element): boolean => element.closest(".scroll-across, .only-read-aloud, .skip") !== null;
    for (const element of document.querySelectorAll("body *")) {
      if (scrolls(element) || element.closest("svg")) continue;
      const box = element.getBoundingClientRect();
      if (box.width === 0 || box.height === 0) continue;
      if (box.right > window.innerWidth + 1 || box.left < -1) found.push(`sticks out: ${named(element)}`);
      const style = getComputedStyle(element);
      const meant =
        style.textOverflow === "ellipsis" ||
        style.clipPath === "inset(50%)" ||
        element.matches("input, select, textarea");
      const cuts = style.overflowX === "hidden" || style.overflowX === "clip";
      if (cuts && !meant && element.scrollWidth > element.clientWidth + 1) found.push(`is cut off: ${named(element)}`);
    }
    for (const text of document.querySelectorAll("svg text")) {
      const box = text.getBoundingClientRect();
      const around = text.closest("svg")?.getBoundingClientRect();
      if (!around || box.width === 0) continue;
      if (
        box.left < around.left - 1 ||
        box.right > around.right + 1 ||
        box.top < around.top - 2 ||
        box.bottom > around.bottom + 2
      )
        found.push(`text leaves its picture: ${named(text)}`);
    }
    return found;
  });
}

/** Pairs of words in one picture that are written over each other. */
export function overlappingWords(page: Page): Promise<string[]> {
  return page.evaluate(() => {
    const found: string[] = [];
    for (const drawing of document.querySelectorAll("svg")) {
      const texts = [...drawing.querySelectorAll("text")].map((text) => ({
        words: text.textContent ?? "",
        box: text.getBoundingClientRect(),
      }));
      for (const [i, a] of texts.entries()) {
        for (const b of texts.slice(i + 1)) {
          const across = Math.min(a.box.right, b.box.right) - Math.max(a.box.left, b.box.left);
          const down = Math.min(a.box.bottom, b.box.bottom) - Math.max(a.box.top, b.box.top);
          if (across > 2 && down > 4) found.push(`"${a.words}" over "${b.words}"`);
        }
      }
    }
    return found;
  });
}
