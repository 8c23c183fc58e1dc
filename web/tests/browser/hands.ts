import { Buffer } from "node:buffer";
import type { Page } from "playwright-core";
import { visit } from "./browser";

/** What hands do at the shop's pages in more than one story. */

/** Invented: a heated flat where winters are cold. Percent RH and degrees, January first. */
const humidity = [30, 29, 32, 37, 44, 52, 56, 55, 49, 42, 35, 31];

export async function newInstrument(page: Page, name: string): Promise<void> {
  await visit(page, "/instruments");
  await page.getByRole("link", { name: "New instrument" }).click();
  await page.getByLabel("What the shop calls it").fill(name);
  await page.getByLabel("Saddle slot").selectOption("closed");
  await page.getByLabel("Owner’s name").fill("Nobody Real");
  await page.getByLabel("What the shop calls the place").fill("a flat with radiators");
  for (const [i, month] of [
    "Jan",
    "Feb",
    "Mar",
    "Apr",
    "May",
    "Jun",
    "Jul",
    "Aug",
    "Sep",
    "Oct",
    "Nov",
    "Dec",
  ].entries()) {
    const field = page.getByLabel(`${month}, Humidity`);
    await field.fill(String(humidity[i]));
    await field.press("Tab");
  }
  await page.getByRole("button", { name: "Keep this instrument" }).click();
  await page.getByRole("heading", { level: 1 }).filter({ hasText: name }).waitFor();
}

/** A photo as a camera held on its side stores it: red, then blue below; upright, the red is at the right. */
export async function photoLyingOnItsSide(page: Page): Promise<Buffer> {
  const bytes = await page.evaluate(async () => {
    const canvas = document.createElement("canvas");
    canvas.width = 120;
    canvas.height = 80;
    const pen = canvas.getContext("2d");
    if (!pen) throw new Error("no canvas");
    pen.fillStyle = "#dc1414";
    pen.fillRect(0, 0, 120, 40);
    pen.fillStyle = "#1414dc";
    pen.fillRect(0, 40, 120, 40);
    const blob = await new Promise<Blob | null>((done) => canvas.toBlob(done, "image/jpeg", 0.95));
    return [...new Uint8Array((await blob?.arrayBuffer()) ?? new ArrayBuffer(0))];
  });
  // Exif, big-endian, one entry: orientation 6, "the 0th row is the visual right-hand side".
  const tiff = [0x4d, 0x4d, 0, 42, 0, 0, 0, 8, 0, 1, 0x01, 0x12, 0, 3, 0, 0, 0, 1, 0, 6, 0, 0, 0, 0, 0, 0];
  const body = [...Buffer.from("Exif\0\0", "latin1"), ...tiff];
  const segment = [0xff, 0xe1, 0, body.length + 2, ...body];
  return Buffer.from([...bytes.slice(0, 2), ...segment, ...bytes.slice(2)]);
}
