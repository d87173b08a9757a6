//! What is asked of a class's server, when, and what is made of its answers. No clock, no file and no network: whoever
//! drives it brings the time, the texts of the attempts and the answers.

use super::kept::{KeptAttempt, KeptClass, KeptSealedJob};
use crate::attempts::whole_name;
use detent_class_protocol::{
    AttemptId, AttemptStatus, ClassView, Digest, JoinAnswer, JoinRefusal, JoinRequest,
    SealedJobAnswer, SealedScenario, SecretToken, Segment, SegmentAnswer, Standing, Upload,
    UploadState,
};
use detent_training::record::is_end;
use std::collections::BTreeMap;
use std::time::Duration;

/// Between two questions for where the class stands.
const POLL: Duration = Duration::from_secs(5);
/// The same while nobody looks at the window.
const POLL_UNSEEN: Duration = Duration::from_secs(10);
/// Between two questions for a job that is not drawn yet.
const ASK_FOR_JOB: Duration = Duration::from_secs(3);
/// Between two segments.
const SEND: Duration = Duration::from_secs(1);
/// The wait after the first question that got no answer, and the longest.
const BACKOFF: (Duration, Duration) = (Duration::from_secs(1), Duration::from_secs(30));

/// Something to ask.
#[derive(Clone, Debug, PartialEq)]
pub enum Question {
    /// For a seat.
    Join(JoinRequest),
    /// Where the class stands.
    Seat,
    /// What is there of an attempt.
    Attempt(AttemptId),
    /// For the scenario of this sealed job.
    SealedJob(String),
    /// To keep this.
    Segment(Segment),
}

/// What the server answered.
#[derive(Clone, Debug, PartialEq)]
pub enum Answer {
    /// A seat.
    Joined(Box<JoinAnswer>),
    /// No seat.
    Refused(JoinRefusal),
    /// Where the class stands.
    Seat(Box<ClassView>),
    /// What is there of an attempt.
    Attempt(AttemptStatus),
    /// The scenario of a sealed job, if it can be had.
    SealedJob(SealedJobAnswer),
    /// What became of a segment.
    Segment(SegmentAnswer),
}

/// Why there is no answer.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub enum Failure {
    /// Nobody answered in time, or the server was too busy.
    NoAnswer,
    /// What answered is no class's server.
    NotAClass,
    /// The server does not know this seat.
    UnknownSeat,
}

/// Why there is no seat yet.
#[derive(Clone, Debug, PartialEq, Eq)]
pub enum JoinProblem {
    /// The server says why.
    Refused(JoinRefusal),
    /// It says nothing.
    Failed(Failure),
    /// The seat that there was is no more.
    SeatLost,
}

/// Whether what was done here has come to the server.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub enum SendState {
    /// All of it, as far as there is anything.
    Sent,
    /// So many deeds have not.
    Waiting {
        /// How many.
        deeds: usize,
    },
    /// The server does not answer.
    Unreachable,
    /// The server cannot keep it now.
    ServerFull,
    /// An attempt is refused for good.
    Refused,
}

/// An attempt on its way.
struct Sent {
    upload: Upload,
    /// What the server told it has, until that is held against what is kept here.
    told: Option<AttemptStatus>,
    /// Deeds that are not known to be there.
    unsent: usize,
    /// It is to be looked at: something may have been done since.
    changed: bool,
}

impl Sent {
    fn is_refused(&self) -> bool {
        match self.upload.state() {
            UploadState::Refused(_) | UploadState::Differs => true,
            UploadState::Unknown | UploadState::Sending { .. } => false,
        }
    }
}

/// Asks a class's server, one question at a time.
pub struct Driver {
    kept: KeptClass,
    /// What is kept has changed since that was last asked.
    to_keep: bool,
    joining: Option<JoinRequest>,
    problem: Option<JoinProblem>,
    sent: BTreeMap<String, Sent>,
    on_its_way: Option<Question>,
    /// Questions without an answer, one after the other.
    failures: u32,
    /// The last segment could not be kept.
    server_full: bool,
    /// Nothing is asked before.
    not_before: Duration,
    poll_at: Duration,
    send_at: Duration,
    /// When the scenario of a sealed job is asked for next.
    job_at: Duration,
    /// When the server last said where the class stands; none where that is from an earlier run.
    heard_at: Option<Duration>,
}

/// Lines of an attempt from there on, but for the first, which is no deed.
fn deeds(text: &str, from: usize) -> usize {
    let lines = text.get(from..).unwrap_or_default().lines();
    let header = usize::from(from == 0);
    lines.count().saturating_sub(header)
}

/// Both say the same, but for the time that goes by.
fn differ_in_time(known: &ClassView, view: &ClassView) -> bool {
    let standing = known.standing;
    standing.differs_in_time_alone(view.standing)
        && *known
            == ClassView {
                standing,
                ..view.clone()
            }
}

impl Driver {
    /// With what was kept of the class.
    pub fn new(kept: KeptClass) -> Driver {
        let mut driver = Driver {
            kept,
            to_keep: false,
            joining: None,
            problem: None,
            sent: BTreeMap::new(),
            on_its_way: None,
            failures: 0,
            server_full: false,
            not_before: Duration::ZERO,
            poll_at: Duration::ZERO,
            send_at: Duration::ZERO,
            job_at: Duration::ZERO,
            heard_at: None,
        };
        driver.send_what_is_kept();
        driver
    }

    /// What is kept of the class.
    pub fn kept(&self) -> &KeptClass {
        &self.kept
    }

    /// The same, once after each change of it.
    pub fn take_to_keep(&mut self) -> Option<&KeptClass> {
        std::mem::take(&mut self.to_keep).then_some(&self.kept)
    }

    /// A seat is taken.
    pub fn has_seat(&self) -> bool {
        self.kept.token.is_some()
    }

    /// What the server said last, while a seat is taken.
    pub fn view(&self) -> Option<&ClassView> {
        self.kept.view.as_ref().filter(|_| self.has_seat())
    }

    /// Where the class stands now, by what was said last and the time since.
    pub fn standing(&self, now: Duration) -> Option<Standing> {
        let standing = self.view()?.standing;
        let heard_at = self.heard_at.unwrap_or(now);
        let since_s = now.saturating_sub(heard_at).as_secs();
        let left = |of_s: u32| u32::try_from(u64::from(of_s).saturating_sub(since_s)).unwrap_or(0);
        Some(match standing {
            Standing::NotOpen { in_s } if left(in_s) > 0 => Standing::NotOpen { in_s: left(in_s) },
            // Until the server says how long.
            Standing::NotOpen { .. } => Standing::Open { left_s: None },
            Standing::Open {
                left_s: Some(left_s),
            } if left(left_s) == 0 => Standing::Closed,
            Standing::Open { left_s } => Standing::Open {
                left_s: left_s.map(left),
            },
            as_it_is @ (Standing::Paused | Standing::Closed) => as_it_is,
        })
    }

    /// A seat was asked for, and there is no answer yet.
    pub fn is_joining(&self) -> bool {
        self.joining.is_some()
    }

    /// Why there is no seat.
    pub fn problem(&self) -> Option<&JoinProblem> {
        self.problem.as_ref()
    }

    /// Asks for a seat.
    pub fn join(&mut self, request: JoinRequest, now: Duration) {
        self.joining = Some(request);
        self.problem = None;
        // Whoever asks does not wait out what came before.
        (self.failures, self.not_before) = (0, now);
    }

    /// Leaves the seat. What was not sent stays here.
    pub fn leave(&mut self) {
        self.kept.token = None;
        self.to_keep = true;
        self.problem = None;
        self.joining = None;
        self.sent.clear();
        self.heard_at = None;
        // Nobody waits for the answer any more.
        self.on_its_way = None;
    }

    /// The newest notice that was not put away.
    pub fn notice(&self) -> Option<(u32, &str)> {
        let newest = self.view()?.notices.last()?;
        let unread = newest.number > self.kept.read_notice;
        unread.then_some((newest.number, newest.text.as_str()))
    }

    /// Puts a notice away, and those before it.
    pub fn put_away(&mut self, notice: u32) {
        self.kept.read_notice = self.kept.read_notice.max(notice);
        self.to_keep = true;
    }

    /// An attempt at a job of the class was begun here. It is the class's from now on.
    pub fn begin(&mut self, name: &str, attempt: AttemptId, job: &str, made_with: (&str, Digest)) {
        self.take_as_own(name, attempt, (job, None), made_with);
    }

    /// A round of a drill of the class, by the fixed name of its skill, was begun here. It is the class's from now on.
    pub fn begin_round(
        &mut self,
        name: &str,
        attempt: AttemptId,
        drill: &str,
        made_with: (&str, Digest),
    ) {
        self.take_as_own(name, attempt, ("", Some(drill)), made_with);
    }

    /// The last question of this round is answered.
    pub fn finish_round(&mut self, name: &str) {
        if let Some(kept) = self.kept.attempts.get_mut(name)
            && !kept.is_finished
        {
            kept.is_finished = true;
            self.to_keep = true;
        }
    }

    fn take_as_own(
        &mut self,
        name: &str,
        attempt: AttemptId,
        (job, drill): (&str, Option<&str>),
        (program, content): (&str, Digest),
    ) {
        let Some(seat) = self.kept.seat() else {
            return;
        };
        let name = whole_name(name);
        if self.kept.attempts.contains_key(name) {
            return;
        }
        let kept = KeptAttempt {
            attempt,
            seat,
            job: job.to_owned(),
            drill: drill.map(str::to_owned),
            is_finished: false,
            program: program.to_owned(),
            content,
            sealed: self.kept.is_sealed(),
            is_there: false,
        };
        self.kept.attempts.insert(name.to_owned(), kept);
        self.to_keep = true;
        self.send_what_is_kept();
    }

    /// So many deeds were added to this attempt.
    pub fn note_deeds(&mut self, name: &str, deeds: usize) {
        let name = whole_name(name);
        if let Some(kept) = self.kept.attempts.get_mut(name)
            && kept.is_there
        {
            kept.is_there = false;
            self.to_keep = true;
        }
        self.send_what_is_kept();
        if let Some(sent) = self.sent.get_mut(name) {
            sent.unsent += deeds;
            sent.changed = true;
        }
    }

    /// Attempts of this seat that are not known to be there are on their way.
    fn send_what_is_kept(&mut self) {
        let Some(seat) = self.kept.seat() else {
            return;
        };
        for (name, kept) in &self.kept.attempts {
            if kept.seat == seat && !kept.is_there && !self.sent.contains_key(name) {
                let sent = Sent {
                    told: None,
                    upload: Upload::new(kept.attempt, &kept.program, kept.content),
                    unsent: 0,
                    changed: true,
                };
                self.sent.insert(name.clone(), sent);
            }
        }
    }

    /// What is to be asked now, and with which token, if anything is. `read` gives the whole text of an attempt by its
    /// name; none where it is no more.
    pub fn next(
        &mut self,
        now: Duration,
        read: &mut dyn FnMut(&str) -> Option<String>,
    ) -> Option<(Option<SecretToken>, Question)> {
        if self.on_its_way.is_some() || now < self.not_before {
            return None;
        }
        let question = self.choose(now, read)?;
        self.on_its_way = Some(question.clone());
        Some((self.kept.token, question))
    }

    fn choose(
        &mut self,
        now: Duration,
        read: &mut dyn FnMut(&str) -> Option<String>,
    ) -> Option<Question> {
        if let Some(request) = &self.joining {
            return Some(Question::Join(request.clone()));
        }
        if !self.has_seat() {
            return None;
        }
        if now >= self.poll_at {
            return Some(Question::Seat);
        }
        if now >= self.job_at
            && let Some(job) = self.wanted_job(now)
        {
            return Some(Question::SealedJob(job.to_owned()));
        }
        if now < self.send_at {
            return None;
        }
        for (name, sent) in &mut self.sent {
            if !sent.changed || sent.is_refused() {
                continue;
            }
            let Some(text) = read(name) else {
                // It was deleted here: nothing more comes of it.
                (sent.changed, sent.unsent) = (false, 0);
                continue;
            };
            if let Some(status) = sent.told.take() {
                sent.upload.told(&status, &text);
                if sent.is_refused() {
                    continue;
                }
            }
            if sent.upload.state() == UploadState::Unknown {
                sent.unsent = deeds(&text, 0);
                return Some(Question::Attempt(sent.upload.attempt()));
            }
            if let UploadState::Sending { bytes, .. } = sent.upload.state() {
                sent.unsent = deeds(&text, usize::try_from(bytes).unwrap_or(usize::MAX));
            }
            if let Some(segment) = sent.upload.segment(&text) {
                return Some(Question::Segment(segment.clone()));
            }
            sent.changed = false;
            let last = text.lines().next_back().unwrap_or_default();
            if sent.upload.is_there(&text) {
                sent.unsent = 0;
                if is_end(last)
                    && let Some(kept) = self.kept.attempts.get_mut(name)
                {
                    kept.is_there = true;
                    self.to_keep = true;
                }
            }
        }
        None
    }

    /// A sealed job whose scenario can be asked for.
    fn wanted_job(&self, now: Duration) -> Option<&str> {
        match self.standing(now)? {
            Standing::NotOpen { .. } => None,
            Standing::Open { .. } | Standing::Paused | Standing::Closed => self.kept.missing_job(),
        }
    }

    /// How long until there may be something to ask: none while an answer is waited for, and where nothing comes by
    /// itself.
    pub fn due_in(&self, now: Duration) -> Option<Duration> {
        if self.on_its_way.is_some() {
            return None;
        }
        let to_send = self.sent.values();
        let to_send = (to_send.filter(|sent| sent.changed && !sent.is_refused()))
            .map(|_| self.send_at)
            .next();
        let at = match (&self.joining, self.has_seat()) {
            (Some(_), _) => now,
            (None, true) => {
                let job = self.wanted_job(now).map(|_| self.job_at);
                (to_send.into_iter().chain(job)).fold(self.poll_at, Duration::min)
            }
            (None, false) => return None,
        };
        Some(at.max(self.not_before).saturating_sub(now))
    }

    /// The answer to the question that is on its way, or why there is none. `draw`, from 0 to 1, keeps a class from
    /// asking again all at once. `seen`: somebody looks at the window.
    pub fn answered(
        &mut self,
        now: Duration,
        answer: Result<Answer, Failure>,
        (draw, seen): (f64, bool),
    ) {
        let Some(question) = self.on_its_way.take() else {
            return;
        };
        let poll = if seen { POLL } else { POLL_UNSEEN };
        match (question, answer) {
            (question, Err(failure)) => self.failed(&question, failure, (now, draw)),
            (question, Ok(answer)) => {
                (self.failures, self.server_full) = (0, false);
                match (question, answer) {
                    (Question::Join(_), Answer::Joined(joined)) => {
                        (self.joining, self.problem) = (None, None);
                        self.sent.clear();
                        self.kept.token = Some(joined.token);
                        self.heard(joined.view, now);
                        self.poll_at = now + poll;
                    }
                    (Question::Join(_), Answer::Refused(refusal)) => {
                        self.joining = None;
                        self.problem = Some(JoinProblem::Refused(refusal));
                    }
                    (Question::Seat, Answer::Seat(view)) => {
                        self.heard(*view, now);
                        self.poll_at = now + poll;
                    }
                    (Question::Attempt(attempt), Answer::Attempt(status)) => {
                        if let Some(sent) = self.upload_of(attempt) {
                            sent.told = Some(status);
                        }
                    }
                    (Question::SealedJob(job), Answer::SealedJob(answer)) => match answer {
                        SealedJobAnswer::Ready(sealed) => {
                            let opens = SealedScenario::open(&sealed, &job).is_ok();
                            self.job_at = now + if opens { Duration::ZERO } else { BACKOFF.1 };
                            if let Some(seat) = self.kept.seat().filter(|_| opens) {
                                let kept = KeptSealedJob { seat, job, sealed };
                                self.kept.sealed_jobs.push(kept);
                                self.to_keep = true;
                            }
                        }
                        SealedJobAnswer::NotYet => self.job_at = now + ASK_FOR_JOB,
                        // What the server said of the class is old; it says so again soon.
                        SealedJobAnswer::NoJob => self.job_at = now + BACKOFF.1,
                    },
                    (Question::Segment(segment), Answer::Segment(answer)) => {
                        self.send_at = now + SEND;
                        if let Some(sent) = self.upload_of(segment.attempt) {
                            sent.upload.answered(segment.digest, answer);
                            if let SegmentAnswer::Kept { .. } = answer {
                                let header = usize::from(segment.sequence == 0);
                                let there = segment.text.lines().count() - header;
                                sent.unsent = sent.unsent.saturating_sub(there);
                            }
                        }
                        if answer == SegmentAnswer::NotNow {
                            self.server_full = true;
                            self.wait(now, draw);
                        }
                    }
                    // An answer to something else.
                    (question, _) => self.failed(&question, Failure::NotAClass, (now, draw)),
                }
            }
        }
    }

    fn upload_of(&mut self, attempt: AttemptId) -> Option<&mut Sent> {
        let mut all = self.sent.values_mut();
        all.find(|sent| sent.upload.attempt() == attempt)
    }

    fn heard(&mut self, view: ClassView, now: Duration) {
        self.heard_at = Some(now);
        let before = self.kept.seat();
        self.to_keep |=
            !(self.kept.view.as_ref()).is_some_and(|known| differ_in_time(known, &view));
        self.kept.take_in(view);
        if self.kept.seat() != before {
            self.sent.clear();
        }
        self.send_what_is_kept();
    }

    fn failed(&mut self, question: &Question, failure: Failure, (now, draw): (Duration, f64)) {
        match (question, failure) {
            (Question::Join(_), failure) => {
                self.joining = None;
                self.problem = Some(JoinProblem::Failed(failure));
            }
            (_, Failure::UnknownSeat) => {
                self.leave();
                self.problem = Some(JoinProblem::SeatLost);
            }
            (_, Failure::NoAnswer | Failure::NotAClass) => self.wait(now, draw),
        }
    }

    /// Asks nothing for a while: a second, and each time twice as long.
    fn wait(&mut self, now: Duration, draw: f64) {
        let (first, longest) = BACKOFF;
        let doubled = first.saturating_mul(2_u32.saturating_pow(self.failures));
        let wait = doubled
            .min(longest)
            .mul_f64(1.0 - 0.25 * draw.clamp(0.0, 1.0));
        self.failures = self.failures.saturating_add(1);
        self.not_before = now + wait;
        // What was to be asked is asked then, and nothing sooner.
        self.poll_at = self.poll_at.max(self.not_before);
    }

    /// Whether what was done here has come to the server.
    pub fn send_state(&self) -> SendState {
        let deeds: usize = self.sent.values().map(|sent| sent.unsent).sum();
        if self.sent.values().any(Sent::is_refused) {
            SendState::Refused
        } else if self.server_full {
            SendState::ServerFull
        } else if self.failures > 0 {
            SendState::Unreachable
        } else if deeds > 0 {
            SendState::Waiting { deeds }
        } else {
            SendState::Sent
        }
    }

    /// Attempts that the server refuses for good, by the names of their files when they are finished.
    pub fn refused(&self) -> impl Iterator<Item = &str> {
        let refused = self.sent.iter().filter(|(_, sent)| sent.is_refused());
        refused.map(|(name, _)| name.as_str())
    }

    /// This attempt is of the class, and what it is worth is kept back.
    pub fn seals(&self, name: &str) -> bool {
        let kept = self.kept.attempts.get(whole_name(name));
        kept.is_some_and(|kept| kept.sealed)
    }

    /// This attempt is of the class.
    pub fn has(&self, name: &str) -> bool {
        self.kept.attempts.contains_key(whole_name(name))
    }
}
