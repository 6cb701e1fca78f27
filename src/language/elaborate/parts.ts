import type { Back, Blocking, Bottom, Cleats, Direction, Profile, Rabbet, Sides, Spacers, Trim, Under } from '../../job/model.ts';
import * as ast from '../generated/ast.ts';
import { quoted } from '../types/words.ts';
import type { Reading } from './reading.ts';
import { recordedBy } from './recorded.ts';

/**
 * The parts of a beam. A part in which something that shapes it is said and cannot be known is unknown as a whole:
 * its default, or the stock's full width, would be a wrong number. Fasteners and the like may be missing from a part.
 */
export function readParts(profile: Reading, home: ast.Profile): Pick<Profile, 'blocking' | 'spacers' | 'sides' | 'otherSide' | 'cleats' | 'bottom' | 'trim' | 'under' | 'solid' | 'wraps' | 'back'> {
    const part = <T>(name: string, read: (part: Reading, home: ast.Profile) => T | undefined): T | undefined => {
        const inner = profile.inner(name);
        return inner && read(inner, home);
    };
    const solid = part('solid', readBoard);
    if (solid) return { solid, trim: part('trim', readTrim), back: part('back', readBack) };
    const bottom = part('bottom', readBottom), { sides, otherSide } = sidesOf(profile, bottom, home);
    return {
        blocking: part('blocking', readBlocking), spacers: part('spacers', readSpacers), sides, ...otherSide && { otherSide },
        cleats: part('cleats', readCleats), bottom, trim: part('trim', readTrim), under: part('under', readUnder), wraps: wrapsOf(profile), back: part('back', readBack),
    };
}

function wrapsOf(profile: Reading): Profile['wraps'] {
    const size = profile.pair('wraps'), clearance = profile.length('wraps', 'clearance');
    return size && clearance && { ...size, value: { width: size.value.first, height: size.value.second }, clearance, ...recordedBy(profile, mod => profile.found('wraps', mod), size.at) };
}

function readBack(part: Reading, home: ast.Profile): Profile['back'] {
    const stock = part.stock('stock'), gap = part.length('gap'), running = part.word<Direction>('running'), seams = part.word<Back['seams']['value']>('seams'), nails = part.fasteners('nails');
    const said = part.measure('thickness'), own = part.place(home), isLost = part.lost('thickness', said) || part.lost('stock', stock);
    const thickness = said ?? (isLost ? undefined : stock?.value.thickness);
    if (!thickness && !isLost) {
        part.evaluator.raise({ rule: 'not-said', at: own.at, message: `${quoted('back')} does not say how thick the panels are: give their ${quoted('thickness')}, or a ${quoted('stock')} that has one.` });
    }
    return gap && seams && { ...own, thickness, stock, gap, running, seams, ...nails && { nails } };
}

/** Where the other side is said and cannot be known, neither are known: taken for alike they would make a wrong beam. */
function sidesOf(profile: Reading, bottom: Bottom | undefined, home: ast.Profile): Pick<Profile, 'sides' | 'otherSide'> {
    const [own, other] = ['sides', 'other-side'].map(name => profile.inner(name));
    const read = own && readSides(own, home), sides = read && withRabbetFor(bottom, read);
    if (!other) return profile.lost('other-side', undefined) ? {} : { sides };
    const otherSide = readOtherSide(other, sides, home);
    return otherSide ? { sides, otherSide } : {};
}

/** A bottom that is let into the sides so far wants a rabbet there, as high as it is thick: where nobody says one, it is that. */
function withRabbetFor(bottom: Bottom | undefined, sides: Sides): Sides {
    const thickness = bottom?.stock?.value.thickness;
    if (bottom?.place.value !== 'in-rabbets' || !bottom.letIn || !thickness || sides.rabbet) return sides;
    const { letIn } = bottom;
    return { ...sides, rabbet: { ...letIn, value: { width: letIn.value, height: thickness.value, edge: 'lower', face: 'back', widthAt: letIn.at, heightAt: thickness.at } } };
}

/** What every part cut from a board has. Undefined where its width cannot be known. */
export function readBoard(part: Reading, home: ast.Item) {
    const ripWith = part.text('rip', 'with');
    const rip = part.measure('rip', ripWith && `fence:${ripWith.value}`);
    return part.lost('rip', rip) ? undefined : { ...part.place(home), stock: part.stock('stock'), rip, ripWith };
}

// Everything in a block is read before it is decided whether the part is known, so that whatever is wrong in it is said.

function readBlocking(part: Reading, home: ast.Profile): Blocking | undefined {
    const board = readBoard(part, home), fit = part.word<Blocking['fit']['value']>('fit'), relief = part.length('relief'), clearance = part.length('clearance'), screws = part.fasteners('screws');
    return board && fit && !part.lost('relief', relief) ? { ...board, fit, relief, clearance, screws } : undefined;
}

function readSpacers(part: Reading, home: ast.Profile): Spacers | undefined {
    const board = readBoard(part, home), height = part.measure('height'), every = part.length('every'), fromEnd = part.length('from-end');
    return board && every && fromEnd && { ...board, height, every, fromEnd };
}

function readSides(part: Reading, home: ast.Profile): Sides | undefined {
    const board = readBoard(part, home), heldDown = part.measure('held-down'), rabbet = rabbetOf(part);
    const corners = part.word<Sides['corners']['value']>('corners'), past = part.word<Direction>('corners', 'past'), nails = part.fasteners('nails');
    return board && heldDown && corners && !part.lost('rabbet', rabbet) ? { ...board, heldDown, rabbet, corners, past, nails } : undefined;
}

function readOtherSide(part: Reading, sides: Sides | undefined, home: ast.Profile): Sides | undefined {
    const board = readBoard(part, home), rabbet = rabbetOf(part), nails = part.fasteners('nails');
    if (!sides || !board || part.lost('rabbet', rabbet)) return undefined;
    const { rip, ripWith } = board.rip ? board : sides;
    return {
        ...sides, ...board, stock: part.lost('stock', board.stock) ? undefined : board.stock ?? sides.stock, rip, ripWith,
        rabbet: rabbet ?? sides.rabbet, nails: part.lost('nails', nails) ? undefined : nails ?? sides.nails,
    };
}

function rabbetOf(part: Reading): Sides['rabbet'] {
    const size = part.pair('rabbet');
    const edge = part.word<`${Rabbet['edge']}-${Rabbet['face']}`>('rabbet', 'on');
    if (!size || !edge) return undefined;
    const { first, second, firstAt, secondAt } = size.value;
    const [which, face] = edge.value.split('-') as [Rabbet['edge'], Rabbet['face']];
    return { ...size, value: { width: first, height: second, edge: which, face, widthAt: firstAt, heightAt: secondAt } };
}

function readCleats(part: Reading, home: ast.Profile): Cleats | undefined {
    const rip = part.pair('rip'), gauge = part.measure('gauge'), shortEachEnd = part.length('short-each-end'), nails = part.fasteners('nails');
    if (!shortEachEnd || part.lost('rip', rip) || part.lost('gauge', gauge)) return undefined;
    const side = (value: 'first' | 'second'): Cleats['thickness'] => rip && { ...rip, value: rip.value[value], at: rip.value[`${value}At`] };
    return { ...part.place(home), stock: part.stock('rip', 'from'), thickness: side('first'), height: side('second'), gauge, nails, shortEachEnd };
}

function readBottom(part: Reading, home: ast.Profile): Bottom | undefined {
    const board = readBoard(part, home), place = part.word<Bottom['place']['value']>('place'), gap = part.range('gap'), press = part.length('press');
    const ease = part.length('ease'), biscuits = biscuitsOf(part), nails = part.fasteners('nails');
    const closing = part.word<NonNullable<Bottom['closing']>['value']>('closing');
    const overhang = part.measure('place', undefined, 'overhang'), letIn = part.measure('place', undefined, 'let-in');
    if (!board || !place || !gap || part.lost('press', press)) return undefined;
    return { ...board, place, ...place.value === 'under-sides' && { overhang }, ...place.value === 'in-rabbets' && { letIn }, gap, ease, biscuits, closing, press, nails };
}

function readUnder(part: Reading, home: ast.Profile): Under | undefined {
    const board = readBoard(part, home), place = part.word<Under['place']['value']>('place'), overhang = part.measure('place', undefined, 'overhang'), nails = part.fasteners('nails');
    return board && place && overhang && { ...board, place, overhang, nails };
}

function biscuitsOf(part: Reading): Bottom['biscuits'] {
    return part.given(part.found('biscuits'), found => {
        const { value } = found.known;
        if (value.is !== 'pair' || value.second.value.is !== 'number-size') return undefined;
        const count = part.count(found, value.first);
        return count === undefined ? undefined : { count, size: value.second.value.text };
    });
}

export function readTrim(part: Reading, home: ast.Item): Trim | undefined {
    const board = readBoard(part, home), corners = part.word<Trim['corners']['value']>('corners'), nails = part.fasteners('nails');
    const spring = part.given(part.found('spring'), ({ known: { value } }) => value.is === 'quantity' ? value.exact.valueOf() : undefined);
    const projects = part.measure('spring', undefined, 'projects'), drops = part.measure('spring', undefined, 'drops');
    const springKnown = spring ? recordedBy(part, mod => part.found('spring', mod), spring.at) : {};
    return board && corners && !part.lost('spring', spring) ? { ...board, corners, ...spring && { spring, projects, drops, ...Object.keys(springKnown).length > 0 && { springKnown } }, nails } : undefined;
}
