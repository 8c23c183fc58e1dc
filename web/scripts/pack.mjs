/** Lays a packed copy beside every built file that packing makes smaller, so that the program need not pack what it sends. */
import { readdir, readFile, writeFile } from "node:fs/promises";
import { gzipSync } from "node:zlib";

const built = new URL("../dist/", import.meta.url);

for (const file of await readdir(built, { recursive: true, withFileTypes: true })) {
  if (!file.isFile() || file.name.endsWith(".gz")) continue;
  const path = `${file.parentPath ?? file.path}/${file.name}`;
  const plain = await readFile(path);
  const packed = gzipSync(plain, { level: 9 });
  if (packed.length < 0.9 * plain.length) await writeFile(`${path}.gz`, packed);
}
