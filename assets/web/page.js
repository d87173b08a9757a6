// The page around the bench: loads it, says what is missing, and carries files in and out.
"use strict";
(() => {
  const TEXTS = {
    en: {
      loading: "Loading the bench…",
      ready: "Getting the bench ready…",
      amount: (done, all) => `${done} of ${all} MB`,
      noWasm: "This browser does not run WebAssembly, which the bench needs. Update the browser, or use the installed program.",
      file: "The bench cannot run from a file. Open it through a web server, even a small one on this computer; after that it also runs offline.",
      fetch: "The bench could not be loaded. Check the network and try again.",
      stopped: "The bench has stopped. Your attempt is saved up to the last action; reload the page to continue.",
      lost: "The browser has taken the graphics away from the bench. Your attempt is saved; it goes on without them in a moment.",
      elsewhere: "The bench is open in another tab of this browser.",
      taken: "The bench was taken over by another tab; attempts are saved there.",
      here: "Use it here",
      again: "Reload",
    },
    es: {
      loading: "Cargando el banco…",
      ready: "Preparando el banco…",
      amount: (done, all) => `${done} de ${all} MB`,
      noWasm: "Este navegador no ejecuta WebAssembly, que el banco necesita. Actualice el navegador o use el programa instalado.",
      file: "El banco no puede funcionar desde un archivo. Ábralo con un servidor web, aunque sea uno pequeño en este ordenador; después funciona también sin red.",
      fetch: "No se pudo cargar el banco. Compruebe la red e inténtelo de nuevo.",
      stopped: "El banco se ha parado. Su intento está guardado hasta la última acción; recargue la página para continuar.",
      lost: "El navegador ha quitado los gráficos al banco. Su intento está guardado y sigue sin ellos enseguida.",
      elsewhere: "El banco está abierto en otra pestaña de este navegador.",
      taken: "Otra pestaña se ha hecho cargo del banco; los intentos se guardan allí.",
      here: "Usarlo aquí",
      again: "Recargar",
    },
  };
  const query = new URLSearchParams(location.search);
  const wanted = [query.get("lang"), ...(navigator.languages ?? [navigator.language])];
  const language = wanted.map((tag) => (tag ?? "").slice(0, 2).toLowerCase()).find((code) => code in TEXTS) ?? "en";
  const texts = TEXTS[language];
  const element = (id) => document.getElementById(id);
  const canvas = element("bench");
  const cover = element("cover");
  const build = JSON.parse(element("build").textContent);
  const cacheName = `detent-${build.version}`;
  document.documentElement.lang = language;

  let bench = null;
  let over = false;
  const mirror = globalThis.detentMirror(element("mirror"), canvas, (id, what, value) => bench.ask(id, what, value));

  const say = (text) => { element("says").textContent = text; };

  /// The last word: nothing but the button goes on from here.
  const end = (text, { why = "", button = texts.again, press = () => location.reload() } = {}) => {
    over = true;
    element("mirror").inert = true;
    say(text);
    element("bar").hidden = true;
    element("amount").textContent = "";
    element("why").textContent = why;
    element("why").hidden = why === "";
    element("again").textContent = button;
    element("again").hidden = button === "";
    element("again").onclick = press;
    cover.className = bench ? "over" : "";
  };

  // Stretches of more than 50 ms in which the page answers nothing (W3C Long Tasks), ms, once the bench is
  // there: the tests ask for them.
  const longTasks = [];
  if (globalThis.PerformanceObserver?.supportedEntryTypes?.includes("longtask")) {
    new PerformanceObserver((list) => {
      for (const task of list.getEntries()) if (bench) longTasks.push(Math.round(task.duration));
    }).observe({ type: "longtask" });
  }

  // A browser keeps sound back until somebody does something.
  const sounds = [];
  if (globalThis.AudioContext) {
    globalThis.AudioContext = class extends AudioContext {
      constructor(...options) {
        super(...options);
        sounds.push(this);
      }
    };
    for (const deed of ["pointerup", "keydown"]) {
      addEventListener(deed, () => {
        for (const sound of sounds) if (sound.state === "suspended") sound.resume().catch(() => {});
      }, { capture: true });
    }
  }

  // When keys moved: a slow frame hands them over in a heap, and a gesture is timed.
  const KEYS_KEPT_MS = 5_000;
  let keys = [];
  for (const [name, down] of [["keydown", true], ["keyup", false]]) {
    canvas.addEventListener(name, (event) => {
      if (event.repeat) return;
      keys = keys.filter((key) => key.at > event.timeStamp - KEYS_KEPT_MS);
      keys.push({ code: event.code, down, at: event.timeStamp });
    }, { capture: true });
  }

  globalThis.detentPage = {
    longTasks: () => longTasks.slice(),
    saveCopy(name, bytes) {
      const link = document.createElement("a");
      link.href = URL.createObjectURL(new Blob([bytes.slice()], { type: name.endsWith(".png") ? "image/png" : "text/plain" }));
      link.download = name;
      link.click();
      setTimeout(() => URL.revokeObjectURL(link.href), 60_000);
    },
    askForFile() { element("file").click(); },
    askForLibrary(folder) { element(folder ? "library-folder" : "library-zip").click(); },
    firstFrame() {
      if (over) return;
      performance.mark("detent-first-frame");
      cover.className = "gone";
      // Only where nobody else may want the keys: not within another page, not from a field or button.
      const idle = document.activeElement === document.body || document.activeElement === null;
      if (window === window.top && idle) canvas.focus({ preventScroll: true });
    },
    /// Where the server of the class is that this page belongs to: the class's server says so in the page that it serves.
    classServer: () => document.querySelector('meta[name="detent-class"]')?.content === "1" ? location.origin : undefined,
    /// The attempt of the class that is to be watched, by the address.
    watchedAttempt: () => query.get("watch") ?? undefined,
    keyAge(code, down) {
      const at = keys.findIndex((key) => key.code === code && key.down === down);
      return at < 0 ? NaN : performance.now() - keys.splice(at, 1)[0].at;
    },
    /// Later: the window may be in the middle of an event of the canvas, which moving the focus would call again.
    mirror(change) { queueMicrotask(() => mirror.apply(JSON.parse(change))); },
    stopped(reason) {
      // The bench may stumble over lost graphics before the page hears of them.
      if (canvas.getContext("webgl2")?.isContextLost()) goOnWithoutWebgl();
      else end(texts.stopped, { why: reason });
    },
  };

  const give = async (file) => {
    if (bench?.take_file) bench.take_file(file.name, new Uint8Array(await file.arrayBuffer()));
  };
  for (const name of ["file", "library-zip"]) {
    element(name).addEventListener("change", async (event) => {
      for (const file of event.target.files) await give(file);
      event.target.value = "";
    });
  }
  // What no library holds is not read: somebody may have chosen the wrong folder.
  const MOST_FILES = 2_000, MOST_BYTES = 1 << 20;
  element("library-folder").addEventListener("change", async (event) => {
    const all = Array.from(event.target.files).filter((file) => file.name.endsWith(".ron"));
    const files = all.slice(0, MOST_FILES).filter((file) => file.size <= MOST_BYTES);
    const root = all[0]?.webkitRelativePath.split("/")[0] ?? "";
    const paths = files.map((file) => file.webkitRelativePath.slice(root.length + 1));
    const contents = await Promise.all(files.map(async (file) => new Uint8Array(await file.arrayBuffer())));
    event.target.value = "";
    bench?.take_folder?.(root, paths, contents);
  });
  document.addEventListener("dragover", (event) => event.preventDefault());
  document.addEventListener("drop", async (event) => {
    event.preventDefault();
    for (const file of event.dataTransfer.files) await give(file);
  });

  // The keys that the bench uses and a browser would take. Tab moves within the bench; after Escape
  // it leaves the bench, so that nobody is caught in it.
  const OURS = new Set(["ArrowUp", "ArrowDown", "ArrowLeft", "ArrowRight", "Home", "End", "PageUp", "PageDown",
    " ", "/", "'", "Backspace", "F1"]);
  let leaving = false;
  canvas.addEventListener("keydown", (event) => {
    if (event.ctrlKey || event.metaKey || event.altKey) return;
    if (OURS.has(event.key) || (event.key === "Tab" && !leaving)) event.preventDefault();
    if (event.key !== "Tab" && event.key !== "Shift") leaving = event.key === "Escape";
  });
  canvas.addEventListener("blur", () => { leaving = false; });
  // A long press is a press, not a menu.
  canvas.addEventListener("contextmenu", (event) => event.preventDefault());
  canvas.addEventListener("wheel", (event) => { if (!event.ctrlKey) event.preventDefault(); }, { passive: false });

  // Without WebGL 2 the bench paints for itself, and draws the machine flat.
  const LOST = "lost";
  /// Loads the page again without WebGL; the job that was at hand goes on.
  const goOnWithoutWebgl = () => {
    if (over) return;
    end(texts.lost, { button: "" });
    const url = new URL(location.href);
    url.searchParams.set("software", LOST);
    // What is still on its way into the database gets there.
    setTimeout(() => location.replace(url), 500);
  };
  canvas.addEventListener("webglcontextlost", goOnWithoutWebgl);

  /// Whether the bench paints for itself, and whether it does so because the graphics were lost just now. The next time
  /// the page is loaded the graphics may be there again.
  const painting = () => {
    const lost = query.get("software") === LOST;
    if (lost) {
      const url = new URL(location.href);
      url.searchParams.delete("software");
      history.replaceState(null, "", url);
    }
    if (query.has("software")) return { software: query.get("software") !== "no", lost };
    const probe = document.createElement("canvas").getContext("webgl2");
    const named = probe?.getExtension("WEBGL_debug_renderer_info");
    const drawer = probe?.getParameter(named ? named.UNMASKED_RENDERER_WEBGL : probe.RENDERER) ?? "";
    probe?.getExtension("WEBGL_lose_context")?.loseContext();
    // Drivers that draw on the processor: the bench does that itself, many times as fast. Whoever asks where things are
    // knows what is drawn.
    const slow = !query.has("names") && /swiftshader|llvmpipe|softpipe|software|basic render/i.test(drawer);
    return { software: !probe || slow, lost };
  };

  /// One tab at a time: two would write the same attempts. False when another has the bench.
  const claim = (steal) => new Promise((claimed) => {
    if (!navigator.locks) return claimed(true);
    const patience = new AbortController();
    // A page being loaded again may still hold its own lock for a moment.
    const timer = setTimeout(() => patience.abort(), 1500);
    const options = steal ? { steal: true } : { signal: patience.signal };
    let held = false;
    navigator.locks.request("detent", options, () => {
      clearTimeout(timer);
      held = true;
      claimed(true);
      return new Promise(() => {});
    }).catch(() => {
      clearTimeout(timer);
      if (!held) return claimed(false);
      bench?.let_go?.();
      end(texts.taken, { button: texts.here });
    });
  });

  /// The response's bytes, counted as they come in.
  const counted = (response, all) => {
    let done = 0;
    const megabytes = (bytes) => (bytes / 1e6).toFixed(1);
    const counter = new TransformStream({
      transform(chunk, out) {
        done += chunk.byteLength;
        element("bar").value = Math.min(done / all, 1);
        element("amount").textContent = texts.amount(megabytes(Math.min(done, all)), megabytes(all));
        out.enqueue(chunk);
      },
      flush() {
        say(texts.ready);
        element("bar").removeAttribute("value");
      },
    });
    return response.body.pipeThrough(counter);
  };

  /// The smallest packing that this browser can open; the last is the program itself.
  const packings = () => {
    const opens = (format) => {
      try { new DecompressionStream(format); return true; } catch { return false; }
    };
    const all = [["br", "brotli"], ["gz", "gzip"]];
    return [...all.filter(([ending, format]) => build.bytes[ending] && opens(format)), ["", null]];
  };

  /// The program as a response that WebAssembly can compile while it comes in.
  const program = async () => {
    const cache = await globalThis.caches?.open(cacheName).catch(() => null);
    for (const [ending, format] of packings()) {
      const file = build.wasm + (ending && `.${ending}`);
      let response = await cache?.match(file);
      if (!response) {
        response = await fetch(file);
        if (!response.ok) continue;
        // What the browser does not cache is loaded again the next time.
        if (cache) cache.put(file, response.clone()).catch(() => {});
      }
      // A server may unpack the file on the way and say so; then it is the program already.
      const packed = format && !response.headers.get("content-encoding");
      let stream = counted(response, build.bytes[packed ? ending : ""]);
      if (packed) stream = stream.pipeThrough(new DecompressionStream(format));
      return new Response(stream, { headers: { "content-type": "application/wasm" } });
    }
    throw new Error(build.wasm);
  };

  const start = async (steal) => {
    over = false;
    element("mirror").inert = false;
    if (location.protocol === "file:") return end(texts.file, { button: "" });
    if (typeof WebAssembly !== "object") return end(texts.noWasm);
    const { software, lost } = painting();
    element("bar").hidden = false;
    element("again").hidden = true;
    cover.className = "";
    say(texts.loading);
    // Loading goes on while another page, perhaps this one before it was loaded again, lets go.
    const ours = claim(steal);
    try {
      const [glue, response] = await Promise.all([import(build.glue), program()]);
      await glue.default({ module_or_path: response });
      if (!(await ours)) return end(texts.elsewhere, { button: texts.here, press: () => start(true) });
      bench = glue;
      globalThis.detent = glue;
      const asked = (query.get("lang") ?? "").slice(0, 2).toLowerCase() === language;
      await glue.open?.(language, asked, query.has("names"), query.has("flat"), software, lost);
    } catch (error) {
      console.error(error);
      end(bench ? texts.stopped : texts.fetch, { why: String(error?.message ?? error) });
      return;
    }
    navigator.storage?.persist?.();
    keep();
  };

  /// Makes the page open without a network from now on.
  const keep = async () => {
    if (!navigator.serviceWorker || !window.isSecureContext) return;
    try {
      const registration = await navigator.serviceWorker.register("service.js");
      const loaded = () => registration.waiting?.postMessage("loaded");
      loaded();
      registration.addEventListener("updatefound", () => {
        registration.installing?.addEventListener("statechange", loaded);
      });
    } catch (error) {
      console.warn("the bench will need the network the next time too:", error);
    }
  };

  start(false);
})();
