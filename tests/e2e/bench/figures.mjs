// Medians and the like of times in milliseconds.

/** The time that so many of a hundred do not pass, one of those measured (nearest rank). */
export function percentile(times, percent) {
  const sorted = [...times].sort((a, b) => a - b);
  return sorted[Math.max(0, Math.ceil((percent / 100) * sorted.length) - 1)];
}

export const median = (times) => percentile(times, 50);

const ms = (time) => `${time.toFixed(0)} ms`;

/** A line for each name with its times: how many, the middle ones, the slow ones. */
export function table(rows) {
  const columns = [["median", 50], ["quarter", 25], ["to quarter", 75], ["98 in 100", 98]];
  const line = (name, runs, cells) => {
    const padded = cells.map((cell) => cell.padStart(12));
    return name.padEnd(32) + String(runs).padStart(6) + padded.join("");
  };
  const head = line("", "times", columns.map(([title]) => title));
  const cells = (times) => columns.map(([, percent]) => ms(percentile(times, percent)));
  const body = rows.map(([name, times]) => line(name, times.length, cells(times)));
  return [head, ...body].join("\n");
}

/** A sentence for each budget, and whether all are met. */
export function judged(budgets) {
  const met = ([, took, most]) => took <= most;
  const sentence = (budget) => {
    const [what, took, most] = budget;
    return `Budget of ${ms(most)} ${what}: ${met(budget) ? "met" : `NOT met, it took ${ms(took)}`}.`;
  };
  return { told: budgets.map(sentence).join("\n"), holds: budgets.every(met) };
}

/** A sentence for the middle score of each category, and whether all are as wanted. */
export function scored(scores, wanted) {
  const middle = Object.entries(scores).map(([name, all]) => [name, median(all), wanted[name]]);
  const sentence = ([name, is, least]) => `Lighthouse, ${name}: ${is} of 100, ${least} wanted.`;
  return { told: middle.map(sentence).join("\n"), holds: middle.every(([, is, least]) => least <= is) };
}
