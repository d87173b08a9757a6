//! What learners ask.

use super::answer::{BENCH_POLICY, Refused};
use super::limits::Bucket;
use super::{QUESTIONS, Shared, lock};
use crate::name::shown_name;
use crate::pages::no_page_page;
use crate::secret::{nonce, secret_token};
use crate::store::{KeptAttempt, StoreError, Words};
use axum::Json;
use axum::extract::rejection::JsonRejection;
use axum::extract::{FromRequestParts, Path, RawQuery, State};
use axum::http::request::Parts;
use axum::http::{HeaderMap, HeaderValue, StatusCode, header};
use axum::response::{Html, IntoResponse, Response};
use detent_class_protocol::{
    AttemptId, AttemptStatus, ClassKind, ClassNotice, ClassView, Digest, DrillStatus, JoinAnswer,
    JoinCode, JoinRefusal, JoinRequest, PROTOCOL_VERSION, SealedJobAnswer, SealedScenario,
    SecretToken, Segment, SegmentAnswer, Standing, Verdict,
};
use std::sync::Arc;

/// The seat that whoever asks has.
pub(super) struct Seat(u32);

impl FromRequestParts<Arc<Shared>> for Seat {
    type Rejection = Refused;

    async fn from_request_parts(parts: &mut Parts, shared: &Arc<Shared>) -> Result<Seat, Refused> {
        let given = parts
            .headers
            .get(header::AUTHORIZATION)
            .and_then(|value| value.to_str().ok());
        let token = given.and_then(|given| given.strip_prefix("Bearer "));
        let token: SecretToken = token
            .and_then(|token| token.parse().ok())
            .ok_or(Refused::NotKnown)?;
        let seat = shared
            .read(move |store| store.seat_of_token(&token))
            .await?
            .ok_or(Refused::NotKnown)?;
        let now = shared.now();
        let mut questions = lock(&shared.questions);
        let bucket = questions
            .entry(seat)
            .or_insert_with(|| Bucket::full(QUESTIONS.0, QUESTIONS.1, now));
        let taken = bucket.take(now);
        drop(questions);
        taken.map_err(|wait| Refused::TooMany(wait.as_secs() as u32 + 1))?;
        shared.change(|live| live.heard(seat, now));
        Ok(Seat(seat))
    }
}

/// `POST /api/join`.
pub(super) async fn join(
    State(shared): State<Arc<Shared>>,
    request: Result<Json<JoinRequest>, JsonRejection>,
) -> Result<Response, Refused> {
    let Json(request) = request.map_err(|error| Refused::Wrong(error.body_text()))?;
    match try_to_join(&shared, request).await? {
        Ok(answer) => Ok(Json(answer).into_response()),
        Err(refusal) => {
            let status = match refusal {
                JoinRefusal::Protocol { .. } | JoinRefusal::Name => StatusCode::BAD_REQUEST,
                JoinRefusal::TooManyTries { .. } => StatusCode::TOO_MANY_REQUESTS,
                JoinRefusal::WrongCode | JoinRefusal::NotOnList | JoinRefusal::WrongWord => {
                    StatusCode::FORBIDDEN
                }
                JoinRefusal::NameTaken | JoinRefusal::Full | JoinRefusal::Closed => {
                    StatusCode::CONFLICT
                }
            };
            Ok((status, Json(refusal)).into_response())
        }
    }
}

async fn try_to_join(
    shared: &Arc<Shared>,
    request: JoinRequest,
) -> Result<Result<JoinAnswer, JoinRefusal>, StoreError> {
    if request.protocol != PROTOCOL_VERSION {
        return Ok(Err(JoinRefusal::Protocol {
            server: PROTOCOL_VERSION,
        }));
    }
    let now = shared.now();
    {
        // A guess costs one, also while there is none left: so nobody finds the code by trying.
        let mut wrong_codes = lock(&shared.wrong_codes);
        if let Err(wait) = wrong_codes.check(now) {
            return Ok(Err(JoinRefusal::TooManyTries {
                wait_s: wait.as_secs() as u32 + 1,
            }));
        }
        if request.code.parse::<JoinCode>().ok() != Some(shared.code) {
            // There is one: it was just looked.
            let _ = wrong_codes.take(now);
            return Ok(Err(JoinRefusal::WrongCode));
        }
    }
    if shared.standing() == Standing::Closed && request.word.is_none() {
        return Ok(Err(JoinRefusal::Closed));
    }
    let Some(name) = shown_name(&request.name) else {
        return Ok(Err(JoinRefusal::Name));
    };
    let token = secret_token();
    let (only_listed, most) = (shared.definition.only_listed, shared.definition.seats);
    let joined = shared.write(move |store| {
        let words = Words {
            name: &name,
            word: request.word.as_deref(),
        };
        store.join(&words, &token, (only_listed, most), now)
    });
    let joined = match joined.await? {
        Ok(joined) => joined,
        Err(JoinRefusal::WrongWord) => {
            // A word is short, too.
            let _ = lock(&shared.wrong_codes).take(now);
            return Ok(Err(JoinRefusal::WrongWord));
        }
        Err(refusal) => return Ok(Err(refusal)),
    };
    let seat = joined.seat;
    shared.draw_for(std::iter::once(seat));
    shared.change(|live| {
        live.seat(joined);
        live.heard(seat, now);
    });
    Ok(Ok(JoinAnswer {
        token,
        view: view(shared, seat).await?,
    }))
}

/// `GET /api/seat`.
pub(super) async fn seat(
    State(shared): State<Arc<Shared>>,
    Seat(seat): Seat,
) -> Result<Json<ClassView>, Refused> {
    Ok(Json(view(&shared, seat).await?))
}

async fn view(shared: &Arc<Shared>, seat: u32) -> Result<ClassView, StoreError> {
    let (notices, attempts) = shared
        .read(move |store| Ok((store.notices(seat)?, store.attempts_of(seat)?)))
        .await?;
    let name = lock(&shared.live)
        .name_of(seat)
        .unwrap_or_default()
        .to_owned();
    let standing = shared.standing();
    Ok(ClassView {
        protocol: PROTOCOL_VERSION,
        program: env!("CARGO_PKG_VERSION").to_owned(),
        content: shared.content,
        class: Some(shared.definition.id()),
        title: shared.definition.title.clone(),
        name,
        kind: shared.definition.kind,
        standing,
        jobs: shared.definition.jobs_of(seat),
        drills: match (shared.definition.kind, standing) {
            // Whoever knows the seed knows the questions.
            (ClassKind::Examination, Standing::NotOpen { .. }) => Vec::new(),
            (ClassKind::Examination | ClassKind::Practice, _) => shared.definition.drills_of(seat),
        },
        notices: notices
            .into_iter()
            .map(|notice| ClassNotice {
                number: notice.number,
                text: notice.text,
            })
            .collect(),
        attempts: attempts
            .into_iter()
            .map(|kept| status(shared, kept, standing))
            .collect(),
    })
}

/// What a learner is told of an attempt.
fn status(shared: &Shared, kept: KeptAttempt, standing: Standing) -> AttemptStatus {
    let hidden = shared.definition.kind.keeps_results_back(standing);
    let (job, drill) = lock(&shared.live).work_of(kept.seat, kept.status.attempt);
    let drill = drill.map(|drill| DrillStatus {
        right: drill.right.filter(|_| !hidden),
        ..drill
    });
    let verdict = match kept.status.verdict {
        Verdict::Verified { .. } if hidden => Verdict::Verified { points: None },
        verdict => verdict,
    };
    AttemptStatus {
        job,
        drill,
        verdict,
        ..kept.status
    }
}

/// `GET /api/attempts/ID`.
pub(super) async fn attempt(
    State(shared): State<Arc<Shared>>,
    Seat(seat): Seat,
    Path(attempt): Path<String>,
) -> Result<Json<AttemptStatus>, Refused> {
    let attempt: AttemptId = attempt.parse().map_err(|_| Refused::NotThere)?;
    let there = shared
        .read(move |store| Ok(store.attempt(attempt)?.zip(store.text(attempt)?)))
        .await?;
    // Whether somebody else has an attempt of this name is nobody's business.
    let Some((kept, (text, ..))) = there.filter(|(kept, _)| kept.seat == seat) else {
        return Ok(Json(AttemptStatus::nothing_of(attempt)));
    };
    let standing = shared.standing();
    let text = Some(Digest::of_text(&text));
    Ok(Json(AttemptStatus {
        text,
        ..status(&shared, kept, standing)
    }))
}

/// `GET /api/jobs/JOB`: the scenario of a sealed job, once the class is open.
pub(super) async fn sealed_job(
    State(shared): State<Arc<Shared>>,
    Seat(seat): Seat,
    Path(job): Path<String>,
) -> Result<Json<SealedJobAnswer>, Refused> {
    let definition = &shared.definition;
    let place = definition.place_of(&job);
    let Some(place) = place.filter(|_| definition.machines.are_sealed()) else {
        return Ok(Json(SealedJobAnswer::NoJob));
    };
    match shared.standing() {
        Standing::NotOpen { .. } => return Ok(Json(SealedJobAnswer::NotYet)),
        Standing::Open { .. } | Standing::Paused | Standing::Closed => {}
    }
    let drawn = shared.read(move |store| store.drawn_of(seat)).await?;
    let Some(drawn) = drawn.into_iter().find(|drawn| drawn.job == job) else {
        // A drawing that could not be kept is done again.
        shared.work.draw(place..place + 1, std::iter::once(seat));
        return Ok(Json(SealedJobAnswer::NotYet));
    };
    let contents = SealedScenario {
        text: drawn.text,
        seed: drawn.seed,
    };
    let sealed = contents
        .seal(&drawn.job, nonce())
        .map_err(|error| StoreError::Row(error.to_string()))?;
    Ok(Json(SealedJobAnswer::Ready(sealed)))
}

/// `POST /api/segments`.
pub(super) async fn segment(
    State(shared): State<Arc<Shared>>,
    Seat(seat): Seat,
    segment: Result<Json<Segment>, JsonRejection>,
) -> Result<Response, Refused> {
    let Json(segment) = match segment {
        Ok(segment) => segment,
        Err(error) => return Ok((error.status(), error.body_text()).into_response()),
    };
    let answer = match segment.check() {
        Err(fault) => SegmentAnswer::Faulty(fault),
        Ok(()) => append(&shared, seat, vec![segment]).await?,
    };
    let status = match answer {
        SegmentAnswer::Kept { .. } => StatusCode::OK,
        SegmentAnswer::Gap { .. } | SegmentAnswer::OtherBody { .. } | SegmentAnswer::Finished => {
            StatusCode::CONFLICT
        }
        SegmentAnswer::Faulty(_) => StatusCode::BAD_REQUEST,
        SegmentAnswer::NotYours => StatusCode::FORBIDDEN,
        SegmentAnswer::TooMuch => StatusCode::PAYLOAD_TOO_LARGE,
        SegmentAnswer::NotNow => StatusCode::SERVICE_UNAVAILABLE,
    };
    Ok((status, Json(answer)).into_response())
}

/// Keeps segments of one attempt, all or up to the first that is refused; the answer to the last.
pub(super) async fn append(
    shared: &Arc<Shared>,
    seat: u32,
    segments: Vec<Segment>,
) -> Result<SegmentAnswer, StoreError> {
    let now = shared.now();
    let Some(attempt) = segments.first().map(|segment| segment.attempt) else {
        return Ok(SegmentAnswer::Kept { next: 0 });
    };
    let written = shared.write(move |store| {
        let (mut answer, mut is_new, mut closes) = (SegmentAnswer::Kept { next: 0 }, false, false);
        for segment in &segments {
            let appended = store.append(seat, segment, now)?;
            answer = appended.answer;
            is_new |= appended.is_new;
            closes |= appended.closes;
            if !matches!(answer, SegmentAnswer::Kept { .. }) {
                break;
            }
        }
        Ok((
            answer,
            closes,
            if is_new {
                store.attempt(attempt)?
            } else {
                None
            },
        ))
    });
    let (answer, closes, kept) = match written.await {
        Ok(written) => written,
        Err(StoreError::Full | StoreError::Commit(_) | StoreError::Ended) => {
            return Ok(SegmentAnswer::NotNow);
        }
        Err(error) => return Err(error),
    };
    if let Some(kept) = kept {
        shared.change(|live| live.attempt(kept));
        shared.work.watch(attempt);
        if closes {
            shared.work.verify(attempt);
        }
    }
    Ok(answer)
}

/// `GET /`: the bench, or how to come by it.
pub(super) async fn page(
    State(shared): State<Arc<Shared>>,
    RawQuery(query): RawQuery,
    headers: HeaderMap,
) -> Response {
    if shared.page.is_some() {
        return page_of(shared, String::new(), &headers).await;
    }
    let texts = shared.page_texts(query.as_deref(), &headers);
    Html(no_page_page(texts, &shared.address)).into_response()
}

/// `GET /FILE`: a file of the bench.
pub(super) async fn page_file(
    State(shared): State<Arc<Shared>>,
    Path(file): Path<String>,
    headers: HeaderMap,
) -> Response {
    page_of(shared, file, &headers).await
}

async fn page_of(shared: Arc<Shared>, name: String, headers: &HeaderMap) -> Response {
    let accepts = headers
        .get(header::ACCEPT_ENCODING)
        .and_then(|value| value.to_str().ok())
        .unwrap_or_default();
    let accepts = accepts.to_owned();
    let found =
        tokio::task::spawn_blocking(move || shared.page.as_ref()?.file(&name, &accepts)).await;
    let Ok(Some(Ok(file))) = found else {
        return Refused::NotThere.into_response();
    };
    let mut response = file.bytes.into_response();
    let headers = response.headers_mut();
    headers.insert(
        header::CONTENT_TYPE,
        HeaderValue::from_static(file.media_type),
    );
    headers.insert(
        header::CONTENT_SECURITY_POLICY,
        HeaderValue::from_static(BENCH_POLICY),
    );
    headers.insert(header::VARY, HeaderValue::from_static("accept-encoding"));
    if let Some(encoding) = file.encoding {
        headers.insert(header::CONTENT_ENCODING, HeaderValue::from_static(encoding));
    }
    let cache = if file.is_lasting {
        "max-age=31536000, immutable"
    } else {
        "no-cache"
    };
    headers.insert(header::CACHE_CONTROL, HeaderValue::from_static(cache));
    response
}
