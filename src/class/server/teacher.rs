//! What the instructor's page asks.

use super::answer::Refused;
use super::learner::append;
use super::{Shared, lock};
use crate::board::LONGEST_NOTICE;
use crate::definition::TeacherStanding;
use crate::name_list::{names_in, sorted_names};
use crate::pages::{SeatChoice, asset as asset_of_pages, board_page, projector_page, sign_in_page};
use crate::secret::word as new_word;
use crate::verify::scenario_in;
use axum::Json;
use axum::body::Bytes;
use axum::extract::{FromRequestParts, Path, Query, RawQuery, State};
use axum::http::request::Parts;
use axum::http::{HeaderMap, HeaderValue, Method, StatusCode, header};
use axum::response::{Html, IntoResponse, Redirect, Response};
use detent_class_protocol::{
    AttemptId, AttemptStatus, MOST_ATTEMPT_BYTES, SecretToken, Segment, SegmentAnswer,
    WatchedAttempt, WatchedScenario, sealed_scenario_file,
};
use detent_training::record::{is_drill_round, read_attempt, read_drill_round};
use qrcode::QrCode;
use qrcode::render::svg;
use serde::{Deserialize, Serialize};
use std::sync::Arc;

/// The cookie that holds the teacher's token.
const COOKIE: &str = "detent-teacher";
/// What every question that changes something carries: another site cannot send it.
const MARK: &str = "x-detent-class";
/// So much of a line that is no name is told, characters.
const LONGEST_REFUSED: usize = 80;

/// Whoever asks is the teacher.
pub(super) struct Teacher;

impl FromRequestParts<Arc<Shared>> for Teacher {
    type Rejection = Refused;

    async fn from_request_parts(
        parts: &mut Parts,
        shared: &Arc<Shared>,
    ) -> Result<Teacher, Refused> {
        if parts.method != Method::GET && !parts.headers.contains_key(MARK) {
            return Err(Refused::NotKnown);
        }
        let token = token_in(&parts.headers).ok_or(Refused::NotKnown)?;
        let is_teacher = shared.read(move |store| store.is_teacher(&token)).await?;
        if is_teacher {
            Ok(Teacher)
        } else {
            Err(Refused::NotKnown)
        }
    }
}

fn token_in(headers: &HeaderMap) -> Option<SecretToken> {
    let cookies = headers
        .get_all(header::COOKIE)
        .iter()
        .filter_map(|value| value.to_str().ok());
    cookies
        .flat_map(|cookies| cookies.split(';'))
        .find_map(|cookie| {
            let (name, value) = cookie.trim().split_once('=')?;
            (name == COOKIE).then(|| value.parse().ok())?
        })
}

#[derive(Deserialize)]
#[serde(deny_unknown_fields)]
pub(super) struct SessionRequest {
    token: String,
}

/// `POST /api/teacher/session`: a token for a cookie, which no script can read and no other site send.
pub(super) async fn session(
    State(shared): State<Arc<Shared>>,
    Json(request): Json<SessionRequest>,
) -> Result<Response, Refused> {
    let token: SecretToken = request
        .token
        .trim()
        .parse()
        .map_err(|_| Refused::NotKnown)?;
    if !shared.read(move |store| store.is_teacher(&token)).await? {
        return Err(Refused::NotKnown);
    }
    let cookie = format!(
        "{COOKIE}={}; Path=/; HttpOnly; SameSite=Strict",
        String::from(token)
    );
    let cookie = HeaderValue::try_from(cookie).map_err(|_| Refused::NotKnown)?;
    Ok(([(header::SET_COOKIE, cookie)], StatusCode::NO_CONTENT).into_response())
}

#[derive(Deserialize)]
#[serde(deny_unknown_fields)]
pub(super) struct StandingRequest {
    standing: TeacherStanding,
}

/// `POST /api/teacher/standing`.
pub(super) async fn standing(
    State(shared): State<Arc<Shared>>,
    _: Teacher,
    Json(request): Json<StandingRequest>,
) -> Result<StatusCode, Refused> {
    let now = shared.now();
    shared
        .write(move |store| store.set_standing(request.standing, now))
        .await?;
    *lock(&shared.standing) = Some(request.standing);
    shared.change(|live| live.class());
    Ok(StatusCode::NO_CONTENT)
}

#[derive(Deserialize)]
#[serde(deny_unknown_fields)]
pub(super) struct NoticeRequest {
    seat: Option<u32>,
    text: String,
}

/// `POST /api/teacher/notices`.
pub(super) async fn notice(
    State(shared): State<Arc<Shared>>,
    _: Teacher,
    Json(request): Json<NoticeRequest>,
) -> Result<StatusCode, Refused> {
    let text: String = request
        .text
        .chars()
        .filter(|c| !c.is_control())
        .take(LONGEST_NOTICE)
        .collect();
    if text.trim().is_empty() {
        return Err(Refused::Wrong("a message needs a word".to_owned()));
    }
    let now = shared.now();
    shared
        .write(move |store| store.say(request.seat, &text, now))
        .await?;
    Ok(StatusCode::NO_CONTENT)
}

#[derive(Deserialize)]
#[serde(deny_unknown_fields)]
pub(super) struct NamesRequest {
    text: String,
}

#[derive(Serialize)]
struct NamesAdded {
    added: u32,
    /// Lines that are no names.
    refused: Vec<String>,
}

/// `POST /api/teacher/names`.
pub(super) async fn names(
    State(shared): State<Arc<Shared>>,
    _: Teacher,
    Json(request): Json<NamesRequest>,
) -> Result<Response, Refused> {
    let (names, refused) = sorted_names(names_in(&request.text));
    let refused = refused.iter();
    let refused = refused
        .map(|line| line.chars().take(LONGEST_REFUSED).collect())
        .collect();
    let most = shared.definition.seats;
    let (added, seats) = shared
        .write(move |store| Ok((store.add_names(&names, most)?, store.seats()?)))
        .await?;
    shared.change(|live| seats.into_iter().for_each(|seat| live.seat(seat)));
    Ok(Json(NamesAdded { added, refused }).into_response())
}

#[derive(Serialize)]
struct WordGiven {
    word: String,
}

/// `POST /api/teacher/seats/N/word`.
pub(super) async fn word(
    State(shared): State<Arc<Shared>>,
    _: Teacher,
    Path(seat): Path<u32>,
) -> Result<Response, Refused> {
    let word = new_word();
    let (now, kept) = (shared.now(), word.clone());
    if !shared
        .write(move |store| store.give_word(seat, &kept, now))
        .await?
    {
        return Err(Refused::NotThere);
    }
    Ok(Json(WordGiven { word }).into_response())
}

/// `POST /api/teacher/seats/N/hand-in`: an attempt that came on a memory stick counts like one that was sent.
pub(super) async fn hand_in(
    State(shared): State<Arc<Shared>>,
    _: Teacher,
    Path(seat): Path<u32>,
    body: Bytes,
) -> Result<Response, Refused> {
    if body.len() > MOST_ATTEMPT_BYTES {
        return Err(Refused::Wrong(
            "that file is larger than any attempt of a class".to_owned(),
        ));
    }
    let text = std::str::from_utf8(&body)
        .map_err(|_| Refused::Wrong("that file is no attempt".to_owned()))?;
    let program = match is_drill_round(text) {
        true => {
            let read = read_drill_round("handed-in.round", text, false);
            read.map(|record| record.header.program)
        }
        false => {
            let read = read_attempt("handed-in.attempt", text.as_bytes());
            read.map(|attempt| attempt.header.program)
        }
    };
    let program = program.map_err(|error| Refused::Wrong(error.to_string()))?;
    if lock(&shared.live).name_of(seat).is_none() {
        return Err(Refused::NotThere);
    }
    let whole = text.strip_prefix('\u{feff}').unwrap_or(text);
    let there = match unfinished(&shared, seat, whole).await? {
        Some(status) => status,
        None => AttemptStatus::nothing_of(AttemptId::of_file(&seat.to_string(), whole.as_bytes())),
    };
    let made_with = (program.as_str(), shared.content);
    let rest = whole.get(there.bytes as usize..).unwrap_or_default();
    let after = (there.next, there.digest);
    let segments = Segment::cut(there.attempt, after, made_with, rest).collect();
    let answer = append(&shared, seat, segments).await?;
    if !matches!(answer, SegmentAnswer::Kept { .. }) {
        return Err(Refused::Wrong(format!(
            "the file could not be taken in: {answer:?}"
        )));
    }
    let kept = shared
        .read(move |store| store.attempt(there.attempt))
        .await?;
    Ok(Json(kept.ok_or(Refused::NotThere)?.status).into_response())
}

/// The attempt of this seat of which the beginning came in already, or all of it.
async fn unfinished(
    shared: &Arc<Shared>,
    seat: u32,
    whole: &str,
) -> Result<Option<AttemptStatus>, Refused> {
    let whole = whole.to_owned();
    let found = shared.read(move |store| {
        for kept in store.attempts_of(seat)? {
            let text = store.text(kept.status.attempt)?;
            if text.is_some_and(|(text, ..)| whole.starts_with(&text)) {
                return Ok(Some(kept.status));
            }
        }
        Ok(None)
    });
    Ok(found.await?)
}

/// `GET /api/teacher/attempts/ID`: all of an attempt's text, to be looked at with the bench itself.
pub(super) async fn text(
    State(shared): State<Arc<Shared>>,
    _: Teacher,
    Path(attempt): Path<String>,
) -> Result<Response, Refused> {
    let attempt: AttemptId = attempt.parse().map_err(|_| Refused::NotThere)?;
    let found = shared
        .read(move |store| Ok((store.text(attempt)?, store.attempt(attempt)?)))
        .await?;
    let (Some((text, ..)), Some(kept)) = found else {
        return Err(Refused::NotThere);
    };
    let ending = match (is_drill_round(&text), kept.status.closed) {
        (true, _) => "round",
        (false, true) => "attempt",
        (false, false) => "attempt.part",
    };
    let name = format!(
        "attachment; filename=\"seat-{}-{attempt}.{ending}\"",
        kept.seat
    );
    let name = HeaderValue::try_from(name).map_err(|_| Refused::NotThere)?;
    let media_type = HeaderValue::from_static("text/plain; charset=utf-8");
    Ok((
        [
            (header::CONTENT_TYPE, media_type),
            (header::CONTENT_DISPOSITION, name),
        ],
        text,
    )
        .into_response())
}

/// `GET /api/teacher/attempts/ID/watch`: the same for the page that shows it, which asks again as long as it grows.
pub(super) async fn watch(
    State(shared): State<Arc<Shared>>,
    _: Teacher,
    Path(attempt): Path<String>,
) -> Result<Json<WatchedAttempt>, Refused> {
    let attempt: AttemptId = attempt.parse().map_err(|_| Refused::NotThere)?;
    let found = shared.read(move |store| {
        let Some((text, _, content)) = store.text(attempt)? else {
            return Ok(None);
        };
        let kept = store.attempt(attempt)?;
        let drawn = kept.map_or(Ok(Vec::new()), |kept| store.drawn_of(kept.seat))?;
        Ok(Some((text, content, drawn)))
    });
    let (text, content, drawn) = found.await?.ok_or(Refused::NotThere)?;
    let sealed = scenario_in(&drawn, &text).map(|drawn| WatchedScenario {
        file: sealed_scenario_file(&drawn.job),
        text: drawn.text.clone(),
    });
    Ok(Json(WatchedAttempt {
        text,
        scenario: sealed,
        content,
    }))
}

/// `GET /teacher`.
pub(super) async fn sign_in(
    State(shared): State<Arc<Shared>>,
    RawQuery(query): RawQuery,
    headers: HeaderMap,
) -> Html<String> {
    Html(sign_in_page(shared.page_texts(query.as_deref(), &headers)))
}

/// `GET /teacher/board`.
pub(super) async fn board(
    State(shared): State<Arc<Shared>>,
    teacher: Result<Teacher, Refused>,
    RawQuery(query): RawQuery,
    headers: HeaderMap,
) -> Response {
    if teacher.is_err() {
        return Redirect::to("/teacher").into_response();
    }
    let texts = shared.page_texts(query.as_deref(), &headers);
    let choice = SeatChoice::of_query(query.as_deref().unwrap_or_default());
    Html(board_page(texts, &shared.board().0, choice)).into_response()
}

/// `GET /teacher/projector`.
pub(super) async fn projector(
    State(shared): State<Arc<Shared>>,
    teacher: Result<Teacher, Refused>,
    Query(shown): Query<ShownAttempt>,
    RawQuery(query): RawQuery,
    headers: HeaderMap,
) -> Response {
    if teacher.is_err() {
        return Redirect::to("/teacher").into_response();
    }
    let texts = shared.page_texts(query.as_deref(), &headers);
    let attempt = shown.attempt.and_then(|attempt| attempt.parse().ok());
    Html(projector_page(texts, &shared.board().0, attempt)).into_response()
}

/// The attempt that the projector shows.
#[derive(Deserialize)]
pub(super) struct ShownAttempt {
    attempt: Option<String>,
}

/// `GET /qr.svg`: the address to join at, to be taken with a camera.
pub(super) async fn qr(State(shared): State<Arc<Shared>>) -> Result<Response, Refused> {
    let code = QrCode::new(shared.address.as_bytes()).map_err(|_| Refused::NotThere)?;
    let picture = code
        .render::<svg::Color<'_>>()
        .min_dimensions(240, 240)
        .build();
    Ok((
        [(
            header::CONTENT_TYPE,
            HeaderValue::from_static("image/svg+xml"),
        )],
        picture,
    )
        .into_response())
}

/// `GET /class/FILE`: script and style of the pages.
pub(super) async fn asset(Path(file): Path<String>) -> Result<Response, Refused> {
    let (media_type, bytes) = asset_of_pages(&format!("/class/{file}")).ok_or(Refused::NotThere)?;
    Ok((
        [(header::CONTENT_TYPE, HeaderValue::from_static(media_type))],
        bytes,
    )
        .into_response())
}
