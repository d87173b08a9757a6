//! The names of everything the firmware can complain about or be asked to do.

use crate::names;

names! {
    /// A watch that the control keeps over the machine. What it saw is text key `monitor-{name}`.
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
    /// A routine of service mode. Its name is text key `routine-{name}`.
    Routine {
        Recall = "recall", Ages = "ages", Clear = "clear", LampTest = "lamp-test",
        TestCold = "test-cold", TestHot = "test-hot", TestPump = "test-pump",
        TestMotorA = "test-motor-a", TestMotorB = "test-motor-b", TestSpin = "test-spin",
        TestClutch = "test-clutch", TestLock = "test-lock",
        LiveLevel = "live-level", LiveTemperature = "live-temperature", LiveSpeed = "live-speed",
        Recalibrate = "recalibrate",
    }
}

names! {
    /// A stage of recalibration. Its name is text key `stage-{name}`.
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
