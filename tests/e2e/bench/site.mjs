// The built app as a good host would send it, and an empty page to compare with.
import { readdirSync, readFileSync } from "node:fs";
import { extname, join, relative } from "node:path";
import { brotliCompressSync, constants } from "node:zlib";
import { TYPES, dist, startServer } from "../support/server.mjs";

/** Every file of the build, compressed once, ahead of time. */
export async function appSite() {
  const site = await startServer();
  const files = readdirSync(dist, { recursive: true, withFileTypes: true }).filter((item) => item.isFile());
  for (const item of files) {
    const file = join(item.parentPath ?? item.path, item.name);
    const path = `/${relative(dist, file).replaceAll("\\", "/")}`;
    const body = brotliCompressSync(readFileSync(file), {
      params: { [constants.BROTLI_PARAM_QUALITY]: 11 },
    });
    const head = {
      "Content-Type": TYPES[extname(file)] ?? "application/octet-stream",
      "Content-Encoding": "br",
      "Content-Length": body.length,
      "Cache-Control": "no-cache",
    };
    const answer = (_, response) => response.writeHead(200, head).end(body);
    site.override(path, answer);
    if (path === "/index.html") site.override("/", answer);
  }
  return site;
}

/** One element that answers a touch. What it takes is the browser's and the machine's. */
export async function emptySite() {
  const site = await startServer();
  const page = `<!doctype html>
    <meta name="viewport" content="width=device-width">
    <button aria-label="touch" style="width: 100%; height: 50vh; font-size: 3rem">0</button>
    <script>
      const button = document.querySelector("button");
      button.addEventListener("pointerdown", () => { button.textContent = Number(button.textContent) + 1; });
    </script>`;
  site.override("/", (_, response) => response.writeHead(200, { "Content-Type": "text/html" }).end(page));
  return site;
}
