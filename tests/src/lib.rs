//! What the tests share: heads as rows name them, and rows read from files.
pub mod ask;
pub mod heads;
pub mod plainly;
pub mod rows;
pub mod walk;

/// Runs `work` on a thread with room for answers that list hundreds of ways a
/// kind: they live on the stack.
///
/// # Panics
/// When `work` does.
pub fn roomy<T: Send>(work: impl FnOnce() -> T + Send) -> T {
    const STACK: usize = 256 << 20;
    std::thread::scope(|scope| {
        let thread = std::thread::Builder::new().stack_size(STACK).spawn_scoped(scope, work);
        match thread.expect("a thread can be started").join() {
            Ok(done) => done,
            Err(panic) => std::panic::resume_unwind(panic),
        }
    })
}
