// Session files: those in the source tree, those with something wrong, and what they must hold to.
import { readFile, readdir } from "node:fs/promises";
import Ajv from "ajv/dist/2020.js";

const root = new URL("../../../", import.meta.url);
const read = (path) => readFile(new URL(path, root), "utf8");

export const sample = () => read("public/samples/hill-climb-six.json");

/** Climate, materials, repeats, and gauges that were checked again. */
export const conditions = () => read("tests/sessions/v1/conditions.json");

/** Every kind of feature, and all that is given or looked for besides readings. */
export const everyKind = () => read("tests/sessions/v1/every-kind.json");

/** Every session file in the source tree, as [name, text]. */
export async function sessionFiles() {
  const folders = ["public/samples/", "tests/sessions/v1/"];
  const found = [];
  for (const folder of folders) {
    for (const name of await readdir(new URL(folder, root))) {
      found.push([folder + name, await read(folder + name)]);
    }
  }
  return found;
}

/** What the published schema finds wrong with a file's text, as sentences; none if it holds. */
export async function schemaFaults(text) {
  const ajv = new Ajv({
    strict: true,
    strictTypes: true,
    strictTuples: true,
    strictRequired: true,
    allErrors: true,
  });
  const holds = ajv.compile(JSON.parse(await read("public/session-v1.schema.json")));
  if (holds(JSON.parse(text))) return [];
  return holds.errors.map((error) => `${error.instancePath} ${error.message}`);
}

/** The text of a session after a change to what it holds, without the check sum of before. */
export function changed(text, change) {
  const file = JSON.parse(text);
  delete file.check;
  change(file.session, file);
  return JSON.stringify(file);
}
