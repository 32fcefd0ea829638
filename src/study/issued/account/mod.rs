//! What one edition changed: by design with its sheets, by holder, and in the other records.
//!
//! In: the register and an edition of it. Out: [`EditionAccount`], data without words, so that it is worded in the
//! language of the site. The account of an edition rests on the register alone and stays as it is when later editions
//! are issued.

use std::collections::{BTreeMap, BTreeSet};

use crate::model::issued_reading::IssuedReadings;
use crate::model::key::{ImpressionKey, Key};
use crate::model::link::Target;
use crate::model::occurrence::DesignPart;
use crate::model::register::{Aspect, IssuedAddress, IssuedEntry, IssuedKind, Register, Subject};

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

/// What an edition changed in a design.
#[derive(Clone, Debug, PartialEq)]
pub struct DesignAccount {
    /// The design.
    pub design: Key,
    /// The changes of its own entry.
    pub changes: Vec<DesignChange>,
    /// The changes of its sheets, by number.
    pub sheets: Vec<SheetAccount>,
}

/// A change of the entry of a design.
#[derive(Clone, Debug, PartialEq)]
pub enum DesignChange {
    /// It is new.
    New,
    /// It had another key.
    Moved {
        /// The key that it had.
        was: String,
    },
    /// Its number is another.
    Number {
        /// The number before.
        was: String,
        /// The number in this edition.
        now: String,
    },
    /// Its standing is another; `None`: accepted.
    Standing(Option<String>),
    /// A part of it changed.
    Part(DesignPart, Key, PartChange),
    /// These subjects were revised.
    Revised(Vec<Subject>),
}

/// A change of a part of a design.
#[derive(Clone, Debug, PartialEq)]
pub enum PartChange {
    /// It is new.
    New,
    /// It had another key.
    Moved {
        /// The key that it had.
        was: String,
    },
    /// A state has another numeral.
    Numeral {
        /// The numeral before, with the total: "ii/iii".
        was: String,
        /// The numeral in this edition.
        now: String,
    },
    /// Its standing is another; `None`: accepted.
    Standing(Option<String>),
}

/// What an edition changed in the record of a sheet.
#[derive(Clone, Debug, PartialEq)]
pub struct SheetAccount {
    /// The impression.
    pub sheet: ImpressionKey,
    /// The changes.
    pub changes: Vec<SheetChange>,
}

/// A change of the record of a sheet.
#[derive(Clone, Debug, PartialEq)]
pub enum SheetChange {
    /// It is new.
    New,
    /// It is identified otherwise, as the register writes it ([`crate::model::issued_reading`]).
    Identified {
        /// The identification before; empty where there was none.
        was: String,
        /// The identification in this edition.
        now: String,
    },
    /// Another holder has it; empty where none is recorded.
    Holder {
        /// The holder before, by key.
        was: String,
        /// The holder in this edition.
        now: String,
    },
    /// It was found to be of the same sheet as this impression, which has the page of the sheet; `None`: it has its own
    /// page again.
    Sheet(Option<ImpressionKey>),
    /// Its standing is another; `None`: accepted.
    Standing(Option<String>),
    /// These subjects were revised.
    Revised(Vec<Subject>),
}

/// A change that concerns a holder.
#[derive(Clone, Debug, PartialEq)]
pub struct HolderChange {
    /// The impression.
    pub sheet: ImpressionKey,
    /// What changed.
    pub kind: HolderChangeKind,
}

/// How a sheet changed, as its holder sees it.
#[derive(Clone, Copy, Debug, PartialEq, Eq, PartialOrd, Ord)]
pub enum HolderChangeKind {
    /// Its record is new.
    New,
    /// It is recorded with this holder now, and was with another or none before.
    Came,
    /// It was recorded with this holder before.
    Left,
    /// It is identified otherwise.
    Identified,
    /// Its standing is another.
    Standing,
    /// Its record was revised.
    Revised,
}

/// What an edition changed in another record.
#[derive(Clone, Debug, PartialEq)]
pub struct RecordAccount {
    /// Its address.
    pub address: IssuedAddress,
    /// What changed.
    pub change: RecordChange,
}

/// A change of a record other than a design or an impression.
#[derive(Clone, Debug, PartialEq)]
pub enum RecordChange {
    /// It is new.
    New,
    /// Its address leads to this one: its key changed, or it was merged.
    Leads(IssuedAddress),
    /// These subjects were revised.
    Revised(Vec<Subject>),
}

impl EditionAccount {
    /// The account of an edition, by its place in [`Register::editions`].
    #[must_use]
    pub fn of(register: &Register, edition: usize) -> EditionAccount {
        let accounting = Accounting::of(register, edition);
        let mut account = EditionAccount::default();
        let mut designs: BTreeMap<Key, DesignAccount> = BTreeMap::new();
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
                    let design = of_design(&mut designs, &sheet.design);
                    design.sheets.push(SheetAccount { sheet, changes });
                }
                IssuedAddress::Record(Target::Design(key)) => {
                    let changes = accounting.of_entry(address, entry);
                    if !changes.is_empty() {
                        of_design(&mut designs, key).changes.splice(0..0, changes);
                    }
                }
                IssuedAddress::Part(key, part, name) => {
                    let changes = accounting.of_part(address, entry);
                    let changes = changes
                        .into_iter()
                        .map(|change| DesignChange::Part(*part, name.clone(), change));
                    let changes: Vec<_> = changes.collect();
                    if !changes.is_empty() {
                        of_design(&mut designs, key).changes.extend(changes);
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
        let designs = designs.into_values().map(DesignAccount::in_short);
        account.designs = designs.filter(|design| !design.is_empty()).collect();
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

impl DesignAccount {
    /// Whether the design itself is new in the edition.
    #[must_use]
    pub fn is_new(&self) -> bool {
        self.changes.contains(&DesignChange::New)
    }

    fn is_empty(&self) -> bool {
        self.changes.is_empty() && self.sheets.is_empty()
    }

    /// Without what the other changes tell: every part of a new design is new; that states were revised is told by
    /// the states that are new or stand otherwise.
    fn in_short(mut self) -> DesignAccount {
        if self.is_new() {
            self.changes.retain(|change| *change == DesignChange::New);
            return self;
        }
        let told: BTreeSet<Subject> = self
            .changes
            .iter()
            .filter_map(|change| match change {
                DesignChange::Part(part, _, PartChange::New | PartChange::Standing(_)) => {
                    Some(match part {
                        DesignPart::Matrix => Subject::Matrices,
                        DesignPart::State => Subject::States,
                        DesignPart::Printing => Subject::Printings,
                        DesignPart::Variant => Subject::Variants,
                    })
                }
                DesignChange::Standing(_) => Some(Subject::Standing),
                _ => None,
            })
            .collect();
        for change in &mut self.changes {
            if let DesignChange::Revised(subjects) = change {
                subjects.retain(|subject| !told.contains(subject));
            }
        }
        self.changes.retain(
            |change| !matches!(change, DesignChange::Revised(subjects) if subjects.is_empty()),
        );
        self
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

/// The register as one of its editions changed it.
struct Accounting<'r> {
    register: &'r Register,
    edition: usize,
    /// By the address that they lead to since this edition: the addresses of records that had another key.
    moved: BTreeMap<IssuedAddress, (&'r IssuedAddress, &'r IssuedEntry)>,
}

impl<'r> Accounting<'r> {
    fn of(register: &'r Register, edition: usize) -> Accounting<'r> {
        let leading = register.entries.iter().filter_map(|(address, entry)| {
            let (_, now) = entry.said.get(&Aspect::Leads)?.change(edition)?;
            Some((IssuedAddress::named(now)?, (address, entry)))
        });
        Accounting {
            register,
            edition,
            moved: leading.collect(),
        }
    }

    /// Whether an entry is new, and not one that only has another key.
    fn is_new(&self, address: &IssuedAddress, entry: &IssuedEntry) -> bool {
        entry.since.value == self.edition && !self.moved.contains_key(address)
    }

    /// The key that an entry had, where it changed in this edition.
    fn former_key(&self, address: &IssuedAddress, entry: &IssuedEntry) -> Option<String> {
        let is_first = entry.since.value == self.edition;
        let (former, _) = self.moved.get(address).filter(|_| is_first)?;
        Some(former.key())
    }

    /// The value of an aspect before and in this edition, where the two differ; of a record that had another key, the
    /// value of that.
    fn change(
        &self,
        address: &IssuedAddress,
        entry: &IssuedEntry,
        aspect: Aspect,
    ) -> Option<(String, String)> {
        let now = entry.at(aspect, self.edition);
        let before = if entry.since.value == self.edition {
            self.moved.get(address).map(|(_, former)| *former)
        } else {
            Some(entry)
        };
        let last = self.edition.checked_sub(1);
        let was = match (before, last) {
            (Some(before), Some(last)) => before.at(aspect, last),
            _ => "",
        };
        (was != now).then(|| (was.to_owned(), now.to_owned()))
    }

    /// Whether an address leads elsewhere in this edition: what its record said stands there.
    fn leads_elsewhere(&self, entry: &IssuedEntry) -> bool {
        !entry.at(Aspect::Leads, self.edition).is_empty()
    }

    fn standing(&self, address: &IssuedAddress, entry: &IssuedEntry) -> Option<Option<String>> {
        let (_, now) = self.change(address, entry, Aspect::Standing)?;
        Some(Some(now).filter(|standing| !standing.is_empty()))
    }

    fn revised(&self, entry: &IssuedEntry) -> Vec<Subject> {
        let revised = entry.revised.get(&self.edition);
        revised.cloned().unwrap_or_default()
    }

    fn of_entry(&self, address: &IssuedAddress, entry: &IssuedEntry) -> Vec<DesignChange> {
        let mut changes = Vec::new();
        if entry.since.value > self.edition || self.leads_elsewhere(entry) {
            return changes;
        }
        if self.is_new(address, entry) {
            changes.push(DesignChange::New);
            return changes;
        }
        if let Some(was) = self.former_key(address, entry) {
            changes.push(DesignChange::Moved { was });
        }
        if let Some((was, now)) = self.change(address, entry, Aspect::Number) {
            changes.push(DesignChange::Number { was, now });
        }
        if let Some(standing) = self.standing(address, entry) {
            changes.push(DesignChange::Standing(standing));
        }
        let revised = self.revised(entry);
        if !revised.is_empty() {
            changes.push(DesignChange::Revised(revised));
        }
        changes
    }

    fn of_part(&self, address: &IssuedAddress, entry: &IssuedEntry) -> Vec<PartChange> {
        let mut changes = Vec::new();
        if entry.since.value > self.edition || self.leads_elsewhere(entry) {
            return changes;
        }
        if self.is_new(address, entry) {
            changes.push(PartChange::New);
            return changes;
        }
        // A part of a design whose key changed has another address and is the same part.
        if let Some(was) = self.former_key(address, entry)
            && was.split_once('/').map(|(_, key)| key)
                != address.key().split_once('/').map(|(_, key)| key)
        {
            changes.push(PartChange::Moved { was });
        }
        let standing = self.standing(address, entry);
        let is_standing = standing.is_none();
        changes.extend(standing.map(PartChange::Standing));
        if let Some((was, now)) = self
            .change(address, entry, Aspect::Numeral)
            .filter(|_| is_standing)
        {
            changes.push(PartChange::Numeral { was, now });
        }
        changes
    }

    fn of_sheet(&self, address: &IssuedAddress, entry: &IssuedEntry) -> Vec<SheetChange> {
        let mut changes = Vec::new();
        if entry.since.value > self.edition || self.leads_elsewhere(entry) {
            return changes;
        }
        if self.is_new(address, entry) {
            changes.push(SheetChange::New);
            return changes;
        }
        let mut told = Vec::new();
        // Where a state or a holder only has another key, the sheet is what it was.
        if let Some((was, now)) = self.change(address, entry, Aspect::Identified) {
            told.push(Subject::Identification);
            if self.with_present_keys(address, &was) != now {
                changes.push(SheetChange::Identified { was, now });
            }
        }
        if let Some((was, now)) = self.change(address, entry, Aspect::Holder) {
            told.push(Subject::Whereabouts);
            if self.present_key(IssuedKind::Holder, &was) != now {
                changes.push(SheetChange::Holder { was, now });
            }
        }
        if let Some((was, now)) = self.change(address, entry, Aspect::Sheet)
            && self.present_key(IssuedKind::Impression, &was) != now
        {
            told.push(Subject::Relations);
            changes.push(SheetChange::Sheet(now.parse().ok()));
        }
        if let Some(standing) = self.standing(address, entry) {
            changes.push(SheetChange::Standing(standing));
            told.push(Subject::Standing);
        }
        let mut revised = self.revised(entry);
        revised.retain(|subject| !told.contains(subject));
        if !revised.is_empty() {
            changes.push(SheetChange::Revised(revised));
        }
        changes
    }

    /// The key of a record as it is in this edition, where the edition led it to another.
    fn present_key(&self, kind: IssuedKind, key: &str) -> String {
        let address = IssuedAddress::parse(kind, key).ok();
        let to = address.and_then(|address| self.led(&address));
        to.map_or_else(|| key.to_owned(), |to| to.key())
    }

    /// An identification of the edition before, with the keys that states, printings and variants have in this one.
    /// `address` is that of the sheet.
    fn with_present_keys(&self, address: &IssuedAddress, written: &str) -> String {
        let before = self
            .moved
            .get(address)
            .map_or(address, |(former, _)| *former);
        let (Some(design), Ok(mut readings)) = (before.design(), written.parse::<IssuedReadings>())
        else {
            return written.to_owned();
        };
        let now = |part: DesignPart, key: &mut Key| {
            let address = IssuedAddress::Part(design.clone(), part, key.clone());
            if let Some(IssuedAddress::Part(_, _, present)) = self.led(&address) {
                *key = present;
            }
        };
        for reading in &mut readings.0 {
            for (matrix, state) in &mut reading.states {
                if let Some(matrix) = matrix {
                    now(DesignPart::Matrix, matrix);
                }
                now(DesignPart::State, state);
            }
            for printing in &mut reading.printings {
                now(DesignPart::Printing, printing);
            }
            if let Some(variant) = &mut reading.variant {
                now(DesignPart::Variant, variant);
            }
        }
        readings.to_string()
    }

    /// The address that an address leads to in this edition.
    fn led(&self, address: &IssuedAddress) -> Option<IssuedAddress> {
        let entry = self.register.entry(address)?;
        IssuedAddress::named(entry.at(Aspect::Leads, self.edition))
    }

    /// The holders that the changes of a sheet concern, each with the change that matters most to it.
    fn of_holders(
        &self,
        entry: &IssuedEntry,
        changes: &[SheetChange],
    ) -> Vec<(Key, HolderChangeKind)> {
        let now = entry.at(Aspect::Holder, self.edition).parse::<Key>();
        let mut concerned = Vec::new();
        let mut kinds = Vec::new();
        for change in changes {
            kinds.push(match change {
                SheetChange::New => HolderChangeKind::New,
                SheetChange::Holder { was, .. } => {
                    let was = was.parse::<Key>();
                    concerned.extend(was.map(|key| (key, HolderChangeKind::Left)));
                    HolderChangeKind::Came
                }
                SheetChange::Identified { .. } => HolderChangeKind::Identified,
                SheetChange::Standing(_) => HolderChangeKind::Standing,
                SheetChange::Sheet(_) | SheetChange::Revised(_) => HolderChangeKind::Revised,
            });
        }
        if let (Ok(now), Some(kind)) = (now, kinds.into_iter().min()) {
            concerned.push((now, kind));
        }
        concerned
    }

    fn of_record(&self, address: &IssuedAddress, entry: &IssuedEntry) -> Option<RecordAccount> {
        if entry.since.value > self.edition {
            return None;
        }
        let led = entry.said.get(&Aspect::Leads);
        let change = match led.and_then(|said| said.change(self.edition)) {
            Some((_, now)) => RecordChange::Leads(IssuedAddress::named(now)?),
            None if self.leads_elsewhere(entry) => return None,
            None if self.is_new(address, entry) => RecordChange::New,
            None => {
                let revised = self.revised(entry);
                if revised.is_empty() {
                    return None;
                }
                RecordChange::Revised(revised)
            }
        };
        Some(RecordAccount {
            address: address.clone(),
            change,
        })
    }
}
