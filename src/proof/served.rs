//! What is served: the pages of the last good reading, and what the newest reading found.

use std::collections::BTreeMap;
use std::io;
use std::path::PathBuf;
use std::sync::Arc;
use std::time::Duration;

use crate::issue::Bundle;
use crate::model::finding::Tally;
use crate::page::Site;
use crate::press::Report;

/// The result of reading the catalogue once.
#[derive(Debug)]
pub struct Revision {
    /// The findings.
    pub report: Report,
    /// Why no pages could be made: a broken template, or a disk that failed; `None` where pages were made,
    /// or errors forbade them.
    pub fault: Option<String>,
    /// Which pages are served after it.
    pub pages: PagesServed,
    /// How long the reading took.
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
pub(super) struct Served {
    /// Counts readings from 1.
    pub(super) number: u64,
    /// The number of the reading that `site` was made in, by which a page sees whether it is out of date;
    /// 0 where there is none.
    pub(super) good: u64,
    pub(super) site: Arc<Site>,
    pub(super) pictures: Arc<PictureFiles>,
    pub(super) newest: Revision,
}

/// The prepared files of the pictures, by address.
#[derive(Debug, Default)]
pub(super) struct PictureFiles {
    pub(super) single: BTreeMap<String, PathBuf>,
    pub(super) bundles: BTreeMap<String, Bundle>,
}

impl PictureFiles {
    /// The bytes of the picture at an address; `None` where there is none.
    pub(super) fn read(&self, address: &str) -> Option<io::Result<Vec<u8>>> {
        if let Some(file) = self.single.get(address) {
            return Some(std::fs::read(file));
        }
        // The address begins with the folder of its bundle, which may have slashes itself.
        let mut cuts = address.match_indices('/');
        cuts.find_map(|(at, _)| {
            let bundle = self.bundles.get(address.get(..at)?)?;
            bundle.read(address.get(at + 1..)?)
        })
    }
}
