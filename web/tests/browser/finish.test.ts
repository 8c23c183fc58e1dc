import { Buffer } from "node:buffer";
import type { Browser, Page } from "playwright-core";
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

beforeAll(async () => {
  [shop, browser] = await Promise.all([startShop("2026-02-20"), startBrowser()]);
});

afterAll(async () => {
  await browser?.close();
  await shop?.stop();
});

async function post(path: string, body: unknown): Promise<number> {
  const answer = await fetch(`${shop.address}/api/${path}`, {
    method: "POST",
    headers: { "content-type": "application/json" },
    body: JSON.stringify(body),
  });
  expect(answer.status).toBe(200);
  return ((await answer.json()) as { id: number }).id;
}

async function photo(page: Page, colour: string): Promise<Buffer> {
  const bytes = await page.evaluate(async (fill) => {
    const canvas = document.createElement("canvas");
    canvas.width = 160;
    canvas.height = 120;
    const pen = canvas.getContext("2d");
    if (!pen) throw new Error("no canvas");
    pen.fillStyle = fill;
    pen.fillRect(0, 0, 160, 120);
    const blob = await new Promise<Blob | null>((done) => canvas.toBlob(done, "image/jpeg", 0.95));
    return [...new Uint8Array((await blob?.arrayBuffer()) ?? new ArrayBuffer(0))];
  }, colour);
  return Buffer.from(bytes);
}

const sizes = [
  { name: "phone", viewport: phone },
  { name: "desktop", viewport: desktop },
] as const;

test.each(sizes)(
  "a coat waits for the air, and a colour tried is found again, on a $name",
  async ({ name, viewport }) => {
    const { context, page, complaints } = await openPage(browser, shop.address, viewport);
    try {
      const instrument = name === "phone" ? 2 : 3;
      const id = await post("visits", {
        instrument_id: instrument,
        date: "2026-02-20",
        reason: "A chip in the finish.",
      });
      await post(`visits/${id}/jobs`, { procedure: "finish_touch_up" });
      await visit(page, `/visits/${id}/work`);
      await page.getByRole("link", { name: "Coats and colours" }).click();
      await page.getByRole("heading", { name: "Finish", level: 1 }).waitFor();

      const unread = page
        .getByText("The shop’s air was not read yet today.")
        .or(page.getByText("The shop's air was not read yet today."));
      if ((await unread.count()) > 0) await shoot(page, `finish-0-unread-${name}`);
      else await page.getByText("Read the air again").click();
      await page.getByLabel("Humidity, %").fill("38");
      await page.getByLabel("Temperature, °C").fill("21");
      await page.getByRole("button", { name: "Keep the air as read now" }).click();
      await page.getByRole("figure", { name: "Air over its dew point" }).waitFor();
      await page.getByLabel("Finish", { exact: true }).selectOption("nc_lacquer");
      await page.getByText(/^(Go|A trial panel first): /).waitFor();
      await page.getByLabel("Instrument, °C").fill("14");
      await page
        .getByText(/The work is colder than the air/)
        .first()
        .waitFor();
      await page.getByLabel("Instrument, °C").fill("");
      await page.getByText(/^(Go|A trial panel first): /).waitFor();
      expect(await page.getByText("Caution:", { exact: true }).count()).toBeGreaterThan(0);

      const began = Date.now();
      await page.getByLabel(/^Mix/).fill("amber 6 drops, red-brown 1 drop in 30 ml");
      await page.getByLabel(/^Tried on/).fill("spruce offcut, one coat of shellac");
      await page.getByLabel("Dilution").fill("1 : 1 with thinner");
      await page
        .locator("#trials ~ * input[type=file]:not([capture])")
        .first()
        .setInputFiles({
          name: "panel.jpg",
          mimeType: "image/jpeg",
          buffer: await photo(page, name === "phone" ? "#c08030" : "#b07030"),
        });
      await page.getByAltText("Photo 1 of this trial").waitFor();
      await page.getByRole("button", { name: "Keep the trial" }).click();
      await page.getByRole("button", { name: /^How it dried/ }).waitFor();
      expect(Date.now() - began).toBeLessThan(60_000);

      await page.getByRole("button", { name: /^How it dried/ }).click();
      await page.getByLabel("Dry, and in which light").last().fill("right by daylight, a shade red by lamp");
      await page.getByRole("radio", { name: "keep" }).last().check();
      await page.getByRole("button", { name: "Keep what became of it" }).click();
      await page.getByText("1 earlier word").waitFor();
      await shoot(page, `finish-1-${name}`);
      expect(await layoutTrouble(page)).toEqual([]);
      expect(await overlappingWords(page)).toEqual([]);
      expect(await accessibilityTrouble(page)).toEqual([]);

      const other = await post("visits", { instrument_id: 4, date: "2026-02-20" });
      await visit(page, `/visits/${other}/finish`);
      await page.getByText("None for this instrument yet.").waitFor();
      await page.getByRole("radio", { name: "of any" }).check();
      await page.getByRole("searchbox").fill("red-brown");
      await page
        .getByRole("button", { name: /^Use this mix again/ })
        .first()
        .click();
      expect(await page.getByLabel(/^Mix/).inputValue()).toContain("amber 6 drops");
      expect(complaints).toEqual([]);
    } finally {
      await context.close();
    }
  },
);

test.each(sizes)(
  "cleats are drawn along the crack of the survey and counted in its job, on a $name",
  async ({ name, viewport }) => {
    const { context, page, complaints } = await openPage(browser, shop.address, viewport);
    try {
      const id = await post("visits", { instrument_id: name === "phone" ? 2 : 3, date: "2026-02-20" });
      const finding = await post(`visits/${id}/findings`, {
        kind: "crack",
        view: "front",
        shape: "line",
        points: [
          { x_mm: 250, y_mm: 95 },
          { x_mm: 430, y_mm: 95 },
        ],
        extents: [{ measure: "thickness_at_crack", value_mm: "2.7 mm" }],
      });
      await post(`visits/${id}/jobs`, { procedure: "top_crack", finding_id: finding });
      await visit(page, `/visits/${id}/work`);
      await page.getByText("as at the finding").first().waitFor();
      await page.getByRole("link", { name: "Cleats", exact: true }).click();
      await page.getByRole("heading", { name: "Cleats", level: 1 }).waitFor();
      await page.getByText(/cleats of spruce, .* thick, grain across the crack/).waitFor();
      await shoot(page, `cleats-${name}`);
      expect(await layoutTrouble(page)).toEqual([]);
      expect(await accessibilityTrouble(page)).toEqual([]);
      const count = page.getByRole("button", { name: /^Count \d+ in/ });
      if ((await count.count()) > 0) {
        await count.click();
        await page.getByText(/^Open crack or seam glued, with cleats counts \d+\.$/).waitFor();
      }
      await page
        .getByRole("button", { name: /Show the numbers/ })
        .last()
        .click();
      await page.getByRole("columnheader", { name: "Reach" }).waitFor();
      expect(complaints).toEqual([]);
    } finally {
      await context.close();
    }
  },
);

test("a visit shows the instrument as it came", async () => {
  const { context, page, complaints } = await openPage(browser, shop.address, phone);
  try {
    const id = await post("visits", { instrument_id: 2, date: "2026-02-20", reason: "A buzz." });
    await visit(page, `/visits/${id}`);
    const arrival = page.getByRole("region", { name: "Photos of it as it came" });
    for (const [k, colour] of ["#806040", "#604020"].entries()) {
      await arrival.locator("input[type=file]:not([capture])").setInputFiles({
        name: `front${k}.jpg`,
        mimeType: "image/jpeg",
        buffer: await photo(page, colour),
      });
      await arrival.getByLabel(`What photo ${k + 1} shows`).waitFor();
    }
    await arrival.getByLabel("What photo 1 shows").fill("front, strings on");
    await arrival.getByLabel("What photo 1 shows").blur();
    await arrival.getByAltText("front, strings on").waitFor();
    await arrival.getByRole("button", { name: "Leave out photo 2" }).click();
    await arrival.getByLabel("What photo 2 shows").waitFor({ state: "detached" });
    await shoot(page, "visit-photos-phone");
    expect(await layoutTrouble(page)).toEqual([]);
    expect(await accessibilityTrouble(page)).toEqual([]);
    await page.reload({ waitUntil: "networkidle" });
    await arrival.getByAltText("front, strings on").waitFor();
    expect(complaints).toEqual([]);
  } finally {
    await context.close();
  }
});
