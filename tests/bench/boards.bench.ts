// Boards: how cheap the plan at once is, how often and how soon the cheapest is proved, for kinds of jobs that nothing was tuned on
// (made from seeds that stand here alone), in the steps that a command takes,
// beside cbc and glpsol. Milliseconds of the processor; gaps in percent of the lower bound.
import { spawnSync } from 'node:child_process';
import { existsSync, mkdtempSync, readFileSync, rmSync, writeFileSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { setFlagsFromString } from 'node:v8';
import load from 'highs';
import { lookCloser, USUAL_STEPS } from '../../src/cutting/look-closer.ts';
import type { Answer } from '../../src/cutting/questions.ts';
import { Effort } from '../../src/cutting/solve/effort.ts';
import { costOfLayouts, type CuttingProblem } from '../../src/cutting/solve/problem.ts';
import { prove, type Standing } from '../../src/cutting/solve/prove.ts';
import { quickPlan } from '../../src/cutting/solve/quick.ts';
import type { LinearSolver } from '../../src/cutting/solve/solver.ts';
import { readFile } from '../../src/language/read-file.ts';
import { Boards } from '../../src/pipeline/boards.ts';
import { layoutOf, takeOffOf } from '../../src/pipeline/inspect.ts';
import { solverBy } from '../../src/worker/highs.ts';
import { flowModel, whatIsMissing } from '../cutting/solve/flow-model.ts';
import { job, jobKinds, seeds } from './made-boards.ts';
import { madeHouse } from './made-house.ts';
import { median, p95 } from './spread.ts';
import { Workbench } from './workbench.ts';

export default async function measure(keep: (figures: Record<string, number>) => void): Promise<Record<string, number>> {
    const figures: Record<string, number> = {};
    const began = performance.now();
    setFlagsFromString('--wasm-tiering-budget=200000000'); // as the thread that ships has it
    const highs = await load({ locateFile: file => join(process.cwd(), 'node_modules/highs/build', file) });
    const solver = solverBy(highs);
    figures['solver loaded, wall'] = performance.now() - began;
    const first = clocked(() => closely(job(60, 999), solver));
    figures['a job of 60 pieces in a cold process, plan and proof'] = first.ms;

    const kinds = jobKinds();
    for (const [kind, problems] of kinds) {
        Object.assign(figures, measured(kind, problems, solver));
        keep(figures);
    }
    for (const rooms of [1, 6]) {
        Object.assign(figures, await houseOf(rooms, solver));
        keep(figures);
    }
    Object.assign(figures, beside(seeds(4, 5000).map(seed => job(60, seed))));
    figures['memory of the solver, MB'] = highs.memoryBytes / 1e6;
    figures['memory of the process, MB'] = process.memoryUsage().rss / 1e6;
    return figures;
}

function measured(kind: string, problems: readonly CuttingProblem[], solver: LinearSolver): Record<string, number> {
    const plans = problems.map(problem => clocked(() => quickPlan(problem, new Effort(Infinity))!));
    const proofs = problems.map((problem, i) => clocked(() => closely(problem, solver, plans[i]!.result)));
    const proven = proofs.filter(({ result: { cost, bound } }) => cost === bound).length;
    const gap = (cost: number, bound: number): number => (cost / bound - 1) * 100;
    console.log(`  ${kind}: ${proven} of ${problems.length} proven`);
    return {
        [`${kind}, proven of ${problems.length}`]: proven,
        [`${kind}, plan at once, median`]: median(plans.map(p => p.ms)),
        [`${kind}, plan at once, p95`]: p95(plans.map(p => p.ms)),
        [`${kind}, plans at once within 1 %`]: proofs.filter(({ result }, i) => gap(costOfLayouts(problems[i]!, plans[i]!.result), result.bound) <= 1).length,
        [`${kind}, plan at once, gap, mean`]: proofs.reduce((sum, { result }, i) => sum + gap(costOfLayouts(problems[i]!, plans[i]!.result), result.bound), 0) / problems.length,
        [`${kind}, proof or end of the steps, median`]: median(proofs.map(p => p.ms)),
        [`${kind}, proof or end of the steps, p95`]: p95(proofs.map(p => p.ms)),
        // equal steps are to take about equal time, where there is any to speak of
        ...stepsASecond(kind, proofs.filter(({ ms }) => ms >= LONG_ENOUGH).map(({ result: { spent }, ms }) => spent / ms / 1000)),
        [`${kind}, greatest gap left`]: Math.max(...proofs.map(({ result: { cost, bound } }) => gap(cost, bound))),
    };
}

function stepsASecond(kind: string, rates: readonly number[]): Record<string, number> {
    if (rates.length === 0) return {};
    return {
        [`${kind}, million steps a second, least`]: Math.min(...rates), [`${kind}, million steps a second, median`]: median(rates),
        [`${kind}, million steps a second, most`]: Math.max(...rates),
    };
}
/** What takes less tells nothing of how quick steps are: what is measured then is the garbage of others. */
const LONG_ENOUGH = 50;

function closely(problem: CuttingProblem, solver: LinearSolver, start = quickPlan(problem, new Effort(Infinity))!): Standing {
    const search = prove(problem, start, solver, USUAL_STEPS);
    for (;;) {
        const { done, value } = search.next();
        if (done) return value;
    }
}

/** A house of so many rooms, all its stocks together in the steps of one command. */
async function houseOf(rooms: number, solver: LinearSolver): Promise<Record<string, number>> {
    const bench = new Workbench(), files = madeHouse(rooms);
    await bench.open(files, false);
    const made = files.flatMap(({ path }) => readFile(bench.document(path)).rooms);
    const toCut = made.map(room => ({ room, pieces: takeOffOf(layoutOf(room).ceiling!).pieces }));
    const house = { job: made[0]!.job, rooms: toCut };
    const plan = clocked(() => new Boards([house]).of(house, []).questions);
    const found = new Map<number, Answer>();
    const proof = clocked(() => { for (const { index, answer } of lookCloser(plan.result.asked, solver, USUAL_STEPS)) found.set(index, answer); });
    const proven = plan.result.asked.filter(({ problem }, i) => found.get(i)!.bound >= costOfLayouts(problem, found.get(i)!.layouts)).length;
    const name = `a house of ${rooms === 1 ? '1 room' : `${rooms} rooms`}`;
    console.log(`  ${name}: ${proven} of ${plan.result.asked.length} stocks proven`);
    return {
        [`${name}, pieces`]: toCut.reduce((sum, { pieces }) => sum + pieces.length, 0), [`${name}, stocks asked about`]: plan.result.asked.length,
        [`${name}, stocks proven`]: proven, [`${name}, plan at once`]: plan.ms, [`${name}, proof or end of the steps`]: proof.ms,
    };
}

/** How often two general solvers prove the least cost of the same jobs in 20 seconds each, by a flow model. */
function beside(problems: readonly CuttingProblem[]): Record<string, number> {
    const figures: Record<string, number> = {};
    const folder = mkdtempSync(join(tmpdir(), 'boards-'));
    for (const program of ['cbc', 'glpsol'] as const) {
        const missing = whatIsMissing(program);
        if (missing !== undefined) {
            console.log(`  left out: ${missing}`);
            continue;
        }
        const times: number[] = [];
        let proven = 0;
        for (const problem of problems) {
            const [model, answer] = [join(folder, 'problem.lp'), join(folder, 'answer.txt')];
            writeFileSync(model, flowModel(problem));
            const began = performance.now();
            const how = program === 'cbc' ? [model, '-sec', '20', '-solve', '-solution', answer] : ['--lp', model, '--cuts', '--tmlim', '20', '-o', answer];
            rmSync(answer, { force: true });
            // some do not look at their clock for minutes: then they are ended, and have proved nothing
            spawnSync(program, how, { stdio: 'ignore', timeout: 30_000, killSignal: 'SIGKILL' });
            times.push(performance.now() - began);
            if (existsSync(answer) && /INTEGER OPTIMAL|^Optimal -/m.test(readFileSync(answer, 'utf8'))) proven++;
        }
        figures[`60 pieces by ${program} in 20 s, proven of ${problems.length}`] = proven;
        figures[`60 pieces by ${program}, wall, median`] = median(times);
    }
    rmSync(folder, { recursive: true });
    return figures;
}

function clocked<T>(work: () => T): { result: T; ms: number } {
    const before = process.cpuUsage();
    const result = work();
    const { user, system } = process.cpuUsage(before);
    return { result, ms: (user + system) / 1000 };
}
