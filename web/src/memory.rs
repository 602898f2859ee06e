//! The page's memory. Nothing of a turn outlives it (its outcome is a text that
//! the browser has copied before the next turn begins), so memory is handed out
//! upwards, never taken back piece by piece, and is all free again at the next
//! turn. Nothing that is dropped needs code then, which makes the page a few kB
//! smaller; and what the last turn used, the next one uses again, so it stays flat.
use std::alloc::{GlobalAlloc, Layout};
use std::arch::wasm32::{memory_grow, memory_size};
use std::cell::Cell;

const A_PAGE: usize = 65_536;

unsafe extern "C" {
    /// Its address is where the linker's own data ends.
    static __heap_base: u8;
}

struct Upwards {
    /// Where the next piece goes; nought before the first one.
    next: Cell<usize>,
}

// SAFETY: the page's wasm has one thread.
unsafe impl Sync for Upwards {}

#[global_allocator]
static MEMORY: Upwards = Upwards { next: Cell::new(0) };

/// Makes all memory free again.
///
/// # Safety
/// Nothing that was allocated before may be used afterwards.
pub(crate) unsafe fn clear() {
    MEMORY.next.set(0);
}

impl Upwards {
    /// Whether memory reaches up to `end`, made larger where need be.
    fn reaches(end: usize) -> bool {
        let have = memory_size(0).saturating_mul(A_PAGE);
        let lacks = end.saturating_sub(have).div_ceil(A_PAGE);
        lacks == 0 || memory_grow(0, lacks) != usize::MAX
    }
}

// SAFETY: each piece starts where the one before it ends or above, so no two that
// are in use overlap; it is aligned, inside memory, and null where memory is at its end.
unsafe impl GlobalAlloc for Upwards {
    #[inline(never)]
    unsafe fn alloc(&self, layout: Layout) -> *mut u8 {
        let from = self.next.get().max(&raw const __heap_base as usize);
        let start = from.checked_next_multiple_of(layout.align());
        let Some(start) = start else { return std::ptr::null_mut() };
        match start.checked_add(layout.size()) {
            Some(end) if Self::reaches(end) => {
                self.next.set(end);
                start as *mut u8
            }
            _ => std::ptr::null_mut(),
        }
    }

    #[inline(always)]
    unsafe fn dealloc(&self, _: *mut u8, _: Layout) {}

    /// The newest piece grows where it stands; any other is copied.
    #[inline(never)]
    unsafe fn realloc(&self, piece: *mut u8, layout: Layout, size: usize) -> *mut u8 {
        if piece as usize + layout.size() == self.next.get() {
            self.next.set(piece as usize);
        }
        // SAFETY: the caller's promise for `size`; the alignment is as before.
        let wanted = unsafe { Layout::from_size_align_unchecked(size, layout.align()) };
        // SAFETY: as the caller of this function promised.
        let found = unsafe { self.alloc(wanted) };
        if !found.is_null() && found != piece {
            let keep = size.min(layout.size());
            // SAFETY: `found` has room for `size`, `piece` holds what it was asked for, and the
            // new piece lies above the old one.
            unsafe { std::ptr::copy_nonoverlapping(piece, found, keep) };
        }
        found
    }
}
