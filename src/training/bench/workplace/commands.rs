//! What a person can do, what is refused because it is not possible, and what it does to the machine, the meter
//! and the purse.

use super::Bench;
use crate::bench::action::Action;
use crate::bench::cost;
use crate::bench::leak_check::{LeakCheck, holds_water};
use crate::bench::log::{LogEntry, Repair};
use crate::bench::part::Part;
use crate::bench::quote::{Quote, QuoteGiven};
use crate::bench::report::Report;
use crate::bench::view::{Incident, PartInHand, Refusal};
use detent_simulation::interface::{Component, Connector, Pin, Terminal};
use detent_simulation::plant::FailureMode;
use detent_simulation::units::uniform;

impl Bench {
    pub(crate) fn refuse(&self, action: &Action) -> Result<(), Refusal> {
        let already = || Err(Refusal::AlreadySo);
        let plant = self.machine.plant();
        match action {
            Action::Plug if plant.plugged() => already(),
            Action::Unplug if !plant.plugged() => already(),
            Action::OpenLid if plant.lid_open() => already(),
            Action::CloseLid if !plant.lid_open() => already(),
            Action::OpenLid if plant.bolted() => Err(Refusal::LidLocked),
            Action::Down(button) | Action::Up(button)
                if !self.machine.board().panel.buttons.contains(button) =>
            {
                Err(Refusal::NoButton(*button))
            }
            Action::OpenCabinet if self.cabinet_open => already(),
            Action::CloseCabinet if !self.cabinet_open => already(),
            Action::Pull(c) if self.pulled.contains(c) => already(),
            Action::Seat(c) if !self.pulled.contains(c) => already(),
            Action::Pull(_) | Action::Discharge | Action::Fit(_) if !self.cabinet_open => {
                Err(Refusal::CabinetClosed)
            }
            Action::Pull(c) if self.terminals(c).is_empty() => Err(Refusal::NoConnector(c.clone())),
            Action::Probe { red, black, .. } => self.refuse_probe(*red, *black),
            Action::Order(number) if self.part(number).is_none() => {
                Err(Refusal::NoPart(number.clone()))
            }
            Action::Fit(number) | Action::Return(number) if self.in_hand(number).is_none() => {
                Err(Refusal::NotInHand(number.clone()))
            }
            Action::Fit(number) if self.part(number).is_some_and(|p| !self.fits(p)) => {
                Err(Refusal::DoesNotFit(number.clone()))
            }
            Action::PutRight(c) if !c.can_be_put_right() => Err(Refusal::NeedsPart(*c)),
            Action::Inspect(c) | Action::PutRight(c) if c.is_inside() && !self.cabinet_open => {
                Err(Refusal::CabinetClosed)
            }
            Action::ShutTaps if plant.taps_shut() => already(),
            Action::UnloadBasket if plant.basket_empty() => already(),
            Action::LoadBasket if !plant.basket_empty() => already(),
            Action::UnloadBasket | Action::LoadBasket if !plant.lid_open() => {
                Err(Refusal::LidClosed)
            }
            Action::ResetOutlet if !plant.outlet_tripped() => already(),
            Action::Inspect(c) | Action::PutRight(c) if in_basket(*c) && !plant.lid_open() => {
                Err(Refusal::LidClosed)
            }
            Action::HoldDisplay if self.meter.held.is_some() => already(),
            Action::HoldDisplay if self.probes.is_none() => Err(Refusal::NothingToHold),
            Action::ReleaseDisplay if self.meter.held.is_none() => already(),
            Action::ReplaceMeterFuse if !self.meter.fuse_blown => already(),
            Action::Quote(quote) => self.refuse_quote(quote),
            Action::Report(report) => self.refuse_report(report),
            Action::StrikeCode(code) if !self.log.standing_codes().contains(code) => {
                Err(Refusal::NotNoted(*code))
            }
            Action::TakeHint(_) if !self.hints_allowed => Err(Refusal::NoHints),
            _ => Ok(()),
        }
    }

    fn refuse_quote(&self, quote: &Quote) -> Result<(), Refusal> {
        match quote
            .parts
            .iter()
            .find(|number| self.part(number).is_none())
        {
            Some(number) => Err(Refusal::NoPart(number.clone())),
            None => Ok(()),
        }
    }

    fn refuse_report(&self, report: &Report) -> Result<(), Refusal> {
        let unknown = |cause: &&String| !self.modes.iter().any(|m| m.id == **cause);
        if let Some(cause) = report.causes.iter().find(unknown) {
            return Err(Refusal::NoCause(cause.clone()));
        }
        if let Some(number) = &report.part
            && self.part(number).is_none()
        {
            return Err(Refusal::NoPart(number.clone()));
        }
        if let Some(n) = report.proof.iter().find(|n| **n >= self.notebook().len()) {
            return Err(Refusal::NoReading(*n));
        }
        match report.looks.iter().find(|n| **n >= self.found().len()) {
            Some(n) => Err(Refusal::NoLook(*n)),
            None => Ok(()),
        }
    }

    fn refuse_probe(&self, red: Pin, black: Pin) -> Result<(), Refusal> {
        let blade = |pin| matches!(pin, Pin::PlugLine | Pin::PlugNeutral | Pin::PlugEarth);
        let plugged = self.machine.plant().plugged();
        if plugged && (blade(red) || blade(black)) {
            return Err(Refusal::PlugInOutlet);
        }
        if !self.cabinet_open && (needs_cabinet(red) || needs_cabinet(black)) {
            return Err(Refusal::CabinetClosed);
        }
        Ok(())
    }

    pub(super) fn perform(&mut self, action: &Action) {
        let plant = self.machine.plant_mut();
        match action {
            Action::Plug => plant.set_plugged(true),
            Action::Unplug => plant.set_plugged(false),
            Action::OpenLid => plant.set_lid_open(true),
            Action::CloseLid => plant.set_lid_open(false),
            Action::Detent(way) => self.machine.detent(*way),
            Action::Down(button) => self.machine.press(*button, true),
            Action::Up(button) => self.machine.press(*button, false),
            Action::OpenCabinet => self.cabinet_open = true,
            Action::CloseCabinet => {
                self.cabinet_open = false;
                self.probes = None;
            }
            Action::Discharge => plant.discharge(),
            Action::BailOut => plant.bail_out(),
            Action::Pull(connector) => self.set_connector(connector, true),
            Action::Seat(connector) => self.set_connector(connector, false),
            Action::Probe {
                mode,
                red,
                black,
                grip,
            } => {
                self.probes = Some((*mode, *red, *black));
                self.grip = *grip;
                self.meter_error = 0.0;
                // Turning the knob lets a held display go.
                self.meter.held = self.meter.held.filter(|(held, _)| held == mode);
            }
            Action::LiftProbes => self.probes = None,
            Action::HoldDisplay => {
                self.meter.held = self.probes.map(|(mode, _, _)| mode).zip(self.meter_shows());
            }
            Action::ReleaseDisplay => self.meter.held = None,
            // Its result is noted when the time for it has passed.
            Action::TestMeter => {}
            Action::ReplaceMeterFuse => {
                self.meter.fuse_blown = false;
                self.spent += cost::METER_FUSE_PRICE;
            }
            // What came is noted when the bucket is full, or the wait for it over.
            Action::BucketTest(_) => {}
            // What is found is noted once the time for looking has passed.
            Action::Inspect(_) => {}
            Action::PutRight(component) => self.put_right(*component),
            Action::ShutTaps => plant.shut_taps(),
            Action::UnloadBasket => plant.set_basket_empty(true),
            Action::LoadBasket => plant.set_basket_empty(false),
            Action::ResetOutlet => plant.reset_outlet(),
            Action::ReplaceLeads => self.meter.lead_open = false,
            Action::Order(number) => self.order(number),
            Action::Return(number) => self.take_back(number),
            Action::Fit(number) => self.fit(number),
            // The log has it already.
            Action::NoteCode(_) | Action::StrikeCode(_) | Action::TakeHint(_) | Action::Ask(_) => {}
            // The customer's answer is noted when the time for it has passed.
            Action::Quote(_) => {}
            // What is under the machine is seen when the time for looking has passed.
            Action::CheckForLeaks => {}
            Action::Report(report) => self.report = Some(report.clone()),
        }
    }

    /// The customer's answer to a quote.
    pub(super) fn note_answer(&mut self, quote: &Quote) {
        let parts = quote.parts.iter().filter_map(|number| self.part(number));
        let amount = self.quoted(quote);
        let given = QuoteGiven {
            at: self.machine.now(),
            quote: Quote {
                parts: parts.map(|part| part.number.clone()).collect(),
                ..quote.clone()
            },
            amount,
            approved: self.customer_limit.is_none_or(|limit| amount <= limit),
        };
        self.log.push(LogEntry::Quoted(given));
    }

    /// Whoever opens something that holds water leaves a dry floor: what is there afterwards has leaked since.
    fn wipe_before(&mut self, component: Component) {
        if holds_water(component) {
            self.wiped_l = self.machine.plant().water().floor_l;
        }
    }

    /// What the look under the machine shows.
    pub(super) fn note_leaks(&mut self) {
        let water = self.machine.plant().water();
        let check = LeakCheck {
            at: self.machine.now(),
            level_mm: water.level_mm(),
            floor_l: water.floor_l - self.wiped_l,
        };
        self.wiped_l = water.floor_l;
        self.log.push(LogEntry::LeakChecked(check));
    }

    fn terminals(&self, connector: &Connector) -> Vec<Terminal> {
        match connector {
            Connector::Board(label) => self.machine.connector_pins(label).unwrap_or_default(),
            Connector::Load(c) => c.terminals().collect(),
        }
    }

    fn set_connector(&mut self, connector: &Connector, pulled: bool) {
        let pins = self.terminals(connector);
        self.machine
            .plant_mut()
            .set_connector(connector, &pins, pulled);
        if pulled {
            self.pulled.push(connector.clone());
        } else {
            self.pulled.retain(|c| c != connector);
        }
    }

    fn order(&mut self, number: &str) {
        let Some(part) = self.part(number) else {
            return;
        };
        let part = part.clone();
        self.spent += part.price;
        self.waited_hours += part.wait_hours;
        // The work waits, the machine does not.
        (self.machine.plant_mut()).stand(part.wait_hours * 3600.0);
        let bad = self.draw_bad(&part);
        self.parts.push(PartInHand {
            number: part.number,
            fitted: false,
            bad,
        });
    }

    /// The fault that a part brings with it, if its condition and the draw will have it so.
    fn draw_bad(&mut self, part: &Part) -> Option<usize> {
        let chance = self.rates.bad(part.condition);
        if chance == 0.0 {
            return None;
        }
        let (is_bad, which) = (
            uniform(&mut self.counter_rng) < chance,
            uniform(&mut self.counter_rng),
        );
        let modes: Vec<usize> = (0..self.modes.len())
            .filter(|n| self.modes[*n].component == part.component)
            .collect();
        let place = (which * modes.len() as f64) as usize;
        is_bad.then(|| modes.get(place).copied()).flatten()
    }

    fn take_back(&mut self, number: &str) {
        let Some((place, price)) = self
            .in_hand(number)
            .zip(self.part(number).map(|part| part.price))
        else {
            return;
        };
        self.parts.remove(place);
        self.spent -= price * (1.0 - self.rates.return_fee_share);
    }

    fn fit(&mut self, number: &str) {
        let Some(part) = self.part(number).cloned() else {
            return;
        };
        let (number, component) = (part.number.clone(), part.component);
        let kit_does = |f: &FailureMode| self.cure(f).is_some_and(|cure| cure.kit) && !part.kit;
        let ended: Vec<bool> = (self.machine.plant().faults())
            .filter(|f| part.ends(f))
            .map(|f| f.needs_no_part() || kit_does(f))
            .collect();
        // What hands put right, a kit or a recalibration, was no reason for a whole new part.
        let renews_fuse =
            component == Component::LineFuse && self.machine.plant().supply().fuse_blown;
        if !ended.contains(&false) && !renews_fuse {
            self.happen(if component == Component::Board {
                Incident::GoodBoardReplaced
            } else if ended.is_empty() {
                Incident::WrongPart
            } else {
                Incident::OverRepaired
            });
        }
        self.wipe_before(component);
        if part.kit {
            self.machine.plant_mut().mend(|mode| part.ends(mode));
        } else {
            self.machine.replace(component);
        }
        if let Some(place) = self.in_hand(&number) {
            self.parts[place].fitted = true;
            if let Some(bad) = self.parts[place].bad {
                self.machine.plant_mut().inject_fault(&self.modes[bad]);
            }
        }
        self.log.push(LogEntry::Repair {
            at: self.machine.now(),
            repair: Repair::Fitted { part: number },
        });
    }

    pub(super) fn put_right(&mut self, component: Component) {
        self.wipe_before(component);
        if self.machine.plant_mut().put_right(component) {
            self.log.push(LogEntry::Repair {
                at: self.machine.now(),
                repair: Repair::PutRight(component),
            });
        }
    }

    /// Place among the parts bought of one that an order for `number` brought and that is not fitted.
    fn in_hand(&self, number: &str) -> Option<usize> {
        let number = &self.part(number)?.number;
        (self.parts.iter()).position(|held| held.number == *number && !held.fitted)
    }
}

/// What is reached through the lid.
pub(super) fn in_basket(component: Component) -> bool {
    matches!(component, Component::Laundry | Component::Tub)
}

/// True for points behind the cabinet's panels.
pub(super) fn needs_cabinet(pin: Pin) -> bool {
    !matches!(pin, Pin::PlugLine | Pin::PlugNeutral | Pin::PlugEarth)
}
