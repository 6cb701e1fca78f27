import { execFileSync } from 'node:child_process';
import { readFileSync } from 'node:fs';
import { fileURLToPath } from 'node:url';
import { join } from 'node:path';

export const root = fileURLToPath(new URL('../..', import.meta.url));

/** Files of the project as git would commit them: tracked, or new and not ignored; paths with forward slashes. */
export function projectFiles(): string[] {
    const listed = execFileSync('git', ['ls-files', '--cached', '--others', '--exclude-standard', '--deduplicate'], { cwd: root, encoding: 'utf8' });
    const gone = execFileSync('git', ['ls-files', '--deleted'], { cwd: root, encoding: 'utf8' }).split('\n');
    return listed.split('\n').filter(path => path !== '' && !gone.includes(path));
}

export function read(path: string): string {
    return readFileSync(join(root, path), 'utf8');
}
