//! Progress: a bar on a terminal for work that takes longer than a second, and nothing elsewhere.

use std::sync::OnceLock;
use std::time::{Duration, Instant};

use indicatif::{ProgressBar, ProgressStyle};

/// How long work goes on before a bar is drawn.
const SILENCE: Duration = Duration::from_secs(1);

/// A bar that appears once the work has gone on for a second. `indicatif` draws on standard error,
/// and only where that is a terminal.
pub(super) struct Progress {
    what: &'static str,
    begun: Instant,
    bar: OnceLock<ProgressBar>,
}

impl Progress {
    /// The progress of `what`, the word before the bar: "pictures".
    pub(super) fn of(what: &'static str) -> Progress {
        Progress {
            what,
            begun: Instant::now(),
            bar: OnceLock::new(),
        }
    }

    /// Reports how many are done, of how many.
    pub(super) fn tell(&self, done: usize, of: usize) {
        if self.begun.elapsed() < SILENCE {
            return;
        }
        let bar = self.bar.get_or_init(|| {
            let style = ProgressStyle::with_template("{prefix} {bar:30} {pos}/{len}");
            ProgressBar::new(of as u64)
                .with_style(style.unwrap_or_else(|_| ProgressStyle::default_bar()))
                .with_prefix(self.what)
        });
        // Threads may report out of order; the bar never goes back.
        if done as u64 > bar.position() {
            bar.set_position(done as u64);
        }
    }
}

impl Drop for Progress {
    fn drop(&mut self) {
        if let Some(bar) = self.bar.get() {
            bar.finish_and_clear();
        }
    }
}
