//! Materials and textures, all computed.

use crate::tokens;
use bevy::asset::RenderAssetUsages;
use bevy::image::{ImageAddressMode, ImageSampler, ImageSamplerDescriptor};
use bevy::prelude::*;
use bevy::render::render_resource::{
    Extent3d, TextureDimension, TextureFormat, TextureViewDescriptor, TextureViewDimension,
};
use bevy_egui::egui::Color32;

/// Every material used more than once.
#[derive(Resource, Clone)]
pub struct Paint {
    /// Warm white enamel of the cabinet.
    pub enamel: Handle<StandardMaterial>,
    /// Inside of the sheet metal.
    pub primer: Handle<StandardMaterial>,
    /// Console face.
    pub glass: Handle<StandardMaterial>,
    /// Painted console face.
    pub slate: Handle<StandardMaterial>,
    /// Smoked glass of the lid.
    pub smoked: Handle<StandardMaterial>,
    /// Brushed steel.
    pub brushed: Handle<StandardMaterial>,
    /// Satin steel.
    pub satin: Handle<StandardMaterial>,
    /// Bright metal.
    pub chrome: Handle<StandardMaterial>,
    /// Dull cast metal.
    pub cast: Handle<StandardMaterial>,
    /// Basket wall with holes.
    pub sieve: Handle<StandardMaterial>,
    /// Black rubber.
    pub rubber: Handle<StandardMaterial>,
    /// Dark plastic.
    pub dark: Handle<StandardMaterial>,
    /// Light plastic.
    pub light: Handle<StandardMaterial>,
    /// Agitator.
    pub teal: Handle<StandardMaterial>,
    /// Red plastic.
    pub red: Handle<StandardMaterial>,
    /// Blue plastic.
    pub blue: Handle<StandardMaterial>,
    /// Green plastic.
    pub green: Handle<StandardMaterial>,
    /// Amber plastic.
    pub amber: Handle<StandardMaterial>,
    /// Copper windings.
    pub copper: Handle<StandardMaterial>,
    /// Circuit board.
    pub laminate: Handle<StandardMaterial>,
    /// Translucent tub.
    pub tub: Handle<StandardMaterial>,
    /// Water.
    pub water: Handle<StandardMaterial>,
    /// Printed marks on the dark glass.
    pub print: Handle<StandardMaterial>,
    /// Printed marks that matter.
    pub print_amber: Handle<StandardMaterial>,
    /// Dark print on steel and light plastic.
    pub ink: Handle<StandardMaterial>,
    /// Wood.
    pub wood: Handle<StandardMaterial>,
}

/// A color of the window in the scene.
pub fn scene_color(color: Color32) -> Color {
    Color::srgb_u8(color.r(), color.g(), color.b())
}

/// A texture of `size`² pixels from a function of (u, v), with its mip chain.
pub fn texture(size: u32, colour: impl Fn(f32, f32) -> [u8; 4]) -> Image {
    let mut level: Vec<[u8; 4]> = (0..size * size)
        .map(|i| {
            let (x, y) = (i % size, i / size);
            colour(x as f32 / size as f32, y as f32 / size as f32)
        })
        .collect();
    let mut data: Vec<u8> = level.iter().flatten().copied().collect();
    let mut image = Image::new(
        Extent3d {
            width: size,
            height: size,
            depth_or_array_layers: 1,
        },
        TextureDimension::D2,
        data.clone(),
        TextureFormat::Rgba8UnormSrgb,
        RenderAssetUsages::RENDER_WORLD,
    );
    let (mut side, mut levels) = (size as usize, 1);
    while side > 1 {
        let half = side / 2;
        level = (0..half * half)
            .map(|i| {
                let (x, y) = (2 * (i % half), 2 * (i / half));
                let four =
                    [(0, 0), (1, 0), (0, 1), (1, 1)].map(|(a, b)| level[(y + b) * side + x + a]);
                std::array::from_fn(|c| {
                    (four.iter().map(|p| u32::from(p[c])).sum::<u32>() / 4) as u8
                })
            })
            .collect();
        data.extend(level.iter().flatten());
        side = half;
        levels += 1;
    }
    image.texture_descriptor.mip_level_count = levels;
    image.data = Some(data);
    image.sampler = ImageSampler::Descriptor(ImageSamplerDescriptor {
        address_mode_u: ImageAddressMode::Repeat,
        address_mode_v: ImageAddressMode::Repeat,
        ..ImageSamplerDescriptor::linear()
    });
    image
}

/// Repeatable noise, 0 to 1.
pub fn noise(x: i32, y: i32) -> f32 {
    let mut h = (x as u32).wrapping_mul(0x9e37_79b1) ^ (y as u32).wrapping_mul(0x85eb_ca77);
    h ^= h >> 15;
    h = h.wrapping_mul(0x2c1b_3c6d);
    h ^= h >> 12;
    h = h.wrapping_mul(0x297a_2d39);
    h ^= h >> 15;
    (h & 0xffff) as f32 / 65535.0
}

fn grey(value: f32) -> [u8; 4] {
    let v = (value.clamp(0.0, 1.0) * 255.0) as u8;
    [v, v, v, 255]
}

/// Half-precision bits of a positive number.
fn half(value: f32) -> [u8; 2] {
    let bits = value.clamp(6.2e-5, 60_000.0).to_bits();
    let exponent = ((bits >> 23) as i32 - 127 + 15) as u32;
    ((exponent << 10 | (bits >> 13 & 0x3ff)) as u16).to_le_bytes()
}

/// What the room looks like to a shiny surface: warm soft box above, cool strip behind, floor glow.
fn surroundings(dir: Vec3, blur: f32) -> Vec3 {
    let soft = |x: f32, edge: f32| {
        let w = 0.03 + blur;
        ((x - edge) / w * 0.5 + 0.5).clamp(0.0, 1.0)
    };
    let up = dir.y * 0.5 + 0.5;
    let wall = Vec3::new(0.20, 0.235, 0.25).lerp(Vec3::new(0.36, 0.37, 0.36), up);
    let floor = Vec3::new(0.24, 0.17, 0.12);
    let mut light = floor.lerp(wall, soft(dir.y, -0.08));
    // Soft box to the upper left in front.
    let key = Vec3::new(-0.45, 0.75, 0.5).normalize();
    light += Vec3::new(4.2, 3.5, 2.7) * soft(dir.dot(key), 0.88 - blur * 0.25) / (1.0 + blur * 5.0);
    // Tall window to the right.
    let across = dir.dot(Vec3::new(0.86, 0.0, 0.5).normalize());
    light += Vec3::new(0.75, 1.0, 1.25)
        * soft(across, 0.90 - blur * 0.3)
        * soft(dir.y, -0.1)
        * soft(-dir.y, -0.62)
        / (1.0 + blur * 2.5);
    // Strip behind.
    let rim = dir.dot(Vec3::new(0.3, 0.35, -0.9).normalize());
    light += Vec3::new(0.7, 0.85, 1.0) * soft(rim, 0.9) / (1.0 + blur * 3.0);
    light
}

/// Cube map of [`surroundings`]; blurred more at each mip level.
pub fn environment(size: u32, all_blur: Option<f32>) -> Image {
    let levels = if all_blur.is_some() {
        1
    } else {
        size.ilog2() + 1
    };
    let mut data = Vec::new();
    for context in 0..6 {
        for level in 0..levels {
            let side = size >> level;
            let blur = all_blur.unwrap_or(level as f32 / (levels - 1) as f32 * 1.1);
            for i in 0..side * side {
                let a = 2.0 * ((i % side) as f32 + 0.5) / side as f32 - 1.0;
                let b = 2.0 * ((i / side) as f32 + 0.5) / side as f32 - 1.0;
                let dir = match context {
                    0 => Vec3::new(1.0, -b, -a),
                    1 => Vec3::new(-1.0, -b, a),
                    2 => Vec3::new(a, 1.0, b),
                    3 => Vec3::new(a, -1.0, -b),
                    4 => Vec3::new(a, -b, 1.0),
                    _ => Vec3::new(-a, -b, -1.0),
                };
                // The sampler's Z runs the other way.
                let dir = Vec3::new(dir.x, dir.y, -dir.z).normalize();
                let light = surroundings(dir, blur);
                for channel in [light.x, light.y, light.z, 1.0] {
                    data.extend(half(channel));
                }
            }
        }
    }
    let mut image = Image::new_uninit(
        Extent3d {
            width: size,
            height: size,
            depth_or_array_layers: 6,
        },
        TextureDimension::D2,
        TextureFormat::Rgba16Float,
        RenderAssetUsages::RENDER_WORLD,
    );
    image.texture_descriptor.mip_level_count = levels;
    image.data = Some(data);
    image.texture_view_descriptor = Some(TextureViewDescriptor {
        dimension: Some(TextureViewDimension::Cube),
        ..default()
    });
    image
}

/// Soft round spot, white with alpha.
pub fn glow() -> Image {
    texture(128, |u, v| {
        let r = ((u - 0.5).powi(2) + (v - 0.5).powi(2)).sqrt() * 2.0;
        let a = (1.0 - r).clamp(0.0, 1.0);
        let v = (a * a * (3.0 - 2.0 * a) * a * 255.0) as u8;
        [255, 255, 255, v]
    })
}

/// Soft dark patch under things, black with alpha.
pub fn contact_shadow() -> Image {
    texture(128, |u, v| {
        let d = Vec2::new((u - 0.5).abs(), (v - 0.5).abs()) - Vec2::splat(0.30);
        let far = d.max(Vec2::ZERO).length() / 0.20;
        let a = (1.0 - far).clamp(0.0, 1.0);
        [0, 0, 0, (a * a * 205.0) as u8]
    })
}

impl Paint {
    /// Make them all.
    pub fn new(images: &mut Assets<Image>, materials: &mut Assets<StandardMaterial>) -> Paint {
        let mut add = |colour: Color, roughness: f32, metallic: f32| {
            materials.add(StandardMaterial {
                base_color: colour,
                perceptual_roughness: roughness,
                metallic,
                ..default()
            })
        };
        let enamel = add(Color::srgb_u8(0xee, 0xec, 0xe6), 0.30, 0.0);
        let primer = add(Color::srgb_u8(0x8d, 0x94, 0x96), 0.6, 0.3);
        let glass = add(Color::srgb_u8(0x10, 0x14, 0x18), 0.16, 0.0);
        let satin = add(Color::srgb_u8(0xa6, 0xac, 0xb0), 0.48, 0.55);
        let slate = add(Color::srgb_u8(0x33, 0x48, 0x58), 0.42, 0.0);
        let ink = add(scene_color(tokens::CONSOLE_INK), 0.7, 0.0);
        let chrome = add(Color::srgb_u8(0xd8, 0xd8, 0xd6), 0.16, 1.0);
        let cast = add(Color::srgb_u8(0x98, 0x9b, 0x9c), 0.52, 0.9);
        let rubber = add(Color::srgb_u8(0x20, 0x22, 0x24), 0.85, 0.0);
        let dark = add(Color::srgb_u8(0x2b, 0x31, 0x36), 0.45, 0.0);
        let light = add(Color::srgb_u8(0xe4, 0xe2, 0xd8), 0.5, 0.0);
        let teal = add(Color::srgb_u8(0x2f, 0x8f, 0x8b), 0.38, 0.0);
        let red = add(Color::srgb_u8(0xc8, 0x3a, 0x2c), 0.4, 0.0);
        let blue = add(Color::srgb_u8(0x2d, 0x6f, 0xb8), 0.4, 0.0);
        let green = add(Color::srgb_u8(0x3a, 0x86, 0x4e), 0.45, 0.0);
        let amber = add(Color::srgb_u8(0xe6, 0x9a, 0x2c), 0.4, 0.0);
        let copper = add(Color::srgb_u8(0xc8, 0x74, 0x3c), 0.35, 0.9);
        let laminate = add(Color::srgb_u8(0x1c, 0x4a, 0x58), 0.42, 0.1);

        let streaks = images.add(texture(128, |u, v| {
            let (x, y) = ((u * 128.0) as i32, (v * 128.0) as i32);
            let fine = noise(x / 40, y) * 0.5 + noise(x / 9 + 77, y) * 0.3 + noise(x, y) * 0.2;
            grey(0.78 + 0.18 * fine)
        }));
        let brushed = materials.add(StandardMaterial {
            base_color: Color::srgb_u8(0xcf, 0xd0, 0xd0),
            base_color_texture: Some(streaks),
            perceptual_roughness: 0.32,
            metallic: 0.95,
            ..default()
        });
        let holes = images.add(texture(64, |u, v| {
            let near = |cu: f32, cv: f32| ((u - cu).powi(2) + (v - cv).powi(2)).sqrt();
            let d = near(0.25, 0.25).min(near(0.75, 0.75));
            let alpha = if d < 0.1 { 0 } else { 255 };
            let shade = (205.0 - 70.0 * (1.0 - ((d - 0.1) / 0.06).clamp(0.0, 1.0))) as u8;
            [shade, shade, shade, alpha]
        }));
        let sieve = materials.add(StandardMaterial {
            base_color_texture: Some(holes),
            perceptual_roughness: 0.3,
            metallic: 0.9,
            alpha_mode: AlphaMode::Mask(0.5),
            cull_mode: None,
            double_sided: true,
            uv_transform: bevy::math::Affine2::from_scale(Vec2::new(34.0, 8.0)),
            ..default()
        });
        let grain = images.add(texture(128, |u, v| {
            let wave = ((v * 9.0 + (u * 6.3).sin() * 0.25 + noise(0, (v * 60.0) as i32) * 0.5)
                .sin()
                * 0.5
                + 0.5)
                * 0.28;
            let base = 0.62 + wave * 0.5 + noise((u * 20.0) as i32, (v * 128.0) as i32) * 0.1;
            [
                (base * 186.0) as u8,
                (base * 126.0) as u8,
                (base * 76.0) as u8,
                255,
            ]
        }));
        let wood = materials.add(StandardMaterial {
            base_color_texture: Some(grain),
            perceptual_roughness: 0.55,
            ..default()
        });
        let see_through = |colour: Color, roughness: f32| StandardMaterial {
            base_color: colour,
            perceptual_roughness: roughness,
            alpha_mode: AlphaMode::Blend,
            cull_mode: None,
            double_sided: true,
            ..default()
        };
        let smoked = materials.add(see_through(Color::srgba_u8(0x1c, 0x28, 0x2c, 0x86), 0.06));
        let tub = materials.add(see_through(Color::srgba_u8(0xcf, 0xdc, 0xdc, 0x38), 0.25));
        let water = materials.add(see_through(Color::srgba_u8(0x1b, 0x86, 0xb8, 0xa0), 0.05));
        let flat = |colour: Color| StandardMaterial {
            base_color: colour,
            emissive: colour.to_linear() * 0.35,
            perceptual_roughness: 0.8,
            ..default()
        };
        let print = materials.add(flat(scene_color(tokens::CONSOLE_PRINT)));
        let print_amber = materials.add(flat(scene_color(tokens::CONSOLE_AMBER)));
        Paint {
            enamel,
            primer,
            glass,
            slate,
            satin,
            smoked,
            brushed,
            chrome,
            cast,
            sieve,
            rubber,
            dark,
            light,
            teal,
            red,
            blue,
            green,
            amber,
            copper,
            laminate,
            tub,
            water,
            print,
            print_amber,
            ink,
            wood,
        }
    }
}
