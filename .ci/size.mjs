// Prints the raw, gzip -9 and brotli -11 size and the name of every file in a folder,
// separated by tabs. Node brings both compressors.
import { readdirSync, readFileSync } from "node:fs";
import { join, relative } from "node:path";
import { brotliCompressSync, constants, gzipSync } from "node:zlib";

const folder = process.argv[2];
const files = readdirSync(folder, { recursive: true, withFileTypes: true })
  .filter((item) => item.isFile())
  .map((item) => relative(folder, join(item.parentPath ?? item.path, item.name)))
  .sort();

for (const name of files) {
  const bytes = readFileSync(join(folder, name));
  const gzip = gzipSync(bytes, { level: 9 });
  const brotli = brotliCompressSync(bytes, {
    params: { [constants.BROTLI_PARAM_QUALITY]: 11, [constants.BROTLI_PARAM_SIZE_HINT]: bytes.length },
  });
  console.log([bytes.length, gzip.length, brotli.length, name].join("\t"));
}
