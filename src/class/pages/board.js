// Keeps the instructor's board up to date, and sends what the instructor does. A row is changed only where it differs, and
// what has the keys or is being typed stays where it is.
import { comeTo, duration, follow, page, say, send, setTags, setText, shown, told, verdictTag, workTitle } from "./page.js";

const MOST_RESULTS = 3;
/// Rows keep their places for so long after the pointer moved over them, ms.
const REST_MS = 2_000;
/// Names of the states, who needs help soonest first, and their signs.
const STATES = page.states.map(([state]) => state);
const SIGNS = Object.fromEntries(page.states);

const byId = (id) => document.getElementById(id);
const slot = (root, name) => root.querySelector(`[data-slot="${name}"]`);
const rows = document.querySelector("table.seats tbody");
const choice = byId("choice");
const seatDialog = byId("seat-dialog");
const closeDialog = byId("close-dialog");

/// Seats by their numbers, each with when it was told, and its row.
const seats = new Map();
/// What is being done for a seat: `{ text, word, messageNote, handInNote }`.
const doings = new Map();
let jobs = [];
let drills = [];
let standing = { value: "Closed", at: 0 };
/// Since when nothing comes any more; then what is shown stands still.
let frozen = null;
let rested = -Infinity;

const now = () => frozen ?? performance.now();
/// Seconds that were told at a moment, as they are now.
const grown = (seconds, at) => seconds === null ? null : Math.floor(seconds + (now() - at) / 1000);

const isOpen = () => typeof standing.value === "object" && "Open" in standing.value;

function statesOf({ view, at }) {
  if (!view.joined) return ["absent"];
  const [newest] = view.attempts;
  const closed = view.attempts.filter((attempt) => attempt.closed);
  const finished = jobs.length + drills.length > 0
    && jobs.every((job) => closed.some((attempt) => !attempt.drill && attempt.job === job))
    && drills.every((drill) => closed.some((attempt) => attempt.drill?.drill === drill));
  const idle = grown(view.idle_s, at);
  const silent = grown(view.silent_s, at);
  const states = [];
  if (view.attempts.some((attempt) => attempt.unsafe_now)) states.push("unsafe");
  if (isOpen() && newest?.stuck && !newest.closed) states.push("stuck");
  if (isOpen() && !finished && idle !== null && idle >= page.idle_s) states.push("idle");
  if (standing.value !== "Closed" && !finished && silent !== null && silent >= page.silent_s) states.push("silent");
  if (states.length) return states;
  if (finished) return ["finished"];
  if (!isOpen()) return ["here"];
  return [newest ? "working" : "not-begun"];
}

const stateTag = (state, { view, at }) =>
  [state, SIGNS[state], told(`pages-state-${state}`, { time: duration(grown(view.silent_s, at) ?? 0) })];

function setAttribute(element, name, value) {
  if (element.getAttribute(name) !== value) element.setAttribute(name, value);
}

function setHidden(element, hidden) {
  if (element.hidden !== hidden) element.hidden = hidden;
}

function fillRow(seat) {
  const { row, view, at } = seat;
  const name = shown(view.name);
  const [newest] = view.attempts;
  setAttribute(row, "data-state", seat.states[0]);
  setText(slot(row, "number"), String(view.seat));
  setText(slot(row, "name"), name);
  setTags(slot(row, "states"), seat.states.map((state) => stateTag(state, seat)));
  setText(slot(row, "job"), newest ? workTitle(newest) : "–");
  setText(slot(row, "deeds"), newest ? String(newest.deeds) : "–");
  setText(slot(row, "machine-time"), newest ? duration(newest.machine_s) : "–");
  setText(slot(row, "idle"), view.idle_s === null ? "–" : duration(grown(view.idle_s, at)));
  const closed = view.attempts.filter((attempt) => attempt.closed);
  const results = closed.slice(0, MOST_RESULTS).map(comeTo);
  if (closed.length > MOST_RESULTS) results.push(["rest", "", `+${closed.length - MOST_RESULTS}`]);
  setTags(slot(row, "results"), results);
  setAttribute(slot(row, "more"), "aria-label", told("pages-more-of", { seat: view.seat, name }));
  slot(row, "more").disabled = false;
  const download = slot(row, "download");
  setHidden(download, !newest);
  setAttribute(download, "aria-label", told("pages-download-newest", { name }));
  if (newest) setAttribute(download, "href", `/api/teacher/attempts/${newest.attempt}`);
}

function newRow() {
  const row = byId("seat-template").content.firstElementChild.cloneNode(true);
  rows.append(row);
  return row;
}

function take(view, at) {
  let seat = seats.get(view.seat);
  if (!seat) {
    const row = rows.querySelector(`tr[data-seat="${Number(view.seat)}"]`) ?? newRow();
    row.dataset.seat = view.seat;
    seat = { row, states: null };
    seats.set(view.seat, seat);
  }
  Object.assign(seat, { view, at });
}

/// Brings everything that is shown up to what is known. `heard`: it came just now, so that what is new in it is said.
function show(heard) {
  const said = [];
  for (const seat of seats.values()) {
    const before = seat.states;
    seat.states = statesOf(seat);
    if (heard && before) {
      const values = { seat: seat.view.seat, name: shown(seat.view.name) };
      const isNew = (state) => seat.states.includes(state) && !before.includes(state);
      if (isNew("unsafe")) said.push(told("pages-told-unsafe", values));
      if (isNew("stuck")) said.push(told("pages-told-stuck", values));
    }
    fillRow(seat);
  }
  if (said.length) say(said.join(" "));
  const are = (state) => [...seats.values()].filter((seat) => seat.states.includes(state)).length;
  const count = [...seats.values()].filter((seat) => seat.view.joined).length;
  setText(slot(document, "here"), told("pages-summary-here", { count, of: seats.size }));
  setText(slot(document, "stuck"), told("pages-summary-stuck", { count: are("stuck") }));
  setText(slot(document, "unsafe"), told("pages-summary-unsafe", { count: are("unsafe") }));
  showStanding();
  arrange();
  if (seatDialog.open) fillAttempts();
}

function showStanding() {
  const { value, at } = standing;
  const left = (seconds) => duration(Math.max(0, seconds - (now() - at) / 1000));
  let words;
  let pressed = value;
  if (value === "Paused") words = told("pages-standing-paused");
  else if (value === "Closed") words = told("pages-standing-closed");
  else if (value.NotOpen) [words, pressed] = [told("pages-standing-not-open", { time: left(value.NotOpen.in_s) }), ""];
  else if (value.Open.left_s === null) [words, pressed] = [told("pages-standing-open"), "Open"];
  else [words, pressed] = [told("pages-standing-open-until", { time: left(value.Open.left_s) }), "Open"];
  setText(byId("standing"), words);
  for (const button of document.querySelectorAll("[data-standing]")) {
    setAttribute(button, "aria-pressed", String(button.dataset.standing === pressed));
    if (button.dataset.standing === "Open") {
      setText(button, value.NotOpen ? told("pages-standing-open-now") : told("pages-standing-set-open"));
    }
    button.disabled = false;
  }
}

const collator = new Intl.Collator(page.language, { numeric: true });
const ORDERS = {
  help: (a, b) => STATES.indexOf(a.states[0]) - STATES.indexOf(b.states[0]),
  name: (a, b) => collator.compare(shown(a.view.name), shown(b.view.name)),
  seat: () => 0,
};
const SHOWN = {
  all: () => true,
  help: (state) => STATES.indexOf(state) <= STATES.indexOf("idle"),
  absent: (state) => state === "absent",
};

/// Puts the rows in order around the one that has the keys or gets them back, which is not moved, and shows those that are
/// asked for. Under a
/// pointer that moves they wait.
function arrange() {
  if (performance.now() - rested < REST_MS) return;
  const compare = ORDERS[choice.elements.sort.value];
  const shows = SHOWN[choice.elements.show.value];
  const order = [...seats.values()].sort((a, b) => compare(a, b) || a.view.seat - b.view.seat);
  if (!order.length) return;
  const held = seatDialog.open ? seats.get(chosen())?.row : document.activeElement?.closest("table.seats tbody tr");
  for (const seat of order) {
    setHidden(seat.row, !shows(seat.states[0]) && seat.row !== held);
  }
  byId("nobody").hidden = order.some((seat) => !seat.row.hidden);
  const wanted = order.map((seat) => seat.row);
  let anchor = wanted.indexOf(held);
  if (anchor < 0) {
    anchor = 0;
    if (rows.firstElementChild !== wanted[0]) rows.prepend(wanted[0]);
  }
  for (let at = anchor - 1; at >= 0; at -= 1) {
    if (wanted[at + 1].previousElementSibling !== wanted[at]) wanted[at + 1].before(wanted[at]);
  }
  for (let at = anchor + 1; at < wanted.length; at += 1) {
    if (wanted[at - 1].nextElementSibling !== wanted[at]) wanted[at - 1].after(wanted[at]);
  }
}

function takeStanding(value, at) {
  standing = { value, at };
}

/// What is wrong with the server, and which job could not be drawn.
function takeTroubles({ trouble = null, undrawn = null }) {
  const job = undrawn === null ? null : title(undrawn);
  takeTrouble("trouble", trouble, (what) => told("pages-trouble", { what }));
  takeTrouble("undrawn", job, (what) => told("pages-undrawn", { what }));
}

function takeTrouble(name, what, inWords) {
  const banner = byId(name);
  const words = what === null ? "" : inWords(what);
  if (words && banner.textContent !== words) say(words);
  setText(banner, words);
  banner.hidden = what === null;
}

function takeBoard(board, heard) {
  const at = performance.now();
  jobs = board.jobs;
  drills = board.drills;
  takeStanding(board.standing, at);
  takeTroubles(board);
  const there = new Set(board.seats.map((view) => view.seat));
  for (const [number, { row }] of seats) {
    if (there.has(number)) continue;
    const hadKeys = row.contains(document.activeElement);
    row.remove();
    seats.delete(number);
    if (hadKeys) byId("seats").focus();
  }
  for (const view of board.seats) take(view, at);
  show(heard);
}

// What is done for one seat.

const chosen = () => Number(seatDialog.dataset.seat);
function doing(number) {
  if (!doings.has(number)) doings.set(number, { text: "", word: "", messageNote: "", handInNote: "" });
  return doings.get(number);
}

function fillNotes() {
  const { word, messageNote, handInNote } = doing(chosen());
  setText(byId("word-note"), word);
  setText(byId("seat-message-note"), messageNote);
  setText(byId("hand-in-note"), handInNote);
}

function fillAttempts() {
  const seat = seats.get(chosen());
  if (!seat) return seatDialog.close();
  setText(slot(seatDialog, "seat"), told("pages-seat", { seat: seat.view.seat }));
  setText(slot(seatDialog, "name"), shown(seat.view.name));
  const list = slot(seatDialog, "attempts");
  slot(seatDialog, "no-attempts").hidden = seat.view.attempts.length > 0;
  const known = new Map([...list.children].map((item) => [item.dataset.attempt, item]));
  for (const attempt of [...seat.view.attempts].reverse()) {
    let item = known.get(attempt.attempt);
    known.delete(attempt.attempt);
    if (!item) {
      item = byId("attempt-template").content.firstElementChild.cloneNode(true);
      item.dataset.attempt = attempt.attempt;
      const watch = slot(item, "watch");
      if (watch) watch.href = `/?lang=${page.language}&watch=${attempt.attempt}`;
      // A round of a drill is at no bench.
      if (watch && attempt.drill) watch.remove();
      slot(item, "download").href = `/api/teacher/attempts/${attempt.attempt}`;
      slot(item, "project").href = `/teacher/projector?lang=${page.language}&attempt=${attempt.attempt}`;
      list.prepend(item);
    }
    setText(slot(item, "job"), workTitle(attempt));
    setText(slot(item, "deeds"), String(attempt.deeds));
    setText(slot(item, "machine-time"), duration(attempt.machine_s));
    setText(slot(item, "unsafe-acts"), String(attempt.unsafe_acts));
    setTags(slot(item, "tags"), [comeTo(attempt)]);
  }
  for (const gone of known.values()) gone.remove();
}

function openSeat(number) {
  seatDialog.dataset.seat = number;
  slot(seatDialog, "attempts").replaceChildren();
  byId("seat-message").elements.text.value = doing(number).text;
  byId("hand-in").reset();
  fillAttempts();
  fillNotes();
  seatDialog.showModal();
}

/// Does one thing at a time with a form or button, however often it is pressed.
async function once(element, work) {
  if (element.ariaBusy === "true") return;
  element.ariaBusy = "true";
  try {
    await work();
  } finally {
    element.ariaBusy = null;
  }
}

/// Sends the text of a form; a text that did not get there stays. `note` is told what came of it.
function sendText(form, path, body, words, note, sent) {
  const field = form.elements.text;
  const text = field.value.trim();
  if (!text) {
    note(words.none);
    return field.focus();
  }
  return once(form, async () => {
    const { error, answer } = await send(path, JSON.stringify(body(text)));
    const refused = answer?.refused ?? [];
    note(error ?? (refused.length ? told("pages-names-refused", { what: refused.join(", ") }) : words.done));
    if (error) return;
    // The field may be another seat's by now, or hold the next text.
    if (field.value.trim() === text) field.value = "";
    sent?.(text);
  });
}

rows.addEventListener("click", (event) => {
  const button = event.target.closest('[data-slot="more"]');
  if (button) openSeat(Number(button.closest("tr").dataset.seat));
});
rows.addEventListener("pointermove", () => { rested = performance.now(); });
rows.addEventListener("pointerleave", () => { rested = -Infinity; });
choice.addEventListener("change", () => {
  const query = new URLSearchParams(new FormData(choice));
  history.replaceState(null, "", `?${query}`);
  for (const link of document.querySelectorAll("a.language")) {
    query.set("lang", link.hreflang);
    link.search = `?${query}`;
  }
  rested = -Infinity;
  arrange();
});
choice.addEventListener("submit", (event) => event.preventDefault());

for (const dialog of [seatDialog, closeDialog]) {
  dialog.querySelector("[data-close]").addEventListener("click", () => dialog.close());
}
seatDialog.addEventListener("close", () => {
  doing(chosen()).text = byId("seat-message").elements.text.value;
});

async function setStanding(value) {
  const { error } = await send("/api/teacher/standing", JSON.stringify({ standing: value }));
  setText(byId("standing-note"), error ?? "");
}
for (const button of document.querySelectorAll("[data-standing]")) {
  button.addEventListener("click", () => {
    if (button.ariaPressed === "true") return;
    if (button.dataset.standing === "Closed") closeDialog.showModal();
    else once(button, () => setStanding(button.dataset.standing));
  });
}
const confirm = closeDialog.querySelector("[data-confirm]");
confirm.addEventListener("click", () => once(confirm, async () => {
  closeDialog.close();
  await setStanding("Closed");
}));

const MESSAGE_WORDS = { none: told("pages-message-none"), done: told("pages-message-sent") };
byId("notice").addEventListener("submit", (event) => {
  event.preventDefault();
  sendText(event.target, "/api/teacher/notices", (text) => ({ seat: null, text }), MESSAGE_WORDS,
    (words) => setText(byId("notice-note"), words));
});
byId("names").addEventListener("submit", (event) => {
  event.preventDefault();
  sendText(event.target, "/api/teacher/names", (text) => ({ text }),
    { none: told("pages-names-none"), done: told("pages-names-added") },
    (words) => setText(byId("names-note"), words));
});
byId("seat-message").addEventListener("submit", (event) => {
  event.preventDefault();
  const seat = chosen();
  sendText(event.target, "/api/teacher/notices", (text) => ({ seat, text }), MESSAGE_WORDS, (words) => {
    doing(seat).messageNote = words;
    fillNotes();
  }, (text) => {
    if (doing(seat).text.trim() === text) doing(seat).text = "";
  });
});
byId("word").addEventListener("click", (event) => once(event.target, async () => {
  const seat = chosen();
  const { answer, error } = await send(`/api/teacher/seats/${seat}/word`, "{}");
  doing(seat).word = error ?? told("pages-word-is", { word: answer.word });
  fillNotes();
}));
byId("hand-in").addEventListener("submit", (event) => {
  event.preventDefault();
  const seat = chosen();
  const form = event.target;
  const [file] = form.elements.file.files;
  const note = (words) => {
    doing(seat).handInNote = words;
    fillNotes();
  };
  if (!file) {
    note(told("pages-hand-in-none"));
    return form.elements.file.focus();
  }
  once(form, async () => {
    const path = `/api/teacher/seats/${seat}/hand-in?name=${encodeURIComponent(file.name)}`;
    const { answer, error } = await send(path, file, "application/octet-stream");
    if (error) return note(error);
    const result = answer.closed ? verdictTag(answer.verdict)[2] : told("pages-attempt-running");
    note(told("pages-hand-in-done", { file: shown(file.name), result }));
    if (chosen() === seat) form.reset();
  });
});

for (const closed of document.querySelectorAll("fieldset[disabled]")) closed.disabled = false;
takeBoard(page.board, false);
setInterval(() => show(false), 5_000);
follow({
  board: (board) => takeBoard(board, true),
  seats: (change) => {
    const at = performance.now();
    takeStanding(change.standing, at);
    takeTroubles(change);
    for (const view of change.seats) take(view, at);
    show(true);
  },
  lost: () => { frozen = performance.now(); },
  back: () => { frozen = null; },
});
