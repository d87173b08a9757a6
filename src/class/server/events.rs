//! The board, live: server-sent events.

use super::answer::Refused;
use super::teacher::Teacher;
use super::{Shared, lock};
use crate::board::SeatView;
use axum::extract::State;
use axum::http::HeaderMap;
use axum::response::sse::{Event, KeepAlive, Sse};
use detent_class_protocol::Standing;
use serde::Serialize;
use std::convert::Infallible;
use std::pin::Pin;
use std::sync::Arc;
use std::task::{Context, Poll};
use std::time::Duration;
use tokio::sync::mpsc::{Receiver, channel};

/// Between two events at least.
const REST: Duration = Duration::from_millis(500);
/// A stream that says nothing is looked at this often, so that what depends on the clock alone is told, too.
const LOOK_AGAIN: Duration = Duration::from_secs(5);
/// A page that hears nothing for three of these takes the connection for lost.
const PULSE: Duration = Duration::from_secs(15);

/// What changed.
#[derive(Serialize)]
struct Changed {
    seats: Vec<SeatView>,
    standing: Standing,
    trouble: Option<String>,
    undrawn: Option<String>,
}

/// Events as they are made.
pub(super) struct Events(Receiver<Event>);

impl tokio_stream::Stream for Events {
    type Item = Result<Event, Infallible>;

    fn poll_next(mut self: Pin<&mut Self>, context: &mut Context<'_>) -> Poll<Option<Self::Item>> {
        self.0.poll_recv(context).map(|event| event.map(Ok))
    }
}

/// `GET /api/teacher/events`. After a gap the browser names the last event that it has; what changed since is told, or the
/// whole board where the server was started anew in between.
pub(super) async fn events(
    State(shared): State<Arc<Shared>>,
    _: Teacher,
    headers: HeaderMap,
) -> Result<Sse<impl tokio_stream::Stream<Item = Result<Event, Infallible>>>, Refused> {
    let last = headers
        .get("last-event-id")
        .and_then(|value| value.to_str().ok());
    let known = last.and_then(|last| {
        let (run, change) = last.split_once('-')?;
        let change: u64 = change.parse().ok()?;
        (run.parse() == Ok(shared.run) && change <= lock(&shared.live).changes()).then_some(change)
    });
    let (sender, receiver) = channel(1);
    let mut changes = shared.changes.subscribe();
    tokio::spawn(async move {
        let mut known = known;
        let mut standing = None;
        loop {
            changes.mark_unchanged();
            let event = next_event(&shared, &mut known, &mut standing);
            if let Some(event) = event
                && sender.send(event).await.is_err()
            {
                return;
            }
            tokio::time::sleep(REST).await;
            tokio::select! {
                changed = changes.changed() => if changed.is_err() { return },
                () = tokio::time::sleep(LOOK_AGAIN) => {}
                () = sender.closed() => return,
                () = shared.work.ended() => return,
            }
        }
    });
    let pulse = Event::default().event("pulse").data("");
    Ok(Sse::new(Events(receiver)).keep_alive(KeepAlive::new().interval(PULSE).event(pulse)))
}

/// What is to be told to whoever knows of the changes up to `known`.
fn next_event(
    shared: &Shared,
    known: &mut Option<u64>,
    told: &mut Option<Standing>,
) -> Option<Event> {
    let id = |change: u64| format!("{}-{change}", shared.run);
    let whole = known.is_none_or(|since| lock(&shared.live).erased_since(since));
    let Some(since) = known.filter(|_| !whole) else {
        let (board, change) = shared.board();
        (*known, *told) = (Some(change), Some(board.standing));
        return event("board", &id(change), &board);
    };
    let standing = shared.standing();
    // What is left of the time is counted down by the page itself.
    let is_same = told.is_some_and(|told| told.differs_in_time_alone(standing));
    let (changed, change) = {
        let live = lock(&shared.live);
        let change = live.changes();
        if change == since && is_same {
            return None;
        }
        let seats = live.seats_since(since, &shared.definition, shared.now());
        if seats.is_empty() && is_same && !live.class_changed_since(since) {
            return None;
        }
        (
            Changed {
                seats,
                standing,
                trouble: live.trouble().map(str::to_owned),
                undrawn: live.undrawn().map(str::to_owned),
            },
            change,
        )
    };
    (*known, *told) = (Some(change), Some(standing));
    event("seats", &id(change), &changed)
}

fn event(name: &str, id: &str, data: &impl Serialize) -> Option<Event> {
    Event::default().event(name).id(id).json_data(data).ok()
}
