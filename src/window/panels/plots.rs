//! Plots as every chart has them.

use crate::tokens as t;
use bevy_egui::egui::{Sense, vec2};
use egui_plot::{GridInput, GridMark, Plot};

/// A plot that is looked at, not played with: a finger on it scrolls what is around it.
pub fn plot<'a>(name: &str) -> Plot<'a> {
    Plot::new(name.to_owned())
        .allow_drag(false)
        .allow_scroll(false)
        .allow_zoom(false)
        .allow_boxed_zoom(false)
        .allow_double_click_reset(false)
        .sense(Sense::hover())
        .show_crosshair(false)
        .show_background(false)
        .grid_color(t::EDGE)
        .set_margin_fraction(vec2(0.02, 0.04))
}

/// Marks at every multiple of `step` within what is shown.
pub fn marks(input: GridInput, step: f64) -> Vec<GridMark> {
    let (from, to) = input.bounds;
    let (from, to) = ((from / step).ceil() as i64, (to / step).floor() as i64);
    let mark = |n| GridMark {
        value: n as f64 * step,
        step_size: step,
    };
    (from..=to).map(mark).collect()
}
