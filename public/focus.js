// The keyboard's place must not be lost. Where what has the focus goes away or can no longer be
// pressed, what stands in its place has it, and on another screen its title, which names the
// page as well.
const app = document.getElementById("app");
const root = document.documentElement;
const name = document.title;
const reached = (within) => [...within.querySelectorAll("a[href], button, summary, input")];

let last = null;
addEventListener("focusin", ({ target }) => {
  const within = [];
  for (let one = target.parentElement; one; one = one.parentElement) within.push(one);
  last = { target, within, before: reached(app), title };
});

let title = null;
const isGone = ({ target }) => !target.isConnected || target.disabled || target.closest("[hidden]");

/** What stands where the last one stood: the next in its place, or else the one before. */
const inPlace = ({ target, within, before }) => {
  const home = within.find((one) => one.isConnected);
  const outside = before.filter(
    (one) => one.isConnected && home.compareDocumentPosition(one) & Node.DOCUMENT_POSITION_PRECEDING,
  );
  const at = before.indexOf(target) - outside.length;
  const now = reached(home);
  const all = [...now.slice(at), ...now.slice(0, at).reverse()];
  return all.map((one) => one.closest("details:not([open])")?.querySelector("summary") ?? one);
};

const look = () => {
  if (!last || document.activeElement !== document.body || !isGone(last)) return;
  const isAnother = title && title !== last.title;
  if (isAnother) title.tabIndex = -1;
  const tried = isAnother ? [title] : inPlace(last);
  tried.find((one) => {
    one.focus({ preventScroll: isAnother });
    return one === document.activeElement;
  });
};

const changed = () => {
  const now = app.querySelector("h1");
  if (now && now !== title) {
    title = now;
    document.title = `${now.textContent} – ${root.dataset.name || name}`;
  }
  // The browser takes the focus away only when it draws.
  if (last && isGone(last)) requestAnimationFrame(() => setTimeout(look));
};

new MutationObserver(changed).observe(app, {
  attributeFilter: ["disabled", "hidden"],
  childList: true,
  subtree: true,
});
changed();
