//! Pulling proofs: the catalogue served on this machine, following its records.
//!
//! In: a catalogue's folder. Out: pages on the loopback address that follow every change of a
//! record. [`watch`] says that something changed, [`Pulled`] is one reading of the catalogue, and
//! [`serve`] answers browsers. A reading with errors keeps the pages of the last good one and shows
//! what is wrong beside them.
#![allow(
    clippy::disallowed_methods,
    reason = "this stage serves prepared pictures from disk"
)]

mod answer;
mod watch;

use std::collections::BTreeMap;
use std::io;
use std::net::TcpListener;
use std::path::{Path, PathBuf};
use std::sync::Arc;
use std::time::{Duration, Instant};

use tokio::sync::watch as signal;

use crate::issue::Bundle;
use crate::model::finding::{Finding, Tally};
use crate::model::place::Sources;
use crate::page::Site;
use crate::press::{self, PictureWork};

/// One reading of the catalogue.
#[derive(Debug)]
pub struct Pulled {
    /// The findings, in their order.
    pub findings: Vec<Finding>,
    /// The files they speak of.
    pub sources: Sources,
    /// Why no pages came of it: a broken template, or a disk that failed; `None` where pages came, or
    /// errors forbade them.
    pub fault: Option<String>,
    /// Which pages are shown since.
    pub shows: Shows,
    /// How long it took.
    pub took: Duration,
}

/// Which pages are shown after a reading.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub enum Shows {
    /// Its own.
    Newest,
    /// Those of the last reading that came out well, because none came of it.
    LastGood,
    /// None: no reading has come out well yet.
    Nothing,
}

impl Pulled {
    /// How many findings of each severity there are.
    #[must_use]
    pub fn tally(&self) -> Tally {
        Tally::of(&self.findings)
    }

    /// "pulled in 41 ms: errors 0, doubts 1, hints 0", for the terminal.
    #[must_use]
    pub fn in_words(&self) -> String {
        let Tally {
            errors,
            doubts,
            hints,
        } = self.tally();
        let found = format!("errors {errors}, doubts {doubts}, hints {hints}");
        let told = self.fault.as_ref().unwrap_or(&found);
        match self.shows {
            Shows::Newest => format!("pulled in {} ms: {found}", self.took.as_millis()),
            Shows::LastGood => format!("{told}; the last good proof stays"),
            Shows::Nothing => format!("{told}; no proof can be pulled yet"),
        }
    }
}

/// What browsers are shown: the last good pages, and the newest reading.
#[derive(Debug)]
struct Shown {
    /// Counts readings from 1.
    number: u64,
    /// The reading that `site` is of, so that a page knows whether it is behind; 0 where none is.
    good: u64,
    site: Arc<Site>,
    pictures: Arc<PictureFiles>,
    newest: Pulled,
}

/// Where the files of pictures wait, by address.
#[derive(Debug, Default)]
struct PictureFiles {
    single: BTreeMap<String, PathBuf>,
    bundles: BTreeMap<String, Bundle>,
}

impl PictureFiles {
    /// The bytes of the picture at an address; `None` where there is none.
    fn read(&self, address: &str) -> Option<io::Result<Vec<u8>>> {
        if let Some(file) = self.single.get(address) {
            return Some(std::fs::read(file));
        }
        // The folder of a bundle ends at some slash of the address.
        let mut cuts = address.match_indices('/');
        cuts.find_map(|(at, _)| {
            let bundle = self.bundles.get(address.get(..at)?)?;
            bundle.read(address.get(at + 1..)?)
        })
    }
}

/// Serves the catalogue in `dir` on `listener` until the process is stopped. `tell` hears of every
/// reading.
///
/// # Errors
/// Where the folder cannot be watched or the listener cannot be used.
pub fn serve(dir: &Path, listener: TcpListener, tell: &(dyn Fn(&Pulled) + Sync)) -> io::Result<()> {
    let runtime = tokio::runtime::Builder::new_current_thread()
        .enable_all()
        .build()?;
    let changes = watch::Changes::of(dir)?;
    let first = pull(dir, None);
    tell(&first.newest);
    let (sender, receiver) = signal::channel(Arc::new(first));
    std::thread::scope(|scope| {
        let follow = scope.spawn(|| {
            while changes.wait() {
                let last = Arc::clone(&sender.borrow());
                let next = pull(dir, Some(&last));
                tell(&next.newest);
                sender.send_replace(Arc::new(next));
            }
        });
        let served = runtime.block_on(answer::serve(listener, receiver));
        changes.stop();
        // A fault in following was told by its own panic message; what was served still counts.
        let _ = follow.join();
        served
    })
}

/// Reads the catalogue once. Where no pages come of it, those of `last` stay.
fn pull(dir: &Path, last: Option<&Shown>) -> Shown {
    let begun = Instant::now();
    let mut judged = press::judge(dir, &PictureWork::Prepare(&|_, _| {}));
    let mut not_pulled = None;
    let mut fresh = None;
    if judged.tally().errors == 0 {
        match judged.pull(&|_, _| {}) {
            Ok(site) => {
                let pictures = PictureFiles {
                    single: judged.picture_files(),
                    bundles: judged.tile_bundles(),
                };
                fresh = Some((Arc::new(site), Arc::new(pictures)));
            }
            Err(fault) => not_pulled = Some(fault.to_string()),
        }
    }
    let number = last.map_or(1, |l| l.number + 1);
    let (shows, good) = match (&fresh, last.map_or(0, |l| l.good)) {
        (Some(_), _) => (Shows::Newest, number),
        (None, 0) => (Shows::Nothing, 0),
        (None, good) => (Shows::LastGood, good),
    };
    let (site, pictures) = fresh
        .or_else(|| last.map(|l| (Arc::clone(&l.site), Arc::clone(&l.pictures))))
        .unwrap_or_default();
    let newest = Pulled {
        findings: judged.findings,
        sources: judged.catalogue.sources,
        fault: not_pulled,
        shows,
        took: begun.elapsed(),
    };
    Shown {
        number,
        good,
        site,
        pictures,
        newest,
    }
}
