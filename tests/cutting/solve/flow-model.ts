import { execFileSync, spawnSync } from 'node:child_process';
import { mkdtempSync, readFileSync, rmSync, writeFileSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import type { CuttingProblem } from '../../../src/cutting/solve/problem.ts';

/**
 * The same problem in another form, for another program: a board is a path from 0 along places where a cut may be, an arc over a
 * piece's size cuts it, an arc over nothing leaves the rest (J. M. Valério de Carvalho, "Exact solution of bin-packing problems
 * using column generation and branch-and-bound", Annals of Operations Research 86, 1999). In CPLEX's LP format.
 */
export function flowModel({ items, boards }: CuttingProblem): string {
    const longest = Math.max(...boards.map(kind => kind.capacity));
    const arcs: { from: number; to: number; item: number }[] = [];
    const reached = new Set([0]);
    items.forEach(({ size, count }, item) => {
        // longest first on every board: an item's arcs start where longer ones may have ended, or its own
        const starts = [...reached].sort((a, b) => a - b);
        const cut = new Set<number>();
        for (const start of starts)
            for (let n = 0, at = start; n < count && at + size <= longest; n++, at += size) {
                if (!cut.has(at)) { cut.add(at); arcs.push({ from: at, to: at + size, item }); }
                reached.add(at + size);
            }
    });
    for (const { capacity } of boards) reached.add(capacity);
    const places = [...reached].sort((a, b) => a - b);
    for (let i = 1; i < places.length; i++) arcs.push({ from: places[i - 1]!, to: places[i]!, item: -1 });

    const into = new Map<number, string[]>(places.map(place => [place, []]));
    arcs.forEach(({ from, to }, a) => { into.get(to)!.push(`+ x${a}`); into.get(from)!.push(`- x${a}`); });
    boards.forEach(({ capacity }, k) => { into.get(capacity)!.push(`- n${k}`); into.get(0)!.push(`+ n${k}`); });
    return [
        'Minimize', ` cost: ${boards.map(({ cost }, k) => `+ ${cost} n${k}`).join(' ')}`,
        'Subject To',
        ...places.map((place, i) => ` p${i}: ${into.get(place)!.join(' ')} = 0`),
        ...items.map(({ count }, item) => ` d${item}: ${arcs.flatMap((arc, a) => (arc.item === item ? [`+ x${a}`] : [])).join(' ')} >= ${count}`),
        'Bounds', ...boards.flatMap(({ available }, k) => (available === null ? [] : [` n${k} <= ${available}`])),
        'General', ...arcs.map((_, a) => ` x${a}`), ...boards.map((_, k) => ` n${k}`), 'End', '',
    ].join('\n');
}

/** Why another program cannot be asked, or undefined where it can. `.ci/run` installs both and counts what is skipped as failed. */
export function whatIsMissing(program: 'glpsol' | 'cbc'): string | undefined {
    const there = spawnSync(program, [program === 'glpsol' ? '--version' : '-exit'], { stdio: 'ignore' }).error === undefined;
    return there ? undefined : `${program} is not installed, so it does not check the boards: apt-get install ${program === 'glpsol' ? 'glpk-utils' : 'coinor-cbc'}`;
}

/** What another program finds as the least cost; with its options so that it proves it. */
export function leastCostBy(program: 'glpsol' | 'cbc', model: string): number {
    const folder = mkdtempSync(join(tmpdir(), 'boards-'));
    try {
        const [problem, answer] = [join(folder, 'problem.lp'), join(folder, 'answer.txt')];
        writeFileSync(problem, model);
        const options = program === 'glpsol' ? ['--lp', problem, '--cuts', '--tmlim', '120', '-o', answer] : [problem, '-sec', '120', '-solve', '-solution', answer];
        execFileSync(program, options, { stdio: ['ignore', 'pipe', 'pipe'] });
        const text = readFileSync(answer, 'utf8');
        const found = program === 'glpsol' ? /Status:\s+INTEGER OPTIMAL[\s\S]*?Objective:\s+cost = ([\d.e+]+)/.exec(text) : /^Optimal - objective value ([\d.e+]+)/.exec(text);
        if (!found) throw new Error(`${program} proved nothing: ${text.slice(0, 300)}`);
        return Math.round(Number(found[1]));
    } finally {
        rmSync(folder, { recursive: true, force: true });
    }
}
