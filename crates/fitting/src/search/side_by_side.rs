//! Independent work on two cores, with the answers in the order of the questions.

use std::sync::atomic::{AtomicUsize, Ordering};

/// Answers each question on whichever of two threads comes free. Neither the answers nor their order
/// depend on how the threads run.
pub(crate) fn side_by_side<Q: Sync, A: Send>(
    questions: &[Q],
    answer: impl Fn(&Q) -> A + Sync,
) -> Vec<A> {
    beside(|| (), questions, answer).1
}

/// Does one thing that takes long, and answers questions beside it, and on its thread once it is done.
pub(crate) fn beside<T, Q: Sync, A: Send>(
    long: impl FnOnce() -> T,
    questions: &[Q],
    answer: impl Fn(&Q) -> A + Sync,
) -> (T, Vec<A>) {
    let next = AtomicUsize::new(0);
    let some = || -> Vec<(usize, A)> {
        let taken = std::iter::repeat_with(|| next.fetch_add(1, Ordering::Relaxed));
        let asked = taken.map_while(|at| Some((at, questions.get(at)?)));
        asked.map(|(at, question)| (at, answer(question))).collect()
    };
    let ((done, mut answers), others) = both(|| (long(), some()), some);
    answers.extend(others);
    answers.sort_unstable_by_key(|(at, _)| *at);
    (done, answers.into_iter().map(|(_, answer)| answer).collect())
}

/// Whether there are processors for two things at once.
pub(crate) fn has_processors() -> bool {
    std::thread::available_parallelism().is_ok_and(|count| count.get() > 1)
}

/// Does two things at once, the second on a thread of its own.
pub(crate) fn both<A, B: Send>(
    first: impl FnOnce() -> A,
    second: impl FnOnce() -> B + Send,
) -> (A, B) {
    std::thread::scope(|scope| {
        let second = scope.spawn(second);
        let first = first();
        // A panic there is a panic here.
        (first, second.join().unwrap_or_else(|panic| std::panic::resume_unwind(panic)))
    })
}

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn answers_come_in_the_order_of_the_questions() {
        for n in 0..7 {
            let questions: Vec<usize> = (0..n).collect();
            assert_eq!(
                side_by_side(&questions, |at| 2 * at),
                (0..n).map(|at| 2 * at).collect::<Vec<_>>()
            );
        }
    }

    #[test]
    fn questions_are_answered_beside_what_takes_long() {
        let (told, heard) = std::sync::mpsc::channel::<usize>();
        let wait = std::time::Duration::from_secs(60);
        let long =
            || -> usize { std::iter::from_fn(|| heard.recv_timeout(wait).ok()).take(3).sum() };
        let (sum, answers) = beside(long, &[1, 2, 3], |at| {
            told.send(*at).expect("somebody hears");
            10 * at
        });
        assert_eq!((sum, answers), (6, vec![10, 20, 30]));
    }

    #[test]
    fn a_question_that_takes_long_leaves_the_others_to_the_other_thread() {
        let (told, heard) = std::sync::mpsc::channel::<usize>();
        let heard = std::sync::Mutex::new(heard);
        // The first is answered once all others are, or when nobody would wait any longer.
        let wait = std::time::Duration::from_secs(60);
        let answers = side_by_side(&[0, 1, 2, 3, 4], |at| match at {
            0 => {
                let heard = heard.lock().expect("no panic");
                std::iter::from_fn(|| heard.recv_timeout(wait).ok()).take(4).sum()
            }
            other => {
                told.send(*other).expect("somebody hears");
                *other
            }
        });
        assert_eq!(answers, [10, 1, 2, 3, 4]);
    }
}
