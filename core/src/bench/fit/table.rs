//! ISO 286-1 as tables: its formulae, rounded, miss its printed values at many sizes.
//!
//! Widths of the grades and positions of the letters up to 500 mm. n to zc, all sizes, and
//! a to m over 120 mm were read in print ("Machine Drawing", tables 15.2 and 15.3, and the
//! rows of `tests/published/fit_classes.csv`); what no row there holds is from memory of
//! the standard. Two figures of that book are wrong by the formulae: u over 200 to 225 mm
//! is 258, x over 355 to 400 mm 660.

/// Upper ends of the main steps of nominal size, in millimetres: above the one before,
/// up to and with this.
const STEPS: [u32; 13] = [3, 6, 10, 18, 30, 50, 80, 120, 180, 250, 315, 400, 500];

/// Upper ends of the finer steps that some letters have.
const FINE: [u32; 25] = [
    3, 6, 10, 14, 18, 24, 30, 40, 50, 65, 80, 100, 120, 140, 160, 180, 200, 225, 250, 280, 315,
    355, 400, 450, 500,
];

/// Widths of grades 3 to 12 in half micrometres, a row a grade: grade 3 has halves.
const GRADES: [[u16; 13]; 10] = [
    [4, 5, 5, 6, 8, 8, 10, 12, 16, 20, 24, 26, 30],
    [6, 8, 8, 10, 12, 14, 16, 20, 24, 28, 32, 36, 40],
    [8, 10, 12, 16, 18, 22, 26, 30, 36, 40, 46, 50, 54],
    [12, 16, 18, 22, 26, 32, 38, 44, 50, 58, 64, 72, 80],
    [20, 24, 30, 36, 42, 50, 60, 70, 80, 92, 104, 114, 126],
    [28, 36, 44, 54, 66, 78, 92, 108, 126, 144, 162, 178, 194],
    [50, 60, 72, 86, 104, 124, 148, 174, 200, 230, 260, 280, 310],
    [80, 96, 116, 140, 168, 200, 240, 280, 320, 370, 420, 460, 500],
    [120, 150, 180, 220, 260, 320, 380, 440, 500, 580, 640, 720, 800],
    [200, 240, 300, 360, 420, 500, 600, 700, 800, 920, 1040, 1140, 1260],
];

/// Finest and widest grade that is answered.
pub(super) const GRADE: (u8, u8) = (4, 16);

/// The letters, in the order of [`ROWS`].
pub(super) const LETTERS: [&str; 28] = [
    "a", "b", "c", "cd", "d", "e", "ef", "f", "fg", "g", "h", "js", "j", "k", "m", "n", "p", "r",
    "s", "t", "u", "v", "x", "y", "z", "za", "zb", "zc",
];

/// Places in [`LETTERS`] that rules speak of.
pub(super) const B: u8 = 1;
pub(super) const H: u8 = 10;
pub(super) const JS: u8 = 11;
pub(super) const J: u8 = 12;
pub(super) const K: u8 = 13;
pub(super) const M: u8 = 14;
pub(super) const N: u8 = 15;
pub(super) const P: u8 = 16;

/// Stands where the standard has no value.
const NO: i16 = i16::MIN;

/// Distance of a shaft's nearer limit from the line, in micrometres, a row a letter: by the
/// main steps, or by the finer ones where there are 25.
const ROWS: [&[i16]; 28] = [
    &[
        -270, -270, -280, -290, -290, -300, -300, -310, -320, -340, -360, -380, -410, -460, -520,
        -580, -660, -740, -820, -920, -1050, -1200, -1350, -1500, -1650,
    ],
    &[
        -140, -140, -150, -150, -150, -160, -160, -170, -180, -190, -200, -220, -240, -260, -280,
        -310, -340, -380, -420, -480, -540, -600, -680, -760, -840,
    ],
    &[
        -60, -70, -80, -95, -95, -110, -110, -120, -130, -140, -150, -170, -180, -200, -210, -230,
        -240, -260, -280, -300, -330, -360, -400, -440, -480,
    ],
    &[-34, -46, -56],
    &[-20, -30, -40, -50, -65, -80, -100, -120, -145, -170, -190, -210, -230],
    &[-14, -20, -25, -32, -40, -50, -60, -72, -85, -100, -110, -125, -135],
    &[-10, -14, -18],
    &[-6, -10, -13, -16, -20, -25, -30, -36, -43, -50, -56, -62, -68],
    &[-4, -6, -8],
    &[-2, -4, -5, -6, -7, -9, -10, -12, -14, -15, -17, -18, -20],
    &[0; 13],
    &[],
    &[],
    // k of grades 4 to 7.
    &[0, 1, 1, 1, 2, 2, 2, 3, 3, 4, 4, 4, 5],
    &[2, 4, 6, 7, 8, 9, 11, 13, 15, 17, 20, 21, 23],
    &[4, 8, 10, 12, 15, 17, 20, 23, 27, 31, 34, 37, 40],
    &[6, 12, 15, 18, 22, 26, 32, 37, 43, 50, 56, 62, 68],
    &[
        10, 15, 19, 23, 23, 28, 28, 34, 34, 41, 43, 51, 54, 63, 65, 68, 77, 80, 84, 94, 98, 108,
        114, 126, 132,
    ],
    &[
        14, 19, 23, 28, 28, 35, 35, 43, 43, 53, 59, 71, 79, 92, 100, 108, 122, 130, 140, 158, 170,
        190, 208, 232, 252,
    ],
    &[
        NO, NO, NO, NO, NO, NO, 41, 48, 54, 66, 75, 91, 104, 122, 134, 146, 166, 180, 196, 218,
        240, 268, 294, 330, 360,
    ],
    &[
        18, 23, 28, 33, 33, 41, 48, 60, 70, 87, 102, 124, 144, 170, 190, 210, 236, 258, 284, 315,
        350, 390, 435, 490, 540,
    ],
    &[
        NO, NO, NO, NO, 39, 47, 55, 68, 81, 102, 120, 146, 172, 202, 228, 252, 284, 310, 340, 385,
        425, 475, 530, 595, 660,
    ],
    &[
        20, 28, 34, 40, 45, 54, 64, 80, 97, 122, 146, 178, 210, 248, 280, 310, 350, 385, 425, 475,
        525, 590, 660, 740, 820,
    ],
    &[
        NO, NO, NO, NO, NO, 63, 75, 94, 114, 144, 174, 214, 254, 300, 340, 380, 425, 470, 520, 580,
        650, 730, 820, 920, 1000,
    ],
    &[
        26, 35, 42, 50, 60, 73, 88, 112, 136, 172, 210, 258, 310, 365, 415, 465, 520, 575, 640,
        710, 790, 900, 1000, 1100, 1250,
    ],
    &[
        32, 42, 52, 64, 77, 98, 118, 148, 180, 226, 274, 335, 400, 470, 535, 600, 670, 740, 820,
        920, 1000, 1150, 1300, 1450, 1600,
    ],
    &[
        40, 50, 67, 90, 108, 136, 160, 200, 242, 300, 360, 445, 525, 620, 700, 780, 880, 960, 1050,
        1200, 1300, 1500, 1650, 1850, 2100,
    ],
    &[
        60, 80, 97, 130, 150, 188, 218, 274, 325, 405, 480, 585, 690, 800, 900, 1000, 1150, 1250,
        1350, 1550, 1700, 1900, 2100, 2400, 2600,
    ],
];

/// Lower limits of shafts j5 and j6, then j7; j8 only up to 3 mm.
const J_SHAFT: [[i16; 13]; 2] = [
    [-2, -2, -2, -3, -4, -5, -7, -9, -11, -13, -16, -18, -20],
    [-4, -4, -5, -6, -8, -10, -12, -15, -18, -21, -26, -28, -32],
];

/// Upper limits of holes J6, J7, J8.
const J_HOLE: [[i16; 13]; 3] = [
    [2, 5, 5, 6, 8, 10, 13, 16, 18, 22, 25, 29, 33],
    [4, 6, 8, 10, 12, 14, 18, 22, 26, 30, 36, 39, 43],
    [6, 10, 12, 15, 20, 24, 28, 34, 41, 47, 55, 60, 66],
];

const fn ascending(ends: &[u32]) -> bool {
    let mut rest = ends;
    while let [one, two, ..] = rest {
        if *one >= *two {
            return false;
        }
        let [_, later @ ..] = rest else { return false };
        rest = later;
    }
    true
}
const _: () = assert!(ascending(&STEPS) && ascending(&FINE));

/// The main step of a size, in millimetres rounded up.
pub(super) fn step(mm: u32) -> Option<usize> {
    STEPS.iter().position(|&end| mm <= end)
}

/// Width of a grade in a main step, in half micrometres; from 13 on ten times that of the
/// grade five before, as in the standard.
pub(super) fn width(grade: u8, step: usize) -> Option<i32> {
    let (grade, times) = if grade > 12 { (grade.checked_sub(5)?, 10) } else { (grade, 1) };
    let row = GRADES.get(usize::from(grade.checked_sub(3)?))?;
    Some(i32::from(*row.get(step)?).saturating_mul(times))
}

/// Distance of a shaft's nearer limit from the line by its letter, in micrometres.
pub(super) fn shaft(letter: u8, step: usize, mm: u32) -> Option<i32> {
    let row = ROWS.get(usize::from(letter))?;
    let place =
        if row.len() == FINE.len() { FINE.iter().position(|&end| mm <= end)? } else { step };
    row.get(place).filter(|um| **um != NO).map(|um| i32::from(*um))
}

/// Lower limit of a shaft j, or upper limit of a hole J, in micrometres.
pub(super) fn j(grade: u8, hole: bool, step: usize) -> Option<i32> {
    let row = match (hole, grade) {
        (false, 5 | 6) => J_SHAFT.first(),
        (false, 7) => J_SHAFT.get(1),
        (false, 8) if step == 0 => return Some(-6),
        (true, 6..=8) => J_HOLE.get(usize::from(grade.checked_sub(6)?)),
        _ => None,
    };
    row?.get(step).map(|um| i32::from(*um))
}
