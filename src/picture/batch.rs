//! Many pictures at once, within bounds.
//!
//! Pictures share a budget of memory: each waits until the memory it needs is free, so that no set of
//! photographs can exhaust the machine. Each picture has a thread of its own, which may wait; scaling, halving
//! and encoding run in rayon's pool, whose tasks never wait. If pictures ran in the pool, a thread waiting for
//! its own tiles could be given another picture and wait for memory that it holds itself.

use std::collections::HashMap;
use std::path::Path;
use std::sync::atomic::{AtomicUsize, Ordering};
use std::sync::{Arc, Mutex, OnceLock, PoisonError};

use crate::budget::Budget;
use crate::cache::{self, CacheKey};
use crate::derive::MemoryNeed;
use crate::fault::Fault;
use crate::plan::{Limits, Plan, Request};
use crate::prepared::{Colour, Prepared};
use crate::source::{PictureFile, guarded};
use crate::store::Store;
use crate::{colour, decode, derive};

/// Prepares every picture asked for and keeps the results in `store`.
///
/// Results are in the order of the requests, and neither they nor the files depend on the number
/// of threads. `progress` is called after each picture with the number done and the total; calls may
/// come from several threads and out of order. A picture asked for twice is made once.
pub fn prepare_all(
    requests: &[Request],
    plan: &Plan,
    store: &Store,
    progress: &(dyn Fn(usize, usize) + Sync),
) -> Vec<Result<Prepared, Fault>> {
    if !requests.is_empty()
        && let Err(fault) = store.prepare()
    {
        return vec![Err(fault); requests.len()];
    }
    let batch = PictureBatch {
        plan,
        store,
        budget: Budget::new(plan.limits.memory),
        seen: Mutex::default(),
    };
    let done = AtomicUsize::new(0);
    in_threads(requests, |request| {
        let result = batch.prepare(request);
        progress(done.fetch_add(1, Ordering::Relaxed) + 1, requests.len());
        result
    })
}

/// The results of `work` on every item, in their order. There are as many threads as the pool has, and
/// each takes the next item that is not yet taken.
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

/// Judges every picture asked for as [`prepare_all`] would, and writes nothing. Entries of the cache
/// were judged when they were made; the other pictures are decoded and dropped. The result for a sound
/// picture is how its colours were understood.
pub fn check_all(
    requests: &[Request],
    plan: &Plan,
    store: &Store,
    progress: &(dyn Fn(usize, usize) + Sync),
) -> Vec<Result<Colour, Fault>> {
    let budget = Budget::new(plan.limits.memory);
    let done = AtomicUsize::new(0);
    in_threads(requests, |request| {
        let result = check(request, plan, store.dir(), &budget);
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
    let file = PictureFile::open(&request.source, plan.limits.pixels)?;
    let key = CacheKey::new(&file, plan, request.largest)?;
    if let Some(found) = cache::find(cache_dir, key) {
        return within_limits(found, plan.limits).map(|found| found.colour);
    }
    guarded(|| {
        let opened = decode::open(&file, plan.limits.pixels)?;
        let need = MemoryNeed::of(&opened, plan, request.largest);
        need.within(plan.limits.memory)?;
        let _share = budget.take(need.bytes);
        let colour = colour::read(&opened.profile).0;
        opened.examine()?;
        Ok(colour)
    })
}

/// The data that all pictures of one batch share.
struct PictureBatch<'a> {
    plan: &'a Plan,
    store: &'a Store,
    budget: Budget,
    /// Each key met so far and, once it is known, its outcome.
    seen: Mutex<HashMap<CacheKey, Outcome>>,
}

type Outcome = Arc<OnceLock<Result<Prepared, Fault>>>;

impl PictureBatch<'_> {
    fn prepare(&self, request: &Request) -> Result<Prepared, Fault> {
        let file = PictureFile::open(&request.source, self.plan.limits.pixels)?;
        let key = CacheKey::new(&file, self.plan, request.largest)?;
        let outcome = {
            let mut seen = self.seen.lock().unwrap_or_else(PoisonError::into_inner);
            Arc::clone(seen.entry(key).or_default())
        };
        outcome
            .get_or_init(|| self.find_or_make(key, &file, request.largest))
            .clone()
    }

    fn find_or_make(
        &self,
        key: CacheKey,
        file: &PictureFile,
        largest: Option<u32>,
    ) -> Result<Prepared, Fault> {
        let store = self.store;
        if let Some(found) = cache::find(store.dir(), key) {
            store.note_used(&key.manifest(store.dir()));
            // The limits are not part of the key, so they are applied to kept pictures too.
            return within_limits(found, self.plan.limits);
        }
        let (rendering, need) = guarded(|| {
            let opened = decode::open(file, self.plan.limits.pixels)?;
            let need = MemoryNeed::of(&opened, self.plan, largest);
            need.within(self.plan.limits.memory)?;
            let _share = self.budget.take(need.bytes);
            let rendering = derive::render(opened, self.plan, largest)?;
            Ok((rendering, need))
        })?;
        file.is_unchanged()?;
        store.note_used(&key.manifest(store.dir()));
        store.keep(cache::bytes(&rendering), |dir| {
            cache::keep(dir, key, &rendering, need)
        })
    }
}

fn within_limits(found: Prepared, limits: Limits) -> Result<Prepared, Fault> {
    let (width, height) = (found.width, found.height);
    if u64::from(width) * u64::from(height) > limits.pixels {
        return Err(Fault::TooManyPixels {
            width,
            height,
            limit: limits.pixels,
        });
    }
    let need = MemoryNeed {
        bytes: found.memory,
        cause: found.cause,
    };
    need.within(limits.memory).map(|()| found)
}
