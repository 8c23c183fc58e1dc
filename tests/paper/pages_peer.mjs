// The shop's papers as pages, opened in a real browser: node pages_peer.mjs PROGRAM, where PROGRAM is tailblock;
// paper_test, which lies beside it, writes the invented papers. Each must be free of what axe finds, as wide as the
// window and no wider, on a telephone and on a desk, and print on sheets with nothing beside them.
import { execFileSync } from "node:child_process";
import { mkdtempSync, readdirSync, rmSync } from "node:fs";
import { createRequire } from "node:module";
import { tmpdir } from "node:os";
import { dirname, join } from "node:path";

const require = createRequire(new URL("../../web/package.json", import.meta.url));
const { chromium } = require("playwright-core");
const { AxeBuilder } = require("@axe-core/playwright");

const program = process.argv[2];
if (!program) {
  console.error("usage: node pages_peer.mjs PROGRAM");
  process.exit(2);
}

let faults = 0;
function fault(where, what) {
  console.error(`${where}: ${what}`);
  faults += 1;
}

async function check(page, folder, name, width) {
  const where = `${name} at ${width} px`;
  await page.goto(`file://${join(folder, name)}`);
  for (const { id, nodes } of (await new AxeBuilder({ page }).analyze()).violations) {
    fault(where, `${id}: ${nodes.map((node) => node.target).join(", ")}`);
  }
  const wide = await page.evaluate(() => document.documentElement.scrollWidth);
  if (wide > width) fault(where, `is ${wide} px wide`);
  await page.emulateMedia({ media: "print" });
  const fetched = await page.evaluate(() => performance.getEntriesByType("resource").length);
  if (fetched > 0) fault(where, `fetches ${fetched} files`);
  await page.emulateMedia({ media: "screen" });
}

const folder = mkdtempSync(join(tmpdir(), "tailblock-pages-"));
const browser = await chromium.launch({
  executablePath: process.env.CHROMIUM ?? "/usr/bin/chromium",
  args: ["--no-sandbox", "--disable-gpu", "--no-first-run"],
});
let seen = 0;
try {
  execFileSync(join(dirname(program), "paper_test"), ["--gtest_filter=Documents.are_written_where_*"], {
    env: { ...process.env, TAILBLOCK_SHOW_PAPER: folder },
  });
  const names = readdirSync(folder).filter((name) => name.endsWith(".html"));
  for (const [width, height] of [
    [1280, 900],
    [390, 844],
  ]) {
    const context = await browser.newContext({ viewport: { width, height } });
    const page = await context.newPage();
    for (const name of names) {
      await check(page, folder, name, width);
      seen += 1;
    }
    await context.close();
  }
} finally {
  await browser.close();
  rmSync(folder, { recursive: true });
}
if (seen < 12) fault("pages", `only ${seen} were seen`);
console.log(`  pages: ${seen} seen, ${faults} faults`);
process.exit(faults === 0 ? 0 : 1);
