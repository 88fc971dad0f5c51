// The theme, before anything is painted in the wrong one.
try {
  document.documentElement.dataset.theme = localStorage.getItem("fenderbench/theme") ?? "sun";
} catch {
  document.documentElement.dataset.theme = "sun";
}

// The screens that a start does not need are a module of their own, which is loaded once the
// app stands. It uses the app's memory and functions and puts its own into the app's table.
//
//   <html data-later="…">   here, or failed: the event "fenderbench-later" tells of a change
//
// A development build has all in one.
const keepLater = async (app, program) => {
  const say = (state) => {
    document.documentElement.dataset.later = state;
    dispatchEvent(new Event("fenderbench-later"));
  };
  if (!app.table) return say("here");
  for (const wait of [0, 2_000, 10_000]) {
    await new Promise((done) => setTimeout(done, wait));
    try {
      const answer = await fetch(program.replace("_bg.wasm", "_later.wasm"));
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
  import("./hands.js").catch(console.error);
} catch (error) {
  console.error(error);
  dispatchEvent(new Event("fenderbench-no-start"));
}
