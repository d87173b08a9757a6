//! Small pieces that every panel is put together from.

use super::icon::{self, Icon};
use crate::tokens as t;
use bevy_egui::egui::{
    self, Align2, Atom, Atoms, Color32, CornerRadius, FontId, Frame, Margin, Rect, Response,
    RichText, ScrollArea, Sense, Stroke, StrokeKind, Ui, Vec2, WidgetInfo, WidgetType, pos2, vec2,
};
use std::collections::BTreeSet;
use std::sync::Arc;

/// Sets fonts, sizes and colours from the tokens.
pub fn apply_theme(ctx: &egui::Context) {
    ctx.set_theme(egui::Theme::Dark);
    // On a slow machine seconds can lie between press and release, and a slow hand is no other hand.
    ctx.options_mut(|options| options.input_options.max_click_duration = f64::INFINITY);
    ctx.all_styles_mut(|style| {
        use egui::TextStyle::{Body, Button, Heading, Monospace, Small};
        style.text_styles = [
            (Body, FontId::proportional(t::BODY)),
            (Button, FontId::proportional(t::BODY)),
            (Small, FontId::proportional(t::SMALL)),
            (Heading, FontId::proportional(t::HEADING)),
            (Monospace, FontId::monospace(t::SMALL)),
        ]
        .into();
        style.spacing.item_spacing = vec2(8.0, 6.0);
        style.spacing.button_padding = vec2(10.0, 5.0);
        style.spacing.interact_size.y = 30.0;
        style.spacing.scroll = egui::style::ScrollStyle::solid();
        let v = &mut style.visuals;
        v.dark_mode = true;
        v.override_text_color = None;
        v.panel_fill = t::PANEL;
        v.window_fill = t::CARD;
        v.window_stroke = Stroke::new(1.0, t::EDGE);
        v.extreme_bg_color = t::INK;
        v.faint_bg_color = t::CARD;
        v.selection.bg_fill = t::AMBER;
        v.selection.stroke = Stroke::new(1.5, t::ON_AMBER);
        v.hyperlink_color = t::SKY;
        // A cursor that blinks has the window drawn for ever.
        v.text_cursor.blink = false;
        // Disabled things keep their contrast; their fill tells them apart.
        v.disabled_alpha = 1.0;
        let w = &mut v.widgets;
        for (look, fill, edge) in [
            (&mut w.noninteractive, t::PANEL, t::LINE),
            (&mut w.inactive, t::FIELD, t::EDGE),
            (&mut w.hovered, t::FIELD_HOT, t::AMBER),
            (&mut w.active, t::FIELD_HOT, t::AMBER),
            (&mut w.open, t::FIELD_HOT, t::AMBER),
        ] {
            look.bg_fill = fill;
            look.weak_bg_fill = fill;
            look.bg_stroke = Stroke::new(1.0, edge);
            look.fg_stroke = Stroke::new(1.5, t::TEXT);
            look.corner_radius = CornerRadius::same(7);
            look.expansion = 0.0;
        }
        w.noninteractive.fg_stroke = Stroke::new(1.0, t::TEXT);
        w.active.bg_stroke = Stroke::new(2.0, t::SKY);
    });
}

/// A card on a panel.
pub fn card<R>(ui: &mut Ui, contents: impl FnOnce(&mut Ui) -> R) -> R {
    Frame::new()
        .fill(t::CARD)
        .corner_radius(CornerRadius::same(10))
        .inner_margin(Margin::symmetric(12, 10))
        .show(ui, |ui| {
            ui.set_width(ui.available_width());
            contents(ui)
        })
        .inner
}

/// A sheet of printed paper.
pub fn paper<R>(ui: &mut Ui, contents: impl FnOnce(&mut Ui) -> R) -> R {
    Frame::new()
        .fill(t::PAPER)
        .corner_radius(CornerRadius::same(6))
        .inner_margin(Margin::symmetric(14, 12))
        .show(ui, |ui| {
            ui.set_width(ui.available_width());
            let v = ui.visuals_mut();
            v.override_text_color = Some(t::PRINT);
            v.faint_bg_color = t::PAPER_SHADE;
            contents(ui)
        })
        .inner
}

/// A small heading.
pub fn heading(ui: &mut Ui, text: impl Into<RichText>) -> Response {
    heading_in(ui, text.into(), t::AMBER)
}

/// A heading in print.
pub fn print_heading(ui: &mut Ui, text: impl Into<RichText>) -> Response {
    heading_in(ui, text.into(), t::PRINT_ACCENT)
}

fn heading_in(ui: &mut Ui, text: RichText, colour: Color32) -> Response {
    let title = text.text().to_owned();
    // Text that can be chosen would say that it can be pressed.
    let label = egui::Label::new(text.size(t::HEADING).color(colour)).selectable(false);
    let label = ui.add(label);
    ui.ctx().accesskit_node_builder(label.id, |node| {
        node.set_role(egui::accesskit::Role::Heading);
        node.set_level(2);
        node.set_label(title);
        node.clear_value();
    });
    label
}

/// Tells reading software that this ui is a dialog, behind which everything waits, and that this is its title.
pub fn dialog(ui: &Ui, title: &Response) {
    ui.ctx().accesskit_node_builder(ui.unique_id(), |node| {
        node.set_role(egui::accesskit::Role::Dialog);
        node.push_labelled_by(title.id.accesskit_id());
        node.set_modal();
    });
}

/// Less important text.
pub fn quiet(ui: &mut Ui, text: impl Into<RichText>) {
    ui.label(text.into().size(t::SMALL).color(t::QUIET));
}

/// Name on the left, value on the right.
pub fn row(ui: &mut Ui, name: impl Into<RichText>, value: impl Into<RichText>, colour: Color32) {
    ui.horizontal(|ui| {
        ui.label(name.into().size(t::SMALL).color(t::QUIET));
        ui.with_layout(egui::Layout::right_to_left(egui::Align::Center), |ui| {
            ui.label(value.into().color(colour));
        });
    });
}

/// A list that opens: as wide as this, with these rows, one of which may be chosen; `shown` stands on it while it is closed.
/// Returns the list, which has no name of its own yet, and the row that was just taken.
pub fn drop_down(
    ui: &mut Ui,
    id: &str,
    width: f32,
    shown: &str,
    (rows, chosen): (&[String], Option<usize>),
) -> (Response, Option<usize>) {
    let list = egui::ComboBox::from_id_salt(id)
        .width(width)
        .height(room_below(ui))
        .selected_text(shown)
        .truncate()
        .show_ui(ui, |ui| {
            let rows: Vec<Response> = (rows.iter().enumerate())
                .map(|(n, row)| {
                    let on = chosen == Some(n);
                    let ink = if on { t::ON_AMBER } else { t::TEXT };
                    ui.selectable_label(on, RichText::new(row).color(ink))
                })
                .collect();
            keys_in_list(ui, &rows, chosen.unwrap_or_default());
            let taken = rows.iter().position(Response::clicked);
            // By a key too: egui closes it by itself for the pointer alone.
            if taken.is_some() {
                ui.close();
            }
            taken
        });
    (list.response, list.inner.flatten())
}

/// Last in an open list: the arrow keys go through its rows, and the keys stay in it until one is taken or the list is
/// closed. They begin at the row that is `chosen`.
fn keys_in_list(ui: &Ui, rows: &[Response], chosen: usize) {
    let Some(at) = rows.iter().position(Response::has_focus) else {
        // Escape takes the keys away and closes the list.
        let closes = ui.input(|input| input.key_pressed(egui::Key::Escape));
        if let Some(row) = rows.get(chosen).or(rows.first()).filter(|_| !closes) {
            row.request_focus();
        }
        return;
    };
    let kept = egui::EventFilter {
        vertical_arrows: true,
        tab: true,
        ..egui::EventFilter::default()
    };
    ui.memory_mut(|memory| memory.set_focus_lock_filter(rows[at].id, kept));
    let presses = |key| ui.input(|input| input.num_presses(key));
    let down = at + presses(egui::Key::ArrowDown);
    let to = down.saturating_sub(presses(egui::Key::ArrowUp));
    let to = to.min(rows.len() - 1);
    if to != at {
        rows[to].request_focus();
        rows[to].scroll_to_me(None);
    }
}

/// What stands at the right end of a line, laid out from left to right so that the keys go through it as the eye does.
pub fn at_right_end<R>(ui: &mut Ui, contents: impl FnOnce(&mut Ui) -> R) -> R {
    // Whatever comes and goes before it on the line.
    let id = ui.unique_id().with("end of line");
    let right = egui::Layout::right_to_left(egui::Align::Center);
    ui.with_layout(right, |ui| end_of_line(ui, id, contents))
        .inner
}

/// The same within a line that is laid out from its right end, before what stands on its left. It is as wide as in the
/// last pass.
pub fn end_of_line<R>(ui: &mut Ui, id: egui::Id, contents: impl FnOnce(&mut Ui) -> R) -> R {
    let known: Option<f32> = ui.data(|data| data.get_temp(id));
    let size = vec2(known.unwrap_or_default(), ui.available_height());
    let left = egui::Layout::left_to_right(egui::Align::Center);
    let shown = ui.allocate_ui_with_layout(size, left, |ui| {
        let inner = contents(ui);
        (inner, ui.min_rect().width())
    });
    let (inner, width) = shown.inner;
    if known != Some(width) {
        ui.data_mut(|data| data.insert_temp(id, width));
        ui.ctx().request_repaint();
    }
    inner
}

/// The scene's picture, for panels to draw; none where the scene is too slow to be drawn beside a task.
pub fn scene(ctx: &egui::Context) -> Option<egui::TextureId> {
    ctx.data(|data| data.get_temp(egui::Id::new("scene")))
}

/// Says where the scene's picture is.
pub fn set_scene(ctx: &egui::Context, scene: egui::TextureId) {
    ctx.data_mut(|data| data.insert_temp(egui::Id::new("scene"), scene));
}

/// The buttons to use for a step, and which of them were drawn since it began.
#[derive(Clone)]
struct Marked {
    step: (u32, usize),
    labels: Arc<[String]>,
    drawn: BTreeSet<usize>,
}

/// Where that lies.
fn marks() -> egui::Id {
    egui::Id::new("marked")
}

/// Marks the buttons with these labels, until others are marked or none: what the guide's step needs. `step`: which
/// bench it belongs to, and its place in the guide.
pub fn mark(ctx: &egui::Context, step: (u32, usize), labels: Arc<[String]>) {
    ctx.data_mut(|data| {
        let now = data.get_temp_mut_or_insert_with(marks(), || None::<Marked>);
        let before = now.take().filter(|before| before.step == step);
        *now = Some(Marked {
            step,
            labels,
            drawn: before.map(|before| before.drawn).unwrap_or_default(),
        });
    });
}

/// Marks no button any more.
pub fn mark_nothing(ctx: &egui::Context) {
    ctx.data_mut(|data| data.insert_temp(marks(), None::<Marked>));
}

/// The place of this label among the marked ones. Asked for every button in every frame: nothing is copied.
fn mark_of(ui: &Ui, label: &str) -> Option<usize> {
    ui.ctx().data_mut(|data| {
        let marked = data.get_temp_mut_or_insert_with(marks(), || None::<Marked>);
        let labels = &marked.as_ref()?.labels;
        labels.iter().position(|other| other == label)
    })
}

/// Whether what has this label is marked.
pub fn is_marked(ui: &Ui, label: &str) -> bool {
    mark_of(ui, label).is_some()
}

/// The same button, with a frame round it if it is marked.
fn framed(ui: &Ui, button: Response, marked: Option<usize>) -> Response {
    if let Some(place) = marked {
        let edge = Stroke::new(2.0, t::SKY);
        let outside = egui::StrokeKind::Outside;
        (ui.painter()).rect_stroke(button.rect, CornerRadius::same(8), edge, outside);
        bring_into_sight(ui, &button, place);
    }
    button
}

/// A ui under this tag is scrolled to what is marked in it.
pub const SCROLLED_TO_MARKS: &str = "scrolled to marks";

/// Scrolls to a marked button, once in each step, when it is first drawn: afterwards the page is the person's own. One
/// that cannot be pressed yet is the last thing to do on its page, whose top comes first.
fn bring_into_sight(ui: &Ui, button: &Response, place: usize) {
    let mut above = ui.stack().iter();
    if !above.any(|node| node.tags().contains(SCROLLED_TO_MARKS)) {
        return;
    }
    let is_first = ui.ctx().data_mut(|data| {
        let marked = data.get_temp_mut_or_insert_with(marks(), || None::<Marked>);
        (marked.as_mut()).is_some_and(|marked| marked.drawn.insert(place))
    });
    if is_first && button.enabled() {
        button.scroll_to_me(None);
    }
}

/// What already stands on the panel, marked as a button with this label would be.
pub fn mark_as(ui: &Ui, label: &str, response: Response) -> Response {
    let marked = mark_of(ui, label);
    framed(ui, response, marked)
}

/// A button as wide as its words.
pub fn button(ui: &mut Ui, text: impl Into<RichText>) -> Response {
    let text = text.into();
    let marked = mark_of(ui, text.text());
    let button = ui.button(text);
    framed(ui, button, marked)
}

/// A field to search a list with.
pub fn search(ui: &mut Ui, label: &str, wanted: &mut String) {
    ui.horizontal(|ui| {
        let label = ui.label(label);
        let search = egui::TextEdit::singleline(wanted)
            .char_limit(40)
            .desired_width(ui.available_width() - 8.0);
        ui.add(search).labelled_by(label.id);
    });
}

/// A button as wide as the panel.
pub fn wide(ui: &mut Ui, text: impl Into<RichText>) -> Response {
    let text = text.into();
    let marked = mark_of(ui, text.text());
    let size = [ui.available_width(), ui.spacing().interact_size.y + 2.0];
    let button = ui.add_sized(size, egui::Button::new(text));
    framed(ui, button, marked)
}

/// A button that does something to the machine, as wide as the panel: with a picture of what it is done to.
pub fn deed(ui: &mut Ui, icon: Icon, text: impl Into<RichText>) -> Response {
    let width = ui.available_width();
    let height = ui.spacing().interact_size.y + 2.0;
    deed_sized(ui, icon, text.into(), vec2(width, height))
}

/// The same, which cannot be done now but keeps its place.
pub fn deed_if(ui: &mut Ui, enabled: bool, icon: Icon, text: impl Into<RichText>) -> Response {
    let text = text.into();
    let text = if enabled { text } else { text.color(t::QUIET) };
    ui.add_enabled_ui(enabled, |ui| deed(ui, icon, text)).inner
}

/// The same, only as wide as its words.
pub fn small_deed(ui: &mut Ui, icon: Icon, text: impl Into<RichText>) -> Response {
    deed_sized(ui, icon, text.into(), Vec2::ZERO)
}

/// The same, which cannot be done now but keeps its place.
pub fn small_deed_if(
    ui: &mut Ui,
    enabled: bool,
    icon: Icon,
    text: impl Into<RichText>,
) -> Response {
    let text = text.into();
    let text = if enabled { text } else { text.color(t::QUIET) };
    ui.add_enabled_ui(enabled, |ui| small_deed(ui, icon, text))
        .inner
}

fn deed_sized(ui: &mut Ui, icon: Icon, text: RichText, size: Vec2) -> Response {
    let marked = mark_of(ui, text.text());
    let place = egui::Id::new("icon");
    let fill = if ui.is_enabled() { t::DEED } else { t::CARD };
    let picture = Atom::custom(place, Vec2::splat(icon::SIZE));
    let atoms = if size.x > 0.0 {
        Atoms::new((picture, text, Atom::grow()))
    } else {
        Atoms::new((picture, text))
    };
    let button = egui::Button::new(atoms).fill(fill).min_size(size);
    let done = (ui.scope(|ui| {
        ui.spacing_mut().button_padding.x = 5.0;
        button.gap(3.0).atom_ui(ui)
    }))
    .inner;
    if let Some(rect) = done.rect(place) {
        let ink = if ui.is_enabled() { t::TEXT } else { t::QUIET };
        icon.paint(ui.painter(), rect, ink);
    }
    framed(ui, done.response, marked)
}

/// A button that goes somewhere else, as wide as the panel.
pub fn go(ui: &mut Ui, text: impl Into<RichText>) -> Response {
    let width = ui.available_width();
    let height = ui.spacing().interact_size.y + 2.0;
    go_sized(ui, text, vec2(width, height))
}

/// The same with a size; with none it is as wide as its words.
pub fn go_sized(ui: &mut Ui, text: impl Into<RichText>, size: Vec2) -> Response {
    let ink = if ui.is_enabled() { t::SKY } else { t::QUIET };
    let text = text.into().color(ink);
    let marked = mark_of(ui, text.text());
    let place = egui::Id::new("onward");
    let arrow = Atom::custom(place, vec2(10.0, icon::SIZE));
    let atoms = if size.x > 0.0 {
        Atoms::new((text, Atom::grow(), arrow))
    } else {
        Atoms::new((text, arrow))
    };
    let done = bare(ui, |ui| {
        let button = egui::Button::new(atoms).min_size(size);
        // As wide as its words, it does not break them letter by letter.
        let button = match size.x > 0.0 {
            true => button,
            false => button.wrap_mode(egui::TextWrapMode::Extend),
        };
        button.atom_ui(ui)
    });
    if let Some(rect) = done.rect(place) {
        icon::onward(ui.painter(), rect, ink);
    }
    framed(ui, done.response, marked)
}

/// The same, which cannot be gone by now but keeps its place.
pub fn go_sized_if(ui: &mut Ui, enabled: bool, text: impl Into<RichText>, size: Vec2) -> Response {
    ui.add_enabled_ui(enabled, |ui| go_sized(ui, text, size))
        .inner
}

/// Buttons without a ground of their own until the pointer is over them.
fn bare<R>(ui: &mut Ui, contents: impl FnOnce(&mut Ui) -> R) -> R {
    ui.scope(|ui| {
        let inactive = &mut ui.visuals_mut().widgets.inactive;
        inactive.weak_bg_fill = Color32::TRANSPARENT;
        inactive.bg_stroke = Stroke::new(1.0, t::LINE);
        contents(ui)
    })
    .inner
}

/// One of several pages or views side by side: a line below the words marks the one that is open.
pub fn tab(ui: &mut Ui, on: bool, text: impl Into<RichText>, size: Vec2) -> Response {
    let text = text.into().color(if on { t::AMBER } else { t::TEXT });
    // Whoever is there already need not be led there.
    let marked = mark_of(ui, text.text()).filter(|_| !on);
    let tab = egui::Button::new(text).min_size(size).selected(on);
    let tab = tab.fill(Color32::TRANSPARENT).stroke(Stroke::NONE);
    let button = ui.add(tab);
    let low = button.rect.bottom() - 1.5;
    let (ink, thick) = match (on, button.hovered() || button.has_focus()) {
        (true, _) => (t::AMBER, 3.0),
        (false, true) => (t::SKY, 3.0),
        (false, false) => (t::EDGE, 1.0),
    };
    (ui.painter()).hline(button.rect.x_range(), low, Stroke::new(thick, ink));
    framed(ui, button, marked)
}

/// The one thing to do next.
pub fn main_button(ui: &mut Ui, text: impl Into<RichText>, enabled: bool) -> Response {
    let text = text
        .into()
        .color(if enabled { t::ON_AMBER } else { t::QUIET });
    let fill = if enabled { t::AMBER } else { t::FIELD };
    let size = vec2(ui.available_width(), 36.0);
    let marked = mark_of(ui, text.text());
    let button = ui.add_enabled_ui(enabled, |ui| {
        ui.add_sized(size, egui::Button::new(text).fill(fill))
    });
    framed(ui, button.inner, marked)
}

/// One of several choices side by side: a small option, with round ends.
pub fn choice(ui: &mut Ui, on: bool, text: impl Into<RichText>) -> Response {
    let text = text.into().color(if on { t::ON_AMBER } else { t::TEXT });
    let fill = if on { t::AMBER } else { t::FIELD };
    let marked = mark_of(ui, text.text());
    let option = egui::Button::new(text).fill(fill).corner_radius(ROUND);
    let button = ui.add(option.selected(on));
    framed(ui, button, marked)
}

/// A step down or up of a number that stands between the two: a small option that is never the chosen one. `name` says
/// what the sign does where nobody sees the number beside it.
pub fn stepper(ui: &mut Ui, sign: &str, name: &str) -> Response {
    let step = ui.add(egui::Button::new(sign).corner_radius(ROUND));
    step.widget_info(|| WidgetInfo::labeled(WidgetType::Button, ui.is_enabled(), name));
    step
}

/// Round ends of an option.
const ROUND: CornerRadius = CornerRadius::same(15);

/// A choice of fixed width.
pub fn choice_sized(ui: &mut Ui, on: bool, text: impl Into<RichText>, size: Vec2) -> Response {
    let text = text.into().color(if on { t::ON_AMBER } else { t::TEXT });
    let fill = if on { t::AMBER } else { t::FIELD };
    let marked = mark_of(ui, text.text());
    let option = egui::Button::new(text).fill(fill).corner_radius(ROUND);
    let button = ui.add_sized(size, option.selected(on));
    framed(ui, button, marked)
}

/// One of several; the other one that was chosen, if one was.
pub fn choices<T: Copy + PartialEq>(
    ui: &mut Ui,
    now: T,
    all: impl IntoIterator<Item = (T, String)>,
) -> Option<T> {
    let mut chosen = None;
    ui.horizontal_wrapped(|ui| {
        for (value, text) in all {
            if choice(ui, now == value, text).clicked() && now != value {
                chosen = Some(value);
            }
        }
    });
    chosen
}

/// A box to tick: square, since a round one would say that only one of several can be chosen.
pub fn checkbox(ui: &mut Ui, on: &mut bool, text: impl Into<RichText>) -> Response {
    let square = CornerRadius::same(3);
    ui.scope(|ui| {
        let widgets = &mut ui.visuals_mut().widgets;
        for look in [
            &mut widgets.inactive,
            &mut widgets.hovered,
            &mut widgets.active,
        ] {
            look.corner_radius = square;
        }
        ui.checkbox(on, text.into())
    })
    .inner
}

/// How wide a button's words are.
pub fn width(ui: &Ui, text: &str) -> f32 {
    let font = egui::TextStyle::Button.resolve(ui.style());
    let galley = ui
        .painter()
        .layout_no_wrap(text.to_owned(), font, Color32::PLACEHOLDER);
    galley.size().x
}

/// How high a list may be that opens below what comes next, and stays in the window.
pub fn room_below(ui: &Ui) -> f32 {
    /// A list lower than this cannot be read.
    const LOWEST: f32 = 160.0;
    let box_height = ui.spacing().interact_size.y + 24.0;
    let below = ui.ctx().content_rect().bottom() - ui.next_widget_position().y - box_height;
    below.clamp(LOWEST, 420.0)
}

/// Page up and Page down scroll the page that this stands in: where the keys are in it or, on the `main` one of a screen,
/// where nothing has them. It comes after what is on the page: a list there would take it for its own.
pub fn scroll_by_keys(ui: &Ui, main: bool) {
    let focused = ui.memory(egui::Memory::focused);
    let here = match focused {
        None => main,
        Some(id) => {
            let widget = ui.ctx().viewport(|v| v.prev_pass.widgets.get(id).copied());
            widget.is_some_and(|widget| ui.clip_rect().contains(widget.interact_rect.center()))
        }
    };
    if !here || !ui.memory(|memory| memory.allows_interaction(ui.layer_id())) {
        return;
    }
    let presses = |key| ui.input(|i| i.num_presses(key)) as f32;
    let pages = presses(egui::Key::PageDown) - presses(egui::Key::PageUp);
    if pages != 0.0 {
        // The last lines stay as the first.
        ui.scroll_with_delta(vec2(0.0, -0.85 * pages * ui.clip_rect().height()));
    }
}

/// A list that grows, in room of this height: it scrolls within it and shows its end, so that what stands below keeps
/// its place.
pub fn growing_list(ui: &mut Ui, id: &str, height: f32, rows: impl FnOnce(&mut Ui)) {
    ScrollArea::vertical()
        .id_salt(id)
        .max_height(height)
        .min_scrolled_height(height)
        .auto_shrink(false)
        .stick_to_bottom(true)
        .show(ui, rows);
}

/// Room of this height for what comes and goes, so that what stands below keeps its place.
pub fn reserved(ui: &mut Ui, height: f32, contents: impl FnOnce(&mut Ui)) {
    ui.scope(|ui| {
        ui.set_min_height(height);
        contents(ui);
    });
}

/// A plot that is only looked at: its axes would take the keys and do nothing with them.
pub fn looked_at<R>(ui: &mut Ui, plot: impl FnOnce(&mut Ui) -> R) -> R {
    ui.add_enabled_ui(false, plot).inner
}

/// Room for a picture.
pub fn canvas(ui: &mut Ui, height: f32) -> (Rect, egui::Painter) {
    let (rect, _) = ui.allocate_exact_size(vec2(ui.available_width(), height), Sense::hover());
    (rect, ui.painter_at(rect))
}

/// Text in a picture.
pub fn write(
    painter: &egui::Painter,
    x: f32,
    y: f32,
    anchor: Align2,
    size: f32,
    colour: Color32,
    text: impl ToString,
) -> Rect {
    painter.text(pos2(x, y), anchor, text, FontId::proportional(size), colour)
}

/// A number on a seven-segment display, right-aligned in `rect`. Draws digits, `.`, `-`, `O`, `L`.
pub fn segments(painter: &egui::Painter, rect: Rect, text: &str, colour: Color32) {
    let height = rect.height();
    let (width, thick) = (height * 0.52, height * 0.105);
    let mut right = rect.right();
    for mark in text.chars().rev() {
        if mark == '.' {
            right -= thick * 0.9;
            let dot = Rect::from_min_size(
                pos2(right - thick * 0.55, rect.bottom() - thick),
                Vec2::splat(thick),
            );
            painter.rect_filled(dot, CornerRadius::ZERO, colour);
            right -= thick * 0.7;
            continue;
        }
        // Segments a to g, clockwise from the top, then the middle.
        let lit = match mark {
            '0' | 'O' => 0b011_1111,
            '1' => 0b000_0110,
            '2' => 0b101_1011,
            '3' => 0b100_1111,
            '4' => 0b110_0110,
            '5' => 0b110_1101,
            '6' => 0b111_1101,
            '7' => 0b000_0111,
            '8' => 0b111_1111,
            '9' => 0b110_1111,
            'L' => 0b011_1000,
            '-' => 0b100_0000,
            _ => 0,
        };
        let size = vec2(width, height);
        digit(
            painter,
            Rect::from_min_size(pos2(right - width, rect.top()), size),
            lit,
            colour,
        );
        right -= width + thick * 0.9;
    }
}

/// One digit of seven segments; bits a to g of `lit`, clockwise from the top, then the middle.
pub fn digit(painter: &egui::Painter, rect: Rect, lit: u8, colour: Color32) {
    let (left, top, right, low) = (rect.left(), rect.top(), rect.right(), rect.bottom());
    let thick = rect.height() * 0.105;
    let mid = rect.center().y;
    let gap = thick * 0.18;
    let across = |y: f32| {
        Rect::from_min_max(
            pos2(left + thick * 0.6 + gap, y),
            pos2(right - thick * 0.6 - gap, y + thick),
        )
    };
    let down = |x: f32, a: f32, b: f32| {
        Rect::from_min_max(
            pos2(x, a + thick * 0.6 + gap),
            pos2(x + thick, b - thick * 0.6 + gap),
        )
    };
    let parts = [
        across(top),
        down(right - thick, top, mid),
        down(right - thick, mid - thick / 2.0, low),
        across(low - thick),
        down(left, mid - thick / 2.0, low),
        down(left, top, mid),
        across(mid - thick / 2.0),
    ];
    for (i, part) in parts.into_iter().enumerate() {
        let colour = if lit & (1 << i) != 0 {
            colour
        } else {
            colour.gamma_multiply(0.07)
        };
        painter.rect_filled(part, CornerRadius::same((thick * 0.3) as u8), colour);
    }
}

/// A lamp as the console shows it: lit has a disc and an outer ring, dark only a rim.
pub fn lamp(painter: &egui::Painter, x: f32, y: f32, radius: f32, lit: bool, colour: Color32) {
    let middle = pos2(x, y);
    painter.circle(middle, radius, t::GLASS, Stroke::new(1.5, t::LAMP_RING));
    if lit {
        painter.circle_filled(middle, radius * 0.86, colour);
        painter.circle_stroke(middle, radius * 1.42, Stroke::new(radius * 0.2, colour));
    }
}

/// Outline for a picture.
pub fn frame(painter: &egui::Painter, rect: Rect, fill: Color32, edge: Color32) {
    painter.rect(
        rect,
        CornerRadius::same(6),
        fill,
        Stroke::new(1.0, edge),
        StrokeKind::Inside,
    );
}
