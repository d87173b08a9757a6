//! Whether there is anything that draws for us.

use bevy::render::settings::WgpuSettings;
use bevy::tasks::block_on;
use wgpu::{Instance, InstanceDescriptor, RequestAdapterOptions};

/// Whether there is a graphics card, or a driver that does a card's work on the processor. Bevy asks the same, and
/// where the answer is no it gives up.
pub fn is_there() -> bool {
    let settings = WgpuSettings::default();
    let Some(backends) = settings.backends else {
        return false;
    };
    let instance = Instance::new(InstanceDescriptor {
        backends,
        flags: settings.instance_flags,
        ..InstanceDescriptor::new_without_display_handle()
    });
    let asked = instance.request_adapter(&RequestAdapterOptions {
        power_preference: settings.power_preference,
        ..RequestAdapterOptions::default()
    });
    block_on(asked).is_ok()
}
