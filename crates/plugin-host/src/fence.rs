//! What a child may no longer do, from before its plugin is loaded.
//!
//! On Linux it gains no rights from programs that it starts, such as `sudo`, and where the kernel
//! has landlock it makes, changes and removes files in its scratch folder only, opens no network
//! connection, and sends no signal out of its own group. It may still read what the user may read.

use std::io;

/// Gives up for this process, and for all that it starts, what drawing a layout does not need.
#[cfg(target_os = "linux")]
#[expect(unsafe_code, reason = "the standard library has no such call")]
pub(crate) fn fence() -> io::Result<()> {
    // SAFETY: a plain call without pointers.
    if unsafe { libc::prctl(libc::PR_SET_NO_NEW_PRIVS, 1, 0, 0, 0) } != 0 {
        return Err(io::Error::last_os_error());
    }
    landlocked().map_err(io::Error::other)
}

#[cfg(not(target_os = "linux"))]
pub(crate) fn fence() -> io::Result<()> {
    Ok(())
}

/// Takes as much of this as the kernel has, which may be nothing.
#[cfg(target_os = "linux")]
fn landlocked() -> Result<(), landlock::RulesetError> {
    use landlock::{
        ABI, Access, AccessFs, AccessNet, PathBeneath, PathFd, Ruleset, RulesetAttr,
        RulesetCreatedAttr, Scope,
    };
    let abi = ABI::V6;
    let writing = AccessFs::from_write(abi);
    let mut rules = Ruleset::default()
        .handle_access(writing)?
        .handle_access(AccessNet::from_all(abi))?
        .scope(Scope::from_all(abi))?
        .create()?;
    // The child was started in its scratch folder.
    if let Ok(scratch) = PathFd::new(".") {
        rules = rules.add_rule(PathBeneath::new(scratch, writing))?;
    }
    rules.restrict_self().map(drop)
}
