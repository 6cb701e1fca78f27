import type { CuttingProblem } from '../../../src/cutting/solve/problem.ts';

/**
 * Every cutting of so many boards at the most as one program of whole numbers, in CPLEX's LP format, written from the words alone: a board is of one
 * kind; pieces are cut from its whole width and sections off it, one behind the other; a section holds strips abreast, each of one lane, with pieces
 * one behind the other. A section is at least as long as the shortest, unless it is the whole board.
 */
export function wholeModel(
    { items, boards, strips: widths, shortestSection }: CuttingProblem, most: { boards: number; sections: number; strips: number },
): string {
    const rows: string[] = [], whole: string[] = [], yesOrNo: string[] = [], bounds: string[] = [];
    const longest = Math.max(...boards.map(kind => kind.capacity)), pieces = items.reduce((sum, { count }) => sum + count, 0);
    const cut = items.map((): string[] => []);
    const each = (n: number): number[] => Array.from({ length: n }, (_, i) => i);
    const row = (terms: readonly string[], than: string): void => { if (terms.length > 0) rows.push(` r${rows.length}: ${terms.join(' ')} ${than}`); };
    for (const b of each(most.boards)) {
        const kinds = boards.map((_, k) => `n${b}_${k}`);
        yesOrNo.push(...kinds, `o${b}`);
        row(kinds.map(n => `+ ${n}`), '<= 1');
        const onWhole: string[] = [];
        items.forEach(({ size, count, lanes }, i) => {
            if (!lanes.includes(0)) return;
            whole.push(`w${b}_${i}`);
            bounds.push(` w${b}_${i} <= ${count}`);
            cut[i]!.push(`+ w${b}_${i}`);
            onWhole.push(`+ ${size} w${b}_${i}`);
            row([`+ w${b}_${i}`, `+ ${count} o${b}`, ...boards.flatMap(({ ripOnly }, k) => (ripOnly ? [`+ ${count} n${b}_${k}`] : []))], `<= ${count}`);
        });
        const sections = each(shortestSection === undefined ? 1 : most.sections);
        row([...onWhole, ...sections.map(s => `+ l${b}_${s}`), ...boards.map(({ capacity }, k) => `- ${capacity} n${b}_${k}`)], '<= 0');
        for (const s of sections) {
            yesOrNo.push(`y${b}_${s}`);
            // without sections a board may only be ripped as a whole
            if (shortestSection === undefined) row([`+ y${b}_${s}`, `- o${b}`], '<= 0');
            else row([`+ l${b}_${s}`, `- ${shortestSection} y${b}_${s}`, ...s === 0 ? [`+ ${shortestSection} o${b}`] : []], '>= 0');
            if (s > 0) row([`+ y${b}_${s}`, `+ o${b}`], '<= 1');
            const abreast: string[] = [];
            for (const t of each(most.strips)) {
                const lanes = widths.map((_, l) => `z${b}_${s}_${t}_${l}`);
                yesOrNo.push(...lanes);
                row([...lanes.map(z => `+ ${z}`), `- y${b}_${s}`], '<= 0');
                // strips that are alike stand in one order too
                if (t > 0) row([
                    ...lanes.map((z, l) => `+ ${widths.length - l} ${z}`), ...widths.map((_, l) => `- ${widths.length - l} z${b}_${s}_${t - 1}_${l}`),
                ], '<= 0');
                lanes.forEach((z, l) => abreast.push(`+ ${widths[l]!} ${z}`));
                const inRow: string[] = [];
                items.forEach(({ size, count, lanes: own }, i) => own.filter(lane => lane > 0).forEach(lane => {
                    const x = `x${b}_${s}_${t}_${i}_${lane}`;
                    whole.push(x);
                    bounds.push(` ${x} <= ${count}`);
                    cut[i]!.push(`+ ${x}`);
                    inRow.push(`+ ${size} ${x}`);
                    row([`+ ${x}`, `- ${count} ${lanes[lane - 1]!}`], '<= 0');
                }));
                row(inRow.length > 0 ? [...inRow, `- l${b}_${s}`] : [], '<= 0');
            }
            row([...abreast, ...boards.map(({ across }, k) => `- ${across} n${b}_${k}`)], '<= 0');
            bounds.push(` l${b}_${s} <= ${longest}`);
        }
        // boards that are alike stand in one order: the dearer first
        if (b > 0) row([
            ...boards.map(({ cost }, k) => `+ ${cost * pieces + k + 1} n${b}_${k}`),
            ...boards.map(({ cost }, k) => `- ${cost * pieces + k + 1} n${b - 1}_${k}`),
        ], '<= 0');
    }
    items.forEach(({ count }, i) => row(cut[i]!, `= ${count}`));
    boards.forEach(({ available }, k) => { if (available !== null) row(each(most.boards).map(b => `+ n${b}_${k}`), `<= ${available}`); });
    return [
        'Minimize', ` cost: ${each(most.boards).flatMap(b => boards.map(({ cost }, k) => `+ ${cost} n${b}_${k}`)).join(' ')}`,
        'Subject To', ...rows, 'Bounds', ...bounds, 'General', ...whole.map(x => ` ${x}`), 'Binary', ...yesOrNo.map(x => ` ${x}`), 'End', '',
    ].join('\n');
}
