import type { Ceiling } from '../ceiling/model.ts';
import type { Profile } from '../job/model.ts';
import { BY_COUNT, BY_LENGTH, closingTime, type Labor, type TimedByCount, type TimedByLength } from '../job/rates.ts';
import { grouped } from '../plain/groups.ts';
import { kept } from '../plain/kept.ts';
import { placeKey, type Given } from '../provenance/source.ts';
import { roundMoney } from '../quantity/money.ts';
import { printRun } from '../quantity/print-length.ts';
import { Rational } from '../quantity/rational.ts';
import type { Ticks } from '../quantity/ticks.ts';
import { closingAmong } from '../takeoff/closing/pieces.ts';
import { counted } from '../plain/words.ts';
import { bandSaid, closingSaid } from '../takeoff/closing/said.ts';
import type { Joint, Part, Piece, TakeOff } from '../takeoff/model.ts';
import type { LaborBasis, LaborLine, Missing, Phase } from './model.ts';

/** A room as it is priced. */
export interface PricedRoom { readonly ceiling: Ceiling; readonly takeOff: TakeOff }

const LENGTHS: readonly { readonly part: Part & TimedByLength; readonly phase: Phase; readonly what: string }[] = [
    { part: 'blocking', phase: 'blocking', what: 'blocking' },
    { part: 'side', phase: 'sides', what: 'sides' },
    { part: 'cleat', phase: 'sides', what: 'cleats' },
    { part: 'bottom', phase: 'bottoms', what: 'bottoms' },
    { part: 'timber', phase: 'bottoms', what: 'timbers' },
    { part: 'molding', phase: 'bottoms', what: 'moldings' },
    { part: 'band', phase: 'band', what: 'band' },
    { part: 'trim', phase: 'trim', what: 'trim' },
];
const JOINTS: readonly { readonly kinds: readonly Joint['kind'][]; readonly rate: TimedByCount; readonly phase: Phase; readonly what: string }[] = [
    { kinds: ['corner'], rate: 'corner', phase: 'sides', what: 'corners of sides' },
    { kinds: ['side-splice'], rate: 'splice', phase: 'sides', what: 'splices of sides' },
    { kinds: ['butt'], rate: 'butt', phase: 'bottoms', what: 'butt joints of bottoms' },
    { kinds: ['splice'], rate: 'splice', phase: 'bottoms', what: 'splices of bottoms' },
    { kinds: ['band-splice'], rate: 'splice', phase: 'band', what: 'splices of the band' },
    { kinds: ['trim-splice'], rate: 'splice', phase: 'trim', what: 'splices of the trim' },
];

/**
 * Hours of work, room by room: feet of every part, joints, coffers, and what a detail takes longer that is new to the crew
 * or put up for the first time. What nobody has timed is missing, not nothing.
 * @param seen keys of the details whose first bay has been reckoned, in rooms under other rates too; grows
 */
export function laborOf(rooms: readonly PricedRoom[], setUps: number, labor: Labor, seen = new Set<string>()): { lines: LaborLine[]; missing: Missing[] } {
    const book = new Book(labor);
    for (const room of rooms) {
        const own = book.room(room);
        const details = detailsOf(room.ceiling).filter(({ key }) => !seen.has(key));
        if (labor.firstBay) details.forEach(({ key }) => seen.add(key));
        book.slower(room, own, details);
    }
    if (setUps > 0) book.counted(undefined, 'set-up', 'saw set-ups', SET, setUps, 'set-ups');
    return { lines: book.lines, missing: book.missing };
}

/** Whether a detail is new to the crew, by the place of its profile. */
export function isUnfamiliar(detail: string | undefined, { unfamiliar }: Labor): boolean {
    return unfamiliar !== undefined && detail !== undefined
        && (unfamiliar.value.of.length === 0 || unfamiliar.value.of.some(({ at }) => placeKey(at) === detail));
}

/** Profiles of a room by their declaration, each once. */
function detailsOf(ceiling: Ceiling): { key: string; profile: Profile }[] {
    const byKey = new Map<string, Profile>();
    for (const { section: { profile } } of ceiling.lines) byKey.set(placeKey(profile.at), profile);
    return [...byKey].map(([key, profile]) => ({ key, profile }));
}

/**
 * Work on one thing. `of`: the piece it belongs to, by its name in the cut list (of a joint the piece that is fitted to the other), or a
 * crossing or a coffer that is laid out or filled and sanded.
 */
interface Timed {
    readonly minutes: Rational;
    readonly of: { readonly piece: string } | { readonly crossing: string } | { readonly coffer: number };
    /** The profile that it belongs to, where it belongs to one. */
    readonly detail: string | undefined;
}

/**
 * What each piece, joint, crossing and coffer of a room takes, as the room's labor is made of it; without saw set-ups, and without what is new
 * or the first of its kind.
 */
export function timedWork(room: PricedRoom, labor: Labor): readonly Timed[] {
    return new Book(labor).room(room);
}

/** Bottoms that biscuits keep from going straight up, but for those whose run is joined before it goes up. */
const closingOf = kept(({ pieces, joints }: TakeOff, ceiling: Ceiling): readonly Piece[] => joints.some(({ biscuits }) => biscuits)
    ? closingAmong(ceiling, pieces, bandSaid(ceiling.room)).filter(({ onlySplice }) => !onlySplice).map(({ piece }) => piece) : []);

const SET = 'fences and stops set';

class Book {
    readonly lines: LaborLine[] = [];
    readonly missing: Missing[] = [];

    constructor(private readonly labor: Labor) {}

    room({ ceiling, takeOff }: PricedRoom): Timed[] {
        const { room: name, pieces, joints } = takeOff;
        const show = ceiling.room.job.show.value;
        const details = new Map(ceiling.lines.map(line => [line.name, placeKey(line.section.profile.at)]));
        const ofGrid = ceiling.beams && placeKey(ceiling.beams.profile.at);
        const detailOf = (piece: Piece): string | undefined => piece.part === 'band' ? undefined : piece.line === null ? ofGrid : details.get(piece.line);
        const timed: Timed[] = [];
        const count = (rate: TimedByCount, phase: Phase, what: string, of: readonly Omit<Timed, 'minutes'>[], unit: string): void => {
            if (of.length === 0) return;
            const each = this.counted(name, rate, phase, what, of.length, unit);
            if (each) timed.push(...of.map(one => ({ ...one, minutes: each })));
        };
        const ofPiece = (piece: Piece): Omit<Timed, 'minutes'> => ({ of: { piece: piece.id }, detail: detailOf(piece) });
        count('layout', 'setting out', 'crossings', ceiling.crossings.map(({ name: crossing, ns }) => ({ of: { crossing }, detail: details.get(ns.name) })), 'crossings');
        count('panel', 'blocking', 'panels', pieces.filter(piece => piece.part === 'panel').map(ofPiece), 'pieces');
        for (const { part, phase, what } of LENGTHS) {
            const own = pieces.filter(piece => piece.part === part);
            if (own.length === 0) continue;
            const perTick = this.long(name, part, phase, what, own.reduce((sum, piece) => sum + piece.back, 0), show);
            if (perTick) timed.push(...own.map(piece => ({ ...ofPiece(piece), minutes: perTick.mul(piece.back) })));
            if (part === 'blocking') count('spacer', 'blocking', 'spacers', pieces.filter(piece => piece.part === 'spacer').map(ofPiece), 'pieces');
        }
        const byId = new Map(pieces.map(piece => [piece.id, piece]));
        for (const { kinds, rate, phase, what } of JOINTS) {
            count(rate, phase, what, joints.filter(({ kind }) => kinds.includes(kind)).map(joint => ofPiece(byId.get(joint.pieces[0])!)), 'joints');
        }
        for (const [way, own] of grouped(closingOf(takeOff, ceiling), piece => closingSaid(piece, ceiling)?.value)) {
            const what = way === undefined ? 'closing pieces' : `closing pieces, ${way.replaceAll('-', ' ')}`, rate = closingTime(this.labor, way);
            if (!rate) { this.lacks('labor.closing', counted(own.length, oneOf(what), what), name); continue; }
            this.write(name, 'bottoms', what, rate, { by: 'count', count: own.length, unit: 'pieces', each: rate.value });
            timed.push(...own.map(piece => ({ ...ofPiece(piece), minutes: rate.value })));
        }
        count('coffer', 'filling and sanding', 'coffers', ceiling.coffers.map(({ number }) => ({ of: { coffer: number }, detail: ofGrid })), 'coffers');
        return timed;
    }

    /** The first bay of a detail, and a detail new to the crew: shares of the time that its own work takes. */
    slower({ ceiling, takeOff: { room } }: PricedRoom, timed: readonly Timed[], details: readonly { key: string; profile: Profile }[]): void {
        const { firstBay, unfamiliar } = this.labor;
        const minutesOf = (key: string): Rational => timed.filter(({ detail }) => detail === key).reduce((sum, { minutes }) => sum.add(minutes), ZERO);
        for (const { key, profile: { name } } of details) {
            if (!firstBay || ceiling.coffers.length === 0) continue;
            const bay = minutesOf(key).div(ceiling.coffers.length);
            this.write(room, 'first of its kind', `first bay of ${name}`, firstBay, { by: 'share', share: firstBay.value, minutes: bay, ofWhat: 'an average bay' });
        }
        for (const { key, profile: { name } } of detailsOf(ceiling).filter(({ key }) => isUnfamiliar(key, this.labor))) {
            this.write(room, 'first of its kind', `${name} is new to the crew`, unfamiliar!, { by: 'share', share: unfamiliar!.value.share, minutes: minutesOf(key), ofWhat: `the work on ${name}` });
        }
    }

    private long(room: string, part: TimedByLength, phase: Phase, what: string, ticks: Ticks, show: 'feet-inches' | 'millimeters'): Rational | undefined {
        const rate = this.labor.byLength[part];
        if (!rate) { this.lacks(`labor.${BY_LENGTH[part]}`, `${printRun(ticks, show)} of ${what}`, room); return undefined; }
        this.write(room, phase, what, rate, { by: 'length', ticks, perTick: rate.value });
        return rate.value;
    }

    counted(room: string | undefined, timed: TimedByCount, phase: Phase, what: string, count: number, unit: string): Rational | undefined {
        const rate = this.labor.byCount[timed];
        if (!rate) { this.lacks(`labor.${BY_COUNT[timed]}`, counted(count, oneOf(what), what), room); return undefined; }
        this.write(room, phase, what, rate, { by: 'count', count, unit, each: rate.value });
        return rate.value;
    }

    private write(room: string | undefined, phase: Phase, what: string, { at }: Given<unknown>, basis: LaborBasis): void {
        const minutes = minutesOf(basis);
        if (minutes.equals(0)) return;
        const { rate } = this.labor;
        this.lines.push({
            ...room !== undefined && { room }, phase, what, basis, minutes, at,
            ...rate && { amount: roundMoney(minutes.div(60).mul(rate.value.amount)) },
        });
    }

    private lacks(rate: string, of: string, room: string | undefined): void {
        this.missing.push({ rate, of, ...room !== undefined && { room }, ...this.labor.at && { at: this.labor.at } });
    }
}

/** `crossing` of `crossings`, `butt joint of bottoms` of `butt joints of bottoms`. */
function oneOf(what: string): string {
    return what === SET ? 'fence or stop set' : what.replace(/s(?= of |,|$)/, '');
}

const ZERO = new Rational(0);

function minutesOf(basis: LaborBasis): Rational {
    switch (basis.by) {
        case 'length': return basis.perTick.mul(basis.ticks);
        case 'count': return basis.each.mul(basis.count);
        case 'share': return basis.minutes.mul(basis.share);
    }
}
