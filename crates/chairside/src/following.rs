//! Following a file that is written elsewhere: whoever waits is answered when it is another.

use std::sync::Arc;
use std::time::Duration;

use casework::BytesDigest;
use tokio::sync::Notify;
use tokio::task::spawn_blocking;
use tokio::time::{sleep, timeout};

use crate::house::House;

/// How long an editor may take to save: what it writes in parts is read when it is whole.
const SETTLED: Duration = Duration::from_millis(80);
/// How long nobody looks whether the file is another, where nothing is told: of a folder on another
/// machine the system may tell nothing.
const LOOKED_AGAIN: Duration = Duration::from_secs(5);
/// How often it is looked at before the answer is that it is still the same: half of what one answer
/// may take.
const LOOKS: usize = 6;

/// By what a file is known to be the same as when it was seen; none where it cannot be read.
pub(crate) fn mark(house: &House, name: &str) -> Option<String> {
    let bytes = house.shelf().read(name).ok()?;
    Some(format!("{:?}", BytesDigest::of(&bytes)))
}

/// By what a file is known that is another than the one that was seen; none where it is the same.
pub(crate) async fn changed_by_now(house: Arc<House>, name: String, seen: &str) -> Option<String> {
    // A file that is being replaced is not there for a moment.
    let now = spawn_blocking(move || mark(&house, &name)).await.ok().flatten();
    now.filter(|now| *now != seen)
}

/// Waits until a file is another than the one that was seen, and says by what it is known; none where
/// it stays the same for long. Nothing is watched any more when nobody waits.
pub(crate) async fn changed(house: Arc<House>, name: String, seen: String) -> Option<String> {
    let told = Arc::new(Notify::new());
    let (own, tell) = (Arc::clone(&house), Arc::clone(&told));
    let watched = name.clone();
    let watch = move || own.shelf().watch(&watched, Box::new(move || tell.notify_one()));
    let _watch = spawn_blocking(watch).await.ok()?;
    for _ in 0..LOOKS {
        let now = changed_by_now(Arc::clone(&house), name.clone(), &seen).await;
        if now.is_some() {
            return now;
        }
        if timeout(LOOKED_AGAIN, told.notified()).await.is_ok() {
            sleep(SETTLED).await;
        }
    }
    None
}
