import { expect, test } from 'vitest';
import type { Layout } from '../../../src/cutting/solve/problem.ts';
import { prove } from '../../../src/cutting/solve/prove.ts';
import { checkLayouts } from './check-layouts.ts';
import { JOBS } from './course-jobs.ts';
import { quick, solver } from './problems.ts';

/**
 * The same job is cut the same way everywhere, so the course of a search is written down: the plan at once, each time it came to know more
 * what the best plan cost, what no plan costs less than, and the steps it took, and the plan in the end. A change that makes a search longer
 * or its plan another one shows here; whether a plan is sound and none cheaper exists is held by other programs, in the tests beside this one.
 */
const STEPS = 1_000_000;

test.each(JOBS)('%s', async (name, problem) => {
    const start = quick(problem), search = prove(problem, start, solver, STEPS), course: string[] = [];
    let plan: readonly Layout[] = start;
    for (let ended = false; !ended;) {
        const { done, value: { layouts, cost, bound, spent } } = search.next();
        course.push(`${Math.round(spent)} steps: ${cost}, none cheaper than ${bound}`);
        expect(checkLayouts(problem, layouts)).toBe(cost);
        plan = layouts;
        ended = done === true;
    }
    await expect([...told(start), '', ...course, '', ...told(plan), ''].join('\n')).toMatchFileSnapshot(`./courses/${name.replaceAll(' ', '-')}.txt`);
});

function told(layouts: readonly Layout[]): string[] {
    return layouts.map(({ times, board, sections, strips }) => `${times} x ${board}${sections ? ` in ${sections.join(' ')}` : ''}: ${strips.map(({ lane, section, picks }) =>
        `${lane}${section === undefined ? '' : `/${section}`} ${picks.map(([item, count]) => `${count}*${item}`).join(' ')}`).join(', ')}`);
}
