//! Questions over HTTP, natively on a thread of their own, in a page by its browser.

use super::address::ServerAddress;
use super::driver::{Answer, Failure, Question};
use detent_class_protocol::{
    AttemptStatus, ClassView, JoinAnswer, JoinRefusal, SealedJobAnswer, SecretToken, SegmentAnswer,
};
use ehttp::{Headers, Request, Response};
use serde::de::DeserializeOwned;
use std::time::Duration;

/// No answer by then is none.
const TIMEOUT: Duration = Duration::from_secs(10);

/// Called with the answer, or with why there is none.
pub type OnAnswer = Box<dyn FnOnce(Result<Answer, Failure>) + Send>;

/// Carries questions to a class's server.
pub trait Transport: Send + Sync {
    /// Asks, and calls back from wherever the answer comes in.
    fn ask(
        &self,
        address: &ServerAddress,
        token: Option<SecretToken>,
        question: Question,
        on_answer: OnAnswer,
    );
}

/// By HTTP.
pub struct Http;

impl Transport for Http {
    fn ask(
        &self,
        address: &ServerAddress,
        token: Option<SecretToken>,
        question: Question,
        on_answer: OnAnswer,
    ) {
        let request = request(address, token, &question);
        ehttp::fetch(request, move |response| {
            on_answer(answer(&question, &response));
        });
    }
}

fn request(address: &ServerAddress, token: Option<SecretToken>, question: &Question) -> Request {
    // What is asked is made of strings and numbers: it can always be written.
    let json = |value: serde_json::Result<Vec<u8>>| value.unwrap_or_default();
    let mut request = match question {
        Question::Join(join) => {
            Request::post(address.at("/api/join"), json(serde_json::to_vec(join)))
        }
        Question::Seat => Request::get(address.at("/api/seat")),
        Question::Attempt(attempt) => Request::get(address.at(&format!("/api/attempts/{attempt}"))),
        Question::SealedJob(job) => Request::get(address.at(&format!("/api/jobs/{job}"))),
        Question::Segment(segment) => Request::post(
            address.at("/api/segments"),
            json(serde_json::to_vec(segment)),
        ),
    };
    // In the place of what `ehttp` puts there: `insert` would add a second one of each, which a server takes for none.
    request.headers = Headers::new(&[
        ("Accept", "application/json"),
        ("Content-Type", "application/json"),
    ]);
    if let Some(token) = token {
        request
            .headers
            .insert("Authorization", format!("Bearer {token}"));
    }
    request.with_timeout(Some(TIMEOUT))
}

/// What the response says. An answer counts whatever its status, so that a refusal is read too.
fn answer(question: &Question, response: &ehttp::Result<Response>) -> Result<Answer, Failure> {
    const UNAUTHORIZED: u16 = 401;
    const TOO_LARGE: u16 = 413;
    let Ok(response) = response else {
        return Err(Failure::NoAnswer);
    };
    let answer = match question {
        Question::Join(_) => read::<JoinAnswer>(response)
            .map(|joined| Answer::Joined(Box::new(joined)))
            .or_else(|| read::<JoinRefusal>(response).map(Answer::Refused)),
        _ if response.status == UNAUTHORIZED => return Err(Failure::UnknownSeat),
        Question::Seat => read::<ClassView>(response).map(|view| Answer::Seat(Box::new(view))),
        Question::Attempt(_) => read::<AttemptStatus>(response).map(Answer::Attempt),
        Question::SealedJob(_) => read::<SealedJobAnswer>(response).map(Answer::SealedJob),
        Question::Segment(_) => read::<SegmentAnswer>(response)
            .or((response.status == TOO_LARGE).then_some(SegmentAnswer::TooMuch))
            .map(Answer::Segment),
    };
    answer.ok_or(match response.status {
        // Too busy, too often, or broken: another time.
        408 | 429 | 500.. => Failure::NoAnswer,
        _ => Failure::NotAClass,
    })
}

fn read<T: DeserializeOwned>(response: &Response) -> Option<T> {
    serde_json::from_slice(&response.bytes).ok()
}
