// What the desk says about a file, in the words of the app's screens.
import { execFile } from "node:child_process";
import { writeFile } from "node:fs/promises";
import { fileURLToPath } from "node:url";
import { promisify } from "node:util";
import { test } from "@playwright/test";

const root = fileURLToPath(new URL("../../../", import.meta.url));
const run = promisify(execFile);

/** The desk as this source tree has it; the first call may have to build it. */
export async function assess(text) {
  const file = test.info().outputPath("session.json");
  await writeFile(file, text);
  const args = ["run", "--quiet", "--package", "desk", "--", "assess", file];
  const { stdout } = await run("cargo", args, { cwd: root, maxBuffer: 2 ** 26 });
  return JSON.parse(stdout);
}

const KIND = { bore: "Bore", piston: "Piston", main_journal: "Main journal", rod_journal: "Rod journal" };
const QUANTITY = {
  size: "Size",
  wear: "Wear",
  out_of_round: "Out-of-round",
  taper: "Taper",
  barrel: "Barrel or hour-glass",
  clearance: "Piston-to-wall",
};
const LEVEL = {
  top: "top",
  middle: "middle",
  bottom: "bottom",
  reference: "unworn reference",
  first: "first end",
  centre: "centre",
  last: "last end",
};
const DIRECTION = {
  bore: { 0: "thrust", 90: "along the crank" },
  main_journal: { 0: "in line with throw 1", 90: "across throw 1" },
  rod_journal: { 0: "in line with the throw", 90: "across the throw" },
};

const GUIDE = {
  inside_strictest_rule: "inside the strictest common rule",
  outside_loosest_rule: "outside the loosest common rule",
  rules_disagree: "common rules disagree, ask the shop",
};

/** The report's findings as [feature, label, value, words, guide], as the screens put them. */
export function asShown(report) {
  const rows = report.findings.map((finding) => {
    const [kind, position] = finding.feature.split("/");
    const named = `${KIND[kind]} ${position}`;
    const guide = finding.guide ? GUIDE[finding.guide.word] : "";
    return [named, label(kind, finding), value(finding), words(finding), guide];
  });
  return rows.sort(byFeature);
}

/** What the findings screen shows, in the same shape. */
export function asRows(findings) {
  const rows = findings.flatMap(({ feature, rows }) =>
    rows.map((row) => [feature, row.label, row.value, row.words, row.guide]),
  );
  return rows.sort(byFeature);
}

// The screen has the worst first, the report the order of measuring.
const byFeature = ([a], [b]) => a.localeCompare(b);

function label(kind, { quantity, which }) {
  const name = QUANTITY[quantity];
  if (quantity === "barrel") return name;
  const [at, where, degrees] = which.split("/");
  if (at === "at") return `${name}, ${LEVEL[where]}${degrees === "45" ? " (45° pair)" : ""}`;
  if (which === "along/means") return `${name}, between the means of the ends`;
  if (at === "along") return `${name}, ${DIRECTION[kind][where]}`;
  if (quantity === "wear" || (kind === "piston" && quantity === "size")) return name;
  if (quantity === "clearance") return `${name}, ${which === "smallest" ? "least" : "greatest"}`;
  return `${name}, ${which}`;
}

const isShape = (quantity) => ["out_of_round", "taper", "barrel"].includes(quantity);
const isNothing = (text) => /^-?0\.0*$/.test(text);

function value({ quantity, which, value: text, exact, unit }) {
  if (text === null) return "—";
  const signed = isShape(quantity) && which !== "fitted";
  const plus = signed && !text.startsWith("-") && !isNothing(text) ? "+" : "";
  return `${exact ? "" : "≈ "}${plus}${text.replace("-", "−")} ${unit}`;
}

const VERDICT = {
  within_new_limits: "within new limits",
  within_service_limit: "within service limit",
  too_close_to_call: "too close to call",
  do_not_assemble: "too close to call: do not assemble, have it measured",
  not_seen_all_round: "not seen all round: other directions were not read",
  no_limit_given: "no limit given",
};

/** The verdict; what is proved to be outside is told by what it reads, as is what decides nothing. */
function words(finding) {
  const { verdict } = finding;
  if (verdict in VERDICT) return VERDICT[verdict];
  return verdict ? reads(finding).replace("reads ", "") : reads(finding);
}

function reads({ quantity, comparison, beyond_by: by, value: text, exact, unit }) {
  const amount = () => {
    const way = by.startsWith("-") ? " (too small)" : " (too large)";
    return `by ${exact ? "" : "≈ "}${by.replace("-", "")} ${unit}${isShape(quantity) ? "" : way}`;
  };
  switch (comparison) {
    case "inside_new_limits":
      return "reads inside new limits";
    case "inside_service_limit":
      return "reads inside service limit";
    case "beyond_limit":
      return `reads beyond limit ${amount()}`;
    case "outside_new_limits":
      return `reads outside new limits ${amount()}`;
    case "no_limit_given":
      return "no limit given";
    case "not_measured":
      return quantity === "wear" && text === null ? "needs an unworn reference" : "not measured";
    default:
      throw new Error(`a comparison without words: ${comparison}`);
  }
}
