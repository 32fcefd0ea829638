//! The newest reading, for the threads that answer browsers: read at once, or waited for.

use std::sync::{Arc, Condvar, Mutex, PoisonError};
use std::time::Duration;

use super::Served;

/// How often a wait asks whether it is still wanted.
const CHECK_EVERY: Duration = Duration::from_secs(1);

/// What is served now.
pub(super) struct Latest {
    served: Mutex<Arc<Served>>,
    replaced: Condvar,
}

impl Latest {
    /// Serves the first reading.
    pub(super) fn new(first: Served) -> Latest {
        Latest {
            served: Mutex::new(Arc::new(first)),
            replaced: Condvar::new(),
        }
    }

    /// What is served now.
    pub(super) fn get(&self) -> Arc<Served> {
        Arc::clone(&self.served.lock().unwrap_or_else(PoisonError::into_inner))
    }

    /// Serves another reading, and wakes those that wait for it.
    pub(super) fn replace(&self, next: Served) {
        *self.served.lock().unwrap_or_else(PoisonError::into_inner) = Arc::new(next);
        self.replaced.notify_all();
    }

    /// Waits for a reading with a higher number than `number`; `None` once `is_unwanted`, which is asked
    /// every second.
    pub(super) fn after(&self, number: u64, is_unwanted: impl Fn() -> bool) -> Option<Arc<Served>> {
        let mut served = self.served.lock().unwrap_or_else(PoisonError::into_inner);
        while served.number <= number {
            let (again, _) = self
                .replaced
                .wait_timeout(served, CHECK_EVERY)
                .unwrap_or_else(PoisonError::into_inner);
            served = again;
            if served.number <= number && is_unwanted() {
                return None;
            }
        }
        Some(Arc::clone(&served))
    }
}
