//! The modules of the crates: the definitions, imports and paths in each.
//!
//! Items for tests (`#[cfg(test)]`, `#[test]`) are left out wherever they stand in a file, with the files of
//! their modules. Macro calls are read as tokens, so that a path within `vec![…]` counts as well.

use std::collections::{BTreeMap, BTreeSet};
use std::path::{Path, PathBuf};

use proc_macro2::{Spacing, TokenStream, TokenTree};
use syn::spanned::Spanned;
use syn::visit::{self, Visit};
use syn::{Attribute, Item, UseTree, Visibility};

use super::sources::{Crate, Texts};

/// A path as it is written: `crate`, `model`, `key`, `Key`.
pub type Names = Vec<String>;

/// What a name stands for in a module.
#[derive(Clone, Debug)]
pub enum Meaning {
    /// An item that its file defines.
    Item,
    /// A module, by its place in the house.
    Module(usize),
    /// An import by `use`.
    Import(Names),
}

/// A path that some code names.
#[derive(Clone, Debug)]
pub struct Reference {
    /// The module it stands in.
    pub module: usize,
    /// The path.
    pub path: Names,
    /// The line in the module's file, from 1.
    pub line: usize,
    /// Whether a `pub use` names it: a re-export, which by itself uses nothing.
    pub is_reexport: bool,
}

/// A module.
#[derive(Debug)]
pub struct Module {
    /// Its file below `src`.
    pub file: PathBuf,
    /// The module it stands in.
    pub parent: Option<usize>,
    /// The module its crate begins with.
    pub root: usize,
    /// The names it has. A name may mean a module and an item.
    pub names: BTreeMap<String, Vec<Meaning>>,
    /// The paths of its `use …::*`.
    pub globs: Vec<Names>,
}

/// The modules of all crates and what they refer to.
#[derive(Default)]
pub struct House {
    pub modules: Vec<Module>,
    pub references: Vec<Reference>,
    /// The modules with which crates begin, by the crates' names.
    pub roots: BTreeMap<String, usize>,
    /// The files that define each `macro_rules!`.
    pub macros: BTreeMap<String, BTreeSet<PathBuf>>,
}

impl House {
    /// The house of some crates.
    pub fn of(crates: &[Crate], texts: &Texts) -> House {
        let mut house = House::default();
        for of_crate in crates {
            let folder = of_crate.root.parent().unwrap_or(Path::new("")).to_owned();
            let root = house.modules.len();
            house.roots.insert(of_crate.name.clone(), root);
            let place = house.module(of_crate.root.clone(), None, root);
            let items = parsed(&of_crate.root, texts).items;
            house.read(place, &items, &folder, texts);
        }
        house
    }

    fn module(&mut self, file: PathBuf, parent: Option<usize>, root: usize) -> usize {
        self.modules.push(Module {
            file,
            parent,
            root,
            names: BTreeMap::new(),
            globs: Vec::new(),
        });
        self.modules.len() - 1
    }

    /// Reads the items of a module whose own modules stand in `folder`.
    fn read(&mut self, place: usize, items: &[Item], folder: &Path, texts: &Texts) {
        for item in items {
            if is_for_tests(attributes(item)) {
                continue;
            }
            if let Item::Mod(inner) = item {
                let name = inner.ident.to_string();
                let root = self.modules[place].root;
                let (file, folder, items) = if let Some((_, items)) = &inner.content {
                    let file = self.modules[place].file.clone();
                    (file, folder.join(&name), items.clone())
                } else {
                    let flat = folder.join(format!("{name}.rs"));
                    let deep = folder.join(&name).join("mod.rs");
                    let named = path_of(&inner.attrs).map(|path| folder.join(path));
                    let at = named.clone().unwrap_or_else(|| {
                        if texts.contains_key(&flat) {
                            flat
                        } else {
                            deep
                        }
                    });
                    let below = match &named {
                        Some(path) => path.parent().unwrap_or(folder).to_owned(),
                        None => folder.join(&name),
                    };
                    let items = parsed(&at, texts).items;
                    (at, below, items)
                };
                let child = self.module(file, Some(place), root);
                self.name(place, &name, Meaning::Module(child));
                self.read(child, &items, &folder, texts);
                continue;
            }
            if let Some(name) = name_of(item) {
                self.name(place, &name, Meaning::Item);
            }
            if let Item::Macro(definition) = item
                && let Some(name) = &definition.ident
            {
                let file = self.modules[place].file.clone();
                self.macros
                    .entry(name.to_string())
                    .or_default()
                    .insert(file);
            }
            let mut reader = Reader {
                house: self,
                place,
                depth: 0,
            };
            reader.visit_item(item);
        }
    }

    fn name(&mut self, place: usize, name: &str, meaning: Meaning) {
        let names = &mut self.modules[place].names;
        names.entry(name.to_owned()).or_default().push(meaning);
    }
}

fn parsed(path: &Path, texts: &Texts) -> syn::File {
    let shown = path.display();
    let text = texts.get(path);
    let text = text.unwrap_or_else(|| panic!("{shown} is not there, and a module names it"));
    syn::parse_file(text).unwrap_or_else(|fault| panic!("{shown}: {fault}"))
}

/// The lines of a file that are for tests alone.
pub fn lines_for_tests(text: &str) -> usize {
    let file = syn::parse_file(text).unwrap();
    let tests = file.items.iter().filter(|i| is_for_tests(attributes(i)));
    let lines = |item: &Item| {
        let first = attributes(item)
            .iter()
            .map(|a| a.span().start().line)
            .chain([item.span().start().line])
            .min();
        item.span().end().line + 1 - first.unwrap_or_default()
    };
    tests.map(lines).sum()
}

/// Whether attributes state that the item after them is compiled for tests alone.
pub fn is_for_tests(attributes: &[Attribute]) -> bool {
    attributes.iter().any(|attribute| {
        if attribute.path().is_ident("test") {
            return true;
        }
        let syn::Meta::List(list) = &attribute.meta else {
            return false;
        };
        attribute.path().is_ident("cfg") && demands_test(list.tokens.clone())
    })
}

/// Whether a `cfg` holds in tests alone: `test`, `all(test, …)`; not `not(test)` and not `any(test, …)`.
fn demands_test(tokens: TokenStream) -> bool {
    let tokens: Vec<TokenTree> = tokens.into_iter().collect();
    tokens.iter().enumerate().any(|(at, token)| match token {
        TokenTree::Ident(word) if word == "test" => true,
        TokenTree::Group(group) => {
            let before = at.checked_sub(1).and_then(|before| tokens.get(before));
            matches!(before, Some(TokenTree::Ident(word)) if word == "all")
                && demands_test(group.stream())
        }
        _ => false,
    })
}

fn attributes(item: &Item) -> &[Attribute] {
    match item {
        Item::Const(item) => &item.attrs,
        Item::Enum(item) => &item.attrs,
        Item::ExternCrate(item) => &item.attrs,
        Item::Fn(item) => &item.attrs,
        Item::Impl(item) => &item.attrs,
        Item::Macro(item) => &item.attrs,
        Item::Mod(item) => &item.attrs,
        Item::Static(item) => &item.attrs,
        Item::Struct(item) => &item.attrs,
        Item::Trait(item) => &item.attrs,
        Item::TraitAlias(item) => &item.attrs,
        Item::Type(item) => &item.attrs,
        Item::Union(item) => &item.attrs,
        Item::Use(item) => &item.attrs,
        _ => &[],
    }
}

fn name_of(item: &Item) -> Option<String> {
    Some(match item {
        Item::Const(item) => item.ident.to_string(),
        Item::Enum(item) => item.ident.to_string(),
        Item::Fn(item) => item.sig.ident.to_string(),
        Item::Macro(item) => item.ident.as_ref()?.to_string(),
        Item::Static(item) => item.ident.to_string(),
        Item::Struct(item) => item.ident.to_string(),
        Item::Trait(item) => item.ident.to_string(),
        Item::TraitAlias(item) => item.ident.to_string(),
        Item::Type(item) => item.ident.to_string(),
        Item::Union(item) => item.ident.to_string(),
        _ => return None,
    })
}

/// The path of `#[path = "…"]`.
fn path_of(attributes: &[Attribute]) -> Option<String> {
    let named = attributes.iter().find(|a| a.path().is_ident("path"))?;
    match &named.meta.require_name_value().ok()?.value {
        syn::Expr::Lit(syn::ExprLit {
            lit: syn::Lit::Str(path),
            ..
        }) => Some(path.value()),
        _ => None,
    }
}

/// Gathers the paths of one item of a module.
struct Reader<'a> {
    house: &'a mut House,
    place: usize,
    /// How many items deep the reader is; a `use` within a function re-exports nothing.
    depth: usize,
}

impl Reader<'_> {
    fn refer(&mut self, path: Names, line: usize, is_reexport: bool) {
        self.house.references.push(Reference {
            module: self.place,
            path,
            line,
            is_reexport,
        });
    }

    /// Takes in a tree of imports: `a::{b, c as d, e::*}`.
    fn import(&mut self, tree: &UseTree, before: &Names, is_reexport: bool) {
        let line = tree.span().start().line;
        let and = |name: &syn::Ident| {
            let mut path = before.clone();
            // `a::{self}` imports `a`.
            if name != "self" || before.is_empty() {
                path.push(name.to_string());
            }
            path
        };
        match tree {
            UseTree::Path(part) => self.import(&part.tree, &and(&part.ident), is_reexport),
            UseTree::Group(group) => {
                for tree in &group.items {
                    self.import(tree, before, is_reexport);
                }
            }
            UseTree::Glob(_) => {
                self.house.modules[self.place].globs.push(before.clone());
                self.refer(before.clone(), line, is_reexport);
            }
            UseTree::Name(name) => {
                let path = and(&name.ident);
                let known_as = path.last().cloned().unwrap_or_default();
                self.imported(&known_as, path, line, is_reexport);
            }
            UseTree::Rename(name) => {
                let path = and(&name.ident);
                self.imported(&name.rename.to_string(), path, line, is_reexport);
            }
        }
    }

    fn imported(&mut self, known_as: &str, path: Names, line: usize, is_reexport: bool) {
        // `use serde;` would name itself.
        if path.len() > 1 || path.first().is_none_or(|first| first != known_as) {
            let meaning = Meaning::Import(path.clone());
            self.house.name(self.place, known_as, meaning);
        }
        self.refer(path, line, is_reexport);
    }

    /// Takes in every path among tokens.
    fn tokens(&mut self, tokens: TokenStream) {
        let tokens: Vec<TokenTree> = tokens.into_iter().collect();
        let mut at = 0;
        while let Some(token) = tokens.get(at) {
            at += 1;
            match token {
                TokenTree::Group(group) => self.tokens(group.stream()),
                TokenTree::Ident(first) => {
                    let mut path = vec![first.to_string()];
                    while let (
                        Some(TokenTree::Punct(one)),
                        Some(TokenTree::Punct(two)),
                        Some(TokenTree::Ident(next)),
                    ) = (tokens.get(at), tokens.get(at + 1), tokens.get(at + 2))
                        && one.as_char() == ':'
                        && one.spacing() == Spacing::Joint
                        && two.as_char() == ':'
                    {
                        path.push(next.to_string());
                        at += 3;
                    }
                    self.refer(path, first.span().start().line, false);
                }
                TokenTree::Punct(point) if point.as_char() == '.' => {
                    // A field or method, even if another item has the same name.
                    if matches!(tokens.get(at), Some(TokenTree::Ident(_))) {
                        at += 1;
                    }
                }
                TokenTree::Punct(_) | TokenTree::Literal(_) => {}
            }
        }
    }
}

impl<'ast> Visit<'ast> for Reader<'_> {
    fn visit_item(&mut self, item: &'ast Item) {
        if !is_for_tests(attributes(item)) {
            self.depth += 1;
            visit::visit_item(self, item);
            self.depth -= 1;
        }
    }

    fn visit_item_use(&mut self, item: &'ast syn::ItemUse) {
        let is_reexport = self.depth == 1 && !matches!(item.vis, Visibility::Inherited);
        self.import(&item.tree, &Names::new(), is_reexport);
    }

    fn visit_impl_item(&mut self, item: &'ast syn::ImplItem) {
        let attributes = match item {
            syn::ImplItem::Const(item) => &item.attrs,
            syn::ImplItem::Fn(item) => &item.attrs,
            syn::ImplItem::Type(item) => &item.attrs,
            _ => return visit::visit_impl_item(self, item),
        };
        if !is_for_tests(attributes) {
            visit::visit_impl_item(self, item);
        }
    }

    fn visit_field(&mut self, field: &'ast syn::Field) {
        if !is_for_tests(&field.attrs) {
            visit::visit_field(self, field);
        }
    }

    /// `pub(in crate::study)` limits the use of an item, and uses nothing itself.
    fn visit_visibility(&mut self, _: &'ast Visibility) {}

    fn visit_path(&mut self, path: &'ast syn::Path) {
        let names = path.segments.iter().map(|s| s.ident.to_string()).collect();
        self.refer(names, path.span().start().line, false);
        visit::visit_path(self, path);
    }

    fn visit_macro(&mut self, call: &'ast syn::Macro) {
        visit::visit_macro(self, call);
        self.tokens(call.tokens.clone());
    }

    /// Paths in texts, as in `#[serde(serialize_with = "crate::page::html::text")]`.
    fn visit_attribute(&mut self, attribute: &'ast Attribute) {
        if attribute.path().is_ident("doc") {
            return;
        }
        let syn::Meta::List(list) = &attribute.meta else {
            return;
        };
        for token in list.tokens.clone() {
            let TokenTree::Literal(literal) = token else {
                continue;
            };
            let text = literal.to_string();
            let path = syn::parse_str::<syn::LitStr>(&text)
                .ok()
                .and_then(|text| text.parse::<syn::Path>().ok());
            if let Some(path) = path.filter(|path| path.segments.len() > 1) {
                let names = path.segments.iter().map(|s| s.ident.to_string()).collect();
                self.refer(names, attribute.span().start().line, false);
            }
        }
    }
}
