// Stand-ins for what a headless browser has not: each writes down what it was asked for.

/** Before the page loads: sounds, shakes, a voice, and a lock that keeps the screen on. */
export async function watchPhone(page) {
  await page.addInitScript(() => {
    const heard = { sounds: [], shakes: [], said: [], cut: 0, contexts: 0, locks: 0, held: 0 };
    globalThis.heard = heard;
    globalThis.AudioContext = class {
      state = "suspended";
      destination = {};
      constructor() {
        heard.contexts += 1;
      }
      async resume() {
        this.state = "running";
      }
      async suspend() {
        this.state = "suspended";
      }
      createBuffer(channels, length, rate) {
        const samples = new Float32Array(length);
        return { samples, rate, getChannelData: () => samples };
      }
      createBufferSource() {
        return {
          connect() {},
          start() {
            heard.sounds.push({ rate: this.buffer.rate, samples: [...this.buffer.samples] });
          },
        };
      }
    };
    Object.defineProperty(Navigator.prototype, "vibrate", {
      configurable: true,
      value: (pattern) => heard.shakes.push([pattern].flat().join(" ")),
    });
    globalThis.SpeechSynthesisUtterance = class {
      constructor(text) {
        this.text = text;
      }
    };
    Object.defineProperty(globalThis, "speechSynthesis", {
      configurable: true,
      value: {
        speak: ({ lang, text }) => heard.said.push(`${lang}: ${text}`),
        cancel: () => (heard.cut += 1),
      },
    });
    Object.defineProperty(Navigator.prototype, "wakeLock", {
      configurable: true,
      value: {
        async request(kind) {
          heard.locks += 1;
          heard.held += 1;
          heard.kind = kind;
          let released = false;
          return {
            async release() {
              if (!released) heard.held -= 1;
              released = true;
            },
          };
        },
      },
    });
  });
}

/** What was asked for so far. */
export const heard = (page) => page.evaluate(() => globalThis.heard);
