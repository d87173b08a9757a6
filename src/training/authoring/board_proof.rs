//! A written board, proved on a sound machine.

use super::finding::{AuthoringFinding, PlacedFinding};
use crate::bench::{Condition, MilestoneKind};
use crate::lesson::survey;
use crate::practice::drill::SuppliedBoard;
use crate::practice::drill::entry::{EntryTask, USUAL_SPREAD};
use crate::slices::SliceEnd;
use detent_simulation::controller::Monitor;
use detent_simulation::interface::Component;
use detent_simulation::units::Span;

/// Spreads of the simulated hands, shares of the mean time of a step: a practiced hand, the usual one, an unsteady one.
/// The outer two are our own choice.
const SPREADS: [f64; 3] = [0.08, USUAL_SPREAD, 0.25];
/// Of a hand of usual skill on a new dial, so many tries should get in at the least. Our own choice.
const LEAST_SHARE: f64 = 0.5;
/// A machine that has just got its mains has settled after this.
const AWAKE: Span = Span::from_s(3);

/// How often simulated hands of one skill get in.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct GestureShare {
    /// Spread of the hand's steps, share of their mean.
    pub spread: f64,
    /// The time of a step at which it gets in most often, ms.
    pub best_ms: f64,
    /// Share of its tries at that pace that get in, 0 to 1.
    pub share: f64,
}

impl GestureShare {
    /// Of each hand, the practiced one first, on a dial of this wear, 0 to 1; the wear counts for nothing where there is
    /// no dial.
    pub async fn each(board: &SuppliedBoard<'_>, wear: f64) -> Vec<GestureShare> {
        let task = EntryTask::on(board, wear);
        let mut shares = Vec::new();
        for spread in SPREADS {
            let curve = task.curve(spread);
            let best = curve.points.iter().map(|(_, odds)| *odds);
            shares.push(GestureShare {
                spread,
                best_ms: curve.best_ms,
                share: best.fold(0.0, f64::max),
            });
            SliceEnd::default().await;
        }
        shares
    }

    /// That of the usual hand.
    pub(super) fn usual(shares: &[GestureShare]) -> Option<&GestureShare> {
        shares.iter().find(|share| share.spread == USUAL_SPREAD)
    }
}

/// What the simulator says of a board.
#[derive(Clone, Debug, PartialEq)]
pub struct BoardProof {
    /// Shares of the tries at the entry gesture that get in, on a new dial.
    pub gesture: Vec<GestureShare>,
    /// What is wrong.
    pub findings: Vec<PlacedFinding>,
}

/// Tries a board at each supply that it is made for, in slices. `supplies` must be this board's, at least one.
pub async fn prove_board_in_slices(supplies: &[SuppliedBoard<'_>]) -> BoardProof {
    let mut findings = Vec::new();
    let mut find = |field: &str, finding| {
        findings.push(PlacedFinding {
            field: field.to_owned(),
            finding,
        });
    };
    let mut gesture = Vec::new();
    if let Some(first) = supplies.first() {
        let board = first.library.board;
        let mut parts = first.library.parts.iter();
        if !parts.any(|part| {
            let control = part.component == Component::Board && part.condition == Condition::New;
            control && !part.boards.is_empty() && part.fits(&board.id)
        }) {
            find("id", AuthoringFinding::NoControlToBuy);
        }
        gesture = GestureShare::each(first, 0.0).await;
        if let Some(usual) = GestureShare::usual(&gesture)
            && usual.share < LEAST_SHARE
        {
            let share = usual.share;
            find("gesture", AuthoringFinding::GestureHardlyMet { share });
        }
    }
    for supplied in supplies {
        let (library, mains) = (&supplied.library, supplied.mains);
        let mut bench = survey::bench_with(library, mains.rating(), None, 1);
        survey::wash(&mut bench);
        SliceEnd::default().await;
        let held = |bench: &crate::bench::Bench| -> Vec<Monitor> {
            let milestones = bench.milestones().iter();
            let mut held: Vec<Monitor> = milestones.filter_map(|m| m.kind.stopped_by()).collect();
            let stored = bench.machine().control().memory().codes.iter();
            held.extend(stored.filter_map(|stored| library.board.monitor_of(stored.code)));
            held.sort_unstable();
            held.dedup();
            held
        };
        let monitors = held(&bench);
        let mut milestones = bench.milestones().iter();
        if !monitors.is_empty() {
            let finding = AuthoringFinding::SoundMachineAccused { mains, monitors };
            find("monitors", finding);
        } else if !milestones.any(|m| m.kind == MilestoneKind::ProgramFinished) {
            find(
                "programs[0]",
                AuthoringFinding::SoundMachineNeverDone { mains },
            );
        }
        let mut bench = survey::bench_with(library, mains.rating(), None, 2);
        bench.wait(AWAKE);
        let entered = survey::recalibrate(&mut bench);
        SliceEnd::default().await;
        let mut milestones = bench.milestones().iter();
        if !entered || !milestones.any(|m| m.kind == MilestoneKind::CalibrationPassed) {
            let finding = AuthoringFinding::SoundMachineNotRecalibrated { mains };
            find("recalibration", finding);
        }
    }
    BoardProof { gesture, findings }
}
