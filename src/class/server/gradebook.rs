//! The gradebook over HTTP. Every question here is an instructor's: no learner is answered, whatever the class is for.

use super::Shared;
use super::answer::Refused;
use super::teacher::Teacher;
use crate::pages::{
    GradebookView, LONGEST_COMMENT, PageTexts, ReportReader, gradebook_job_page,
    gradebook_learner_page, gradebook_page, gradebook_report_page, items_plot, skills_plot,
};
use crate::secret::pseudonym;
use crate::store::{Changed, MarkRequest, StoreError};
use axum::extract::rejection::QueryRejection;
use axum::extract::{FromRequestParts, Path, Query, State};
use axum::http::request::Parts;
use axum::http::{HeaderMap, HeaderValue, StatusCode, header};
use axum::response::{Html, IntoResponse, Redirect, Response};
use axum::routing::{get, post};
use axum::{Json, Router};
use detent_class_protocol::ClassKind;
use detent_content::zip_of;
use detent_gradebook::{
    ClassGrades, Gradebook, MOST_POINTS, MarkRule, item_statistics, marks_csv, one_roster_files,
    xapi_lines,
};
use detent_training::lesson::Bilingual;
use serde::{Deserialize, Serialize};
use std::sync::Arc;

/// Which attempt counts where nobody asks for another one: in an examination the first, since a machine that was worked on
/// once holds no secret any more; in practice the best, since trying again is what practice is for.
const fn usual_rule(kind: ClassKind) -> MarkRule {
    match kind {
        ClassKind::Practice => MarkRule::Best,
        ClassKind::Examination => MarkRule::First,
    }
}

/// Every question about the gradebook.
pub(super) fn routes() -> Router<Arc<Shared>> {
    Router::new()
        .route("/teacher/gradebook", get(class))
        .route("/teacher/gradebook/items.svg", get(items_svg))
        .route("/teacher/gradebook/jobs/{place}", get(job))
        .route("/teacher/gradebook/learners/{seat}", get(learner))
        .route(
            "/teacher/gradebook/learners/{seat}/skills.svg",
            get(skills_svg),
        )
        .route(
            "/teacher/gradebook/learners/{seat}/report/{reader}",
            get(report),
        )
        .route("/api/teacher/gradebook/marks", post(change_mark))
        .route(
            "/api/teacher/gradebook/learners/{seat}/all.json",
            get(learner_record),
        )
        .route("/api/teacher/seats/{seat}/erase", post(erase))
        .route("/api/teacher/gradebook/{file}", get(export))
}

/// By which rule something is asked for.
#[derive(Deserialize)]
struct RuleQuery {
    rule: Option<String>,
}

/// What is asked for: by which rule, and in which language.
pub(super) struct Asked {
    shared: Arc<Shared>,
    rule: MarkRule,
    query: Option<String>,
    headers: HeaderMap,
}

impl FromRequestParts<Arc<Shared>> for Asked {
    type Rejection = QueryRejection;

    async fn from_request_parts(
        parts: &mut Parts,
        shared: &Arc<Shared>,
    ) -> Result<Asked, QueryRejection> {
        let Query(RuleQuery { rule }) = Query::from_request_parts(parts, shared).await?;
        let named = rule.and_then(|rule| rule.parse().ok());
        Ok(Asked {
            rule: named.unwrap_or(usual_rule(shared.definition.kind)),
            shared: Arc::clone(shared),
            query: parts.uri.query().map(str::to_owned),
            headers: parts.headers.clone(),
        })
    }
}

impl Asked {
    /// The gradebook as it stands.
    async fn view(&self) -> Result<GradebookView, StoreError> {
        self.shared.gradebook(self.rule).await
    }

    fn texts(&self) -> &PageTexts {
        (self.shared).page_texts(self.query.as_deref(), &self.headers)
    }

    /// A page for whoever is the teacher; everybody else is led to the way in.
    async fn page(
        &self,
        teacher: Result<Teacher, Refused>,
        make: impl FnOnce(&PageTexts, &GradebookView) -> Option<String>,
    ) -> Result<Response, Refused> {
        if teacher.is_err() {
            return Ok(Redirect::to("/teacher").into_response());
        }
        let page = make(self.texts(), &self.view().await?).ok_or(Refused::NotThere)?;
        Ok(Html(page).into_response())
    }
}

impl Shared {
    /// The gradebook as it stands, by this rule. Seats that have no pseudonym yet get one.
    async fn gradebook(self: &Arc<Shared>, rule: MarkRule) -> Result<GradebookView, StoreError> {
        self.give_pseudonyms().await?;
        let (title, jobs) = (self.definition.title.clone(), self.definition.jobs.clone());
        let (grades, changes) = self
            .read(move |store| {
                let grades = ClassGrades {
                    title,
                    learners: store.learners()?,
                    book: Gradebook::new(jobs, store.graded_attempts()?, rule),
                    changes: store.instructor_marks(None)?,
                };
                Ok((grades, store.mark_changes(None)?))
            })
            .await?;
        let seats: Vec<u32> = grades.learners.iter().map(|learner| learner.seat).collect();
        Ok(GradebookView {
            statistics: item_statistics(&grades.book, &seats),
            grades,
            changes,
            kind: self.definition.kind,
            keeps_back: self.definition.kind.keeps_results_back(self.standing()),
        })
    }

    /// Every seat that has no pseudonym gets one.
    async fn give_pseudonyms(&self) -> Result<(), StoreError> {
        let given = self.writer.write(|store| store.give_pseudonyms(pseudonym));
        given.await
    }

    /// What a job is called in each language, where the library still has it.
    fn job_title(&self, job: &str) -> Option<Bilingual> {
        let source = self.library.scenario(job).ok()?;
        Some(source.scenario.title)
    }

    /// What tells this class from others and names nobody.
    fn class_key(&self) -> String {
        let code = self.code.to_string();
        let key = self.definition.derived(b"class", &[code.as_bytes()]);
        key.to_string().chars().take(16).collect()
    }
}

/// `GET /teacher/gradebook`.
pub(super) async fn class(
    asked: Asked,
    teacher: Result<Teacher, Refused>,
) -> Result<Response, Refused> {
    let page = asked.page(teacher, |texts, view| Some(gradebook_page(texts, view)));
    page.await
}

/// `GET /teacher/gradebook/jobs/N`: the job in this place, from 1.
pub(super) async fn job(
    asked: Asked,
    teacher: Result<Teacher, Refused>,
    Path(place): Path<usize>,
) -> Result<Response, Refused> {
    let page = asked.page(teacher, |texts, view| {
        gradebook_job_page(texts, view, place.checked_sub(1)?)
    });
    page.await
}

/// `GET /teacher/gradebook/learners/N`.
pub(super) async fn learner(
    asked: Asked,
    teacher: Result<Teacher, Refused>,
    Path(seat): Path<u32>,
) -> Result<Response, Refused> {
    let page = asked.page(teacher, |texts, view| {
        gradebook_learner_page(texts, view, seat)
    });
    page.await
}

/// `GET /teacher/gradebook/learners/N/report/READER`.
pub(super) async fn report(
    asked: Asked,
    teacher: Result<Teacher, Refused>,
    Path((seat, reader)): Path<(u32, String)>,
) -> Result<Response, Refused> {
    let page = asked.page(teacher, |texts, view| {
        gradebook_report_page(texts, view, seat, ReportReader::of_name(&reader)?)
    });
    page.await
}

/// A file to be kept.
fn file(name: &str, media_type: &'static str, bytes: Vec<u8>) -> Result<Response, Refused> {
    let name = HeaderValue::try_from(format!("attachment; filename=\"{name}\""))
        .map_err(|_| Refused::NotThere)?;
    let headers = [
        (header::CONTENT_TYPE, HeaderValue::from_static(media_type)),
        (header::CONTENT_DISPOSITION, name),
    ];
    Ok((headers, bytes).into_response())
}

/// A picture that stands on a page and can be kept.
fn svg(picture: String) -> Response {
    let media_type = HeaderValue::from_static("image/svg+xml");
    ([(header::CONTENT_TYPE, media_type)], picture).into_response()
}

/// `GET /teacher/gradebook/items.svg`.
pub(super) async fn items_svg(asked: Asked, _: Teacher) -> Result<Response, Refused> {
    Ok(svg(items_plot(asked.texts(), &asked.view().await?)))
}

/// `GET /teacher/gradebook/learners/N/skills.svg`.
pub(super) async fn skills_svg(
    asked: Asked,
    _: Teacher,
    Path(seat): Path<u32>,
) -> Result<Response, Refused> {
    let view = asked.view().await?;
    let learner = view.grades.learner(seat).ok_or(Refused::NotThere)?;
    Ok(svg(skills_plot(asked.texts(), &view, learner)))
}

/// `GET /api/teacher/gradebook/FILE`: the marks as other programs read them.
pub(super) async fn export(
    asked: Asked,
    _: Teacher,
    Path(name): Path<String>,
) -> Result<Response, Refused> {
    let (shared, view) = (&asked.shared, asked.view().await?);
    let grades = &view.grades;
    const CSV: &str = "text/csv; charset=utf-8; header=present";
    match name.as_str() {
        "marks.csv" => file(&name, CSV, marks_csv(grades, true).into_bytes()),
        "pseudonyms.csv" => file(&name, CSV, marks_csv(grades, false).into_bytes()),
        "one-roster.zip" => {
            let titles: Vec<String> = (grades.book.jobs().iter())
                .map(|job| {
                    shared
                        .job_title(job)
                        .map_or_else(|| job.clone(), |title| title.en)
                })
                .collect();
            let begun_ms = shared.read(|store| store.begun()).await?.0;
            let closes_ms = shared.definition.closes_ms.unwrap_or(shared.now().0);
            let files = one_roster_files(grades, &titles, (begun_ms, closes_ms));
            // At the root of the zip, as OneRoster's binding wants them.
            let files = files.iter().map(|(name, text)| (*name, text.as_bytes()));
            let zip = zip_of(files).map_err(|error| Refused::Wrong(error.to_string()))?;
            file(&name, "application/zip", zip)
        }
        "statements.jsonl" => {
            let titles: Vec<_> = (grades.book.jobs().iter())
                .filter_map(|job| Some((job.clone(), shared.job_title(job)?)))
                .collect();
            let title = |job: &str| {
                titles
                    .iter()
                    .find(|(of, _)| of == job)
                    .map(|(_, title)| title)
            };
            let lines = xapi_lines(grades, &shared.class_key(), title);
            file(&name, "application/jsonl", lines.into_bytes())
        }
        _ => Err(Refused::NotThere),
    }
}

#[derive(Deserialize)]
#[serde(deny_unknown_fields)]
pub(super) struct MarkBody {
    seat: u32,
    /// Place of the job in the class, from 0.
    place: usize,
    version: u32,
    points: Option<f64>,
    comment: String,
    reason: String,
}

#[derive(Serialize)]
struct MarkKept {
    version: u32,
}

/// So a mark stands that somebody else had changed.
#[derive(Serialize)]
struct MarkStands {
    version: u32,
    points: Option<f64>,
    comment: String,
}

/// A text as it is kept: without characters that steer, none too long.
fn kept_text(text: &str) -> String {
    let plain = text.chars().map(|c| if c == '\n' { ' ' } else { c });
    let plain: String = plain
        .filter(|c| !c.is_control())
        .take(LONGEST_COMMENT)
        .collect();
    plain.trim().to_owned()
}

/// `POST /api/teacher/gradebook/marks`: a mark, a comment, or both. Whoever did not see the last change is told how the
/// mark stands now, and nothing is overwritten.
pub(super) async fn change_mark(
    State(shared): State<Arc<Shared>>,
    _: Teacher,
    Json(body): Json<MarkBody>,
) -> Result<Response, Refused> {
    let wrong = |why: &str| Refused::Wrong(why.to_owned());
    let job = shared.definition.jobs.get(body.place);
    let job = job.ok_or(Refused::NotThere)?.clone();
    if body
        .points
        .is_some_and(|points| !(0.0..=MOST_POINTS).contains(&points))
    {
        return Err(wrong("a mark is a number from 0 to 100"));
    }
    let request = MarkRequest {
        seat: body.seat,
        job,
        version: body.version,
        // To the tenth, as marks are shown.
        points: body.points.map(|points| (10.0 * points).round() / 10.0),
        comment: kept_text(&body.comment),
        reason: kept_text(&body.reason),
    };
    let (now, rule) = (shared.now(), usual_rule(shared.definition.kind));
    let changed = shared.write(move |store| {
        if !store.has_seat(request.seat)? {
            return Ok(None);
        }
        let book = Gradebook::new(
            vec![request.job.clone()],
            store.graded_attempts_of(request.seat)?,
            rule,
        );
        let computed = book.points(request.seat, &request.job);
        store.change_mark(&request, computed, now).map(Some)
    });
    match changed.await?.ok_or(Refused::NotThere)? {
        Changed::Kept(version) => Ok(Json(MarkKept { version }).into_response()),
        Changed::NoReason => Err(wrong("a changed mark needs a reason")),
        Changed::Stale(stands) => {
            let stands = MarkStands {
                version: stands.version,
                points: stands.points,
                comment: stands.comment,
            };
            Ok((StatusCode::CONFLICT, Json(stands)).into_response())
        }
    }
}

/// `GET /api/teacher/gradebook/learners/N/all.json`: everything that is kept of one learner.
pub(super) async fn learner_record(
    State(shared): State<Arc<Shared>>,
    _: Teacher,
    Path(seat): Path<u32>,
) -> Result<Response, Refused> {
    shared.give_pseudonyms().await?;
    let record = shared.read(move |store| store.learner_record(seat)).await?;
    let record = record.ok_or(Refused::NotThere)?;
    let bytes = serde_json::to_vec_pretty(&record).map_err(StoreError::from)?;
    file(&format!("seat-{seat}.json"), "application/json", bytes)
}

/// `POST /api/teacher/seats/N/erase`: nothing of this learner is left, in the tables, their files and the copies.
pub(super) async fn erase(
    State(shared): State<Arc<Shared>>,
    _: Teacher,
    Path(seat): Path<u32>,
) -> Result<StatusCode, Refused> {
    let was_there = shared.write(move |store| store.erase_learner(seat)).await?;
    shared.change(|live| live.erase(seat));
    // Also where the rows are gone already: their bytes may have had to stay the last time.
    let eraser = shared.eraser.clone();
    let wiped = tokio::task::spawn_blocking(move || eraser.wipe()).await;
    wiped.map_err(|_| StoreError::Ended)??;
    match was_there {
        true => Ok(StatusCode::NO_CONTENT),
        false => Err(Refused::NotThere),
    }
}
