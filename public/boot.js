// The theme, before anything is painted in the wrong one.
try {
  document.documentElement.dataset.theme = localStorage.getItem("fenderbench/theme") ?? "sun";
} catch {
  document.documentElement.dataset.theme = "sun";
}

// The screens that a start does not need are a module and styles of their own, which are loaded
// once the app stands. The module uses the app's memory and functions and puts its own into the
// app's table.
//
//   <html data-later="…">   here, or failed: the event "fenderbench-later" tells of a change
//
// A development build has all in one.
const styleLater = () =>
  new Promise((onload, failed) => {
    const first = document.querySelector('link[rel="stylesheet"]');
    const href = first.href.replace(".css", "-later.css");
    const onerror = () => (style.remove(), failed(new Error(href)));
    const style = Object.assign(document.createElement("link"), { rel: "stylesheet", href, onload, onerror });
    first.after(style);
  });

const keepLater = async (app, program) => {
  const say = (state) => {
    document.documentElement.dataset.later = state;
    dispatchEvent(new Event("fenderbench-later"));
  };
  if (!app.table) return say("here");
  // On a first visit whoever is quick touches the first keys before this is fetched.
  for (const wait of [navigator.serviceWorker?.controller ? 0 : 500, 2_000, 10_000]) {
    await new Promise((done) => setTimeout(done, wait));
    try {
      const styled = document.querySelector('link[href$="-later.css"]') ?? styleLater();
      const [answer] = await Promise.all([fetch(program.replace("_bg.wasm", "_later.wasm")), styled]);
      if (!answer.ok) throw new Error(`status ${answer.status}`);
      await WebAssembly.instantiate(await answer.arrayBuffer(), { a: app });
      return say("here");
    } catch (error) {
      console.error(error);
    }
  }
  say("failed");
};

// Starts the app. The two preload links, which the build writes, name the glue and the
// program, so both are already on their way when this runs.
try {
  const glue = document.querySelector('link[rel="modulepreload"]').href;
  const program = document.querySelector('link[rel="preload"][as="fetch"]').href;
  const { default: init } = await import(glue);
  const app = await init({ module_or_path: program });
  keepLater(app, program);
  for (const script of ["./focus.js", "./hands.js"]) import(script).catch(console.error);
} catch (error) {
  console.error(error);
  dispatchEvent(new Event("fenderbench-no-start"));
}
