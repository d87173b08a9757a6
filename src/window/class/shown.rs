//! A class to be shown in pictures and looked at in tests: our own invention.

use super::driver::Driver;
use super::kept::KeptClass;
use super::{ClassLink, ClassRes};
use detent_class_protocol::{
    AttemptId, AttemptStatus, ClassDrill, ClassId, ClassJob, ClassKind, ClassNotice, ClassView,
    Digest, DrillStatus, PROTOCOL_VERSION, SecretToken, Standing, Verdict,
};

/// What of a class is shown.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub enum ShownClass {
    /// Asking for a seat.
    Join,
    /// On the start screen.
    Seat(ClassKind),
    /// The same, with drills beside the jobs.
    Drills,
    /// At the bench, which the teacher has stopped.
    Paused,
}

impl ShownClass {
    /// The one that a picture names so.
    pub fn named(name: &str) -> Option<ShownClass> {
        match name {
            "join" => Some(ShownClass::Join),
            "class" => Some(ShownClass::Seat(ClassKind::Practice)),
            "class-drills" => Some(ShownClass::Drills),
            "class-examination" => Some(ShownClass::Seat(ClassKind::Examination)),
            "class-paused" => Some(ShownClass::Paused),
            _ => None,
        }
    }
}

/// What the server of an invented class says.
pub fn demo_view(kind: ClassKind) -> ClassView {
    let jobs = ["dark-machine", "drain-code", "no-hot-water", "no-such-job"];
    let status = |n, verdict| AttemptStatus {
        job: Some(jobs[usize::from(n)].to_owned()),
        closed: true,
        verdict,
        ..AttemptStatus::nothing_of(AttemptId::of_bytes([n; 16]))
    };
    let points = match kind {
        ClassKind::Practice => Some(82.0),
        ClassKind::Examination => None,
    };
    ClassView {
        protocol: PROTOCOL_VERSION,
        program: env!("CARGO_PKG_VERSION").to_owned(),
        class: Some(ClassId::of_bytes([3; 16])),
        content: Digest::NONE,
        title: "Workshop B, Tuesday".to_owned(),
        name: "Rosa Ibáñez".to_owned(),
        kind,
        standing: Standing::Open {
            left_s: Some(42 * 60),
        },
        jobs: (jobs.iter().zip(71..))
            .map(|(job, seed)| ClassJob {
                job: (*job).to_owned(),
                seed,
                is_sealed: false,
            })
            .collect(),
        drills: Vec::new(),
        notices: vec![ClassNotice {
            number: 1,
            text: "Look at the drain hose before you open anything.".to_owned(),
        }],
        attempts: vec![status(0, Verdict::Verified { points })],
    }
}

/// The same class with drills: one verified, one not begun, and one that no program has.
pub fn with_drills(view: ClassView) -> ClassView {
    let drills = ["lamp-reading", "safe-work", "no-such-drill"];
    let right = (view.kind == ClassKind::Practice).then_some(8);
    let verified = AttemptStatus {
        drill: Some(DrillStatus {
            drill: drills[0].to_owned(),
            done: 10,
            questions: 10,
            right,
        }),
        closed: true,
        verdict: Verdict::Verified {
            points: right.map(|right| 10.0 * f64::from(right)),
        },
        ..AttemptStatus::nothing_of(AttemptId::of_bytes([77; 16]))
    };
    let drills = drills.map(|drill| ClassDrill {
        drill: drill.to_owned(),
        questions: 10,
        seed: 5_000,
    });
    ClassView {
        jobs: view.jobs.into_iter().take(2).collect(),
        drills: drills.into(),
        attempts: [view.attempts, vec![verified]].concat(),
        ..view
    }
}

impl ClassRes {
    /// As a picture wants it. Nothing of it is asked for anywhere, nor kept.
    pub fn shown(shown: ShownClass) -> ClassRes {
        let view = match shown {
            ShownClass::Join => None,
            ShownClass::Seat(kind) => Some(demo_view(kind)),
            ShownClass::Drills => Some(with_drills(demo_view(ClassKind::Practice))),
            ShownClass::Paused => Some(ClassView {
                standing: Standing::Paused,
                ..demo_view(ClassKind::Practice)
            }),
        };
        let kept = KeptClass {
            token: view.as_ref().map(|_| SecretToken::of_bytes([0; 32])),
            view,
            ..KeptClass::default()
        };
        let address = "192.168.1.20:8080".parse();
        ClassRes {
            link: address.ok().map(|address| ClassLink {
                address,
                store: None,
                transport: None,
                driver: Driver::new(kept),
                waiting: None,
                content: Digest::NONE,
                storage_error: None,
            }),
            ..ClassRes::default()
        }
    }
}
