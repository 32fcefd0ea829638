//! Memory that pictures share: a thread that needs some waits until it is free.

use std::sync::{Condvar, Mutex, PoisonError};

/// Memory that pictures share.
pub struct Budget {
    total: u64,
    free: Mutex<u64>,
    freed: Condvar,
}

impl Budget {
    /// A budget of `total` bytes.
    pub fn new(total: u64) -> Self {
        Self {
            total,
            free: Mutex::new(total),
            freed: Condvar::new(),
        }
    }

    /// Waits until `bytes` are free and takes them until the share is dropped. A request for more
    /// than the total takes the total.
    pub fn take(&self, bytes: u64) -> Share<'_> {
        let bytes = bytes.min(self.total);
        let mut free = self.free.lock().unwrap_or_else(PoisonError::into_inner);
        while *free < bytes {
            free = self
                .freed
                .wait(free)
                .unwrap_or_else(PoisonError::into_inner);
        }
        *free -= bytes;
        Share {
            budget: self,
            bytes,
        }
    }
}

/// A part of the budget, given back when dropped.
pub struct Share<'a> {
    budget: &'a Budget,
    bytes: u64,
}

impl Drop for Share<'_> {
    fn drop(&mut self) {
        *self
            .budget
            .free
            .lock()
            .unwrap_or_else(PoisonError::into_inner) += self.bytes;
        self.budget.freed.notify_all();
    }
}

#[cfg(test)]
mod tests {
    use super::*;
    use std::sync::atomic::{AtomicUsize, Ordering};

    #[test]
    fn what_is_in_memory_never_exceeds_the_budget() {
        let budget = Budget::new(250);
        let (held, most) = (AtomicUsize::new(0), AtomicUsize::new(0));
        std::thread::scope(|scope| {
            for thread in 0..4 {
                let (budget, held, most) = (&budget, &held, &most);
                scope.spawn(move || {
                    for _ in 0..50 {
                        // One of the threads asks for more than there is.
                        let bytes = if thread == 0 { 900 } else { 100 };
                        let share = budget.take(bytes);
                        let now = usize::try_from(share.bytes).unwrap();
                        let sum = held.fetch_add(now, Ordering::SeqCst) + now;
                        most.fetch_max(sum, Ordering::SeqCst);
                        std::thread::yield_now();
                        held.fetch_sub(now, Ordering::SeqCst);
                    }
                });
            }
        });
        assert_eq!(most.into_inner(), 250);
        assert_eq!(*budget.free.lock().unwrap(), 250);
    }
}
