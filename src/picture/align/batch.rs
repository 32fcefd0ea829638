//! Many pairs at once, within the memory that pictures share.
//!
//! Pairs with the same reference are done together, so that it is unpacked once. A thread that waits for
//! memory holds none and starts no tasks of the pool, so no two threads wait for each other.

use std::sync::OnceLock;
use std::sync::atomic::{AtomicUsize, Ordering};

use indexmap::IndexMap;
use keyblock_model::registration::{Aligned, Refusal, Refused, Registration};
use rayon::prelude::*;

use super::cache::{self, CacheKey};
use super::pair::{Photograph, PhotographPair};
use super::subject::Subject;
use super::working::{self, WorkingImage, working};
use super::{align, align_by_hand};
use crate::budget::Budget;
use crate::decode;
use crate::fault::Fault;
use crate::plan::Limits;
use crate::source::{PictureFile, guarded};
use crate::store::Store;

/// The access to the folder of results.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub enum CacheAccess {
    /// Results are read from it and written to it; it is made where it is missing.
    ReadWrite,
    /// Results are only read from it.
    ReadOnly,
}

/// Aligns every pair, or finds its earlier result in `store`. A result that the disk refuses is not kept.
///
/// Results are in the order of the pairs, and do not depend on the number of threads. Each map leads
/// from pixels of the picture to pixels of the reference, both whole, upright and in full size, pixel
/// centres at whole numbers. A picture that is the reference itself is [`Registration::Reference`].
/// `progress` is called after each pair with the number done and the total; calls may come from several
/// threads and out of order.
///
/// # Errors
/// For each pair the [`Fault`] of either file.
pub fn align_all(
    pairs: &[PhotographPair],
    limits: Limits,
    store: &Store,
    access: CacheAccess,
    progress: &(dyn Fn(usize, usize) + Sync),
) -> Vec<Result<Registration, Fault>> {
    let mut groups: IndexMap<String, Vec<usize>> = IndexMap::new();
    for (at, pair) in pairs.iter().enumerate() {
        // The place of a file and the part of it: what one unpacked reference serves.
        let name = format!("{:?}", pair.reference);
        groups.entry(name).or_default().push(at);
    }
    let groups: Vec<Vec<usize>> = groups.into_values().collect();
    let batch = AlignmentBatch {
        limits,
        store,
        access,
        budget: Budget::new(limits.memory),
    };
    let done = AtomicUsize::new(0);
    let by_group: Vec<Vec<(usize, Result<Registration, Fault>)>> = groups
        .par_iter()
        .map(|group| {
            let reference = group
                .first()
                .map(|&at| Reference::new(&batch, &pairs[at].reference));
            group
                .par_iter()
                .filter_map(|&at| {
                    let result = batch.aligned(reference.as_ref()?, &pairs[at]);
                    progress(done.fetch_add(1, Ordering::Relaxed) + 1, pairs.len());
                    Some((at, result))
                })
                .collect()
        })
        .collect();
    let mut results: Vec<(usize, Result<Registration, Fault>)> =
        by_group.into_iter().flatten().collect();
    results.sort_by_key(|(at, _)| *at);
    results.into_iter().map(|(_, result)| result).collect()
}

/// The data that all pairs of one batch share.
struct AlignmentBatch<'a> {
    limits: Limits,
    store: &'a Store,
    access: CacheAccess,
    budget: Budget,
}

/// A reference: hashed at once, unpacked when first needed.
struct Reference<'a> {
    photograph: &'a Photograph,
    hash: Result<blake3::Hash, Fault>,
    ready: OnceLock<Result<Ready, Fault>>,
}

/// A photograph ready to be aligned.
struct Ready {
    working: WorkingImage,
    subject: Subject,
}

impl<'a> Reference<'a> {
    fn new(batch: &AlignmentBatch<'_>, photograph: &'a Photograph) -> Reference<'a> {
        let file = PictureFile::open(&photograph.source, batch.limits.pixels);
        Reference {
            photograph,
            hash: file.and_then(|file| file.hash()),
            ready: OnceLock::new(),
        }
    }

    fn ready(&self, batch: &AlignmentBatch<'_>) -> Result<&Ready, Fault> {
        self.ready
            .get_or_init(|| {
                let file = PictureFile::open(&self.photograph.source, batch.limits.pixels)?;
                batch.ready(self.photograph, &file)
            })
            .as_ref()
            .map_err(Clone::clone)
    }
}

impl AlignmentBatch<'_> {
    fn aligned(
        &self,
        reference: &Reference<'_>,
        pair: &PhotographPair,
    ) -> Result<Registration, Fault> {
        if pair.picture == *reference.photograph {
            return Ok(Registration::Reference);
        }
        let reference_hash = reference.hash.clone()?;
        let file = PictureFile::open(&pair.picture.source, self.limits.pixels)?;
        let key = CacheKey::new(
            (reference.photograph, reference_hash),
            (&pair.picture, file.hash()?),
            &pair.ties,
        );
        let store = self.store;
        if let Some(found) = cache::find(store.dir(), key) {
            if self.access == CacheAccess::ReadWrite {
                store.note_used(&key.file(store.dir()));
            }
            return Ok(found);
        }
        let onto = reference.ready(self)?;
        let ready = self.ready(&pair.picture, &file)?;
        file.is_unchanged()?;
        let registration = on_masters(onto, &ready, &pair.ties);
        if self.access == CacheAccess::ReadWrite {
            store.note_used(&key.file(store.dir()));
            store.keep_or_do_without(|dir| cache::keep(dir, key, &registration));
        }
        Ok(registration)
    }

    fn ready(&self, photograph: &Photograph, file: &PictureFile) -> Result<Ready, Fault> {
        let working = guarded(|| {
            let opened = decode::open(file, self.limits.pixels)?;
            let orientation = opened.orientation;
            let needed = working::memory(&opened, photograph.area);
            let _share = self.budget.take(needed);
            working(
                opened.grey()?,
                orientation,
                photograph.area,
                photograph.mirrored,
            )
        })?;
        let subject = Subject::new(&working.grey);
        Ok(Ready { working, subject })
    }
}

/// Aligns two working images, and carries the map back to their masters.
fn on_masters(reference: &Ready, picture: &Ready, ties: &[[f64; 4]]) -> Registration {
    let (onto, from) = (&reference.working, &picture.working);
    let registration = if ties.is_empty() {
        align(&reference.subject, &picture.subject)
    } else {
        let on_working = |working: &WorkingImage, x: f64, y: f64| {
            // A hundred percent is the far edge, half a pixel beyond the last pixel's centre.
            let at = |percent: f64, side: u32| percent / 100.0 * f64::from(side) - 0.5;
            working
                .from_master
                .apply(at(x, working.master.0), at(y, working.master.1))
        };
        let ties: Vec<[(f64, f64); 2]> = ties
            .iter()
            .filter_map(|&[x, y, to_x, to_y]| {
                Some([on_working(from, x, y)?, on_working(onto, to_x, to_y)?])
            })
            .collect();
        align_by_hand(&reference.subject, &picture.subject, &ties)
    };
    let Registration::Aligned(aligned) = registration else {
        return registration;
    };
    let matrix = from
        .from_master
        .then(&aligned.matrix)
        .and_then(|map| map.then(&onto.from_master.inverse()?));
    match matrix {
        Some(matrix) => Registration::Aligned(Aligned { matrix, ..aligned }),
        None => Registration::Refused(Refused {
            why: Refusal::NoPlausibleFit,
            confidence: aligned.confidence,
        }),
    }
}
