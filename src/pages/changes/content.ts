import type { HouseChange, RoomChange } from '../../changes/model.ts';
import { drawSmallPlan, toPaneSvg, withClouds } from '../../drawing/index.ts';
import type { Finding, Severity } from '../../findings/finding.ts';
import type { JobSettings } from '../../job/model.ts';
import { layoutOf } from '../../pipeline/inspect.ts';
import { counted } from '../../plain/words.ts';
import type { Source } from '../../provenance/source.ts';
import { printMoney } from '../../quantity/money.ts';
import { printLength } from '../../quantity/print-length.ts';
import { toldChanges, valuesOf, whatText } from '../../report/changes/said.ts';
import { comparisonRows, FARES, fateText, isSame, jobOf, pieceRows, pieceWords, priceRows, roomWords, type RoomWords } from '../../report/changes/words.ts';
import { differenceText } from '../../report/estimate/words.ts';
import { standingNotice, standingOfRooms } from '../../report/standing.ts';
import { LEAST_LETTERS, type PageContent, type RoomOnPage, type Wishes } from '../page.ts';
import { placeOfLine } from '../plan/content.ts';
import { Sources } from '../shared/sources.ts';
import type { ChangesFound, ChangesKnown, NoHistory } from './known.ts';
import type { Since } from './since.ts';

/** What changed in a house since a commit, layer by layer; or why that is not known. */
export interface ChangesContent extends PageContent {
    readonly none?: NoHistory;
    readonly isWorking?: boolean;
    readonly found?: FoundContent;
    /** The contract names a commit that was signed. */
    readonly isSigned: boolean;
}

export interface FoundContent extends Since {
    readonly isLooking: boolean;
    /** A room is half written: this is how it was before. */
    readonly isBehind: boolean;
    readonly unread: readonly { readonly file: string; readonly why: ChangesFound['unread'][number]['why'] }[];
    /** Why what is told of the state before is not to be relied on. */
    readonly before: readonly string[];
    /** Where the house is in one of the two states only. */
    readonly isNew: boolean;
    /** Every piece, board, hour and sum is as it was. */
    readonly isSame: boolean;
    /** How much more or less it costs, in words; empty where nobody can tell. */
    readonly costs: string;
    readonly said: readonly SaidRow[];
    readonly ceilings: readonly CeilingPart[];
    readonly fares: readonly string[];
    readonly pieces: readonly { readonly part: string; readonly counts: readonly number[] }[];
    readonly lines: readonly PieceRow[];
    readonly cut: readonly { readonly name: string; readonly length: string; readonly worth: string; readonly saved: string; readonly fate: string }[];
    /** No other way to use old pieces saves more wood. */
    readonly isProved: boolean;
    readonly numbers: readonly { readonly what: string; readonly before: string; readonly after: string }[];
    readonly price: readonly { readonly what: string; readonly why: string; readonly amount: string; readonly strong: boolean }[];
    readonly lacks: readonly string[];
    readonly come: readonly FoundRow[]; readonly gone: readonly FoundRow[];
}

/** A place in the text, by its number; `was`: in the state before, where the words are no more. */
export interface Place { readonly at: number; readonly was?: true }
interface SaidRow extends Place { readonly what: string; readonly before: string; readonly after: string; readonly where: string }
interface CeilingPart {
    readonly room: string; readonly title: string;
    /** Laid out now, so that it can be looked at. */
    readonly isThere: boolean;
    readonly changes: readonly (Place & { readonly words: string; readonly key: string })[];
    /** Drawings of the room before and now, what changed on them ringed and numbered as above: markup that src/drawing made. */
    readonly plans: readonly { readonly when: 'before' | 'now'; readonly svg: string }[];
}
interface PieceRow extends Place { readonly count: number; readonly words: string; readonly key: string }
interface FoundRow extends Place { readonly severity: Severity; readonly words: string; readonly rule: string }

export function changesContent(room: RoomOnPage, { changes = { none: 'not-asked' }, width }: Wishes): ChangesContent {
    const sources = new Sources(), known = knownContent(changes, width ?? 900, sources);
    const isSigned = room.layout.room.job.contract?.signed?.commit !== undefined;
    return { ...known, isSigned, rooms: room.house.map(({ file, layout }) => ({ uri: file.uri, room: layout.room.name })), sources: sources.list };
}

function knownContent(changes: ChangesKnown, width: number, sources: Sources): Pick<ChangesContent, 'none' | 'isWorking' | 'found'> {
    if ('none' in changes) return { none: changes.none };
    return 'working' in changes ? { isWorking: true } : { found: foundContent(changes, width, sources) };
}

function foundContent(found: ChangesFound, width: number, sources: Sources): FoundContent {
    const { before, house, isLooking, isBehind, unread } = found, job = jobOf(house), { pieces, cut, price, findings } = house, since = sinceOf(found);
    const now = (source: Source): Place => ({ at: sources.number(source) }), then = (source: Source): Place => ({ ...now(source), was: true });
    const money = (one: { readonly amount: Parameters<typeof printMoney>[0]; readonly currency: string } | undefined): string => (one ? printMoney(one.amount, one.currency) : '');
    const row = ({ severity, message, rule, at }: Finding, place: (source: Source) => Place): FoundRow => ({ severity, words: message, rule, ...place(at) });
    return {
        ...since, isLooking, isBehind, unread, before: standingNotice(standingOfRooms(before.rooms)),
        isNew: !house.before, isSame: isSame(house), costs: price && house.before ? differenceText(price.total, price.currency) : '',
        said: toldChanges(found.said).map(({ change, holds }) => {
            const { file, movedFrom } = change, { was = '', is = '' } = valuesOf(change), one = (change.after ?? change.before)!;
            return {
                what: `${whatText(change)}${holds > 0 ? ` (with ${counted(holds, 'line')})` : ''}`, before: was, after: is,
                where: `${file}:${one.at.range.start.line + 1}${movedFrom === undefined ? '' : `, was in ${movedFrom}`}`, ...(change.after ? now : then)(one.at),
            };
        }),
        ceilings: house.rooms.filter(room => !room.isSame || room.renamedFrom !== undefined).map(room => ceilingPart(room, job, width, since.commit, sources)),
        fares: FARES, pieces: pieceRows(house).map(([part, ...counts]) => ({ part, counts })),
        lines: pieceWords(house, job).map(({ words, pieces: own, isGone }) => ({ count: own.length, words, key: isGone ? '' : own[0]!.id, ...(isGone ? then : now)(own[0]!.source) })),
        cut: cut.wood.map(wood => ({ name: `${wood.room}.${wood.name}`, length: printLength(wood.length, job.show.value), worth: money(wood.worth), saved: money(wood.saved), fate: fateText(wood, job) })),
        isProved: pieces.proved && cut.proved,
        numbers: comparisonRows(house, job).map(([what = '', was = '', , is = '']) => ({ what, before: was, after: is })),
        price: price && house.before ? priceLines(house) : [], lacks: price?.lacks ?? [],
        come: findings.come.map(one => row(one, now)), gone: findings.gone.map(one => row(one, then)),
    };
}

/** What a house was compared with. */
export function sinceOf({ before, against }: Pick<ChangesFound, 'before' | 'against'>): Since {
    const { hash = '', date = '', subject = '' } = before.commit ?? {};
    return { commit: hash, short: hash.slice(0, 8), date, subject, against };
}

/** The sum stands out, and what follows it is another way to reckon it. */
function priceLines(house: HouseChange): FoundContent['price'] {
    return priceRows(house).map(([what = '', why = '', amount = '']) => ({ what, why, amount, strong: what === 'the change costs' }));
}

function ceilingPart(room: RoomChange, job: JobSettings, width: number, commit: string, sources: Sources): CeilingPart {
    const { before, after } = room, there = (after ?? before)!.room, told = roomWords(room, job);
    const changes = told.map((one, i) => {
        const { source, was } = placeOf(one, room);
        return { words: one.words, key: `change.${room.name}.${i + 1}`, at: sources.number(source), ...was && { was } };
    });
    const isThere = after?.takeOff !== undefined;
    return { room: room.name, title: there.title ?? there.name, isThere, changes, plans: plansOf(room, told, changes, { width, commit }) };
}

/** Where it is said that a part of the ceiling is so: now, or then where it is there no more. */
function placeOf({ line, wall }: RoomWords, { before, after }: RoomChange): { readonly source: Source; readonly was?: true } {
    const name = line?.after?.name ?? line?.before?.name, side = after && (!line || line.after) ? after : before ?? after!;
    const { ceiling } = layoutOf(side.room), { room } = side;
    const drawn = name === undefined ? undefined : ceiling?.lines.find(one => one.name === name), ofWall = room.walls.find(one => one.name === wall);
    const source = drawn ? placeOfLine(drawn, room) : ofWall ? ofWall.length?.at ?? ofWall.at : room.grid?.at ?? room.at;
    return { source, ...side !== after && { was: true } };
}

/** CSS pixels that a point of the small plans takes, and how wide they are at most. */
const PIXELS = 1.35, WIDEST = 520, HEIGHT = 0.72;

/** Two beside each other where there is room for both. */
function plansOf(room: RoomChange, told: readonly RoomWords[], changes: CeilingPart['changes'], { width, commit }: { readonly width: number; readonly commit: string }): CeilingPart['plans'] {
    const wide = Math.min(WIDEST, Math.max(200, width >= 640 ? (width - 70) / 2 : width - 40)), size = { width: wide / PIXELS, height: wide * HEIGHT / PIXELS };
    return ([['before', 'before'], ['after', 'now']] as const).flatMap(([side, when]) => {
        const there = room[side], ceiling = there && layoutOf(there.room).ceiling, takeOff = there?.takeOff;
        if (!ceiling || !takeOff) return [];
        const marks = told.flatMap(({ line, words }, i) => (line?.[side] ? [{ line: line[side].name, mark: String(i + 1), title: words }] : []));
        // where no line is otherwise, and the room is, all of it is marked
        const shown = room.lines.length > 0 ? marks : [{ mark: '1', title: changes.map(({ words }) => words).join('; ') }];
        const sheet = withClouds(drawSmallPlan(ceiling, takeOff, size), ceiling, takeOff, shown, LEAST_LETTERS / PIXELS);
        const svg = toPaneSvg({ ...sheet, id: `change-${room.name}-${when}` }, ({ id }) => {
            const mark = shown[Number(/^changed\.(\d+)$/.exec(id)?.[1] ?? 0) - 1];
            return mark ? partOf(changes[Number(mark.mark) - 1]!, `${mark.mark}: ${mark.title}`, commit) : {};
        });
        return [{ when, svg }];
    });
}

/** What leads from a drawing to the words of a change, as its line in the list does. */
function partOf({ key, at, was }: CeilingPart['changes'][number], label: string, commit: string): Readonly<Record<string, string>> {
    return { 'class': 'part', 'data-key': key, 'data-at': String(at), ...was && { 'data-was': commit }, role: 'button', tabindex: '0', 'aria-label': label };
}
