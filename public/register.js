// Registers the service worker and tells the app how things stand:
//
//   <html data-worker="…">   none      this browser or address has no workers
//                            failed    the offline copy could not be made
//                            ready     the page works without a network
//                            waiting   a newer version waits for the person's consent
//                            replaced  another page took the newer version over; reload this one
//
//
//   <html data-rest="kept">  so are the drawings and samples, which a start does not need
//
// Each change of the first fires "fenderbench-worker" on window. The app answers a person's consent with
// the event "fenderbench-take-over": the newer version takes over and the page reloads once.
(() => {
  const root = document.documentElement;
  const say = (state) => {
    if (root.dataset.worker === state) return;
    root.dataset.worker = state;
    dispatchEvent(new Event("fenderbench-worker"));
  };

  // Undefined on plain-http addresses other than localhost, and in some private windows.
  const workers = navigator.serviceWorker;
  if (!workers) {
    say("none");
    return;
  }

  let registration;
  let reloading = false;

  // Nothing of this competes with a start. A version that waits is asked too, so that nothing is
  // missing once it has taken over.
  let resting = false;
  const keepRest = () => {
    if (!resting) return;
    for (const worker of [registration.waiting, registration.active]) worker?.postMessage({ type: "rest" });
  };

  const look = () => {
    keepRest();
    if (root.dataset.worker === "replaced") return;
    if (registration.waiting && registration.active) say("waiting");
    else if (registration.active) say("ready");
  };

  const follow = (worker) => {
    worker?.addEventListener("statechange", () => {
      if (worker.state === "redundant" && !registration.active) say("failed");
      else look();
    });
  };

  const register = async () => {
    try {
      registration = await workers.register("sw.js", { updateViaCache: "none" });
    } catch {
      // Without a network an older worker may still be in charge of this page.
      registration = await workers.getRegistration();
      if (!registration) return say("failed");
    }
    setTimeout(() => {
      resting = true;
      keepRest();
    }, 5_000);
    follow(registration.installing);
    registration.addEventListener("updatefound", () => follow(registration.installing));
    look();

    // An installed app may stay open for weeks, so the start alone is not enough.
    const check = () => registration.update().then(look, () => {});
    document.addEventListener("visibilitychange", () => {
      if (document.visibilityState === "visible") check();
    });
    setInterval(check, 6 * 60 * 60 * 1000);
  };

  // The page shows itself first; the offline copy can wait for that.
  if (document.readyState === "complete") register();
  else addEventListener("load", register);

  workers.addEventListener("message", ({ data, source }) => {
    if (data?.type === "rest" && source === registration?.active) root.dataset.rest = "kept";
  });

  // The first worker claims a page that had none, which changes nothing for it. Any later
  // change means that this page's code is older than its worker.
  let controlled = Boolean(workers.controller);
  workers.addEventListener("controllerchange", () => {
    if (reloading) location.reload();
    else if (controlled) say("replaced");
    controlled = true;
  });

  // A worker that does not take over must not leave the person with an endless banner. With
  // the server in reach the offline copy is dropped and made anew; data is never touched.
  const startAfresh = async () => {
    const answer = await fetch("sw.js", { cache: "no-store" }).catch(() => null);
    if (!answer?.ok) {
      reloading = false;
      return look();
    }
    await registration.unregister();
    const ours = (await caches.keys()).filter((name) => name.startsWith(`fenderbench ${registration.scope} `));
    await Promise.all(ours.map((name) => caches.delete(name)));
    location.reload();
  };

  addEventListener("fenderbench-take-over", () => {
    if (reloading) return;
    if (root.dataset.worker === "replaced") return location.reload();
    if (!registration?.waiting) return;
    reloading = true;
    registration.waiting.postMessage({ type: "take-over" });
    setTimeout(startAfresh, 10_000);
  });
})();
