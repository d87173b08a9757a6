// What the scripts of all pages share: texts, what is sent, and the stream of events. Whatever comes from the server is put
// in as text, never as markup.

/// What the server told this page: its texts, the titles of the jobs, the board as it was.
export const page = JSON.parse(document.body.dataset.page);

/// A text of the page with its open places filled in.
export function told(key, values = {}) {
  return page.texts[key].replace(/\{([a-z]+)\}/g, (open, name) => values[name] ?? open);
}

/// A duration in whole minutes.
export function duration(seconds) {
  const [hours, minutes] = [Math.floor(seconds / 3600), Math.floor(seconds / 60) % 60];
  if (hours) return told("pages-minutes-hours", { hours, minutes });
  return minutes ? told("pages-minutes", { minutes }) : told("pages-minutes-less");
}

const LEFT_OUT = /[\p{Cc}\u2028-\u202e\u2066-\u2069\ufeff\u{e0000}-\u{e007f}]/gu;

/// What somebody else typed, as it is shown: as `shown.rs` does it.
export function shown(typed) {
  const characters = [...typed.replace(LEFT_OUT, "")];
  const cut = characters.slice(0, 60).join("") + (characters.length > 60 ? "…" : "");
  return cut.trim() || "–";
}

/// A job's title, by the name of its file.
export function jobTitle(job) {
  const stem = job.split(/[/\\]/).pop().replace(/\.ron$/, "");
  return Object.hasOwn(page.titles, stem) ? page.titles[stem] : shown(stem);
}

/// What an attempt is at: a drill by the name of its skill, or a job.
export function workTitle({ drill, job }) {
  if (!drill) return jobTitle(job);
  return Object.hasOwn(page.drills, drill.drill) ? page.drills[drill.drill] : shown(drill.drill);
}

/// How far an attempt has come that is not finished, or what came of it, as `page_texts.rs` has it.
export function comeTo({ closed, drill, verdict }) {
  const isMarked = drill && drill.right !== null;
  const values = isMarked ? { right: drill.right, done: drill.done, of: drill.questions } : {};
  if (!closed) return ["working", "", isMarked ? told("pages-drill-so-far", values) : told("pages-attempt-running")];
  if (isMarked && verdict.Verified) return ["verified", "✓", told("pages-result-verified-right", values)];
  return verdictTag(verdict);
}

/// Words with a class and a sign before them, as `seat_row.rs` has them: what came of a finished attempt.
export function verdictTag(verdict) {
  if (verdict === "Waiting") return ["waiting", "…", told("pages-result-waiting")];
  if (verdict === "Mismatch") return ["mismatch", "≠", told("pages-result-mismatch")];
  if (verdict === "NotAssigned") return ["mismatch", "≠", told("pages-result-not-assigned")];
  if (verdict.Unverified === "OtherProgram") return ["unverified", "?", told("pages-result-other-program")];
  if (verdict.Unverified === "OtherContent") return ["unverified", "?", told("pages-result-other-content")];
  if (verdict.Unverified === "TooLong") return ["unverified", "?", told("pages-result-too-long")];
  const { points } = verdict.Verified;
  if (points === null) return ["verified", "✓", told("pages-result-verified")];
  let tenths = String(Math.round(points * 10) / 10);
  if (page.language === "es") tenths = tenths.replace(".", ",");
  return ["verified", "✓", told("pages-result-verified-points", { points: tenths })];
}

export function setText(element, text) {
  if (element.textContent !== text) element.textContent = text;
}

const tagsOf = new WeakMap();

/// Makes these the entries of a list, if they are not.
export function setTags(list, tags) {
  const now = JSON.stringify(tags);
  if (tagsOf.get(list) === now) return;
  tagsOf.set(list, now);
  list.replaceChildren(...tags.map(([name, sign, words]) => {
    const item = document.createElement("li");
    item.className = `tag ${name}`;
    if (sign) {
      const mark = document.createElement("span");
      mark.className = "sign";
      mark.ariaHidden = "true";
      mark.textContent = sign;
      item.append(mark);
    }
    item.append(words);
    return item;
  }));
}

/// So long what is to be said stands on the page, ms.
const SAID_MS = 10_000;

/// Has reading software say something when it has time for it, after what was said before.
export function say(words) {
  const line = document.createElement("p");
  line.textContent = words;
  document.getElementById("told").append(line);
  setTimeout(() => line.remove(), SAID_MS);
}

/// Sends something. Gives `{ answer }`, or `{ error }` with a sentence, what came with it and the status, 0 without an
/// answer.
export async function send(path, body, type = "application/json") {
  let response;
  let text;
  try {
    response = await fetch(path, { method: "POST", headers: { "content-type": type, "x-detent-class": "1" }, body });
    text = await response.text();
  } catch {
    return { status: 0, error: told("pages-no-answer") };
  }
  let answer = null;
  try {
    answer = JSON.parse(text);
  } catch {
    // An empty answer is one too.
  }
  if (response.ok) return { answer };
  const { status } = response;
  return { status, answer, error: typeof answer?.error === "string" ? answer.error : told("pages-not-done", { number: status }) };
}

/// A stream that sends these is taken for lost after so long without one, ms.
const SILENCE_MS = 45_000;
const AGAIN_MS = 5_000;

/// Follows the class. `on.board` gets a whole board, `on.seats` what changed, `on.lost` and `on.back` that what is shown
/// grows old, and that it does no more. The server may send `pulse` besides: then a stream that is silent is noticed too.
export function follow(on) {
  const lost = document.getElementById("lost");
  let stream;
  let last = null;
  let pulses = false;

  function heard() {
    last = Date.now();
    if (lost.hidden) return;
    lost.hidden = true;
    say(told("pages-back-online"));
    on.back?.();
  }
  function silent(since) {
    if (!lost.hidden) return;
    const time = new Date(since).toLocaleTimeString(page.language, { hour: "numeric", minute: "2-digit" });
    lost.textContent = told("pages-lost", { time });
    lost.hidden = false;
    say(lost.textContent);
    on.lost?.();
  }
  /// A stream that the server refuses is not opened again by the browser.
  async function refused() {
    const status = await fetch("/api/teacher/events", { method: "HEAD" }).then((answer) => answer.status, () => 0);
    const out = document.getElementById("signed-out");
    if ((status === 401 || status === 403) && out) {
      if (out.hidden) say(told("pages-signed-out"));
      out.hidden = false;
    }
    setTimeout(open, AGAIN_MS);
  }
  function open() {
    stream = new EventSource("/api/teacher/events");
    for (const [name, take] of [["board", on.board], ["seats", on.seats]]) {
      stream.addEventListener(name, (event) => {
        const value = JSON.parse(event.data);
        heard();
        take(value);
      });
    }
    stream.addEventListener("pulse", () => {
      pulses = true;
      heard();
    });
    stream.addEventListener("open", () => {
      const out = document.getElementById("signed-out");
      if (out) out.hidden = true;
    });
    stream.addEventListener("error", () => {
      silent(pulses && last !== null ? last : Date.now());
      if (stream.readyState === EventSource.CLOSED) refused();
    });
  }
  setInterval(() => {
    if (!pulses || Date.now() - last < SILENCE_MS || stream.readyState !== EventSource.OPEN) return;
    silent(last);
    stream.close();
    open();
  }, AGAIN_MS);
  open();
}
