import { afterCutting } from '../../cutting/after-cutting.ts';
import { knownText, weakest } from '../../cutting/known.ts';
import { drawSmallPlan, drawSmallSection, sectionsOf, toPaneSvg, type Sheet } from '../../drawing/index.ts';
import { PHASES, type Estimate } from '../../estimate/model.ts';
import type { Room } from '../../job/model.ts';
import type { Severity } from '../../findings/finding.ts';
import { filesBeside } from '../shared/files-beside.ts';
import type { Source } from '../../provenance/source.ts';
import { layoutOf, takeOffOf } from '../../pipeline/inspect.ts';
import { price, priceWith, type PricedAlternate } from '../../pipeline/price.ts';
import { printMoney } from '../../quantity/money.ts';
import { printLength, printRun, type Show } from '../../quantity/print-length.ts';
import type { Rational } from '../../quantity/rational.ts';
import type { HousePrice } from '../../report/estimate/house.ts';
import { basisText, daysText, differenceText, eachText, hoursText, onHandText, shareText, sizeText } from '../../report/estimate/words.ts';
import { afterCuttingText } from '../../report/estimate/after-cutting.ts';
import { spareText } from '../../report/spare.ts';
import { titleOfHouse } from '../../report/house.ts';
import type { PageContent, RoomOnPage } from '../page.ts';
import { boardsOfHouse } from '../boards/house-plan.ts';
import { Sources } from '../shared/sources.ts';
import { t } from '../shared/words.ts';
import { unitOf } from '../../plain/words.ts';

export interface EstimateContent extends PageContent {
    readonly title: string;
    readonly total: string; readonly hours: string; readonly days: string;
    /** How good the plan of the boards is known to be. */
    readonly boardsKnown: string;
    /** What is reckoned for defects. */
    readonly spare: string;
    /** Whose the boards on hand are that it counts on. */
    readonly onHand: string;
    /** What is bought besides, where something is cut or spoiled already. */
    readonly after: string;
    /** The price, from the costs to the total. */
    readonly price: readonly PriceRow[];
    readonly boards: readonly AmountRow[];
    readonly supplies: readonly AmountRow[];
    readonly labor: readonly LaborRow[];
    readonly phases: readonly string[];
    readonly missing: readonly { readonly rate: string; readonly of: string; readonly at: number | null }[];
    readonly alternates: readonly AlternateContent[];
    /** Why the job beside the alternates costs something else than above: it is compared by boards as they are planned at once, like them. */
    readonly compared: string;
}
interface PriceRow { readonly what: string; readonly why: string; readonly amount: string; readonly at: number | null; readonly strong: boolean }
export interface AmountRow { readonly what: string; readonly count: string; readonly each: string; readonly amount: string; readonly at: number | null }
export interface LaborRow {
    readonly phase: string; readonly room: string; readonly what: string; readonly why: string; readonly minutes: number; readonly hours: string;
    readonly cents: number; readonly amount: string; readonly at: number;
}

export interface AlternateContent {
    readonly name: string; readonly title: string; readonly at: number;
    /** What was found with it and not with the job, the errors first. */
    readonly found: readonly { readonly words: string; readonly severity: Severity; readonly at: number }[];
    readonly canBeBuilt: boolean;
    readonly total: string; readonly before: string; readonly difference: string; readonly dearer: boolean;
    readonly hours: string; readonly days: string;
    readonly changes: readonly { readonly what: string; readonly before: string; readonly after: string }[];
    /** Drawings as they are and as they would be, of what looks otherwise: markup that src/drawing made. */
    readonly looks: readonly { readonly title: string; readonly before: string; readonly after: string }[];
}

/**
 * The house of a room, priced, with every alternate of it by itself. The job is priced with the best boards known. Where nobody has
 * looked for those of the alternates they are compared as they come at once, and so is the job beside them: like with like.
 */
export function housePrice(page: RoomOnPage): HousePrice {
    const { house, layout: { room: { job } }, file, alternates, boards, looksClosely, picked = false } = page;
    const rooms = house.map(one => one.layout.room);
    const plans = boards?.forPrices, fresh = house.every(one => one.layout.room.cutBoards.length === 0 && one.layout.room.spoiled.length === 0);
    const known = plans?.plan ?? (fresh ? boards?.plan : undefined), priced = price(rooms, job, known);
    const after = fresh
        ? undefined
        : afterCutting(rooms, page.house.map(({ layout, takeOff }) => ({ room: layout.room, pieces: takeOff.pieces })), boardsOfHouse(page).plan, priced.plan);
    const looking = {
        nameOf: filesBeside(file.uri).nameOf, ...plans && { plans },
        ...looksClosely && { fileOf: (uri: string) => house.find(one => one.file.uri === uri)?.file },
    };
    return {
        house: { job, alternates, picked, rooms: house.map(({ layout, takeOff, standing }) => ({ room: layout.room, takeOff, standing })) },
        priced, ...after && { after }, alternates: alternates.map(alternate => priceWith(alternate, rooms, job, looking)),
    };
}

export function estimateContent(page: RoomOnPage): EstimateContent {
    const { house, priced, alternates, after } = housePrice(page);
    const { estimate } = priced, show = house.job.show.value, sources = new Sources();
    const money = (amount: Rational): string => printMoney(amount, estimate.currency);
    const at = (source: Source | undefined): number | null => source ? sources.number(source) : null;
    return {
        title: titleOfHouse(house), total: money(estimate.sums.total), boardsKnown: knownText(weakest(priced.plan)), spare: spareText([priced.plan], show), onHand: onHandText(estimate), after: after ? afterCuttingText(after) : '', hours: hoursText(estimate.minutes), days: crewText(estimate),
        price: priceRows(estimate, money, at),
        boards: estimate.materials.map(({ stock, length, width, count, each, onHand, amount }) => ({ what: `${stock.title ?? stock.name}, ${sizeText({ length, width }, show)}${onHand ? `, ${t('on hand')}` : ''}`, count: String(count), each: money(each), amount: money(amount), at: at(stock.at) })),
        supplies: estimate.supplies.map(line => ({ what: line.what, count: `${line.count} ${unitOf(line.count, line.unit)}`, each: eachText(line, estimate.currency), amount: money(line.amount), at: at(line.at) })),
        labor: estimate.labor.map(line => ({
            phase: line.phase, room: line.room ?? '', what: line.what, why: basisText(line.basis, show), at: sources.number(line.at), minutes: line.minutes.valueOf(), hours: hoursText(line.minutes),
            cents: line.amount ? line.amount.mul(100).valueOf() : 0, amount: line.amount ? money(line.amount) : t('no rate'),
        })),
        phases: PHASES.filter(phase => estimate.labor.some(line => line.phase === phase)),
        missing: estimate.missing.map(({ rate, of, at: place }) => ({ rate, of, at: at(place) })),
        alternates: alternates.map(one => alternateContent(one, show, sources)), compared: comparedText(alternates[0], estimate), sources: sources.list,
    };
}

function comparedText(one: PricedAlternate | undefined, { sums: { total }, currency }: Estimate): string {
    const before = one?.comparison.total.before;
    return !before || before.equals(total) ? '' : t('To compare like with like, the job and its alternates are priced on their first plan of boards. On that, the job costs {0}.', printMoney(before, currency));
}

function crewText({ crew, days }: Estimate): string {
    if (!days) return t('no crew given');
    return crew === undefined ? t('{0}, each room by its own crew', daysText(days)) : t('{0} for a crew of {1}', daysText(days), crew);
}

function priceRows(estimate: Estimate, money: (amount: Rational) => string, at: (source: Source | undefined) => number | null): PriceRow[] {
    const { sums } = estimate;
    const row = (what: string, amount: Rational): PriceRow => ({ what, why: '', amount: money(amount), at: null, strong: false });
    return [
        row(t('boards'), sums.materials), row(t('supplies'), sums.supplies), row(t('labor'), sums.labor),
        ...estimate.additions.map(line => ({ what: line.what, why: shareText(line, estimate), amount: money(line.amount), at: at(line.at), strong: false })),
        { ...row(t('total'), sums.total), strong: true },
    ];
}

function alternateContent({ alternate, priced, comparison, told }: PricedAlternate, show: Show, sources: Sources): AlternateContent {
    const { estimate } = priced, { total, boards, pieces } = comparison, difference = total.after.sub(total.before);
    return {
        name: alternate.name, title: alternate.title ?? alternate.name, at: sources.number(alternate.at),
        found: told.map(({ message, severity, at }) => ({ words: message, severity, at: sources.number(at) })), canBeBuilt: priced.left.length === 0 && told.every(({ severity }) => severity !== 'error'),
        total: printMoney(total.after, estimate.currency), before: printMoney(total.before, estimate.currency),
        difference: differenceText(difference, estimate.currency), dearer: difference.s > 0n && !difference.equals(0),
        hours: hoursText(estimate.minutes), days: crewText(estimate),
        changes: [
            ...pieces.map(({ part, before, after, feet }) => ({ what: part, before: `${before} (${printRun(feet.before, show)})`, after: `${after} (${printRun(feet.after, show)})` })),
            ...boards.map(({ stock, length, before, after }) => ({ what: `${stock}, ${printLength(length, show)}`, before: String(before), after: String(after) })),
        ],
        looks: alternate.rooms.flatMap(({ instead, room }, i) => looksOf(instead, room, `${alternate.name}-${i}`)),
    };
}

/** Large enough to tell the grids apart, in points. */
const PLAN = { width: 300, height: 230 };

/** Two plans, and two sections where the beams differ. */
function looksOf(before: Room, after: Room, id: string): AlternateContent['looks'] {
    const a = layoutOf(before).ceiling, b = layoutOf(after).ceiling;
    if (!a || !b) return [];
    const picture = (sheet: Sheet, which: string): string => toPaneSvg({ ...sheet, id: `look-${id}-${which}` });
    const plan = (ceiling: typeof a, which: string): string => picture(drawSmallPlan(ceiling, takeOffOf(ceiling), PLAN), which);
    const [was] = sectionsOf(a), [is] = sectionsOf(b), show = before.job.show.value;
    const small = (one: typeof was, which: string): string | undefined => {
        const sheet = one && drawSmallSection(one.section, show);
        return sheet && picture(sheet, which);
    };
    const sections = was && is && was.section.profile.key !== is.section.profile.key ? [small(was, 'was'), small(is, 'is')] as const : undefined;
    return [
        { title: t('Plan, {0}', before.title ?? before.name), before: plan(a, 'before'), after: plan(b, 'after') },
        ...sections?.[0] && sections[1] ? [{ title: t('Beam, {0}', before.title ?? before.name), before: sections[0], after: sections[1] }] : [],
    ];
}
