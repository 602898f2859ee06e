//! Finds the functions by parsing the core's source.
use std::collections::{BTreeMap, BTreeSet};
use std::path::Path;
use syn::{ImplItem, Item, ReturnType, Signature, Visibility};

/// Every public function that returns an `Approx`, bare or wrapped, and every
/// public one of the float door that returns a float: `Type::name` or `file::name`.
pub(crate) fn approximate() -> BTreeSet<String> {
    let mut names = BTreeSet::new();
    for (module, file) in core() {
        let stem = module.last().expect("a name");
        let door = module.ends_with(&["number".to_owned(), "float".to_owned()]);
        each_function(&file.items, stem, &mut |within, signature, returned| {
            let whole = returns_self(signature) && within == "Approx";
            if !whole && (mentions(returned, "Approx") || (door && mentions(returned, "f64"))) {
                names.insert(format!("{within}::{}", signature.ident));
            }
        });
    }
    names
}

/// Every public function whose answer has an `Approx` within it, however deep, named
/// likewise; those that [`approximate`] names are left out.
pub(crate) fn composed() -> BTreeSet<String> {
    let core = core();
    let types = Types::of(&core);
    let inexact = types.inexact();
    let mut names = BTreeSet::new();
    for (module, file) in &core {
        let stem = module.last().expect("a name");
        each_function(&file.items, stem, &mut |within, signature, returned| {
            let mut paths = paths(returned);
            if paths.iter().any(|path| path.last().is_some_and(|last| last == "Approx")) {
                return;
            }
            if paths.iter().any(|path| path.len() == 1 && path[0] == "Self") {
                paths.push(vec![within.to_owned()]);
            }
            let within_it = |path: &Vec<String>| {
                types.called(module, path).is_some_and(|found| inexact.contains(&found))
            };
            if paths.iter().any(within_it) {
                names.insert(format!("{within}::{}", signature.ident));
            }
        });
    }
    names
}

/// The functions of a folder of tests by name, with the texts of their bodies and files.
pub(crate) fn functions(folder: &str) -> BTreeMap<String, [String; 2]> {
    let mut all = BTreeMap::new();
    let ours = Path::new(env!("CARGO_MANIFEST_DIR")).join(folder);
    each_file(&ours, &mut |path| {
        let text = std::fs::read_to_string(path).expect("a source file");
        for after in text.split("\nfn ").skip(1) {
            let name = after.split('(').next().unwrap_or_default();
            let whole = after.split("\n}\n").next().unwrap_or_default();
            let body = whole.split_once('{').map_or("", |(_, body)| body);
            all.insert(name.to_owned(), [body.to_owned(), text.clone()]);
        }
    });
    all
}

/// Where a file stands among the modules: `["bench", "spring", "torsion"]`; that of a
/// `mod.rs` is its folder's.
type Module = Vec<String>;

/// The core's files, parsed.
fn core() -> Vec<(Module, syn::File)> {
    let mut files = Vec::new();
    let core = Path::new(env!("CARGO_MANIFEST_DIR")).join("../core/src");
    each_file(&core, &mut |path| {
        let text = std::fs::read_to_string(path).expect("a source file");
        let file = syn::parse_file(&text).unwrap_or_else(|e| panic!("{}: {e}", path.display()));
        let within = path.strip_prefix(&core).expect("one of its files").with_extension("");
        let parts = within.iter().map(|part| part.to_string_lossy().into_owned());
        let mut module: Module = parts.collect();
        if module.len() > 1 && module.last().is_some_and(|last| last == "mod") {
            module.pop();
        }
        files.push((module, file));
    });
    files
}

fn each_file(folder: &Path, seen: &mut dyn FnMut(&Path)) {
    for entry in std::fs::read_dir(folder).expect("a folder of sources") {
        let path = entry.expect("an entry").path();
        if path.is_dir() {
            each_file(&path, seen);
        } else if path.extension().is_some_and(|ext| ext == "rs") {
            seen(&path);
        }
    }
}

/// Shows every public function that returns something: what it belongs to, its signature
/// and what it returns.
fn each_function(items: &[Item], within: &str, seen: &mut dyn FnMut(&str, &Signature, &syn::Type)) {
    let mut show = |within: &str, visible: &Visibility, signature: &Signature| {
        let ReturnType::Type(_, returned) = &signature.output else { return };
        if matches!(visible, Visibility::Public(_)) {
            seen(within, signature, returned);
        }
    };
    for item in items {
        match item {
            Item::Fn(function) => show(within, &function.vis, &function.sig),
            Item::Impl(block) if block.trait_.is_none() => {
                let owner = last_name(&block.self_ty);
                for member in &block.items {
                    if let ImplItem::Fn(function) = member {
                        show(&owner, &function.vis, &function.sig);
                    }
                }
            }
            _ => {}
        }
    }
    for item in items {
        if let Item::Mod(module) = item {
            let inner = module.content.iter().flat_map(|(_, items)| items.clone());
            let inner: Vec<Item> = inner.collect();
            each_function(&inner, &module.ident.to_string(), seen);
        }
    }
}

/// The core's structs and enums, what they are made of, and what each file calls them.
struct Types {
    made_of: BTreeMap<(Module, String), Vec<Vec<String>>>,
    /// Names that a file takes from elsewhere, each with its whole path.
    taken: BTreeMap<Module, Vec<Vec<String>>>,
}

impl Types {
    fn of(core: &[(Module, syn::File)]) -> Self {
        let (mut made_of, mut taken) = (BTreeMap::new(), BTreeMap::new());
        for (module, file) in core {
            let mut uses = Vec::new();
            for item in &file.items {
                let (name, fields): (_, Vec<&syn::Field>) = match item {
                    Item::Struct(one) => (&one.ident, one.fields.iter().collect()),
                    Item::Enum(one) => {
                        (&one.ident, one.variants.iter().flat_map(|v| &v.fields).collect())
                    }
                    Item::Use(one) => {
                        spread(&one.tree, Vec::new(), module, &mut uses);
                        continue;
                    }
                    _ => continue,
                };
                let parts = fields.into_iter().flat_map(|field| paths(&field.ty)).collect();
                made_of.insert((module.clone(), name.to_string()), parts);
            }
            taken.insert(module.clone(), uses);
        }
        Self { made_of, taken }
    }

    /// The type that a file calls `path`: its own, the one it takes from elsewhere, or the
    /// only one of that name; none where the name is no type of the core.
    fn called(&self, module: &Module, path: &[String]) -> Option<(Module, String)> {
        let name = path.last()?;
        let own = (module.clone(), name.clone());
        if path.len() == 1 && self.made_of.contains_key(&own) {
            return Some(own);
        }
        let all: Vec<_> = self.made_of.keys().filter(|(_, known)| known == name).collect();
        if let [only] = *all {
            return Some(only.clone());
        }
        let uses = self.taken.get(module)?;
        let first = path.first()?;
        let whole = uses.iter().find(|whole| whole.last() == Some(first));
        let mut whole = whole.cloned().unwrap_or_default();
        whole.extend(path.iter().skip(1).cloned());
        whole.pop();
        let at = |found: &(Module, String)| found.0 == whole;
        let below = |found: &(Module, String)| !whole.is_empty() && found.0.starts_with(&whole);
        let found = all.iter().find(|found| at(found)).or(all.iter().find(|found| below(found)));
        found.map(|found| (*found).clone())
    }

    /// Those that have an `Approx` within them.
    fn inexact(&self) -> BTreeSet<(Module, String)> {
        let mut inexact = BTreeSet::new();
        loop {
            let before = inexact.len();
            for (name, parts) in &self.made_of {
                let has = |path: &Vec<String>| {
                    path.last().is_some_and(|last| last == "Approx")
                        || self.called(&name.0, path).is_some_and(|part| inexact.contains(&part))
                };
                if parts.iter().any(has) {
                    inexact.insert(name.clone());
                }
            }
            if inexact.len() == before {
                return inexact;
            }
        }
    }
}

/// The paths that a `use` takes, from the crate's root.
fn spread(tree: &syn::UseTree, mut path: Module, module: &Module, all: &mut Vec<Module>) {
    match tree {
        syn::UseTree::Path(one) => {
            match &*one.ident.to_string() {
                "crate" => {}
                "super" if path.is_empty() => {
                    path.clone_from(module);
                    path.pop();
                }
                "super" => {
                    path.pop();
                }
                "self" => path.clone_from(module),
                name if path.is_empty() && matches!(name, "core" | "heapless" | "std") => return,
                name => path.push(name.to_owned()),
            }
            spread(&one.tree, path, module, all);
        }
        syn::UseTree::Name(one) => {
            if one.ident != "self" {
                path.push(one.ident.to_string());
            }
            all.push(path);
        }
        syn::UseTree::Group(group) => {
            group.items.iter().for_each(|tree| spread(tree, path.clone(), module, all));
        }
        _ => {}
    }
}

/// Every path that stands anywhere in `ty`.
fn paths(ty: &syn::Type) -> Vec<Vec<String>> {
    struct All(Vec<Vec<String>>);
    impl<'ast> syn::visit::Visit<'ast> for All {
        fn visit_path(&mut self, path: &'ast syn::Path) {
            self.0.push(path.segments.iter().map(|part| part.ident.to_string()).collect());
            syn::visit::visit_path(self, path);
        }
    }
    let mut all = All(Vec::new());
    syn::visit::Visit::visit_type(&mut all, ty);
    all.0
}

fn returns_self(signature: &Signature) -> bool {
    matches!(&signature.output, ReturnType::Type(_, ty) if last_name(ty) == "Self")
}

fn last_name(ty: &syn::Type) -> String {
    match ty {
        syn::Type::Path(path) => {
            path.path.segments.last().map(|s| s.ident.to_string()).unwrap_or_default()
        }
        _ => String::new(),
    }
}

/// Whether `name` stands anywhere in `ty`.
fn mentions(ty: &syn::Type, name: &str) -> bool {
    struct Seek<'a>(&'a str, bool);
    impl<'ast> syn::visit::Visit<'ast> for Seek<'_> {
        fn visit_ident(&mut self, ident: &'ast syn::Ident) {
            self.1 |= ident == self.0;
        }
    }
    let mut seek = Seek(name, false);
    syn::visit::Visit::visit_type(&mut seek, ty);
    seek.1
}
