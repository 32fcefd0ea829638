//! What one edition changed: by design with its sheets, by holder, and in the other records.
//!
//! In: the register and an edition of it. Out: [`EditionAccount`], data without words, so that it is worded in the
//! language of the site. The account of an edition rests on the register alone and stays as it is when later editions
//! are issued.
//!
//! | file | subject |
//! |---|---|
//! | [`changes`] | the changes as data |
//! | `accounting` | what an entry said before and in the edition |
//! | `designs`, `sheets`, `records` | the changes of each kind of entry |

mod accounting;
pub mod changes;
mod designs;
mod records;
mod sheets;

use std::collections::BTreeMap;

use self::accounting::Accounting;
use self::changes::{DesignAccount, DesignChange, HolderChange, RecordAccount, SheetAccount};
use keyblock_model::issued_address::{IssuedAddress, IssuedKind};
use keyblock_model::key::Key;
use keyblock_model::link::Target;
use keyblock_model::register::Register;

/// What an edition changed.
#[derive(Clone, Debug, Default, PartialEq)]
pub struct EditionAccount {
    /// The designs that changed, or of which a sheet changed, by key.
    pub designs: Vec<DesignAccount>,
    /// The sheets that are new with each holder, left it, came to it, or were changed, by the holder's key.
    pub holders: BTreeMap<Key, Vec<HolderChange>>,
    /// The other records that changed: holders, people, literature, exhibitions, marks and pages.
    pub records: Vec<RecordAccount>,
    /// How many addresses of each kind are new.
    pub added: BTreeMap<IssuedKind, usize>,
}

impl EditionAccount {
    /// The account of an edition, by its place in [`Register::editions`].
    #[must_use]
    pub fn of(register: &Register, edition: usize) -> EditionAccount {
        let accounting = Accounting::of(register, edition);
        let mut account = EditionAccount::default();
        let mut changed: BTreeMap<Key, DesignAccount> = BTreeMap::new();
        for (address, entry) in &register.entries {
            if accounting.is_new(address, entry) {
                *account.added.entry(address.kind()).or_default() += 1;
            }
            match address {
                IssuedAddress::Record(Target::Impression(sheet)) => {
                    let changes = accounting.of_sheet(address, entry);
                    if changes.is_empty() {
                        continue;
                    }
                    for (holder, kind) in accounting.of_holders(entry, &changes) {
                        let sheet = sheet.clone();
                        let changes = account.holders.entry(holder).or_default();
                        changes.push(HolderChange { sheet, kind });
                    }
                    let sheet = sheet.clone();
                    let design = of_design(&mut changed, &sheet.design);
                    design.sheets.push(SheetAccount { sheet, changes });
                }
                IssuedAddress::Record(Target::Design(key)) => {
                    let changes = accounting.of_design(address, entry);
                    if !changes.is_empty() {
                        of_design(&mut changed, key).changes.splice(0..0, changes);
                    }
                }
                IssuedAddress::Part(key, part, name) => {
                    let changes = accounting.of_part(address, entry);
                    let changes = changes
                        .into_iter()
                        .map(|change| DesignChange::Part(*part, name.clone(), change));
                    let changes: Vec<_> = changes.collect();
                    if !changes.is_empty() {
                        of_design(&mut changed, key).changes.extend(changes);
                    }
                }
                IssuedAddress::Record(Target::Picture(_))
                | IssuedAddress::Point(..)
                | IssuedAddress::Comparison(..)
                | IssuedAddress::Condition(..) => {}
                IssuedAddress::Record(_) => {
                    account.records.extend(accounting.of_record(address, entry));
                }
            }
        }
        let designs = changed.into_values().map(designs::in_short);
        account.designs = designs
            .filter(|design| !design.changes.is_empty() || !design.sheets.is_empty())
            .collect();
        account
            .records
            .sort_by(|a, b| a.address.in_file_order(&b.address));
        for changes in account.holders.values_mut() {
            changes.sort_by(|a, b| (&a.sheet, a.kind).cmp(&(&b.sheet, b.kind)));
        }
        account
    }

    /// Whether it changed nothing.
    #[must_use]
    pub fn is_empty(&self) -> bool {
        self.designs.is_empty() && self.records.is_empty() && self.added.is_empty()
    }
}

fn of_design<'m>(
    designs: &'m mut BTreeMap<Key, DesignAccount>,
    key: &Key,
) -> &'m mut DesignAccount {
    designs.entry(key.clone()).or_insert_with(|| DesignAccount {
        design: key.clone(),
        changes: Vec::new(),
        sheets: Vec::new(),
    })
}
