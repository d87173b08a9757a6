//! Puts the picture into the window.

use super::SoftwarePicture;
use bevy::math::IRect;
use bevy::prelude::*;
use bevy::window::{PrimaryWindow, RawHandleWrapper, ThreadLockedRawWindowHandleWrapper};
use softbuffer::{Context, SoftBufferError, Surface};
use std::num::NonZeroU32;

type WindowSurface =
    Surface<ThreadLockedRawWindowHandleWrapper, ThreadLockedRawWindowHandleWrapper>;

/// The window as something to put pixels into; made with the first picture.
#[derive(Default)]
pub struct Screen(Option<WindowSurface>);

impl Screen {
    #[allow(
        unsafe_code,
        reason = "the handles may be used on the window's own thread alone, which the compiler cannot see"
    )]
    fn of(&mut self, window: &RawHandleWrapper) -> Result<&mut WindowSurface, SoftBufferError> {
        let surface = match self.0.take() {
            Some(surface) => surface,
            None => {
                // SAFETY: a `Screen` is data of the thread that the window lives on and never leaves it.
                let (display, window) = unsafe { (window.get_handle(), window.get_handle()) };
                Surface::new(&Context::new(display)?, window)?
            }
        };
        Ok(self.0.insert(surface))
    }

    /// Shows `picture`, in which these parts have changed.
    fn show(
        &mut self,
        window: &RawHandleWrapper,
        picture: &SoftwarePicture,
    ) -> Result<(), SoftBufferError> {
        // A page keeps what its canvas shows; a window system may have forgotten it, which nobody tells.
        let keeps = cfg!(target_family = "wasm");
        let parts: Vec<_> = picture.damage.parts().iter().filter_map(changed).collect();
        if keeps && parts.is_empty() {
            return Ok(());
        }
        let size = picture.canvas.size().as_uvec2();
        let (Some(width), Some(height)) = (NonZeroU32::new(size.x), NonZeroU32::new(size.y)) else {
            return Ok(());
        };
        let surface = self.of(window)?;
        surface.resize(width, height)?;
        let mut buffer = surface.buffer_mut()?;
        buffer.copy_from_slice(picture.canvas.pixels());
        match keeps {
            true => buffer.present_with_damage(&parts),
            false => buffer.present(),
        }
    }
}

fn changed(part: &IRect) -> Option<softbuffer::Rect> {
    let (at, size) = (part.min.as_uvec2(), part.size().as_uvec2());
    Some(softbuffer::Rect {
        x: at.x,
        y: at.y,
        width: NonZeroU32::new(size.x)?,
        height: NonZeroU32::new(size.y)?,
    })
}

/// Shows the picture in the window, where there is one.
pub fn present(
    picture: Res<SoftwarePicture>,
    window: Option<Single<&RawHandleWrapper, With<PrimaryWindow>>>,
    mut screen: NonSendMut<Screen>,
) {
    let Some(window) = window else {
        return;
    };
    if let Err(error) = screen.show(&window, &picture) {
        error_once!("the picture does not get into the window: {error}");
    }
}
