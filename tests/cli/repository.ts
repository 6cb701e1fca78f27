import { execFileSync } from 'node:child_process';
import { mkdirSync, mkdtempSync, realpathSync, rmSync, writeFileSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { dirname, join } from 'node:path';
import { onTestFinished } from 'vitest';

export type Files = Readonly<Record<string, string>>;
interface How { readonly format?: 'sha1' | 'sha256'; readonly isBare?: boolean }

/** Whoever runs the tests may have settings of their own, which are not looked at. */
const ENV = { ...process.env, GIT_CONFIG_GLOBAL: '/dev/null', GIT_CONFIG_NOSYSTEM: '1', GIT_AUTHOR_DATE: '2026-03-02T10:00:00+0100', GIT_COMMITTER_DATE: '2026-03-02T10:00:00+0100' };

export function git(cwd: string, words: readonly string[], input?: string): string {
    return execFileSync('git', ['-c', 'user.name=Nora', '-c', 'user.email=nora@example.org', ...words], { cwd, env: ENV, encoding: 'utf8', stdio: ['pipe', 'pipe', 'ignore'], ...input !== undefined && { input } });
}

export function temporaryFolder(): string {
    const folder = realpathSync(mkdtempSync(join(tmpdir(), 'cofferwright-git-')));
    onTestFinished(() => rmSync(folder, { recursive: true, force: true }));
    return folder;
}

/** A repository with these states, one commit each, tagged `one`, `two` …; its files lie as in the last. */
export function repositoryOf(states: readonly Files[], { format = 'sha1' }: How = {}): string {
    const folder = temporaryFolder();
    git(folder, ['init', '-q', '-b', 'main', `--object-format=${format}`]);
    git(folder, ['fast-import', '--quiet'], states.map(commit).join(''));
    git(folder, ['reset', '-q', '--hard', 'main']);
    return folder;
}

const TAGS = ['one', 'two', 'three'];

function commit(files: Files, i: number): string {
    const message = `State ${TAGS[i]}`, all = Object.entries(files).map(([path, text]) => `M 100644 inline ${path}\n${data(text)}`);
    const who = `Nora <nora@example.org> ${1_772_442_000 + i * 86_400} +0100`;
    return `commit refs/heads/main\nmark :${i + 1}\nauthor ${who}\ncommitter ${who}\n${data(message)}${i > 0 ? `from :${i}\n` : ''}deleteall\n${all.join('')}\nreset refs/tags/${TAGS[i]}\nfrom :${i + 1}\n\n`;
}

function data(text: string): string {
    return `data ${Buffer.byteLength(text)}\n${text}\n`;
}

export function write(folder: string, files: Files): void {
    for (const [path, text] of Object.entries(files)) {
        mkdirSync(dirname(join(folder, path)), { recursive: true });
        writeFileSync(join(folder, path), text);
    }
}
