//! Independent work on two cores, with the answers in the order of the questions.

/// Answers each question, half of them on a thread of its own. Neither the answers nor their order
/// depend on how the threads run.
pub(crate) fn side_by_side<Q: Sync, A: Send>(
    questions: &[Q],
    answer: impl Fn(&Q) -> A + Sync,
) -> Vec<A> {
    let (first, second) = questions.split_at(questions.len().div_ceil(2));
    std::thread::scope(|scope| {
        let second = scope.spawn(|| second.iter().map(&answer).collect::<Vec<A>>());
        let mut answers: Vec<A> = first.iter().map(&answer).collect();
        // A panic there is a panic here.
        answers.extend(second.join().unwrap_or_else(|panic| std::panic::resume_unwind(panic)));
        answers
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
}
