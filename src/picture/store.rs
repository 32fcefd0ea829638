//! Where results are kept: the cache, or a spare folder once the disk has refused the cache.

use std::collections::BTreeSet;
use std::fs::{self, File};
use std::path::{Path, PathBuf};
use std::sync::atomic::{AtomicU64, Ordering};
use std::sync::{Mutex, OnceLock, PoisonError};
use std::time::{Duration, SystemTime};

use crate::cache::make_folder;
use crate::fault::Fault;
use crate::sweep::{self, Swept};

/// How old the date of an entry's last use may be before it is written again.
const DATED_ANEW: Duration = Duration::from_secs(24 * 60 * 60);

/// A folder of results that are used again, which may be deleted at any time.
///
/// Once the disk refuses a result, that one and all later ones are kept in a spare folder, where there is one, and
/// [`Store::fault`] says why. A result that no folder takes is a fault of the disk.
#[derive(Debug)]
pub struct Store {
    dir: PathBuf,
    spare: Option<PathBuf>,
    fault: OnceLock<Fault>,
    unkept_bytes: AtomicU64,
    /// The names of the entries that were used or made, without what follows the hash.
    used: Mutex<BTreeSet<String>>,
}

impl Store {
    /// The results in `dir`, which is made when the first is kept.
    #[must_use]
    pub fn at(dir: &Path) -> Store {
        Store {
            dir: dir.to_owned(),
            spare: None,
            fault: OnceLock::new(),
            unkept_bytes: AtomicU64::new(0),
            used: Mutex::default(),
        }
    }

    /// The same, with a folder for results that the disk of the first refuses. Nobody looks for them there later, so
    /// it is temporary.
    #[must_use]
    pub fn with_spare(self, spare: &Path) -> Store {
        Store {
            spare: Some(spare.to_owned()),
            ..self
        }
    }

    /// Why results are no longer kept in the folder; `None` while they are.
    #[must_use]
    pub fn fault(&self) -> Option<&Fault> {
        self.fault.get()
    }

    /// How many bytes of results no folder took.
    #[must_use]
    pub fn unkept_bytes(&self) -> u64 {
        self.unkept_bytes.load(Ordering::Relaxed)
    }

    /// Removes the entries that were not used for `unused_for`, and not by whoever holds this store.
    #[must_use]
    pub fn sweep(&self, unused_for: Duration) -> Swept {
        let used = self.used.lock().unwrap_or_else(PoisonError::into_inner);
        sweep::sweep(&self.dir, &used, unused_for)
    }

    /// The folder in which earlier results are looked for.
    pub(crate) fn dir(&self) -> &Path {
        &self.dir
    }

    /// Makes the folder, or finds out that it cannot be made.
    ///
    /// # Errors
    /// [`Fault::Cache`] where it cannot, and there is no spare folder: then no work is worth starting.
    pub(crate) fn prepare(&self) -> Result<(), Fault> {
        match make_folder(&self.dir) {
            Err(fault) if self.spare.is_none() => Err(fault),
            Err(fault) => {
                self.fault.get_or_init(|| fault);
                Ok(())
            }
            Ok(()) => Ok(()),
        }
    }

    /// Keeps a result of about `bytes` bytes: calls `write` with the folder to write it to.
    ///
    /// # Errors
    /// The fault of `write`, where every folder refused it, or where it is not the disk's.
    pub(crate) fn keep<T>(
        &self,
        bytes: u64,
        write: impl Fn(&Path) -> Result<T, Fault>,
    ) -> Result<T, Fault> {
        let refused = match self.fault.get() {
            Some(fault) => fault.clone(),
            None => match write(&self.dir) {
                Err(fault) if fault.is_disk() => self.fault.get_or_init(|| fault).clone(),
                kept => return kept,
            },
        };
        let kept = match &self.spare {
            Some(spare) => make_folder(spare).and_then(|()| write(spare)),
            None => Err(refused),
        };
        if kept.as_ref().is_err_and(Fault::is_disk) {
            self.unkept_bytes.fetch_add(bytes, Ordering::Relaxed);
        }
        kept
    }

    /// Keeps a result that is in memory too: where the disk refuses it, the next run makes it again.
    pub(crate) fn keep_or_do_without(&self, write: impl Fn(&Path) -> Result<(), Fault>) {
        if self.fault.get().is_none()
            && let Err(fault) = make_folder(&self.dir).and_then(|()| write(&self.dir))
        {
            self.fault.get_or_init(|| fault);
        }
    }

    /// Notes that the entry with this manifest was used or made, and dates it.
    pub(crate) fn note_used(&self, manifest: &Path) {
        let name = manifest.file_name().and_then(|name| name.to_str());
        let Some(entry) = name.and_then(sweep::entry_of) else {
            return;
        };
        let mut used = self.used.lock().unwrap_or_else(PoisonError::into_inner);
        used.insert(entry.to_owned());
        drop(used);
        let now = SystemTime::now();
        let is_dated = fs::metadata(manifest)
            .and_then(|about| about.modified())
            .is_ok_and(|dated| now.duration_since(dated).is_ok_and(|age| age < DATED_ANEW));
        if !is_dated {
            // A cache that may only be read is not swept either.
            let _ = File::open(manifest).and_then(|file| file.set_modified(now));
        }
    }
}

#[cfg(test)]
mod tests {
    use super::*;

    fn refusing(dir: &Path) -> Fault {
        Fault::Cache {
            file: dir.to_owned(),
            why: "full".to_owned(),
        }
    }

    #[test]
    fn the_first_refusal_sends_this_result_and_all_later_ones_to_the_spare_folder() {
        let dir = tempfile::tempdir().unwrap();
        let (cache, spare) = (dir.path().join("cache"), dir.path().join("spare"));
        let store = Store::at(&cache).with_spare(&spare);
        let to = |takes_it: bool| {
            store.keep(1, |dir| {
                if takes_it || dir == spare {
                    Ok(dir.to_owned())
                } else {
                    Err(refusing(dir))
                }
            })
        };
        assert_eq!(to(true), Ok(cache.clone()));
        assert_eq!(store.fault(), None);
        assert_eq!(to(false), Ok(spare.clone()));
        assert_eq!(store.fault(), Some(&refusing(&cache)));
        // A full disk is not tried again.
        assert_eq!(to(true), Ok(spare));
        assert_eq!(store.unkept_bytes(), 0);
    }

    #[test]
    fn what_no_folder_takes_is_counted() {
        let dir = tempfile::tempdir().unwrap();
        for store in [
            Store::at(dir.path()),
            Store::at(dir.path()).with_spare(&dir.path().join("spare")),
        ] {
            for _ in 0..3 {
                let kept = store.keep(100, |dir| Err::<(), _>(refusing(dir)));
                assert!(kept.is_err_and(|fault| fault.is_disk()));
            }
            assert_eq!(store.unkept_bytes(), 300);
            // A damaged picture is no matter of the disk.
            let kept = store.keep(100, |_| Err::<(), _>(Fault::CutShort));
            assert!(kept.is_err());
        }
    }
}
