//! Writing an attempt, line by line as it happens.

use super::attempt::{Attempt, Footer, HEADER, Header, LATEST, Timed, footer_line, line_options};
use super::chain::Chain;
use crate::bench::Action;
use detent_simulation::units::Time;
use std::fmt;
use std::io::{self, Write};

/// Why the system did not do what was asked.
#[derive(Clone, Debug, PartialEq, Eq)]
pub struct SystemReason {
    /// Of which kind.
    pub kind: io::ErrorKind,
    /// In the system's own words.
    pub text: String,
}

impl From<&io::Error> for SystemReason {
    fn from(error: &io::Error) -> SystemReason {
        SystemReason {
            kind: error.kind(),
            text: error.to_string(),
        }
    }
}

impl fmt::Display for SystemReason {
    fn fmt(&self, f: &mut fmt::Formatter<'_>) -> fmt::Result {
        f.write_str(&self.text)
    }
}

/// Why a line could not be written.
#[derive(Clone, Debug, PartialEq, thiserror::Error)]
pub enum LogError {
    /// The storage failed.
    #[error(
        "the attempt could not be written: {0}; check the free space and that you may write there"
    )]
    Io(SystemReason),
    /// The text could not be made.
    #[error("the action could not be put into words: {0}")]
    Ron(#[from] ron::Error),
    /// Earlier than the line before it.
    #[error("an action at tick {} cannot follow one at tick {}", found.0, before.0)]
    TimeBackwards {
        /// Time of the last line.
        before: Time,
        /// Time that was given.
        found: Time,
    },
    /// Later than any attempt lasts.
    #[error("tick {} lies beyond the longest attempt; finish this one and begin another", .0.0)]
    TooLate(Time),
    /// The attempt already has its end.
    #[error("the attempt is finished; begin another")]
    Finished,
    /// An earlier line went wrong half way; one behind it could not be read.
    #[error("writing has failed before; resume the attempt from its file")]
    Broken,
}

impl From<io::Error> for LogError {
    fn from(error: io::Error) -> LogError {
        LogError::Io(SystemReason::from(&error))
    }
}

/// An attempt being recorded into `out`. Each line goes out in one write and is flushed.
#[derive(Debug)]
pub struct AttemptLog<W: Write> {
    out: W,
    format: u32,
    chain: Chain,
    last: Time,
    broken: bool,
}

impl<W: Write> AttemptLog<W> {
    /// Begin a log with its header.
    ///
    /// # Errors
    /// When `out` fails.
    pub fn begin(mut out: W, header: &Header) -> Result<AttemptLog<W>, LogError> {
        let line = format!("{HEADER}{}", line_options().to_string(header)?);
        put(&mut out, &line)?;
        Ok(AttemptLog {
            out,
            format: header.format,
            chain: Chain::begin(&line),
            last: Time::ZERO,
            broken: false,
        })
    }

    /// Go on with a log that was broken off. `out` must stand at [`Attempt::whole_bytes`].
    ///
    /// # Errors
    /// When the attempt is finished.
    pub fn resume(out: W, attempt: &Attempt) -> Result<AttemptLog<W>, LogError> {
        if attempt.footer.is_some() {
            return Err(LogError::Finished);
        }
        Ok(AttemptLog {
            out,
            format: attempt.header.format,
            chain: attempt.chain.clone(),
            last: attempt.last(),
            broken: false,
        })
    }

    /// Add one action.
    ///
    /// # Errors
    /// When `out` fails, or `at` lies before the last action.
    pub fn push(&mut self, at: Time, action: &Action) -> Result<(), LogError> {
        self.advance(at)?;
        let action = action.clone();
        let line = line_options().to_string(&Timed { at, action })?;
        let put = put(&mut self.out, &line);
        self.broken = put.is_err();
        self.chain.link(&line);
        put
    }

    /// Add the end and hand the storage back.
    ///
    /// # Errors
    /// When `out` fails, or the end lies before the last action.
    pub fn finish(mut self, footer: &Footer) -> Result<W, LogError> {
        self.advance(footer.at)?;
        let line = footer_line(self.format, &mut self.chain, footer)?;
        put(&mut self.out, &line)?;
        Ok(self.out)
    }

    /// The storage, the log left unfinished.
    pub fn into_inner(self) -> W {
        self.out
    }

    fn advance(&mut self, found: Time) -> Result<(), LogError> {
        if self.broken {
            return Err(LogError::Broken);
        }
        let before = self.last;
        if found < before {
            return Err(LogError::TimeBackwards { before, found });
        }
        if found > LATEST {
            return Err(LogError::TooLate(found));
        }
        self.last = found;
        Ok(())
    }
}

fn put<W: Write>(out: &mut W, line: &str) -> Result<(), LogError> {
    out.write_all(format!("{line}\n").as_bytes())?;
    out.flush()?;
    Ok(())
}

#[cfg(test)]
mod tests {
    use super::super::attempt::{Answer, Seal, read_attempt};
    use super::*;
    use crate::bench::{Advice, Grip, MeterMode, Report, Verdict};
    use detent_simulation::interface::Direction;
    use detent_simulation::interface::{Button, Component, Connector, Pin};

    fn actions() -> Vec<Action> {
        vec![
            Action::Plug,
            Action::Detent(Direction::Right),
            Action::Down(Button::Start),
            Action::Pull(Connector::Board("X2".into())),
            Action::Seat(Connector::Load(Component::DrainPump)),
            Action::Probe {
                mode: MeterMode::Ohms,
                red: Pin::PlugLine,
                black: Pin::BulkPlus,
                grip: Grip::Fingers,
            },
            Action::Order("a\nb\"\\\u{301}'\u{0}".into()),
            Action::NoteCode(42),
            Action::Report(Report {
                causes: vec!["drain-pump.seized".into()],
                part: None,
                proof: vec![0, 3],
                looks: vec![1],
                advice: Advice::CheckOutlet,
                verdict: Verdict::CausesNamed,
            }),
        ]
    }

    fn footer() -> Footer {
        Footer {
            at: Time(900),
            state: "00ff".into(),
            answer: Answer::Shown { score: 0.1 + 0.2 },
        }
    }

    #[test]
    fn what_was_written_is_read_back_the_same() {
        let header = Header::new("scenarios/a.ron", "text", u64::MAX);
        let mut log = AttemptLog::begin(Vec::new(), &header).expect("memory does not fail");
        for (n, action) in actions().iter().enumerate() {
            log.push(Time(n as u64), action).expect("in order");
        }
        let bytes = log.finish(&footer()).expect("in order");
        let attempt = read_attempt("a.attempt", &bytes).expect("just written");
        assert_eq!(attempt.header, header);
        assert_eq!(attempt.footer, Some(footer()));
        assert_eq!(attempt.seal, Seal::Holds);
        let read: Vec<Action> = attempt.actions.into_iter().map(|t| t.action).collect();
        assert_eq!(read, actions());
        assert_eq!((attempt.torn, attempt.whole_bytes), (false, bytes.len()));
    }

    #[test]
    fn a_log_cut_anywhere_behind_its_header_loses_at_most_the_line_that_was_cut() {
        let header = Header::new("a.ron", "text", 1);
        let mut log = AttemptLog::begin(Vec::new(), &header).expect("memory does not fail");
        let head = log.out.len();
        for (n, action) in actions().iter().enumerate() {
            log.push(Time(n as u64), action).expect("in order");
        }
        let bytes = log.into_inner();
        for cut in head..=bytes.len() {
            let attempt = read_attempt("a.part", &bytes[..cut]).expect("a part may be torn");
            let whole = bytes[..cut].iter().filter(|b| **b == b'\n').count() - 1;
            assert_eq!(attempt.actions.len(), whole, "cut at {cut}");
            assert_eq!(attempt.torn, bytes[cut - 1] != b'\n', "cut at {cut}");

            let kept = bytes[..attempt.whole_bytes].to_vec();
            let mut log = AttemptLog::resume(kept, &attempt).expect("not finished");
            log.push(Time(500), &Action::Unplug).expect("later");
            let bytes = log.finish(&footer()).expect("later");
            let again = read_attempt("a.attempt", &bytes).expect("finished now");
            assert_eq!(again.actions.len(), whole + 1, "cut at {cut}");
            assert_eq!(again.seal, Seal::Holds, "cut at {cut}");
        }
    }

    #[test]
    fn a_log_whose_storage_failed_writes_nothing_behind_the_torn_line() {
        let header = Header::new("a.ron", "text", 1);
        let mut space = [0_u8; 160];
        let mut log = AttemptLog::begin(&mut space[..], &header).expect("the header fits");
        let full = (0..).find_map(|n| log.push(Time(n), &Action::Plug).err());
        assert!(matches!(full, Some(LogError::Io(_))), "{full:?}");
        let after = log.push(Time(LATEST.0), &Action::Plug);
        assert!(matches!(after, Err(LogError::Broken)), "{after:?}");
    }

    #[test]
    fn the_log_refuses_to_go_back_in_time() {
        let header = Header::new("a.ron", "text", 1);
        let mut log = AttemptLog::begin(Vec::new(), &header).expect("memory does not fail");
        log.push(Time(5), &Action::Plug).expect("first");
        let refused = log.push(Time(4), &Action::Unplug);
        assert!(
            matches!(refused, Err(LogError::TimeBackwards { .. })),
            "{refused:?}"
        );
    }
}
