//! Every public function of the core is called by the no-panic proof: both
//! sources are parsed, and a function without a call fails with its name.
use std::collections::BTreeSet;
use std::fs;
use std::path::Path;
use syn::visit::{self, Visit};

/// Public functions, as `Type::name` or, outside an `impl`, as `name`.
#[derive(Default)]
struct Public {
    owner: Option<String>,
    names: BTreeSet<String>,
}

impl Visit<'_> for Public {
    fn visit_item_mod(&mut self, module: &syn::ItemMod) {
        let test = |a: &syn::Attribute| {
            a.path().is_ident("cfg") && a.parse_args::<syn::Ident>().is_ok_and(|i| i == "test")
        };
        if !module.attrs.iter().any(test) {
            visit::visit_item_mod(self, module);
        }
    }

    fn visit_item_impl(&mut self, block: &syn::ItemImpl) {
        if let (None, syn::Type::Path(path)) = (&block.trait_, &*block.self_ty) {
            self.owner = path.path.segments.last().map(|s| s.ident.to_string());
            visit::visit_item_impl(self, block);
            self.owner = None;
        }
    }

    fn visit_impl_item_fn(&mut self, function: &syn::ImplItemFn) {
        if let (syn::Visibility::Public(_), Some(owner)) = (&function.vis, &self.owner) {
            self.names.insert(format!("{owner}::{}", function.sig.ident));
        }
    }

    fn visit_item_fn(&mut self, function: &syn::ItemFn) {
        if matches!(function.vis, syn::Visibility::Public(_)) {
            self.names.insert(function.sig.ident.to_string());
        }
    }
}

/// Paths that are called, by their last two parts and by their last part after a module.
#[derive(Default)]
struct Called(BTreeSet<String>);

impl Visit<'_> for Called {
    fn visit_expr_call(&mut self, call: &syn::ExprCall) {
        if let syn::Expr::Path(path) = &*call.func {
            let parts: Vec<String> =
                path.path.segments.iter().map(|s| s.ident.to_string()).collect();
            if let [.., owner, name] = parts.as_slice() {
                let in_type = owner.starts_with(char::is_uppercase);
                self.0.insert(if in_type { format!("{owner}::{name}") } else { name.clone() });
            }
        }
        visit::visit_expr_call(self, call);
    }
}

fn parse_all(folder: &Path, visitor: &mut impl for<'a> Visit<'a>) {
    let mut entries: Vec<_> = fs::read_dir(folder).unwrap().map(|e| e.unwrap().path()).collect();
    entries.sort();
    for path in entries {
        if path.is_dir() {
            parse_all(&path, visitor);
        } else if path.extension().is_some_and(|e| e == "rs") {
            visitor.visit_file(&syn::parse_file(&fs::read_to_string(&path).unwrap()).unwrap());
        }
    }
}

#[test]
fn every_public_function_of_the_core_is_called_by_the_proof() {
    let here = Path::new(env!("CARGO_MANIFEST_DIR"));
    let (mut public, mut called) = (Public::default(), Called::default());
    parse_all(&here.join("../core/src"), &mut public);
    parse_all(&here.join("no_panic/src"), &mut called);
    assert!(public.names.contains("Fraction::checked_add") && public.names.contains("gcd"));
    let missing: Vec<_> = public.names.difference(&called.0).collect();
    assert!(missing.is_empty(), "not called in tests/no_panic/src: {missing:#?}");
}
