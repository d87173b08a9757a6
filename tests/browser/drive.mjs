// Drives the packed page in Chromium as a person would, and prints what it found as one line of JSON.
//
//   node drive.mjs PLAYWRIGHT FOLDER OUT COMMAND [ARGUMENT]
//
// PLAYWRIGHT: the folder of playwright-core. FOLDER: what detent-pack made. OUT: for pictures and
// attempts. The commands are at the end of this file; tests/browser.rs says what each must show.
import { createServer } from "node:http";
import { createRequire } from "node:module";
import { createReadStream, readFileSync } from "node:fs";
import { mkdtemp, readFile, readdir, rm, stat, writeFile } from "node:fs/promises";
import { tmpdir } from "node:os";
import { join, normalize } from "node:path";

const [playwright, folder, out, command, argument] = process.argv.slice(2);
const { chromium } = createRequire(import.meta.url)(playwright);
const BROWSER = process.env.DETENT_CHROMIUM ?? "/usr/bin/chromium";
const SLOW_MS = Number(process.env.DETENT_SLOW_MS ?? 120_000);

/// Messages that stand on one line, by key.
function messages(language) {
  const file = new URL(`../../assets/lang/${language}.ftl`, import.meta.url);
  return new Map(readFileSync(file, "utf8").split("\n").flatMap((line) => {
    const message = /^([a-z0-9-]+) = (.+)$/.exec(line);
    return message ? [message.slice(1)] : [];
  }));
}
const MESSAGES = messages("en");

/// Whether a label is the message with this key, whatever stands for its placeables.
function says(key, messages = MESSAGES) {
  const message = messages.get(key);
  if (!message) throw new Error(`no message ${key} on one line`);
  const parts = message.split(/\{[^}]*\}/).map((part) => part.replace(/[.*+?^${}()|[\]\\]/g, "\\$&"));
  return new RegExp(`^${parts.join(".*")}$`);
}

const TYPES = { html: "text/html", css: "text/css", js: "text/javascript", svg: "image/svg+xml",
  wasm: "application/wasm", webmanifest: "application/manifest+json" };

/// A plain server of static files, as a school may have one. `asked` counts what was asked for.
async function serve(root) {
  const asked = [];
  const server = createServer(async (request, response) => {
    const path = normalize(decodeURIComponent(new URL(request.url, "http://x").pathname));
    const file = join(root, path.endsWith("/") ? `${path}index.html` : path);
    asked.push(path);
    const found = await stat(file).catch(() => null);
    if (!found?.isFile()) return response.writeHead(404).end();
    const type = TYPES[file.split(".").pop()] ?? "application/octet-stream";
    response.writeHead(200, { "content-type": type, "content-length": found.size });
    createReadStream(file).pipe(response);
  });
  await new Promise((listening) => server.listen(0, "127.0.0.1", listening));
  const close = () => new Promise((closed) => { server.close(closed); server.closeAllConnections(); });
  return { url: `http://127.0.0.1:${server.address().port}/`, asked, close };
}

/// A browser with a profile of its own, so that closing it loses nothing.
async function launch(profile, { args = [], ...options } = {}) {
  return chromium.launchPersistentContext(profile, {
    executablePath: BROWSER,
    headless: true,
    viewport: { width: 1280, height: 720 },
    locale: "en-GB",
    acceptDownloads: true,
    args: ["--no-sandbox", "--use-gl=angle", "--use-angle=swiftshader", "--enable-unsafe-swiftshader",
      "--ignore-gpu-blocklist", ...args],
    ...options,
  });
}

const sleep = (ms) => new Promise((done) => setTimeout(done, ms));

async function until(what, holds, limit_ms = SLOW_MS) {
  const end = Date.now() + limit_ms;
  for (;;) {
    const value = await holds();
    if (value) return value;
    if (Date.now() > end) throw new Error(`waited in vain for ${what}`);
    await sleep(50);
  }
}

/// The lamps say that service mode waits for a choice: two patterns in turn.
const ready = (seen) => seen.code === 0xf0 || seen.code === 0x0f;

/// A person at the page: sees by name, clicks by hand.
class Person {
  constructor(page) {
    this.page = page;
    this.troubles = [];
    page.on("pageerror", (error) => this.troubles.push(String(error)));
    page.on("console", (message) => { if (message.type() === "error") this.troubles.push(message.text()); });
  }

  async open(url) {
    await this.page.goto(`${url}?names`);
    await this.ready();
    await this.everything();
  }

  async ready() {
    await this.page.waitForFunction(() => performance.getEntriesByName("detent-first-frame").length > 0,
      null, { timeout: SLOW_MS });
    await until("names on the screen", async () => (await this.seen()) !== null);
  }

  /// Whoever comes for the first time is asked for a name and sees one button; the rest lies behind another.
  async everything() {
    for (const words of [MESSAGES, messages("es")]) {
      const label = words.get("start-everything");
      if ((await this.places(label)).length === 0) continue;
      await this.click(label, null, 0);
      await until("all that there is", async () => (await this.places(label)).length === 0);
    }
  }

  async seen() {
    const text = await this.page.evaluate(() => globalThis.detent.seen());
    return text ? JSON.parse(text) : null;
  }

  async see(what, holds, limit_ms) {
    return until(what, async () => { const seen = await this.seen(); return holds(seen) && seen; }, limit_ms);
  }

  /// Waits for so many further frames of a bench whose clock runs.
  async frames(count) {
    for (let left = count; left > 0; left -= 1) {
      const { time_s } = await this.seen();
      await this.see("another frame", (seen) => seen.time_s !== time_s);
    }
  }

  async places(label) {
    const flat = await this.page.evaluate((label) => Array.from(globalThis.detent.where_is(label)), label);
    const places = [];
    for (let i = 0; i < flat.length; i += 4) places.push(flat.slice(i, i + 4));
    return places;
  }

  /// The middle of the thing with this label, scrolled into the window; of several, the one on the
  /// line of `beside`. What does not scroll stands above `low`.
  async reach(label, beside, low = 130, high = null) {
    high ??= (await this.size()).height - 24;
    let before = null;
    return until(label, async () => {
      let places = await this.places(label);
      if (beside) {
        const [line] = await this.places(beside);
        places = line ? places.filter(([, top, , bottom]) => top < line[3] && bottom > line[1]) : [];
      }
      if (places.length === 0) return null;
      const [left, top, right, bottom] = places[0];
      const [x, y] = [(left + right) / 2, (top + bottom) / 2];
      if (y > low && y < high) {
        // What was scrolled glides to its place.
        if (before === null || before === y) return [x, y];
        before = y;
        await sleep(700);
        return null;
      }
      before = y;
      await this.page.mouse.move(x, (low + high) / 2);
      await this.page.mouse.wheel(0, Math.max(-250, Math.min(250, y - (low + high) / 2)));
      await sleep(350);
      return null;
    });
  }

  async click(label, beside, low) {
    const [x, y] = await this.reach(label, beside, low);
    await this.page.mouse.click(x, y, { delay: 80 });
    await sleep(350);
  }

  async size() {
    return this.page.evaluate(() => ({ width: innerWidth, height: innerHeight }));
  }

  async press(key, hold_ms = 60) {
    // Not waited for: on a slow machine the answer would lengthen the press.
    const down = this.page.keyboard.down(key);
    await sleep(hold_ms);
    await Promise.all([down, this.page.keyboard.up(key)]);
  }

  async turn(key, detents, every_ms) {
    for (let i = 0; i < detents; i += 1) {
      await this.press(key, 40);
      await sleep(every_ms - 40);
    }
  }

  /// Waits so many minutes of machine time.
  async rest(minutes) {
    for (let i = 0; i < minutes; i += 1) await this.press("t");
    await this.see("the wait begins", (seen) => seen.waiting > 0, 5_000).catch(() => {});
    await this.see("the wait ends", (seen) => seen.waiting === 0);
  }

  /// Presses Start until this is seen. A press that a slow frame swallowed is made again; where a worn dial has
  /// lost count the pointer first goes once round, past the index, from which the control counts anew.
  async start(what, holds) {
    for (let press = 0; press < 4; press += 1) {
      await this.press("s", 200);
      if (await this.see(what, holds, 8_000).catch(() => false)) return;
      if (press > 0) await this.round();
    }
    throw new Error(`Start in vain: ${what}`);
  }

  /// Runs the routine at a position, and waits for its end.
  async routine(position) {
    await this.point(position);
    await sleep(800);
    await this.start(`the routine at ${position}`, (seen) => !ready(seen));
    for (let minute = 0; minute < 7; minute += 1) {
      await this.rest(1);
      if (await this.waits()) return;
    }
    throw new Error(`the routine at ${position} did not end`);
  }

  /// Whether both patterns of service mode are seen, one after the other: a bar of stages passes through one.
  async waits() {
    for (const half of [0xf0, 0x0f]) {
      if (!await this.see("half a pattern", (seen) => seen.code === half, 4_000).catch(() => false)) return false;
    }
    return true;
  }

  /// Turns the dial once round, by the wheel over the console.
  async round() {
    const { width, height } = await this.size();
    await this.page.mouse.move(width * 0.44, height * 0.6);
    for (let i = 0; i < 24; i += 1) {
      await this.page.mouse.wheel(0, -50);
      await sleep(250);
    }
    await sleep(800);
  }

  /// The gesture, until the lamps show service mode.
  async enter() {
    for (let attempt = 0; attempt < 6; attempt += 1) {
      await this.turn("ArrowLeft", 6, 180);
      await this.press("x", 90);
      await sleep(120);
      await this.turn("ArrowLeft", 3, 180);
      await this.press("s", 1700);
      if (await this.see("service mode", ready, 6_000).catch(() => false)) return attempt + 1;
      await sleep(7_000);
    }
    throw new Error("service mode was never reached");
  }

  /// Turns the dial to a position, the short way, by the wheel over the console.
  async point(position) {
    const seen = await this.seen();
    const right = (position - seen.dial + 24) % 24;
    const [way, count] = right <= 12 ? [-1, right] : [1, 24 - right];
    const { width, height } = await this.size();
    await this.page.mouse.move(width * 0.44, height * 0.6);
    for (let i = 0; i < count; i += 1) {
      await this.page.mouse.wheel(0, 50 * way);
      await sleep(250);
    }
    await this.see(`the dial at ${position}`, (seen) => seen.dial === position, 10_000);
  }

  async picture(name) {
    await sleep(2_500);
    await this.page.screenshot({ path: join(out, name) });
  }

  /// What is kept in the browser: name and text.
  async kept() {
    return this.page.evaluate(() => new Promise((done, fail) => {
      const open = indexedDB.open("detent");
      open.onerror = () => fail(open.error);
      open.onsuccess = () => {
        const store = open.result.transaction("attempts").objectStore("attempts");
        const [names, values] = [store.getAllKeys(), store.getAll()];
        store.transaction.oncomplete = () => {
          open.result.close();
          done(names.result.map((name, i) => ({ name, ...values.result[i] })));
        };
      };
    }));
  }

  /// Puts a record into the browser's database, as if it had been kept before.
  async plant(name, text) {
    await this.page.evaluate(([name, text]) => new Promise((done, fail) => {
      const open = indexedDB.open("detent");
      open.onerror = () => fail(open.error);
      open.onsuccess = () => {
        const change = open.result.transaction("attempts", "readwrite");
        change.objectStore("attempts").put({ text, at: null, changed: Date.now() }, name);
        change.oncomplete = () => { open.result.close(); done(); };
      };
    }), [name, text]);
  }

  /// Presses what begins a job until the bench is there: a slow page can lose a press.
  async enterBench(label) {
    const there = (seen) => seen.screen === "Bench";
    for (let press = 0; press < 4; press += 1) {
      if (there(await this.seen())) return;
      await this.click(label);
      if (await this.see("the bench", there, 15_000).catch(() => null)) return;
    }
    throw new Error("the bench never came");
  }

  async begin(job, seed) {
    const [left, top, , bottom] = (await this.places("Seed"))[0];
    // The list of jobs ends above the seed; what lies further down is wheeled into sight.
    for (let turns = 0; (await this.places(job))[0]?.[3] > top - 20; turns += 1) {
      if (turns === 60) throw new Error(`the job ${job} could not be wheeled into sight`);
      await this.page.mouse.move(left + 120, top - 120);
      await this.page.mouse.wheel(0, 240);
      await sleep(700);
    }
    await this.click(job);
    for (let attempt = 0; (await this.places(String(seed))).length === 0; attempt += 1) {
      if (attempt === 6) throw new Error(`the seed ${seed} could not be typed`);
      await this.page.mouse.click(left + 110, (top + bottom) / 2, { delay: 60 });
      await sleep(600);
      for (const key of ["End", ...Array(6).fill("Backspace")]) {
        await this.press(key, 100);
        await sleep(150);
      }
      await this.page.keyboard.type(String(seed), { delay: 200 });
      await sleep(1_500);
    }
    await this.enterBench("Begin the job");
    // Shaders come in the first frames; nobody works before the machine is there.
    await sleep(4_000);
  }
}

/// Hands that use keys and nothing else: what has no key of its own is reached with Tab and pressed with Enter.
class KeyHands {
  constructor(person) { this.person = person; }

  focused() {
    return this.person.page.evaluate(() => ({
      label: globalThis.detent.focused(), place: Array.from(globalThis.detent.focused_at()) }));
  }

  /// Moves the focus to the thing with this label; of several, the `nth` on the line of `beside`.
  async focus(label, { beside, nth = 0 } = {}) {
    for (let steps = 0; steps < 260; steps += 1) {
      const { label: at, place } = await this.focused();
      if (at === label) {
        const [line] = beside ? await this.person.places(beside) : [];
        const near = ([, top, , bottom]) => !beside || (line && top < line[3] + 40 && bottom > line[1]);
        // From left to right; rows in turn.
        const places = (await this.person.places(label)).filter(near)
          .sort((a, b) => Math.round((a[1] - b[1]) / 8) || a[0] - b[0]);
        if (String(places[nth]) === String(place)) return;
      }
      await this.person.press("Tab", 60);
      await until("the focus elsewhere", async () => {
        const next = await this.focused();
        return next.label !== at || String(next.place) !== String(place);
      }, 1_500).catch(() => {});
    }
    throw new Error(`${label} never had the focus`);
  }

  async use(label, where) {
    await this.focus(label, where);
    await this.person.press("Enter", 120);
    await sleep(500);
  }

  async key(key) { await this.person.press(key, 120); await sleep(500); }
  async plug() { await this.key("p"); }
  async panels() { await this.key("c"); }
  async discharge() { await this.key("d"); await sleep(500); }
  async view(number) { await this.key(String(number)); }
  async button(name, ms) { await this.person.press(name === "start" ? "s" : "x", ms); }
  async turn(detents, every_ms) {
    await this.person.turn(detents > 0 ? "ArrowRight" : "ArrowLeft", Math.abs(detents), every_ms);
  }
  /// The field comes with Tab after the button `after`.
  async write(label, text, after) {
    await this.focus(after);
    await this.person.press("Tab", 60);
    await sleep(1_500);
    await this.person.page.keyboard.type(text, { delay: 150 });
    await this.person.press("Tab", 60);
  }
}

/// Hands that find what they work by its words, whatever they have for fingers: `use(label, where)`.
class NamedHands {
  constructor(person, words) {
    this.person = person;
    this.words = words;
  }

  async either(...keys) {
    for (const key of keys) {
      const label = this.words.get(key);
      if ((await this.person.places(label)).length > 0) return this.use(label);
    }
    throw new Error(`none of ${keys} is on the screen`);
  }

  async plug() { await this.either("do-unplug", "do-plug"); }
  async panels() { await this.either("do-open-cabinet", "do-close-cabinet"); }
  async discharge() { await this.use(this.words.get("do-discharge")); }
  view_label(number) {
    const key = ["view-panel", "view-machine", "view-cabinet"][number - 1];
    return `${number}  ${this.words.get(key)}`;
  }
  async view(number) { await this.use(this.view_label(number)); }
}

/// Hands that know the page's elements and nothing else, as reading software does: what is there is found by its name
/// and pressed where it stands, and keys go to what has the focus.
class MirrorHands extends NamedHands {
  /// Does something with the element of this name that can be worked; of several, the `nth` on the line of `beside`.
  async with(label, { beside, nth = 0 } = {}, deed) {
    return until(`${label} among the elements`, () => this.person.page.evaluate(([label, beside, nth, deed]) => {
      const all = [...document.querySelectorAll("#mirror [data-id]")].map((element) =>
        ({ element, name: element.ariaLabel ?? element.textContent, place: element.getBoundingClientRect() }));
      const line = all.find(({ name }) => name === beside)?.place;
      const near = ({ place }) => !beside || (line && place.top < line.bottom + 40 && place.bottom > line.top);
      const found = all.filter(({ element, name }) => element.hasAttribute("tabindex") && name === label)
        .filter(near)
        .sort((a, b) => Math.round((a.place.top - b.place.top) / 8) || a.place.left - b.place.left)[nth]?.element;
      if (!found || found.ariaDisabled === "true") return false;
      found.focus({ preventScroll: true });
      if (deed === "click") found.click();
      return true;
    }, [label, beside, nth, deed]));
  }

  async use(label, where) {
    await this.with(label, where, "click");
    await sleep(700);
  }

  /// Keys go to an element, not to the canvas.
  async hold_focus() {
    const focused = await this.person.page.evaluate(() => document.activeElement.closest("#mirror") !== null);
    if (!focused) await this.with(this.view_label(1), {}, "focus");
  }

  async button(name, ms) {
    await this.hold_focus();
    await this.person.press(name === "start" ? "s" : "x", ms);
  }
  async turn(detents, every_ms) {
    await this.hold_focus();
    await this.person.turn(detents > 0 ? "ArrowRight" : "ArrowLeft", Math.abs(detents), every_ms);
  }
  async write(label, text) {
    await this.person.page.locator("#mirror").getByRole("textbox", { name: label }).fill(text);
    await sleep(700);
  }

  /// Elements that stand elsewhere than what is drawn under their name.
  async misplaced() {
    return this.person.page.evaluate(() => [...document.querySelectorAll("#mirror [data-id]")].filter((element) => {
      const { left, top } = element.getBoundingClientRect();
      const places = Array.from(globalThis.detent.where_is(element.ariaLabel ?? element.textContent));
      return !places.some((x, i) => i % 4 === 0 && Math.abs(x - left) < 2 && Math.abs(places[i + 1] - top) < 2);
    }).map((element) => element.outerHTML));
  }
}

/// Hands that touch the glass and nothing else.
class FingerHands extends NamedHands {
  constructor(person, fingers, words) {
    super(person, words);
    this.fingers = fingers;
  }

  touch(type, points) {
    return this.fingers.send("Input.dispatchTouchEvent", { type, touchPoints: points.map(([x, y]) => ({ x, y })) });
  }

  /// A finger put down and lifted. Not waited for: on a slow machine the answer would make a long touch of a tap.
  async hold([x, y], ms) {
    const down = this.touch("touchStart", [[x, y]]);
    await sleep(ms);
    await Promise.all([down, this.touch("touchEnd", [])]);
  }

  /// Pushes what is under the finger up by so many pixels, and lets it come to rest.
  async push([x, y], up) {
    await this.touch("touchStart", [[x, y]]);
    for (let step = 1; step <= 8; step += 1) {
      await this.touch("touchMove", [[x, y - up * step / 8]]);
      await sleep(70);
    }
    // A finger that rests before it is lifted throws nothing.
    await sleep(500);
    await this.touch("touchEnd", []);
    await sleep(700);
  }

  /// The middle of the thing with this label, pushed into sight; of several, the `nth` on the line of `beside`.
  async reach(label, { beside, nth = 0 } = {}) {
    const { width, height } = await this.person.size();
    // The pages on the right slide under their tabs.
    const fixed = ["×1", "×10", "||", ...["tab-sheet", "tab-meter", "tab-parts", "tab-report", "tab-score",
      "sheet-lamps"].map((key) => this.words.get(key))];
    const high = height - 6;
    return until(label, async () => {
      const [line] = beside ? await this.person.places(beside) : [];
      const near = ([, top, , bottom]) => !beside || (line && top < line[3] + 40 && bottom > line[1]);
      const places = (await this.person.places(label)).filter(near)
        .sort((a, b) => Math.round((a[1] - b[1]) / 8) || a[0] - b[0]);
      const place = places[Math.min(nth, places.length - 1)];
      if (!place) return null;
      const [x, y] = [(place[0] + place[2]) / 2, (place[1] + place[3]) / 2];
      const low = x > width * 0.66 && !fixed.includes(label) ? 116 : 0;
      if (y > low && y < high) return [x, y];
      const middle = height * 0.6;
      await this.push([place[0] - 4, middle], Math.max(-200, Math.min(200, y - middle)));
      return null;
    });
  }

  async use(label, where) {
    await this.hold(await this.reach(label, where), 90);
    await sleep(600);
  }

  async button(name, ms) {
    const [[x, y]] = await this.person.places(`button ${name}`);
    await this.hold([x, y], ms);
  }

  /// Turns the dial with a finger that goes round its middle: one detent each 15 degrees. Not waited for, like a tap.
  async turn(detents, every_ms) {
    const [[x, y]] = await this.person.places("dial");
    const radius = 34;
    const at = (degrees) => {
      const angle = degrees * Math.PI / 180;
      return [x + radius * Math.sin(angle), y - radius * Math.cos(angle)];
    };
    const sent = [this.touch("touchStart", [at(0)])];
    for (let half = 1; half <= 2 * Math.abs(detents); half += 1) {
      await sleep(every_ms / 2);
      sent.push(this.touch("touchMove", [at(Math.sign(detents) * (half * 7.5 + 1))]));
    }
    await sleep(120);
    sent.push(this.touch("touchEnd", []));
    await Promise.all(sent);
  }

  /// The field calls up the tablet's own keyboard, which comes as keys.
  async write(label, text) {
    const [x, y] = await this.reach(label);
    await this.hold([x + 120, y], 90);
    await sleep(1_500);
    await this.person.page.keyboard.type(text, { delay: 150 });
  }
}

/// The guided first job with a finger alone, at this end of the address.
function guidedByFinger(address) {
  const language = argument ?? "en";
  return fresh(async ({ person, page, context, server }) => {
    await page.goto(`${server.url}?names${address}`);
    await person.ready();
    const fingers = await context.newCDPSession(page);
    await fingers.send("Emulation.setTouchEmulationEnabled", { enabled: true, maxTouchPoints: 5 });
    return guided(person, new FingerHands(person, fingers, messages(language)), language);
  }, { locale: language });
}

/// The guided first job from start to score; a picture after each step.
async function guided(person, hands, language) {
  const words = messages(language);
  person.words = words;
  const say = (key) => words.get(key) ?? (() => { throw new Error(`no message ${key}`); })();
  let step = 0;
  const picture = () => person.picture(`${String(step += 1).padStart(2, "0")}.png`);
  const waited = async (key, limit_ms) => {
    await hands.use(say(key));
    await person.see("the wait begins", (seen) => seen.waiting > 0, 8_000).catch(() => {});
    await person.see("the wait ends", (seen) => seen.waiting === 0, limit_ms);
  };
  const rested = () => waited("wait-1-min");
  const enter = async () => {
    for (let attempt = 0; attempt < 4; attempt += 1) {
      await hands.turn(-6, 120);
      await hands.button("stop", 90);
      await sleep(60);
      await hands.turn(-3, 120);
      await hands.button("start", 1_600);
      if (await person.see("service mode", ready, 6_000).catch(() => false)) return attempt + 1;
      // Where a slow frame made a tap of the hold, a program runs: it is called off.
      await hands.button("stop", 2_400);
      await sleep(7_000);
    }
    // The screen is too slow for this hand: the guide shows the step.
    await hands.use(say("guide-show"));
    await person.see("service mode", ready, 60_000);
    return "shown";
  };
  const point = async (position) => {
    for (let tries = 0; tries < 6; tries += 1) {
      const { dial } = await person.seen();
      const right = (position - dial + 24) % 24;
      if (right === 0) return;
      await hands.turn(right <= 12 ? right : right - 24, 250);
      // On a slow screen the turns come after the hand.
      await person.see("the dial", (seen) => seen.dial === position, 8_000).catch(() => {});
    }
    throw new Error(`the dial never came to ${position}`);
  };
  const plug = async (plugged) => {
    await hands.plug();
    await person.see("the plug", (seen) => seen.plugged === plugged, 10_000);
  };
  const panels = async (open) => {
    await hands.panels();
    await person.see("the panels", (seen) => seen.cabinet_open === open, 10_000);
  };
  const lid = async (open) => {
    await hands.use(say(open ? "do-open-lid" : "do-close-lid"));
    await person.see("the lid", (seen) => seen.lid_open === open, 10_000);
  };
  const laundry = async (deed) => {
    await lid(true);
    await hands.use(say(deed), { beside: say("component-laundry") });
    await sleep(1_500);
    await lid(false);
  };
  // What did not come to be said is done once more.
  const counted = async (pattern, use) => {
    const said = async () => (await person.page.evaluate(() => globalThis.detent.labels())).some((label) => pattern.test(label));
    for (let press = 0; press < 5; press += 1) {
      await use();
      if (await until(String(pattern), said, 8_000).catch(() => false)) return;
    }
    throw new Error(`${pattern} was never said`);
  };
  // A press that fell on the neighbor, or that a slow frame swallowed, is made again.
  const open = async (tab, sign) => {
    for (let press = 0; (await person.places(say(sign))).length === 0; press += 1) {
      if (press === 5) throw new Error(`${tab} never opened`);
      await hands.use(say(tab));
      await sleep(1_000);
    }
  };
  await picture();
  await hands.use(say("start-first"));
  await person.see("the bench", (seen) => seen.screen === "Bench");
  await sleep(4_000);
  await picture();
  // The bench's own controls first.
  for (const view of [1, 3, 2]) {
    await hands.view(view);
    await sleep(2_500);
  }
  for (const speed of ["×10", "||", "×1"]) await hands.use(speed);
  await picture();
  for (const tab of ["tab-score", "tab-sheet"]) {
    await hands.use(say(tab));
    await sleep(1_500);
  }
  await picture();
  await hands.view(1);
  await sleep(2_500);
  await hands.turn(1, 200);
  await sleep(1_500);
  await hands.turn(-1, 200);
  await sleep(1_500);
  await picture();
  await plug(false);
  await picture();
  await rested();
  await picture();
  await plug(true);
  await sleep(3_500);
  await hands.view(1);
  await sleep(2_500);
  await picture();
  const tries = await enter();
  await picture();
  await point(1);
  await sleep(800);
  for (let press = 0; ; press += 1) {
    await hands.button("start", 200);
    if (await person.see("code 56", (seen) => !ready(seen) && seen.code !== 0, 8_000).catch(() => false)) break;
    if (press === 3) throw new Error("no code came");
  }
  await sleep(2_000);
  await picture();
  await open("sheet-lamps", "note-code-do");
  for (let i = 0; i < 5; i += 1) await hands.use(say("note-tens-more"));
  for (let i = 0; i < 6; i += 1) await hands.use(say("note-units-more"));
  await hands.use(say("note-code-do"));
  await picture();
  await hands.button("stop", 200);
  await sleep(1_500);
  await plug(false);
  await rested();
  await panels(true);
  await hands.view(3);
  await picture();
  await open("tab-meter", "do-test-meter");
  await hands.use(say("do-test-meter"));
  await hands.discharge();
  await picture();
  await hands.use("V DC");
  await hands.use(say("meter-red"));
  await hands.use(say("pin-bulk-plus"));
  await hands.use(say("meter-black"));
  await hands.use(say("pin-bulk-minus"));
  await hands.use(say("do-measure"));
  await person.see("a reading", (seen) => seen.readings === 1, 10_000);
  await picture();
  await hands.use(say("do-test-meter"));
  await hands.use(say("look"));
  await hands.use(say("do-inspect"), { beside: say("component-belt") });
  await picture();
  await open("tab-parts", "do-quote");
  await counted(/^P-1801: /, () => hands.use(say("quote-part"), { beside: say("part-belt") }));
  await counted(says("quote-approved", words), () => hands.use(say("do-quote")));
  await picture();
  await hands.use(say("do-order"), { beside: say("part-belt") });
  await until("the part", async () => (await person.places(say("do-fit"))).length > 0, 15_000);
  await hands.use(say("do-fit"));
  await sleep(1_500);
  await picture();
  await panels(false);
  await plug(true);
  await hands.use(say("tab-meter"));
  await laundry("do-unload-basket");
  await hands.view(1);
  await sleep(3_500);
  const again = await enter();
  await point(22);
  await sleep(800);
  await hands.button("start", 200);
  await sleep(2_000);
  for (let minute = 0; ; minute += 1) {
    if (minute === 7) throw new Error("recalibration did not end");
    await rested();
    if (await person.waits()) break;
  }
  await picture();
  for (let press = 0; press < 4; press += 1) {
    await hands.button("stop", 200);
    if (await person.see("idle", (seen) => !ready(seen), 3_000).catch(() => false)
      && !await person.waits()) break;
  }
  await laundry("do-load-basket");
  await point(10);
  await sleep(2_000);
  await hands.button("start", 200);
  await sleep(4_000);
  await picture();
  await waited("wait-until", 240_000);
  await picture();
  await hands.use(say("ask"));
  await hands.use(say("ask-demonstration"));
  await picture();
  await open("tab-report", "search");
  await hands.write(say("search"), say("mode-belt-broken").slice(0, 8), say("report-given-up"));
  await sleep(1_500);
  await hands.use(say("mode-belt-broken"));
  await picture();
  await hands.use(say("report-hand-in"));
  await person.see("the end", (seen) => seen.finished);
  await picture();
  const labels = await person.page.evaluate(() => globalThis.detent.labels());
  return { tries, again, labels, kept: await person.kept(), troubles: person.troubles };
}

async function fresh(run, options) {
  const profile = await mkdtemp(join(tmpdir(), "detent-"));
  const server = await serve(folder);
  const context = await launch(profile, options);
  const page = context.pages()[0] ?? await context.newPage();
  const person = new Person(page);
  try {
    return await run({ page, person, context, server, profile });
  } catch (error) {
    await page.screenshot({ path: join(out, "failed.png") }).catch(() => {});
    for (const { name, text } of await person.kept().catch(() => [])) await writeFile(join(out, name), text);
    console.error(person.troubles, await person.seen().catch(() => null));
    throw error;
  } finally {
    await context.close().catch(() => {});
    await server.close();
    await rm(profile, { recursive: true, force: true });
  }
}

/// The words on the page's cover.
const cover = (page) => page.evaluate(() => document.getElementById("says").textContent);

/// Learners of a class, for each try of it.
const NAMES_OF_TRIES = [["Ann", "Ben", "Cy"], ["Dora", "Eli", "Flo"], ["Gus", "Hal", "Ida"]];

const COMMANDS = {
  /// A learner is added, answers one question of a drill, saves a picture of the progress, and is there again
  /// after the page was loaded anew.
  practice: () => fresh(async ({ page, person, server }) => {
    const item = (key) => page.evaluate((key) => localStorage.getItem(key), key);
    const on = (screen) => person.see(screen, (seen) => seen.screen === screen, 20_000);
    await person.open(server.url);
    await person.click("Practice", null, 0);
    await on("Practice");
    const [left, , , bottom] = (await person.places("New learner’s name"))[0];
    await page.mouse.click(left + 60, bottom + 22, { delay: 60 });
    await sleep(600);
    await page.keyboard.type("Ada Ruiz", { delay: 200 });
    await sleep(1_500);
    await person.click("Add", null, 0);
    const stem = await until("the learner's name in the list", () => item("detent.learners"));
    await person.picture("practice.png");
    await person.click("Begin: Reading lamps", null, 0);
    await on("Drill");
    for (const key of ["4", "7"]) {
      await person.press(key, 100);
      await sleep(400);
    }
    await person.picture("drill.png");
    await person.press("Enter", 100);
    const profile = () => item(`detent.learner.${stem}`);
    await until("the answer in the profile", async () => (await profile())?.includes("LampReading"));
    await person.press("Escape", 100);
    await on("Practice");
    await person.click("Progress", null, 0);
    const [saved] = await Promise.all([
      page.waitForEvent("download", { timeout: SLOW_MS }),
      person.click("Save picture (PNG)", null, 0),
    ]);
    await saved.saveAs(join(out, "progress.png"));
    await person.open(server.url);
    await person.click("Practice", null, 0);
    await on("Practice");
    await person.click("Ada Ruiz", null, 0);
    await person.picture("again.png");
    return { profile: await profile(), file: saved.suggestedFilename(), troubles: person.troubles };
  }),

  /// How long it takes from the address to the first frame that answers, ms; and a picture.
  start: () => fresh(async ({ page, person, server }) => {
    const times = [];
    for (let i = 0; i < Number(argument ?? 1); i += 1) {
      await page.goto(`${server.url}?software=no`);
      await page.waitForFunction(() => performance.getEntriesByName("detent-first-frame").length > 0,
        null, { timeout: SLOW_MS });
      times.push(await page.evaluate(() => performance.getEntriesByName("detent-first-frame")[0].startTime));
    }
    await person.picture("start.png");
    return { times, troubles: person.troubles, asked: server.asked };
  }),

  /// The whole job with mouse, wheel and keys; loaded again half way.
  job: () => fresh(async ({ page, person, server }) => {
    await person.open(server.url);
    await person.picture("start-1280x720.png");
    await person.begin("Any machine", 137);
    const focused = await hasKeys(page);
    await person.press("1");
    await person.picture("panel-1280x720.png");
    await person.press("p");
    await person.rest(1);
    await person.press("p");
    await sleep(3_500);
    const tries = await person.enter();
    await person.picture("service-1280x720.png");
    await person.routine(22);
    await person.point(1);
    await sleep(800);
    await person.start("code 42 on the lamps", (seen) => seen.code === 0x42);
    await person.press("m");
    for (let i = 0; i < 4; i += 1) await person.click("Tens: one more");
    for (let i = 0; i < 2; i += 1) await person.click("Units: one more");
    await person.click("Record code");
    await person.press("x", 200);
    await person.press("p");
    await person.see("the plug out", (seen) => !seen.plugged);
    await sleep(6_000);
    const longTasks = await page.evaluate(() => globalThis.detentPage.longTasks());
    const drawn = await person.seen();
    const before = await person.see("a new frame", (seen) => seen.time_s !== drawn.time_s);
    const seenAt = Date.now();

    await page.reload();
    const goneAt = Date.now();
    await person.ready();
    const backAt = Date.now();
    await person.click("Continue where you left off");
    const after = await person.see("the bench again", (seen) => seen.screen === "Bench");
    // The clock ran on until the page was gone and has run since the job was opened again.
    const ran_s = (goneAt - seenAt + Date.now() - backAt) / 1_000;
    await sleep(3_000);
    await person.picture("resumed-1280x720.png");
    await person.rest(1);
    await person.press("c");
    await person.see("the cabinet open", (seen) => seen.cabinet_open);
    await person.press("3");
    await person.press("m");
    await sleep(600);
    const measure = async (mode, red, black, count) => {
      await person.click(mode);
      await person.click("Red probe");
      await person.click(red);
      await person.click("Black probe");
      await person.click(black);
      // A button that has just come to life may not have been drawn yet: a person presses again.
      for (let press = 0; (await person.seen()).readings < count; press += 1) {
        if (press === 5) throw new Error("no reading came");
        await person.click("Measure and record");
        await person.see("a reading", (seen) => seen.readings === count, 5_000).catch(() => {});
      }
    };
    // A press that a slow frame swallowed is made again: what the check showed has its time beside it.
    const check = async () => {
      const labels = () => page.evaluate(() => globalThis.detent.labels());
      const times = async () => (await labels()).filter((label) => /^\d\d:\d\d\.\d\d$/.test(label)).join();
      const before = await times();
      for (let press = 0; press < 5; press += 1) {
        await person.click("Check the meter on a proving unit");
        if (await until("a check", async () => await times() !== before, 5_000).catch(() => false)) return;
      }
      throw new Error("the meter was never checked");
    };
    // Dead is what a meter shows that was checked before and after.
    await check();
    await person.press("d");
    await sleep(1_000);
    await measure("V DC", "Bulk +", "Bulk −", 1);
    await check();
    await person.picture("cabinet-1280x720.png");
    await person.press("b");
    await sleep(600);
    // A press that a slow frame swallowed is made again.
    for (let press = 0; (await person.places("Install")).length === 0; press += 1) {
      if (press === 3) throw new Error("the part never came");
      await person.click("Order", await label(person, /^P-0701 /));
      await until("the part", async () => (await person.places("Install")).length > 0, 15_000).catch(() => {});
    }
    await person.click("Install");
    await sleep(1_500);
    await person.press("c");
    await person.see("the cabinet closed", (seen) => !seen.cabinet_open);
    await person.press("p");
    await person.see("the plug in", (seen) => seen.plugged);
    await person.press("1");
    await sleep(3_500);
    await person.enter();
    await person.routine(22);
    await person.press("r");
    await sleep(600);
    // The part that was fitted is chosen already; the cause is searched for.
    const [x, y] = await person.reach("Search:");
    await page.mouse.click(x + 120, y, { delay: 80 });
    // A key that comes before the field has the focus is one of the machine's.
    await sleep(1_500);
    await page.keyboard.type("line contact", { delay: 150 });
    await sleep(1_500);
    await person.click(await label(person, /^Lid lock: line contact burned open$/, 8_000));
    // It is the last thing on its page and stands at the foot of the window.
    const close = await person.reach("Close the job", undefined, 130, (await person.size()).height - 8);
    await page.mouse.click(close[0], close[1], { delay: 80 });
    await person.see("the end", (seen) => seen.finished);
    await person.picture("score-1280x720.png");
    const [download] = await Promise.all([page.waitForEvent("download"), person.click("Save a copy")]);
    await download.saveAs(join(out, download.suggestedFilename()));
    longTasks.push(...await page.evaluate(() => globalThis.detentPage.longTasks()));
    return { focused, tries, before, after, ran_s, saved: download.suggestedFilename(),
      kept: await person.kept(), troubles: person.troubles, longTasks };
  }),

  /// Three learners in three browsers join a class that is being served (ARGUMENT: a file that says where): one loses its
  /// network half way, one loads its page again, one hands in a file.
  class: async () => {
    const { address, code, board } = JSON.parse(readFileSync(argument, "utf8"));
    const places = async (person, key) => {
      const labels = await person.page.evaluate(() => globalThis.detent.labels());
      return labels.filter((label) => says(key).test(label));
    };
    const opened = [];
    // A name that sat down in a try before is taken.
    const [first, second, third] = NAMES_OF_TRIES.shift();
    const browser = async () => {
      const profile = await mkdtemp(join(tmpdir(), "detent-"));
      const context = await launch(profile);
      opened.push([context, profile]);
      return { context, page: context.pages()[0] ?? await context.newPage() };
    };
    const shown = (person, key) => until(key, async () => (await places(person, key)).length > 0);
    const sit = async (name) => {
      const { context, page } = await browser();
      const person = new Person(page);
      await page.goto(`${address}?names&flat`);
      await person.ready();
      await person.picture(`join-${name}.png`);
      for (const [key, text] of [["join-code", code], ["join-name", name]]) {
        const [left, , , bottom] = (await person.places(MESSAGES.get(key)))[0];
        await page.mouse.click(left + 60, bottom + 22, { delay: 60 });
        await sleep(1_000);
        await page.keyboard.type(text, { delay: 120 });
        await sleep(1_000);
      }
      await person.click(MESSAGES.get("join-go"), null, 0);
      await shown(person, "seat-you");
      await person.picture(`class-${name}.png`);
      return { context, page, person };
    };
    const begin = async ({ person }, key) => {
      await person.enterBench(MESSAGES.get(key));
      await sleep(3_000);
    };
    const plug = async ({ person }, plugged) => {
      await person.press("p");
      await person.see("the plug", (seen) => seen.plugged === plugged, 20_000);
    };
    const finish = async ({ person, page }) => {
      await person.press("r");
      await sleep(1_000);
      await person.click(MESSAGES.get("report-given-up"));
      const close = await person.reach(MESSAGES.get("report-hand-in"), undefined, 130, (await person.size()).height - 8);
      await page.mouse.click(close[0], close[1], { delay: 80 });
      await person.see("the end", (seen) => seen.finished);
    };
    try {
      const [ann, ben, cy] = [await sit(first), await sit(second), await sit(third)];
      // Ann's network goes half way and comes back when everything is done.
      await begin(ann, "seat-job-begin");
      await plug(ann, false);
      await ann.context.setOffline(true);
      await plug(ann, true);
      await finish(ann);
      await shown(ann.person, "seat-unreachable");
      await ann.person.picture("Ann-without-network.png");
      // Ben's page is loaded again: he is in his seat and goes on with his job.
      await begin(ben, "seat-job-begin");
      await plug(ben, false);
      await until("the deed in the database", async () => (
        await ben.person.kept()).some(({ text }) => text.split("\n").length > 2));
      await ben.page.goto(`${address}?names&flat`);
      await ben.person.ready();
      await shown(ben.person, "seat-you");
      await begin(ben, "seat-job-go-on");
      await ben.person.see("the plug as he left it", (seen) => !seen.plugged, 20_000);
      await plug(ben, true);
      await finish(ben);
      await shown(ben.person, "seat-sent");
      // Cy's network goes for good: the file is carried to the teacher.
      await begin(cy, "seat-job-begin");
      await plug(cy, false);
      await cy.context.setOffline(true);
      await plug(cy, true);
      await finish(cy);
      await sleep(2_000);
      const [file] = await cy.person.kept();
      await ann.context.setOffline(false);

      const teacher = await browser();
      await teacher.page.goto(board);
      await teacher.page.waitForURL("**/teacher/board*");
      const row = (name) => teacher.page.locator("table.seats tbody tr", { hasText: name });
      await teacher.page.screenshot({ path: join(out, "board-before.png") });
      await row(third).locator("[data-slot=more]").click();
      await teacher.page.locator("#hand-in-file").setInputFiles(
        { name: file.name, mimeType: "text/plain", buffer: Buffer.from(file.text) });
      await teacher.page.locator("#hand-in button").click();
      await until("the answer", async () => (await teacher.page.locator("#hand-in-note").textContent()) !== "");
      const note = await teacher.page.locator("#hand-in-note").textContent();
      await teacher.page.keyboard.press("Escape");
      const rows = {};
      for (const [who, name] of Object.entries({ Ann: first, Ben: second, Cy: third })) {
        await until(`${name} verified`, async () => /Verified: /.test(await row(name).textContent()));
        rows[who] = await row(name).textContent();
      }
      await teacher.page.screenshot({ path: join(out, "board-after.png") });
      // The instructor watches Ann's attempt at the bench, in the page that the learners have.
      await row(first).locator("[data-slot=more]").click();
      const watch = await teacher.page.locator("[data-slot=watch]").first().evaluate((link) => link.href);
      const watcher = new Person(await teacher.context.newPage());
      await watcher.page.goto(`${watch}&names&flat`);
      await watcher.ready();
      await shown(watcher, "film-as-recorded");
      await watcher.picture("watched.png");
      // What the learners see of it: Ann's page was told when the network came back.
      await shown(ann.person, "seat-sent");
      const kept = {};
      for (const [name, { person }] of Object.entries({ Ann: ann, Ben: ben, Cy: cy })) kept[name] = await person.kept();
      await ben.page.goto(`${address}?names&flat`);
      await ben.person.ready();
      await shown(ben.person, "seat-job-verified-points");
      await ben.person.picture("Ben-verified.png");
      // Without its network a page says so, which is no trouble of its own.
      const troubles = [...[ann, ben, cy].map(({ person }) => person), watcher].flatMap(({ troubles }) => troubles)
        .filter((trouble) => !/ERR_INTERNET_DISCONNECTED|Failed to load resource|Failed to fetch/.test(trouble));
      return { note, rows, kept, troubles };
    } catch (error) {
      for (const [n, [context]] of opened.entries()) {
        await context.pages()[0]?.screenshot({ path: join(out, `failed-${n}.png`) }).catch(() => {});
      }
      throw error;
    } finally {
      for (const [context, profile] of opened) {
        await context.close().catch(() => {});
        await rm(profile, { recursive: true, force: true });
      }
    }
  },

  /// The guided first job with keys alone, in Spanish.
  "guided-keys": () => fresh(async ({ person, page, server }) => {
    await page.goto(`${server.url}?names`);
    await person.ready();
    return guided(person, new KeyHands(person), argument ?? "es");
  }, { locale: argument ?? "es" }),

  /// The same through the elements for reading software alone; what they are in the end, too.
  "guided-mirror": () => fresh(async ({ person, page, server }) => {
    await page.goto(`${server.url}?names`);
    await person.ready();
    const language = argument ?? "en";
    const hands = new MirrorHands(person, messages(language));
    const found = await guided(person, hands, language);
    const elements = await page.locator("#mirror [data-id]").count();
    return { ...found, elements, misplaced: await hands.misplaced() };
  }, { locale: argument ?? "en" }),

  /// The same with a finger alone, on a tablet held across, in English.
  "guided-touch": () => guidedByFinger(""),

  /// The same with the machine drawn flat.
  "guided-flat": () => guidedByFinger("&flat"),

  /// Each `.attempt` in the folder ARGUMENT done again in the browser.
  replays: () => fresh(async ({ person, page, server }) => {
    await person.open(server.url);
    const names = (await readdir(argument)).filter((name) => name.endsWith(".attempt")).sort();
    const ends = {};
    for (const name of names) {
      const text = await readFile(join(argument, name), "utf8");
      ends[name] = await page.evaluate(([name, text]) => {
        try {
          return globalThis.detent.replay_attempt(name, new TextEncoder().encode(text));
        } catch (error) { return `error: ${error.message ?? error}`; }
      }, [name, text]);
    }
    return { ends };
  }),

  /// A tablet held upright, with a dense screen and fingers.
  touch: () => fresh(async ({ page, person, context, server }) => {
    await person.open(server.url);
    const upright = await person.size();
    await person.picture("tablet-start.png");
    const fingers = await context.newCDPSession(page);
    await fingers.send("Emulation.setTouchEmulationEnabled", { enabled: true, maxTouchPoints: 5 });
    const touch = (type, points) => fingers.send("Input.dispatchTouchEvent", {
      type, touchPoints: points.map(([x, y]) => ({ x, y })) });
    const tap = async (label) => {
      const [x, y] = await person.reach(label, undefined, 0);
      // Not waited for: on a slow machine the answer would make a long touch of it.
      const down = touch("touchStart", [[x, y]]);
      await sleep(90);
      await Promise.all([down, touch("touchEnd", [])]);
      await sleep(600);
    };
    await tap("An arc of lamps");
    await tap("Begin the job");
    const before = await person.see("the bench", (seen) => seen.screen === "Bench");
    await sleep(5_000);
    await tap("1  Console");
    await sleep(4_000);
    // A quarter turn to the right with a finger on the dial.
    const [x, y] = (await person.places("dial"))[0];
    const radius = 30;
    const at = (degrees) => [x + radius * Math.sin(degrees * Math.PI / 180), y - radius * Math.cos(degrees * Math.PI / 180)];
    await touch("touchStart", [at(0)]);
    for (let degrees = 0; degrees <= 92; degrees += 8) {
      await touch("touchMove", [at(degrees)]);
      await sleep(60);
    }
    await touch("touchEnd", []);
    await sleep(1_500);
    const turned = await person.seen();
    await person.picture("tablet-panel.png");
    // The ticket is longer than its place: a finger pushes it up.
    const { height } = upright;
    await touch("touchStart", [[12, height - 60]]);
    for (let up = 0; up <= 220; up += 20) {
      await touch("touchMove", [[12, height - 60 - up]]);
      await sleep(120);
    }
    await sleep(600);
    await touch("touchEnd", []);
    await sleep(1_500);
    await tap("Unplug (P)");
    const pulled = await person.see("the plug out", (seen) => !seen.plugged);
    // The stored charge needs its minute.
    await tap("1 min");
    await person.see("a minute's wait", (seen) => seen.time_s > pulled.time_s + 60 && seen.waiting === 0);
    await tap("Remove the panels (C)");
    const opened = await person.see("the cabinet open", (seen) => seen.cabinet_open);
    await tap("3  Inside");
    await tap("Meter");
    await person.picture("tablet-cabinet.png");
    const pixels = await page.evaluate(() => {
      const canvas = document.getElementById("bench");
      return [canvas.width, canvas.clientWidth, canvas.height, canvas.clientHeight];
    });
    const { windowId } = await fingers.send("Browser.getWindowForTarget");
    await fingers.send("Browser.setWindowBounds", { windowId, bounds: { width: 1024, height: 768 } });
    await sleep(2_000);
    const across = await person.size();
    await person.picture("tablet-across.png");
    return { upright, before, turned, pulled, opened, pixels, across, troubles: person.troubles };
  }, { viewport: null, args: ["--force-device-scale-factor=1.5", "--window-size=768,1024"] }),

  /// Opened once, then without a server.
  offline: () => fresh(async ({ page, person, server }) => {
    await person.open(server.url);
    await page.evaluate(() => navigator.serviceWorker.ready.then(() => null));
    await until("the program in the cache", () => page.evaluate(async () => {
      const names = await caches.keys();
      const cache = await caches.open(names[0]);
      return (await cache.keys()).some((request) => request.url.includes(".wasm"));
    }));
    await server.close();
    await page.reload();
    await person.ready();
    return { seen: await person.seen(), asked: server.asked, troubles: person.troubles };
  }),

  /// What the page draws with where WebGL itself is drawn on the processor: by itself, and when the scene is asked for.
  chooses: () => fresh(async ({ page, person, server }) => {
    const drawn = [];
    for (const address of ["", "?software=no"]) {
      await page.goto(`${server.url}${address}`);
      await page.waitForFunction(() => performance.getEntriesByName("detent-first-frame").length > 0,
        null, { timeout: SLOW_MS });
      drawn.push(await page.evaluate(() => {
        const probe = document.createElement("canvas").getContext("webgl2");
        const named = probe.getExtension("WEBGL_debug_renderer_info");
        const painted = document.getElementById("bench").getContext("2d") !== null;
        return { drawer: probe.getParameter(named.UNMASKED_RENDERER_WEBGL), painted };
      }));
    }
    return { drawn, troubles: person.troubles };
  }),

  /// A library in the page: a course as one zip is opened, is open again after a reload, stays when a broken one is given,
  /// and is closed. The argument is a folder with `course.zip` and `broken.zip`.
  library: () => fresh(async ({ page, person, server }) => {
    const words = (key) => MESSAGES.get(key);
    const shown = (label) => until(label, async () => (await person.places(label)).length > 0);
    const inWorkshop = async () => {
      await person.ready();
      await person.everything();
      await person.click(words("start-workshop"), null, 0);
      await shown(words("library-title"));
    };
    const open = words("library-open").replace("{ $place }", "course.zip");
    await page.goto(`${server.url}?names&software`);
    await inWorkshop();
    const before = (await person.places(words("library-none"))).length > 0;
    await page.setInputFiles("#library-zip", join(argument, "course.zip"));
    await shown(open);
    await person.picture("library.png");
    await page.goto(`${server.url}?names&software`);
    await inWorkshop();
    await shown(open);
    await page.setInputFiles("#library-zip", join(argument, "broken.zip"));
    await shown(words("library-mistakes"));
    const stays = (await person.places(open)).length > 0;
    await person.picture("library-broken.png");
    await person.click(words("library-close"), null, 0);
    await shown(words("library-none"));
    return { before, stays, troubles: person.troubles };
  }),

  /// A slow network: how the bar grows.
  loading: () => fresh(async ({ page, context, server }) => {
    const session = await context.newCDPSession(page);
    await session.send("Network.enable");
    await session.send("Network.emulateNetworkConditions",
      { offline: false, latency: 40, downloadThroughput: 2_000_000, uploadThroughput: 1_000_000 });
    await page.goto(server.url, { waitUntil: "commit" });
    const steps = [];
    await until("the program loaded", async () => {
      const step = await page.evaluate(() => {
        const bar = document.getElementById("bar");
        return { value: bar?.hasAttribute("value") ? bar.value : null,
          says: document.getElementById("says")?.textContent, amount: document.getElementById("amount")?.textContent };
      });
      steps.push(step);
      if (steps.length > 1 && step.value > 0.4 && steps.at(-2).value <= 0.4) {
        await page.screenshot({ path: join(out, "loading.png") });
      }
      return step.value === null && step.says;
    });
    return { steps };
  }),

  /// Who has the keys: the bench at first, anyone after Escape and Tab, and never where they are wanted.
  focus: () => fresh(async ({ page, person, server }) => {
    await person.open(server.url);
    const has = () => hasKeys(page);
    const first = await has();
    await page.keyboard.press("Tab");
    const inside = await has();
    await page.keyboard.press("Escape");
    await page.keyboard.press("Tab");
    const outside = await has();
    // The same page within a school's page, where somebody is writing.
    await page.route("**/around.html", (route) => route.fulfill({ contentType: "text/html",
      body: `<input id="name" autofocus><iframe src="${server.url}" width="900" height="500"></iframe>` }));
    await page.goto(`${server.url}around.html`);
    await page.focus("#name");
    const frame = await until("the frame", () => page.frames().find((frame) => frame !== page.mainFrame()));
    await frame.waitForFunction(() => performance.getEntriesByName("detent-first-frame").length > 0,
      null, { timeout: SLOW_MS });
    await page.keyboard.type("Ada", { delay: 60 });
    return { first, inside, outside, around: await has(), written: await page.inputValue("#name") };
  }, { serviceWorkers: "block" }),

  /// A browser that speaks Spanish.
  spanish: () => fresh(async ({ person, server }) => {
    await person.open(server.url);
    await person.picture("spanish-1366x768.png");
    const labels = await person.page.evaluate(() => globalThis.detent.labels());
    await person.enterBench("Empezar el trabajo");
    await person.press("1");
    await sleep(6_000);
    await person.picture("spanish-panel-1366x768.png");
    return { labels, lang: await person.page.evaluate(() => document.documentElement.lang) };
  }, { locale: "es-MX", viewport: { width: 1366, height: 768 } }),

  /// No storage at all: said, and the copy is still there.
  refused: () => fresh(async ({ page, person, server }) => {
    await page.addInitScript(() => {
      IDBFactory.prototype.open = () => { throw new DOMException("denied", "SecurityError"); };
    });
    await person.open(server.url);
    const start = await label(person, says("trouble-refused"));
    await person.begin("Any machine", 137);
    await person.press("p");
    await person.see("the plug out", (seen) => !seen.plugged);
    const bench = await label(person, says("trouble-refused"));
    await person.picture("refused-1280x720.png");
    const [download] = await Promise.all([page.waitForEvent("download"), person.click("Save a copy", undefined, 0)]);
    await download.saveAs(join(out, download.suggestedFilename()));
    return { start, bench, saved: download.suggestedFilename() };
  }),

  /// Storage that fills up in the middle of a job.
  full: () => fresh(async ({ page, person, context, server }) => {
    await person.open(server.url);
    await person.begin("Any machine", 137);
    await person.press("p");
    await person.see("the plug out", (seen) => !seen.plugged);
    await until("the attempt kept", async () => (await person.kept()).length === 1);
    const session = await context.newCDPSession(page);
    await session.send("Storage.overrideQuotaForOrigin", { origin: new URL(server.url).origin, quotaSize: 1 });
    await person.press("l");
    const words = await label(person, says("trouble-full"));
    await session.send("Storage.overrideQuotaForOrigin", { origin: new URL(server.url).origin });
    await person.press("l");
    await until("the trouble over", async () => (await person.places(words)).length === 0);
    return { words, kept: await person.kept() };
  }),

  /// Attempts that cannot be used, among one that can: ARGUMENT holds them.
  unusable: () => fresh(async ({ page, person, server }) => {
    await person.open(server.url);
    for (const name of (await readdir(argument)).sort()) {
      await person.plant(name, await readFile(join(argument, name), "utf8"));
    }
    await page.reload();
    await person.ready();
    const names = (await readdir(argument)).length;
    await person.click(`My attempts (${names})`);
    await person.picture("unusable-1280x720.png");
    const labels = await page.evaluate(() => globalThis.detent.labels());
    // A file from elsewhere, one of them no attempt.
    const give = (name, text) => page.setInputFiles("#file", { name, mimeType: "text/plain", buffer: Buffer.from(text) });
    await give("letter.txt", "a letter to my aunt");
    const foreign = await label(person, says("trouble-foreign"));
    const sound = (await readdir(argument)).find((name) => name.startsWith("sound"));
    await give(sound, await readFile(join(argument, sound), "utf8"));
    const taken = await label(person, says("kept-taken"));
    const kept = await until("the attempt taken in", async () => {
      const kept = await person.kept();
      return kept.length > names && kept;
    });
    await person.click("Delete");
    await person.click("Delete permanently?");
    const left = await until("one deleted", async () => {
      const now = await person.kept();
      return now.length === kept.length - 1 && now.length;
    });
    return { labels, foreign, taken, kept: kept.length, left };
  }),

  /// A tab closed in the middle of saving.
  closed: () => fresh(async ({ page, person, context, server }) => {
    await person.open(server.url);
    await person.begin("Any machine", 137);
    await person.turn("ArrowRight", 10, 120);
    await person.see("ten detents", (seen) => seen.dial === 12);
    // What came within one slow frame is written together; it is not the last action that is meant here.
    await page.waitForTimeout(500);
    await page.keyboard.down("ArrowRight");
    await page.close({ runBeforeUnload: false });
    const again = new Person(await context.newPage());
    await again.open(server.url);
    const kept = await again.kept();
    await again.click("Continue where you left off");
    const seen = await again.see("the bench", (seen) => seen.screen === "Bench");
    return { kept, seen, troubles: again.troubles };
  }),

  /// A second tab, and what becomes of the first.
  tabs: () => fresh(async ({ page, person, context, server }) => {
    await person.open(server.url);
    const second = await context.newPage();
    await second.goto(`${server.url}?names`);
    const refused = await until("the second tab's word", () => second.evaluate(() => {
      const again = document.getElementById("again");
      return !again.hidden && document.getElementById("says").textContent;
    }));
    await second.click("#again");
    const other = new Person(second);
    await other.ready();
    return { refused, first: await cover(page), screen: (await other.seen()).screen };
  }),

  /// A browser without graphics: the bench paints for itself, and hands work.
  dark: () => fresh(async ({ page, person, server }) => {
    await person.open(server.url);
    const webgl = await page.evaluate(() => document.createElement("canvas").getContext("webgl2") !== null);
    await person.picture("dark-start.png");
    await person.enterBench("Begin the job");
    await person.click("1  Console", null, 0);
    await person.see("the clock", (seen) => seen.time_s > 0);
    const before = await person.seen();
    await person.turn("ArrowRight", 3, 300);
    const turned = await person.see("the dial turned", (seen) => seen.dial !== before.dial, 20_000);
    await person.picture("dark-console.png");
    await person.click("Unplug (P)");
    const pulled = await person.see("the plug out", (seen) => !seen.plugged);
    await person.click("2  Machine", null, 0);
    await person.picture("dark-machine.png");
    return { webgl, before, turned, pulled, troubles: person.troubles };
  }, { args: ["--disable-3d-apis"] }),

  /// The graphics are taken away in the middle of a job.
  lost: () => fresh(async ({ page, person, server }) => {
    await person.open(server.url);
    await person.enterBench("Begin the job");
    await person.click("Unplug (P)");
    await person.see("the plug out", (seen) => !seen.plugged);
    await sleep(1_000);
    const before = { seen: await person.seen(), kept: await person.kept() };
    await page.evaluate(() => {
      performance.clearMarks("detent-first-frame");
      const lost = document.getElementById("bench").getContext("webgl2").getExtension("WEBGL_lose_context");
      // The page may be gone before the answer.
      setTimeout(() => lost.loseContext(), 0);
    });
    await page.waitForNavigation({ timeout: SLOW_MS }).catch(() => {});
    await person.ready();
    const after = await person.see("the bench again", (seen) => seen.screen === "Bench");
    const webgl = await page.evaluate(() => document.getElementById("bench").getContext("2d") === null);
    const address = page.url();
    await person.click("Plug in (P)");
    await person.see("the plug in", (seen) => seen.plugged);
    await person.picture("lost.png");
    return { before, after, webgl, address, kept: await person.kept(), troubles: person.troubles };
  }),
};

/// What has the keys; what has them within the bench may have them in its mirror.
function hasKeys(page) {
  return page.evaluate(() => {
    const active = document.activeElement;
    return active.closest("#mirror") ? "bench" : active.id || active.localName;
  });
}

/// The first label on the screen that matches.
async function label(person, pattern, limit_ms) {
  return until(String(pattern), async () => {
    const all = await person.page.evaluate(() => globalThis.detent.labels());
    return all.find((label) => pattern.test(label));
  }, limit_ms);
}

// Software drawing on a busy machine can lose a race with the hand; what is wrong stays wrong.
const TRIES = Number(process.env.DETENT_TRIES ?? 3);
for (let attempt = 1; ; attempt += 1) {
  try {
    console.log(JSON.stringify(await COMMANDS[command]()));
    break;
  } catch (error) {
    console.error(`${command}, try ${attempt} of ${TRIES}:`, error);
    if (attempt < TRIES) continue;
    process.exitCode = 1;
    break;
  }
}
