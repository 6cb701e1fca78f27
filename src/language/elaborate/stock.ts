import { nominalSection } from '../../data/board-measure.ts';
import { dressedSize } from '../../data/dressed-sizes.ts';
import type { NominalSize, Price, Stock } from '../../job/model.ts';
import type { Given } from '../../provenance/source.ts';
import type { Measure } from '../../quantity/measure.ts';
import { exactly } from '../../quantity/tolerance.ts';
import type * as ast from '../generated/ast.ts';
import { isBroken } from '../types/broken.ts';
import { isPerVolume } from '../types/type.ts';
import { sourceOf, sourceOfProperty, uriOf } from '../types/place.ts';
import { listed, quoted } from '../types/words.ts';
import type { House } from './house.ts';
import type { Raise } from './raised.ts';
import type { Reading } from './reading.ts';

/**
 * A board one can buy. Width and thickness are those that are said, or else the published dressed size of the nominal
 * one; then their words are the nominal size's, and `said` is false.
 *
 * What the width and the thickness may be off has the cause `stock:<key>`: the section makes it that of one board, since
 * parts of one stock are still different boards.
 */
export function readStock(declaration: ast.Stock, house: House, raise: Raise): Stock {
    const key = keyOfDeclaration(declaration);
    const reading = house.reading('Stock', declaration.body, raise, key);
    const size: Given<NominalSize> | undefined = reading.given(reading.found('size'), ({ known: { value } }) => value.is === 'size' ? value.size : undefined);
    const said = { thickness: reading.measure('thickness', `stock:${key}`), width: reading.measure('width', `stock:${key}`) };
    const dressed = size && dressedSize(size.value.thickness, size.value.width);
    const side = (name: 'thickness' | 'width'): Given<Measure> | undefined => {
        if (said[name] || reading.lost(name, said[name])) return said[name];
        return dressed && { value: exactly(dressed[name]), at: size.at, said: false, ...size.via && { via: size.via } };
    };
    const stock: Stock = {
        name: declaration.name ?? '', ...declaration.title !== undefined && { title: declaration.title },
        at: sourceOfProperty(declaration, 'name'), key,
        size, species: reading.word('species'), thickness: side('thickness'), width: side('width'),
        rippedWith: reading.text('ripped-with'), lengths: reading.lengths('lengths'), prices: pricesOf(reading, size?.value, raise), onHand: onHandOf(reading),
    };
    checkSize(declaration, stock, reading, raise);
    return stock;
}

/** Declared once, one key: the file and the name. */
export function keyOfDeclaration(declaration: ast.Stock | ast.Profile | ast.Room): string {
    return `${uriOf(declaration)}#${declaration.name ?? ''}`;
}

function checkSize(declaration: ast.Stock, stock: Stock, reading: Reading, raise: Raise): void {
    const missing = (['width', 'thickness'] as const).filter(name => !stock[name] && !reading.lost(name, undefined));
    if (missing.length === 0 || isBroken(declaration) || reading.lost('size', stock.size) || reading.block.unknown.length > 0) return;
    const say = `say ${listed(missing.map(quoted), 'and')}, as the yard's boards measure`;
    if (!stock.size) {
        raise({ rule: 'no-dressed-size', at: stock.at, message: `How big is ${quoted(stock.name)}? Say its nominal ${quoted('size')}, such as 1x6; or ${say}.` });
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

function pricesOf(reading: Reading, size: NominalSize | undefined, raise: Raise): Price[] {
    const prices = reading.each('price', ({ known: { value }, expr }, line): Omit<Price, 'at'> | undefined => {
        if (value.is !== 'quantity') return undefined;
        if (isPerVolume(value.type) && !size) {
            if (!reading.lost('size', size)) raise({ rule: 'no-nominal-size', at: sourceOf(expr), message: `A price per board foot is reckoned on the nominal size. Say it, such as ${quoted('size 1x6')}; or price the stock per ft.` });
            return undefined;
        }
        const only = reading.modOn(line, 'price', 'for');
        const lost = line.mods.some(mod => mod.decl?.$refText === 'for');
        const length = reading.given(only, found => reading.ticks(found));
        return lost && !length ? undefined : { perTick: isPerVolume(value.type) ? value.exact.mul(nominalSection(size!.thickness, size!.width)) : value.exact, currency: value.type.currency, ...length && { for: length } };
    }).map(({ value, at }): Price => ({ ...value, at }));
    for (const price of prices) {
        if (price.perTick.s < 0n) raise({ rule: 'out-of-range', at: price.at, message: 'A price is nothing or more.' });
    }
    const [first] = prices;
    const other = prices.find(price => price.currency !== first!.currency);
    if (other) raise({ rule: 'mixed-currency', at: other.at, message: `This stock is priced in ${first!.currency} and in ${other.currency}; the sum of the boards would be in neither.`, related: [{ at: first!.at, message: `In ${first!.currency} here.` }] });
    return prices.filter(price => price.perTick.s >= 0n && price.currency === first!.currency);
}

function onHandOf(reading: Reading): Stock['onHand'] {
    return reading.each('on-hand', found => {
        const { value } = found.known;
        if (value.is !== 'pair') return undefined;
        const count = reading.count(found, value.first), length = reading.ticks(found, value.second);
        return count === undefined || length === undefined ? undefined : { count, length };
    });
}
