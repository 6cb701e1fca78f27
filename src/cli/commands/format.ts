import { dirname, relative, resolve } from 'node:path';
import { formatOrReason } from '../../language/format/index.ts';
import { destinationOf, isWithin } from '../destination.ts';
import { EXIT, UsageError, worst, type ExitCode } from '../exit-code.ts';
import { findFiles } from '../find-files.ts';
import { stdinText, type Asked } from '../input.ts';
import type { World } from '../world.ts';
import { readText, reasonNotWritten } from '../read-text.ts';
import { ownText } from '../../text/fit.ts';
import { terminalLines } from '../../text/terminal.ts';

export interface FormatOptions extends Asked { readonly check: boolean }

/**
 * Lays texts out the one way: rewrites files in place, or only names those that would change; standard input goes to
 * standard output. A text that cannot be parsed is left as it is, and said.
 */
export async function format(options: FormatOptions, world: World): Promise<ExitCode> {
    const { files, stdinFilePath, check } = options;
    if (stdinFilePath !== undefined || files.includes('-')) {
        if (files.some(name => name !== '-')) throw new UsageError('Standard input is formatted by itself; name no other files with it');
        return formatStdin(stdinFilePath ?? '<stdin>', check, world);
    }
    const { terminal, cwd, disk } = world;
    const found = await findFiles(files.length === 0 ? ['.'] : files, cwd, disk);
    found.problems.forEach(problem => terminal.say(problem));
    if (found.files.length === 0) throw new UsageError('There is nothing to format');

    let code: ExitCode = found.problems.length > 0 ? EXIT.usage : EXIT.clean;
    let changed = 0;
    for (const path of found.files) {
        const outcome = await formatFile(path, relative(cwd, resolve(path)) || path, check, foldersAsked(path, files, cwd), world);
        code = worst(code, outcome.code);
        if (outcome.changed) changed++;
    }
    terminal.say(`${changed} of ${found.files.length} files ${check ? 'would change' : 'changed'}`);
    return code;
}

/** Within which a link may lead: the folders that were named and hold the file, and the own folder of one that is named itself. */
function foldersAsked(path: string, asked: readonly string[], cwd: string): string[] {
    const folders = asked.length === 0 ? [cwd] : asked.map(name => resolve(cwd, name));
    return folders.filter(name => isWithin(path, name)).map(name => (name === path ? dirname(path) : name));
}

async function formatFile(
    path: string, name: string, check: boolean, folders: readonly string[], { terminal, disk, replace }: World,
): Promise<{ code: ExitCode; changed: boolean }> {
    try {
        const { text, hasMark, stats } = await readText(path, disk);
        const outcome = formatOrReason(text);
        if ('reason' in outcome) {
            terminal.say(`${name} ${outcome.reason}`);
            return { code: EXIT.findings, changed: false };
        }
        const formatted = outcome.text;
        if (formatted === text) return { code: EXIT.clean, changed: false };
        if (check) terminal.result(terminalLines([name]));
        else {
            const to = await destinationOf(disk, path, folders);
            if (stats.nlink > 1) throw new Error('has a second name on the disk (a hard link), from which it would be parted: left as it is');
            await replace(to.path, hasMark ? `\ufeff${formatted}` : formatted, stats);
        }
        return { code: check ? EXIT.findings : EXIT.clean, changed: true };
    } catch (error) {
        terminal.say(`${name} ${reasonNotWritten(error)}`);
        return { code: EXIT.usage, changed: false };
    }
}

async function formatStdin(name: string, check: boolean, { terminal, readStdin }: World): Promise<ExitCode> {
    const text = await stdinText(readStdin);
    const outcome = formatOrReason(text), formatted = 'reason' in outcome ? undefined : outcome.text;
    if ('reason' in outcome) terminal.say(`${name} ${outcome.reason}`);
    if (!check) terminal.result(ownText(formatted ?? text));
    else if (formatted !== undefined && formatted !== text) terminal.result(terminalLines([name]));
    return formatted === undefined || (check && formatted !== text) ? EXIT.findings : EXIT.clean;
}
