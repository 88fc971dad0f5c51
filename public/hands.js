// What the phone does besides the screen: it shakes, sounds, speaks and stays awake. Nobody
// needs that for a start, so it comes once the app stands. What a browser lacks is left out.
//
// The app tells it by attributes of the root element:
//
//   <html data-measuring="…">  yes     somebody measures
//   <html data-felt="…">       key     one was taken; set anew with each
//                              entry   a reading, or another change of the session, was
//                              refusal it was not taken
//   <html data-say="…">        words to be said aloud; set anew each time
//
// and what is chosen for this phone: data-sound, data-awake.
const root = document.documentElement;
const { dataset } = root;

const isMeasuring = () => dataset.measuring === "yes" && !document.hidden;

// Milliseconds: shake, pause, shake.
const SHAKES = { key: [15], entry: [15], refusal: [40, 60, 40] };

// Sounds are stretches of a wave of two heights, which is heard best beside a compressor: half
// a wave and the stretch, in samples. Without a wave it is a pause.
const RATE_HZ = 8_000;
const HEIGHT = 0.25;
const SOUNDS = {
  // 1 333 Hz for 12 ms
  key: [[3, 96]],
  // 1 kHz for 40 ms, 1 333 Hz for 60 ms: upwards
  entry: [[4, 320], [3, 480]],
  // 250 Hz for 80 ms and for 120 ms, 50 ms between them: low and double
  refusal: [[16, 640], [0, 400], [16, 960]],
};

const wave = (stretches) =>
  stretches.flatMap(([half, length]) =>
    Array.from({ length }, (_, n) => (half ? HEIGHT - 2 * HEIGHT * (Math.floor(n / half) % 2) : 0)),
  );

let context;

const sound = (what) => {
  // Nothing sounds that would have to wait: it would come with all the others.
  if (dataset.sound !== "on" || context?.state !== "running") return;
  const samples = wave(SOUNDS[what]);
  const buffer = context.createBuffer(1, samples.length, RATE_HZ);
  buffer.getChannelData(0).set(samples);
  const source = context.createBufferSource();
  source.buffer = buffer;
  source.connect(context.destination);
  source.start();
};

// Browsers let a page sound only after a touch, some only from within one. So the sounds come
// with the end of the first; making them takes long enough to be in the way of its pixels.
const wake = () => {
  if (dataset.sound !== "on" || !isMeasuring() || navigator.userActivation?.hasBeenActive === false) return;
  if (context) return context.state === "running" || context.resume().catch(() => {});
  setTimeout(() => {
    context ??= globalThis.AudioContext && new AudioContext();
  });
};

let lock;

const stayAwake = async () => {
  try {
    const got = await navigator.wakeLock.request("screen");
    // It may come late, or be the second of two that were asked for.
    if (lock || !isMeasuring()) got.release();
    else lock = got;
  } catch {
    // No such thing here, or the battery is low: the phone does as it is set.
  }
};

const follow = () => {
  if (isMeasuring()) {
    wake();
    if (dataset.awake === "on" && !lock) stayAwake();
    return;
  }
  lock?.release();
  lock = null;
  context?.suspend().catch(() => {});
  globalThis.speechSynthesis?.cancel();
};

const say = (words) => {
  const voice = globalThis.speechSynthesis;
  if (!voice) return;
  voice.cancel();
  const said = new SpeechSynthesisUtterance(words);
  said.lang = "en";
  voice.speak(said);
};

const told = {
  "data-measuring": follow,
  "data-felt": () => {
    sound(dataset.felt);
    navigator.vibrate?.(SHAKES[dataset.felt]);
  },
  "data-say": () => say(dataset.say),
};

new MutationObserver((changes) => {
  for (const { attributeName } of changes) told[attributeName]();
}).observe(root, { attributeFilter: Object.keys(told) });

addEventListener("visibilitychange", follow);
addEventListener("pointerup", wake);
addEventListener("keyup", wake);
follow();
