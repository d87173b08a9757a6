//! The console's face and the cabinet's inside, as the board at hand needs them.

use super::displayed::{display, displayed_board};
use super::maker::Maker;
use super::still::{self, Apart};
use super::washer::Washer;
use super::{console, inside};
use crate::drill::DrillRes;
use crate::state::{BenchRes, Screen};
use bevy::prelude::*;

/// What belongs to the board at hand; built anew when another job brings another board.
#[derive(Component)]
#[require(Apart)]
struct Fitted;

fn fit(
    mut make: Maker,
    bench: Res<BenchRes>,
    drill: Res<DrillRes>,
    screen: Res<State<Screen>>,
    root: Single<Entity, With<Washer>>,
    fitted: Query<Entity, With<Fitted>>,
    mut at_hand: Local<Option<String>>,
) {
    let board = displayed_board(*screen.get(), &bench, &drill);
    if at_hand.as_ref() == Some(&board.id) {
        return;
    }
    *at_hand = Some(board.id.clone());
    let make = &mut make;
    for old in &fitted {
        make.commands.entity(old).despawn();
    }
    let group = make.group(Some(*root), Transform::IDENTITY);
    make.commands.entity(group).insert(Fitted);
    console::build(make, group, board);
    inside::build(make, group, board);
}

/// What the board brings.
pub fn plugin(app: &mut App) {
    app.add_systems(Update, (fit, still::join).chain().after(display));
}
