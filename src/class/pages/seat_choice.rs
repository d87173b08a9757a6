//! Which seats the board shows, and in which order.

use super::language::query_value;
use super::seat_state::{SeatState, shown_name};
use crate::board::{BoardView, SeatView};

/// In which order.
#[derive(Clone, Copy, Debug, Default, PartialEq, Eq)]
pub enum SeatOrder {
    /// Who needs help first.
    #[default]
    Help,
    /// By name.
    Name,
    /// By number.
    Seat,
}

/// Which of them.
#[derive(Clone, Copy, Debug, Default, PartialEq, Eq)]
pub enum SeatsShown {
    /// All.
    #[default]
    All,
    /// Those who need help.
    Help,
    /// Those where nobody has joined.
    Absent,
}

/// What the instructor wants to see.
#[derive(Clone, Copy, Debug, Default, PartialEq, Eq)]
pub struct SeatChoice {
    /// In which order.
    pub order: SeatOrder,
    /// Which of them.
    pub shown: SeatsShown,
}

impl SeatOrder {
    pub(super) const ALL: [SeatOrder; 3] = [SeatOrder::Help, SeatOrder::Name, SeatOrder::Seat];

    /// Its name in the query and in the key of its words.
    pub(super) fn name(self) -> &'static str {
        match self {
            SeatOrder::Help => "help",
            SeatOrder::Name => "name",
            SeatOrder::Seat => "seat",
        }
    }
}

impl SeatsShown {
    pub(super) const ALL: [SeatsShown; 3] = [SeatsShown::All, SeatsShown::Help, SeatsShown::Absent];

    /// Its name in the query and in the key of its words.
    pub(super) fn name(self) -> &'static str {
        match self {
            SeatsShown::All => "all",
            SeatsShown::Help => "help",
            SeatsShown::Absent => "absent",
        }
    }

    fn shows(self, first: SeatState) -> bool {
        match self {
            SeatsShown::All => true,
            SeatsShown::Help => first.needs_help(),
            SeatsShown::Absent => first == SeatState::Absent,
        }
    }
}

impl SeatChoice {
    /// What a query asks for, `sort=name&show=help`; the rest, and what is none of these, is as usual.
    pub fn of_query(query: &str) -> SeatChoice {
        let (order, shown) = (query_value(query, "sort"), query_value(query, "show"));
        SeatChoice {
            order: (SeatOrder::ALL.into_iter())
                .find(|known| order == Some(known.name()))
                .unwrap_or_default(),
            shown: (SeatsShown::ALL.into_iter())
                .find(|known| shown == Some(known.name()))
                .unwrap_or_default(),
        }
    }

    /// Every seat in this order, with its states and whether it is shown. Names are ordered without knowing the language;
    /// the script then does it better.
    pub(super) fn seats(self, board: &BoardView) -> Vec<(&SeatView, Vec<SeatState>, bool)> {
        let mut seats: Vec<_> = (board.seats.iter())
            .map(|seat| {
                let states = SeatState::of(seat, board);
                let shown = self.shown.shows(states[0]);
                (seat, states, shown)
            })
            .collect();
        match self.order {
            SeatOrder::Help => seats.sort_by_key(|(seat, states, _)| (states[0], seat.seat)),
            SeatOrder::Name => {
                seats.sort_by_cached_key(|(seat, ..)| (shown_name(seat).to_lowercase(), seat.seat))
            }
            SeatOrder::Seat => seats.sort_by_key(|(seat, ..)| seat.seat),
        }
        seats
    }
}
