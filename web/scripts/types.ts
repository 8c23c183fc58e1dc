import { writeFile } from "node:fs/promises";
import { fileURLToPath } from "node:url";
import { startShop } from "../tests/browser/shop";
import { type ApiDocument, apiTypes } from "./apiTypes";

const target = fileURLToPath(new URL("../src/api/types.ts", import.meta.url));

const shop = await startShop();
try {
  const document = (await (await fetch(`${shop.address}/api/openapi.json`)).json()) as ApiDocument;
  await writeFile(target, await apiTypes(document));
} finally {
  await shop.stop();
}
