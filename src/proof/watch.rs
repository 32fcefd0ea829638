//! Watches a catalogue's folder, and reports a change once no more events follow.
//!
//! Saving a file causes three to seven events; they are reported as one change, and so are thousands of files
//! that are changed at once. Files that the program
//! itself writes (its cache, the compiled site), those in the inbox and those that version control writes do not count. Nor does
//! reading a file, which some systems report as well.

use std::io;
use std::path::{Path, PathBuf};
use std::sync::mpsc::{self, Receiver, RecvTimeoutError, Sender};
use std::sync::{Mutex, PoisonError};
use std::time::Duration;

use notify::{Event, EventKind, RecommendedWatcher, RecursiveMode, Watcher};

use crate::issue::mark;

/// How long no further event must occur before a change is reported: after one save.
const SETTLED: Duration = Duration::from_millis(20);
/// How much longer for each further event of the same change, and at most. Thousands of files that are
/// copied or checked out arrive with pauses between them.
const SETTLED_FOR_EACH: Duration = Duration::from_micros(500);
const SETTLED_AT_MOST: Duration = Duration::from_millis(500);
/// How often to look whether the folder is still there, or is back.
const AGAIN: Duration = Duration::from_millis(300);

/// The changes below a folder.
pub(super) struct Changes {
    dir: PathBuf,
    signals: Mutex<Receiver<Signal>>,
    sender: Sender<Signal>,
    /// The watcher, and the folder that it watches; `None` while there is no folder.
    watched: Mutex<Option<(RecommendedWatcher, Folder)>>,
}

enum Signal {
    Change,
    Stop,
}

/// The identity of a folder. One that is deleted and made anew under the same path is another.
type Folder = same_file::Handle;

impl Changes {
    /// Watches everything below `dir`.
    ///
    /// # Errors
    /// Where the system refuses to watch it.
    pub(super) fn of(dir: &Path) -> io::Result<Changes> {
        let dir = dir.canonicalize()?;
        let (sender, signals) = mpsc::channel();
        let watched = watch(&dir, &sender)?;
        Ok(Changes {
            dir,
            signals: Mutex::new(signals),
            sender,
            watched: Mutex::new(Some(watched)),
        })
    }

    /// Waits for a change, and until no more events follow; `false` once stopped. A folder that was deleted or
    /// moved away is a change, and so is one that is put back; that is watched from then on.
    pub(super) fn wait(&self) -> bool {
        let signals = self.signals.lock().unwrap_or_else(PoisonError::into_inner);
        let mut watched = self.watched.lock().unwrap_or_else(PoisonError::into_inner);
        let is_still_there = |(_, folder): &(_, Folder)| {
            Folder::from_path(&self.dir).is_ok_and(|now| now == *folder)
        };
        loop {
            let change = match signals.recv_timeout(AGAIN) {
                Ok(Signal::Change) => true,
                Ok(Signal::Stop) | Err(RecvTimeoutError::Disconnected) => return false,
                Err(RecvTimeoutError::Timeout) => false,
            };
            // Not every system reports that the watched folder itself was moved or deleted.
            match watched.as_ref() {
                Some(watched) if is_still_there(watched) => {
                    if change {
                        break;
                    }
                }
                Some(_) => break,
                None => {
                    if let Ok(anew) = watch(&self.dir, &self.sender) {
                        *watched = Some(anew);
                        break;
                    }
                }
            }
        }
        let mut events = 0;
        loop {
            let settled = (SETTLED + SETTLED_FOR_EACH * events).min(SETTLED_AT_MOST);
            match signals.recv_timeout(settled) {
                Ok(Signal::Change) => events = events.saturating_add(1),
                Ok(Signal::Stop) | Err(RecvTimeoutError::Disconnected) => return false,
                Err(RecvTimeoutError::Timeout) => break,
            }
        }
        if !watched.as_ref().is_some_and(is_still_there) {
            *watched = watch(&self.dir, &self.sender).ok();
        }
        true
    }

    /// Ends [`Changes::wait`].
    pub(super) fn stop(&self) {
        let _ = self.sender.send(Signal::Stop);
    }
}

/// Watches the folder that is at `dir` now.
fn watch(dir: &Path, sender: &Sender<Signal>) -> io::Result<(RecommendedWatcher, Folder)> {
    let folder = Folder::from_path(dir)?;
    let (below, sender) = (dir.to_owned(), sender.clone());
    let mut watcher = notify::recommended_watcher(move |event: notify::Result<Event>| {
        // An error may mean that events were lost, so it counts as a change.
        if event.is_err() || event.is_ok_and(|event| is_relevant(&below, &event)) {
            let _ = sender.send(Signal::Change);
        }
    })
    .map_err(io::Error::other)?;
    watcher
        .watch(dir, RecursiveMode::Recursive)
        .map_err(io::Error::other)?;
    Ok((watcher, folder))
}

/// Whether an event can change what a compile reads.
fn is_relevant(dir: &Path, event: &Event) -> bool {
    let writes = matches!(
        event.kind,
        EventKind::Create(_) | EventKind::Modify(_) | EventKind::Remove(_)
    );
    writes && event.paths.iter().any(|path| is_a_source(dir, path))
}

/// What is handed in, until it is accepted: no compile reads it.
const INBOX: &str = "records/inbox";

/// Whether a path can be one of the catalogue's own files: nothing hidden, nothing handed in, and nothing inside a
/// compiled site.
fn is_a_source(dir: &Path, path: &Path) -> bool {
    let Ok(below) = path.strip_prefix(dir) else {
        return false;
    };
    if below.starts_with(INBOX) {
        return false;
    }
    let mut at = PathBuf::from(dir);
    for part in below {
        if part.to_string_lossy().starts_with('.') {
            return false;
        }
        at.push(part);
        if mark::is_marked(&at) {
            return false;
        }
    }
    true
}

#[cfg(test)]
mod tests {
    use std::sync::atomic::{AtomicUsize, Ordering};
    use std::thread;

    use super::*;
    use notify::event::{AccessKind, CreateKind};

    fn event(kind: EventKind, path: &Path) -> Event {
        Event::new(kind).add_path(path.to_owned())
    }

    #[test]
    fn reading_and_the_programs_own_writing_do_not_count() {
        let dir = tempfile::tempdir().unwrap();
        let dir = dir.path();
        std::fs::create_dir(dir.join("web")).unwrap();
        let mark = "{\"made_by\":\"keyblock\",\"files\":{}}";
        std::fs::write(dir.join("web").join(mark::NAME), mark).unwrap();
        let made = EventKind::Create(CreateKind::File);
        assert!(is_relevant(
            dir,
            &event(made, &dir.join("records/designs/1/design.toml"))
        ));
        assert!(!is_relevant(
            dir,
            &event(
                EventKind::Access(AccessKind::Any),
                &dir.join("catalogue.toml")
            )
        ));
        assert!(!is_relevant(
            dir,
            &event(made, &dir.join(".keyblock/pictures/x.jpg"))
        ));
        assert!(!is_relevant(dir, &event(made, &dir.join("web/index.html"))));
        assert!(!is_relevant(dir, &event(made, &dir.join(".git/index"))));
        let inbox = dir.join("records/inbox");
        assert!(!is_relevant(dir, &event(made, &inbox)));
        assert!(!is_relevant(
            dir,
            &event(made, &inbox.join("museum/columns.toml"))
        ));
    }

    /// Counts the changes until none is reported for a second.
    fn count(changes: &Changes) -> usize {
        let counted = AtomicUsize::new(0);
        thread::scope(|scope| {
            scope.spawn(|| {
                while changes.wait() {
                    counted.fetch_add(1, Ordering::Relaxed);
                }
            });
            let mut before = 0;
            loop {
                thread::sleep(Duration::from_secs(1));
                let now = counted.load(Ordering::Relaxed);
                if now == before && now > 0 {
                    break;
                }
                before = now;
            }
            changes.stop();
        });
        counted.into_inner()
    }

    #[test]
    fn five_thousand_files_changed_at_once_are_one_change() {
        let dir = tempfile::tempdir().unwrap();
        let changes = Changes::of(dir.path()).unwrap();
        for number in 0..5000 {
            std::fs::write(dir.path().join(format!("{number}.toml")), "a = 1").unwrap();
        }
        assert_eq!(count(&changes), 1);
    }

    #[test]
    fn a_folder_that_is_deleted_and_put_back_is_watched_again() {
        let parent = tempfile::tempdir().unwrap();
        let dir = parent.path().join("catalogue");
        std::fs::create_dir(&dir).unwrap();
        let changes = Changes::of(&dir).unwrap();
        std::fs::remove_dir(&dir).unwrap();
        assert!(changes.wait());
        std::fs::create_dir(&dir).unwrap();
        assert!(changes.wait());
        std::fs::write(dir.join("catalogue.toml"), "title = \"A\"").unwrap();
        assert!(changes.wait());

        // Another folder takes its place.
        std::fs::rename(&dir, parent.path().join("aside")).unwrap();
        std::fs::create_dir(&dir).unwrap();
        assert!(changes.wait());
        std::fs::write(dir.join("catalogue.toml"), "title = \"B\"").unwrap();
        assert!(changes.wait());
    }

    #[test]
    fn a_save_is_reported_once_and_stopping_ends_the_wait() {
        let dir = tempfile::tempdir().unwrap();
        let changes = Changes::of(dir.path()).unwrap();
        std::fs::write(dir.path().join("catalogue.toml"), "title = \"A\"").unwrap();
        assert!(changes.wait());
        changes.stop();
        // Later events of the same save may be received first; the stop still ends the wait.
        while changes.wait() {}
    }
}
