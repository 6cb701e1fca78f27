import type { Ceiling } from '../../ceiling/model.ts';

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
        'The beams hang from the ceiling\'s framing. Whether it may carry them, and what headroom must stay, is for the local code and those who are licensed to judge it.',
    ];
}
