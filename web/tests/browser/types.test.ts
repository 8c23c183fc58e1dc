import { readFile } from "node:fs/promises";
import { expect, test } from "vitest";
import { type ApiDocument, apiTypes } from "../../scripts/apiTypes";
import { inTrade } from "../../src/trade/length";
import { startShop } from "./shop";

test("the types the pages are written against are those of the program", async () => {
  const shop = await startShop();
  try {
    const document = (await (await fetch(`${shop.address}/api/openapi.json`)).json()) as ApiDocument;
    const kept = await readFile(new URL("../../src/api/types.ts", import.meta.url), "utf8");
    expect(await apiTypes(document), "run `npm run types`").toBe(kept);
  } finally {
    await shop.stop();
  }
});

test("lengths are printed as the program prints them", async () => {
  const shop = await startShop();
  try {
    const cases = Array.from({ length: 400 }, (_, i) => Math.round((i * 0.0837 - 3) * 1000) / 1000);
    for (const mm of [...cases, 3.175, 0.3175, 25.4, 645]) {
      const read = (await (await fetch(`${shop.address}/api/read-length?unit=mm&text=${mm}mm`)).json()) as {
        sixty_fourths: string;
        thousandths: string;
        mm_text: string;
      };
      expect(inTrade(mm), `${mm} mm`).toEqual({
        sixtyFourths: read.sixty_fourths,
        thousandths: read.thousandths,
        mm: read.mm_text,
      });
    }
  } finally {
    await shop.stop();
  }
});
