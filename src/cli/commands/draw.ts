import { mkdir, writeFile } from 'node:fs/promises';
import { join, relative, resolve } from 'node:path';
import { setImmediate } from 'node:timers/promises';
import type { Ceiling } from '../../ceiling/model.ts';
import { drawSheets, sectionsOf, toSvg, type SvgTheme } from '../../drawing/index.ts';
import { toDxf } from '../../exports/dxf/dxf.ts';
import { takeOffOf } from '../../pipeline/inspect.ts';
import { EXIT, UsageError, worst, type ExitCode } from '../exit-code.ts';
import { roomsMaybeLost } from '../houses.ts';
import { openAsked, type Asked, type World } from '../input.ts';
import { reasonOf } from '../read-text.ts';

export const THEMES: readonly SvgTheme[] = ['auto', 'light', 'dark', 'print'];
export const DRAWING_FORMATS = ['svg', 'dxf'] as const;
export interface DrawOptions extends Asked {
    /** The folder the drawings go to; it is made where it is not there. */
    readonly out: string;
    readonly format: (typeof DRAWING_FORMATS)[number];
    readonly theme: SvgTheme;
    readonly room: readonly string[];
}

/** `plan-ROOM.svg` or `.dxf` for every room, and `section-PROFILE` for every beam section in it. */
export async function draw(options: DrawOptions, world: World): Promise<ExitCode> {
    const { terminal, cwd } = world;
    const { workspace, code } = await openAsked(options, world);
    const checked = await workspace.check();
    const layouts = checked.flatMap(c => c.layouts);
    const unknown = options.room.filter(name => !layouts.some(l => l.room.name === name));
    if (unknown.length > 0) throw new UsageError(`There is no room ${unknown.join(', ')} in these files`);
    const wanted = layouts.filter(l => options.room.length === 0 || options.room.includes(l.room.name));

    const names = new FileNames(options.format);
    const folder = resolve(cwd, options.out);
    const lost = options.room.length > 0 ? [] : roomsMaybeLost(checked, workspace);
    lost.forEach(text => terminal.say(text));
    let worstCode = lost.length > 0 ? worst(code, EXIT.findings) : code;
    await makeFolder(folder, options.out);
    for (const { room, ceiling } of wanted) {
        if (!ceiling) {
            terminal.say(`room ${room.name} cannot be laid out; \`cofferwright check\` shows why`);
            worstCode = worst(worstCode, EXIT.findings);
            continue;
        }
        terminal.progress(`Drawing ${room.name} ...`);
        await setImmediate();
        const sheets = drawSheets(ceiling, takeOffOf(ceiling), { fileName: uri => workspace.files.nameOf(uri) });
        for (const [i, name] of names.forSheets(ceiling).entries()) {
            const path = join(folder, name);
            const sheet = sheets[i]!;
            const text = options.format === 'dxf' ? toDxf(sheet, room.job.show.value) : toSvg(sheet, { theme: options.theme });
            await writeFile(path, text).catch((error: unknown) => { throw new UsageError(`${name} ${reasonOf(error)}`); });
            terminal.result(`${relative(cwd, path) || path}\n`);
        }
    }
    terminal.progress('');
    if (wanted.length === 0) terminal.say('There is no room in these files.');
    return worstCode;
}

async function makeFolder(folder: string, asked: string): Promise<void> {
    await mkdir(folder, { recursive: true }).catch((error: unknown) => { throw new UsageError(`${asked} ${reasonOf(error)}`); });
}

/** Names of the drawings, each once, also on a disk that does not tell capitals apart. */
class FileNames {
    private readonly taken = new Set<string>();
    constructor(private readonly suffix: string) {}

    /** The plan's, then the sections', in the order of the sheets. */
    forSheets(ceiling: Ceiling): string[] {
        const room = ceiling.room.name;
        return [
            this.free([`plan-${room}`]),
            ...sectionsOf(ceiling).map(({ section: { profile } }) => this.free([`section-${profile.name}`, `section-${profile.name}-${room}`])),
        ];
    }

    private free(wishes: readonly string[]): string {
        const last = wishes.at(-1)!;
        for (let n = 0; ; n++) {
            const name = `${wishes[n] ?? `${last}-${n - wishes.length + 2}`}.${this.suffix}`.replace(/[^\w.-]/g, '_');
            if (this.taken.has(name.toLowerCase())) continue;
            this.taken.add(name.toLowerCase());
            return name;
        }
    }
}
