import type { Caution, MiterStep, Step } from './model.ts';

const PLACES: Readonly<Record<Step['do'], readonly string[]>> = {
    rip: ['Ripping: splitter or riving knife and guard in place, push stick for narrow strips, nobody behind the blade; the offcut is left alone until the blade has stopped.'],
    crosscut: ['Crosscutting: both ends of a long board held up; hands well clear of the blade; the stop on one side only, so that nothing is caught between stop and fence.'],
    blocks: ['Short pieces are held with a clamp or a hold-down, not with the fingers.'],
    rabbet: [
        'Routing: feed against the rotation of the bit. A climb cut can pull the router or the work away from you.',
        'Take a rabbet in light passes; guard and feather boards in place, and the power off before a bit is changed or measured.',
    ],
    ease: ['Routing: feed against the rotation of the bit. A climb cut can pull the router or the work away from you.'],
    miter: ['A tilted or turned saw: see that guard, fence and clamp clear the blade before it runs; let the blade stop before a small wedge is taken away.'],
    cope: ['Coping: the piece clamped; the saw cuts away from the hand that holds it.'],
    shape: ['Cutting to a line: the sheet held up on both sides of the cut, the guide clamped, the blade no deeper than it has to be.'],
    kerfs: ['Kerfs across a back: the saw\'s depth set and tried on scrap, the piece held flat along its whole length; what is left under a kerf breaks easily until it is up.'],
    halve: ['Cutting in two: both halves held up, so that nothing closes on the blade.'],
    slots: ['Plate joiner: the work clamped, both hands on the machine.'],
    'pocket holes': ['Drilling: the work clamped in the jig.'],
};

/** What holds at every machine. Reminders, common practice, no source: makers' manuals and local rules come first. */
const ALWAYS: readonly string[] = [
    'The makers\' manuals of saw, router and joiner and the local rules come before anything said here.',
    'Eyes, ears and lungs protected, dust collected at every cut; the dust of primed and of medium-density boards is fine and stays in the air.',
    'Primed or painted boards: look for staples and nails in the ends before they are trimmed; old paint is presumed to hold lead until it is tested.',
];

/** What comes off between a stop and a leaning blade. */
const AT_MITER_STOP = 'A piece between a stop and a tilted or turned blade can be lifted or thrown: board and piece both held or clamped clear of the blade, the blade let stop in the cut before anything is moved.';

/** The usual cautions, each where the work meets it, once. */
export function cautionsOf(steps: readonly (Pick<Step, 'do'> & Partial<Pick<MiterStep, 'cuts'>>)[]): Caution[] {
    if (steps.length === 0) return [];
    const seen = new Set<string>(), isAtStop = steps.some(({ cuts = [] }) => cuts.some(({ takes }) => takes));
    const own = [
        ...new Set(steps.map(s => s.do)),
    ].flatMap(at => [...PLACES[at], ...at === 'miter' && isAtStop ? [AT_MITER_STOP] : []].flatMap((words): Caution[] => (seen.has(words) ? [] : (seen.add(words), [{ at, words }]))));
    return [...ALWAYS.map((words): Caution => ({ at: 'all', words })), ...own];
}
