import { PARTS } from '../../takeoff/model.ts';
import { t } from '../shared/words.ts';
import type { Cut, ListedPiece } from './content.ts';
import { partWord } from './part-words.ts';

/** What pieces stand together by: the group's key, its title, and where it comes among the others. */
interface GroupOf { readonly key: string; readonly title: string; readonly order: readonly (string | number)[] }
interface GroupingSpec { readonly word: () => string; readonly of: (cut: Cut, piece: ListedPiece) => GroupOf }

const SPECS = {
    none: { word: () => t('nothing'), of: () => ({ key: '', title: '', order: [] }) },
    part: { word: () => t('part'), of: ({ part }) => ({ key: part, title: partWord(part), order: [PARTS.indexOf(part)] }) },
    stock: { word: () => t('stock'), of: ({ stock }) => ({ key: stock, title: stock, order: [stock] }) },
    'set-up': { word: () => t('set-up'), of: setUp },
    line: {
        word: () => t('line'),
        of: ({ part }, { line }) => (line === null ? { key: `-${part}`, title: partWord(part), order: [1, PARTS.indexOf(part)] } : { key: line, title: t('Line {0}', line), order: [0, line] }),
    },
} satisfies Readonly<Record<string, GroupingSpec>>;

export type Grouping = keyof typeof SPECS;
export const GROUPING: Readonly<Record<Grouping, GroupingSpec>> = SPECS;
export const GROUPINGS = Object.keys(SPECS) as readonly Grouping[];

/** One setting of the stop: the length, and which way round the piece lies. */
function setUp(cut: Cut): GroupOf {
    const lies = cut.hand ?? cut.ends;
    const words = cut.hand === null ? cut.ends : cut.hand === 'left' ? t('left hand') : t('right hand');
    return { key: `${cut.back} ${lies}`, title: t('Stop at {0}, {1}', cut.inches || cut.length, words), order: [-cut.back, lies] };
}
