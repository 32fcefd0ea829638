//! Serves the catalogue on this machine, and updates its pages whenever a record changes.
//!
//! In: a catalogue's folder. Out: pages on the loopback address. [`watch`] reports changes, a [`Revision`]
//! is the result of one reading of the catalogue, [`latest`] holds what is served now, and [`answer`]
//! answers the requests that [`http`] reads: with the files of the proof ([`site_file`]) and with its
//! [`status`]. After a reading with errors the pages of the last good one stay, with the findings shown beside
//! them.
#![allow(
    clippy::disallowed_methods,
    reason = "this stage serves prepared pictures from disk"
)]

mod answer;
mod finding_page;
mod http;
mod latest;
mod media_type;
mod served;
mod site_file;
mod status;
mod watch;

use std::io;
use std::net::TcpListener;
use std::path::Path;
use std::sync::Arc;
use std::time::Instant;

use crate::press::{self, PictureWork};

use latest::Latest;
use served::{PictureFiles, Served};

pub use served::{PagesServed, Revision};

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
        let served = http::serve(listener, http::PATIENCE, move |request, client| {
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
