// Signs the instructor in with the key in the fragment of the address, which is taken out of it at once, or with one that is
// pasted.
import { page, send, setText, told } from "./page.js";

const form = document.getElementById("sign-in");
const field = form.elements.key;
const note = (words) => setText(document.getElementById("sign-in-note"), words);

async function signIn(token) {
  const { status, error } = await send("/api/teacher/session", JSON.stringify({ token }));
  if (!error) return location.replace(`/teacher/board?lang=${page.language}`);
  note(status >= 400 && status < 500 && status !== 429 ? told("pages-sign-in-refused") : error);
  field.focus();
}

function signInByAddress() {
  const token = location.hash.slice(1);
  if (!token) return;
  history.replaceState(null, "", location.pathname + location.search);
  signIn(token);
}

form.querySelector("fieldset").disabled = false;
form.addEventListener("submit", (event) => {
  event.preventDefault();
  // The whole address does as well.
  const token = field.value.trim().split("#").pop();
  if (token) return signIn(token);
  note(told("pages-sign-in-none"));
  field.focus();
});
addEventListener("hashchange", signInByAddress);
signInByAddress();
