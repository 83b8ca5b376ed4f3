//! From the trait to C: one guard around every call.

#![expect(unsafe_code, reason = "C hands over pointers; each block says why they hold")]

use std::ffi::{CString, c_int};
use std::panic::{AssertUnwindSafe, catch_unwind};
use std::sync::OnceLock;

use plugin_abi::{
    SEATWRIGHT_ABI, SEATWRIGHT_FAILED, SEATWRIGHT_MUST_BE_GIVEN, SEATWRIGHT_NO_MEASURE,
    SEATWRIGHT_OK, SEATWRIGHT_REFUSED, SeatwrightAnswer1, SeatwrightParameter1, SeatwrightPlugin1,
    SeatwrightRequest1,
};

use crate::plugin::{Parameter, Plugin, Request};

/// A plugin's description in C, which lives as long as the library.
pub struct Exported {
    entry: SeatwrightPlugin1,
}

// SAFETY: the pointers of the entry lead to memory that is never freed and never written again.
unsafe impl Send for Exported {}
// SAFETY: as above.
unsafe impl Sync for Exported {}

impl Exported {
    /// Describes a plugin. Called by the macro.
    #[must_use]
    pub fn of<P: Plugin>() -> Self {
        let description = P::describe();
        let parameters: Vec<SeatwrightParameter1> = P::parameters().iter().map(parameter).collect();
        let parameters = Box::leak(parameters.into_boxed_slice());
        Self {
            entry: SeatwrightPlugin1 {
                abi: SEATWRIGHT_ABI,
                size: size_of::<SeatwrightPlugin1>() as u32,
                name: forever(description.name),
                version: forever(description.version),
                about: forever(description.about),
                parameter_count: parameters.len() as u32,
                parameter_size: size_of::<SeatwrightParameter1>() as u32,
                parameters: parameters.as_ptr(),
                pattern: Some(draw::<P>),
                release: Some(release),
            },
        }
    }
}

/// Returns the description, made when it is first asked for; null where making it panics. Called
/// by the macro.
#[must_use]
pub fn entry(
    cell: &'static OnceLock<Exported>,
    make: impl FnOnce() -> Exported,
) -> *const SeatwrightPlugin1 {
    let made = catch_unwind(AssertUnwindSafe(|| &raw const cell.get_or_init(make).entry));
    made.unwrap_or(std::ptr::null())
}

fn parameter(parameter: &Parameter) -> SeatwrightParameter1 {
    SeatwrightParameter1 {
        name: forever(parameter.name),
        words: forever(parameter.words),
        unit: forever(parameter.unit),
        least: *parameter.range.start(),
        greatest: *parameter.range.end(),
        standard: parameter.standard,
        measure: parameter.measure.map_or(SEATWRIGHT_NO_MEASURE, crate::Measure::code),
        flags: if parameter.must_be_given { SEATWRIGHT_MUST_BE_GIVEN } else { 0 },
    }
}

/// A text as C reads it, kept for the life of the library.
fn forever(text: &str) -> *const std::ffi::c_char {
    let plain: String = text.chars().filter(|character| *character != '\0').collect();
    CString::new(plain).expect("a text without zeros is a C text").into_raw()
}

/// Draws a pattern for the host.
///
/// # Safety
///
/// Both pointers must be null or valid during the call, as the contract says.
unsafe extern "C" fn draw<P: Plugin>(
    request: *const SeatwrightRequest1,
    answer: *mut SeatwrightAnswer1,
) -> c_int {
    // SAFETY: null or valid, as the caller promises.
    let (request, answer) = unsafe { (request.as_ref(), answer.as_mut()) };
    let (Some(request), Some(answer)) = (request, answer) else { return SEATWRIGHT_FAILED };
    if request.size as usize != size_of::<SeatwrightRequest1>()
        || answer.size as usize != size_of::<SeatwrightAnswer1>()
    {
        return SEATWRIGHT_FAILED;
    }
    let count = request.value_count as usize;
    let values = if count == 0 || request.values.is_null() {
        &[]
    } else {
        // SAFETY: the host gives as many values as it says.
        unsafe { std::slice::from_raw_parts(request.values, count) }
    };
    let (width, depth) = (request.width_mm, request.depth_mm);
    let drawn = catch_unwind(AssertUnwindSafe(|| answer_to::<P>(width, depth, values)));
    let (status, text) = drawn.unwrap_or_else(|panic| (SEATWRIGHT_FAILED, words_of(&*panic)));
    let text = Box::leak(text.into_bytes().into_boxed_slice());
    answer.text = text.as_ptr().cast();
    answer.length = text.len() as u64;
    status
}

/// What the plugin answers, or why not.
fn answer_to<P: Plugin>(width_mm: f64, depth_mm: f64, values: &[f64]) -> (c_int, String) {
    let parameters = P::parameters();
    if values.len() != parameters.len() {
        return (SEATWRIGHT_FAILED, "the host gave another number of values".to_owned());
    }
    let named = parameters.iter().map(|parameter| parameter.name).zip(values.iter().copied());
    match P::pattern(&Request { width_mm, depth_mm, values: named.collect() }) {
        Ok(text) => (SEATWRIGHT_OK, text),
        Err(refusal) => (SEATWRIGHT_REFUSED, refusal.to_string()),
    }
}

/// What a panic said.
fn words_of(panic: &(dyn std::any::Any + Send)) -> String {
    let said = panic.downcast_ref::<&str>().map(|said| (*said).to_owned());
    let said = said.or_else(|| panic.downcast_ref::<String>().cloned());
    said.unwrap_or_else(|| "it panicked".to_owned())
}

/// Frees an answer.
///
/// # Safety
///
/// `answer` must be null or what [`draw`] filled in, not yet released.
unsafe extern "C" fn release(answer: *mut SeatwrightAnswer1) {
    // SAFETY: null or valid, as the caller promises.
    let Some(answer) = (unsafe { answer.as_mut() }) else { return };
    if answer.text.is_null() {
        return;
    }
    let text = std::ptr::slice_from_raw_parts_mut(
        answer.text.cast::<u8>().cast_mut(),
        answer.length as usize,
    );
    // SAFETY: `draw` leaked exactly this, and it is taken back once: the pointer is cleared below.
    drop(unsafe { Box::from_raw(text) });
    answer.text = std::ptr::null();
    answer.length = 0;
}

#[cfg(test)]
mod tests {
    use super::*;
    use crate::{Description, Refusal};

    struct Moody;

    impl Plugin for Moody {
        fn describe() -> Description {
            Description { name: "moody", version: "1", about: "For tests." }
        }

        fn parameters() -> Vec<Parameter> {
            vec![Parameter::new("mood", "its mood", "", 0.0..=3.0, 0.0)]
        }

        fn pattern(request: &Request) -> Result<String, Refusal> {
            match request.value("mood") {
                0.0 => Ok("text".to_owned()),
                1.0 => Err(Refusal::new("not today")),
                _ => panic!("a bad mood"),
            }
        }
    }

    fn answered(mood: f64) -> (c_int, String) {
        let values = [mood];
        let request = SeatwrightRequest1 {
            size: size_of::<SeatwrightRequest1>() as u32,
            value_count: 1,
            width_mm: 440.0,
            depth_mm: 400.0,
            values: values.as_ptr(),
        };
        let mut answer = SeatwrightAnswer1 {
            size: size_of::<SeatwrightAnswer1>() as u32,
            reserved: 0,
            text: std::ptr::null(),
            length: 0,
        };
        // SAFETY: both live during the calls, and the answer is released once.
        unsafe {
            let status = draw::<Moody>(&raw const request, &raw mut answer);
            let text = std::slice::from_raw_parts(answer.text.cast::<u8>(), answer.length as usize);
            let text = String::from_utf8(text.to_vec()).expect("the answer is UTF-8");
            release(&raw mut answer);
            assert!(answer.text.is_null());
            (status, text)
        }
    }

    #[test]
    fn answers_refusals_and_panics_come_through() {
        assert_eq!(answered(0.0), (SEATWRIGHT_OK, "text".to_owned()));
        assert_eq!(answered(1.0), (SEATWRIGHT_REFUSED, "not today".to_owned()));
        assert_eq!(answered(2.0), (SEATWRIGHT_FAILED, "a bad mood".to_owned()));
    }

    #[test]
    fn a_description_that_panics_is_null_and_one_that_does_not_is_kept() {
        static BROKEN: OnceLock<Exported> = OnceLock::new();
        assert!(entry(&BROKEN, || panic!("no words")).is_null());
        static RIGHT: OnceLock<Exported> = OnceLock::new();
        let describe = Exported::of::<Moody>;
        let first = entry(&RIGHT, describe);
        assert!(!first.is_null());
        assert_eq!(entry(&RIGHT, describe), first);
        // SAFETY: it is not null, and lives as long as the program.
        let described = unsafe { &*first };
        assert_eq!((described.abi, described.parameter_count), (SEATWRIGHT_ABI, 1));
    }

    #[test]
    fn a_request_of_another_size_is_a_failure() {
        let request = SeatwrightRequest1 {
            size: 8,
            value_count: 0,
            width_mm: 440.0,
            depth_mm: 400.0,
            values: std::ptr::null(),
        };
        let mut answer = SeatwrightAnswer1 {
            size: size_of::<SeatwrightAnswer1>() as u32,
            reserved: 0,
            text: std::ptr::null(),
            length: 0,
        };
        // SAFETY: both live during the call.
        let status = unsafe { draw::<Moody>(&raw const request, &raw mut answer) };
        assert_eq!(status, SEATWRIGHT_FAILED);
        assert!(answer.text.is_null());
    }

    #[test]
    fn null_pointers_are_a_failure() {
        // SAFETY: null is allowed.
        let status = unsafe { draw::<Moody>(std::ptr::null(), std::ptr::null_mut()) };
        assert_eq!(status, SEATWRIGHT_FAILED);
        // SAFETY: null is allowed.
        unsafe { release(std::ptr::null_mut()) };
    }
}
