// A static server that a journey can really stop, start again, and make misbehave.
import { createServer } from "node:http";
import { readFile, stat } from "node:fs/promises";
import { extname, join, normalize } from "node:path";
import { fileURLToPath } from "node:url";

export const dist = fileURLToPath(new URL("../../../target/dist/", import.meta.url));

export const TYPES = {
  ".css": "text/css; charset=utf-8",
  ".html": "text/html; charset=utf-8",
  ".js": "text/javascript; charset=utf-8",
  ".json": "application/json",
  ".png": "image/png",
  ".svg": "image/svg+xml",
  ".wasm": "application/wasm",
  ".webmanifest": "application/manifest+json",
};

/**
 * Serves `folder` on a free port of localhost, where workers are allowed.
 *
 *   site.url               the address, with a slash at its end
 *   site.requests          every path asked for so far, in order
 *   site.folder = other    serve another folder from now on, as an upload of a new version does
 *   site.override(path, answer)
 *                          answer(request, response) handles this path; null ends that
 *   await site.stop()      no connection survives this
 *   await site.start()     on the same port again
 */
export async function startServer(folder = dist) {
  const overrides = new Map();
  let server;
  let port = 0;

  const site = {
    folder,
    requests: [],
    get url() {
      return `http://localhost:${port}/`;
    },
    override(path, answer) {
      if (answer) overrides.set(path, answer);
      else overrides.delete(path);
    },
    async start() {
      server = createServer(serve);
      await new Promise((resolve, reject) => {
        server.once("error", reject);
        server.listen(port, "localhost", resolve);
      });
      port = server.address().port;
    },
    async stop() {
      if (!server.listening) return;
      const closed = new Promise((resolve) => server.close(resolve));
      server.closeAllConnections();
      await closed;
    },
  };

  async function serve(request, response) {
    const path = decodeURIComponent(new URL(request.url, site.url).pathname);
    site.requests.push(path);
    const override = overrides.get(path);
    if (override) return override(request, response);
    // The URL is already free of "..", and normalize keeps it so on every system.
    let file = join(site.folder, normalize(path));
    try {
      if ((await stat(file)).isDirectory()) file = join(file, "index.html");
      const body = await readFile(file);
      response.writeHead(200, {
        "Content-Type": TYPES[extname(file)] ?? "application/octet-stream",
        "Cache-Control": "no-cache",
      });
      response.end(body);
    } catch {
      response.writeHead(404, { "Content-Type": "text/plain" });
      response.end("404 Not Found");
    }
  }

  await site.start();
  return site;
}
