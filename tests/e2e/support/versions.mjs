// Makes a newer version of the built app, as a later build would.
import { createHash } from "node:crypto";
import { cp, readFile, rm, writeFile } from "node:fs/promises";
import { join } from "node:path";
import { fileURLToPath } from "node:url";
import { dist } from "./server.mjs";

const digest = (bytes) => `sha256-${createHash("sha256").update(bytes).digest("base64")}`;

/**
 * A copy of the app whose page has `data-version="name"` on its root element. Its worker
 * lists the changed page and has a name of its own, so browsers take it for an update.
 * Returns the folder.
 */
export async function newerVersion(name) {
  const folder = fileURLToPath(new URL(`../../../target/e2e/versions/${name}/`, import.meta.url));
  await rm(folder, { recursive: true, force: true });
  await cp(dist, folder, { recursive: true });

  const page = await readFile(join(folder, "index.html"), "utf8");
  const worker = await readFile(join(folder, "sw.js"), "utf8");
  const newPage = replaceOnce(page, "<html ", `<html data-version="${name}" `);
  const relisted = replaceOnce(worker, digest(page), digest(newPage));
  const newWorker = replaceOnce(relisted, /const BUILD = "[^"]*"/, `const BUILD = "${name}"`);
  await writeFile(join(folder, "index.html"), newPage);
  await writeFile(join(folder, "sw.js"), newWorker);
  return folder;
}

function replaceOnce(text, from, to) {
  const replaced = text.replace(from, () => to);
  if (replaced === text) throw new Error(`nothing to replace: ${from}`);
  return replaced;
}
