// The theme, before anything is painted in the wrong one.
try {
  document.documentElement.dataset.theme = localStorage.getItem("fenderbench/theme") ?? "sun";
} catch {
  document.documentElement.dataset.theme = "sun";
}

// Starts the app. The two preload links, which the build writes, name the glue and the
// program, so both are already on their way when this runs.
try {
  const glue = document.querySelector('link[rel="modulepreload"]').href;
  const program = document.querySelector('link[rel="preload"][as="fetch"]').href;
  const { default: init } = await import(glue);
  await init({ module_or_path: program });
} catch (error) {
  console.error(error);
  dispatchEvent(new Event("fenderbench-no-start"));
}
