import { nominalSection } from '../../data/board-measure.ts';
import { dressedSize } from '../../data/dressed-sizes.ts';
import type { NominalSize, Price, Sheet, SizeOfStock, Stock } from '../../job/model.ts';
import type { Given, Source } from '../../provenance/source.ts';
import type { Rational } from '../../quantity/rational.ts';
import { printLength } from '../../quantity/print-length.ts';
import { TICKS_PER_FOOT, type Ticks } from '../../quantity/ticks.ts';
import { exactly } from '../../quantity/tolerance.ts';
import type * as ast from '../generated/ast.ts';
import { isBroken } from '../types/broken.ts';
import { isForEach, isPerVolume } from '../types/type.ts';
import { sourceOf, sourceOfProperty, uriOf } from '../types/place.ts';
import { quoted } from '../types/words.ts';
import type { Raise } from './raised.ts';
import { recordedBy } from './recorded.ts';
import type { Reader, Reading } from './reading.ts';
import type { Found } from './values.ts';
import { listed } from '../../plain/words.ts';

/**
 * A board or a sheet one can buy. Width and thickness are those that are said, or else the published dressed size of the
 * nominal one; then their words are the nominal size's, and `said` is false. A sheet that says no width or lengths of its
 * own has those of its size, by its words.
 *
 * What the width and the thickness may be off has the cause `stock:<key>`: the section makes it that of one board, since
 * parts of one stock are still different boards.
 */
export function readStock(declaration: ast.Stock, reader: Reader, raise: Raise): Stock {
    const key = keyOfDeclaration(declaration);
    const reading = reader.reading('Stock', declaration.body, raise, key);
    const size: Given<NominalSize> | undefined = reading.given(reading.found('size'), ({ known: { value } }) => value.is === 'size' ? value.size : undefined);
    const sizeSaid = (name: 'thickness' | 'width'): SizeOfStock | undefined => {
        const size = reading.measure(name, `stock:${key}`);
        return size && { ...size, ...recordedBy(reading, mod => reading.found(name, mod), size.at) };
    };
    const said = { thickness: sizeSaid('thickness'), width: sizeSaid('width') };
    const sheet = sheetOf(reading, raise);
    const dressed = size && dressedSize(size.value.thickness, size.value.width);
    const side = (name: 'thickness' | 'width'): SizeOfStock | undefined => {
        if (said[name] || reading.lost(name, said[name])) return said[name];
        if (name === 'width' && sheet) return { ...sheet, value: exactly(sheet.value.width), said: false };
        if (reading.lost('sheet', sheet)) return undefined;
        return dressed && { value: exactly(dressed[name]), at: size.at, said: false, ...size.via && { via: size.via } };
    };
    const width = side('width');
    const stock: Stock = {
        name: declaration.name ?? '', ...declaration.title !== undefined && { title: declaration.title },
        at: sourceOfProperty(declaration, 'name'), key,
        size, species: reading.word('species'), thickness: side('thickness'), width,
        rippedWith: reading.text('ripped-with'), sheet, lengths: lengthsOf(reading, sheet), ...boughtOf(reading, size?.value, sheet, width, raise),
        supplier: reading.text('supplier'), leadDays: reading.wholeNumber('lead-days'), comes: reading.word('comes'),
        defects: defectsOf(reading, raise), spare: reading.wholeNumber('spare'),
    };
    checkSize(declaration, stock, reading, raise);
    return stock;
}

/** Where every board is bad none is enough. */
function defectsOf(reading: Reading, raise: Raise): Stock['defects'] {
    const share = reading.amount('defects');
    if (!share || share.value.exact.compare(1) < 0) return share && { ...share, value: share.value.exact };
    raise({ rule: 'out-of-range', at: share.at, via: share.via, message: `${quoted('defects')} is the share of the boards that is expected to be unusable: it has to be less than 100%.` });
    return undefined;
}

/** Declared once, one key: the file and the name. */
export function keyOfDeclaration(declaration: ast.Stock | ast.Profile | ast.Room): string {
    return `${uriOf(declaration)}#${declaration.name ?? ''}`;
}

function checkSize(declaration: ast.Stock, stock: Stock, reading: Reading, raise: Raise): void {
    const missing = (['width', 'thickness'] as const).filter(name => !stock[name] && !reading.lost(name, undefined));
    if (missing.length === 0 || isBroken(declaration) || reading.lost('size', stock.size) || reading.lost('sheet', stock.sheet) || reading.block.unknown.length > 0) return;
    const say = `give ${listed(missing.map(quoted), 'and')}, as the yard's boards measure`;
    if (!stock.size) {
        raise({ rule: 'no-dressed-size', at: stock.at, message: `How big is ${quoted(stock.name)}? Give its nominal ${quoted('size')}, such as 1x6; or ${say}.` });
        return;
    }
    const { text, thickness, width } = stock.size.value;
    const turned = dressedSize(width, thickness);
    const offer = turned ? `${width.toFraction()}x${thickness.toFraction()}` : undefined;
    raise({
        rule: 'no-dressed-size', at: stock.size.at,
        message: `No published table has a dressed size for ${text}.${offer ? ` Did you mean ${offer}?` : ''} Otherwise ${say}.`,
        fixes: offer ? [{ title: `Write ${offer}`, edits: [{ uri: stock.size.at.uri, range: stock.size.at.range, text: offer }] }] : [],
    });
}

function sheetOf(reading: Reading, raise: Raise): Given<Sheet> | undefined {
    const size = reading.pair('sheet'), grain = reading.word<Sheet['grain']>('sheet', 'grain'), said = reading.amount('sheet', 'stages');
    const stages = said && ([2, 3] as const).find(each => said.value.exact.equals(each));
    if (said && !stages) raise({ rule: 'out-of-range', at: said.at, via: said.via, message: 'A sheet is cut in two or in three stages.' });
    return size && grain && { ...size, value: { width: size.value.first.ticks, length: size.value.second.ticks, grain: grain.value, ...stages && { stages } } };
}

function lengthsOf(reading: Reading, sheet: Given<Sheet> | undefined): Given<Ticks>[] {
    const said = reading.lengths('lengths');
    return sheet && said.length === 0 && !reading.lost('lengths', undefined) ? [{ ...sheet, value: sheet.value.length }] : said;
}

/** What it is bought and reckoned at. */
function boughtOf(
    reading: Reading, size: NominalSize | undefined, sheet: Given<Sheet> | undefined, width: SizeOfStock | undefined, raise: Raise,
): Pick<Stock, 'prices' | 'onHand'> {
    const lengths = lengthsOf(reading, sheet);
    const prices = reading.each('price', (found, line) => priceOf(found, line, reading, size, lengths, raise)).map(({ value, at }): Price => ({ ...value, at }));
    for (const price of prices) {
        if (price.perTick.equals(0)) raise({ rule: 'likely-slip', severity: 'warning', at: price.at, message: `A board that costs nothing? If it is there already, write ${quoted('on-hand')}; if the price is not known yet, leave it out.` });
        if (price.perTick.s < 0n) raise({ rule: 'out-of-range', at: price.at, message: 'A price cannot be less than nothing.' });
    }
    const onHand = onHandOf(reading, width, raise);
    const [first, ...others]: { currency: string; at: Source }[] = [
        ...prices, ...onHand.flatMap(({ value: { worth }, at }) => worth ? [{ ...worth, at }] : []),
    ];
    const other = others.find(price => price.currency !== first!.currency);
    if (other) raise({ rule: 'mixed-currency', at: other.at, message: `This stock is priced in both ${first!.currency} and ${other.currency}, so its boards cannot be added up. Use one currency.`, related: [{ at: first!.at, message: `In ${first!.currency} here.` }] });
    return {
        prices: prices.filter(price => price.perTick.s >= 0n && price.currency === first!.currency),
        onHand: onHand.map(each => (
            each.value.worth && each.value.worth.currency !== first!.currency
                ? { ...each, value: { ...each.value, worth: undefined } } : each
        )),
    };
}

function priceOf({ known: { value }, expr }: Found, line: ast.Line, reading: Reading, size: NominalSize | undefined, lengths: readonly Given<Ticks>[], raise: Raise): Omit<Price, 'at'> | undefined {
    if (value.is !== 'quantity') return undefined;
    if (isPerVolume(value.type) && !size) {
        if (!reading.lost('size', size)) raise({ rule: 'no-nominal-size', at: sourceOf(expr), message: `A price per board foot is figured on the nominal size. Give that, such as ${quoted('size 1x6')}; or price the stock per ft.` });
        return undefined;
    }
    const only = reading.modOn(line, 'price', 'for');
    const lost = line.mods.some(mod => mod.decl?.$refText === 'for');
    const length = reading.given(only, found => reading.ticks(found));
    if (lost && !length) return undefined;
    const { currency } = value.type;
    if (isForEach(value.type)) return priceOfEach(value.exact, currency, length, lengths, expr, raise);
    return {
        perTick: isPerVolume(value.type) ? value.exact.mul(nominalSection(size!.thickness, size!.width)) : value.exact, currency,
        ...length && { for: length },
    };
}

/** The price of one board, of the length it is for: the one that is said, or the only one it is sold in. */
function priceOfEach(each: Rational, currency: string, said: Given<Ticks> | undefined, lengths: readonly Given<Ticks>[], expr: ast.Expr, raise: Raise): Omit<Price, 'at'> | undefined {
    const length = said ?? (lengths.length === 1 ? lengths[0] : undefined);
    if (length) return { perTick: each.div(length.value), currency, for: length };
    const { uri, range: { end } } = sourceOf(expr);
    const fixes = lengths.map(({ value }) => printLength(value)).filter(text => !text.startsWith('~'))
        .map(text => ({ title: `Write for ${text}`, edits: [{ uri, range: { start: end, end }, text: ` for ${text}` }] }));
    raise({ rule: 'not-said', at: sourceOf(expr), message: `Which length of board costs that? Give it, such as ${quoted(`for ${printLength(lengths[0]?.value ?? EIGHT_FEET)}`)}; or price the stock per ft.`, fixes });
    return undefined;
}
const EIGHT_FEET = 8 * TICKS_PER_FOOT;

/** @param width of the board; what is said of strips of one without a width is taken as it is */
function onHandOf(reading: Reading, width: SizeOfStock | undefined, raise: Raise): Stock['onHand'] {
    return reading.each('on-hand', (found, line) => {
        const { value } = found.known;
        if (value.is !== 'pair') return undefined;
        const count = reading.count(found, value.first), length = reading.ticks(found, value.second);
        if (count === undefined || length === undefined) return undefined;
        const known = recordedBy(reading, mod => reading.modOn(line, 'on-hand', mod), sourceOf(found.expr));
        const said = reading.modOn(line, 'on-hand', 'worth');
        const worth = said && reading.amountOf(said);
        const ripped = reading.modOn(line, 'on-hand', 'ripped-to'), wide = ripped && reading.ticks(ripped);
        if (ripped && wide === undefined) return undefined;
        if (wide !== undefined && width && wide >= width.value.ticks) {
            const found = { strip: printLength(wide), board: printLength(width.value.ticks) };
            raise({ rule: 'out-of-range', at: sourceOf(ripped!.expr), message: `A strip is narrower than its board: ${found.strip} is ripped from none that is ${found.board} wide. If these are boards, leave ${quoted('ripped-to')} out.` });
            return undefined;
        }
        return { count, length, ...worth && { worth: { amount: worth.exact, currency: worth.currency } }, ...wide !== undefined && { width: wide }, ...known };
    });
}
