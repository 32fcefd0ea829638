//! Runs intake: a file that was handed in becomes a proposal in the catalogue's inbox.
//!
//! In: a catalogue's folder and a file. Out: [`Proposed`], everything that was computed, and the files for
//! `records/inbox/NAME/`. Everything is computed anew from the file, what editors corrected and the catalogue, so a proposal
//! cannot be out of date. Nothing else of the catalogue is written.
//!
//! | file | subject |
//! |---|---|
//! | `fault` | why a file was not taken in |
//! | `lock` | one run at a time |
//! | `inbox` | the folder of a house in the inbox: where its files lie, reading them |
//! | `handed_in` | the file that was handed in |
//! | `private` | whether a text names somebody whom the catalogue keeps private |
//! | `proposed` | the stages of intake in order, from the file to the proposal |
//! | `photographs` | the photographs that come with it |
//! | `files` | what is written into the inbox |
//! | `accept` | accepts a batch: records, corrections, photographs |

mod accept;
mod fault;
mod files;
mod handed_in;
mod inbox;
mod lock;
mod photographs;
mod private;
mod proposed;

pub use accept::{AcceptedBatch, accept};
pub use fault::{IntakeFault, SettingsFault};
pub use files::{Written, write};
pub use handed_in::HandedIn;
pub use proposed::Proposed;
