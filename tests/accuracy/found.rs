//! Finds the functions by parsing the core's source.
use std::collections::BTreeSet;
use std::path::Path;
use syn::{ImplItem, Item, ReturnType, Signature, Visibility};

/// Every public function that returns an `Approx`, bare or wrapped, and every
/// public one of the float door that returns a float: `Type::name` or `file::name`.
pub(crate) fn approximate() -> BTreeSet<String> {
    let mut names = BTreeSet::new();
    let core = Path::new(env!("CARGO_MANIFEST_DIR")).join("../core/src");
    each_file(&core, &mut |path| {
        let text = std::fs::read_to_string(path).expect("a source file");
        let file = syn::parse_file(&text).unwrap_or_else(|e| panic!("{}: {e}", path.display()));
        let stem = path.file_stem().expect("a name").to_string_lossy().into_owned();
        let door = path.ends_with("number/float.rs");
        for item in &file.items {
            look(item, &stem, door, &mut names);
        }
    });
    names
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

fn look(item: &Item, within: &str, door: bool, names: &mut BTreeSet<String>) {
    let mut keep = |within: &str, signature: &Signature| {
        let ReturnType::Type(_, returned) = &signature.output else { return };
        if mentions(returned, "Approx") || (door && mentions(returned, "f64")) {
            names.insert(format!("{within}::{}", signature.ident));
        }
    };
    match item {
        Item::Fn(function) if public(&function.vis) => keep(within, &function.sig),
        Item::Impl(block) if block.trait_.is_none() => {
            let owner = last_name(&block.self_ty);
            for member in &block.items {
                if let ImplItem::Fn(function) = member {
                    let whole = returns_self(&function.sig) && owner == "Approx";
                    if public(&function.vis) && !whole {
                        keep(&owner, &function.sig);
                    }
                }
            }
        }
        Item::Mod(module) => {
            let inner = module.content.iter().flat_map(|(_, items)| items);
            for item in inner {
                look(item, &module.ident.to_string(), door, names);
            }
        }
        _ => {}
    }
}

fn public(visibility: &Visibility) -> bool {
    matches!(visibility, Visibility::Public(_))
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
