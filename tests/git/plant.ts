import { execFileSync } from 'node:child_process';
import { chmodSync, existsSync, mkdirSync, rmSync, writeFileSync } from 'node:fs';
import { join } from 'node:path';
import { git, write } from '../cli/repository.ts';

/** A program that would be seen if it ran, and whether it was. */
interface Planted { hasRun(): boolean; forget(): void; run(): void }

/** Sets up everything by which a repository could have git run something. */
export function plant(cwd: string): Planted {
    const ran = join(cwd, 'ran'), script = join(cwd, 'run.sh');
    writeFileSync(script, `#!/bin/sh\necho "$0 $*" >> '${ran}'\ncat 2>/dev/null\n`);
    chmodSync(script, 0o755);
    for (const hook of ['post-checkout', 'post-index-change', 'fsmonitor-watchman', 'reference-transaction', 'pre-auto-gc']) {
        mkdirSync(join(cwd, '.git/hooks'), { recursive: true });
        writeFileSync(join(cwd, '.git/hooks', hook), `#!/bin/sh\necho ${hook} >> '${ran}'\n`);
        chmodSync(join(cwd, '.git/hooks', hook), 0o755);
    }
    const settings: readonly (readonly [string, string])[] = [
        ['core.fsmonitor', script], ['core.pager', script], ['core.editor', script], ['core.sshCommand', script], ['core.hooksPath', join(cwd, '.git/hooks')], ['core.alternateRefsCommand', script],
        ['filter.evil.smudge', script], ['filter.evil.clean', script], ['filter.evil.process', script], ['diff.evil.textconv', script], ['diff.evil.command', script], ['diff.external', script],
        ['alias.rev-parse', `!${script}`], ['alias.ls-tree', `!${script}`], ['alias.cat-file', `!${script}`], ['alias.ls-files', `!${script}`], ['credential.helper', `!${script}`],
        ['gpg.program', script], ['log.showSignature', 'true'], ['pager.ls-tree', script], ['pager.rev-parse', script], ['uploadpack.packObjectsHook', script], ['interactive.diffFilter', script],
        ['extensions.partialClone', 'origin'], ['remote.origin.promisor', 'true'], ['remote.origin.url', `ext::${script}`], ['remote.origin.uploadpack', script], ['protocol.ext.allow', 'always'],
    ];
    for (const [name, value] of settings) git(cwd, ['config', name, value]);
    write(cwd, { '.gitattributes': '*.coffer filter=evil diff=evil\n', '.git/info/attributes': '*.coffer filter=evil diff=evil\n' });
    return { hasRun: () => existsSync(ran), forget: () => rmSync(ran, { force: true }), run: () => void execFileSync(script, ['by hand'], { input: '' }) };
}
