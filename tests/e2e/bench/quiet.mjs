// Other work on the machine falls on what is measured, and on nothing else as hard as on that.
import { cpus } from "node:os";
import { setTimeout as wait } from "node:timers/promises";

/** As much of the machine as may be at work elsewhere, and how long a look at it takes. */
const BUSY_MOST = 0.15;
const LOOK_MS = 300;
const PATIENCE_MS = 3_000;

/** All processors together: milliseconds idle and in all. */
const spent = () =>
  cpus()
    .map(({ times }) => times)
    .map(({ idle, ...busy }) => [idle, idle + busy.user + busy.nice + busy.sys + busy.irq])
    .reduce(([idle, all], [moreIdle, more]) => [idle + moreIdle, all + more]);

/** Waits for the machine, a browser just started too, to be at rest; false if it would not. */
export async function quiet() {
  const end = performance.now() + PATIENCE_MS;
  while (performance.now() < end) {
    const [idle, all] = spent();
    await wait(LOOK_MS);
    const [idleNow, allNow] = spent();
    if (1 - (idleNow - idle) / (allNow - all) <= BUSY_MOST) return true;
  }
  return false;
}
