//! Windows in which counts are tried: each has a case that is kept ready, and the last answer.

use std::collections::BTreeMap;
use std::sync::{Arc, Condvar, Mutex, MutexGuard, PoisonError};
use std::time::Duration;

use case::Plan;
use casework::{LiveAnswer, LiveCase, OpenCase, Revision, Turns, WorkError};

/// The most windows that are kept: the one that was used longest ago makes room. Enough for twenty
/// pages in use of which each was loaded anew: nobody tells when a page is closed.
const MOST_WINDOWS: usize = 48;
/// How long an answer is waited for.
const LONGEST: Duration = Duration::from_secs(20);

/// All windows.
#[derive(Default)]
pub(crate) struct Windows(Mutex<Kept>);

#[derive(Default)]
struct Kept {
    /// Counts the uses, by which the order of windows is known.
    uses: u64,
    windows: BTreeMap<String, (u64, Arc<Window>)>,
}

/// One window.
pub(crate) struct Window {
    /// The client's file that it is about.
    pub(crate) name: String,
    /// The case.
    pub(crate) case: Arc<OpenCase>,
    live: LiveCase,
    state: Mutex<State>,
    changed: Condvar,
    /// The number of the last touch that was asked about.
    touched: Mutex<u64>,
}

#[derive(Default)]
struct State {
    newest: Option<Revision>,
    answer: Option<LiveAnswer>,
    ended: bool,
    /// The plan that was made in this window.
    plan: Option<Arc<Plan>>,
}

/// What became of a question.
pub(crate) enum Told {
    /// Its answer.
    Answer(Box<LiveAnswer>),
    /// Newer counts took its place.
    Overtaken,
    /// The work ended, or takes too long.
    Ended,
}

impl State {
    fn told(&self, revision: u64, last: bool) -> Option<Told> {
        if self.newest.is_some_and(|newest| newest.number() > revision) {
            return Some(Told::Overtaken);
        }
        let own = self.answer.as_ref().filter(|own| own.revision.number() == revision);
        match own.filter(|own| !last || own.is_last()) {
            Some(own) => Some(Told::Answer(Box::new(own.clone()))),
            None => self.ended.then_some(Told::Ended),
        }
    }
}

impl Windows {
    fn kept(&self) -> MutexGuard<'_, Kept> {
        self.0.lock().unwrap_or_else(PoisonError::into_inner)
    }

    /// The window of an id.
    pub(crate) fn get(&self, id: &str) -> Option<Arc<Window>> {
        let mut kept = self.kept();
        kept.uses += 1;
        let uses = kept.uses;
        let own = kept.windows.get_mut(id)?;
        own.0 = uses;
        Some(Arc::clone(&own.1))
    }

    /// Keeps a window under an id; returns the one that is kept there. Where one of the same client is
    /// already, as when two questions of a page open its window again at once, that stays.
    pub(crate) fn put(&self, id: String, window: Arc<Window>) -> Arc<Window> {
        let mut kept = self.kept();
        kept.uses += 1;
        let uses = kept.uses;
        if let Some((used, own)) = kept.windows.get_mut(&id).filter(|own| own.1.name == window.name)
        {
            *used = uses;
            window.live.end();
            return Arc::clone(own);
        }
        if let Some((_, other)) = kept.windows.insert(id, (uses, Arc::clone(&window))) {
            other.live.end();
        }
        if kept.windows.len() > MOST_WINDOWS {
            let oldest = kept.windows.iter().min_by_key(|own| own.1.0).map(|own| own.0.clone());
            if let Some((_, oldest)) = oldest.and_then(|id| kept.windows.remove(&id)) {
                oldest.live.end();
            }
        }
        window
    }
}

impl Window {
    /// Opens a window on a case, which searches when it has a turn, and a reader of its answers.
    ///
    /// # Errors
    ///
    /// As [`LiveCase::start`].
    pub(crate) fn open(
        name: &str,
        case: OpenCase,
        turns: &Arc<Turns>,
    ) -> Result<Arc<Self>, WorkError> {
        let case = Arc::new(case);
        let live = LiveCase::start(Arc::clone(&case), Arc::clone(turns))?;
        let (state, changed) = (Mutex::default(), Condvar::new());
        let (name, touched) = (name.to_owned(), Mutex::default());
        let own = Arc::new(Self { name, case, live, state, changed, touched });
        let reader = Arc::clone(&own);
        let started = std::thread::Builder::new().spawn(move || reader.read());
        started.map_err(|error| {
            WorkError::new(casework::Whose::Keeper, case::Trouble::NoThread(error.to_string()))
        })?;
        Ok(own)
    }

    fn state(&self) -> MutexGuard<'_, State> {
        self.state.lock().unwrap_or_else(PoisonError::into_inner)
    }

    /// Takes answers as they come, so that none is taken by who did not ask for it.
    fn read(&self) {
        while let Some(answer) = self.live.next_answer() {
            self.state().answer = Some(answer);
            self.changed.notify_all();
        }
        self.state().ended = true;
        self.changed.notify_all();
    }

    /// Asks what counts would do.
    pub(crate) fn ask(&self, counts: &[u32]) -> Result<Revision, WorkError> {
        // Nothing is held while asking: whoever waits for a turn is asked whether it is overtaken.
        let revision = self.live.ask(counts)?;
        let mut state = self.state();
        state.newest = state.newest.max(Some(revision));
        drop(state);
        self.changed.notify_all();
        Ok(revision)
    }

    /// The number of the last touch that was asked about; the next one of a page has a greater one.
    pub(crate) fn last_touch(&self) -> u64 {
        *self.touched()
    }

    fn touched(&self) -> MutexGuard<'_, u64> {
        self.touched.lock().unwrap_or_else(PoisonError::into_inner)
    }

    /// Asks what the counts of a touch would do, by its number; none where a later touch was asked about
    /// already. Each comes on a connection of its own, and a browser that gave one up may have sent it.
    pub(crate) fn ask_in_order(
        &self,
        counts: &[u32],
        touch: u64,
    ) -> Result<Option<Revision>, WorkError> {
        // Held while asking, or a later touch may come between; nobody who is asked meanwhile takes it.
        let mut last = self.touched();
        if touch < *last {
            return Ok(None);
        }
        *last = touch;
        self.ask(counts).map(Some)
    }

    /// Whether newer counts than these were asked about.
    pub(crate) fn is_overtaken(&self, revision: u64) -> bool {
        self.state().newest.is_some_and(|newest| newest.number() > revision)
    }

    /// What is known by now of counts that were asked about: the first answer that comes, or the last
    /// that there is; none as long as that is not there.
    pub(crate) fn told(&self, revision: u64, last: bool) -> Option<Told> {
        self.state().told(revision, last)
    }

    /// Waits for that.
    pub(crate) fn wait(&self, revision: u64, last: bool) -> Told {
        let mut state = self.state();
        loop {
            if let Some(told) = state.told(revision, last) {
                return told;
            }
            let waited = self.changed.wait_timeout(state, LONGEST);
            let (next, time) = waited.unwrap_or_else(PoisonError::into_inner);
            if time.timed_out() {
                return Told::Ended;
            }
            state = next;
        }
    }

    /// The plan that was made in this window.
    pub(crate) fn plan(&self) -> Option<Arc<Plan>> {
        self.state().plan.clone()
    }

    pub(crate) fn set_plan(&self, plan: Arc<Plan>) {
        self.state().plan = Some(plan);
    }
}
