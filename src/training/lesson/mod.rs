//! Scenarios and scores.

mod advice;
mod call_back;
mod complaint;
mod course;
mod customer;
mod draw_filter;
mod guide;
mod intake;
mod invoice;
mod judge;
mod loss;
mod machine_state;
mod scenario;
mod score;
mod set_up;
pub mod survey;
pub mod technician;
mod wash_trace;
pub use call_back::{CallBack, EarlierVisit, call_back, call_back_in_slices};
pub use complaint::{Complaint, Customer, LayTheory, Since, WAYS};
pub use course::{Course, CoursePart};
pub use customer::{CustomerAccount, CustomerObservation};
pub use draw_filter::{DrawFilter, FoundBy, MOST_WEIGHT};
pub use guide::{
    Astray, BenchGoal, Goal, Guide, GuidePlace, GuideStep, WindowGoal, WindowState,
    WindowStepsDone, WindowTab, WindowView,
};
pub use intake::{Answer, Intake, Shown, Tried};
pub use invoice::{FreeOfCharge, Invoice, InvoiceItem, InvoiceLine};
pub use judge::judge;
pub(crate) use judge::{FREE_TRIES, first_touches, left_unproved, mishaps, safety_losses};
pub use loss::{Loss, LossKind};
pub use machine_state::MachineState;
pub use scenario::{Bilingual, Hidden, Mains, Points, Scenario};
pub use score::{Deduction, Dimension, DimensionScore, PASS_SAFETY_SHARE, PASS_SHARE, Score};
pub use set_up::{
    Library, SetUpError, candidates, draw, prepare, set_up, set_up_in_slices, start_wash,
};
pub use wash_trace::{
    MOST_SAMPLES, StoredCode, WashEnd, WashSample, WashTrace, wash_trace, wash_trace_in_slices,
};
