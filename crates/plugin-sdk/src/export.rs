//! From the trait to C: one guard around every call.

use std::ffi::{CString, c_int};
use std::panic::{AssertUnwindSafe, catch_unwind};

use plugin_abi::{
    SEATWRIGHT_ABI, SEATWRIGHT_FAILED, SEATWRIGHT_MUST_BE_GIVEN, SEATWRIGHT_NO_MEASURE,
    SEATWRIGHT_OK, SEATWRIGHT_REFUSED, SeatwrightAnswer1, SeatwrightParameter1, SeatwrightPlugin1,
    SeatwrightRequest1,
};

use crate::plugin::{Parameter, Plugin, Request};

type Draw = unsafe extern "C" fn(*const SeatwrightRequest1, *mut SeatwrightAnswer1) -> c_int;
type Release = unsafe extern "C" fn(*mut SeatwrightAnswer1);

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
    pub fn of<P: Plugin>(pattern: Draw, release: Release) -> Self {
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
                pattern: Some(pattern),
                release: Some(release),
            },
        }
    }

    /// The description, for the host.
    #[must_use]
    pub fn entry(&self) -> *const SeatwrightPlugin1 {
        &raw const self.entry
    }
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

/// Draws a pattern for the host. Called by the macro.
///
/// # Safety
///
/// Both pointers must be null or valid during the call, as the contract says.
pub unsafe fn draw<P: Plugin>(
    request: *const SeatwrightRequest1,
    answer: *mut SeatwrightAnswer1,
) -> c_int {
    // SAFETY: null or valid, as the caller promises.
    let (request, answer) = unsafe { (request.as_ref(), answer.as_mut()) };
    let (Some(request), Some(answer)) = (request, answer) else { return SEATWRIGHT_FAILED };
    let drawn = catch_unwind(AssertUnwindSafe(|| {
        let parameters = P::parameters();
        if request.value_count as usize != parameters.len() || request.values.is_null() {
            return (SEATWRIGHT_FAILED, "the host gave another number of values".to_owned());
        }
        // SAFETY: the host gives as many values as it says.
        let values =
            unsafe { std::slice::from_raw_parts(request.values, request.value_count as usize) };
        let named = parameters.iter().map(|parameter| parameter.name).zip(values.iter().copied());
        let request = Request {
            width_mm: request.width_mm,
            depth_mm: request.depth_mm,
            values: named.collect(),
        };
        match P::pattern(&request) {
            Ok(text) => (SEATWRIGHT_OK, text),
            Err(refusal) => (SEATWRIGHT_REFUSED, refusal.to_string()),
        }
    }));
    let (status, text) = drawn.unwrap_or_else(|panic| (SEATWRIGHT_FAILED, words_of(&*panic)));
    let text = Box::leak(text.into_bytes().into_boxed_slice());
    answer.text = text.as_ptr().cast();
    answer.length = text.len() as u64;
    status
}

/// What a panic said.
fn words_of(panic: &(dyn std::any::Any + Send)) -> String {
    let said = panic.downcast_ref::<&str>().map(|said| (*said).to_owned());
    let said = said.or_else(|| panic.downcast_ref::<String>().cloned());
    said.unwrap_or_else(|| "it panicked".to_owned())
}

/// Frees an answer. Called by the macro's exports.
///
/// # Safety
///
/// `answer` must be null or what [`draw`] filled in, not yet released.
pub unsafe extern "C" fn release(answer: *mut SeatwrightAnswer1) {
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
    fn null_pointers_are_a_failure() {
        // SAFETY: null is allowed.
        let status = unsafe { draw::<Moody>(std::ptr::null(), std::ptr::null_mut()) };
        assert_eq!(status, SEATWRIGHT_FAILED);
        // SAFETY: null is allowed.
        unsafe { release(std::ptr::null_mut()) };
    }
}
