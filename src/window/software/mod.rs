//! The panels drawn on the processor and put into the window as they are: for computers without a graphics card, and for
//! one whose card goes away in the middle of a job. The machine is drawn flat then, so that the panels are all there is.

#[cfg(not(target_family = "wasm"))]
pub mod card;
mod damage;
mod present;
mod raster;

use super::AppOptions;
use super::state::UiState;
use bevy::asset::RenderAssetUsages;
use bevy::ecs::system::SystemParam;
use bevy::prelude::*;
use bevy::render::ExtractSchedule;
use bevy::render::error_handler::{RenderError, RenderErrorHandler, RenderErrorPolicy};
use bevy::render::render_resource::{Extent3d, TextureDimension, TextureFormat};
#[cfg(not(target_family = "wasm"))]
use bevy::render::renderer::RenderDevice;
use bevy::render::view::WindowSurfaces;
use bevy::window::PrimaryWindow;
use bevy_egui::egui::{ClippedPrimitive, Color32, TextureId};
use bevy_egui::{EguiManagedTextures, EguiOutput, EguiRenderOutput, PrimaryEguiContext};
use damage::Damage;
use raster::{Canvas, Texture};
use std::collections::HashMap;

pub use present::Screen;

/// What shows where nothing is painted: the window camera's own.
const GROUND: Color32 = Color32::from_rgb(0x18, 0x22, 0x29);

/// The picture of the window. There is one where the processor draws it.
#[derive(Resource, Default)]
pub struct SoftwarePicture {
    canvas: Canvas,
    /// What is painted in it.
    painted: Vec<ClippedPrimitive>,
    pixels_per_point: f32,
    /// The images that textures were in.
    textures: HashMap<u64, AssetId<Image>>,
    /// What the last frame drew.
    damage: Damage,
    /// Frames that drew anything.
    drawn_frames: u64,
}

impl SoftwarePicture {
    /// The picture as an image of Bevy's.
    pub fn image(&self) -> Image {
        let size = self.canvas.size().as_uvec2();
        Image::new(
            Extent3d {
                width: size.x,
                height: size.y,
                depth_or_array_layers: 1,
            },
            TextureDimension::D2,
            self.canvas.rgba(),
            TextureFormat::Rgba8UnormSrgb,
            RenderAssetUsages::MAIN_WORLD,
        )
    }
}

/// The images that hold what egui fills triangles from.
#[derive(SystemParam)]
struct Textures<'w> {
    managed: Res<'w, EguiManagedTextures>,
    images: Res<'w, Assets<Image>>,
}

impl Textures<'_> {
    fn get(&self, context: Entity, id: TextureId) -> Option<Texture<'_>> {
        // The only picture that is not egui's own is the scene's, and that is not drawn.
        let TextureId::Managed(id) = id else {
            return None;
        };
        let image = (self.images).get(&self.managed.get(&(context, id))?.handle)?;
        let size = image.size();
        Some(Texture {
            size: [size.x as usize, size.y as usize],
            rgba: image.data.as_deref()?,
        })
    }

    fn places(&self, context: Entity) -> HashMap<u64, AssetId<Image>> {
        let own = (self.managed.iter()).filter(|((entity, _), _)| *entity == context);
        own.map(|((_, id), texture)| (*id, texture.handle.id()))
            .collect()
    }
}

/// Draws what has changed in the window since the last frame.
fn draw(
    mut picture: ResMut<SoftwarePicture>,
    textures: Textures,
    window: Single<&Window, With<PrimaryWindow>>,
    panels: Single<(Entity, &mut EguiRenderOutput, &EguiOutput), With<PrimaryEguiContext>>,
) {
    let (context, mut output, shape) = panels.into_inner();
    let picture = &mut *picture;
    let size = window.physical_size().as_ivec2();
    let places = textures.places(context);
    let as_before = picture.canvas.size() == size
        && picture.pixels_per_point == shape.pixels_per_point
        && picture.textures == places;
    if as_before {
        picture.damage =
            Damage::between(&picture.painted, &output.paint_jobs, shape.pixels_per_point);
    } else {
        if picture.canvas.size() != size {
            picture.canvas = Canvas::new(size);
        }
        picture.damage = Damage::default();
        picture.damage.add(picture.canvas.area());
    }
    (picture.pixels_per_point, picture.textures) = (shape.pixels_per_point, places);
    std::mem::swap(&mut picture.painted, &mut output.paint_jobs);
    for part in picture.damage.parts() {
        picture.canvas.paint(
            *part,
            GROUND,
            &picture.painted,
            picture.pixels_per_point,
            |id| textures.get(context, id),
        );
    }
    picture.drawn_frames += u64::from(!picture.damage.parts().is_empty());
}

/// Asks the card how it is. One that is lost gives no more pictures to draw into, so that nothing would be handed to it
/// and nobody told.
#[cfg(not(target_family = "wasm"))]
fn ask_card(device: Res<RenderDevice>) {
    if let Err(error) = device.poll(wgpu::PollType::Poll) {
        warn_once!("the graphics card does not answer: {error}");
    }
}

/// The card is gone, or does not do what it should: the job goes on without it.
fn go_on_without_card(
    error: &RenderError,
    main_world: &mut World,
    render_world: &mut World,
) -> RenderErrorPolicy {
    if !main_world.contains_resource::<SoftwarePicture>() {
        error!("without the graphics card from here on: {:?}", error.ty);
        main_world.init_resource::<SoftwarePicture>();
        let mut ui_state = main_world.resource_mut::<UiState>();
        (ui_state.flat, ui_state.software) = (true, true);
        // The window is the processor's now, and nobody would ever draw what is handed over.
        render_world.insert_resource(WindowSurfaces::default());
        render_world.add_schedule(Schedule::new(ExtractSchedule));
    }
    RenderErrorPolicy::StopRendering
}

/// Where the processor draws.
#[derive(SystemSet, Clone, Copy, PartialEq, Eq, Hash, Debug)]
pub struct SoftwareDrawing;

/// Draws the window on the processor from the start, or from when the card is gone.
pub fn plugin(app: &mut App, options: &AppOptions) {
    if options.software {
        info!("drawn without a graphics card");
        app.init_resource::<SoftwarePicture>();
    }
    #[cfg(not(target_family = "wasm"))]
    app.add_systems(
        First,
        ask_card.run_if(
            resource_exists::<RenderDevice>.and_then(not(resource_exists::<SoftwarePicture>)),
        ),
    );
    app.init_non_send::<Screen>()
        .insert_resource(RenderErrorHandler(go_on_without_card))
        .add_systems(
            Last,
            (draw, present::present)
                .chain()
                .in_set(SoftwareDrawing)
                .run_if(resource_exists::<SoftwarePicture>),
        );
}

#[cfg(test)]
mod tests {
    use super::*;
    use crate::rest::tests::paused;
    use crate::state::BenchRes;
    use crate::{add_bench, without_window_system};
    use bevy::time::TimeUpdateStrategy;
    use detent_simulation::interface::Direction;
    use detent_training::bench::Action;
    use std::time::Duration;

    fn at_a_job() -> AppOptions {
        AppOptions {
            start: Some((0, 71)),
            software: true,
            ..AppOptions::default()
        }
    }

    fn picture(app: &App) -> &SoftwarePicture {
        app.world().resource::<SoftwarePicture>()
    }

    fn updates(app: &mut App, count: u32) {
        (0..count).for_each(|_| app.update());
    }

    fn turn_the_knob(app: &mut App) {
        let mut bench = app.world_mut().resource_mut::<BenchRes>();
        bench.push(Action::Detent(Direction::Right));
    }

    fn dial(app: &App) -> u8 {
        app.world()
            .resource::<BenchRes>()
            .view()
            .machine
            .dial_position
    }

    /// Pixels that are not of the ground.
    fn drawn_pixels(canvas: &Canvas) -> usize {
        let ground = canvas.pixels()[0];
        canvas
            .pixels()
            .iter()
            .filter(|pixel| **pixel != ground)
            .count()
    }

    #[test]
    fn a_window_at_rest_draws_nothing_and_a_turn_of_the_knob_little() {
        let mut app = paused(&at_a_job());
        updates(&mut app, 40);
        let (size, drawn) = (picture(&app).canvas.size(), picture(&app).drawn_frames);
        assert_eq!(size, IVec2::new(1280, 720));
        let pixels = (size.x * size.y) as usize;
        assert!(drawn_pixels(&picture(&app).canvas) > pixels / 4);
        updates(&mut app, 40);
        assert_eq!(picture(&app).drawn_frames, drawn);

        let before = picture(&app).canvas.clone();
        turn_the_knob(&mut app);
        let mut most = 0;
        for _ in 0..20 {
            app.update();
            let parts = picture(&app).damage.parts();
            let of_frame: i32 = parts.iter().map(|part| part.size().element_product()).sum();
            most = most.max(of_frame as usize);
        }
        assert!(most > 0 && most < pixels / 2, "{most} pixels drawn again");
        assert!(picture(&app).canvas != before);
    }

    /// What was drawn piece by piece is what is drawn all at once.
    #[test]
    fn no_change_is_missed() {
        let mut app = paused(&at_a_job());
        updates(&mut app, 30);
        for _ in 0..3 {
            turn_the_knob(&mut app);
            updates(&mut app, 7);
            let piece_by_piece = picture(&app).canvas.clone();
            app.world_mut()
                .resource_mut::<SoftwarePicture>()
                .pixels_per_point = 0.0;
            app.update();
            assert!(picture(&app).canvas == piece_by_piece);
        }
    }

    #[test]
    fn a_job_goes_on_when_the_card_is_lost() {
        if !card::is_there() {
            assert!(std::env::var_os("CI").is_none(), "no graphics adapter");
            println!("skipped: no graphics adapter");
            return;
        }
        let options = AppOptions {
            software: false,
            ..at_a_job()
        };
        let mut app = without_window_system(&options, true);
        add_bench(&mut app, &options).expect("the built-in jobs are sound");
        let frame = Duration::from_millis(100);
        app.insert_resource(TimeUpdateStrategy::ManualDuration(frame));
        app.finish();
        app.cleanup();
        updates(&mut app, 10);
        let before = dial(&app);
        assert!(!app.world().contains_resource::<SoftwarePicture>());
        app.world()
            .resource::<RenderDevice>()
            .wgpu_device()
            .destroy();
        // What is under way on the card ends first.
        let lost = (0..200).any(|_| {
            app.update();
            app.world().contains_resource::<SoftwarePicture>()
        });
        assert!(lost);
        updates(&mut app, 10);
        let ui_state = app.world().resource::<UiState>();
        assert!(ui_state.flat && ui_state.software);
        let lost = picture(&app).canvas.clone();
        assert!(drawn_pixels(&lost) > 100_000);
        turn_the_knob(&mut app);
        updates(&mut app, 20);
        assert_ne!(dial(&app), before);
        assert!(picture(&app).canvas != lost);
        assert!(app.should_exit().is_none());
    }
}
