//! Many pictures at once, within bounds.
//!
//! Pictures share a budget of memory: one waits until what it will need is free, so that no set of
//! photographs can exhaust the machine. Each is followed by a thread that does nothing else, so that
//! waiting holds nobody up but itself; what can be shared out (scaling, halving, encoding) goes to the
//! pool, whose work never waits. Were the pictures work of the pool too, a thread waiting for its own
//! tiles could be handed another picture, and wait for memory that it holds itself.

use std::collections::HashMap;
use std::fs::File;
use std::io::{ErrorKind, Read};
use std::panic::{AssertUnwindSafe, catch_unwind};
use std::path::Path;
use std::sync::atomic::{AtomicUsize, Ordering};
use std::sync::{Arc, Condvar, Mutex, OnceLock, PoisonError};

use super::cache::{self, Key};
use super::derive::Extent;
use super::{Colour, Fault, Plan, Prepared, Request, colour, decode, derive};

/// Bytes that pictures may take in memory at any one time, the files themselves not counted. Two
/// photographs of 24 million pixels fit, one of 60 million leaves room for little else, and one that
/// needs more than all of it is prepared alone.
pub(super) const BUDGET: u64 = 320 << 20;

/// Prepares every picture asked for and keeps the results under `cache_dir`, which is made if need
/// be.
///
/// Results stand in the order of the requests, and neither they nor the files depend on the number
/// of threads. `progress` is told how many pictures are done, and of how many, after each; calls may
/// come from several threads and out of order. A picture asked for twice is made once.
pub fn prepare_all(
    requests: &[Request],
    plan: &Plan,
    cache_dir: &Path,
    progress: &(dyn Fn(usize, usize) + Sync),
) -> Vec<Result<Prepared, Fault>> {
    if !requests.is_empty()
        && let Err(fault) = cache::make_folder(cache_dir)
    {
        return vec![Err(fault); requests.len()];
    }
    let work = Work {
        plan,
        cache_dir,
        budget: Budget::new(BUDGET),
        seen: Mutex::default(),
    };
    let done = AtomicUsize::new(0);
    in_threads(requests, |request| {
        let result = work.prepare(request);
        progress(done.fetch_add(1, Ordering::Relaxed) + 1, requests.len());
        result
    })
}

/// What `work` makes of every item, in their order: as many threads as the pool has, each taking the
/// next item that nobody has taken.
fn in_threads<T: Sync, R: Send + Sync>(items: &[T], work: impl Fn(&T) -> R + Sync) -> Vec<R> {
    let next = AtomicUsize::new(0);
    let results: Vec<OnceLock<R>> = items.iter().map(|_| OnceLock::new()).collect();
    std::thread::scope(|scope| {
        for _ in 0..rayon::current_num_threads().min(items.len()) {
            scope.spawn(|| {
                let taken = || {
                    let place = next.fetch_add(1, Ordering::Relaxed);
                    Some((items.get(place)?, results.get(place)?))
                };
                while let Some((item, result)) = taken() {
                    result.get_or_init(|| work(item));
                }
            });
        }
    });
    // Leaving the scope has waited for all of them.
    results
        .into_iter()
        .filter_map(OnceLock::into_inner)
        .collect()
}

/// Judges every picture asked for as [`prepare_all`] would, and writes nothing. What the cache holds
/// was judged when it was made; the others are decoded and forgotten. What is known of a sound one is
/// how its colours were understood.
pub fn check_all(
    requests: &[Request],
    plan: &Plan,
    cache_dir: &Path,
    progress: &(dyn Fn(usize, usize) + Sync),
) -> Vec<Result<Colour, Fault>> {
    let budget = Budget::new(BUDGET);
    let done = AtomicUsize::new(0);
    in_threads(requests, |request| {
        let result = check(request, plan, cache_dir, &budget);
        progress(done.fetch_add(1, Ordering::Relaxed) + 1, requests.len());
        result
    })
}

fn check(
    request: &Request,
    plan: &Plan,
    cache_dir: &Path,
    budget: &Budget,
) -> Result<Colour, Fault> {
    let bytes = read(&request.source, plan.pixel_limit)?;
    if let Some(found) = cache::find(cache_dir, Key::new(&bytes, plan, request.largest)) {
        return within_limit(found, plan.pixel_limit).map(|found| found.colour);
    }
    guarded(|| {
        let opened = decode::open(&bytes, plan.pixel_limit)?;
        let _share = budget.take(opened.memory);
        let master = opened.decode()?;
        Ok(colour::read(master.profile.as_deref()).0)
    })
}

/// Runs decoders, which are other people's code reading hostile bytes. Where one gives up by
/// panicking, that picture is at fault, and the catalogue goes on.
pub(super) fn guarded<T>(decode: impl FnOnce() -> Result<T, Fault>) -> Result<T, Fault> {
    catch_unwind(AssertUnwindSafe(decode))
        .unwrap_or_else(|_| Err(Fault::Damaged("its content makes no sense".into())))
}

/// What all pictures of one batch share.
struct Work<'a> {
    plan: &'a Plan,
    cache_dir: &'a Path,
    budget: Budget,
    /// Each key met so far and, once it is known, what came of it.
    seen: Mutex<HashMap<Key, Outcome>>,
}

type Outcome = Arc<OnceLock<Result<Prepared, Fault>>>;

impl Work<'_> {
    fn prepare(&self, request: &Request) -> Result<Prepared, Fault> {
        let bytes = read(&request.source, self.plan.pixel_limit)?;
        let key = Key::new(&bytes, self.plan, request.largest);
        let outcome = {
            let mut seen = self.seen.lock().unwrap_or_else(PoisonError::into_inner);
            Arc::clone(seen.entry(key).or_default())
        };
        outcome
            .get_or_init(|| self.find_or_make(key, bytes, request.largest))
            .clone()
    }

    fn find_or_make(
        &self,
        key: Key,
        bytes: Vec<u8>,
        largest: Option<u32>,
    ) -> Result<Prepared, Fault> {
        if let Some(found) = cache::find(self.cache_dir, key) {
            // The limit is no part of the key: what it decides must hold for kept pictures too.
            return within_limit(found, self.plan.pixel_limit);
        }
        let rendering = guarded(|| {
            let opened = decode::open(&bytes, self.plan.pixel_limit)?;
            let stored = Extent {
                width: opened.width,
                height: opened.height,
            };
            let needed = derive::memory(stored, opened.memory, self.plan, largest);
            let _share = self.budget.take(needed);
            let master = opened.decode()?;
            drop(bytes);
            derive::render(master, self.plan, largest)
        })?;
        cache::keep(self.cache_dir, key, &rendering)
    }
}

fn within_limit(found: Prepared, limit: u64) -> Result<Prepared, Fault> {
    let (width, height) = (found.width, found.height);
    if u64::from(width) * u64::from(height) > limit {
        return Err(Fault::TooManyPixels {
            width,
            height,
            limit,
        });
    }
    Ok(found)
}

/// The bytes of a file that may be a picture within the limit.
pub(super) fn read(path: &Path, pixel_limit: u64) -> Result<Vec<u8>, Fault> {
    let refused = |error: std::io::Error| match error.kind() {
        ErrorKind::NotFound | ErrorKind::NotADirectory => Fault::Missing,
        _ => Fault::Unopened(error.to_string()),
    };
    // Asked before opening: opening a pipe would wait for whoever writes into it.
    let about = std::fs::metadata(path).map_err(refused)?;
    if !about.is_file() {
        return Err(Fault::NotAFile);
    }
    // Uncompressed RGBA of 16 bits takes 8 bytes a pixel; the rest is for what else files carry.
    let limit = pixel_limit.saturating_mul(8).saturating_add(64 << 20);
    if about.len() > limit {
        return Err(Fault::TooManyBytes {
            bytes: about.len(),
            limit,
        });
    }
    let mut bytes = Vec::with_capacity(usize::try_from(about.len()).unwrap_or(0));
    File::open(path)
        .and_then(|file| file.take(limit).read_to_end(&mut bytes))
        .map_err(refused)?;
    Ok(bytes)
}

/// Memory that pictures share.
pub(super) struct Budget {
    total: u64,
    free: Mutex<u64>,
    freed: Condvar,
}

impl Budget {
    pub(super) fn new(total: u64) -> Self {
        Self {
            total,
            free: Mutex::new(total),
            freed: Condvar::new(),
        }
    }

    /// Waits until `bytes` are free and takes them until the share is dropped. Who asks for more
    /// than there is gets all of it.
    pub(super) fn take(&self, bytes: u64) -> Share<'_> {
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
pub(super) struct Share<'a> {
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
