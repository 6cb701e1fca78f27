import type { Stock } from './model.ts';

/**
 * What each stock is called among others: its name, and where another one of the list has the same, the file it is declared in as
 * well: `pine-1x6 (yard.coffer)`. Of the path as much is said as tells them apart.
 * @param of what a stock is called by itself
 */
export function stockNames(stocks: readonly Stock[], of = (stock: Stock): string => stock.name): (stock: Stock) => string {
    const each = [...new Map(stocks.map(stock => [stock.key, stock])).values()];
    const named = new Map(each.map(stock =>
        [stock.key, nameAmong(stock, each.filter(other => other.key !== stock.key && of(other) === of(stock)), of(stock))]));
    return stock => named.get(stock.key) ?? of(stock);
}

export function titleOrName({ title, name }: Stock): string {
    return title ?? name;
}

function nameAmong(stock: Stock, alike: readonly Stock[], name: string): string {
    if (alike.length === 0) return name;
    if (alike.some(({ at }) => at.uri === stock.at.uri)) return `${name} (${stock.name})`;          // two titles that are the same
    const path = pathOf(stock);
    const length = path.findIndex((_, i) => alike.every(other => pathOf(other).slice(-i - 1).join('/') !== path.slice(-i - 1).join('/'))) + 1;
    return `${name} (${path.slice(-length).join('/')})`;
}

function pathOf({ at: { uri } }: Stock): string[] {
    return uri.split('/').map(decoded);
}

function decoded(part: string): string {
    try {
        return decodeURIComponent(part);
    } catch {
        return part;
    }
}
