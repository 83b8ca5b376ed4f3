//! The contract between Seatwright and a plugin, version 1: C types and nothing else.
//!
//! A plugin is a shared library that exports one function, [`SYMBOL`], of type
//! [`SeatwrightEntry`]. It returns a description that lives as long as the library; by its
//! pointers the host asks for a pattern, and gets the text of a layout file in millimetres for
//! one size, which is read by the same parser as any layout file. A plugin in C needs only
//! `printf`.
//!
//! **Later versions.** A structure of this version is never changed, and neither is its name. A
//! later version has new structures with a new number; the first two fields of every description
//! are its version and its size, for ever. A host reads the version before anything else.
//!
//! **Threads.** The host calls one function at a time, always from the same thread.
//!
//! **Unwinding.** No panic and no exception may leave a function.
//!
//! **Numbers in text** have a decimal point. A process starts with the locale `C`, in which
//! `printf` writes one; a plugin that sets another locale must set it back.
#![no_std]

use core::ffi::{c_char, c_int};

/// The name of the one exported function, with the zero at its end.
pub const SYMBOL: &[u8] = b"seatwright_plugin\0";

/// The version of this contract.
pub const SEATWRIGHT_ABI: u32 = 1;

/// The answer holds a layout's text.
pub const SEATWRIGHT_OK: c_int = 0;
/// The request cannot be met, and the answer says why: a matter of the person who asked.
pub const SEATWRIGHT_REFUSED: c_int = 1;
/// The plugin failed, and the answer may say why: a matter of the plugin's author.
pub const SEATWRIGHT_FAILED: c_int = 2;

/// A parameter that is bound to no measure of the client.
pub const SEATWRIGHT_NO_MEASURE: u32 = 0;
/// Between the lowest points of the ischial tuberosities.
pub const SEATWRIGHT_SEAT_BONE_SPACING: u32 = 1;
/// Back of the buttock to the back of the knee, on the client's left.
pub const SEATWRIGHT_THIGH_DEPTH_LEFT: u32 = 2;
/// Back of the buttock to the back of the knee, on the client's right.
pub const SEATWRIGHT_THIGH_DEPTH_RIGHT: u32 = 3;
/// Greatest width of hips or thighs.
pub const SEATWRIGHT_HIP_WIDTH: u32 = 4;
/// Between the outsides of the trochanters.
pub const SEATWRIGHT_TROCHANTER_WIDTH: u32 = 5;

/// A flag of a parameter: its default is only a start for drawing; for a client it must be given
/// or measured.
pub const SEATWRIGHT_MUST_BE_GIVEN: u32 = 1;

/// A parameter of a plugin's layout. All texts are UTF-8 with a zero at the end and live as long
/// as the library.
#[repr(C)]
#[derive(Clone, Copy, Debug)]
pub struct SeatwrightParameter1 {
    /// What files and the command line call it: lower-case letters, digits, hyphens.
    pub name: *const c_char,
    /// What it means, in a few words.
    pub words: *const c_char,
    /// Its unit, `mm` or empty.
    pub unit: *const c_char,
    /// The least value that is taken.
    pub least: f64,
    /// The greatest value that is taken.
    pub greatest: f64,
    /// The value where none is given, between the two.
    pub standard: f64,
    /// The client's measure by which it may be set, one of the `SEATWRIGHT_...` measures; 0 none.
    pub measure: u32,
    /// Flags, added up.
    pub flags: u32,
}

/// What a plugin is asked for. It and the values are the host's, which keeps them unchanged during
/// the call; they end with it, so a plugin keeps no pointer to them.
#[repr(C)]
#[derive(Clone, Copy, Debug)]
pub struct SeatwrightRequest1 {
    /// Bytes of this structure.
    pub size: u32,
    /// How many values there are: as many as the plugin has parameters.
    pub value_count: u32,
    /// Width of the cushion, mm.
    pub width_mm: f64,
    /// Depth of the cushion, mm.
    pub depth_mm: f64,
    /// A value for each parameter, in order, each finite and within its range; may be null where
    /// there are none.
    pub values: *const f64,
}

/// What a plugin answers. The structure is the host's, zero but for its size before the call; what
/// `text` points at is the plugin's, which keeps it unchanged until the host calls `release` with
/// the same structure.
#[repr(C)]
#[derive(Clone, Copy, Debug)]
pub struct SeatwrightAnswer1 {
    /// Bytes of this structure, written by the host.
    pub size: u32,
    /// Zero.
    pub reserved: u32,
    /// The layout's text in UTF-8, or the reason of a refusal; no zero is needed at its end.
    pub text: *const c_char,
    /// How many bytes `text` has.
    pub length: u64,
}

/// What a plugin is. Returned by the exported function; the plugin's own, unchanged and valid as
/// long as the library is loaded.
#[repr(C)]
#[derive(Clone, Copy, Debug)]
pub struct SeatwrightPlugin1 {
    /// `SEATWRIGHT_ABI` of the contract that it was built for. Read before anything else.
    pub abi: u32,
    /// Bytes of this structure.
    pub size: u32,
    /// What files and the command line call it: lower-case letters, digits, hyphens.
    pub name: *const c_char,
    /// The plugin's own version: 1 to 32 letters, digits or signs of ASCII without spaces. It is
    /// printed with the pattern.
    pub version: *const c_char,
    /// Whom its layout suits, in a sentence.
    pub about: *const c_char,
    /// How many parameters there are.
    pub parameter_count: u32,
    /// Bytes of one parameter's structure.
    pub parameter_size: u32,
    /// The parameters; may be null where there are none.
    pub parameters: *const SeatwrightParameter1,
    /// Draws a pattern: fills in `answer` and returns one of the `SEATWRIGHT_...` results.
    ///
    /// Ownership: both structures are the host's; the text becomes the plugin's debt, see
    /// `release`. Lifetime: both pointers hold during the call only, and neither is null. Thread:
    /// the one that called the exported function. Failure: `SEATWRIGHT_REFUSED` with the reason
    /// as text, `SEATWRIGHT_FAILED` with the reason or with null; any other number is taken for
    /// `SEATWRIGHT_FAILED`. Whatever it returns, `release` is called once afterwards.
    pub pattern: Option<
        unsafe extern "C" fn(
            request: *const SeatwrightRequest1,
            answer: *mut SeatwrightAnswer1,
        ) -> c_int,
    >,
    /// Frees what `answer->text` leads to; does nothing where that is null.
    ///
    /// Ownership: the text goes back to the plugin, the structure stays the host's. Lifetime: the
    /// pointer holds during the call only, and is not null. Thread: that of `pattern`. Failure:
    /// none; it cannot fail.
    pub release: Option<unsafe extern "C" fn(answer: *mut SeatwrightAnswer1)>,
}

/// The type of the exported function, `seatwright_plugin`.
///
/// Ownership and lifetime: it returns the plugin's own description, valid as long as the library is
/// loaded. Thread: any one, the same for all calls. Failure: null, where the plugin cannot describe
/// itself. It may be called more than once, and returns the same each time.
pub type SeatwrightEntry = unsafe extern "C" fn() -> *const SeatwrightPlugin1;
