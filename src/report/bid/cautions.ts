import type { Ceiling } from '../../ceiling/model.ts';
import { listed } from '../../plain/words.ts';

const MOVED: Readonly<Record<string, string>> = {
    'light': 'lights', 'junction-box': 'junction boxes', 'fan': 'fans', 'speaker': 'speakers', 'register': 'registers', 'sprinkler': 'sprinklers', 'smoke-alarm': 'smoke alarms', 'access-panel': 'access panels',
};

/**
 * What the client has to know before the work begins (common practice, no source): who is licensed for what the ceiling
 * holds, old paint and texture, and who judges what the ceiling carries. Nothing here says that anything is safe.
 */
export function cautionsForClient(ceilings: readonly Ceiling[]): string[] {
    if (ceilings.length === 0) return [];
    const kinds = new Set(ceilings.flatMap(({ room }) => room.fixtures.map(({ kind }) => MOVED[kind]).filter(word => word !== undefined)));
    return [
        ...kinds.size > 0 ? [`What the ceiling holds (${[...kinds].sort().join(', ')}) is moved, extended or shut off by licensed people, before the work begins. Junction boxes have to stay within reach.`] : [],
        'Wiring, pipes and ducts that we were not told about may change the work, its order and its price.',
        'In a house from before 1978 paint may hold lead, and old texture and plaster asbestos: they are tested before anything is drilled or scraped, and work on them follows the rules that apply.',
        carriedWords(ceilings),
    ];
}

/** What carries the beams: the ceiling's framing, or what they are built around, each by its lines where there are both. */
function carriedWords(ceilings: readonly Ceiling[]): string {
    const wrap = (line: Ceiling['lines'][number]): boolean => line.section.profile.wraps !== undefined;
    const around = ceilings.flatMap(({ lines, room }) => {
        const own = lines.filter(wrap).map(({ name }) => name);
        return own.length === 0 ? [] : [`line${own.length === 1 ? '' : 's'} ${listed(own)}${ceilings.length === 1 ? '' : ` of ${room.title ?? room.name}`}`];
    });
    const judged = 'and what headroom must stay, is for the local code and those who are licensed to judge it.';
    if (around.length === 0) return `The beams hang from the ceiling's framing. Whether it may carry them, ${judged}`;
    const fastened = `may carry them and be fastened to, ${judged}`;
    if (ceilings.every(({ lines }) => lines.every(wrap))) return `The beams are built around what is there and hang on it. Whether it ${fastened}`;
    return `The beams of ${around.join('; ')} are built around what is there and hang on it; the others hang from the ceiling's framing. Whether each ${fastened}`;
}
