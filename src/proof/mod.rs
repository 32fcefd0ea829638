//! Pulling proofs: the catalogue served on this machine, following its records.
//!
//! In: a catalogue's folder. Out: pages on the loopback address that follow every change of a
//! record. [`watch`] tells of changes, a [`Revision`] is the result of one reading of the catalogue,
//! [`latest`] holds what is served now, and [`answer`] answers the requests that [`http`] reads. After a reading with errors the pages of the last good one stay, and
//! what is wrong is shown beside them.
#![allow(
    clippy::disallowed_methods,
    reason = "this stage serves prepared pictures from disk"
)]

mod answer;
mod http;
mod latest;
mod watch;

use std::collections::BTreeMap;
use std::io;
use std::net::TcpListener;
use std::path::{Path, PathBuf};
use std::sync::Arc;
use std::time::{Duration, Instant};

use crate::issue::Bundle;
use crate::model::finding::Tally;
use crate::page::Site;
use crate::press::{self, PictureWork, Report};

use latest::Latest;

/// The result of reading the catalogue once.
#[derive(Debug)]
pub struct Revision {
    /// The findings.
    pub report: Report,
    /// Why no pages could be made: a broken template, or a disk that failed; `None` where pages were made,
    /// or errors forbade them.
    pub fault: Option<String>,
    /// Which pages are served since.
    pub pages: PagesServed,
    /// How long it took.
    pub took: Duration,
}

/// Which pages are served after a reading.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub enum PagesServed {
    /// Its own.
    Newest,
    /// Those of the last good reading, because this one gave none.
    LastGood,
    /// None: no reading has been good yet.
    Nothing,
}

impl Revision {
    /// "pulled in 41 ms: errors 0, doubts 1, hints 0", for the terminal.
    #[must_use]
    pub fn in_words(&self) -> String {
        let Tally {
            errors,
            doubts,
            hints,
        } = self.report.tally();
        let counts = format!("errors {errors}, doubts {doubts}, hints {hints}");
        let outcome = self.fault.as_ref().unwrap_or(&counts);
        match self.pages {
            PagesServed::Newest => format!("pulled in {} ms: {counts}", self.took.as_millis()),
            PagesServed::LastGood => format!("{outcome}; the last good proof stays"),
            PagesServed::Nothing => format!("{outcome}; no proof can be pulled yet"),
        }
    }
}

/// What browsers are served: the pages of the last good reading, and what the newest found.
#[derive(Debug)]
struct Served {
    /// Counts readings from 1.
    number: u64,
    /// The number of the reading that `site` was made in, by which a page sees whether it is out of date;
    /// 0 where there is none.
    good: u64,
    site: Arc<Site>,
    pictures: Arc<PictureFiles>,
    newest: Revision,
}

/// The prepared files of the pictures, by address.
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

/// Serves the catalogue in `dir` on `listener` until the process is stopped. `tell` is called
/// after every reading.
///
/// # Errors
/// Where the folder cannot be watched or the listener cannot be used.
pub fn serve(
    dir: &Path,
    listener: &TcpListener,
    tell: &(dyn Fn(&Revision) + Sync),
) -> io::Result<()> {
    let changes = watch::Changes::of(dir)?;
    let first = pull(dir, None);
    tell(&first.newest);
    let latest = Arc::new(Latest::new(first));
    std::thread::scope(|scope| {
        let following = scope.spawn(|| {
            while changes.wait() {
                let next = pull(dir, Some(&latest.get()));
                tell(&next.newest);
                latest.replace(next);
            }
        });
        let answered = Arc::clone(&latest);
        let served = http::serve(listener, move |request, client| {
            answer::answer(&answered, request, client)
        });
        changes.stop();
        // A panic there has printed its own message; the pages served until then were sound.
        let _ = following.join();
        served
    })
}

/// Reads the catalogue once. Where this gives no pages, those of `last` stay.
fn pull(dir: &Path, last: Option<&Served>) -> Served {
    let begun = Instant::now();
    let number = last.map_or(1, |l| l.number + 1);
    let judged = press::judge(dir, &PictureWork::Prepare(&|_, _| {}));
    let (report, fault, fresh) = if judged.tally().errors == 0 {
        match judged.pull_site(&|_, _| {}) {
            Ok((pulled, site)) => {
                let pictures = PictureFiles {
                    single: pulled.picture_files(),
                    bundles: pulled.tile_bundles(),
                };
                (pulled.report, None, Some((site, pictures)))
            }
            Err(not_pulled) => (not_pulled.report, Some(not_pulled.fault.to_string()), None),
        }
    } else {
        (judged.into_report(), None, None)
    };
    let (pages, good, site, pictures) = match (fresh, last) {
        (Some((site, pictures)), _) => (
            PagesServed::Newest,
            number,
            Arc::new(site),
            Arc::new(pictures),
        ),
        (None, Some(last)) if last.good > 0 => (
            PagesServed::LastGood,
            last.good,
            Arc::clone(&last.site),
            Arc::clone(&last.pictures),
        ),
        (None, _) => (PagesServed::Nothing, 0, Arc::default(), Arc::default()),
    };
    let newest = Revision {
        report,
        fault,
        pages,
        took: begun.elapsed(),
    };
    Served {
        number,
        good,
        site,
        pictures,
        newest,
    }
}
