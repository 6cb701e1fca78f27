import type { Answer } from './ask.ts';

/** A commit that somebody named: behind the last one, aside of it, nowhere here, or several of this beginning. `hash`: the whole of it. */
export type NamedCommit = { readonly is: 'behind' | 'aside'; readonly hash: string } | { readonly is: 'none' | 'several' };
type Ask = (words: readonly string[]) => Promise<Answer>;

/** What git knows of commits by their names. One that cannot be told is left out: in a history that is cut off, what is not there may be in the rest. */
export async function namedCommits(ask: Ask, names: readonly string[]): Promise<Map<string, NamedCommit>> {
    const known = new Map<string, NamedCommit>(), shallow = await lineOf(ask, ['rev-parse', '--is-shallow-repository']);
    for (const name of new Set(names)) {
        const commit = await named(ask, name);
        const isWhole = shallow === 'false' || commit?.is === 'behind' || commit?.is === 'several';
        if (commit && isWhole) known.set(name, commit);
    }
    return known;
}

async function named(ask: Ask, name: string): Promise<NamedCommit | undefined> {
    // nothing that git could take for an option, a range or a path in a commit
    if (!/^[\w./+@-]+$/.test(name) || name.startsWith('-')) return { is: 'none' };
    const { out, words } = await ask(['rev-parse', '--verify', '--end-of-options', `${name}^{commit}`]), hash = out?.toString('utf8').trim();
    if (!hash) return words.includes('is ambiguous') ? { is: 'several' } : /needed a single revision|unknown revision|expected commit type/i.test(words) ? { is: 'none' } : undefined;
    const answer = await ask(['merge-base', '--is-ancestor', hash, 'HEAD']);
    // no is told by this code, what went wrong by another
    return answer.out ? { is: 'behind', hash } : answer.code === 1 ? { is: 'aside', hash } : undefined;
}

async function lineOf(ask: Ask, words: readonly string[]): Promise<string | undefined> {
    return (await ask(words)).out?.toString('utf8').trim();
}
