//! In what state of the machine a standard reading is taken.

use detent_simulation::controller::Routine;
use detent_simulation::names;

names! {
    /// What has been done to the machine before a standard reading is taken.
    MachineState {
        /// Unplugged and discharged.
        Dead = "dead",
        /// Unplugged and discharged, with the loads' connectors pulled.
        Pulled = "pulled",
        /// Plugged in, no program.
        Idle = "idle",
        /// The service routine of this name runs.
        TestCold = "test-cold",
        TestPump = "test-pump",
        TestHot = "test-hot",
        TestClutch = "test-clutch",
        TestLock = "test-lock",
        TestMotorA = "test-motor-a",
        TestMotorB = "test-motor-b",
    }
}

impl MachineState {
    /// The plug is in the outlet.
    pub const fn is_live(self) -> bool {
        match self {
            MachineState::Dead | MachineState::Pulled => false,
            MachineState::Idle
            | MachineState::TestCold
            | MachineState::TestPump
            | MachineState::TestHot
            | MachineState::TestClutch
            | MachineState::TestLock
            | MachineState::TestMotorA
            | MachineState::TestMotorB => true,
        }
    }

    /// The routine that must run.
    pub const fn routine(self) -> Option<Routine> {
        match self {
            MachineState::Dead | MachineState::Pulled | MachineState::Idle => None,
            MachineState::TestCold => Some(Routine::TestCold),
            MachineState::TestPump => Some(Routine::TestPump),
            MachineState::TestHot => Some(Routine::TestHot),
            MachineState::TestClutch => Some(Routine::TestClutch),
            MachineState::TestLock => Some(Routine::TestLock),
            MachineState::TestMotorA => Some(Routine::TestMotorA),
            MachineState::TestMotorB => Some(Routine::TestMotorB),
        }
    }
}
