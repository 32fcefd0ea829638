//! The newest reading, shared by the threads that answer browsers.

use std::sync::{Arc, Condvar, Mutex, PoisonError};
use std::time::Duration;

use super::served::Served;

/// How often a waiting thread checks whether its answer is still wanted.
const CHECK_EVERY: Duration = Duration::from_secs(1);

/// Holds what is served now; threads take it, or wait for the next.
pub(super) struct Latest {
    served: Mutex<Arc<Served>>,
    replaced: Condvar,
}

impl Latest {
    /// Begins with the first reading.
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

    /// Serves the next reading, and wakes the threads that wait for it.
    pub(super) fn replace(&self, next: Served) {
        *self.served.lock().unwrap_or_else(PoisonError::into_inner) = Arc::new(next);
        self.replaced.notify_all();
    }

    /// Waits for a reading with a higher number than `number`; `None` once `is_unwanted` is true, which is
    /// checked every second.
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
