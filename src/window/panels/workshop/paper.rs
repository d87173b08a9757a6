//! Handout and key on paper: what is printed, in which size, and where it lies.

use crate::panels::{PanelContext, kit};
use crate::port::JobSource;
use crate::workshop::Workshop;
use bevy_egui::egui::Ui;
use detent_content::ContentLibrary;
use std::sync::Arc;

/// Draws it. In a browser, where printing would make the page much larger, it says where to print.
#[cfg(target_family = "wasm")]
pub(super) fn paper_ui(
    ui: &mut Ui,
    context: &PanelContext,
    _: &mut Workshop,
    _: (&dyn JobSource, &Arc<ContentLibrary>),
) {
    kit::card(ui, |ui| {
        kit::heading(ui, context.text("workshop-paper"));
        ui.label(context.text("workshop-paper-elsewhere"));
    });
}

/// Draws it.
#[cfg(not(target_family = "wasm"))]
pub(super) fn paper_ui(
    ui: &mut Ui,
    context: &PanelContext,
    open: &mut Workshop,
    (jobs, library): (&dyn JobSource, &Arc<ContentLibrary>),
) {
    use crate::tokens as t;
    use crate::workshop::{PrintedJob, is_file_name};
    use bevy_egui::egui::RichText;
    use detent_content::Value;
    use detent_paper::PaperSize;

    let Some(own_jobs) = jobs.own_jobs() else {
        kit::card(ui, |ui| {
            kit::heading(ui, context.text("workshop-paper"));
            ui.label(context.text("workshop-own-nowhere"));
        });
        return;
    };
    let stem = open.stem().clone();
    let sound = open.checked().ok().cloned();
    let paper = &mut open.paper;
    paper.watch(own_jobs);
    let mut print = None;
    kit::card(ui, |ui| {
        kit::heading(ui, context.text("workshop-paper"));
        ui.label(context.text("workshop-paper-about"));
        let sizes = PaperSize::ALL.map(|size| {
            let key = format!("workshop-paper-{}", size.name());
            (size, context.text(&key))
        });
        if let Some(size) = kit::choices(ui, paper.size, sizes) {
            paper.size = size;
        }
        let can = sound.is_some() && is_file_name(&stem) && !paper.is_printing();
        let text = context.text("workshop-paper-do");
        ui.add_space(4.0);
        if kit::main_button(ui, text, can).clicked() {
            print = Some(false);
        }
        if paper.is_printing() {
            kit::quiet(ui, context.text("workshop-paper-printing"));
        } else if sound.is_none() {
            kit::quiet(ui, context.text("workshop-paper-unsound"));
        } else if !is_file_name(&stem) {
            kit::quiet(ui, context.text("workshop-name-note"));
        }
        let mut forget = false;
        match paper.last() {
            Some(PrintedJob::In(files)) => {
                for file in files {
                    let args = [("place", Value::from(file.as_str()))];
                    let told = context.with("workshop-kept", &args);
                    ui.label(RichText::new(told).color(t::GOOD));
                }
            }
            Some(PrintedJob::Taken(files)) => {
                for file in files {
                    let args = [("file", Value::from(file.as_str()))];
                    let told = context.with("workshop-paper-taken", &args);
                    ui.label(RichText::new(told).color(t::AMBER));
                }
                ui.horizontal_wrapped(|ui| {
                    if kit::button(ui, context.text("workshop-paper-replace")).clicked() && can {
                        print = Some(true);
                    }
                    forget = kit::button(ui, context.text("workshop-paper-leave")).clicked();
                });
            }
            Some(last @ (PrintedJob::NoPaper(_) | PrintedJob::Failed(_))) => {
                let trouble = last.trouble(context.texts).unwrap_or_default();
                ui.label(RichText::new(trouble).color(t::BAD));
            }
            None => {}
        }
        if forget {
            paper.forget();
        }
    });
    if let (Some(replace), Some(source)) = (print, sound) {
        let language = context.ui_state.language;
        paper.print((&stem, &source), (library, language), own_jobs, replace);
    }
}
