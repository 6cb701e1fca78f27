import { UsageError } from '../exit-code.ts';
import type { Git } from './git.ts';

/** A commit that somebody named. */
export interface Revision {
    /** As it was asked for: `HEAD`, `v1`, `main~3`. */
    readonly asked: string;
    readonly commit: string;
    /** Of the commit, in its author's own time: `2026-10-03`. */
    readonly date: string;
    /** Its first line. */
    readonly subject: string;
}

/**
 * Throws a UsageError where there is no such commit, or more than one that may be meant.
 * @param who says so, where it is not who asked: `, which the contract names`
 */
export async function revisionOf(git: Git, asked: string, who = ''): Promise<Revision> {
    if (asked.trim() === '') throw new UsageError('The name of a commit is empty');
    const { commit, words } = await commitOf(git, asked);
    if (!commit) throw new UsageError(`${await whyNone(git, asked, words)}${who}`);
    return { asked, commit, ...await headOf(git, commit) };
}

/** The whole name of a commit; undefined where git finds none, with what it said. */
export async function commitOf(git: Git, asked: string): Promise<{ readonly commit?: string; readonly words: string }> {
    const { out, words } = await git.ask(['rev-parse', '--verify', '--end-of-options', `${asked}^{commit}`]), commit = out?.toString('utf8').trim();
    return { ...commit && { commit }, words };
}

async function whyNone(git: Git, asked: string, words: string): Promise<string> {
    if (words.includes('is ambiguous')) return `${asked} is the beginning of more than one commit: write more of it`;
    if (await git.line(['rev-parse', '--verify', '--quiet', 'HEAD^{commit}']) === undefined) return 'Nothing is committed yet in this repository: there is no earlier state to compare with';
    const kind = await git.line(['rev-parse', '--verify', '--quiet', '--end-of-options', asked]);
    if (kind !== undefined) return `${asked} is no commit: name a commit, a tag or a branch`;
    const isShallow = await git.line(['rev-parse', '--is-shallow-repository']) === 'true';
    return `There is no commit, tag or branch ${asked} here${isShallow ? ': this clone holds only the last of the history, git fetch --unshallow brings the rest' : ''}`;
}

/** Characters of the first line of a message that are told: nobody reads a longer one. */
const LONGEST_SUBJECT = 200;

async function headOf(git: Git, commit: string): Promise<Pick<Revision, 'date' | 'subject'>> {
    const text = (await git.ask(['cat-file', 'commit', commit])).out?.toString('utf8') ?? '';
    const [head = '', ...message] = text.split('\n\n');
    const author = /^author .* (?<seconds>-?\d+) (?<sign>[-+])(?<hours>\d\d)(?<minutes>\d\d)$/m.exec(head)?.groups;
    const offset = author ? (author['sign'] === '-' ? -1 : 1) * (Number(author['hours']) * 60 + Number(author['minutes'])) * 60 : 0;
    const time = author ? new Date((Number(author['seconds']) + offset) * 1000) : undefined;
    const date = time && !Number.isNaN(time.valueOf()) ? time.toISOString().slice(0, 10) : '';
    const subject = message.join('\n\n').trim().split('\n', 1)[0] ?? '';
    return { date, subject: subject.length > LONGEST_SUBJECT ? `${subject.slice(0, LONGEST_SUBJECT)} …` : subject };
}

/** Ways of files in which both sides of a merge stand, while it is not finished. */
export async function unmerged(git: Git): Promise<string[]> {
    const list = (await git.ask(['ls-files', '--unmerged', '-z', '--full-name'])).out?.toString('utf8') ?? '';
    return [...new Set(list.split('\0').filter(line => line !== '').map(line => line.slice(line.indexOf('\t') + 1)))].sort();
}

/** Ways of files that are committed and are not checked out, since only some folders of the repository are wanted here. */
export async function leftOut(git: Git): Promise<string[]> {
    const list = (await git.ask(['ls-files', '-t', '-z', '--full-name'])).out?.toString('utf8') ?? '';
    return list.split('\0').filter(line => line.startsWith('S ')).map(line => line.slice(2));
}
