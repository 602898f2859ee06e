//! The page and the JavaScript package: no trade arithmetic of their own.
