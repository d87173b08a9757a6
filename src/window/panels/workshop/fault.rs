//! What is wrong with the machine of a job.

use super::cabinet::cabinet_ui;
use super::{Changes, field};
use crate::panels::{PanelContext, kit};
use crate::tokens as t;
use crate::workshop::Workshop;
use bevy_egui::egui::{Button, RichText, ScrollArea, Ui};
use detent_content::{ContentLibrary, ScenarioChange};
use detent_simulation::plant::{FailureMode, Presence};
use detent_training::lesson::{DrawFilter, Hidden};

/// Height of the list of faults, points.
const LIST_HEIGHT: f32 = 260.0;

/// How many faults there are, and whether chance decides.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
enum FaultKind {
    Named,
    DrawFrom,
    DrawWhere,
    Several,
    Draw,
    Nothing,
}

impl FaultKind {
    /// Those that can be chosen. What a draw asks for is described in the file: that is shown, and not offered.
    const CHOICES: [FaultKind; 5] = [
        FaultKind::Named,
        FaultKind::DrawFrom,
        FaultKind::Several,
        FaultKind::Draw,
        FaultKind::Nothing,
    ];

    fn of(hidden: &Hidden) -> FaultKind {
        match hidden {
            Hidden::Named(_) => FaultKind::Named,
            Hidden::DrawFrom(_) => FaultKind::DrawFrom,
            Hidden::DrawWhere(_) => FaultKind::DrawWhere,
            Hidden::Several(_) => FaultKind::Several,
            Hidden::Draw => FaultKind::Draw,
            Hidden::Nothing => FaultKind::Nothing,
        }
    }

    const fn key(self) -> &'static str {
        match self {
            FaultKind::Named => "workshop-fault-named",
            FaultKind::DrawFrom => "workshop-fault-draw-from",
            FaultKind::DrawWhere => "workshop-fault-draw-where",
            FaultKind::Several => "workshop-fault-several",
            FaultKind::Draw => "workshop-fault-draw",
            FaultKind::Nothing => "workshop-fault-nothing",
        }
    }

    /// The fault of this kind with these names, of which there is one at least.
    fn with(self, mut names: Vec<String>) -> Hidden {
        match self {
            FaultKind::Named => Hidden::Named(names.swap_remove(0)),
            FaultKind::DrawFrom => Hidden::DrawFrom(names),
            FaultKind::DrawWhere => Hidden::DrawWhere(DrawFilter::default()),
            FaultKind::Several => Hidden::Several(names),
            FaultKind::Draw => Hidden::Draw,
            FaultKind::Nothing => Hidden::Nothing,
        }
    }

    /// Whether it names any.
    const fn names_some(self) -> bool {
        match self {
            FaultKind::Named | FaultKind::DrawFrom | FaultKind::Several => true,
            FaultKind::DrawWhere | FaultKind::Draw | FaultKind::Nothing => false,
        }
    }
}

/// Draws it.
pub(super) fn fault_ui(
    ui: &mut Ui,
    context: &PanelContext,
    open: &mut Workshop,
    library: &ContentLibrary,
    changes: &mut Changes,
) {
    kit::card(ui, |ui| {
        kit::heading(ui, context.text("workshop-fault"));
        let now = FaultKind::of(&open.scenario().fault);
        let named = open.scenario().fault.names().to_vec();
        let described = (now == FaultKind::DrawWhere).then_some(now);
        let kinds = FaultKind::CHOICES.into_iter().chain(described);
        let kinds = kinds.map(|kind| (kind, context.text(kind.key())));
        let kind = field(ui, "fault", |ui| kit::choices(ui, now, kinds));
        if let Some(kind) = kind {
            let first = || library.catalogue.modes[0].id.clone();
            let some = if named.is_empty() {
                vec![first()]
            } else {
                named.clone()
            };
            changes.push(ScenarioChange::Fault(kind.with(some)));
        }
        if let (FaultKind::DrawWhere, Some(board)) = (now, library.board(&open.scenario().board)) {
            let of_board = library.library_of(board, open.scenario().mains);
            let drawn = of_board.candidates(&open.scenario().fault);
            let drawn = drawn.unwrap_or_default();
            let told: Vec<String> = drawn
                .iter()
                .map(|mode| context.texts.mode(&mode.id))
                .collect();
            ui.label(RichText::new(told.join("; ")).color(t::AMBER));
        }
        if !now.names_some() {
            return;
        }
        let told: Vec<String> = named.iter().map(|id| context.texts.mode(id)).collect();
        ui.label(RichText::new(told.join("; ")).color(t::AMBER));
        let modes = &library.catalogue.modes;
        let chosen = (open.view.component, named.as_slice());
        if let Some(component) = cabinet_ui(ui, context, modes, chosen) {
            open.view.component = component;
        }
        let component = open.view.component;
        let label = context.texts.fixed("search");
        kit::search(ui, &label, &mut open.view.fault_search);
        let wanted = open.view.fault_search.trim().to_lowercase();
        let mut modes: Vec<_> = (modes.iter())
            .filter(|mode| component.is_none_or(|component| mode.component == component))
            .map(|mode| (mode_name(context, mode), mode))
            .filter(|(name, _)| wanted.is_empty() || name.to_lowercase().contains(&wanted))
            .collect();
        modes.sort_by_key(|(_, mode)| mode.component.index());
        let mut focused = false;
        let list = ScrollArea::vertical()
            .id_salt("workshop-faults")
            .max_height(LIST_HEIGHT)
            .min_scrolled_height(LIST_HEIGHT)
            .auto_shrink(false)
            .show(ui, |ui| {
                ui.spacing_mut().item_spacing.y = 2.0;
                ui.spacing_mut().interact_size.y = 24.0;
                ui.spacing_mut().button_padding.y = 2.0;
                if modes.is_empty() {
                    kit::quiet(ui, context.fixed("report-none-found"));
                }
                let mut last = None;
                for (name, mode) in modes {
                    if last != Some(mode.component) {
                        last = Some(mode.component);
                        kit::quiet(ui, context.part(mode.component));
                    }
                    let on = named.contains(&mode.id);
                    let ink = if on { t::ON_AMBER } else { t::TEXT };
                    let row = Button::selectable(on, RichText::new(name).color(ink));
                    let row = ui.add(row.wrap());
                    focused |= row.gained_focus();
                    if row.clicked() {
                        changes.extend(toggled(now, &named, &mode.id).map(ScenarioChange::Fault));
                    }
                }
            });
        // The list follows the keys by itself, the page around it does not.
        if focused {
            ui.scroll_to_rect(list.inner_rect, None);
        }
    });
}

/// A fault, and how it comes where it is not there all the time.
fn mode_name(context: &PanelContext, mode: &FailureMode) -> String {
    let name = context.texts.mode(&mode.id);
    let key = match mode.presence {
        Presence::Steady => return name,
        Presence::Intermittent { .. } => "workshop-fault-in-spells",
        Presence::Drift { .. } => "workshop-fault-grows",
    };
    context.with(key, &[("fault", name.into())])
}

/// The fault once this name was pressed; none where nothing changes: the last name stays.
fn toggled(kind: FaultKind, named: &[String], id: &str) -> Option<Hidden> {
    if kind == FaultKind::Named {
        return Some(Hidden::Named(id.to_owned()));
    }
    let mut names = named.to_vec();
    match names.iter().position(|name| name == id) {
        Some(place) => drop(names.remove(place)),
        None => names.push(id.to_owned()),
    }
    (!names.is_empty()).then(|| kind.with(names))
}
