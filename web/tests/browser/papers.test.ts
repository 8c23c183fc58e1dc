import { Buffer } from "node:buffer";
import { execFileSync } from "node:child_process";
import { mkdtempSync, rmSync, writeFileSync } from "node:fs";
import { tmpdir } from "node:os";
import { join } from "node:path";
import type { Browser, Locator, Page } from "playwright-core";
import { afterAll, beforeAll, expect, test } from "vitest";
import { accessibilityTrouble, desktop, layoutTrouble, openPage, phone, shoot, startBrowser, visit } from "./browser";
import { newInstrument, photoLyingOnItsSide } from "./hands";
import { type RunningShop, startShop } from "./shop";

let shop: RunningShop;
let browser: Browser;
let folder: string;

beforeAll(async () => {
  folder = mkdtempSync(join(tmpdir(), "tailblock-papers-"));
  [shop, browser] = await Promise.all([startShop("2026-02-20"), startBrowser()]);
});

afterAll(async () => {
  await browser?.close();
  await shop?.stop();
  rmSync(folder, { recursive: true });
});

/** The paper that a link leads to, as a file that other programs read. */
async function fetched(link: Locator, name: string): Promise<string> {
  const address = await link.getAttribute("href");
  const answer = await fetch(`${shop.address}${address}`);
  expect(answer.status, `${address}: ${answer.status === 200 ? "" : await answer.clone().text()}`).toBe(200);
  expect(answer.headers.get("content-type")).toBe("application/pdf");
  const file = join(folder, `${name}.pdf`);
  writeFileSync(file, Buffer.from(await answer.arrayBuffer()));
  expect(execFileSync("qpdf", ["--check", file], { encoding: "utf8" })).toContain(
    "No syntax or stream encoding errors",
  );
  return file;
}

function textOf(file: string): string {
  return execFileSync("pdftotext", ["-layout", file, "-"], { encoding: "utf8" }).replaceAll(/\s+/g, " ");
}

/** What an independent reader finds in the codes on a paper's first page. */
function codesOn(file: string): string {
  execFileSync("pdftoppm", ["-r", "150", "-f", "1", "-l", "1", "-png", file, file]);
  const [page] = execFileSync("sh", ["-c", `ls ${file}*.png`], { encoding: "utf8" }).split("\n");
  return execFileSync("zbarimg", ["--nodbus", "--quiet", "--raw", page ?? ""], { encoding: "utf8" });
}

async function find(
  page: Page,
  kind: string,
  severity: string,
  taps: readonly (readonly [number, number])[],
): Promise<void> {
  const drawing = page.getByRole("application").locator("svg");
  const frame = await drawing.boundingBox();
  if (!frame) throw new Error("nothing is drawn");
  for (const [across, down] of taps) {
    await drawing.click({ position: { x: frame.width * across, y: frame.height * down } });
  }
  await page.getByLabel("What is it?").fill(kind);
  await page.getByRole("radio", { name: kind, exact: true }).check();
  await page.getByRole("radio", { name: severity }).check();
  await page.locator("input[type=file]:not([capture])").setInputFiles({
    name: "shot.jpg",
    mimeType: "image/jpeg",
    buffer: await photoLyingOnItsSide(page),
  });
  await page.getByAltText("Photo 1 of this finding").waitFor();
  await page.getByRole("button", { name: "Keep the finding" }).click();
  await page.getByText(/Finding \d kept\./).waitFor();
}

async function read(page: Page, state: "as found" | "as left", typed: Record<string, string>): Promise<void> {
  await page.getByRole("radio", { name: state }).check();
  for (const [measure, text] of Object.entries(typed)) {
    const field = page.locator(`input[data-reading='${measure}']`);
    await field.fill(text);
    await field.press("Enter");
  }
  const count = Object.keys(typed).length;
  await page.getByRole("button", { name: `Keep ${count} readings` }).click();
  await page.getByText(`${count} readings kept.`).waitFor();
}

async function choose(page: Page, repair: RegExp): Promise<Locator> {
  await page.getByRole("button", { name: repair }).first().click();
  const card = page.getByRole("article", { name: repair });
  await card.waitFor();
  return card;
}

/** Every step that hands may take up now, by the clock. */
async function work(card: Locator): Promise<number> {
  let steps = 0;
  for (; steps < 60; steps += 1) {
    const start = card.locator("li.next button.tap", { hasText: /^Start/ });
    if ((await start.count()) === 0 || (await start.first().isDisabled())) break;
    await start.first().click();
    const done = card.getByRole("button", { name: /^Done/ });
    await done.click();
    await done.waitFor({ state: "detached" });
    if ((await card.getByText(/waits until/).count()) > 0) return steps + 1;
  }
  return steps;
}

test.each([
  { name: "desktop", viewport: desktop },
  { name: "phone", viewport: phone },
])("one instrument from arrival to collection, on a $name", async ({ name, viewport }) => {
  const { context, page, complaints } = await openPage(browser, shop.address, viewport);
  const look = async (stage: string): Promise<void> => {
    expect(await layoutTrouble(page), stage).toEqual([]);
    expect(await accessibilityTrouble(page), stage).toEqual([]);
    await shoot(page, `papers-${stage}-${name}`);
  };
  try {
    const called = `the collected guitar on a ${name}`;
    await newInstrument(page, called);

    // Arrival: what the owner said, and the ticket.
    await page.getByRole("button", { name: "New visit today" }).click();
    await page.getByRole("heading", { name: "Readings" }).waitFor();
    const visitPath = new URL(page.url()).pathname;
    await page.getByLabel("What the owner said").fill("A line has opened behind the bridge, and something rattles.");
    await page.getByRole("button", { name: "Keep", exact: true }).click();
    await page.locator("p.reason").waitFor();
    const ticket = await fetched(page.getByRole("link", { name: "Print A4 (Claim ticket)" }), `ticket-${name}`);
    expect(textOf(ticket)).toContain("A line has opened behind the bridge");
    expect(codesOn(ticket)).toContain(called);
    await page.getByRole("button", { name: "Give the ticket" }).click();
    await page.getByText(/Given on 20 Feb 2026 as 2026-000\d/).waitFor();
    await read(page, "as found", { action12_bass: "2.4 mm", action12_treble: "1.9 mm", body_humidity: "47" });
    await look("1-arrived");

    // Survey: two findings with a photo each.
    await page.getByRole("link", { name: "Survey it on its drawing" }).click();
    await page.getByText("Nothing yet.").waitFor();
    await find(page, "crack", "serious", [
      [0.3, 0.86],
      [0.3, 0.94],
    ]);
    await page.getByRole("radio", { name: "Inside, top" }).check();
    await find(page, "brace loose", "moderate", [
      [0.6, 0.75],
      [0.7, 0.85],
    ]);
    await look("2-surveyed");

    // Diagnosis and choice.
    await visit(page, visitPath);
    await page.getByRole("link", { name: "Decide and work" }).click();
    await page.getByRole("heading", { name: "What is behind it" }).waitFor();
    await page.getByLabel("Recorded as").fill("Ada");
    const crack = await choose(page, /Open crack or seam glued/);
    await choose(page, /Loose (back brace|brace under the top)/);
    expect(await page.getByText("Work sheet: The owner has said yes to no repair yet.").count()).toBe(1);
    await look("3-chosen");

    // The estimate, one line refused.
    await page.getByRole("button", { name: "Put 2 lines before the owner" }).click();
    await page
      .getByText(/as 2026-000\d:/)
      .first()
      .waitFor();
    const estimateLink = page.getByRole("link", { name: /^Print A4 \(Estimate 2026-/ });
    const estimate = await fetched(estimateLink, `estimate-${name}`);
    const asked = textOf(estimate);
    expect(asked).toContain("The ways to go, side by side");
    expect(asked).toContain("Finding 1: crack");
    await page.getByRole("button", { name: /^Owner says yes to Open crack or seam/ }).click();
    await page.locator("b", { hasText: / said yes$/ }).waitFor();
    await page.getByRole("button", { name: /^Owner says no to Loose/ }).click();
    await page.locator("b", { hasText: / said no$/ }).waitFor();
    expect(textOf(await fetched(estimateLink, `estimate-${name}-again`))).toBe(asked);
    const answered = await fetched(
      page.getByRole("link", { name: "Print A4 (Estimate)", exact: true }),
      `answered-${name}`,
    );
    expect(textOf(answered)).toContain("Nobody Real, 20 Feb 2026");
    await look("4-agreed");

    // Work by the clock, with the bench's own sheet.
    const sheet = textOf(await fetched(page.getByRole("link", { name: "Print A4 (Work sheet)" }), `sheet-${name}`));
    expect(sheet).toContain("Work sheet");
    expect(sheet).not.toContain("Loose back brace");
    for (let i = 0; i < 12 && (await crack.locator(".outcomes button").count()) > 0; i += 1) {
      const question = await crack.locator("h4").first().textContent();
      await crack.locator(".outcomes button").first().click();
      await expect.poll(async () => (await crack.locator("h4").allTextContents())[0]).not.toBe(question);
    }
    if ((await page.getByText("Changed since it was offered").count()) > 0) {
      await page.getByRole("button", { name: "Put 1 line before the owner" }).click();
      await page.getByText("no answer yet.").waitFor();
      await page.getByRole("button", { name: /^Owner says yes to Open crack or seam/ }).click();
    }
    await expect.poll(() => crack.textContent()).toContain("the owner said yes");
    expect(await work(crack)).toBeGreaterThan(0);
    await look("5-worked");

    // As left, the papers that go home, and collection.
    await visit(page, visitPath);
    await read(page, "as left", { action12_bass: "2.5 mm", action12_treble: "2 mm", body_humidity: "48" });
    await page.getByRole("link", { name: "Decide and work" }).click();
    await page.getByRole("button", { name: "Give the report" }).click();
    const given = page.getByRole("link", { name: /^Print A4 \(Owner’s report 2026-/ });
    await given.waitFor();
    const report = await fetched(given, `report-${name}`);
    const told = textOf(report);
    for (const words of [
      called,
      "What was found",
      "Crack",
      "Brace loose",
      "you said no to it",
      "Before and after",
      "48 % RH",
      "The year ahead",
      "Keep the air round it between",
    ]) {
      expect(told).toContain(words);
    }
    const photos = execFileSync("pdfimages", ["-list", report], { encoding: "utf8" });
    expect(photos.match(/ jpeg /g)?.length).toBe(2);
    await page.getByRole("button", { name: "Issue the invoice" }).click();
    const bill = page.getByRole("link", { name: /^Print A4 \(Invoice 2026-/ });
    await bill.waitFor();
    const billed = textOf(await fetched(bill, `invoice-${name}`));
    expect(billed).toContain("Open crack or seam glued");
    expect(billed).not.toContain("Loose");
    await page.getByRole("button", { name: "Hand it over today" }).click();
    await page.getByText(/Went home on 20 Feb 2026/).waitFor();
    await look("6-collected");

    // The same report as a page.
    const asPage = await page.getByRole("link", { name: /^Look at it \(Owner’s report 2026-/ }).getAttribute("href");
    await visit(page, asPage ?? "");
    await page.getByRole("heading", { name: "Report on your instrument" }).waitFor();
    await look("7-report");
    expect(complaints).toEqual([]);
  } finally {
    await context.close();
  }
});
