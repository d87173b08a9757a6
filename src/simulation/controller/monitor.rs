//! The names of everything the firmware can complain about or be asked to do.

use crate::names;
use schemars::JsonSchema;

names! {
    // What it saw is text key `monitor-{name}`.
    /// A watch that the control keeps over the machine.
    #[derive(JsonSchema)]
    Monitor {
        /// The level did not move although a valve was open.
        FillNone = "fill-none",
        /// The level was not reached in time.
        FillSlow = "fill-slow",
        /// The tub was not empty in time.
        DrainSlow = "drain-slow",
        /// The level rose with both valves shut.
        WaterUnexpected = "water-unexpected",
        /// The level fell without draining.
        LevelLost = "level-lost",
        /// Pressure input outside its valid range.
        PressureRange = "pressure-range",
        /// Thermistor input outside its valid range.
        ThermistorRange = "thermistor-range",
        /// Hot water was wanted and stayed cold.
        WaterNotWarm = "water-not-warm",
        /// Water came hotter than wanted.
        WaterTooHot = "water-too-hot",
        /// Lock driven, but no line came back through its contact.
        LockNotProven = "lock-not-proven",
        /// Lock released, but line still comes back.
        LockNotReleased = "lock-not-released",
        /// Motor driven without current.
        MotorNoCurrent = "motor-no-current",
        /// Motor current stays high.
        MotorOverload = "motor-overload",
        /// Motor current vanished in the middle of a run.
        MotorOverheated = "motor-overheated",
        /// Motor draws current, but no speed pulses come.
        PulsesNone = "pulses-none",
        /// Speed pulses come, but too few.
        PulsesWeak = "pulses-weak",
        /// Spin speed not reached in time.
        SpinNotReached = "spin-not-reached",
        /// Speed swings within each turn.
        Unbalance = "unbalance",
        /// The clutch actuator did not reach its position.
        CamLost = "cam-lost",
        /// The supply sags while the motor is driven.
        SupplyLow = "supply-low",
        /// A program began without calibration.
        CalibrationMissing = "calibration-missing",
        /// Recalibration learned a value outside its limits.
        CalibrationFailed = "calibration-failed",
    }
}

names! {
    // Its name is text key `routine-{name}`.
    /// A routine of service mode.
    #[derive(JsonSchema)]
    Routine {
        /// Shows the stored codes, newest first.
        Recall = "recall",
        /// Shows how many cycles ago each code was stored.
        Ages = "ages",
        /// Clears the stored codes while Start is held.
        Clear = "clear",
        /// Lights every lamp.
        LampTest = "lamp-test",
        /// Opens the cold valve.
        TestCold = "test-cold",
        /// Opens the hot valve.
        TestHot = "test-hot",
        /// Runs the drain pump.
        TestPump = "test-pump",
        /// Drives the motor in direction A.
        TestMotorA = "test-motor-a",
        /// Drives the motor in direction B.
        TestMotorB = "test-motor-b",
        /// Spins slowly.
        TestSpin = "test-spin",
        /// Moves the clutch actuator.
        TestClutch = "test-clutch",
        /// Drives the lid lock.
        TestLock = "test-lock",
        /// Shows the water level, cm.
        LiveLevel = "live-level",
        /// Shows the water temperature, °C.
        LiveTemperature = "live-temperature",
        /// Shows the speed, tens of rev/min.
        LiveSpeed = "live-speed",
        /// Learns the machine anew.
        Recalibrate = "recalibrate",
    }
}

names! {
    // Its name is text key `stage-{name}`.
    /// A stage of recalibration.
    #[derive(JsonSchema)]
    Stage {
        /// Pump the tub empty.
        Empty = "empty",
        /// Everything off: learn the pressure input at no water.
        Zero = "zero",
        /// Drive and prove the lock.
        Lock = "lock",
        /// See the level rise through the cold valve.
        Cold = "cold",
        /// See the level rise through the hot valve.
        Hot = "hot",
        /// See the level fall again.
        Pump = "pump",
        /// One whole turn of the cam: learn its speed.
        Cam = "cam",
        /// Pulses in direction A.
        MotorA = "motor-a",
        /// Pulses in direction B.
        MotorB = "motor-b",
        /// A short spin: learn the load's inertia from its acceleration.
        Spin = "spin",
        /// Wait until the drum stands.
        Coast = "coast",
        /// Release the lock and prove it.
        Unlock = "unlock",
    }
}
