//! Independent work on all the threads that there are; the order of what is made does not depend on
//! them.

use std::sync::atomic::{AtomicUsize, Ordering};
use std::thread;

/// Returns what is made of each item, in the order of the items.
pub(crate) fn side_by_side<T: Sync, R: Send>(items: &[T], work: impl Fn(&T) -> R + Sync) -> Vec<R> {
    let next = AtomicUsize::new(0);
    let worker = || {
        let mut made = Vec::new();
        loop {
            let at = next.fetch_add(1, Ordering::Relaxed);
            let Some(item) = items.get(at) else { return made };
            made.push((at, work(item)));
        }
    };
    let threads = thread::available_parallelism().map_or(1, usize::from).min(items.len());
    let mut made = thread::scope(|scope| {
        let workers: Vec<_> = (0..threads).map(|_| scope.spawn(worker)).collect();
        let joined = workers.into_iter().map(|it| it.join());
        joined
            .flat_map(|it| it.unwrap_or_else(|panic| std::panic::resume_unwind(panic)))
            .collect::<Vec<_>>()
    });
    made.sort_by_key(|(at, _)| *at);
    made.into_iter().map(|(_, made)| made).collect()
}

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn what_is_made_keeps_the_order_of_the_items() {
        let items: Vec<usize> = (0..200).collect();
        // The first take longest.
        let reversed = |item: &usize| "ab".repeat((200 - item) * 500).chars().rev().count();
        let alone: Vec<usize> = items.iter().map(reversed).collect();
        assert_eq!(side_by_side(&items, reversed), alone);
        assert!(side_by_side(&[], reversed).is_empty());
    }
}
