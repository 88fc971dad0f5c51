// The last resort: when the app stops or does not start, this offers the person's data as a
// file. It shares no code with the app, and it is written in the oldest JavaScript that
// still helps, because a browser too old for the app must be able to say so.
(function () {
  var root = document.documentElement;
  var NAME = "fenderbench";
  var START_MS = 15000;

  function started() {
    return root.dataset.started === "yes";
  }

  // ---- collecting -------------------------------------------------------------------

  function localRecords() {
    var found = {};
    for (var i = 0; i < localStorage.length; i += 1) {
      var key = localStorage.key(i);
      if (key.indexOf(NAME) === 0) found[key] = localStorage.getItem(key);
    }
    return found;
  }

  function storeRecords(database, name) {
    return new Promise(function (resolve, reject) {
      var records = [];
      var request = database.transaction(name).objectStore(name).openCursor();
      request.onerror = function () {
        reject(request.error);
      };
      request.onsuccess = function () {
        var cursor = request.result;
        if (!cursor) return resolve(records);
        records.push({ key: cursor.key, value: cursor.value });
        cursor.continue();
      };
    });
  }

  // Without a version an existing database opens as it is.
  function openDatabase() {
    return new Promise(function (resolve, reject) {
      var request = indexedDB.open(NAME);
      // There is none: an empty one left behind would keep the app from making its own.
      request.onupgradeneeded = function () {
        request.transaction.abort();
        resolve(null);
      };
      request.onerror = function () {
        reject(request.error);
      };
      request.onblocked = request.onerror;
      request.onsuccess = function () {
        resolve(request.result);
      };
    });
  }

  function journalRecords() {
    return openDatabase().then(function (database) {
      if (!database) return {};
      var found = {};
      var names = Array.prototype.slice.call(database.objectStoreNames);
      return Promise.all(
        names.map(function (name) {
          return storeRecords(database, name).then(function (records) {
            found[name] = records;
          });
        })
      ).then(function () {
        database.close();
        return found;
      });
    });
  }

  // One unreadable half must not cost the other: its error is written in its place.
  function attempt(read) {
    return new Promise(function (resolve) {
      resolve(read());
    }).catch(function (error) {
      return { unreadable: String(error) };
    });
  }

  function plain(key, value) {
    if (value instanceof ArrayBuffer) return Array.from(new Uint8Array(value));
    if (ArrayBuffer.isView(value)) return Array.from(new Uint8Array(value.buffer, value.byteOffset, value.byteLength));
    return value;
  }

  function collect() {
    return Promise.all([attempt(localRecords), attempt(journalRecords)]).then(function (halves) {
      var all = { format: "fenderbench-rescue", version: 1, saved: new Date().toISOString(), localStorage: halves[0], indexedDB: halves[1] };
      return JSON.stringify(all, plain, 1);
    });
  }

  function saveAll() {
    return collect().then(function (text) {
      var link = document.createElement("a");
      link.href = URL.createObjectURL(new Blob([text], { type: "application/json" }));
      link.download = "fenderbench-rescue-" + new Date().toISOString().slice(0, 19).replace(/:/g, "-") + ".json";
      document.body.appendChild(link);
      link.click();
      link.remove();
      // Some browsers read the blob only after the click has returned.
      setTimeout(function () {
        URL.revokeObjectURL(link.href);
      }, 60000);
    });
  }

  // ---- showing ----------------------------------------------------------------------

  function button(label, action) {
    var made = document.createElement("button");
    made.type = "button";
    made.textContent = label;
    made.addEventListener("click", action);
    return made;
  }

  function show(sentence) {
    if (document.getElementById("rescue")) return;
    var shell = document.getElementById("shell");
    // A modal dialog is above whatever the stopped app left on the screen.
    var panel = document.createElement(shell ? "section" : "dialog");
    panel.id = "rescue";
    panel.setAttribute("role", shell ? "alert" : "alertdialog");
    panel.setAttribute("aria-label", "The program does not run");
    // Behind it is a dead screen that only looks alive.
    panel.addEventListener("cancel", function (event) {
      event.preventDefault();
    });
    var words = document.createElement("p");
    words.textContent = sentence;
    var told = document.createElement("p");
    panel.appendChild(words);
    panel.appendChild(
      button("Save all data as a file", function () {
        saveAll().then(
          function () {
            told.textContent = "The file was handed to the browser. Look into its downloads.";
          },
          function (error) {
            told.textContent = "That did not work: " + error;
          }
        );
      })
    );
    panel.appendChild(
      button("Start again", function () {
        location.reload();
      })
    );
    panel.appendChild(told);
    (shell || document.body).appendChild(panel);
    if (panel.showModal) panel.showModal();
  }

  function stopped() {
    show("The program has stopped. What was shown as saved is still on this phone. Save a copy as a file, then start again.");
  }

  function notStarted(why) {
    if (!started()) show(why);
  }

  var canRun = typeof WebAssembly === "object" && "noModule" in HTMLScriptElement.prototype;
  var TOO_OLD = "This browser is too old to run the program. Update it, or open this address in a current Chrome, Firefox, Edge or Safari. Data kept in this browser can be saved here.";
  var NO_LOAD = "The program could not be loaded. Check the connection, then start again. Data kept on this phone is untouched.";
  var SLOW = "The program has not started yet. On a slow connection wait a little longer; otherwise start again. Data kept on this phone is untouched.";

  window.addEventListener("fenderbench-panic", stopped);
  window.addEventListener("fenderbench-no-start", function () {
    notStarted(NO_LOAD);
  });
  // Memory running out and the like end the program without a word from it.
  window.addEventListener("error", function (event) {
    if (canRun && event.error instanceof WebAssembly.RuntimeError) stopped();
  });

  if (!canRun) return notStarted(TOO_OLD);
  setTimeout(function () {
    notStarted(SLOW);
  }, START_MS);
  // Slow, but it did start: take the offer away again.
  new MutationObserver(function () {
    var panel = document.querySelector("section#rescue");
    if (panel && started()) panel.remove();
  }).observe(root, { attributes: true, attributeFilter: ["data-started"] });
})();
