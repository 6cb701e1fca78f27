import { execFile } from 'node:child_process';
import { UsageError } from '../exit-code.ts';

/**
 * Asks the git that is on the machine, of one repository, without a change to it: only its plumbing, which shows stored objects as they are. Nothing
 * that a repository can configure runs: no hook, filter, text conversion, alias, pager, monitor of the disk, credential helper or transport. Nothing
 * is fetched: what a partial clone lacks is told as missing.
 */
const STILL = [
    '--no-pager', '--no-optional-locks', '--literal-pathspecs',
    '-c', 'core.fsmonitor=false', '-c', 'core.hooksPath=/dev/null', '-c', 'core.alternateRefsCommand=', '-c', 'protocol.allow=never', '-c', 'credential.helper=', '-c', 'core.askPass=',
    '-c', 'core.sshCommand=false', '-c', 'core.attributesFile=/dev/null', '-c', 'gc.auto=0', '-c', 'maintenance.auto=false',
];
/** What would lead git elsewhere, or let it start or write something, wherever it comes from. */
const ELSEWHERE = /^GIT_(DIR|WORK_TREE|INDEX_FILE|OBJECT_DIRECTORY|ALTERNATE_OBJECT_DIRECTORIES|NAMESPACE|COMMON_DIR|EXTERNAL_DIFF|PAGER|EDITOR|SSH|SSH_COMMAND|ASKPASS|PROXY_COMMAND|EXEC_PATH|TRACE.*|TR2_.*|CONFIG_PARAMETERS|CONFIG_COUNT|CONFIG_KEY_\d+|CONFIG_VALUE_\d+)$/;
/** Far more than the names of all files of a repository. */
const MOST_BYTES = 256_000_000;

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

interface Answer { readonly out?: Buffer; readonly words: string }

function ask(folder: string, words: readonly string[], input?: string): Promise<Answer> {
    const env = Object.fromEntries(Object.entries(process.env).filter(([name]) => !ELSEWHERE.test(name)));
    return new Promise((resolve, reject) => {
        const child = execFile('git', [...STILL, ...words], {
            cwd: folder, encoding: 'buffer', maxBuffer: MOST_BYTES, windowsHide: true,
            env: { ...env, LC_ALL: 'C', GIT_TERMINAL_PROMPT: '0', GIT_NO_LAZY_FETCH: '1', GIT_OPTIONAL_LOCKS: '0', GIT_ATTR_NOSYSTEM: '1' },
        }, (error, out, err) => {
            const code = (error as NodeJS.ErrnoException | null)?.code;
            if (code === 'ENOENT') reject(new UsageError('There is no git on this machine: install it, or compare where it is'));
            else if (code === 'ERR_CHILD_PROCESS_STDIO_MAXBUFFER') reject(new UsageError('The repository holds more names than can be read at once'));
            else resolve(error ? { words: err.toString('utf8') } : { out, words: err.toString('utf8') });
        });
        // git may end before it has read all that it is asked: what it says then is the answer
        child.stdin?.on('error', () => {});
        child.stdin?.end(input ?? '');
    });
}
