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
    '-c', 'core.sshCommand=false', '-c', 'core.attributesFile=/dev/null', '-c', 'gc.auto=0', '-c', 'maintenance.auto=false',
];
/** What would lead git elsewhere, or let it start or write something, wherever it comes from. */
const ELSEWHERE = /^GIT_(DIR|WORK_TREE|INDEX_FILE|OBJECT_DIRECTORY|ALTERNATE_OBJECT_DIRECTORIES|NAMESPACE|COMMON_DIR|EXTERNAL_DIFF|PAGER|EDITOR|SSH|SSH_COMMAND|ASKPASS|PROXY_COMMAND|EXEC_PATH|TRACE.*|TR2_.*|CONFIG_PARAMETERS|CONFIG_COUNT|CONFIG_KEY_\d+|CONFIG_VALUE_\d+)$/;
/** Far more than the names of all files of a repository. */
const MOST_BYTES = 256_000_000;

/**
 * Longer than git takes for any of these questions, also about a large repository on a slow disk. Milliseconds. A ref or a file of settings that is a
 * link to a device or a pipe without an end would keep it for ever.
 */
const MOST_TIME = 60_000;

/** What git printed; `out` is undefined where it failed. `words`: what it said beside it. */
export interface Answer { readonly out?: Buffer; readonly words: string }

/** There is no git, or it printed more than can be read at once, or it did not come to an end. */
export class NoAnswer extends Error {
    constructor(readonly why: 'no-git' | 'too-much' | 'too-long') {
        super(why);
    }
}

interface How { readonly input?: string; readonly program?: string; readonly most?: number }

/** Asks in a folder. `program`: where it is, when it is not the one on the path. `most`: milliseconds it may take. Throws NoAnswer. */
export function askGit(folder: string, words: readonly string[], { input = '', program = 'git', most = MOST_TIME }: How = {}): Promise<Answer> {
    const env = Object.fromEntries(Object.entries(process.env).filter(([name]) => !ELSEWHERE.test(name)));
    return new Promise((resolve, reject) => {
        const child = execFile(program, [...STILL, ...words], {
            cwd: folder, encoding: 'buffer', maxBuffer: MOST_BYTES, windowsHide: true, timeout: most, killSignal: 'SIGKILL',
            env: { ...env, LC_ALL: 'C', GIT_TERMINAL_PROMPT: '0', GIT_NO_LAZY_FETCH: '1', GIT_OPTIONAL_LOCKS: '0', GIT_ATTR_NOSYSTEM: '1' },
        }, (error, out, err) => {
            const code = (error as NodeJS.ErrnoException | null)?.code;
            if (code === 'ENOENT') reject(new NoAnswer('no-git'));
            else if (code === 'ERR_CHILD_PROCESS_STDIO_MAXBUFFER') reject(new NoAnswer('too-much'));
            else if (error?.killed) reject(new NoAnswer('too-long'));
            else resolve(error ? { words: err.toString('utf8') } : { out, words: err.toString('utf8') });
        });
        // git may end before it has read all that it is asked: what it says then is the answer
        child.stdin?.on('error', () => {});
        child.stdin?.end(input);
    });
}
