//! The trade's side of a job: what each test and each repair costs, and the two bad habits that a
//! good plan is compared with.

use super::evidence::{Point, Table};
use super::plan::{Course, Needs, PlanStep, Problem, Repair, Test};
use crate::bench::{Action, Condition, Grip, MeterMode, Part, cost};
use crate::lesson::{Library, MachineState};
use detent_simulation::controller::Board;
use detent_simulation::interface::{Component, Connector, Pin, WaterPipe};

/// What a live test may cost whoever makes it, whole units of money. Our own choice: enough that one is
/// made only where no dead test tells as much.
pub const LIVE_TEST_RISK: f64 = 3.0;
/// What an hour without the machine is worth to the customer, whole units of money. Our own choice.
pub const WAIT_PER_HOUR: f64 = 0.25;
/// Time to start a routine from the menu and let its load come up, s. Common practice, no source.
const ROUTINE_S: f64 = 20.0;

/// The machine is unplugged, discharged, proved dead and open; closing it again is counted in.
pub(super) const OPENED: Needs = 1;
/// Service mode was entered.
pub(super) const SERVICE: Needs = 2;

/// A repair, in the trade's words.
#[derive(Clone, Debug, PartialEq, Eq)]
pub enum Remedy {
    /// Fit this part.
    Part(String),
    /// Put this component right by hand.
    PutRight(Component),
    /// Recalibrate, wash and hand back.
    Recalibrate,
}

/// A test, in the trade's words.
#[derive(Clone, Debug, PartialEq)]
pub enum Probe {
    /// Take a reading.
    Read(Point),
    /// Look at a component.
    Inspect(Component),
    /// Fill a bucket at a tap.
    BucketTest(WaterPipe),
    /// Recalibrate and see how it ends.
    Recalibrate,
}

/// A job as a problem of the planner, with what its repairs and tests stand for. New parts only.
#[derive(Clone, Debug, PartialEq)]
pub struct RepairCosts {
    /// Costs and chances.
    pub problem: Problem,
    /// Each repair.
    pub remedies: Vec<Remedy>,
    /// Each test.
    pub probes: Vec<Probe>,
    /// What an hour of work costs, whole units of money.
    labour_per_hour: f64,
    /// What each repair and each test costs beside work (price and wait; risk), whole units of money.
    beside_work: (Vec<f64>, Vec<f64>),
    /// Time to get into service mode, s.
    service_s: f64,
}

impl RepairCosts {
    /// Everything that can be done on this board, with live tests or without.
    pub fn of(library: &Library<'_>, table: &Table, live_tests: bool) -> RepairCosts {
        let money = |s: f64| library.rates.labour(s / 60.0);
        let spent = |action: &Action| cost::span(action).seconds();
        let mut repair_costs = RepairCosts {
            problem: Problem {
                hypotheses: table.seen.len(),
                repairs: Vec::new(),
                tests: Vec::new(),
                setups: vec![money(opening_s()), money(table.service_s)],
                last_resort: library.rates.new_machine,
            },
            remedies: Vec::new(),
            probes: Vec::new(),
            labour_per_hour: library.rates.labour_per_hour,
            beside_work: (Vec::new(), Vec::new()),
            service_s: table.service_s,
        };
        repair_costs.add_repairs(library, money(table.recalibration_s + table.proof_s));
        for (n, point) in table.points.iter().enumerate() {
            let is_live = point.state.is_live();
            if is_live && !live_tests {
                continue;
            }
            let in_service = point.state.routine().is_some();
            let handling_s = match point.state {
                MachineState::Dead => 0.0,
                MachineState::Pulled => {
                    let plug = Connector::Load(Component::Board);
                    spent(&Action::Pull(plug.clone())) + spent(&Action::Seat(plug))
                }
                MachineState::Idle => spent(&Action::Plug) + spent(&Action::Unplug),
                MachineState::TestCold
                | MachineState::TestPump
                | MachineState::TestHot
                | MachineState::TestClutch
                | MachineState::TestLock
                | MachineState::TestMotorA
                | MachineState::TestMotorB => ROUTINE_S,
            };
            let probe = Action::Probe {
                mode: point.mode,
                red: point.red,
                black: point.black,
                grip: Grip::Clips,
            };
            let risk = if is_live { LIVE_TEST_RISK } else { 0.0 };
            repair_costs.add_test(
                Probe::Read(point.clone()),
                (money(handling_s + spent(&probe)), risk),
                OPENED | if in_service { SERVICE } else { 0 },
                table.reading_chances(n),
            );
        }
        for component in Component::ALL {
            repair_costs.add_test(
                Probe::Inspect(*component),
                (money(spent(&Action::Inspect(*component))), 0.0),
                if component.is_inside() { OPENED } else { 0 },
                table.finding_chances(*component),
            );
        }
        for pipe in WaterPipe::ALL {
            let deeds = [
                Action::ShutTaps,
                Action::BucketTest(*pipe),
                Action::PutRight(Component::Taps),
            ];
            repair_costs.add_test(
                Probe::BucketTest(*pipe),
                (money(deeds.iter().map(spent).sum()), 0.0),
                0,
                table.bucket_chances(*pipe),
            );
        }
        let chances = table.recalibration_chances();
        repair_costs.add_test(
            Probe::Recalibrate,
            (money(table.recalibration_s), 0.0),
            SERVICE,
            chances,
        );
        repair_costs
    }

    fn add_repairs(&mut self, library: &Library<'_>, proof: f64) {
        let money = |s: f64| library.rates.labour(s / 60.0);
        let board = library.board.id.as_str();
        let mut of_part: Vec<Vec<usize>> = vec![Vec::new(); library.parts.len()];
        let mut by_hand: Vec<Vec<usize>> = vec![Vec::new(); Component::ALL.len()];
        // The sound machine is hypothesis 0: a recalibration and a wash show that nothing is wrong.
        let mut relearned = vec![0];
        for (n, mode) in library.modes.iter().enumerate() {
            for (part, cures) in library.parts.iter().zip(&mut of_part) {
                let sold = part.condition == Condition::New && part.superseded_by.is_none();
                if sold && part.fits(board) && part.ends(mode) {
                    cures.push(n + 1);
                }
            }
            if mode.needs_no_part() {
                if mode.component.can_be_put_right() {
                    by_hand[mode.component.index()].push(n + 1);
                } else {
                    relearned.push(n + 1);
                }
            }
        }
        let mut add = |remedy, (work, beside): (f64, f64), needs, cures: Vec<usize>| {
            if !cures.is_empty() {
                let cost = work + beside + proof;
                self.problem.repairs.push(Repair { cost, cures, needs });
                self.remedies.push(remedy);
                self.beside_work.0.push(beside);
            }
        };
        for (part, cures) in library.parts.iter().zip(of_part) {
            let ordering = cost::span(&Action::Order(part.number.clone())).seconds();
            let work = ordering + part.fitting().seconds();
            let cost = (money(work), part.price + WAIT_PER_HOUR * part.wait_hours);
            add(Remedy::Part(part.number.clone()), cost, OPENED, cures);
        }
        for (component, cures) in Component::ALL.iter().zip(by_hand) {
            let work = cost::span(&Action::PutRight(*component)).seconds();
            let needs = if component.is_inside() { OPENED } else { 0 };
            add(
                Remedy::PutRight(*component),
                (
                    money(work),
                    library.billing.consumables.hand_work(*component),
                ),
                needs,
                cures,
            );
        }
        add(Remedy::Recalibrate, (0.0, 0.0), 0, relearned);
    }

    fn add_test(
        &mut self,
        probe: Probe,
        (work, beside): (f64, f64),
        needs: Needs,
        chances: Vec<Vec<f64>>,
    ) {
        // What always shows the same is no test.
        if chances.len() > 1 {
            self.problem.tests.push(Test {
                cost: work + beside,
                chances,
                needs,
            });
            self.probes.push(probe);
            self.beside_work.1.push(beside);
        }
    }

    /// What an action costs here: work, min, and all of it with parts, waits and risk, whole units of money.
    pub fn price(&self, step: PlanStep, done: Needs) -> (f64, f64) {
        let money = self.problem.cost(step, done);
        let beside = match step {
            PlanStep::Test(t) => self.beside_work.1[t],
            PlanStep::Repair(r) => self.beside_work.0[r],
            PlanStep::LastResort => money,
        };
        (60.0 * (money - beside) / self.labour_per_hour, money)
    }

    /// Getting into service mode and reading the codes there: min and whole units of money. Every way of working
    /// on a machine that stored one begins with it.
    pub fn first_look(&self) -> (f64, f64) {
        self.work(self.service_s + ROUTINE_S)
    }

    /// Writing the report, with which every way ends: min and whole units of money.
    pub fn report(&self) -> (f64, f64) {
        self.work(cost::REPORT_S as f64)
    }

    fn work(&self, seconds: f64) -> (f64, f64) {
        let minutes = seconds / 60.0;
        (minutes, self.labour_per_hour * minutes / 60.0)
    }

    /// The same problem with work in minutes for its only cost; a new machine takes none.
    pub fn in_minutes(&self) -> Problem {
        let mut problem = self.problem.clone();
        let minutes = |money: f64| 60.0 * money / self.labour_per_hour;
        for (repair, beside) in problem.repairs.iter_mut().zip(&self.beside_work.0) {
            repair.cost = minutes(repair.cost - beside);
        }
        for (test, beside) in problem.tests.iter_mut().zip(&self.beside_work.1) {
            test.cost = minutes(test.cost - beside);
        }
        for setup in &mut problem.setups {
            *setup = minutes(*setup);
        }
        problem.last_resort = 0.0;
        problem
    }

    /// Repairs of a component, parts first.
    fn repairs_of<'a>(
        &'a self,
        parts: &'a [Part],
        component: Component,
    ) -> impl Iterator<Item = usize> + 'a {
        let of = move |remedy: &Remedy| match remedy {
            Remedy::Part(number) => {
                let part = parts.iter().find(|p| p.number == *number);
                part.is_some_and(|p| p.component == component && p.condition == Condition::New)
            }
            Remedy::PutRight(c) => *c == component,
            Remedy::Recalibrate => false,
        };
        (0..self.remedies.len()).filter(move |r| of(&self.remedies[*r]))
    }

    /// `order`, and then the other repairs by chance over cost.
    fn and_the_rest(&self, mut order: Vec<usize>, weights: &[f64]) -> Vec<usize> {
        let mut course = Course::begin(weights);
        for r in &order {
            course.tried |= 1 << r;
            course.done |= self.problem.repairs[*r].needs;
            for h in &self.problem.repairs[*r].cures {
                course.weights[*h] = 0.0;
            }
        }
        order.extend(
            self.problem
                .by_ratio(&course)
                .into_iter()
                .filter_map(|step| match step {
                    PlanStep::Repair(r) => Some(r),
                    PlanStep::Test(_) | PlanStep::LastResort => None,
                }),
        );
        order
    }
}

/// The reading that shows the stored charge gone.
pub(super) fn dead_test() -> Action {
    Action::Probe {
        mode: MeterMode::VoltsDc,
        red: Pin::BulkPlus,
        black: Pin::BulkMinus,
        grip: Grip::Clips,
    }
}

/// Unplugging, opening, discharging, proving dead, and closing and plugging in again.
fn opening_s() -> f64 {
    let actions = [
        Action::Unplug,
        Action::OpenCabinet,
        Action::TestMeter,
        Action::Discharge,
        dead_test(),
        Action::TestMeter,
        Action::CloseCabinet,
        Action::Plug,
    ];
    actions.iter().map(|a| cost::span(a).seconds()).sum()
}

/// The order of one who buys what the service sheet lists for the codes, newest code first, and when
/// that was all in vain, the rest by chance over cost. Measures nothing.
pub fn code_buyer(
    repair_costs: &RepairCosts,
    board: &Board,
    parts: &[Part],
    codes: &[u8],
    weights: &[f64],
) -> Vec<usize> {
    let monitors = codes.iter().filter_map(|code| board.monitor_of(*code));
    let sheets = monitors.filter_map(|m| board.sheet.iter().find(|s| s.monitor == m));
    let suspects = sheets.flat_map(|sheet| sheet.suspects.iter().copied());
    let first = suspects
        .flat_map(|component| repair_costs.repairs_of(parts, component))
        .collect();
    repair_costs.and_the_rest(first, weights)
}

/// The order of one who fits a control first, whatever it is, and then buys by the code.
pub fn control_swapper(
    repair_costs: &RepairCosts,
    board: &Board,
    parts: &[Part],
    codes: &[u8],
    weights: &[f64],
) -> Vec<usize> {
    let mut order: Vec<usize> = repair_costs.repairs_of(parts, Component::Board).collect();
    order.extend(code_buyer(repair_costs, board, parts, codes, weights));
    order
}
