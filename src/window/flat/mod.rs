//! The machine drawn flat, by the panels alone: for slow computers, and for whoever reads a drawing more easily than a
//! scene. Hands, names and the guide's light are the scene's own; only places and pictures differ.

pub mod cabinet;
pub mod console;
mod machine;
mod symbol;

use super::camera::SceneTarget;
use super::drill::DrillRes;
use super::pick::PointingSystems;
use super::pointing::{Pick, Pointing};
use super::scene::console::KnobFeel;
use super::scene::console::lamps::colour_of;
use super::scene::console::layout::{LampId, Layout};
use super::scene::displayed::{DisplayedMachine, displayed_board};
use super::scene::grips::{GripKind, Outline};
use super::state::{BenchRes, Screen, UiState, ViewKind};
use super::tokens as t;
use bevy::prelude::*;
use bevy_egui::egui::{Color32, Painter, Pos2, Rect as Area, Stroke, StrokeKind};
use detent_content::Texts;
use detent_simulation::controller::{Board, Lamps};
use detent_simulation::interface::{Component as Part, Pin, Side};
use detent_training::bench::BenchView;

/// What somebody can take hold of or read, points of the window.
#[derive(Clone, Copy, Debug, PartialEq)]
pub enum Place {
    /// A disc: middle and radius.
    Disc(Pos2, f32),
    /// A box.
    Box(Area),
}

impl Place {
    fn contains(self, at: Pos2) -> bool {
        match self {
            Place::Disc(middle, radius) => middle.distance(at) <= radius,
            Place::Box(area) => area.contains(at),
        }
    }

    /// Its middle.
    pub fn middle(self) -> Vec2 {
        let middle = match self {
            Place::Disc(middle, _) => middle,
            Place::Box(area) => area.center(),
        };
        Vec2::new(middle.x, middle.y)
    }

    /// A line round it.
    pub fn outline(self) -> Outline<Vec2> {
        match self {
            Place::Disc(_, radius) => Outline::Ring(self.middle(), radius + 4.0),
            Place::Box(area) => {
                let area = area.expand(4.0);
                let corner = |at: Pos2| Vec2::new(at.x, at.y);
                Outline::Corners(
                    [
                        area.left_top(),
                        area.right_top(),
                        area.right_bottom(),
                        area.left_bottom(),
                    ]
                    .map(corner),
                )
            }
        }
    }
}

/// Where everything is in the drawing, in the order in which it is drawn.
#[derive(Resource, Default)]
pub struct FlatScene {
    /// The board, what is drawn and where it is laid out; none where nothing is drawn.
    of: Option<(String, Drawing, Area)>,
    /// Each thing and its place, points of the window.
    pub places: Vec<(GripKind, Place)>,
    /// The console's face and the color of its lit lamps, where they are drawn.
    face: Option<(Layout, console::Face, Color32)>,
}

impl FlatScene {
    /// The drawing of a machine with this console, within `stage`.
    fn of(board: &Board, drawing: Drawing, stage: Area) -> FlatScene {
        let (face, mut places) = match drawing {
            Drawing::Console => (Some(console::Face::alone(stage)), Vec::new()),
            Drawing::Machine { plugged, lid_open } => {
                let frame = machine::Frame::within(stage);
                (Some(frame.face()), frame.places(plugged, lid_open))
            }
            Drawing::Inside => (None, cabinet::places(stage)),
        };
        let face = face.map(|face| {
            let layout = Layout::of(&board.panel, &board.lamps);
            places.extend(face.places(&layout));
            (layout, face, colour_of(&board.lamps.signs))
        });
        FlatScene {
            of: Some((board.id.clone(), drawing, stage)),
            places,
            face,
        }
    }

    fn is_of(&self, board: &Board, drawing: Drawing, stage: Area) -> bool {
        (self.of.as_ref())
            .is_some_and(|(id, drawn, at)| *id == board.id && *drawn == drawing && *at == stage)
    }

    /// What lies there.
    pub fn at(&self, point: Vec2) -> Option<Pick> {
        let point = Pos2::new(point.x, point.y);
        let mut places = self.places.iter().rev();
        places.find_map(|(kind, place)| match kind {
            GripKind::Pick(pick) if place.contains(point) => Some(*pick),
            GripKind::Pick(_) | GripKind::Lamps => None,
        })
    }

    /// Each lamp of the console, its middle and the radius of its lens, points.
    pub fn lamps(&self) -> impl Iterator<Item = (LampId, Vec2, f32)> {
        let face = self.face.iter();
        face.flat_map(|(layout, face, _)| face.lamps(layout))
            .map(|(lamp, at, radius)| (lamp, Vec2::new(at.x, at.y), radius))
    }

    /// Where this is.
    pub fn place(&self, pick: Pick) -> Option<Place> {
        let mut places = self.places.iter();
        let found = places.find(|(kind, _)| *kind == GripKind::Pick(pick));
        found.map(|(_, place)| *place)
    }
}

/// What is drawn.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
enum Drawing {
    /// The console alone.
    Console,
    /// The machine from the front, with the tub as if through glass.
    Machine {
        /// The plug is in the outlet.
        plugged: bool,
        /// The lid is up.
        lid_open: bool,
    },
    /// The components behind the panels.
    Inside,
}

impl Drawing {
    fn of(screen: Screen, view: ViewKind, bench: &BenchView) -> Option<Drawing> {
        let machine = Drawing::Machine {
            plugged: bench.machine.plugged,
            lid_open: bench.machine.lid_open,
        };
        match (screen, view) {
            (Screen::Drill, _) | (Screen::Bench, ViewKind::Panel) => Some(Drawing::Console),
            (Screen::Bench, ViewKind::Cabinet) if bench.cabinet_open => Some(Drawing::Inside),
            (Screen::Bench, ViewKind::Machine | ViewKind::Cabinet) => Some(machine),
            (
                Screen::Start
                | Screen::Practice
                | Screen::Examination
                | Screen::Workshop
                | Screen::Join,
                _,
            ) => None,
        }
    }
}

fn area_of(stage: Rect) -> Area {
    Area::from_min_max(
        Pos2::new(stage.min.x, stage.min.y),
        Pos2::new(stage.max.x, stage.max.y),
    )
}

/// Lays the drawing out before anybody points at it: anew only when something in it has another place.
fn arrange(
    screen: Res<State<Screen>>,
    bench: Res<BenchRes>,
    drill: Res<DrillRes>,
    ui_state: Res<UiState>,
    mut flat: ResMut<FlatScene>,
) {
    let Some(drawing) = Drawing::of(*screen.get(), ui_state.view, &bench.view()) else {
        *flat = FlatScene::default();
        return;
    };
    let board = displayed_board(*screen.get(), &bench, &drill);
    let stage = area_of(ui_state.stage);
    if !flat.is_of(board, drawing, stage) {
        *flat = FlatScene::of(board, drawing, stage);
    }
}

/// What the drawing shows besides its places.
pub struct Shown<'a> {
    /// The machine.
    pub displayed: &'a DisplayedMachine,
    /// How the hand strains against the knob.
    pub feel: &'a KnobFeel,
    /// The hand.
    pub pointing: &'a Pointing,
    /// The bench.
    pub bench: &'a BenchRes,
    /// What the panels remember.
    pub ui_state: &'a UiState,
    /// Texts.
    pub texts: &'a Texts,
}

/// Draws it.
pub fn paint(painter: &Painter, flat: &FlatScene, shown: &Shown) {
    let stage = area_of(shown.ui_state.stage);
    painter.rect_filled(stage, 0.0, t::INK);
    let Some((_, drawing, laid_out)) = &flat.of else {
        return;
    };
    let painter = painter.with_clip_rect(stage.intersect(painter.clip_rect()));
    match drawing {
        Drawing::Console => {}
        Drawing::Machine { .. } => {
            machine::paint(&painter, machine::Frame::within(*laid_out), shown);
        }
        Drawing::Inside => cabinet::paint(&painter, flat, shown),
    }
    if let Some((layout, face, lit)) = &flat.face {
        let displayed = shown.displayed;
        let state = console::ConsoleState {
            lamps: displayed.lamps,
            turned: f32::from(displayed.dial_position) + shown.feel.strain,
            held: displayed.held,
        };
        console::paint(&painter, layout, *face, *lit, &state);
    }
    if let Some(place) = shown.pointing.over.and_then(|over| flat.place(over)) {
        edge(&painter, place, Stroke::new(2.0, t::AMBER));
    }
}

/// Draws a console as large as it can be within `stage`, with these lamps lit and nothing to take hold of.
pub fn paint_lamps(painter: &Painter, stage: Area, board: &Board, lamps: Lamps) {
    let layout = Layout::of(&board.panel, &board.lamps);
    let lit = colour_of(&board.lamps.signs);
    console::paint_lamps(painter, (&layout, console::Face::alone(stage)), lit, lamps);
}

/// The lamps of a board's console, in the order of its layout.
pub fn lamps_of(board: &Board) -> Vec<LampId> {
    let layout = Layout::of(&board.panel, &board.lamps);
    layout.lamps.iter().map(|lamp| lamp.id).collect()
}

/// A line round a place.
fn edge(painter: &Painter, place: Place, line: Stroke) {
    match place {
        Place::Disc(middle, radius) => {
            painter.circle_stroke(middle, radius, line);
        }
        Place::Box(area) => {
            painter.rect_stroke(area, 6.0, line, StrokeKind::Outside);
        }
    }
}

/// Where the meter's probes are: what they touch now, else the pins that are chosen.
fn probes(shown: &Shown) -> [Option<Pin>; 2] {
    match shown.bench.view().probes {
        Some((_, red, black)) => [Some(red), Some(black)],
        None => [shown.ui_state.red, shown.ui_state.black],
    }
}

/// The component on which a pin is reached.
fn part_of(pin: Pin) -> Part {
    match pin {
        Pin::Wire(terminal, Side::Load) => terminal.component(),
        Pin::Wire(_, Side::Board | Side::Harness) | Pin::BulkPlus | Pin::BulkMinus => Part::Board,
        Pin::PlugLine | Pin::PlugNeutral | Pin::PlugEarth => Part::Cord,
        Pin::FuseIn | Pin::FuseOut => Part::LineFuse,
    }
}

/// Whether the drawing takes the scene's place.
pub fn is_flat(ui_state: Res<UiState>) -> bool {
    ui_state.flat
}

/// Nobody has chosen between drawing and scene: without a graphics card it is the drawing.
pub fn draw_flat_without_card(target: Res<SceneTarget>, mut ui_state: ResMut<UiState>) {
    ui_state.flat = target.software;
}

/// The drawing in the scene's place.
pub fn plugin(app: &mut App) {
    app.init_resource::<FlatScene>()
        .add_systems(Update, arrange.run_if(is_flat).before(PointingSystems));
}

#[cfg(test)]
mod tests {
    use super::*;
    use bevy_egui::egui::vec2;
    use detent_content::ContentLibrary;
    use detent_simulation::interface::Button;

    /// A finger needs this much, points (WCAG 2.2, 2.5.8).
    const FINGER: f32 = 24.0;

    /// Every board's console in each drawing, as it stands in a small and in a large window.
    fn drawings() -> Vec<(Board, Drawing, Area)> {
        let library = ContentLibrary::builtin().expect("sound boards");
        let stages = [vec2(420.0, 460.0), vec2(674.0, 676.0), vec2(1240.0, 980.0)];
        let mut all = Vec::new();
        for board in &library.boards {
            let machines = [(true, false), (false, true)];
            let machines =
                machines.map(|(plugged, lid_open)| Drawing::Machine { plugged, lid_open });
            for drawing in [Drawing::Console, Drawing::Inside]
                .into_iter()
                .chain(machines)
            {
                for size in stages {
                    let stage = Area::from_min_size(Pos2::new(280.0, 92.0), size);
                    all.push((board.clone(), drawing, stage));
                }
            }
        }
        all
    }

    #[test]
    fn a_hand_finds_everything_in_the_drawing_and_nothing_lies_over_it() {
        for (board, drawing, stage) in drawings() {
            let flat = FlatScene::of(&board, drawing, stage);
            for (kind, place) in &flat.places {
                let at = format!("{}, {drawing:?}, {stage:?}: {kind:?}", board.id);
                let middle = place.middle();
                assert!(stage.contains(Pos2::new(middle.x, middle.y)), "{at}");
                if let GripKind::Pick(pick) = kind {
                    assert_eq!(flat.at(middle), Some(*pick), "{at}");
                }
            }
        }
    }

    /// In the close-up of the console; in the other views the same is done by keys and by the buttons on the left.
    #[test]
    fn a_finger_has_room_on_the_console_and_on_every_component() {
        for (board, drawing, stage) in drawings() {
            if matches!(drawing, Drawing::Machine { .. }) {
                continue;
            }
            let flat = FlatScene::of(&board, drawing, stage);
            for (kind, place) in &flat.places {
                let least = match place {
                    Place::Disc(_, radius) => 2.0 * radius,
                    Place::Box(area) => area.size().min_elem(),
                };
                assert!(
                    least >= FINGER || *kind == GripKind::Lamps,
                    "{}, {stage:?}, {kind:?}: {least}",
                    board.id
                );
            }
        }
    }

    #[test]
    fn each_view_draws_what_its_name_says() {
        let library = ContentLibrary::builtin().expect("sound boards");
        let stage = Area::from_min_size(Pos2::ZERO, vec2(674.0, 676.0));
        for board in &library.boards {
            let of = |drawing| FlatScene::of(board, drawing, stage);
            let machine = Drawing::Machine {
                plugged: true,
                lid_open: false,
            };
            for drawing in [Drawing::Console, machine] {
                let flat = of(drawing);
                for button in &board.panel.buttons {
                    assert!(flat.place(Pick::Button(*button)).is_some(), "{button}");
                }
                let turns = board.panel.selector.turn().is_some();
                assert_eq!(flat.place(Pick::Knob).is_some(), turns);
            }
            assert!(of(machine).place(Pick::Lid).is_some());
            assert!(of(machine).place(Pick::Plug).is_some());
            let inside = of(Drawing::Inside);
            let behind_panels = Part::ALL.iter().filter(|part| part.is_inside());
            for part in behind_panels {
                assert!(inside.place(Pick::Part(*part)).is_some(), "{part}");
            }
            assert!(inside.place(Pick::Button(Button::Start)).is_none());
        }
    }
}
