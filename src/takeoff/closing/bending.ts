/**
 * A bottom that is bowed to get in between biscuits: what it takes, and how near it comes to breaking. Plain numbers in inches, pounds and psi;
 * strengths as the Wood Handbook publishes them.
 *
 * One push in the middle between ends that are free to turn and to slide: a beam of span l with one load. By the usual theory of small bows,
 *
 *     what its chord gets shorter by    s = 2.4 q² / l        q: how far the middle is bowed
 *     angle of its ends                 a = 3 q / l
 *     greatest strain                   e = 6 t q / l²        t: its thickness
 *     force in the middle               F = 48 E I q / l³     I = b t³ / 12, b: its width
 *
 * Up to bows of an eighth of the length the force is at most 4 % lower than that of a beam of large bows, strain 1 %, bow and angle less than 1 % off:
 * tests/putup/closing/bending.test.ts.
 */
interface Board { readonly length: number; readonly thickness: number; readonly width: number }

/**
 * `rupture` in psi, and `elasticity` in 10^6 psi, of clear straight-grained wood at 12 % moisture content. The published elasticity is that of
 * short beams, with the part of their sag that is shear left in: for bending alone it is 10 % higher (Wood Handbook, note to Table 5-3b),
 * and the longer the beam the less is shear.
 */
interface Strength { readonly rupture: number; readonly elasticity: number }
const FREE_OF_SHEAR = 1.1;

interface Bow {
    /** How far the middle is bowed, the angle of the ends in degrees, the force in the middle in pounds. */
    readonly bow: number; readonly endAngle: number; readonly force: number;
    /** Greatest strain, and as a share of the one at which such wood breaks on average. */
    readonly strain: number; readonly ofBreaking: number;
    /** How much wider than the biscuit is thick each slot has to be, since the end comes to it at an angle. */
    readonly slotWider: number;
}

/**
 * `shorter`: what has to be gained along the chord; `sticksOut`: the most that a biscuit stands out; `biscuit`: its thickness, which at the
 * angle of the ends takes some more.
 */
export function bowed({ length: l, thickness: t, width: b }: Board, { rupture, elasticity }: Strength, { shorter, sticksOut, biscuit }: Wanted): Bow {
    // 2.4 q² / l = s + biscuit * 3 q / l
    const bow = (3 * biscuit + Math.sqrt(9 * biscuit ** 2 + 9.6 * shorter * l)) / 4.8;
    const e = elasticity * 1e6 * FREE_OF_SHEAR, strain = 6 * t * bow / l ** 2;
    return {
        bow, endAngle: degrees(3 * bow / l), force: 48 * e * (b * t ** 3 / 12) * bow / l ** 3,
        strain, ofBreaking: strain / (rupture / e), slotWider: SPRUNG_SLOT * sticksOut ** 1.5 / Math.sqrt(l),
    };
}
interface Wanted { readonly shorter: number; readonly sticksOut: number; readonly biscuit: number }

/** What such a board may be pressed with at its ends, which turn freely, before it bows, in pounds: Euler's load of a long column, π² E I / l². */
export function eulerLoad({ length: l, thickness: t, width: b }: Board, { elasticity }: Pick<Strength, 'elasticity'>): number {
    return Math.PI ** 2 * elasticity * 1e6 * FREE_OF_SHEAR * (b * t ** 3 / 12) / l ** 2;
}

/**
 * While an end goes onto its biscuit by x, of P in all, its angle is still that of a chord shortened by 2 (P - x): a = 3 sqrt(2 (P - x) / (2.4 l)). The
 * part that is on takes x a of width, most at x = 2 P / 3: (2 P / 3) 3 sqrt(P / (3.6 l)).
 */
const SPRUNG_SLOT = 2 / Math.sqrt(3.6);

/** Half of what breaks it on average is what a piece may be bent to: boards have grain that runs out, and knots. Common practice, no source. */
export const MOST_OF_BREAKING = 1 / 2;

/** The least length at which such a board may be sprung, in inches: by halving, since the bow is not simple in it. */
export function leastToSpring(board: Omit<Board, 'length'>, strength: Strength, wanted: Wanted): number {
    let [short, long] = [1, 1000];
    for (let i = 0; i < 60; i++) {
        const length = (short + long) / 2;
        if (bowed({ ...board, length }, strength, wanted).ofBreaking > MOST_OF_BREAKING) short = length; else long = length;
    }
    return long;
}

interface Swing {
    /** How far it hangs down at the other end when it comes to its biscuits, in degrees and inches. */
    readonly angle: number; readonly hangs: number;
    /** What it binds by at the other end, unless the back edge there is eased. */
    readonly binds: number;
    readonly slotWider: number;
}

/**
 * With biscuits at one end only: that end is pushed onto them while the other is swung up. Leaning by a it is l a² / 2 shorter to the eye, and its end leans
 * too: what of it is above the lower face of the biscuits has to come past them, so that l a² / 2 = P + (t + biscuit) a / 2. Its lower edge stands out by
 * t a, so that it is t a - l a² / 2 too long in its opening, most where the other end comes into it, at a = t / l: t² / 2 l.
 * In its middle the end is on the biscuit by x = P + t a / 2 - l a² / 2, which takes x a of width, most where 3 l a² / 2 = P + t a.
 */
export function swung({ length: l, thickness: t }: Omit<Board, 'width'>, { sticksOut, biscuit }: Omit<Wanted, 'shorter'>): Swing {
    const reach = (t + biscuit) / 2, angle = (reach + Math.sqrt(reach ** 2 + 2 * l * sticksOut)) / l;
    const widest = Math.min(angle, (t + Math.sqrt(t ** 2 + 6 * l * sticksOut)) / (3 * l));
    return {
        angle: degrees(angle), hangs: l * Math.sin(angle), binds: t ** 2 / (2 * l),
        slotWider: widest * (sticksOut + t * widest / 2 - l * widest ** 2 / 2),
    };
}

interface Knee {
    /** Of each half, in degrees; and how far the middle hangs down. */
    readonly angle: number; readonly hangs: number;
    /** What the joint in the middle binds by as it is pushed straight, unless its back edges are beveled. */
    readonly binds: number;
    readonly slotWider: number;
}

/**
 * Cut in two in the middle, and pushed straight like a knee: leaning by a the halves are l cos a + t sin a long, where they touch with their
 * back edges. The edges at the ends reach as far again: at most 2 t² / l more than the opening.
 */
export function kneed({ length: l, thickness: t }: Omit<Board, 'width'>, { shorter, sticksOut, biscuit }: Wanted): Knee {
    // small angles: l (1 - a²/2) + (t + biscuit) a = l - s
    const reach = t + biscuit, a = (reach + Math.sqrt(reach ** 2 + 2 * shorter * l)) / l;
    return {
        angle: degrees(a), hangs: l / 2 * Math.sin(a), binds: 2 * t ** 2 / l,
        // each half swings about its own end: as a piece of half the length
        slotWider: swung({ length: l / 2, thickness: t }, { sticksOut, biscuit }).slotWider,
    };
}

interface Kerfs {
    readonly count: number;
    /** From center to center, and what is left under each. */
    readonly apart: number; readonly web: number; readonly depth: number;
    /** Whether a kerf's width of wood and more is left between two of them. */
    readonly room: boolean;
    /** Of its ends, in degrees. */
    readonly endAngle: number;
    readonly slotWider: number;
    /** How far the middle hangs down while it goes in. */
    readonly hangs: number;
}

/**
 * Kerfs across the back, evenly: the piece bows in an arc of the angle A, which is A² l / 24 shorter than the piece, and its ends lean by A /
 * 2. A web of thickness w under a kerf k wide may be bent by 2 e k / w, e being the strain allowed; the wood between kerfs is counted as
 * stiff. So it takes many: what is gained is little.
 */
export function kerfed(
    { length: l, thickness: t }: Omit<Board, 'width'>, { rupture, elasticity }: Strength, { shorter, sticksOut, biscuit }: Wanted, kerf: number,
): Kerfs {
    const allowed = MOST_OF_BREAKING * rupture / (elasticity * 1e6 * FREE_OF_SHEAR), web = Math.max(LEAST_WEB, t / 3), depth = t - web;
    // A² l / 24 = s + biscuit A / 2
    const angle = (6 * biscuit + Math.sqrt(36 * biscuit ** 2 + 24 * shorter * l)) / l, each = Math.min(2 * allowed * kerf / web, 2 * kerf / (t + depth));
    const count = Math.ceil(angle / each), apart = (l - 2 * UNKERFED) / count;
    return {
        count, apart, web, depth, room: apart >= 2 * kerf,
        endAngle: degrees(angle / 2), slotWider: ARCHED_SLOT * sticksOut ** 1.5 / Math.sqrt(l), hangs: l * angle / 8,
    };
}
/** As of one that is sprung: an end that leans by a has l a² / 12 to go, and takes a (P - l a² / 12) of width, most at a = 2 sqrt(P / l). */
const ARCHED_SLOT = 4 / 3;
/** Inches: what is left under a kerf at least, and what is left whole at each end, for the slots. Common practice, no source. */
const LEAST_WEB = 3 / 16, UNKERFED = 3;

function degrees(radians: number): number {
    return radians * 180 / Math.PI;
}
