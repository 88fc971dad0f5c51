// What is put into every page before its own scripts: when a touch was answered on the screen.
// Nothing of the app is changed for it.

export function instruments() {
  const answered = [];
  const keep = (list) => answered.push(...list.getEntries().filter(({ name }) => name === "pointerdown"));
  // The shortest that browsers tell, in milliseconds.
  const LEAST_MS = 16;
  new PerformanceObserver(keep).observe({ type: "event", durationThreshold: LEAST_MS });

  // The last of these is the largest; a touch ends them.
  let largest = 0;
  const grow = (list) => (largest = list.getEntries().at(-1).startTime);
  new PerformanceObserver(grow).observe({ type: "largest-contentful-paint", buffered: true });

  const text = (selector) => document.querySelector(selector)?.textContent ?? "";
  const frame = () => new Promise(requestAnimationFrame);
  /** The first moment after the frame under way has been drawn. */
  const drawn = () =>
    new Promise((resolve) => {
      const { port1, port2 } = new MessageChannel();
      port1.onmessage = () => resolve(performance.now());
      port2.postMessage(null);
    });
  const within = (ms, what, promise) => {
    const late = new Promise((_, reject) => setTimeout(reject, ms, new Error(`${what}: not in ${ms} ms`)));
    return Promise.race([promise, late]);
  };

  const placed = async (name) => {
    const called = (element) => (element.getAttribute("aria-label") ?? element.textContent.trim()) === name;
    for (;;) {
      const found = [...document.querySelectorAll("button, a")].find(called);
      found?.scrollIntoView({ block: "nearest" });
      const place = found?.getBoundingClientRect();
      if (place?.width) return place;
      await frame();
    }
  };

  let watched = null;

  /** The text of an element has changed, and what it is now has been drawn. */
  const watch = async (selector, before, wanted) => {
    const event = await new Promise((resolve) => addEventListener("pointerdown", resolve, { capture: true, once: true }));
    for (let frames = 1; ; frames += 1) {
      await frame();
      const now = text(selector);
      if (now !== before && now.includes(wanted)) return { touched: event.timeStamp, frames, shown: await drawn() };
    }
  };

  /** How long the browser itself says it took from a touch to the pixels, in steps of 8 ms. */
  const presented = async (touched, shown) => {
    for (let frames = 0; frames < 30; frames += 1) {
      const entry = answered.find(({ startTime }) => Math.abs(startTime - touched) < 0.2);
      if (entry) return entry.duration;
      await frame();
    }
    return Math.max(LEAST_MS, shown - touched);
  };

  globalThis.instruments = {
    /**
     * The middle of a button or link, as soon as it is there. With a selector, the next touch is
     * watched from then on, until the text of that element has changed for it.
     */
    async aim(name, selector, wanted) {
      const { x, y, width, height } = await placed(name);
      if (selector) {
        watched = within(10_000, `${name} changes ${selector}`, watch(selector, text(selector), wanted));
        // Asked for later; a refusal must not count as nobody's until then.
        watched.catch(() => {});
      }
      return [x + width / 2, y + height / 2];
    },

    /** How the watched touch was answered: both in milliseconds, from the touch and from the start. */
    async answer() {
      const { touched, frames, shown } = await watched;
      // Where the browser's own figure is of an earlier frame, ours counts.
      const took = frames === 1 ? await presented(touched, shown) : shown - touched;
      return { took, at: shown };
    },

    /** When something of the page was first painted, in milliseconds from the start. */
    async painted() {
      for (;;) {
        const [entry] = performance.getEntriesByName("first-contentful-paint");
        if (entry) return entry.startTime;
        await frame();
      }
    },

    /** When the largest part of the page was painted, of those before the first touch. */
    async largest() {
      while (!largest) await frame();
      return largest;
    },

    /** How long a fixed piece of work takes, in milliseconds, at its best. */
    work() {
      const times = [0, 0, 0, 0, 0].map(() => {
        const start = performance.now();
        let sum = 0;
        for (let n = 0; n < 5_000_000; n += 1) sum = (sum * 31 + n) | 0;
        return sum === 1 ? 0 : performance.now() - start;
      });
      return Math.min(...times);
    },
  };
}
