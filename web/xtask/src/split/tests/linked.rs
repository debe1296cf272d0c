//! What the compiler and the linker make of data, closures and tables of functions.
#![no_std]

#[panic_handler]
fn panic(_: &core::panic::PanicInfo<'_>) -> ! {
    loop {}
}

trait Shape {
    fn area(&self, side: i32) -> i32;
}

struct Square;
struct Strip;

impl Shape for Square {
    fn area(&self, side: i32) -> i32 {
        side * side
    }
}

impl Shape for Strip {
    fn area(&self, side: i32) -> i32 {
        side * WIDTHS[(side & 3) as usize]
    }
}

static WIDTHS: [i32; 4] = [31, 37, 41, 43];
static SHAPES: [&(dyn Shape + Sync); 2] = [&Square, &Strip];
static OWN: [i32; 3] = [3, 5, 7];
static COUNTS: [i32; 5] = [1009, 1013, 1019, 1021, 1031];

mod later {
    /// Which shape, and what else, only shows when it runs.
    #[inline(never)]
    pub fn view(given: i32) -> i32 {
        let shape = super::SHAPES[(given & 1) as usize];
        shape.area(given) + super::counted(given)
    }
}

mod other {
    #[inline(never)]
    pub fn view(given: i32) -> i32 {
        super::counted(given + 1)
    }
}

#[inline(never)]
fn counted(given: i32) -> i32 {
    COUNTS[(given % 5) as usize]
}

#[unsafe(no_mangle)]
pub extern "C" fn open(given: i32) -> i32 {
    later::view(given & 0xff)
}

#[unsafe(no_mangle)]
pub extern "C" fn open_other(given: i32) -> i32 {
    other::view(given & 0xff)
}

#[unsafe(no_mangle)]
pub extern "C" fn own(given: i32) -> i32 {
    OWN[(given & 0xff) as usize % 3]
}
