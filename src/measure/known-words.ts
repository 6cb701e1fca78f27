import { printLength } from '../quantity/print-length.ts';
import type { JobSettings } from '../job/model.ts';
import { counted, listed } from '../plain/words.ts';
import type { Dimension } from './dimensions.ts';
import type { Suspect } from './misread.ts';
import { slipWords } from './slips.ts';

/** `wall north`, `the diagonal from north-west to south-east`, `lamp-1`. */
export function dimensionName({ kind, name, count = 1 }: Dimension): string {
    switch (kind) {
        case 'wall': return `wall ${name}`;
        case 'diagonal': return name === '' ? 'a diagonal' : `the diagonal from ${name}`;
        case 'at-wall': case 'fixture': return name;
        case 'height': return 'the height of the ceiling';
        case 'joists': return `the joists ${name}`;
        case 'covering': return `the ${name} of the ceiling`;
        case 'wraps': return `what ${name} wraps`;
        case 'survey': return 'the survey';
        case 'stock': return `boards of ${name}`;
        case 'on-hand': return count === 1 ? `the board of ${name} on hand` : `${count} boards of ${name} on hand`;
        case 'board': return `board ${name}`;
        case 'crown': return `the crown of ${name}`;
        case 'straight': return `the bow of wall ${name}`;
        case 'plumb': return `the lean of wall ${name}`;
        case 'board-in': return 'the longest board that may come in';
        case 'piece-in': return 'the longest piece that gets there';
    }
}

/** `, 15' 10"`; nothing of what is a place and not a length. */
export function dimensionFigure({ ticks, kind, sizes, readings }: Dimension, { show }: Pick<JobSettings, 'show'>): string {
    if (readings !== undefined) return counted(readings, 'reading');
    if (sizes) return sizes.map(size => printLength(size, show.value)).join(' x ');
    return ticks === undefined || kind === 'joists' ? '' : printLength(ticks, show.value);
}

const MOST_SUSPECTS = 2;

/** ` One wrong reading would explain it: wall east at 10' 5" (1' more, as if a foot was miscounted).`; nothing where none does. The likeliest two. */
export function suspectWords(suspects: readonly Suspect[], print: (ticks: number) => string): string {
    const slips = suspects.filter(({ slip }) => slip), told = (slips.length > 0 ? slips : suspects).slice(0, MOST_SUSPECTS);
    if (told.length === 0) return '';
    return ` One wrong reading would explain it: ${listed(told.map(one => `${one.name} at ${print(one.should)} (${offWords(one, print)}${one.slip ? `, ${slipWords(one.slip)}` : ''})`), 'or')}${suspects.length > told.length ? `; \`cofferwright measure\` ranks all ${suspects.length}` : ''}.`;
}

/** `5/8" more than it reads`. */
export function offWords({ off }: Pick<Suspect, 'off'>, print: (ticks: number) => string): string {
    return `${print(Math.abs(off))} ${off > 0 ? 'more' : 'less'}`;
}
