// Keeps what is on the projector up to date: how many have joined, or one attempt. Of the names that the stream carries it
// shows none.
import { comeTo, duration, follow, page, setTags, setText, told, workTitle } from "./page.js";

const byId = (id) => document.getElementById(id);
/// Seats by their numbers.
const seats = new Map();

function showAttempt() {
  const attempts = [...seats.values()].flatMap((seat) => seat.attempts);
  const attempt = attempts.find((each) => each.attempt === page.attempt);
  byId("gone").hidden = attempt !== undefined;
  byId("figures").hidden = attempt === undefined;
  if (!attempt) return setTags(byId("tags"), []);
  setText(byId("job"), workTitle(attempt));
  setText(byId("deeds"), String(attempt.deeds));
  setText(byId("machine-time"), duration(attempt.machine_s));
  const tags = attempt.unsafe_now ? [["unsafe", "!", told("pages-state-unsafe")]] : [];
  tags.push(comeTo(attempt));
  setTags(byId("tags"), tags);
}

function show() {
  if (page.attempt !== null) return showAttempt();
  const count = [...seats.values()].filter((seat) => seat.joined).length;
  setText(byId("joined"), told("pages-projector-joined", { count }));
}

follow({
  board: (board) => {
    seats.clear();
    for (const seat of board.seats) seats.set(seat.seat, seat);
    show();
  },
  seats: (change) => {
    for (const seat of change.seats) seats.set(seat.seat, seat);
    show();
  },
});
