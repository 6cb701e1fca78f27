import { execFile } from 'node:child_process';

/**
 * Asks the git that is on the machine, of one repository, without a change to it: only its plumbing, which shows stored objects as they are. Nothing
 * that a repository, or somebody for all of them, can configure runs:
 * no hook, filter, text conversion, alias, pager, monitor of the disk, credential helper or transport. Nothing is fetched: what a partial clone lacks is
 * told as missing.
 */
const STILL = [
    '--no-pager', '--no-optional-locks', '--literal-pathspecs',
    '-c', 'core.fsmonitor=false', '-c', 'core.hooksPath=/dev/null', '-c', 'core.alternateRefsCommand=', '-c', 'protocol.allow=never', '-c', 'credential.helper=', '-c', 'core.askPass=',
    '-c', 'core.sshCommand=false', '-c', 'core.attributesFile=/dev/null', '-c', 'gc.auto=0', '-c', 'maintenance.auto=false', '-c', 'advice.graftFileDeprecated=false',
];
/**
 * What of git's own settings in the environment is handed on: which settings the user has, and how far up a repository is looked for. All else could lead git
 * elsewhere, or let it start or write something.
 */
const HANDED_ON: ReadonlySet<string> = new Set(['GIT_CONFIG_GLOBAL', 'GIT_CONFIG_SYSTEM', 'GIT_CONFIG_NOSYSTEM', 'GIT_CEILING_DIRECTORIES', 'GIT_DISCOVERY_ACROSS_FILESYSTEM']);
/**
 * A commit is what its name says: no other is put in its place (`git replace`, `info/grafts`), since a contract names it. No transport is allowed, whatever
 * settings say of single ones.
 */
const OWN = {
    LC_ALL: 'C', GIT_TERMINAL_PROMPT: '0', GIT_NO_LAZY_FETCH: '1', GIT_ALLOW_PROTOCOL: 'none', GIT_OPTIONAL_LOCKS: '0', GIT_ATTR_NOSYSTEM: '1',
    GIT_NO_REPLACE_OBJECTS: '1', GIT_GRAFT_FILE: '/dev/null',
};
/** Far more than the names of all files of a repository. */
const MOST_BYTES = 256_000_000;

/**
 * Longer than git takes for any of these questions, also about a large repository on a slow disk. Milliseconds. A ref or a file of settings that is a
 * link to a device or a pipe without an end would keep it for ever.
 */
const MOST_TIME = 60_000;

/** What git printed; `out` is undefined where it failed, with its code. `words`: what it said beside it. */
export interface Answer { readonly out?: Buffer; readonly words: string; readonly code?: number }

/** There is no git, or it printed more than can be read at once, or it did not come to an end. */
export class NoAnswer extends Error {
    constructor(readonly why: 'no-git' | 'too-much' | 'too-long') {
        super(why);
    }
}

interface How { readonly input?: string; readonly program?: string; readonly most?: number }

/** Asks in a folder. `program`: where it is, when it is not the one on the path. `most`: milliseconds it may take. Throws NoAnswer. */
export function askGit(folder: string, words: readonly string[], { input = '', program = 'git', most = MOST_TIME }: How = {}): Promise<Answer> {
    const env = Object.fromEntries(Object.entries(process.env).filter(([name]) => !name.startsWith('GIT_') || HANDED_ON.has(name)));
    return new Promise((resolve, reject) => {
        const child = execFile(program, [...STILL, ...words], {
            cwd: folder, encoding: 'buffer', maxBuffer: MOST_BYTES, windowsHide: true, timeout: most, killSignal: 'SIGKILL',
            env: { ...env, ...OWN },
        }, (error, out, err) => {
            const code = (error as NodeJS.ErrnoException | null)?.code;
            if (code === 'ENOENT') reject(new NoAnswer('no-git'));
            else if (code === 'ERR_CHILD_PROCESS_STDIO_MAXBUFFER') reject(new NoAnswer('too-much'));
            else if (error?.killed) reject(new NoAnswer('too-long'));
            else resolve(error ? { words: err.toString('utf8'), ...typeof code === 'number' && { code } } : { out, words: err.toString('utf8') });
        });
        // git may end before it has read all that it is asked: what it says then is the answer
        child.stdin?.on('error', () => {});
        child.stdin?.end(input);
    });
}
