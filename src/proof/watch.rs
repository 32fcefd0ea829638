//! Watches a catalogue's folder, and reports a change once no more events follow.
//!
//! Saving a file causes three to seven events; they are reported as one change. Files that the program
//! itself writes (its cache, the compiled site) or that version control writes do not count. Nor does
//! reading a file, which some systems report as well.

use std::io;
use std::path::{Path, PathBuf};
use std::sync::mpsc::{self, Receiver, RecvTimeoutError, Sender};
use std::time::Duration;

use notify::{Event, EventKind, RecommendedWatcher, RecursiveMode, Watcher};

use crate::issue::mark;

/// How long no further event must occur before a change is reported.
const SETTLED: Duration = Duration::from_millis(20);

/// The changes below a folder.
pub(super) struct Changes {
    signals: std::sync::Mutex<Receiver<Signal>>,
    stop: Sender<Signal>,
    _watcher: RecommendedWatcher,
}

enum Signal {
    Change,
    Stop,
}

impl Changes {
    /// Watches everything below `dir`.
    ///
    /// # Errors
    /// Where the system refuses to watch it.
    pub(super) fn of(dir: &Path) -> io::Result<Changes> {
        let dir = dir.canonicalize()?;
        let (sender, signals) = mpsc::channel();
        let stop = sender.clone();
        let watched = dir.clone();
        let mut watcher = notify::recommended_watcher(move |event: notify::Result<Event>| {
            // An error may mean that events were lost, so it counts as a change.
            if event.is_err() || event.is_ok_and(|event| is_relevant(&watched, &event)) {
                let _ = sender.send(Signal::Change);
            }
        })
        .map_err(io::Error::other)?;
        watcher
            .watch(&dir, RecursiveMode::Recursive)
            .map_err(io::Error::other)?;
        Ok(Changes {
            signals: std::sync::Mutex::new(signals),
            stop,
            _watcher: watcher,
        })
    }

    /// Waits for a change, and until [`SETTLED`] has passed without another; `false` once stopped.
    pub(super) fn wait(&self) -> bool {
        let signals = self
            .signals
            .lock()
            .unwrap_or_else(std::sync::PoisonError::into_inner);
        match signals.recv() {
            Ok(Signal::Change) => {}
            Ok(Signal::Stop) | Err(_) => return false,
        }
        loop {
            match signals.recv_timeout(SETTLED) {
                Ok(Signal::Change) => {}
                Ok(Signal::Stop) | Err(RecvTimeoutError::Disconnected) => return false,
                Err(RecvTimeoutError::Timeout) => return true,
            }
        }
    }

    /// Ends [`Changes::wait`].
    pub(super) fn stop(&self) {
        let _ = self.stop.send(Signal::Stop);
    }
}

/// Whether an event can change what a compile reads.
fn is_relevant(dir: &Path, event: &Event) -> bool {
    let writes = matches!(
        event.kind,
        EventKind::Create(_) | EventKind::Modify(_) | EventKind::Remove(_)
    );
    writes && event.paths.iter().any(|path| is_a_source(dir, path))
}

/// Whether a path can be one of the catalogue's own files: nothing hidden, and nothing inside a
/// compiled site.
fn is_a_source(dir: &Path, path: &Path) -> bool {
    let Ok(below) = path.strip_prefix(dir) else {
        return false;
    };
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
        std::fs::write(dir.join("web").join(mark::NAME), "{}").unwrap();
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
