import { askGit, NoAnswer, type Answer } from '../../git/ask.ts';
import { UsageError } from '../exit-code.ts';

/** One repository, asked through its plumbing. */
export class Git {
    private constructor(
        /** Its folder: full path, as the system tells it. */
        readonly top: string,
        private readonly folder: string,
    ) {}

    /** Throws a UsageError where the folder is in no repository, or there is no git. */
    static async at(folder: string): Promise<Git> {
        const { out, words } = await ask(folder, ['rev-parse', '--show-toplevel']);
        const top = out?.toString('utf8').replace(/\r?\n$/, '');
        if (top) return new Git(top, folder);
        if (words.includes('dubious ownership')) throw new UsageError(`${folder} belongs to somebody else, and git does not read it before you say that you trust it: git config --global --add safe.directory '${folder}'`);
        if (/not a git repository/i.test(words)) throw new UsageError(`${folder} is in no git repository: there is no earlier state to compare with`);
        if (out !== undefined || words.includes('must be run in a work tree')) throw new UsageError(`${folder} is a repository without files of its own (a bare one): clone it, and compare there`);
        throw new UsageError(`git does not read ${folder}: ${words.trim()}`);
    }

    /** What git prints; undefined where it fails, with what it said. */
    ask(words: readonly string[], input?: string): Promise<Answer> {
        return ask(this.folder, words, input);
    }

    /** The same as text without the last end of line; undefined where it fails. */
    async line(words: readonly string[]): Promise<string | undefined> {
        return (await this.ask(words)).out?.toString('utf8').replace(/\r?\n$/, '');
    }
}

async function ask(folder: string, words: readonly string[], input?: string): Promise<Answer> {
    try {
        return await askGit(folder, words, { input });
    } catch (error) {
        if (!(error instanceof NoAnswer)) throw error;
        throw new UsageError(WORDS[error.why]);
    }
}

const WORDS: Readonly<Record<NoAnswer['why'], string>> = {
    'no-git': 'There is no git on this machine: install it, or compare where it is', 'too-much': 'The repository holds more than can be read at once',
    'too-long': 'git has not answered for a minute, and was ended: the commit holds far too many files, or something in git\'s own folder, a branch or settings, is a link to a device or a pipe',
};
