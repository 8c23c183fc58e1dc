/** Lays packed copies beside every built file that packing makes smaller, so that the program need not pack what it sends. */
import { readdir, readFile, writeFile } from "node:fs/promises";
import { brotliCompressSync, gzipSync } from "node:zlib";

const built = new URL("../dist/", import.meta.url);

for (const file of await readdir(built, { recursive: true, withFileTypes: true })) {
  if (!file.isFile() || /\.(gz|br)$/.test(file.name)) continue;
  const path = `${file.parentPath ?? file.path}/${file.name}`;
  const plain = await readFile(path);
  const packed = gzipSync(plain, { level: 9 });
  if (packed.length > 0.9 * plain.length) continue;
  await writeFile(`${path}.gz`, packed);
  await writeFile(`${path}.br`, brotliCompressSync(plain));
}
