// Puts the pages of a class before a server that is made up, uses them as an instructor would, and prints what it found as
// one line of JSON. tests/browser/class_pages.rs says what each must show.
//
//   node class_pages.mjs MODULES FOLDER PICTURES
//
// MODULES: the folder with playwright-core and axe-core. FOLDER: pages, files and facts. PICTURES: where pictures go.
import { createServer } from "node:http";
import { createRequire } from "node:module";
import { readFile } from "node:fs/promises";
import { join } from "node:path";

const [modules, folder, pictures] = process.argv.slice(2);
const { chromium } = createRequire(import.meta.url)(join(modules, "playwright-core"));
const BROWSER = process.env.DETENT_CHROMIUM ?? "/usr/bin/chromium";
const facts = JSON.parse(await readFile(join(folder, "facts.json"), "utf8"));
const axe = await readFile(join(modules, "axe-core/axe.min.js"), "utf8");

const sleep = (ms) => new Promise((done) => setTimeout(done, ms));
async function until(what, holds) {
  for (const end = Date.now() + 20_000; Date.now() < end; await sleep(30)) {
    const value = await holds();
    if (value) return value;
  }
  throw new Error(`waited in vain for ${what}`);
}

// The server that is made up.

const PAGES = { "/teacher/board": "board", "/later": "later", "/teacher/projector": "projector", "/teacher": "sign-in",
  "/": "no-page", "/attempt": "projector-attempt", "/done": "projector-done", "/help": "board-help" };
let board = facts.board;
let streams = [];
let posts = [];
/// What the stream answers: 200, a refusal, or nothing at all.
let answers = 200;
let number = 0;
/// What the server says of its form.
const event = (name, data) => `id: ${number += 1}\nevent: ${name}\ndata: ${JSON.stringify(data)}\n\n`;
const tell = (name, data) => streams.forEach((stream) => stream.write(event(name, data)));
const change = (seats, rest = {}) => tell("seats", { seats, standing: board.standing, trouble: null, undrawn: null, ...rest });

async function answerPost(request, url, json) {
  const chunks = [];
  for await (const chunk of request) chunks.push(chunk);
  const text = Buffer.concat(chunks).toString();
  if (request.headers["x-detent-class"] !== "1") return json(403, { error: "no header" });
  if (url.pathname === "/api/teacher/session") {
    const { token } = JSON.parse(text);
    return token === "right" ? json(200, {}) : json(401, { error: "other token" });
  }
  const isJson = request.headers["content-type"] === "application/json";
  posts.push([url.pathname + url.search, isJson ? JSON.parse(text) : text]);
  if (url.pathname.endsWith("/word")) return json(200, { word: "otter" });
  if (url.pathname.endsWith("/hand-in")) {
    return text === "no attempt" ? json(422, { error: "line 1 is no <b>attempt</b>" })
      : json(200, { attempt: "ab", job: null, next: 1, digest: "00", bytes: 1, closed: true, verdict: "Waiting" });
  }
  return json(200, {});
}

const server = createServer(async (request, response) => {
  const url = new URL(request.url, "http://x");
  const json = (status, value) => response.writeHead(status, { "content-type": "application/json" }).end(JSON.stringify(value));
  if (answers === 0) return request.socket.destroy();
  if (request.method === "POST") return answerPost(request, url, json);
  if (url.pathname === "/api/teacher/events") {
    if (answers !== 200 || request.method === "HEAD") return json(answers, {});
    response.writeHead(200, { "content-type": "text/event-stream", "cache-control": "no-store" });
    response.write(`retry: 200\n\n${event("board", board)}`);
    streams.push(response);
    return response.on("close", () => { streams = streams.filter((other) => other !== response); });
  }
  const headers = { "content-security-policy": facts.policy, "x-content-type-options": "nosniff" };
  const send = async (file, type) => response.writeHead(200, { ...headers, "content-type": type })
    .end(await readFile(join(folder, file)));
  if (url.pathname === "/axe.js") return response.writeHead(200, { "content-type": "text/javascript" }).end(axe);
  if (url.pathname === "/qr.svg") return send("qr.svg", "image/svg+xml");
  if (Object.hasOwn(facts.files, url.pathname)) {
    const { file, type } = facts.files[url.pathname];
    return send(file, type);
  }
  const name = PAGES[url.pathname];
  if (!name) return response.writeHead(404, headers).end();
  return send(`${name}.${url.searchParams.get("lang") === "es" ? "es" : "en"}.html`, "text/html; charset=utf-8");
});
await new Promise((listening) => server.listen(0, "127.0.0.1", listening));
const root = `http://127.0.0.1:${server.address().port}`;

const browser = await chromium.launch({ executablePath: BROWSER, args: ["--no-sandbox"] });
const troubles = [];
let alerts = 0;
/// Refusals that a test asks for are no troubles.
const ASKED_FOR = /status of (401|422)|ERR_(EMPTY_RESPONSE|CONNECTION|INCOMPLETE)/;

async function newPage(size = [1366, 768], options = {}) {
  const context = await browser.newContext({ viewport: { width: size[0], height: size[1] }, reducedMotion: "reduce", ...options });
  const page = await context.newPage();
  page.on("pageerror", (error) => troubles.push(String(error)));
  page.on("console", (message) => {
    if (message.type() === "error" && !ASKED_FOR.test(message.text())) troubles.push(message.text());
  });
  page.on("dialog", (dialog) => { alerts += 1; dialog.dismiss(); });
  return page;
}
const open = async (page, path) => {
  await page.goto(root + path);
  if (/board|later|help|projector|attempt|done/.test(path)) {
    const here = streams.length;
    await until("the stream", async () => streams.length >= Math.max(1, here));
  }
};

/// What breaks a rule of WCAG 2.2 A or AA, or a usage that axe recommends; what is wider than the window.
async function broken(page) {
  if (!await page.evaluate(() => globalThis.axe)) await page.addScriptTag({ url: "/axe.js" });
  return page.evaluate(async () => {
    const result = await globalThis.axe.run(document, {
      runOnly: ["wcag2a", "wcag2aa", "wcag21a", "wcag21aa", "wcag22aa", "best-practice"],
      resultTypes: ["violations"],
    });
    const width = document.documentElement.clientWidth;
    // What an open dialog cuts off makes the page no wider.
    const dialog = document.querySelector("dialog[open]");
    const cut = dialog ? [...dialog.querySelectorAll("*")].filter((element) =>
      element.getBoundingClientRect().right > dialog.getBoundingClientRect().right + 1)
      .map((element) => `${element.tagName}#${element.id}`) : [];
    const wider = cut.length ? cut : document.documentElement.scrollWidth > width
      ? [...document.querySelectorAll("body *")].filter((element) => element.getBoundingClientRect().right > width + 1)
        .map((element) => `${element.tagName}.${element.className}`).slice(0, 5)
      : [];
    return {
      passed: result.passes.length,
      violations: result.violations.map(({ id, nodes }) => `${id}: ${nodes.map((node) =>
        `${node.html.slice(0, 160)} ${node.any[0]?.message ?? ""}`).slice(0, 3).join(" | ")}`),
      wider,
    };
  });
}

/// What can be worked and is smaller than 24 px (WCAG 2.2, SC 2.5.8); a link in a sentence may be.
const small = (page) => page.evaluate(() => [...document.querySelectorAll("a, button, input:not([type=hidden]), select, textarea")]
  .filter((element) => {
    const { width, height } = element.getBoundingClientRect();
    return width > 0 && (width < 24 || height < 24) && !element.closest(".skip, .banner");
  }).map((element) => element.outerHTML.slice(0, 120)));

const found = { looks: {}, small: [] };
const SIZES = [[1366, 768, "light"], [1024, 768, "light"], [390, 844, "light"], [1366, 768, "dark"]];
const SHOWN = ["/teacher/board", "/teacher/projector", "/attempt", "/done", "/teacher", "/", "/help"];

for (const language of ["en", "es"]) {
  for (const [width, height, scheme] of SIZES) {
    const page = await newPage([width, height], { colorScheme: scheme });
    for (const path of SHOWN) {
      await open(page, `${path}?lang=${language}`);
      await sleep(100);
      const name = `${PAGES[path]}-${width}-${scheme}-${language}`;
      found.looks[name] = await broken(page);
      found.small.push(...await small(page));
      await page.screenshot({ path: join(pictures, `${name}.png`) });
      if (path === "/help" && width === 390) await page.screenshot({ path: join(pictures, `${name}-whole.png`), fullPage: true });
    }
    if (scheme === "light") {
      await open(page, `/teacher/board?lang=${language}`);
      await page.locator("tr[data-seat='24'] [data-slot=more]").click();
      found.looks[`seat-dialog-${width}-${language}`] = await broken(page);
      found.small.push(...await small(page));
      await page.screenshot({ path: join(pictures, `seat-dialog-${width}-${language}.png`) });
      await page.keyboard.press("Escape");
      await page.locator("[data-standing=Closed]").click();
      found.looks[`close-dialog-${width}-${language}`] = await broken(page);
      await page.screenshot({ path: join(pictures, `close-dialog-${width}-${language}.png`) });
    }
    await page.context().close();
  }
}

// A button without a name, so that it is seen that faults are found.
{
  const page = await newPage();
  await open(page, "/teacher");
  await page.evaluate(() => document.querySelector("main").append(document.createElement("button")));
  found.nameless = (await broken(page)).violations;
  await page.context().close();
}

/// Rows as the server makes them and as they are, where they differ; and how many there are.
const differing = (page, path) => page.evaluate(async (path) => {
  const text = await (await fetch(path)).text();
  const whole = new DOMParser().parseFromString(text, "text/html");
  const rows = (document) => [...document.querySelectorAll("table.seats tbody tr")]
    .map((row) => row.outerHTML.replaceAll(' disabled=""', ""));
  const [made, live] = [rows(whole), rows(document)];
  const parts = (document) => [...document.querySelectorAll(".summary li, #standing")].map((element) => element.textContent);
  const others = JSON.stringify(parts(whole)) === JSON.stringify(parts(document)) ? [] : [[parts(whole), parts(document)]];
  return {
    count: live.length,
    pairs: [...others, ...made.map((row, at) => [row, live[at]]).filter(([a, b]) => a !== b)].slice(0, 2),
  };
}, path);
const changed = facts.later.seats.filter((seat) =>
  JSON.stringify(seat) !== JSON.stringify(facts.board.seats.find((other) => other.seat === seat.seat)));

found.same = {};
for (const language of ["en", "es"]) {
  board = facts.board;
  const page = await newPage();
  await open(page, `/teacher/board?lang=${language}&sort=seat`);
  await until("one stream", () => streams.length === 1);
  await sleep(200);
  const first = await differing(page, `/teacher/board?lang=${language}`);
  change(changed);
  await until("the change", () => page.locator("tr[data-seat='25']").count());
  const later = await differing(page, `/later?lang=${language}`);
  found.same[language] = { rows: first.count, first: first.pairs, later: later.pairs };
  if (language === "en") found.evil = [await page.evaluate(() => globalThis.evil ?? null), alerts];
  await page.context().close();
}

// Events: rows, order, keys and what is typed.
{
  board = facts.board;
  const page = await newPage();
  await open(page, "/help?lang=en");
  await until("one stream", () => streams.length === 1);
  await page.locator("#notice textarea").pressSequentially("Switch off at the wall");
  const heard = () => page.evaluate(() => document.getElementById("told").textContent || null);
  await page.evaluate(() => {
    globalThis.changed = new Set();
    new MutationObserver((records) => {
      for (const { target, addedNodes } of records) {
        const row = (target.closest ? target : target.parentElement)?.closest("tr");
        if (row) globalThis.changed.add(Number(row.dataset.seat));
        // A row that is moved is no change; one that is new is.
        for (const node of addedNodes) if (node.dataset?.seat === "25") globalThis.changed.add(25);
      }
    }).observe(document.querySelector("table.seats tbody"), { subtree: true, childList: true, characterData: true, attributes: true });
  });
  // The row with the keys comes up to the second place.
  await page.locator("tr[data-seat='21'] [data-slot=more]").focus();
  await page.evaluate(() => { globalThis.held = document.activeElement; });
  change(changed);
  await until("the change", () => page.locator("tr[data-seat='25']").count());
  const events = {
    focus_in_row: await page.evaluate(() => [document.activeElement.dataset.slot,
      document.activeElement.closest("tr")?.dataset.seat, document.activeElement === globalThis.held]),
    order: await page.evaluate(() => [...document.querySelectorAll("table.seats tbody tr")].slice(0, 6).map((row) => Number(row.dataset.seat))),
    changed_rows: await page.evaluate(() => [...globalThis.changed].sort((a, b) => a - b)),
    summary: await page.locator(".summary li").allTextContents(),
    said: [await heard()],
  };
  // What goes on is not said; what is being typed stays.
  await page.evaluate(() => document.getElementById("told").replaceChildren());
  await page.locator("#notice textarea").focus();
  await page.keyboard.type(" before");
  change([{ ...changed.find((seat) => seat.seat === 21), idle_s: 1 }]);
  await sleep(150);
  await page.keyboard.type(" you");
  events.typed = await page.locator("#notice textarea").inputValue();
  events.said.push(await heard());
  found.events = events;
  await page.context().close();
}

// By keys alone.
{
  const page = await newPage();
  await open(page, "/teacher/board?lang=en&sort=seat");
  await until("the script", () => page.locator("tr[data-seat='1'] [data-slot=more]:enabled").count());
  await page.keyboard.press("Tab");
  const keys = { first: await page.evaluate(() => document.activeElement.textContent) };
  await page.keyboard.press("Enter");
  keys.skipped = await page.evaluate(() => document.activeElement.id);
  // Order, show, the first row's button.
  for (let presses = 0; presses < 3; presses += 1) await page.keyboard.press("Tab");
  await page.keyboard.press("Enter");
  keys.dialog = await page.evaluate(() => {
    const dialog = document.getElementById("seat-dialog");
    const [seat, name] = dialog.querySelectorAll("h2 [data-slot]");
    return [dialog.open && dialog.contains(document.activeElement), `${seat.textContent} · ${name.textContent}`];
  });
  await page.keyboard.press("Escape");
  keys.back = await page.evaluate(() => [document.getElementById("seat-dialog").open,
    document.activeElement.dataset.slot, document.activeElement.closest("tr")?.dataset.seat]);
  found.keys = keys;
  await page.context().close();
}

// What an instructor sends.
{
  posts = [];
  const page = await newPage();
  await open(page, "/teacher/board?lang=en&sort=seat");
  const note = async (id) => {
    await until(id, () => page.locator(`#${id}`).textContent());
    return page.locator(`#${id}`).textContent();
  };
  const notes = {};
  await page.locator("#notice textarea").fill("Five minutes more");
  await page.locator("#notice button").click();
  notes.all = [await note("notice-note"), await page.locator("#notice textarea").inputValue()];
  await page.locator("tr[data-seat='2'] [data-slot=more]").click();
  await page.locator("#seat-message textarea").fill("Look at the lid");
  await page.locator("#seat-message button").click();
  await note("seat-message-note");
  await page.locator("#word").click();
  notes.word = await note("word-note");
  const handIn = async (name, text) => {
    await page.locator("#hand-in-file").setInputFiles({ name, mimeType: "text/plain", buffer: Buffer.from(text) });
    const before = await page.locator("#hand-in-note").textContent();
    await page.locator("#hand-in button").click();
    await until("the answer", async () => await page.locator("#hand-in-note").textContent() !== before);
    return page.locator("#hand-in-note").textContent();
  };
  notes.hand_in = [await handIn('a "b".attempt', "bytes of an attempt"), await handIn("bad.attempt", "no attempt")];
  await page.screenshot({ path: join(pictures, "seat-2-notes.png") });
  // What is begun for one seat is not shown at another, and is there again.
  await page.locator("#seat-message textarea").fill("half a sentence");
  await page.keyboard.press("Escape");
  await page.locator("tr[data-seat='3'] [data-slot=more]").click();
  notes.draft = [await page.locator("#seat-message textarea").inputValue()];
  await page.keyboard.press("Escape");
  await page.locator("tr[data-seat='2'] [data-slot=more]").click();
  notes.draft.push(await page.locator("#seat-message textarea").inputValue());
  await page.keyboard.press("Escape");
  await page.locator("#names textarea").fill("Ana\nBo");
  await page.locator("#names button").click();
  await note("names-note");
  await page.locator("[data-standing=Paused]").click();
  await until("the pause", () => posts.length === 7);
  await page.locator("[data-standing=Closed]").click();
  await page.locator("#close-dialog [data-close]").click();
  await page.locator("[data-standing=Closed]").click();
  await page.locator("#close-dialog [data-confirm]").click();
  await until("the close", () => posts.length === 8);
  change([], { standing: "Closed" });
  await until("the standing", async () => await page.locator("[data-standing=Closed]").getAttribute("aria-pressed") === "true");
  found.posts = posts;

  // The connection goes; a message that is not sent stays.
  answers = 0;
  streams.forEach((stream) => stream.destroy());
  await until("the banner", () => page.locator("#lost").isVisible());
  const lost = { told: await page.locator("#lost").textContent() };
  await page.locator("#notice textarea").fill("lost?");
  await page.locator("#notice button").click();
  await until("the failure", async () => /answer/.test(await page.locator("#notice-note").textContent()));
  notes.failed = [await page.locator("#notice-note").textContent(), await page.locator("#notice textarea").inputValue()];
  await page.evaluate(() => globalThis.scrollTo(0, 0));
  await page.screenshot({ path: join(pictures, "lost.png") });
  answers = 200;
  await until("the connection", async () => !await page.locator("#lost").isVisible());
  lost.back = await page.locator("#told p").allTextContents();
  // The cookie is worth nothing any more.
  answers = 401;
  streams.forEach((stream) => stream.destroy());
  await until("the way back in", () => page.locator("#signed-out").isVisible());
  lost.signed_out = true;
  answers = 200;
  Object.assign(found, { lost, notes });
  await page.context().close();
}

// A stream that the server keeps alive and that falls silent is noticed and opened anew.
{
  const page = await newPage();
  await page.clock.install();
  await open(page, "/teacher/board?lang=en");
  await until("one stream", () => streams.length === 1);
  await page.evaluate(() => {
    globalThis.said = [];
    new MutationObserver((records) => records.forEach(({ addedNodes }) =>
      addedNodes.forEach((line) => globalThis.said.push(line.textContent.split(" since")[0]))))
      .observe(document.getElementById("told"), { childList: true });
  });
  const said = () => page.evaluate(() => globalThis.said);
  await page.clock.runFor(60_000);
  found.silent = [await said()];
  tell("pulse", {});
  await sleep(200);
  await page.clock.runFor(30_000);
  found.silent.push(await said());
  await page.clock.runFor(30_000);
  await until("the new stream", async () => (await said()).length > 1);
  found.silent.push(await said());
  await page.context().close();
}

// The way in.
{
  const page = await newPage();
  const path = () => page.evaluate(() => location.pathname + location.search + location.hash);
  await page.goto(`${root}/teacher?lang=en#right`);
  await page.waitForURL("**/teacher/board?lang=en");
  const sign_in = { went: await path() };
  await page.goto(`${root}/teacher?lang=en#wrong`);
  await until("the refusal", () => page.locator("#sign-in-note").textContent());
  sign_in.refused = [await page.locator("#sign-in-note").textContent(), await path()];
  await page.screenshot({ path: join(pictures, "sign-in-refused.png") });
  await page.locator("#key").fill("http://192.0.2.1:8090/teacher#right");
  await page.keyboard.press("Enter");
  await page.waitForURL("**/teacher/board?lang=en");
  sign_in.pasted = await path();
  found.sign_in = sign_in;
  await page.context().close();
}

// The projector follows, and has no name.
{
  const page = await newPage([1024, 768]);
  await open(page, "/teacher/projector?lang=en");
  await until("one stream", () => streams.length === 1);
  const joined = () => page.locator("#joined").textContent();
  const before = await joined();
  change(changed.filter((seat) => seat.seat === 11));
  await until("the change", async () => await joined() !== before);
  const text = await page.evaluate(() => document.documentElement.outerHTML);
  found.projector = [before, await joined(), facts.board.seats.some((seat) => text.includes(seat.name))];
  await page.context().close();
}

// Without scripts the form still chooses.
{
  const page = await newPage([1366, 768], { javaScriptEnabled: false });
  await page.goto(`${root}/teacher/board?lang=en`);
  await page.locator("select[name=sort]").selectOption("name");
  await page.locator("#choice button").click();
  await page.waitForURL("**sort=name**");
  found.without_script = [new URL(page.url()).searchParams.get("sort"), await page.locator("table.seats tbody tr").count(),
    await page.locator("noscript .banner").isVisible()];
  await page.screenshot({ path: join(pictures, "without-script.png") });
  await page.context().close();
}

await browser.close();
server.close();
server.closeAllConnections();
console.log(JSON.stringify({ ...found, troubles }));
