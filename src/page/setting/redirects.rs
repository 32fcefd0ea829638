//! Redirects: from the addresses of former keys to those of present ones, and from records that share the page of their
//! sheet to that page (docs/definitions.md, "Addresses").
//!
//! In: the public catalogue, which records share a page, and the published pictures. Out: [`Redirects`], of which
//! everything is made that answers at a former address: the pages there (`page::moved`), the copies of files for
//! other programs, and the rules for servers (`exchange`).
//!
//! Every redirect leads to the address at which the page stands now. None leads to another redirect: former keys are
//! combined here (a design and its points, a picture and its design), and a record without a page of its own is
//! passed over.

use std::collections::{BTreeMap, BTreeSet};

use super::address::{Address, Fragment};
use super::pictures::Pictures;
use crate::model::design::Design;
use crate::model::former::Named;
use crate::model::key::{ImpressionKey, Key, PictureKey, PictureOwner};
use crate::model::link::Target;
use crate::model::occurrence::DesignPart;
use crate::model::public::Public;
use crate::study::joined::JoinedSheets;

/// What a redirect moves.
#[derive(Clone, Copy, Debug, PartialEq, Eq, PartialOrd, Ord)]
pub enum Extent {
    /// The page at the address alone.
    Page,
    /// The page and everything below its folder.
    Folder,
}

/// A redirect from one folder of the site to another. Both are relative to the catalogue, with a slash at the end.
#[derive(Clone, Debug, PartialEq, Eq)]
pub struct Redirect {
    /// The former address.
    pub from: String,
    /// The present address.
    pub to: String,
    /// What it moves.
    pub extent: Extent,
}

/// The redirects of a site.
#[derive(Clone, Debug, Default)]
pub struct Redirects {
    /// In the order in which a server should try them: pages alone, then folders, the deepest first.
    all: Vec<Redirect>,
    /// The former folders of each folder.
    former: BTreeMap<String, BTreeSet<String>>,
    /// The folders of records beside which the files of another stand too: of those that share the page of a sheet, and
    /// of holders that were taken over.
    joined: BTreeMap<String, BTreeSet<String>>,
}

impl Redirects {
    /// The redirects of a catalogue.
    pub fn of(public: &Public, joined: &JoinedSheets, pictures: &Pictures) -> Redirects {
        let mut all = Collected::default();
        let former = FormerNames::of(public, pictures);
        for design in public.designs.values() {
            all.design(design, &former, joined);
        }
        for key in public.former.public() {
            // Designs have theirs above, with what stands in their folders: impressions and pictures.
            if let Named::Record(target) = &key.of
                && !matches!(target, Target::Design(_) | Target::Impression(_))
                && let Some(to) = Address::of_target(target)
            {
                let from = format!("{}/{}/", target.kind(), key.was.value);
                all.add(from, to.to_string(), Extent::Folder);
            }
        }
        let mut redirects = all.into_redirects();
        let folder = |key: &Key| Address::Holder(key.clone()).to_string();
        for holder in public.holders.values() {
            if let Some(last) = public.last_successor(&holder.key) {
                let beside = redirects.joined.entry(folder(last)).or_default();
                beside.insert(folder(&holder.key));
            }
        }
        redirects
    }

    /// The redirects, in the order in which a server should try them.
    pub fn iter(&self) -> impl Iterator<Item = &Redirect> {
        self.all.iter()
    }

    /// Whether there is none.
    pub fn is_empty(&self) -> bool {
        self.all.is_empty()
    }

    /// The other paths of a file for programs, which cannot follow a page that leads elsewhere: the former ones, and
    /// those beside the records that share the page. Where one of these has a file of its own, `is_taken` says so.
    pub fn copies(&self, path: &str, is_taken: impl Fn(&str) -> bool) -> BTreeSet<String> {
        let mut paths = self.former_paths(path);
        if let Some((folder, name)) = path.rsplit_once('/') {
            let joined = self.joined.get(&format!("{folder}/"));
            for beside in joined.into_iter().flatten() {
                let copy = format!("{beside}{name}");
                if !is_taken(&copy) {
                    paths.extend(self.former_paths(&copy));
                    paths.insert(copy);
                }
            }
        }
        paths
    }

    /// The former paths of the file at `path`, in the order of their names.
    pub fn former_paths(&self, path: &str) -> BTreeSet<String> {
        let mut paths = BTreeSet::new();
        if self.former.is_empty() {
            return paths;
        }
        for (at, _) in path.match_indices('/') {
            let (folder, rest) = path.split_at(at + 1);
            for former in self.former.get(folder).into_iter().flatten() {
                paths.insert(format!("{former}{rest}"));
            }
        }
        paths
    }
}

/// The place of a part, which also names the folder of its files; `None` for a kind of part without files.
fn place_of(kind: DesignPart, key: &Key) -> Option<String> {
    (kind != DesignPart::Variant).then(|| Fragment::of_part(kind, key).to_string())
}

/// The former keys of designs and of what stands in their folders.
struct FormerNames<'p> {
    designs: BTreeMap<&'p Key, Vec<&'p Key>>,
    points: BTreeMap<(&'p Key, &'p Key), Vec<&'p Key>>,
    pictures: BTreeMap<&'p PictureKey, Vec<&'p Key>>,
    /// The former places of the parts of each design that have files, and the present ones.
    parts: BTreeMap<&'p Key, Vec<(String, String)>>,
    /// The published pictures of each record.
    published: BTreeMap<&'p PictureOwner, Vec<&'p PictureKey>>,
}

impl<'p> FormerNames<'p> {
    fn of(public: &'p Public, pictures: &'p Pictures) -> FormerNames<'p> {
        let mut names = FormerNames {
            designs: BTreeMap::new(),
            points: BTreeMap::new(),
            pictures: BTreeMap::new(),
            parts: BTreeMap::new(),
            published: BTreeMap::new(),
        };
        for key in pictures.keys() {
            names.published.entry(&key.owner).or_default().push(key);
        }
        for key in public.former.public() {
            let was = &key.was.value;
            match &key.of {
                Named::Record(Target::Design(design)) => {
                    names.designs.entry(design).or_default().push(was);
                }
                Named::Record(Target::Picture(picture)) => {
                    names.pictures.entry(picture).or_default().push(was);
                }
                Named::Point(design, point) => {
                    names.points.entry((design, point)).or_default().push(was);
                }
                // Parts have no page: that of the design keeps a place for each former key.
                Named::Part(design, kind, part) => {
                    if let Some(now) = place_of(*kind, part)
                        && let Some(then) = place_of(*kind, was)
                    {
                        names.parts.entry(design).or_default().push((then, now));
                    }
                }
                Named::Condition(..) | Named::Record(_) => {}
            }
        }
        names
    }

    /// The keys of a design, its present one first.
    fn of_design(&self, design: &'p Key) -> Vec<&'p Key> {
        let former = self.designs.get(design).into_iter().flatten().copied();
        std::iter::once(design).chain(former).collect()
    }
}

#[derive(Default)]
struct Collected(Vec<Redirect>);

impl Collected {
    fn add(&mut self, from: String, to: String, extent: Extent) {
        if from != to {
            self.0.push(Redirect { from, to, extent });
        }
    }

    /// The redirects of a design, its points, sheets and pictures.
    fn design(&mut self, design: &Design, former: &FormerNames<'_>, joined: &JoinedSheets) {
        let present = &design.key;
        let folder = |key: &Key| Address::Design(key.clone()).to_string();
        for key in former.of_design(present) {
            self.add(folder(key), folder(present), Extent::Folder);
            for point in &design.points {
                let point = &point.key.value;
                let to = Address::Point(present.clone(), point.clone()).to_string();
                for was in former.points.get(&(present, point)).into_iter().flatten() {
                    let from = Address::Point(key.clone(), (*was).clone()).to_string();
                    self.add(from, to.clone(), Extent::Folder);
                }
            }
            for (then, now) in former.parts.get(present).into_iter().flatten() {
                let from = format!("{}{then}/", folder(key));
                self.add(from, format!("{}{now}/", folder(present)), Extent::Folder);
            }
            let owner = |key: &Key| PictureOwner::Design(key.clone());
            self.pictures(&owner(key), &owner(present), former);
            for number in design.impressions.keys() {
                let of = |key: &Key| ImpressionKey {
                    design: key.clone(),
                    number: *number,
                };
                let (from, to) = (of(key), of(present));
                let owner = |key: &ImpressionKey| PictureOwner::Impression(key.clone());
                self.pictures(&owner(&from), &owner(&to), former);
                let page = Address::Impression(joined.page_of(&to).clone()).to_string();
                let from = Address::Impression(from).to_string();
                let to = Address::Impression(to).to_string();
                if page != to {
                    self.add(from.clone(), page, Extent::Page);
                }
                self.add(from, to, Extent::Folder);
            }
        }
    }

    /// The image services of the pictures of one record, which had the key `from`.
    fn pictures(&mut self, from: &PictureOwner, to: &PictureOwner, former: &FormerNames<'_>) {
        let service = |owner: &PictureOwner, name: &Key| format!("picture/{owner}/{name}/");
        for key in former.published.get(to).into_iter().flatten().copied() {
            let names = former.pictures.get(key).into_iter().flatten().copied();
            for name in std::iter::once(&key.name).chain(names) {
                self.add(service(from, name), service(to, &key.name), Extent::Folder);
            }
        }
    }

    /// In the order in which a server should try them, each former address once: pages alone come first, then the
    /// deepest folders, then by address.
    fn into_redirects(self) -> Redirects {
        let mut all = self.0;
        let depth = |redirect: &Redirect| usize::MAX - redirect.from.matches('/').count();
        all.sort_by(|a, b| {
            let order = |r: &Redirect| (r.extent, depth(r));
            order(a).cmp(&order(b)).then_with(|| a.from.cmp(&b.from))
        });
        let mut former: BTreeMap<String, BTreeSet<String>> = BTreeMap::new();
        for redirect in &all {
            if redirect.extent == Extent::Folder {
                let of_folder = former.entry(redirect.to.clone()).or_default();
                of_folder.insert(redirect.from.clone());
            }
        }
        let mut joined: BTreeMap<String, BTreeSet<String>> = BTreeMap::new();
        for redirect in all.iter().filter(|r| r.extent == Extent::Page) {
            let beside = joined.entry(redirect.to.clone()).or_default();
            beside.insert(redirect.from.clone());
        }
        Redirects {
            all,
            former,
            joined,
        }
    }
}
