//! The warning that the cache could not be written.

use super::streams::say;
use crate::press::Cache;

/// Warns once where something could not be kept in the cache. That is no failure: it is made again next time.
pub(super) fn say_not_kept(cache: &Cache) {
    if let Some(fault) = cache.fault() {
        say(format_args!(
            "keyblock: the cache was not written, so the next run makes again what this one made: {}",
            fault.cause()
        ));
        say(format_args!("  {}", fault.help()));
    }
}
