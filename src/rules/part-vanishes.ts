import { baysOf, bayStarts } from '../ceiling/bays.ts';
import { arrangedOf } from '../ceiling/plan.ts';
import { diesByChoice } from '../ceiling/along.ts';
import { relationOfBeams } from '../ceiling/meeting.ts';
import type { Ceiling, HalfBeam, Line, Splice } from '../ceiling/model.ts';
import { inches } from '../quantity/rational.ts';
import { flankOf, lookOf, sectionAt, sidesOf } from '../ceiling/flanks.ts';
import { idOf, spliceLetter, type Place } from '../takeoff/ids.ts';
import type { Compass, Part, Piece } from '../takeoff/model.ts';
import type { Cleats, Profile } from '../job/model.ts';
import { PLURAL } from '../job/part.ts';
import { placeKey, type Source } from '../provenance/source.ts';
import { defineRule } from './rule.ts';
import { changed, HALL } from './support/examples.ts';
import { sizesOf } from './support/words.ts';
import { grouped } from '../plain/groups.ts';
import { counted } from '../plain/words.ts';

const wrong = changed(HALL, '  cleats { rip 3/4" x 3/4" from strip-1x2 }', `  cleats {
    rip             3/4" x 3/4" from strip-1x2
    short-each-end  30"
  }`);

export const partVanishes = defineRule({
    name: 'part-vanishes',
    severity: 'error',
    title: 'A part has no length left in its place',
    explanation: `
Whatever a profile says about a part, each place of it must leave something to cut. Where it leaves nothing there is no piece in the
cut list, and nobody misses it before the bottom finds nothing to be pressed against.

Cleats are as long as the back of their side, less \`short-each-end\` twice: in a coffer of 48" between sides of 3/4" that is
49 1/2" less 60", and no cleat. 1/4" leaves 49". A splice at the very end of its line leaves no piece before it. A coffer narrower
than a spacer is thick has no spacer, and a coffer of 1/4" cut to 1/2" has no side. A molding of 3" between two ends that lean 45
degrees toward each other over its 1 1/2" comes to a point.`,
    wrong,
    right: changed(wrong, '30"', '1/4"'),
    basis: 'Arithmetic of the layout.',
    check: {
        room({ layout: { ceiling }, job, pieces }, report) {
            if (!ceiling || isWideEverywhere(ceiling)) return;
            const cut = new Map(pieces().map(piece => [piece.id, piece]));
            const lost = [...placesOf(ceiling)].filter(({ part, named }) => {
                // what is cut in bays, and spliced within one besides, begins there with its first piece
                const piece = cut.get(idOf(ceiling.room.name, part, named)) ?? cut.get(idOf(ceiling.room.name, part, { ...named, nth: spliceLetter(0, 2) }));
                return !piece || !hasLength(piece);
            });
            const size = sizesOf(job);
            for (const [first, ...others] of grouped(lost, ({ part, at }) => `${part} ${placeKey(at)}`).values()) {
                const { part, at, where, mend } = first!, why = mend ?? whyOf(part, size(job.cutTo.value));
                report({ at, message: `No length is left for the ${PLURAL[part]} at ${where}.${besides(others)} ${why}` });
            }
            const crossed = [...cut.values()].filter(isCrossed);
            for (const [first, ...others] of grouped(crossed, ({ part, source }) => `${part} ${placeKey(source)}`).values()) {
                const { part, source, where, cutBack, cutFace } = first!;
                report({
                    at: source,
                    message: `No face is left of the ${PLURAL[part]} at the ${where}.${besides(others)} It is ${size(cutBack)} long at its back, and the cuts at its ends, ` +
                        `which lean toward each other, take ${size(cutBack - cutFace)} of that. Set what it runs between farther apart; two walls in one line may be said as one.`,
                });
            }
        },
    },
});

/** By so much over all that is taken off a part nothing vanishes, at whatever angles the lines run. */
const PLENTY = inches('12');

/** Whether no coffer is so small that pieces have to be made to see whether any vanishes: it is looked at with every keystroke. */
function isWideEverywhere(ceiling: Ceiling): boolean {
    let least = Infinity, off = 0;
    for (const { edges, holes } of arrangedOf(ceiling).exact.coffers) {
        // where faces lie in line the places along one edge are several, and one of them may be small
        for (const loop of [edges, ...holes]) for (const { along, length } of loop) least = along.length > 1 ? 0 : Math.min(least, length);
    }
    const halves = Object.values(ceiling.around).filter((own): own is HalfBeam => own?.kind === 'half-beam');
    for (const { section: { profile: { blocking, bottom, cleats }, spacerThickness } } of [...ceiling.lines, ...halves]) {
        const short = cleats?.shortEachEnd.value ?? 0, overhang = Math.abs(bottom?.overhang?.value.ticks ?? 0);
        off = Math.max(off, 2 * short + 2 * overhang + (blocking?.relief?.value ?? 0) + (spacerThickness?.ticks ?? 0));
    }
    // splices that nobody said stand on crossings
    return least > off + PLENTY && !ceiling.lines.some(({ splices }) => splices.some(({ said }) => said));
}

function whyOf(part: Part, step: string): string {
    switch (part) {
        case 'cleat': return 'A cleat is as long as the back of its side, less twice its `short-each-end`: make that less.';
        case 'spacer': return 'The coffer is narrower than a spacer is thick: set the lines farther apart, or take the spacers out.';
        case 'molding': return 'Its ends lean toward each other, and meet before it has any length: set what it runs between farther apart; two walls in one line may be said as one.';
        case 'blocking': return 'It is as long as the room between the lines, less its relief: set the lines farther apart, or make the relief less.';
        default: return `Its place is shorter than one mark of the tape, ${step}: set the lines farther apart, or use a finer \`cut-to\`.`;
    }
}

function besides({ length }: readonly unknown[]): string {
    return length === 0 ? '' : ` The same goes for ${counted(length, 'other place')}.`;
}

/** Whether its ends lean so much toward each other that they meet before its face; where a trim's do, its coffer is told. */
function isCrossed({ part, cutFace, cutBack }: Piece): boolean {
    return (part === 'side' || part === 'molding') && cutBack > 0 && cutFace <= 0;
}

function hasLength({ cutBack }: Piece): boolean {
    return cutBack > 0;
}

interface Wanted { readonly part: Part; readonly at: Source; readonly where: string; readonly named: Place; readonly mend?: string }

const TOO_NEAR_THE_END = 'The splice is too near to an end of the line, or to another: move it away.';

/** Every place that the text wants a piece in, along the lines and along the walls. (Trim in a coffer too narrow for it is told by piece-miscounted.) */
function* placesOf(ceiling: Ceiling): Generator<Wanted> {
    const none = [...arrangedOf(ceiling).exact.faceless.values()].filter(place => place !== null);
    for (const line of ceiling.lines) {
        if (line.through) yield* alongLine(line);
        else for (const bay of bayStarts(line, 'bottom')) yield* cutInBay(line, bay);
        for (const { number } of baysOf(line)) yield* spacersIn(line, number);
        for (const side of sidesOf(line.runs)) {
            const flank = flankOf(side), on = lookOf(line, flank), missing = none.filter(place => place.of === line.name && place.flank === flank);
            const { profile } = sectionAt(line, flank);
            for (const [i, bay] of bayStarts(line, flank).entries()) if (!missing.some(({ nth }) => nth === i + 1)) yield* sideIn(line, bay, on, profile);
        }
    }
    for (const { name } of ceiling.walls) yield* atWall(ceiling, name, none.filter(({ of }) => of === name).length);
}

/** What runs through in one piece, or spliced in several. */
function* alongLine({ name: line, section: { profile: { blocking, bottom } }, splices }: Line): Generator<Wanted> {
    for (const [part, said] of [['blocking', blocking], ['bottom', bottom]] as const) {
        if (said?.stock) yield* eachPiece(part, said.at, `line ${line}`, splices, { line });
    }
}

function* eachPiece(part: Part, at: Source, where: string, splices: readonly Splice[], named: Place): Generator<Wanted> {
    for (let i = 0; i <= splices.length; i++) {
        const nth = spliceLetter(i, splices.length + 1);
        const splice = splices[Math.min(i, splices.length - 1)]?.said;
        yield { part, at: splice ?? at, where: nth ? `${where}, piece ${nth}` : where, named: { ...named, nth }, ...splice && { mend: TOO_NEAR_THE_END } };
    }
}

/** `none`: so many of its sides are not there. */
function* atWall(ceiling: Ceiling, wall: string, none: number): Generator<Wanted> {
    const own = ceiling.around[wall];
    if (own?.kind === 'band' && own.perimeter.stock) yield* eachPiece('band', own.perimeter.at, `the ${wall} wall`, own.splices, { on: wall });
    if (own?.kind !== 'half-beam') return;
    const { blocking, sides, cleats, bottom, under, solid } = own.section.profile, where = `the half beam along the ${wall} wall`;
    if (blocking?.stock) yield* eachPiece('blocking', blocking.at, where, own.splices, { wall });
    if (bottom?.stock) yield* eachPiece('bottom', bottom.at, where, own.splices, { wall });
    if (solid?.stock) yield* eachPiece('timber', solid.at, where, own.splices, { wall });
    const endsThere = ceiling.lines.filter(({ from, to }) => from === wall || to === wall);
    const broken = endsThere.filter(line => relationOfBeams(line, own) === 'flush' && !diesByChoice(line, ceiling)).length;
    for (let bay = 1; bay <= broken + 1 - none; bay++) {
        if (sides?.stock) yield { part: 'side', at: sides.at, where: `${where}, bay ${bay}`, named: { wall, bay } };
        if (cleats?.stock && cleats.thickness && cleats.height) yield { part: 'cleat', at: cleatsAt(cleats), where: `${where}, bay ${bay}`, named: { wall, bay } };
        if (under?.stock) yield { part: 'molding', at: under.at, where: `${where}, bay ${bay}`, named: { wall, bay } };
    }
}

function cleatsAt({ shortEachEnd, at }: Cleats): Source {
    return shortEachEnd.said ? shortEachEnd.at : at;
}

function placeIn({ name: line }: Line, bay: number): { where: string; named: Place } {
    return { where: `line ${line}, bay ${bay}`, named: { line, bay } };
}

function* cutInBay(line: Line, bay: number): Generator<Wanted> {
    for (const part of ['blocking', 'bottom'] as const) {
        const said = line.section.profile[part];
        if (said?.stock) yield { part, at: said.at, ...placeIn(line, bay) };
    }
}

function* spacersIn(line: Line, bay: number): Generator<Wanted> {
    const { where, named } = placeIn(line, bay), { spacers } = line.section.profile;
    if (spacers?.stock?.value.thickness && spacers.height && line.section.spacerWidth) yield { part: 'spacer', at: spacers.at, where, named: { ...named, nth: 1 } };
}

function* sideIn(line: Line, bay: number, on: Compass, { sides, cleats, under }: Profile): Generator<Wanted> {
    const { where, named } = placeIn(line, bay);
    if (sides?.stock) yield { part: 'side', at: sides.at, where, named: { ...named, on } };
    if (cleats?.stock && cleats.thickness && cleats.height) yield { part: 'cleat', at: cleatsAt(cleats), where, named: { ...named, on } };
    if (under?.stock) yield { part: 'molding', at: under.at, where, named: { ...named, on } };
}
