//! A film at the bench: what plays it, and what is on the way.

use super::{BenchRoom, PanelContext, framed, kit, score, spoken};
use crate::film::{FILM_SPEEDS, Film, LONGEST_WAIT_S, Timeline};
use crate::tokens as t;
use bevy_egui::egui::accesskit::{Action as Asked, ActionData, Orientation};
use bevy_egui::egui::{
    self, Color32, CornerRadius, Key, Painter, Rect, RichText, Sense, Stroke, Ui, Vec2, WidgetInfo,
    pos2, vec2,
};
use detent_content::{DeedWords, Value};
use detent_simulation::units::{Span, Time};

/// How high the timeline is, points.
const TIMELINE_HEIGHT: f32 = 38.0;

/// What somebody who watches wants.
#[derive(Clone, Copy, Debug, PartialEq)]
enum Wish {
    PlayOrPause,
    Back,
    On,
    Newest,
    PlayAt(u32),
    /// Behind so many steps.
    Behind(usize),
    /// To what lies at this moment.
    To(Time),
    /// Both ways through the job beside it, or no longer.
    Ways,
    /// Away from the film.
    Leave,
}

fn grant(context: &mut PanelContext, wish: Option<Wish>) {
    let (Some(wish), Some(film)) = (wish, context.bench.film_mut()) else {
        return;
    };
    match wish {
        Wish::PlayOrPause if film.is_playing() => film.pause(),
        Wish::PlayOrPause => film.play(),
        Wish::Back => film.go_back_one(),
        Wish::On => film.go_on_one(),
        Wish::Newest => film.go_to_newest(),
        Wish::PlayAt(speed) => film.play_at(speed),
        Wish::Behind(steps) => film.go_behind(steps),
        Wish::To(moment) => film.go_to(moment),
        Wish::Ways => context.ui_state.film_ways = !context.ui_state.film_ways,
        Wish::Leave => context.ui_state.leave = true,
    }
}

/// What plays the film, above machine and panels; nothing where there is none.
pub(super) fn strip_ui(ui: &mut Ui, context: &mut PanelContext, room: BenchRoom) {
    let Some(film) = context.bench.film() else {
        return;
    };
    let mut wish = wish_by_key(ui, context);
    let margin = match room {
        BenchRoom::Wide | BenchRoom::Narrow => (12, 6),
        BenchRoom::Small => (8, 2),
    };
    framed(egui::Panel::top("film"), margin).show(ui, |ui| {
        ui.spacing_mut().item_spacing.y = 4.0;
        let pressed = ui.horizontal_wrapped(|ui| buttons_ui(ui, context, film));
        wish = pressed.inner.or(wish);
        told_ui(ui, context, film);
        wish = timeline_ui(ui, context, film).or(wish);
    });
    grant(context, wish);
}

/// The arrow keys go from action to action; the space bar plays, where nothing else has the keys.
fn wish_by_key(ui: &Ui, context: &PanelContext) -> Option<Wish> {
    if context.ui_state.typing || context.ui_state.keys {
        return None;
    }
    let pressed = |key| ui.input(|input| input.key_pressed(key));
    if pressed(Key::ArrowRight) || pressed(Key::ArrowDown) {
        return Some(Wish::On);
    }
    if pressed(Key::ArrowLeft) || pressed(Key::ArrowUp) {
        return Some(Wish::Back);
    }
    let free = ui.memory(|memory| memory.focused().is_none());
    (free && pressed(Key::Space)).then_some(Wish::PlayOrPause)
}

fn buttons_ui(ui: &mut Ui, context: &PanelContext, film: &Film) -> Option<Wish> {
    ui.spacing_mut().item_spacing = vec2(6.0, 4.0);
    let mut wish = None;
    // First: where the line is broken it could not begin the next one.
    if kit::go_sized(ui, context.fixed("film-leave"), Vec2::ZERO).clicked() {
        wish = Some(Wish::Leave);
    }
    let back = context.fixed("film-previous");
    if kit::stepper(ui, "<", &back).on_hover_text(back).clicked() {
        wish = Some(Wish::Back);
    }
    let key = match film.is_playing() {
        true => "film-pause",
        false => "film-play",
    };
    let play = kit::choice(ui, film.is_playing(), context.fixed(key));
    if play.on_hover_text(context.fixed("film-keys")).clicked() {
        wish = Some(Wish::PlayOrPause);
    }
    let on = context.fixed("film-next");
    if kit::stepper(ui, ">", &on).on_hover_text(on).clicked() {
        wish = Some(Wish::On);
    }
    for speed in FILM_SPEEDS {
        let chosen = film.speed() == speed;
        if kit::choice(ui, chosen, super::top::clock_label(speed)).clicked() {
            wish = Some(Wish::PlayAt(speed));
        }
    }
    if film.is_live() && kit::choice(ui, false, context.fixed("film-newest")).clicked() {
        wish = Some(Wish::Newest);
    }
    wish
}

/// What was done last, what came of it, and how the film stands.
fn told_ui(ui: &mut Ui, context: &PanelContext, film: &Film) {
    let (text, ink) = told(context, film);
    let label = ui.add(egui::Label::new(RichText::new(text).color(ink)).wrap());
    spoken::when_changed(ui, &label);
}

fn told(context: &PanelContext, film: &Film) -> (String, Color32) {
    match film.ending() {
        Some(Ok(())) => return (context.text("film-as-recorded"), t::GOOD),
        Some(Err(divergence)) => {
            let why = context.texts.divergence(divergence);
            let args = [("why", Value::from(why))];
            return (context.with("film-differs", &args), t::BAD);
        }
        None => {}
    }
    let mut text = deed_told(context, film);
    if let Some(wait) = film.shortened() {
        let minutes = context
            .texts
            .digits(format!("{:.1}", wait.seconds() / 60.0));
        let args = [("minutes", Value::from(minutes))];
        text = format!("{text}  ·  {}", context.with("film-shortened", &args));
    } else if film.waits_for_more() {
        text = format!("{text}  ·  {}", context.text("film-waits-for-more"));
    }
    (text, t::TEXT)
}

fn deed_told(context: &PanelContext, film: &Film) -> String {
    let done = film.steps_done();
    let Some(step) = done.checked_sub(1).map(|last| &film.steps()[last]) else {
        return context.text("film-before-first");
    };
    let job = context.bench.job();
    let words = DeedWords {
        texts: context.texts,
        board: &job.board,
        parts: &job.parts,
    };
    let deed = step.words(&words);
    let came = film
        .came_of_it()
        .filter_map(|entry| words.came_of_it(entry));
    let deed = std::iter::once(deed)
        .chain(came)
        .collect::<Vec<_>>()
        .join("  →  ");
    let args = [
        ("number", Value::from(done)),
        ("count", Value::from(film.steps().len())),
        ("deed", Value::from(deed)),
    ];
    context.with("film-here", &args)
}

/// All actions along the time that they took, with what happened between them. It takes clicks, and the keys as a slider.
fn timeline_ui(ui: &mut Ui, context: &PanelContext, film: &Film) -> Option<Wish> {
    let size = vec2(ui.available_width(), TIMELINE_HEIGHT);
    let (rect, response) = ui.allocate_exact_size(size, Sense::click());
    let (done, count) = (film.steps_done(), film.steps().len());
    response.widget_info(|| WidgetInfo::slider(true, done as f64, context.fixed("film-timeline")));
    let id = response.id;
    ui.ctx().accesskit_node_builder(id, |node| {
        node.set_orientation(Orientation::Horizontal);
        node.set_min_numeric_value(0.0);
        node.set_max_numeric_value(count as f64);
        node.set_numeric_value_step(1.0);
        node.add_action(Asked::Increment);
        node.add_action(Asked::Decrement);
        node.add_action(Asked::SetValue);
    });
    let timeline = film.timeline();
    let bar = rect.shrink2(vec2(8.0, 0.0));
    draw_timeline(&ui.painter_at(rect), rect, bar, film, &timeline);
    let asked = |action| ui.input(|input| input.num_accesskit_action_requests(id, action));
    let set = ui.input(|input| {
        let asked = input.accesskit_action_requests(id, Asked::SetValue);
        let numbers = asked.filter_map(|request| match &request.data {
            Some(ActionData::NumericValue(number)) => Some(number.max(0.0).round() as usize),
            _ => None,
        });
        numbers.last()
    });
    if let Some(steps) = set {
        return Some(Wish::Behind(steps));
    }
    if asked(Asked::Increment) > 0 {
        return Some(Wish::On);
    }
    if asked(Asked::Decrement) > 0 {
        return Some(Wish::Back);
    }
    let place = response
        .interact_pointer_pos()
        .filter(|_| response.clicked())?;
    let share = (place.x - bar.left()) / bar.width();
    Some(Wish::Behind(timeline.steps_before(share)))
}

fn draw_timeline(painter: &Painter, rect: Rect, bar: Rect, film: &Film, timeline: &Timeline) {
    kit::frame(painter, rect, t::INK, t::LINE);
    let x = |at: Time| bar.left() + bar.width() * timeline.share(at);
    let middle = rect.center().y + 3.0;
    painter.hline(bar.x_range(), middle, Stroke::new(2.0, t::EDGE));
    let now = x(film.now());
    painter.hline(bar.left()..=now, middle, Stroke::new(3.0, t::AMBER));
    let done = film.steps_done();
    for (n, step) in film.steps().iter().enumerate() {
        let ink = if n < done { t::AMBER } else { t::QUIET };
        let at = x(step.at);
        painter.vline(at, (middle - 6.0)..=(middle + 6.0), Stroke::new(1.5, ink));
    }
    for milestone in film.milestones() {
        let at = pos2(x(milestone.at), rect.bottom() - 6.0);
        let corners = [
            vec2(0.0, -4.5),
            vec2(4.5, 0.0),
            vec2(0.0, 4.5),
            vec2(-4.5, 0.0),
        ];
        let corners = corners.map(|corner| at + corner).to_vec();
        painter.add(egui::Shape::convex_polygon(corners, t::SKY, Stroke::NONE));
    }
    for loss in film.losses() {
        let at = pos2(x(loss.at), rect.top() + 4.0);
        let corners = [vec2(-5.0, 0.0), vec2(5.0, 0.0), vec2(0.0, 8.0)];
        let corners = corners.map(|corner| at + corner).to_vec();
        painter.add(egui::Shape::convex_polygon(corners, t::BAD, Stroke::NONE));
    }
    let head = Rect::from_center_size(pos2(now, middle), vec2(6.0, 22.0));
    painter.rect_filled(head, CornerRadius::same(3), t::TEXT);
}

/// What is on the way: lost points, and what the machine went through. Each leads there.
pub(super) fn page_ui(ui: &mut Ui, context: &mut PanelContext) {
    let wish = {
        let context = &*context;
        let Some(film) = context.bench.film() else {
            return;
        };
        explained_ui(ui, context, film);
        let lost = losses_ui(ui, context, film);
        lost.or(milestones_ui(ui, context, film))
    };
    grant(context, wish);
}

fn explained_ui(ui: &mut Ui, context: &PanelContext, film: &Film) {
    kit::card(ui, |ui| {
        if film.is_live() {
            ui.label(context.fixed("film-live"));
        }
        let args = [("seconds", Value::from(LONGEST_WAIT_S))];
        kit::quiet(ui, context.with("film-timeline-how", &args));
        kit::quiet(ui, context.fixed("film-keys"));
    });
}

fn losses_ui(ui: &mut Ui, context: &PanelContext, film: &Film) -> Option<Wish> {
    kit::card(ui, |ui| {
        kit::heading(ui, context.fixed("score-losses"));
        if context.ui_state.sealed {
            kit::quiet(ui, context.fixed("film-losses-sealed"));
            return None;
        }
        let Some(score) = film.score() else {
            kit::quiet(ui, context.fixed("film-losses-later"));
            return None;
        };
        score::total_told(ui, context, score);
        let mut wish = None;
        let on = context.ui_state.film_ways;
        if context.bench.review().is_some()
            && kit::choice(ui, on, context.fixed("film-ways")).clicked()
        {
            wish = Some(Wish::Ways);
        }
        let losses = film.losses();
        if losses.is_empty() {
            ui.label(context.fixed("score-none-lost"));
        }
        for loss in losses {
            let text = format!(
                "{}  {}",
                score::points_lost(context, loss),
                context.texts.loss(&loss.loss)
            );
            if line_ui(ui, context, film, loss.at, &text, t::BAD) {
                wish = Some(Wish::To(loss.at));
            }
        }
        wish
    })
}

fn milestones_ui(ui: &mut Ui, context: &PanelContext, film: &Film) -> Option<Wish> {
    // Which code the lamps showed is for whoever watches to read, until the answer was shown.
    let answers = film.score().is_some() && !context.ui_state.sealed;
    kit::card(ui, |ui| {
        kit::heading(ui, context.fixed("film-machine"));
        let mut wish = None;
        let mut nothing = true;
        for milestone in film.milestones() {
            nothing = false;
            let text = context.texts.milestone(milestone.kind, answers);
            if line_ui(ui, context, film, milestone.at, &text, t::SKY) {
                wish = Some(Wish::To(milestone.at));
            }
        }
        if nothing {
            kit::quiet(ui, context.fixed("film-none-yet"));
        }
        wish
    })
}

/// A line that leads to its moment, with the minutes since the arrival before it. Whether it was pressed.
fn line_ui(
    ui: &mut Ui,
    context: &PanelContext,
    film: &Film,
    at: Time,
    text: &str,
    ink: Color32,
) -> bool {
    let after = at.since(film.arrival());
    let text = format!("{}  {text}", clock(context, after));
    let button = egui::Button::new(RichText::new(text).color(ink))
        .wrap()
        .fill(Color32::TRANSPARENT)
        .min_size(vec2(ui.available_width(), 28.0));
    // Words begin at the left, however wide the line is.
    let left = egui::Layout::top_down_justified(egui::Align::Min);
    ui.with_layout(left, |ui| ui.add(button)).inner.clicked()
}

/// Minutes and seconds.
fn clock(context: &PanelContext, span: Span) -> String {
    let seconds = span.ms() / 1000;
    let args = [
        ("minutes", Value::from((seconds / 60).to_string())),
        ("seconds", Value::from(format!("{:02}", seconds % 60))),
    ];
    context.with("film-at", &args)
}
