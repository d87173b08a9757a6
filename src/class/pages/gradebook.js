// Sends what an instructor changes about a learner's marks, and erases a learner who is to be erased.
import { page, say, send, setText, told } from "./page.js";

const MOST_POINTS = 100;

/// Points as they were typed: none for an empty field, `NaN` for what is no mark.
function pointsOf(typed) {
  const text = typed.trim().replace(",", ".");
  if (text === "") return null;
  const points = /^\d+(\.\d+)?$/.test(text) ? Number(text) : NaN;
  return points <= MOST_POINTS ? points : NaN;
}

function shownPoints(points) {
  if (points === null) return "–";
  const tenths = String(Math.round(points * 10) / 10);
  return page.language === "es" ? tenths.replace(".", ",") : tenths;
}

async function save(form) {
  const note = (words) => setText(form.querySelector(".note"), words);
  const { points: field, reason, comment } = form.elements;
  const points = pointsOf(field.value);
  if (Number.isNaN(points)) {
    note(told("pages-book-mark-wrong"));
    return field.focus();
  }
  const isChanged = points !== pointsOf(field.defaultValue);
  if (isChanged && !reason.value.trim()) {
    note(told("pages-book-mark-reason-missing"));
    return reason.focus();
  }
  const { seat, place, version } = form.dataset;
  const { answer, error, status } = await send("/api/teacher/gradebook/marks", JSON.stringify({
    seat: Number(seat),
    place: Number(place),
    version: Number(version),
    points,
    comment: comment.value.trim(),
    reason: reason.value.trim(),
  }));
  if (status === 409) {
    const stands = answer ?? {};
    return note(told("pages-book-mark-stale", { points: shownPoints(stands.points ?? null), comment: stands.comment ?? "" }));
  }
  if (error) return note(error);
  form.dataset.version = answer.version;
  field.defaultValue = field.value;
  reason.value = "";
  note(told("pages-book-mark-saved"));
}

for (const form of document.querySelectorAll("form.mark")) {
  form.querySelector("fieldset").disabled = false;
  form.addEventListener("submit", async (event) => {
    event.preventDefault();
    if (form.ariaBusy === "true") return;
    form.ariaBusy = "true";
    try {
      await save(form);
    } finally {
      form.ariaBusy = null;
    }
  });
}

const dialog = document.getElementById("erase-dialog");
const erase = document.getElementById("erase");
erase.disabled = false;
erase.addEventListener("click", () => dialog.showModal());
dialog.querySelector("[data-close]").addEventListener("click", () => dialog.close());
dialog.querySelector("[data-confirm]").addEventListener("click", async (event) => {
  event.target.disabled = true;
  const { error } = await send(`/api/teacher/seats/${erase.dataset.seat}/erase`, "{}");
  dialog.close();
  event.target.disabled = false;
  if (!error) return location.replace(`/teacher/gradebook?lang=${page.language}`);
  setText(document.getElementById("erase-note"), error);
  say(error);
});
