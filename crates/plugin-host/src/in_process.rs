//! A plugin loaded into this process: in the child, and where somebody asks for it in words.
//!
//! The contract promises plugins that they are called from one thread. A child has one; in a
//! program that asks from several, [`on_the_one_thread`] does the asking.

#![expect(unsafe_code, reason = "C hands over pointers; each block says why they hold")]

use std::error::Error as _;
use std::path::Path;
use std::sync::mpsc::{Sender, channel};
use std::sync::{LazyLock, Mutex, PoisonError};
use std::thread;

use case::{BadDescription, PluginFaultKind};
use libloading::Library;
use plugin_abi::{
    SEATWRIGHT_OK, SEATWRIGHT_REFUSED, SYMBOL, SeatwrightAnswer1, SeatwrightEntry,
    SeatwrightPlugin1, SeatwrightRequest1,
};

use crate::description::{Description, read};

/// Something to do on the one thread.
type Job = Box<dyn FnOnce() + Send>;

/// Does something with plugins on the one thread of this process that ever calls them, and waits
/// for it.
///
/// # Errors
///
/// Fails where the thread cannot be started, or a plugin has ended it.
pub(crate) fn on_the_one_thread<T: Send + 'static>(
    ask: impl FnOnce() -> Result<T, PluginFaultKind> + Send + 'static,
) -> Result<T, PluginFaultKind> {
    static JOBS: LazyLock<Mutex<Sender<Job>>> = LazyLock::new(|| {
        let (send, jobs) = channel::<Job>();
        // Where it cannot be started nobody listens, and sending says so.
        let _ = thread::Builder::new().spawn(move || jobs.iter().for_each(|job| job()));
        Mutex::new(send)
    });
    let (answer, answered) = channel();
    let job: Job = Box::new(move || {
        // Whoever asked is waiting.
        let _ = answer.send(ask());
    });
    let sent = JOBS.lock().unwrap_or_else(PoisonError::into_inner).send(job);
    sent.map_err(|_| PluginFaultKind::Ended)?;
    answered.recv().unwrap_or(Err(PluginFaultKind::Ended))
}

/// A loaded plugin. The library is never unloaded: threads of its own may still run in it.
pub(crate) struct Loaded {
    entry: *const SeatwrightPlugin1,
    pub(crate) description: Description,
}

impl Loaded {
    pub(crate) fn new(path: &Path) -> Result<Self, PluginFaultKind> {
        // SAFETY: loading runs the library's own start, which is why plugins run in a child.
        let library = unsafe { Library::new(path) };
        let library = library.map_err(|error| {
            let cause = error.source().map_or_else(|| error.to_string(), ToString::to_string);
            PluginFaultKind::NotALibrary(Some(cause))
        })?;
        let library: &'static Library = Box::leak(Box::new(library));
        // SAFETY: a library with this symbol promises the contract.
        let entry = unsafe { library.get::<SeatwrightEntry>(SYMBOL) };
        let entry = entry.map_err(|_| PluginFaultKind::NoEntry)?;
        // SAFETY: as the contract says; the library stays loaded.
        let (entry, description) = unsafe {
            let entry = entry();
            (entry, read(entry)?)
        };
        Ok(Self { entry, description })
    }

    /// Asks for a pattern; the answer is at most `most` bytes.
    pub(crate) fn pattern(
        &self,
        (width_mm, depth_mm): (f64, f64),
        values: &[f64],
        most: usize,
    ) -> Result<String, PluginFaultKind> {
        let request = SeatwrightRequest1 {
            size: size_of::<SeatwrightRequest1>() as u32,
            value_count: values.len() as u32,
            width_mm,
            depth_mm,
            values: values.as_ptr(),
        };
        let mut answer = SeatwrightAnswer1 {
            size: size_of::<SeatwrightAnswer1>() as u32,
            reserved: 0,
            text: std::ptr::null(),
            length: 0,
        };
        // SAFETY: the description was read from this entry, so it is of this version.
        let entry = unsafe { &*self.entry };
        let (Some(pattern), Some(release)) = (entry.pattern, entry.release) else {
            return Err(PluginFaultKind::BadDescription(BadDescription::NoFunction));
        };
        // SAFETY: both structures live during the call.
        let status = unsafe { pattern(&raw const request, &raw mut answer) };
        // SAFETY: the plugin filled the answer in, and it is not yet released.
        let text = unsafe { text(&answer, most) };
        // SAFETY: once, after the call, with the same structure.
        unsafe { release(&raw mut answer) };
        match status {
            SEATWRIGHT_OK => text,
            SEATWRIGHT_REFUSED => Err(PluginFaultKind::Refused(Some(text?))),
            _ => Err(PluginFaultKind::Failed(text.ok())),
        }
    }
}

/// Copies an answer's text.
///
/// # Safety
///
/// Where it is not null, `answer.text` must lead to `answer.length` bytes.
unsafe fn text(answer: &SeatwrightAnswer1, most: usize) -> Result<String, PluginFaultKind> {
    if answer.text.is_null() {
        return Err(PluginFaultKind::NotText);
    }
    let length = usize::try_from(answer.length).unwrap_or(usize::MAX);
    if length > most {
        return Err(PluginFaultKind::TooLong { most });
    }
    // SAFETY: as the caller promises.
    let bytes = unsafe { std::slice::from_raw_parts(answer.text.cast::<u8>(), length) };
    String::from_utf8(bytes.to_vec()).map_err(|_| PluginFaultKind::NotText)
}
