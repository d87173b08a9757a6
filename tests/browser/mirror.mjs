// Holds the mirror (assets/web/mirror.js) against the rules for web content, and reads it as reading software does:
// changes that were dumped natively are shown in the page without the bench. Prints what it found as a line of JSON.
//
//   node mirror.mjs MODULES CHANGES
//
// MODULES: the folder with playwright-core, axe-core and @guidepup/virtual-screen-reader. CHANGES: a JSON list of
// `{ language, name, change }`; each change stands on an empty page.
import { createServer } from "node:http";
import { createRequire } from "node:module";
import { readFile } from "node:fs/promises";
import { join } from "node:path";

const [modules, changes] = process.argv.slice(2);
const { chromium } = createRequire(import.meta.url)(join(modules, "playwright-core"));
const BROWSER = process.env.DETENT_CHROMIUM ?? "/usr/bin/chromium";
const page_file = (name) => readFile(new URL(`../../assets/web/${name}`, import.meta.url), "utf8");

/// The page as it is once the bench is there, with nothing behind it.
const html = (await page_file("index.html"))
  .replace(/<script[^>]*id="build">.*?<\/script>/s, "")
  .replace('<script src="page.js"></script>', "")
  .replace('<section id="cover"', '<section id="cover" class="gone"');
/// The whole page, with a bench that draws nothing, shows two elements and notes what is asked of it.
const whole = (await page_file("index.html"))
  .replace("{{BUILD}}", JSON.stringify({ version: "0", wasm: "bench.wasm", glue: "./bench.js", bytes: { "": 4 } }));
const bench = `
  const place = [10, 10, 100, 20];
  export default async () => {};
  export const ask = (...request) => (globalThis.asked ??= []).push(request);
  export const open = async () => {
    globalThis.detentPage.firstFrame();
    globalThis.detentPage.mirror(JSON.stringify({ scale: 1, order: { "": ["1", "2"] }, put: [
      { id: "1", kind: "button", name: "One", place }, { id: "2", kind: "field", name: "Two", value: "", place }] }));
  };`;
const FILES = {
  "/whole": ["text/html", whole],
  "/page.js": ["text/javascript", await page_file("page.js")],
  "/bench.js": ["text/javascript", bench],
  "/bench.wasm": ["application/wasm", "none"],
  "/": ["text/html", html],
  "/page.css": ["text/css", await page_file("page.css")],
  "/mirror.js": ["text/javascript", await page_file("mirror.js")],
  "/axe.js": ["text/javascript", await readFile(join(modules, "axe-core/axe.min.js"), "utf8")],
  "/reader.js": ["text/javascript",
    await readFile(join(modules, "@guidepup/virtual-screen-reader/lib/esm/index.browser.js"), "utf8")],
};
const server = createServer((request, response) => {
  const [type, text] = FILES[new URL(request.url, "http://x").pathname] ?? [];
  if (!text) return response.writeHead(404).end();
  response.writeHead(200, { "content-type": type }).end(text);
});
await new Promise((listening) => server.listen(0, "127.0.0.1", listening));
const browser = await chromium.launch({ executablePath: BROWSER, args: ["--no-sandbox", "--use-gl=angle",
  "--use-angle=swiftshader", "--enable-unsafe-swiftshader", "--ignore-gpu-blocklist"] });
const page = await browser.newPage({ viewport: { width: 1366, height: 768 } });
const troubles = [];
page.on("pageerror", (error) => troubles.push(String(error)));

/// The page with this change on it; what is asked for is kept in `asked`, the keys that come to the canvas in `keys`.
async function show({ language, change }) {
  await page.goto(`http://127.0.0.1:${server.address().port}/`);
  await page.evaluate(([language, change]) => {
    document.documentElement.lang = language;
    const canvas = document.getElementById("bench");
    globalThis.asked = [];
    globalThis.keys = [];
    for (const type of ["keydown", "keyup", "focus", "blur"]) {
      canvas.addEventListener(type, (event) => {
        globalThis.keys.push(event.key ? `${type} ${event.key}` : type);
        if (event.key === "Tab") event.preventDefault();
      });
    }
    const root = document.getElementById("mirror");
    globalThis.mirror = globalThis.detentMirror(root, canvas, (...request) => globalThis.asked.push(request));
    globalThis.mirror.apply(change);
  }, [language, change]);
}

/// What breaks a rule of WCAG 2.2 A or AA, or a usage that axe recommends.
async function broken() {
  await page.addScriptTag({ url: "/axe.js" });
  const result = await page.evaluate(() => globalThis.axe.run(document, {
    runOnly: ["wcag2a", "wcag2aa", "wcag21a", "wcag21aa", "wcag22aa", "best-practice"],
    resultTypes: ["violations"],
  }));
  return {
    passed: result.passes.length,
    violations: result.violations.map(({ id, nodes }) => `${id}: ${nodes.map((node) => node.html).slice(0, 3).join(" ")}`),
  };
}

/// What is said from the first to the last thing in the main part of the page; in an open dialog, which nothing leads
/// out of, until it begins anew. Without what says that something ends, and that a text is one.
async function read() {
  return page.evaluate(async () => {
    const { virtual } = await import("/reader.js");
    const said = [];
    let dialogs = 0;
    await virtual.start({ container: document.querySelector("main") });
    for (let steps = 0; steps < 2_000; steps += 1) {
      const phrase = await virtual.lastSpokenPhrase();
      if (phrase === "end of main") break;
      if (phrase.startsWith("dialog") && said.at(-1) !== phrase && (dialogs += 1) === 2) break;
      if (!phrase.startsWith("end of ") && phrase !== "paragraph") said.push(phrase);
      await virtual.next();
    }
    await virtual.stop();
    return said;
  });
}

const screens = {};
const READ = new Set(["start-first", "bench-sheet-Entry", "caution"]);
for (const screen of JSON.parse(await readFile(changes, "utf8"))) {
  await show(screen);
  const key = `${screen.language} ${screen.name}`;
  screens[key] = { ...await broken(), elements: await page.locator("#mirror [data-id]").count() };
  if (READ.has(screen.name)) screens[key].said = await read();
}

/// Both ways, on a page of a few elements.
async function both_ways() {
  const at = (top) => [10, top, 100, 20];
  await show({ language: "en", change: {
    scale: 1,
    put: [
      { id: "1", kind: "button", name: "Unplug", place: at(0) },
      { id: "2", kind: "checkbox", name: "Seen", place: at(30), checked: "false" },
      { id: "3", kind: "field", name: "Search", place: at(60), value: "" },
      { id: "4", kind: "slider", name: "Target", place: at(90), number: 75, min: 50, max: 95, step: 5 },
      { id: "5", kind: "button", name: "Not now", place: at(120), disabled: true },
      { id: "6", kind: "text", name: "Lamp 1 is lit.", place: at(150) },
    ],
    order: { "": ["1", "2", "3", "4", "5"], live: ["6"] },
    focus: null,
  } });
  const taken = async (list) => page.evaluate((list) => globalThis[list].splice(0), list);
  const apply = (change) => page.evaluate((change) => globalThis.mirror.apply(change), change);
  const active = () => page.evaluate(() => document.activeElement.dataset.id ?? (document.activeElement.id || "none"));
  const found = {};
  await page.focus("#bench");
  await taken("keys");
  // egui's focus is the page's; the canvas is not told that it has lost the keys.
  await apply({ focus: "1" });
  found.followed = [await active(), await taken("asked"), await taken("keys")];
  await page.keyboard.press("Tab");
  await page.keyboard.press("Enter");
  found.keys = [await taken("keys"), await taken("asked")];
  await page.getByRole("button", { name: "Unplug" }).evaluate((element) => element.click());
  await page.getByRole("checkbox", { name: "Seen" }).evaluate((element) => element.click());
  found.checked = await page.getByRole("checkbox", { name: "Seen" }).isChecked();
  await page.getByRole("button", { name: "Not now" }).evaluate((element) => element.click());
  found.clicks = await taken("asked");
  await page.getByRole("textbox", { name: "Search" }).fill("belt");
  found.filled = await taken("asked");
  await taken("keys");
  await page.keyboard.type("x");
  found.typed = [await taken("keys"), await page.getByRole("textbox").inputValue(), await taken("asked")];
  await page.getByRole("slider", { name: "Target" }).fill("80");
  found.slid = await taken("asked");
  // What has the keys and goes leaves them to the canvas.
  await apply({ focus: "4" });
  await apply({ gone: ["4"], order: { "": ["1", "2", "3", "5"] }, focus: null });
  found.left = await active();
  // Escape, then Tab: out of the page from an element too.
  await apply({ focus: "1" });
  found.tab_stops = await page.evaluate(() => document.getElementById("bench").tabIndex);
  // Somebody else's field keeps the keys.
  await page.evaluate(() => {
    const field = document.body.appendChild(document.createElement("input"));
    field.id = "other";
    field.focus();
  });
  await taken("keys");
  await apply({ focus: "2" });
  found.others = [await active(), await page.evaluate(() => document.getElementById("bench").tabIndex)];
  // The same elements stay when others come, go and change places.
  found.kept = await page.evaluate(() => {
    const before = document.querySelector("[data-id='3']");
    globalThis.mirror.apply({
      put: [{ id: "7", kind: "dialog", name: "Danger", modal: true, place: [0, 0, 300, 200] },
        { id: "8", kind: "button", name: "Step back", place: [10, 10, 80, 20] }],
      order: { "": ["3", "1", "2", "5", "7"], 7: ["8"] },
      places: { 3: [5, 6, 70, 80] },
    });
    const { left, top } = before.getBoundingClientRect();
    const all = [...document.querySelectorAll("#mirror [data-id]")].map((element) => element.dataset.id);
    return [before === document.querySelector("[data-id='3']"), left, top, all];
  });
  // What stands in something that goes, and stays, has moved out of it.
  await apply({ gone: ["7"], order: { "": ["3", "1", "2", "5", "8"] } });
  found.out = await page.evaluate(() => document.querySelector("[data-id='8']").parentElement.dataset.part);
  return found;
}
/// The page's own handling of keys, with the focus among the elements: Tab stays, Escape and Tab leave, and how long ago a
/// key moved is known.
async function in_the_whole_page() {
  await page.goto(`http://127.0.0.1:${server.address().port}/whole`);
  await page.waitForFunction(() => document.querySelector("#mirror [data-id='2']"), null, { timeout: 20_000 });
  const active = () => page.evaluate(() => document.activeElement.dataset.id ?? (document.activeElement.id || "none"));
  const follow = async (focus) => {
    await page.evaluate((focus) => globalThis.detentPage.mirror(JSON.stringify({ focus })), focus);
    return active();
  };
  const found = { first: await active(), followed: await follow("1") };
  await page.keyboard.press("Tab");
  found.inside = await active();
  await page.keyboard.press("s");
  found.age_known = await page.evaluate(() => globalThis.detentPage.keyAge("KeyS", true) >= 0);
  // The pointer takes the keys back to the canvas, and egui gives them on again.
  await page.mouse.click(600, 400);
  found.clicked = [await active(), await follow("2")];
  await page.keyboard.press("Escape");
  await page.keyboard.press("Tab");
  found.outside = await active();
  // Nothing of a bench that has stopped can be worked.
  await page.evaluate(() => globalThis.detentPage.stopped("tried"));
  found.stopped = await page.evaluate(() => document.getElementById("mirror").inert);
  return found;
}

const ways = await both_ways();
ways.page = await in_the_whole_page();
await browser.close();
server.close();
console.log(JSON.stringify({ screens, ways, troubles }));
