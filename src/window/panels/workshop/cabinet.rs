//! The components of the machine as they lie behind its panels: one is chosen to see its faults alone.

use crate::flat::cabinet;
use crate::panels::{PanelContext, kit};
use crate::tokens as t;
use bevy_egui::egui::{Sense, Stroke, Ui, WidgetInfo, WidgetType};
use detent_content::Value;
use detent_simulation::interface::Component;
use detent_simulation::plant::FailureMode;

/// Height of the drawing, points.
const HEIGHT: f32 = 380.0;
/// Size of the letters in it, and where there is little room for them, points.
const LETTERS: f32 = 13.0;
const SMALL_LETTERS: f32 = 11.0;
/// A drawing as wide as this has room for them, points.
const ROOMY: f32 = 380.0;

/// Draws it; the component that is chosen from now on, where that changes.
pub(super) fn cabinet_ui(
    ui: &mut Ui,
    context: &PanelContext,
    modes: &[FailureMode],
    (chosen, named): (Option<Component>, &[String]),
) -> Option<Option<Component>> {
    let mut choice = None;
    let faults = |part: Component| modes.iter().filter(move |mode| mode.component == part);
    let (rect, painter) = kit::canvas(ui, HEIGHT);
    let boxes = cabinet::boxes(rect);
    let letters = match rect.width() < ROOMY {
        true => SMALL_LETTERS,
        false => LETTERS,
    };
    for (part, area) in &boxes {
        let (part, area) = (*part, *area);
        let name = context.part(part);
        let count = faults(part).count();
        let id = ui.id().with(("cabinet", part.name()));
        let component = ui.interact(area, id, Sense::click());
        let on = chosen == Some(part);
        component.widget_info(|| {
            let args = [
                ("part", Value::from(name.as_str())),
                ("count", count.into()),
            ];
            let told = context.with("workshop-cabinet-part", &args);
            WidgetInfo::selected(WidgetType::SelectableLabel, ui.is_enabled(), on, told)
        });
        let hidden = faults(part).any(|mode| named.contains(&mode.id));
        let line = match (on, hidden, component.hovered()) {
            (true, _, _) => Stroke::new(2.5, t::SKY),
            (false, true, _) => Stroke::new(2.5, t::AMBER),
            (false, false, true) => Stroke::new(2.0, t::TEXT),
            (false, false, false) => Stroke::new(1.5, t::EDGE),
        };
        cabinet::paint_box(&painter, (part, area), (name, letters), line);
        if component.clicked() {
            choice = Some((!on).then_some(part));
        }
    }
    // What lies outside the cabinet has faults too.
    let inside = |part: Component| boxes.iter().any(|(other, _)| *other == part);
    let outside = Component::ALL.iter().copied();
    let outside = outside.filter(|part| !inside(*part) && faults(*part).next().is_some());
    let all = std::iter::once((None, context.text("workshop-cabinet-all")));
    let outside = outside.map(|part| (Some(part), context.part(part)));
    choice.or(kit::choices(ui, chosen, all.chain(outside)))
}
