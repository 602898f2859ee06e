//! What wires stand, as data.
use super::Stuff;

/// A228 by diameter: ten-thousandths of an inch, least and greatest tensile strength in ksi.
///
/// Source: ASTM A228 music wire, the table of tensile requirements as a wire maker
/// reprints it, read in print; its row of 0.036 in prints a greatest of 255, below its own
/// least and all of its neighbours: 355 stands here.
pub(super) const MUSIC: &[(u16, u16, u16)] = &[
    (40, 439, 485),
    (50, 426, 471),
    (60, 415, 459),
    (70, 407, 449),
    (80, 399, 441),
    (90, 393, 434),
    (100, 387, 428),
    (110, 382, 422),
    (120, 377, 417),
    (130, 373, 412),
    (140, 369, 408),
    (150, 365, 404),
    (160, 362, 400),
    (180, 356, 393),
    (200, 350, 387),
    (220, 345, 382),
    (240, 341, 377),
    (260, 337, 373),
    (280, 333, 368),
    (300, 330, 365),
    (320, 327, 361),
    (340, 324, 358),
    (360, 321, 355),
    (380, 318, 352),
    (400, 315, 349),
    (420, 313, 346),
    (450, 309, 342),
    (480, 306, 339),
    (510, 303, 335),
    (550, 300, 331),
    (590, 296, 327),
    (630, 293, 324),
    (670, 290, 321),
    (720, 287, 317),
    (760, 284, 314),
    (800, 282, 312),
    (850, 279, 308),
    (900, 276, 305),
    (950, 274, 303),
    (1000, 271, 300),
    (1020, 270, 299),
    (1070, 268, 296),
    (1100, 267, 295),
    (1120, 266, 294),
    (1210, 263, 290),
    (1250, 261, 288),
    (1300, 259, 286),
    (1350, 258, 285),
    (1400, 256, 283),
    (1450, 254, 281),
    (1500, 253, 279),
    (1560, 251, 277),
    (1620, 249, 275),
    (1770, 245, 270),
    (1920, 241, 267),
    (2070, 238, 264),
    (2250, 235, 260),
    (2500, 230, 255),
];

/// What else is known of a metal, and its tensile strength where no table was read.
pub(super) struct Row {
    /// Which.
    pub stuff: Stuff,
    /// By thickness in micrometres: the least tensile strength in MPa.
    pub least: &'static [(u16, u16)],
    /// By how many percent the greatest lies above that.
    pub spread: u8,
    /// What a bend takes for the yield, in percent of the tensile strength.
    pub yields: (u8, u8),
    /// Moduli of elasticity and of shear, in GPa.
    pub modulus: (u8, u8),
    /// The second of them.
    pub shear: (u8, u8),
    /// What a spring may stand, in percent of the least tensile strength: shear, bending.
    pub stands: (u8, u8),
}

/// Source: spring and metal handbooks, from memory, rounded; wires after ASTM A227
/// (hard-drawn), A313 (stainless 302), B159 (phosphor bronze) and B134 (brass).
pub(super) const ROWS: &[Row] = &[
    Row {
        stuff: Stuff::Music,
        least: &[],
        spread: 0,
        yields: (75, 100),
        modulus: (193, 207),
        shear: (79, 83),
        stands: (45, 78),
    },
    Row {
        stuff: Stuff::HardDrawn,
        least: &[
            (500, 1950),
            (1000, 1770),
            (1600, 1630),
            (2500, 1500),
            (4000, 1365),
            (6000, 1270),
            (12_700, 1100),
        ],
        spread: 15,
        yields: (70, 100),
        modulus: (193, 207),
        shear: (78, 82),
        stands: (45, 78),
    },
    Row {
        stuff: Stuff::Stainless,
        least: &[
            (200, 2240),
            (500, 2070),
            (1040, 1875),
            (1550, 1760),
            (2300, 1620),
            (3760, 1450),
            (6350, 1205),
            (9500, 965),
        ],
        spread: 14,
        yields: (70, 100),
        modulus: (180, 195),
        shear: (69, 73),
        stands: (35, 61),
    },
    Row {
        stuff: Stuff::PhosphorBronze,
        least: &[(100, 1000), (635, 1000), (1590, 930), (3180, 895), (6350, 860), (9500, 825)],
        spread: 15,
        yields: (75, 100),
        modulus: (103, 115),
        shear: (41, 43),
        stands: (35, 61),
    },
    Row {
        stuff: Stuff::HardBrass,
        least: &[(100, 830), (6350, 700), (12_700, 600)],
        spread: 15,
        yields: (75, 100),
        modulus: (97, 110),
        shear: (35, 41),
        stands: (35, 61),
    },
    Row {
        stuff: Stuff::SpringStrip,
        least: &[(50, 1300), (6000, 1200)],
        spread: 40,
        yields: (80, 100),
        modulus: (200, 210),
        shear: (78, 82),
        stands: (45, 75),
    },
    Row {
        stuff: Stuff::MildSteel,
        least: &[(100, 430), (50_000, 400)],
        spread: 40,
        yields: (75, 100),
        modulus: (200, 210),
        shear: (78, 82),
        stands: (35, 60),
    },
    Row {
        stuff: Stuff::SoftCopper,
        least: &[(100, 220), (50_000, 200)],
        spread: 20,
        yields: (40, 90),
        modulus: (110, 128),
        shear: (40, 48),
        stands: (25, 40),
    },
];

/// Standard wire gauge, 7/0 to 50, in ten-thousandths of an inch.
///
/// Source: the British standard wire gauge (BS 3737), from memory; that it runs from 0.5 to
/// 0.001 in, by 0.4 thou from 49 to 39 and by 0.8 from 39 to 30, was read in print.
pub(super) const STANDARD: &[u16] = &[
    5000, 4640, 4320, 4000, 3720, 3480, 3240, 3000, 2760, 2520, 2320, 2120, 1920, 1760, 1600, 1440,
    1280, 1160, 1040, 920, 800, 720, 640, 560, 480, 400, 360, 320, 280, 240, 220, 200, 180, 164,
    148, 136, 124, 116, 108, 100, 92, 84, 76, 68, 60, 52, 48, 44, 40, 36, 32, 28, 24, 20, 16, 12,
    10,
];

/// Music wire gauge, 6/0 to 45, in ten-thousandths of an inch.
///
/// Source: the American music wire gauge, from memory.
pub(super) const MUSIC_GAUGE: &[u16] = &[
    40, 50, 60, 70, 80, 90, 100, 110, 120, 130, 140, 160, 180, 200, 220, 240, 260, 290, 310, 330,
    350, 370, 390, 410, 430, 450, 470, 490, 510, 550, 590, 630, 670, 710, 750, 800, 850, 900, 950,
    1000, 1060, 1120, 1180, 1240, 1300, 1380, 1460, 1540, 1620, 1700, 1800,
];
